"""The compared outings as they are, and how they are worked out again under a change."""

from collections import defaultdict
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Self

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.places.forecast import ForecastDay, PlaceForecast
from tripplan.language.sentences import Fact, Value, fact
from tripplan.planning.compare.flips.flip import Flip
from tripplan.planning.compare.flips.measure import Measure
from tripplan.planning.cost import outing_cost
from tripplan.planning.family.family import Family
from tripplan.planning.outing.generalized_cost import generalized_cost
from tripplan.planning.outing.hourly_costs import gate_at
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import PlaceFacts
from tripplan.planning.sweep.sweeping import sweep
from tripplan.values.money import Money

Answer = Outing | NoOuting
"""A compared outing under a change, or why it cannot be done any more."""

_STAYS = {Measure.MONEY: "flips-stays", Measure.WITH_HASSLE: "flips-stays-better"}
_FIRST = {Measure.MONEY: "flips-cheapest", Measure.WITH_HASSLE: "flips-better"}
_CANNOT = {Measure.MONEY: "flips-cannot", Measure.WITH_HASSLE: "flips-cannot-better"}
"""What is said of the first place by each measure."""


@dataclass(frozen=True)
class Comparison:
    """The outings as they are, and how to work them out again under a change.

    Attributes:
        measure: by what the first place is found.
        family: as it is.
        party: as it is.
        outings: the first place first.
        facts: of the outings' places, in the same order.
        today: for booking deadlines.
    """

    measure: Measure
    family: Family
    party: tuple[Member, ...]
    outings: tuple[Outing, ...]
    facts: tuple[PlaceFacts, ...]
    today: date

    @property
    def household(self) -> Household:
        """As it is."""
        return self.family.household

    def recosted(self, household: Household) -> tuple[Answer, ...]:
        """All outings under a change of the household that moves neither day plans nor tickets."""
        return tuple(
            self._recosted(household, outing, facts)
            for outing, facts in zip(self.outings, self.facts, strict=True)
        )

    def _recosted(self, household: Household, outing: Outing, facts: PlaceFacts) -> Outing:
        """One outing by the same day plan and tickets."""
        plan = outing.plan
        cost = outing_cost(
            household,
            self.party,
            outing.day,
            outing.place,
            outing.admission,
            outing.way_there,
            outing.way_home,
            lunch_there=plan.lunch_there,
            own=self.family.own_figures_for(outing.place.id),
            visit=gate_at(self.family, facts, plan.enter, plan.leave_place, today=self.today).visit,
        )
        felt = generalized_cost(household, cost.total.likely + plan.felt, outing.crowd.chance)
        return replace(outing, cost=cost, generalized_cost=felt)

    def with_forecasts(self, told: Mapping[int, ForecastDay]) -> Self:
        """The same where the weather of some outings' days is another.

        Args:
            told: it, by the number of the outing.
        """
        facts, forecasts = list(self.facts), {one.place: one for one in self.family.forecasts}
        for index, day in told.items():
            place = self.outings[index].place.id
            forecasts[place] = forecasts.get(place, PlaceForecast(place=place)).updated([day], self.today)
            facts[index] = replace(facts[index], forecast=forecasts[place])
        family = replace(self.family, forecasts=tuple(forecasts.values()))
        return replace(self, family=family, facts=tuple(facts))

    def replanned(
        self,
        index: int,
        *,
        household: Household | None = None,
        party: Sequence[Member] | None = None,
        day: date | None = None,
    ) -> Answer:
        """One outing planned anew under a change; a departure picked by hand stays as far as it can."""
        outing = self.outings[index]
        picked = day is None and self.picked(index)
        return plan_outing(
            self.family if household is None else replace(self.family, household=household),
            self.party if party is None else party,
            self.facts[index],
            day or outing.day,
            today=self.today,
            leave_at=outing.plan.leave_home if picked else None,
            leave_place_at=outing.plan.leave_place if picked else None,
        )

    def changed(
        self,
        *,
        household: Household | None = None,
        party_on: Callable[[date], Sequence[Member]] | None = None,
        indexes: Collection[int] | None = None,
    ) -> tuple[Answer, ...] | None:
        """All outings under a change, or None where the first place stays, which the totals alone tell.

        Args:
            household: as changed.
            party_on: who goes on the day of an outing, as changed.
            indexes: the outings that the change concerns; all when left out.
        """
        family = self.family if household is None else replace(self.family, household=household)
        asked = range(len(self.outings)) if indexes is None else indexes
        by_day: dict[date, list[int]] = defaultdict(list)
        for index in asked:
            by_day[self.outings[index].day].append(index)
        parties = {day: party_on(day) if party_on else self.party for day in by_day}

        def planned(index: int) -> Answer:
            return self.replanned(index, household=household, party=parties[self.outings[index].day])

        if not any(self.picked(index) for index in asked):
            totals = self.totals()
            for day, concerned in by_day.items():
                places = [self.outings[index].place for index in concerned]
                table = sweep(family, parties[day], places, DateSpan(first=day, last=day), today=self.today)
                totals |= {index: self.measure.in_table(table, row, 0) for row, index in enumerate(concerned)}
            if first_of(totals) == 0:
                return None
        return tuple(planned(n) if n in asked else outing for n, outing in enumerate(self.outings))

    def totals(self) -> dict[int, int | None]:
        """What each outing comes to at present, by its number [smallest coins]."""
        return {n: self.measure.of(outing).minor for n, outing in enumerate(self.outings)}

    def first(self, answers: Sequence[Answer]) -> Outing | None:
        """The first of what can be done, the earliest among equals; None where nothing can."""
        return self.measure.first(answer for answer in answers if isinstance(answer, Outing))

    def changes(self, answers: Sequence[Answer]) -> bool:
        """Whether the first is another outing than at present."""
        return self.first(answers) is not answers[0]

    def picked(self, index: int) -> bool:
        """Whether the departure of an outing was picked by hand."""
        outing = self.outings[index]
        return outing.plan != outing.search.best

    def with_outing(self, index: int, answer: Answer) -> tuple[Answer, ...]:
        """All outings as they are but for one."""
        return (*self.outings[:index], answer, *self.outings[index + 1 :])

    def stays(self, what: Fact, now: Fact, under: Fact) -> Flip:
        """An input that does not change the first place."""
        first = self.outings[0].place.name
        stays = fact(_STAYS[self.measure], under=under, place=first)
        return Flip(self.measure, what, now, None, None, None, stays)

    def _told(self, outing: Outing) -> Money | Fact:
        """What an outing comes to, or at least."""
        amount = self.measure.of(outing)
        return fact("answers-at-least", total=amount) if outing.cost.unknown else amount

    def flip(
        self,
        what: Fact,
        now: Fact,
        at: Fact,
        under: Fact,
        answers: Sequence[Answer] | None,
        *,
        price: Money | None = None,
    ) -> Flip:
        """What the outings under a change mean for the first place.

        Args:
            what: the input.
            now: its present value.
            at: its value under the change.
            under: the change as the first words of a sentence.
            answers: the outings under the change, in the comparison's order; None where the first stays.
            price: the value as money, for a price.
        """
        if answers is None or not self.changes(answers):
            return self.stays(what, now, under)
        then, before, name = self.first(answers), answers[0], self.outings[0].place.name
        if then is None:
            return Flip(self.measure, what, now, at, price, None, fact("flips-nothing-left", under=under))
        first: dict[str, Value] = {
            "under": under,
            "place": name,
            "first": then.place.name,
            "total": self._told(then),
        }
        if isinstance(before, NoOuting):
            sentence = fact(_CANNOT[self.measure], **first, why=before.reasons)
        else:
            sentence = fact(_FIRST[self.measure], **first, against=self._told(before))
        return Flip(self.measure, what, now, at, price, then.place.id, sentence)


def first_of(totals: Mapping[int, int | None]) -> int | None:
    """The number of the cheapest of what can be done, the earliest among equals."""
    known = {n: total for n, total in totals.items() if total is not None}
    return min(known, key=lambda n: (known[n], n), default=None)
