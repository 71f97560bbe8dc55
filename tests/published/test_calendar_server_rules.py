"""What is sent to a calendar server, against the standards and a server that others wrote.

Source: Daboo, Desruisseaux, Dusseault, Calendaring Extensions to WebDAV (CalDAV), RFC 4791, 2007; Daboo
(ed.), iCalendar Transport-Independent Interoperability Protocol (iTIP), RFC 5546, 2009; Desruisseaux (ed.),
iCalendar, RFC 5545, 2009; Daboo, New Properties for iCalendar, RFC 7986, 2016; Fielding and others, HTTP
Semantics, RFC 9110, 2022; the section stands beside each check (4791, 5546 and 9110 from memory). Server:
Radicale 3.9.0 (PyPI), started on loopback.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import icalendar
import pytest

from tests.calendar_server.radicale_server import PASSWORD, USER, Running, free_port
from tripplan.calendar_server.connection import Connection, ServerEntry, entry_address
from tripplan.calendar_server.entries import same
from tripplan.calendar_server.sending import ToSend, send
from tripplan.documents.calendars.server_calendar import OnServer
from tripplan.documents.outings.planned import PlanStatus
from tripplan.files.calendars.calendar_file import calendar_file, calendar_objects
from tripplan.planning.calendar_entry.entry import EntryLayout, OutingEntry, Reminder, ToDo

CHICAGO = ZoneInfo("America/Chicago")
NOW = datetime(2026, 11, 25, 16, tzinfo=UTC)
LATER = NOW + timedelta(days=1)
LEAVE = datetime(2026, 12, 8, 8, 40, tzinfo=CHICAGO)
ENTRY = OutingEntry(
    uid="b3a1f7de-0001",
    summary="Old mill; grain, flour",
    start=LEAVE,
    arrive=LEAVE + timedelta(minutes=70),
    leave_place=LEAVE + timedelta(hours=4),
    end=LEAVE + timedelta(hours=5),
    description="Leave home 8:40 AM.\nBring boots. 🌾",
    categories=("water power",),
    colour="teal",
    reminders=(Reminder(60, "Leave in an hour"),),
    to_dos=(ToDo("pack", "Pack", LEAVE - timedelta(hours=13), LEAVE),),
)


class Home:
    """One family with one calendar: sends entries and remembers what lies there."""

    def __init__(self, server: Running, calendar: str) -> None:
        self.server, self.calendar = server, calendar
        self.state = OnServer(outing="mill", calendar=calendar)

    def sends(self, entry: OutingEntry | None, at: datetime = NOW, address: str = "") -> OnServer:
        """Send the entry as it is now; None where it is planned no more."""
        entries: Mapping[str, bytes] = {} if entry is None else calendar_objects(entry, written_at=at)
        with Connection(address or self.server.address, USER, PASSWORD) as connection:
            (self.state,) = send(connection, [ToSend(self.state, entries, "" if entry is None else str(at))])
        return self.state

    def lying(self) -> dict[str, Any]:
        """The components in the calendar, by UID; one UID to an object, as RFC 4791, 4.1 demands."""
        found: dict[str, Any] = {}
        for text in self.server.files(self.calendar).values():
            calendar = icalendar.Calendar.from_ical(text)
            assert "METHOD" not in calendar
            (one,) = (part for part in calendar.walk() if "UID" in part)
            assert str(one["UID"]) not in found
            found[str(one["UID"])] = one
        return found

    def changed_by_others(self, uid: str, old: str, new: str) -> None:
        """Somebody else in the family changes an entry with a program of their own."""
        address = entry_address(self.calendar, uid)
        body = self.server.ask("GET", address).text
        assert old in body
        changed = self.server.ask("PUT", address, body.replace(old, new), Content_Type="text/calendar")
        changed.raise_for_status()


@pytest.fixture
def home(calendar_server: Running, new_calendar: Callable[[], str]) -> Home:
    """A family whose calendar is empty."""
    return Home(calendar_server, new_calendar())


def test_an_outing_arrives_as_it_was_written(home: Home) -> None:
    """Entry and task are objects of their own (4791, 4.1 and 5.3.2), and what they say comes back."""
    state = home.sends(ENTRY)
    assert (state.sent, state.trouble, state.changed_there) == (str(NOW), "", ())
    lying = home.lying()
    assert set(lying) == {ENTRY.uid, f"{ENTRY.uid}-pack-todo"}
    event, task = lying[ENTRY.uid], lying[f"{ENTRY.uid}-pack-todo"]
    assert (event.name, task.name) == ("VEVENT", "VTODO")
    assert str(event["DESCRIPTION"]) == ENTRY.description  # 5545, 3.3.11
    assert str(event["COLOR"]) == "teal"  # 7986, 5.9
    assert event.decoded("DTSTART") == LEAVE
    assert len(event.walk("VALARM")) == 1
    assert all(copy.etag for copy in state.copies)  # 4791, 5.3.4


def test_sending_twice_makes_no_twin_and_changes_nothing(home: Home) -> None:
    """The second time there is nothing to do, and with the records lost the same entries are found again."""
    first = home.sends(ENTRY)
    files = home.server.files(home.calendar)
    nobody = Connection(f"http://127.0.0.1:{free_port()}/", USER, PASSWORD)
    with nobody:
        entries = calendar_objects(ENTRY, written_at=NOW)
        assert list(send(nobody, [ToSend(first, entries, str(NOW))])) == [first]  # nothing is even asked
    home.state = OnServer(outing="mill", calendar=home.calendar)
    again = home.sends(ENTRY)
    assert again == first
    assert home.server.files(home.calendar) == files


def test_a_change_moves_the_same_entry(home: Home) -> None:
    """Same UID, higher SEQUENCE, LAST-MODIFIED (5545, 3.8.7.3 and 3.8.7.4; 5546, 2.1.4), still one object."""
    home.sends(ENTRY)
    day = timedelta(days=1)
    moved = replace(
        ENTRY,
        start=ENTRY.start + day,
        arrive=ENTRY.arrive + day,
        leave_place=ENTRY.leave_place + day,
        end=ENTRY.end + day,
        sequence=1,
        last_modified=LATER,
        to_dos=(),
    )
    state = home.sends(moved, LATER)
    assert (state.sent, state.trouble) == (str(LATER), "")
    lying = home.lying()
    assert set(lying) == {ENTRY.uid}  # the task is no longer wanted, so it is removed
    event = lying[ENTRY.uid]
    assert (event["SEQUENCE"], event.decoded("DTSTART")) == (1, LEAVE + day)
    assert event.decoded("LAST-MODIFIED") == LATER


def test_an_outing_called_off_stays_as_cancelled_until_it_is_removed(home: Home) -> None:
    """STATUS:CANCELLED under the same UID (5546, 3.2.5, the same marks without METHOD); then DELETE."""
    home.sends(ENTRY)
    home.sends(replace(ENTRY, status=PlanStatus.CANCELLED, sequence=1), LATER)
    lying = home.lying()
    assert {str(one["STATUS"]) for one in lying.values()} == {"CANCELLED"}
    assert str(lying[ENTRY.uid]["TRANSP"]) == "TRANSPARENT"
    assert not lying[ENTRY.uid].walk("VALARM")
    state = home.sends(None)
    assert (state.copies, state.trouble) == ((), "")
    assert home.lying() == {}


def test_parts_become_one_entry_and_leave_nothing_behind(home: Home) -> None:
    """Going back from three entries to one removes the two drives from the calendar."""
    home.sends(replace(ENTRY, layout=EntryLayout.PARTS))
    assert len(home.lying()) == 4
    home.sends(replace(ENTRY, sequence=1), LATER)
    assert set(home.lying()) == {ENTRY.uid, f"{ENTRY.uid}-pack-todo"}


def test_what_was_changed_there_is_not_overwritten_until_the_parent_says_so(home: Home) -> None:
    """A state other than the known one is refused by the server (4791, 5.3.4; 9110, 13.1.1) and shown."""
    home.sends(ENTRY)
    home.changed_by_others(ENTRY.uid, "Bring boots", "Bring skates")
    ours = replace(ENTRY, summary="New mill", sequence=1)
    state = home.sends(ours, LATER)
    assert state.sent == str(NOW)
    (changed,) = state.changed_there
    assert "Bring skates" in changed.theirs
    assert "New mill" in changed.ours
    assert "Old mill" in str(home.lying()[ENTRY.uid]["SUMMARY"])
    assert not state.is_due(str(LATER))
    home.state = state.ours_wins()
    assert home.state.is_due(str(LATER))
    assert home.sends(ours, LATER).sent == str(LATER)
    assert str(home.lying()[ENTRY.uid]["SUMMARY"]) == "New mill"
    assert "skates" not in str(home.lying()[ENTRY.uid]["DESCRIPTION"])


def test_what_was_changed_there_can_stay_and_is_asked_about_again(home: Home) -> None:
    """Leaving theirs sends nothing now; the next change of the outing does not overwrite it in silence."""
    home.sends(ENTRY)
    home.changed_by_others(ENTRY.uid, "Bring boots", "Bring skates")
    ours = replace(ENTRY, sequence=1, summary="New mill")
    home.state = home.sends(ours, LATER).theirs_wins()
    assert home.sends(ours, LATER).sent == str(LATER)
    assert "skates" in str(home.lying()[ENTRY.uid]["DESCRIPTION"])
    again = home.sends(replace(ours, sequence=2, summary="Mill"), LATER + timedelta(days=1))
    assert len(again.changed_there) == 1
    assert "skates" in str(home.lying()[ENTRY.uid]["DESCRIPTION"])


@pytest.mark.parametrize("keep_ours", [True, False])
def test_what_was_removed_there_comes_back_only_when_the_parent_says_so(home: Home, keep_ours: bool) -> None:
    """An entry that is gone is shown as such; ours is then made anew, or left out."""
    home.sends(ENTRY)
    home.server.ask("DELETE", entry_address(home.calendar, ENTRY.uid)).raise_for_status()
    ours = replace(ENTRY, sequence=1)
    state = home.sends(ours, LATER)
    (changed,) = [one for one in state.changed_there if one.uid == ENTRY.uid]
    assert changed.theirs == ""
    home.state = state.ours_wins() if keep_ours else state.theirs_wins()
    assert home.sends(ours, LATER).sent == str(LATER)
    assert (ENTRY.uid in home.lying()) is keep_ours


@pytest.mark.parametrize("keep_ours", [True, False])
def test_what_was_changed_there_is_removed_only_when_the_parent_says_so(home: Home, keep_ours: bool) -> None:
    """Taking an outing off the list does not remove what somebody else has written since."""
    home.sends(replace(ENTRY, to_dos=()))
    home.changed_by_others(ENTRY.uid, "Bring boots", "Bring skates")
    state = home.sends(None)
    assert [one.ours for one in state.changed_there] == [""]
    home.state = state.ours_wins() if keep_ours else state.theirs_wins()
    home.sends(None)
    assert home.state.copies == ()
    assert (ENTRY.uid in home.lying()) is not keep_ours


def test_what_was_imported_by_hand_is_found_by_its_uid(home: Home) -> None:
    """A UID lies once in a calendar (4791, 5.3.2.1, no-uid-conflict); the imported entry is taken over."""
    file = calendar_file([replace(ENTRY, to_dos=())], written_at=NOW).decode()
    imported = f"{home.calendar}imported-from-a-file.ics"
    home.server.ask("PUT", imported, file, Content_Type="text/calendar").raise_for_status()
    state = home.sends(replace(ENTRY, to_dos=()))
    assert [copy.address for copy in state.copies] == [imported]
    home.sends(replace(ENTRY, to_dos=(), summary="New mill", sequence=1), LATER)
    assert {uid: str(one["SUMMARY"]) for uid, one in home.lying().items()} == {ENTRY.uid: "New mill"}


def test_an_answer_that_got_lost_makes_no_twin_and_no_question(home: Home) -> None:
    """The entry arrived, but this computer never learned of it: the next sending sees that it is ours."""
    before = home.sends(ENTRY)
    moved = replace(ENTRY, summary="New mill", sequence=1)
    home.sends(moved, LATER)
    home.state = before
    state = home.sends(moved, LATER)
    assert (state.changed_there, state.sent) == ((), str(LATER))


def test_what_could_not_be_sent_waits_and_goes_the_next_time(home: Home) -> None:
    """Without a server nothing is lost: the outing stays due, says why, and arrives at the next press."""
    state = home.sends(ENTRY, address=f"http://127.0.0.1:{free_port()}/")
    assert (state.sent, state.copies) == ("", ())
    assert "points to another server" in state.trouble
    home.state = OnServer(outing="mill", calendar=f"http://127.0.0.1:{free_port()}/home/x/")
    state = home.sends(ENTRY, address=home.state.calendar)
    assert "cannot be reached" in state.trouble
    assert state.is_due(str(NOW))
    home.state = state.model_copy(update={"calendar": home.calendar})
    state = home.sends(ENTRY)
    assert (state.sent, state.trouble) == (str(NOW), "")
    assert not state.is_due(str(NOW))


def test_the_rest_waits_where_the_server_cannot_be_reached(home: Home) -> None:
    """One attempt tells enough: the second outing is not tried, and says the same."""
    one, two = (OnServer(outing=name, calendar=home.calendar) for name in ("one", "two"))
    entries = calendar_objects(ENTRY, written_at=NOW)
    asked: list[str] = []

    class Counted(Connection):
        def put(self, address: str, body: bytes, etag: str | None) -> ServerEntry:
            """Count, and ask."""
            asked.append(address)
            return super().put(address, body, etag)

    with Counted(home.server.address, USER, "wrong") as connection:
        after = list(send(connection, [ToSend(one, entries, str(NOW)), ToSend(two, entries, str(NOW))]))
    assert [state.trouble for state in after] == ["the user name or the password is wrong"] * 2
    assert len(asked) == 1


def test_a_server_may_write_the_same_otherwise() -> None:
    """Order, stamps and folds of lines do not make another entry; a changed word does."""
    text = calendar_objects(ENTRY, written_at=NOW)[ENTRY.uid].decode()
    assert same(text, calendar_objects(replace(ENTRY, sequence=3), written_at=LATER)[ENTRY.uid].decode())
    assert same(text, text.replace("\r\n", "\n"))
    assert not same(text, text.replace("boots", "skates"))
    assert not same(text, "no calendar")
