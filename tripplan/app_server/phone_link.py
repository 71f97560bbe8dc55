"""Letting phones in: a second listener of the same server, under TLS, for the hours of one day."""

import asyncio
import io
import os
import socket
from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager, contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from ipaddress import IPv4Address

import segno
import uvicorn
from starlette.types import ASGIApp

from tripplan.app_server.certificate import make_certificate
from tripplan.app_server.home_network import FOUND, PHONES_VARIABLE, home_address
from tripplan.app_server.pairing import Access, Clock, Code, Pairing
from tripplan.app_server.phone_gate import PhoneGate
from tripplan.errors import PlanError

USUAL_PORT = 8443
NIGHT_ENDS = time(4)
"""Phones are let in until then: an evening out can end after midnight."""
LOOKS_AT_THE_CLOCK = 20.0
"""How often it is looked whether the day is over [s]; a computer that slept finds out soon after."""
PATIENCE = 10.0
"""How long a press waits for the server [s]."""


@dataclass(frozen=True)
class Listening:
    """Where phones are let in.

    Attributes:
        address: of this computer in the home network.
        port: on which it listens.
        fingerprint: of its certificate, as browsers show it.
        until: when it ends by itself.
    """

    address: IPv4Address
    port: int
    fingerprint: str
    until: datetime

    @property
    def url(self) -> str:
        """What a phone opens."""
        return f"https://{self.address}:{self.port}/"

    def with_code(self, code: Code) -> str:
        """What a phone opens so that it need not type the code."""
        return f"{self.url}?code={code.digits}"


class _Listener(uvicorn.Server):
    """A server beside another one in the same process, which is the one that hears signals."""

    @contextmanager
    def capture_signals(self) -> Iterator[None]:
        """Leave signals alone."""
        yield


class PhoneLink:
    """Turns the listener for phones on and off. One for the process; `lifespan` ties it to the app's server.

    Everything but `lifespan` may be called from any thread but the server's own.
    """

    def __init__(self, clock: Clock) -> None:
        self.pairing = Pairing(clock)
        self._clock = clock
        self._app: ASGIApp | None = None
        self._loop: asyncio.AbstractEventLoop | None = None
        self._listening: Listening | None = None
        self._gate: PhoneGate | None = None
        self._listener: _Listener | None = None
        self._tasks: list[asyncio.Task[None]] = []
        self._changing = asyncio.Lock()

    @asynccontextmanager
    async def lifespan(self, app: ASGIApp) -> AsyncIterator[None]:
        """From the start of the app's server to its end."""
        self._app, self._loop = app, asyncio.get_running_loop()
        asked = os.environ.get(PHONES_VARIABLE, "")
        if asked:
            told = await self._let_in_from_the_start(app, asked)
            print(told, flush=True)  # noqa: T201 - said in the terminal
        try:
            yield
        finally:
            await self._close()
            self._app = self._loop = None

    @property
    def listening(self) -> Listening | None:
        """Where phones are let in; None where they are not."""
        return self._listening

    def turn_on(self, address: IPv4Address) -> Listening:
        """Let phones in until the night ends; where they are let in already, nothing changes.

        Raises:
            PlanError: this computer has no such address, or the app's server does not run.
        """
        app, loop = self._running()
        return asyncio.run_coroutine_threadsafe(self._listen_once(app, address), loop).result(PATIENCE)

    def turn_off(self) -> None:
        """Let no phone in any more, close their windows and forget them."""
        _, loop = self._running()
        asyncio.run_coroutine_threadsafe(self._close(), loop).result(PATIENCE)

    def let_see(self, phone_id: str, access: Access) -> None:
        """Change what a phone sees; its open windows start anew."""
        self.pairing.let_see(phone_id, access)
        self._cut(phone_id)

    def remove(self, phone_id: str) -> None:
        """Take a phone off the list and close its windows."""
        self.pairing.remove(phone_id)
        self._cut(phone_id)

    def _cut(self, phone_id: str) -> None:
        if self._loop is not None and self._gate is not None:
            self._loop.call_soon_threadsafe(self._gate.cut, phone_id)

    def _running(self) -> tuple[ASGIApp, asyncio.AbstractEventLoop]:
        if self._app is None or self._loop is None:
            raise PlanError(
                "phones are let in only while the app runs with its guards (streamlit run app.py)"
            )
        return self._app, self._loop

    async def _let_in_from_the_start(self, app: ASGIApp, asked: str) -> str:
        """What the terminal says then: how a phone gets in, or why none does."""
        try:
            listening = await self._listen_once(app, home_address() if asked == FOUND else IPv4Address(asked))
        except (PlanError, ValueError) as trouble:
            return f"  No phone is let in: {trouble}\n"
        code = self.pairing.new_code(Access.ON_THE_DAY)
        picture = io.StringIO()
        segno.make(listening.with_code(code), error="m").terminal(picture, compact=True)
        return (
            f"{picture.getvalue()}\n  Scan this with the phone, or open {listening.url} there and "
            f"type {code.digits}\n  within five minutes. The page Phones gives further codes.\n"
            f"  SHA-256 fingerprint of the certificate: {listening.fingerprint}\n"
        )

    async def _listen_once(self, app: ASGIApp, address: IPv4Address) -> Listening:
        async with self._changing:  # two windows may press at once
            if self._listening is None:
                self._listening = await self._listen(app, address)
            return self._listening

    async def _listen(self, app: ASGIApp, address: IPv4Address) -> Listening:
        bound = _bound(address)
        now = self._clock()
        until = end_of_day(now)
        certificate = make_certificate(address, now, until)
        gate = PhoneGate(app, self.pairing, str(address), until, self._clock)
        listener = _Listener(
            uvicorn.Config(
                gate,
                ssl_context_factory=lambda _config, _default: certificate.context(),
                ws="websockets-sansio",
                lifespan="off",
                access_log=False,
                log_config=None,
                server_header=False,
                timeout_graceful_shutdown=2,
            )
        )
        serving = asyncio.create_task(listener.serve([bound]), name="phones")
        while not listener.started and not serving.done():
            await asyncio.sleep(0.01)
        self._tasks = [serving, asyncio.create_task(self._close_at(until), name="phones-end")]
        self._listener, self._gate = listener, gate
        return Listening(address, bound.getsockname()[1], certificate.fingerprint, until)

    async def _close_at(self, until: datetime) -> None:
        while self._clock() < until:
            await asyncio.sleep(LOOKS_AT_THE_CLOCK)
        await self._close()

    async def _close(self) -> None:
        phones = self.pairing.phones
        self.pairing.close()
        gate, listener, tasks = self._gate, self._listener, self._tasks
        self._listening, self._gate, self._listener, self._tasks = None, None, None, []
        if gate is None or listener is None:
            return
        for phone in phones:
            gate.cut(phone.id)
        listener.should_exit = True
        serving, watch = tasks
        if watch is not asyncio.current_task():
            watch.cancel()
        await serving


def end_of_day(now: datetime) -> datetime:
    """The first end of a night after a moment, by this computer's clock."""
    local = now.astimezone()
    day = local.date() if local.time() < NIGHT_ENDS else local.date() + timedelta(days=1)
    return datetime.combine(day, NIGHT_ENDS).astimezone()


def _bound(address: IPv4Address) -> socket.socket:
    """A socket that listens under an address of this computer, on the usual port or any free one."""
    bound = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    try:
        try:
            bound.bind((str(address), USUAL_PORT))
        except OSError:
            bound.bind((str(address), 0))
        bound.listen()
        bound.setblocking(False)
    except OSError as trouble:
        bound.close()
        raise PlanError(f"this computer has no address {address}: {trouble.strerror}") from trouble
    return bound


def _now() -> datetime:
    return datetime.now(UTC)


phone_link = PhoneLink(_now)
"""The one of this process, which the app's server and its pages share."""
