"""The days and places that a unit's outing may have, and why a unit has none."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.family.household import Household
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.places.place import Place, PlaceId
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes, SettledFor
from tripplan.language import wording
from tripplan.language.sentences import Fact, told
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.sweep.table import DayTable, Verdict
from tripplan.planning.topic_fit import fits_of
from tripplan.values.money import Money, MoneyRange

LONGEST_AHEAD = timedelta(days=540)
"""A programme reaches eighteen months ahead at most."""
_REASONS_SHOWN = 3
_A_TERM = timedelta(weeks=13)
"""A quarter of a year: how long a term is at most."""

Swept = Callable[[tuple[str, ...], tuple[Place, ...], DateSpan], DayTable]
"""Answers every day of a span at some places, for the names of a party."""


@dataclass(frozen=True)
class Option:
    """One place on one day, with what it costs and weighs.

    Attributes:
        place: id of the place card.
        day: when.
        cost: what is known of the total.
        felt: money and nuisances.
        at_least: whether nobody knows some of the costs, so that `cost` is a lower bound.
        unknown: labels of those costs, once the option is chosen.
    """

    place: PlaceId
    day: date
    cost: MoneyRange
    felt: Money
    at_least: bool = False
    unknown: tuple[Fact, ...] = ()

    def counted(self, *, careful: bool) -> Money:
        """What counts against a budget: the likely cost, or the high end of its range."""
        return self.cost.high if careful else self.cost.likely


@dataclass(frozen=True)
class UnitOptions:
    """What one unit may choose from.

    Attributes:
        unit: the unit.
        options: least generalized cost first.
        why_none: where there are no options, the reasons, in words.
        planned: the outing that is planned for the unit already, if any; then it has that one option.
        days: where the options come from, if any.
    """

    unit: StudyUnit
    options: tuple[Option, ...]
    why_none: tuple[str, ...] = ()
    planned: PlannedOuting | None = None
    days: DayTable | None = None

    def labelled(self, option: Option) -> Option:
        """One of the options with the labels of the costs that nobody knows."""
        if self.days is None or not option.at_least:
            return option
        row = [place.id for place in self.days.places].index(option.place)
        outing = self.days.outing(row, (option.day - self.days.first).days)
        return replace(option, unknown=outing.cost.unknown) if isinstance(outing, Outing) else option


def options_of(days: DayTable) -> tuple[Option, ...]:
    """Every day at every place that can be done, least generalized cost first."""
    return tuple(
        Option(
            days.places[row].id,
            days.day(column),
            days.total(row, column),
            days.money(days.felt[row, column]),
            bool(days.at_least[row, column]),
        )
        for row, column in days.ranked().tolist()
    )


def term_of(unit: StudyUnit, wishes: ProgrammeWishes, today: date) -> DateSpan | None:
    """The days a unit's outing may lie on: in its weeks, in the term, ahead; None where there are none."""
    first = max(unit.first, wishes.first or unit.first, today + timedelta(days=1))
    last = min(unit.last, wishes.last or unit.last, today + LONGEST_AHEAD)
    return DateSpan(first=first, last=last) if first <= last else None


def party_of(unit: StudyUnit, household: Household) -> tuple[str, ...]:
    """The names of those who go for a unit; who is no member any more is left out."""
    names = [member.name for member in household.members]
    return tuple(name for name in names if not unit.members or name in unit.members)


def planned_for(unit: StudyUnit, outings: Iterable[PlannedOuting], today: date) -> PlannedOuting | None:
    """The outing that is planned for a unit and not called off: one in its weeks, else one moved out of them.

    One that is over, and was so more than `_A_TERM` before the unit begins, belongs to an earlier unit of the
    same name.
    """
    found = (
        one
        for one in outings
        if one.study_unit == unit.name
        and one.status is not PlanStatus.CANCELLED
        and one.day >= min(today, unit.first - _A_TERM)
    )
    return min(found, key=lambda one: (one.day not in unit.weeks, one.day, one.id), default=None)


def unit_options(
    family: Family,
    unit: StudyUnit,
    wishes: ProgrammeWishes,
    outings: Sequence[PlannedOuting],
    swept: Swept,
    *,
    today: date,
) -> UnitOptions:
    """What a unit may choose from, by its weeks, its places, its budget and what the parent settled.

    Args:
        family: people and places.
        unit: the unit.
        wishes: the term, what is settled and what is ruled out.
        outings: planned already; days on which something else is planned are not free.
        swept: answers the days, such as `tripplan.planning.sweep.sweeping.sweep` with the family filled in.
        today: days from tomorrow on are looked at.
    """
    planned = planned_for(unit, outings, today)
    if planned is not None:
        return _as_planned(family, unit, planned, swept, today)

    def none(*reasons: str) -> UnitOptions:
        return UnitOptions(unit, (), reasons)

    if unit.budget is not None and unit.currency != family.household.currency:
        return none(f"its budget is in {unit.currency}, the household counts in {family.household.currency}")
    term = term_of(unit, wishes, today)
    if term is None:
        return none("none of its days lies ahead and in the term")
    party = party_of(unit, family.household)
    if not party:
        return none("nobody it is for is a member of the household any more")
    settled = wishes.settled_for(unit.name)
    places, why_no_place = _places(family, unit, wishes, settled)
    if not places:
        return none(why_no_place)
    days = swept(party, places, term)
    options = _allowed(options_of(days), unit, wishes, settled, outings)
    if not options:
        return none(*_why_no_day(days, settled, term))
    in_budget, why_none = _within_budget(options, unit, careful=wishes.careful)
    return UnitOptions(unit, in_budget, why_none, days=days)


def _as_planned(
    family: Family, unit: StudyUnit, planned: PlannedOuting, swept: Swept, today: date
) -> UnitOptions:
    """A planned outing as it would be planned now, for its range; as it is on record where it cannot be."""
    places = tuple(place for place in family.places if place.id == planned.place)
    members = {member.name for member in family.household.members}
    if places and planned.day > today and members.issuperset(planned.party):
        days = swept(planned.party, places, DateSpan(first=planned.day, last=planned.day))
        if options := options_of(days):
            return UnitOptions(unit, options, planned=planned, days=days)
    likely = planned.likely_total
    on_record = Option(planned.place, planned.day, MoneyRange.exactly(likely), likely)
    return UnitOptions(unit, (on_record,), planned=planned)


def _places(
    family: Family, unit: StudyUnit, wishes: ProgrammeWishes, settled: SettledFor | None
) -> tuple[tuple[Place, ...], str]:
    """Where the unit's outing may go; where nowhere, why."""
    if settled and settled.place:
        found = tuple(place for place in family.places if place.id == settled.place)
        return found, f"the place you fixed, '{settled.place}', has no card any more"
    never = {one.place for one in wishes.ruled_out if one.unit == unit.name and one.day is None}
    fitting = [fit.place for fit in fits_of(unit, family.places).places]
    if not fitting:
        return (), "no place card names one of its topics"
    left = tuple(place for place in fitting if place.id not in never)
    return left, "you have ruled out every place that fits"


def _allowed(
    options: Iterable[Option],
    unit: StudyUnit,
    wishes: ProgrammeWishes,
    settled: SettledFor | None,
    outings: Iterable[PlannedOuting],
) -> tuple[Option, ...]:
    """The options left by what is settled, ruled out and planned on the same day."""
    ruled_out = {(one.place, one.day) for one in wishes.ruled_out if one.unit == unit.name}
    taken = {one.day for one in outings if one.status is not PlanStatus.CANCELLED}
    return tuple(
        option
        for option in options
        if (option.place, option.day) not in ruled_out
        and option.day not in taken
        and (settled is None or settled.day is None or option.day == settled.day)
    )


def _why_not(days: DayTable, row: int, columns: Sequence[int]) -> str:
    """Why a place cannot be visited on some days with the same verdict, as the first of them says it."""
    place, missed = days.places[row].name, days.outing(row, columns[0])
    why = "; ".join(told(missed.reasons)) if isinstance(missed, NoOuting) else ""
    return f"{place}: {why}{'' if len(columns) == 1 else f' ({len(columns)} days)'}"


def _within_budget(
    options: tuple[Option, ...], unit: StudyUnit, *, careful: bool
) -> tuple[tuple[Option, ...], tuple[str, ...]]:
    """The options within the unit's own budget; where there are none, why."""
    most = unit.spends_at_most
    if most is None:
        return options, ()
    kept = tuple(option for option in options if option.counted(careful=careful) <= most)
    if kept:
        return kept, ()
    least = min(option.counted(careful=careful).amount for option in options)
    end = " at the high end of its range" if careful else ""
    return (), (
        f"its own budget of {wording.money(most)} is too small: the least it can cost{end} is "
        f"{wording.money(Money(least, unit.currency))}",
    )


def _why_no_day(days: DayTable, settled: SettledFor | None, term: DateSpan) -> tuple[str, ...]:
    """Why no day is left, the commonest reasons first."""
    day = settled.day if settled else None
    if day is not None and day not in term:
        return (f"the day you fixed, {wording.day(day)}, does not lie ahead in its weeks and the term",)
    if day is None and days.can_go.any():
        return ("every day that could be done is ruled out, or taken by another planned outing",)
    asked = range(len(days.days)) if day is None else [(day - days.first).days]
    found: dict[tuple[int, int], list[int]] = {}
    for column in asked:
        for row, verdict in enumerate(days.verdict[:, column].tolist()):
            if verdict != Verdict.CAN_GO:
                found.setdefault((row, verdict), []).append(column)
    commonest = sorted(found.items(), key=lambda one: -len(one[1]))[:_REASONS_SHOWN]
    reasons = [_why_not(days, row, columns) for (row, _), columns in commonest]
    if day is not None and not reasons:
        return (f"the day you fixed, {wording.day(day)}, is ruled out or taken by another planned outing",)
    start = "no day can be done" if day is None else f"{wording.day(day)}, which you fixed, cannot be done"
    return (start, *reasons)
