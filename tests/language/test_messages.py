"""The catalogues: every message that is used is there, in every language or known to be missing."""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from babel import Locale as CldrLocale
from fluent.syntax import FluentParser
from fluent.syntax.ast import Junk, Message, Term, VariableReference
from fluent.syntax.visitor import Visitor

from tripplan.language.locales import SOURCE, Locale, speaking
from tripplan.language.messages import FOLDER, catalogue, entries_in
from tripplan.language.sentences import fact, said, say

PACKAGE = FOLDER.parent
FILES = sorted(FOLDER.glob("*/*.ftl"))
MADE_OF_PARTS = re.compile(
    r"crowds-(plenty-of-room|some-company|well-filled|packed|table-.*)|cautions-.*(cold|hot)|packing-.*-why|misses-.*-but|places-fullest-.*"
)
"""Messages whose names are put together where they are used, or stand in a table of data."""
MISSING: dict[Locale, set[str]] = {
    Locale.DE: {"refusals-accompanied", "refusals-each-proof-covers", "refusals-needs-proof"}
}
"""Messages that a language lacks, so that their sentences are in the source language."""


class _Variables(Visitor):
    def __init__(self) -> None:
        self.names: set[str] = set()

    def visit_VariableReference(self, node: VariableReference) -> None:  # noqa: N802
        self.names.add(node.id.name)


@cache
def variables(locale: Locale) -> dict[str, set[str]]:
    """The values that each message of a language speaks of."""
    found = {}
    for name, source in catalogue(locale).entries.items():
        visitor = _Variables()
        visitor.visit(FluentParser().parse(source))
        found[name] = visitor.names
    return found


def used() -> Iterator[tuple[str, str, set[str] | None]]:
    """Every message that the program names: the file, the code, and the values where it gives some."""
    for path in PACKAGE.rglob("*.py"):
        given: dict[int, set[str] | None] = {}
        tree = ast.parse(path.read_text(encoding="utf-8"))
        for node in ast.walk(tree):
            if (
                isinstance(node, ast.Call)
                and isinstance(node.func, ast.Name)
                and node.func.id in ("say", "fact")
            ):
                names = {keyword.arg for keyword in node.keywords}
                given[id(node.args[0])] = None if None in names else {str(name) for name in names}
        for node in ast.walk(tree):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and _is_code(node.value):
                yield path.name, node.value, given.get(id(node))


def _is_code(text: str) -> bool:
    return text.partition("-")[0] in ROOMS and re.fullmatch(r"[a-z]+(-[a-z0-9]+)+", text) is not None


ROOMS = {path.stem for path in FILES} - {"terms"}


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_every_file_is_fluent_and_its_messages_carry_its_name(path: Path) -> None:
    """Nothing in it is junk, none comes twice, and the program's own reading finds the same messages."""
    body = FluentParser().parse(path.read_text(encoding="utf-8")).body
    assert not [entry.content for entry in body if isinstance(entry, Junk)]
    names = [("-" if isinstance(e, Term) else "") + e.id.name for e in body if isinstance(e, Message | Term)]
    assert names == [name for name, _ in entries_in(path)]
    assert len(names) == len(set(names))
    assert all(name.startswith("-" if path.stem == "terms" else f"{path.stem}-") for name in names)


def test_every_message_used_is_there_and_every_one_there_is_used() -> None:
    """With just the values that the source language's message speaks of."""
    there, codes = variables(SOURCE), set()
    for file, code, given in used():
        assert code in there, f"{file} says {code!r}, which no file of {SOURCE} has"
        assert given is None or given == there[code], f"{file}: values of {code}"
        codes.add(code)
    idle = {name for name in there if not name.startswith("-") and not MADE_OF_PARTS.fullmatch(name)} - codes
    assert not idle, f"nobody says {sorted(idle)}"


@pytest.mark.parametrize("locale", [locale for locale in Locale if locale is not SOURCE])
def test_a_language_has_every_message_or_lists_it_as_missing(locale: Locale) -> None:
    """It speaks of no value that the source does not give, and has no message of its own invention."""
    source, own = variables(SOURCE), variables(locale)
    terms = {name for name in own if name.startswith("-")}
    assert {name for name in source if not name.startswith("-")} - set(own) == MISSING.get(locale, set())
    fields = {name for name in set(own) - set(source) if name.startswith("fields-")}  # see test_fields.py
    assert set(own) - terms - fields <= set(source)
    for name in set(own) - terms - fields:
        assert own[name] <= source[name], name


@pytest.mark.parametrize("locale", list(Locale))
def test_plurals_name_every_category_that_the_language_counts_by(locale: Locale) -> None:
    """CLDR's plural rules: English and German have one and other, and so has each message that counts."""
    categories = CldrLocale.parse(locale.value, sep="-").plural_form.tags | {"other"}
    for name, source in catalogue(locale).entries.items():
        variants = set(re.findall(r"\[(zero|one|two|few|many|other)\]", source))
        assert not variants or variants == categories, name


@pytest.mark.parametrize("locale", list(Locale))
def test_every_message_can_be_said_in_one_line(locale: Locale) -> None:
    """With any number in place of its values: no gap, no break of a line, no words run apart."""
    for name, needed in variables(locale).items():
        if not name.startswith("-"):
            for value in (1, 2):
                told = catalogue(locale).message(name, dict.fromkeys(needed, value))
                assert told.strip() == told
                assert told
                assert not re.search(r"\n|\?\?\?|  |[{}]", told), (name, told)


def test_a_sentence_is_whole_in_one_language(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where German lacks one message of a sentence, all of it is American, and never half of it."""
    most = fact("crowds-no-school", students=fact("crowds-most-students"))
    with speaking(Locale.DE):
        assert said(most) == "keine Schule: die meisten Schulkinder der Umgebung"
        monkeypatch.delitem(catalogue(Locale.DE).entries, "crowds-most-students")
        assert said(most) == "no school for most students nearby"


def test_nothing_is_said_that_no_language_has_words_for() -> None:
    """A code without a message is a caller's mistake."""
    with pytest.raises(LookupError):
        say("crowds-no-such-message")


def test_a_value_that_is_missing_is_a_callers_mistake() -> None:
    """No sentence is told with a gap in it."""
    with pytest.raises(ValueError, match="students"):
        say("crowds-no-school")
