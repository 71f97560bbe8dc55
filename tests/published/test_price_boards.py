"""Patterns of price boards as places really publish them, with invented names and prices, worked by hand.

Source of every pattern: common practice, no source. Each sum is worked in the comment above its check.
"""

from typing import Any

import pytest

from tests.builders import make_place
from tests.planning.admission.price_boards import ARRIVAL, TODAY, person
from tripplan.documents.family.member import Member
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission


def bought(party: tuple[Member, ...], moment: Any = ARRIVAL, **card: Any) -> tuple[str, dict[str, int]]:
    """What a party pays in all, and how many of what it buys."""
    answer = cheapest_admission(make_place(**card), party, moment, today=TODAY)
    assert isinstance(answer, Admission), answer
    return str(answer.total.amount), {line.name: line.quantity for line in answer.purchases}


FAMILY_TICKET: list[dict[str, Any]] = [
    {"name": "Adult", "price": "9.50", "ages": "16+"},
    {"name": "Child", "price": "5.50", "ages": "5-15"},
    {"name": "Small child", "price": "0", "ages": "under 5", "companions": {"ages": "16+", "each_allows": 3}},
    {
        "name": "Family ticket",
        "kind": "bundle",
        "price": "26.00",
        "seats": [{"count": 2, "ages": "16+"}, {"count": 3, "ages": "5-15"}],
        "must_include": "16+",
    },
]


@pytest.mark.parametrize(
    ("ages", "total", "basket"),
    [
        # Two adults, three children: singles 19.00 + 16.50 = 35.50; the family ticket 26.00.
        ((40, 38, 12, 9, 6), "26.00", {"Family ticket": 1}),
        # One adult, two children: singles 9.50 + 11.00 = 20.50, less than 26.00.
        ((40, 9, 6), "20.50", {"Adult": 1, "Child": 2}),
        # One adult, three children: singles 9.50 + 16.50 = 26.00, as much as the family ticket, which is
        # one item instead of four.
        ((40, 12, 9, 6), "26.00", {"Family ticket": 1}),
        # Two adults, four children, one small child: family ticket 26.00 + 5.50 + 0 = 31.50; singles 41.00;
        # two family tickets 52.00.
        ((40, 38, 14, 12, 9, 6, 3), "31.50", {"Family ticket": 1, "Child": 1, "Small child": 1}),
        # Three adults, five children: one family ticket + 9.50 + 11.00 = 46.50; two 52.00; singles 56.00.
        ((40, 38, 70, 14, 12, 9, 7, 6), "46.50", {"Family ticket": 1, "Adult": 1, "Child": 2}),
    ],
)
def test_family_ticket_for_two_and_up_to_three(
    ages: tuple[int, ...], total: str, basket: dict[str, int]
) -> None:
    """A family ticket for two adults and up to three children pays from a certain family on."""
    party = tuple(person(f"P{number}", age) for number, age in enumerate(ages))
    assert bought(party, offers=FAMILY_TICKET) == (total, basket)


UNDER_FIVES_FREE: list[dict[str, Any]] = [
    {"name": "General", "price": "18.00", "ages": "13-64"},
    {"name": "Youth", "price": "12.00", "ages": "2-12"},
    {"name": "Senior", "price": "15.00", "ages": "65+"},
    {"name": "Infant", "price": "0", "ages": "under 2"},
    {"name": "Under fives", "price": "0", "ages": "2-4", "companions": {"each_allows": 1}},
]


@pytest.mark.parametrize(
    ("ages", "total", "basket"),
    [
        # One paying adult brings in one of the two under fives: 18.00 + 12.00.
        ((35, 4, 3), "30.00", {"General": 1, "Youth": 1, "Under fives": 1}),
        # A grandparent pays too and brings in the other: 18.00 + 15.00.
        ((35, 66, 4, 3), "33.00", {"General": 1, "Senior": 1, "Under fives": 2}),
        # A youth of 13 pays the adult price but is no adult: 18.00 + 12.00.
        ((13, 4), "30.00", {"General": 1, "Youth": 1}),
        # The infant needs nobody's ticket: 18.00 + 0 + 0.
        ((35, 4, 1), "18.00", {"General": 1, "Infant": 1, "Under fives": 1}),
    ],
)
def test_under_fives_free_with_a_paying_adult(
    ages: tuple[int, ...], total: str, basket: dict[str, int]
) -> None:
    """One child under five goes free for each paying adult."""
    party = tuple(person(f"P{number}", age) for number, age in enumerate(ages))
    assert bought(party, offers=UNDER_FIVES_FREE) == (total, basket)


GROUP_FROM_TEN: list[dict[str, Any]] = [
    {"name": "Adult", "price": "11.00", "ages": "16+"},
    {"name": "Child", "price": "8.00", "ages": "under 16"},
    {
        "name": "Group",
        "price": "6.50",
        "at_least": 10,
        "one_free_per": 10,
        "leader_ages": "18+",
        "book_days_ahead": 5,
    },
]


@pytest.mark.parametrize(
    ("adults", "children", "total", "basket"),
    [
        # Nine in all: too few for a group. 2 x 11.00 + 7 x 8.00 = 78.00.
        (2, 7, "78.00", {"Adult": 2, "Child": 7}),
        # Ten in all, nobody free, since ten must pay: 10 x 6.50 = 65.00, against 86.00.
        (2, 8, "65.00", {"Group": 10}),
        # Twelve: eleven pay, one leader free: 11 x 6.50 = 71.50.
        (2, 10, "71.50", {"Group": 11, "Group: free leader": 1}),
        # Twenty-two: twenty pay, two leaders free: 20 x 6.50 = 130.00.
        (3, 19, "130.00", {"Group": 20, "Group: free leader": 2}),
        # Twenty-two with one adult: one free, twenty-one pay: 136.50.
        (1, 21, "136.50", {"Group": 21, "Group: free leader": 1}),
    ],
)
def test_group_from_ten_with_the_leader_free(
    adults: int, children: int, total: str, basket: dict[str, int]
) -> None:
    """From ten payers on the price falls, and one leader in ten goes free."""
    ages = [40] * adults + [9] * children
    party = tuple(person(f"P{number}", age) for number, age in enumerate(ages))
    assert bought(party, offers=GROUP_FROM_TEN) == (total, basket)


STATE_MUSEUM: list[dict[str, Any]] = [
    {"name": "Adult", "price": "14.00", "ages": "18-64"},
    {"name": "Senior", "price": "10.00", "ages": "65+"},
    {"name": "Youth", "price": "7.00", "ages": "3-17"},
    {"name": "Small child", "price": "0", "ages": "under 3"},
    {"name": "Resident adult", "price": "9.00", "ages": "18+", "needs": ["resident of Illinois"]},
    {
        "name": "Resident day",
        "price": "0",
        "needs": ["resident of Illinois"],
        "valid": "Tu; PH off",
    },
    {"name": "First Sunday", "price": "0", "valid": "Su[1]"},
    {
        "name": "Benefit card",
        "price": "3.00",
        "needs": ["benefit card"],
        "one_status_covers": 4,
    },
]
RESIDENT = ("resident of Illinois",)


def test_resident_days_of_a_state_museum() -> None:
    """Residents enter free on Tuesdays, everybody on first Sundays; a benefit card covers four any day."""
    ours = (person("Ann", 40, RESIDENT), person("Cy", 8, RESIDENT))
    guest = person("Zoe", 38)
    tuesday, wednesday = ARRIVAL, ARRIVAL.replace(day=9)
    first_sunday, second_sunday = ARRIVAL.replace(day=6), ARRIVAL.replace(day=13)
    # Tuesday: both residents free, the guest 14.00.
    assert bought((*ours, guest), tuesday, offers=STATE_MUSEUM) == ("14.00", {"Adult": 1, "Resident day": 2})
    # Wednesday: resident adult 9.00, youth 7.00, guest 14.00: 30.00.
    assert bought((*ours, guest), wednesday, offers=STATE_MUSEUM) == (
        "30.00",
        {"Adult": 1, "Youth": 1, "Resident adult": 1},
    )
    # First Sunday of December 2026 is the 6th; on the 13th the Wednesday's prices count again.
    assert bought((*ours, guest), first_sunday, offers=STATE_MUSEUM) == ("0.00", {"First Sunday": 3})
    assert bought((*ours, guest), second_sunday, offers=STATE_MUSEUM)[0] == "30.00"
    # Wednesday with a benefit card for four: Ann, Zoe and two of the three children at 3.00, the third 7.00.
    card = person("Bea", 41, ("benefit card",))
    party = (card, guest, person("Cy", 8), person("Di", 9), person("Ed", 10))
    assert bought(party, wednesday, offers=STATE_MUSEUM) == ("19.00", {"Youth": 1, "Benefit card": 4})


MEMBERSHIP: list[dict[str, Any]] = [
    {"name": "Adult", "price": "16.00", "ages": "13+"},
    {"name": "Child", "price": "12.00", "ages": "2-12"},
    {"name": "Toddler", "price": "0", "ages": "under 2"},
    {
        "name": "Family membership",
        "kind": "pass",
        "price": "120.00",
        "months": 12,
        "seats": [{"count": 2, "ages": "18+"}, {"count": 6, "ages": "under 18"}],
        "guests_percent_off": "50",
        "guests_at_most": 2,
        "parking_included": True,
    },
]


def test_family_membership_with_guests_and_tax() -> None:
    """A large family with friends gains by the membership on the first visit already, tax and fee included.

    Household: 2 adults, 6 children of 3 to 12. Guests: 1 adult, 1 child.
    Singles: 3 x 16 + 7 x 12 = 132.00. Membership: 120.00 + 8.00 + 6.00 for the guests = 134.00, dearer.
    With one more adult guest, who pays full price: singles 148.00; membership 120 + 8 + 8 + 12 = 148.00:
    both adults at half price and the child at 12.00; equal, and fewer items win.
    With tax of 6.25 % and a fee of 1.00 per ticket, singles are 148.00 x 1.0625 + 11.00 = 168.25, the
    membership 148.00 x 1.0625 + 4.00 = 161.25.
    """
    ours = tuple(person(f"H{n}", age) for n, age in enumerate((40, 39, 12, 10, 8, 6, 4, 3)))
    friends = (person("G1", 41), person("G2", 7))
    names = frozenset(member.name for member in ours)

    def ask(party: tuple[Member, ...], **card: Any) -> Admission:
        place = make_place(offers=MEMBERSHIP, **card)
        answer = cheapest_admission(place, party, ARRIVAL, today=TODAY, household_members=names)
        assert isinstance(answer, Admission)
        return answer

    first = ask((*ours, *friends))
    assert (str(first.total.amount), first.parking_included) == ("132.00", False)
    more = (*ours, *friends, person("G3", 44))
    equal = ask(more)
    assert (str(equal.total.amount), equal.parking_included) == ("148.00", True)
    charged = ask(
        more,
        sales_tax={"percent": "6.25"},
        fees=[{"name": "Ticket fee", "price": "1.00", "per": "ticket"}],
    )
    assert str(charged.total.amount) == "161.25"
