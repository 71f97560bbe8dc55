"""What is said about clocks."""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from tripplan.language.sentences import Fact, fact
from tripplan.planning.outing.clock_notes import clock_notes

CHICAGO = ZoneInfo("America/Chicago")


def notes(day: date, zone: str = "America/Chicago") -> tuple[Fact, ...]:
    """The notes for a visit at ten by the clock of the place."""
    return clock_notes(day, CHICAGO, datetime(day.year, day.month, day.day, 10, tzinfo=ZoneInfo(zone)))


def test_an_ordinary_day_in_one_zone_says_nothing() -> None:
    """Clocks are no subject then, and zones that show the same time are none either."""
    assert notes(date(2026, 12, 8)) == ()
    assert notes(date(2026, 12, 8), "America/Menominee") == ()


@pytest.mark.parametrize(
    ("zone", "hours", "ahead"),
    [
        ("America/Indiana/Indianapolis", 1, True),
        ("America/Denver", 1, False),
        ("America/St_Johns", 2.5, True),
    ],
)
def test_another_zone_is_told_with_its_difference(zone: str, hours: float, ahead: bool) -> None:
    """The difference is that of the day."""
    assert notes(date(2026, 12, 8), zone) == (
        fact("notes-another-zone", by=timedelta(hours=hours), ahead=ahead),
    )


@pytest.mark.parametrize(
    ("day", "forward", "night"),
    [
        (date(2026, 10, 31), False, "after"),
        (date(2026, 11, 1), False, "before"),
        (date(2027, 3, 13), True, "after"),
        (date(2027, 3, 14), True, "before"),
    ],
)
def test_a_clock_change_is_told_the_day_before_and_the_day_itself(
    day: date, forward: bool, night: str
) -> None:
    """US clocks change on the second Sunday of March and the first of November (15 USC 260a)."""
    an_hour = timedelta(hours=1)
    assert notes(day) == (fact("notes-clocks-change", by=an_hour, forward=forward, night=night),)
