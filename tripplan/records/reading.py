"""A document made of what stands on record, even where an older program with looser rules wrote it."""

import json
from dataclasses import dataclass
from typing import Generic, TypeVar

from pydantic import ValidationError

from tripplan.documents.model import Written

T = TypeVar("T", bound=Written)

_LONGEST_SHOWN = 60
_MOST_NAMED = 5


@dataclass(frozen=True)
class Read(Generic[T]):
    """What came of reading one document.

    Attributes:
        value: the document; None where it cannot be read.
        why: what is wrong with it, in words; empty where nothing is. With a value, this says which of its
            fields were left out, so that the usual counts for them.
    """

    value: T | None
    why: str = ""


def read_document(model: type[T], body: str | bytes) -> Read[T]:
    """Read a document from its JSON text.

    A field that today's form refuses is left out where the document can do without it: a form that became
    stricter, or lost a field, never locks out what was saved before.

    Args:
        model: the form.
        body: as it was saved.
    """
    try:
        return Read(model.model_validate_json(body))
    except ValidationError as error:
        first = error
    try:
        data = json.loads(body)
    except ValueError:
        return Read(None, "what stands there is no document at all")
    named = _named(first)
    if not all(_leave_out(data, fault["loc"]) for fault in first.errors(include_url=False)):
        return Read(None, named)
    try:
        return Read(model.model_validate_json(json.dumps(data)), named)
    except ValidationError:
        return Read(None, named)


def _leave_out(data: object, path: tuple[int | str, ...]) -> bool:
    """Take a single value out of a document; whether there was one at the end of the path."""
    *way, last = path or ("",)
    for step in way:
        inside = _inside(data, step)
        if inside is not None:
            data = inside
        elif not isinstance(step, str):
            return False  # a step that only the form knows, such as the kind of an offer, is passed over
    if not isinstance(data, dict) or last not in data:
        return False
    del data[last]
    return True


def _inside(data: object, step: int | str) -> object:
    """What lies one step further in; None where nothing does."""
    if isinstance(data, dict):
        return data.get(step)
    return data[step] if isinstance(data, list) and isinstance(step, int) and step < len(data) else None


def _named(error: ValidationError) -> str:
    faults = error.errors(include_url=False, include_context=False)
    said = []
    for fault in faults[:_MOST_NAMED]:
        field = ".".join(str(step) for step in fault["loc"]) or "the whole"
        shown = fault["input"]
        value = "" if isinstance(shown, dict | list) else f" (found: {str(shown)[:_LONGEST_SHOWN]})"
        said.append(f"{field}: {fault['msg'].removeprefix('Value error, ')}{value}")
    more = len(faults) - len(said)
    return "; ".join([*said, f"{more} more"] if more > 0 else said)
