from datetime import date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tests.builders import make_place
from tripplan.language.sentences import Fact, fact
from tripplan.planning.opening.hours import DayHours, Openness, hours_on, open_days
from tripplan.values.weekday import Weekday

CHICAGO = ZoneInfo("America/Chicago")
NO_DAYS: frozenset[date] = frozenset()
TUESDAY = date(2026, 12, 1)
SATURDAY = date(2026, 12, 5)


def hours(
    day: date, holidays: frozenset[date] = NO_DAYS, out: frozenset[date] = NO_DAYS, **opening: Any
) -> DayHours:
    """The hours of a place with the opening given by name."""
    return hours_on(make_place(opening={"hours": "Tu-Su 10:00-17:00", **opening}), day, holidays, out)


def clocks(*moments: datetime) -> list[str]:
    """Day of the month and time of each moment."""
    return [f"{moment:%d %H:%M}" for moment in moments]


def test_an_open_day_has_its_span_and_says_so() -> None:
    """Without a last entry rule one may enter until closing."""
    found = hours(TUESDAY)
    (span,) = found.spans
    assert found.openness is Openness.OPEN
    assert clocks(span.opens, span.closes, span.last_entry) == ["01 10:00", "01 17:00", "01 17:00"]
    assert found.reason == fact("hours-open")


def test_last_entry_lies_before_closing() -> None:
    """The till stops so many minutes before the doors close."""
    (span,) = hours(TUESDAY, last_entry_minutes_before_close=45).spans
    assert clocks(span.last_entry) == ["01 16:15"]


def test_a_span_shorter_than_its_last_entry_rule_lets_nobody_in() -> None:
    """Open for half an hour with last entry an hour before closing is closed to visitors."""
    found = hours(TUESDAY, hours="10:00-10:30", last_entry_minutes_before_close=60)
    assert (found.openness, found.spans) == (Openness.CLOSED, ())
    assert found.reason == fact("hours-last-entry-too-early")


@pytest.mark.parametrize(
    ("text", "day", "reason"),
    [
        ("Tu-Su 10:00-17:00", date(2026, 11, 30), fact("hours-closed-weekday", day=Weekday.MONDAY)),
        ("Tu-Su 10:00-17:00; PH off", TUESDAY, fact("hours-closed-holiday")),
        ("10:00-17:00; Dec 1 off", TUESDAY, fact("hours-closed")),
        ("Apr-Oct 10:00-17:00", date(2026, 12, 20), fact("hours-closed-season", opens=date(2027, 4, 1))),
    ],
)
def test_a_closed_day_says_why(text: str, day: date, reason: Fact) -> None:
    """The reason tells a usual closing day from a holiday, a single day and a season."""
    found = hours(day, frozenset({TUESDAY}), hours=text)
    assert (found.openness, found.reason) == (Openness.CLOSED, reason)


def test_hours_that_are_a_guess_say_so_open_or_closed() -> None:
    """Hours nobody read at their source still count, and the reason calls them a guess."""
    assert hours(TUESDAY, checked_on_site=False).openness is Openness.OPEN
    assert hours(TUESDAY, checked_on_site=False).reason.code == "hours-guess"
    assert hours(date(2026, 11, 30), checked_on_site=False).reason.code == "hours-guess"


def test_a_day_under_a_condition_in_words_is_unknown() -> None:
    """'By appointment' is neither open nor closed."""
    found = hours(TUESDAY, hours='Tu-Su "by appointment"')
    assert (found.openness, found.spans) == (Openness.UNKNOWN, ())
    assert found.reason == fact("hours-ask")


def test_an_evening_past_midnight_belongs_to_the_day_it_begins_on() -> None:
    """Friday's late opening ends on Saturday and leaves Saturday closed."""
    friday = SATURDAY - timedelta(days=1)
    (span,) = hours(friday, hours="Fr 20:00-26:00").spans
    assert clocks(span.opens, span.closes) == ["04 20:00", "05 02:00"]
    assert hours(SATURDAY, hours="Fr 20:00-26:00").openness is Openness.CLOSED


def test_a_place_open_day_and_night_is_open_from_midnight_to_midnight() -> None:
    """Each day has its own part of an endless span."""
    (span,) = hours(TUESDAY, hours="24/7").spans
    assert clocks(span.opens, span.closes) == ["01 00:00", "02 00:00"]


def test_entry_times_are_those_within_the_hours_in_order() -> None:
    """A slot before opening or after the last entry does not take place."""
    found = hours(
        TUESDAY, entry_times=["16:30", "09:00", "14:00", "11:00"], last_entry_minutes_before_close=60
    )
    assert clocks(*found.entry_times) == ["01 11:00", "01 14:00"]


def test_a_day_without_an_entry_time_is_closed() -> None:
    """Timed entry with no slot inside the hours lets nobody in."""
    found = hours(TUESDAY, entry_times=["08:00"])
    assert (found.openness, found.entry_times) == (Openness.CLOSED, ())


@pytest.mark.parametrize(
    ("day", "holidays", "out", "expected"),
    [
        (TUESDAY, NO_DAYS, NO_DAYS, ["01 09:30", "01 12:00"]),
        (TUESDAY, frozenset({TUESDAY}), NO_DAYS, []),
        (TUESDAY, NO_DAYS, frozenset({TUESDAY}), []),
        (SATURDAY, NO_DAYS, NO_DAYS, []),
    ],
)
def test_school_groups_come_on_school_days_only(
    day: date, holidays: frozenset[date], out: frozenset[date], expected: list[str]
) -> None:
    """On weekends, public holidays and in the school break no class fills the place."""
    found = hours(day, holidays, out, school_groups="09:30-12:00")
    assert clocks(*(moment for span in found.group_spans for moment in span)) == expected


@pytest.mark.parametrize(("day", "hours_open"), [(date(2026, 11, 1), 4), (date(2027, 3, 14), 2)])
def test_hours_across_a_clock_change_follow_the_clock_on_the_wall(day: date, hours_open: int) -> None:
    """From 00:00 to 03:00 by the clock is four hours in autumn and two in spring."""
    (span,) = hours(day, hours="00:00-03:00").spans
    assert clocks(span.closes) == [f"{day:%d} 03:00"]
    assert span.closes.timestamp() - span.opens.timestamp() == hours_open * 3600


def test_last_entry_counts_elapsed_minutes_across_a_clock_change() -> None:
    """An hour before 02:30 on the autumn night is 01:30 for the second time."""
    (span,) = hours(date(2026, 11, 1), hours="00:00-02:30", last_entry_minutes_before_close=60).spans
    assert span.closes.timestamp() - span.last_entry.timestamp() == 3600


@pytest.mark.parametrize(
    "text", ["Tu-Su 10:00-17:00; PH off", "24/7", "Fr,Sa 20:00-26:00; SH off", "SH Mo-Fr 10:00-12:00", "off"]
)
def test_open_days_are_the_days_that_are_open_one_by_one(text: str) -> None:
    """Asking for a season at once agrees with asking day by day."""
    place = make_place(opening={"hours": text})
    first, last = date(2026, 10, 20), date(2027, 3, 20)
    days = [first + timedelta(days=count) for count in range((last - first).days + 1)]
    holidays = frozenset({date(2026, 11, 26), date(2026, 12, 25)})
    out = frozenset(day for day in days if date(2026, 12, 20) <= day <= date(2027, 1, 3))
    one_by_one = tuple(d for d in days if hours_on(place, d, holidays, out).openness is Openness.OPEN)
    assert open_days(place, first, last, holidays, out) == one_by_one


def test_shows_and_quiet_hours_are_those_of_the_day() -> None:
    """A show on weekends only, one whose times differ by the rule, and a quiet hour on Sundays."""
    place = make_place(
        opening={"hours": "Mo-Su 10:00-17:00"},
        visit={
            "quiet_hours": "Su 10:00-11:00",
            "shows": [
                {"name": "Feeding", "starts": ["14:00", "11:00"], "days": "Sa-Su"},
                {"name": "Sky", "starts": ["12:00", "15:00"], "days": "Mo-Fr; Sa 14:00-16:00", "minutes": 30},
            ],
        },
    )

    def told(day: date) -> tuple[list[tuple[str, list[str]]], int]:
        hours = hours_on(place, day, frozenset(), frozenset())
        return [(show.name, [f"{at:%H:%M}" for at in show.starts]) for show in hours.shows], len(
            hours.quiet_spans
        )

    assert told(date(2026, 12, 2)) == ([("Sky", ["12:00", "15:00"])], 0)
    assert told(date(2026, 12, 5)) == ([("Feeding", ["11:00", "14:00"]), ("Sky", ["15:00"])], 0)
    assert told(date(2026, 12, 6)) == ([("Feeding", ["11:00", "14:00"])], 1)
