"""Everything that can go wrong, under one root; each error is also the nearest builtin."""

from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path


class Weight(StrEnum):
    """How much a finding matters: a fault stops the work, a warning does not."""

    FAULT = "fault"
    WARNING = "warning"


@dataclass(frozen=True)
class Finding:
    """One thing found wrong (or odd) in what somebody wrote, said in words.

    Attributes:
        file: the file or form it stands in, as the parent knows it.
        field: the path to the field, such as ``offers[2].price``; empty for the file as a whole.
        value: what stood there, shortened to a readable length; empty if nothing did.
        message: what is wrong and what would be right.
        weight: fault or warning.
    """

    file: str
    field: str
    value: str
    message: str
    weight: Weight = Weight.FAULT

    def __str__(self) -> str:
        place = f"{self.file}: {self.field}" if self.field else self.file
        shown = f" (found: {self.value})" if self.value else ""
        return f"{place}: {self.message}{shown}"


class TripplanError(Exception):
    """The root of every error this package raises on purpose."""


class InputFaults(TripplanError, ValueError):
    """What was handed in cannot be used; nothing was changed.

    Attributes:
        findings: every fault found in one reading, in the order of the fields.
    """

    def __init__(self, findings: tuple[Finding, ...]) -> None:
        self.findings = findings
        super().__init__("\n".join(str(finding) for finding in findings))


class CalendarReaderBroken(TripplanError, RuntimeError):
    """The process that reads calendar files fails on this computer, whatever the file."""


class CurrencyMismatch(TripplanError, ValueError):
    """Two currencies met in one sum or comparison.

    Attributes:
        left, right: the two ISO 4217 codes.
    """

    def __init__(self, left: str, right: str) -> None:
        self.left, self.right = left, right
        super().__init__(f"{left} and {right} cannot be added or compared without an exchange rate")


class PlanError(TripplanError, ValueError):
    """A calculator was asked something that has no meaning, such as a day plan without a party."""


class UnknownName(TripplanError, LookupError):
    """A name does not stand for anything on record.

    Attributes:
        what: the kind of thing looked for.
        name: the name that was given.
        known: the names that would have worked.
    """

    def __init__(self, what: str, name: str, known: tuple[str, ...] = ()) -> None:
        self.what, self.name, self.known = what, name, known
        hint = f"; known: {', '.join(known)}" if known else ""
        super().__init__(f"no {what} called {name!r}{hint}")


class LookupFailed(TripplanError, LookupError):
    """A question to a service on the internet brought no answer; says why in words."""


class CalendarServerTrouble(TripplanError, ConnectionError):
    """A calendar server could not be asked or told something; says why in words.

    Attributes:
        stops: whether the next question would fare the same.
    """

    def __init__(self, said: str, *, stops: bool = False) -> None:
        self.stops = stops
        super().__init__(said)


class RecordConflict(TripplanError, RuntimeError):
    """Something was saved from elsewhere since it was read here; nothing was overwritten.

    Attributes:
        what: the record's name.
    """

    def __init__(self, what: str) -> None:
        self.what = what
        super().__init__(f"{what} was changed in another window meanwhile; load it again first")


class RecordsUnusable(TripplanError, OSError):
    """The records file cannot be opened, read or written."""


class RecordsDamaged(RecordsUnusable):
    """A records file holds what no program of this kind wrote, or lost a part; a copy may take its place.

    Attributes:
        path: the file.
    """

    def __init__(self, path: Path, said: str) -> None:
        self.path = path
        super().__init__(said)


class RoadsUnusable(TripplanError, RuntimeError):
    """A region's road network cannot be built, opened, replaced or removed."""
