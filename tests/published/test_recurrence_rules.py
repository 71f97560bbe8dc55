"""Repeating calendar entries against a rule engine that nobody here wrote.

Source: python-dateutil, dateutil.rrule, a separate implementation of RFC 5545 (Desruisseaux (ed.), 2009),
section 3.3.10; read by running it on the same rules.
"""

from datetime import date, datetime
from zoneinfo import ZoneInfo

from dateutil.rrule import rrulestr
from hypothesis import given, settings
from hypothesis import strategies as st

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.files.calendar_reader.reading import read_here

ZONE = ZoneInfo("America/Chicago")
WINDOW = DateSpan(first=date(2026, 9, 1), last=date(2027, 12, 31))
WEEKDAYS = ("MO", "TU", "WE", "TH", "FR", "SA", "SU")

days = st.lists(st.sampled_from(WEEKDAYS), min_size=1, max_size=3, unique=True).map(",".join)
nth_days = st.builds(
    lambda nth, day: f"{nth}{day}", st.sampled_from([1, 2, 3, 4, -1]), st.sampled_from(WEEKDAYS)
)
interval = st.integers(1, 3)
ends = st.sampled_from(["", ";COUNT=25", ";UNTIL=20270615T120000"])
rules = st.one_of(
    st.builds("FREQ=DAILY;INTERVAL={}{}".format, interval, ends),
    st.builds("FREQ=WEEKLY;INTERVAL={};BYDAY={}{}".format, interval, days, ends),
    st.builds("FREQ=MONTHLY;INTERVAL={};BYDAY={}{}".format, interval, nth_days, ends),
    st.builds("FREQ=MONTHLY;INTERVAL={};BYMONTHDAY={}{}".format, interval, st.integers(1, 28), ends),
    st.builds("FREQ=YEARLY;BYMONTH={};BYMONTHDAY={}{}".format, st.integers(1, 12), st.integers(1, 28), ends),
)
starts = st.datetimes(datetime(2024, 1, 1), datetime(2027, 3, 1)).map(  # noqa: DTZ001
    lambda moment: moment.replace(minute=0, second=0, microsecond=0)
)


@settings(max_examples=120)
@given(rules, starts)
def test_a_rule_gives_the_moments_that_dateutil_gives(rule: str, start: datetime) -> None:
    """From a start that the rule itself names, every occurrence in the window is the same, none more."""
    matching = next(iter(rrulestr(rule.split(";COUNT")[0].split(";UNTIL")[0], dtstart=start)))
    first, last = (
        datetime.combine(day, at)
        for day, at in ((WINDOW.first, datetime.min.time()), (WINDOW.last, datetime.max.time()))
    )
    expected = rrulestr(rule, dtstart=matching).between(first, last, inc=True)
    data = (
        "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:1\r\n"
        f"DTSTART;TZID=America/Chicago:{matching:%Y%m%dT%H%M%S}\r\nDURATION:PT1H\r\nRRULE:{rule}\r\n"
        "END:VEVENT\r\nEND:VCALENDAR\r\n"
    )
    read = read_here(data.encode(), "rule.ics", WINDOW, ZONE)
    assert read.value is not None
    found = [entry.start.replace(tzinfo=None) for entry in read.value.entries]
    # An hour that the spring change leaves out is moved on by an hour (RFC 5545, 3.3.5); days must agree.
    assert [moment.date() for moment in found] == [moment.date() for moment in expected]
