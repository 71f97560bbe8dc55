"""What an OpenStreetMap extract says of itself: the area it covers, and the date of its data."""

import zlib
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path
from typing import BinaryIO

from tripplan.errors import Finding, InputFaults
from tripplan.roads.regions import Box

ENDING = ".osm.pbf"
_MOST_HEADER_BYTES = 64 * 1024
_MOST_BLOCK_BYTES = 32 * 1024 * 1024
"""Limits of the format. Source: OpenStreetMap wiki, PBF format, section File format (from memory)."""
_NANODEGREES = 1e9
_HEADER_BLOCK = b"OSMHeader"


@dataclass(frozen=True)
class Extract:
    """One map file.

    Attributes:
        path: where it lies.
        size: of the file [bytes].
        box: the area it covers; None where the file does not say.
        map_date: the date of its data; None where the file does not say.
    """

    path: Path
    size: int
    box: Box | None
    map_date: date | None


class _Damaged(Exception):
    """The file is no extract."""


def read_extract(path: Path) -> Extract:
    """Read the head of a map file.

    Args:
        path: a file that ends in .osm.pbf.

    Raises:
        InputFaults: there is no such file, or it is not an OpenStreetMap extract.
    """
    try:
        with path.open("rb") as file:
            block = _header_block(file)
        size = path.stat().st_size
        box, stamp = _head(block)
    except OSError as trouble:
        raise _fault(path, f"the map file cannot be read: {trouble.strerror}") from trouble
    except (_Damaged, zlib.error) as trouble:
        raise _fault(
            path, f"this is no OpenStreetMap extract; its name ends in {ENDING}, and so does its format"
        ) from trouble
    return Extract(path, size, box, stamp)


def _fault(path: Path, message: str) -> InputFaults:
    return InputFaults((Finding(path.name or str(path), "", "", message),))


def _header_block(file: BinaryIO) -> bytes:
    """The first block's content, unpacked."""
    length = int.from_bytes(_exactly(file, 4), "big")
    if not 0 < length <= _MOST_HEADER_BYTES:
        raise _Damaged
    header = dict(_fields(_exactly(file, length)))
    size = header.get(3)
    if header.get(1) != _HEADER_BLOCK or not isinstance(size, int) or size > _MOST_BLOCK_BYTES:
        raise _Damaged
    blob = dict(_fields(_exactly(file, size)))
    raw, squeezed = blob.get(1), blob.get(3)
    if isinstance(raw, bytes):
        return raw
    if isinstance(squeezed, bytes):
        return zlib.decompressobj().decompress(squeezed, _MOST_BLOCK_BYTES)
    raise _Damaged


def _exactly(file: BinaryIO, count: int) -> bytes:
    data = file.read(count)
    if len(data) < count:
        raise _Damaged
    return data


def _head(block: bytes) -> tuple[Box | None, date | None]:
    fields = dict(_fields(block))
    box, stamp = fields.get(1), fields.get(32)
    covered = None
    if isinstance(box, bytes):
        sides = {field: side for field, side in _fields(box) if isinstance(side, int)}
        if set(sides) != {1, 2, 3, 4}:
            raise _Damaged
        west, east, north, south = (_unzigzag(sides[field]) / _NANODEGREES for field in (1, 2, 3, 4))
        covered = Box(west=west, south=south, east=east, north=north)
    # A stamp that is no time of this century is as good as none.
    known = isinstance(stamp, int) and 0 < stamp < 4_000_000_000
    return covered, datetime.fromtimestamp(int(stamp or 0), UTC).date() if known else None


def _fields(data: bytes) -> Iterator[tuple[int, int | bytes]]:
    """The fields of a protobuf message, numbers and bytes; of repeated ones each."""
    at = 0
    while at < len(data):
        key, at = _varint(data, at)
        field, kind = key >> 3, key & 7
        if kind == 0:
            value, at = _varint(data, at)
            yield field, value
            continue
        if kind == 2:
            length, at = _varint(data, at)
        elif kind in (1, 5):
            length = 8 if kind == 1 else 4
        else:
            raise _Damaged
        if at + length > len(data):
            raise _Damaged
        yield field, data[at : at + length]
        at += length


def _varint(data: bytes, at: int) -> tuple[int, int]:
    value = 0
    for shift in range(0, 70, 7):
        if at >= len(data):
            raise _Damaged
        byte = data[at]
        at += 1
        value |= (byte & 0x7F) << shift
        if byte < 0x80:
            return value, at
    raise _Damaged


def _unzigzag(value: int) -> int:
    return value >> 1 if value & 1 == 0 else -(value + 1 >> 1)
