"""Places of a map are listed by their drive from home, without doubles, with what the map says."""

from decimal import Decimal

import pytest

from tripplan.documents.places.offers import prices_in
from tripplan.documents.where import Point
from tripplan.nearby.kinds import kind_of
from tripplan.nearby.listing import list_nearby
from tripplan.nearby.map_places import MapPlace
from tripplan.planning.travel.estimate import estimate_drive

HOME = Point(42.5, -90.66)


def on_the_map(osm: str, latitude: float, **tags: str) -> MapPlace:
    """A place north of home."""
    kind = kind_of(tags)
    assert kind is not None
    return MapPlace(osm, kind, Point(latitude, -90.66), tags)


PLACES = [
    on_the_map("node/1", 42.9, tourism="zoo", name="Far Zoo"),
    on_the_map("node/2", 42.6, tourism="museum", name="Mill Museum"),
    on_the_map(
        "way/3", 42.6005, tourism="museum", name="Mill museum", fee="no", opening_hours="Tu-Su 10:00-17:00"
    ),
    on_the_map("node/4", 42.55, leisure="playground"),
    on_the_map("node/5", 42.55, historic="ruins"),
    on_the_map(
        "node/6",
        42.7,
        tourism="museum",
        name="Rag Museum",
        charge="8 USD",
        opening_hours="whenever",
        phone="555",
    ),
]


def test_places_come_nearest_first_and_each_once() -> None:
    """The fuller of two entries of one name stays; a playground needs no name, a ruin does."""
    listed = list_nearby(PLACES, HOME, "US")
    assert [(p.osm, p.name) for p in listed] == [
        ("node/4", ""), ("way/3", "Mill museum"), ("node/6", "Rag Museum"), ("node/1", "Far Zoo"),
    ]  # fmt: skip
    assert listed[1].drive_minutes == estimate_drive(HOME, PLACES[2].point, "US").minutes


@pytest.mark.parametrize(
    ("wanted", "expected"),
    [
        ({"kinds": ("museum",)}, ["way/3", "node/6"]),
        ({"topic": "Animals"}, ["node/1"]),
        ({"most_minutes": 25}, ["node/4", "way/3"]),
    ],
)  # fmt: skip
def test_a_choice_by_kind_topic_and_drive(wanted: dict[str, object], expected: list[str]) -> None:
    """Only what was asked for."""
    assert [p.osm for p in list_nearby(PLACES, HOME, "US", **wanted)] == expected  # type: ignore[arg-type]


def test_hours_prices_and_telephone_are_taken_over_where_they_can_be_read() -> None:
    """Free entry and a charge become offers; hours that are no opening_hours syntax are left out."""
    mill, rag = list_nearby(PLACES, HOME, "US", kinds=("museum",))
    assert (mill.free, mill.opening_hours) == (True, "Tu-Su 10:00-17:00")
    assert mill.board is not None
    assert [prices_in(o.offer)[0] for o in mill.board.offers] == [Decimal(0)]
    assert (rag.free, rag.charge, rag.opening_hours, rag.telephone) == (False, "8 USD", "", "555")
    assert rag.board is not None
    assert [(prices_in(o.offer)[0], rag.board.currency) for o in rag.board.offers] == [(Decimal(8), "USD")]
