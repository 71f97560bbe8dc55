"""Records that may be read but not written, for whoever runs the tests."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Literal

import pytest

NOBODY = 65534
Sealed = Literal["files", "folder"]


@contextmanager
def sealed(folder: Path, what: Sealed) -> Iterator[None]:
    """Let this process read records and not write them, as long as the block lasts.

    Permission bits do not bind the administrator, who therefore becomes somebody else meanwhile.

    Args:
        folder: where they lie; everybody may reach it, as nobody may reach pytest's own folders.
        what: the files, so that others can be made beside them; or the folder and those in it, so that the
            files could be written but none can be made beside them.
    """
    if os.name != "posix":
        pytest.skip("permission bits are set another way on this system")
    inside = list(folder.rglob("*"))
    user = os.geteuid()
    if user == 0:
        for path in (folder, *inside):
            os.chown(path, NOBODY, NOBODY)
    folders = [folder, *(path for path in inside if path.is_dir())]
    for path in folders if what == "folder" else [path for path in inside if path.is_file()]:
        path.chmod(0o555 if what == "folder" else 0o444)
    if user == 0:
        os.seteuid(NOBODY)
    try:
        yield
    finally:
        if user == 0:
            os.seteuid(user)
        for path in folders:
            path.chmod(0o700)
