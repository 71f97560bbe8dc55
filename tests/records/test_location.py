"""Where the records lie, and who may look at them."""

import os
from datetime import datetime
from pathlib import Path

import platformdirs
import pytest

from tripplan.errors import RecordsUnusable
from tripplan.records.database import Database
from tripplan.records.location import FOLDER_VARIABLE, data_folder
from tripplan.records.opening import Which, open_records


def test_the_environment_names_the_folder(tmp_path: Path) -> None:
    """The variable wins over the place the operating system suggests."""
    assert data_folder({FOLDER_VARIABLE: str(tmp_path / "here")}) == tmp_path / "here"


@pytest.mark.parametrize("environment", [{}, {FOLDER_VARIABLE: ""}])
def test_without_it_the_operating_system_says_where(environment: dict[str, str]) -> None:
    """An unset or empty variable leaves the choice to the platform's own rule, and makes nothing."""
    folder = data_folder(environment)
    assert folder == Path(platformdirs.user_data_dir("tripplan", appauthor=False))
    assert folder.is_absolute()


@pytest.mark.skipif(os.name != "posix", reason="this system has no permission bits")
def test_folder_and_files_are_for_the_family_alone(tmp_path: Path, noon: datetime) -> None:
    """Folder 0700; the file and what SQLite lays beside it while it is written 0600."""
    folder = tmp_path / "deep" / "data"
    records = open_records(folder, Which.FAMILY, noon)
    assert folder.stat().st_mode & 0o777 == 0o700
    with records.change(noon):
        modes = {path.name: path.stat().st_mode & 0o777 for path in folder.iterdir()}
    assert {"family.sqlite3", "family.sqlite3-wal"} <= set(modes)
    assert set(modes.values()) == {0o600}


def test_a_folder_that_cannot_be_is_said_plainly(tmp_path: Path, noon: datetime) -> None:
    """Where a file stands in the way of the folder, the error is ours and names the path."""
    (tmp_path / "data").write_text("in the way")
    with pytest.raises(RecordsUnusable, match=r"data.family\.sqlite3"):
        open_records(tmp_path / "data", Which.FAMILY, noon)


def test_a_file_that_vanished_is_not_made_anew(tmp_path: Path) -> None:
    """Reading from a missing file is an error; it does not leave an empty one behind."""
    database = Database(tmp_path / "family.sqlite3")
    with pytest.raises(RecordsUnusable, match="cannot be opened"), database.reading():
        pass
    assert not database.path.exists()
