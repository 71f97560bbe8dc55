"""Ideas: a name is enough, and what is assumed of it is never taken for a fact."""

from datetime import date

import pytest

from tests.builders import make_household
from tripplan.documents.places.idea import Idea, free_id, place_id

HOME = make_household(home={**make_household().home.model_dump(), "address": "1 Test Lane"}).home


def test_a_name_is_enough() -> None:
    """An idea of which nothing else is known becomes a place that says so in its name."""
    idea = Idea(id="herring-weir", name="Herring Weir", noted_on=date(2026, 11, 25))
    place = idea.as_place(HOME, "USD")
    assert place.name == "Herring Weir (idea)"
    assert place.id == "herring-weir"
    assert place.idea is idea
    assert place.opening.checked_on_site is False


def test_home_stands_in_without_its_address() -> None:
    """Where an idea lies unknown, nothing tells the family's own street or town as the place's."""
    place = Idea(id="a", name="A", noted_on=date(2026, 11, 25)).as_place(HOME, "USD")
    assert place.known_where is None
    assert (place.where.address, place.where.town, place.where.postal_code) == ("", "", "")
    assert place.where.point == HOME.point


def test_topics_are_carried() -> None:
    """Study topics of an idea are the place's."""
    idea = Idea(id="a", name="A", noted_on=date(2026, 11, 25), topics=("fish", "rivers"))
    assert idea.as_place(HOME, "USD").visit.topics == ("fish", "rivers")


@pytest.mark.parametrize(
    ("taken", "expected"),
    [(set(), "old-mill"), ({"old-mill"}, "old-mill-2"), ({"old-mill", "old-mill-2"}, "old-mill-3")],
)
def test_ids_are_free(taken: set[str], expected: str) -> None:
    """A second place of one name gets an id of its own."""
    assert free_id("Old Mill", taken) == expected


def test_an_id_is_never_too_long() -> None:
    """A number behind a long name still fits."""
    name = "x" * 70
    assert len(free_id(name, {place_id(name)})) <= 60
