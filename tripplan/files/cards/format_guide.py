"""The description of the place card and of the household file, field by field, made from their own schemas.

`python -m tripplan.files.cards.format_guide demo_places/FORMAT.md` writes it anew.
"""

import json
import sys
from collections.abc import Iterator, Mapping
from importlib.resources import files
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from tripplan.documents.family.household import Household
from tripplan.documents.field_spec import called, forms_in
from tripplan.documents.places.place import Place
from tripplan.files.toml.form_schema import schema_of

_DOCUMENTS: Mapping[str, type[BaseModel]] = {"The place card": Place, "The household file": Household}
_PATTERNS = {
    r"^\d{2}:\d{2}(:\d{2})?$": "time of day",
    r"^\d{4}-\d{2}(-\d{2})?$": "date, or year and month",
}
_HEAD = "| field | called | what it is | if left out | meaning |\n|---|---|---|---|---|\n"


def format_guide() -> str:
    """What holds everywhere, then both documents, one table for each group of fields, as Markdown."""
    return _introduction() + "\n".join(
        f"# {title}\n\n{''.join(_sections(form, schema_of(form, title), set()))}"
        for title, form in _DOCUMENTS.items()
    )


def _sections(form: type[BaseModel], schema: dict[str, Any], done: set[str], path: str = "") -> Iterator[str]:
    """A form's table, then those of the forms that it refers to; each once."""
    if form.__name__ in done:
        return
    done.add(form.__name__)
    shape = schema["$defs"][form.__name__] if path else schema
    lines = "".join(
        f"| `{name}` | {field['title']} | {_kind(field, schema)} | "
        f"{_left_out(name, field, shape)} | {' '.join(field['description'].split())} |\n"
        for name, field in ((name, _told(field, schema)) for name, field in shape["properties"].items())
    )
    heading = f"## {called(form)}\n\n" if path else ""
    written = f" Written as `{path}`." if path else ""
    yield f"{heading}{' '.join(shape['description'].split())}{written}\n\n{_HEAD}{lines}\n"
    for name, info in form.model_fields.items():
        inside = f"{path.strip('[]')}.{name}".lstrip(".")
        many = shape["properties"][name].get("type") == "array"
        for inner in forms_in(info.annotation):
            if "properties" in schema["$defs"].get(inner.__name__, ()):
                yield from _sections(inner, schema, done, f"[[{inside}]]" if many else f"[{inside}]")


def _told(field: dict[str, Any], schema: dict[str, Any]) -> dict[str, Any]:
    """A field with what its schema leaves to the form that it refers to."""
    inner = schema["$defs"][field["$ref"].rsplit("/", 1)[1]] if "$ref" in field else {}
    return {**{word: inner[word] for word in ("title", "description") if word in inner}, **field}


def _kind(field: dict[str, Any], schema: dict[str, Any]) -> str:
    """What a field holds, in plain words."""
    unit = f" [{field['unit']}]" if "unit" in field else ""
    if "$ref" in field:
        inner = schema["$defs"][field["$ref"].rsplit("/", 1)[1]]
        return f"group: {inner['title'].lower()}" if "properties" in inner else _kind(inner, schema)
    if "oneOf" in field:
        return " or ".join(_kind(one, schema) for one in field["oneOf"])
    if field.get("type") == "array":
        return f"list of {_kind(field['items'], schema).replace('group: ', '')}"
    if choices := field.get("enum") or [field[name] for name in ("const",) if name in field]:
        return " or ".join(f"`{json.dumps(choice)}`" for choice in choices)
    if "anyOf" in field:
        return "price" if "A-Z" in json.dumps(field) else f"{_kind(field['anyOf'][0], schema)}{unit}"
    if field["type"] == "boolean":
        return "`true` or `false`"
    if field["type"] in ("integer", "number"):
        least, more = field.get("minimum"), field.get("exclusiveMinimum")
        ends = [f"more than {more:g}" if more is not None else "" if least is None else f"{least:g}"]
        ends += [f"{field['maximum']:g}"] if "maximum" in field else ["or more"] if ends[0] else []
        words = "whole number" if field["type"] == "integer" else "number"
        between = f", {ends[0]} {'' if ends[-1] == 'or more' else 'to '}{ends[-1]}" if ends[0] else ""
        return f"{words}{between}{unit}"
    if field.get("format") == "date" or "any" in field.get("examples", ()):
        return "date" if "format" in field else "age band"
    length = f"text, up to {field['maxLength']} characters" if "maxLength" in field else "text"
    return _PATTERNS.get(field.get("pattern", ""), length)


def _left_out(name: str, field: dict[str, Any], shape: dict[str, Any]) -> str:
    """What counts when a field is left out."""
    if name in shape.get("required", ()):
        return "is needed"
    if field.get("default") in (None, []):
        return "none" if field.get("type") == "array" else "unknown or none"
    if isinstance(field["default"], dict):
        return "the defaults of its fields"
    default = field["default"] if isinstance(field["default"], str) else json.dumps(field["default"])
    return f"`{default}`" if default else "empty"


def example_card() -> str:
    """The small card that the description shows."""
    return _introduction().split("```toml\n")[1].split("```")[0]


def _introduction() -> str:
    return files("tripplan.files.cards").joinpath("format_introduction.md").read_text(encoding="utf-8")


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(format_guide(), encoding="utf-8", newline="\n")
