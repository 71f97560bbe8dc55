"""Calendar files that are wrong, huge or made to hang: what could be used, what not, and why."""

import subprocess
import sys
from collections.abc import Iterable
from datetime import date
from random import Random
from zoneinfo import ZoneInfo

import pytest

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.errors import CalendarReaderBroken, Weight
from tripplan.files.calendar_reader import entries, worker
from tripplan.files.calendar_reader.content import CalendarContent
from tripplan.files.calendar_reader.reading import read_calendar, read_here
from tripplan.files.toml.reading_result import ReadResult

CHICAGO = ZoneInfo("America/Chicago")
WINDOW = DateSpan(first=date(2026, 7, 1), last=date(2027, 12, 31))
HEAD, TAIL = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\n", "END:VCALENDAR\r\n"


def entry(number: int = 1, more: str = "", day: str = "20261208") -> str:
    """An entry of an hour."""
    return (
        f"BEGIN:VEVENT\r\nUID:{number}\r\nDTSTART:{day}T100000\r\nDTEND:{day}T110000\r\n"
        f"SUMMARY:Entry {number}\r\n{more}END:VEVENT\r\n"
    )


def read(body: str | bytes) -> ReadResult[CalendarContent]:
    """What is made of a file."""
    data = f"{HEAD}{body}{TAIL}".encode() if isinstance(body, str) else body
    return read_calendar(data, "bad.ics", WINDOW, CHICAGO)


def messages(result: ReadResult[CalendarContent]) -> str:
    """Everything that was found, in one text."""
    return "\n".join(map(str, result.findings))


def count(result: ReadResult[CalendarContent]) -> int:
    """How many entries could be used."""
    assert result.value is not None
    return len(result.value.entries)


def test_twenty_megabytes_are_refused_unread() -> None:
    """A file above the limit has no value and one fault that says its size."""
    result = read(HEAD.encode() + b"X" * 20_000_000)
    assert result.value is None
    (finding,) = result.findings
    assert finding.weight is Weight.FAULT
    assert "20.0 MB" in messages(result)


@pytest.mark.parametrize(
    "data", [b"", b"\x00" * 1000, b"%PDF-1.7", b"<html>BEGIN:VCALENDAR</html>", "é".encode("latin-1")]
)
def test_what_is_no_calendar_is_refused(data: bytes) -> None:
    """A file without a calendar in it has no value and says so."""
    result = read(data)
    assert result.value is None
    assert "no calendar file" in messages(result)


def test_another_calendar_scale_is_refused() -> None:
    """Only Gregorian dates can be read (RFC 5545, 3.7.1)."""
    assert read("CALSCALE:ETHIOPIC\r\n" + entry()).value is None


def test_an_empty_calendar_says_so() -> None:
    """A calendar without entries is read, with a warning."""
    result = read("")
    assert count(result) == 0
    assert "has no entries" in messages(result)


def test_a_calendar_of_another_year_says_which() -> None:
    """Nothing in the window is explained by when the entries are."""
    result = read(entry(1, day="20190105") + entry(2, day="20191220"))
    assert count(result) == 0
    assert "begin from 2019-01-05 to 2019-12-20" in messages(result)


def test_forty_thousand_entries_are_used_as_far_as_they_matter() -> None:
    """Years of entries outside the window cost nothing of the limit: those inside are all read."""
    body = "".join(entry(number, day=f"20{number % 25:02}0310") for number in range(39_000))
    result = read(body + "".join(entry(100_000 + number) for number in range(1000)))
    assert count(result) == 1000
    assert result.findings == ()


def test_too_many_entries_in_the_window_are_cut_and_said() -> None:
    """Beyond the limit the first are used, and the parent hears how many there were."""
    result = read("".join(entry(number) for number in range(20_000)))
    assert count(result) == entries.MOST_ENTRIES
    assert "20000 entries" in messages(result)
    assert f"only the first {entries.MOST_ENTRIES} were used" in messages(result)


@pytest.mark.parametrize(
    ("rule", "reason"),
    [
        ("FREQ=SECONDLY", "repeats by SECONDLY"),
        ("FREQ=MINUTELY;COUNT=99999999", "repeats by MINUTELY"),
        ("FREQ=HOURLY;UNTIL=20300101T000000Z", "repeats by HOURLY"),
        ("FREQ=DAILY;BYHOUR=1,2;BYSECOND=1,2,3,4", "several times a day"),
        ("FREQ=DAILY;INTERVAL=0", "repeats in steps"),
        ("FREQ=DAILY;COUNT=-5", "repeats in steps"),
        ("FREQ=DAILY;COUNT=99999999999", "could not be read"),
        ("RSCALE=CHINESE;FREQ=YEARLY", "make no sense"),
        ("FREQ=SOMETIMES", "could not be read"),
        ("COUNT=3", "repeats by no period"),
        ("nonsense", "repeats by no period"),
    ],
)
def test_a_rule_that_cannot_be_followed_is_left_out_with_its_reason(rule: str, reason: str) -> None:
    """The entry with the rule is left out and named; the entry beside it is used."""
    result = read(entry(1, f"RRULE:{rule}\r\n") + entry(2))
    assert count(result) == 1
    assert "entry 'Entry 1'" in messages(result)
    assert reason in messages(result)


@pytest.mark.parametrize(
    "rule",
    [
        "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30",
        "FREQ=MONTHLY;BYMONTH=2;BYDAY=5MO",
        "FREQ=YEARLY;BYMONTH=13",
        "FREQ=YEARLY;BYMONTHDAY=40",
        "FREQ=DAILY;INTERVAL=7;BYDAY=SU",
        "FREQ=YEARLY;INTERVAL=2;BYMONTH=2;BYMONTHDAY=29",
        "FREQ=MONTHLY;BYSETPOS=9;BYDAY=MO",
        "FREQ=DAILY;BYMONTHDAY=30;BYMONTH=2",
    ],
)
def test_a_rule_that_never_comes_leaves_the_entry_itself(rule: str) -> None:
    """The start counts whatever the rule says (RFC 5545, 3.8.5.3); the rule is not followed for ever."""
    result = read(entry(1, f"RRULE:{rule}\r\n"))
    assert result.value is not None
    assert [found.start.date() for found in result.value.entries] == [date(2026, 12, 8)]
    assert result.findings == ()


@pytest.mark.parametrize("end", ["", ";COUNT=99999999", ";UNTIL=99991231"])
def test_endless_rules_end_with_the_window(end: str) -> None:
    """A daily entry without end gives one occurrence a day of the window."""
    assert count(read(entry(1, f"RRULE:FREQ=DAILY{end}\r\n", day="19500101"))) == 549


def test_too_many_endless_rules_are_cut_and_said() -> None:
    """All repeating entries of a file share one limit; the entries beyond it are named."""
    result = read("".join(entry(number, "RRULE:FREQ=DAILY\r\n", day="20000101") for number in range(300)))
    assert 0 < count(result) <= entries.MOST_OCCURRENCES
    assert "come too often" in messages(result)
    assert "more" in result.findings[-1].field


@pytest.mark.parametrize(
    "rule",
    [
        "FREQ=YEARLY",
        "FREQ=MONTHLY;BYDAY=5FR",
        "FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13",
        "FREQ=DAILY;COUNT=10000",
        "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29",
    ],
)
def test_thousands_of_slow_rules_are_cut(rule: str) -> None:
    """Rules that are slow to follow use up their limit before they use up the parent's patience."""
    result = read("".join(entry(number, f"RRULE:{rule}\r\n", day="20000102") for number in range(2000)))
    assert "come too often" in messages(result) or "take too long" in messages(result)


def test_a_zone_named_by_dots_without_end_is_not_followed() -> None:
    """A name is looked up only where it can be one of a zone; such a name counts as unknown."""
    result = read(entry().replace("DTSTART:", f"DTSTART;TZID=America/{'a.' * 400}b:"))
    assert count(result) == 1
    assert "time zone that nobody knows" in messages(result)


def test_a_zone_that_changes_every_second_is_not_followed() -> None:
    """The rules of a zone are checked before they are used; such a zone counts as unknown."""
    zone = (
        "BEGIN:VTIMEZONE\r\nTZID:Odd\r\nBEGIN:STANDARD\r\nDTSTART:19700101T000000\r\nTZOFFSETFROM:+0300\r\n"
        "TZOFFSETTO:+0300\r\nRRULE:FREQ=SECONDLY\r\nEND:STANDARD\r\nEND:VTIMEZONE\r\n"
    )
    result = read(zone + entry().replace("DTSTART:", "DTSTART;TZID=Odd:"))
    assert count(result) == 1
    assert "time zone that nobody knows" in messages(result)


def zone(name: str, onsets: int, rule: str) -> str:
    """A time zone with many onsets that all follow a rule."""
    onset = (
        "BEGIN:STANDARD\r\nDTSTART:19700101T000000\r\nTZOFFSETFROM:+0300\r\nTZOFFSETTO:+0400\r\n"
        f"RRULE:FREQ=YEARLY;{rule}\r\nEND:STANDARD\r\n"
    )
    return f"BEGIN:VTIMEZONE\r\nTZID:{name}\r\n{onset * onsets}END:VTIMEZONE\r\n"


def in_zones(names: Iterable[str]) -> str:
    """An entry in each of some zones."""
    return "".join(
        entry(number).replace("DTSTART:", f"DTSTART;TZID={name}:") for number, name in enumerate(names)
    )


def test_ten_thousand_zones_are_looked_up_by_name() -> None:
    """Entries in a thousand zones of nobody, beside ten thousand defined ones, are read and said."""
    defined = "".join(zone(f"Z{number}", 1, "BYMONTH=3;BYDAY=2SU") for number in range(10_000))
    result = read(defined + in_zones(f"Nobody{number}" for number in range(1000)))
    assert count(result) == 1000
    assert "time zone that nobody knows" in messages(result)


def test_what_takes_too_long_is_refused_by_name() -> None:
    """A hundred zones that change twenty times a day end their process, and nothing else."""
    every_day = "BYDAY=MO,TU,WE,TH,FR,SA,SU"
    defined = "".join(zone(f"Z{number}", 20, every_day) for number in range(100))
    result = read(defined + in_zones(f"Z{number % 100}" for number in range(1000)) + entry(1, "RDATE:x\r\n"))
    assert result.value is None
    (finding,) = result.findings
    assert (finding.file, finding.weight) == ("bad.ics", Weight.FAULT)
    assert "takes too long" in finding.message
    assert worker.LONGEST_SECONDS <= 2


def test_more_further_dates_than_the_limit_are_cut_and_said() -> None:
    """Dates that are listed one by one count like those of a rule."""
    moments = [f"2026{10 + n % 3}{1 + n % 28:02}T{n % 24:02}{n // 24 % 60:02}00" for n in range(3000)]
    result = read("".join(entry(n, f"RDATE:{','.join(moments)}\r\n") for n in range(16)))
    assert 0 < count(result) <= entries.MOST_OCCURRENCES
    assert "come too often" in messages(result)


def test_the_reading_process_may_not_grow_without_end() -> None:
    """Where the system holds a process to its memory, one that wants more ends and the file is refused."""
    resource = pytest.importorskip("resource", reason="this system has no limits of memory")
    code = "from tripplan.files.calendar_reader.worker import hold_to_limits as hold; hold(); b'x' * 2**31"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=False)
    assert b"MemoryError" in done.stderr
    assert resource.getrlimit(resource.RLIMIT_AS)[0] == resource.RLIM_INFINITY


def test_a_fault_of_the_reader_itself_is_not_blamed_on_the_file(monkeypatch: pytest.MonkeyPatch) -> None:
    """A process that cannot even start says why."""
    monkeypatch.setenv("PYTHONHOME", "/nowhere")
    with pytest.raises(CalendarReaderBroken, match="Python"):
        read(entry(1, "RRULE:FREQ=DAILY\r\n"))


@pytest.mark.parametrize(
    "line",
    [
        "DTSTART:20261301T100000",
        "DTSTART:later",
        "DTSTART:20261208T100000\r\nDTSTART:20261209T100000",
        "DTSTART:00010101T000000\r\nRRULE:FREQ=DAILY",
        "SUMMARY:no start",
        "DTSTART:20261208T100000\r\nDURATION:P99999999999D",
        "DTSTART:20261208T100000\r\nDTEND:tomorrow",
        "DTSTART:PT1H",
        "DTSTART:20261208T100000\r\nSEQUENCE:many",
        "DTSTART:20261208T100000\r\nEXDATE:never",
        f"DTSTART:20261208T100000\r\nEXDATE:{','.join(['20261208T100000'] * 6000)}",
    ],
)
def test_a_broken_entry_is_left_out_and_the_others_are_used(line: str) -> None:
    """One entry that makes no sense is named and costs no other entry."""
    result = read(f"BEGIN:VEVENT\r\nUID:x\r\nSUMMARY:Odd one\r\n{line}\r\nEND:VEVENT\r\n" + entry(2))
    assert result.value is not None
    assert [e.summary for e in result.value.entries] == ["Entry 2"]
    assert "left out" in messages(result)


def test_lines_that_are_none_are_counted_and_skipped() -> None:
    """Invalid lines are shown a few times and counted; the entries around them are used."""
    result = read(entry(1) + "this is no line\r\n" * 100_000 + entry(2))
    assert count(result) == 2
    assert "this is no line" in messages(result)
    assert result.findings[-1].field == "99995 more"


@pytest.mark.parametrize(
    "body",
    [
        "BEGIN:VEVENT\r\n" * 300_000,
        "BEGIN:VEVENT\r\n" * 150_000 + "END:VEVENT\r\n" * 150_000,
        entry(1, "BEGIN:VALARM\r\n" * 300_000),
        entry(1, "DTSTART" + ";:" * 2_000_000 + "\r\n"),
        entry(1, "DESCRIPTION:" + "\r\n ".join("x" * 1_000_000) + "\r\n"),
        entry(1, "ATTENDEE;PARTSTAT=DECLINED:mailto:a@example.org\r\n" * 90_000),
        "BEGIN:VTIMEZONE\r\nTZID:A\r\nEND:VTIMEZONE\r\n" * 90_000 + entry(),
        entry(1, "X-ODD;" + '"' * 4_000_000 + ":1\r\n"),
        "BEGIN:VEVENT\r\nEND:VEVENT\r\n" * 150_000,
    ],
    ids=["unended", "nested", "alarms", "colons", "folds", "guests", "zones", "quotes", "hollow"],
)
def test_a_file_made_to_hang_is_read_in_one_pass(body: str) -> None:
    """Megabytes of brackets, folds and quotes give an answer, whatever it is, and no error."""
    result = read(body)
    assert result.value is not None
    assert count(result) <= 1


def test_broken_letters_are_read_and_said() -> None:
    """A file that is not UTF-8 is read as far as it goes."""
    result = read((HEAD + entry().replace("Entry", "Caf\u00e9") + TAIL).encode("latin-1"))
    assert count(result) == 1
    assert "not UTF-8" in messages(result)


def test_a_title_from_outside_is_plain_text() -> None:
    """Markup and formulas come through as the letters they are, on one line, without what nobody sees."""
    summaries = ["<script>alert(1)</script>", "=cmd|' /C calc'!A0", "a\\nb", "c\x07d"]
    result = read("".join(entry(n).replace(f"Entry {n}", text) for n, text in enumerate(summaries)))
    assert result.value is not None
    assert sorted(e.summary for e in result.value.entries) == sorted(
        ["<script>alert(1)</script>", "=cmd|' /C calc'!A0", "a b", "cd"]
    )


def test_scrambled_files_never_raise() -> None:
    """Five hundred files with letters and lines swapped, cut and doubled give a result each."""
    random = Random(20261125)
    whole = HEAD + entry(1, "RRULE:FREQ=WEEKLY;BYDAY=TU;UNTIL=20270301T000000Z\r\nEXDATE:20261215T100000\r\n")
    whole += entry(
        2, "RECURRENCE-ID;RANGE=THISANDFUTURE:20261222T100000\r\nATTENDEE:mailto:a@example.org\r\n"
    )
    whole += entry(3, "DURATION:PT1H\r\nTRANSP:OPAQUE\r\nRDATE;VALUE=PERIOD:20261210T100000/PT1H\r\n") + TAIL
    pieces = [
        ";",
        ":",
        ",",
        "=",
        "\r\n",
        "\r\n ",
        "Z",
        "9",
        "0",
        "-",
        "T",
        "FREQ=",
        "BEGIN:VEVENT",
        "\x00",
        "é",
    ]
    values = 0
    for _ in range(500):
        text = whole
        for _ in range(random.randint(1, 12)):
            at = random.randrange(len(text))
            text = text[:at] + random.choice(pieces) + text[at + random.randint(0, 6) :]
        result = read_here(text.encode(), "bad.ics", WINDOW, CHICAGO)
        values += result.value is not None
        assert result.value is not None or result.findings
    assert values > 400
