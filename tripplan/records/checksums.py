"""A checksum a row, so that a row that was changed on the disk is never taken for what was saved."""

from hashlib import blake2b

Value = str | int | bytes | None
"""What a column of the records holds."""


def checksum(table: str, *values: Value) -> int:
    """The checksum of one row: 64 bits of BLAKE2b (RFC 7693) over its table's name and its columns.

    Args:
        table: its name, so that a row is never taken for one of another table.
        values: its columns in order, the checksum itself left out; bytes count as the text they encode.
    """
    parts = [b"%d:%b" % (len(part), part) for part in map(_written, (table, *values))]
    return int.from_bytes(blake2b(b"".join(parts), digest_size=8).digest(), "big", signed=True)


def _written(value: Value) -> bytes:
    if value is None:
        return b"-"
    if isinstance(value, int):
        return b"#%d" % value
    return b"=" + (value if isinstance(value, bytes) else value.encode("utf-8", "surrogateescape"))
