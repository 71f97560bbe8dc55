"""Asks and tells one calendar server, over one connection; every trouble comes back in words.

The library looks for the calendars and signs in; what is written carries the state it was made from, so that
nobody's change is overwritten unseen (RFC 4791, 5.3; RFC 9110, 13.1).
"""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from types import TracebackType
from typing import Self
from urllib.parse import quote, urljoin

import icalendar
import requests
from caldav.collection import Calendar, Principal
from caldav.davclient import DAVClient
from caldav.lib.error import AuthorizationError, DAVError, NotFoundError
from lxml.etree import LxmlError
from requests.adapters import HTTPAdapter

from tripplan.calendar_server.addresses import checked, host_of, origin
from tripplan.calendar_server.passwords import WRONG_PASSWORD
from tripplan.errors import CalendarServerTrouble
from tripplan.version import __version__

TIMEOUT_SECONDS = 10
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
class Lying:
    """An entry as it lies on the server.

    Attributes:
        address: where.
        body: the calendar file.
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
            timeout=TIMEOUT_SECONDS,
            ssl_verify_cert=certificate or True,
            headers={"User-Agent": f"tripplan/{__version__}"},
        )
        self._gate = _OnlyThisServer(self.server)
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
        with self._in_words():
            try:
                found = self._found()
            except _NO_CALENDAR_SERVER:
                if self._gate.status == 401:
                    raise
                found = ()
            if not found:
                self._client.url = self._client.url.join(_WELL_KNOWN)
                found = self._found()
        if not found:
            raise CalendarServerTrouble("there is no calendar for this user on the server")
        return tuple(sorted(found, key=lambda one: (one.name.casefold(), one.address)))

    def _found(self) -> tuple[FoundCalendar, ...]:
        found = []
        for calendar in Principal(self._client).calendars():
            kinds = _kinds(calendar)
            if not kinds or "VEVENT" in kinds:
                address = urljoin(self.server, str(calendar.url))
                name = " ".join(str(calendar.name or "").split())[:200] or address
                found.append(FoundCalendar(address, name, "VTODO" in kinds))
        return tuple(found)

    def put(self, address: str, body: bytes, etag: str | None) -> Lying:
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

        Source: RFC 4791, sections 5.3.2 and 5.3.4.
        """
        condition = {"If-Match": etag} if etag else {"If-None-Match": "*"}
        # An entry that must be new may be refused because its UID is taken (5.3.2.1, no-uid-conflict), with
        # whatever status the server finds right.
        taken = {412} if etag else {400, 403, 409, 412}
        status, headers, _ = self._ask(address, "PUT", body, {"Content-Type": _CALENDAR, **condition}, taken)
        calendar, _, _ = address.rpartition("/")
        if status == 412 or (status in taken and self.find(calendar, body) is not None):
            raise ChangedMeanwhile
        self._expect(status, {200, 201, 204})
        if headers.get("ETag"):
            return Lying(address, body.decode(), headers["ETag"])
        lying = self.fetch(address)
        if lying is None:
            raise CalendarServerTrouble("the server took an entry and has it no longer")
        return lying

    def fetch(self, address: str) -> Lying | None:
        """An entry as it lies there; None where there is none."""
        status, headers, body = self._ask(address, "GET", b"", {}, {404, 410})
        if status in (404, 410):
            return None
        self._expect(status, {200})
        return Lying(address, body, headers.get("ETag", ""))

    def find(self, calendar: str, body: bytes) -> Lying | None:
        """The entry of a calendar with the same UID, wherever it lies; None where there is none.

        Source: RFC 4791, section 7.8.6 (a query by UID).
        """
        uid, is_task = _named(body)
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
        """
        status, _, _ = self._ask(address, "DELETE", b"", {"If-Match": etag} if etag else {}, {404, 410, 412})
        if status == 412:
            if self.fetch(address) is None:
                return  # Some servers answer so where nothing is left.
            raise ChangedMeanwhile
        self._expect(status, {200, 202, 204, 404, 410})

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

    def _expect(self, status: int, fine: set[int]) -> None:
        if status not in fine:
            raise CalendarServerTrouble(_STATUSES.get(status, f"the server answered with status {status}"))

    @contextmanager
    def _in_words(self) -> Iterator[None]:
        try:
            yield
        except AuthorizationError as trouble:
            if self._gate.status == 401:
                raise CalendarServerTrouble(WRONG_PASSWORD, stops=True) from trouble
            raise CalendarServerTrouble("this user may not do that on the server") from trouble
        except requests.exceptions.SSLError as trouble:
            raise CalendarServerTrouble(
                "its certificate is not trusted, so nothing was sent; if it is your own server's, name the "
                "file with its certificate",
                stops=True,
            ) from trouble
        except requests.exceptions.Timeout as trouble:
            raise CalendarServerTrouble(
                f"it did not answer within {TIMEOUT_SECONDS} seconds", stops=True
            ) from trouble
        except requests.exceptions.ConnectionError as trouble:
            raise CalendarServerTrouble(
                "it cannot be reached; is this computer online, and the address right?", stops=True
            ) from trouble
        except requests.exceptions.RequestException as trouble:
            raise CalendarServerTrouble("it gives no usable answer", stops=True) from trouble
        except NotImplementedError as trouble:
            raise CalendarServerTrouble(
                "it asks for a way of signing in that is not known here", stops=True
            ) from trouble
        except OSError as trouble:
            if isinstance(trouble, CalendarServerTrouble):
                raise
            raise CalendarServerTrouble(
                "the file with its certificate cannot be read", stops=True
            ) from trouble
        except _NO_CALENDAR_SERVER as odd:
            raise CalendarServerTrouble(
                "there is an answer, but not of a calendar server; is the address complete?"
            ) from odd


def _kinds(calendar: Calendar) -> set[str]:
    try:
        return {str(kind).upper() for kind in calendar.get_supported_components()}
    except (LookupError, TypeError):
        return set()  # A server need not tell (RFC 4791, 5.2.3); then all kinds are taken.


def _named(body: bytes) -> tuple[str, bool]:
    """The UID of an entry, and whether it is a task."""
    (entry,) = (one for one in icalendar.Calendar.from_ical(body).walk() if "UID" in one)
    return str(entry["UID"]), entry.name == "VTODO"


def entry_address(calendar: str, uid: str) -> str:
    """Where an entry of ours lies in a calendar."""
    return f"{calendar.rstrip('/')}/{quote(uid, safe='')}.ics"


_STATUSES = {
    404: "the calendar is no longer there",
    405: "the server takes no entries at this address",
    409: "the calendar is no longer there",
    413: "the entry is too large for the server",
    415: "the server does not take such entries",
    507: "the server has no room left",
}


class _OnlyThisServer(HTTPAdapter):
    """Lets requests through to one server alone, and remembers how it answered.

    Attributes:
        status: of the last answer; 0 before the first.
    """

    def __init__(self, server: str) -> None:
        super().__init__()
        self._origin = origin(server)
        self.status = 0

    def send(
        self,
        request: requests.PreparedRequest,
        stream: bool = False,
        timeout: float | tuple[float | None, float | None] | None = None,
        verify: bool | str = True,
        cert: str | tuple[str, str] | None = None,
        proxies: dict[str, str] | None = None,
    ) -> requests.Response:
        """As HTTPAdapter.send."""
        if origin(request.url or "") != self._origin:
            raise CalendarServerTrouble(
                f"it points to another server, {host_of(request.url or '')}, which was not asked; give that "
                "address if you trust it",
                stops=True,
            )
        response = super().send(request, stream, timeout, verify, cert, proxies)
        self.status = response.status_code
        if "html" in response.headers.get("Content-Type", ""):
            # The library would write the whole page into the log.
            response.headers["Content-Type"] = "text/plain"
        return response
