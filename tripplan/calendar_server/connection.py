"""Asks and tells one calendar server, over one connection; every trouble comes back in words.

The library looks for the calendars and signs in; what is written carries the state it was made from, so that
nobody's change is overwritten unseen (RFC 4791, 5.3; RFC 9110, 13.1). Nothing counts as written or removed
but what the server says in so many words, or shows when it is asked.
"""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from types import TracebackType
from typing import Self
from urllib.parse import quote, urljoin

import requests
from caldav.collection import Calendar, Principal
from caldav.davclient import DAVClient
from caldav.lib.error import AuthorizationError, DAVError, NotFoundError
from lxml.etree import LxmlError

from tripplan.calendar_server.addresses import checked
from tripplan.calendar_server.entries import NO_CALENDAR_SERVER, named, readable, shows
from tripplan.calendar_server.passwords import WRONG_PASSWORD
from tripplan.calendar_server.transport import BoundedAdapter
from tripplan.documents.calendars.server_calendar import LONGEST_ETAG
from tripplan.errors import CalendarServerTrouble
from tripplan.version import __version__

_WELL_KNOWN = "/.well-known/caldav"
"""Where a server may tell where its calendars are. Source: RFC 6764, section 5."""
_CALENDAR = "text/calendar; charset=utf-8"
_NO_CALENDAR_SERVER = (
    DAVError,
    LxmlError,
    AttributeError,
    LookupError,
    TypeError,
    AssertionError,
    ValueError,
)
"""What the library raises over an answer that is none of a calendar server's."""


@dataclass(frozen=True)
class FoundCalendar:
    """A calendar that the user may see.

    Attributes:
        address: where it is.
        name: what the server calls it.
        takes_tasks: whether tasks can lie in it beside entries.
    """

    address: str
    name: str
    takes_tasks: bool


@dataclass(frozen=True)
class ServerEntry:
    """An entry as it lies on the server.

    Attributes:
        address: where.
        body: the calendar file, without files attached to it.
        etag: what the server calls this state of it.
    """

    address: str
    body: str
    etag: str


class ChangedMeanwhile(Exception):
    """The server has another state than the one that was to be written over."""


class Connection:
    """One session with one server; nothing is sent before something is asked, and to nobody else."""

    def __init__(
        self, server: str, user: str, password: str, *, plain_http: bool = False, certificate: str = ""
    ) -> None:
        self.server = checked(server, plain_http=plain_http)
        self._client = DAVClient(
            self.server,
            username=user,
            password=password,
            ssl_verify_cert=certificate or True,
            # A server that packs its answers may call the states of entries by weak names, which no
            # condition matches (RFC 9110, 8.8.3.3 and 13.1.1).
            headers={"User-Agent": f"tripplan/{__version__}", "Accept-Encoding": "identity"},
        )
        self._gate = BoundedAdapter(self.server)
        session: requests.Session = self._client.session
        session.trust_env = False  # No proxy and no password file of the system's has a say.
        session.max_redirects = 3
        for scheme in ("https://", "http://"):
            session.mount(scheme, self._gate)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._client.close()

    def calendars(self) -> tuple[FoundCalendar, ...]:
        """The calendars that take entries, by name.

        Raises:
            CalendarServerTrouble: there is no answer, or none of a calendar server.

        Source: RFC 4791, sections 6.2.1 (calendar-home-set) and 5.2.3 (supported-calendar-component-set).
        """
        found: tuple[FoundCalendar, ...] = ()
        met: CalendarServerTrouble | None = None
        try:
            found = self._found()
        except CalendarServerTrouble as trouble:
            if trouble.stops:
                raise
            met = trouble
        if not found:
            self._client.url = self._client.url.join(_WELL_KNOWN)
            try:
                found, met = self._found(), None
            except CalendarServerTrouble as trouble:
                if met is not None:  # else the address was right, and held nothing
                    raise trouble if str(met) == NO_CALENDAR_SERVER else met from None
        if not found:
            raise CalendarServerTrouble("there is no calendar for this user that takes entries")
        return tuple(sorted(found, key=lambda one: (one.name.casefold(), one.address)))

    def _found(self) -> tuple[FoundCalendar, ...]:
        found = []
        with self._in_words():
            for calendar in Principal(self._client).calendars():
                kinds = _kinds(calendar)
                if not kinds or "VEVENT" in kinds:
                    address = urljoin(self.server, str(calendar.url))
                    name = " ".join(str(calendar.name or "").split())[:200] or address
                    found.append(FoundCalendar(address, name, "VTODO" in kinds))
        return tuple(found)

    def put(self, address: str, body: bytes, etag: str | None) -> ServerEntry:
        """Write an entry.

        Args:
            address: where it is to lie.
            body: the calendar file.
            etag: the state that it takes the place of; None or nothing for an entry that must be new.

        Returns:
            The entry as it lies there now.

        Raises:
            ChangedMeanwhile: there is another state, or something where nothing should be, or the same UID
                lies elsewhere in the calendar.
            CalendarServerTrouble: it could not be written.

        Source: RFC 4791, sections 5.3.2 (201 and 204) and 5.3.4 (without an ETag, what lies there may differ
        from what was sent, and is fetched); RFC 9110, section 9.3.4 (201 for a new state, 200 or 204 for a
        changed one). A 200 is no sign of a calendar server: pages of a network that wants to be signed in to
        answer so to everything.
        """
        condition = {"If-Match": etag} if etag else {"If-None-Match": "*"}
        # An entry that must be new may be refused because its UID is taken (4791, 5.3.2.1, no-uid-conflict),
        # with whatever status the server finds right.
        taken = {412} if etag else {400, 403, 409, 412}
        status, headers, _ = self._ask(address, "PUT", body, {"Content-Type": _CALENDAR, **condition}, taken)
        calendar, _, _ = address.rpartition("/")
        if status == 412 or (status in taken and self.find(calendar, body) is not None):
            raise ChangedMeanwhile
        text = body.decode()
        if status in (201, 204) and (state := _etag(headers)):
            return ServerEntry(address, text, state)
        self._expect(status, _DONE)
        lying = self.fetch(address)
        if lying is None or not shows(lying.body, text):
            raise CalendarServerTrouble("the server took an entry and does not show it")
        return lying

    def fetch(self, address: str) -> ServerEntry | None:
        """An entry as it lies there; None where there is none.

        Raises:
            CalendarServerTrouble: there is no answer, or something that is no entry.

        Source: RFC 9110, sections 9.3.1 (GET), 15.5.5 (404) and 15.5.11 (410).
        """
        status, headers, body = self._ask(address, "GET", b"", {}, {404, 410})
        if status in (404, 410):
            return None
        self._expect(status, {200})
        return ServerEntry(address, readable(body), _etag(headers))

    def find(self, calendar: str, body: bytes) -> ServerEntry | None:
        """The entry of a calendar with the same UID, wherever it lies; None where there is none.

        Source: RFC 4791, section 7.8.6 (a query by UID).
        """
        uid, is_task = named(body)
        with self._in_words():
            held = Calendar(self._client, url=f"{calendar.rstrip('/')}/")
            try:
                found = held.todo_by_uid(uid) if is_task else held.event_by_uid(uid)
            except NotFoundError:
                return None
            return self.fetch(urljoin(self.server, str(found.url)))

    def delete(self, address: str, etag: str) -> None:
        """Remove an entry; one that is gone already is fine.

        Args:
            address: where it lies.
            etag: the state that is to be removed.

        Raises:
            ChangedMeanwhile: there is another state.
            CalendarServerTrouble: it could not be removed.

        Source: RFC 9110, sections 9.3.5 (204 where it is done, 202 where it will be, 200 with a page), 13.1.1
        (If-Match) and 15.5.13 (412).
        """
        status, _, _ = self._ask(address, "DELETE", b"", {"If-Match": etag} if etag else {}, {404, 410, 412})
        if status in (204, 404, 410):
            return
        if status != 412:
            self._expect(status, _DONE)
        if self.fetch(address) is None:
            return  # Some servers answer 412 where nothing is left.
        if status == 412:
            raise ChangedMeanwhile
        raise CalendarServerTrouble("the server has not removed it, though it did not refuse")

    def _ask(
        self, address: str, method: str, body: bytes, headers: dict[str, str], meant: set[int]
    ) -> tuple[int, Mapping[str, str], str]:
        """One request; a refusal is trouble unless its status is one of those meant."""
        with self._in_words():
            try:
                response = self._client.request(address, method, body, headers)  # type: ignore[arg-type]
            except AuthorizationError:
                if self._gate.status in meant:
                    return self._gate.status, {}, ""
                raise
            return response.status, response.headers, response.raw

    def _expect(self, status: int, fine: frozenset[int] | set[int]) -> None:
        if status not in fine:
            raise _refusal(status)

    @contextmanager
    def _in_words(self) -> Iterator[None]:
        try:
            yield
        except AuthorizationError as trouble:
            raise _refusal(401 if self._gate.status == 401 else 403) from trouble
        except NotImplementedError as trouble:
            raise CalendarServerTrouble(
                "it asks for a way of signing in that is not known here", stops=True
            ) from trouble
        except requests.exceptions.RequestException as trouble:
            raise CalendarServerTrouble(
                "it sends the question somewhere else, and on from there"
            ) from trouble
        except _NO_CALENDAR_SERVER as odd:
            status = self._gate.status
            known = status in (401, 403, 429) or status >= 500
            raise (_refusal(status) if known else CalendarServerTrouble(NO_CALENDAR_SERVER)) from odd


def _refusal(status: int) -> CalendarServerTrouble:
    """Why a server has not done what it was asked, by its status.

    Source: RFC 9110, section 15; RFC 4918, sections 9.7.1 (409 where the collection is missing) and 11.5
    (507); RFC 6585, section 4 (429).
    """
    if status >= 500 and status not in _STATUSES:
        return CalendarServerTrouble(f"the server has a fault of its own (status {status})")
    said = _STATUSES.get(status, f"the server answered with status {status}")
    return CalendarServerTrouble(said, stops=status in _FOR_ALL)


def _etag(headers: Mapping[str, str]) -> str:
    """The name of a state; empty where there is none, or one that no request could carry."""
    state = headers.get("ETag", "").strip()
    return state if len(state) <= LONGEST_ETAG else ""


def _kinds(calendar: Calendar) -> set[str]:
    try:
        return {str(kind).upper() for kind in calendar.get_supported_components()}
    except (LookupError, TypeError):
        return set()  # A server need not tell (RFC 4791, 5.2.3); then all kinds are taken.


def entry_address(calendar: str, uid: str) -> str:
    """Where an entry of ours lies in a calendar."""
    return f"{calendar.rstrip('/')}/{quote(uid, safe='')}.ics"


_DONE = frozenset({200, 201, 202, 204})
"""Statuses of a request that was not refused (RFC 9110, 15.3)."""
_STATUSES = {
    401: WRONG_PASSWORD,
    403: "this user may not do that on the server",
    404: "the calendar is no longer there",
    405: "the server takes no entries at this address",
    409: "the calendar is no longer there",
    413: "the entry is too large for the server",
    415: "the server does not take such entries",
    429: "the server asks not to be asked so often; wait some minutes",
    503: "the server is not ready at the moment; wait some minutes",
    507: "the server has no room left",
}
_FOR_ALL = frozenset({401, 429, 503})
"""Answers that the next question would get too."""
