"""What every written form (household, place card, calendar) has in common."""

import re
from datetime import time
from typing import Annotated

from pydantic import BaseModel, BeforeValidator, ConfigDict, WithJsonSchema


class Written(BaseModel):
    """Something a parent writes: unknown fields are refused, values are read once and never change."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", str_strip_whitespace=True, use_attribute_docstrings=True
    )


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
