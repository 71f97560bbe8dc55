"""How the family travels: leaving and coming home, rests, stops on the way, rush hours, lunch, delays."""

from datetime import time
from decimal import Decimal
from typing import Annotated, Self

from pydantic import Field, model_validator

from tripplan.planning.model import ClockTime, Minutes, Name, Weekday, Written

NIGHT_OVER = time(4)
"""Nobody does anything before this, except come home late."""


class RushHours(Written):
    """Hours in which the roads are full and every drive takes longer."""

    days: Annotated[tuple[Weekday, ...], Field(min_length=1)] = ("Mo", "Tu", "We", "Th", "Fr")
    """Days of the week; the working days when left out. On a public holiday there is no rush."""
    start: ClockTime
    """When the rush begins, by the clock at home."""
    end: ClockTime
    """When it is over."""
    factor: Annotated[Decimal, Field(ge=1, le=5, decimal_places=2)]
    """How many times as long the same road takes."""

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.end <= self.start:
            raise ValueError("the rush is over later on the same day than it begins")
        return self


class PickUp(Written):
    """Somebody who comes along in the car: another family, a grandparent."""

    name: Name
    """Who; it never leaves the household's own records."""
    latitude: Annotated[float, Field(ge=-90, le=90)] | None = None
    """Where they are picked up, degrees, north positive; the detour is then estimated."""
    longitude: Annotated[float, Field(ge=-180, le=180)] | None = None
    """Degrees, east positive."""
    extra_km: Annotated[float, Field(ge=0, le=1000, allow_inf_nan=False)] = 0
    """How much longer it makes the way, where no coordinates are given [km]."""
    extra_minutes: Minutes = 0
    """How much longer it makes the drive, where no coordinates are given [min]."""
    stop_minutes: Minutes = 10
    """How long the stop takes, belts and seats included [min]. Common practice, no source."""
    brought_home: bool = True
    """Whether they are also brought home, by the same detour and as long a stop."""

    @model_validator(mode="after")
    def _one_way_to_say_where(self) -> Self:
        if (self.latitude is None) != (self.longitude is None):
            raise ValueError("latitude and longitude come together or not at all")
        if self.latitude is not None and (self.extra_km or self.extra_minutes):
            raise ValueError("give coordinates, or extra km and minutes, not both")
        return self


class Stops(Written):
    """What the family stops for on the way, beside rests."""

    fuel_range_km: Annotated[float, Field(ge=20, le=5000)] | None = None
    """How far the car goes on one filling; where there and back is further, fuel is stopped for [km]."""
    fuel_minutes: Minutes = 10
    """How long a fuel stop takes [min]. Common practice, no source."""
    pick_up: PickUp | None = None
    """Who is picked up on the way there."""
    way_back: Name = "stop on the way back"
    """What the stop on the way back is for."""
    way_back_minutes: Minutes = 0
    """How long the stop on the way back takes; none when left out [min]."""


class Habits(Written):
    """How this family travels."""

    earliest_departure: ClockTime = time(7, 0)
    """Nobody leaves the house before this."""
    home_by: ClockTime = time(19, 0)
    """Everybody is home again by this; up to 04:00 in the night after the day."""
    load_up_minutes: Minutes | None = None
    """From 'shoes on' to the wheels turning; by the number of small children when left out [min]."""
    drive_at_most_minutes: Annotated[int, Field(ge=10, le=300)] = 120
    """The longest stretch of driving before a rest [min]; never more than 120 is advised, and with a child
    under two (an infant, a new walker) the plan never takes more than 90."""
    rest_minutes: Annotated[int, Field(ge=5, le=120)] = 15
    """How long a rest lasts [min]."""
    detour_percent: Annotated[Decimal, Field(ge=0, le=50)] = Decimal(0)
    """Extra driving the family usually adds on the way [%]."""
    rush_hours: tuple[RushHours, ...] | None = None
    """When the roads are full, one `[[habits.rush_hours]]` each. Left out, published figures count where the
    home or the place is marked `metropolitan`, and none elsewhere; an empty list means never."""
    stops: Stops = Stops()
    """What the family stops for on the way, beside rests."""
    lunch: ClockTime = time(12, 0)
    """When everybody gets hungry."""
    lunch_minutes: Minutes = 35
    """How long lunch takes [min]."""
    awake_before_bed_minutes: Minutes = 180
    """A nap that begins later than usual is over this long before the child's bedtime; one that usually ends
    later still may [min]. Common practice, no source."""
    usual_delay_minutes: Annotated[int, Field(ge=0, le=180)] = 5
    """How much later than planned the family gets off: on half of all days no more than this [min]. Common
    practice, no source."""
    late_one_day_in_ten_minutes: Annotated[int, Field(ge=0, le=360)] = 20
    """One day in ten it gets off later than planned by more than this [min]. Common practice, no source."""
    delays_from: Annotated[str, Field(max_length=200)] = ""
    """Where both delays come from, in words; the parent's own figures when left out."""

    @model_validator(mode="after")
    def _delays_in_order(self) -> Self:
        if self.late_one_day_in_ten_minutes < self.usual_delay_minutes:
            raise ValueError("the delay of one day in ten is no less than the usual one")
        return self

    @property
    def home_after_midnight(self) -> bool:
        """Whether `home_by` is in the night after the day."""
        return self.home_by <= NIGHT_OVER and self.home_by < self.earliest_departure
