"""The gate for phones: paired ones pass, all others see the pairing page and nothing else."""

from contextlib import suppress
from datetime import datetime
from urllib.parse import parse_qs

import anyio
from starlette.datastructures import Headers
from starlette.requests import HTTPConnection
from starlette.responses import HTMLResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from tripplan.app_server.answers import POLICY_VIOLATION, refuse, with_headers
from tripplan.app_server.pairing import CODE_DIGITS, Clock, Paired, Pairing, Phone, Refused
from tripplan.app_server.pairing_page import likely_name, pairing_page
from tripplan.app_server.requests import comes_from_elsewhere, host_name
from tripplan.app_server.visitor import mark

COOKIE = "__Host-tripplan-phone"
"""The prefix lets browsers take it over TLS only, for this host only (RFC 6265bis, 4.1.3.2)."""
PAIR_PATH = "/pair"
LONGEST_FORM = 1000
"""What is typed on the pairing page is much shorter [bytes]."""
NOT_HERE = "Phones are let in under the address that the computer shows."
OVER = "Phones are no longer let in. Turn it on again on the computer."
_STATUS = {
    Refused.NO_CODE: 403,
    Refused.CLOSED: 403,
    Refused.WRONG: 403,
    Refused.TOO_SOON: 429,
}


class PhoneGate:
    """ASGI app in front of the app, for the listener in the home network.

    Args:
        app: the app.
        pairing: the code, and who is paired.
        host: the address phones use, as it stands in a Host header without the port.
        until: when phones are no longer let in.
        clock: the present moment.
    """

    def __init__(self, app: ASGIApp, pairing: Pairing, host: str, until: datetime, clock: Clock) -> None:
        self._app = app
        self._pairing = pairing
        self._host = host
        self._until = until
        self._clock = clock
        self._windows: dict[str, set[anyio.CancelScope]] = {}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a paired phone's request on; answer any other with the pairing page."""
        headers = Headers(scope=scope)
        if host_name(headers) != self._host or comes_from_elsewhere(scope, headers):
            await refuse(scope, receive, send, NOT_HERE)
        elif self._clock() >= self._until:
            await refuse(scope, receive, send, OVER)
        elif (phone := self._phone(scope)) is not None:
            await self._pass(scope, receive, send, phone)
        elif scope["type"] == "websocket":
            await refuse(scope, receive, send, Refused.NO_CODE.value)
        else:
            answer = await self._pairing_answer(scope, receive, headers)
            await answer(scope, receive, with_headers(send))

    def cut(self, phone_id: str) -> None:
        """Close the open windows of a phone; to be called on the server's own thread."""
        for window in self._windows.pop(phone_id, set()):
            window.cancel()

    def _phone(self, scope: Scope) -> Phone | None:
        token = HTTPConnection(scope).cookies.get(COOKIE)
        return None if token is None else self._pairing.phone_of(token)

    async def _pass(self, scope: Scope, receive: Receive, send: Send, phone: Phone) -> None:
        marked = mark(scope, phone.id)
        if scope["type"] == "http":
            await self._app(marked, receive, _with_secure_cookies(send))
            return
        with anyio.CancelScope() as window:
            self._windows.setdefault(phone.id, set()).add(window)
            try:
                await self._app(_coming_back_only_to(phone, marked), receive, send)
            finally:
                self._windows.get(phone.id, set()).discard(window)
        if window.cancelled_caught:
            with suppress(RuntimeError, OSError):  # the phone may have gone already
                await send({"type": "websocket.close", "code": POLICY_VIOLATION})

    async def _pairing_answer(self, scope: Scope, receive: Receive, headers: Headers) -> Response:
        if (scope["method"], scope["path"]) == ("POST", PAIR_PATH):
            form = parse_qs((await _body(receive)).decode("utf-8", "replace"))
            typed, name = form.get("code", [""])[0], form.get("name", [""])[0]
            outcome = self._pairing.attempt(typed, name)
            if isinstance(outcome, Paired):
                return self._welcome(outcome)
            page = pairing_page(code="", name=name, told=outcome.value)
            return HTMLResponse(page, _STATUS[outcome], _NOT_KEPT)
        asked = parse_qs(scope["query_string"].decode("latin-1")).get("code", [""])[0]
        code = asked if len(asked) == CODE_DIGITS and asked.isascii() and asked.isdigit() else ""
        page = pairing_page(code=code, name=likely_name(headers.get("user-agent", "")))
        return HTMLResponse(page, 200 if scope["path"] == "/" else 403, _NOT_KEPT)

    def _welcome(self, paired: Paired) -> Response:
        answer = RedirectResponse("/", 303, _NOT_KEPT)
        seconds = max(0, round((self._until - self._clock()).total_seconds()))
        answer.set_cookie(
            COOKIE, paired.token, max_age=seconds, path="/", secure=True, httponly=True, samesite="strict"
        )
        return answer


def _with_secure_cookies(send: Send) -> Send:
    """The same way out, on which the cookies that Streamlit sets are for TLS only (RFC 6265, 4.1.2.5)."""

    async def sent(message: Message) -> None:
        if message["type"] == "http.response.start":
            message["headers"] = [
                (name, value + b"; Secure" if name == b"set-cookie" else value)
                for name, value in message["headers"]
            ]
        await send(message)

    return sent


_NOT_KEPT = {"cache-control": "no-store"}


async def _body(receive: Receive) -> bytes:
    """What a form holds, as far as it is looked at."""
    read = b""
    while len(read) < LONGEST_FORM:
        message = await receive()
        read += message.get("body", b"")
        if not message.get("more_body", False):
            break
    return read[:LONGEST_FORM]


def _coming_back_only_to(phone: Phone, scope: Scope) -> Scope:
    """The request for a websocket, without a window to come back to that this phone may not have.

    Streamlit's page sends its subprotocol, a token and the number of that window, in this order. A phone may
    have those it opened under its present access: an earlier one still holds what it may no longer see.
    """
    name = b"sec-websocket-protocol"

    def kept(value: bytes) -> bytes:
        parts = [part.strip() for part in value.decode("latin-1").split(",")]
        own = len(parts) < 3 or parts[2] in phone.sessions
        return value if own else ", ".join(parts[:2]).encode("latin-1")

    headers = [(key, kept(value) if key.lower() == name else value) for key, value in scope["headers"]]
    return {**scope, "headers": headers}
