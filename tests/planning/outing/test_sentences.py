"""Sentences that screens and command line share."""

from decimal import Decimal

from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.result import Purchase
from tripplan.planning.cost import CostItem, OutingCost
from tripplan.planning.outing.sentences import item_sentence, purchase_sentence, total_sentence
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, MoneyRange
from tripplan.values.ranges import Origin, Source

SOURCE = Source(Origin.PARENT, "said so")
FOOD = fact("costs-food", people=4, bought=False, why="as-wished")
PARKING = fact("costs-parking", cars=1)


def dollars(amount: str) -> Money:
    """An amount in USD."""
    return Money(Decimal(amount), "USD")


def item(kind: CostKind, label: Fact, amount: str | None) -> CostItem:
    """An item of a known or unknown amount."""
    return CostItem(kind, label, None if amount is None else dollars(amount), SOURCE)


def test_an_item_names_its_kind_once() -> None:
    """A label that begins with its kind is not given it a second time."""
    assert item_sentence(item(CostKind.FOOD, FOOD, "8.50")) == "Food for 4, packed: $8.50"
    assert (
        item_sentence(item(CostKind.EXTRAS, fact("costs-treats", children=2), "6"))
        == "Extras, treats for 2: $6.00"
    )


def test_what_is_unknown_is_never_zero() -> None:
    """An unknown item says so, and a total without it is a lower bound."""
    assert item_sentence(item(CostKind.PARKING, PARKING, None)) == "Parking: not known"
    total = MoneyRange(dollars("80"), dollars("90"), dollars("110"))
    assert total_sentence(OutingCost((), total, ())) == "$90 ($80 to $110)"
    assert total_sentence(OutingCost((), total, (PARKING,))) == "at least $90 ($80 to $110)"


def test_a_purchase_names_whom_it_lets_in() -> None:
    """Fees cover nobody, so they name nobody."""
    ticket = Purchase("Adult", 2, dollars("14"), dollars("28"), ("Ann", "Bo"), "Adult: $14.00 each.")
    fee = Purchase("Booking fee", 1, dollars("2"), dollars("2"), (), "Booking fee: $2.00 once per order.")
    assert purchase_sentence(ticket) == "2 x Adult for Ann and Bo"
    assert purchase_sentence(fee) == "1 x Booking fee"
