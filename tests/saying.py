"""What a text says, by the codes of messages: tests hold facts, and a wording is changed in one place."""

import re
from collections.abc import Mapping

from fluent.syntax import FluentParser
from fluent.syntax import ast as fluent

from tripplan.language.locales import SOURCE, Locale, speaking
from tripplan.language.messages import catalogue
from tripplan.language.sentences import Value, written

_ANYTHING = ".*?"


def says(text: str, code: str, locale: Locale = SOURCE, **values: Value) -> bool:
    """Whether a text holds the sentence of a code.

    Args:
        text: as a page, a command or a sheet shows it; line breaks and marks for bold count for nothing.
        code: of a message.
        locale: the language the text is in.
        values: what the sentence must be about, by name; where one is not given, anything may stand there.

    Raises:
        LookupError: there is no such message, or it says nothing of such a value.
    """
    if code not in catalogue(locale).entries:
        raise LookupError(f"no message {code!r}")
    unsaid = [name for name in values if f"${name}" not in catalogue(locale).entries[code]]
    if unsaid:
        raise LookupError(f"message {code!r} says nothing of {', '.join(unsaid)}")
    with speaking(locale):
        known = {name: str(written(value)) for name, value in values.items()}
    wanted = " ".join(_pattern(code, known, locale).split())
    return re.search(rf"(?<!\w){wanted}(?!\w)", _plain(text)) is not None


def _plain(text: str) -> str:
    return " ".join(text.replace("**", "").replace("\\", "").split())


def _pattern(name: str, known: Mapping[str, str], locale: Locale) -> str:
    """What a message or term looks like, as a regular expression."""
    entry = FluentParser().parse_entry(catalogue(locale).entries[name])
    assert isinstance(entry, fluent.Message | fluent.Term)
    return _of(entry.value, known, locale)


def _variants(choice: fluent.SelectExpression, known: Mapping[str, str]) -> list[fluent.Variant]:
    """The variant that a word or yes and no choose; all where nobody says, or a number chooses."""
    selector = choice.selector
    by = known.get(selector.id.name) if isinstance(selector, fluent.VariableReference) else None
    named = {one.key.name: one for one in choice.variants if isinstance(one.key, fluent.Identifier)}
    if by in named:
        return [named[by]]
    return [one for one in choice.variants if one.default] if by in ("yes", "no") else choice.variants


def _of(part: object, known: Mapping[str, str], locale: Locale) -> str:
    match part:
        case fluent.Pattern():
            return "".join(_of(element, known, locale) for element in part.elements)
        case fluent.TextElement():
            return re.escape(" ".join(f"|{part.value}|".split())[1:-1]).replace("\\ ", " ")
        case fluent.Placeable():
            return _of(part.expression, known, locale)
        case fluent.VariableReference():
            return re.escape(_plain(known[part.id.name])) if part.id.name in known else _ANYTHING
        case fluent.TermReference():
            return _pattern(f"-{part.id.name}", known, locale)
        case fluent.MessageReference():
            return _pattern(part.id.name, known, locale)
        case fluent.StringLiteral():
            return re.escape(part.parse()["value"])
        case fluent.SelectExpression():
            return "(?:" + "|".join(_of(one.value, known, locale) for one in _variants(part, known)) + ")"
    raise TypeError(f"{type(part).__name__} in a message")
