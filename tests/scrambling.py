"""Files and forms as nobody should write them: sound ones, damaged at random in ways that really happen."""

import json
import re
from collections.abc import Callable, Sequence
from random import Random
from typing import Any

_NUMBER = re.compile(rb"\d+(?:\.\d+)?")
_VALUE = re.compile(rb'"[^"\n]*"|\btrue\b|\bfalse\b|\d+(?:\.\d+)?')
ODD_TEXTS = (
    "",
    " ",
    "0",
    "-1",
    "1e999",
    "-0.0",
    "nan",
    "inf",
    "9" * 400,
    "٣",
    "1,50",
    "$5",
    "=HYPERLINK(1)",
    "<script>alert(1)</script>",
    "$x^2$ **b** [l](http://example.org)",
    "a\x00b",
    "a\r\nBEGIN:VEVENT",
    "\u202eabc\u2066",
    "\ud7ff\ufffe",
    "e\u0301" * 60,
    "x" * 30_000,
    "None",
    "true",
    "2026-02-30",
    "9999-12-31",
    "0001-01-01",
    "24:00",
    "12:60",
    "../../etc/passwd",
    "{}",
    "[[[[",
    "'; DROP TABLE document; --",
    "👩‍👧‍👦",
)
"""What a field may be given by accident, by another program or on purpose."""
_ODD_BYTES = (
    b"\x00",
    b"\xff\xfe",
    b"\xef\xbb\xbf",
    b"\xc3",
    b"\xed\xa0\x80",
    b"\r",
    b"\x0b",
    b'"',
    b"'''",
    b"[[",
    b"]",
    b"{",
    b"=",
    b":",
    b";",
    b",",
    b"#",
    b"\\",
    b"[" * 500,
    b"{a=" * 300,
    b"a." * 400,
    b"END:VCALENDAR\r\n",
    b"BEGIN:VEVENT\r\n",
    b"RRULE:FREQ=SECONDLY\r\n",
)
_ODD_VALUES = (
    b"-1",
    b"0",
    b"nan",
    b"inf",
    b"1e400",
    b"9" * 60,
    b"0x10",
    b"true",
    b"[]",
    b"{}",
    b'""',
    b'"x"',
    b"null",
    b"2026-02-30",
    b"99999999T999999Z",
    b"1979-05-27T07:32:00Z",
    b"25:61",
)

Scramble = Callable[[bytes, Random], bytes]


def _flip(data: bytes, random: Random) -> bytes:
    at = random.randrange(len(data))
    return data[:at] + bytes([data[at] ^ (1 << random.randrange(8))]) + data[at + 1 :]


def _cut(data: bytes, random: Random) -> bytes:
    return data[: random.randrange(len(data))]


def _piece(data: bytes, random: Random) -> tuple[int, int]:
    first = random.randrange(len(data))
    return first, min(len(data), first + random.randint(1, 200))


def _remove(data: bytes, random: Random) -> bytes:
    first, last = _piece(data, random)
    return data[:first] + data[last:]


def _double(data: bytes, random: Random) -> bytes:
    first, last = _piece(data, random)
    return data[:last] + data[first:last] * random.choice((1, 1, 20)) + data[last:]


def _insert(data: bytes, random: Random) -> bytes:
    at = random.randrange(len(data))
    return data[:at] + random.choice(_ODD_BYTES) + data[at:]


def _other(pattern: re.Pattern[bytes], values: Sequence[bytes]) -> Scramble:
    def scramble(data: bytes, random: Random) -> bytes:
        found = list(pattern.finditer(data))
        if not found:
            return _insert(data, random)
        picked = random.choice(found)
        return data[: picked.start()] + random.choice(values) + data[picked.end() :]

    return scramble


def _lines(change: Callable[[list[bytes], int, int], None]) -> Scramble:
    def scramble(data: bytes, random: Random) -> bytes:
        lines = data.splitlines(keepends=True)
        change(lines, random.randrange(len(lines)), random.randrange(len(lines)))
        return b"".join(lines)

    return scramble


def _swap(lines: list[bytes], one: int, other: int) -> None:
    lines[one], lines[other] = lines[other], lines[one]


def _drop(lines: list[bytes], one: int, _: int) -> None:
    del lines[one]


def _again(lines: list[bytes], one: int, other: int) -> None:
    lines.insert(other, lines[one])


def _coded_otherwise(data: bytes, random: Random) -> bytes:
    text = data.decode(errors="replace").replace("e", "é")
    return text.encode(random.choice(("utf-16", "utf-32", "latin-1", "cp037", "utf-7")), errors="replace")


_SCRAMBLES: tuple[Scramble, ...] = (
    _flip,
    _flip,
    _cut,
    _remove,
    _double,
    _insert,
    _other(_NUMBER, _ODD_VALUES),
    _other(_VALUE, _ODD_VALUES),
    _other(_VALUE, [json.dumps(text).encode() for text in ODD_TEXTS]),
    _lines(_swap),
    _lines(_drop),
    _lines(_again),
    _coded_otherwise,
)


def scrambled(data: bytes, random: Random) -> bytes:
    """A file after one to three accidents; never the same as before."""
    changed = data
    while changed == data:
        for _ in range(random.choice((1, 1, 2, 3))):
            if changed:
                changed = random.choice(_SCRAMBLES)(changed, random)
    return changed


def scrambled_json(data: bytes, random: Random) -> bytes:
    """A JSON file in which fields are missing, doubled, swapped or of another type; it is still JSON."""
    whole = json.loads(data)
    for _ in range(random.choice((1, 1, 2))):
        _scramble_fields(whole, random)
    return json.dumps(whole).encode()


def odd_value(random: Random) -> Any:
    """A value of any type that JSON has."""
    return random.choice(
        (None, True, 0, -1, 1e308, 10**30, float("nan"), [], {}, [[]] * 5, {"a": {"b": 1}}, *ODD_TEXTS)
    )


def _scramble_fields(whole: Any, random: Random) -> None:
    holder = whole
    while True:
        keys = list(holder) if isinstance(holder, dict) else range(len(holder))
        key = random.choice(keys)
        inner = holder[key]
        if not isinstance(inner, dict | list) or not inner or random.random() < 0.1:
            break
        holder = inner
    match random.randrange(4):
        case 0:
            del holder[key]
        case 1:
            holder[key] = odd_value(random)
        case 2 if isinstance(holder, dict):
            holder[random.choice(("x", "", "kind", "__class__", "id"))] = inner
        case 2:
            holder.append(inner)
        case _:
            other = random.choice(list(keys))
            holder[key], holder[other] = holder[other], inner
