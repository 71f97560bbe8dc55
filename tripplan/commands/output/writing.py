"""Files that a command writes: never over another one unless that is asked for, and whole or not at all."""

import os
import tempfile
from pathlib import Path, PurePath

from tripplan.commands.input.settings import ASKED
from tripplan.commands.output.console import Console
from tripplan.errors import Finding, InputFaults
from tripplan.records.database import put_in_place

PRINTED = "-"
"""Stands for the standard output in the place of a file's name."""


def ending_faults(name: str, option: str, what: str, *endings: str) -> tuple[Finding, ...]:
    """The fault of a file whose name promises another format than what is to be written into it.

    Args:
        name: where to; a hyphen, a device and a pipe take anything.
        option: where the name was typed.
        what: what is written, as a noun with its article.
        endings: what its name may end in; the first is told.
    """
    takes_anything = name == PRINTED or (os.path.exists(name) and not os.path.isfile(name))
    if takes_anything or PurePath(name).suffix.lower() in endings:
        return ()
    return (Finding(ASKED, option, name[:60], f"{what} is a file that ends in {endings[0]}"),)


def write_file(name: str, data: bytes, console: Console, *, replace: bool) -> bool:
    """Write a file, or print it where its name is a hyphen.

    Args:
        name: where to.
        data: what.
        console: told when nothing is written.
        replace: whether a file that is there already may go.

    Returns:
        Whether it was written; not if there is one and it may not go.

    Raises:
        InputFaults: the file cannot be written.
    """
    if name == PRINTED:
        console.data(data)
        return True
    path = Path(name)
    try:
        if path.exists() and not replace and not path.is_dir():
            console.remark(f"{name} is there already; nothing was written. Add --replace to write over it.")
            return False
        _write_whole(path, data)
    except (OSError, ValueError) as trouble:  # a NUL, which no name may hold, is the latter
        reason = trouble.strerror if isinstance(trouble, OSError) else None
        finding = Finding(name, "", "", f"cannot be written: {reason or trouble}")
        raise InputFaults((finding,)) from trouble
    return True


def _write_whole(path: Path, data: bytes) -> None:
    if path.is_dir():
        raise IsADirectoryError(0, "it is a folder")
    if path.exists() and not path.is_file():
        path.write_bytes(data)  # a device or a pipe is written to; nothing may take its place
        return
    path = path.resolve()  # where a link leads, so that the link stays
    handle, partial = tempfile.mkstemp(dir=path.parent, suffix=".partial")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
        put_in_place(Path(partial), path)
    finally:
        Path(partial).unlink(missing_ok=True)
