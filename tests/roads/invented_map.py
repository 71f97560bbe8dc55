"""Writes a small invented road map as an OpenStreetMap extract, so that the tests need no foreign data.

Source of the layout: the OpenStreetMap PBF format (fileformat.proto and osmformat.proto), from memory.
"""

import struct
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

NANODEGREES = 10**9
GRANULARITY = 100
"""Stored coordinates count hundreds of nanodegrees, the format's usual unit."""


@dataclass(frozen=True)
class Road:
    """One way through numbered points, both directions open unless its tags say otherwise."""

    through: Sequence[int]
    tags: Mapping[str, str]


@dataclass(frozen=True)
class InventedMap:
    """A map: points by number as (latitude, longitude), and the roads between them."""

    points: Mapping[int, tuple[float, float]]
    roads: Sequence[Road]


def varint(value: int) -> bytes:
    """A whole number from 0 on in protobuf's bytes of seven bits."""
    out = bytearray()
    while value > 0x7F:
        out.append(value & 0x7F | 0x80)
        value >>= 7
    return bytes((*out, value))


def zigzag(value: int) -> int:
    """A whole number of either sign as one from 0 on."""
    return value * 2 if value >= 0 else -value * 2 - 1


def number(field: int, value: int) -> bytes:
    """A field that holds a whole number."""
    return varint(field << 3) + varint(value)


def block(field: int, data: bytes) -> bytes:
    """A field that holds bytes."""
    return varint(field << 3 | 2) + varint(len(data)) + data


def packed(field: int, values: Sequence[int]) -> bytes:
    """A field that holds a list of whole numbers."""
    return block(field, b"".join(map(varint, values)))


def steps(values: Sequence[int]) -> list[int]:
    """The first value and then each one's distance from the one before, both signs as one."""
    return [zigzag(step) for step in (values[0], *(right - left for left, right in pairwise(values)))]


def blob(kind: str, data: bytes, *, squeezed: bool = True) -> bytes:
    """One block of the file with its header."""
    content = number(2, len(data)) + block(3, zlib.compress(data)) if squeezed else block(1, data)
    header = block(1, kind.encode()) + number(3, len(content))
    return struct.pack(">I", len(header)) + header + content


def header_data(box: tuple[float, float, float, float] | None, stamp: int | None) -> bytes:
    """The file's own description.

    Args:
        box: west, east, north, south [degrees]; left out where None.
        stamp: age of the map data [s since 1970]; left out where None.
    """
    data = b""
    if box is not None:
        sides = (number(field, zigzag(round(side * NANODEGREES))) for field, side in enumerate(box, start=1))
        data += block(1, b"".join(sides))
    data += block(4, b"OsmSchema-V0.6") + block(4, b"DenseNodes") + block(16, b"invented")
    return data if stamp is None else data + number(32, stamp)


def write_map(
    path: Path, invented: InventedMap, *, stamp: int | None = 1_790_000_000, with_box: bool = True
) -> Path:
    """Write the map as a .osm.pbf file with its date and, usually, its bounding box."""
    words: dict[str, int] = {"": 0}
    ids = sorted(invented.points)
    latitudes, longitudes = zip(*(invented.points[one] for one in ids), strict=True)
    box = (min(longitudes), max(longitudes), max(latitudes), min(latitudes))
    places = [
        steps([round(degrees * NANODEGREES / GRANULARITY) for degrees in side])
        for side in (latitudes, longitudes)
    ]
    dense = packed(1, steps(ids)) + packed(8, places[0]) + packed(9, places[1])
    ways = b""
    for way_id, road in enumerate(invented.roads, start=1):
        numbered = [[words.setdefault(word, len(words)) for word in tag] for tag in road.tags.items()]
        keys, values = zip(*numbered, strict=True)
        way = number(1, way_id) + packed(2, keys) + packed(3, values) + packed(8, steps(road.through))
        ways += block(3, way)
    strings = b"".join(block(1, word.encode()) for word in words)
    data = block(1, strings) + block(2, block(2, dense)) + block(2, ways)
    path.write_bytes(
        blob("OSMHeader", header_data(box if with_box else None, stamp), squeezed=False)
        + blob("OSMData", data)
    )
    return path


WEST_TOWN, EAST_TOWN, NORTH_TOWN = (41.004, -89.99), (41.004, -89.49), (41.304, -89.99)
"""A street corner in each town, as (latitude, longitude)."""
_SIDE = 10
_EAST_OF, _NORTH_OF = 0.003, 0.002


def three_towns() -> InventedMap:
    """Three towns of ten by ten streets: a toll motorway joins west and east, a ferry west and north."""
    points: dict[int, tuple[float, float]] = {}
    roads: list[Road] = []
    street = {"highway": "residential"}
    for first, (south, west) in {1000: (41.0, -90.0), 2000: (41.0, -89.5), 3000: (41.3, -90.0)}.items():
        corners = [[first + _SIDE * row + column for column in range(_SIDE)] for row in range(_SIDE)]
        for row, line in enumerate(corners):
            for column, corner in enumerate(line):
                points[corner] = (south + row * _NORTH_OF, west + column * _EAST_OF)
        roads += [Road(line, street) for line in corners]
        roads += [Road(line, street) for line in zip(*corners, strict=True)]
    toll = {"highway": "motorway", "toll": "yes", "oneway": "yes"}
    ferry = {"route": "ferry", "motor_vehicle": "yes", "motorcar": "yes", "duration": "00:40"}
    roads += [Road((1009, 2000), toll), Road((2010, 1019), toll), Road((1090, 3000), ferry)]
    return InventedMap(points, roads)
