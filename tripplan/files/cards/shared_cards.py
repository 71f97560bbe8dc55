"""Several place cards as one file to hand to another family, and out of such a file again."""

from collections.abc import Sequence

from tripplan.documents.places.place import Place
from tripplan.files.cards.place_card import write_place_card
from tripplan.files.toml.toml_text import parse_toml, write_toml

MOST_CARDS = 60
"""So many cards go into one file [-]; each may be as long as a card's own file usually is."""
_HEAD = "# Place cards to share; nothing in them is about the family that wrote them.\n\n"


def write_shared(places: Sequence[Place]) -> str:
    """Some cards as one TOML file; each entry of `places` is a card as its own file would hold it."""
    cards = [parse_toml(write_place_card(place), "").values for place in places]
    return _HEAD + write_toml({"places": cards})


def cards_in(name: str, content: bytes) -> list[tuple[str, str | bytes]]:
    """The cards of a file, each with what findings call it; a file that is one card is told as it is.

    Args:
        name: of the file.
        content: the file.
    """
    values = parse_toml(content, name).values
    listed = values.get("places") if values else None
    if not isinstance(listed, list):
        return [(name, content)]
    return [
        (f"{name}, card {number}", write_toml(card))
        for number, card in enumerate(listed, start=1)
        if isinstance(card, dict)
    ]
