"""When somebody was born, which may be known only to the month."""

import calendar
import re
from datetime import date, timedelta
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, PlainSerializer, WithJsonSchema, model_validator

from tripplan.documents.model import Written
from tripplan.values.ages import MONTHS, months_later

_AGE = re.compile(r"(\d{1,4}) (years|months) on (\d{4}-\d{2}-\d{2})")


class KnownAge(Written):
    """An age on a day, kept until somebody tells the birth date."""

    months: Annotated[int, Field(ge=0, le=130 * MONTHS)]
    """The age [completed months]; of an age in years, its months at the last birthday."""
    in_years: bool
    """Whether only completed years are known."""
    on: date
    """The day on which somebody was of that age."""

    @property
    def spread(self) -> int:
        """How long the birth may have been earlier [months]."""
        return MONTHS if self.in_years else 1

    def __str__(self) -> str:
        count, unit = (self.months // MONTHS, "years") if self.in_years else (self.months, "months")
        return f"{count} {unit} on {self.on.isoformat()}"


class BirthDate(Written):
    """A birth date, or only its year and month, or an age on a day."""

    year: Annotated[int, Field(ge=1900, le=2200)]
    """Year."""
    month: Annotated[int, Field(ge=1, le=12)]
    """Month, 1 to 12."""
    day: Annotated[int, Field(ge=1, le=31)] | None = None
    """Day of the month; unknown when left out."""
    age: KnownAge | None = None
    """The age that it was worked out from; None where the date was told."""

    @model_validator(mode="after")
    def _on_the_calendar(self) -> Self:
        if self.day is not None and self.day > calendar.monthrange(self.year, self.month)[1]:
            raise ValueError(f"{self.year}-{self.month:02} has no day {self.day}")
        return self

    @property
    def earliest(self) -> date:
        """The first day the birth may have been on; ages count from here, so a price is never too low."""
        if self.age is not None:
            return months_later(self.age.on, -self.age.months - self.age.spread) + timedelta(days=1)
        return date(self.year, self.month, self.day or 1)

    @property
    def latest(self) -> date:
        """The last day the birth may have been on."""
        if self.age is not None:
            return months_later(self.age.on, -self.age.months)
        return date(self.year, self.month, self.day or calendar.monthrange(self.year, self.month)[1])

    def __str__(self) -> str:
        if self.age is not None:
            return str(self.age)
        written = f"{self.year}-{self.month:02}"
        return written if self.day is None else f"{written}-{self.day:02}"


def _from_age(count: int, in_years: bool, on: str) -> dict[str, object]:
    try:
        age = KnownAge(
            months=count * (MONTHS if in_years else 1), in_years=in_years, on=date.fromisoformat(on)
        )
        first = months_later(age.on, -age.months - age.spread) + timedelta(days=1)
    except ValueError as wrong:
        raise ValueError(f"this is no age on a day: {count} on {on}") from wrong
    return {"year": first.year, "month": first.month, "day": first.day, "age": age}


def _read_birth_date(value: object) -> object:
    if isinstance(value, date):
        return {"year": value.year, "month": value.month, "day": value.day}
    if isinstance(value, str) and (age := _AGE.fullmatch(value.strip())):
        return _from_age(int(age[1]), age[2] == "years", age[3])
    if not isinstance(value, BirthDate | dict):
        match = re.fullmatch(r"(\d{4})-(\d{2})(?:-(\d{2}))?", value.strip() if isinstance(value, str) else "")
        if not match:
            raise ValueError(
                "a birth date reads like 2022-03-14, or 2022-03 where only the month is given, or "
                "'8 years on 2026-11-25' where only an age is"
            )
        return {"year": int(match[1]), "month": int(match[2]), "day": int(match[3]) if match[3] else None}
    return value


Born = Annotated[
    BirthDate,
    BeforeValidator(_read_birth_date),
    PlainSerializer(str, return_type=str),
    WithJsonSchema(
        {
            "type": "string",
            "pattern": r"^(\d{4}-\d{2}(-\d{2})?|\d{1,4} (years|months) on \d{4}-\d{2}-\d{2})$",
            "examples": ["2022-03-14", "2022-03", "8 years on 2026-11-25"],
        }
    ),
]
