"""The description of the place card and of the household file, field by field, made from their models.

`python -m tripplan.files.format_guide demo_places/FORMAT.md` writes it anew.
"""

import json
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from tripplan.files.household_file import household_schema
from tripplan.files.place_card import place_card_schema

_INTRODUCTION = """\
# How place cards and the household file are written

Both are [TOML](https://toml.io/en/v1.0.0): a line is `name = value`, texts stand in quotation marks, a
`[heading]` opens a group of fields, and a `[[heading]]` opens one entry of a list. Fields without a heading
stand at the top of the file. Lines that start with `#` are remarks; the program skips them, and does not keep
them when it writes the file anew.

`python -m tripplan check my-card.toml` names every fault of a card at once, with file, field and value.

## A small card

```toml
{example}```

## What holds everywhere

**Version.** `format = 1` says how the file is to be read. When a later program reads cards differently, the
number will change, and a program that meets a number it does not know says so and reads nothing. A field
that a version does not know is a fault, so that a slip of the pen is never passed over.

**Left out is not nought.** A price that is left out is unknown and is counted as unknown; `0` means free.

**Prices** are numbers with a point (`12.50`), or texts that repeat the currency (`"12.50 USD"`), which must
then be the file's own. They have no more digits than can be paid.

**Dates** are written `2026-12-18`, **times of day** `12:30:00` or `"12:30"`, by the clock of the place (on a
card) or of the home (in the household file).

**Ages** are those on the day of the visit, and both ends of a band count: `"3-12"` lets in everybody from the
third birthday to the day before the thirteenth. Other forms are `"7"`, `"65+"`, `"under 2"`,
`"6-23 months"` and `"any"`. Bands of single tickets for the same people must not overlap; a gap between two
bands is a warning, because somebody would be left outside.

**Opening hours** follow the
[opening_hours syntax of OpenStreetMap](https://wiki.openstreetmap.org/wiki/Key:opening_hours/specification):

| written | means |
|---|---|
| `Tu-Su 10:00-17:00` | every day but Monday |
| `Tu-Fr 09:00-12:00,13:00-17:00` | closed over lunch |
| `Apr-Oct Mo-Su 09:00-18:00; Nov-Mar Sa-Su 10:00-16:00` | two seasons |
| `Mo-Su 10:00-17:00; Nov Th[4] off; Dec 24-25 off` | closed on a Thursday in November and at Christmas |
| `Sa-Su 10:00-17:00; PH 10:00-17:00; SH Mo-Fr 10:00-15:00` | more on public holidays, more in school breaks |

After a `;` a later rule replaces the earlier ones on the days it names. `PH` stands for the
public holidays of `country` and `subdivision`, `SH` for the school breaks in the school calendars that the
family has loaded.
The same syntax says in `valid` when an offer may be used: `We`, `Su[1]`, `Nov-Mar 14:00-17:00`.

**Where** something lies is given by `latitude` and `longitude`, or, in the United States, by `postal_code`,
or by `town` and `subdivision`; those two are looked up in a table that comes with the program, so nothing is
asked of the internet. The time zone follows from the place if it is left out.

**Statuses** are plain words, the same on the card (`needs`) and in the household file (`statuses`), such as
`educator`, `student`, `benefit card` or `resident of Dubuque County`.
"""

_EXAMPLE = """\
format = 1
id = "example-mill"
name = "Example Mill"
currency = "USD"

[where]
town = "Galena"
country = "US"
subdivision = "IL"

[visit]
topics = ["grain", "water power"]
cautions = ["Open water beside the path."]

[opening]
hours = "We-Su 10:00-16:00"
last_entry_minutes_before_close = 30

[[offers]]
name = "Adult"
price = 9.50
ages = "13+"

[[offers]]
name = "Child"
price = 5
ages = "4-12"

[[offers]]
name = "Small child"
price = 0
ages = "under 4"

[[offers]]
kind = "bundle"
name = "Family"
price = 26
seats = [{ count = 2, ages = "18+" }, { count = 3, ages = "under 18" }]

[prices_read]
on = 2026-11-06
source = "board at the door"
"""

_WITH_CURRENCY = "[A-Za-z]{3}"
_NAMED_PATTERNS = {
    r"^\d{2}:\d{2}(:\d{2})?$": "time of day",
    r"^\d{4}-\d{2}(-\d{2})?$": "date, or year and month",
}


def format_guide() -> str:
    """The whole description as Markdown."""
    parts = [_INTRODUCTION.format(example=_EXAMPLE)]
    parts.append("# The place card\n")
    parts.extend(_sections(place_card_schema()))
    parts.append("# The household file\n")
    parts.extend(_sections(household_schema()))
    return "\n".join(parts)


def example_card() -> str:
    """The small card that the description shows."""
    return _EXAMPLE


def _sections(schema: dict[str, Any]) -> Iterator[str]:
    """One section for each group of fields; what a group refers to follows it."""
    waiting: list[tuple[str, str, dict[str, Any]]] = [("", "", schema)]
    done: set[str] = set()
    while waiting:
        name, heading, form = waiting.pop(0)
        if name in done:
            continue
        done.add(name)
        form = {**form, "properties": {f: _complete(p, schema) for f, p in form["properties"].items()}}
        yield _section(name, heading, form)
        waiting[:0] = [
            (inner, _heading(heading, field, properties), schema["$defs"][inner])
            for field, properties in form["properties"].items()
            for inner in _forms_named(properties)
        ]


def _heading(outer: str, field: str, properties: dict[str, Any]) -> str:
    path = ".".join(filter(None, (outer.strip("[]"), field)))
    return f"[[{path}]]" if properties.get("type") == "array" else f"[{path}]"


def _complete(properties: dict[str, Any], schema: dict[str, Any]) -> dict[str, Any]:
    """A field with the choices and the description that its schema keeps elsewhere."""
    if "$ref" not in properties:
        return properties
    kept = schema["$defs"][properties["$ref"].rsplit("/", 1)[1]]
    if "properties" in kept:
        return {"description": kept["description"], **properties}
    return {**kept, **{name: value for name, value in properties.items() if name != "$ref"}}


def _section(name: str, heading: str, form: dict[str, Any]) -> str:
    lines = [f"## {_spaced(name)}\n"] if name else []
    lines.append(f"{form['description'].strip()}{f' Written as `{heading}`.' if heading else ''}\n")
    lines += ["| field | what it is | if left out | meaning |", "|---|---|---|---|"]
    required = form.get("required", ())
    for field, properties in form["properties"].items():
        left_out = "must be given" if field in required else _default(properties)
        meaning = " ".join(properties["description"].split())
        unit = f" [{properties['unit']}]" if "unit" in properties else ""
        lines.append(f"| `{field}` | {_kind(properties)}{unit} | {left_out} | {_cell(meaning)} |")
    return "\n".join([*lines, ""])


def _kind(properties: dict[str, Any]) -> str:
    """What a field holds, in plain words."""
    forms = _forms_named(properties)
    if properties.get("type") == "array":
        inner = properties["items"]
        return f"list of {' or '.join(map(_spaced, forms)).lower() if forms else _kind(inner)}"
    if forms:
        return f"group: {_spaced(forms[0]).lower()}"
    if "const" in properties or "enum" in properties:
        choices = properties.get("enum", [properties.get("const")])
        return " or ".join(f"`{json.dumps(choice)}`" for choice in choices)
    if "anyOf" in properties:
        if any(_WITH_CURRENCY in choice.get("pattern", "") for choice in properties["anyOf"]):
            return "price"
        return _kind(next(choice for choice in properties["anyOf"] if choice.get("type") == "number"))
    return _single(properties)


def _single(properties: dict[str, Any]) -> str:
    kind = properties["type"]
    if kind == "boolean":
        return "`true` or `false`"
    if kind in ("integer", "number"):
        words = "whole number" if kind == "integer" else "number"
        low, high = properties.get("minimum"), properties.get("maximum")
        above = properties.get("exclusiveMinimum")
        lowest = f"more than {above:g}" if above is not None else f"{low:g}" if low is not None else ""
        if high is None:
            return f"{words}, {lowest} or more" if lowest else words
        return f"{words}, {lowest} to {high:g}"
    if properties.get("format") == "date":
        return "date"
    if properties.get("pattern") in _NAMED_PATTERNS:
        return _NAMED_PATTERNS[properties["pattern"]]
    if "any" in properties.get("examples", ()):
        return "age band"
    if "maxLength" in properties:
        return f"text, up to {properties['maxLength']} characters"
    return "text"


def _forms_named(properties: dict[str, Any]) -> tuple[str, ...]:
    """The groups of fields that a field refers to."""
    inner = properties.get("items", properties)
    references = [inner, *inner.get("oneOf", ())]
    return tuple(r["$ref"].rsplit("/", 1)[1] for r in references if "$ref" in r)


def _default(properties: dict[str, Any]) -> str:
    if "default" not in properties:
        return "unknown or none" if properties.get("type") != "array" else "none"
    default = properties["default"]
    if isinstance(default, dict):
        return "the defaults of its fields"
    if default in ("", []):
        return "none" if default == [] else "empty"
    return f"`{_cell(default if isinstance(default, str) else json.dumps(default))}`"


def _spaced(name: str) -> str:
    return re.sub(r"(?<=[a-z])([A-Z])", lambda m: f" {m[1].lower()}", name)


def _cell(text: str) -> str:
    return text.replace("|", "\\|")


def write_format_guide(path: Path) -> None:
    """Write the description to a file."""
    path.write_text(format_guide(), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    write_format_guide(Path(sys.argv[1]))
