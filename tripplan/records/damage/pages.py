"""Rows read straight from the pages of an SQLite file, for files that SQLite itself refuses to read.

Nothing on the way to a row is trusted: not the header of the file, not its table of tables, not the inner
nodes of its trees. Every page is taken for one with rows; the caller says by their checksums which are real.

Source: SQLite documentation, "Database File Format" (sqlite.org/fileformat2.html), sections 1.3 header, 1.6
b-tree pages, 2.1 record format, 4.1 write-ahead log format; from memory.
"""

import struct
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

USUAL_PAGE = 4096
"""What SQLite takes for a new file [bytes]; taken where the header says something impossible."""
_FIRST = b"SQLite format 3\0"
"""Begins the first page, which lists the tables and holds no rows of theirs."""
_PAGE_HEADER = 8
_LONGEST_HEAD = 40
"""Of a row with a dozen columns at most [bytes]."""
_WAL_HEADER, _FRAME_HEADER = 32, 24
_ROWS, _OTHER_KINDS = 0x0D, (0x02, 0x05, 0x0A)
_INTEGERS = {1: 1, 2: 2, 3: 3, 4: 4, 5: 6, 6: 8}
"""Bytes by serial type."""

Cell = str | int | float | bytes | None


@dataclass(frozen=True)
class Row:
    """A row as it was found.

    Attributes:
        rowid: SQLite's number of it.
        cells: the columns; texts are bytes where they are no UTF-8.
        listed: whether its page lists it; else it was found by looking at every byte.
    """

    rowid: int
    cells: tuple[Cell, ...]
    listed: bool


def rows_in(path: Path, is_real: Callable[[Row], bool]) -> Iterator[Row]:
    """Every real row on any page of a file and of the write-ahead log beside it.

    Args:
        path: the database, which is only read.
        is_real: whether a row is one that was once saved; it must refuse rubbish.

    Raises:
        OSError: the file cannot be read.
    """
    size, pages = _pages(path)
    for page in pages.values():
        if page[0] in _OTHER_KINDS or page.startswith(_FIRST):
            continue
        listed = _listed(page)
        found = [row for at in listed if (row := _row(page, at, size, pages, listed=True)) and is_real(row)]
        yield from found
        if len(found) < len(listed) or page[0] != _ROWS:
            known = {row.rowid for row in found}
            for at in range(_PAGE_HEADER, len(page) - 2):
                row = _row(page, at, size, pages, listed=False)
                if row and row.rowid not in known and is_real(row):
                    yield row


def _pages(path: Path) -> tuple[int, dict[int, bytes]]:
    """The page size [bytes], and the pages by number as they count now."""
    data = path.read_bytes()
    stated = int.from_bytes(data[16:18], "big")
    size = 65536 if stated == 1 else stated
    if size < 512 or size & (size - 1):
        size = USUAL_PAGE
    pages = {
        number: data[start : start + size]
        for number, start in enumerate(range(0, len(data) - size + 1, size), start=1)
    }
    log = path.with_name(f"{path.name}-wal")
    if log.is_file():
        pages.update(_logged(log.read_bytes(), size))
    return size, pages


def _logged(data: bytes, size: int) -> dict[int, bytes]:
    """The newest committed state of each page in a write-ahead log."""
    committed: dict[int, bytes] = {}
    pending: dict[int, bytes] = {}
    for start in range(_WAL_HEADER, len(data) - _FRAME_HEADER - size + 1, _FRAME_HEADER + size):
        number, pages_after_commit = struct.unpack(">II", data[start : start + 8])
        if data[start + 8 : start + 16] != data[16:24]:
            break  # left over from an earlier round of the log
        pending[number] = data[start + _FRAME_HEADER : start + _FRAME_HEADER + size]
        if pages_after_commit:
            committed.update(pending)
            pending = {}
    return committed


def _listed(page: bytes) -> list[int]:
    """Where a page says that its rows begin [bytes]."""
    count = int.from_bytes(page[3:5], "big")
    pointers = page[_PAGE_HEADER : _PAGE_HEADER + 2 * count]
    return [int.from_bytes(pointers[at : at + 2], "big") for at in range(0, len(pointers) - 1, 2)]


def _row(page: bytes, at: int, size: int, pages: dict[int, bytes], *, listed: bool) -> Row | None:
    with suppress(IndexError, KeyError, ValueError, struct.error):
        length, at = _varint(page, at)
        rowid, at = _varint(page, at)
        if 2 <= page[at] <= _LONGEST_HEAD and page[at] < length <= size * len(pages):
            return Row(rowid, _cells(_payload(page, at, length, size, pages)), listed)
    return None


def _payload(page: bytes, at: int, length: int, size: int, pages: dict[int, bytes]) -> bytes:
    most, least = size - 35, (size - 12) * 32 // 255 - 23
    here = length
    if length > most:
        here = least + (length - least) % (size - 4)
        here = here if here <= most else least
    parts, left = [page[at : at + here]], length - here
    if len(parts[0]) < here:
        raise ValueError("the row goes beyond its page")
    following = int.from_bytes(page[at + here : at + here + 4], "big") if left else 0
    while left > 0:
        beyond = pages[following]
        parts.append(beyond[4 : 4 + min(left, size - 4)])
        following = int.from_bytes(beyond[:4], "big")
        left -= size - 4
    return b"".join(parts)


def _cells(payload: bytes) -> tuple[Cell, ...]:
    header, at = _varint(payload, 0)
    if header > len(payload):
        raise ValueError("the head of the row is longer than the row")
    kinds = []
    while at < header:
        kind, at = _varint(payload, at)
        kinds.append(kind)
    cells: list[Cell] = []
    for kind in kinds:
        cell, at = _cell(payload, at, kind)
        cells.append(cell)
    if at != len(payload):
        raise ValueError("the row is longer than its columns")
    return tuple(cells)


def _cell(payload: bytes, at: int, kind: int) -> tuple[Cell, int]:
    if kind == 0:
        return None, at
    if kind in (8, 9):
        return kind - 8, at
    if kind in _INTEGERS:
        end = at + _INTEGERS[kind]
        return int.from_bytes(payload[at:end], "big", signed=True), end
    if kind == 7:
        return float(struct.unpack(">d", payload[at : at + 8])[0]), at + 8
    if kind < 12:
        raise ValueError("no kind of value has this number")
    end = at + (kind - 12) // 2
    raw = payload[at:end]
    if len(raw) < end - at:
        raise ValueError("the value goes beyond its row")
    if kind % 2:
        with suppress(UnicodeDecodeError):
            return raw.decode(), end
    return raw, end


def _varint(data: bytes, at: int) -> tuple[int, int]:
    """A number of one to nine bytes, seven bits each (the ninth has eight), and where it ends."""
    value = 0
    for step in range(8):
        byte = data[at + step]
        value = value << 7 | byte & 0x7F
        if byte < 0x80:
            return value, at + step + 1
    return value << 8 | data[at + 8], at + 9
