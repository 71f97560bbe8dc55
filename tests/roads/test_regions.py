"""The folder of regions, and what is never taken for one."""

from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from tripplan.errors import InputFaults, RoadsUnusable, UnknownName
from tripplan.roads.locking import RegionInUse, only_one
from tripplan.roads.regions import BoundingBox, Region, RegionFolder, region_name

BOX = BoundingBox(west=-91, south=37, east=-87, north=42.5)


def put(folder: RegionFolder, name: str) -> Region:
    """A region without roads in it."""
    folder.work(name).mkdir(parents=True)
    region = Region(
        name=name,
        box=BOX,
        map_date=date(2026, 9, 1),
        built_at=datetime(2026, 11, 25, 12, tzinfo=UTC),
        engine="3.9.1",
        size=100,
    )
    folder.put_in_place(region)
    return region


def test_finished_regions_are_listed_by_name(tmp_path: Path) -> None:
    """What was put in place is found again with all that is known of it."""
    folder = RegionFolder(tmp_path / "data")
    assert folder.regions() == ()
    wisconsin, iowa = put(folder, "wisconsin"), put(folder, "iowa")
    assert folder.regions() == (iowa, wisconsin)
    assert folder.unfinished() == ()


def test_a_newer_region_takes_the_place_of_the_older_one(tmp_path: Path) -> None:
    """Nothing of the older one is left behind."""
    folder = RegionFolder(tmp_path)
    put(folder, "iowa")
    (folder.path / "iowa" / "old.txt").write_text("old", encoding="utf-8")
    put(folder, "iowa")
    assert [path.name for path in folder.path.iterdir()] == ["iowa"]
    assert not (folder.path / "iowa" / "old.txt").exists()


def test_half_and_damaged_regions_are_never_used(tmp_path: Path) -> None:
    """A folder without its description, with a spoilt one, or still being worked on is no region."""
    folder = RegionFolder(tmp_path)
    region = put(folder, "iowa")
    (folder.path / "empty").mkdir()
    (folder.path / "spoilt").mkdir()
    (folder.path / "spoilt" / "region.json").write_text('{"name": "spoilt"', encoding="utf-8")
    (folder.path / "renamed").mkdir()
    (folder.path / "renamed" / "region.json").write_text(region.model_dump_json(), encoding="utf-8")
    folder.work("ohio").mkdir()
    (folder.work("ohio") / "region.json").write_text(
        region.model_copy(update={"name": "ohio"}).model_dump_json(), encoding="utf-8"
    )
    assert folder.regions() == (region,)
    assert folder.unfinished() == ("ohio",)


def test_a_removed_region_is_gone(tmp_path: Path) -> None:
    """Its folder goes, and a second removal says that there is none."""
    folder = RegionFolder(tmp_path)
    put(folder, "iowa")
    put(folder, "ohio")
    folder.remove("iowa")
    assert [region.name for region in folder.regions()] == ["ohio"]
    with pytest.raises(UnknownName, match="ohio"):
        folder.remove("iowa")


def test_what_was_not_finished_can_be_removed_too(tmp_path: Path) -> None:
    """The room that a broken build took can be had back."""
    folder = RegionFolder(tmp_path)
    folder.work("iowa").mkdir(parents=True)
    folder.remove("iowa")
    assert folder.unfinished() == ()


def test_a_region_that_is_being_built_is_not_removed(tmp_path: Path) -> None:
    """Whoever holds the lock is not disturbed; afterwards the region can be removed."""
    folder = RegionFolder(tmp_path)
    put(folder, "iowa")
    with only_one(folder.lock("iowa")):
        assert folder.being_built("iowa")
        with pytest.raises(RoadsUnusable, match="being built"):
            folder.remove("iowa")
    assert not folder.being_built("iowa")
    folder.remove("iowa")


def test_only_one_can_hold_a_file(tmp_path: Path) -> None:
    """A second holder is told at once, and the file is free after the first."""
    path = tmp_path / "deeper" / "one.lock"
    with only_one(path), pytest.raises(RegionInUse), only_one(path):
        pytest.fail("two held the same file")
    with only_one(path):
        assert path.exists()


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("illinois.osm.pbf", "illinois"),
        ("New York (upstate).osm.pbf", "new-york-upstate-"),
        ("us_midwest-2026", "us_midwest-2026"),
        ("Zürich.pbf", "z-rich"),
    ],
)
def test_a_region_is_called_by_a_name_that_any_folder_can_have(text: str, name: str) -> None:
    """Capitals, blanks and letters beyond a to z are replaced."""
    assert region_name(text) == name


@pytest.mark.parametrize("text", ["", "..", "../secrets", "-x", "a" * 41])
def test_a_name_that_leaves_the_folder_is_refused(text: str) -> None:
    """No name leads elsewhere."""
    with pytest.raises(InputFaults, match="a region is called by"):
        region_name(text)


@pytest.mark.parametrize("name", ["..", "../other", ""])
def test_removing_never_leaves_the_folder(tmp_path: Path, name: str) -> None:
    """Only what is listed can be removed."""
    (tmp_path / "other").mkdir()
    with pytest.raises(UnknownName):
        RegionFolder(tmp_path).remove(name)
    assert (tmp_path / "other").is_dir()
