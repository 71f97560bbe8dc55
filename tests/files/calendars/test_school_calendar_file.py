"""School calendars made of calendar files."""

from datetime import date
from zoneinfo import ZoneInfo

import pytest

from tests.builders import out_of_school
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.errors import UnknownName, Weight
from tripplan.files.calendar_reader.content import CalendarContent, CalendarEntry
from tripplan.files.calendar_reader.reading import read_here
from tripplan.files.calendars.school_calendar_file import (
    Meaning,
    SchoolProposal,
    calendar_before,
    propose_school_calendar,
    school_calendar_from,
)

CHICAGO = ZoneInfo("America/Chicago")
WINDOW = DateSpan(first=date(2026, 7, 1), last=date(2027, 12, 31))


def content(*entries: tuple[str, str, str] | tuple[str, str]) -> CalendarContent:
    """A calendar of whole-day entries: title, first day, and the day after the last one."""
    blocks = []
    for number, (title, first, *after) in enumerate(entries):
        end = f"DTEND;VALUE=DATE:{after[0]}\r\n" if after else ""
        blocks.append(
            f"BEGIN:VEVENT\r\nUID:{number}\r\nDTSTART;VALUE=DATE:{first}\r\n{end}SUMMARY:{title}\r\nEND:VEVENT\r\n"
        )
    data = f"BEGIN:VCALENDAR\r\nX-WR-CALNAME:Test district\r\n{''.join(blocks)}END:VCALENDAR\r\n".encode()
    result = read_here(data, "school.ics", WINDOW, CHICAGO)
    assert result.value is not None
    return result.value


def propose(*entries: tuple[str, str, str] | tuple[str, str]) -> SchoolProposal:
    """The proposal for a calendar of whole-day entries."""
    result = propose_school_calendar(content(*entries), "school.ics")
    assert result.value is not None
    return result.value


def meaning(title: str) -> Meaning:
    """What one whole-day entry is taken for."""
    return propose((title, "20261012")).entries[0].meaning


@pytest.mark.parametrize(
    "title",
    [
        "No School",
        "NO SCHOOL - Staff Development",
        "No classes: Presidents' Day",
        "Schools closed (Election Day)",
        "Winter Break",
        "Mid-winter recess",
        "Spring Vacation",
        "Holiday - Lunar New Year",
        "Teacher Institute Day",
        "Teachers\u2019 In-Service",
        "Professional Development Day",
        "Non-attendance day",
        "Labor Day",
        "October half term",
        "INSET day",
        "Herbstferien",
        "Schulfrei",
        "Beweglicher Feiertag",
        "Pädagogischer Tag",
        "Vacances de la Toussaint",
        "Jour férié",
        "Pas de classe",
    ],
)
def test_entries_that_say_so_are_ticked(title: str) -> None:
    """The usual titles of days off in English, German and French mean no school."""
    # Common practice, no source.
    assert meaning(title) is Meaning.NO_SCHOOL


@pytest.mark.parametrize(
    "title", ["Early Dismissal", "Early release 1:15", "Half-day", "2-hour delayed start", "Late start"]
)
def test_short_days_are_kept_apart(title: str) -> None:
    """Pupils are at school on a short day, so it is not ticked."""
    assert meaning(title) is Meaning.SHORT_DAY


@pytest.mark.parametrize(
    "title",
    [
        "Picture day",
        "Classes resume after winter break",
        "Return from Spring Break",
        "Last day before winter break",
        "Holiday concert",
        "Veterans Day assembly",
        "End of first quarter",
        "No school for kindergarten",
        "Parent-teacher conferences",
        "Breakfast with grandparents",
        "Board work session",
    ],
)
def test_days_with_school_are_not_ticked(title: str) -> None:
    """A break that is over, a party, or a day off for some only does not mean no school."""
    assert meaning(title) is Meaning.OTHER


def test_every_guess_has_its_reason() -> None:
    """The parent reads why an entry is ticked."""
    (entry,) = propose(("Fall Break", "20261023", "20261027")).entries
    assert entry.ticked
    assert entry.reason == "'Break' is a break"


def test_a_timed_entry_is_ticked_only_when_it_says_so_plainly() -> None:
    """An evening about the spring break is no break, but 'no school' from eight to three is."""
    entries = tuple(
        CalendarEntry(title, title, start, start.replace(hour=15), all_day=False)
        for title in ("Spring break travel talk", "No school")
        for start in [content(("x", "20261012")).entries[0].start.replace(hour=8)]
    )
    result = propose_school_calendar(CalendarContent("", entries), "school.ics")
    assert result.value is not None
    assert [entry.ticked for entry in result.value.entries] == [False, True]


YEAR = (
    ("First day of school", "20260824"),
    ("Labor Day - No School", "20260907"),
    ("Early dismissal", "20260916"),
    ("Fall Break", "20261023", "20261027"),
    ("School board workshop", "20270715"),
    ("Last day of school, early dismissal", "20270602"),
)


def test_the_school_year_runs_from_first_to_last_day() -> None:
    """What the calendar knows begins and ends with the named days of school, whatever else is in it."""
    proposal = propose(*YEAR)
    assert proposal.known == DateSpan(first=date(2026, 8, 24), last=date(2027, 6, 2))
    assert proposal.name == "Test district"


def test_the_days_between_two_school_years_are_summer() -> None:
    """With the next first day in the file, the summer is known to be without school."""
    proposal = propose(*YEAR, ("First day of school", "20270823"), ("Labor Day", "20270906"))
    assert proposal.summer == (DateSpan(first=date(2027, 6, 3), last=date(2027, 8, 22), name="summer"),)
    calendar = school_calendar_from(proposal, country="US", latitude=42.5, longitude=-90.7)
    assert out_of_school(calendar, date(2027, 7, 14)) is True
    assert out_of_school(calendar, date(2027, 8, 25)) is False


def test_a_calendar_without_first_and_last_day_says_what_it_is_taken_for() -> None:
    """The span then ends with what is said, and the parent is told."""
    result = propose_school_calendar(content(("No School", "20261012"), ("Picture day", "20270512")), "s.ics")
    assert result.value is not None
    assert result.value.known == DateSpan(first=date(2026, 10, 12), last=date(2026, 10, 12))
    assert [finding.weight for finding in result.findings] == [Weight.WARNING, Weight.WARNING]
    assert "the first day of school" in result.findings[0].message


def test_a_calendar_without_days_off_says_so() -> None:
    """Nothing ticked is a warning, not a calendar of endless school in silence."""
    result = propose_school_calendar(content(("Picture day", "20270512")), "s.ics")
    assert "no entry says" in result.findings[0].message


def test_a_calendar_without_entries_makes_no_proposal() -> None:
    """There is nothing to look through."""
    result = propose_school_calendar(CalendarContent("", ()), "s.ics")
    assert result.value is None
    assert result.findings[0].weight is Weight.FAULT


def test_the_calendar_follows_the_ticks() -> None:
    """Ticked entries are days without school, short days are not, and outside the span nothing is known."""
    calendar = school_calendar_from(
        propose(*YEAR), country="US", subdivision="IA", latitude=42.5, longitude=-90.7
    )
    assert calendar.name == "Test district"
    assert out_of_school(calendar, date(2026, 9, 7)) is True
    assert out_of_school(calendar, date(2026, 9, 16)) is False
    assert [out_of_school(calendar, date(2026, 10, day)) for day in (22, 23, 26, 27)] == [
        False,
        True,
        True,
        False,
    ]
    assert out_of_school(calendar, date(2027, 6, 3)) is None


def test_the_parent_has_the_last_word() -> None:
    """Other ticks and another span make another calendar; an unknown tick is refused."""
    proposal = propose(*YEAR)
    dismissal = next(p.entry.key for p in proposal.entries if p.meaning is Meaning.SHORT_DAY)
    calendar = school_calendar_from(
        proposal,
        country="US",
        latitude=42.5,
        longitude=-90.7,
        ticked=frozenset({dismissal}),
        known=DateSpan(first=date(2026, 9, 1), last=date(2026, 12, 31)),
    )
    assert [span.first for span in calendar.no_school] == [date(2026, 9, 16)]
    assert out_of_school(calendar, date(2026, 8, 25)) is None
    with pytest.raises(UnknownName):
        school_calendar_from(proposal, country="US", latitude=0, longitude=0, ticked=frozenset({"x"}))


def reimported(changed: tuple[tuple[str, str, str] | tuple[str, str], ...], *unticked: str) -> SchoolProposal:
    """YEAR looked through with some entries unticked, then a changed file proposed again."""
    first = propose(*YEAR)
    ticked = {p.entry.key for p in first.entries if p.ticked and p.entry.summary not in unticked}
    early = next(p.entry.key for p in first.entries if p.entry.summary == "School board workshop")
    kept = school_calendar_from(
        first, country="US", latitude=42.5, longitude=-90.7, ticked=frozenset({*ticked, early})
    )
    again = content(*changed)
    assert calendar_before(again, "school.ics", (kept,)) == kept
    result = propose_school_calendar(again, "school.ics", before=kept)
    assert result.value is not None
    return result.value


def ticks(proposal: SchoolProposal) -> dict[str, bool]:
    """What is ticked, by title."""
    return {one.entry.summary: one.ticked for one in proposal.entries}


def test_an_import_again_keeps_the_ticks() -> None:
    """What the parent ticked and unticked stays, and the reason says so."""
    again = reimported(YEAR, "Fall Break")
    assert ticks(again)["Fall Break"] is False
    assert ticks(again)["School board workshop"] is True
    assert {one.reason for one in again.entries} >= {"as you ticked it before", "as you left it before"}


def test_renamed_and_moved_entries_keep_their_ticks() -> None:
    """The same entry under another title or on another day is the same entry."""
    changed = (*YEAR[:3], ("Autumn days", "20261016", "20261020"), *YEAR[4:])
    assert ticks(reimported(changed))["Autumn days"] is True
    assert ticks(reimported(changed, "Fall Break"))["Autumn days"] is False


def test_entries_without_lasting_ids_keep_their_ticks_by_title() -> None:
    """Some programs give every entry a new id at every export."""
    again = reimported((("Welcome", "20260801"), *YEAR), "Fall Break")
    assert ticks(again)["Labor Day - No School"] is True
    assert ticks(again)["School board workshop"] is True


def test_another_districts_file_is_no_earlier_version() -> None:
    """Neither entries nor names in common."""
    kept = school_calendar_from(propose(*YEAR), country="US", latitude=42.5, longitude=-90.7, name="Other")
    at = content(("x", "20261012")).entries[0].start
    entries = (CalendarEntry("zz 1", "Break", at, at, all_day=True),)
    assert calendar_before(CalendarContent("Elsewhere", entries), "else.ics", (kept,)) is None


def test_short_days_are_kept_beside_the_days_off() -> None:
    """An early dismissal is no day off, and is not lost."""
    calendar = school_calendar_from(propose(*YEAR), country="US", latitude=42.5, longitude=-90.7)
    assert [span.name for span in calendar.short_days] == ["Early dismissal"]


def test_the_parent_says_which_days_are_short_and_it_is_kept() -> None:
    """One that was guessed is none, another one is; at the next import both are as they were left."""
    first = propose(*YEAR)
    keys = {one.entry.summary: one.entry.key for one in first.entries}
    kept = school_calendar_from(
        first, country="US", latitude=42.5, longitude=-90.7, short={keys["School board workshop"]}
    )
    assert [span.name for span in kept.short_days] == ["School board workshop"]
    again = propose_school_calendar(content(*YEAR), "school.ics", before=kept).value
    assert again is not None
    assert {one.entry.summary for one in again.entries if one.short} == {"School board workshop"}
    both = school_calendar_from(
        first,
        country="US",
        latitude=42.5,
        longitude=-90.7,
        ticked={keys["Fall Break"]},
        short={keys["Fall Break"]},
    )
    assert (len(both.no_school), both.short_days) == (1, ())
    with pytest.raises(UnknownName):
        school_calendar_from(first, country="US", latitude=0, longitude=0, short={"x"})


@pytest.mark.parametrize("clock", ["TZID=America/New_York:", "TZID=America/Denver:"])
def test_a_day_off_by_another_clock_is_one_day(clock: str) -> None:
    """'Winter break' from midnight to midnight in the district's zone is its days, seen from another zone."""
    data = (
        "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:1\r\nSUMMARY:Winter break\r\n"
        f"DTSTART;{clock}20261221T000000\r\nDTEND;{clock}20270102T000000\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"
    )
    read = read_here(data.encode(), "school.ics", WINDOW, CHICAGO)
    assert read.value is not None
    proposal = propose_school_calendar(read.value, "school.ics").value
    assert proposal is not None
    calendar = school_calendar_from(proposal, country="US", latitude=40, longitude=-89)
    (off,) = calendar.no_school
    assert (off.first, off.last) == (date(2026, 12, 21), date(2027, 1, 1))
    assert calendar.known == DateSpan(first=off.first, last=off.last)
