from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from pydantic import TypeAdapter, ValidationError

from tripplan.values.opening_hours import HoursText, holds_at, open_spans, unknown_spans

CHICAGO = ZoneInfo("America/Chicago")
HOURS = TypeAdapter(HoursText)
NO_DAYS: frozenset[date] = frozenset()
THANKSGIVING = date(2026, 11, 26)


def day_of(day: date, text: str, holidays: frozenset[date] = NO_DAYS) -> list[str]:
    """The open spans of one day as texts."""
    start = datetime(day.year, day.month, day.day, tzinfo=CHICAGO)
    spans = open_spans(text, start, start + timedelta(days=1), holidays, NO_DAYS)
    return [f"{first:%H:%M}-{last:%H:%M}" for first, last in spans]


@pytest.mark.parametrize(
    ("text", "part_of_message"),
    [
        ("", "empty"),
        ("   ", "empty"),
        ("ten to five", "opening hours read like"),
        ("Mo-Fr 10-17", "opening hours read like"),
        ("Mo-Fr 25:00-17:00", "opening hours read like"),
        ("Mo-Fr 10:00-17:00;; PH off", "empty rule"),
        ("sunrise-sunset", "clock times"),
        ("Mo-Fr 10:00+", "closing time"),
        ("10:00-16:00/02:00", "spans of time"),
        ("PH -2 days off", "day before"),
        ("PH,SH Sa 10:00-12:00", "two things"),
        ("PH Dec off", "dates come first"),
        ("Dec foo PH off", "'Dec foo' is not understood; opening hours read like"),
        ("Mo-Fr 10:00-17:00; Dec 24-26,PH off", "'Dec 24-26,PH' may mean two things"),
        ("Mo-Fr 10:00-17:00; Sa ten; PH off", "'Sa ten' is not understood"),
        ('"feast": PH 10:00-12:00', "before the times"),
        ("Mo 10:00-12:00 || PH 10:00-12:00; Tu off", "comes last"),
        ("Mo-Fr 10:00-12:00, " * 100, "longer than"),
    ],
)
def test_a_text_that_cannot_be_worked_out_is_refused_with_advice(text: str, part_of_message: str) -> None:
    """What the engine cannot read, or would read wrongly, is a fault of the card, said in words."""
    with pytest.raises(ValidationError, match=part_of_message):
        HOURS.validate_python(text)


@pytest.mark.parametrize(
    "text",
    ["24/7", "off", "Mo-Fr 10:00-12:00;", "Tu-Su 10:00-17:00; PH,SH off", 'Mo-Fr "ring; bell, please"'],
)
def test_a_text_that_can_be_worked_out_is_kept_as_written(text: str) -> None:
    """Validation hands back the parent's own words."""
    assert HOURS.validate_python(text) == text


def test_ph_stands_for_the_given_dates_only() -> None:
    """The same text is open or closed by the holidays handed in, whatever was asked before."""
    text = "Mo-Su 10:00-17:00; PH off"
    assert day_of(THANKSGIVING, text) == ["10:00-17:00"]
    assert day_of(THANKSGIVING, text, frozenset({THANKSGIVING})) == []
    assert day_of(THANKSGIVING, text) == ["10:00-17:00"]


def test_holidays_in_a_row_are_those_days_and_no_others() -> None:
    """Rows across a month's and a year's end, one day alone and a gap of one day come out day by day."""
    rows = ((date(2026, 12, 28), 7), (date(2027, 1, 5), 1), (date(2028, 2, 27), 4), (date(2028, 3, 3), 1))
    off = {first + timedelta(days=n) for first, count in rows for n in range(count)}
    start, end = (datetime(year, 7, 1, tzinfo=CHICAGO) for year in (2026, 2028))
    spans = open_spans("SH 20:00-25:00", start, end, NO_DAYS, off)
    assert [first.date() for first, _ in spans] == sorted(off)
    assert {last - first for first, last in spans} == {timedelta(hours=5)}


def test_a_holiday_evening_runs_into_the_day_after() -> None:
    """The night after a public holiday is open although the day itself is none."""
    friday = date(2026, 11, 27)
    assert day_of(friday, "PH 20:00-26:00", frozenset({THANKSGIVING})) == ["00:00-02:00"]


def test_spans_that_touch_are_joined() -> None:
    """Two rules that meet at noon make one span."""
    assert day_of(THANKSGIVING, "10:00-12:00, 12:00-17:00") == ["10:00-17:00"]


def test_hours_under_a_condition_are_unknown_not_open() -> None:
    """A comment without 'open' leaves the hours unknown, as the syntax has it."""
    start = datetime(2026, 11, 25, tzinfo=CHICAGO)
    end = start + timedelta(days=1)
    text = '10:00-12:00 "by appointment"; PH off'
    assert open_spans(text, start, end, NO_DAYS, NO_DAYS) == ()
    assert unknown_spans(text, start, end, NO_DAYS, NO_DAYS) == (
        (start.replace(hour=10), start.replace(hour=12)),
    )
    assert not holds_at(text, start.replace(hour=11), NO_DAYS, NO_DAYS)


@pytest.mark.parametrize(
    ("day", "elapsed_hours"), [(date(2026, 11, 1), 25), (date(2027, 3, 14), 23), (date(2026, 12, 1), 24)]
)
def test_an_open_day_is_as_long_as_the_clock_makes_it(day: date, elapsed_hours: int) -> None:
    """Open day and night lasts 25 hours when clocks go back and 23 when they go forward."""
    start = datetime(day.year, day.month, day.day, tzinfo=CHICAGO)
    ((first, last),) = open_spans("24/7", start, start + timedelta(days=1), NO_DAYS, NO_DAYS)
    assert last.astimezone(UTC) - first.astimezone(UTC) == timedelta(hours=elapsed_hours)


def test_a_time_the_clock_skips_becomes_the_one_it_shows_next() -> None:
    """02:30 on the day clocks go forward opens at 03:30, as clocks on walls do."""
    assert day_of(date(2027, 3, 14), "02:30-05:00") == ["03:30-05:00"]


def test_a_span_is_clipped_to_the_time_asked_for() -> None:
    """Both ends of the answer lie within the question, in its own zone."""
    start = datetime(2026, 11, 25, 11, 30, tzinfo=CHICAGO)
    end = datetime(2026, 11, 25, 18, 15, tzinfo=UTC)
    assert open_spans("10:00-17:00", start, end, NO_DAYS, NO_DAYS) == ((start, end),)


def test_a_moment_without_a_zone_is_refused() -> None:
    """A naive start is a caller's mistake."""
    start = datetime(2026, 11, 25, tzinfo=CHICAGO)
    with pytest.raises(ValueError, match="time zone"):
        open_spans("24/7", start.replace(tzinfo=None), start, NO_DAYS, NO_DAYS)
