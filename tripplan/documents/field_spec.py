"""How a field of a written form is called and asked: said once, for screens and for sentences."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from enum import Enum, StrEnum
from inspect import get_annotations
from typing import Any, get_args

from pydantic import BaseModel, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

from tripplan.documents.model import spaced
from tripplan.language.locales import SOURCE, Locale, speaking, spoken
from tripplan.language.messages import has, message
from tripplan.language.sentences import say


class Unit(StrEnum):
    """What a figure is counted in."""

    MINUTES = "min"
    HOURS = "h"
    DAYS = "days"
    MONTHS = "months"
    PERCENT = "%"
    KILOMETRES = "km"
    MONEY = "money"

    def in_words(self, units: str = "", currency: str = "") -> str:
        """The unit as a label says it; empty where it is the family's to choose and was not told.

        Args:
            units: in which the family reads distances, 'mi' or 'km'.
            currency: ISO 4217 code of the document's money.
        """
        if self is Unit.MONEY:
            return currency
        if self is Unit.KILOMETRES:
            return say("fields-miles") if units == "mi" else units
        code = _UNIT_CODES.get(self)
        return say(code) if code else self.value


_UNIT_CODES = {
    Unit.MINUTES: "fields-minutes",
    Unit.HOURS: "fields-hours",
    Unit.DAYS: "fields-days",
    Unit.MONTHS: "fields-months",
}


class Control(Enum):
    """With what a field is filled in, where its type alone does not say it."""

    LINE = "one line of text"
    NOTE = "several lines of text"
    CODE = "a code of capital letters"
    TICK = "yes or no"
    CLOCK = "a time of day, picked"
    CLOCK_TYPED = "a time of day, typed in any usual way"
    DAY = "a date"
    CHOICE = "one of several, in a list that opens"
    RADIO = "one of several, all in sight"
    PILLS = "one of several or none, all in sight"
    SOME = "any of several, all in sight"
    WORDS = "any of several, in a list that opens"
    OWN_WORDS = "any of several, in a list that opens, or words of one's own"
    COMMAS = "entries with commas between"
    TIMES = "times of day with commas between"
    LINES = "entries, one a line"
    DISTANCE = "a distance in the family's unit"
    PART = "fields of its own, behind a tick"
    ROWS = "a list, one row of fields for each entry"


@dataclass(frozen=True)
class FieldSpec:
    """How one field of a written form is asked; stands in the annotation beside the type.

    Attributes:
        label: what it is called on the screen, and in every sentence about it.
        help: a word of help beside it; may be empty.
        unit: what its figure is counted in; its word follows the label where that does not say it.
        control: with what it is filled in; by its type when left out.
        words: what its values are called, by the values as they are written.
        offered: which of the family's own words are offered to pick from; the page knows them by this name.
        example: what stands in the field while it is empty.
        called: what it is called in sentences, where the label is a question.
        width: how wide it is drawn [px]; as wide as there is room when left out.
        rare: whether it is folded away until somebody wants more rules.
        code: under which its words in other languages stand, by its form and name; `asked` fills it in.
        locale: the language that its words are in.
    """

    label: str
    help: str = ""
    unit: Unit | None = None
    control: Control | None = None
    words: Mapping[Any, str] = field(default_factory=dict, hash=False)
    offered: str = ""
    example: str = ""
    called: str = ""
    width: int | None = None
    rare: bool = False
    code: str = ""
    locale: Locale = SOURCE

    def spoken(self) -> "FieldSpec":
        """The same in the language that is spoken; what that has no words for stays in English, kept here."""
        locale = spoken()
        if not (self.code and has(self.code, locale)):
            return self

        def said(part: str, text: str) -> str:
            code = f"{self.code}{part}"
            return message(code, {}, locale) if has(code, locale) else text

        return replace(
            self,
            label=said("", self.label),
            help=said("-help", self.help),
            called=said("-called", self.called),
            words={value: said(f"-{_kebab(str(value))}", word) for value, word in self.words.items()},
            locale=locale,
        )

    def label_in(self, units: str = "", currency: str = "") -> str:
        """The label with the unit, as a screen shows it; the arguments are those of `Unit.in_words`."""
        if self.unit is None:
            return self.label
        with speaking(self.locale):
            unit = self.unit.in_words(units, currency)
            if not unit or unit.lower() in self.label.lower():
                return self.label
            asked = self.label.removesuffix("?")
            return f"{say('fields-in-unit', label=asked, unit=unit)}{self.label[len(asked) :]}"

    def __get_pydantic_json_schema__(
        self, core_schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        """The schema of the field with its label as the title, and its unit."""
        schema = {**handler(core_schema), "title": self.label}
        return schema if self.unit is None else {**schema, "unit": self.unit.value}


def asked_in(form: type[BaseModel], name: str) -> FieldSpec | None:
    """How a field of a form is asked; None where no screen asks for it."""
    notes = form.model_fields[name].metadata
    found = next((one for one in notes if isinstance(one, FieldSpec)), None)
    return found and replace(found, code=_code(form, name))


def _code(form: type[BaseModel], name: str) -> str:
    """Under which a field's words stand in a language's `fields.ftl`, such as 'fields-member-born'."""
    first = next((one for one in form.__mro__ if name in get_annotations(one)), form)
    return f"fields-{_kebab(spaced(first))}-{_kebab(name)}"


def _kebab(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")


def asked(form: type[BaseModel], name: str) -> FieldSpec:
    """How a field of a form is asked; where no screen asks for it, its own name is its label.

    Args:
        form: the form.
        name: of the field.
    """
    found = asked_in(form, name)
    return found or FieldSpec(name.replace("_", " "))


def within_phrase(label: str) -> str:
    """A label behind another word, such as 'birth date' in 'Odile, birth date'."""
    capital = spoken() is Locale.DE or label[1:2].isupper()
    return label if capital else f"{label[:1].lower()}{label[1:]}"


def called(form: type[BaseModel]) -> str:
    """What a form is called, such as 'Sales tax'."""
    return form.model_config.get("title") or spaced(form)


def forms_in(annotation: object) -> tuple[type[BaseModel], ...]:
    """The written forms that a field's type is made of, such as Ticket, Bundle and Pass for the offers."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return (annotation,)
    return tuple(form for part in get_args(annotation) for form in forms_in(part))


def labels(form: type[BaseModel], path: str = "") -> Iterator[tuple[str, str]]:
    """What every field of a form and of the forms within it is called, by its path without indices.

    Args:
        form: the form.
        path: where it stands in a document; empty for the document itself.
    """
    for name, info in form.model_fields.items():
        here = f"{path}.{name}" if path else name
        found = asked_in(form, name)
        if found is not None:
            yield here, found.spoken().label_in()
        for inner in forms_in(info.annotation):
            yield from labels(inner, here)
