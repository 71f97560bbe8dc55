"""Files that are none: pipes, devices, names that no file may have."""

import os
from datetime import date
from pathlib import Path

import pytest

from tripplan.errors import InputFaults
from tripplan.files.cards.household_file import load_household
from tripplan.files.cards.logbook_file import load_logbook_entry
from tripplan.files.cards.place_card import load_place_card
from tripplan.regular_file import open_regular, path_from
from tripplan.roads.extract import read_extract

TODAY = date(2026, 11, 25)


@pytest.fixture
def pipe(tmp_path: Path) -> Path:
    """A pipe that nobody writes to: whoever opens it to read waits for ever."""
    if not hasattr(os, "mkfifo"):
        pytest.skip("this system has no named pipes")
    path = tmp_path / "pipe.osm.pbf"
    os.mkfifo(path)
    return path


def test_a_pipe_is_never_waited_for(pipe: Path) -> None:
    """A pipe given as a map, a card, a household or a note is refused by name, at once."""
    with pytest.raises(OSError, match="pipe or a device"):
        open_regular(pipe)
    with pytest.raises(InputFaults, match=r"pipe\.osm\.pbf: .*pipe or a device"):
        read_extract(pipe)
    for load in (load_place_card, load_household):
        (finding,) = load(pipe, TODAY).findings
        assert (finding.file, "pipe or a device" in finding.message) == (pipe.name, True)
    (finding,) = load_logbook_entry(pipe, TODAY).findings
    assert "pipe or a device" in finding.message


def test_a_device_without_an_end_is_not_read() -> None:
    """What gives zeros for ever is no file."""
    if not Path("/dev/zero").exists():
        pytest.skip("this system has no /dev/zero")
    with pytest.raises(OSError, match="pipe or a device"):
        open_regular(Path("/dev/zero"))


def test_a_name_no_file_may_have_is_an_ordinary_trouble(tmp_path: Path) -> None:
    """A NUL in a name is told like any file that cannot be opened."""
    with pytest.raises(OSError, match="Invalid argument"):
        open_regular(tmp_path / "a\0b")


def test_the_home_of_nobody_is_a_folder_that_is_not_there() -> None:
    """A tilde stands for the home folder; with the name of no user it stays as it is."""
    assert path_from("~/map.osm.pbf") == Path.home() / "map.osm.pbf"
    assert path_from("~nosuch/map.osm.pbf") == Path("~nosuch/map.osm.pbf")
    with pytest.raises(FileNotFoundError):
        open_regular(path_from("~nosuch/map.osm.pbf"))
