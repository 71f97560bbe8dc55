"""Things beside entry that a ticket makes cheaper, and tickets for two places, as venues write them.

The texts are our own; the ways of writing are common practice, no source.
"""

from decimal import Decimal

import pytest

from tripplan.documents.places.offers import Ticket
from tripplan.reading.board import read_board

BOARD = "Adults 13+ $14, children 3-12 $9, under 3 free\n"
PLACES = {"old-mill": "Old Mill", "alte-muehle": "Alte Mühle", "castle": "Castle Farm"}


@pytest.mark.parametrize(
    ("text", "name", "price", "with_ticket"),
    [
        ("Carousel: $3, or $1 with admission", "Carousel", "3", "1"),
        ("Planetarium show $8; $5 with museum admission", "Planetarium show", "8", "5"),
        ("Train ride $4 ($2 with a museum ticket)", "Train ride", "4", "2"),
        ("Hayride: free with paid admission, otherwise $5", "Hayride", "5", "0"),
        ("Boat trip £6 (£4.50 for castle ticket holders)", "Boat trip", "6", "4.50"),
        ("Maze £3, with any farm ticket £1", "Maze", "3", "1"),
        ("Planetarium: 6 € (mit Eintrittskarte 3 €)", "Planetarium", "6", "3"),
        ("Bootsfahrt 4,50 €, mit Museumsticket 2 €", "Bootsfahrt", "4.50", "2"),
    ],
)
def test_what_is_cheaper_with_a_ticket_is_no_entry_price(
    text: str, name: str, price: str, with_ticket: str
) -> None:
    """It is an add-on with two prices, the lower with each ticket of the board that costs something."""
    read = read_board("Adults 14, children 9\n" + text)
    (one,) = read.add_ons
    assert (one.add_on.name, one.add_on.price, one.words) == (name, Decimal(price), text)
    assert [(w.offers, w.price) for w in one.add_on.with_ticket] in (
        [(("Adult", "Child"), Decimal(with_ticket))],
        [],
    )
    assert not [offer for offer in read.offers if offer.offer.name.startswith("Entry")]
    assert not read.not_understood
    assert any(text in doubt for doubt in read.doubts)


def test_it_goes_with_the_tickets_that_cost_something() -> None:
    """An infant's free ticket makes nothing cheaper; without tickets on the board there is one price."""
    (one,) = read_board(BOARD + "Carousel: $3, or $1 with admission").add_ons
    assert [w.offers for w in one.add_on.with_ticket] == [("Adult", "Child")]
    (alone,) = read_board("Carousel: $3, or $1 with admission").add_ons
    assert alone.add_on.with_ticket == ()


@pytest.mark.parametrize(
    "text",
    [
        "Adults $14, $10 with a zoo ticket",
        "Admission $12 ($8 with museum ticket)",
        "Carousel $1, $3 with admission",
        "Kids $9, free with adult admission",
        "Carousel $3 with admission",
    ],
)
def test_what_visitors_pay_for_entry_is_no_add_on(text: str) -> None:
    """Nor is what would cost more with a ticket, or has one price only."""
    assert read_board(BOARD + text).add_ons == ()


@pytest.mark.parametrize(
    ("text", "expected", "there", "days"),
    [
        (
            "Combo ticket with the Old Mill: adults $20, children $12",
            {"Combo ticket, adult": ("20", "13+"), "Combo ticket, child": ("12", "3-12")},
            "old-mill",
            1,
        ),
        (
            "Combination ticket (museum and Old Mill, valid for 3 days): $20 adults, $12 youth 4-17",
            {"Combination ticket, adult": ("20", "18+"), "Combination ticket, youth": ("12", "4-17")},
            "old-mill",
            3,
        ),
        ("Joint ticket with Castle Farm £18, valid for 7 days", {"Joint ticket": ("18", "any")}, "castle", 7),
        (
            "Two-site ticket with Castle Farm on the same day £18",
            {"Two-site ticket": ("18", "any")},
            "castle",
            1,
        ),
        (
            "Kombikarte mit der Alten Mühle, gültig 7 Tage: Erwachsene 15 €",
            {"Kombikarte, adult": ("15", "13+")},
            "alte-muehle",
            7,
        ),
        ("Kombiticket Schloss + Alte Mühle 15 €", {"Kombiticket": ("15", "any")}, "alte-muehle", 1),
    ],
)
def test_a_ticket_for_two_places_names_the_familys_other_place(
    text: str, expected: dict[str, tuple[str, str]], there: str, days: int
) -> None:
    """Price and ages as read, the ages of the board where the ticket leaves them open; the place by its card."""
    read = read_board(BOARD + text, "US", PLACES)
    found = {
        one.offer.name: one.offer
        for one in read.offers
        if isinstance(one.offer, Ticket) and one.offer.also_at
    }
    assert {name: (str(ticket.price), str(ticket.ages)) for name, ticket in found.items()} == expected
    assert {(also.place, also.within_days) for one in found.values() for also in one.also_at} == {
        (there, days)
    }
    assert not read.not_understood


def test_a_place_without_a_card_is_asked_for() -> None:
    """The ticket lets in here all the same, and is told in the text's own words."""
    text = "Combo ticket with the Sugar House: adults $20"
    read = read_board(BOARD + text, "US", PLACES)
    (ticket,) = [one.offer for one in read.offers if one.offer.name == "Combo ticket, adult"]
    assert isinstance(ticket, Ticket)
    assert ticket.also_at == ()
    assert any(doubt.startswith(f"'{text}'") for doubt in read.doubts)


def test_where_it_does_not_say_its_days_that_is_told() -> None:
    """The same day is taken, and the parent hears of it."""
    text = "Combo ticket with the Old Mill: adults $20"
    doubts = [doubt for doubt in read_board(text, "US", PLACES).doubts if "same day is taken" in doubt]
    assert len(doubts) == 1
    assert not [d for d in read_board(f"{text} (same day)", "US", PLACES).doubts if "same day is taken" in d]
