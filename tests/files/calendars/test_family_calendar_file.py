"""Family calendars made of calendar files."""

from datetime import date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tests.builders import make_household
from tripplan.documents.calendars.family_days import FamilyDays, LateEvening
from tripplan.files.calendar_reader.content import CalendarContent, CalendarEntry
from tripplan.files.calendars.family_calendar_file import family_calendar_from
from tripplan.planning.family.busy_days import BusyDays

CHICAGO = ZoneInfo("America/Chicago")
NINE = datetime(2026, 12, 8, 9, 0, tzinfo=CHICAGO)
HOUR = timedelta(hours=1)


def entry(key: str, start: datetime, end: datetime, **changes: Any) -> CalendarEntry:
    """A timed entry."""
    values: dict[str, Any] = {"all_day": False, **changes}
    return CalendarEntry(key, f"Private {key}", start, end, **values)


def content(*entries: CalendarEntry) -> CalendarContent:
    """A calendar of these entries."""
    return CalendarContent("Quillmarsh family", entries)


def test_only_busy_times_are_kept() -> None:
    """Without the parent's word no title is kept, and overlapping times become one."""
    calendar = family_calendar_from(
        content(
            entry("a", NINE, NINE + 2 * HOUR),
            entry("b", NINE + HOUR, NINE + 3 * HOUR),
            entry("c", NINE + 5 * HOUR, NINE + 6 * HOUR),
        )
    )
    assert [(busy.start, busy.end, busy.name) for busy in calendar.busy] == [
        (NINE, NINE + 3 * HOUR, ""),
        (NINE + 5 * HOUR, NINE + 6 * HOUR, ""),
    ]
    assert "Private" not in calendar.model_dump_json()


def test_names_are_kept_when_asked_for() -> None:
    """With the parent's word every entry stands by itself under its title."""
    calendar = family_calendar_from(
        content(entry("a", NINE, NINE + 2 * HOUR), entry("b", NINE + HOUR, NINE + 3 * HOUR)), keep_names=True
    )
    assert [busy.name for busy in calendar.busy] == ["Private a", "Private b"]


def test_what_takes_no_time_is_not_busy() -> None:
    """Free, cancelled, declined and momentary entries, and those the parent leaves out, do not count."""
    calendar = family_calendar_from(
        content(
            entry("free", NINE, NINE + HOUR, busy=False),
            entry("off", NINE, NINE + HOUR, cancelled=True),
            entry("no", NINE, NINE + HOUR, declined=True),
            entry("moment", NINE, NINE),
            entry("birthday", NINE, NINE + HOUR),
        ),
        left_out=frozenset({"birthday"}),
    )
    assert calendar.busy == ()


def test_a_whole_day_blocks_the_day_at_home() -> None:
    """An entry of one day runs from midnight to midnight by the clock at home."""
    midnight = datetime(2026, 12, 8, tzinfo=CHICAGO)
    calendar = family_calendar_from(
        content(entry("day", midnight, midnight + timedelta(days=1), all_day=True))
    )
    (busy,) = calendar.busy
    assert busy.start.date() == date(2026, 12, 8)
    assert busy.meets(midnight + 23 * HOUR, midnight + 25 * HOUR)
    assert not busy.meets(midnight + 24 * HOUR, midnight + 25 * HOUR)


def whole_day(day: int) -> CalendarEntry:
    """A day in December, from midnight to midnight."""
    start = datetime(2026, 12, day, tzinfo=CHICAGO)
    return entry(f"day {day}", start, start + 24 * HOUR, all_day=True)


LATE_AT_NINE = FamilyDays(late_evening=LateEvening(not_before=time(10)))


@pytest.mark.parametrize(
    ("others", "late"),
    [
        ([], False),
        ([entry("concert", NINE + 10 * HOUR, NINE + 13.5 * HOUR)], True),
        ([entry("concert", NINE + 10 * HOUR, NINE + 15 * HOUR)], True),
        ([entry("supper", NINE + 9 * HOUR, NINE + 11 * HOUR)], False),
        # Beside a night away, which alone is no late evening.
        (
            [
                entry("concert", NINE + 10 * HOUR, NINE + 13.5 * HOUR),
                entry("sleeper", NINE + 13 * HOUR, NINE + 23 * HOUR),
            ],
            True,
        ),
        # A day away by the clock of New York touches an afternoon the day before.
        ([entry("away", NINE + 38 * HOUR, NINE + 62 * HOUR, all_day=True)], False),
    ],
)
def test_joining_times_hides_no_late_evening(others: list[CalendarEntry], late: bool) -> None:
    """A late concert beside a whole-day entry makes the next morning slow, and whole days alone do not."""
    calendar = family_calendar_from(content(whole_day(8), *others))
    days = BusyDays(make_household(), (calendar,), LATE_AT_NINE)
    morning = days.on(date(2026, 12, 9), ("Ann",))
    assert any(busy.name == "late evening before" for busy in morning) is late
    assert not any(busy.name for busy in days.on(date(2026, 12, 10), ("Ann",)))


def test_the_calendar_is_named_by_the_parent_or_by_the_file() -> None:
    """The parent's name wins over the file's."""
    assert family_calendar_from(content()).name == "Quillmarsh family"
    assert family_calendar_from(content(), name="Ours", source="ours.ics").name == "Ours"
    assert family_calendar_from(CalendarContent("", ())).name == "Family calendar"
