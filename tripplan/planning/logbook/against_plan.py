"""What was planned against what came of it: money by item, minutes, naps, how full; once and over a year."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from tripplan.documents.logbook.as_planned import AsPlanned
from tripplan.documents.logbook.crowd_note import Fullness
from tripplan.documents.logbook.entry import LogbookEntry, PaidFor, minutes_between, slept_minutes
from tripplan.planning.logbook.draft import PAID_FOR, planned_for
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, total


@dataclass(frozen=True)
class MoneyAgainst:
    """One item of money.

    Attributes:
        what: what it went to; 'in all' for the total.
        planned: the likely amount; None where nobody knew it.
        real: what was paid; None where nobody noted it.
        worked_out: whether `real` was not paid on the day but worked out from the distance driven.
    """

    what: str
    planned: Money | None
    real: Money | None
    worked_out: bool = False

    @property
    def more(self) -> Money | None:
        """How much more it was than planned; below zero for less, None where either is unknown."""
        if self.planned is None or self.real is None or self.planned.currency != self.real.currency:
            return None
        return self.real - self.planned


@dataclass(frozen=True)
class MinutesAgainst:
    """One span of time.

    Attributes:
        what: which.
        planned, real: [min]; None where unknown.
    """

    what: str
    planned: int | None
    real: int | None

    @property
    def more(self) -> int | None:
        """How much longer or later it was than planned [min]; None where either is unknown."""
        return None if self.planned is None or self.real is None else self.real - self.planned


@dataclass(frozen=True)
class AgainstPlan:
    """One outing against its plan.

    Attributes:
        money: by item, then in all.
        minutes: leaving (against the planned minute), the way there, the stay, the way home.
        naps: one line a child.
        crowd_planned: the chance of a full house by the plan [0-1]; None where it had none.
        crowd_real: how full it was; None where nobody noted it.
    """

    money: tuple[MoneyAgainst, ...]
    minutes: tuple[MinutesAgainst, ...]
    naps: tuple[MinutesAgainst, ...]
    crowd_planned: float | None
    crowd_real: Fullness | None

    @property
    def unknown(self) -> tuple[str, ...]:
        """What nobody noted although the plan had a figure for it."""
        lines: Sequence[MoneyAgainst | MinutesAgainst] = (*self.money, *self.minutes, *self.naps)
        named = [line.what for line in lines if line.real is None and line.planned is not None]
        return tuple(named) if self.crowd_real or self.crowd_planned is None else (*named, "how full it was")


LEAVING, WAY_THERE, STAY, WAY_HOME = "leaving home late", "the way there", "the stay", "the way home"


def against_plan(entry: LogbookEntry) -> AgainstPlan | None:
    """Set one outing against its plan; None where it was never planned."""
    said = entry.as_planned
    if said is None:
        return None
    money = tuple(_money_for(entry, said, kind) for kind in PAID_FOR) if said.items else ()
    reserve = said.amount_for(CostKind.RESERVE)
    if reserve is not None and reserve.amount:
        money = (*money, MoneyAgainst("reserve", reserve, Money.zero(entry.currency)))
    real = entry.moments
    spans = (
        MinutesAgainst(
            LEAVING,
            None if said.wheels_turn is None else 0,
            minutes_between(said.wheels_turn, real.left_home),
        ),
        MinutesAgainst(WAY_THERE, minutes_between(said.wheels_turn, said.arrive), real.way_there_minutes),
        MinutesAgainst(STAY, minutes_between(said.arrive, said.leave_place), real.stay_minutes),
        MinutesAgainst(WAY_HOME, minutes_between(said.leave_place, said.home), real.way_home_minutes),
    )
    kept: dict[str, int] = {}
    for nap in said.naps:
        kept[nap.member] = kept.get(nap.member, 0) + nap.kept_minutes
    return AgainstPlan(
        money=(*money, _in_all(entry, said, money)),
        minutes=spans,
        naps=tuple(
            MinutesAgainst(f"{member}'s nap", minutes, slept_minutes(entry, member))
            for member, minutes in kept.items()
        ),
        crowd_planned=said.crowd_chance,
        crowd_real=entry.fullness,
    )


def _in_all(entry: LogbookEntry, said: AsPlanned, items: Sequence[MoneyAgainst]) -> MoneyAgainst:
    """What was paid, with the drive where it was worked out; receipts without items may hold it already."""
    driving = next((line.real for line in items if line.worked_out and line.real), None)
    if entry.spent is None or driving is None or entry.not_itemised.amount:
        return MoneyAgainst("in all", said.likely_total, entry.spent)
    return MoneyAgainst("in all", said.likely_total, entry.spent + driving, worked_out=True)


def _money_for(entry: LogbookEntry, said: AsPlanned, kind: PaidFor) -> MoneyAgainst:
    planned, real = planned_for(said, kind), entry.paid_for(kind)
    km = entry.km_driven
    noted = any(one.kind == kind for one in entry.paid)
    if kind == "car" and not noted and planned is not None and said.km and km:
        per_km = planned * Decimal(str(km / said.km))
        return MoneyAgainst(kind, planned, per_km.rounded(), worked_out=True)
    return MoneyAgainst(kind, planned, real)


@dataclass(frozen=True)
class MoneyOverYear:
    """One item of money over several outings, where plan and reality are both known.

    Attributes:
        what: what it went to.
        planned, real: sums over the same outings.
        outings: how many those are.
        unknown: titles of planned outings left out, as one of the two is not known.
    """

    what: str
    planned: Money
    real: Money
    outings: int
    unknown: tuple[str, ...]


@dataclass(frozen=True)
class MinutesOverYear:
    """One span of time over several outings.

    Attributes:
        what: which.
        mean_more: how much longer or later than planned on average [min]; None where no outing tells.
        outings: how many outings tell.
        unknown: titles of planned outings that do not.
    """

    what: str
    mean_more: float | None
    outings: int
    unknown: tuple[str, ...]


@dataclass(frozen=True)
class YearAgainstPlan:
    """Several outings against their plans.

    Attributes:
        planned_outings: how many had a plan.
        money: by item, then in all.
        minutes: by span, naps of all children last.
        packed_expected: how many full houses the plans' chances add up to [-].
        packed_seen: how many the family called packed [-].
        crowd_outings: how many outings tell both.
    """

    planned_outings: int
    money: tuple[MoneyOverYear, ...]
    minutes: tuple[MinutesOverYear, ...]
    packed_expected: float
    packed_seen: int
    crowd_outings: int


def year_against_plan(entries: Iterable[LogbookEntry], currency: str) -> YearAgainstPlan:
    """Set several outings against their plans; only what is known on both sides counts, the rest is named.

    Args:
        entries: any; those without a plan or in another currency are left out.
        currency: ISO 4217 code of the sums.
    """
    compared = [
        (entry, answer)
        for entry in entries
        if entry.currency == currency and (answer := against_plan(entry)) is not None
    ]
    kinds: list[str] = list(dict.fromkeys(line.what for _, answer in compared for line in answer.money))
    kinds.sort(key=[*PAID_FOR, "reserve", "in all"].index)
    crowds = [a for _, a in compared if a.crowd_planned is not None and a.crowd_real is not None]
    return YearAgainstPlan(
        planned_outings=len(compared),
        money=tuple(_money_over(kind, compared, currency) for kind in kinds),
        minutes=(
            *(_minutes_over(span, compared) for span in (LEAVING, WAY_THERE, STAY, WAY_HOME)),
            _naps_over(compared),
        ),
        packed_expected=sum(a.crowd_planned for a in crowds if a.crowd_planned),
        packed_seen=sum(a.crowd_real is Fullness.PACKED for a in crowds),
        crowd_outings=len(crowds),
    )


Compared = Sequence[tuple[LogbookEntry, AgainstPlan]]


def _money_over(kind: str, compared: Compared, currency: str) -> MoneyOverYear:
    lines = [(entry, line) for entry, answer in compared for line in answer.money if line.what == kind]
    told = [line for _, line in lines if line.more is not None]
    return MoneyOverYear(
        kind,
        total((line.planned for line in told if line.planned), currency),
        total((line.real for line in told if line.real), currency),
        len(told),
        tuple(_called(entry) for entry, line in lines if line.more is None),
    )


def _minutes_over(span: str, compared: Compared) -> MinutesOverYear:
    lines = [(entry, line) for entry, answer in compared for line in answer.minutes if line.what == span]
    return _mean(span, [(_called(entry), line.more) for entry, line in lines])


def _naps_over(compared: Compared) -> MinutesOverYear:
    lines = [(entry, line) for entry, answer in compared for line in answer.naps]
    return _mean("naps", [(f"{_called(entry)}, {line.what}", line.more) for entry, line in lines])


def _mean(what: str, told: Sequence[tuple[str, int | None]]) -> MinutesOverYear:
    known = [more for _, more in told if more is not None]
    mean = sum(known) / len(known) if known else None
    return MinutesOverYear(what, mean, len(known), tuple(name for name, more in told if more is None))


def _called(entry: LogbookEntry) -> str:
    return f"{entry.title} on {entry.day.isoformat()}"
