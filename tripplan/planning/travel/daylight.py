"""Which part of a drive is in the dark."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta, tzinfo

from astral import Observer
from astral.sun import elevation, sunrise, sunset

from tripplan.documents.where import Point
from tripplan.language import wording


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
        name: in a sentence, such as 'the drive home'.
        start, end: when the wheels first and last turn; zone-aware.
    """

    name: str
    start: datetime
    end: datetime


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


def darkness_notes(light: Daylight, drives: Sequence[TimedDrive]) -> tuple[str, ...]:
    """What the driver should know about the dark.

    Args:
        light: of the day, where the family lives.
        drives: on that day.

    Returns:
        Sentences such as 'The last 40 min of the drive home are after sunset (4:26 PM).', for each drive that
        begins before sunrise or ends after sunset.
    """
    return tuple(note for drive in drives for note in _notes(light, drive))


def _notes(light: Daylight, drive: TimedDrive) -> Iterator[str]:
    if light.polar_night:
        yield f"The sun does not rise that day: {drive.name} is in the dark."
    if light.rises is not None and drive.start < light.rises:
        yield _dark("first", min(drive.end, light.rises) - drive.start, drive, "before sunrise", light.rises)
    if light.sets is not None and drive.end > light.sets:
        yield _dark("last", drive.end - max(drive.start, light.sets), drive, "after sunset", light.sets)


def _dark(which: str, dark: timedelta, drive: TimedDrive, when: str, sun: datetime) -> str:
    at = f"{when} ({wording.clock(sun)})"
    if dark == drive.end - drive.start:
        whole = drive.name.removeprefix("the ")
        return f"The whole {whole} is {at}."
    minutes = dark / timedelta(minutes=1)
    return f"The {which} {wording.minutes(minutes)} of {drive.name} {'is' if minutes == 1 else 'are'} {at}."
