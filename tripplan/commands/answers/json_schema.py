"""The JSON schema of an answer, from the types and docstrings of the classes that it is made of."""

import inspect
import re
from collections.abc import Mapping
from functools import cache, cached_property, reduce
from operator import or_
from types import NoneType, UnionType
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from pydantic import BaseModel, ConfigDict, Field, create_model

from tripplan.commands.answers.json_keys import STEPS, Key, keys_of

_ATTRIBUTES = re.compile(r"^Attributes:\n(.*?)(?=^\S|\Z)", re.MULTILINE | re.DOTALL)
_ENTRY = re.compile(r"^    ([\w, ]+): (.*?)(?=^    \S|\Z)", re.MULTILINE | re.DOTALL)
Kind = Any
"""A type, as an annotation writes it."""
_SAYS_HOW = ("id", "name", "rounded", *STEPS)
"""Steps that say in which form a value is told, not which it is."""


def answer_schema(answer: type) -> dict[str, Any]:
    """The JSON schema (draft 2020-12) of an answer, with what is known of each key.

    Args:
        answer: a dataclass.
    """
    schema = _model(answer).model_json_schema(mode="serialization")
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}


@cache
def _model(kind: type) -> type[BaseModel]:
    named = {key.name: _field(kind, key) for key in keys_of(kind)}
    return _made(kind.__name__, _summary(kind), named)


def _made(name: str, summary: str, named: Mapping[str, tuple[Any, str]]) -> type[BaseModel]:
    fields: dict[str, Any] = {
        key: (kind, Field(description=doc or None)) for key, (kind, doc) in named.items()
    }
    config = ConfigDict(extra="forbid")
    return create_model(name, __config__=config, __doc__=summary or None, **fields)


def _field(kind: Kind, key: Key) -> tuple[Kind, str]:
    """The type of a key and what is known of it."""
    doc = ""
    for step in key.path:
        found, said = _stepped(kind, step)
        doc = said if step not in _SAYS_HOW or not doc else doc
        kind = found
    if key.parts:
        return _split(kind, key), doc
    return _jsonable(kind), doc


def _split(kind: Kind, key: Key) -> Kind:
    """The type of a value of which only some parts are told: of each pair, or of one thing's attributes."""
    optional, inner = _without_none(kind)
    pair: tuple[Kind, ...] = ()
    if _is(inner, Mapping):
        pair = get_args(inner)
    elif _is(inner, tuple):
        pair = get_args(get_args(inner)[0])
    if pair:
        named = {part.name: _field(one, part) for part, one in zip(key.parts, pair, strict=True)}
    else:
        named = {part.name: _field(inner, Key(part.name, (part.name, *part.path))) for part in key.parts}
    model = _made("".join(map(str.capitalize, key.name.split("_"))), "", named)
    told = _many(model) if pair else model
    return told | None if optional else told


def _stepped(kind: Kind, step: str) -> tuple[Kind, str]:
    """The type of an attribute, and its description; of each member's where the type is a tuple's."""
    optional, inner = _without_none(kind)
    if _is(inner, tuple):
        if step.isdigit():
            return get_args(inner)[int(step)] | None if optional else get_args(inner)[int(step)], ""
        found, doc = _stepped(get_args(inner)[0], step)
        return _many(found), doc
    found, doc = _attribute(inner, step)
    return (found | None if optional else found), doc


def _attribute(kind: Kind, step: str) -> tuple[Kind, str]:
    if _is(kind, Annotated):  # a written form says beside the type how the field is asked
        return _attribute(get_args(kind)[0], step)
    if step in STEPS:
        return get_type_hints(STEPS[step])["return"], _summary(STEPS[step])
    if isinstance(kind, type) and issubclass(kind, BaseModel) and step in kind.model_fields:
        return get_type_hints(kind, include_extras=True)[step], kind.model_fields[step].description or ""
    member = inspect.getattr_static(kind, step, None)
    if isinstance(member, property):
        member = member.fget
    elif isinstance(member, cached_property):
        member = member.func
    if inspect.isfunction(member):
        return get_type_hints(member)["return"], _summary(member)
    return get_type_hints(kind, include_extras=True)[step], _described(kind).get(step, "")


def _jsonable(kind: Kind) -> Kind:
    """The type with every class that has keys as a model."""
    if _is(kind, UnionType) or _is(kind, Union):
        return reduce(or_, map(_jsonable, get_args(kind)))
    if _is(kind, tuple):
        return _many(_jsonable(get_args(kind)[0]))
    return _model(kind) if isinstance(kind, type) and keys_of(kind) else kind


def _is(kind: Kind, origin: Kind) -> bool:
    found: Kind = get_origin(kind)
    return found is origin


def _many(kind: Kind) -> Kind:
    members: Kind = tuple
    return members[kind, ...]


def _without_none(kind: Kind) -> tuple[bool, Kind]:
    inside = get_args(kind)
    if _is(kind, Annotated):
        return _without_none(inside[0])
    if NoneType not in inside:
        return False, kind
    return True, reduce(or_, (one for one in inside if one is not NoneType))


def _summary(documented: object) -> str:
    return " ".join((inspect.getdoc(documented) or "").split("\n\n")[0].split())


@cache
def _described(kind: type) -> dict[str, str]:
    """What the docstrings of a class and of those it is made from say of its attributes."""
    described: dict[str, str] = {}
    for one in reversed(kind.__mro__):
        for block in _ATTRIBUTES.findall(inspect.cleandoc(one.__doc__ or "")):
            for names, text in _ENTRY.findall(block):
                said = " ".join(text.split())
                described |= dict.fromkeys(names.replace(" ", "").split(","), said[:1].upper() + said[1:])
    return described
