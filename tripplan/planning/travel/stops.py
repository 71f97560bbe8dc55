"""What is stopped for on the way, and what it adds to the two drives of an outing."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from tripplan.documents.family.habits import PickUp, Stops
from tripplan.documents.where import Point, Where
from tripplan.language import wording
from tripplan.language.sentences import fact
from tripplan.planning.travel.drive import Drive
from tripplan.planning.travel.estimate import estimate_drive
from tripplan.planning.travel.rests import WantedStop


@dataclass(frozen=True)
class StoppedDrive:
    """A drive with what is stopped for.

    Attributes:
        drive: the way, detours for the stops included.
        stops: what is stopped for.
    """

    drive: Drive
    stops: tuple[WantedStop, ...] = ()


@dataclass(frozen=True)
class _Detour:
    """What a pick-up adds, and how much of the longer drive lies before it [0-1]."""

    km: float
    minutes: float
    share: float


def there_and_back(
    drive: Drive, stops: Stops, home: Point, place: Where, units: str
) -> tuple[StoppedDrive, StoppedDrive]:
    """The two drives of an outing with everything that is stopped for.

    Fuel stops are spread evenly over there and back, as few as the range allows, from a full tank: one falls
    on leaving the place. The stop on the way back comes half-way. A pick-up whose place is not given is
    taken to be near home.

    Args:
        drive: the way from home to the place, without detours; the way back is as long.
        stops: what the family stops for.
        home: where the drive starts.
        place: where it ends.
        units: 'mi' or 'km', for the words.

    Returns:
        The way there and the way home.
    """
    there, home_again = StoppedDrive(drive), StoppedDrive(drive)
    if stops.pick_up is not None:
        detour = _detour(drive, stops.pick_up, home, place)
        there = _with_detour(there, stops.pick_up, detour, home_bound=False, units=units)
        if stops.pick_up.brought_home:
            home_again = _with_detour(home_again, stops.pick_up, detour, home_bound=True, units=units)
    if stops.way_back_minutes:
        halfway = WantedStop(0.5, stops.way_back_minutes, fact("drive-stop", what=stops.way_back))
        home_again = replace(home_again, stops=(*home_again.stops, halfway))
    out_km, back_km = there.drive.km.likely, home_again.drive.km.likely
    for km in _fuel_stops_at(out_km + back_km, stops.fuel_range_km):
        if km < out_km:
            fuel = WantedStop(km / out_km, stops.fuel_minutes, fact("drive-stop-for-fuel"))
            there = replace(there, stops=(*there.stops, fuel))
        else:
            fuel = WantedStop((km - out_km) / back_km, stops.fuel_minutes, fact("drive-stop-for-fuel"))
            home_again = replace(home_again, stops=(*home_again.stops, fuel))
    return there, home_again


def _fuel_stops_at(km: float, range_km: float | None) -> Iterator[float]:
    stretches = 1 if range_km is None else max(1, math.ceil(km / range_km))
    return (km * nth / stretches for nth in range(1, stretches))


def _detour(drive: Drive, pick_up: PickUp, home: Point, place: Where) -> _Detour:
    if pick_up.latitude is None or pick_up.longitude is None:
        minutes = float(pick_up.extra_minutes)
        whole = drive.minutes.likely + minutes
        return _Detour(pick_up.extra_km, minutes, minutes / whole if whole else 0.0)
    at = Point(pick_up.latitude, pick_up.longitude)
    first, second = estimate_drive(home, at, place.country), estimate_drive(at, place.point, place.country)
    direct = estimate_drive(home, place.point, place.country)
    whole = first.minutes.likely + second.minutes.likely
    return _Detour(
        max(0.0, first.km.likely + second.km.likely - direct.km.likely),
        max(0.0, whole - direct.minutes.likely),
        first.minutes.likely / whole if whole else 0.0,
    )


def _with_detour(
    stopped: StoppedDrive, pick_up: PickUp, detour: _Detour, *, home_bound: bool, units: str
) -> StoppedDrive:
    drive = stopped.drive
    what = fact("drive-stop-to-bring-home" if home_bound else "drive-stop-to-pick-up", name=pick_up.name)
    adds = f"{wording.distance(detour.km, units)} and {wording.minutes(detour.minutes)}"
    longer = replace(
        drive,
        km=drive.km.map(lambda km: km + detour.km),
        minutes=drive.minutes.map(lambda minutes: minutes + detour.minutes),
        source=replace(drive.source, text=f"{drive.source.text}; to {what} adds {adds}"),
    )
    share = 1 - detour.share if home_bound else detour.share
    return StoppedDrive(longer, (*stopped.stops, WantedStop(share, pick_up.stop_minutes, what)))
