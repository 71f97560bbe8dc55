"""TOML text to plain values and back, within limits that keep a hostile file harmless."""

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

import tomli_w

from tripplan.errors import Finding

LARGEST_FILE = 256 * 1024
"""Nothing larger is read [bytes]; a place card has a few thousand."""
LARGEST_TEXT = 20_000
"""The longest single text [characters]."""
LONGEST_KEY = 200
"""The longest name of a field [characters]."""
DEEPEST = 12
"""How many tables and lists may stand inside each other."""
MOST_VALUES = 20_000
"""How many values a file may hold."""
_LINES_PASSED_OVER = 10
_SMALL_FILE = 32 * 1024
"""In larger files no unreadable line is passed over, because each costs a new reading [characters]."""

# A name of very many dotted parts costs the parser time and memory by the square of their number.
_PART = r"""(?:(?<![\w-])[\w-]++|"[^"\n]*+"|'[^'\n]*+')[ \t]*+"""
_ENDLESS_KEY = re.compile(rf"{_PART}(?:\.[ \t]*+{_PART}){{{2 * DEEPEST}}}")
_AT_LINE = re.compile(r" \(at line (\d+), column \d+\)$")
_KEY_OF_LINE = re.compile(r"""\s*(?:\[\[?\s*)?["']?([\w-]+)""")

_NOT_CLOSED = "a text that is opened with a quotation mark is closed with one on the same line"
_BEGINS = "a line starts with a name of letters, digits, - and _, or with a heading in [ ]"
_SYNTAX = (
    ("Invalid value", "this is no number, no date, neither true nor false, and no text in quotation marks"),
    (
        "Expected newline or end of document",
        "there is more after the value; texts need quotation marks, decimals a point as in 12.50",
    ),
    ("Expected '=' after a key", "a line is a name, an equals sign and a value"),
    ("Illegal character '\\n'", _NOT_CLOSED),
    ("Unterminated string", "a text that is opened with quotation marks is not closed before the file ends"),
    ('Expected "\'"', _NOT_CLOSED),
    ("Unclosed array", "a list opened with [ is closed with ] and has commas between its items"),
    ("Unclosed inline table", "fields opened with { are closed with } on the same line, commas between them"),
    ("Expected ']", "a heading is a name in [ ] or [[ ]]"),
    ("Invalid statement", _BEGINS),
    ("Cannot overwrite a value", "this name was given a value before"),
    ("Cannot declare", "this heading stands in the file twice"),
    ("Duplicate inline table key", "a name stands twice between these { }"),
    ("Invalid initial character for a key part", _BEGINS),
    ("Invalid date or datetime", "there is no such date or time"),
)


@dataclass(frozen=True)
class TomlDocument:
    """What could be read of a TOML text.

    Attributes:
        values: the tables and values; None where nothing useful could be read.
        findings: the faults of syntax and size.
        lost: names on lines that could not be read, so that nobody calls them missing.
    """

    values: dict[str, Any] | None
    findings: tuple[Finding, ...] = ()
    lost: frozenset[str] = frozenset()


def shown(value: object) -> str:
    """A value as a finding shows it: one line, at most 60 characters, nothing that moves the cursor."""
    if isinstance(value, bool):
        text = str(value).lower()
    elif value is None or isinstance(value, Mapping | list | tuple):
        text = ""
    else:
        text = str(value)[:240]
    escaped = "".join(c if c.isprintable() else c.encode("unicode_escape").decode("ascii") for c in text)
    return escaped if len(escaped) <= 60 else f"{escaped[:59]}…"


def parse_toml(source: str | bytes, file: str) -> TomlDocument:
    """Read TOML, line by line where some lines cannot be read.

    Args:
        source: the text, or the file's bytes (UTF-8, with or without a byte order mark).
        file: what findings call it.

    Returns:
        The values, with every fault of syntax. Numbers with a point come as Decimal.
    """
    if len(source) > LARGEST_FILE:
        return _refused(file, f"larger than {LARGEST_FILE // 1024} KB; this is not read")
    try:
        text = source.decode("utf-8") if isinstance(source, bytes) else source
    except UnicodeDecodeError as wrong:
        line = wrong.object.count(b"\n", 0, wrong.start) + 1
        return _refused(file, "this is not text in UTF-8; save it in that encoding", f"line {line}")
    text = text.removeprefix("\ufeff")
    endless = _ENDLESS_KEY.search(text)
    if endless:
        line = text.count("\n", 0, endless.start()) + 1
        return _refused(file, "a name with so many dots is not read", f"line {line}", endless[0])
    parsed = _parse_line_by_line(text, file)
    too_much = _excess(parsed.values)
    return _refused(file, too_much) if too_much else parsed


def write_toml(values: Mapping[str, object]) -> str:
    """Values as TOML text; decimals without a fraction are written as whole numbers."""
    return tomli_w.dumps({name: _writable(value) for name, value in values.items()})


def _writable(value: object) -> object:
    if isinstance(value, Mapping):
        return {name: _writable(inner) for name, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_writable(inner) for inner in value]
    if isinstance(value, Decimal) and value.is_finite() and abs(value) < 10**9 and value % 1 == 0:
        return int(value)
    return value


def _refused(file: str, message: str, field: str = "", value: str = "") -> TomlDocument:
    return TomlDocument(None, (Finding(file, field, shown(value), message),))


def _parse_line_by_line(text: str, file: str) -> TomlDocument:
    lines = text.replace("\r\n", "\n").split("\n")
    findings: list[Finding] = []
    lost: set[str] = set()
    for _ in range(_LINES_PASSED_OVER if len(text) <= _SMALL_FILE else 1):
        try:
            values = tomllib.loads("\n".join(lines), parse_float=Decimal)
        except tomllib.TOMLDecodeError as wrong:
            said = str(wrong)
            at = _AT_LINE.search(said)
            number = int(at[1]) if at else len(lines)
            line = lines[number - 1].strip()
            findings.append(Finding(file, f"line {number}", shown(line), _in_plain_words(said)))
            if not at or said.startswith("Unclosed"):
                break  # The trouble began on an earlier line, and nothing after it can be told apart.
            lost |= _blank(lines, number - 1)
        except RecursionError:
            return _refused(file, "lists or tables stand too deep inside each other")
        except (ValueError, ArithmeticError):
            return _refused(file, "a number has far too many digits")
        else:
            return TomlDocument(values, tuple(findings), frozenset(lost))
    return TomlDocument(None, tuple(findings))


def _in_plain_words(said: str) -> str:
    for start, words in _SYNTAX:
        if said.startswith(start):
            return words
    return f"this line is not TOML: {shown(_AT_LINE.sub('', said))}"


def _blank(lines: list[str], index: int) -> set[str]:
    """Empty a line, or a heading with all that stands under it; the names that go."""
    end = index + 1
    if lines[index].lstrip().startswith("["):
        while end < len(lines) and not lines[end].lstrip().startswith("["):
            end += 1
    names = {match[1] for line in lines[index:end] if (match := _KEY_OF_LINE.match(line))}
    lines[index:end] = [""] * (end - index)
    return names


def _excess(values: dict[str, Any] | None) -> str:
    """Why the values are too many, too long or too deep; empty when they are not."""
    waiting: list[tuple[int, object]] = [(0, values)]
    count = 0
    while waiting:
        depth, value = waiting.pop()
        count += 1
        if count > MOST_VALUES:
            return f"more than {MOST_VALUES} values; this is not read"
        if depth > DEEPEST:
            return f"lists or tables stand more than {DEEPEST} deep inside each other"
        if isinstance(value, dict):
            if any(len(name) > LONGEST_KEY for name in value):
                return f"a name is longer than {LONGEST_KEY} characters"
            waiting.extend((depth + 1, inner) for inner in value.values())
        elif isinstance(value, list):
            waiting.extend((depth + 1, inner) for inner in value)
        elif isinstance(value, str) and len(value) > LARGEST_TEXT:
            return f"a text is longer than {LARGEST_TEXT} characters"
    return ""
