"""Facts, which calculators find out, and the sentences that say them."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import TypeAlias, Union

from tripplan.language import wording
from tripplan.language.locales import SOURCE, speaking, spoken
from tripplan.language.messages import has, message
from tripplan.values.money import Money, MoneyRange
from tripplan.values.units import Chance, Distance, Temperatures
from tripplan.values.weekday import Weekday

Value: TypeAlias = Union[
    str,
    int,
    float,
    Money,
    MoneyRange,
    Distance,
    Temperatures,
    date,
    time,
    timedelta,
    "Fact",
    tuple["Value", ...],
]
"""What a fact may be about; how each kind is written, `said` decides."""


@dataclass(frozen=True)
class Fact:
    """Something found out: a code that programs can go by, and the values that belong to it.

    As text it is its sentence in the language that is spoken at that moment, so that facts may be kept and
    shared between windows that speak different ones.

    Attributes:
        code: what was found; also the name of the message that says it.
        named: its values by name, in the order they were given.
    """

    code: str
    named: tuple[tuple[str, Value], ...] = ()

    @property
    def values(self) -> Mapping[str, Value]:
        """The values by name."""
        return dict(self.named)

    @property
    def text(self) -> str:
        """Its sentence in the language that is spoken."""
        return said(self)

    def __str__(self) -> str:
        return self.text


class InTurn(tuple["Value", ...]):
    """Whole sentences one after the other, where another tuple is a list within a sentence."""


def fact(code: str, **values: Value) -> Fact:
    """A fact by its code and its values.

    Args:
        code: the name of its message.
        values: by the names that the message calls them.
    """
    return Fact(code, tuple(values.items()))


def said(found: Fact) -> str:
    """The sentence of a fact in the language that is spoken.

    Where that language lacks the message of the fact, or of another that stands in it, the whole sentence is
    in the source language: never half of it.

    Raises:
        LookupError: the source language lacks a message.
        ValueError: a value that a message needs is missing.
    """
    locale = spoken()
    if all(has(code, locale) for code in _codes(found)):
        return message(found.code, {name: written(value) for name, value in found.named}, locale)
    with speaking(SOURCE):
        return message(found.code, {name: written(value) for name, value in found.named}, SOURCE)


def say(code: str, **values: Value) -> str:
    """The sentence of a code with its values, in the language that is spoken; see `said`."""
    return said(fact(code, **values))


def told(facts: Iterable[Fact]) -> tuple[str, ...]:
    """The sentences of some facts."""
    return tuple(map(said, facts))


def _codes(value: Value) -> list[str]:
    """The codes of all the facts in a value."""
    if isinstance(value, Fact):
        return [value.code, *(code for _, inner in value.named for code in _codes(inner))]
    return [code for inner in value for code in _codes(inner)] if isinstance(value, tuple) else []


def written(value: Value) -> str | int | float:
    """A value as the language writes it; a message may choose by numbers, and by yes and no."""
    match value:
        case bool():
            return "yes" if value else "no"
        case Weekday():
            return wording.weekday(value)
        case Chance():
            return wording.odds(value)
        case str() | int() | float():
            return value
        case Fact():
            return said(value)
        case InTurn():
            return " ".join(str(written(one)) for one in value)
        case tuple():
            return wording.listed([str(written(one)) for one in value])
        case Money():
            return wording.money(value)
        case MoneyRange():
            return wording.money_range(value)
        case Distance():
            return wording.distance(value.km, value.unit)
        case Temperatures():
            return wording.temperatures(value.low, value.high, value.unit)
        case datetime() | time():
            return wording.clock(value)
        case date():
            return wording.day(value)
        case timedelta():
            return wording.minutes(value.total_seconds() / 60)
