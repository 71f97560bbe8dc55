"""A term's programme: one outing a unit, within a budget, at the least generalized cost; exact."""

from collections.abc import Hashable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date

from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.places.place import Place
from tripplan.documents.study.units import UNITS_AT_MOST, StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.errors import PlanError
from tripplan.language import wording
from tripplan.planning.family.busy_days import weeks_of
from tripplan.planning.family.family import Family
from tripplan.planning.study.cheapest_choice import SolverOption, cheapest_choice
from tripplan.planning.study.options import Option, Swept, UnitOptions, unit_options
from tripplan.values.money import Money, MoneyRange, total


@dataclass(frozen=True)
class UnitOuting:
    """The outing that one unit gets.

    Attributes:
        unit: the unit.
        option: the place and day, and what it costs.
        settled: whether the parent settled its place or day.
        planned: the planned outing it is already, if it is.
    """

    unit: StudyUnit
    option: Option
    settled: bool
    planned: PlannedOuting | None


@dataclass(frozen=True)
class UnitWithout:
    """A unit that gets no outing.

    Attributes:
        unit: the unit.
        reasons: why, in words.
    """

    unit: StudyUnit
    reasons: tuple[str, ...]


@dataclass(frozen=True)
class Programme:
    """A term's outings.

    Attributes:
        outings: one a unit, in order of day; none where limits stand in the way.
        without: the units that cannot have an outing at all, with the reasons.
        obstacles: where the other units cannot all have one, what would have to give way, in words.
        total: what the outings cost together; its ends are those of all of them added up.
        felt: money and nuisances together.
        unknown: whether nobody knows some of the costs, so that the total is a lower bound.
    """

    outings: tuple[UnitOuting, ...]
    without: tuple[UnitWithout, ...]
    obstacles: tuple[str, ...]
    total: MoneyRange
    felt: Money
    unknown: bool


@dataclass(frozen=True)
class Alternative:
    """What it would mean to take another place for a unit, everything else planned anew.

    Attributes:
        option: the best option at that place then.
        total: what the whole programme costs then.
        more: how much more the whole programme costs, likely figures; below zero where it costs less.
        felt_more: how much more it weighs, money and nuisances.
        moves: names of the units whose outing would change too.
    """

    option: Option
    total: MoneyRange
    more: Money
    felt_more: Money
    moves: tuple[str, ...]


@dataclass(frozen=True)
class Term:
    """Everything that a programme is solved from.

    Attributes:
        units: what each unit may choose from; those without options are left out of the programme.
        wishes: limits and what is weighed.
        others: days of outings that are planned for no unit of the programme.
        places: the cards, for their names.
        currency: of all amounts.
    """

    units: tuple[UnitOptions, ...]
    wishes: ProgrammeWishes
    others: tuple[date, ...]
    places: tuple[Place, ...]
    currency: str

    @property
    def in_play(self) -> tuple[UnitOptions, ...]:
        """The units that have options."""
        return tuple(one for one in self.units if one.options)


def term_from(
    family: Family,
    units: Iterable[StudyUnit],
    wishes: ProgrammeWishes,
    outings: Sequence[PlannedOuting],
    swept: Swept,
    *,
    today: date,
) -> Term:
    """Gather what every unit may choose from.

    Args:
        family: people, places, calendars.
        units: in any order.
        wishes: limits, what is settled and ruled out.
        outings: the planned outings on record.
        swept: answers the days, such as `tripplan.planning.sweep.sweeping.sweep` with the family filled in.
        today: days from tomorrow on are looked at.

    Raises:
        PlanError: there are too many units, or the budget is in another currency than the household's.
    """
    wanted = sorted(
        (unit for unit in units if unit.name not in wishes.without), key=lambda unit: (unit.first, unit.name)
    )
    currency = family.household.currency
    if len(wanted) > UNITS_AT_MOST:
        raise PlanError(f"a programme has at most {UNITS_AT_MOST} units; leave some of {len(wanted)} out")
    if wishes.budget is not None and wishes.currency != currency:
        raise PlanError(f"the budget is in {wishes.currency}, the household counts in {currency}")
    found = [unit_options(family, unit, wishes, outings, swept, today=today) for unit in wanted]
    mine = {one.planned.id for one in found if one.planned is not None}
    others = tuple(
        one.day for one in outings if one.id not in mine and one.status is not PlanStatus.CANCELLED
    )
    return Term(tuple(found), wishes, others, family.places, currency)


def programme_of(term: Term) -> Programme:
    """One outing for each unit that can have one, at the least weight in all.

    Outings that are planned already stay, and count against the budget, their week and their place.

    Raises:
        PlanError: no answer could be worked out.
    """
    without = tuple(UnitWithout(one.unit, one.why_none) for one in term.units if not one.options)
    picked = _picked(term)
    if picked is None:
        nothing = MoneyRange.exactly(Money.zero(term.currency))
        return Programme((), without, _obstacles(term), nothing, nothing.likely, unknown=False)
    options = {one.unit.name: one for one in term.in_play}
    outings = [
        replace(one, option=options[one.unit.name].labelled(one.option))
        for one in sorted(picked, key=lambda one: (one.option.day, one.unit.name))
    ]
    return Programme(
        tuple(outings),
        without,
        (),
        _together([one.option.cost for one in outings], term.currency),
        total((one.option.felt for one in outings), term.currency),
        unknown=any(one.option.at_least for one in outings),
    )


def elsewhere(term: Term, now: Programme, unit: str) -> tuple[Alternative, ...]:
    """For one unit, every other place it could go to, with the rest of the programme planned anew.

    Args:
        term: what the programme was solved from.
        now: the programme.
        unit: the name of the unit.

    Returns:
        At most one answer a place, least generalized cost of the whole first; places that would leave the
        rest without a programme are not among them.
    """
    mine = next((one for one in term.units if one.unit.name == unit), None)
    here = {one.unit.name: one.option for one in now.outings}
    if mine is None or unit not in here:
        return ()
    found: list[Alternative] = []
    for place in {option.place: None for option in mine.options if option.place != here[unit].place}:
        there = tuple(option for option in mine.options if option.place == place)
        units = tuple(replace(one, options=there) if one is mine else one for one in term.units)
        then = programme_of(replace(term, units=units))
        if then.outings:
            chosen = {one.unit.name: one.option for one in then.outings}
            moves = tuple(name for name, option in chosen.items() if name != unit and option != here[name])
            more = then.total.likely - now.total.likely
            found.append(Alternative(chosen[unit], then.total, more, then.felt - now.felt, moves))
    return tuple(sorted(found, key=lambda one: (one.felt_more.amount, one.option.day, one.option.place)))


def _together(costs: Sequence[MoneyRange], currency: str) -> MoneyRange:
    low, likely, high = (
        total((getattr(cost, end) for cost in costs), currency) for end in ("low", "likely", "high")
    )
    return MoneyRange(low, likely, high)


def _picked(term: Term) -> list[UnitOuting] | None:
    free = [one for one in term.in_play if one.planned is None]
    choices = [[_choice(option, term.wishes) for option in one.options] for one in free]
    answer = _chosen(term, choices)
    if answer is None:
        return None
    chosen = [one.options[index] for one, index in zip(free, answer, strict=True)]
    return [
        *(UnitOuting(one.unit, one.options[0], settled=True, planned=one.planned) for one in _fixed(term)),
        *(
            UnitOuting(one.unit, option, term.wishes.settled_for(one.unit.name) is not None, None)
            for one, option in zip(free, chosen, strict=True)
        ),
    ]


def _fixed(term: Term) -> list[UnitOptions]:
    """The units whose outing is planned already; it stays where it is, however close to something else."""
    return [one for one in term.in_play if one.planned is not None]


def _chosen(term: Term, choices: Sequence[Sequence[SolverOption]]) -> tuple[int, ...] | None:
    """One choice for each of the other units, beside what is planned."""
    wishes = term.wishes
    planned = [_choice(one.options[0], wishes) for one in _fixed(term)]
    alone = frozenset().union(*(choice.uses for choice in planned), _uses_of_days(term.others, wishes))
    most = wishes.spends_at_most
    if most is None:
        return cheapest_choice(choices, None, alone=alone)
    left = most.minor - sum(choice.cost for choice in planned)
    return None if left < 0 else cheapest_choice(choices, left, alone=alone)


def _choice(option: Option, wishes: ProgrammeWishes) -> SolverOption:
    weight = option.felt if wishes.weigh == "felt" else option.cost.likely
    return SolverOption(option.counted(careful=wishes.careful).minor, weight.minor, _uses(option, wishes))


def _uses(option: Option, wishes: ProgrammeWishes) -> frozenset[Hashable]:
    place: frozenset[Hashable] = (
        frozenset() if wishes.same_place_again else frozenset({("place", option.place)})
    )
    return place | _uses_of_days((option.day,), wishes)


def _uses_of_days(days: Sequence[date], wishes: ProgrammeWishes) -> frozenset[Hashable]:
    if wishes.several_a_week:
        return frozenset(("day", day) for day in days)
    return frozenset(("week", monday) for monday in weeks_of(days))


# --- what stands in the way -------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Limit:
    """A limit that could give way: its words, and the term without it."""

    words: str
    without: Term


def _obstacles(term: Term) -> tuple[str, ...]:
    """Each limit that alone would make room if it gave way; where none does, each pair of units."""
    found = [*_budget_needed(term)]
    found += [
        f"{limit.words} stands in the way: without that it can be done"
        for limit in _rules(term)
        if _picked(limit.without) is not None
    ]
    free = [one for one in term.in_play if one.planned is None]
    dropped = [replace(term, units=tuple(one for one in term.units if one is not left)) for left in free]
    found += [
        f"the unit '{left.unit.name}' stands in the way: without an outing for it the others can be done"
        for left, rest in zip(free, dropped, strict=True)
        if _picked(rest) is not None
    ]
    return tuple(found) or _fewest_left_out(term, free)


def _budget_needed(term: Term) -> list[str]:
    """Where the budget alone is too small, how much would be enough."""
    wishes = term.wishes
    most = wishes.spends_at_most
    if most is None:
        return []
    free = replace(term, wishes=wishes.model_copy(update={"budget": None, "weigh": "money"}))
    if wishes.careful:
        # What counts is the high end, so that is what must be least.
        units = tuple(
            replace(one, options=tuple(replace(o, cost=MoneyRange.exactly(o.cost.high)) for o in one.options))
            for one in term.units
        )
        free = replace(free, units=units)
    picked = _picked(free)
    if picked is None:
        return []
    needed = total((one.option.counted(careful=wishes.careful) for one in picked), term.currency)
    end = ", at the high end of every range," if wishes.careful else ""
    return [
        f"the budget of {wording.money(most)} stands in the way: the least that one outing for each unit "
        f"can cost{end} is {wording.money(needed)}"
    ]


def _rules(term: Term) -> list[_Limit]:
    wishes = term.wishes

    def lifted(words: str, **changes: bool) -> _Limit:
        return _Limit(words, replace(term, wishes=wishes.model_copy(update=changes)))

    rules = []
    if not wishes.several_a_week:
        rules.append(lifted("no two outings in one week", several_a_week=True))
    if not wishes.same_place_again:
        rules.append(lifted("no place twice", same_place_again=True))
    if len(rules) == 2:
        both = lifted(
            "no two outings in one week together with no place twice",
            several_a_week=True,
            same_place_again=True,
        )
        if all(_picked(rule.without) is None for rule in rules):
            rules.append(both)
    return rules


def _fewest_left_out(term: Term, free: Sequence[UnitOptions]) -> tuple[str, ...]:
    """Where no limit gives room alone, the fewest units that would have to go without."""
    choices = [[_choice(option, term.wishes) for option in one.options] for one in free]
    heavy = 1 + sum(max(choice.weight for choice in some) for some in choices)
    none = SolverOption(0, heavy, frozenset())
    answer = _chosen(term, [[*some, none] for some in choices])
    if answer is None:
        return ("the outings that are planned already cost more than the budget",)
    names = [
        f"'{one.unit.name}'" for one, index in zip(free, answer, strict=True) if index == len(one.options)
    ]
    return (
        f"the units {wording.listed(names)} stand in the way together: without outings for them the others "
        "can be done",
    )
