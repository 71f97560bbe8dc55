"""The JSON answers of `tripplan check` and `tripplan import`."""

from dataclasses import dataclass
from typing import Literal

from tripplan.commands.answers.json_keys import json_keys
from tripplan.errors import Finding, Weight


@dataclass(frozen=True)
class Checked:
    """One file that was checked.

    Attributes:
        file: which.
        kind: what it was taken for.
        findings: all that is wrong or odd in it; the field is empty for the file as a whole.
    """

    file: str
    kind: Literal["place", "household"]
    findings: tuple[Finding, ...]

    @property
    def usable(self) -> bool:
        """Whether it has no fault."""
        return all(finding.weight is Weight.WARNING for finding in self.findings)


@dataclass(frozen=True)
class CheckAnswer:
    """What was found in files.

    Attributes:
        files: in the order of the command line.
        format: version of the answers' keys.
    """

    files: tuple[Checked, ...]
    format: Literal[1] = 1


@dataclass(frozen=True)
class ImportAnswer:
    """What an import changes in the records; each document by what it is called.

    Attributes:
        carried_out: whether it was done, or only looked at.
        added: documents that are new.
        changed: documents that are on record otherwise.
        removed: documents that the file does not hold.
        unchanged: how many stay as they are.
        format: version of the answers' keys.
    """

    carried_out: bool
    added: tuple[str, ...]
    changed: tuple[str, ...]
    removed: tuple[str, ...]
    unchanged: int
    format: Literal[1] = 1


json_keys(Checked, "file kind usable findings")
json_keys(CheckAnswer, "format files")
json_keys(ImportAnswer, "format carried_out added changed removed unchanged")
