"""Which part of a drive is in the dark."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta, tzinfo

from astral import Observer
from astral.sun import elevation, sunrise, sunset

from tripplan.documents.where import Point
from tripplan.language.sentences import Fact, fact


@dataclass(frozen=True)
class Daylight:
    """When the sun is up on one day.

    Attributes:
        rises: sunrise to the minute; None where the sun does not rise or set that day.
        sets: sunset to the minute; None where the sun does not rise or set that day.
        polar_night: whether the sun stays down all day.
    """

    rises: datetime | None
    sets: datetime | None
    polar_night: bool = False


@dataclass(frozen=True)
class TimedDrive:
    """When one drive happens.

    Attributes:
        start, end: when the wheels first and last turn; zone-aware.
        there: whether it is the drive to the place, and not home.
    """

    start: datetime
    end: datetime
    there: bool


def daylight(point: Point, day: date, zone: tzinfo) -> Daylight:
    """Sunrise and sunset over a flat horizon; hills, weather and height shift them by minutes.

    Args:
        point: where.
        day: the date by the zone's clock.
        zone: whose clock.

    Source: the sun's upper edge on the horizon under mean refraction, 0.833 degrees; NOAA's equations after
    J. Meeus, Astronomical Algorithms, as in the package astral.
    """
    here = Observer(point.latitude, point.longitude)
    try:
        rises, sets = (event(here, date=day, tzinfo=zone) for event in (sunrise, sunset))
    except ValueError:  # the sun stays up, or down, all day
        noon = datetime.combine(day, time(12), zone)
        highest = max(elevation(here, noon + timedelta(hours=hour)) for hour in range(-12, 12))
        return Daylight(None, None, polar_night=highest < 0)
    return Daylight(_to_the_minute(rises), _to_the_minute(sets))


def _to_the_minute(moment: datetime) -> datetime:
    later = moment + timedelta(seconds=30)
    return later.replace(second=0, microsecond=0)


def darkness_notes(light: Daylight, drives: Sequence[TimedDrive]) -> tuple[Fact, ...]:
    """What the driver should know about the dark.

    Args:
        light: of the day, where the family lives.
        drives: on that day.

    Returns:
        Such as that the last 40 min of the drive home are after sunset, for each drive that begins before
        sunrise or ends after sunset.
    """
    return tuple(note for drive in drives for note in _notes(light, drive))


def _notes(light: Daylight, drive: TimedDrive) -> Iterator[Fact]:
    if light.polar_night:
        yield fact("drive-polar-night", there=drive.there)
    if light.rises is not None and drive.start < light.rises:
        dark = min(drive.end, light.rises) - drive.start
        whole = dark == drive.end - drive.start
        yield fact("drive-before-sunrise", there=drive.there, whole=whole, dark=dark, rises=light.rises)
    if light.sets is not None and drive.end > light.sets:
        dark = drive.end - max(drive.start, light.sets)
        whole = dark == drive.end - drive.start
        yield fact("drive-after-sunset", there=drive.there, whole=whole, dark=dark, sets=light.sets)
