"""What is said about clocks."""

from datetime import date, datetime
from zoneinfo import ZoneInfo

import pytest

from tripplan.planning.outing.clock_notes import clock_notes

CHICAGO = ZoneInfo("America/Chicago")


def notes(day: date, zone: str = "America/Chicago") -> tuple[str, ...]:
    """The notes for a visit at ten by the clock of the place."""
    return clock_notes(day, CHICAGO, datetime(day.year, day.month, day.day, 10, tzinfo=ZoneInfo(zone)))


def test_an_ordinary_day_in_one_zone_says_nothing() -> None:
    """Clocks are no subject then, and zones that show the same time are none either."""
    assert notes(date(2026, 12, 8)) == ()
    assert notes(date(2026, 12, 8), "America/Menominee") == ()


@pytest.mark.parametrize(
    ("zone", "note"),
    [
        ("America/Indiana/Indianapolis", "The place's clock is one hour ahead of the clock at home."),
        ("America/Denver", "The place's clock is one hour behind the clock at home."),
        ("America/St_Johns", "The place's clock is 2 h 30 min ahead of the clock at home."),
    ],
)
def test_another_zone_is_told_with_its_difference(zone: str, note: str) -> None:
    """The difference is that of the day."""
    assert notes(date(2026, 12, 8), zone) == (note,)


@pytest.mark.parametrize(
    ("day", "note"),
    [
        (date(2026, 10, 31), "Clocks at home go back one hour in the night after this day."),
        (date(2026, 11, 1), "Clocks at home go back one hour in the night before this day."),
        (date(2027, 3, 13), "Clocks at home go forward one hour in the night after this day."),
        (date(2027, 3, 14), "Clocks at home go forward one hour in the night before this day."),
    ],
)
def test_a_clock_change_is_told_the_day_before_and_the_day_itself(day: date, note: str) -> None:
    """US clocks change on the second Sunday of March and the first of November (15 USC 260a)."""
    assert notes(day) == (note,)
