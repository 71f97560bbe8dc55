"""The household: its people and their sleep, the car, the home, and what the parent cares about."""

import calendar
import re
from collections import Counter
from datetime import date, time
from decimal import Decimal
from enum import StrEnum
from typing import Annotated, Literal, Self

from babel.numbers import list_currencies
from pydantic import (
    AfterValidator,
    BeforeValidator,
    Field,
    PlainSerializer,
    ValidationInfo,
    WithJsonSchema,
    model_validator,
)

from tripplan.planning.ages import ADULT, MONTHS, completed_months
from tripplan.planning.model import ClockTime, Written
from tripplan.planning.money import minor_digits
from tripplan.planning.where import Where

LONGEST_NAME = 80
Name = Annotated[str, Field(min_length=1, max_length=LONGEST_NAME)]
Minutes = Annotated[int, Field(ge=0, le=24 * 60)]


def _known_currency(code: str) -> str:
    if code not in list_currencies():
        raise ValueError("a currency is an ISO 4217 code of three letters, such as USD")
    return code


Currency = Annotated[
    str, AfterValidator(_known_currency), WithJsonSchema({"type": "string", "pattern": "^[A-Z]{3}$"})
]


def _read_price(value: object, info: ValidationInfo) -> object:
    if isinstance(value, bool):
        raise ValueError("a price is a number such as 12.50")  # noqa: TRY004 - pydantic wants it
    if not isinstance(value, str):
        return value
    match = re.fullmatch(r"(-?\d+(?:\.\d+)?)(?:\s*([A-Za-z]{3}))?", value.strip())
    if not match:
        raise ValueError("a price is a number such as 12.50, or a text such as '12.50 USD'")
    amount, stated = match.groups()
    if stated:
        if info.context is None:
            raise ValueError("a currency can be stated beside a price only in a file that names its own")
        expected = info.context["currency"]
        if expected is not None and stated.upper() != expected:
            raise ValueError(f"the price is in {stated.upper()}, but the currency given above is {expected}")
    return Decimal(amount)


def _payable(amount: Decimal, info: ValidationInfo) -> Decimal:
    currency = info.context["currency"] if info.context else None
    if currency is None:
        return amount
    exponent = amount.normalize().as_tuple().exponent
    digits = minor_digits(currency)
    if isinstance(exponent, int) and -exponent > digits:
        raise ValueError(f"{currency} is paid with at most {digits} digits after the point")
    return amount


_PRICE_SCHEMA = WithJsonSchema(
    {
        "anyOf": [
            {"type": "number", "minimum": 0, "maximum": 100_000},
            {"type": "string", "pattern": r"^\d+(\.\d+)?( *[A-Za-z]{3})?$"},
        ]
    }
)

UnitPrice = Annotated[
    Decimal, BeforeValidator(_read_price), Field(ge=0, le=100_000, allow_inf_nan=False), _PRICE_SCHEMA
]
"""Money per gallon, mile or the like, which may have more digits than can be paid.

Where the validation context carries `currency` (ISO 4217 or None), a currency stated beside it must agree.
"""
Price = Annotated[
    Decimal,
    BeforeValidator(_read_price),
    Field(ge=0, le=100_000, allow_inf_nan=False),
    AfterValidator(_payable),
    _PRICE_SCHEMA,
]
"""Money as it is paid: a `UnitPrice` with no more digits than the context's currency has."""


class BirthDate(Written):
    """A birth date, or only its year and month."""

    year: Annotated[int, Field(ge=1900, le=2200)]
    """Year."""
    month: Annotated[int, Field(ge=1, le=12)]
    """Month, 1 to 12."""
    day: Annotated[int, Field(ge=1, le=31)] | None = None
    """Day of the month; unknown when left out."""

    @model_validator(mode="after")
    def _on_the_calendar(self) -> Self:
        if self.day is not None and self.day > calendar.monthrange(self.year, self.month)[1]:
            raise ValueError(f"{self.year}-{self.month:02} has no day {self.day}")
        return self

    @property
    def earliest(self) -> date:
        """The first day the birth may have been on; ages count from here, so a price is never too low."""
        return date(self.year, self.month, self.day or 1)

    @property
    def latest(self) -> date:
        """The last day the birth may have been on."""
        return date(self.year, self.month, self.day or calendar.monthrange(self.year, self.month)[1])

    def __str__(self) -> str:
        written = f"{self.year}-{self.month:02}"
        return written if self.day is None else f"{written}-{self.day:02}"


def _read_birth_date(value: object) -> object:
    if isinstance(value, date):
        return {"year": value.year, "month": value.month, "day": value.day}
    if not isinstance(value, BirthDate | dict):
        match = re.fullmatch(r"(\d{4})-(\d{2})(?:-(\d{2}))?", value.strip() if isinstance(value, str) else "")
        if not match:
            raise ValueError("a birth date reads like 2022-03-14, or 2022-03 where only the month is given")
        return {"year": int(match[1]), "month": int(match[2]), "day": int(match[3]) if match[3] else None}
    return value


Born = Annotated[
    BirthDate,
    BeforeValidator(_read_birth_date),
    PlainSerializer(str, return_type=str),
    WithJsonSchema(
        {"type": "string", "pattern": r"^\d{4}-\d{2}(-\d{2})?$", "examples": ["2022-03-14", "2022-03"]}
    ),
]


class Nap(Written):
    """A usual midday sleep."""

    start: ClockTime
    """When it usually begins, by the clock at home."""
    minutes: Annotated[int, Field(ge=5, le=300)]
    """How long it usually lasts [min]."""
    slack_minutes: Minutes = 30
    """How much earlier or later it may begin without harm [min]."""
    in_car: bool = True
    """Whether the child sleeps in a moving car."""
    in_pushchair: bool = False
    """Whether the child sleeps in a pushchair or carrier."""
    stays_asleep_when_moved: bool = False
    """Whether the child sleeps on when it is lifted out of the car after arriving, into the pushchair (where
    the place allows one) or into bed at home; else a sleep in the car ends on arrival. No source, the
    parent's own to say."""
    falls_asleep_minutes: Minutes = 10
    """How long the child takes to fall asleep in the car or pushchair [min]."""
    shortest_minutes: Minutes = 20
    """The shortest sleep that counts [min]."""


class Member(Written):
    """One person of the household or a guest."""

    name: Name
    """How the family calls the person; it never leaves the household's own records."""
    born: Born
    """Birth date, or only year and month; age is always the age on the day of the visit."""
    statuses: tuple[Name, ...] = ()
    """What may change a ticket's price: educator, student, benefit card, resident of ..., member of ..."""
    naps: tuple[Nap, ...] = ()
    """The usual naps, in order."""
    wakes: ClockTime = time(6, 30)
    """When the person usually wakes."""
    bed: ClockTime = time(19, 30)
    """When the person should be in bed."""
    patience_minutes: Annotated[int, Field(ge=5, le=600)] | None = None
    """How long the person bears driving at a stretch [min]; by age when left out (under 3: 60, under 7: 90,
    under 18: 120; grown-ups any time). What goes beyond it weighs. Common practice, no source."""
    toilet_minutes: Annotated[int, Field(ge=15, le=600)] | None = None
    """How long the person, such as a child newly out of nappies, holds out between two toilets [min]; the
    drive rests at least that often. No limit when left out."""
    needs: str = ""
    """What to think of: allergies, medicine, a favourite toy; for the parent's eyes."""

    def months_on(self, day: date) -> int:
        """Age on a day [completed months]; with no birth day known, from the first of the birth month."""
        return completed_months(self.born.earliest, day)

    def age_in_doubt_on(self, day: date) -> bool:
        """Whether the missing birth day could change the completed years on that day."""
        youngest = completed_months(self.born.latest, day)
        return youngest // 12 != self.months_on(day) // 12

    def aged(self, day: date, when: date) -> "Member":
        """The same person, but on `day` as old as really on `when` [completed months]."""
        months = self.months_on(when)
        year, month = divmod(day.year * MONTHS + day.month - 1 - months, MONTHS)
        return self.model_copy(update={"born": BirthDate(year=year, month=month + 1, day=1)})

    def is_adult_on(self, day: date) -> bool:
        """Whether the person is 18 or older on a day."""
        return self.months_on(day) in ADULT


class Fuel(StrEnum):
    """How a car's running cost is worked out."""

    MILES_PER_US_GALLON = "mpg"
    LITRES_PER_100_KM = "L/100km"
    KWH_PER_100_KM = "kWh/100km"
    RATE_PER_MILE = "per mile"
    RATE_PER_KM = "per km"


class Car(Written):
    """The family's car and what driving it costs."""

    name: Name = "car"
    """How the family calls it."""
    seats: Annotated[int, Field(ge=1, le=60)] = 5
    """Places with a belt, the driver's included."""
    fuel: Fuel
    """How the running cost is given: by consumption, or by a rate per distance."""
    consumption: Annotated[Decimal, Field(gt=0, le=200)] | None = None
    """Consumption in the unit that `fuel` names; left out where a rate is given."""
    consumption_from: Annotated[str, Field(max_length=200)] = ""
    """Where the consumption comes from, such as 'the car's display'; the parent's figure when left out."""
    fuel_price: UnitPrice | None = None
    """Price per US gallon (mpg), per litre (L/100km) or per kWh; unknown when left out."""
    fuel_price_give_or_take_percent: Annotated[Decimal, Field(ge=0, le=90)] = Decimal(8)
    """How far the price at the pump may be off by the day of the visit [%]."""
    rate: UnitPrice | None = None
    """Cost per mile or per km, for the two rate kinds."""

    @model_validator(mode="after")
    def _complete(self) -> Self:
        by_rate = self.fuel in (Fuel.RATE_PER_MILE, Fuel.RATE_PER_KM)
        if by_rate and (self.rate is None or self.consumption is not None):
            raise ValueError(f"fuel '{self.fuel}' needs a rate and no consumption")
        if not by_rate and (self.consumption is None or self.rate is not None):
            raise ValueError(f"fuel '{self.fuel}' needs a consumption and no rate")
        return self


class HeldPass(Written):
    """An annual pass the family already owns."""

    place: Name
    """The id of the place card whose pass it is."""
    offer: Name
    """The name of the pass on that card."""
    holders: tuple[Name, ...]
    """The members it is written out to."""
    valid_until: date
    """The last day it counts."""


class Food(Written):
    """What eating costs on an outing, per person."""

    way: Literal["packed", "bought"] = "packed"
    """Whether food is packed at home or bought there."""
    packed_adult: Price = Decimal("3.00")
    """Packed at home, for an adult."""
    packed_child: Price = Decimal("2.00")
    """Packed at home, for a child."""
    bought_adult: Price = Decimal("14.00")
    """Bought there, for an adult."""
    bought_child: Price = Decimal("9.00")
    """Bought there, for a child."""
    packed_from: Annotated[str, Field(max_length=200)] = ""
    """Where the two figures for packed food come from; the parent's own when left out."""
    bought_from: Annotated[str, Field(max_length=200)] = ""
    """Where the two figures for bought food come from; the parent's own when left out."""
    free_under_months: Annotated[int, Field(ge=0, le=120)] = 12
    """Younger children eat what comes along anyway [months]."""


Weekday = Literal["Mo", "Tu", "We", "Th", "Fr", "Sa", "Su"]


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


NIGHT_OVER = time(4)
"""Nobody does anything before this, except come home late."""


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


class Worth(Written):
    """What a nuisance is worth to this parent, so that days can be weighed against money."""

    lost_nap_hour: Price = Decimal("12.00")
    """Paying this much to save one hour of a child's nap would be fair."""
    full_house: Price = Decimal("20.00")
    """Paying this much to avoid a day that is certainly among the busiest would be fair."""
    hour_in_car: Price = Decimal("6.00")
    """Paying this much to spend an hour less in the car would be fair."""
    missed_hour_there: Price = Decimal("10.00")
    """Paying this much for an hour more at the place, up to a comfortable stay, would be fair."""
    hour_beyond_comfortable: Price = Decimal("2.00")
    """Paying this much to be back an hour earlier once the comfortable stay is over would be fair: everybody
    is tired by then. Common practice, no source."""
    hour_late_lunch: Price = Decimal("6.00")
    """Paying this much to eat an hour earlier would be fair, where lunch on an outing comes after its usual
    time. Common practice, no source."""
    missed_entry: Price = Decimal("30.00")
    """Paying this much not to come too late for a timed entry, or for the last one, would be fair; its
    chance weighs a share of it."""
    missed_show: Price = Decimal("10.00")
    """Paying this much to see a show that is worth being there for would be fair."""
    hour_past_bedtime: Price = Decimal("12.00")
    """Paying this much to be home an hour less after the first bedtime would be fair."""
    hour_past_home_by: Price = Decimal("30.00")
    """Paying this much to be home an hour less after `home_by` would be fair. Every plan is home by then if
    nothing goes wrong; this is for the days on which something does. At three times a missed hour at the
    place, a stay is cut short until the family is home in time on two days of three. Common practice, no
    source."""
    hour_among_classes: Price = Decimal("4.00")
    """Paying this much to spend an hour less at the place while school classes fill it would be fair."""
    quiet_hour: Price = Decimal(0)
    """Paying this much to spend an hour of a place's quiet time there would be fair."""
    hour_past_patience: Price = Decimal("12.00")
    """Paying this much to drive an hour less at a stretch than the children bear would be fair."""


class Household(Written):
    """Everything the plan needs to know about one family."""

    format: Literal[1] = 1
    """Version of this file's format."""
    name: Name
    """What the household is called on the screens."""
    home: Where
    """Where outings start and end."""
    currency: Currency
    """ISO 4217 code of the household's money."""
    units: Literal["mi", "km"] = "km"
    """The unit that distances are shown in."""
    members: Annotated[tuple[Member, ...], Field(min_length=1, max_length=60)]
    """The people, one `[[members]]` each."""
    car: Car | None = None
    """The car; driving costs stay unknown when left out."""
    passes: tuple[HeldPass, ...] = ()
    """Annual passes the family already owns."""
    food: Food = Food()
    """What eating costs."""
    habits: Habits = Habits()
    """How the family travels."""
    worth: Worth = Worth()
    """What a nuisance is worth to the parent."""
    reserve_percent: Annotated[Decimal, Field(ge=0, le=100)] = Decimal(10)
    """Set aside for what nobody thought of, as a share of the rest [%]."""
    treats_per_child: Price = Decimal(0)
    """Souvenirs and treats the parent plans for, per child."""

    @model_validator(mode="after")
    def _names_fit(self) -> Self:
        twice = [name for name, count in Counter(m.name for m in self.members).items() if count > 1]
        if twice:
            raise ValueError(f"every member needs a name of their own; twice: {', '.join(twice)}")
        unknown = {h for held in self.passes for h in held.holders} - {m.name for m in self.members}
        if unknown:
            raise ValueError(f"a pass names holders who are not members: {', '.join(sorted(unknown))}")
        return self

    def member(self, name: str) -> Member | None:
        """The member with that name, if there is one."""
        return next((m for m in self.members if m.name == name), None)
