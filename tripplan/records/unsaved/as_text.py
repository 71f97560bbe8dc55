"""What a field says, as text, and back: JSON, with days and times of day marked as what they are."""

import json
from datetime import date, time
from typing import Any

Unsaved = str | bool | int | float | date | time | list[Any] | tuple[Any, ...] | dict[str, Any] | None
"""What can be kept: what a field says, or several of it."""
_DATE, _TIME = "a date", "a time"


def written(value: Unsaved) -> str:
    """A value as text.

    Raises:
        TypeError: it is of another type than `Unsaved` says.
    """
    return json.dumps(value, default=_marked, ensure_ascii=False)


def _marked(value: object) -> dict[str, str]:
    """What JSON has no form of, marked as what it is."""
    if isinstance(value, date):
        return {_DATE: value.isoformat()}
    if isinstance(value, time):
        return {_TIME: value.isoformat()}
    raise TypeError(f"a {type(value).__name__} cannot be kept unsaved")


def read(text: str) -> Any:  # noqa: ANN401 - of whatever type it was
    """The value that a text stands for; a tuple comes back as a list."""
    return json.loads(text, object_hook=_unmarked)


def _unmarked(value: dict[str, Any]) -> object:
    if value.keys() == {_DATE}:
        return date.fromisoformat(value[_DATE])
    if value.keys() == {_TIME}:
        return time.fromisoformat(value[_TIME])
    return value
