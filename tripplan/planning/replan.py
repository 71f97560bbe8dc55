"""When the day goes wrong: from here and now, go on, wait, turn back, or somewhere nearer."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from enum import StrEnum

from tripplan.errors import PlanError, UnknownName
from tripplan.planning import wording
from tripplan.planning.cost import CostKind
from tripplan.planning.day import Begun, DayQuestion, NapOutcome, Napper, SleepsIn
from tripplan.planning.day.minutes import DayMinutes
from tripplan.planning.day.naps import nap_windows, outcome
from tripplan.planning.household import Member, Nap
from tripplan.planning.money import Money, total
from tripplan.planning.outing import Family, NoOuting, Outing, place_facts, plan_outing
from tripplan.planning.place import Place
from tripplan.planning.ranges import Range
from tripplan.planning.sunk import Paid, called_off, some_stay_away
from tripplan.planning.travel.drive import Drive, Leg, Rest, Stop
from tripplan.planning.travel.known import known_drive
from tripplan.planning.travel.rests import drive_stretch_for, plan_leg
from tripplan.planning.where import Point

MOST_UNDERSTUDIES_TRIED = 6
"""So many of the nearest other places are looked at [-]."""


class Whereabouts(StrEnum):
    """Where the party is."""

    HOME = "still at home"
    ON_THE_WAY = "on the way"
    THERE = "at the place"


@dataclass(frozen=True)
class Trouble:
    """What has gone wrong so far.

    Attributes:
        late_minutes: how much later than planned: in leaving, in arriving if on the way or there [min].
        where: where the party is.
        still_to_drive_minutes: on the way, how much driving is left; half of it when left out [min].
        now: at the place, the present moment; when the party was let in if left out.
        asleep: the child who has fallen asleep.
        asleep_since: since when; just now if left out.
        ill: the child who is ill.
        stays_home: the adult who stays with it; whoever suits best when left out.
        rain: whether it rains.
        tickets_paid: whether the tickets are bought already; at the place they are.
    """

    late_minutes: int = 0
    where: Whereabouts = Whereabouts.HOME
    still_to_drive_minutes: int | None = None
    now: datetime | None = None
    asleep: str | None = None
    asleep_since: datetime | None = None
    ill: str | None = None
    stays_home: str | None = None
    rain: bool = False
    tickets_paid: bool = False


class Choice(StrEnum):
    """What can be done about it."""

    GO_ON = "go on"
    WAIT = "wait"
    TURN_BACK = "turn back"
    UNDERSTUDY = "somewhere else"


@dataclass(frozen=True)
class WayOut:
    """One thing that can be done.

    Attributes:
        choice: which.
        title: in words.
        outing: the new plan with all its answers; None where the party goes or stays home.
        home: when everybody who is out is home.
        naps: what becomes of the naps of those who are out.
        total: what the whole day costs then, tickets already paid for included.
        change: how much more that is than was planned; below zero where it is less.
        tickets: what becomes of tickets already paid for; None where none were.
        felt: what its nuisances weigh.
        notes: what else to know.
    """

    choice: Choice
    title: str
    outing: Outing | None
    home: datetime
    naps: tuple[NapOutcome, ...]
    total: Money
    change: Money
    tickets: Paid | None
    felt: Money
    notes: tuple[str, ...] = ()

    @property
    def weighs(self) -> Money:
        """Money and nuisances together; the least is the best."""
        return self.total + self.felt

    @property
    def money_sentence(self) -> str:
        """What changes in cost."""
        change = self.change.rounded()
        if not change.amount:
            said = "costs as much as planned"
        else:
            more = "more" if change.amount > 0 else "less"
            said = f"costs {wording.whole_money(Money(abs(change.amount), change.currency))} {more} than planned"
        if self.tickets is not None and self.tickets.back.amount:
            said += f"; {wording.money(self.tickets.back)} of tickets comes back if called off in time"
        if self.tickets is not None and self.tickets.lost.amount:
            said += f"; {wording.money(self.tickets.lost)} of tickets already paid for is lost"
        return f"{said[0].upper()}{said[1:]}."


@dataclass(frozen=True)
class Replanned:
    """What can be done from here and now.

    Attributes:
        now: the moment it is about.
        ways: what can be done, the least money and nuisances first; in rain, open-air places last.
        impossible: what cannot be done any more, each with its reasons.
        cautions: for safety.
    """

    now: datetime
    ways: tuple[WayOut, ...]
    impossible: tuple[tuple[str, tuple[str, ...]], ...]
    cautions: tuple[str, ...]


def replan(family: Family, outing: Outing, trouble: Trouble, *, today: date) -> Replanned:
    """Plan anew from here and now.

    Lateness moves everything: who leaves late arrives as much later. A child who is asleep sleeps its usual
    length if nobody wakes it; on the way the party then sits in the car until it wakes, all together. With a
    child ill at home one adult stays with it and the others may go; out of the house everybody turns back.
    The understudy is the nearest other place from here that is open, can be reached, lets the party stay as
    long as it is worth, and weighs less than turning back; in rain none in the open air. On the way, the
    drive to it is estimated from a point on the straight line.

    Tickets already paid for are spent whatever happens; only refundable ones come back. Turning back, what
    is not used up is not counted: no parking, no treats; food only if it was packed.

    Args:
        family: people, car, home, places.
        outing: the day as it was planned.
        trouble: what has gone wrong.
        today: when the day was planned, for booking deadlines of the place itself.

    Raises:
        PlanError: so late that the day is over, or a figure is below zero.
        UnknownName: a name is not one of the party's.
    """
    return _Replanning(family, outing, trouble, today).answer()


@dataclass(frozen=True)
class _Replanning:
    family: Family
    outing: Outing
    trouble: Trouble
    today: date

    def __post_init__(self) -> None:
        trouble = self.trouble
        if trouble.late_minutes < 0 or (trouble.still_to_drive_minutes or 0) < 0:
            raise PlanError("minutes late and minutes still to drive are no less than zero")
        names = tuple(member.name for member in self.outing.party)
        for name in (trouble.asleep, trouble.ill, trouble.stays_home):
            if name is not None and name not in names:
                raise UnknownName("member", name, names)
        if self.now.astimezone(self.zone).date() != self.outing.day:
            raise PlanError("that late, the day is over")

    @property
    def zone(self):  # type: ignore[no-untyped-def]
        return self.outing.question.home_zone

    @property
    def left_home(self) -> datetime:
        """When the party leaves, or left."""
        late = timedelta(minutes=self.trouble.late_minutes)
        return (self.outing.plan.leave_home.astimezone(UTC) + late).astimezone(self.zone)
