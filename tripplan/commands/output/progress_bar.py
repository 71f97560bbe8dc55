"""How far a long task is, in plain text."""

from types import TracebackType
from typing import Self

from tripplan.commands.output.console import Console
from tripplan.language import wording

_FILL, _EMPTY = "#", "."


class ProgressBar:
    """One line that is written over as the task goes on; on what is no terminal, a line each time.

    Args:
        console: its remarks are where the bar goes, so that the answer stays clean.
    """

    def __init__(self, console: Console) -> None:
        self._out, self._width = console.stderr, console.width
        self._on_terminal = console.stderr.isatty()
        self._longest = 0

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        trouble: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._on_terminal and self._longest:
            self._out.write("\n")

    def show(self, share: float, doing: str) -> None:
        """Say how far it is.

        Args:
            share: what is done [0-1].
            doing: what is done now, in words.
        """
        line = self._line(share, doing)
        if self._on_terminal:
            self._out.write(f"\r{line.ljust(self._longest)}")
            self._longest = max(self._longest, len(line))
        else:
            self._out.write(f"{line}\n")
        self._out.flush()

    def _line(self, share: float, doing: str) -> str:
        # Eleven characters go to the brackets, the blanks and the percentage.
        room = min(30, self._width - len(doing) - 11)
        told = f"{wording.percent(share).rjust(5)} {doing}"
        if room < 5:
            return told[: self._width - 1]
        full = round(share * room)
        return f"[{_FILL * full}{_EMPTY * (room - full)}] {told}"
