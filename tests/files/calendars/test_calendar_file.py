"""Writing calendar files."""

import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest
import vobject
from hypothesis import example, given, settings
from hypothesis import strategies as st
from icalendar import Calendar, Event
from icalendar.cal import Component

from tripplan.documents.outings.planned import PlanStatus
from tripplan.documents.where import Point
from tripplan.errors import PlanError
from tripplan.files.calendars.calendar_file import calendar_file, calendar_objects
from tripplan.planning.calendar_entry.entry import (
    EntryLayout,
    OutingEntry,
    Reminder,
    ToDo,
    endings,
    outing_uid,
)
from tripplan.values.plain_text import lines as plain_lines
from tripplan.values.plain_text import one_line

CHICAGO = ZoneInfo("America/Chicago")
WRITTEN = datetime(2026, 11, 25, 16, 0, tzinfo=UTC)


def entry(leave: datetime = datetime(2026, 12, 8, 8, 40, tzinfo=CHICAGO), **changes: Any) -> OutingEntry:
    """An outing of five hours; every field can be changed by name."""
    values: dict[str, Any] = {
        "uid": outing_uid("mill-2026-12-08"),
        "summary": "Old mill",
        "start": leave,
        "arrive": leave + timedelta(minutes=70),
        "leave_place": leave + timedelta(hours=4),
        "end": leave + timedelta(hours=5),
        **changes,
    }
    return OutingEntry(**values)


def events(data: bytes) -> list[Component]:
    """The entries of a file."""
    return Calendar.from_ical(data).walk("VEVENT")


def lines(data: bytes) -> list[str]:
    """The unfolded lines of a file."""
    return data.decode().replace("\r\n ", "").split("\r\n")


def test_an_entry_has_what_the_standard_requires_and_no_method() -> None:
    """PRODID, VERSION, UID, DTSTAMP in UTC and DTSTART stand in the file; METHOD does not."""
    written = lines(calendar_file([entry()], written_at=WRITTEN.astimezone(CHICAGO)))
    assert "VERSION:2.0" in written
    assert any(line.startswith("PRODID:") for line in written)
    assert "DTSTAMP:20261125T160000Z" in written
    assert "DTSTART;TZID=America/Chicago:20261208T084000" in written
    assert "DTEND;TZID=America/Chicago:20261208T134000" in written
    assert f"UID:{outing_uid('mill-2026-12-08')}" in written
    assert not any(line.startswith("METHOD") for line in written)


def test_every_zone_used_is_defined_once() -> None:
    """Entries in two zones bring two definitions, and a zone used twice brings one."""
    berlin = ZoneInfo("Europe/Berlin")
    data = calendar_file(
        [
            entry(),
            entry(uid="second", leave=datetime(2027, 6, 8, 9, tzinfo=CHICAGO)),
            entry(uid="third", leave=datetime(2027, 6, 9, 9, tzinfo=berlin)),
        ],
        written_at=WRITTEN,
    )
    zones = [str(zone["TZID"]) for zone in Calendar.from_ical(data).walk("VTIMEZONE")]
    assert zones == ["America/Chicago", "Europe/Berlin"]


def test_a_zone_without_true_rules_is_written_in_utc() -> None:
    """Where no plain rule says what the clock does, times stand in UTC and no zone is defined."""
    leave = datetime(2026, 12, 8, 8, 40, tzinfo=ZoneInfo("America/Vancouver"))
    data = calendar_file([entry(leave)], written_at=WRITTEN)
    # Vancouver stays on UTC-7 from November 2026 (tzdata 2026.6).
    assert "DTSTART:20261208T154000Z" in lines(data)
    assert b"VTIMEZONE" not in data


@pytest.mark.parametrize(("fold", "start"), [(0, "20261101T063000Z"), (1, "20261101T073000Z")])
def test_a_time_that_comes_twice_is_written_in_utc(fold: int, start: str) -> None:
    """Readers differ over which 01:30 of the night the clock goes back is meant, so both ends are in UTC."""
    leave = datetime(2026, 11, 1, 1, 30, tzinfo=CHICAGO, fold=fold)
    times = {"arrive": leave + timedelta(hours=2), "leave_place": leave + timedelta(hours=3)}
    data = calendar_file([entry(leave, **times, end=leave + timedelta(hours=4))], written_at=WRITTEN)
    assert f"DTSTART:{start}" in lines(data)
    assert "DTEND:20261101T113000Z" in lines(data)


def test_an_outing_in_parts_shows_the_departure_and_keeps_its_uid_on_the_visit() -> None:
    """Drive, visit and way home lie end to end; the drives' UIDs are derived; leaving has the reminders."""
    parts = entry(layout=EntryLayout.PARTS, reminders=(Reminder(60, "Leave in an hour"),))
    there, visit, back = events(calendar_file([parts], written_at=WRITTEN))
    assert [str(event["UID"]) for event in (there, visit, back)] == [
        f"{parts.uid}-there",
        parts.uid,
        f"{parts.uid}-back",
    ]
    assert str(there["SUMMARY"]) == "Way there: Old mill"
    assert (there.decoded("DTSTART"), there.decoded("DTEND")) == (parts.start, parts.arrive)
    assert (visit.decoded("DTSTART"), visit.decoded("DTEND")) == (parts.arrive, parts.leave_place)
    assert (back.decoded("DTSTART"), back.decoded("DTEND")) == (parts.leave_place, parts.end)
    assert [len(event.walk("VALARM")) for event in (there, visit, back)] == [1, 0, 0]


def test_a_part_that_takes_no_time_is_left_out() -> None:
    """A place next door has no drive, and its reminders move to the visit."""
    near = entry(layout=EntryLayout.PARTS, reminders=(Reminder(60, "Leave in an hour"),))
    near = replace(near, arrive=near.start, leave_place=near.end)
    (visit,) = events(calendar_file([near], written_at=WRITTEN))
    assert str(visit["UID"]) == near.uid
    assert len(visit.walk("VALARM")) == 1


def test_a_reminder_is_a_display_alarm_before_the_start() -> None:
    """Each reminder is ACTION:DISPLAY with a description and a trigger before the start (RFC 5545, 3.6.6)."""
    written = lines(calendar_file([entry(reminders=(Reminder(90, "Charge the car"),))], written_at=WRITTEN))
    begin = written.index("BEGIN:VALARM")
    assert written[begin + 1 : begin + 4] == [
        "ACTION:DISPLAY",
        "DESCRIPTION:Charge the car",
        "TRIGGER:-PT1H30M",
    ]


def test_a_cancelled_outing_keeps_its_uid_and_reminds_nobody() -> None:
    """STATUS:CANCELLED with a higher SEQUENCE frees the time and has no alarm."""
    off = entry(status=PlanStatus.CANCELLED, sequence=3, reminders=(Reminder(60, "Leave"),))
    (event,) = events(calendar_file([off], written_at=WRITTEN))
    assert (str(event["STATUS"]), event["SEQUENCE"], str(event["TRANSP"])) == ("CANCELLED", 3, "TRANSPARENT")
    assert str(event["UID"]) == off.uid
    assert not event.walk("VALARM")


def test_what_is_asked_for_stands_in_its_own_property() -> None:
    """Place, point, page, topics, status and last change each come back from the file."""
    full = entry(
        location="Old mill, 12 Mill Road",
        point=Point(40.484212, -88.993712),
        url="https://example.org/mill?day=1",
        description="Leave home 8:40 AM.\nBring boots.",
        categories=("water power", "grain, flour"),
        status=PlanStatus.TENTATIVE,
        last_modified=datetime(2026, 11, 24, 9, tzinfo=CHICAGO),
    )
    written = lines(calendar_file([full], written_at=WRITTEN))
    assert "GEO:40.48421;-88.99371" in written
    assert "LOCATION:Old mill\\, 12 Mill Road" in written
    assert "URL:https://example.org/mill?day=1" in written
    assert "DESCRIPTION:Leave home 8:40 AM.\\nBring boots." in written
    assert "CATEGORIES:water power,grain\\, flour" in written
    assert "STATUS:TENTATIVE" in written
    assert "LAST-MODIFIED:20261124T150000Z" in written


def test_a_point_near_the_equator_has_no_exponent() -> None:
    """A tiny coordinate is written as a plain number, the only kind RFC 5545, 3.3.7 knows."""
    data = calendar_file([entry(point=Point(0.00001, -0.00002))], written_at=WRITTEN)
    assert "GEO:0.0;0.0" in lines(data)


@pytest.mark.parametrize("line_end", ["\r\n", "\n", "\r", "\u2028", "\x85", "\x0b", "\x0c"])
def test_no_text_can_begin_a_line_of_its_own(line_end: str) -> None:
    """A line end in any text field stays inside that field, for every kind of line end."""
    poison = f"Mill{line_end}END:VEVENT{line_end}BEGIN:VEVENT{line_end}ATTENDEE:mailto:x@example.org"
    bad = entry(
        summary=poison,
        location=poison,
        description=poison,
        categories=(poison,),
        url=f"https://example.org/{line_end}ATTENDEE:mailto:x@example.org",
        reminders=(Reminder(60, poison),),
        uid=f"a{line_end}ATTENDEE:mailto:x@example.org",
    )
    data = calendar_file([bad], written_at=WRITTEN)
    text = data.decode()
    assert len(events(data)) == 1
    assert text.count("BEGIN:VEVENT\r\n") == 1
    assert not any(line.startswith(("ATTENDEE", "URL")) for line in lines(data))
    assert not set(text) & set("\x0b\x0c\x85\u2028\u2029")
    assert text.count("\r") == text.count("\n") == text.count("\r\n")


def test_characters_nobody_sees_are_removed() -> None:
    """Control characters, turned directions and halves of characters do not reach the file."""
    data = calendar_file([entry(summary="A\x00B\x1bC\u202eD\ud800E\x7f")], written_at=WRITTEN)
    assert "SUMMARY:ABCDE" in lines(data)


@pytest.mark.parametrize(
    "url", ["javascript:alert(1)", "file:///etc/passwd", "www.example.org", "https://exa mple.org"]
)
def test_only_a_web_address_becomes_a_link(url: str) -> None:
    """A link that is no plain web address is left out."""
    assert b"URL" not in calendar_file([entry(url=url)], written_at=WRITTEN)


def test_a_uid_is_the_same_for_the_same_outing_and_says_nothing_about_it() -> None:
    """The UID depends on the outing alone and does not contain its name."""
    assert outing_uid("mill-2026-12-08") == outing_uid("mill-2026-12-08")
    assert outing_uid("mill-2026-12-08") != outing_uid("mill-2026-12-09")
    assert "mill" not in outing_uid("mill-2026-12-08")


def test_writing_twice_gives_the_same_file() -> None:
    """Nothing but the arguments decides what is written."""
    assert calendar_file([entry()], written_at=WRITTEN) == calendar_file([entry()], written_at=WRITTEN)


def test_a_file_without_entries_or_with_twins_is_refused() -> None:
    """A calendar file needs a component (RFC 5545, 3.6), and a UID names one entry."""
    with pytest.raises(PlanError, match="at least one entry"):
        calendar_file([], written_at=WRITTEN)
    with pytest.raises(PlanError, match="share a UID"):
        calendar_file([entry(), entry()], written_at=WRITTEN)
    with pytest.raises(PlanError, match="time zone"):
        calendar_file([entry()], written_at=WRITTEN.replace(tzinfo=None))


@pytest.mark.parametrize(
    "changes",
    [
        {"start": datetime(2026, 12, 8, 8, 40)},  # noqa: DTZ001 (the point of the test)
        {"end": datetime(2026, 12, 8, 8, 0, tzinfo=CHICAGO)},
        {"uid": " \n"},
        {"sequence": -1},
    ],
)
def test_an_entry_without_zone_order_or_name_cannot_be_made(changes: dict[str, Any]) -> None:
    """Times need zones and order, an entry needs a UID, and its sequence counts up from zero."""
    with pytest.raises(PlanError):
        entry(**changes)


EVENING = datetime(2026, 12, 7, 19, tzinfo=CHICAGO)
PACK = ToDo("pack", "Pack", EVENING, EVENING.replace(day=8, hour=8))


def test_a_thing_to_do_is_a_task_with_a_deadline() -> None:
    """It has UID, start, DUE, NEEDS-ACTION, the outing it belongs to and an alarm (RFC 5545, 3.6.2)."""
    data = calendar_file([entry(to_dos=(PACK,))], written_at=WRITTEN)
    (task,) = Calendar.from_ical(data).walk("VTODO")
    assert str(task["UID"]) == f"{entry().uid}-pack-todo"
    assert str(task["RELATED-TO"]) == entry().uid
    assert (task.decoded("DTSTART"), task.decoded("DUE")) == (PACK.start, PACK.due)
    assert str(task["STATUS"]) == "NEEDS-ACTION"
    assert "TRANSP" not in task
    (alarm,) = task.walk("VALARM")
    assert alarm.decoded("TRIGGER") == timedelta(0)


def test_a_thing_to_do_may_be_a_short_entry_that_takes_no_time() -> None:
    """For programs without tasks it lasts a quarter of an hour and leaves the time free."""
    outing, pack = events(calendar_file([entry(to_dos=(replace(PACK, as_entry=True),))], written_at=WRITTEN))
    assert str(outing["UID"]) == entry().uid
    assert pack.decoded("DTEND") - pack.decoded("DTSTART") == timedelta(minutes=15)
    assert str(pack["TRANSP"]) == "TRANSPARENT"


def test_what_a_file_no_longer_holds_is_taken_back() -> None:
    """Parts and tasks of an earlier file come as cancelled; those that are still there do not."""
    before = entry(layout=EntryLayout.PARTS, to_dos=(PACK,))
    assert endings(before) == ("-there", "-back", "-pack-todo")
    after = entry(sequence=1, withdrawn=endings(before))
    written = Calendar.from_ical(calendar_file([after], written_at=WRITTEN))
    found = {str(one["UID"]).removeprefix(after.uid): one for one in written.walk() if "UID" in one}
    assert {ending: str(one["STATUS"]) for ending, one in found.items()} == {
        "": "CONFIRMED",
        "-there": "CANCELLED",
        "-back": "CANCELLED",
        "-pack-todo": "CANCELLED",
    }
    assert found["-pack-todo"].name == "VTODO"
    again = replace(before, withdrawn=endings(before))
    assert b"CANCELLED" not in calendar_file([again], written_at=WRITTEN)


def test_each_object_on_a_server_has_one_uid_and_no_method() -> None:
    """One UID and one kind of component in an object, with the zones it uses (RFC 4791, 4.1)."""
    full = entry(layout=EntryLayout.PARTS, to_dos=(PACK,), withdrawn=("-old-entry",))
    objects = calendar_objects(full, written_at=WRITTEN)
    assert [uid.removeprefix(full.uid) for uid in objects] == ["-there", "", "-back", "-pack-todo"]
    for uid, data in objects.items():
        calendar = Calendar.from_ical(data)
        assert [str(one["UID"]) for one in calendar.walk() if "UID" in one] == [uid]
        assert len(calendar.walk("VTIMEZONE")) == 1
        assert "METHOD" not in calendar


def test_colour_and_free_time_are_written_when_asked_for() -> None:
    """COLOR is a CSS keyword (RFC 7986, 5.9) and left out at first; a free entry is TRANSPARENT."""
    assert b"COLOR" not in calendar_file([entry()], written_at=WRITTEN)
    written = lines(calendar_file([entry(colour="teal", busy=False)], written_at=WRITTEN))
    assert "COLOR:teal" in written
    assert "TRANSP:TRANSPARENT" in written


@pytest.mark.parametrize(
    "changes",
    [{"start": EVENING.replace(tzinfo=None)}, {"due": EVENING}],
    ids=["no zone", "due at once"],
)
def test_a_thing_to_do_without_zone_or_time_cannot_be_made(changes: dict[str, Any]) -> None:
    """Its times need zones, and DUE is later than DTSTART (RFC 5545, 3.8.2.3)."""
    with pytest.raises(PlanError):
        replace(PACK, **changes)


ANY_TEXT = st.text(
    st.one_of(st.characters(), st.sampled_from('\r\n;:,\\"\x00\x0b\u2028\u202e🌾é')), max_size=120
)


@settings(max_examples=40)
@example(summary=r"C:\New", description=r"C:\New", topics=[r"C:\New"])
@given(summary=ANY_TEXT, description=ANY_TEXT, topics=st.lists(ANY_TEXT, max_size=3))
def test_any_text_comes_back_as_it_was_and_adds_no_property(
    summary: str, description: str, topics: list[str]
) -> None:
    """Whatever is typed, the file has the same properties, and a reader gets the same visible text."""
    odd = entry(
        summary=summary,
        description=f"x{description}",
        location=f"x{summary}",
        categories=("x", *topics),
        reminders=(Reminder(60, f"x{summary}"),),
        to_dos=(replace(PACK, text=f"x{summary}"),),
    )
    tame = entry(
        summary="x",
        description="x",
        location="x",
        categories=("x",),
        reminders=(Reminder(60, "x"),),
        to_dos=(replace(PACK, text="x"),),
    )
    data = calendar_file([odd], written_at=WRITTEN)
    names = [re.split("[:;]", line, maxsplit=1)[0] for line in lines(data)]
    assert names == [
        re.split("[:;]", line, maxsplit=1)[0] for line in lines(calendar_file([tame], written_at=WRITTEN))
    ]
    assert all(len(line) <= 75 for line in data.split(b"\r\n"))
    (event,) = events(data)
    assert str(event["SUMMARY"]) == one_line(summary)
    assert str(event["DESCRIPTION"]) == plain_lines(f"x{description}")
    assert str(event["LOCATION"]) == one_line(f"x{summary}")
    assert isinstance(event, Event)
    assert [str(topic) for topic in event.categories] == [
        "x",
        *(topic for topic in map(one_line, topics) if topic),
    ]
    read_again = vobject.readOne(data.decode()).vevent
    assert read_again.description.value == plain_lines(f"x{description}")
