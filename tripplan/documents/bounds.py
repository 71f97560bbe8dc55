"""What every number, date and yes-or-no of a written form keeps to, whether its own field says so or not."""

from datetime import date
from typing import Any

from pydantic_core import CoreSchema, core_schema

MOST = 10**9
"""No number that a parent writes is larger, either way; where a field says less, that counts."""
FIRST_YEAR, LAST_YEAR = 1900, 2200
"""No date is earlier or later: beyond them, calendars and clocks of this computer go wrong."""

_NUMBERS = ("int", "float", "decimal")
_DATES = ("date", "datetime")


def _refuse_yes_or_no(value: object) -> object:
    # Left alone, pydantic reads true as 1.
    if isinstance(value, bool):
        raise ValueError("must be a number, not true or false")  # noqa: TRY004 - pydantic wants it
    return value


def _refuse_numbers(value: object) -> object:
    # Left alone, pydantic reads the number 1764028800 as so many seconds after the year 1970 began.
    if isinstance(value, int | float):
        raise ValueError("must be a date such as 2026-11-24")  # noqa: TRY004 - pydantic wants it
    return value


def _within_years(value: date) -> date:
    if not FIRST_YEAR <= value.year <= LAST_YEAR:
        raise ValueError(f"must be a date from {FIRST_YEAR} to {LAST_YEAR}")
    return value


def bounded(schema: CoreSchema, form: type[object]) -> CoreSchema:
    """The same schema with its numbers, dates and yes-or-nos bounded and of one type, in place.

    Args:
        schema: of one form.
        form: that form; others inside it see to themselves.
    """
    _bound(schema, form)
    return schema


def _bound(node: Any, form: type[object]) -> None:  # noqa: ANN401 - a schema is nested dictionaries and lists
    if isinstance(node, list | tuple):
        for part in node:
            _bound(part, form)
    if not isinstance(node, dict) or node.get("cls", form) is not form or node.get("function") in _SEEN:
        return
    kind = node.get("type")
    if kind in _NUMBERS:
        _bound_number(node, kind)
    elif kind in _DATES:
        plain: Any = dict(node)
        checked = core_schema.no_info_after_validator_function(_within_years, plain)
        _become(node, core_schema.no_info_before_validator_function(_refuse_numbers, checked))
    elif kind == "bool":
        node["strict"] = True
    else:
        for name, part in node.items():
            if name not in ("metadata", "serialization"):
                _bound(part, form)


def _bound_number(node: dict[str, Any], kind: str) -> None:
    if not {"ge", "gt"} & node.keys():
        node["ge"] = -MOST
    if not {"le", "lt"} & node.keys():
        node["le"] = MOST
    if kind != "int":
        node["allow_inf_nan"] = False
    plain: Any = dict(node)
    _become(node, core_schema.no_info_before_validator_function(_refuse_yes_or_no, plain))


def _become(node: dict[str, Any], other: Any) -> None:  # noqa: ANN401 - as above
    node.clear()
    node.update(other)


_SEEN = tuple({"type": "no-info", "function": function} for function in (_refuse_yes_or_no, _refuse_numbers))
