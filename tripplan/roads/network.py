"""Asks the road networks on this computer how far and how long it is from one point to many."""

import threading
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tripplan.documents.where import Point
from tripplan.errors import RoadsUnusable
from tripplan.language import wording
from tripplan.planning.travel.distance import geodesic_km
from tripplan.planning.travel.drive import Drive, KnownBy
from tripplan.planning.travel.estimate import TRAFFIC_NOTE
from tripplan.roads.engine import Engine, engine_version, roads_missing
from tripplan.roads.regions import Region, RegionFolder
from tripplan.values.ranges import Origin, Range, Source

KM_LESS, KM_MORE = 0.02, 0.05
"""Which entrance, which car park, a closed street. Common practice, no source."""
MINUTES_LESS, MINUTES_MORE = 0.10, 0.30
"""The engine's time is for empty roads. In the rush hours of larger US towns trips take about 1.2 times as
long, in the largest 1.4 times: Texas A&M Transportation Institute, Urban Mobility Report, travel time index
(from memory); rounded, and no source for the quicker end."""
FERRY_WAIT_MINUTES = 45.0
"""What waiting for a boat may add. Common practice, no source."""
NEAREST_ROAD_METRES = 2_000
"""A point further than this from every road of a region's map is taken to lie outside the region."""
_GAP_WORTH_TELLING_KM = 0.3
_ODD_DETOUR = 2.0
"""A way of more than so many times the straight line may end at the border of the map."""
_ODD_DETOUR_KM = 20.0
_KNOWN_AT_MOST = 20_000
CREDIT = "map data © OpenStreetMap contributors, Open Database License (ODbL)"


@dataclass(frozen=True)
class _Way:
    """What the engine says of one way; the flags tell what it uses."""

    km: float
    minutes: float
    gap_km: float
    toll: bool
    ferry: bool
    motorway: bool


@dataclass(frozen=True)
class _Open:
    """A region and the engine that has it open."""

    region: Region
    engine: Engine


class RoadNetwork:
    """All regions on this computer, as one.

    Answers are kept in memory, and forgotten when a region is built or removed. Threads may share it.

    Attributes:
        folder: where the regions lie.
    """

    def __init__(self, data_folder: Path) -> None:
        self.folder = RegionFolder(data_folder)
        self._lock = threading.Lock()
        self._regions: tuple[Region, ...] = ()
        self._open: tuple[_Open, ...] = ()
        self._refused: tuple[str, ...] = ()
        self._known: dict[tuple[Point, Point], Drive | None] = {}

    def drives(self, origin: Point, points: Sequence[Point]) -> tuple[Drive | None, ...]:
        """The drive from one point to each of several.

        Where several regions cover both ends the quickest way counts: a smaller map knows fewer roads, and a
        road it does not know only makes a way longer.

        Args:
            origin: where the drives start.
            points: where they end.

        Returns:
            As many drives, in the same order; None where no region covers both ends, or no way is found.
        """
        with self._lock:
            self._look_again()
            if not self._open:
                return (None,) * len(points)
            new = [point for point in dict.fromkeys(points) if (origin, point) not in self._known]
            if len(self._known) + len(new) > _KNOWN_AT_MOST:
                self._known.clear()
                new = list(dict.fromkeys(points))
            found: dict[Point, list[Drive]] = {point: [] for point in new}
            for one in self._open:
                covered = [point for point in new if one.region.box.covers(point)]
                if covered and one.region.box.covers(origin):
                    ways = _ask(one.engine, origin, covered)
                    for point, way in zip(covered, ways, strict=True):
                        if way is not None:
                            found[point].append(_drive(way, one.region, geodesic_km(origin, point)))
            for point, drives in found.items():
                quickest = min(drives, key=lambda drive: drive.minutes.likely, default=None)
                self._known[origin, point] = quickest
            return tuple(self._known[origin, point] for point in points)

    def unusable(self) -> tuple[str, ...]:
        """Why some regions on this computer are not asked, in words."""
        with self._lock:
            self._look_again()
            return self._refused

    def _look_again(self) -> None:
        """Open the regions that are there now."""
        regions = self.folder.regions()
        if regions == self._regions:
            return
        opened, refused = _opened(self.folder, regions)
        self._open, self._refused, self._regions = opened, refused, regions
        self._known.clear()


def _opened(folder: RegionFolder, regions: Sequence[Region]) -> tuple[tuple[_Open, ...], tuple[str, ...]]:
    """The regions that can be asked, and why the others cannot."""
    missing = roads_missing() if regions else None
    if missing:
        return (), (missing,)
    opened, refused = [], []
    for region in regions:
        if region.engine != engine_version():
            refused.append(
                f"{region.name} was built with version {region.engine} of the road engine, and this is "
                f"{engine_version()}. Build it again."
            )
            continue
        try:
            opened.append(_Open(region, Engine(folder.tiles(region.name))))
        except RoadsUnusable as trouble:
            refused.append(f"{trouble}. Build {region.name} again.")
    return tuple(opened), tuple(refused)


def _location(point: Point) -> dict[str, float]:
    return {"lat": point.latitude, "lon": point.longitude, "search_cutoff": NEAREST_ROAD_METRES}


def _ask(engine: Engine, origin: Point, points: Sequence[Point]) -> list[_Way | None]:
    """The ways to several points, with one call for their lengths and one a way for what it uses."""
    rows = _matrix(engine, origin, points)
    if all(row is None for row in rows) and _matrix(engine, origin, [origin]) == [None]:
        return [None] * len(points)
    return [
        None if row is None else _way(engine, origin, point, row)
        for row, point in zip(rows, points, strict=True)
    ]


def _matrix(engine: Engine, origin: Point, points: Sequence[Point]) -> list[Mapping[str, Any] | None]:
    """Length and time to each point; None where there is no way.

    One point off every road makes the engine refuse them all, so a refused question is asked again in halves.
    """
    answer = engine.matrix(
        {
            "sources": [_location(origin)],
            "targets": [_location(point) for point in points],
            "costing": "auto",
            "units": "kilometers",
        }
    )
    if answer is not None:
        return [row if row.get("time") is not None else None for row in answer["sources_to_targets"][0]]
    if len(points) == 1:
        return [None]
    middle = len(points) // 2
    return [*_matrix(engine, origin, points[:middle]), *_matrix(engine, origin, points[middle:])]


def _way(engine: Engine, origin: Point, point: Point, row: Mapping[str, Any]) -> _Way:
    answer = engine.way(
        {
            "locations": [_location(origin), _location(point)],
            "costing": "auto",
            "units": "kilometers",
            "directions_type": "none",
        }
    )
    uses = answer["trip"]["summary"] if answer else {}
    ends = ((origin, "begin"), (point, "end"))
    gap = sum(geodesic_km(asked, Point(row[f"{end}_lat"], row[f"{end}_lon"])) for asked, end in ends)
    return _Way(
        km=float(row["distance"]),
        minutes=row["time"] / 60,
        gap_km=gap,
        toll=bool(uses.get("has_toll")),
        ferry=bool(uses.get("has_ferry")),
        motorway=bool(uses.get("has_highway")),
    )


def _drive(way: _Way, region: Region, straight_km: float) -> Drive:
    waiting = FERRY_WAIT_MINUTES if way.ferry else 0.0
    dated = f" as of {region.map_date}" if region.map_date else " of unknown date"
    return Drive(
        km=Range(way.km * (1 - KM_LESS), way.km, way.km * (1 + KM_MORE) + way.gap_km),
        minutes=Range(
            way.minutes * (1 - MINUTES_LESS), way.minutes, way.minutes * (1 + MINUTES_MORE) + waiting
        ),
        known_by=KnownBy.ROADS,
        source=Source(
            Origin.ROADS,
            f"the quickest way on the roads of {region.name}, {CREDIT},{dated}; the time is for empty roads, "
            f"and its range admits up to {wording.percent(MINUTES_MORE)} more for traffic",
            CREDIT,
        ),
        notes=tuple(_notes(way, region, straight_km)),
    )


def _notes(way: _Way, region: Region, straight_km: float) -> list[str]:
    notes = [TRAFFIC_NOTE]
    if way.motorway:
        notes.append("Part of the way is motorway.")
    if way.toll:
        notes.append("The way uses a toll road; its charge is not known and counts only once you type it in.")
    if way.ferry:
        notes.append(
            "The way uses a ferry: look up its timetable and fare. Waiting for it is only in the range, and "
            "the fare counts once you type it in."
        )
    if way.gap_km > _GAP_WORTH_TELLING_KM:
        notes.append(
            f"The nearest roads on the map are {way.gap_km:.1f} km away from the two ends together; that "
            "stretch is only in the range."
        )
    if way.km > _ODD_DETOUR * straight_km and way.km > _ODD_DETOUR_KM:
        notes.append(
            f"The way is much longer than the straight line. Only the roads of {region.name} are known: a "
            "shorter way outside it would not be seen."
        )
    return notes
