"""The compared outings as they are, and how they are worked out again under a change."""

from collections import defaultdict
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.language.sentences import Fact, Value, fact
from tripplan.planning.compare.flips.flip import Flip
from tripplan.planning.cost import OutingCost, outing_cost
from tripplan.planning.family.family import Family
from tripplan.planning.outing.hourly_costs import gate_at
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import PlaceFacts
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.sweep.table import DayTable
from tripplan.values.money import Money

Answer = Outing | NoOuting
"""A compared outing under a change, or why it cannot be done any more."""


@dataclass(frozen=True)
class Comparison:
    """The outings as they are, and how to work them out again under a change.

    Attributes:
        family: as it is.
        party: as it is.
        outings: the first place first.
        facts: of the outings' places, in the same order.
        today: for booking deadlines.
    """

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
            replace(outing, cost=_cost(household, self.family, self.party, outing, facts, self.today))
            for outing, facts in zip(self.outings, self.facts, strict=True)
        )

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
                totals |= {index: total_in(table, row, 0) for row, index in enumerate(concerned)}
            if first_of(totals) == 0:
                return None
        return tuple(planned(n) if n in asked else outing for n, outing in enumerate(self.outings))

    def totals(self) -> dict[int, int | None]:
        """What each outing likely costs at present, by its number [smallest coins]."""
        return {n: outing.cost.total.likely.minor for n, outing in enumerate(self.outings)}

    def picked(self, index: int) -> bool:
        """Whether the departure of an outing was picked by hand."""
        outing = self.outings[index]
        return outing.plan != outing.search.best

    def with_outing(self, index: int, answer: Answer) -> tuple[Answer, ...]:
        """All outings as they are but for one."""
        return (*self.outings[:index], answer, *self.outings[index + 1 :])

    def stays(self, what: Fact, now: Fact, under: Fact) -> Flip:
        """An input that does not change the first place."""
        stays = fact("flips-stays", under=under, place=self.outings[0].place.name)
        return Flip(what, now, None, None, None, stays)

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
        if answers is None or not changes(answers):
            return self.stays(what, now, under)
        then, before, name = _first(answers), answers[0], self.outings[0].place.name
        if then is None:
            return Flip(what, now, at, price, None, fact("flips-nothing-left", under=under))
        first: dict[str, Value] = {
            "under": under,
            "place": name,
            "first": then.place.name,
            "total": _total(then),
        }
        if isinstance(before, NoOuting):
            sentence = fact("flips-cannot", **first, why=before.reasons)
        else:
            sentence = fact("flips-cheapest", **first, against=_total(before))
        return Flip(what, now, at, price, then.place.id, sentence)


def likely(outing: Outing) -> Decimal:
    """What an outing likely costs in all, in its currency."""
    return outing.cost.total.likely.amount


def _first(answers: Sequence[Answer]) -> Outing | None:
    """The cheapest of what can be done, the earliest among equals; None where nothing can."""
    return min((answer for answer in answers if isinstance(answer, Outing)), key=likely, default=None)


def changes(answers: Sequence[Answer]) -> bool:
    """Whether the first is another outing than at present."""
    return _first(answers) is not answers[0]


def total_in(table: DayTable, row: int, column: int) -> int | None:
    """The likely total of one place on one day [smallest coins]; None where it cannot be done."""
    return int(table.likely[row, column]) if table.can_go[row, column] else None


def first_of(totals: Mapping[int, int | None]) -> int | None:
    """The number of the cheapest of what can be done, the earliest among equals."""
    known = {n: total for n, total in totals.items() if total is not None}
    return min(known, key=lambda n: (known[n], n), default=None)


def _total(outing: Outing) -> Money | Fact:
    likely = outing.cost.total.likely
    return fact("answers-at-least", total=likely) if outing.cost.unknown else likely


def _cost(
    household: Household,
    family: Family,
    party: Sequence[Member],
    outing: Outing,
    facts: PlaceFacts,
    today: date,
) -> OutingCost:
    """What the same day plan and tickets cost under a change of the household."""
    return outing_cost(
        household,
        party,
        outing.day,
        outing.place,
        outing.admission,
        outing.way_there,
        outing.way_home,
        lunch_there=outing.plan.lunch_there,
        own=family.own_figures_for(outing.place.id),
        visit=gate_at(family, facts, outing.plan.enter, outing.plan.leave_place, today=today).visit,
    )
