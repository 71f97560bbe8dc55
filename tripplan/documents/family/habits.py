"""How the family travels: leaving and coming home, rests, stops on the way, rush hours, lunch, delays."""

from datetime import time
from decimal import Decimal
from typing import Annotated, Self

from pydantic import Field, model_validator

from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.model import DAY_NAMES, ClockTime, Minutes, Name, Weekday, Written
from tripplan.documents.temperature import Temperature

NIGHT_OVER = time(4)
"""Nobody does anything before this, except come home late."""


class RushHours(Written):
    """Hours in which the roads are full and every drive takes longer."""

    days: Annotated[
        tuple[Weekday, ...],
        Field(min_length=1),
        FieldSpec("on these days", control=Control.SOME, words=DAY_NAMES),
    ] = ("Mo", "Tu", "We", "Th", "Fr")
    """Days of the week; the working days when left out. On a public holiday there is no rush."""
    start: Annotated[ClockTime, FieldSpec("begin at")]
    """When the rush begins, by the clock at home."""
    end: Annotated[ClockTime, FieldSpec("are over at")]
    """When it is over."""
    factor: Annotated[
        Decimal,
        Field(ge=1, le=5, decimal_places=2),
        FieldSpec("how many times as long the same road takes", help="Such as 1.5 for half as long again."),
    ]
    """How many times as long the same road takes."""

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.end <= self.start:
            raise ValueError("the rush is over later on the same day than it begins")
        return self


class PickUp(Written):
    """Somebody who comes along in the car: another family, a grandparent."""

    name: Annotated[
        Name, FieldSpec("Who is picked up", help="A grandparent, another family; empty for nobody.")
    ]
    """Who; it never leaves the household's own records."""
    latitude: Annotated[
        Annotated[float, Field(ge=-90, le=90)] | None, FieldSpec("Where they are picked up, latitude")
    ] = None
    """Where they are picked up, degrees, north positive; the detour is then estimated."""
    longitude: Annotated[
        Annotated[float, Field(ge=-180, le=180)] | None, FieldSpec("Where they are picked up, longitude")
    ] = None
    """Degrees, east positive."""
    extra_km: Annotated[
        float,
        Field(ge=0, le=1000, allow_inf_nan=False),
        FieldSpec("Or how much longer it makes the way", unit=Unit.KILOMETRES, help="Instead of where."),
    ] = 0
    """How much longer it makes the way, where no coordinates are given."""
    extra_minutes: Annotated[
        Minutes,
        FieldSpec("Or how much longer it makes the drive", unit=Unit.MINUTES, help="Instead of where."),
    ] = 0
    """How much longer it makes the drive, where no coordinates are given."""
    stop_minutes: Annotated[
        Minutes,
        FieldSpec(
            "The stop itself takes, belts and seats included",
            unit=Unit.MINUTES,
            help="Ten minutes are common practice.",
        ),
    ] = 10
    """How long the stop takes, belts and seats included. Common practice, no source."""
    brought_home: Annotated[bool, FieldSpec("They are also brought home")] = True
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

    fuel_range_km: Annotated[
        Annotated[float, Field(ge=20, le=5000)] | None,
        FieldSpec(
            "One filling takes you this far",
            unit=Unit.KILOMETRES,
            help="Empty where fuel is no matter, such as for short drives.",
        ),
    ] = None
    """How far the car goes on one filling; where there and back is further, fuel is stopped for."""
    fuel_minutes: Annotated[
        Minutes, FieldSpec("A fuel stop takes", unit=Unit.MINUTES, help="Ten minutes are common practice.")
    ] = 10
    """How long a fuel stop takes. Common practice, no source."""
    pick_up: Annotated[PickUp | None, FieldSpec("Pick-up on the way")] = None
    """Who is picked up on the way there."""
    way_back: Annotated[
        Name, FieldSpec("What the stop on the way back is for", help="An errand, supper, a playground.")
    ] = "stop on the way back"
    """What the stop on the way back is for."""
    way_back_minutes: Annotated[
        Minutes,
        FieldSpec("The stop on the way back takes", unit=Unit.MINUTES, help="Empty or 0 for no such stop."),
    ] = 0
    """How long the stop on the way back takes; none when left out."""


class Habits(Written):
    """How this family travels."""

    earliest_departure: Annotated[ClockTime, FieldSpec("Nobody leaves before")] = time(7, 0)
    """Nobody leaves the house before this."""
    ready_minutes: Annotated[
        Minutes | None,
        FieldSpec(
            "Minutes from waking to 'shoes on'",
            unit=Unit.MINUTES,
            help="Left empty, it goes by number and age of small children: half an hour, a quarter more for "
            "each under three, ten minutes for each under six. Common practice, no source.",
        ),
    ] = None
    """From when the last of the party usually wakes to 'shoes on'; nobody leaves before that. By number and
    age of small children when left out. Common practice, no source."""
    usual_departure: Annotated[
        ClockTime,
        FieldSpec("A good hour to leave home", help="Leaving earlier weighs something; later never does."),
    ] = time(8, 30)
    """Leaving home before this weighs something, see `worth.hour_early_departure`. Common practice, no
    source."""
    home_by: Annotated[ClockTime, FieldSpec("Everybody is home by")] = time(19, 0)
    """Everybody is home again by this; up to 04:00 in the night after the day."""
    load_up_minutes: Annotated[
        Minutes | None,
        FieldSpec(
            "Minutes from 'shoes on' to driving off",
            unit=Unit.MINUTES,
            help="Left empty, it goes by the number of small children.",
        ),
    ] = None
    """From 'shoes on' to the wheels turning; by the number of small children when left out."""
    drive_at_most_minutes: Annotated[
        int,
        Field(ge=10, le=300),
        FieldSpec(
            "Longest stretch of driving",
            unit=Unit.MINUTES,
            help="Usually 120; with small children stop more often.",
        ),
    ] = 120
    """The longest stretch of driving before a rest; never more than 120 is advised, and with a child
    under two (an infant, a new walker) the plan never takes more than 90."""
    drive_in_a_day_at_most_minutes: Annotated[
        Annotated[int, Field(ge=10, le=1440)] | None,
        FieldSpec(
            "Most driving in a day",
            unit=Unit.MINUTES,
            help="There and back together. Left empty, it goes by the age of the youngest: 3 hours under "
            "one, 4 under three, 5 under six, 6 under thirteen, 8 under eighteen, 9 for adults. Common "
            "practice, no source: you know better.",
        ),
    ] = None
    """The most driving in a day, there and back together; by the age of the youngest when left out (under 1:
    180, under 3: 240, under 6: 300, under 13: 360, under 18: 480, adults: 540). Common practice, no
    source."""
    rest_minutes: Annotated[
        int, Field(ge=5, le=120), FieldSpec("Length of a rest", unit=Unit.MINUTES, help="Usually 15.")
    ] = 15
    """How long a rest lasts."""
    detour_percent: Annotated[
        Decimal,
        Field(ge=0, le=50),
        FieldSpec(
            "Extra driving on the way",
            unit=Unit.PERCENT,
            help="A wrong turn, a look for the entrance; stops are told apart below.",
        ),
    ] = Decimal(0)
    """Extra driving the family usually adds on the way."""
    rush_hours: Annotated[tuple[RushHours, ...] | None, FieldSpec("Rush hours")] = None
    """When the roads are full, one `[[habits.rush_hours]]` each. Left out, published figures count where the
    home or the place lies in or near a large city of the United States or is marked `metropolitan`, and none
    elsewhere; an empty list means never."""
    stops: Annotated[Stops, FieldSpec("Stops on the way")] = Stops()
    """What the family stops for on the way, beside rests."""
    lunch: Annotated[ClockTime, FieldSpec("Everybody gets hungry at")] = time(12, 0)
    """When everybody gets hungry."""
    lunch_minutes: Annotated[Minutes, FieldSpec("Lunch takes", unit=Unit.MINUTES)] = 35
    """How long lunch takes."""
    awake_before_bed_minutes: Annotated[
        Minutes,
        FieldSpec(
            "A late nap is over before bedtime by",
            unit=Unit.MINUTES,
            help="So that the child is tired by then; a nap that usually ends later may.",
        ),
    ] = 180
    """A nap that begins later than usual is over this long before the child's bedtime; one that usually ends
    later still may. Common practice, no source."""
    usual_delay_minutes: Annotated[
        int,
        Field(ge=0, le=180),
        FieldSpec(
            "Usual delay in getting off",
            unit=Unit.MINUTES,
            help="On half of all days you get off no later than this after the planned minute.",
        ),
    ] = 5
    """How much later than planned the family gets off: on half of all days no more than this. Common
    practice, no source."""
    never_outdoors_below: Annotated[
        Temperature | None,
        FieldSpec(
            "Never outdoors when it usually feels colder than",
            help="Places that are outdoors are then left out at such hours. Empty for no limit.",
            example="10 F",
        ),
    ] = None
    """Nobody visits a place outdoors at hours that usually feel colder, such as `10 F` or `-12 C`."""
    never_outdoors_above: Annotated[
        Temperature | None,
        FieldSpec(
            "Never outdoors when it usually feels hotter than",
            help="Places that are outdoors are then left out at such hours. Empty for no limit.",
            example="100 F",
        ),
    ] = None
    """Nobody visits a place outdoors at hours that usually feel hotter, such as `100 F` or `38 C`."""
    late_one_day_in_ten_minutes: Annotated[
        int,
        Field(ge=0, le=360),
        FieldSpec(
            "One day in ten, later by more than",
            unit=Unit.MINUTES,
            help="For the chance to make a timed entry and to be home in time.",
        ),
    ] = 20
    """One day in ten it gets off later than planned by more than this. Common practice, no source."""
    delays_from: Annotated[
        str,
        Field(max_length=200),
        FieldSpec(
            "Where both delays come from, and since when",
            help="Such as 'noted at the door since September'; empty if they are just your own guess.",
        ),
    ] = ""
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
