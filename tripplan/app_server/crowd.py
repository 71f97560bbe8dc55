"""Very many windows at once: a few are drawn at a time, and who comes when many wait is told so at once.

Each new window makes Streamlit compute a page in a thread. Two hundred such threads keep the server
from answering, until browsers give it up. A few at a time take no longer in all, and it stays awake.
"""

import asyncio
import os

from starlette.datastructures import Headers
from starlette.responses import HTMLResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send
from streamlit.proto.ForwardMsg_pb2 import ForwardMsg

AT_ONCE = 2 * (os.cpu_count() or 1)
"""So many first pages are computed at once; Python computes one at a time anyway."""
MOST_WAITING = 20
"""While so many windows have not got their first page, no further one is opened."""
SOON = 2.0
"""A window that has just connected asks for its page within this time [s]."""
LONGEST = 60.0
"""So long a first page may keep others waiting [s]."""
TRIES_AGAIN = 5
"""The busy page asks again after so long [s]."""
_SHORT = 100
"""The message that a page is complete is shorter [bytes]."""

BUSY = "tripplan is busy with other windows. This page tries again by itself; close windows you do not need."
_PAGE = f"""<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="refresh" content="{TRIES_AGAIN}">
<title>Busy</title>
<style>body {{ font: 1.25rem/1.4 system-ui, sans-serif; max-width: 34rem; margin: 3rem auto; }}</style>
</head>
<body><main><h1>One moment</h1><p>{BUSY}</p></main></body>
</html>
"""


class CrowdLimit:
    """ASGI middleware between the guards and Streamlit."""

    def __init__(self, app: ASGIApp) -> None:
        self._app = app
        self._drawing = asyncio.Semaphore(AT_ONCE)
        self._without_page = 0

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on; where many windows wait, tell a new one that it is busy here."""
        if self._without_page >= MOST_WAITING and _opens_a_window(scope):
            answer = HTMLResponse(_PAGE, 503, {"retry-after": str(TRIES_AGAIN), "cache-control": "no-store"})
            await answer(scope, receive, send)  # a websocket that is answered so does not open
        elif scope["type"] == "websocket":
            await _Window(self, self._app).run(scope, receive, send)
        else:
            await self._app(scope, receive, send)

    async def begin(self) -> None:
        """Wait for the turn to compute a first page."""
        await self._drawing.acquire()

    def end(self) -> None:
        """Let the next one compute."""
        self._drawing.release()

    def count(self, change: int) -> None:
        """One window more or less has no page yet."""
        self._without_page += change


def _opens_a_window(scope: Scope) -> bool:
    if scope["type"] == "websocket":
        return True
    return scope["type"] == "http" and "text/html" in Headers(scope=scope).get("accept", "")


class _Window:
    """One window, from its connection to its first page and on."""

    def __init__(self, crowd: CrowdLimit, app: ASGIApp) -> None:
        self._crowd = crowd
        self._app = app
        self._asked = False
        self._counted = False
        self._drawing = False

    async def run(self, scope: Scope, receive: Receive, send: Send) -> None:
        """The whole life of the window."""

        async def received() -> Message:
            message = await receive()
            if not self._asked and message["type"] == "websocket.receive":
                self._asked = True
                self._count(waits=True)
                await self._crowd.begin()
                self._drawing = True
                ending.append(loop.call_later(LONGEST, self._done))
            return message

        async def sent(message: Message) -> None:
            await send(message)
            if self._drawing and _completes_a_page(message):
                self._done()

        loop = asyncio.get_running_loop()
        self._count(waits=True)
        ending = [loop.call_later(SOON, self._is_idle)]
        try:
            await self._app(scope, received, sent)
        finally:
            for timer in ending:
                timer.cancel()
            self._done()

    def _count(self, *, waits: bool) -> None:
        if waits != self._counted:
            self._counted = waits
            self._crowd.count(1 if waits else -1)

    def _is_idle(self) -> None:
        if not self._asked:
            self._count(waits=False)

    def _done(self) -> None:
        self._count(waits=False)
        if self._drawing:
            self._drawing = False
            self._crowd.end()


def _completes_a_page(message: Message) -> bool:
    payload = message.get("bytes") or b""
    if not 0 < len(payload) < _SHORT:
        return False
    return bool(ForwardMsg.FromString(payload).WhichOneof("type") == "script_finished")
