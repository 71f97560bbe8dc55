"""Reading the places of some kinds out of an OpenStreetMap extract, of a town or of a whole state."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, TypeVar

from tripplan.documents.where import Point
from tripplan.errors import Finding, InputFaults
from tripplan.nearby.kinds import KEYS, MapKind, kind_of
from tripplan.regular_file import open_regular

if TYPE_CHECKING:
    from osmium.osm import TagList

_KEPT = (
    "name", "name:en", "addr:housenumber", "addr:street", "addr:city", "addr:state", "addr:postcode",
    "addr:country", "opening_hours", "website", "contact:website", "phone", "contact:phone", "fee",
    "charge", "wheelchair", "changing_table", "toilets:changing_table", "indoor", "access", "operator",
)  # fmt: skip

STEPS = ("places", "outlines", "positions")
"""What is read, one after the other; a map does not say how much of it is still to come."""

Progress = Callable[[str, int], None]
"""Is told which of the steps is on and how much was found in it so far; raises to stop."""

_TOLD_EVERY = 2_000
"""Things of the map between two reports, so that stopping is soon heard [-]."""


T = TypeVar("T")


class OsmiumMissing(Exception):
    """The package that reads map files is not installed."""


@dataclass(frozen=True)
class MapPlace:
    """One place on the map.

    Attributes:
        osm: what it is in the map's data, such as 'way/123'.
        kind: its kind.
        point: a point of it, near its middle.
        tags: what the map says of it, as far as it is of use.
    """

    osm: str
    kind: MapKind
    point: Point
    tags: Mapping[str, str]

    @property
    def name(self) -> str:
        """Its name; empty where it has none."""
        return self.tags.get("name:en") or self.tags.get("name", "")


@dataclass(frozen=True)
class _Outline:
    """A place that is drawn as a line or an area, before it is known where its corners lie."""

    osm: str
    kind: MapKind
    tags: Mapping[str, str]
    corners: tuple[int, ...]


def read_places(path: Path, progress: Progress = lambda _step, _found: None) -> list[MapPlace]:
    """All places of the kinds that families go to.

    The file is read three times at most, each time only what is still needed, so that memory goes with the
    number of such places and not with the size of the map.

    Args:
        path: a file in PBF format.
        progress: told what is read now; may raise to stop, and nothing is left behind.

    Raises:
        OsmiumMissing: the package osmium is not installed.
        InputFaults: the file is no map, or a damaged one.
    """
    try:
        import osmium
    except ImportError as missing:
        raise OsmiumMissing("reading a map needs the package osmium: pip install osmium") from missing
    try:
        open_regular(path).close()
        return list(_read(osmium, str(path), progress))
    except (RuntimeError, OSError) as damaged:
        raise InputFaults((Finding(str(path), "", "", f"this map cannot be read: {damaged}"),)) from damaged


def _read(osmium: ModuleType, path: str, progress: Progress) -> Iterator[MapPlace]:
    outlines: list[_Outline] = []
    shapes: dict[str, tuple[MapKind, Mapping[str, str], tuple[int, ...]]] = {}
    things = osmium.FileProcessor(path).with_filter(osmium.filter.KeyFilter(*KEYS))
    for thing in _told(things, "places", progress):
        tags = thing.tags
        kind = kind_of(_Tags(tags))
        if kind is None:
            continue
        kept: Mapping[str, str] = {key: tags[key] for key in _KEPT if key in tags}
        if thing.is_node():
            yield MapPlace(f"node/{thing.id}", kind, Point(thing.location.lat, thing.location.lon), kept)
        elif thing.is_way():
            outlines.append(
                _Outline(f"way/{thing.id}", kind, kept, _spread([node.ref for node in thing.nodes]))
            )
        elif thing.is_relation():
            ways = tuple(member.ref for member in thing.members if member.type == "w")
            shapes[f"relation/{thing.id}"] = (kind, kept, ways[:_MOST_WAYS])
    if shapes:
        wanted = {way for _, _, ways in shapes.values() for way in ways}
        corners = _corners(osmium, path, wanted, progress)
        for osm, (kind, kept, ways) in shapes.items():
            refs = [ref for way in ways for ref in corners.get(way, ())]
            outlines.append(_Outline(osm, kind, kept, _spread(refs)))
    wanted = {ref for outline in outlines for ref in outline.corners}
    positions = _positions(osmium, path, wanted, progress)
    for outline in outlines:
        points = [positions[ref] for ref in outline.corners if ref in positions]
        if points:
            south, north = min(p[0] for p in points), max(p[0] for p in points)
            west, east = min(p[1] for p in points), max(p[1] for p in points)
            yield MapPlace(
                outline.osm, outline.kind, Point((south + north) / 2, (west + east) / 2), outline.tags
            )


_MOST_CORNERS = 40
_MOST_WAYS = 200


class _Tags(Mapping[str, str]):
    """The tags of a thing in the map, looked at in place."""

    def __init__(self, tags: "TagList") -> None:
        self._tags = tags

    def __getitem__(self, key: str) -> str:
        return str(self._tags[key])

    def __iter__(self) -> Iterator[str]:
        return (tag.k for tag in self._tags)

    def __len__(self) -> int:
        return len(self._tags)


def _spread(refs: list[int]) -> tuple[int, ...]:
    """At most so many corners of an outline, all the way round; enough for a point near its middle."""
    step = max(1, len(refs) // _MOST_CORNERS)
    return tuple(refs[::step])


def _told(things: Iterable[T], step: str, progress: Progress) -> Iterator[T]:
    """The same things; now and then it is told how many there were."""
    progress(step, 0)
    for number, thing in enumerate(things, 1):
        if number % _TOLD_EVERY == 0:
            progress(step, number)
        yield thing


def _corners(
    osmium: ModuleType, path: str, ways: Iterable[int], progress: Progress
) -> dict[int, tuple[int, ...]]:
    found = osmium.FileProcessor(path, osmium.osm.WAY).with_filter(osmium.filter.IdFilter(ways))
    return {way.id: _spread([node.ref for node in way.nodes]) for way in _told(found, "outlines", progress)}


def _positions(
    osmium: ModuleType, path: str, nodes: Iterable[int], progress: Progress
) -> dict[int, tuple[float, float]]:
    found = osmium.FileProcessor(path, osmium.osm.NODE).with_filter(osmium.filter.IdFilter(nodes))
    return {node.id: (node.location.lat, node.location.lon) for node in _told(found, "positions", progress)}
