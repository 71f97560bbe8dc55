"""`tripplan calendar`: an outing as a calendar file."""

from collections.abc import Callable, Iterator
from datetime import timedelta
from pathlib import Path
from typing import Any

import icalendar
import pytest

from tests.calendar_server.keyring_for_tests import MemoryKeyring, used
from tests.calendar_server.radicale_server import PASSWORD, USER, Running
from tests.commands.conftest import NOON, Files, Run
from tripplan.calendar_server.passwords import keep_password
from tripplan.documents.calendars.server_calendar import ServerCalendar
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.planning.calendar_entry.entry import outing_uid
from tripplan.records.store import Records

ASKED = ("calendar", "test-museum", "2026-12-08", "--out")


@pytest.fixture
def museum(files: Files) -> Files:
    """One museum."""
    files.add()
    return files


def events(path: Path) -> list[Any]:
    """The entries of a calendar file, their properties by name."""
    return list(icalendar.Calendar.from_ical(path.read_bytes()).walk("VEVENT"))


def test_the_file_holds_the_outing(run: Run, museum: Files, tmp_path: Path) -> None:
    """One entry on the day, from leaving home to being home again, with three reminders."""
    out = tmp_path / "outing.ics"
    said = run(*ASKED, out, *museum.options)
    assert (said.status, said.err) == (0, "")
    (event,) = events(out)
    assert event["DTSTART"].dt.date().isoformat() == "2026-12-08"
    assert event["DTEND"].dt - event["DTSTART"].dt > timedelta(hours=2)
    assert event["STATUS"] == "CONFIRMED"
    assert len(event.walk("VALARM")) == 3


def test_names_and_home_stay_out_unless_asked_for(run: Run, museum: Files, tmp_path: Path) -> None:
    """By default nobody is named and the home address is not there."""
    out = tmp_path / "outing.ics"
    run(*ASKED, out, *museum.options)
    (plain,) = events(out)
    run(*ASKED, out, "--replace", "--names", "--home", *museum.options)
    (full,) = events(out)
    assert "Di's nap" in full["DESCRIPTION"]
    assert "from Peoria" in full["DESCRIPTION"]
    assert not any(word in plain["DESCRIPTION"] for word in ("Ann", "Bo ", "Cy", "Di's", "Peoria"))


def test_parts_tentative_and_without_reminders(run: Run, museum: Files, tmp_path: Path) -> None:
    """Three entries, not yet certain, and nobody is reminded."""
    out = tmp_path / "outing.ics"
    run(*ASKED, out, "--parts", "--tentative", "--no-reminders", *museum.options)
    found = events(out)
    assert [event["STATUS"] for event in found] == ["TENTATIVE"] * 3
    assert not any(event.walk("VALARM") for event in found)


def test_the_same_outing_keeps_its_uid(run: Run, museum: Files, tmp_path: Path) -> None:
    """Written again it moves the same entry; another day is another entry."""
    first, again, other = (tmp_path / name for name in ("first.ics", "again.ics", "other.ics"))
    run(*ASKED, first, *museum.options)
    run(*ASKED, again, "--parts", *museum.options)
    run("calendar", "test-museum", "2026-12-09", "--out", other, *museum.options)
    uid = events(first)[0]["UID"]
    assert uid in [event["UID"] for event in events(again)]
    assert events(other)[0]["UID"] != uid


def on_record(records: Records, **changes: Any) -> PlannedOuting:
    """An outing planned on the screens."""
    moments = [f"2026-12-08T{hour:02}:00:00-06:00[America/Chicago]" for hour in (9, 10, 12, 13)]
    kept: dict[str, Any] = {
        "id": "museum-day",
        "place": "test-museum",
        "day": "2026-12-08",
        "party": ["Ann"],
        "uid": outing_uid("museum-day"),
        "sequence": 3,
        "changed_at": NOON,
        "likely_amount": "50",
        "currency": "USD",
        **dict(zip(("leave_home", "enter", "leave_place", "home"), moments, strict=True)),
        **changes,
    }
    planned = PlannedOuting.model_validate(kept)
    records.save(planned, NOON)
    return planned


def test_an_outing_on_record_keeps_the_uid_it_has(run: Run, own_records: Records, tmp_path: Path) -> None:
    """What the screens have put on a calendar before is moved, not doubled."""
    on_record(own_records)
    out = tmp_path / "outing.ics"
    run(*ASKED, out)
    (event,) = events(out)
    assert (event["UID"], event["SEQUENCE"]) == (outing_uid("museum-day"), 3)
    own_records.remove(PlannedOuting, "museum-day", NOON, 1)  # its entry may still be on a calendar
    run(*ASKED, out, "--replace")
    (event,) = events(out)
    assert (event["UID"], event["SEQUENCE"]) == (outing_uid("museum-day"), 3)


def test_all_planned_outings_go_into_one_file(run: Run, own_records: Records, tmp_path: Path) -> None:
    """With `--planned` every outing of the coming year is in the file as it was saved, past ones are not."""
    out = tmp_path / "year.ics"
    nothing = run("calendar", "--planned", "--out", out)
    assert (nothing.status, out.exists()) == (1, False)
    one = on_record(own_records)
    off = on_record(own_records, id="off", uid="off", day="2026-12-09", status="cancelled")
    on_record(own_records, id="past", uid="past", day="2026-11-20")
    done = run("calendar", "--planned", "--out", out)
    assert done.status == 0
    assert {(str(event["UID"]), str(event["STATUS"])) for event in events(out)} == {
        (one.uid, "TENTATIVE"),
        (off.uid, "CANCELLED"),
    }


def test_tasks_colour_and_free_time_as_asked_for(run: Run, museum: Files, tmp_path: Path) -> None:
    """Packing comes as a task, the entry has its colour, takes no time and tells no prices."""
    out = tmp_path / "outing.ics"
    asked = ("--to-do", "tasks", "--color", "teal", "--free", "--no-costs")
    assert run(*ASKED, out, *asked, *museum.options).status == 0
    (event,) = events(out)
    assert (str(event["COLOR"]), str(event["TRANSP"])) == ("teal", "TRANSPARENT")
    assert "$" not in event["DESCRIPTION"]
    (task,) = icalendar.Calendar.from_ical(out.read_bytes()).walk("VTODO")
    assert "Pack" in str(task["SUMMARY"])


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "name a place and a day"),
        (("test-museum",), "name a place and a day"),
        (("test-museum", "2026-12-08", "--planned"), "name a place and a day"),
        (("test-museum", "2026-12-08", "--color", "sky"), "the color is one of aqua"),
        (
            ("--planned", "--leave-home", "10:20", "--leave-place", "14:10"),
            "what is planned keeps its own times",
        ),
        (("test-museum", "2026-12-08", "--send"), "exclude each other"),
    ],
)
def test_what_is_asked_must_make_sense(
    run: Run, museum: Files, tmp_path: Path, words: tuple[str, ...], said: str
) -> None:
    """A place without a day, both ways at once, times where none are asked, no such colour: bad input."""
    out = tmp_path / "outing.ics"
    answer = run("calendar", *words, "--out", out, *museum.options)
    assert (answer.status, out.exists()) == (2, False)
    assert said in answer.err


def test_no_file_is_overwritten_unseen(run: Run, museum: Files, tmp_path: Path) -> None:
    """A file that is there already stays as it is unless `--replace` is said."""
    out = tmp_path / "outing.ics"
    out.write_text("mine", encoding="utf-8")
    refused = run(*ASKED, out, *museum.options)
    assert (refused.status, refused.out) == (1, "")
    assert "there already" in refused.err
    assert out.read_text(encoding="utf-8") == "mine"
    assert run(*ASKED, out, "--replace", *museum.options).status == 0
    assert events(out)
    assert list(tmp_path.glob("*.partial")) == []


def test_a_hyphen_prints_the_file_alone(run: Run, museum: Files) -> None:
    """With `-` the output is the calendar file and nothing else."""
    said = run(*ASKED, "-", *museum.options)
    assert said.status == 0
    assert said.out.startswith("BEGIN:VCALENDAR\r\n")
    assert said.out.endswith("END:VCALENDAR\r\n")
    assert "load up at" in said.err


def test_a_day_that_cannot_be_done_writes_nothing(run: Run, museum: Files, tmp_path: Path) -> None:
    """On a closed day there is a reason, and no file."""
    out = tmp_path / "outing.ics"
    said = run("calendar", "test-museum", "2026-12-07", "--out", out, *museum.options)
    assert said.status == 1
    assert "closed on Mondays" in said.err
    assert not out.exists()


def test_where_nothing_can_be_written_it_is_a_fault(run: Run, museum: Files, tmp_path: Path) -> None:
    """A folder, and a folder that is not there, are told as what they are."""
    for out in (tmp_path, tmp_path / "nowhere" / "outing.ics"):
        said = run(*ASKED, out, "--replace", *museum.options)
        assert (said.status, said.out) == (2, "")
        assert f"{out}: cannot be written: " in said.err


@pytest.fixture
def server(
    own_records: Records, calendar_server: Running, new_calendar: Callable[[], str]
) -> Iterator[ServerCalendar]:
    """The family's calendar server, its password in a keyring."""
    set_up = ServerCalendar(
        server=calendar_server.address, user=USER, calendar=new_calendar(), name="Ours", takes_tasks=True
    )
    own_records.save(set_up, NOON)
    with used(MemoryKeyring()):
        keep_password(set_up.server, USER, PASSWORD)
        yield set_up


def test_an_outing_is_sent_to_the_calendar_server(
    run: Run, own_records: Records, server: ServerCalendar, calendar_server: Running
) -> None:
    """It is kept as planned, lies there once, and a second time only changes move it."""
    done = run("calendar", "test-museum", "2026-12-08", "--send", "--to-do", "tasks")
    assert (done.status, done.err) == (0, "")
    assert "Sending to 'Ours' on 127.0.0.1" in done.out
    (kept,) = own_records.all(PlannedOuting).values()
    files = calendar_server.files(server.calendar)
    assert set(files) == {f"{kept.value.uid}.ics", f"{kept.value.uid}-pack-todo.ics"}
    again = run("calendar", "--planned", "--send")
    assert (again.status, calendar_server.files(server.calendar)) == (0, files)
    assert "Nothing waits to be sent" in again.out
    named = run("calendar", "test-museum", "2026-12-08", "--send", "--names")
    assert named.status == 0
    (text,) = calendar_server.files(server.calendar).values()
    assert "SEQUENCE:1" in text
    assert "Ann" in text


def test_what_cannot_be_sent_is_told_and_stays_planned(
    run: Run, own_records: Records, server: ServerCalendar
) -> None:
    """A wrong password ends with 1; the outing waits."""
    keep_password(server.server, USER, "old one")
    done = run("calendar", "test-museum", "2026-12-08", "--send")
    assert done.status == 1
    assert "the user name or the password is wrong" in done.err
    assert len(own_records.all(PlannedOuting)) == 1


def test_without_a_server_or_an_own_family_nothing_is_sent(
    run: Run, own_records: Records, museum: Files
) -> None:
    """Both are bad input, told before anything is planned."""
    unset = run("calendar", "test-museum", "2026-12-08", "--send")
    assert (unset.status, "no calendar server is set up yet" in unset.err) == (2, True)
    files = run("calendar", "test-museum", "2026-12-08", "--send", *museum.options)
    assert (files.status, "only your own family's outings" in files.err) == (2, True)
    assert own_records.all(PlannedOuting) == {}
