"""Which passes pay: worked by hand on small price boards.

The boards are invented; a household's card with guests, a card per person and a card that other places honour
are common practice, no source. The party is two adults at $14, a child at $9 and a toddler who is free, with
$5 to park: $37 entry and $42 in all for a visit with single tickets.
"""

from datetime import date, time
from decimal import Decimal
from typing import Any

import pytest

from tests.builders import make_household, make_member, make_place
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.places.offers import Pass
from tripplan.documents.places.place import Place
from tripplan.errors import PlanError
from tripplan.language.sentences import fact, say, told
from tripplan.planning.family.family import Family
from tripplan.planning.passes import prices
from tripplan.planning.passes.candidates import holder_sets, last_day_valid
from tripplan.planning.passes.plan import PassPlan, PlannedVisit
from tripplan.planning.passes.sentences import (
    break_even_fact,
    left_out_fact,
    order_fact,
    pass_plan_sentences,
    total_facts,
    visit_fact,
)
from tripplan.planning.passes.which_pays import which_pass_pays
from tripplan.values.money import Money
from tripplan.values.weekday import Weekday

TODAY = date(2026, 12, 1)
WEEK_1, WEEK_2, WEEK_3 = date(2026, 12, 8), date(2026, 12, 15), date(2026, 12, 22)
IN_JUNE, IN_JULY = date(2027, 6, 8), date(2027, 7, 6)

TICKETS = (
    {"name": "Adult", "price": "14.00", "ages": "13+"},
    {"name": "Child", "price": "9.00", "ages": "3-12"},
    {"name": "Small child", "price": "0.00", "ages": "under 3"},
)
EVERYBODY = ({"count": 2, "ages": "18+"}, {"count": 3, "ages": "under 18"})


def usd(amount: str) -> Money:
    """An amount in dollars."""
    return Money(Decimal(amount), "USD")


def museum(*cards: dict[str, Any], **changes: Any) -> Place:
    """The museum with annual passes for the household, unless they say otherwise."""
    passes = [{"kind": "pass", "months": 12, "seats": EVERYBODY, **card} for card in cards]
    return make_place(**{"offers": [*TICKETS, *passes], **changes})


def plan(
    visits: list[tuple[Place, date]], *, family: Family | None = None, names: list[str] | None = None
) -> PassPlan:
    """The plan for visits by everybody, or by some."""
    family = family or Family(make_household())
    party = family.party(names)
    return which_pass_pays(family, [PlannedVisit(place, day, party) for place, day in visits], today=TODAY)


def dollars(text: str) -> int:
    """An amount in cents."""
    return round(float(text) * 100)


def test_a_pass_is_bought_when_it_costs_less_than_the_visits_it_replaces() -> None:
    """Three visits of $37 are $111: a pass at $100 saves $11 and has paid after 100 / 37 = 2.7, so 3 visits.

    Parking is paid either way, 3 x $5.
    """
    card = museum({"name": "Year card", "price": "100"})
    found = plan([(card, WEEK_1), (card, WEEK_2), (card, WEEK_3)])
    assert [(one.offer.name, one.day) for one in found.passes] == [("Year card", WEEK_1)]
    assert found.total.minor == dollars("115")
    assert found.singly is not None
    assert found.singly.minor == dollars("126")
    assert found.saving is not None
    assert found.saving.minor == dollars("11")
    assert [one.total.minor for one in found.visits] == [dollars("5")] * 3
    (even,) = found.break_even
    assert even.saved is not None
    assert (even.bought, even.visits, even.saved.minor, even.pays_after) == (True, 3, dollars("111"), 3)


def test_too_few_visits_are_paid_singly_and_the_answer_says_how_many_it_would_take() -> None:
    """Two visits of $37 are less than $100; it would take three."""
    card = museum({"name": "Year card", "price": "100"})
    found = plan([(card, WEEK_1), (card, WEEK_2)])
    assert found.orders == ()
    assert found.total == found.singly
    (even,) = found.break_even
    assert (even.bought, even.visits, even.pays_after) == (False, 2, 3)


def test_parking_that_a_pass_includes_counts() -> None:
    """At $80, two visits of $37 do not pay for a pass; with 2 x $5 for parking they do, by $4."""
    without = museum({"name": "Year card", "price": "80"})
    with_parking = museum({"name": "Year card", "price": "80", "parking_included": True})
    assert plan([(without, WEEK_1), (without, WEEK_2)]).orders == ()
    found = plan([(with_parking, WEEK_1), (with_parking, WEEK_2)])
    assert found.saving is not None
    assert found.saving.minor == dollars("4")
    assert [one.parking.minor for one in found.visits if one.parking] == [0, 0]


def test_guests_pay_what_the_pass_leaves_them() -> None:
    """A household of one adult with a visiting adult: the pass at $30 leaves the guest $7 of $14.

    Two visits cost 30 + 2 x 7 = $44 with it and 2 x 28 = $56 without, and 2 x $5 to park either way.
    """
    place = museum(
        {
            "name": "Friend",
            "price": "30",
            "seats": [{"count": 1}],
            "guests_at_most": 1,
            "guests_percent_off": 50,
        }
    )
    family = Family(make_household(members=[{"name": "Ann", "born": "1988-05-20"}]))
    party = (*family.household.members, make_member("Guest"))
    visits = [PlannedVisit(place, day, party) for day in (WEEK_1, WEEK_2)]
    found = which_pass_pays(family, visits, today=TODAY)
    assert (found.total.minor, found.singly and found.singly.minor) == (dollars("54"), dollars("66"))


def test_a_second_pass_is_bought_for_its_guests() -> None:
    """A card at $10 for two named adults takes one guest free; with two guests along, two cards cost $20.

    With one card the second guest pays $14: $24. Without any it is 4 x 14 = $56; $5 to park each way.
    """
    pair = {"name": "Pair", "price": "10", "named": True, "seats": [{"count": 2, "ages": "18+"}]}
    place = museum({**pair, "guests_at_most": 1, "guests_percent_off": 100})
    family = Family(make_household())
    party = (*family.party(["Ann", "Bo"]), make_member("Guest"), make_member("Friend"))
    found = which_pass_pays(family, [PlannedVisit(place, WEEK_1, party)], today=TODAY)
    assert [one.holders for one in found.passes] == [("Ann", "Bo"), ("Ann", "Bo")]
    assert (found.total.minor, found.singly and found.singly.minor) == (dollars("25"), dollars("61"))


def test_entry_at_other_places_counts_even_where_the_pass_is_not_from_there() -> None:
    """A garden's pass at $50 opens the museum for half: 37 + 18.50 + 18.50 saved on one and two visits.

    The garden is on another card of the family, and its own visit comes last, so the pass is bought for the
    first visit to the museum.
    """
    garden = museum(
        {"name": "Garden year", "price": "50", "elsewhere": [{"place": "test-museum", "percent_off": 50}]},
        id="garden",
        name="Garden",
    )
    place = museum()
    family = Family(make_household(), (place, garden))
    found = plan([(place, WEEK_1), (place, WEEK_2), (garden, WEEK_3)], family=family)
    assert [(one.place.id, one.day) for one in found.passes] == [("garden", WEEK_1)]
    assert found.total.minor == dollars("50") + 2 * dollars("23.50") + dollars("5")
    assert [one.passes for one in found.visits] == [("Garden year",)] * 3
    unvisited = plan([(place, day) for day in (WEEK_1, WEEK_2, WEEK_3)], family=family)
    assert [one.place.id for one in unvisited.passes] == ["garden"]
    assert unvisited.saving is not None
    assert unvisited.saving.minor == dollars("5.50")


def test_a_pass_counts_no_longer_than_its_months() -> None:
    """Of visits on June 8 and July 6, a pass of one month bought on June 8 covers both only until July 7.

    With the second visit a day later than its last day, two passes at $30 would be needed: each saves $7.
    """
    card = museum({"name": "Month", "price": "30", "months": 1})
    close = plan([(card, IN_JUNE), (card, IN_JULY)])
    assert [(one.day, one.valid_until) for one in close.passes] == [(IN_JUNE, date(2027, 7, 7))]
    assert close.total.minor == dollars("40")
    apart = plan([(card, IN_JUNE), (card, date(2027, 7, 8))])
    assert [one.day for one in apart.passes] == [IN_JUNE, date(2027, 7, 8)]
    assert apart.total.minor == dollars("70")


@pytest.mark.parametrize(
    ("bought", "months", "last"),
    [
        (date(2026, 12, 8), 12, date(2027, 12, 7)),
        (date(2027, 1, 31), 1, date(2027, 2, 28)),
        (date(2027, 1, 1), 12, date(2027, 12, 31)),
        (date(2027, 11, 30), 3, date(2028, 2, 29)),
        (date(2024, 2, 29), 60, date(2029, 2, 28)),
    ],
)
def test_the_last_day_is_the_eve_of_the_same_date(bought: date, months: int, last: date) -> None:
    """A year from December 8 ends on December 7; where the month is too short, with the month.

    Expected: counted on a calendar by hand; common practice, no source.
    """
    assert last_day_valid(bought, months) == last


def test_a_pass_already_held_is_used_while_it_lasts_and_not_bought_twice() -> None:
    """A pass held until December 15 opens two of four visits; a new one at $70 covers two of $37."""
    card = museum({"name": "Year card", "price": "70"})
    owned = HeldPass(place=card.id, offer="Year card", holders=("Ann", "Bo"), valid_until=WEEK_2)
    family = Family(make_household(passes=[owned]), (card,))
    days = (WEEK_1, WEEK_2, WEEK_3, date(2026, 12, 29))
    found = plan([(card, day) for day in days], family=family)
    assert [one.day for one in found.passes] == [WEEK_3]
    assert [one.singly and one.singly.minor for one in found.visits] == [500, 500, 4200, 4200]
    assert found.total.minor == dollars("90")


def test_named_passes_go_to_those_for_whom_they_pay() -> None:
    """A card for one person at $25: over two visits it saves an adult $28 but a child only $18."""
    card = museum({"name": "One", "price": "25", "named": True, "seats": [{"count": 1}]})
    found = plan([(card, WEEK_1), (card, WEEK_2)])
    assert [one.holders for one in found.passes] == [("Ann",), ("Bo",)]
    assert found.total.minor == 2 * dollars("25") + 2 * dollars("9") + 2 * dollars("5")
    until = date(2027, 12, 7)
    what = fact("passes-for", count=2, name="One", holders=("Ann", "Bo"), until=until)
    assert order_fact(found.orders[0]) == fact(
        "passes-order", day=WEEK_1, place="Test museum", what=(what,), price=usd("50")
    )


def test_a_household_buys_as_many_of_a_pass_as_pay() -> None:
    """A one-seat card at $15 saves $28 for each adult and $18 for the child over two visits: three cards."""
    card = museum({"name": "One seat", "price": "15", "seats": [{"count": 1}]})
    found = plan([(card, WEEK_1), (card, WEEK_2)])
    assert found.total.minor == 3 * dollars("15") + 2 * dollars("5")
    what = fact("passes-for-household", count=3, name="One seat", until=date(2027, 12, 7))
    assert order_fact(found.orders[0]) == fact(
        "passes-order", day=WEEK_1, place="Test museum", what=(what,), price=usd("45")
    )


def test_a_named_pass_is_written_out_to_as_many_as_its_seats_take() -> None:
    """Two adult seats and one for anybody let in both adults and either child, never two children."""
    offer = Pass.model_validate(
        {
            "kind": "pass",
            "name": "Three",
            "price": "60",
            "months": 12,
            "named": True,
            "seats": [{"count": 1, "ages": "any"}, {"count": 2, "ages": "18+"}],
        }
    )
    members = make_household().members
    assert holder_sets(offer, members, WEEK_1) == (("Ann", "Bo", "Cy"), ("Ann", "Bo", "Di"))
    open_to_all = offer.model_copy(update={"named": False})
    assert holder_sets(open_to_all, members, WEEK_1) == (("Ann", "Bo", "Cy", "Di"),)


def test_passes_bought_together_bear_tax_each_and_the_fee_of_one_order() -> None:
    """Two cards at $25 with 8 % tax, $1 a ticket and $2 an order: 50 x 1.08 + 2 + 2 = $58.

    Four visits: an adult pays 14 x 1.08 + 1 = $16.12 a visit, $64.48 in all.
    """
    card = museum(
        {"name": "One", "price": "25", "named": True, "seats": [{"count": 1, "ages": "18+"}]},
        fees=[
            {"name": "Order", "price": "2", "per": "order"},
            {"name": "Ticket", "price": "1", "per": "ticket"},
        ],
        sales_tax={"percent": "8"},
    )
    days = (WEEK_1, WEEK_2, WEEK_3, date(2026, 12, 29))
    found = plan([(card, day) for day in days], names=["Ann", "Bo"])
    (order,) = found.orders
    assert order.total.minor == dollars("58")
    assert sum(line.total.minor for line in order.lines) == dollars("58")
    assert [line.name for line in order.lines] == ["One", "Order", "Ticket", "Sales tax"]
    # Single visits: 2 x 16.12 + 2 for the order + 5 to park = 39.24 each.
    assert (found.total.minor, found.singly and found.singly.minor) == (dollars("78"), dollars("156.96"))


def test_of_equal_plans_the_one_with_fewer_passes_then_the_first_on_the_card_wins() -> None:
    """A pass that saves nothing stays in the shop; of two alike, the first on the card is bought."""
    even = museum({"name": "Even", "price": "74"})
    assert plan([(even, WEEK_1), (even, WEEK_2)]).orders == ()
    alike = museum({"name": "First", "price": "50"}, {"name": "Second", "price": "50"})
    found = plan([(alike, WEEK_1), (alike, WEEK_2)])
    assert [one.offer.name for one in found.passes] == ["First"]


def test_a_pass_is_bought_for_the_first_visit_that_needs_it() -> None:
    """On a free day nobody needs the pass, so it is bought for the next visit."""
    place = museum(
        offers=[
            {"name": "Open day", "price": "0", "last_day": WEEK_1},
            *TICKETS,
            {"kind": "pass", "name": "Year card", "price": "70", "months": 12, "seats": EVERYBODY},
        ]
    )
    found = plan([(place, WEEK_1), (place, WEEK_2), (place, WEEK_3)])
    assert [one.day for one in found.passes] == [WEEK_2]


def test_a_pass_good_at_certain_times_only_counts_then() -> None:
    """A morning pass is worth nothing to those who come in the afternoon, parking included."""
    card = museum({"name": "Morning", "price": "20", "valid": "10:00-12:00", "parking_included": True})
    party = make_household().members
    morning = [PlannedVisit(card, WEEK_1, party, at=time(11)), PlannedVisit(card, WEEK_2, party)]
    afternoon = [PlannedVisit(card, day, party, at=time(14)) for day in (WEEK_1, WEEK_2)]
    family = Family(make_household())
    assert len(which_pass_pays(family, morning, today=TODAY).passes) == 1
    late = which_pass_pays(family, afternoon, today=TODAY)
    assert (late.passes, late.break_even) == ((), ())


def test_where_only_a_pass_opens_the_door_it_is_bought() -> None:
    """A swimming hall for members: no single price to compare with, and the sentences say so."""
    club = make_place(
        offers=[{"kind": "pass", "name": "Club", "price": "60", "months": 12, "seats": [{"count": 6}]}]
    )
    found = plan([(club, WEEK_1)])
    assert (found.singly, found.saving) == (None, None)
    assert found.total.minor == dollars("65")
    assert found.break_even[0].saved is None
    assert say("passes-not-without") in pass_plan_sentences(found)
    card = fact("passes-of", name="Club", place="Test museum")
    assert break_even_fact(found.break_even[0]) == fact("passes-needed", card=card, price=usd("60"))
    assert visit_fact(found.visits[0]).code == "passes-visit-not-without"


def test_visits_that_cannot_be_are_left_out_with_the_reason() -> None:
    """Past, closed, in another currency, without anybody grown up: each is named, the rest is planned."""
    card = museum({"name": "Year card", "price": "100"})
    abroad = museum(id="abroad", currency="CAD")
    strict = museum(id="strict", must_be_accompanied=[{"ages": "under 12", "by": "18+"}])
    family = Family(make_household())
    party = family.household.members
    visits = [
        PlannedVisit(card, date(2026, 11, 24), party),
        PlannedVisit(card, date(2026, 12, 7), party),
        PlannedVisit(abroad, WEEK_1, party),
        PlannedVisit(strict, WEEK_1, family.party(["Cy"])),
        PlannedVisit(card, WEEK_1, party),
    ]
    found = which_pass_pays(family, visits, today=TODAY)
    assert [one.visit for one in found.left_out] == visits[:4]
    assert [one.visit for one in found.visits] == visits[4:]
    why = say("hours-closed-weekday", day=Weekday.MONDAY)
    assert left_out_fact(found.left_out[1]) == fact(
        "passes-left-out", day=date(2026, 12, 7), place="Test museum", why=why
    )
    assert all(one.reasons for one in found.left_out)
    nothing = which_pass_pays(family, visits[:2], today=TODAY)
    assert (nothing.total.minor, nothing.orders) == (0, ())
    assert say("passes-no-visit-can-be") in pass_plan_sentences(nothing)


def test_a_pass_of_a_place_abroad_is_weighed_at_the_own_rate() -> None:
    """At 1.25 dollars a year card of 20 euro is $25, single visits $46.25 each; the rate is said."""
    rate = {"currency": "EUR", "worth": "1.25", "on": "2026-11-20"}
    card = museum({"name": "Year card", "price": "20"}, currency="EUR")
    family = Family(make_household(exchange_rates=[rate]), (card,))
    visits = [PlannedVisit(card, day, family.household.members) for day in (WEEK_1, WEEK_2)]
    found = which_pass_pays(family, visits, today=TODAY)
    assert not found.left_out
    assert [(order.total.minor, order.total.currency) for order in found.orders] == [(2500, "USD")]
    assert found.notes[-1].startswith("1 EUR counted as 1.25 USD")


def test_unknown_parking_is_left_out_and_said() -> None:
    """Parking that the card does not tell is no zero: the visit says None, the plan says so in words."""
    card = museum({"name": "Year card", "price": "100"}, parking={})
    found = plan([(card, WEEK_1)])
    assert found.visits[0].parking is None
    assert found.notes == (say("passes-parking-unknown", places="Test museum"),)


def test_a_pass_that_helps_nobody_never_pays() -> None:
    """For a toddler who is free anyway no number of visits pays for a pass."""
    card = museum({"name": "Year card", "price": "10"})
    found = plan([(card, WEEK_1)], names=["Di"])
    assert found.break_even[0].pays_after is None
    assert break_even_fact(found.break_even[0]).code == "passes-never-pays"


def test_questions_without_meaning_are_refused() -> None:
    """No visits, or visits more than twelve months apart; twelve months less a day is fine."""
    card = museum({"name": "Year card", "price": "100"})
    with pytest.raises(PlanError, match="no visit"):
        plan([])
    with pytest.raises(PlanError, match="more than 12 months"):
        plan([(card, WEEK_1), (card, date(2027, 12, 8))])
    assert len(plan([(card, WEEK_1), (card, date(2027, 12, 7))]).visits) == 2


def test_more_ways_than_can_be_compared_are_refused_in_words() -> None:
    """Thirteen people with a card each make 8192 hands; the answer says so instead of taking hours."""
    many = make_household(members=[{"name": f"P{n}", "born": "1990-01-01"} for n in range(13)])
    card = museum({"name": "One", "price": "25", "named": True, "seats": [{"count": 1}]})
    with pytest.raises(PlanError, match="too many ways to combine passes at Test museum"):
        plan([(card, WEEK_1)], family=Family(many))


def test_the_plan_is_said_in_plain_sentences() -> None:
    """What to buy, what it comes to, when it has paid."""
    card = museum({"name": "Year card", "price": "100"})
    found = plan([(card, WEEK_1), (card, WEEK_2), (card, WEEK_3)])
    what = fact("passes-for-household", count=1, name="Year card", until=date(2027, 12, 7))
    order = fact("passes-order", day=WEEK_1, place="Test museum", what=(what,), price=usd("100"))
    three = fact("passes-visits", count=3)
    paid_back = fact(
        "passes-paid-back",
        card=fact("passes-of", name="Year card", place="Test museum"),
        price=usd("100"),
        day=WEEK_3,
        number=3,
        saved=usd("111"),
        visits=three,
    )
    expected = (
        order,
        fact("passes-all-in", visits=three, count=3, total=usd("115")),
        fact("passes-saved", singly=usd("126"), saving=usd("11")),
        paid_back,
    )
    assert (
        order_fact(found.orders[0]),
        *total_facts(found),
        break_even_fact(found.break_even[0]),
    ) == expected
    assert pass_plan_sentences(found)[:4] == told(expected)
    single = total_facts(plan([(card, WEEK_1)]))
    assert single == (fact("passes-none-pays", visits=fact("passes-visits", count=1), total=usd("42")),)


def mill(**changes: Any) -> Place:
    """Another place with the museum's tickets and free parking."""
    return make_place(id="mill", name="Mill", parking={"price": "0"}, offers=TICKETS, **changes)


BOTH = (
    {"name": "Both, adult", "price": "20", "ages": "13+", "also_at": [{"place": "mill", "within_days": 8}]},
    {"name": "Both, child", "price": "17", "ages": "3-12", "also_at": [{"place": "mill", "within_days": 7}]},
)


def test_a_ticket_for_two_places_is_bought_where_both_are_visited_in_time() -> None:
    """Two adults pay $20 for both places in place of $14 + $14; the child's ticket ends a day too early.

    Museum and mill a week later: 2 x 20 + 9 + 9 + parking 5 = $63; singly 37 + 5 + 37 = $79.
    """
    card = museum(offers=[*TICKETS, *BOTH])
    found = plan([(card, WEEK_1), (mill(), WEEK_2)])
    assert sorted((one.offer.name, one.holders) for one in found.passes) == [
        ("Both, adult", ("Ann",)),
        ("Both, adult", ("Bo",)),
    ]
    assert found.total.minor == dollars("63")
    assert found.singly is not None
    assert found.singly.minor == dollars("79")
    assert [one.total.minor for one in found.visits] == [dollars("14"), dollars("9")]
    assert {one.valid_until for one in found.passes} == {WEEK_2}
    (even,) = found.break_even
    assert (even.bought, even.pays_after, even.pays_on) == (True, 2, WEEK_2)


@pytest.mark.parametrize("days", [(WEEK_2, WEEK_1), (WEEK_1, WEEK_3)])
def test_it_is_not_bought_where_the_other_place_comes_first_or_too_late(days: tuple[date, date]) -> None:
    """The mill does not sell it, and two weeks later it counts no more."""
    found = plan([(museum(offers=[*TICKETS, *BOTH]), days[0]), (mill(), days[1])])
    assert found.passes == ()
    assert found.total == found.singly


def test_it_counts_once_at_the_other_place() -> None:
    """Of two visits to the mill within its days the first is covered: 40 + 2 x 9 + 5, then 37 again."""
    first = date(2026, 12, 9)
    found = plan([(museum(offers=[*TICKETS, *BOTH]), WEEK_1), (mill(), first), (mill(), WEEK_2)])
    by_day = {one.visit.day: one.total.minor for one in found.visits}
    assert by_day[first] < by_day[WEEK_2] == dollars("37")


def test_a_family_ticket_for_two_places_is_one_purchase() -> None:
    """One at $50 in place of 37 + 37: with parking $55."""
    both = {
        "kind": "bundle",
        "name": "Both",
        "price": "50",
        "seats": EVERYBODY,
        "also_at": [{"place": "mill"}],
    }
    found = plan([(museum(offers=[*TICKETS, both]), WEEK_1), (mill(), WEEK_1)])
    assert [one.offer.name for one in found.passes] == ["Both"]
    assert found.total.minor == dollars("55")


def test_one_that_asks_for_more_than_a_pass_can_say_is_left_to_single_visits() -> None:
    """With a proof it stays an offer of the day."""
    asking = [{**one, "needs": ["student"]} for one in BOTH]
    found = plan([(museum(offers=[*TICKETS, *asking]), WEEK_1), (mill(), WEEK_2)])
    assert found.passes == ()


def test_where_they_make_too_many_ways_they_are_left_out_and_that_is_told(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Three people with a ticket each are eight ways; a plan that compares four has none for two places."""
    monkeypatch.setattr(prices, "WAYS_AT_MOST", 4)
    visits = [(museum(offers=[*TICKETS, *BOTH]), WEEK_1), (mill(), date(2026, 12, 10))]
    found = plan(visits)
    assert found.passes == ()
    assert say("notes-two-places-left-out") in found.notes
    assert say("notes-two-places-left-out") not in plan(visits[:1]).notes


def test_one_held_already_lets_its_holder_in_at_the_other_place_alone() -> None:
    """Ann's ticket counts at the mill, not at the museum again: 42, then 37 - 14 = 23."""
    held = {"place": "test-museum", "offer": "Both, adult", "holders": ["Ann"], "valid_until": "2026-12-20"}
    card = museum(offers=[*TICKETS, *BOTH])
    family = Family(make_household(passes=[held]), (card,))
    found = plan([(mill(), WEEK_1), (card, WEEK_2)], family=family)
    assert [one.total.minor for one in found.visits] == [dollars("23"), dollars("42")]
