"""What would change the price; the sums are worked by hand beside the boards."""

from datetime import date
from typing import Any

from tests.builders import make_place
from tests.planning.admission.price_boards import ARRIVAL, DAY, TODAY, person
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.planning.admission.cheapest import Gate
from tripplan.planning.admission.what_if import (
    VISITS_AT_MOST,
    PriceChange,
    PriceChangeKind,
    what_changes_it,
)

ADULT: dict[str, Any] = {"name": "Adult", "price": "12", "ages": "18+"}
CHILD: dict[str, Any] = {"name": "Child", "price": "7", "ages": "3-17"}
TOT: dict[str, Any] = {"name": "Tot", "price": "0", "ages": "under 3"}


def born(name: str, day: str) -> Member:
    """Somebody with a birth date."""
    return Member.model_validate({"name": name, "born": day})


def changes(
    party: tuple[Member, ...], offers: list[dict[str, Any]], **asked: Any
) -> dict[PriceChangeKind, PriceChange]:
    """What changes the price, by kind."""
    names = frozenset(member.name for member in party)
    gate = Gate(make_place(offers=offers), ARRIVAL, TODAY, household=names, **asked)
    found = what_changes_it(gate, party)
    by_kind = {change.kind: change for change in found}
    assert len(by_kind) == len(found)
    return by_kind


def test_the_next_birthday_that_moves_the_price() -> None:
    """Ed turns 3 on January 20 and pays 7 from then; Cy's eighth changes nothing, Fay's third comes later."""
    children = (born("Cy", "2018-12-20"), born("Ed", "2024-01-20"), born("Fay", "2024-03-01"))
    party = (person("Ann", 40), *children)
    change = changes(party, [ADULT, CHILD, TOT])[PriceChangeKind.BIRTHDAY]
    assert (change.name, change.day, str(change.difference.amount)) == ("Ed", date(2027, 1, 20), "7.00")
    assert change.sentence == (
        "From Wed, Jan 20, 2027, when Ed is 3 years old, such a visit costs $7.00 more."
    )


def test_birthdays_further_than_half_a_year_away_are_left_out() -> None:
    """Six months after December 8 is June 8: a third birthday on June 8 counts, one on June 9 does not."""
    for day, counts in (("2024-06-08", True), ("2024-06-09", False)):
        found = changes((person("Ann", 40), born("Ed", day)), [ADULT, CHILD, TOT])
        assert (PriceChangeKind.BIRTHDAY in found) is counts


def test_a_birthday_can_make_a_visit_cheaper() -> None:
    """Turning 65 takes 12 to 9."""
    senior = {"name": "Senior", "price": "9", "ages": "65+"}
    board = [{**ADULT, "ages": "18-64"}, senior]
    change = changes((born("Gus", "1962-03-01"),), board)[PriceChangeKind.BIRTHDAY]
    assert (change.name, change.day, str(change.difference.amount)) == ("Gus", date(2027, 3, 1), "-3.00")
    assert change.sentence.endswith("costs $3.00 less.")


def test_a_child_born_on_a_leap_day_grows_older_on_the_first_of_march() -> None:
    """In a common year the third birthday of somebody born on February 29 is on March 1."""
    party = (person("Ann", 40), born("Leap", "2024-02-29"))
    assert changes(party, [ADULT, CHILD, TOT])[PriceChangeKind.BIRTHDAY].day == date(2027, 3, 1)


def test_one_more_child_and_one_more_adult() -> None:
    """A family ticket at 30 has room for one more child, while a third adult pays 12."""
    seats = [{"count": 2, "ages": "18+"}, {"count": 3, "ages": "under 18"}]
    bundle = {"name": "Family", "kind": "bundle", "price": "30", "seats": seats}
    board: list[dict[str, Any]] = [ADULT, CHILD, TOT, bundle]
    party = (person("Ann", 40), person("Bo", 41), person("Cy", 8), person("Di", 12), person("Em", 1))
    assert str(changes(party[:4], board)[PriceChangeKind.ONE_MORE_CHILD].difference.amount) == "0.00"
    found = changes(party, board)
    assert str(found[PriceChangeKind.ONE_MORE_ADULT].difference.amount) == "12.00"
    child = found[PriceChangeKind.ONE_MORE_CHILD]
    assert child.sentence == "With one more child as old as Cy, it costs as much as without."


def test_after_how_many_visits_a_pass_has_paid() -> None:
    """Each visit costs 12 + 7 = 19, with the card for Ann 7; 60 + 7 is paid off after five visits.

    60 + 5 x 7 = 95 = 5 x 19.
    """
    card = {
        "name": "Card",
        "kind": "pass",
        "price": "60",
        "months": 12,
        "seats": [{"count": 1, "ages": "18+"}],
    }
    change = changes((person("Ann", 40), person("Cy", 8)), [ADULT, CHILD, card])[PriceChangeKind.PASS]
    assert (change.visits, str(change.difference.amount)) == (5, "-12.00")
    assert change.sentence == (
        "'Card' has paid after 5 visits like this one, if made within its 12 months; "
        "each after the first costs $12.00 less."
    )


def test_a_pass_may_pay_at_once_or_never() -> None:
    """At 10 it pays on the first visit; for a child who is free anyway it never does."""
    card = {"name": "Card", "kind": "pass", "price": "10", "months": 12, "seats": [{"count": 1}]}
    assert changes((person("Ann", 40),), [ADULT, TOT, card])[PriceChangeKind.PASS].visits == 1
    never = changes((person("Em", 1),), [ADULT, TOT, card])[PriceChangeKind.PASS]
    assert never.visits is None
    assert never.sentence == "'Card' does not pay for visits like this one."


def test_a_pass_already_held_is_not_bought_for_again() -> None:
    """Ann holds the card; another one would save nothing."""
    card = {
        "name": "Card",
        "kind": "pass",
        "price": "30",
        "months": 12,
        "seats": [{"count": 1, "ages": "18+"}],
    }
    held = HeldPass(place="test-museum", offer="Card", holders=("Ann",), valid_until=DAY)
    assert changes((person("Ann", 40),), [ADULT, card], held=(held,))[PriceChangeKind.PASS].visits is None


def test_a_group_price_within_reach() -> None:
    """Four pay 28; with two more children the group price of 4 makes it 24, four a head instead of seven."""
    group = {"name": "Group", "price": "4", "at_least": 6}
    party = tuple(person(name, 8) for name in ("A", "B", "C", "D"))
    change = changes(party, [ADULT, CHILD, group])[PriceChangeKind.GROUP]
    assert (change.people, str(change.difference.amount)) == (2, "-4.00")
    assert change.sentence == (
        "With 2 more people as old as A, 'Group' can be had: $4.00 a head instead of $7.00."
    )
    assert PriceChangeKind.GROUP not in changes(party[:2], [ADULT, CHILD, group])
    assert PriceChangeKind.GROUP not in changes(party, [ADULT, CHILD, {**group, "price": "8"}])


def test_nothing_changes_what_is_impossible() -> None:
    """A party that cannot enter gets no suggestions."""
    assert changes((person("Cy", 8),), [ADULT]) == {}


def test_each_pass_is_judged_without_the_others() -> None:
    """Of two cards the dearer at 60 pays after 5 visits of 12, though the one at 24 pays after 2."""
    card = {"kind": "pass", "months": 12, "seats": [{"count": 1}]}
    board = [ADULT, {**card, "name": "Dear", "price": "60"}, {**card, "name": "Cheap", "price": "24"}]
    gate = Gate(make_place(offers=board), ARRIVAL, TODAY, household=frozenset({"Ann"}))
    told = [one for one in what_changes_it(gate, (person("Ann", 40),)) if one.kind is PriceChangeKind.PASS]
    assert [(one.name, one.visits) for one in told] == [("Dear", 5), ("Cheap", 2)]


def test_a_group_price_beside_other_tickets_is_within_reach() -> None:
    """With two more adults three pay 6 each beside the child's 7: 25, so 6.25 a head in place of 9.50."""
    group = {"name": "Group", "price": "6", "ages": "18+", "at_least": 3}
    change = changes((person("Ann", 40), person("Cy", 8)), [ADULT, CHILD, TOT, group])[PriceChangeKind.GROUP]
    assert (change.name, change.people, str(change.difference.amount)) == ("Group", 2, "6.00")


def test_a_group_that_nobody_may_bring_is_not_told() -> None:
    """Each adult may bring two children: more of them may not enter, so a price for five is out of reach."""
    group = {"name": "Class", "price": "1", "ages": "3-17", "at_least": 5}
    place = make_place(
        offers=[ADULT, CHILD, TOT, group],
        must_be_accompanied=[{"ages": "under 12", "by": "18+", "each_minds": 2}],
    )
    party = (person("Ann", 40), person("Cy", 8))
    gate = Gate(place, ARRIVAL, TODAY, household=frozenset(("Ann", "Cy")))
    assert PriceChangeKind.GROUP not in {one.kind for one in what_changes_it(gate, party)}


def test_a_pass_pays_after_so_many_visits_and_no_more() -> None:
    """At 12 a visit a pass at 12 times the largest number of visits pays with the last; at 1 more never."""
    for price, visits in ((12 * VISITS_AT_MOST, VISITS_AT_MOST), (12 * VISITS_AT_MOST + 1, None)):
        card = {"kind": "pass", "name": "Card", "price": str(price), "months": 12, "seats": [{"count": 1}]}
        change = changes((person("Ann", 40),), [ADULT, card])[PriceChangeKind.PASS]
        assert change.visits == visits


def test_one_more_child_whom_nobody_may_bring_is_not_told() -> None:
    """An adult who may bring one child: what a second costs cannot be said, what a second adult costs can."""
    place = make_place(
        offers=[ADULT, CHILD, TOT], must_be_accompanied=[{"ages": "under 12", "by": "18+", "each_minds": 1}]
    )
    gate = Gate(place, ARRIVAL, TODAY, household=frozenset(("Ann", "Cy")))
    kinds = {one.kind for one in what_changes_it(gate, (person("Ann", 40), person("Cy", 8)))}
    assert PriceChangeKind.ONE_MORE_ADULT in kinds
    assert PriceChangeKind.ONE_MORE_CHILD not in kinds
