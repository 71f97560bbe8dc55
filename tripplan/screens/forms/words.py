"""What was found about a document, in the words of its own description."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any

from pydantic import BaseModel

from tripplan.documents.field_spec import asked, forms_in, labels, within_phrase
from tripplan.errors import Finding
from tripplan.language.fault_words import on_screen
from tripplan.screens.widgets.locations.where_form import where_message

_STEP = re.compile(r"([^.\[\]]+)(?:\[(\d+)\])?")
_CODED = re.compile(r"\b[a-z]+(?:_[a-z]+)+\b")
_NAMING = ("name", "member", "subject", "kind")
"""What names an entry of a list, where it has one of these."""


def in_words(
    findings: Sequence[Finding],
    form: type[BaseModel],
    raw: Mapping[str, Any],
    called: Mapping[str, str] | None = None,
) -> tuple[Finding, ...]:
    """Findings about a document with its fields called as on the screen, and no file.

    Args:
        findings: as the document's checks give them, with fields such as ``members[2].born``.
        form: the document.
        raw: what was checked, for the names of its entries.
        called: what else fields are called, by their paths without indices.
    """
    known = {**dict(labels(form)), **(called or {})}
    plain = {path.rpartition(".")[2]: label for path, label in known.items()}

    def uncoded(code: re.Match[str]) -> str:
        return f"'{plain[code[0]]}'" if code[0] in plain else code[0].replace("_", " ")

    return tuple(
        replace(
            finding,
            file="",
            field=field_in_words(finding.field, form, raw, known),
            message=_CODED.sub(uncoded, on_screen(where_message(finding.message))),
        )
        for finding in findings
    )


def field_in_words(field: str, form: type[BaseModel], raw: object, known: Mapping[str, str]) -> str:
    """A path such as ``members[2].born`` as 'Odile, birth date'.

    Args:
        field: the path; words that are no path stay as they are.
        form: the document that it begins in.
        raw: what was checked, for the names of its entries.
        known: what its fields are called, by their paths without indices.
    """
    return ", ".join(_steps(field, form, raw, known))


def _steps(field: str, form: type[BaseModel], raw: object, known: Mapping[str, str]) -> Iterator[str]:
    forms: tuple[type[Any], ...] = (form,)
    path, here, first = "", raw, True
    steps = list(_STEP.finditer(field))
    for step in steps:
        name, index = step[1], step[2]
        path = f"{path}.{name}" if path else name
        label = known.get(path, name.replace("_", " "))
        one = (
            next((asked(form, name).spoken().called for form in forms if name in form.model_fields), "")
            or label
        )
        forms = tuple(
            i
            for one in forms
            if name in one.model_fields
            for i in forms_in(one.model_fields[name].annotation)
        )
        here = here.get(name) if isinstance(here, Mapping) else None
        if index is not None:
            here = here[int(index)] if isinstance(here, list | tuple) and int(index) < len(here) else None
            number = f"{one} {int(index) + 1}"
            yield _own_name(here, forms) or (number if first else within_phrase(number))
            first = False
        elif step is steps[-1]:
            yield label if first else within_phrase(label)


def _own_name(entry: object, forms: Sequence[type[Any]]) -> str:
    """What names an entry of a list; empty where nothing does."""
    if not isinstance(entry, Mapping):
        return ""
    name = next((name for name in _NAMING if entry.get(name)), None)
    if name is None:
        return ""
    words = next((asked(form, name).spoken().words for form in forms if name in form.model_fields), {})
    return str(words.get(entry[name], entry[name])).strip()
