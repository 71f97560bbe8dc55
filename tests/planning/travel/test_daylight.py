"""Drives in the dark, as a parent is told about them."""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from tripplan.documents.where import Point
from tripplan.language.sentences import Fact, fact
from tripplan.planning.travel.daylight import Daylight, TimedDrive, darkness_notes, daylight

CHICAGO = ZoneInfo("America/Chicago")
DAY = date(2026, 12, 8)


def at(clock: str) -> datetime:
    """A time of day on a December day."""
    return datetime.fromisoformat(f"{DAY}T{clock}").replace(tzinfo=CHICAGO)


RISES, SETS = at("07:15"), at("16:26")
LIGHT = Daylight(RISES, SETS)


def after_sunset(minutes: int, *, whole: bool = False) -> Fact:
    """So much of the drive home is after sunset."""
    return fact("drive-after-sunset", there=False, whole=whole, dark=timedelta(minutes=minutes), sets=SETS)


def before_sunrise(minutes: int, *, whole: bool = False) -> Fact:
    """So much of the drive home is before sunrise."""
    return fact(
        "drive-before-sunrise", there=False, whole=whole, dark=timedelta(minutes=minutes), rises=RISES
    )


@pytest.mark.parametrize(
    ("start", "end", "note"),
    [
        ("15:30", "16:26", None),
        ("15:50", "17:06", after_sunset(40)),
        ("16:26", "17:10", after_sunset(44, whole=True)),
        ("16:00", "16:27", after_sunset(1)),
        ("06:45", "07:45", before_sunrise(30)),
        ("05:45", "06:45", before_sunrise(60, whole=True)),
        ("07:15", "08:00", None),
    ],
)
def test_a_note_tells_which_part_of_a_drive_is_dark(start: str, end: str, note: Fact | None) -> None:
    """Only what lies before sunrise or after sunset is told, to the minute."""
    drive = TimedDrive(at(start), at(end), there=False)
    assert darkness_notes(LIGHT, [drive]) == (() if note is None else (note,))


def test_the_sun_that_never_sets_is_no_trouble_and_the_one_that_never_rises_is_told() -> None:
    """Longyearbyen in June and in December."""
    place, zone = Point(78.22, 15.65), ZoneInfo("Arctic/Longyearbyen")
    summer, winter = (daylight(place, date(2026, month, 15), zone) for month in (6, 12))
    drive = TimedDrive(at("12:00"), at("13:00"), there=False)
    assert darkness_notes(summer, [drive]) == ()
    assert darkness_notes(winter, [drive]) == (fact("drive-polar-night", there=False),)


@pytest.mark.parametrize("zone", ["Pacific/Honolulu", "Pacific/Auckland", "Asia/Kolkata", "America/Chicago"])
def test_sunrise_and_sunset_lie_on_the_day_that_was_asked_for(zone: str) -> None:
    """Far from Greenwich, and on days when clocks change, both are on the local date and in order."""
    points = {
        "Pacific/Honolulu": Point(21.3, -157.9),
        "Pacific/Auckland": Point(-36.8, 174.8),
        "Asia/Kolkata": Point(22.6, 88.4),
        "America/Chicago": Point(41.9, -87.6),
    }
    for day in (date(2026, 3, 8), date(2026, 6, 21), date(2026, 11, 1), date(2026, 12, 31)):
        light = daylight(points[zone], day, ZoneInfo(zone))
        assert light.rises is not None
        assert light.sets is not None
        assert light.rises.date() == light.sets.date() == day
        assert light.rises < light.sets
