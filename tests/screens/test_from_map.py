"""Places of a map file on the screen: filtered, and added with one press as an idea or a card."""

from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.nearby.map_writer import write_map
from tests.screens.conftest import Opened, said, services_in
from tripplan.documents.family.household import Household
from tripplan.documents.places.idea import Idea
from tripplan.documents.places.place import Place


@pytest.fixture
def town(tmp_path: Path, data: Path) -> Path:
    """A museum with hours and price, a reserve that the map says little of, a zoo too far away."""
    household = services_in(data).demo.get(Household)
    assert household is not None
    home = household.value.home.point
    near = (home.latitude + 0.1, home.longitude)
    museum = {
        "tourism": "museum",
        "name": "Clock Cellar",
        "opening_hours": "Tu-Su 10:00-16:00",
        "charge": "Adults 8 USD, children 4-12 5 USD, under 4 free",
        "phone": "+1 555 0100",
    }
    return write_map(
        tmp_path / "town.osm.pbf",
        nodes={
            1: (*near, museum),
            2: (*near, {"leisure": "nature_reserve", "name": "Otter Fen"}),
            3: (home.latitude + 4, home.longitude, {"tourism": "zoo", "name": "Far Zoo"}),
        },
    )


@pytest.fixture
def listed(open_app: Opened, town: Path) -> AppTest:
    """The places of the map, listed."""
    app = open_app("places")
    app.text_input(key="from_map_path").set_value(str(town))
    app.button(key="from_map_list").click().run()
    assert not app.exception
    return app


def test_places_within_reach_are_listed_with_the_maps_credit(listed: AppTest) -> None:
    """What is too far is left out, and the license's credit stands there."""
    text = said(listed.main)
    assert "Clock Cellar" in text
    assert "Otter Fen" in text
    assert "Far Zoo" not in text
    assert "OpenStreetMap contributors" in text


def test_kinds_and_topics_filter(listed: AppTest) -> None:
    """Only museums; then only where nature can be studied."""
    listed.multiselect(key="from_map_kinds").set_value(["museum"]).run()
    assert "Otter Fen" not in said(listed.main)
    listed.multiselect(key="from_map_kinds").set_value([]).run()
    listed.selectbox(key="from_map_topic").set_value("nature").run()
    assert "Clock Cellar" not in said(listed.main)
    assert "Otter Fen" in said(listed.main)


def test_one_press_makes_an_idea_or_a_card_marked_as_from_the_map(listed: AppTest, data: Path) -> None:
    """Hours and prices make a card, whose hours are not called checked; a bare name makes an idea."""
    listed.button(key="from_map_add_node/2").click().run()
    assert "as an idea" in said(listed.success)
    listed.button(key="from_map_add_node/1").click().run()
    assert not listed.error, said(listed.error)
    demo = services_in(data).demo
    idea = demo.all(Idea)["otter-fen"].value
    assert idea.source.startswith("from the map, Wed, Nov 25, 2026")
    assert idea.topics == ("nature",)
    card = demo.all(Place)["clock-cellar"].value
    assert "OpenStreetMap contributors" in card.prices_read.source
    assert card.opening.checked_on_site is False
    assert {str(offer.ages): offer.price for offer in card.offers if offer.kind == "ticket"} == {
        "13+": 8,
        "4-12": 5,
        "under 4": 0,
    }


def test_a_file_that_is_no_map_is_told(open_app: Opened, tmp_path: Path) -> None:
    """Nothing is listed and nothing breaks; likewise where there is no such file."""
    broken = tmp_path / "broken.osm.pbf"
    broken.write_bytes(b"no map")
    app = open_app("places")
    app.text_input(key="from_map_path").set_value(str(broken))
    app.button(key="from_map_list").click().run()
    assert not app.exception
    assert "cannot be read" in said(app.error)
    app.text_input(key="from_map_path").set_value(str(tmp_path / "none.osm.pbf"))
    app.button(key="from_map_list").click().run()
    assert "No such file" in said(app.error)
