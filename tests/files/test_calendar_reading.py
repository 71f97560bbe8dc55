"""Reading calendar files from elsewhere."""

from datetime import date, datetime
from zoneinfo import ZoneInfo

import pytest

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.files.calendar_reader.content import CalendarEntry
from tripplan.files.calendar_reader.reading import read_calendar, read_here

CHICAGO = ZoneInfo("America/Chicago")
DECEMBER = DateSpan(first=date(2026, 12, 1), last=date(2026, 12, 31))


def calendar(*entries: str, head: str = "") -> bytes:
    """A calendar file of entries given by their lines, with a UID of its own for each that has none."""
    blocks = []
    for number, entry in enumerate(entries):
        uid = "" if "UID:" in entry else f"UID:{number}\n"
        blocks.append(f"BEGIN:VEVENT\n{uid}DTSTAMP:20260101T000000Z\n{entry.strip()}\nEND:VEVENT\n")
    text = f"BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:test\n{head}{''.join(blocks)}END:VCALENDAR\n"
    return text.replace("\n", "\r\n").encode()


def read(
    data: bytes, window: DateSpan = DECEMBER, own_addresses: tuple[str, ...] = ()
) -> list[CalendarEntry]:
    """The entries of a file that has no faults at all."""
    result = read_here(data, "test.ics", window, CHICAGO, own_addresses=own_addresses)
    assert result.value is not None
    assert result.findings == ()
    return list(result.value.entries)


def starts(data: bytes, window: DateSpan = DECEMBER) -> list[str]:
    """When the entries of a file without faults begin, by the clock at home."""
    return [f"{entry.start:%Y-%m-%d %H:%M}" for entry in read(data, window)]


def test_an_entry_is_read_by_the_clock_at_home() -> None:
    """A dentist at nine in New York is at eight in Chicago."""
    (entry,) = read(
        calendar("DTSTART;TZID=America/New_York:20261208T090000\nDTEND:20261208T150000Z\nSUMMARY:Dentist")
    )
    assert entry.start == datetime(2026, 12, 8, 8, 0, tzinfo=CHICAGO)
    assert entry.end == datetime(2026, 12, 8, 9, 0, tzinfo=CHICAGO)
    assert (entry.summary, entry.all_day, entry.takes_time) == ("Dentist", False, True)


def test_a_time_without_zone_is_meant_by_the_clock_at_home() -> None:
    """Floating times belong to whoever reads them (RFC 5545, 3.3.5)."""
    assert starts(calendar("DTSTART:20261208T090000")) == ["2026-12-08 09:00"]


def test_a_windows_or_vendor_zone_name_is_understood() -> None:
    """Names that other programs give to zones mean the same clock."""
    windows = "DTSTART;TZID=Eastern Standard Time:20261208T090000"
    vendor = "DTSTART;TZID=/vendor.example.org/20260101_1/America/New_York:20261209T090000"
    quoted = 'DTSTART;TZID="America/New_York":20261210T090000'
    # RFC 5545, section 3.2: a quoted value may hold colons, semicolons and commas.
    colons = 'DTSTART;TZID="/vendor;a,b:c/America/New_York":20261211T090000'
    assert starts(calendar(windows, vendor, quoted, colons)) == [
        "2026-12-08 08:00",
        "2026-12-09 08:00",
        "2026-12-10 08:00",
        "2026-12-11 08:00",
    ]


def test_a_zone_defined_in_the_file_is_used() -> None:
    """A name only this file knows is read by the rules the file gives for it."""
    zone = (
        "BEGIN:VTIMEZONE\nTZID:Our own\nBEGIN:STANDARD\nDTSTART:19701101T020000\n"
        "RRULE:FREQ=YEARLY;BYMONTH=11;BYDAY=1SU\nTZOFFSETFROM:+0400\nTZOFFSETTO:+0300\nEND:STANDARD\n"
        "BEGIN:DAYLIGHT\nDTSTART:19700308T020000\nRRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=2SU\n"
        "TZOFFSETFROM:+0300\nTZOFFSETTO:+0400\nEND:DAYLIGHT\nEND:VTIMEZONE\n"
    )
    # 15:00 at UTC+3 is 12:00 UTC, 06:00 in Chicago in December.
    assert starts(calendar("DTSTART;TZID=Our own:20261208T150000", head=zone)) == ["2026-12-08 06:00"]
    colon = "(UTC+03:00) Kuwait, Riyadh & more"
    data = calendar(f'DTSTART;TZID="{colon}":20261208T150000', head=zone.replace("Our own", colon))
    assert starts(data) == ["2026-12-08 06:00"]


def test_an_unknown_zone_is_read_by_the_clock_at_home_and_said() -> None:
    """A zone nobody knows is no reason to lose an entry, and the parent hears of it."""
    result = read_here(
        calendar("DTSTART;TZID=Nowhere:20261208T090000\nSUMMARY:Choir"), "a.ics", DECEMBER, CHICAGO
    )
    assert result.value is not None
    assert result.value.entries[0].start == datetime(2026, 12, 8, 9, tzinfo=CHICAGO)
    (finding,) = result.findings
    assert (finding.file, finding.field, finding.value) == ("a.ics", "entry 'Choir'", "Nowhere")


def test_a_zone_of_one_file_is_forgotten_with_the_next() -> None:
    """What one file calls a zone means nothing in another file."""
    zone = (
        "BEGIN:VTIMEZONE\nTZID:Shared\nBEGIN:STANDARD\nDTSTART:19700101T000000\nTZOFFSETFROM:{0}\n"
        "TZOFFSETTO:{0}\nEND:STANDARD\nEND:VTIMEZONE\n"
    )
    entry = "DTSTART;TZID=Shared:20261208T150000"
    assert starts(calendar(entry, head=zone.format("+0300"))) == ["2026-12-08 06:00"]
    assert starts(calendar(entry, head=zone.format("+0000"))) == ["2026-12-08 09:00"]


def test_whole_days_run_from_midnight_to_midnight_at_home() -> None:
    """DTEND of whole days is not included, and without it the entry lasts one day (RFC 5545, 3.6.1)."""
    one, several = read(
        calendar(
            "DTSTART;VALUE=DATE:20261208\nSUMMARY:Visit",
            "DTSTART;VALUE=DATE:20261221\nDTEND;VALUE=DATE:20270102\nSUMMARY:Recess",
        )
    )
    assert (one.all_day, one.first_day, one.last_day) == (True, date(2026, 12, 8), date(2026, 12, 8))
    assert (several.first_day, several.last_day) == (date(2026, 12, 21), date(2027, 1, 1))
    assert several.start == datetime(2026, 12, 21, tzinfo=CHICAGO)
    assert several.end == datetime(2027, 1, 2, tzinfo=CHICAGO)


@pytest.mark.parametrize(
    ("times", "first", "last"),
    [
        # Written by another clock: New York is an hour ahead of Chicago, Los Angeles two behind.
        ("DTSTART;TZID=America/New_York:20261207T000000\nDTEND;TZID=America/New_York:20261208T000000", 7, 7),
        ("DTSTART;TZID=America/New_York:20261207T000000\nDTEND;TZID=America/New_York:20261207T235900", 7, 7),
        ("DTSTART;TZID=America/Los_Angeles:20261207T000000\nDURATION:P3D", 7, 9),
        ("DTSTART;TZID=Asia/Tokyo:20261207T000000\nDTEND;TZID=Asia/Tokyo:20261208T000000", 7, 7),
        # In UTC: the day itself, and midnight in Chicago, New York and Los Angeles.
        ("DTSTART:20261207T000000Z\nDTEND:20261208T000000Z", 7, 7),
        ("DTSTART:20261207T060000Z\nDTEND:20261208T060000Z", 7, 7),
        ("DTSTART:20261207T050000Z\nDTEND:20261208T050000Z", 7, 7),
        ("DTSTART:20261207T080000Z\nDTEND:20261212T080000Z", 7, 11),
        # A night away is two days by any reading.
        ("DTSTART:20261207T180000\nDTEND:20261208T180000", 7, 8),
        ("DTSTART:20261207T220000\nDTEND:20261208T220000", 7, 8),
        ("DTSTART;TZID=America/New_York:20261207T080000\nDTEND;TZID=America/New_York:20261207T150000", 7, 7),
    ],
)
def test_days_written_by_another_clock_are_the_days_that_are_meant(times: str, first: int, last: int) -> None:
    """From midnight to midnight somewhere, an entry means whole days, and no day more at home."""
    (entry,) = read(calendar(times))
    assert (entry.first_day.day, entry.last_day.day) == (first, last)
    assert entry.start.tzinfo == CHICAGO


def test_whole_days_across_a_clock_change_stay_whole() -> None:
    """Clocks in New York go back on 1 November 2026, so two of its days have 49 hours."""
    data = calendar("DTSTART:20261031T040000Z\nDTEND:20261102T050000Z")
    found = read_here(data, "a.ics", DateSpan(first=date(2026, 10, 1), last=date(2026, 12, 31)), CHICAGO)
    assert found.value is not None
    (entry,) = found.value.entries
    assert (entry.all_day, entry.first_day, entry.last_day) == (True, date(2026, 10, 31), date(2026, 11, 1))


def test_a_duration_says_the_end_where_there_is_no_end() -> None:
    """DURATION counts from the start (RFC 5545, 3.8.2.5)."""
    (entry,) = read(calendar("DTSTART:20261208T090000\nDURATION:PT1H30M"))
    assert entry.end == datetime(2026, 12, 8, 10, 30, tzinfo=CHICAGO)


def test_only_what_touches_the_window_is_read() -> None:
    """An entry that ends as the window opens is out; one that reaches into it is in."""
    data = calendar(
        "DTSTART:20261130T220000\nDTEND:20261201T000000",
        "DTSTART:20261130T230000\nDTEND:20261201T003000",
        "DTSTART;VALUE=DATE:20261001\nDTEND;VALUE=DATE:20270301",
        "DTSTART:20261231T233000\nDTEND:20270101T010000",
        "DTSTART:20270101T000000\nDTEND:20270101T010000",
    )
    assert starts(data) == ["2026-10-01 00:00", "2026-11-30 23:00", "2026-12-31 23:30"]


@pytest.mark.parametrize(
    ("line", "busy", "cancelled"),
    [
        ("TRANSP:TRANSPARENT", False, False),
        ("TRANSP:OPAQUE", True, False),
        ("X-MICROSOFT-CDO-BUSYSTATUS:FREE", False, False),
        ("STATUS:CANCELLED", True, True),
        ("STATUS:TENTATIVE", True, False),
    ],
)
def test_free_and_cancelled_entries_take_no_time(line: str, busy: bool, cancelled: bool) -> None:
    """TRANSP and STATUS decide whether an entry stands in the way (RFC 5545, 3.8.2.7 and 3.8.1.11)."""
    (entry,) = read(calendar(f"DTSTART:20261208T090000\nDTEND:20261208T100000\n{line}"))
    assert (entry.busy, entry.cancelled) == (busy, cancelled)
    assert entry.takes_time == (busy and not cancelled)


INVITED = """DTSTART:20261208T090000
DTEND:20261208T100000
ORGANIZER:mailto:club@example.org
ATTENDEE;PARTSTAT=ACCEPTED:mailto:club@example.org
ATTENDEE;CN="Smith: Ann";PARTSTAT=DECLINED:mailto:ann@example.org
"""


def test_an_invitation_the_owner_declined_takes_no_time() -> None:
    """The owner is known by address, by the calendar's own name, or as the only guest."""
    by_address = read(calendar(INVITED), own_addresses=("Ann@example.org",))
    by_name = read(calendar(INVITED, head="X-WR-CALNAME:ann@example.org\n"))
    as_guest = read(calendar(INVITED))
    assert [entry.declined for entry in (*by_address, *by_name, *as_guest)] == [True, True, True]


def test_an_invitation_somebody_else_declined_still_takes_time() -> None:
    """What another guest answered does not free the owner."""
    both = INVITED + "ATTENDEE;PARTSTAT=ACCEPTED:mailto:bo@example.org\n"
    assert not read(calendar(both))[0].declined
    assert not read(calendar(INVITED), own_addresses=("bo@example.org",))[0].declined


def test_a_weekly_entry_repeats_without_its_exceptions() -> None:
    """EXDATE leaves one out, RECURRENCE-ID moves one, as RFC 5545, 3.8.5.1 and 3.8.4.4 say."""
    clock = ";TZID=America/Chicago:"
    choir = f"UID:choir\nDTSTART{clock}20260908T160000\nDTEND{clock}20260908T170000\n"
    data = calendar(
        f"{choir}RRULE:FREQ=WEEKLY;BYDAY=TU;UNTIL=20261223T235959Z\n"
        "EXDATE;TZID=America/Chicago:20261215T160000\nSUMMARY:Choir",
        "UID:choir\nRECURRENCE-ID;TZID=America/Chicago:20261208T160000\n"
        "DTSTART;TZID=America/Chicago:20261209T170000\nDTEND;TZID=America/Chicago:20261209T180000\nSUMMARY:Moved",
    )
    entries = read(data)
    assert [f"{entry.start:%d %H:%M} {entry.summary}" for entry in entries] == [
        "01 16:00 Choir",
        "09 17:00 Moved",
        "22 16:00 Choir",
    ]
    assert len({entry.key for entry in entries}) == 3


def test_a_repeating_entry_keeps_its_own_clock_across_a_change() -> None:
    """Nine o'clock in New York is eight in Chicago before and after the clocks change."""
    data = calendar("DTSTART;TZID=America/New_York:20261028T090000\nRRULE:FREQ=WEEKLY;COUNT=2")
    window = DateSpan(first=date(2026, 10, 1), last=date(2026, 11, 30))
    assert starts(data, window) == ["2026-10-28 08:00", "2026-11-04 08:00"]


def test_an_exception_written_in_utc_still_hits() -> None:
    """A moment is the same in any zone: 22:00 UTC is four in the afternoon in Chicago in winter."""
    data = calendar(
        "DTSTART;TZID=America/Chicago:20261201T160000\nRRULE:FREQ=DAILY;COUNT=3\nEXDATE:20261202T220000Z"
    )
    assert starts(data) == ["2026-12-01 16:00", "2026-12-03 16:00"]


@pytest.mark.parametrize(
    ("rule", "days"),
    [
        ("FREQ=DAILY;INTERVAL=10", [4, 14, 24]),
        ("FREQ=WEEKLY;INTERVAL=2;BYDAY=MO,FR", [4, 14, 18, 28]),
        ("FREQ=MONTHLY;BYDAY=2TU", [8]),
        ("FREQ=MONTHLY;BYDAY=-1FR", [25]),
        ("FREQ=MONTHLY;BYMONTHDAY=-1", [31]),
        ("FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-1", [31]),
        ("FREQ=YEARLY;BYMONTH=12;BYDAY=1SU", [6]),
        ("FREQ=YEARLY", [4]),
        ("FREQ=WEEKLY;UNTIL=20261211", [4, 11]),
        ("FREQ=WEEKLY;BYDAY=FR;COUNT=3;WKST=SU", [4, 11]),
    ],
)
def test_a_rule_that_began_earlier_gives_the_days_of_the_calendar(rule: str, days: list[int]) -> None:
    """The usual rules give the days one counts on a wall calendar for December 2026."""
    # Counted by hand: 1 December 2026 is a Tuesday; the series starts on a Friday.
    begins = "20261127" if "COUNT" in rule or "UNTIL" in rule else "20201204"
    begins = "20261204" if rule.startswith(("FREQ=DAILY", "FREQ=WEEKLY;INTERVAL")) else begins
    data = calendar(f"DTSTART;VALUE=DATE:{begins}\nRRULE:{rule}")
    assert [entry.first_day.day for entry in read(data)] == days


def test_a_rule_brought_near_gives_what_the_whole_rule_gives() -> None:
    """A series begun in 1950 keeps its step: every third week counted from its first day."""
    data = calendar("DTSTART;VALUE=DATE:19500103\nRRULE:FREQ=WEEKLY;INTERVAL=3")
    expected = [day for day in range(1, 32) if (date(2026, 12, day) - date(1950, 1, 3)).days % 21 == 0]
    assert [entry.first_day.day for entry in read(data)] == expected


def test_all_later_occurrences_move_with_an_exception() -> None:
    """RANGE=THISANDFUTURE moves what follows by the same time (RFC 5545, 3.2.13)."""
    data = calendar(
        "UID:a\nDTSTART:20261201T090000\nDTEND:20261201T100000\nRRULE:FREQ=WEEKLY;COUNT=3",
        "UID:a\nRECURRENCE-ID;RANGE=THISANDFUTURE:20261208T090000\n"
        "DTSTART:20261208T110000\nDTEND:20261208T120000",
    )
    assert starts(data) == ["2026-12-01 09:00", "2026-12-08 11:00", "2026-12-15 11:00"]


def test_further_dates_are_added() -> None:
    """RDATE adds starts to an entry (RFC 5545, 3.8.5.2)."""
    data = calendar("DTSTART:20261201T090000\nDTEND:20261201T100000\nRDATE:20261203T090000,20261210T120000")
    assert starts(data) == ["2026-12-01 09:00", "2026-12-03 09:00", "2026-12-10 12:00"]


def test_the_newest_revision_counts() -> None:
    """Of two entries with one UID the higher SEQUENCE is the entry (RFC 5545, 3.8.7.4)."""
    data = calendar(
        "UID:a\nSEQUENCE:1\nDTSTART:20261202T090000", "UID:a\nSEQUENCE:0\nDTSTART:20261201T090000"
    )
    assert starts(data) == ["2026-12-02 09:00"]


def test_entries_that_wrongly_share_a_uid_are_all_kept() -> None:
    """Careless programs number nothing; different days are different entries all the same."""
    data = calendar("UID:a\nDTSTART;VALUE=DATE:20261201", "UID:a\nDTSTART;VALUE=DATE:20261202")
    assert len(read(data)) == 2


def test_an_alarm_inside_an_entry_is_not_the_entry() -> None:
    """The summary and duration of an alarm do not become the entry's."""
    (entry,) = read(
        calendar(
            "DTSTART:20261208T090000\nBEGIN:VALARM\nSUMMARY:Ring\nDURATION:PT9H\nTRIGGER:-PT5M\nEND:VALARM\n"
            "DTEND:20261208T100000\nSUMMARY:Choir"
        )
    )
    assert (entry.summary, entry.end.hour) == ("Choir", 10)


def test_folded_and_escaped_text_is_read_as_it_was_meant() -> None:
    """Lines are unfolded before anything else, and escapes undone (RFC 5545, 3.1 and 3.3.11)."""
    data = calendar("DTSTART:2026\n 1208T090000\nSUMMARY:Ada\\, Bo\\nand\n  Cy")
    (entry,) = read(data)
    assert entry.summary == "Ada, Bo and Cy"


@pytest.mark.parametrize("line_end", [b"\n", b"\r", b"\r\n"])
def test_any_line_end_and_a_byte_order_mark_are_read(line_end: bytes) -> None:
    """Files from any system are read, with or without a mark at their beginning."""
    data = calendar("DTSTART:20261208T090000").replace(b"\r\n", line_end)
    assert starts(b"\xef\xbb\xbf" + data) == ["2026-12-08 09:00"]


def test_the_name_of_the_calendar_comes_along() -> None:
    """NAME (RFC 7986, 5.1), or what programs used before it, names the calendar."""
    result = read_here(
        calendar("DTSTART:20261208T090000", head="X-WR-CALNAME:Our family\n"), "a.ics", DECEMBER, CHICAGO
    )
    assert result.value is not None
    assert result.value.name == "Our family"


def test_a_process_of_its_own_gives_the_same_answer() -> None:
    """Repeating entries are read by another process: entries and warnings come back unchanged."""
    data = calendar(
        "DTSTART;TZID=America/New_York:20261201T190000\nDTEND;TZID=America/New_York:20261201T200000\n"
        "RRULE:FREQ=WEEKLY;COUNT=3\nSUMMARY:Ch\u014dr \U0001f3b6",
        "DTSTART:20261207T060000Z\nDTEND:20261208T060000Z\nSUMMARY:Whole day",
        "DTSTART;VALUE=DATE:20261210\nTRANSP:TRANSPARENT\nSTATUS:CANCELLED",
        INVITED.replace("DTSTART:", "DTSTART;TZID=Nowhere:"),
        "DTSTART:never",
        head="X-WR-CALNAME:ann@example.org\n",
    )
    here = read_here(data, "a.ics", DECEMBER, CHICAGO)
    assert here.value is not None
    assert (len(here.value.entries), len(here.findings)) == (6, 2)
    assert read_calendar(data, "a.ics", DECEMBER, CHICAGO) == here
