"""The sketch of the places round home, and the same in words."""

from collections.abc import Callable
from datetime import date
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from streamlit.testing.v1 import AppTest

from tests.builders import make_household, make_place
from tripplan.documents.places.place import Place
from tripplan.planning.travel.drive import Drive
from tripplan.planning.travel.drive_sources import typed_drive
from tripplan.planning.travel.estimate import estimate_drive
from tripplan.screens.places.map_chart import (
    map_chart,
    map_table,
    placed,
    ring_distances,
    why_sentence,
)

HOME = make_household().home


def at(latitude: float, longitude: float, name: str = "A mill") -> tuple[Place, Drive]:
    """A place at a point, with its estimated drive."""
    where = {**make_place().where.model_dump(), "latitude": latitude, "longitude": longitude}
    place = make_place(name=name, where=where)
    return place, estimate_drive(HOME.point, place.where.point, "US")


def rows_of(chart: dict[str, Any], layer: int) -> list[dict[str, Any]]:
    """The data of one layer of a chart."""
    rows: list[dict[str, Any]] = chart["datasets"][chart["layer"][layer]["data"]["name"]]
    return rows


@pytest.mark.parametrize(
    ("north", "east", "direction"),
    [(1, 0, "north"), (0, 1, "east"), (-1, 0, "south"), (0, -1, "west"), (1, 1.3, "north-east")],
)
def test_a_place_is_told_in_the_direction_it_lies_in(north: float, east: float, direction: str) -> None:
    """A degree north is to the north; north and east count as degrees from home."""
    (found,) = placed(HOME, [at(HOME.point.latitude + north, HOME.point.longitude + east)])
    assert found.direction == f"to the {direction}"


def test_a_place_at_home_lies_in_no_direction() -> None:
    """No distance away there is none to tell."""
    (found,) = placed(HOME, [at(HOME.point.latitude, HOME.point.longitude)])
    assert found.direction == "at home"


def test_distance_and_direction_on_the_sketch_are_true() -> None:
    """One degree of latitude is 111 km (WGS84, to the kilometre) and drawn straight up, or down."""
    north, south = placed(HOME, [at(HOME.point.latitude + shift, HOME.point.longitude) for shift in (1, -1)])
    assert [north.east_km, south.east_km] == pytest.approx([0, 0], abs=1e-6)
    assert [north.north_km, south.north_km] == pytest.approx([111, -111], abs=0.5)


@given(st.floats(0, 20_000))
def test_rings_are_few_and_the_last_goes_round_everything(furthest: float) -> None:
    """Two to five rings, evenly apart, none needless, the outermost at or beyond the furthest place."""
    rings = ring_distances(furthest)
    assert 2 <= len(rings) <= 5
    assert rings[-1] >= furthest * (1 - 1e-9)
    assert {round(b - a, 6) for a, b in pairwise((0.0, *rings))} == {round(rings[0], 6)}
    assert len(rings) == 2 or rings[-2] < max(furthest, 0.1)


def test_rings_carry_the_households_unit() -> None:
    """Rings of a household that counts in miles are round in miles."""
    places = placed(HOME, [at(41.5, -89.6)])
    marks = [row["ring"] for row in rows_of(map_chart(places, "mi").to_dict(), 1)]
    assert marks == ["20 mi", "40 mi", "60 mi"]


def test_the_sketch_fetches_nothing() -> None:
    """The chart holds its data and no address to load anything from."""
    chart = map_chart(placed(HOME, [at(41.5, -89.6)]), "km").to_dict()
    chart.pop("$schema")
    assert "url" not in str(chart)


def test_a_name_that_finds_no_room_is_left_out_and_its_dot_stays() -> None:
    """Of six mills in one town some are named, each once; all are dots, and stand in the table."""
    mills = [at(40.7, -89.6, f"Mill number {nth}") for nth in range(6)]
    places = placed(HOME, [*mills, at(42, -89.6, "Far mill")])
    chart = map_chart(places, "km").to_dict()
    names = [row["name"] for row in rows_of(chart, 4)]
    assert {"home", "Far mill"} < set(names)
    assert len(set(names)) == len(names) < len(places)
    assert len(rows_of(chart, 3)) == len(map_table(places, "km")) == len(places)


def test_the_table_says_the_same_by_driving_time() -> None:
    """Nearest first, with distance and minutes and their range."""
    far, near = at(42.5, -89.6, "Far mill"), at(40.9, -89.6, "Near mill")
    table = map_table(placed(HOME, [far, near]), "km")
    assert list(table.index) == ["Near mill", "Far mill"]
    assert table.loc["Near mill", "Where"] == "23 km to the north"
    assert " to " in str(table.loc["Near mill", "Drive, one way"])
    assert " to " in str(table.loc["Near mill", "Driving time"])


def test_why_tells_how_a_drive_is_known() -> None:
    """An estimate says so; what was typed in says when."""
    assert why_sentence(at(41.5, -89.6)[1]).startswith("An estimate: ")
    typed = typed_drive(60, 50, date(2026, 11, 2))
    assert why_sentence(typed) == "Typed in: typed in on 2026-11-02."


def test_the_places_page_shows_the_sketch_with_its_table_and_reasons(
    open_app: Callable[..., AppTest],
) -> None:
    """All the demo's places stand in the table, and each can be asked why."""
    app = open_app("places")
    asked = app.selectbox(key="places_map_why")
    assert sorted(asked.options) == sorted(app.table[0].value.index)
    asked.select("Oatsparrow Farm").run()
    assert not app.exception
    assert any("An estimate: 1" in caption.value.replace("\\", "") for caption in app.caption)
