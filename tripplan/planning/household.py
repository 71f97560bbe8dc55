"""The household: its people and their sleep, the car, the home, and what the parent cares about."""

import calendar
import re
from collections import Counter
from datetime import date, time
from decimal import Decimal
from enum import StrEnum
from typing import Annotated, Literal, Self

from babel.numbers import list_currencies
from pydantic import AfterValidator, BeforeValidator, Field, PlainSerializer, model_validator

from tripplan.planning.ages import ADULT, completed_months
from tripplan.planning.model import Written
from tripplan.planning.where import Where

Name = Annotated[str, Field(min_length=1, max_length=80)]
Minutes = Annotated[int, Field(ge=0, le=24 * 60)]
Price = Annotated[Decimal, Field(ge=0, le=100_000, allow_inf_nan=False)]


def _known_currency(code: str) -> str:
    if code not in list_currencies():
        raise ValueError("a currency is an ISO 4217 code of three letters, such as USD")
    return code


Currency = Annotated[str, AfterValidator(_known_currency)]


class BirthDate(Written):
    """A birth date, or only its year and month."""

    year: Annotated[int, Field(ge=1900, le=2200)]
    month: Annotated[int, Field(ge=1, le=12)]
    day: Annotated[int, Field(ge=1, le=31)] | None = None

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
        return BirthDate(year=value.year, month=value.month, day=value.day)
    if isinstance(value, str):
        match = re.fullmatch(r"(\d{4})-(\d{2})(?:-(\d{2}))?", value.strip())
        if not match:
            raise ValueError("a birth date reads like 2022-03-14, or 2022-03 where only the month is given")
        return BirthDate(year=int(match[1]), month=int(match[2]), day=int(match[3]) if match[3] else None)
    return value


Born = Annotated[BirthDate, BeforeValidator(_read_birth_date), PlainSerializer(str, return_type=str)]


class Nap(Written):
    """A usual midday sleep."""

    start: time
    """When it usually begins, by the clock at home."""
    minutes: Annotated[int, Field(ge=5, le=300)]
    """How long it usually lasts [min]."""
    slack_minutes: Minutes = 30
    """How much earlier or later it may begin without harm [min]."""
    in_car: bool = True
    """Whether the child sleeps in a moving car."""
    in_pushchair: bool = False
    """Whether the child sleeps in a pushchair or carrier."""
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
    wakes: time = time(6, 30)
    """When the person usually wakes."""
    bed: time = time(19, 30)
    """When the person should be in bed."""
    needs: str = ""
    """What to think of: allergies, medicine, a favourite toy; for the parent's eyes."""

    def months_on(self, day: date) -> int:
        """Age on a day [completed months]; with no birth day known, from the first of the birth month."""
        return completed_months(self.born.earliest, day)

    def age_in_doubt_on(self, day: date) -> bool:
        """Whether the missing birth day could change the completed years on that day."""
        youngest = completed_months(self.born.latest, day)
        return youngest // 12 != self.months_on(day) // 12

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
    seats: Annotated[int, Field(ge=1, le=60)] = 5
    """Places with a belt, the driver's included."""
    fuel: Fuel
    """How the running cost is given: by consumption, or by a rate per distance."""
    consumption: Annotated[Decimal, Field(gt=0, le=200)] | None = None
    """Consumption in the unit that `fuel` names; left out where a rate is given."""
    fuel_price: Price | None = None
    """Price per US gallon (mpg), per litre (L/100km) or per kWh; unknown when left out."""
    fuel_price_give_or_take_percent: Annotated[Decimal, Field(ge=0, le=90)] = Decimal(8)
    """How far the price at the pump may be off by the day of the visit [%]."""
    rate: Price | None = None
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
    packed_child: Price = Decimal("2.00")
    bought_adult: Price = Decimal("14.00")
    bought_child: Price = Decimal("9.00")
    free_under_months: Annotated[int, Field(ge=0, le=120)] = 12
    """Younger children eat what comes along anyway [months]."""


class Habits(Written):
    """How this family travels."""

    earliest_departure: time = time(7, 0)
    """Nobody leaves the house before this."""
    home_by: time = time(19, 0)
    """Everybody is home again by this."""
    load_up_minutes: Minutes | None = None
    """From 'shoes on' to the wheels turning; by the number of small children when left out [min]."""
    drive_at_most_minutes: Annotated[int, Field(ge=10, le=300)] = 120
    """The longest stretch of driving before a rest [min]; never more than 120 is advised."""
    rest_minutes: Annotated[int, Field(ge=5, le=120)] = 15
    """How long a rest lasts [min]."""
    detour_percent: Annotated[Decimal, Field(ge=0, le=50)] = Decimal(0)
    """Extra driving the family usually adds on the way [%]."""
    lunch: time = time(12, 0)
    """When everybody gets hungry."""
    lunch_minutes: Minutes = 35
    """How long lunch takes [min]."""


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
    car: Car | None = None
    passes: tuple[HeldPass, ...] = ()
    food: Food = Food()
    habits: Habits = Habits()
    worth: Worth = Worth()
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
