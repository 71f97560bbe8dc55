"""What a map file says of itself, and files that are none."""

from datetime import date
from pathlib import Path

import pytest

from tests.roads.invented_map import blob, header_data, number
from tripplan.documents.where import Point
from tripplan.errors import InputFaults
from tripplan.roads.extract import read_extract
from tripplan.roads.regions import BoundingBox

STAMP = 1_790_000_000
"""2026-09-21, 14:13 UTC, by `date -u -d @1790000000`."""


@pytest.mark.parametrize("squeezed", [True, False])
def test_the_head_tells_area_and_date(tmp_path: Path, squeezed: bool) -> None:
    """Bounding box and date are read, packed or not; west and south are below zero."""
    path = tmp_path / "south.osm.pbf"
    data = header_data((-73.5, 1.25, 12.0, -34.75), STAMP)
    path.write_bytes(blob("OSMHeader", data, squeezed=squeezed))
    extract = read_extract(path)
    assert extract.box == BoundingBox(west=-73.5, east=1.25, north=12.0, south=-34.75)
    assert extract.map_date == date(2026, 9, 21)
    assert extract.size == path.stat().st_size


def test_a_head_without_area_and_date_leaves_them_unknown(tmp_path: Path) -> None:
    """Both are optional in the format."""
    path = tmp_path / "plain.osm.pbf"
    path.write_bytes(blob("OSMHeader", header_data(None, None)))
    extract = read_extract(path)
    assert (extract.box, extract.map_date) == (None, None)


GOOD = blob("OSMHeader", header_data((-1, 1, 1, -1), STAMP))


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"PK\x03\x04 a zip file",
        b"<osm version='0.6'>",
        b"\xff\xff\xff\xff",
        GOOD[:9],
        GOOD[:-5],
        GOOD[:40] + b"\xff" * (len(GOOD) - 40),
        blob("OSMData", header_data(None, None)),
        blob("OSMHeader", b"\x0a\x7f\x00", squeezed=False),
        blob("OSMHeader", b"\xff" * 30, squeezed=False),
        blob("OSMHeader", b"\x0a\x02\x08\x01", squeezed=False),
    ],
    ids=[
        "empty",
        "zip",
        "xml",
        "long",
        "cut",
        "cut late",
        "spoilt",
        "no head",
        "short",
        "number",
        "half box",
    ],
)
def test_a_file_that_is_no_extract_is_refused_in_words(tmp_path: Path, data: bytes) -> None:
    """Whatever stands in it, the answer is one finding with the file's name."""
    path = tmp_path / "odd.osm.pbf"
    path.write_bytes(data)
    with pytest.raises(InputFaults, match=r"odd\.osm\.pbf: this is no OpenStreetMap extract"):
        read_extract(path)


def map_of(*blocks: bytes) -> bytes:
    """A map file's head and blocks of data."""
    return GOOD + b"".join(blob("OSMData", block, squeezed=False) for block in blocks)


@pytest.mark.parametrize("lost", [1, 4_000, 5_000, 5_005, 5_020, 9_000])
def test_a_half_downloaded_map_is_refused_before_anything_is_built(tmp_path: Path, lost: int) -> None:
    """Wherever a download broke off inside a block, the file is said to end too early."""
    path = tmp_path / "half.osm.pbf"
    whole = map_of(b"x" * 5_000, b"y" * 5_000)
    path.write_bytes(whole)
    assert read_extract(path).size == len(whole)
    path.write_bytes(whole[:-lost])
    with pytest.raises(InputFaults, match=r"half\.osm\.pbf: .*ends too early"):
        read_extract(path)


def test_a_map_spoilt_behind_its_head_is_refused(tmp_path: Path) -> None:
    """What is no block of the format is said to be damaged, with where it stands."""
    path = tmp_path / "spoilt.osm.pbf"
    path.write_bytes(map_of(b"x" * 5_000) + b"\x00" * 5_000)
    with pytest.raises(InputFaults, match=rf"damaged .* byte {len(map_of(b'x' * 5_000)):,}"):
        read_extract(path)


def test_a_small_head_that_unpacks_to_megabytes_is_refused(tmp_path: Path) -> None:
    """A head holds a box and a few words; one of 31 KB that stands for 32 MB is no map's."""
    path = tmp_path / "bomb.osm.pbf"
    path.write_bytes(blob("OSMHeader", number(5, 1) * 16_000_000))
    with pytest.raises(InputFaults, match="no OpenStreetMap extract"):
        read_extract(path)


@pytest.mark.parametrize("name", ["missing.osm.pbf", "."])
def test_a_file_that_cannot_be_opened_is_told(tmp_path: Path, name: str) -> None:
    """A missing file and a folder are input faults."""
    with pytest.raises(InputFaults, match="cannot be read"):
        read_extract(tmp_path / name)


def test_a_small_countrys_map_is_read(shared_data: Path) -> None:
    """The open map of Liechtenstein covers Vaduz and not Zurich.

    Source of the points: general knowledge, from memory.
    """
    extract = read_extract(shared_data / "liechtenstein.osm.pbf")
    assert extract.box is not None
    assert extract.box.covers(Point(47.141, 9.521))
    assert not extract.box.covers(Point(47.37, 8.54))
    assert extract.map_date is not None
