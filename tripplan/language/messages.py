"""Messages by language: the words that belong to a code, out of a folder of Fluent files a language.

A message stands in the file that its code begins with, 'crowds-weekday' in `crowds.ftl`; words that several
files share are terms in `terms.ftl`. British English is American English with some words and sentences of its
own; any other language falls back to it by whole messages.

Source: Fluent syntax 1.0, https://projectfluent.org.
"""

import re
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

from fluent.runtime import FluentBundle, FluentResource, resolver
from fluent.syntax.ast import TextElement
from fluent.syntax.visitor import Visitor

from tripplan.language.locales import SOURCE, Locale

FOLDER = Path(__file__).parent
_LAYERS = {Locale.EN_GB: (SOURCE, Locale.EN_GB)}
"""The folders whose messages and terms make up a language, where it is more than its own; later ones win."""
_ENTRY = re.compile(r"^(-?[a-z][a-z0-9-]*) *=(?:.*\n)(?:[ \t}].*\n|\n)*", re.MULTILINE)
_TERM = "-"

resolver.MAX_PART_LENGTH = 1_000_000
"""What a parent typed may be long, and stands in a message as it is; none of ours expands without end."""


def message(code: str, values: Mapping[str, str | int | float], locale: Locale) -> str:
    """The words for a code.

    Args:
        code: of a message.
        values: what stands in it, by name; texts as they are, numbers as CLDR writes and counts them.
        locale: in which language; in the source language where this one has no such message.

    Raises:
        LookupError: there is no such message in the source language either.
        ValueError: a value is missing, or the message cannot be put together.
    """
    return catalogue(locale if has(code, locale) else SOURCE).message(code, values)


def has(code: str, locale: Locale) -> bool:
    """Whether a language has words for a code: its own, or those of the language that it is made of."""
    return code in catalogue(locale).entries


def entries_in(path: Path) -> Iterator[tuple[str, str]]:
    """The messages and terms of a file: the name of each with its source."""
    for found in _ENTRY.finditer(path.read_text(encoding="utf-8") + "\n"):
        yield found[1], found[0]


class Catalogue:
    """The messages of one language.

    A message is parsed when it is first asked for: a command needs few of them.

    Attributes:
        entries: the source of each message and term by its name.
    """

    def __init__(self, locale: Locale) -> None:
        folders = [FOLDER / layer for layer in _LAYERS.get(locale, (locale,))]
        files = [path for folder in folders for path in sorted(folder.glob("*.ftl"))]
        self.entries = {name: source for path in files for name, source in entries_in(path)}
        self._locale = locale
        self._bundle = FluentBundle([locale.value], use_isolating=False)
        for name in self.entries:
            if name.startswith(_TERM):
                self._parse(name)

    def message(self, code: str, values: Mapping[str, str | int | float]) -> str:
        """As the function of that name."""
        if not self._bundle.has_message(code):
            if code not in self.entries:
                raise LookupError(f"no message {code!r}")
            self._parse(code)
        pattern = self._bundle.get_message(code).value
        if pattern is None:
            raise LookupError(f"message {code!r} has no words")
        told, errors = self._bundle.format_pattern(pattern, dict(values))
        if errors:
            raise ValueError(f"message {code!r} in {self._locale}: {errors[0]}")
        return str(told)

    def _parse(self, name: str) -> None:
        resource = FluentResource(self.entries[name])
        _OneLine().visit(resource)
        self._bundle.add_resource(resource, allow_overrides=True)


catalogue = cache(Catalogue)
"""The messages of a language, read once."""


class _OneLine(Visitor):
    """Lets a message that goes over several lines of its file be one line of text."""

    def visit_TextElement(self, node: TextElement) -> None:  # noqa: N802 - the library's name for it
        node.value = node.value.replace("\n", " ")
