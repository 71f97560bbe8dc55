"""Opens files that somebody else names: never a pipe that waits for ever or a device without an end."""

import errno
import os
import stat
from pathlib import Path
from typing import BinaryIO

_NO_FILE = "it is a pipe or a device, not a file"


def path_from(text: str) -> Path:
    """A path as it was typed, a leading ``~`` read as the home folder; one of nobody's is left as it is."""
    return Path(os.path.expanduser(text))


def open_regular(path: Path) -> BinaryIO:
    """A file opened for reading.

    Raises:
        OSError: there is none of this name, it may not be read, or it is no regular file.
    """
    try:
        mode = path.stat().st_mode
    except ValueError as trouble:  # a NUL, which no name may hold
        raise OSError(errno.EINVAL, os.strerror(errno.EINVAL), str(path)) from trouble
    if not stat.S_ISREG(mode) and not stat.S_ISDIR(mode):
        raise OSError(errno.EINVAL, _NO_FILE, str(path))
    return path.open("rb")
