"""Time zone rules for calendar files."""

from datetime import UTC, datetime, timedelta
from io import StringIO
from itertools import pairwise
from zoneinfo import ZoneInfo, available_timezones

import pytest
from dateutil.tz import tzical

from tripplan.files.calendars.time_zone_rules import ZoneRules, rules_from_footer, vtimezone

HOUR = timedelta(hours=1)


def test_a_footer_with_two_plain_changes_becomes_two_rules() -> None:
    """Central Time changes on the second Sunday of March and the first of November, at two o'clock."""
    # US Energy Policy Act of 2005, section 110, in force since 2007 (from memory).
    rules = rules_from_footer("CST6CDT,M3.2.0,M11.1.0")
    assert rules is not None
    forward, back = rules.changes
    assert forward.onset(2027).isoformat() == "2027-03-14T02:00:00"
    assert forward.instant(2027) == datetime(2027, 3, 14, 8, tzinfo=UTC)
    assert back.onset(2027).isoformat() == "2027-11-07T02:00:00"
    assert back.instant(2027) == datetime(2027, 11, 7, 7, tzinfo=UTC)


def test_the_last_sunday_is_counted_from_the_end_of_the_month() -> None:
    """Central European clocks change on the last Sundays of March and October at 01:00 UTC."""
    # Directive 2000/84/EC, articles 2 and 3 (from memory).
    rules = rules_from_footer("CET-1CEST,M3.5.0,M10.5.0/3")
    assert rules is not None
    forward, back = rules.changes
    assert forward.instant(2027) == datetime(2027, 3, 28, 1, tzinfo=UTC)
    assert back.instant(2027) == datetime(2027, 10, 31, 1, tzinfo=UTC)


def test_a_zone_without_changes_has_one_offset() -> None:
    """A footer with a name in angle brackets and no rule is a fixed offset, west negative."""
    assert rules_from_footer("<-0330>3:30") == ZoneRules(timedelta(hours=-3, minutes=-30), "-0330")


@pytest.mark.parametrize(
    "footer",
    [
        "IST-2IDT,M3.4.4/26,M10.5.0",  # changes 26 hours into a Thursday
        "<-02>2<-01>,M3.5.0/-1,M10.5.0/0",  # changes an hour before a Sunday
        "EST5EDT,J60,J300",  # counts the days of the year
        "EST5EDT",  # leaves the rule to the reader
        "",
    ],
)
def test_a_footer_that_no_plain_rule_can_say_gives_none(footer: str) -> None:
    """What does not fall on the n-th weekday of a month itself is not squeezed into a rule."""
    assert rules_from_footer(footer) is None


def test_the_written_onset_stands_by_the_clock_before_the_change() -> None:
    """DTSTART of an observance is local time before the onset (RFC 5545, 3.6.5): 02:00 in Chicago."""
    component = vtimezone(ZoneInfo("America/Chicago"), 2026, 2026)
    assert component is not None
    text = component.to_ical().decode()
    assert "BEGIN:DAYLIGHT\r\nDTSTART:20250309T020000\r\n" in text
    assert "RRULE:FREQ=YEARLY;BYDAY=2SU;BYMONTH=3" in text
    assert "RDATE" not in text


def test_a_zone_whose_law_changed_lately_is_not_written_by_rule() -> None:
    """Vancouver gave up changing its clock in 2026, so a rule from 2025 on would be wrong somewhere."""
    # tzdata 2026.6, zone America/Vancouver.
    assert vtimezone(ZoneInfo("America/Vancouver"), 2026, 2027) is None


def test_a_zone_with_changes_by_the_moon_is_not_written_by_rule() -> None:
    """Morocco's clock changes for Ramadan, which the footer does not say."""
    assert vtimezone(ZoneInfo("Africa/Casablanca"), 2027, 2027) is None


def test_a_clock_that_always_shows_utc_needs_no_zone() -> None:
    """UTC under any of its names is written with a Z, so no VTIMEZONE is made."""
    assert vtimezone(ZoneInfo("Etc/UTC"), 2026, 2027) is None
    assert vtimezone(ZoneInfo("Atlantic/Reykjavik"), 2026, 2027) is None


def test_every_rule_agrees_with_zoneinfo_in_an_independent_reader() -> None:
    """In every zone, python-dateutil reads from the rules the offset that zoneinfo gives."""
    # dateutil.tz.tzical and zoneinfo are two independent computations of the same offsets.
    first, last = 2026, 2027
    carried = 0
    for name in sorted(available_timezones()):
        zone = ZoneInfo(name)
        component = vtimezone(zone, first, last)
        if component is None:
            continue
        carried += 1
        read = tzical(StringIO(component.to_ical().decode())).get()
        for moment in _moments(zone, first, last):
            wall = moment.astimezone(zone)
            if wall.fold or (wall + HOUR).utcoffset() != wall.utcoffset():
                continue  # twice or never on the clock; such times are written in UTC
            assert wall.replace(tzinfo=read).utcoffset() == wall.utcoffset(), (name, wall)
    assert carried > 500


def _moments(zone: ZoneInfo, first: int, last: int) -> list[datetime]:
    """Every fortnight, and around each change of the clock."""
    start, end = datetime(first, 1, 1, 12, tzinfo=UTC), datetime(last, 12, 31, tzinfo=UTC)
    regular = [start + number * timedelta(days=14) for number in range((end - start).days // 14)]
    found = list(regular)
    for before, after in pairwise(regular):
        if before.astimezone(zone).utcoffset() != after.astimezone(zone).utcoffset():
            while after - before > timedelta(minutes=1):
                middle = before + (after - before) / 2
                same = before.astimezone(zone).utcoffset() == middle.astimezone(zone).utcoffset()
                before, after = (middle, after) if same else (before, middle)
            found += [before - 3 * HOUR, before - timedelta(minutes=61), after + 2 * HOUR, after + 3 * HOUR]
    return [moment.replace(microsecond=0) for moment in found]
