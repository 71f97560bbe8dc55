"""What an OpenStreetMap extract says of itself: the area it covers, and the date of its data."""

import os
import zlib
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path
from typing import BinaryIO

from tripplan.errors import Finding, InputFaults
from tripplan.regular_file import open_regular
from tripplan.roads.regions import BoundingBox

ENDING = ".osm.pbf"
_MOST_HEADER_BYTES = 64 * 1024
_MOST_BLOCK_BYTES = 32 * 1024 * 1024
"""Limits of the format. Source: OpenStreetMap wiki, PBF format, section File format (from memory)."""
_MOST_HEAD_BYTES = 256 * 1024
"""A file's head holds a box, a date and the names of a few programs. No source, our choice."""
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
    box: BoundingBox | None
    map_date: date | None


class _Damaged(Exception):
    """The file is no extract."""


class _EndsEarly(_Damaged):
    """The file is over where more must follow."""


class _BlocksDamaged(_Damaged):
    """It begins as an extract does but is not whole; says how."""


def read_extract(path: Path) -> Extract:
    """Read the head of a map file, and whether all its blocks are there.

    A block is passed over unread, so a map of several gigabytes takes about a second. A download that broke
    off exactly between two blocks cannot be told from a whole one.

    Args:
        path: a file that ends in .osm.pbf.

    Raises:
        InputFaults: there is no such file, it is not an OpenStreetMap extract, or it is not whole.
    """
    try:
        with open_regular(path) as file:
            size = os.fstat(file.fileno()).st_size
            box, stamp = _head(_header_block(file))
            _walk_blocks(file, size)
    except OSError as trouble:
        raise _fault(path, f"the map file cannot be read: {trouble.strerror}") from trouble
    except _BlocksDamaged as trouble:
        raise _fault(path, f"{trouble}; download the map file again") from trouble
    except (_Damaged, zlib.error) as trouble:
        raise _fault(
            path, f"this is no OpenStreetMap extract; its name ends in {ENDING}, and so does its format"
        ) from trouble
    return Extract(path, size, box, stamp)


def _fault(path: Path, message: str) -> InputFaults:
    return InputFaults((Finding(path.name or str(path), "", "", message),))


def _header_block(file: BinaryIO) -> bytes:
    """The first block's content, unpacked."""
    kind, size = _block(file)
    if kind != _HEADER_BLOCK or size > _MOST_HEAD_BYTES:
        raise _Damaged
    blob = dict(_fields(_exactly(file, size)))
    raw, squeezed = blob.get(1), blob.get(3)
    if isinstance(squeezed, bytes):
        unpacking = zlib.decompressobj()
        raw = unpacking.decompress(squeezed, _MOST_HEAD_BYTES)
        if unpacking.unconsumed_tail:
            raise _Damaged
    if not isinstance(raw, bytes):
        raise _Damaged
    return raw


def _walk_blocks(file: BinaryIO, size: int) -> None:
    """Pass over the blocks behind the head, up to the end of the file.

    Args:
        file: at the end of a block.
        size: of the file [bytes].

    Raises:
        _BlocksDamaged: the file ends within a block, or something else stands where one should begin.
    """
    at = file.tell()
    too_early = f"this map file ends too early, after {size:,} bytes: the download may have broken off"
    while at < size:
        try:
            _, length = _block(file)
        except _EndsEarly as trouble:
            raise _BlocksDamaged(too_early) from trouble
        except _Damaged as trouble:
            raise _BlocksDamaged(f"this map file is damaged from byte {at:,} on") from trouble
        at = file.seek(length, os.SEEK_CUR)
    if at > size:
        raise _BlocksDamaged(too_early)


def _block(file: BinaryIO) -> tuple[bytes, int]:
    """What kind of block begins here, and how long it is [bytes]; the file then stands where its data do."""
    length = int.from_bytes(_exactly(file, 4), "big")
    if not 0 < length <= _MOST_HEADER_BYTES:
        raise _Damaged
    header = dict(_fields(_exactly(file, length)))
    kind, size = header.get(1), header.get(3)
    if not isinstance(kind, bytes) or not isinstance(size, int) or size > _MOST_BLOCK_BYTES:
        raise _Damaged
    return kind, size


def _exactly(file: BinaryIO, count: int) -> bytes:
    data = file.read(count)
    if len(data) < count:
        raise _EndsEarly
    return data


def _head(block: bytes) -> tuple[BoundingBox | None, date | None]:
    fields = dict(_fields(block))
    box, stamp = fields.get(1), fields.get(32)
    covered = None
    if isinstance(box, bytes):
        sides = {field: side for field, side in _fields(box) if isinstance(side, int)}
        if set(sides) != {1, 2, 3, 4}:
            raise _Damaged
        west, east, north, south = (_unzigzag(sides[field]) / _NANODEGREES for field in (1, 2, 3, 4))
        covered = BoundingBox(west=west, south=south, east=east, north=north)
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
