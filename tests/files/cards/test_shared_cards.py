"""Several cards as one file: they come out as they went in, and nothing of the household is among them."""

from datetime import date

from tests.builders import make_place
from tripplan.files.cards.place_card import load_place_cards, read_place_card
from tripplan.files.cards.shared_cards import cards_in, write_shared
from tripplan.services import demo_folder

TODAY = date(2026, 11, 25)


def test_the_demos_cards_come_out_as_they_went_in() -> None:
    """All of them, through one file, without a fault."""
    places = load_place_cards(demo_folder() / "places", TODAY).places
    assert len(places) > 5
    parts = cards_in("shared.toml", write_shared(places).encode())
    read = [read_place_card(source, name, TODAY) for name, source in parts]
    assert tuple(one.value for one in read) == places


def test_a_single_card_is_told_as_it_is() -> None:
    """A card's own file goes through unchanged, faults and all."""
    assert cards_in("one.toml", b"id = 5") == [("one.toml", b"id = 5")]
    assert cards_in("bad.toml", b"\xff\xfe") == [("bad.toml", b"\xff\xfe")]


def test_faults_name_the_card() -> None:
    """A fault in the second of two cards says so; the first is still taken."""
    shared = write_shared([make_place(), make_place(id="b", name="B")]).replace('name = "B"', "name = 7")
    first, second = (
        read_place_card(source, name, TODAY) for name, source in cards_in("s.toml", shared.encode())
    )
    assert first.value is not None
    assert second.value is None
    assert second.findings[0].file == "s.toml, card 2"
