"""Very many windows at once, against an app that only counts them."""

import asyncio
from collections.abc import Awaitable, Callable
from concurrent.futures import ThreadPoolExecutor

import pytest
from starlette.types import Message, Receive, Scope, Send
from streamlit.proto.ForwardMsg_pb2 import ForwardMsg

from tripplan.app_server import crowd
from tripplan.app_server.crowd import AT_ONCE, BUSY, MOST_WAITING, CrowdLimit

COMPLETE = ForwardMsg(script_finished=ForwardMsg.FINISHED_SUCCESSFULLY).SerializeToString()
WEBSOCKET: Scope = {"type": "websocket", "headers": []}
PAGE: Scope = {"type": "http", "headers": [(b"accept", b"text/html,*/*")], "method": "GET", "path": "/"}
SCRIPT: Scope = {"type": "http", "headers": [(b"accept", b"*/*")], "method": "GET", "path": "/static/a.js"}

OPEN: list[asyncio.Task[None]] = []
"""Visits that go on: a task that nobody holds may be collected, as if its window had been closed."""


class Pages:
    """An app that computes pages when it is let, and knows how many at once."""

    def __init__(self) -> None:
        self.may_finish = asyncio.Event()
        self.computing, self.most, self.finished = 0, 0, 0

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer files at once, and windows as Streamlit does."""
        if scope["type"] == "http":
            await send({"type": "http.response.start", "status": 200, "headers": []})
            return
        await send({"type": "websocket.accept"})
        if (await receive())["type"] == "websocket.disconnect":
            return
        self.computing += 1
        self.most = max(self.most, self.computing)
        await self.may_finish.wait()
        self.computing -= 1
        await send({"type": "websocket.send", "bytes": b"x" * 500})
        await send({"type": "websocket.send", "bytes": COMPLETE})
        self.finished += 1
        await asyncio.Event().wait()  # the window stays open


async def visit(
    limit: CrowdLimit, scope: Scope, *, asks: bool = True
) -> tuple[list[Message], asyncio.Task[None]]:
    """Open a window or load a page; what came back so far, and the visit, which goes on."""
    came: list[Message] = []
    asked = iter([{"type": "websocket.receive"}] if asks else [])

    async def receive() -> Message:
        for message in asked:
            return message
        await asyncio.Event().wait()
        raise AssertionError

    async def send(message: Message) -> None:
        came.append(message)

    going = asyncio.create_task(limit(scope, receive, send))
    OPEN.append(going)
    await asyncio.sleep(0)
    return came, going


def told(came: list[Message]) -> str:
    """All that was answered by HTTP."""
    return b"".join(message.get("body", b"") for message in came).decode()


def in_a_loop(test: Callable[[], Awaitable[None]]) -> None:
    """Run a test that is a coroutine, with its windows closed after it."""

    async def whole() -> None:
        await test()
        for task in OPEN:
            task.cancel()
        await asyncio.gather(*OPEN, return_exceptions=True)
        OPEN.clear()

    # In a thread of its own: a browser that other tests share keeps a loop running in this one.
    with ThreadPoolExecutor(max_workers=1) as thread:
        thread.submit(asyncio.run, whole()).result()


def test_a_few_pages_are_computed_at_a_time_and_the_rest_is_told() -> None:
    """Of 200 windows the first are computed a few at a time; all others hear at once that it is busy."""

    async def test() -> None:
        pages = Pages()
        limit = CrowdLimit(pages)
        visits = [(await visit(limit, WEBSOCKET))[0] for _ in range(200)]
        await asyncio.sleep(0.01)
        assert pages.most == AT_ONCE
        refused = [came for came in visits if came[0]["type"] == "websocket.http.response.start"]
        assert len(refused) == 200 - MOST_WAITING
        assert {came[0]["status"] for came in refused} == {503}
        assert all(BUSY in told(came) for came in refused)
        page, _ = await visit(limit, PAGE)
        assert page[0]["status"] == 503
        assert BUSY in told(page)
        script, _ = await visit(limit, SCRIPT)
        assert script[0]["status"] == 200
        pages.may_finish.set()
        await asyncio.sleep(0.05)
        assert pages.finished == MOST_WAITING
        assert pages.most == AT_ONCE
        page, _ = await visit(limit, PAGE)
        assert page[0]["status"] == 200, "whoever comes later is let in, though the others stay open"

    in_a_loop(test)


def test_windows_that_ask_for_nothing_keep_nobody_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """A window that connects and stays silent counts for a moment, one that is never complete for a while."""
    monkeypatch.setattr(crowd, "SOON", 0.5)
    monkeypatch.setattr(crowd, "LONGEST", 0.6)

    async def test() -> None:
        limit = CrowdLimit(Pages())  # they never finish
        for _ in range(MOST_WAITING):
            await visit(limit, WEBSOCKET, asks=False)
        assert (await visit(limit, PAGE))[0][0]["status"] == 503
        await asyncio.sleep(0.6)
        assert (await visit(limit, PAGE))[0][0]["status"] == 200
        for _ in range(AT_ONCE):
            await visit(limit, WEBSOCKET)
        await asyncio.sleep(0.8)
        came, _ = await visit(limit, WEBSOCKET)
        assert came[0]["type"] == "websocket.accept"

    in_a_loop(test)


def test_a_closed_window_makes_room() -> None:
    """Windows that go before their page is complete are not counted any longer, waiting ones included."""

    async def test() -> None:
        pages = Pages()
        limit = CrowdLimit(pages)
        visits = [(await visit(limit, WEBSOCKET))[1] for _ in range(MOST_WAITING)]
        await asyncio.sleep(0.01)
        for going in visits:
            going.cancel()
        await asyncio.sleep(0.01)
        pages.may_finish.set()
        for _ in range(MOST_WAITING):
            await visit(limit, WEBSOCKET)
        await asyncio.sleep(0.05)
        assert pages.finished == MOST_WAITING

    in_a_loop(test)
