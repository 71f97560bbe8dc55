"""The JSON answers of `tripplan check` and `tripplan import`."""

from typing import Literal

from tripplan.commands.answers.parts import Told
from tripplan.errors import Weight


class FindingTold(Told):
    """One thing found wrong or odd in a file."""

    file: str
    field: str
    """The path to the field; empty for the file as a whole."""
    value: str
    """What stood there, shortened."""
    message: str
    weight: Weight


class CheckedTold(Told):
    """One file that was checked."""

    file: str
    kind: Literal["place", "household"]
    """What it was taken for."""
    usable: bool
    """Whether it has no fault."""
    findings: tuple[FindingTold, ...]


class CheckAnswer(Told):
    """What was found in files."""

    format: Literal[1] = 1
    """Version of the answers' keys."""
    files: tuple[CheckedTold, ...]


class ImportAnswer(Told):
    """What an import changes in the records; each document by what it is called."""

    format: Literal[1] = 1
    """Version of the answers' keys."""
    carried_out: bool
    added: tuple[str, ...]
    changed: tuple[str, ...]
    removed: tuple[str, ...]
    unchanged: int
