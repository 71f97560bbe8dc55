"""What every written form (household, place card, calendar) has in common."""

import re
from datetime import time
from typing import Annotated, Any, Literal

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    GetCoreSchemaHandler,
    WithJsonSchema,
)
from pydantic_core import CoreSchema

from tripplan.documents.bounds import bounded
from tripplan.values.visible import shows_something, without_unseen


def spaced(form: type) -> str:
    """The name of a class as words, such as 'Sales tax'."""
    return re.sub(r"(?<=[a-z])[A-Z]", lambda capital: f" {capital[0].lower()}", form.__name__)


class Written(BaseModel):
    """Something a parent writes: unknown fields are refused, values are read once and never change."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        str_strip_whitespace=True,
        use_attribute_docstrings=True,
        model_title_generator=spaced,
    )

    @classmethod
    def __get_pydantic_core_schema__(cls, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:  # noqa: ANN401
        """Bound every number and date of the form, and keep yes and no apart from numbers."""
        return bounded(handler(source), cls)


def _read_clock_time(value: object) -> object:
    # Left alone, pydantic reads the number 630 as so many seconds after midnight, and takes a zone along.
    if isinstance(value, time) and value.tzinfo is None:
        return value
    if isinstance(value, str) and re.fullmatch(r"\d{2}:\d{2}(:\d{2})?", value.strip()):
        return value.strip()
    raise ValueError("a time of day reads like 12:30, without a zone")


ClockTime = Annotated[
    time,
    BeforeValidator(_read_clock_time),
    WithJsonSchema({"type": "string", "pattern": r"^\d{2}:\d{2}(:\d{2})?$", "examples": ["12:30"]}),
]
"""A time of day by the local clock as a field of a written form."""


def _read_name(value: object) -> object:
    return without_unseen(value) if isinstance(value, str) else value


def _check_name(name: str) -> str:
    if not shows_something(name):
        raise ValueError("a name has at least one letter that can be seen")
    return name


LONGEST_NAME = 80
"""What a name may have [characters]."""
Name = Annotated[
    str,
    Field(min_length=1, max_length=LONGEST_NAME),
    BeforeValidator(_read_name),
    AfterValidator(_check_name),
]
"""What somebody or something is called."""
Minutes = Annotated[int, Field(ge=0, le=24 * 60)]
"""A span of time within a day [min]."""
Weekday = Literal["Mo", "Tu", "We", "Th", "Fr", "Sa", "Su"]
"""A day of the week."""
DAY_NAMES: dict[Weekday, str] = {
    "Mo": "Mon",
    "Tu": "Tue",
    "We": "Wed",
    "Th": "Thu",
    "Fr": "Fri",
    "Sa": "Sat",
    "Su": "Sun",
}
"""What the days of the week are called."""
