"""When somebody was born, which may be known only to the month."""

import calendar
import re
from datetime import date
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, PlainSerializer, WithJsonSchema, model_validator

from tripplan.documents.model import Written


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
