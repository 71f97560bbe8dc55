"""Small boards on which a single rule decides what is cheapest; the sums are worked by hand.

The rules are those of ordinary price boards: common practice, no source.
"""

from typing import Any

import pytest

from tests.builders import make_member, make_place
from tests.planning.admission.price_boards import ARRIVAL, TODAY, person
from tripplan.documents.family.member import Member
from tripplan.planning.admission import purchase_plans
from tripplan.planning.admission.cheapest import Gate
from tripplan.planning.admission.result import Admission, NoAdmission

SMALL_OR_LARGE = [purchase_plans.TABLE_SIZE_AT_MOST, 0]
"""With the dynamic programme, and with the integer programme that large groups go to."""


def admitted(party: tuple[Member, ...], *, wanted: bool = False, **card: Any) -> Admission | NoAdmission:
    """What a party buys, which perhaps wants everything beside entry."""
    place = make_place(**card)
    names = frozenset(member.name for member in party)
    add_ons = place.add_ons if wanted else ()
    return Gate(place, ARRIVAL, TODAY, names, add_ons=add_ons).admission(party)


def total(party: tuple[Member, ...], *, wanted: bool = False, **card: Any) -> str:
    """What a party pays for entry."""
    answer = admitted(party, wanted=wanted, **card)
    assert isinstance(answer, Admission), answer
    return str(answer.total.amount)


@pytest.mark.parametrize(("born", "entry"), [("2018-12-08", "0.00"), ("2018-06-08", "7.00")])
def test_a_birthday_comes_once_a_year(born: str, entry: str) -> None:
    """On December 8 a child born on June 8 is a month older, but has no birthday."""
    board = [
        {"name": "Child", "price": "7", "ages": "3-17"},
        {"name": "Birthday", "price": "0", "good_on": "birthday"},
    ]
    assert total((make_member("Cy", born),), offers=board) == entry


def test_a_voucher_leaves_the_fee_of_what_is_sold_online(monkeypatch: pytest.MonkeyPatch) -> None:
    """At $9 and a tenth online is cheaper than $10 at the desk; with $10 off only the desk leaves nothing."""
    card: dict[str, Any] = {
        "offers": [
            {"name": "Online", "price": "9", "online_only": True},
            {"name": "Desk", "price": "10"},
        ],
        "fees": [{"name": "Online fee", "percent": "10", "online_only": True}],
    }
    for table in SMALL_OR_LARGE:
        monkeypatch.setattr(purchase_plans, "TABLE_SIZE_AT_MOST", table)
        assert total((person("Ann", 40),), **card) == "9.90"
        assert total((person("Ann", 40),), **card, vouchers=[{"name": "Ten", "amount_off": "10"}]) == "0.00"


def test_free_entry_is_no_best_way_where_a_ticket_brings_the_boat() -> None:
    """$3 and an order fee of $1 with the boat come to $4; free entry and the boat at $5 do not."""
    card: dict[str, Any] = {
        "offers": [{"name": "Free", "price": "0"}, {"name": "Boat day", "price": "3", "includes": ["Boat"]}],
        "add_ons": [{"name": "Boat", "price": "5"}],
        "fees": [{"name": "Order", "price": "1"}],
    }
    assert total((person("Ann", 40),), wanted=True, **card) == "4.00"
    assert total((person("Ann", 40),), **card) == "0.00"


def test_a_limit_is_named_although_others_need_other_tickets() -> None:
    """Adults are too many for their ticket; the child beside them has one of its own, which stays."""
    board = [
        {"name": "Adult", "price": "12", "ages": "18+", "at_most": 1},
        {"name": "Child", "price": "7", "ages": "under 18"},
    ]
    answer = admitted((person("Ann", 40), person("Bo", 38), person("Cy", 8)), offers=board)
    assert isinstance(answer, NoAdmission)
    (reason,) = map(str, answer.reasons)
    assert "'Adult'" in reason
    assert "Cy" not in reason


@pytest.mark.parametrize(("years", "enter"), [(15, False), (18, True)])
def test_who_may_enter_alone_is_not_yet_somebody_to_mind_others(years: int, enter: bool) -> None:
    """Under 12 only with somebody of 18 or over: a brother of 15 may go in, but does not mind."""
    party = (person("Cy", 8), person("Di", years))
    answer = admitted(
        party, offers=[{"name": "All", "price": "5"}], must_be_accompanied=[{"ages": "under 12", "by": "18+"}]
    )
    assert isinstance(answer, Admission) is enter


def test_a_permit_is_bought_once_however_it_is_worked_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """One car at $8 for two adults and an infant, who may not enter free beside it."""
    board = [
        {"name": "Adult", "price": "12", "ages": "18+"},
        {"name": "Infant", "price": "0", "ages": "under 3"},
        {"kind": "bundle", "name": "Permit", "price": "8", "seats": [{"count": 8}], "per_car": True},
    ]
    party = (person("Ann", 40), person("Bo", 38), person("Cy", 1))
    for table in SMALL_OR_LARGE:
        monkeypatch.setattr(purchase_plans, "TABLE_SIZE_AT_MOST", table)
        answer = admitted(party, offers=board)
        assert isinstance(answer, Admission)
        assert [(line.name, line.quantity) for line in answer.purchases] == [("Permit", 1)]
        assert answer.total.minor == 800


def test_a_fee_that_nothing_bears_is_no_line() -> None:
    """A free family ticket with one more at $5, who bears no fee per ticket."""
    board = [
        {
            "kind": "bundle",
            "name": "Friends",
            "price": "0",
            "seats": [{"count": 1}],
            "extras": {"price": "5"},
            "at_most": 1,
        }
    ]
    answer = admitted(
        (person("Ann", 40), person("Bo", 38)),
        offers=board,
        fees=[{"name": "Fee", "price": "1", "per": "ticket"}],
    )
    assert isinstance(answer, Admission)
    assert {line.name for line in answer.purchases} == {"Friends", "Friends: extra person"}
    assert answer.total.minor == 500


def test_each_pays_the_own_group_ticket() -> None:
    """At $6 each for two, the child's part is $6, although alone it would pay less than the adult."""
    board = [
        {"name": "Adult", "price": "12", "ages": "18+"},
        {"name": "Child", "price": "7", "ages": "under 18"},
        {"name": "Group", "price": "6", "at_least": 2},
    ]
    answer = admitted((person("Ann", 40), person("Cy", 8)), offers=board)
    assert isinstance(answer, Admission)
    assert {name: part.minor for name, part in answer.shares.items()} == {"Ann": 600, "Cy": 600}


def test_a_family_ticket_is_shared_by_what_each_would_pay_alone() -> None:
    """$12 for both is divided as 12 to 7 would be: 12 x 12 / 19 = 7.58 and 12 x 7 / 19 = 4.42."""
    board = [
        {"name": "Adult", "price": "12", "ages": "18+"},
        {"name": "Child", "price": "7", "ages": "under 18"},
        {"kind": "bundle", "name": "Pair", "price": "12", "seats": [{"count": 2}]},
    ]
    answer = admitted((person("Ann", 40), person("Cy", 8)), offers=board)
    assert isinstance(answer, Admission)
    assert {name: part.minor for name, part in answer.shares.items()} == {"Ann": 758, "Cy": 442}


@pytest.mark.parametrize(("adults", "entry"), [(2, "12.00"), (3, "24.00"), (4, "24.00")])
def test_of_people_who_are_alike_some_pay_and_bring_the_others(
    monkeypatch: pytest.MonkeyPatch, adults: int, entry: str
) -> None:
    """Each adult at $12 brings another in for nothing, so that half of them pay, or one more."""
    board = [
        {"name": "Adult", "price": "12", "ages": "18+"},
        {"name": "Second adult", "price": "0", "ages": "18+", "companions": {}},
    ]
    party = tuple(person(f"A{number}", 40) for number in range(adults))
    for table in SMALL_OR_LARGE:
        monkeypatch.setattr(purchase_plans, "TABLE_SIZE_AT_MOST", table)
        assert total(party, offers=board) == entry


def test_one_more_on_a_family_ticket_without_a_fee_is_cheaper_than_a_ticket_with_one() -> None:
    """A pair at $2 and its fee of $1, then $5 for one more; alone that is $4.50 and a fee: 8 to 8.50."""
    board = [
        {"name": "Adult", "price": "4.50"},
        {
            "kind": "bundle",
            "name": "Pair",
            "price": "2",
            "seats": [{"count": 2}],
            "extras": {"price": "5"},
            "at_most": 1,
        },
    ]
    party = (person("Ann", 40), person("Bo", 38), person("Cy", 8))
    assert total(party, offers=board, fees=[{"name": "Fee", "price": "1", "per": "ticket"}]) == "8.00"


def test_two_family_tickets_cannot_both_rest_on_the_same_child(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each has one seat for an adult, needs a student, and somebody of 13 to 64.

    Ada is a student but too old, Cleo has the age but is no student: each would need Ben, who is both. So one
    of them pays $6 beside two tickets at $3: Dan, who is both, has one alone.
    """
    board = [
        {"name": "Single", "price": "6"},
        {
            "kind": "bundle",
            "name": "Family",
            "price": "3",
            "seats": [{"count": 1, "ages": "18+"}, {"count": 4, "ages": "under 18"}],
            "needs": ["student"],
            "must_include": "13-64",
        },
    ]
    student = ("student",)
    party = (
        person("Ada", 67, student),
        person("Ben", 15, student),
        person("Cleo", 40),
        person("Dan", 30, student),
    )
    for table in SMALL_OR_LARGE:
        monkeypatch.setattr(purchase_plans, "TABLE_SIZE_AT_MOST", table)
        assert total(party, offers=board) == "12.00"


def test_of_equal_ways_the_first_on_the_card_is_bought_although_one_bears_a_fee() -> None:
    """One more on the pair at $5, or alone at $4 and a fee of $1: the single ticket stands first."""
    board = [
        {"name": "Single", "price": "4"},
        {
            "kind": "bundle",
            "name": "Pair",
            "price": "2",
            "seats": [{"count": 2}],
            "extras": {"price": "5"},
            "at_most": 1,
        },
    ]
    party = (person("Ann", 40), person("Bo", 38), person("Cy", 8))
    answer = admitted(party, offers=board, fees=[{"name": "Fee", "price": "1", "per": "ticket"}])
    assert isinstance(answer, Admission)
    assert [line.name for line in answer.purchases] == ["Single", "Pair", "Fee"]
    assert answer.total.minor == 800
