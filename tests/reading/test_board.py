"""A pasted text becomes offers, hours and parking of a place card, with everything left open said."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tripplan.documents.places.offers import Bundle, Discount, Ticket, prices_in
from tripplan.reading.board import LONGEST, read_board
from tripplan.values.ages import parse_age_band

MUSEUM = """\
Adults $14, seniors (65+) $12, children 3-12 $9, under 3 free, family of up to 6 $45, parking $6
Tue-Sat 10-5, Sun noon-5, closed Mondays, Thanksgiving and Dec 25; April to October only; last entry 4:15;
first Sunday free; groups of 15 or more $8; members free
"""


def test_a_whole_text_is_read_into_a_card() -> None:
    """Tickets, a family's price, hours, last entry, parking, a free day, a group price and members, all at once."""
    read = read_board(MUSEUM, "US")
    tickets = {o.offer.name: o.offer for o in read.offers if isinstance(o.offer, Ticket)}
    assert {
        name: (str(t.ages), t.price)
        for name, t in tickets.items()
        if not t.needs and t.at_least == 1 and not t.valid
    } == {
        "Adult": ("13-64", Decimal(14)),
        "Senior": ("65+", Decimal(12)),
        "Child": ("3-12", Decimal(9)),
        "Child under 3": ("under 3", Decimal(0)),
    }
    assert [(t.valid, t.price) for t in tickets.values() if t.valid] == [("Su[1]", Decimal(0))]
    assert [(t.at_least, t.price) for t in tickets.values() if t.at_least > 1] == [(15, Decimal(8))]
    assert [t.price for t in tickets.values() if t.needs == ("member",)] == [Decimal(0)]
    (family,) = (o.offer for o in read.offers if isinstance(o.offer, Bundle))
    assert (family.price, [seats.count for seats in family.seats]) == (Decimal(45), [6])
    assert read.opening_hours.startswith("Apr-Oct Tu-Sa 10:00-17:00; Apr-Oct Su 12:00-17:00")
    assert (read.currency, read.parking, read.last_entry, read.not_understood) == (
        "USD",
        Decimal(6),
        "16:15",
        (),
    )


def test_every_offer_keeps_the_words_it_came_from_and_a_name_of_its_own() -> None:
    """A parent can hold each line against the board."""
    read = read_board(MUSEUM, "US")
    assert all(offer.words in MUSEUM for offer in read.offers)
    names = [offer.offer.name for offer in read.offers]
    assert len(names) == len(set(names))


def test_what_is_said_only_by_a_condition_is_no_cheaper_ticket_for_everybody() -> None:
    """A price for residents needs that status; one with a paying grown-up needs one in the party."""
    residents, child = (
        o.offer for o in read_board("Residents: adults $8. Children under 6 free with a paying adult.").offers
    )
    assert isinstance(residents, Ticket)
    assert residents.needs == ("resident",)
    assert isinstance(child, Ticket)
    assert child.companions is not None
    assert child.companions.must_pay
    assert child.ages == parse_age_band("under 6")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Residents of Dane County receive 25% off admission.", (25, ("resident",), "any", None)),
        ("Homeschool families 20% off", (20, ("home educated",), "any", None)),
        ("Seniors and students: 10% off with ID", (10, ("student",), "any", None)),
        ("Studenten 50 % Rabatt", (50, ("student",), "any", None)),
        ("Half price on Tuesdays.", (50, (), "any", "Tu")),
        ("Kids 3-12 half price on Fridays", (50, (), "3-12", "Fr")),
        ("50% off with an EBT card", (50, ("benefit card",), "any", None)),
    ],
)
def test_a_percentage_by_status_age_or_day_is_a_discount(text: str, expected: tuple[object, ...]) -> None:
    """It comes off the single price, for just those and then."""
    read = read_board(f"Adults $14, kids 3-12 $9. {text}", "US")
    found = [one.offer for one in read.offers if isinstance(one.offer, Discount)]
    assert expected in [(one.percent_off, one.needs, str(one.ages), one.valid) for one in found]
    assert not read.not_understood


def test_a_pasted_table_is_read_with_what_stands_below_it() -> None:
    """The ages in its head are no hours, and a discount after its rows is not taken for one of them."""
    table = "\tAdults\tKids (3-12)\nWeekdays\t$5\t$3\nWeekends\t$7\t$4\n"
    read = read_board(f"{table}Residents 25% off. Homeschool families half price on Tuesdays.\nTue-Sat 10-5")
    assert read.opening_hours == "Tu-Sa 10:00-17:00"
    assert [one.offer.kind for one in read.offers] == [*["ticket"] * 4, "discount", "discount"]
    assert not read.not_understood


@pytest.mark.parametrize(
    "text", ["Everything 50% off!", "Adults $9 (10% off online)", "Adults $9 plus 8% sales tax"]
)
def test_a_percentage_that_says_not_for_whom_or_of_what_is_told(text: str) -> None:
    """It is no discount for everybody, and not passed over in silence."""
    read = read_board(text, "US")
    assert not any(isinstance(one.offer, Discount) for one in read.offers)
    assert text.rstrip("!") in " ".join((*read.not_understood, *read.doubts))


def test_two_currencies_are_told_and_none_is_chosen() -> None:
    """Money of two kinds cannot stand on one card."""
    read = read_board("Adults £9, children €5")
    assert read.currency is None
    assert any("EUR and GBP" in doubt for doubt in read.doubts)


@pytest.mark.parametrize("country", ["US", "CA", "AU"])
def test_a_dollar_is_that_of_the_place(country: str) -> None:
    """The country settles which dollar it is."""
    assert read_board("Adults $9", country).currency == {"US": "USD", "CA": "CAD", "AU": "AUD"}[country]


@pytest.mark.parametrize(
    "text",
    [
        "", "\x00\x01\x02" * 100, "\u202eAdults $9\u202c", "MENU\nSoup $5\nBurger $12", "Es war einmal ein König. " * 400,
        "$5 " * 4000, "<b>" * 3000, "9" * 20_000, "Adults $" + "9" * 400, "1-2-" * 2000,
    ],
)  # fmt: skip
def test_any_foreign_text_is_read_without_harm(text: str) -> None:
    """A menu, a story, bytes, marks that turn the writing: nothing breaks, and no ticket of nonsense appears."""
    read = read_board(text, "US")
    assert all(prices_in(offer.offer)[0] < 10_000 for offer in read.offers)


def test_a_text_beyond_the_limit_is_cut_and_says_so() -> None:
    """What lies beyond is not dropped in silence."""
    read = read_board("Adults $9. " + "x" * LONGEST)
    assert any(str(LONGEST) in doubt for doubt in read.doubts)
    assert len(read.offers) == 1


@given(st.text(alphabet="Adultschiren 0123456789$€£.,-:;()+&|/\nMoTuFSabcpm", max_size=120))
def test_no_text_breaks_the_reading(text: str) -> None:
    """Whatever is pasted, an answer comes."""
    read = read_board(text)
    assert all(offer.offer.name for offer in read.offers)
