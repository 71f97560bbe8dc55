"""The faults of one written form: found, placed on the path where they stand, each told once."""

from collections.abc import Iterable
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from tripplan.errors import Finding
from tripplan.files.toml.fault_words import in_words
from tripplan.files.toml.toml_text import shown

F = TypeVar("F", bound=BaseModel)
Path = tuple[int | str, ...]
"""Names and positions that lead to a value."""


def validated(
    values: dict[str, Any], form: type[F], context: dict[str, Any]
) -> tuple[F | None, list[ErrorDetails]]:
    """The form that values make, or what pydantic finds wrong with them; each once."""
    try:
        return form.model_validate(values, context=context), []
    except ValidationError as wrong:
        return None, [error for error in wrong.errors(include_url=False) if not _echo(error)]


def _echo(error: ErrorDetails) -> bool:
    """Whether a list is only called too short because its entries were found wrong."""
    return error["type"] == "too_short" and len(error["input"]) >= error["ctx"]["min_length"]


def path_in(values: object, error: ErrorDetails) -> Path:
    """The path to a fault in what was written; pydantic's own path also names the kind of an offer."""
    path: list[int | str] = []
    here: Any = values
    for step in error["loc"]:
        inside = step in here if isinstance(here, dict) else isinstance(here, list) and isinstance(step, int)
        if inside:
            here = here[step]
            path.append(step)
    if error["type"] == "missing":
        path.append(error["loc"][-1])
    if error["type"] == "union_tag_invalid":
        path.append("kind")
    return tuple(path)


def _written(path: Path) -> str:
    text = ""
    for step in path:
        if isinstance(step, int):
            text += f"[{step}]"
            continue
        plain = step.replace("_", "").replace("-", "").isalnum() and step.isascii()
        text += f".{shown(step)}" if plain else f'."{shown(step)}"'
    return text.removeprefix(".")


def value_at(values: object, path: Path) -> object:
    """What stands at a path; None if nothing does."""
    for step in path:
        if isinstance(values, dict):
            values = values.get(step)
        elif isinstance(values, list) and isinstance(step, int):
            values = values[step]
        else:
            return None
    return values


class Faults:
    """The faults found so far in one file, each path once."""

    def __init__(
        self, file: str, form: type[BaseModel], values: dict[str, Any], lost: frozenset[str]
    ) -> None:
        self.file, self.form, self.values, self.lost = file, form, values, lost
        self.paths: set[Path] = set()
        self.findings: list[Finding] = []

    def copy(self) -> "Faults":
        """The same paths, with an empty list for what is found from now on."""
        twin = Faults(self.file, self.form, self.values, self.lost)
        twin.paths = set(self.paths)
        return twin

    def add(self, errors: Iterable[ErrorDetails], mended: dict[str, Any] | None = None) -> None:
        """Note faults, leaving out what stands at or under an earlier one.

        Args:
            errors: what pydantic found.
            mended: the values it read, if not those of the file; their paths may differ.
        """
        for error in errors:
            path = path_in(self.values if mended is None else mended, error)
            if any(path[:length] in self.paths for length in range(len(path) + 1)):
                continue
            self.paths.add(path)
            if error["type"] == "missing" and path[-1] in self.lost:
                continue
            words = in_words(error, self.form)
            if path and error["loc"][-1] not in path[-2:]:
                words = f"its {error['loc'][-1]} {words}"  # A part of what is written as one text.
            self.findings.append(
                Finding(self.file, _written(path), shown(value_at(self.values, path)), words)
            )

    def covers(self, field: str) -> bool:
        """Whether a field stands at or under one that is known to be wrong."""
        faulty = (_written(path) for path in self.paths if path)
        return any(field == f or field.startswith((f"{f}.", f"{f}[")) for f in faulty)
