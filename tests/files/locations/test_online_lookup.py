"""Looking up online, with a service made for the test: nothing here reaches outside."""

from dataclasses import dataclass, field
from datetime import UTC, datetime
from itertools import pairwise
from typing import Any

import pytest
from geopy.exc import (
    GeocoderInsufficientPrivileges,
    GeocoderRateLimited,
    GeocoderServiceError,
    GeocoderTimedOut,
    GeocoderUnavailable,
    GeopyError,
)

from tripplan.errors import LookupFailed
from tripplan.files.locations.online_lookup import Geocode, OnlineLookup, nominatim
from tripplan.version import __version__

NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)


@dataclass
class Answer:
    """What the made-up service knows."""

    latitude: float = 45.76
    longitude: float = 4.84
    address: str = "Lyon, France"
    raw: dict[str, Any] = field(
        default_factory=lambda: {"address": {"country_code": "fr", "ISO3166-2-lvl4": "FR-ARA"}}
    )


class Clock:
    """A clock that only sleep moves, and a diary of what was asked when."""

    def __init__(self) -> None:
        self.now = 100.0
        self.asked: list[tuple[float, str]] = []

    def seconds(self) -> float:
        """The time [s]."""
        return self.now

    def sleep(self, seconds: float) -> None:
        """Wait [s]."""
        self.now += seconds

    def geocode(self, text: str) -> Answer:
        """A service that answers in a fifth of a second."""
        self.asked.append((self.now, text))
        self.now += 0.2
        return Answer()


def lookup(geocode: Geocode) -> OnlineLookup:
    """A look-up that never has to wait."""
    return OnlineLookup(geocode, lambda: 0.0, lambda _: None)


def test_an_answer_says_what_was_asked_where_and_when() -> None:
    """The text as sent, the point, the country and subdivision that were told, the service."""
    clock = Clock()
    found = OnlineLookup(clock.geocode, clock.seconds, clock.sleep).find("  Lyon,\n France ", NOW)
    assert clock.asked == [(100.0, "Lyon, France")]
    assert (found.text, found.name) == ("Lyon, France", "Lyon, France")
    assert (found.point.latitude, found.point.longitude) == (45.76, 4.84)
    assert (found.country, found.subdivision) == ("FR", "ARA")
    assert (found.service, found.looked_up_at) == ("nominatim.openstreetmap.org", NOW)


def test_requests_are_at_least_a_second_apart() -> None:
    """Five questions at once go out one by one, each a second or more after the end of the one before."""
    clock = Clock()
    asking = OnlineLookup(clock.geocode, clock.seconds, clock.sleep)
    for nth in range(5):
        asking.find(f"town {nth}", NOW)
    times = [at for at, _ in clock.asked]
    assert len(times) == 5
    assert all(later - earlier >= 1 for earlier, later in pairwise(times))


def test_nobody_waits_when_the_last_request_is_long_ago() -> None:
    """After a minute the next question goes out at once."""
    clock = Clock()
    asking = OnlineLookup(clock.geocode, clock.seconds, clock.sleep)
    asking.find("one", NOW)
    clock.now += 60
    asking.find("two", NOW)
    assert [at for at, _ in clock.asked] == [100.0, 160.2]


def test_a_failed_request_counts_as_one() -> None:
    """After an error, too, the next question waits its second."""
    clock = Clock()

    def fails(text: str) -> Answer:
        clock.geocode(text)
        raise GeocoderTimedOut

    asking = OnlineLookup(fails, clock.seconds, clock.sleep)
    for _ in range(2):
        with pytest.raises(LookupFailed):
            asking.find("somewhere", NOW)
    assert [at for at, _ in clock.asked] == pytest.approx([100.0, 101.2])


@pytest.mark.parametrize(
    ("trouble", "said"),
    [
        (GeocoderTimedOut(), "did not answer in time"),
        (GeocoderUnavailable(), "is this computer online"),
        (GeocoderRateLimited(429), "fewer questions"),
        (GeocoderInsufficientPrivileges(), "refuses this program"),
        (GeocoderServiceError(), "could not answer"),
    ],
)
def test_every_trouble_is_said_in_words(trouble: GeopyError, said: str) -> None:
    """What went wrong and what to do, not the library's error."""

    def fails(_: str) -> Answer:
        raise trouble

    with pytest.raises(LookupFailed, match=said):
        lookup(fails).find("somewhere", NOW)


@pytest.mark.parametrize(
    ("text", "said"), [("", "nothing to look up"), (" \n ", "nothing to look up"), ("x" * 201, "at most 200")]
)
def test_what_cannot_be_asked_is_not_sent(text: str, said: str) -> None:
    """Nothing, and more than an address, stay here."""
    clock = Clock()
    with pytest.raises(LookupFailed, match=said):
        lookup(clock.geocode).find(text, NOW)
    assert clock.asked == []


def test_a_place_nobody_knows_is_said() -> None:
    """No answer is not an error of the service."""
    with pytest.raises(LookupFailed, match="no such place"):
        lookup(lambda _: None).find("Nowhere", NOW)


@pytest.mark.parametrize(
    "raw", [{}, {"address": {}}, {"address": {"country_code": "fr", "ISO3166-2-lvl4": "odd"}}]
)
def test_an_answer_without_details_is_still_a_point(raw: dict[str, Any]) -> None:
    """Country and subdivision are taken only as far as they are told."""
    found = lookup(lambda _: Answer(raw=raw)).find("Lyon", NOW)
    assert found.subdivision == ""
    assert found.point.latitude == 45.76


def test_the_service_is_told_who_asks(monkeypatch: pytest.MonkeyPatch) -> None:
    """The real service's client carries the program's name and version, and asks that service only."""
    asked: list[tuple[str, str]] = []

    def no_network(self: Any, url: str, *_args: Any, **_options: Any) -> None:
        asked.append((url, self.headers["User-Agent"]))

    monkeypatch.setattr("geopy.geocoders.base.Geocoder._call_geocoder", no_network)
    nominatim()("Lyon, France")
    ((url, agent),) = asked
    assert agent == f"tripplan/{__version__} (household outing planner)"
    assert url.startswith("https://nominatim.openstreetmap.org/search?")
