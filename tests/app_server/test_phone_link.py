"""How long phones are let in, by a clock that the test turns."""

import asyncio
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta
from ipaddress import IPv4Address

import pytest
from starlette.responses import PlainTextResponse

from tests.app_server.asking import ask
from tests.app_server.home_network import ELSEWHERE_ON_LOOPBACK
from tests.app_server.test_pairing import Clock, paired
from tripplan.app_server import phone_link
from tripplan.app_server.phone_link import PhoneLink, end_of_day

APP = PlainTextResponse("reached")


def at(hour: int, minute: int = 0, day: int = 3) -> datetime:
    """A moment of December 2026 by this computer's clock."""
    return datetime(2026, 12, day, hour, minute).astimezone()


def is_open(url: str) -> bool:
    """Whether anybody listens there."""
    try:
        ask(url)
    except ConnectionRefusedError:
        return False
    return True


@pytest.mark.parametrize(
    ("now", "end"),
    [
        (at(9), at(4, day=4)),
        (at(23, 59), at(4, day=4)),
        (at(0, 30, day=4), at(4, day=4)),  # an evening out that is not over yet
        (at(3, 59, day=4), at(4, day=4)),
        (at(4, 0, day=4), at(4, day=5)),
    ],
)
def test_a_day_ends_at_four_in_the_night(now: datetime, end: datetime) -> None:
    """Whoever is out past midnight keeps the phone's page; the next night ends it."""
    assert end_of_day(now) == end


def test_at_four_in_the_night_nobody_is_let_in_any_more(monkeypatch: pytest.MonkeyPatch) -> None:
    """Until then an unpaired phone gets the pairing page; then the port closes, and the list is empty."""
    monkeypatch.setattr(phone_link, "LOOKS_AT_THE_CLOCK", 0.01)
    clock = Clock()
    clock.now = at(3, 59, day=4).astimezone(UTC)
    link = PhoneLink(clock)

    async def over_the_end() -> None:
        async with link.lifespan(APP):
            listening = await asyncio.to_thread(link.turn_on, IPv4Address(ELSEWHERE_ON_LOOPBACK))
            assert listening.until == at(4, day=4)
            paired(link.pairing)
            url = listening.url.rstrip("/")
            before = await asyncio.to_thread(ask, url)
            assert (before.status, b"Pair this phone" in before.body) == (200, True)
            clock.turn(timedelta(minutes=1).total_seconds())
            async with asyncio.timeout(20):
                while link.listening is not None:
                    await asyncio.sleep(0.01)
                while await asyncio.to_thread(is_open, url):  # the listener finishes what it has begun
                    await asyncio.sleep(0.05)
            assert link.pairing.phones == []

    # In a thread of its own: a browser that other tests share keeps a loop running in this one.
    with ThreadPoolExecutor(max_workers=1) as thread:
        thread.submit(asyncio.run, over_the_end()).result()
