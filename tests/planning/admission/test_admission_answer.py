"""What an answer carries beside its total: lines, shares, other ways, reasons, notes, refusals."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings

from tests.planning.admission.exhaustive import Search
from tests.planning.admission.price_boards import ARRIVAL, TODAY, Question, person, questions
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.language.sentences import told
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission

Ask = Callable[..., Admission | NoAdmission]
Family = Callable[..., tuple[Member, ...]]

ADULT = {"name": "Adult", "price": "12", "ages": "18+"}
CHILD = {"name": "Child", "price": "7", "ages": "3-17"}
TOT = {"name": "Tot", "price": "0", "ages": "under 3", "companions": {}}
FAMILY = {
    "name": "Family",
    "kind": "bundle",
    "price": "33.35",
    "seats": [{"count": 2, "ages": "18+"}, {"count": 3, "ages": "under 18"}],
}


def answered(answer: Admission | NoAdmission) -> Admission:
    """The answer, which must be a way in."""
    assert isinstance(answer, Admission), answer
    return answer


def refused(answer: Admission | NoAdmission) -> tuple[str, ...]:
    """The reasons of an answer, which must be a refusal."""
    assert isinstance(answer, NoAdmission), answer
    return told(answer.reasons)


@settings(max_examples=100, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
@given(questions(people=(2, 3), offers=4))
def test_other_ways_are_the_cheapest_that_do_without_something(question: Question) -> None:
    """The second way costs the least of all that lack an offer of the first; the third lacks one of each."""
    question = replace(question, held=())
    answer = cheapest_admission(
        question.place, question.party, ARRIVAL, today=TODAY, household_members=question.household
    )
    if isinstance(answer, NoAdmission):
        assert Search(question).cheapest() is None
        return
    every_way = list(Search(question).ways())
    offers = {offer.name for offer in question.place.offers}
    used = [
        {line.name.split(":")[0] for line in lines} & offers
        for lines in (answer.purchases, *(way.purchases for way in answer.other_ways))
    ]
    totals = [answer.total.minor, *(way.total.minor for way in answer.other_ways)]
    for number in range(1, 3):
        others = [total for total, names in every_way if all(not before <= names for before in used[:number])]
        if number < len(totals):
            assert totals[number] == min(others)
        else:
            assert not others
            break
    assert all(first <= second for first, second in pairwise(totals))


@settings(max_examples=100, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
@given(questions(people=(2, 7), offers=5))
def test_lines_and_shares_add_up_exactly(question: Question) -> None:
    """Lines and shares add up to the total; everybody is let in by one line, and no share is negative."""
    answer = cheapest_admission(
        question.place,
        question.party,
        ARRIVAL,
        today=TODAY,
        household_members=question.household,
        held=question.held,
        other_places=question.others,
    )
    if isinstance(answer, NoAdmission):
        assert answer.reasons
        return
    ways = [(answer.purchases, answer.total), *((way.purchases, way.total) for way in answer.other_ways)]
    for lines, total in ways:
        assert sum(line.total.minor for line in lines) == total.minor
        let_in = sorted(name for line in lines for name in line.covers)
        assert let_in == sorted(member.name for member in question.party)
    assert sum(share.minor for share in answer.shares.values()) == answer.total.minor
    assert list(answer.shares) == [member.name for member in question.party]
    assert min(share.minor for share in answer.shares.values()) >= 0
    assert all(line.rule for line in answer.purchases)


def test_a_bundle_is_shared_by_what_each_would_have_paid(ask: Ask, family: Family) -> None:
    """33.35 shared 12 : 12 : 7 : 7 : 0 is 10.53, 10.53, 6.14, 6.14 and 0; the cent left over goes by loss.

    12/38 of 3335 cents is 1053.158 and 7/38 is 614.342; floors add up to 3334, and 614.342 lost most.
    """
    answer = answered(ask(family(Ann=40, Bo=41, Cy=8, Di=9, Em=1), offers=[ADULT, CHILD, TOT, FAMILY]))
    assert [share.minor for share in answer.shares.values()] == [1053, 1053, 615, 614, 0]


def test_the_obvious_way_and_why_it_is_dearer(ask: Ask, family: Family) -> None:
    """Single tickets are 12 + 12 + 7 + 7 = 38, 4.65 more than the family ticket; toddlers are free."""
    answer = answered(ask(family(Ann=40, Bo=41, Cy=8, Di=9, Em=1), offers=[ADULT, CHILD, TOT, FAMILY]))
    assert answer.single_tickets is not None
    assert str(answer.single_tickets.costs_more.amount) == "4.65"
    assert answer.why_not_single_tickets == (
        "Single tickets for everybody would cost $38.00, $4.65 more: "
        "'Family' lets Ann, Bo, Cy, Di, and Em in for $33.35 instead of $38.00."
    )


def test_no_reason_is_given_where_the_obvious_way_is_cheapest(ask: Ask, family: Family) -> None:
    """A single visitor buys a single ticket."""
    answer = answered(ask(family(Ann=40), offers=[ADULT, FAMILY]))
    assert (answer.single_tickets, answer.why_not_single_tickets) == (None, "")


def test_lines_stand_in_card_order_with_fees_voucher_and_tax_last(ask: Ask, family: Family) -> None:
    """Held passes come first, then offers as on the card, fees, voucher, tax; each with its rule."""
    card = {
        "name": "Card",
        "kind": "pass",
        "price": "90",
        "months": 12,
        "named": True,
        "seats": [{"count": 1}],
    }
    answer = answered(
        ask(
            family(Ann=40, Bo=41, Cy=8),
            offers=[CHILD, ADULT, card],
            held=(HeldPass(place="test-museum", offer="Card", holders=("Ann",), valid_until=ARRIVAL.date()),),
            fees=[{"name": "Booking", "price": "1"}],
            vouchers=[{"name": "Tenth", "percent_off": "10"}],
            sales_tax={"percent": "8"},
        )
    )
    assert [line.name for line in answer.purchases] == [
        "Card",
        "Child",
        "Adult",
        "Booking",
        "Tenth",
        "Sales tax",
    ]
    # 19.00 + 1.00 - 1.90 + 8 % of 17.10 = 1.368, in all 19.468.
    assert [line.total.minor for line in answer.purchases] == [0, 700, 1200, 100, -190, 137]
    assert (
        answer.purchases[0].rule == "'Card' is already paid until Tue, Dec 8, 2026 and lets in its holders."
    )


def test_notes_say_what_to_book_and_bring(ask: Ask, family: Family) -> None:
    """The last day to book, the proof and for whom, and what is printed beside the offer."""
    student = {
        "name": "Student",
        "price": "5",
        "needs": ["student"],
        "book_days_ahead": 2,
        "note": "Weekdays by the side door.",
    }
    missed = {"name": "Early", "price": "1", "book_days_ahead": 20}
    answer = answered(ask(family(Ann=(20, "student")), offers=[ADULT, student, missed]))
    assert answer.notes == (
        "Book 'Student' by Sun, Dec 6, 2026; the money does not come back when the visit is called off.",
        "Bring proof of student for 'Student': Ann.",
        "'Student': Weekdays by the side door.",
        "'Early' had to be booked by Wed, Nov 18, 2026; it is too late for that.",
    )


def test_a_birth_month_that_leaves_the_price_open_is_noted(ask: Ask) -> None:
    """Born some time in December 2023, the child may still be two; the older age was counted."""
    child = Member.model_validate({"name": "Cy", "born": "2023-12"})
    answer = answered(ask((person("Ann", 40), child), offers=[ADULT, CHILD, TOT]))
    assert [line.name for line in answer.purchases] == ["Adult", "Child"]
    assert len(answer.notes) == 1
    assert answer.notes[0].startswith("Only Cy's month of birth is known")


def test_a_held_pass_is_to_be_brought(ask: Ask, family: Family) -> None:
    """The note names the holders who come along."""
    card = {"name": "Card", "kind": "pass", "price": "90", "months": 12, "seats": [{"count": 4}]}
    owned = HeldPass(place="test-museum", offer="Card", holders=("Ann", "Zoe"), valid_until=ARRIVAL.date())
    answer = answered(ask(family(Ann=40, Bo=41), offers=[ADULT, card], held=(owned,)))
    assert answer.notes == ("Bring 'Card' of Ann.",)


def test_children_may_not_enter_alone_where_the_card_says_so(ask: Ask, family: Family) -> None:
    """Nobody is there for them, or too few are; with enough adults the rule is kept."""
    rule = [{"ages": "under 12", "by": "16+", "each_minds": 2}]
    alone = refused(ask(family(A=8, B=9), offers=[ADULT, CHILD], must_be_accompanied=rule))
    assert alone == (
        "Visitors under 12 may only enter with somebody aged 16 or over, who may bring up to 2; "
        "nobody is there for A and B.",
    )
    too_few = refused(ask(family(Ann=40, A=8, B=9, C=10), offers=[ADULT, CHILD], must_be_accompanied=rule))
    assert too_few[0].endswith("in the party that is 1 person for A, B, and C.")
    answered(ask(family(Ann=40, A=8, B=9), offers=[ADULT, CHILD], must_be_accompanied=rule))


def test_an_age_that_no_offer_is_for_is_named(ask: Ask, family: Family) -> None:
    """The refusal names the person and the age, in months under two years."""
    for_two = {"name": "Pair", "kind": "bundle", "price": "20", "seats": [{"count": 2, "ages": "18+"}]}
    for board in ([ADULT], [ADULT, for_two]):
        assert refused(ask(family(Ann=40, B=1), offers=board)) == (
            "No offer on the card is for B (17 months).",
        )


def test_what_keeps_somebody_out_is_listed(ask: Ask, family: Family) -> None:
    """A missing status, a wrong day and a missed booking are told apart."""
    board = [
        ADULT,
        {"name": "Scout", "price": "1", "ages": "under 18", "needs": ["scout"]},
        {"name": "Wednesday", "price": "1", "ages": "under 18", "valid": "We"},
        {"name": "Booked", "price": "1", "ages": "under 18", "book_days_ahead": 30},
    ]
    assert refused(ask(family(Ann=40, B=8), offers=board)) == (
        "No offer lets B (8 years) in: 'Scout' needs proof of scout, 'Wednesday' is only good at these "
        "times: We, and 'Booked' had to be booked by Sun, Nov 8, 2026.",
    )


@pytest.mark.parametrize(
    ("board", "party", "reason"),
    [
        ([ADULT, TOT], {"B": 1}, "'Tot' asks for more paying companions than there are, which keeps out B."),
        (
            [{**ADULT, "at_least": 3}],
            {"Ann": 40, "Bo": 41},
            "'Adult' is sold from 3 people on, which keeps out Ann and Bo.",
        ),
        (
            [{**ADULT, "at_most": 1}],
            {"Ann": 40, "Bo": 41},
            "'Adult' is sold at most 1 time to one party, which keeps out Ann and Bo.",
        ),
        (
            [{**FAMILY, "must_include": "18+"}],
            {"A": 8, "B": 9},
            "'Family' must include somebody aged 18+, which keeps out A and B.",
        ),
        (
            [{**FAMILY, "at_least": 3}],
            {"A": 8, "B": 9},
            "'Family' must have 3 seats taken, which keeps out A and B.",
        ),
    ],
)
def test_the_rule_that_keeps_a_party_out_is_named(
    ask: Ask, family: Family, board: list[object], party: dict[str, int], reason: str
) -> None:
    """Where each person has an offer but not all together, the rule whose absence would help is named."""
    assert reason in refused(ask(family(**party), offers=board))


def test_rules_that_only_together_keep_out_are_named_together(ask: Ask, family: Family) -> None:
    """Two limits, neither of which alone would be enough to lift."""
    board = [{**ADULT, "at_most": 1, "at_least": 3}]
    reasons = refused(ask(family(Ann=40, Bo=41), offers=board))
    assert reasons == ("The limits of 'Adult' together leave no way in for Ann and Bo.",)
