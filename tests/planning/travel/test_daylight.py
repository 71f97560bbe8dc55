"""Drives in the dark, as a parent is told about them."""

from datetime import date, datetime
from zoneinfo import ZoneInfo

import pytest

from tripplan.documents.where import Point
from tripplan.planning.travel.daylight import Daylight, TimedDrive, darkness_notes, daylight

CHICAGO = ZoneInfo("America/Chicago")
DAY = date(2026, 12, 8)


def at(clock: str) -> datetime:
    """A time of day on a December day."""
    return datetime.fromisoformat(f"{DAY}T{clock}").replace(tzinfo=CHICAGO)


LIGHT = Daylight(at("07:15"), at("16:26"))


@pytest.mark.parametrize(
    ("start", "end", "note"),
    [
        ("15:30", "16:26", None),
        ("15:50", "17:06", "The last 40 min of the drive home are after sunset (4:26 PM)."),
        ("16:26", "17:10", "The whole drive home is after sunset (4:26 PM)."),
        ("16:00", "16:27", "The last 1 min of the drive home is after sunset (4:26 PM)."),
        ("06:45", "07:45", "The first 30 min of the drive home are before sunrise (7:15 AM)."),
        ("05:45", "06:45", "The whole drive home is before sunrise (7:15 AM)."),
        ("07:15", "08:00", None),
    ],
)
def test_a_note_tells_which_part_of_a_drive_is_dark(start: str, end: str, note: str | None) -> None:
    """Only what lies before sunrise or after sunset is told, to the minute."""
    drive = TimedDrive("the drive home", at(start), at(end))
    assert darkness_notes(LIGHT, [drive]) == (() if note is None else (note,))


def test_the_sun_that_never_sets_is_no_trouble_and_the_one_that_never_rises_is_told() -> None:
    """Longyearbyen in June and in December."""
    place, zone = Point(78.22, 15.65), ZoneInfo("Arctic/Longyearbyen")
    summer, winter = (daylight(place, date(2026, month, 15), zone) for month in (6, 12))
    drive = TimedDrive("the drive home", at("12:00"), at("13:00"))
    assert darkness_notes(summer, [drive]) == ()
    assert darkness_notes(winter, [drive]) == (
        "The sun does not rise that day: the drive home is in the dark.",
    )


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
