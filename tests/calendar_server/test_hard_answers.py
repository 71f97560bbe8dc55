"""Whatever a server answers, nothing counts that it has not done, and nobody is kept waiting.

Sources: Daboo, Desruisseaux and Dusseault, CalDAV, RFC 4791, 2007, sections 5.3.2 and 5.3.4; Fielding,
Nottingham and Reschke (eds.), HTTP Semantics, RFC 9110, 2022, sections 9.3.4, 9.3.5 and 15; Nottingham and
Fielding, Additional HTTP Status Codes, RFC 6585, 2012, section 4.
"""

import time
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tests.calendar_server.odd_server import Answer, drip, odd_server, raw, respond, standing_before
from tests.calendar_server.radicale_server import PASSWORD, USER, Running
from tests.calendar_server.test_connection import EVENT, trouble_of
from tests.records.test_planned_outings import outing
from tripplan.calendar_server import transport
from tripplan.calendar_server.connection import Connection, ServerEntry, entry_address
from tripplan.calendar_server.entries import readable
from tripplan.calendar_server.outbox import Sending, on_its_way, send_waiting, waiting
from tripplan.documents.calendars.server_calendar import LONGEST_ENTRY, LONGEST_ETAG, OnServer, ServerCalendar
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.errors import CalendarServerTrouble
from tripplan.files.calendars.entry_text import text_in_words
from tripplan.planning.calendar_entry.entry import OutingEntry
from tripplan.records.opening import Which, open_records
from tripplan.records.store import Records, StoredDocument

NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)
PAGE = respond(200, b"<html><p>Please sign in to this network", Content_Type="text/html")


def refusal(address: str, calendar: str, ask: Callable[[Connection, str], object]) -> str:
    """In what words a question ends."""
    with Connection(address, USER, PASSWORD) as one, pytest.raises(CalendarServerTrouble) as caught:
        ask(one, entry_address(calendar, "one"))
    return str(caught.value)


def put(one: Connection, address: str) -> ServerEntry:
    """Write the entry anew."""
    return one.put(address, EVENT, None)


def delete(one: Connection, address: str) -> None:
    """Remove it."""
    one.delete(address, '"1"')


@pytest.mark.parametrize("ask", [put, delete])
def test_a_page_that_answers_to_everything_has_taken_and_removed_nothing(
    ask: Callable[[Connection, str], object],
) -> None:
    """200 with a page, as networks answer that want to be signed in to (9110, 9.3.4 and 9.3.5)."""
    with odd_server(PAGE) as (address, _):
        assert "not of a calendar server" in refusal(address, f"{address}home/x", ask)


@pytest.mark.parametrize("status", [200, 202, 203, 207])
def test_what_was_not_refused_counts_once_a_look_shows_it(
    calendar_server: Running, new_calendar: Callable[[], str], status: int
) -> None:
    """Only 201 and 204 say that it is done (4791, 5.3.2; 9110, 9.3.5); after others it is looked at."""
    path = new_calendar().removeprefix(calendar_server.address)
    odd = {"PUT": respond(status), "DELETE": respond(status)}
    with standing_before(calendar_server, odd) as address:
        calendar = address + path
        for ask, said in ((put, "does not show it"), (delete, "has not removed it")):
            got = refusal(address, calendar, ask)
            assert said in got or f"status {status}" in got
            calendar_server.ask("PUT", f"{calendar_server.address}{path}one.ics", EVENT.decode())
        if status in (200, 202):
            with Connection(address, USER, PASSWORD) as one:
                assert put(one, entry_address(calendar, "one")).etag
                calendar_server.ask("DELETE", f"{calendar_server.address}{path}one.ics")
                delete(one, entry_address(calendar, "one"))


def test_a_server_that_took_it_and_shows_something_else_is_told() -> None:
    """Without an ETag the entry may have become another (4791, 5.3.4): its name and times must be ours."""
    other = EVENT.replace(b"Mill", b"Dentist")

    def answer(handler: object) -> None:
        (respond(201) if handler.command == "PUT" else respond(200, other))(handler)  # type: ignore[attr-defined,arg-type]

    with odd_server(answer) as (address, _):
        assert "does not show it" in refusal(address, f"{address}home/x", put)


def test_what_a_server_adds_does_not_matter() -> None:
    """It may write down more than it was sent; the state is then the one that it shows."""
    more = EVENT.replace(b"SUMMARY", b"X-SEEN:yes\r\nLOCATION:Mill Road\r\nSUMMARY")

    def answer(handler: object) -> None:
        (respond(204) if handler.command == "PUT" else respond(200, more, ETag='"7"'))(handler)  # type: ignore[attr-defined,arg-type]

    with odd_server(answer) as (address, _), Connection(address, USER, PASSWORD) as one:
        assert put(one, f"{address}home/x/one.ics").etag == '"7"'


# --- waiting and reading ----------------------------------------------------------------------------------

HEAD = b"HTTP/1.1 207 Multi-Status\r\nContent-Type: text/xml\r\n"


@pytest.mark.parametrize(
    "answer",
    [
        drip(HEAD + b"X-Slow: " + b"x" * 500, 0.02),
        drip(HEAD + b"Content-Length: 500\r\n\r\n" + b"<" * 500, 0.02),
        drip(HEAD + b"\r\n" + b" " * 500, 0.02),
        lambda _: time.sleep(3),
    ],
    ids=["the head byte by byte", "the body byte by byte", "a body without end", "nothing at all"],
)
def test_an_answer_is_waited_for_no_longer_however_slowly_it_comes(
    answer: Answer, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The library begins to wait anew with each byte; the deadline does not move."""
    monkeypatch.setattr(transport, "ANSWER_SECONDS", 0.5)
    with odd_server(answer) as (address, asked):
        began = time.monotonic()
        trouble = trouble_of(address)
        took = time.monotonic() - began
    assert "did not answer within" in str(trouble)
    assert trouble.stops
    assert len(asked) == 2  # the first silence may be one question's own
    assert took < 10  # each would have gone on for more than ten seconds, or for ever


def test_all_that_is_asked_together_has_an_end(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each answer in time, and yet the whole takes too long: the rest is not asked any more."""
    monkeypatch.setattr(transport, "WHOLE_SECONDS", 0.3)

    def answer(handler: object) -> None:
        time.sleep(0.4)
        PAGE(handler)  # type: ignore[arg-type]

    with odd_server(answer) as (address, asked):
        assert "in all" in str(trouble_of(address))
    assert len(asked) == 1


@pytest.mark.parametrize(
    ("answer", "said"),
    [
        (respond(207, b"<a>" + b" " * 3_000_000), "more than 2 MB"),
        (raw(b"SSH-2.0-OpenSSH_9.2\r\n\r\n"), "none of a web server"),
        (raw(b"HTTP/1.1 200 OK\r\nContent-Length: 900\r\n\r\nBEGIN:VCAL"), "broke off"),
        (raw(b"HTTP/1.1 200 OK\r\nX: " + b"x" * 70_000 + b"\r\n\r\n"), "none of a web server"),
        (raw(b""), "broke off"),
        (respond(200, bytes(range(256)) * 40), "not of a calendar server"),
        (respond(302, Location="/again/"), "somewhere else"),
        (respond(301, Location=f"https://{'a' * 3000}.example.org/"), "points to another server"),
        (respond(301, Location="http://[broken/"), "not of a calendar server"),
    ],
    ids=["large", "garbage", "half", "a long line", "hung up", "bytes", "a circle", "a long host", "no host"],
)
@pytest.mark.parametrize("ask", [put, delete, lambda one, _: one.calendars()], ids=["put", "delete", "look"])
def test_whatever_else_is_answered_is_told_in_words(
    answer: Answer, said: str, ask: Callable[[Connection, str], object], monkeypatch: pytest.MonkeyPatch
) -> None:
    """No exception of a library, no endless reading, and a sentence that fits on the screen."""
    monkeypatch.setattr(transport, "MOST_BYTES", 2_000_000)
    with odd_server(answer) as (address, _):
        got = refusal(address, f"{address}home/x", ask)
    assert said in got or "not of a calendar server" in got
    assert len(got) < 300


def test_a_user_without_calendars_is_told_as_such(tmp_path: Path) -> None:
    """The address and the password are right; there is only nothing there, or tasks alone (4791, 5.2.3)."""
    from tests.calendar_server.radicale_server import radicale

    with radicale(tmp_path) as server:
        assert "no calendar for this user" in str(trouble_of(server.address))
        server.make_calendar("tasks", ("VTODO",))
        assert "no calendar for this user" in str(trouble_of(server.address))


# --- one outing and the others ----------------------------------------------------------------------------

ENTRY = OutingEntry(
    uid="replaced",
    summary="Old mill",
    start=datetime(2026, 12, 8, 15, tzinfo=UTC),
    arrive=datetime(2026, 12, 8, 16, tzinfo=UTC),
    leave_place=datetime(2026, 12, 8, 18, tzinfo=UTC),
    end=datetime(2026, 12, 8, 19, tzinfo=UTC),
    location="Mill Road",
    description="Bring boots",
)


class Home:
    """A family with three planned outings that are to be on the server."""

    def __init__(self, records: Records, calendar: str, server: str) -> None:
        self.records = records
        self.server = ServerCalendar(server=server, user=USER, calendar=calendar, name="Ours")
        for name in ("a-barn", "b-mill", "c-cave"):
            records.save(outing(name), NOW)
            on_its_way(records, name, calendar, NOW)

    def entry(self, planned: PlannedOuting) -> OutingEntry:
        """The entry of an outing."""
        return replace(
            ENTRY, uid=planned.uid, summary=planned.id, sequence=planned.sequence, status=planned.status
        )

    def sends(self) -> Sending:
        """Press the button."""
        return send_waiting(self.records, self.server, PASSWORD, self.entry, NOW)

    def changes(self, name: str) -> None:
        """Plan an outing otherwise."""
        kept = self.records.get(PlannedOuting, name)
        assert kept is not None
        self.records.save(kept.value.changed(NOW, party=("Ann", "Cy")), NOW, kept.revision)

    def trouble(self, name: str) -> str:
        """Why an outing waits."""
        kept = self.records.get(OnServer, name)
        assert kept is not None
        return kept.value.trouble


MILL = "PUT /home/"


@pytest.mark.parametrize(
    ("odd", "said"),
    [
        (respond(500), "status 500"),
        (respond(413), "too large"),
        (PAGE, "not of a calendar server"),
        (raw(b"HTTP/1.1 201 Created\r\nETag: " + b"x" * 70_000 + b"\r\n\r\n"), "none of a web server"),
        (respond(301, Location="http://[broken/"), "not of a calendar server"),
        (drip(b"HTTP/1.1 201 Created\r\nX: " + b"x" * 500, 0.05), "did not answer within"),
    ],
    ids=["an error", "too large", "a page", "a long line", "no host", "slow"],
)
def test_trouble_with_one_outing_does_not_keep_the_others_here(
    records: Records,
    calendar_server: Running,
    new_calendar: Callable[[], str],
    monkeypatch: pytest.MonkeyPatch,
    odd: Answer,
    said: str,
) -> None:
    """The barn and the cave arrive and stay noted, the mill waits with its reason and goes last next time."""
    monkeypatch.setattr(transport, "ANSWER_SECONDS", 2)
    path = new_calendar().removeprefix(calendar_server.address)
    odd_for_the_mill = {f"{method} /{path}uid-of-b-mill": odd for method in ("PUT", "GET")}
    with standing_before(calendar_server, odd_for_the_mill) as address:
        home = Home(records, address + path, address)
        sending = home.sends()
        assert (sending.arrived, len(sending.troubles)) == (2, 1)
        assert said in sending.in_words()
        assert said in home.trouble("b-mill")
        assert [home.trouble(name) for name in ("a-barn", "c-cave")] == ["", ""]
        home.changes("c-cave")
        assert waiting(records, home.server) == ["c-cave", "b-mill"]
    assert set(calendar_server.files(calendar_server.address + path)) == {
        "uid-of-a-barn.ics",
        "uid-of-c-cave.ics",
    }


def test_a_long_name_of_a_state_is_kept_or_done_without(
    records: Records, calendar_server: Running, new_calendar: Callable[[], str]
) -> None:
    """An ETag of 6 KB can be named in a request; one of 20 KB no server takes back, so it counts as none."""
    path = new_calendar().removeprefix(calendar_server.address)
    long, longest = f'"{"x" * 6000}"', f'"{"y" * 20_000}"'
    odd = {
        f"PUT /{path}uid-of-a-barn": respond(201, ETag=long),
        f"PUT /{path}uid-of-b-mill": respond(201, ETag=longest),
        f"GET /{path}uid-of-b-mill": respond(
            200, EVENT.replace(b"Mill", b"b-mill").replace(b"UID:one", b"UID:uid-of-b-mill"), ETag=longest
        ),
    }
    with standing_before(calendar_server, odd) as address:
        home = Home(records, address + path, address)
        home.sends()
    etags = {name: one.value.copies[0].etag if one.value.copies else None for name, one in all_of(records)}
    assert etags["a-barn"] == long
    assert etags["b-mill"] is None  # it lies there with other times than ours
    assert "does not show it" in home.trouble("b-mill")
    assert len(etags["c-cave"] or "") < LONGEST_ETAG


def all_of(records: Records) -> list[tuple[str, StoredDocument[OnServer]]]:
    """What lies on the server of each outing."""
    return list(records.all(OnServer).items())


def test_a_photograph_in_an_entry_made_there_is_shown_as_such(
    records: Records, calendar_server: Running, new_calendar: Callable[[], str]
) -> None:
    """Somebody attached 300 KB, more than is kept: the parent is asked, the others arrive."""
    calendar = new_calendar()
    home = Home(records, calendar, calendar_server.address)
    assert home.sends().complete
    address = entry_address(calendar, "uid-of-b-mill")
    body = calendar_server.ask("GET", address).text
    photograph = "ATTACH;VALUE=BINARY;ENCODING=BASE64;FMTTYPE=image/jpeg:" + "QUJD" * 100_000
    theirs = body.replace("SUMMARY:", f"{photograph}\r\nSUMMARY:Our ")
    calendar_server.ask("PUT", address, theirs, Content_Type="text/calendar").raise_for_status()
    for name in ("a-barn", "b-mill", "c-cave"):
        home.changes(name)
    sending = home.sends()
    assert (sending.arrived, sending.changed_there, sending.troubles) == (2, 1, ())
    kept = records.get(OnServer, "b-mill")
    assert kept is not None
    (changed,) = kept.value.changed_there
    assert len(changed.theirs) < LONGEST_ENTRY
    assert "Our b-mill" in changed.theirs
    assert "One file is attached" in text_in_words(changed.theirs)


def test_what_cannot_be_shown_is_left_alone() -> None:
    """A megabyte of words, or a megabyte that is no entry."""
    words = EVENT.replace(b"Mill", b"Mill " * 250_000).decode()
    with pytest.raises(CalendarServerTrouble, match="too large to be shown"):
        readable(words)
    for text in ("x" * 1_000_000, "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n", "BEGIN:VCALENDAR\r\nBEGIN:"):
        with pytest.raises(CalendarServerTrouble, match="not of a calendar server"):
            readable(text)
    assert readable(EVENT.decode()) == EVENT.decode()


def test_each_thing_that_came_of_a_press_is_told_as_what_it_is(
    records: Records, calendar_server: Running, new_calendar: Callable[[], str]
) -> None:
    """One moved, one called off, one taken off the list: three sentences, none for another."""
    home = Home(records, new_calendar(), calendar_server.address)
    assert home.sends().in_words() == "3 outings are on the calendar."
    home.changes("a-barn")
    kept = records.get(PlannedOuting, "b-mill")
    assert kept is not None
    records.save(kept.value.changed(NOW, status=PlanStatus.CANCELLED), NOW, kept.revision)
    records.remove(PlannedOuting, "c-cave", NOW, 1)
    sending = home.sends()
    assert (sending.arrived, sending.called_off, sending.removed) == (1, 1, 1)
    assert sending.in_words() == (
        "It is on the calendar. It is on the calendar as called off. It is off the calendar now."
    )


@pytest.mark.parametrize("status", [429, 503])
def test_a_server_that_wants_to_be_left_alone_is_asked_nothing_more(
    records: Records, calendar_server: Running, new_calendar: Callable[[], str], status: int
) -> None:
    """RFC 6585, section 4, and 9110, 15.6.4: the next question would fare the same."""
    path = new_calendar().removeprefix(calendar_server.address)
    with standing_before(calendar_server, {MILL: respond(status)}) as address:
        home = Home(records, address + path, address)
        sending = home.sends()
    assert sending.arrived == 0
    assert len(sending.troubles) == 1
    assert "wait some minutes" in sending.troubles[0]


@pytest.fixture
def records(tmp_path: Path) -> Records:
    """Fresh records."""
    return open_records(tmp_path, Which.FAMILY, NOW)
