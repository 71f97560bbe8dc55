"""Which places fit a unit is told with its reason, and nothing that is only spelled alike is matched."""

from typing import Any

import pytest

from tests.builders import make_place
from tripplan.documents.study.units import StudyUnit
from tripplan.planning.topic_fit import fits_of, topics_on

PLACES = tuple(
    make_place(id=place_id, name=name, visit={"topics": topics})
    for place_id, name, topics in (
        ("mill", "Mill", ["Grain  and bread", "water power"]),
        ("farm", "Farm", ["grain and bread", "farm animals"]),
        ("wharf", "Wharf", ["rivers and barges"]),
        ("tower", "Tower", []),
    )
)


def unit(*topics: str, **changes: Any) -> StudyUnit:
    """A unit of some weeks with these topics."""
    values = {"name": "Unit", "first": "2027-01-11", "last": "2027-02-14", "currency": "USD"}
    return StudyUnit.model_validate({**values, "topics": topics, **changes})


def test_places_fit_by_topics_whatever_the_capitals() -> None:
    """Capitals and blanks make no difference; the place that meets more topics comes first."""
    found = fits_of(unit("GRAIN and bread", "Water Power"), PLACES)
    assert [(fit.place.id, fit.topics) for fit in found.places] == [
        ("mill", ("GRAIN and bread", "Water Power")),
        ("farm", ("GRAIN and bread",)),
    ]
    assert found.close == ()
    assert found.nowhere == ()


@pytest.mark.parametrize(
    ("topic", "on_cards", "places"),
    [
        ("bread", "Grain  and bread", ["mill", "farm"]),
        ("grane and bread", "Grain  and bread", ["mill", "farm"]),
        ("river and barges", "rivers and barges", ["wharf"]),
        ("animals on a farm", "farm animals", ["farm"]),
    ],
)
def test_a_close_spelling_is_offered_and_not_matched(topic: str, on_cards: str, places: list[str]) -> None:
    """A slip of the pen or part of a topic finds no place by itself, but is offered in the card's words."""
    found = fits_of(unit(topic), PLACES)
    assert found.places == ()
    assert found.nowhere == (topic,)
    (close,) = found.close
    assert (close.topic, close.on_cards) == (topic, on_cards)
    assert [place.id for place in close.places] == places


@pytest.mark.parametrize("topic", ["astronomy", "and", "power of prayer"])
def test_what_is_not_alike_is_not_offered(topic: str) -> None:
    """Topics that share a short word or one word of several are different topics."""
    found = fits_of(unit(topic), PLACES)
    assert (found.places, found.close) == ((), ())


def test_the_parent_may_name_a_place_of_her_own() -> None:
    """A place without any of the topics fits where the parent says so, which is told apart."""
    (fit,) = fits_of(unit("astronomy", also_places=["tower"]), PLACES).places
    assert (fit.place.id, fit.topics, fit.by_parent) == ("tower", (), True)


def test_topics_on_cards_are_listed_once() -> None:
    """Two spellings of one topic are one, in order of the alphabet."""
    assert topics_on(PLACES) == ("farm animals", "Grain  and bread", "rivers and barges", "water power")
