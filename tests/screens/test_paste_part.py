"""On Places a pasted text or a saved page fills the form of a new card, and what was not read is shown."""

from decimal import Decimal
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.builders import make_place
from tests.screens.conftest import Opened, said, services_in
from tripplan.documents.places.idea import Idea
from tripplan.documents.places.offers import Bundle, Ticket
from tripplan.documents.places.place import Place
from tripplan.files.cards.place_card import write_place_card
from tripplan.screens.places.adding.what_it_is import What, name_in, what_is

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


def saved(app: AppTest, data: Path) -> Place:
    """The card of a pasted text, named, put in a town and saved."""
    assert not app.exception
    app.text_input(key="new_card_demo_name").set_value("Mill Museum")
    app.text_input(key="new_card_demo_where").set_value("Galena, IL").run()
    app.button(key="save_new_card").click().run()
    assert not app.error, said(app.error)
    return services_in(data).demo.all(Place)["mill-museum"].value


def test_a_pasted_text_becomes_a_card_in_a_few_presses(places: AppTest, data: Path) -> None:
    """Name, town, the text, where prices come from: the card holds what the text says, to the cent."""
    app = paste(places, MUSEUM)
    place = saved(app, data)
    prices = {offer.name: offer.price for offer in place.offers if isinstance(offer, Ticket | Bundle)}
    assert prices == {"Adult": 14, "Senior": 12, "Child": 9, "Child under 3": 0, "Family": 45}
    assert place.parking.price == 6
    assert place.opening.last_entry_minutes_before_close == 45
    assert place.opening.hours == "Tu-Sa 10:00-17:00; Su 12:00-17:00; Mo off"


def test_add_ons_and_tickets_for_two_places_come_with_the_text(places: AppTest, data: Path) -> None:
    """The carousel is an extra, cheaper with the tickets; the combo ticket names the family's other place."""
    other = next(iter(services_in(data).demo.all(Place).values())).value
    more = f"Carousel $3, $1 with admission\nCombo ticket with {other.name}, valid for 7 days: adults $20"
    app = paste(places, f"Adults $14, children 3-12 $9\n{more}\nTue-Sat 10-5")
    place = saved(app, data)
    (carousel,) = place.add_ons
    (cheaper,) = carousel.with_ticket
    prices = (carousel.price, cheaper.price)
    assert (carousel.name, prices) == ("Carousel", (Decimal(3), Decimal(1)))
    both = {one.price: one.also_at for one in place.offers if isinstance(one, Ticket) and one.also_at}
    assert [(also.place, also.within_days) for also in both[Decimal(20)]] == [(other.id, 7)]


def test_each_line_stands_beside_its_words_and_the_rest_is_shown(places: AppTest) -> None:
    """Offers with the words they came from, doubts, and what was not understood, word for word."""
    app = paste(places, MUSEUM)
    text = said(app.main)
    assert "“children 3-12 $9”" in text
    assert "kayak rental $20 per person" in text


def test_nothing_changes_before_something_is_pasted(places: AppTest) -> None:
    """An empty text is refused, and no form opens."""
    app = paste(places, "  ")
    assert "Write a name first" in said(app.error)
    assert "save_new_card" not in [button.key for button in app.button]


def test_the_name_of_a_pasted_text_is_its_first_line(places: AppTest) -> None:
    """A heading of its own names the place; prices or a heading such as Admission do not."""
    app = paste(places, f"Mill Museum\n{MUSEUM}")
    assert app.text_input(key="new_card_demo_name").value == "Mill Museum"
    assert name_in(f"Admission\n{MUSEUM}") == name_in(MUSEUM) == ""


def test_a_text_without_prices_changes_nothing(places: AppTest, data: Path) -> None:
    """A menu is told as what was not understood, and no place comes of it."""
    before = set(services_in(data).demo.all(Place))
    app = paste(places, "Soup of the day\nBread with the chef's best butter\nApple pie")
    assert not app.exception
    assert "No prices or hours were found" in said(app.info)
    assert set(services_in(data).demo.all(Place)) == before


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Herring Weir", What.IDEA),
        ("Herring Weir, about $40 for us, an hour away", What.IDEA),
        ("Adults $14, children $9", What.TEXT),
        ("Open Tue-Sat 10-5", What.TEXT),
        (MUSEUM, What.TEXT),
        ("Mill Museum\nAdults $14", What.TEXT),
        (write_place_card(make_place()), What.CARD),
        ("[[offers]]\nname = ", What.CARD),
        ("<!DOCTYPE html><html><body>Adults $14</body></html>", What.PAGE),
        ("  \n ", What.NOTHING),
    ],
)
def test_what_is_put_in_is_told_apart(text: str, expected: What) -> None:
    """A name, a text, a card and a page are known by what stands in them."""
    assert what_is(text, "US") is expected


def test_a_name_alone_is_an_idea_that_can_be_filled_in(places: AppTest, data: Path) -> None:
    """From one line to the wish list, and from there to a card that takes the idea's place."""
    app = paste(places, "Herring Weir, about $40 for us, an hour away")
    assert not app.error, said(app.error)
    (idea,) = services_in(data).demo.all(Idea).values()
    assert (idea.value.name, idea.value.money, idea.value.drive_minutes) == ("Herring Weir", Decimal(40), 60)
    assert "a guess of yours" in said(app.markdown)
    app.button(key="fill_in_herring-weir").click().run()
    form = "short_new_card_demo"
    assert app.text_input(key=f"{form}_name").value == "Herring Weir"
    for name, text in {
        "where": "Galena, IL",
        "Sa": "10-4",
        "adult_price": "$5",
        "child_price": "free",
    }.items():
        app.text_input(key=f"{form}_{name}").set_value(text)
    app.run()
    app.button(key=f"{form}_save").click().run()
    assert not app.error, said(app.error)
    demo = services_in(data).demo
    assert demo.all(Idea) == {}
    assert demo.all(Place)["herring-weir"].value.opening.hours == "Sa 10:00-16:00"


def test_what_is_missing_makes_an_idea_and_no_refusal(places: AppTest, data: Path) -> None:
    """Without a price the short form keeps the place as an idea, with its hours and its town."""
    app = places.button(key="new_card_demo_type").click().run()
    form = "short_new_card_demo"
    for name, text in {"name": "Old Lock", "where": "Galena, IL", "Sa": "10-4"}.items():
        app.text_input(key=f"{form}_{name}").set_value(text)
    app.run()
    assert "Still open: a price" in said(app.markdown)
    app.button(key=f"{form}_save").click().run()
    (idea,) = services_in(data).demo.all(Idea).values()
    assert idea.value.hours == "Sa 10:00-16:00"
    assert idea.value.where is not None
    assert idea.value.where.town == "Galena"


def test_faults_stand_at_their_field_and_at_the_button(places: AppTest, data: Path) -> None:
    """Words that are no time and no price are told, and what was typed stays."""
    app = places.button(key="new_card_demo_type").click().run()
    form = "short_new_card_demo"
    for name, text in {"name": "Old Lock", "where": "Galena, IL", "Sa": "late", "adult_price": "ten"}.items():
        app.text_input(key=f"{form}_{name}").set_value(text)
    app.run()
    assert "a price reads like 14, $14" in said(app.error)
    assert "Please fix 2 things" in said(app.markdown)
    app.button(key=f"{form}_save").click().run()
    assert app.text_input(key=f"{form}_Sa").value == "late"
    assert "old-lock" not in services_in(data).demo.all(Place)
