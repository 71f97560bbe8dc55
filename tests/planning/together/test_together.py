"""Going with others: worked by hand on small price boards.

The boards are invented; a price from so many people on, a household's card with guests and a voucher for each
order are common practice, no source. An adult pays $14 and a child of 3 to 12 $9; smaller ones are free.

    Reed   two adults, two children    28 + 18 = $46
    Marsh  one adult, two children     14 + 18 = $32
    Hill   one adult, a baby                     $14
"""

from datetime import date, datetime
from decimal import Decimal
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.builders import make_place
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.place import Place
from tripplan.errors import CurrencyMismatch, PlanError, UnknownName
from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.planning.together.go import go_together
from tripplan.planning.together.sentences import share_fact, together_facts
from tripplan.planning.together.shapes import HouseholdGroup, Together
from tripplan.values.money import Money

TODAY = date(2026, 12, 1)
ARRIVAL = datetime(2026, 12, 8, 10, 0, tzinfo=ZoneInfo("America/Chicago"))
BORN = {"adult": "1988-05-20", "child": "2018-03-11", "baby": "2026-02-01"}
TICKETS = (
    {"name": "Adult", "price": "14.00", "ages": "13+"},
    {"name": "Child", "price": "9.00", "ages": "3-12"},
    {"name": "Small child", "price": "0.00", "ages": "under 3"},
)
GROUP_PRICE = {"name": "From eight on", "price": "10.00", "ages": "3+", "at_least": 8}


def group(name: str, *people: str, seats: int = 5, paid: int = 0, card: str | None = None) -> HouseholdGroup:
    """A household of so many kinds of people, named after it; with a card of the museum held by all."""
    members = tuple(
        Member.model_validate({"name": f"{name} {number}", "born": BORN[kind]})
        for number, kind in enumerate(people, start=1)
    )
    names = tuple(member.name for member in members)
    held = HeldPass(place="test-museum", offer=card or "none", holders=names, valid_until=date(2027, 1, 1))
    return HouseholdGroup(name, members, seats, Money.from_minor(paid, "USD"), (held,) if card else ())


REED = group("Reed", "adult", "adult", "child", "child")
MARSH = group("Marsh", "adult", "child", "child")
HILL = group("Hill", "adult", "baby")


def museum(*offers: dict[str, Any], **changes: Any) -> Place:
    """The museum with further offers."""
    return make_place(**{"offers": [*TICKETS, *offers], **changes})


def card(name: str, **changes: Any) -> dict[str, Any]:
    """A pass that nobody buys for one visit."""
    return {
        "kind": "pass",
        "name": name,
        "price": "500",
        "months": 12,
        "seats": [{"count": 8}],
        **changes,
    }


def together(place: Place, *groups: HouseholdGroup, **more: Any) -> Together:
    """The answer where everybody may enter."""
    found = go_together(groups, place, ARRIVAL, today=TODAY, **more)
    assert isinstance(found, Together)
    return found


def usd(amount: str) -> Money:
    """An amount in dollars."""
    return Money(Decimal(amount), "USD")


def amounts(found: Together) -> list[int]:
    """Each household's part in cents."""
    return [share.amount.minor for share in found.shares]


def test_a_group_price_reached_together_is_split_by_what_each_would_have_paid() -> None:
    """Eight who pay get $10 each: $80 instead of 46 + 32 + 14 = $92, and the baby is free.

    80 x 46 / 92 = 40.00, 80 x 32 / 92 = 27.826..., 80 x 14 / 92 = 12.173...; the odd cent goes to the larger
    fraction: 40.00, 27.83, 12.17.
    """
    found = together(museum(GROUP_PRICE), REED, MARSH, HILL)
    assert found.total.minor == 8000
    assert amounts(found) == [4000, 2783, 1217]
    assert found.group_offers == ("From eight on",)
    assert found.saving is not None
    assert found.saving.minor == 1200
    assert [order.groups for order in found.orders] == [("Reed", "Marsh", "Hill")]


def test_money_paid_in_advance_is_settled_to_the_cent() -> None:
    """Marsh has paid $50; Reed pays the $30 left at the till, then owes Marsh $10, and Hill owes $12.17."""
    paid = group("Marsh", "adult", "child", "child", paid=5000)
    found = together(museum(GROUP_PRICE), REED, paid, HILL)
    assert found.at_the_till is not None
    assert (found.at_the_till.group, found.at_the_till.amount.minor) == ("Reed", 3000)
    assert {(t.payer, t.receiver, t.amount.minor) for t in found.transfers} == {
        ("Hill", "Marsh", 1217),
        ("Reed", "Marsh", 1000),
    }
    by_hill = together(museum(GROUP_PRICE), REED, paid, HILL, payer="Hill")
    assert {(t.payer, t.receiver, t.amount.minor) for t in by_hill.transfers} == {
        ("Reed", "Marsh", 2217),
        ("Reed", "Hill", 1783),
    }


def test_who_settles_at_the_till_is_chosen_so_that_few_payments_are_left() -> None:
    """Where Marsh and Hill have paid their parts, Reed pays its own at the till and nobody owes anything."""
    found = together(museum(), REED, group("Marsh", "adult", "child", "child", paid=3200))
    assert found.at_the_till is not None
    assert (found.at_the_till.group, found.transfers) == ("Reed", ())
    everything = together(museum(), group("Reed", "adult", paid=1400))
    assert (everything.at_the_till, everything.transfers) == (None, ())


def test_too_much_paid_in_advance_comes_back() -> None:
    """Of $20 paid for one adult, $6 come back from the place."""
    found = together(museum(), group("Reed", "adult", paid=2000))
    assert found.at_the_till is not None
    assert found.at_the_till.amount.minor == -600
    told = together_facts(found)
    part = fact("together-pays-paid", group="Reed", amount=usd("14"), paid=usd("20"))
    assert fact("together-as-alone", part=part) in told
    assert fact("together-paid-too-much", back=usd("6"), group="Reed") in told


def test_one_more_person_with_whom_everyone_pays_less_is_found() -> None:
    """Reed and Marsh are seven who pay; an eighth opens the price of $10.

    With an adult ($14 alone) $80 are split by 46 : 32 : 14 as above; with a child ($9 alone) by 46 : 32 : 9:
    80 x 46 / 87 = 42.298..., 80 x 32 / 87 = 29.425..., so 42.30 and 29.43 (fractions of a cent .85, .53, .62
    for 8.2758...; two cents are left over, one each for .85 and .62: the second is 29.42).
    """
    found = together(museum(GROUP_PRICE), REED, MARSH)
    assert found.total.minor == 7800
    assert [(more.count, more.who) for more in found.more] == [(1, "adult"), (1, "child")]
    assert [[amount.minor for amount in more.amounts] for more in found.more] == [[4000, 2783], [4230, 2942]]
    assert found.more[0].offers == ("From eight on",)
    assert found.more[0].total.minor == 8000


def test_nobody_is_asked_along_in_vain() -> None:
    """Without a group price, or with one out of reach, more people change nothing for the others.

    From 17 on, 10 more adults open the price of $10 ($170 for $218); 10 more children do not, as single
    tickets for three adults and 14 children come to 42 + 126 = $168. A booking fee of $1 that one more
    household helps to pay is no reason to ask.
    """
    assert together(museum(), REED, MARSH).more == ()
    assert together(museum(fees=[{"name": "Booking", "price": "1"}]), REED, MARSH).more == ()
    far = {**GROUP_PRICE, "at_least": 18}
    assert together(museum(far), REED, MARSH).more == ()
    near = {**GROUP_PRICE, "at_least": 17}
    assert [(m.count, m.who) for m in together(museum(near), REED, MARSH).more] == [(10, "adult")]


def test_a_household_that_would_be_free_alone_pays_nothing() -> None:
    """Reed holds a card with guests at half price: Marsh pays $16 instead of $32, Reed stays free."""
    place = museum(card("Year", guests_at_most=4, guests_percent_off=50))
    found = together(place, group("Reed", "adult", "adult", "child", "child", card="Year"), MARSH)
    assert amounts(found) == [0, 1600]


def test_a_households_pass_is_for_its_own_people() -> None:
    """Eight seats on Reed's card are of no use to Marsh; two cards take one guest each."""
    reed = group("Reed", "adult", "adult", "child", "child", card="Year")
    assert amounts(together(museum(card("Year")), reed, MARSH)) == [0, 3200]
    with_guest = museum(card("Year", guests_at_most=1, guests_percent_off=100))
    marsh = group("Marsh", "adult", "child", "child", card="Year")
    two_adults = group("Hill", "adult", "adult", "adult")
    found = together(with_guest, reed, marsh, two_adults)
    assert amounts(found) == [0, 0, 1400]


def test_the_seats_of_a_pass_go_to_those_for_whom_they_are_worth_most() -> None:
    """Two seats for anybody, among two adults at $14 and two children at $9: the adults take them."""
    place = museum(card("Pair", seats=[{"count": 2}]))
    found = together(place, group("Reed", "adult", "adult", "child", "child", card="Pair"), HILL)
    assert found.total.minor == 1800 + 1400


def test_a_named_pass_and_one_of_another_place_count_too() -> None:
    """Reed 1 alone is named on a card; Marsh holds a garden's card that halves the museum's prices."""
    named = card("Own name", named=True, seats=[{"count": 1}])
    garden = make_place(
        id="garden",
        offers=[card("Garden", elsewhere=[{"place": "test-museum", "percent_off": 50}])],
    )
    until = date(2027, 1, 1)
    reed = HouseholdGroup(
        "Reed",
        REED.members,
        5,
        Money.zero("USD"),
        (HeldPass(place="test-museum", offer="Own name", holders=("Reed 1",), valid_until=until),),
    )
    marsh = HouseholdGroup(
        "Marsh",
        MARSH.members,
        5,
        Money.zero("USD"),
        (
            HeldPass(place="garden", offer="Garden", holders=("Marsh 1",), valid_until=until),
            HeldPass(place="nowhere", offer="Lost", holders=("Marsh 1",), valid_until=until),
        ),
    )
    found = together(museum(named), reed, marsh, other_places=(garden,))
    assert amounts(found) == [3200, 1600]


def test_one_household_may_buy_a_pass_for_the_day() -> None:
    """A card at $20 for Reed, with guests free, lets in everybody: $20 for $78."""
    bargain = card("Bargain", price="20", guests_at_most=4, guests_percent_off=100)
    found = together(museum(bargain), MARSH, group("Hill", "adult", "adult", "adult", "adult"))
    assert found.total.minor == 2000


def test_two_orders_are_placed_where_two_vouchers_do_more_than_one() -> None:
    """$10 off an order: 36 + 22 = $58 in two orders, $68 in one."""
    place = museum(vouchers=[{"name": "Leaflet", "amount_off": "10"}])
    found = together(place, REED, MARSH)
    assert [order.groups for order in found.orders] == [("Reed",), ("Marsh",)]
    assert amounts(found) == [3600, 2200]
    assert found.saving is not None
    assert found.saving.minor == 0
    assert together_facts(found)[0] == fact(
        "together-entry", total=usd("58"), how=fact("together-order-each")
    )


def test_a_household_that_could_not_come_in_alone_is_told_so() -> None:
    """Two children without an adult come in with Reed; their part is that of their own tickets."""
    strict = museum(must_be_accompanied=[{"ages": "under 12", "by": "18+"}])
    found = together(strict, REED, group("Cousins", "child", "child"))
    assert amounts(found) == [4600, 1800]
    assert isinstance(found.shares[1].alone, NoAdmission)
    assert found.shares[1].less_than_alone is None
    assert found.saving is None
    told = share_fact(found.shares[1])
    assert told.code == "together-not-alone"
    assert told.values["part"] == fact("together-pays", group="Cousins", amount=usd("18"))
    assert told.values["why"]
    assert fact("together-rule-not-alone") in together_facts(found)
    alone = go_together([group("Cousins", "child", "child")], strict, ARRIVAL, today=TODAY)
    assert isinstance(alone, NoAdmission)


def test_seats_are_counted_for_everybody_babies_included() -> None:
    """Nine people and eight seats: one is missing, and children mean a caution about their seats."""
    few = [
        group("Reed", "adult", "adult", "child", "child"),
        group("Marsh", "adult", "child", "child", seats=3),
    ]
    found = together(museum(), *few, group("Hill", "adult", "baby", seats=0))
    assert (found.seats.people, found.seats.seats, found.seats.missing) == (9, 8, 1)
    people = fact("together-people", count=9)
    assert fact("together-seats-missing", missing=1, people=people, seats=8) in together_facts(found)
    assert found.cautions[0].code == "cautions-seat-moves-along"
    assert together(museum(), group("Hill", "adult")).cautions == ()


def test_people_of_one_name_are_told_apart() -> None:
    """Two Anns come in; each order line names the household behind the name, other names stay."""

    def named(name: str, *people: str) -> HouseholdGroup:
        members = tuple(Member.model_validate({"name": one, "born": BORN["adult"]}) for one in people)
        return HouseholdGroup(name, members, 5, Money.zero("USD"))

    found = together(museum(), named("Reed", "Ann", "Bo"), named("Marsh", "Ann"))
    assert set(found.orders[0].admission.shares) == {"Ann (Reed)", "Bo", "Ann (Marsh)"}


def test_questions_without_meaning_are_refused() -> None:
    """No household, a name twice, nobody coming, negative figures, a stranger who pays, another currency."""
    place = museum()

    def ask(*groups: HouseholdGroup, **more: Any) -> None:
        go_together(groups, place, ARRIVAL, today=TODAY, **more)

    with pytest.raises(PlanError, match="no household"):
        ask()
    with pytest.raises(PlanError, match="twice: Reed"):
        ask(REED, REED)
    with pytest.raises(PlanError, match="nobody of Reed"):
        ask(group("Reed"))
    with pytest.raises(PlanError, match="not negative"):
        ask(group("Reed", "adult", seats=-1))
    with pytest.raises(PlanError, match="not negative"):
        ask(group("Reed", "adult", paid=-1))
    with pytest.raises(UnknownName):
        ask(REED, payer="Marsh")
    with pytest.raises(CurrencyMismatch):
        ask(HouseholdGroup("Reed", REED.members, 5, Money.zero("EUR")))


def test_everything_is_told() -> None:
    """Price, parts, rule, seats and payments; an adult more is told with what everyone then pays."""
    told = together_facts(together(museum(GROUP_PRICE), REED, MARSH, HILL))

    def pays(group: str, amount: str, alone: str) -> Fact:
        part = fact("together-pays", group=group, amount=usd(amount))
        return fact("together-instead", part=part, alone=usd(alone))

    reached = (fact("together-offer", name="From eight on"),)
    how = fact("together-one-order")
    assert told[:6] == (
        fact("together-entry-saves", total=usd("80"), how=how, saves=usd("12")),
        fact("together-reached", offers=reached),
        pays("Reed", "40.00", "46"),
        pays("Marsh", "27.83", "32"),
        pays("Hill", "12.17", "14"),
        fact("together-rule"),
    )
    assert fact("together-seats", seats=15, people=fact("together-people", count=9)) in told
    assert told[-3:] == (
        fact("together-pays-rest", group="Reed", amount=usd("80")),
        fact("together-transfer", payer="Marsh", receiver="Reed", amount=usd("27.83")),
        fact("together-transfer", payer="Hill", receiver="Reed", amount=usd("12.17")),
    )
    less = together_facts(together(museum(GROUP_PRICE), REED, MARSH))
    parts = (
        fact("together-less", group="Reed", amount=usd("40"), before=usd("46")),
        fact("together-less", group="Marsh", amount=usd("27.83"), before=usd("32")),
    )
    who = fact("together-more-adults", count=1)
    assert fact("together-more-reached", who=who, offers=reached, parts=parts) in less


kinds = st.sampled_from(("adult", "adult", "child", "child", "baby"))
households = st.lists(
    st.tuples(st.lists(kinds, min_size=1, max_size=4), st.integers(0, 6000)), min_size=1, max_size=4
)
special: tuple[dict[str, Any], ...] = (
    GROUP_PRICE,
    {"name": "From four on", "price": "11.25", "at_least": 4, "one_free_per": 3},
    {
        "kind": "bundle",
        "name": "Family",
        "price": "33.10",
        "seats": [{"count": 2}, {"count": 3, "ages": "3-12"}],
    },
    {"name": "Beside an adult", "price": "4.44", "ages": "3-12", "companions": {"each_allows": 1}},
)
boards = st.sets(st.integers(0, len(special) - 1)).map(lambda some: [special[n] for n in sorted(some)])


@settings(max_examples=60, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
@given(
    households,
    boards,
    st.sampled_from(
        ([], [{"name": "Leaflet", "amount_off": "7.77"}], [{"name": "Mail", "percent_off": "12.5"}])
    ),
    st.sampled_from(([], [{"ages": "under 12", "by": "18+"}])),
    st.sampled_from((None, {"percent": "8.25"})),
)
def test_parts_and_payments_add_up_for_any_board(
    people: list[tuple[list[str], int]],
    board: list[dict[str, Any]],
    vouchers: list[dict[str, str]],
    accompanied: list[dict[str, str]],
    tax: dict[str, str] | None,
) -> None:
    """Parts add up to the price, which no other way of ordering beats; payments leave nobody anything open.

    Nobody pays more than alone where everybody could have come alone: orders are placed apart where that is
    cheaper, so the price is at most the sum of the single ones; the tests of the split have the proof.
    """
    place = museum(*board, vouchers=vouchers, must_be_accompanied=accompanied, sales_tax=tax)
    groups = [group(f"H{n}", *who, paid=paid) for n, (who, paid) in enumerate(people)]
    party = [member for one in groups for member in one.members]
    found = go_together(groups, place, ARRIVAL, today=TODAY, more_at_most=1)
    in_one = cheapest_admission(place, party, ARRIVAL, today=TODAY)
    if isinstance(found, NoAdmission):
        assert isinstance(in_one, NoAdmission)
        return
    assert sum(amounts(found)) == found.total.minor
    assert found.total.minor == sum(order.admission.total.minor for order in found.orders)
    if isinstance(in_one, Admission):
        assert found.total.minor <= in_one.total.minor
    if all(isinstance(share.alone, Admission) for share in found.shares):
        assert all(s.less_than_alone is not None and s.less_than_alone.minor >= 0 for s in found.shares)
    left = {share.group: share.paid.minor - share.amount.minor for share in found.shares}
    if found.at_the_till is not None:
        left[found.at_the_till.group] += found.at_the_till.amount.minor
    for transfer in found.transfers:
        assert transfer.amount.minor > 0
        left[transfer.payer] += transfer.amount.minor
        left[transfer.receiver] -= transfer.amount.minor
    assert not any(left.values())
    assert len(found.transfers) <= len(groups) - 1
    for more in found.more:
        assert all(100 * a.minor <= 98 * b for a, b in zip(more.amounts, amounts(found), strict=True))
