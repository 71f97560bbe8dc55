"""Our calendar files against the standard's own examples and against readers that others wrote.

Source of the examples: Desruisseaux (ed.), Internet Calendaring and Scheduling Core Object Specification
(iCalendar), RFC 5545, 2009; the section stands beside each. Independent readers: ical.js 2.2.1 (npm), libical
(Debian) and vobject 0.9.9 (PyPI); the first two are skipped where they are not installed.
"""

import json
import os
import shutil
import subprocess
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo, available_timezones

import pytest
import vobject

from tests.missing import not_installed
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.where import Point
from tripplan.files.calendar_reader.content import CalendarEntry
from tripplan.files.calendar_reader.reading import read_here
from tripplan.files.calendars.calendar_file import calendar_file
from tripplan.files.calendars.time_zone_rules import vtimezone
from tripplan.planning.calendar_entry.entry import EntryLayout, OutingEntry, Reminder, ToDo, outing_uid

HELPERS = Path(__file__).parent / "calendar_readers"
NEW_YORK = ZoneInfo("America/New_York")
WRITTEN = datetime(2026, 11, 25, 16, 0, tzinfo=UTC)
HOURS = timedelta(hours=1)

SOME_ZONES = (
    "Africa/Cairo",
    "Africa/Casablanca",
    "Africa/Johannesburg",
    "America/Argentina/Buenos_Aires",
    "America/Chicago",
    "America/Denver",
    "America/Havana",
    "America/Indiana/Indianapolis",
    "America/Los_Angeles",
    "America/New_York",
    "America/Nuuk",
    "America/Phoenix",
    "America/Santiago",
    "America/St_Johns",
    "America/Vancouver",
    "Asia/Gaza",
    "Asia/Jerusalem",
    "Asia/Kathmandu",
    "Asia/Kolkata",
    "Asia/Tehran",
    "Asia/Tokyo",
    "Atlantic/Azores",
    "Australia/Adelaide",
    "Australia/Lord_Howe",
    "Australia/Sydney",
    "Europe/Berlin",
    "Europe/Dublin",
    "Europe/London",
    "Pacific/Auckland",
    "Pacific/Chatham",
    "Pacific/Kiritimati",
    "UTC",
)

Times = Mapping[str, tuple[int, ...]]
"""Start and end of entries and tasks by UID [seconds since 1970], then their alarms [seconds after start]."""


def outings_in(zone: ZoneInfo) -> list[OutingEntry]:
    """Outings of five hours all through a year, close to every change of the clock and across it."""
    noon = datetime(2026, 12, 1, 12, tzinfo=UTC)
    leaves = [noon + number * timedelta(days=28, hours=5) for number in range(14)]
    for before, after in pairwise(list(leaves)):
        if before.astimezone(zone).utcoffset() != after.astimezone(zone).utcoffset():
            while after - before > timedelta(minutes=1):
                middle = before + (after - before) / 2
                same = before.astimezone(zone).utcoffset() == middle.astimezone(zone).utcoffset()
                before, after = (middle, after) if same else (before, middle)
            leaves += [before - 2 * HOURS, before - HOURS / 2, after + HOURS / 2, after + 2 * HOURS]
    return [
        OutingEntry(
            uid=outing_uid(f"{zone.key} {number}"),
            summary=f"Outing {number}",
            start=(leave := moment.replace(second=0, microsecond=0).astimezone(zone)),
            arrive=_later(leave, 1),
            leave_place=_later(leave, 4),
            end=_later(leave, 5),
        )
        for number, moment in enumerate(leaves)
    ]


def _later(moment: datetime, hours: int) -> datetime:
    return (moment.astimezone(UTC) + hours * HOURS).astimezone(moment.tzinfo)


@cache
def zones_of_every_rule() -> tuple[str, ...]:
    """Of all zones that are written alike and show the same times, the first by name."""
    noon = datetime(2026, 12, 1, 12, tzinfo=UTC)
    moments = [noon + number * timedelta(days=14) for number in range(28)]
    found: dict[object, str] = {}
    for name in sorted(available_timezones()):
        zone = ZoneInfo(name)
        rules = vtimezone(zone, noon.year, noon.year + 1)
        written = rules and rules.to_ical().replace(name.encode(), b"")
        found.setdefault((written, *(moment.astimezone(zone).utcoffset() for moment in moments)), name)
    return tuple(found.values())


def truth(entries: Iterable[OutingEntry]) -> Times:
    """The times that a right reader finds."""
    return {entry.uid: (int(entry.start.timestamp()), int(entry.end.timestamp())) for entry in entries}


def by_vobject(data: bytes) -> Times:
    """The times vobject finds."""
    events = vobject.readOne(data.decode()).vevent_list
    return {
        str(event.uid.value): (int(event.dtstart.value.timestamp()), int(event.dtend.value.timestamp()))
        for event in events
    }


@pytest.fixture(scope="session")
def by_ical_js() -> Callable[[list[Path]], list[list[dict[str, object]]]]:
    """Reads files with ical.js; TRIPPLAN_ICAL_JS may name a folder with its node_modules."""
    node = shutil.which("node")
    folder = Path(os.environ.get("TRIPPLAN_ICAL_JS", HELPERS))
    if node is None:
        not_installed("node is not installed")
    if not (folder / "node_modules" / "ical.js").is_dir():
        not_installed(f"ical.js is not installed; run npm install in {HELPERS.name} or set TRIPPLAN_ICAL_JS")

    def read(files: list[Path]) -> list[list[dict[str, object]]]:
        command = [node, str(HELPERS / "read_with_ical_js.mjs"), str(folder), *map(str, files)]
        done = subprocess.run(command, capture_output=True, text=True, check=True, timeout=300)
        return [json.loads(line) for line in done.stdout.splitlines()]

    return read


@pytest.fixture(scope="session")
def by_libical(tmp_path_factory: pytest.TempPathFactory) -> Callable[[list[Path]], list[Times]]:
    """Reads files with libical and fails on every fault it finds."""
    compiler = shutil.which("cc")
    if compiler is None or not any(Path(base, "libical/ical.h").is_file() for base in _INCLUDES):
        not_installed("libical's header files or a C compiler are not installed")
    program = tmp_path_factory.mktemp("libical") / "read_with_libical"
    source = HELPERS / "read_with_libical.c"
    subprocess.run([compiler, "-o", str(program), str(source), "-lical"], check=True, timeout=120)

    def read(files: list[Path]) -> list[Times]:
        done = subprocess.run(
            [str(program), *map(str, files)], capture_output=True, text=True, check=True, timeout=300
        )
        assert "ERROR" not in done.stdout, done.stdout
        found: list[Times] = []
        for block in done.stdout.split("\n\n")[:-1]:
            rows = [line.split() for line in block.splitlines() if line]
            found.append({uid: tuple(map(int, numbers)) for uid, *numbers in rows})
        return found

    return read


_INCLUDES = ("/usr/include", "/usr/local/include", "/opt/homebrew/include")


def written(folder: Path, zones: Iterable[str]) -> tuple[list[Path], list[Times]]:
    """One file per zone, and the times that should be found in each."""
    files, times = [], []
    for number, name in enumerate(zones):
        entries = outings_in(ZoneInfo(name))
        files.append(folder / f"{number}.ics")
        files[-1].write_bytes(calendar_file(entries, written_at=WRITTEN))
        times.append(truth(entries))
    return files, times


def test_vobject_finds_the_right_times_in_every_zone() -> None:
    """In zones of every rule in the time zone database, vobject reads every outing at its true moment."""
    assert len(zones_of_every_rule()) > 60
    for name in zones_of_every_rule():
        entries = outings_in(ZoneInfo(name))
        assert by_vobject(calendar_file(entries, written_at=WRITTEN)) == truth(entries), name


def test_ical_js_finds_the_right_times(
    tmp_path: Path, by_ical_js: Callable[[list[Path]], list[list[dict[str, object]]]]
) -> None:
    """In zones of every kind, ical.js reads every outing at its true moment."""
    files, times = written(tmp_path, SOME_ZONES)
    found = [
        {entry["uid"]: (entry["start"], entry["end"]) for entry in entries} for entries in by_ical_js(files)
    ]
    assert found == times


def test_libical_finds_the_right_times_and_no_fault(
    tmp_path: Path, by_libical: Callable[[list[Path]], list[Times]]
) -> None:
    """In zones of every rule, libical reads every outing at its true moment and marks no error."""
    files, times = written(tmp_path, zones_of_every_rule())
    assert by_libical(files) == times


@cache
def with_everything(zone: ZoneInfo) -> tuple[bytes, Times]:
    """Outings in parts with tasks and alarms around every change of the clock, and what should be found."""
    entries: list[OutingEntry] = []
    times: dict[str, tuple[int, ...]] = {}
    for outing in outings_in(zone):
        start = outing.start
        pack = ToDo("pack", "Pack", _later(start, -13), start)
        book = ToDo("book", "Book", _later(start, -200), _later(start, -175), as_entry=True)
        reminders = (Reminder(14_400, "Think of it"), Reminder(60, "Leave in an hour"), Reminder(0, "Leave"))
        entries.append(
            replace(outing, layout=EntryLayout.PARTS, reminders=reminders, to_dos=(pack, book), sequence=2)
        )
        moments = [int(one.timestamp()) for one in (start, outing.arrive, outing.leave_place, outing.end)]
        times[f"{outing.uid}-there"] = (moments[0], moments[1], -864_000, -3_600, 0)
        times[outing.uid] = (moments[1], moments[2])
        times[f"{outing.uid}-back"] = (moments[2], moments[3])
        times[f"{outing.uid}-pack-todo"] = (int(pack.start.timestamp()), moments[0], 0)
        booking = int(book.start.timestamp())
        times[f"{outing.uid}-book-entry"] = (booking, booking + 900, 0)
    return calendar_file(entries, written_at=WRITTEN), times


def test_vobject_finds_parts_tasks_and_alarms_in_zones_of_every_kind() -> None:
    """Starts, ends, deadlines and alarms come back at their true moments (RFC 5545, 3.6.1, 3.6.2, 3.6.6)."""
    for name in SOME_ZONES:
        data, times = with_everything(ZoneInfo(name))
        calendar = vobject.readOne(data.decode())
        found = {
            one.uid.value: (
                int(one.dtstart.value.timestamp()),
                int((one.due if one.name == "VTODO" else one.dtend).value.timestamp()),
                *(int(alarm.trigger.value.total_seconds()) for alarm in one.contents.get("valarm", [])),
            )
            for one in (*calendar.contents["vevent"], *calendar.contents["vtodo"])
        }
        assert found == times, name


def everything_written(folder: Path) -> tuple[list[Path], list[Times]]:
    """One file per zone of the sample with all there is, and what should be found in each."""
    files, times = [], []
    for number, name in enumerate(SOME_ZONES):
        data, expected = with_everything(ZoneInfo(name))
        files.append(folder / f"{number}.ics")
        files[-1].write_bytes(data)
        times.append(expected)
    return files, times


def test_ical_js_finds_parts_tasks_and_alarms_in_zones_of_every_kind(
    tmp_path: Path, by_ical_js: Callable[[list[Path]], list[list[dict[str, Any]]]]
) -> None:
    """Starts, ends, deadlines and alarms come back at their true moments (RFC 5545, 3.6.1, 3.6.2, 3.6.6)."""
    files, times = everything_written(tmp_path)
    assert [
        {entry["uid"]: (entry["start"], entry["end"], *entry["alarms"]) for entry in entries}
        for entries in by_ical_js(files)
    ] == times


def test_libical_finds_parts_tasks_and_alarms_in_zones_of_every_kind(
    tmp_path: Path, by_libical: Callable[[list[Path]], list[Times]]
) -> None:
    """Starts, ends, deadlines and alarms come back at their true moments, and libical marks no fault."""
    files, times = everything_written(tmp_path)
    assert by_libical(files) == times


FULL = OutingEntry(
    uid=outing_uid("full"),
    summary="Old mill; grain, flour: \\ and more",
    start=datetime(2026, 12, 8, 8, 40, tzinfo=NEW_YORK),
    arrive=datetime(2026, 12, 8, 10, 0, tzinfo=NEW_YORK),
    leave_place=datetime(2026, 12, 8, 13, 0, tzinfo=NEW_YORK),
    end=datetime(2026, 12, 8, 14, 0, tzinfo=NEW_YORK),
    location="Old mill, 12 Mill Road",
    point=Point(40.48421, -88.99371),
    description="Leave home 8:40 AM.\n" + "Zwölf Kilogramm Dinkelmehl für 3 € 🌾; " * 8,
    categories=("water power", "grain, flour"),
    reminders=(Reminder(820, "Pack"), Reminder(60, "Leave in an hour")),
)


def test_ical_js_reads_every_text_as_it_was_written(
    tmp_path: Path, by_ical_js: Callable[[list[Path]], list[list[dict[str, object]]]]
) -> None:
    """Escapes, folds and letters of four bytes come back, and so do place, point and reminders."""
    file = tmp_path / "full.ics"
    file.write_bytes(calendar_file([FULL], written_at=WRITTEN))
    ((entry,),) = by_ical_js([file])
    assert entry["summary"] == FULL.summary
    assert entry["description"] == FULL.description.strip()
    assert entry["location"] == FULL.location
    assert entry["geo"] == [40.48421, -88.99371]
    assert entry["alarms"] == [-820 * 60, -60 * 60]


def test_vobject_reads_every_text_as_it_was_written() -> None:
    """Escapes, folds and letters of four bytes come back, and so do place, topics and reminders."""
    event = vobject.readOne(calendar_file([FULL], written_at=WRITTEN).decode()).vevent
    assert event.summary.value == FULL.summary
    assert event.description.value == FULL.description.strip()
    assert event.location.value == FULL.location
    assert event.categories.value == list(FULL.categories)
    assert event.geo.value == "40.48421;-88.99371"
    assert [alarm.trigger.value for alarm in event.valarm_list] == [-820 * HOURS / 60, -HOURS]


def test_vobject_reads_the_parts_of_an_outing() -> None:
    """Drive, visit and way home are three entries that lie end to end."""
    data = calendar_file([replace(FULL, layout=EntryLayout.PARTS)], written_at=WRITTEN)
    times = sorted(by_vobject(data).values())
    assert [end - start for start, end in times] == [80 * 60, 180 * 60, 60 * 60]
    assert all(before[1] == after[0] for before, after in pairwise(times))


def test_lines_end_fold_and_stay_whole_as_section_3_1_says() -> None:
    """Lines end in CRLF, hold at most 75 octets, and no letter is cut in two (RFC 5545, 3.1)."""
    data = calendar_file([FULL], written_at=WRITTEN)
    assert data.endswith(b"END:VCALENDAR\r\n")
    lines = data.split(b"\r\n")
    assert all(len(line) <= 75 and b"\n" not in line and b"\r" not in line for line in lines)
    assert all(line.decode("utf-8") is not None for line in lines)
    assert b"\r\n " in data


def test_text_is_escaped_as_section_3_3_11_says() -> None:
    """Backslash, semicolon, comma and line end are escaped; a colon is not (RFC 5545, 3.3.11)."""
    # The example there: three lines become one with \\n between them.
    example = replace(FULL, description="Project XYZ Final Review\nConference Room - 3B\nCome Prepared.")
    text = calendar_file([example], written_at=WRITTEN).decode().replace("\r\n ", "")
    assert "DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.\r\n" in text
    assert "SUMMARY:Old mill\\; grain\\, flour: \\\\ and more\r\n" in text


def test_a_position_is_written_as_section_3_8_1_6_says() -> None:
    """Latitude comes first and a semicolon stands between (RFC 5545, 3.8.1.6: GEO:37.386013;-122.082932)."""
    # Five decimals, a metre or so, are written.
    example = replace(FULL, point=Point(37.386013, -122.082932))
    assert b"GEO:37.38601;-122.08293\r\n" in calendar_file([example], written_at=WRITTEN)


def test_a_zone_is_written_as_section_3_6_5_says() -> None:
    """The rules for New York are those of the example there: from 2007, second Sunday of March and so on."""
    text = calendar_file([FULL], written_at=WRITTEN).decode()
    assert "TZID:America/New_York\r\n" in text
    assert "RRULE:FREQ=YEARLY;BYDAY=2SU;BYMONTH=3\r\n" in text
    assert "RRULE:FREQ=YEARLY;BYDAY=1SU;BYMONTH=11\r\n" in text
    assert "TZOFFSETFROM:-0500\r\nTZOFFSETTO:-0400\r\n" in text
    assert "TZOFFSETFROM:-0400\r\nTZOFFSETTO:-0500\r\n" in text


def test_what_is_required_stands_once_as_section_3_6_1_says() -> None:
    """UID, DTSTAMP and DTSTART stand once, DTEND without DURATION, no METHOD (RFC 5545, 3.6 and 3.6.1)."""
    data = calendar_file([FULL], written_at=WRITTEN)
    event = data[data.index(b"BEGIN:VEVENT") :]
    for name in (b"UID", b"DTSTAMP", b"DTSTART", b"DTEND"):
        assert sum(line.startswith((name + b":", name + b";")) for line in event.split(b"\r\n")) == 1
    assert b"\r\nDURATION" not in event
    assert b"METHOD" not in data
    head = data[: data.index(b"BEGIN:VTIMEZONE")]
    assert head.count(b"VERSION:2.0\r\n") == head.count(b"PRODID:") == 1


def read(body: str, first: date, last: date) -> list[CalendarEntry]:
    """The entries of an example, read in New York."""
    data = f"BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:x\n{body}\nEND:VCALENDAR\n".encode()
    result = read_here(data, "rfc5545", DateSpan(first=first, last=last), NEW_YORK)
    assert result.value is not None
    assert result.findings == ()
    return list(result.value.entries)


def test_the_minimal_event_of_section_4_is_read() -> None:
    """A three-day conference in UTC (RFC 5545, section 4, first example)."""
    (entry,) = read(
        "BEGIN:VEVENT\nDTSTAMP:19960704T120000Z\nUID:uid1@example.com\nORGANIZER:mailto:jsmith@example.com\n"
        "DTSTART:19960918T143000Z\nDTEND:19960920T220000Z\nSTATUS:CONFIRMED\nCATEGORIES:CONFERENCE\n"
        "SUMMARY:Networld+Interop Conference\nDESCRIPTION:Networld+Interop Conference\n"
        "  and Exhibit\\nAtlanta World Congress Center\\n Atlanta\\, Georgia\nEND:VEVENT",
        date(1996, 9, 1),
        date(1996, 9, 30),
    )
    assert entry.start.astimezone(UTC) == datetime(1996, 9, 18, 14, 30, tzinfo=UTC)
    assert entry.end.astimezone(UTC) == datetime(1996, 9, 20, 22, 0, tzinfo=UTC)
    assert entry.summary == "Networld+Interop Conference"


def test_a_moment_with_a_zone_is_read_as_section_4_says() -> None:
    """12 March 1998, 08:30 in New York is 13:30 UTC (RFC 5545, section 4, second example)."""
    (entry,) = read(
        "BEGIN:VEVENT\nUID:guid-1.example.com\nDTSTAMP:19980309T231000Z\n"
        "DTSTART;TZID=America/New_York:19980312T083000\nDTEND;TZID=America/New_York:19980312T093000\n"
        "SUMMARY:XYZ Project Review\nEND:VEVENT",
        date(1998, 3, 1),
        date(1998, 3, 31),
    )
    assert entry.start.astimezone(UTC) == datetime(1998, 3, 12, 13, 30, tzinfo=UTC)


# RFC 5545, 3.8.5.3, each with the dates listed there, all starting at 09:00 in New York.
RULES = {
    "daily for 10 occurrences": (
        "19970902T090000",
        "FREQ=DAILY;COUNT=10",
        [f"1997-09-{day:02}" for day in range(2, 12)],
    ),
    "every other week on Tuesday and Thursday, for 8 occurrences": (
        "19970902T090000",
        "FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH",
        [
            "1997-09-02",
            "1997-09-04",
            "1997-09-16",
            "1997-09-18",
            "1997-09-30",
            "1997-10-02",
            "1997-10-14",
            "1997-10-16",
        ],
    ),
    "monthly on the first Friday until 24 December 1997": (
        "19970905T090000",
        "FREQ=MONTHLY;UNTIL=19971224T000000Z;BYDAY=1FR",
        ["1997-09-05", "1997-10-03", "1997-11-07", "1997-12-05"],
    ),
    "monthly on the second-to-last Monday for 6 months": (
        "19970922T090000",
        "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO",
        ["1997-09-22", "1997-10-20", "1997-11-17", "1997-12-22", "1998-01-19", "1998-02-16"],
    ),
    "monthly on the third-to-the-last day": (
        "19970928T090000",
        "FREQ=MONTHLY;BYMONTHDAY=-3",
        ["1997-09-28", "1997-10-29", "1997-11-28", "1997-12-29", "1998-01-29", "1998-02-26"],
    ),
    "yearly in June and July for 10 occurrences": (
        "19970610T090000",
        "FREQ=YEARLY;COUNT=10;BYMONTH=6,7",
        [f"{year}-{month:02}-10" for year in range(1997, 2002) for month in (6, 7)],
    ),
    "the third of Tuesday, Wednesday or Thursday, for 3 months": (
        "19970904T090000",
        "FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3",
        ["1997-09-04", "1997-10-07", "1997-11-06"],
    ),
    "the second-to-last weekday of the month": (
        "19970929T090000",
        "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2",
        [
            "1997-09-29",
            "1997-10-30",
            "1997-11-27",
            "1997-12-30",
            "1998-01-29",
            "1998-02-26",
            "1998-03-30",
        ],
    ),
    "US presidential election day": (
        "19961105T090000",
        "FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8",
        ["1996-11-05", "2000-11-07", "2004-11-02"],
    ),
}


@pytest.mark.parametrize("name", RULES)
def test_the_rules_of_section_3_8_5_3_give_its_dates(name: str) -> None:
    """A repeating entry falls on the dates the standard lists, at nine by the clock there."""
    start, rule, dates = RULES[name]
    last = date.fromisoformat(dates[-1])
    begin = date.fromisoformat(dates[0])
    entries = read(
        f"BEGIN:VEVENT\nUID:a\nDTSTAMP:19970101T000000Z\nDTSTART;TZID=America/New_York:{start}\nRRULE:{rule}\nEND:VEVENT",
        begin,
        last,
    )
    assert [f"{entry.start:%Y-%m-%d %H}" for entry in entries] == [f"{day} 09" for day in dates]


def test_days_without_an_end_last_as_section_3_6_1_says() -> None:
    """An anniversary given as a date lasts its day and blocks no time (RFC 5545, 3.6.1)."""
    (entry,) = read(
        "BEGIN:VEVENT\nUID:19970901T130000Z-123403@example.com\nDTSTAMP:19970901T130000Z\n"
        "DTSTART;VALUE=DATE:19971102\nSUMMARY:Our Blissful Anniversary\nTRANSP:TRANSPARENT\n"
        "CLASS:CONFIDENTIAL\nCATEGORIES:ANNIVERSARY,PERSONAL,SPECIAL OCCASION\nRRULE:FREQ=YEARLY\nEND:VEVENT",
        date(2026, 1, 1),
        date(2026, 12, 31),
    )
    assert (entry.first_day, entry.last_day, entry.takes_time) == (
        date(2026, 11, 2),
        date(2026, 11, 2),
        False,
    )
