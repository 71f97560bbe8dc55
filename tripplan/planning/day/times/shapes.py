"""What is asked about a day, and what a day plan is."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from enum import StrEnum
from zoneinfo import ZoneInfo

from tripplan.documents.calendars.calendars import Busy
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.member import Nap, SleepsIn
from tripplan.documents.family.worth import Worth
from tripplan.errors import PlanError
from tripplan.language.sentences import Fact
from tripplan.planning.day.times.hourly_money import HourlyMoney
from tripplan.planning.day.times.hourly_weather import HourlyWeather
from tripplan.planning.opening.hours import DayHours
from tripplan.planning.travel.drive import Journey
from tripplan.values.money import Money


class StepKind(StrEnum):
    """What a stretch of the day is spent on."""

    LOAD_UP = "load up"
    DRIVE = "drive"
    REST = "rest"
    STOP = "stop"
    UNLOAD = "unload"
    VISIT = "visit"
    WAIT = "wait"
    LUNCH = "lunch"
    SHOW = "show"


class LunchPlace(StrEnum):
    """Where the family has lunch on a day out."""

    HOME = "at home"
    CAR = "on the way"
    OUTSIDE = "outside"
    THERE = "there"


@dataclass(frozen=True)
class PlannedLunch:
    """Where and when the family has lunch.

    Attributes:
        place: where.
        start, end: zone-aware; the home's zone at home and on the road, else the place's.
    """

    place: LunchPlace
    start: datetime
    end: datetime


@dataclass(frozen=True)
class Step:
    """One stretch of the day.

    Attributes:
        kind: what it is spent on.
        start, end: zone-aware; the home's zone on the road, the place's zone at the place.
        label: the same for people, such as which way is driven.
    """

    kind: StepKind
    start: datetime
    end: datetime
    label: Fact


@dataclass(frozen=True)
class NapOutcome:
    """What a day plan leaves of one child's usual nap.

    Attributes:
        member: the child's name.
        usual_start: when the nap usually begins, by the clock at home.
        usual_minutes: the nap's usual length [min].
        kept: kept minutes by where they happen [min]; never more than the usual length together.
        asleep: when the child sleeps in this plan, as near to the usual time as can be; None if it does not.
    """

    member: str
    usual_start: datetime
    usual_minutes: int
    kept: tuple[tuple[SleepsIn, int], ...]
    asleep: tuple[datetime, datetime] | None

    @property
    def usual_end(self) -> datetime:
        """When the nap is usually over."""
        zone = self.usual_start.tzinfo
        return (self.usual_start.astimezone(UTC) + timedelta(minutes=self.usual_minutes)).astimezone(zone)

    @property
    def slept(self) -> Iterator[tuple[SleepsIn, datetime, datetime]]:
        """Where the child sleeps from when to when, one after the other."""
        start = self.asleep[0] if self.asleep is not None else self.usual_start
        for place, minutes in self.kept:
            end = (start.astimezone(UTC) + timedelta(minutes=minutes)).astimezone(start.tzinfo)
            yield place, start, end
            start = end

    @property
    def kept_minutes(self) -> int:
        """Kept in all [min]."""
        return sum(minutes for _, minutes in self.kept)

    @property
    def lost_minutes(self) -> int:
        """Lost in all [min]."""
        return self.usual_minutes - self.kept_minutes


@dataclass(frozen=True)
class ShowOutcome:
    """What a day plan leaves of one show.

    Attributes:
        name: the show.
        seen: when the performance is that the plan has time for; None if it has time for none.
        missed_chance: how likely the party comes too late for it all the same; one if none is planned [0-1].
        asleep: the children that sleep through half of it or more, and so do not see it.
    """

    name: str
    seen: tuple[datetime, datetime] | None
    missed_chance: float
    asleep: tuple[str, ...] = ()


@dataclass(frozen=True)
class NuisanceCost:
    """One nuisance of a plan.

    Attributes:
        name: the nuisance.
        said: how much of it there is.
        minutes: likewise in minutes; None where it is a chance [min].
        felt: what it weighs; exact, not rounded to a coin.
    """

    name: Fact
    said: Fact
    minutes: int | None
    felt: Money


@dataclass(frozen=True)
class DayPlan:
    """One way to spend the day.

    Attributes:
        leave_home: when load-up begins.
        enter: when the party is let in.
        leave_place: when load-up for the way home begins.
        home: when everybody is home again.
        steps: the whole day, in order, without gaps between `leave_home` and `home`.
        naps: one outcome per usual nap.
        visit_minutes: time inside, without a lunch at the place [min].
        awake_minutes: how much of it the children are awake, on average; a child that sleeps through it does
            not see it [min].
        car_minutes: time driving, both ways [min].
        felt: what the nuisances of this plan weigh (lost nap, car, waiting, stay too short, the risk of being
            late, ...) in money, rounded to the smallest coin.
        parts: the nuisances, those that weigh nothing left out; together they are `felt` before rounding.
        shows: one outcome per show that is worth being there for.
        spent: what the outing costs in all with these hours; None where money does not count.
        lunch: where and when lunch is; None where nobody has any.
    """

    leave_home: datetime
    enter: datetime
    leave_place: datetime
    home: datetime
    steps: tuple[Step, ...]
    naps: tuple[NapOutcome, ...]
    visit_minutes: int
    awake_minutes: int
    car_minutes: int
    felt: Money
    parts: tuple[NuisanceCost, ...] = ()
    shows: tuple[ShowOutcome, ...] = ()
    spent: Money | None = None
    lunch: PlannedLunch | None = None

    @property
    def weighs(self) -> Money:
        """Money and nuisances together, which is what the search minimises."""
        return self.felt if self.spent is None else self.felt + self.spent

    @property
    def drive_off(self) -> datetime:
        """When the wheels turn: load-up is over."""
        return next(step.start for step in self.steps if step.kind is not StepKind.LOAD_UP)

    @property
    def lunch_out(self) -> bool:
        """Whether lunch is eaten away from home."""
        return self.lunch is not None and self.lunch.place is not LunchPlace.HOME

    @property
    def lunch_there(self) -> bool:
        """Whether lunch is eaten at the place, as that allows it, instead of packed for the way."""
        return self.lunch is not None and self.lunch.place is LunchPlace.THERE


@dataclass(frozen=True)
class LeaveWindow:
    """A span of departure times that are all about equally good.

    Attributes:
        first, last: the earliest and latest departure in it.
        best: the best plan that leaves within it.
    """

    first: datetime
    last: datetime
    best: DayPlan


@dataclass(frozen=True)
class DaySearch:
    """What the search found.

    Attributes:
        best: of the plans with about the least generalized cost, money included, one that leaves home no
            earlier than need be; of these the one that weighs the least, then the one that is away the
            shortest, then the earliest; None on an impossible day.
        windows: spans of departures within a small loss of the best, in order of time, at most five.
        collisions: on an impossible day, the limits that collide.
    """

    best: DayPlan | None
    windows: tuple[LeaveWindow, ...]
    collisions: tuple[Fact, ...]


@dataclass(frozen=True)
class Napper:
    """A party member with usual naps.

    Attributes:
        member: the child's name.
        naps: the usual naps, by the clock at home.
        latest_end: a nap that is shifted is over by then, by the clock at home, so that the child is tired at
            bedtime; a nap that usually ends later may end as usual. None for no such limit.
    """

    member: str
    naps: tuple[Nap, ...]
    latest_end: time | None = None


@dataclass(frozen=True)
class DayInProgress:
    """What can no longer be changed on a day that has begun.

    Attributes:
        left_home: when load-up at home began, or begins for certain.
        now: nobody leaves the place before.
    """

    left_home: datetime
    now: datetime


@dataclass(frozen=True)
class DayQuestion:
    """Everything the search needs to know about one day.

    Attributes:
        day: the date.
        home_zone: whose clock the household's times are read by.
        way_there, way_home: the two legs; how long one takes may depend on when it begins.
        hours: when the place can be visited; must be open.
        nappers: the party's usual naps.
        pushchairs: whether a pushchair can be used at the place.
        shortest_minutes: a shorter visit is not allowed [min].
        comfortable_minutes: a longer visit tires more than it is worth [min].
        habits: earliest departure, home by, lunch.
        worth: what the nuisances weigh.
        busy: times that the day, from load-up to home again, may not touch.
        currency: ISO 4217 code of `worth`.
        grid_minutes: departures and leaving times are tried on this grid [min].
        last_wakes: when the last of the party usually wakes, by the clock at home; nobody is loaded up
            before, nor before `ready_minutes` are over. Left out, only `habits` decides.
        first_bed: when the first of the party should be in bed, by the clock at home; no limit, but what
            being late is measured by. None where nobody said.
        begun: on a day that has begun, the departure that is settled; None while all is open.
        patience_minutes: how long at a stretch the most restless of the party bears driving [min]; None for
            any time.
        ready_minutes: from when the last of the party wakes to 'shoes on' [min].
        most_driving_minutes: more driving in a day, there and back together, is not allowed [min]; None for
            any amount. A day that has begun has no such limit.
        eats_there: whether lunch can be had inside, own food or food that is sold.
        own_food: whether own food may be eaten inside.
        children: how many of the party are under age; those who sleep at the place are a share of them.
        money: what the outing costs by the hour; None where money does not count.
        weather: what being outdoors weighs by the hour, one kind; None where weather does not count.
    """

    day: date
    home_zone: ZoneInfo
    way_there: Journey
    way_home: Journey
    hours: DayHours
    nappers: tuple[Napper, ...]
    pushchairs: bool
    shortest_minutes: int
    comfortable_minutes: int
    habits: Habits
    worth: Worth
    busy: tuple[Busy, ...]
    currency: str
    grid_minutes: int = 5
    last_wakes: time | None = None
    first_bed: time | None = None
    begun: DayInProgress | None = None
    patience_minutes: int | None = None
    ready_minutes: int = 0
    most_driving_minutes: int | None = None
    children: int = 0
    money: HourlyMoney | None = None
    eats_there: bool = True
    own_food: bool = True
    weather: HourlyWeather | None = None

    @property
    def place_zone(self) -> tzinfo:
        """Whose clock the hours are read by.

        Raises:
            PlanError: the place is not open that day, or its hours have no time zone.
        """
        zone = self.hours.spans[0].opens.tzinfo if self.hours.spans else None
        if zone is None:
            raise PlanError("the hours of the place have no time zone")
        return zone
