"""What has gone wrong with a day, and where the party is by then."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from enum import StrEnum
from functools import cached_property
from zoneinfo import ZoneInfo

from tripplan.documents.family.member import Nap
from tripplan.documents.where import Point
from tripplan.errors import PlanError, UnknownName
from tripplan.planning.day import Napper
from tripplan.planning.family.family import Family
from tripplan.planning.on_the_day.sunk_cost import SunkCost, called_off
from tripplan.planning.outing.outing import Outing
from tripplan.values.clocks import minute_of_day
from tripplan.values.money import Money


class Whereabouts(StrEnum):
    """Where the party is."""

    HOME = "still at home"
    ON_THE_WAY = "on the way"
    THERE = "at the place"
    GOING_HOME = "on the way home"


@dataclass(frozen=True)
class Trouble:
    """What has gone wrong so far.

    Attributes:
        late_minutes: how much later than planned: in leaving home, in arriving if on the way or there, in
            leaving the place if on the way home [min].
        where: where the party is.
        still_to_drive_minutes: on either way, how much driving is left; half of it when left out [min].
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


_SLEEP_WITHOUT_A_USUAL_NAP = 60
"""How long a child sleeps that has no usual nap. Common practice, no source [min]."""


@dataclass(frozen=True)
class Situation:
    """Where the party is, and what it has behind it.

    Attributes:
        family: people, car, home, places.
        outing: the day as it was planned.
        trouble: what has gone wrong.

    Raises:
        PlanError: a figure is below zero.
        UnknownName: a name is not one of the party's.
    """

    family: Family
    outing: Outing
    trouble: Trouble

    def __post_init__(self) -> None:
        trouble = self.trouble
        if trouble.late_minutes < 0 or (trouble.still_to_drive_minutes or 0) < 0:
            raise PlanError("minutes late and minutes still to drive are no less than zero")
        names = tuple(member.name for member in self.outing.party)
        for name in (trouble.asleep, trouble.ill, trouble.stays_home):
            if name is not None and name not in names:
                raise UnknownName("member", name, names)

    @property
    def zone(self) -> ZoneInfo:
        """The time zone of the home."""
        return self.outing.question.home_zone

    @property
    def at_home(self) -> bool:
        """Whether it has not left yet."""
        return self.trouble.where is Whereabouts.HOME

    @property
    def there(self) -> bool:
        """Whether it is at the place."""
        return self.trouble.where is Whereabouts.THERE

    @property
    def going_home(self) -> bool:
        """Whether it has left the place."""
        return self.trouble.where is Whereabouts.GOING_HOME

    @property
    def driving(self) -> bool:
        """Whether it is in the car."""
        return self.trouble.where in (Whereabouts.ON_THE_WAY, Whereabouts.GOING_HOME)

    @property
    def paid(self) -> bool:
        """Whether the tickets are paid for."""
        return self.trouble.tickets_paid or self.there or self.going_home

    @property
    def left_home(self) -> datetime:
        """When the party leaves, or has left."""
        late = 0 if self.going_home else self.trouble.late_minutes
        return self.later(self.outing.plan.leave_home, late)

    @property
    def arrives(self) -> datetime:
        """When it is, or was, at the place."""
        return self.later(self.left_home, self.outing.way_there.minutes)

    @property
    def left_place(self) -> datetime:
        """When load-up for the way home began, for a party that is on it."""
        return self.later(self.outing.plan.leave_place, self.trouble.late_minutes)

    @property
    def home_again(self) -> datetime:
        """When a party on the way home is there."""
        return self.later(self.left_place, self.outing.way_home.minutes)

    @property
    def parks(self) -> datetime:
        """When the wheels stand still where the party drives to, and a child in the car is woken."""
        if self.going_home:
            return self.later(self.home_again, -self.outing.way_home.unload_minutes)
        return self.later(self.arrives, -self.outing.way_there.unload_minutes)

    @property
    def driven_minutes(self) -> int:
        """Driving behind it, on the way home of that way alone [min]."""
        drive = (self.outing.way_home if self.going_home else self.outing.way_there).drive_minutes
        if self.at_home:
            return 0
        if self.there:
            return drive
        left = self.trouble.still_to_drive_minutes
        return drive // 2 if left is None else max(0, drive - left)

    @property
    def share(self) -> float:
        """Driving behind it as a share of the way there [0-1]."""
        return self.driven_minutes / max(1, self.outing.way_there.drive_minutes)

    @property
    def let_in(self) -> datetime:
        """When it was, or is, let in."""
        return max(self.arrives, self.outing.plan.enter.astimezone(self.zone))

    @cached_property
    def now(self) -> datetime:
        """The present moment."""
        if self.at_home:
            return self.left_home
        if self.there:
            return max(self.let_in, self.trouble.now or self.let_in).astimezone(self.zone)
        leg, left = self.outing.way_there, self.left_home
        if self.going_home:
            leg, left = self.outing.way_home, self.left_place
        halts = sum(halt.minutes for halt in leg.halts if halt.after_minutes < self.driven_minutes)
        return self.later(left, leg.load_up_minutes + self.driven_minutes + halts)

    @property
    def point(self) -> Point:
        """Where it is; on the way, on the straight line."""
        home, place = self.family.household.home.point, self.outing.place.where.point
        share = self.share
        return Point(
            home.latitude + share * (place.latitude - home.latitude),
            home.longitude + share * (place.longitude - home.longitude),
        )

    @property
    def asleep_since(self) -> datetime:
        """Since when the child that is asleep sleeps."""
        return (self.trouble.asleep_since or self.now).astimezone(self.zone)

    @property
    def sleep(self) -> Nap | None:
        """The nap of the child that is asleep, as it is now; None where nobody sleeps."""
        member = next((m for m in self.outing.party if m.name == self.trouble.asleep), None)
        if member is None:
            return None
        since = self.asleep_since

        def off(nap: Nap) -> int:
            return abs(minute_of_day(nap.start) - minute_of_day(since))

        usual = min(member.naps, key=off, default=Nap(start=since.time(), minutes=_SLEEP_WITHOUT_A_USUAL_NAP))
        asleep = {"falls_asleep_minutes": 0, "in_car": True, "in_pushchair": True}
        start = since.time().replace(second=0, microsecond=0)
        return usual.model_copy(
            update={"start": start, "slack_minutes": 0, **({} if self.at_home else asleep)}
        )

    @property
    def wakes(self) -> datetime | None:
        """When the child that is asleep wakes if nobody wakes it."""
        return None if self.sleep is None else self.later(self.asleep_since, self.sleep.minutes)

    @property
    def worth_waiting(self) -> bool:
        """Whether there is a sleep that going on at once would end."""
        if self.wakes is None:
            return False
        ends = self.parks if self.driving else self.now
        return self.wakes > ends

    @property
    def tickets(self) -> SunkCost | None:
        """What becomes of the tickets if nobody goes in."""
        if not self.paid:
            return None
        if self.there:
            return SunkCost(self.outing.admission.total, Money.zero(self.currency), Money.zero(self.currency))
        return called_off(self.outing.place, self.outing.admission)

    @property
    def currency(self) -> str:
        """ISO 4217 code of the household."""
        return self.family.household.currency

    def sleeping(self, nappers: Sequence[Napper]) -> tuple[Napper, ...]:
        """The usual naps, the one that is being slept as it is."""
        nap = self.sleep
        if nap is None:
            return tuple(nappers)
        return (
            *(napper for napper in nappers if napper.member != self.trouble.asleep),
            Napper(str(self.trouble.asleep), (nap,)),
        )

    def later(self, moment: datetime, minutes: int) -> datetime:
        """So much later by the clock at home; earlier where below zero [min]."""
        return (moment.astimezone(UTC) + timedelta(minutes=minutes)).astimezone(self.zone)


def clock_there(outing: Outing, clock: time) -> datetime:
    """A time of day at the place; before the family has left home, it is one of the night after."""
    moment = datetime.combine(outing.day, clock, outing.plan.enter.tzinfo)
    return moment if moment >= outing.plan.leave_home else moment + timedelta(days=1)


def minutes_between(start: datetime, end: datetime) -> int:
    """From one moment to another; nought where the second is not later [min]."""
    return max(0, round((end - start).total_seconds() / 60))
