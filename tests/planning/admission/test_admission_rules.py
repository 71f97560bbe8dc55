"""One test for each rule of a price board; the sums are worked by hand beside the boards."""

from collections.abc import Callable
from datetime import date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tests.builders import make_place
from tests.planning.admission.price_boards import ARRIVAL, DAY, TODAY, person
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.errors import PlanError
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission

Buy = Callable[..., tuple[str, dict[str, int]]]
Ask = Callable[..., Admission | NoAdmission]
Family = Callable[..., tuple[Member, ...]]

ADULT = {"name": "Adult", "price": "12", "ages": "18+"}
CHILD = {"name": "Child", "price": "7", "ages": "under 18"}
PAIR = [{"count": 2, "ages": "18+"}, {"count": 3, "ages": "under 18"}]


def held(offer: str = "Card", holders: tuple[str, ...] = ("Ann",), place: str = "test-museum") -> HeldPass:
    """A pass that is still good on the day."""
    return HeldPass(place=place, offer=offer, holders=holders, valid_until=DAY)


def test_bands_count_completed_months(buy: Buy) -> None:
    """Under two, months decide; the day before a birthday still counts as the younger age."""
    board = [
        {"name": "Baby", "price": "1", "ages": "under 6 months"},
        {"name": "Toddler", "price": "2", "ages": "6-23 months"},
        {"name": "Older", "price": "3", "ages": "2+"},
    ]
    born = {"A": "2026-06-09", "B": "2026-06-08", "C": "2024-12-09", "D": "2024-12-08"}
    party = tuple(Member.model_validate({"name": name, "born": day}) for name, day in born.items())
    assert buy(party, offers=board) == ("8.00", {"Baby": 1, "Toddler": 2, "Older": 1})


def test_a_status_opens_its_ticket_to_its_holders_only(buy: Buy, family: Family) -> None:
    """A student ticket is for the student; the other pays full price."""
    student = {"name": "Student", "price": "5", "needs": ["student"]}
    assert buy(family(Ann=30, Bo=(20, "student")), offers=[ADULT, student]) == (
        "17.00",
        {"Adult": 1, "Student": 1},
    )


def test_one_status_covers_its_holder_and_others(buy: Buy, family: Family) -> None:
    """An educator card for three people takes its holder and two more; the fourth pays."""
    card = {"name": "Educator", "price": "4", "needs": ["educator"], "one_status_covers": 3}
    party = family(Ann=(40, "educator"), Bo=40, Cy=8, Di=9)
    assert buy(party, offers=[ADULT, CHILD, card]) == ("19.00", {"Educator": 3, "Child": 1})


def test_children_free_next_to_a_paying_adult(buy: Buy, family: Family) -> None:
    """Two free children for each paying adult; the third pays."""
    free = {"name": "Free child", "price": "0", "ages": "under 6", "companions": {"each_allows": 2}}
    party = family(Ann=30, A=2, B=3, C=4)
    assert buy(party, offers=[ADULT, CHILD, free]) == ("19.00", {"Adult": 1, "Child": 1, "Free child": 2})


def test_an_adult_may_pay_so_that_children_go_free(buy: Buy, family: Family) -> None:
    """A resident who could enter free pays 6 when that brings in two children who would pay 7 each."""
    board = [
        {"name": "Adult", "price": "6", "ages": "18+"},
        CHILD,
        {"name": "Resident", "price": "0", "needs": ["resident"]},
        {"name": "Free child", "price": "0", "ages": "under 6", "companions": {"each_allows": 2}},
    ]
    party = family(Ann=(30, "resident"), A=2, B=3)
    assert buy(party, offers=board) == ("6.00", {"Adult": 1, "Free child": 2})


def test_a_carer_goes_free_beside_the_person_cared_for(buy: Buy, family: Family) -> None:
    """The companion need not pay where the card does not ask for it, but must be somebody else."""
    carer = {
        "name": "Carer",
        "price": "0",
        "ages": "16+",
        "companions": {"ages": "any", "needs": ["disabled visitor"], "must_pay": False},
    }
    party = family(Ann=40, Bo=(40, "disabled visitor"))
    assert buy(party, offers=[ADULT, carer]) == ("12.00", {"Adult": 1, "Carer": 1})
    alone = family(Bo=(40, "disabled visitor"))
    assert buy(alone, offers=[ADULT, carer]) == ("12.00", {"Adult": 1})


def test_a_pass_counts_as_paid_for_companions(buy: Buy, family: Family) -> None:
    """A child goes free beside a member who shows a pass."""
    board = [
        ADULT,
        CHILD,
        {"name": "Card", "kind": "pass", "price": "50", "months": 12, "seats": [{"count": 1, "ages": "18+"}]},
        {"name": "Free child", "price": "0", "ages": "under 6", "companions": {}},
    ]
    assert buy(family(Ann=30, A=3), offers=board, held=(held(),)) == ("0.00", {"Card": 1, "Free child": 1})


def test_a_group_price_needs_its_number_and_frees_leaders(buy: Buy, family: Family) -> None:
    """From four payers 5 each, one leader free per four: 4 x 5 for five people; three pay single prices."""
    group = {"name": "Group", "price": "5", "at_least": 4, "one_free_per": 4}
    party = family(Ann=40, A=8, B=8, C=9, D=9)
    assert buy(party, offers=[ADULT, CHILD, group]) == ("20.00", {"Group": 4, "Group: free leader": 1})
    assert buy(party[:3], offers=[ADULT, CHILD, group]) == ("26.00", {"Adult": 1, "Child": 2})


def test_a_ticket_may_be_limited_for_one_party(buy: Buy, family: Family) -> None:
    """Two at the special price, the third at the usual one."""
    special = {"name": "Special", "price": "3", "ages": "under 18", "at_most": 2}
    assert buy(family(A=8, B=9, C=10), offers=[CHILD, special]) == ("13.00", {"Child": 1, "Special": 2})


def test_a_bundle_with_extra_people(buy: Buy, family: Family) -> None:
    """A family ticket at 30 for 2 and 3, one further child at 4; a fifth child pays alone."""
    bundle = {
        "name": "Family",
        "kind": "bundle",
        "price": "30",
        "seats": PAIR,
        "extras": {"price": "4", "ages": "under 18", "at_most": 1},
    }
    party = family(Ann=40, Bo=41, A=8, B=8, C=9, D=9, E=10)
    assert buy(party, offers=[ADULT, CHILD, bundle]) == (
        "41.00",
        {"Child": 1, "Family": 1, "Family: extra person": 1},
    )


def test_a_bundle_asks_who_must_be_in_it(buy: Buy, family: Family) -> None:
    """A ticket for three at 9 that must include a grandparent is nothing for children alone."""
    bundle = {
        "name": "Three",
        "kind": "bundle",
        "price": "9",
        "seats": [{"count": 3}],
        "must_include": "60+",
    }
    children = family(A=8, B=9)
    assert buy(children, offers=[CHILD, bundle]) == ("14.00", {"Child": 2})
    assert buy((*children, person("Gran", 66)), offers=[CHILD, bundle]) == ("9.00", {"Three": 1})


def test_a_bundle_asks_for_a_status_a_number_and_a_limit(buy: Buy, family: Family) -> None:
    """Each unit needs its own status holder, at least two taken seats, and only one is sold."""
    bundle = {
        "name": "Duo",
        "kind": "bundle",
        "price": "5",
        "seats": [{"count": 2}],
        "needs": ["member"],
        "at_least": 2,
        "at_most": 1,
    }
    party = family(A=(8, "member"), B=8, C=(8, "member"), D=8)
    assert buy(party, offers=[CHILD, bundle]) == ("19.00", {"Child": 2, "Duo": 1})
    assert buy(party[:1], offers=[CHILD, bundle]) == ("7.00", {"Child": 1})
    unlimited = {**bundle, "at_most": None}
    assert buy(party, offers=[CHILD, unlimited]) == ("10.00", {"Duo": 2})
    assert buy((*party[:2], *party[3:]), offers=[CHILD, unlimited]) == ("12.00", {"Child": 1, "Duo": 1})


def test_a_bundle_with_two_demands_needs_both_in_the_same_unit(buy: Buy) -> None:
    """A single seat for an adult who is a member is nothing for an adult and a young member."""
    bundle = {
        "name": "One",
        "kind": "bundle",
        "price": "1",
        "seats": [{"count": 1}],
        "needs": ["member"],
        "must_include": "18+",
    }
    party = (person("A", 40), person("B", 9, ("member",)))
    assert buy(party, offers=[ADULT, CHILD, bundle]) == ("19.00", {"Adult": 1, "Child": 1})


def test_a_pass_bought_now_seats_the_household(buy: Buy, family: Family) -> None:
    """The pass at 20 lets the household in; the friend is a guest at half of 7."""
    board = [
        {"name": "Adult", "price": "30", "ages": "18+"},
        CHILD,
        {
            "name": "Card",
            "kind": "pass",
            "price": "20",
            "months": 12,
            "seats": PAIR,
            "guests_percent_off": "50",
            "guests_at_most": 1,
        },
    ]
    party = family(Ann=30, A=8, Friend=8)
    assert buy(party, offers=board, household=("Ann", "A")) == ("23.50", {"Card": 1, "Card: guest": 1})


def test_a_named_pass_lets_in_its_holders_and_another_the_household(buy: Buy, family: Family) -> None:
    """Named: Ann only. Not named: whoever of the household takes its seats, with a holder among them."""
    card = {"name": "Card", "kind": "pass", "price": "90", "months": 12, "seats": PAIR}
    party = family(Ann=30, Bo=31, A=8)
    named = [ADULT, CHILD, {**card, "named": True}]
    assert buy(party, offers=named, held=(held(),)) == ("19.00", {"Card": 1, "Adult": 1, "Child": 1})
    assert buy(party, offers=[ADULT, CHILD, card], held=(held(),)) == ("0.00", {"Card": 1})
    assert buy(party[1:], offers=[ADULT, CHILD, card], held=(held(),)) == ("19.00", {"Adult": 1, "Child": 1})


def test_a_pass_says_whether_parking_is_included(ask: Ask, family: Family) -> None:
    """Parking is included by a pass that is used, not by one that only stands on the board."""
    card = {
        "name": "Card",
        "kind": "pass",
        "price": "90",
        "months": 12,
        "seats": PAIR,
        "parking_included": True,
    }
    party = family(Ann=30)
    with_pass = ask(party, offers=[ADULT, card], held=(held(),))
    without = ask(party, offers=[ADULT, card])
    assert isinstance(with_pass, Admission)
    assert isinstance(without, Admission)
    assert with_pass.parking_included
    assert not without.parking_included


@pytest.mark.parametrize(("percent", "total"), [("100", "7.00"), ("25", "16.00")])
def test_a_pass_of_another_place_is_honoured(buy: Buy, family: Family, percent: str, total: str) -> None:
    """Free entry, or a quarter off the single price of 12; the child who is no holder pays 7."""
    other = make_place(
        id="other",
        name="Other",
        offers=[
            {
                "name": "Friends",
                "kind": "pass",
                "price": "60",
                "months": 12,
                "named": True,
                "seats": PAIR,
                "elsewhere": [{"place": "test-museum", "percent_off": percent}],
            }
        ],
    )
    answer = buy(
        family(Ann=30, A=8),
        offers=[ADULT, CHILD],
        held=(held("Friends", place="other"),),
        other_places=(other,),
    )
    assert answer == (total, {"Friends (Other)": 1, "Child": 1})


def test_of_two_reductions_at_another_place_the_larger_counts(buy: Buy, family: Family) -> None:
    """A card from elsewhere that is named with 20 and with 50 % takes half off 12."""
    reductions = [{"place": "test-museum", "percent_off": percent} for percent in ("20", "50")]
    card = {
        "name": "Friends",
        "kind": "pass",
        "price": "60",
        "months": 12,
        "seats": [{"count": 1, "ages": "18+"}],
        "elsewhere": reductions,
    }
    other = make_place(id="other", name="Other", offers=[card])
    friends = held("Friends", place="other")
    assert buy(family(Ann=30), offers=[ADULT], held=(friends,), other_places=(other,))[0] == "6.00"


def test_a_pass_that_ran_out_is_worth_nothing(buy: Buy, family: Family) -> None:
    """The day before the visit was the last."""
    card = {"name": "Card", "kind": "pass", "price": "90", "months": 12, "seats": PAIR}
    old = HeldPass(place="test-museum", offer="Card", holders=("Ann",), valid_until=DAY - timedelta(days=1))
    assert buy(family(Ann=30), offers=[ADULT, card], held=(old,)) == ("12.00", {"Adult": 1})


def test_a_limited_ticket_is_nobodys_single_price(buy: Buy, family: Family) -> None:
    """Two guests at half of 12, or one of them at the single ticket for 4: 6 + 4, not two halves of 4."""
    card = {
        "name": "Card",
        "kind": "pass",
        "price": "90",
        "months": 12,
        "seats": [{"count": 1, "ages": "18+"}],
        "guests_percent_off": "50",
        "guests_at_most": 2,
    }
    early = {"name": "Early bird", "price": "4", "ages": "any", "at_most": 1}
    party = family(Ann=40, Bo=40, Cy=30)
    total, bought = buy(party, offers=[ADULT, card, early], held=(held(),))
    assert total == "10.00"
    assert bought["Early bird"] == 1


def test_an_extra_person_of_a_bundle_bears_no_ticket_fee(buy: Buy, family: Family) -> None:
    """One bundle at 20 with its fee of 2, and one person more at 5 without: 27."""
    pair = {
        "name": "Pair",
        "kind": "bundle",
        "price": "20",
        "seats": [{"count": 2, "ages": "18+"}],
        "extras": {"price": "5", "at_most": 1},
    }
    fees = [{"name": "Fee", "price": "2", "per": "ticket"}]
    assert buy(family(Ann=40, Bo=40, Cy=30), offers=[ADULT, pair], fees=fees)[0] == "27.00"


def test_fees_may_make_the_dearer_price_the_cheaper_way(buy: Buy, family: Family) -> None:
    """Two tickets at 9 bear two fees of 3, which makes 24; one ticket for two at 20 bears one: 23."""
    pair = {"name": "Pair", "kind": "bundle", "price": "20", "seats": [{"count": 2, "ages": "18+"}]}
    fees = [{"name": "Fee", "price": "3", "per": "ticket"}]
    board = [{**ADULT, "price": "9"}, pair]
    assert buy(family(Ann=40, Bo=40), offers=board, fees=fees)[0] == "23.00"


def test_fees_per_order_and_per_ticket(buy: Buy, family: Family) -> None:
    """2 on the order and 1 on each of two tickets; free entry bears no fee, an all-free visit none at all."""
    board = [ADULT, CHILD, {"name": "Tot", "price": "0", "ages": "under 3"}]
    board[1] = {**CHILD, "ages": "3-17"}
    fees = [{"name": "Order", "price": "2"}, {"name": "Ticket", "price": "1", "per": "ticket"}]
    party = family(Ann=30, A=8, T=1)
    assert buy(party, offers=board, fees=fees) == (
        "23.00",
        {"Adult": 1, "Child": 1, "Tot": 1, "Order": 1, "Ticket": 2},
    )
    assert buy(party[2:], offers=board, fees=fees) == ("0.00", {"Tot": 1})


def test_a_fee_per_ticket_can_make_a_bundle_cheaper(buy: Buy, family: Family) -> None:
    """A bundle at 20 beats singles at 19 when every ticket bears a fee of 2: 22 against 23."""
    pair = {"name": "Pair", "kind": "bundle", "price": "20", "seats": [{"count": 2}]}
    fees = [{"name": "Fee", "price": "2", "per": "ticket"}]
    party = family(Ann=30, A=8)
    assert buy(party, offers=[ADULT, CHILD, pair], fees=fees)[0] == "22.00"
    assert buy(party, offers=[ADULT, CHILD, pair])[0] == "19.00"


def test_sales_tax_is_rounded_once_on_the_order(buy: Buy, family: Family) -> None:
    """8.25 % on 3 x 9.99 = 29.97 is 2.472525: 32.44 in all; rounding each ticket would give 32.43."""
    board = [{"name": "Any", "price": "9.99"}]
    party = family(A=8, B=9, C=10)
    assert buy(party, offers=board, sales_tax={"percent": "8.25"})[0] == "32.44"
    assert buy(party, offers=board, sales_tax={"percent": "8.25", "on_entry": False})[0] == "29.97"


def test_half_a_cent_is_rounded_up(buy: Buy, family: Family) -> None:
    """5 % on 0.50 is 2.5 cents: 52.5 cents are 53."""
    assert (
        buy(family(A=8), offers=[{"name": "Any", "price": "0.50"}], sales_tax={"percent": "5"})[0] == "0.53"
    )


def test_the_best_voucher_is_used_once(buy: Buy, family: Family) -> None:
    """Of 5 off, 10 % off and a student's 50 %, two adults (24) take 5 off."""
    vouchers = [
        {"name": "Ten", "percent_off": "10"},
        {"name": "Five", "amount_off": "5"},
        {"name": "Half", "percent_off": "50", "needs": ["student"]},
    ]
    party = family(Ann=30, Bo=31)
    assert buy(party, offers=[ADULT], vouchers=vouchers) == ("19.00", {"Adult": 2, "Five": 1})


def test_a_voucher_may_count_for_some_offers_only(buy: Buy, family: Family) -> None:
    """Half off the bundle at 30 makes it 15, cheaper than singles at 19."""
    bundle = {"name": "Family", "kind": "bundle", "price": "30", "seats": PAIR}
    voucher = [{"name": "Half", "percent_off": "50", "offers": ["Family"]}]
    party = family(Ann=30, A=8)
    assert buy(party, offers=[ADULT, CHILD, bundle], vouchers=voucher) == ("15.00", {"Family": 1, "Half": 1})


def test_a_voucher_never_pays_money_out(buy: Buy, family: Family) -> None:
    """20 off an order of 12 leaves nothing to pay but the fee, which no voucher touches."""
    answer = buy(
        family(Ann=30),
        offers=[ADULT],
        vouchers=[{"name": "Twenty", "amount_off": "20"}],
        fees=[{"name": "Order", "price": "1"}],
    )
    assert answer == ("1.00", {"Adult": 1, "Order": 1, "Twenty": 1})


def test_a_voucher_too_large_changes_what_is_cheapest(buy: Buy, family: Family) -> None:
    """Two tickets bear two fees of 3; with 40 off, the dearer bundle with one fee wins: 3 against 6."""
    pair = {"name": "Pair", "kind": "bundle", "price": "26", "seats": [{"count": 2}]}
    answer = buy(
        family(Ann=30, Bo=31),
        offers=[{**ADULT, "price": "11"}, pair],
        vouchers=[{"name": "Forty", "amount_off": "40"}],
        fees=[{"name": "Fee", "price": "3", "per": "ticket"}],
    )
    assert answer == ("3.00", {"Pair": 1, "Fee": 1, "Forty": 1})


def test_a_dearer_ticket_can_win_by_its_voucher(buy: Buy, family: Family) -> None:
    """One at 5 less 3 and one at 4.50 are 6.50, while two at 4.50 less a tenth are 8.10."""
    board = [{"name": "Dear", "price": "5"}, {"name": "Cheap", "price": "4.50"}]
    vouchers = [
        {"name": "Tenth", "percent_off": "10"},
        {"name": "Three", "amount_off": "3", "offers": ["Dear"]},
    ]
    answer = buy(family(A=8, B=9), offers=board, vouchers=vouchers)
    assert answer == ("6.50", {"Dear": 1, "Cheap": 1, "Three": 1})


def test_a_voucher_that_ends_before_the_visit_must_be_used_ahead(ask: Ask, family: Family) -> None:
    """It counts while today is not past its last day, and the notes say by when it must be used."""
    voucher = {"name": "Early", "amount_off": "2", "last_day": "2026-12-03"}
    early = ask(family(Ann=30), offers=[ADULT], vouchers=[voucher])
    late = ask(family(Ann=30), offers=[ADULT], vouchers=[voucher], today=date(2026, 12, 4))
    assert isinstance(early, Admission)
    assert isinstance(late, Admission)
    assert (str(early.total.amount), str(late.total.amount)) == ("10.00", "12.00")
    assert any("Thu, Dec 3, 2026" in note for note in early.notes)


@pytest.mark.parametrize(
    ("rule", "good"),
    [
        ({"valid": "Tu 09:00-12:00"}, True),
        ({"valid": "Tu 12:00-17:00"}, False),
        ({"valid": "We"}, False),
        ({"valid": "Tu[2]"}, True),
        ({"valid": "Tu[1]"}, False),
        ({"valid": "Nov-Feb"}, True),
        ({"valid": "PH"}, False),
        ({"first_day": "2026-12-08", "last_day": "2026-12-08"}, True),
        ({"first_day": "2026-12-09"}, False),
        ({"last_day": "2026-12-07"}, False),
        ({"book_days_ahead": 7}, True),
        ({"book_days_ahead": 8}, False),
    ],
)
def test_an_offer_is_left_out_when_it_is_not_good(
    buy: Buy, family: Family, rule: dict[str, Any], good: bool
) -> None:
    """Tuesday, December 8, 2026 at 10:00, asked a week before; it is the month's second Tuesday."""
    cheap = {"name": "Cheap", "price": "1", **rule}
    assert buy(family(Ann=30), offers=[ADULT, cheap])[1] == ({"Cheap": 1} if good else {"Adult": 1})


def test_holiday_rules_follow_the_dates_given() -> None:
    """PH and SH mean the dates the caller brings."""
    board = [ADULT, {"name": "Free day", "price": "0", "valid": "PH"}]
    place = make_place(offers=board)
    usual = cheapest_admission(place, (person("Ann", 30),), ARRIVAL, today=TODAY)
    holiday = cheapest_admission(
        place, (person("Ann", 30),), ARRIVAL, today=TODAY, public_holidays=frozenset({DAY})
    )
    assert isinstance(usual, Admission)
    assert isinstance(holiday, Admission)
    assert (usual.total.minor, holiday.total.minor) == (1200, 0)


def test_a_home_education_day_needs_its_pupils_and_its_booking(buy: Buy, family: Family) -> None:
    """From three pupils, booked five days ahead; an adult comes in free beside each two of them."""
    board = [
        ADULT,
        CHILD,
        {
            "name": "Home education day",
            "price": "4",
            "ages": "5-17",
            "at_least": 3,
            "book_days_ahead": 5,
            "valid": "Tu",
        },
        {
            "name": "Teaching adult",
            "price": "0",
            "ages": "18+",
            "companions": {"ages": "5-17"},
            "book_days_ahead": 5,
        },
    ]
    three = family(Ann=40, A=6, B=8, C=10)
    assert buy(three, offers=board) == ("12.00", {"Home education day": 3, "Teaching adult": 1})
    two = three[:3]
    assert buy(two, offers=board)[1] == {"Child": 2, "Teaching adult": 1}
    assert buy(three, offers=board, today=date(2026, 12, 4)) == ("33.00", {"Adult": 1, "Child": 3})


def test_equal_costs_go_to_fewer_items_then_to_the_card(buy: Buy, family: Family) -> None:
    """A pair at the price of two singles is one item; of equal tickets the first on the card is bought."""
    pair = {"name": "Pair", "kind": "bundle", "price": "24", "seats": [{"count": 2}]}
    again = {**ADULT, "name": "Again", "ages": "30+"}
    party = family(Ann=30, Bo=31)
    assert buy(party, offers=[ADULT, again, pair])[1] == {"Pair": 1}
    assert buy(party, offers=[ADULT, again])[1] == {"Adult": 2}
    assert buy(party, offers=[again, ADULT])[1] == {"Again": 2}


def test_currencies_without_cents_and_finer_prices_stay_exact(buy: Buy, family: Family) -> None:
    """Yen have no decimals: 10 % on 1005 is 100.5, in all 1106 when rounded half up."""
    board = [{"name": "Any", "price": "1005"}]
    tax = {"percent": "10"}
    assert buy(family(A=9), offers=board, currency="JPY", sales_tax=tax)[0] == "1106"


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"party": ()}, "nobody"),
        ({"party": (person("A", 8), person("A", 9))}, "twice: A"),
        ({"moment": ARRIVAL.replace(tzinfo=None)}, "time zone"),
        ({"today": date(2026, 12, 9)}, "before today"),
    ],
)
def test_questions_without_meaning_are_refused(change: dict[str, Any], said: str) -> None:
    """An empty party, two people of one name, a clock without zone, a visit in the past."""
    asked: dict[str, Any] = {
        "place": make_place(),
        "party": (person("Ann", 30),),
        "moment": ARRIVAL,
        "today": TODAY,
        **change,
    }
    with pytest.raises(PlanError, match=said):
        cheapest_admission(**asked)


def test_ages_are_those_of_the_places_own_date() -> None:
    """Late on December 7 in Chicago it is December 8 in London, but the visit is still on the 7th."""
    moment = datetime(2026, 12, 7, 23, 0, tzinfo=ZoneInfo("America/Chicago"))
    child = Member.model_validate({"name": "Cy", "born": "2023-12-08"})
    answer = cheapest_admission(make_place(), (child,), moment, today=TODAY)
    assert isinstance(answer, Admission)
    assert [line.name for line in answer.purchases] == ["Small child"]
