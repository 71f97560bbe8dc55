"""Requests to one server and nobody else, each with an end: in time, in size, and told in words."""

import io
import socket
import threading
import time
from contextlib import suppress

import requests
from requests.adapters import HTTPAdapter
from urllib3.connection import HTTPConnection, HTTPSConnection
from urllib3.connectionpool import HTTPConnectionPool, HTTPSConnectionPool
from urllib3.exceptions import HTTPError, ProtocolError, ReadTimeoutError

from tripplan.calendar_server.addresses import host_of, origin
from tripplan.errors import CalendarServerTrouble

ANSWER_SECONDS = 10.0
"""One answer is waited for no longer, however slowly its bytes come."""
WHOLE_SECONDS = 60.0
"""All that one press asks takes no longer."""
MOST_BYTES = 10_000_000
"""An answer is read no further; an entry with a photograph has less [bytes]."""
_CHUNK = 65_536
_LONGEST_HOST = 80
"""Of a host that is named in a sentence [characters]; a host name has at most 253 (RFC 1035, 2.3.4)."""


class BoundedAdapter(HTTPAdapter):
    """Lets requests through to one server alone, reads answers up to a size and waits up to a time.

    Attributes:
        status: of the last answer; 0 before the first.
    """

    def __init__(self, server: str, most_bytes: int | None = None) -> None:
        self._lines: list[HTTPConnection] = []
        super().__init__()
        self._origin = origin(server)
        self._most_bytes = most_bytes
        self._until = time.monotonic() + WHOLE_SECONDS
        self._unanswered = 0
        self._stopped: CalendarServerTrouble | None = None
        self.status = 0

    def init_poolmanager(
        self, connections: int, maxsize: int, block: bool = False, **pool_kwargs: object
    ) -> None:
        """As HTTPAdapter.init_poolmanager; every line that is opened is known, so that it can be cut."""
        super().init_poolmanager(connections, maxsize, block, **pool_kwargs)
        lines = self._lines

        class Plain(HTTPConnection):
            def connect(self) -> None:
                super().connect()
                lines.append(self)

        class Encrypted(HTTPSConnection):
            def connect(self) -> None:
                super().connect()
                lines.append(self)

        class PlainPool(HTTPConnectionPool):
            ConnectionCls = Plain

        class EncryptedPool(HTTPSConnectionPool):
            ConnectionCls = Encrypted

        self.poolmanager.pool_classes_by_scheme = {"http": PlainPool, "https": EncryptedPool}

    def send(
        self,
        request: requests.PreparedRequest,
        stream: bool = False,  # noqa: ARG002 - an answer is always read here, to its end or its limit
        timeout: float | tuple[float | None, float | None] | None = None,  # noqa: ARG002 - likewise
        verify: bool | str = True,
        cert: str | tuple[str, str] | None = None,
        proxies: dict[str, str] | None = None,  # noqa: ARG002 - no proxy has a say
    ) -> requests.Response:
        """As HTTPAdapter.send.

        Raises:
            CalendarServerTrouble: there is no answer in time, or none that can be read. Once nothing more is
                to be expected, every further request is refused with the same words.
        """
        if self._stopped is not None:
            raise self._stopped
        try:
            return self._answer(request, verify, cert)
        except CalendarServerTrouble as trouble:
            if trouble.stops:
                self._stopped = trouble
            raise

    def _answer(
        self,
        request: requests.PreparedRequest,
        verify: bool | str,
        cert: str | tuple[str, str] | None,
    ) -> requests.Response:
        address = request.url or ""
        if origin(address) != self._origin:
            raise CalendarServerTrouble(
                f"it points to another server, {_short(host_of(address))}, which was not asked; give that "
                "address if you trust it",
                stops=True,
            )
        seconds = min(ANSWER_SECONDS, self._until - time.monotonic())
        if seconds <= 0:
            raise self._slow()
        too_late = threading.Event()
        # A library's timeout begins anew with every byte; only a line that is cut keeps a deadline.
        watch = threading.Timer(seconds, self._hang_up, (too_late,))
        watch.daemon = True
        watch.start()
        try:
            response = super().send(request, True, seconds, verify, cert, None)
            self.status = response.status_code
            body = _read(response, self._most_bytes or MOST_BYTES)
        except CalendarServerTrouble:
            raise
        except Exception as trouble:
            if too_late.is_set() or isinstance(trouble, requests.exceptions.Timeout | ReadTimeoutError):
                raise self._slow() from trouble
            if (said := _in_words(trouble)) is None:
                raise
            raise said from trouble
        finally:
            watch.cancel()
            watch.join()  # a cut that has begun is over before the next line is opened
        if too_late.is_set():
            raise self._slow()
        self._unanswered = 0
        response.raw = io.BytesIO(body)
        if "html" in response.headers.get("Content-Type", ""):
            # The library would write the whole page into the log.
            response.headers["Content-Type"] = "text/plain"
        return response

    def _hang_up(self, too_late: threading.Event) -> None:
        too_late.set()
        for line in self._lines:
            with suppress(OSError, AttributeError):  # it is closed already
                line.sock.shutdown(socket.SHUT_RDWR)

    def _slow(self) -> CalendarServerTrouble:
        """One answer that does not come may be one entry's own trouble; two in a row are the server's."""
        if time.monotonic() >= self._until:
            said = f"it took longer than {WHOLE_SECONDS:.0f} seconds in all"
            return CalendarServerTrouble(said, stops=True)
        self._unanswered += 1
        said = f"it did not answer within {ANSWER_SECONDS:.0f} seconds"
        return CalendarServerTrouble(said, stops=self._unanswered > 1)


def _read(response: requests.Response, most_bytes: int) -> bytes:
    parts, size = [], 0
    for part in response.raw.stream(_CHUNK, decode_content=True):
        size += len(part)
        if size > most_bytes:
            response.close()
            most = f"{most_bytes / 1_000_000:.0f} MB"
            raise CalendarServerTrouble(f"its answer has more than {most}, so it was not read to the end")
        parts.append(part)
    return b"".join(parts)


def _in_words(trouble: Exception) -> CalendarServerTrouble | None:
    """What the library met, for the parent; None where it is a mistake of ours."""
    if isinstance(trouble, requests.exceptions.SSLError):
        return CalendarServerTrouble(
            "its certificate is not trusted, so nothing was sent; if it is your own server's, name the file "
            "with its certificate",
            stops=True,
        )
    cause = trouble.args[0] if trouble.args else None
    if isinstance(trouble, HTTPError) or isinstance(cause, ProtocolError):
        return CalendarServerTrouble("its answer broke off or is none of a web server")
    if isinstance(trouble, requests.exceptions.ConnectionError):
        return CalendarServerTrouble(
            "it cannot be reached; see that this computer is online and the address right", stops=True
        )
    if isinstance(trouble, requests.exceptions.RequestException):
        return CalendarServerTrouble("it gives no usable answer")
    if isinstance(trouble, OSError):
        return CalendarServerTrouble("the file with its certificate cannot be read", stops=True)
    return None


def _short(host: str) -> str:
    return host if len(host) <= _LONGEST_HOST else f"{host[:_LONGEST_HOST]}…"
