"""What has gone wrong with a day, and where the party is by then."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from enum import StrEnum
from functools import cached_property
from zoneinfo import ZoneInfo

from tripplan.errors import PlanError, UnknownName
from tripplan.planning.clocks import minute_of_day
from tripplan.planning.day import Napper
from tripplan.planning.household import Nap
from tripplan.planning.money import Money
from tripplan.planning.outing import Family, Outing
from tripplan.planning.sunk import Paid, called_off
from tripplan.planning.where import Point


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


_SLEEP_WITHOUT_A_USUAL_NAP = 60
"""How long a child sleeps that has no usual nap. Common practice, no source [min]."""


@dataclass(frozen=True)
class Here:
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
    def paid(self) -> bool:
        """Whether the tickets are paid for."""
        return self.trouble.tickets_paid or self.there

    @property
    def left_home(self) -> datetime:
        """When the party leaves, or has left."""
        return _later(self.outing.plan.leave_home, self.trouble.late_minutes, self.zone)

    @property
    def arrives(self) -> datetime:
        """When it is, or was, at the place."""
        return _later(self.left_home, self.outing.way_there.minutes, self.zone)

    @property
    def parks(self) -> datetime:
        """When the wheels stand still at the place, and a child in the car is woken."""
        return _later(self.arrives, -self.outing.way_there.unload_minutes, self.zone)

    @property
    def driven_minutes(self) -> int:
        """Driving behind it [min]."""
        drive = self.outing.way_there.drive_minutes
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
        leg = self.outing.way_there
        halts = sum(halt.minutes for halt in leg.halts if halt.after_minutes < self.driven_minutes)
        return _later(self.left_home, leg.load_up_minutes + self.driven_minutes + halts, self.zone)

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
        return None if self.sleep is None else _later(self.asleep_since, self.sleep.minutes, self.zone)

    @property
    def worth_waiting(self) -> bool:
        """Whether there is a sleep that going on at once would end."""
        if self.wakes is None:
            return False
        ends = self.parks if self.trouble.where is Whereabouts.ON_THE_WAY else self.now
        return self.wakes > ends

    @property
    def tickets(self) -> Paid | None:
        """What becomes of the tickets if nobody goes in."""
        if not self.paid:
            return None
        if self.there:
            return Paid(self.outing.admission.total, Money.zero(self.currency), Money.zero(self.currency))
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


def _later(moment: datetime, minutes: int, zone: ZoneInfo) -> datetime:
    return (moment.astimezone(UTC) + timedelta(minutes=minutes)).astimezone(zone)
