"""A file that only one process may hold; it is let go when that process ends, however it ends."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

if sys.platform == "win32":
    import msvcrt

    def _hold(file: BinaryIO) -> None:
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _hold(file: BinaryIO) -> None:
        fcntl.flock(file.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)


class RegionInUse(Exception):
    """Another process holds the file."""


@contextmanager
def only_one(path: Path) -> Iterator[int]:
    """Hold a file for as long as the block runs.

    Args:
        path: the file; it is made where it does not exist, with its folder.

    Yields:
        The file's number. A child process that inherits it holds the file as well (not on Windows).

    Raises:
        Busy: another process holds it.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("ab") as file:
        try:
            _hold(file)
        except OSError:
            raise RegionInUse from None
        yield file.fileno()
