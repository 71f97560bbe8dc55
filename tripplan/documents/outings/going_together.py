"""Who comes along from other households, as a parent writes it: by age, without names of children."""

import re
from collections import Counter
from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, PlainSerializer, WithJsonSchema, model_validator

from tripplan.documents.family.birth_date import BirthDate
from tripplan.documents.family.member import Member
from tripplan.documents.model import Name, Written
from tripplan.documents.written_money import Currency, Price
from tripplan.values.ages import ADULT, MONTHS

HOUSEHOLDS_AT_MOST = 7
"""So many households may come along [households]."""
PEOPLE_AT_MOST = 20
"""So many people of one household [people]."""

_PERSON = re.compile(
    r"(?P<count>\d{1,4})\s*(?P<unit>mo|months?|y|years?)?\s*(?:\((?P<statuses>[^()]*)\))?", re.IGNORECASE
)
_COMMA = re.compile(r",(?![^()]*\))")
OLDEST_MONTHS = 100 * MONTHS
"""No price asks for a greater age [months]."""
_READS = "an age reads like 9, '16 mo', or '38 (educator)' where a status counts"


class Person(Written):
    """Somebody who comes along."""

    months: Annotated[int, Field(ge=0, le=OLDEST_MONTHS)]
    """Age on the day of the visit [completed months]."""
    in_years: bool = True
    """Whether the age was given in years."""
    statuses: tuple[Name, ...] = ()
    """Discounts (military, educator and the like), in the words of the place cards."""

    def __str__(self) -> str:
        age = f"{self.months // MONTHS}" if self.in_years else f"{self.months} mo"
        return f"{age} ({', '.join(self.statuses)})" if self.statuses else age


def _read_person(value: object) -> object:
    if isinstance(value, int) and not isinstance(value, bool):
        value = str(value)
    if not isinstance(value, str):
        return value
    match = _PERSON.fullmatch(value.strip())
    if match is None:
        raise ValueError(_READS)
    in_years = not (match["unit"] or "y").lower().startswith("mo")
    months = int(match["count"]) * (MONTHS if in_years else 1)
    if months > OLDEST_MONTHS:
        raise ValueError(f"enter {OLDEST_MONTHS // MONTHS} for anybody older")
    statuses = [status.strip() for status in (match["statuses"] or "").split(",") if status.strip()]
    return {"months": months, "in_years": in_years, "statuses": statuses}


PersonText = Annotated[
    Person,
    BeforeValidator(_read_person),
    PlainSerializer(str, return_type=str),
    WithJsonSchema({"type": "string", "examples": ["38", "9", "16 mo", "38 (educator)"]}),
]
"""A person as one text: the age in years, or in months with 'mo', and statuses in brackets."""


def people_listed(text: str) -> list[str]:
    """The people in a text such as '38 (educator, resident), 9, 16 mo', one text each."""
    return [part.strip() for part in _COMMA.split(text.replace("\n", ",")) if part.strip()]


class OtherHousehold(Written):
    """Another household that comes along."""

    name: Name
    """What it is called."""
    people: Annotated[tuple[PersonText, ...], Field(min_length=1, max_length=PEOPLE_AT_MOST)]
    """Who comes along, by age."""
    seats: Annotated[int, Field(ge=0, le=60)] = 5
    """Places with a belt in the cars it brings, the drivers' included; 0 for none."""
    paid: Price = Decimal(0)
    """What it has paid in advance for everybody."""


class GoingTogether(Written):
    """The households that go together with one's own."""

    currency: Currency
    """ISO 4217 code of what was paid."""
    households: Annotated[tuple[OtherHousehold, ...], Field(max_length=HOUSEHOLDS_AT_MOST)] = ()
    """The others."""
    seats: Annotated[int, Field(ge=0, le=60)] | None = None
    """Places with a belt in the cars one brings oneself; those of the household's car when left out."""
    paid: Price = Decimal(0)
    """What one has paid in advance for everybody oneself."""

    @model_validator(mode="after")
    def _names_differ(self) -> Self:
        twice = [name for name, count in Counter(one.name for one in self.households).items() if count > 1]
        if twice:
            raise ValueError(f"every household needs a name of its own; twice: {', '.join(twice)}")
        return self


def members_of(people: Sequence[Person], day: date) -> tuple[Member, ...]:
    """People known only by age as members, called 'adult 1', 'child 1' and so on.

    Args:
        people: who comes along.
        day: the day on which they are that old.
    """
    count: Counter[str] = Counter()
    members = []
    for person in people:
        kind = "adult" if person.months in ADULT else "child"
        count[kind] += 1
        year, month = divmod(day.year * MONTHS + day.month - 1 - person.months, MONTHS)
        # Born on the first of a month, so that they are exactly so many months old all through the other.
        born = BirthDate(year=year, month=month + 1, day=1)
        members.append(Member(name=f"{kind} {count[kind]}", born=born, statuses=person.statuses))
    return tuple(members)
