"""From a card to its sentences and back: the same offers, whatever rules they have."""

from datetime import date
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import TypeAdapter

from tests.planning.admission.price_boards import bands, bundles, prices, tickets
from tripplan.documents.places.offer_sentences import sentence
from tripplan.documents.places.offers import Bundle, Discount, Offer, Ticket
from tripplan.reading.board import read_board

BOARDS = 150
_OFFERS: TypeAdapter[list[Offer]] = TypeAdapter(list[Offer])
seats = st.lists(st.fixed_dictionaries({"count": st.integers(1, 8), "ages": bands}), min_size=1, max_size=3)
passes = st.fixed_dictionaries(
    {
        "kind": st.just("pass"),
        "price": prices,
        "months": st.integers(1, 24),
        "seats": seats,
        "named": st.booleans(),
        "parking_included": st.booleans(),
    }
)
limits = st.fixed_dictionaries(
    {},
    optional={
        "valid": st.sampled_from(("We", "Su[1]", "Nov-Mar 14:00-17:00", "Sa,Su 10:00-12:00")),
        "first_day": st.dates(date(2026, 1, 1), date(2029, 12, 31)),
        "last_day": st.dates(date(2026, 1, 1), date(2029, 12, 31)),
        "book_days_ahead": st.integers(0, 30),
        "includes": st.sampled_from((["Boat"], ["Boat", "Stars"])),
    },
)


@st.composite
def boards(draw: st.DrawFn) -> list[dict[str, Any]]:
    """One to six offers with names of their own and any of the rules."""
    drawn = draw(st.lists(st.one_of(tickets, bundles, passes), min_size=1, max_size=6))
    return [{**one, **draw(limits), "name": f"Offer no. {n}"} for n, one in enumerate(drawn)]


@settings(max_examples=BOARDS, deadline=None)
@given(boards())
def test_what_a_board_says_is_read_as_the_same_board(board: list[dict[str, Any]]) -> None:
    """Every offer comes back, but for what its sentence does not say: covers and leaders that change nothing."""
    offers = _OFFERS.validate_python(board)
    said = [sentence(offer, "USD") for offer in offers]
    read = read_board("\n".join(said), "US")
    assert [sentence(one.offer, "USD") for one in read.offers] == said
    assert [one.words for one in read.offers] == said
    for one, offer in zip(read.offers, offers, strict=True):
        assert _told(one.offer) == _told(offer)
    assert not read.not_understood


def _told(offer: Offer) -> dict[str, Any]:
    """What an offer's sentence says of it; a rule that hangs on one that is not there is not said."""
    told = offer.model_dump()
    if isinstance(offer, Ticket | Discount) and not offer.needs:
        told.pop("one_status_covers")
    if isinstance(offer, Ticket) and offer.one_free_per is None:
        told.pop("leader_ages")
    if isinstance(offer, Bundle) and offer.per_car:
        told.pop("counts_everybody")
    return told


def test_other_words_around_them_do_not_matter() -> None:
    """Sentences of the program among lines that a venue wrote: both are read."""
    text = "Adult: $14.00 each for people aged 13 to 64.\nChildren 3-12 $9"
    offers = {
        str(one.offer.ages): one.offer.price
        for one in read_board(text, "US").offers
        if one.offer.kind == "ticket"
    }
    assert offers == {"13-64": 14, "3-12": 9}


def test_a_sentence_that_would_be_said_otherwise_is_no_sentence_of_the_program() -> None:
    """A leading zero or a second price keeps it out, and the ordinary reading has it."""
    (one,) = read_board("Adult: $14 each for people aged 13 to 64", "US").offers
    assert isinstance(one.offer, Ticket)
    assert one.offer.price == 14
