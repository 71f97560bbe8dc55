"""Writes small invented map files."""

from pathlib import Path
from typing import Any

from tests.missing import not_installed

try:
    import osmium
except ImportError:  # pragma: no cover - only where the extra is not installed
    osmium = None  # type: ignore[assignment]

Tags = dict[str, str]


def require_osmium() -> Any:
    """The package that reads and writes map files; the test skips where it is not installed."""
    if osmium is None:
        not_installed("osmium is not installed")
    return osmium


def write_map(
    path: Path,
    nodes: dict[int, tuple[float, float, Tags]],
    ways: dict[int, tuple[list[int], Tags]] | None = None,
    relations: dict[int, tuple[list[int], Tags]] | None = None,
) -> Path:
    """A map of some nodes (latitude, longitude, tags), ways (nodes, tags) and areas (ways, tags)."""
    osm = require_osmium().osm.mutable
    writer = require_osmium().SimpleWriter(str(path), overwrite=True)
    try:
        for number, (latitude, longitude, tags) in nodes.items():
            writer.add_node(osm.Node(id=number, location=(longitude, latitude), tags=tags, version=1))
        for number, (corners, tags) in (ways or {}).items():
            writer.add_way(osm.Way(id=number, nodes=corners, tags=tags, version=1))
        for number, (members, tags) in (relations or {}).items():
            outline = [("w", member, "outer") for member in members]
            writer.add_relation(osm.Relation(id=number, members=outline, tags=tags, version=1))
    finally:
        writer.close()
    return path


def write_long_map(path: Path, times: int) -> Path:
    """A map that takes long to read: the same ten thousand museums again and again."""
    museum = {"tourism": "museum", "name": "Mill Museum"}
    nodes = {number: (40 + number / 10_000, -90.0, museum) for number in range(1, 10_001)}
    whole = write_map(path, nodes).read_bytes()
    # A file is blocks one after the other, its head the first: OpenStreetMap wiki, PBF Format, from memory.
    head = int.from_bytes(whole[:4], "big")
    size, *more = whole[whole.index(b"\x18", 4) + 1 : 4 + head]
    for place, byte in enumerate(more, 1):
        size = (size & ~(1 << 7 * place)) | byte << 7 * place
    data = 4 + head + size
    path.write_bytes(whole[:data] + whole[data:] * times)
    return path
