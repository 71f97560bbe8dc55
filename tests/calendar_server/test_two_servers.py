"""The same steps with two servers that other people have written, Radicale and Xandikos.

Independent: Radicale 3.9.0 and Xandikos 0.4.10 (PyPI), each with its own reading of RFC 4791.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

import icalendar
import pytest

from tests.calendar_server.certificates import self_signed
from tests.calendar_server.radicale_server import PASSWORD, USER, Running, radicale
from tests.calendar_server.xandikos_server import xandikos
from tripplan.calendar_server.connection import Connection, entry_address
from tripplan.calendar_server.sending import ToSend, send
from tripplan.documents.calendars.server_calendar import OnServer
from tripplan.documents.outings.planned import PlanStatus
from tripplan.errors import CalendarServerTrouble
from tripplan.files.calendars.calendar_file import calendar_objects
from tripplan.planning.calendar_entry.entry import OutingEntry

NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)
LATER = NOW + timedelta(days=1)
ENTRY = OutingEntry(
    uid="mill",
    summary="Old mill; bring, boots",
    start=datetime(2026, 12, 8, 15, tzinfo=UTC),
    arrive=datetime(2026, 12, 8, 16, tzinfo=UTC),
    leave_place=datetime(2026, 12, 8, 18, tzinfo=UTC),
    end=datetime(2026, 12, 8, 19, tzinfo=UTC),
    location="Mill Road",
    description="Bring boots\nand a lamp",
)


@dataclass
class Home:
    """A family with a calendar on a server."""

    server: Running
    calendar: str
    state: OnServer

    def connection(self, password: str = PASSWORD) -> Connection:
        """A new connection."""
        certificate = self.server.certificate
        assert certificate is not None
        return Connection(self.server.address, USER, password, certificate=str(certificate.public))

    def sends(self, entry: OutingEntry | None, at: datetime = NOW) -> OnServer:
        """Send the entry as it is now; None where it is planned no more."""
        entries = {} if entry is None else calendar_objects(entry, written_at=at)
        with self.connection() as connection:
            (self.state,) = send(connection, [ToSend(self.state, entries, "" if entry is None else str(at))])
        return self.state

    def lying(self) -> icalendar.Component | None:
        """The entry as another program sees it; None where there is none."""
        answer = self.server.ask("GET", entry_address(self.calendar, ENTRY.uid))
        if answer.status_code == 404:
            return None
        (entry,) = icalendar.Calendar.from_ical(answer.text).walk("VEVENT")
        return entry


@pytest.fixture(scope="module", params=["radicale", "xandikos"])
def server(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Running]:
    """One server, then the other, both over encrypted connections."""
    folder = tmp_path_factory.mktemp(request.param)
    if request.param == "radicale":
        with radicale(folder, self_signed(folder)) as running:
            running.make_calendar("ours")
            yield running
    else:
        with xandikos(folder) as running:
            yield running


@pytest.fixture
def home(server: Running) -> Iterator[Home]:
    """A family that has found its calendar; at the end the calendar is empty again."""
    certificate = server.certificate
    assert certificate is not None
    with Connection(server.address, USER, PASSWORD, certificate=str(certificate.public)) as connection:
        (found,) = connection.calendars()
    yield Home(server, found.address, OnServer(outing="mill", calendar=found.address))
    server.ask("DELETE", entry_address(found.address, ENTRY.uid))


def test_an_entry_is_made_changed_called_off_and_removed(home: Home) -> None:
    """Each step is there when another program looks, and the states that are known are the server's own."""
    state = home.sends(ENTRY)
    assert (state.sent, state.trouble, state.changed_there) == (str(NOW), "", ())
    entry = home.lying()
    assert entry is not None
    assert str(entry["SUMMARY"]) == ENTRY.summary
    assert str(entry["DESCRIPTION"]) == ENTRY.description
    answer = home.server.ask("GET", entry_address(home.calendar, ENTRY.uid))
    assert state.copies[0].etag == answer.headers["ETag"]
    later = replace(ENTRY, start=ENTRY.start + timedelta(minutes=30), sequence=1)
    assert home.sends(later, LATER).sent == str(LATER)
    entry = home.lying()
    assert entry is not None
    assert entry.decoded("DTSTART") == later.start
    home.sends(replace(later, status=PlanStatus.CANCELLED, sequence=2), LATER + timedelta(hours=1))
    entry = home.lying()
    assert entry is not None
    assert str(entry["STATUS"]) == "CANCELLED"
    assert home.sends(None).copies == ()
    assert home.lying() is None


def test_what_somebody_else_changed_is_asked_about(home: Home) -> None:
    """Not written over (RFC 9110, 13.1.1), not removed, and sent once the parent says so."""
    home.sends(ENTRY)
    address = entry_address(home.calendar, ENTRY.uid)
    theirs = home.server.ask("GET", address).text.replace("Mill Road", "River Lane")
    home.server.ask("PUT", address, theirs, Content_Type="text/calendar").raise_for_status()
    ours = replace(ENTRY, summary="New mill", sequence=1)
    (changed,) = home.sends(ours, LATER).changed_there
    assert "River Lane" in changed.theirs
    home.state = home.state.ours_wins()
    assert home.sends(ours, LATER).sent == str(LATER)
    entry = home.lying()
    assert entry is not None
    assert (str(entry["SUMMARY"]), str(entry["LOCATION"])) == ("New mill", "Mill Road")


def test_an_entry_that_lies_there_already_makes_no_twin(home: Home) -> None:
    """With the records lost the same entry is found again (RFC 4791, 5.3.2.1)."""
    first = home.sends(ENTRY)
    home.state = OnServer(outing="mill", calendar=home.calendar)
    assert home.sends(ENTRY) == first


def test_an_entry_removed_there_is_asked_about(home: Home) -> None:
    """It is not made anew in silence."""
    home.sends(ENTRY)
    home.server.ask("DELETE", entry_address(home.calendar, ENTRY.uid)).raise_for_status()
    (changed,) = home.sends(replace(ENTRY, sequence=1), LATER).changed_there
    assert changed.theirs == ""
    assert home.lying() is None


def test_a_wrong_password_is_told_as_such(home: Home) -> None:
    """And stops everything."""
    with home.connection("guess") as connection, pytest.raises(CalendarServerTrouble) as caught:
        connection.calendars()
    assert (str(caught.value), caught.value.stops) == ("the user name or the password is wrong", True)
