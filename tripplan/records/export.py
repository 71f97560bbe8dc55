"""All records in one JSON file, and back."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from pydantic import ValidationError

from tripplan.documents.family.household import Household
from tripplan.documents.model import Written
from tripplan.errors import Finding
from tripplan.records.kinds import KINDS, MODELS
from tripplan.records.reading import read_document
from tripplan.records.store import Records, Retold

FORMAT = 1
"""Version of the file's format; its own field, `tripplan_records`, also tells what the file is."""

MOST_BYTES = 25_000_000
"""A larger file is refused unread; two thousand outings and what is written of them take a third [bytes]."""
MOST_FINDINGS = 200
"""A file with more faults than this was not written by tripplan; the rest of it is not looked at [-]."""
_LONGEST_SHOWN = 60


@dataclass(frozen=True)
class ExportContents:
    """What a file of records holds.

    Attributes:
        documents: what could be read.
        findings: every fault, up to a number nobody would read through; while there are any, documents
            are missing.
    """

    documents: tuple[Written, ...]
    findings: tuple[Finding, ...]

    @property
    def of(self) -> str:
        """Whose it is, in words; an invented family is told as such."""
        household = next((one for one in self.documents if isinstance(one, Household)), None)
        if household is None:
            return "nobody's household"
        return f"{household.name}, an invented family" if household.invented else household.name


def export_all(records: Records) -> bytes:
    """Everything on record but choices about this computer, as JSON in UTF-8; it begins with whose it is.

    The same records always give the same bytes. Former versions are not part of it. What this version cannot
    read goes out as the text that stands there, apart from the rest; an import leaves it out.
    """
    documents: list[dict[str, Any]] = []
    unread: list[dict[str, str]] = []
    for raw in records.raw_documents():
        read = read_document(MODELS[raw.kind], raw.body) if raw.is_sound and raw.kind in MODELS else None
        if read is None or read.value is None:
            unread.append({"kind": raw.kind, "key": raw.key, "text": raw.body})
        else:
            body = read.value.model_dump_json() if read.why else raw.body
            documents.append({"kind": raw.kind, "body": json.loads(body)})
    bodies = (one["body"] for one in documents if one["kind"] == KINDS[Household].name)
    household: dict[str, Any] = next(bodies, {})
    whole = {
        "tripplan_records": FORMAT,
        "of": household.get("name", ""),
        "invented": household.get("invented", False),
        "documents": documents,
        **({"unread": unread} if unread else {}),
    }
    return (json.dumps(whole, ensure_ascii=False, indent=1) + "\n").encode()


def import_all(
    records: Records, data: bytes, file: str, saved_at: datetime, retold: Retold | None = None
) -> tuple[Finding, ...]:
    """Put what a file holds in the place of everything on record; what was there stays in the history.

    Args:
        records: where to.
        data: what `export_all` wrote.
        file: the file's name, for the findings.
        saved_at: what to record as the time of the change; zone-aware.
        retold: how a document of the file reads where another state of it is or was on record; to the letter
            as it is where left out.

    Returns:
        Every fault; with any, nothing was changed.
    """
    contents = read_export(data, file)
    if not contents.findings:
        with records.change(saved_at, f"Everything was replaced from {file}.") as change:
            change.replace_all(contents.documents, retold)
    return contents.findings


def read_export(data: bytes, file: str) -> ExportContents:
    """What a file of records holds; changes nothing.

    Args:
        data: what `export_all` wrote.
        file: the file's name, for the findings.
    """
    if len(data) > MOST_BYTES:
        return _unusable(file, f"a file of records has at most {MOST_BYTES // 1_000_000} MB", str(len(data)))
    try:
        whole = json.loads(data.decode("utf-8-sig"))
    except (ValueError, RecursionError) as error:
        return _unusable(file, "this is not JSON in UTF-8, or it was cut short", str(error))
    if not isinstance(whole, dict) or not isinstance(whole.get("documents"), list):
        return _unusable(file, "this is no file of tripplan records", "")
    version = whole.get("tripplan_records")
    if version != FORMAT:
        message = f"this version of tripplan reads format {FORMAT}; a newer one may read this file"
        return ExportContents((), (Finding(file, "tripplan_records", _short(version), message),))
    documents: list[Written] = []
    findings: list[Finding] = []
    first_at: dict[tuple[str, str], str] = {}
    for number, entry in enumerate(whole["documents"]):
        if len(findings) >= MOST_FINDINGS:
            findings.append(Finding(file, "", "", "there may be more faults after these"))
            break
        field = f"documents[{number}]"
        read = _read_document(entry, file, field)
        if not isinstance(read, Written):
            findings.extend(read)
            continue
        kind = KINDS[type(read)]
        name = (kind.name, kind.key(read))
        if name in first_at:
            findings.append(Finding(file, field, name[1], f"the same {kind.name} stands in {first_at[name]}"))
        first_at.setdefault(name, field)
        documents.append(read)
    return ExportContents(tuple(documents), tuple(findings))


def _read_document(entry: object, file: str, field: str) -> Written | tuple[Finding, ...]:
    if not isinstance(entry, dict) or set(entry) != {"kind", "body"}:
        return (Finding(file, field, _short(entry), "a document has a kind and a body, nothing else"),)
    model = MODELS.get(entry["kind"]) if isinstance(entry["kind"], str) else None
    if model is None or not KINDS[model].travels:
        known = ", ".join(kind.name for kind in KINDS.values() if kind.travels)
        return (Finding(file, f"{field}.kind", _short(entry["kind"]), f"the kind is one of {known}"),)
    try:
        return model.model_validate_json(json.dumps(entry["body"]))
    except ValidationError as error:
        if error.error_count() > MOST_FINDINGS:
            count = str(error.error_count())
            return (
                Finding(file, f"{field}.body", count, "too many faults to list; tripplan did not write this"),
            )
        return tuple(_findings(error, file, f"{field}.body"))


def _findings(error: ValidationError, file: str, field: str) -> Iterator[Finding]:
    for fault in error.errors(include_url=False, include_context=False):
        steps = (f"[{step}]" if isinstance(step, int) else f".{step}" for step in fault["loc"])
        message = fault["msg"].removeprefix("Value error, ")
        yield Finding(file, field + "".join(steps), _short(fault["input"]), message)


def _short(value: object) -> str:
    if isinstance(value, dict | list):
        return ""
    text = str(value)
    return text if len(text) <= _LONGEST_SHOWN else f"{text[: _LONGEST_SHOWN - 1]}…"


def _unusable(file: str, message: str, value: str) -> ExportContents:
    return ExportContents((), (Finding(file, "", _short(value), message),))
