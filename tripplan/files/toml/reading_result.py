"""What reading a file gives: the value, if there is one, and everything odd that was found on the way."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Generic, TypeVar

from tripplan.errors import Finding, InputFaults, Weight

Value = TypeVar("Value")
Changed = TypeVar("Changed")


@dataclass(frozen=True)
class ReadResult(Generic[Value]):
    """What came out of a file.

    Attributes:
        value: what was read; None when a fault forbids its use.
        findings: faults and warnings, in the order of the file.
    """

    value: Value | None
    findings: tuple[Finding, ...] = ()

    def usable(self) -> Value:
        """The value.

        Raises:
            InputFaults: there is none.
        """
        if self.value is None:
            raise InputFaults(tuple(f for f in self.findings if f.weight is Weight.FAULT))
        return self.value

    def map(self, change: Callable[[Value], Changed]) -> "ReadResult[Changed]":
        """The same findings with the value changed, where there is one."""
        return ReadResult(None if self.value is None else change(self.value), self.findings)
