"""What is wrong with a field, in words for a parent rather than for a programmer."""

from collections.abc import Iterable
from difflib import get_close_matches

from pydantic import BaseModel
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from tripplan.documents.field_spec import forms_in
from tripplan.files.toml.toml_text import shown

MISSING = "is needed"
"""Of a field; what it holds may follow after a colon."""
_WHOLE_NUMBER = "must be a whole number"
_NUMBER = "must be a number, with a point before decimals"
_YES_OR_NO = "must be true or false"
_DATE = "must be a date such as 2026-03-14"
_FIELDS = "must be a heading with fields of its own, not a single value"
_LIST = "must be a list: values in [ ], or one [[heading]] for each entry"

_WORDS = {
    "missing": MISSING,
    "string_type": "must be a text in quotation marks",
    "string_too_short": "must not be empty",
    "string_too_long": "must have no more than {max_length} characters",
    "string_pattern_mismatch": "does not have the right form",
    "string_unicode": "must be a text without broken characters",
    "too_short": "needs {min_length} or more entries",
    "too_long": "must have no more than {max_length} entries",
    "greater_than": "must be more than {gt:g}",
    "greater_than_equal": "must be {ge:g} or more",
    "less_than": "must be less than {lt:g}",
    "less_than_equal": "must be {le:g} or less",
    "int_type": _WHOLE_NUMBER,
    "int_parsing": _WHOLE_NUMBER,
    "int_parsing_size": _WHOLE_NUMBER,
    "int_from_float": _WHOLE_NUMBER,
    "float_type": _NUMBER,
    "float_parsing": _NUMBER,
    "decimal_type": _NUMBER,
    "decimal_parsing": _NUMBER,
    "finite_number": _NUMBER,
    "bool_type": _YES_OR_NO,
    "bool_parsing": _YES_OR_NO,
    "date_type": _DATE,
    "date_parsing": _DATE,
    "date_from_datetime_parsing": _DATE,
    "date_from_datetime_inexact": _DATE,
    "tuple_type": _LIST,
    "list_type": _LIST,
    "model_type": _FIELDS,
    "model_attributes_type": _FIELDS,
    "dict_type": _FIELDS,
    "literal_error": "must be {expected}",
    "enum": "must be {expected}",
    "union_tag_not_found": _FIELDS,
    "union_tag_invalid": "must be one of {expected_tags}",
    "value_error": "{error}",
}


def in_words(error: ErrorDetails, form: type[BaseModel]) -> str:
    """One fault that pydantic found, as a plain sentence without its subject.

    Args:
        error: the fault.
        form: the written form that was read, from which its path starts.
    """
    owners = _owners(form, error["loc"])
    name = error["loc"][-1] if error["loc"] else ""
    if error["type"] == "extra_forbidden":
        return _unknown_field(str(name), owners, form)
    context = error.get("ctx", {})
    if error["type"] == "greater_than_equal" and context["ge"] == 0:
        return "must not be negative"
    words = _WORDS.get(error["type"], "cannot be read").format(**context)
    field = next((f for owner in owners for n, f in owner.model_fields.items() if n == name), None)
    explained = error["type"] in ("missing", "string_pattern_mismatch")
    return f"{words}: {_first_sentence(field)}" if explained and field and field.description else words


def _first_sentence(field: FieldInfo) -> str:
    return (field.description or "").replace("\n", " ").split(". ")[0].rstrip(".")


def _owners(form: type[BaseModel], path: tuple[int | str, ...]) -> tuple[type[BaseModel], ...]:
    """The forms in which the last name of a path is, or would be, a field."""
    forms: tuple[type[BaseModel], ...] = (form,)
    for step in path[:-1]:
        if isinstance(step, int):
            continue
        inner = tuple(f for owner in forms if step in owner.model_fields for f in _forms_of(owner, step))
        # A step that is no field is the kind of offer, which pydantic writes into the path.
        forms = inner or tuple(f for f in forms if _kind(f) == step)
    return forms


def _forms_of(owner: type[BaseModel], field: str) -> tuple[type[BaseModel], ...]:
    return forms_in(owner.model_fields[field].annotation)


def _kind(form: type[BaseModel]) -> object:
    return form.model_fields["kind"].default if "kind" in form.model_fields else None


def _unknown_field(name: str, owners: Iterable[type[BaseModel]], form: type[BaseModel]) -> str:
    known = [field for owner in owners for field in owner.model_fields]
    close = get_close_matches(name.lower()[:80], known, n=1)
    if close:
        return f"there is no such field; did you mean {close[0]}?"
    if name in form.model_fields:
        return f"{shown(name)} belongs at the top of the file, above the first [heading]"
    return f"there is no such field here; known are {', '.join(known)}" if known else "there is no such field"
