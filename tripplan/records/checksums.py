"""A checksum a row, so that a row that was changed on the disk is never taken for what was saved."""

from hashlib import blake2b

_AS_WRITTEN = ("utf-8", "surrogateescape")
Value = str | int | bytes | None
"""What a column of the records holds."""


def checksum(table: str, *values: Value) -> int:
    """The checksum of one row: 64 bits of BLAKE2b (RFC 7693) over its table's name and its columns.

    Args:
        table: its name, so that a row is never taken for one of another table.
        values: its columns in order, the checksum itself left out; bytes count as the text they encode.
    """
    text = "".join(map(_counted, (table, *values)))
    return int.from_bytes(blake2b(text.encode(*_AS_WRITTEN), digest_size=8).digest(), "big", signed=True)


def _counted(value: Value) -> str:
    """A value with its kind and its length in bytes before it, so that no two rows read the same."""
    if isinstance(value, str):
        return f"{(len(value) if value.isascii() else len(value.encode(*_AS_WRITTEN))) + 1}:={value}"
    if isinstance(value, bytes):
        return _counted(value.decode(*_AS_WRITTEN))
    said = "-" if value is None else f"#{value}"
    return f"{len(said)}:{said}"
