"""Values as JSON: a dataclass by its fields, or by the keys that are stated for it.

The keys of a class are words. `total` is the attribute of that name; `town=where.town` follows a path,
through the members of a tuple and past None; `shares(member,share)` names the parts of each pair, or the
attributes of one value, that are meant; `chance:4` rounds to so many digits. A step of a path may also be a
function marked with `json_step`, or a method without arguments.
"""

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, fields, is_dataclass
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from enum import Enum
from typing import Any, TypeVar

from pydantic import BaseModel

_WORD = re.compile(r"(\w+)(?:=([\w.]+))?(?:\(([\w.:,]+)\))?(?::(\d+))?")
F = TypeVar("F", bound=Callable[[Any], Any])
Value = Any
"""Whatever an answer is made of."""
Json = Any
"""What `json.dumps` takes."""


@dataclass(frozen=True)
class Key:
    """One key of an answer.

    Attributes:
        name: the key.
        path: the attributes that lead to its value.
        parts: the keys of what is found there, where only these are meant.
        digits: to which it is rounded; None for not at all.
    """

    name: str
    path: tuple[str, ...]
    parts: tuple["Key", ...] = ()
    digits: int | None = None


_KEYS: dict[type, tuple[Key, ...]] = {}
STEPS: dict[str, Callable[[Any], Any]] = {}
"""What a path may lead through besides attributes, by name."""


def json_step(function: F) -> F:
    """Let the paths of keys lead through a function of one value."""
    STEPS[function.__name__] = function
    return function


def json_keys(kind: type, words: str) -> None:
    """State the keys that a class has in JSON, in their order.

    Raises:
        ValueError: a word is none, as the head of this module describes them.
    """
    _KEYS[kind] = tuple(map(_key, words.split()))


def keys_of(kind: type) -> tuple[Key, ...]:
    """The keys of a class: those that are stated, else a dataclass's fields; none for any other class."""
    if kind in _KEYS or not is_dataclass(kind):
        return _KEYS.get(kind, ())
    return tuple(Key(field.name, (field.name,)) for field in fields(kind))


def _key(word: str) -> Key:
    match = _WORD.fullmatch(word)
    if match is None:
        raise ValueError(f"{word!r} is no key of an answer")
    name, path, parts, digits = match.groups()
    return Key(
        name,
        tuple((path or name).split(".")),
        tuple(map(_part, parts.split(","))) if parts else (),
        int(digits) if digits else None,
    )


def _part(word: str) -> Key:
    path, _, digits = word.partition(":")
    name, *further = path.split(".")
    return Key(name, tuple(further), (), int(digits) if digits else None)


def to_json(value: object) -> Json:
    """A value as `json.dumps` takes it.

    Raises:
        TypeError: it has no form in JSON.
    """
    if isinstance(value, Enum):
        return value.value
    if value is None or isinstance(value, bool | int | float | str):
        return value
    if keys := keys_of(type(value)):
        return {key.name: to_json(_found(value, key)) for key in keys}
    if isinstance(value, Decimal):
        return str(value)
    if isinstance(value, date | datetime | time):
        return value.isoformat().replace("+00:00", "Z")
    if isinstance(value, timedelta):
        return f"PT{value // timedelta(minutes=1)}M"
    if isinstance(value, BaseModel):
        return value.model_dump(mode="json")
    if isinstance(value, Mapping):
        return {str(name): to_json(one) for name, one in value.items()}
    if isinstance(value, Iterable):
        return [to_json(one) for one in value]
    raise TypeError(f"{type(value).__name__} has no form in JSON")


def _found(value: Value, key: Key) -> Value:
    for step in key.path:
        value = _stepped(value, step)
    if key.parts and value is not None:
        pairs = value.items() if isinstance(value, Mapping) else value
        if isinstance(pairs, Iterable) and not isinstance(pairs, BaseModel):
            return [_parts(pair, key.parts) for pair in pairs]
        return {part.name: _found(getattr(value, part.name), part) for part in key.parts}
    return value if key.digits is None or value is None else float(round(value, key.digits))


def _parts(pair: Sequence[Any], parts: tuple[Key, ...]) -> dict[str, Any]:
    return {part.name: _found(one, part) for part, one in zip(parts, pair, strict=True)}


def _stepped(value: Value, step: str) -> Value:
    if value is None:
        return None
    if isinstance(value, tuple | list):
        return value[int(step)] if step.isdigit() else [_stepped(one, step) for one in value]
    if step in STEPS:
        return STEPS[step](value)
    found = getattr(value, step)
    return found() if callable(found) else found
