"""Reading a written form from TOML with every fault at once, and writing it back."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any, TypeVar

from babel.numbers import list_currencies
from pydantic import BaseModel

from tripplan.errors import Finding, Weight
from tripplan.files.toml.faults import Faults, validated
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.stand_ins import LARGE, SMALL, Substitution, mended
from tripplan.files.toml.toml_text import LARGEST_FILE, parse_toml, write_toml
from tripplan.regular_file import open_regular

F = TypeVar("F", bound=BaseModel)
Rule = Callable[[F, str], Iterable[Finding]]
"""A check across fields: it takes the form and the file's name."""

MOST_FAULTS = 100
"""So many faults are listed; a file with more is something else [-]."""
_ALWAYS_WRITTEN = ("format", "kind")


def read_form(source: str | bytes, file: str, form: type[F], rules: Sequence[Rule[F]] = ()) -> ReadResult[F]:
    """Read a form from TOML and find every fault in one go.

    Rules across fields are tried even where single fields are wrong: those fields are replaced by harmless
    stand-ins first, and what a rule then finds is kept only if it does not hang on the stand-in.

    Args:
        source: TOML text, or a file's bytes.
        file: what findings call it.
        form: the written form; a field `currency` in the file is what prices must agree with.
        rules: the checks across fields.

    Returns:
        The form and its warnings, or every fault.
    """
    parsed = parse_toml(source, file)
    if parsed.values is None:
        return ReadResult(None, parsed.findings)
    context = {"currency": _currency(parsed.values)}
    value, errors = validated(parsed.values, form, context)
    if value is not None and not parsed.findings:
        findings = tuple(found for rule in rules for found in rule(value, file))
        return ReadResult(None if any(f.weight is Weight.FAULT for f in findings) else value, findings)
    faults = Faults(file, form, parsed.values, parsed.lost)
    faults.add(errors[:MOST_FAULTS])
    listed = (*parsed.findings, *faults.findings)
    if len(errors) > MOST_FAULTS:
        more = Finding(file, "", "", f"and {len(errors) - MOST_FAULTS} more faults")
        return ReadResult(None, (*listed, more))
    first, second = (
        _findings_once_mended(faults.copy(), context, mending, rules)
        for mending in (
            Substitution(parsed.values, SMALL, "small"),
            Substitution(parsed.values, LARGE, "large"),
        )
    )
    return ReadResult(None, (*listed, *(f for f in first if f in second)))


def _findings_once_mended(
    faults: Faults, context: dict[str, Any], mending: Substitution, rules: Sequence[Rule[F]]
) -> list[Finding]:
    """What shows once the known faults are mended: faults they hid, and what the rules find."""
    form: Any = faults.form
    value = mended(faults, form, context, mending)
    if value is None:
        return faults.findings
    found = (finding for rule in rules for finding in rule(value, faults.file))
    return [*faults.findings, *(f for f in found if not faults.covers(f.field))]


def form_text(form: BaseModel) -> str:
    """A form as TOML, without what it leaves at its default; reading it gives the same form again."""
    return write_toml(_told(form))


def start_of_file(path: Path) -> bytes:
    """A file's bytes, no more than are needed to see that it is too large.

    Raises:
        OSError: it cannot be opened.
    """
    with open_regular(path) as file:
        return file.read(LARGEST_FILE + 1)


def _told(form: BaseModel) -> dict[str, object]:
    dumped = form.model_dump()
    told: dict[str, object] = {}
    for name, field in type(form).model_fields.items():
        value = getattr(form, name)
        if value is None or (name not in _ALWAYS_WRITTEN and value == field.get_default()):
            continue
        told[name] = _told_value(value, dumped[name])
    return told


def _told_value(value: object, dumped: object) -> object:
    """Inner forms leave their defaults out too, except those that are dumped as one text."""
    if isinstance(value, BaseModel) and isinstance(dumped, dict):
        return _told(value)
    if isinstance(value, tuple) and isinstance(dumped, tuple):
        return [_told_value(v, d) for v, d in zip(value, dumped, strict=True)]
    return dumped


def _currency(values: Mapping[str, Any]) -> str | None:
    stated = values.get("currency")
    return stated if isinstance(stated, str) and stated in list_currencies() else None
