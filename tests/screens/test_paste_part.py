"""On Places a pasted text or a saved page fills the form of a new card, and what was not read is shown."""

from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.screens.conftest import Opened, said, services_in
from tripplan.documents.places.offers import Bundle, Ticket
from tripplan.documents.places.place import Place

MUSEUM = (
    "Adults $14, seniors (65+) $12, children 3-12 $9, under 3 free, family of up to 6 $45, parking $6. "
    "Tue-Sat 10-5, Sun noon-5, closed Mondays; last entry 4:15; kayak rental $20 per person"
)


@pytest.fixture
def places(open_app: Opened) -> AppTest:
    """The Places page of the demo."""
    return open_app("places")


def paste(app: AppTest, text: str) -> AppTest:
    """Paste a text into a new card and have it read."""
    app.text_area(key="new_card_demo_pasted").set_value(text)
    return app.button(key="new_card_demo_read").click().run()


def test_a_pasted_text_becomes_a_card_in_a_few_presses(places: AppTest, data: Path) -> None:
    """Name, town, the text, where prices come from: the card holds what the text says, to the cent."""
    app = paste(places, MUSEUM)
    assert not app.exception
    app.text_input(key="new_card_demo_name").set_value("Mill Museum")
    app.text_input(key="new_card_demo_where").set_value("Galena, IL").run()
    app.button(key="save_new_card").click().run()
    assert not app.error, said(app.error)
    place = services_in(data).demo.all(Place)["mill-museum"].value
    prices = {offer.name: offer.price for offer in place.offers if isinstance(offer, Ticket | Bundle)}
    assert prices == {"Adult": 14, "Senior": 12, "Child": 9, "Child under 3": 0, "Family": 45}
    assert place.parking.price == 6
    assert place.opening.last_entry_minutes_before_close == 45
    assert place.opening.hours == "Tu-Sa 10:00-17:00; Su 12:00-17:00; Mo off"


def test_each_line_stands_beside_its_words_and_the_rest_is_shown(places: AppTest) -> None:
    """Offers with the words they came from, doubts, and what was not understood, word for word."""
    app = paste(places, MUSEUM)
    text = said(app.main)
    assert "“children 3-12 $9”" in text
    assert "kayak rental $20 per person" in text


def test_nothing_changes_before_something_is_pasted(places: AppTest) -> None:
    """An empty text is refused, and the form stays as it was."""
    app = paste(places, "  ")
    assert "Paste a text first" in said(app.error)
    assert app.text_input(key="new_card_demo_0_name").value == "Adult"
