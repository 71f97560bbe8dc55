"""What a price board's check finds, one test for each rule."""

from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest

from tests.builders import make_place
from tripplan.documents.places.offers import Ticket
from tripplan.errors import Weight
from tripplan.planning.admission.checks import board_findings
from tripplan.planning.admission.terms.ticket import TicketTerms

ADULT = {"name": "Adult", "price": "12", "ages": "18+"}
CHILD = {"name": "Child", "price": "7", "ages": "under 18"}
PAIR = {"name": "Pair", "kind": "bundle", "price": "20", "seats": [{"count": 2}]}
CARD = {"name": "Card", "kind": "pass", "price": "90", "months": 12, "seats": [{"count": 2}]}

Check = Callable[..., list[tuple[str, str, Weight]]]


@pytest.fixture
def check() -> Check:
    """The findings about a board: field, value, weight."""

    def make(offers: list[dict[str, Any]], **card: Any) -> list[tuple[str, str, Weight]]:
        findings = board_findings(make_place(offers=offers, **card), "card.toml")
        assert all(finding.file == "card.toml" and finding.message for finding in findings)
        return [(finding.field, finding.value, finding.weight) for finding in findings]

    return make


def test_a_sound_board_has_no_findings(check: Check) -> None:
    """Tickets by age, a family ticket, a status, a free day, a pass and a voucher fit together."""
    board = [
        ADULT,
        CHILD,
        PAIR,
        CARD,
        {"name": "Student", "price": "6", "needs": ["student"]},
        {"name": "Free Wednesday", "price": "0", "valid": "We"},
        {"name": "Carer", "price": "0", "companions": {"needs": ["disabled visitor"]}},
    ]
    vouchers = [{"name": "Half", "percent_off": "50", "offers": ["Pair"]}]
    accompanied = [{"ages": "under 12"}]
    assert check(board, vouchers=vouchers, must_be_accompanied=accompanied) == []


def test_the_builders_own_board_is_sound() -> None:
    """The place that tests are built on has no findings."""
    assert board_findings(make_place(), "card.toml") == ()


@pytest.mark.parametrize(
    ("offers", "card", "field", "value", "weight"),
    [
        ([ADULT, {**CHILD, "name": "Adult"}], {}, "offers[1].name", "Adult", Weight.FAULT),
        ([ADULT, {**CHILD, "ages": "under 19"}], {}, "offers[1].ages", "under 19", Weight.FAULT),
        ([ADULT, {**CHILD, "ages": "3-17"}], {}, "offers", "under 3", Weight.WARNING),
        ([ADULT, {**CHILD, "ages": "under 16"}], {}, "offers", "16-17", Weight.WARNING),
        ([{**CHILD, "ages": "under 60"}], {}, "offers", "60+", Weight.WARNING),
        ([ADULT, CHILD, {**PAIR, "price": "24.50"}], {}, "offers[2].price", "24.50", Weight.WARNING),
        ([ADULT, CHILD], {"vouchers": [{"name": "V"}]}, "vouchers[0]", "", Weight.FAULT),
        (
            [ADULT, CHILD],
            {"vouchers": [{"name": "V", "percent_off": "5", "amount_off": "2"}]},
            "vouchers[0]",
            "5 and 2",
            Weight.FAULT,
        ),
        (
            [ADULT, CHILD],
            {"vouchers": [{"name": "V", "amount_off": "2", "offers": ["Adult", "Adlut"]}]},
            "vouchers[0].offers[1]",
            "Adlut",
            Weight.FAULT,
        ),
        (
            [ADULT, CHILD],
            {"vouchers": [{"name": "V", "amount_off": "2"}, {"name": "V", "amount_off": "3"}]},
            "vouchers[1].name",
            "V",
            Weight.FAULT,
        ),
        ([ADULT, CHILD, {**PAIR, "at_least": 3}], {}, "offers[2].at_least", "3", Weight.FAULT),
        (
            [ADULT, CHILD, {"name": "G", "price": "5", "at_least": 9, "at_most": 8}],
            {},
            "offers[2].at_least",
            "9",
            Weight.FAULT,
        ),
        (
            [ADULT, CHILD, {**PAIR, "first_day": "2026-12-02", "last_day": "2026-12-01"}],
            {},
            "offers[2].last_day",
            "2026-12-01",
            Weight.FAULT,
        ),
        (
            [{**ADULT, "price": "0"}, {**CHILD, "companions": {}}],
            {},
            "offers[1].companions.ages",
            "18+",
            Weight.FAULT,
        ),
        ([CARD], {}, "offers", "Card", Weight.WARNING),
        (
            [ADULT, {**CHILD, "one_status_covers": 2}],
            {},
            "offers[1].one_status_covers",
            "2",
            Weight.WARNING,
        ),
        (
            [ADULT, CHILD, {**CARD, "guests_percent_off": "10"}],
            {},
            "offers[2].guests_percent_off",
            "10",
            Weight.WARNING,
        ),
        (
            [ADULT, CHILD, {**CARD, "elsewhere": [{"place": "test-museum"}]}],
            {},
            "offers[2].elsewhere[0].place",
            "test-museum",
            Weight.FAULT,
        ),
        (
            [
                ADULT,
                CHILD,
                {**PAIR, "price": "9", "seats": [{"count": 2, "ages": "3-9"}], "must_include": "18+"},
            ],
            {},
            "offers[2].must_include",
            "18+",
            Weight.FAULT,
        ),
        (
            [ADULT, CHILD],
            {"must_be_accompanied": [{"ages": "under 16", "by": "12-15"}]},
            "must_be_accompanied[0].by",
            "12-15",
            Weight.FAULT,
        ),
        ([ADULT, {**CHILD, "price": "6.995"}], {}, "offers[1].price", "6.995", Weight.FAULT),
        (
            [ADULT, {**CHILD, "price": "6.5"}],
            {"currency": "JPY", "parking": {}},
            "offers[1].price",
            "6.5",
            Weight.FAULT,
        ),
        ([ADULT, CHILD], {"parking": {"price": "1.001"}}, "parking.price", "1.001", Weight.FAULT),
    ],
)
def test_what_does_not_fit_is_found(
    check: Check, offers: list[dict[str, Any]], card: dict[str, Any], field: str, value: str, weight: Weight
) -> None:
    """One thing wrong is one finding, with its field, value and weight."""
    assert check(offers, **card) == [(field, value, weight)]


def test_bands_under_other_conditions_may_overlap(check: Check) -> None:
    """A senior's proof, a weekday or a companion makes a ticket another one."""
    board = [
        ADULT,
        CHILD,
        {"name": "Senior", "price": "9", "ages": "65+", "needs": ["senior card"]},
        {"name": "Monday", "price": "5", "ages": "18+", "valid": "Mo"},
        {"name": "Tot", "price": "0", "ages": "under 3", "companions": {}},
    ]
    assert check(board) == []


def test_every_fault_is_found_at_once(check: Check) -> None:
    """Several things wrong are all listed."""
    board = [ADULT, {**ADULT, "price": "1.234"}, {**PAIR, "at_least": 5}]
    fields = [field for field, _, _ in check(board)]
    assert fields == ["offers[1].name", "offers[1].ages", "offers", "offers[2].at_least", "offers[1].price"]


@pytest.mark.parametrize("at_least", [2, 8])
def test_a_group_price_with_room_between_its_two_numbers_is_no_fault(at_least: int) -> None:
    """From two or from eight people on, and for eight at most."""
    group = Ticket(name="G", price=Decimal(5), at_least=at_least, at_most=8)
    assert not list(TicketTerms(group).faults())


SUMMER = {"name": "Summer", "price": "12", "ages": "13+", "first_day": "2027-05-01", "last_day": "2027-09-30"}
TODDLER = {"name": "Toddler", "price": "0", "ages": "under 13"}


def test_seasonal_prices_leave_nobody_out(check: Check) -> None:
    """An age whose ticket is sold in a season, or at one of two prices by weekday, has a ticket."""
    by_weekday = [
        {"name": "Week", "price": "9", "ages": "13+", "valid": "Mo-Fr"},
        {"name": "Weekend", "price": "11", "ages": "13+", "valid": "Sa-Su"},
    ]
    assert check([TODDLER, SUMMER]) == []
    assert check([TODDLER, *by_weekday]) == []
    assert check([TODDLER, by_weekday[0]]) == [("offers", "13+", Weight.WARNING)]


def test_who_must_show_something_has_no_ticket_without_it(check: Check) -> None:
    """A ticket for students alone leaves the other children without one, as a warning."""
    student = {**CHILD, "name": "Student", "needs": ["student"]}
    assert [(field, weight) for field, _, weight in check([ADULT, student])] == [("offers", Weight.WARNING)]


def test_a_ticket_for_birthdays_is_nobodys_usual_ticket(check: Check) -> None:
    """Children who only come in on their birthday have no ticket on other days."""
    birthday = {"name": "Birthday", "price": "0", "good_on": "birthday"}
    assert check([ADULT, birthday]) == [("offers", "under 18", Weight.WARNING)]


def test_a_line_of_parking_is_told_by_its_own_words(check: Check) -> None:
    """Hours, then length, then price; a longer time behind a shorter one is no fault."""
    hour, day = {"up_to_minutes": 60, "price": "2"}, {"price": "9"}
    sunday = {"valid": "Su", "price": "0"}
    assert check([ADULT, CHILD], parking={"rates": [hour, {**hour, "up_to_minutes": 61}, day]}) == []
    for rates, value in (
        ([hour, {**hour, "price": "3"}], "60"),
        ([day, {"price": "8"}], "8"),
        ([sunday, {**sunday, "up_to_minutes": 30}], "Su"),
    ):
        found = check([ADULT, CHILD], parking={"rates": rates})
        assert found == [("parking.rates[1]", value, Weight.FAULT)]


def test_a_fee_tells_which_two_figures_it_has(check: Check) -> None:
    """Both are told, and none as nothing."""
    for fee, value in (({"price": "1", "percent": "2"}, "1 and 2"), ({}, "")):
        assert check([ADULT, CHILD], fees=[{"name": "Fee", **fee}]) == [("fees[0]", value, Weight.FAULT)]


def test_prices_of_other_ages_are_in_whole_cents_too(check: Check) -> None:
    """Half a cent is found wherever a price stands."""
    group = {"name": "Group", "price": "4", "ages": "18+", "at_least": 9}
    group["other_ages"] = [{"ages": "under 18", "price": "2.505"}]
    assert check([ADULT, CHILD, group]) == [("offers[2].other_ages[0].price", "2.505", Weight.FAULT)]


def test_a_morning_ticket_leaves_time_for_the_morning(check: Check) -> None:
    """Let in at 10:00 at the earliest, an hour's stay ends at 11:00, which is just in time."""
    for leave_by, found in (("11:00", []), ("10:59", [("offers[2].leave_by", "10:59", Weight.WARNING)])):
        morning = {"name": "Morning", "price": "5", "leave_by": leave_by}
        opening = {"hours": "Tu-Su 09:00-17:00", "entry_times": ["13:00", "10:00"]}
        assert check([ADULT, CHILD, morning], opening=opening) == found


def test_a_percentage_goes_off_single_tickets_only(check: Check) -> None:
    """Off a named ticket it is sound; off a group price, which nobody pays alone, it takes nothing."""
    group = {"name": "Group", "price": "4", "at_least": 5}
    for name, found in (("Adult", []), ("Group", [("offers[3].ages", "any", Weight.FAULT)])):
        residents = {**RESIDENTS, "offers": [name]}
        assert check([ADULT, CHILD, group, residents]) == found


def test_a_family_ticket_is_held_against_tickets_of_any_day(check: Check) -> None:
    """Two at 12 cost less than the pair at 25, whatever a ticket for a few days costs."""
    pair = {**PAIR, "price": "25", "seats": [{"count": 2, "ages": "18+"}]}
    for limit in ({"last_day": "2026-12-31"}, {"first_day": "2026-12-01"}, {"valid": "Sa"}):
        gala = {"name": "Gala", "price": "30", "ages": "18+", **limit}
        assert check([ADULT, CHILD, gala, pair]) == [("offers[3].price", "25", Weight.WARNING)]


def test_a_tax_on_entry_needs_no_fee(check: Check) -> None:
    """Only a tax on fees is idle without them."""
    assert check([ADULT, CHILD], sales_tax={"percent": "7"}) == []


def test_one_limit_of_height_is_no_contradiction(check: Check) -> None:
    """Only a least, only a greatest, or both the same."""
    limits = ({"least_height": "42 in"}, {"most_height": "42 in"})
    for some in (*limits, {**limits[0], **limits[1]}):
        assert check([ADULT, CHILD], add_ons=[{**BOAT, **some}]) == []


@pytest.mark.parametrize("ages", ["18 months+", "18+ months", "18-1200 months"])
def test_a_band_from_some_months_on_leaves_no_old_people_out(check: Check, ages: str) -> None:
    """However 'from 18 months' is written, nobody over a hundred is missed."""
    assert check([{"name": "All", "price": "9", "ages": ages}]) == [
        ("offers", "under 18 months", Weight.WARNING)
    ]


def test_a_ticket_for_a_stay_nobody_makes_is_odd(check: Check) -> None:
    """Half an hour, where a stay under an hour is not worth the drive."""
    short = {"name": "Short", "price": "2", "longest_stay_minutes": 30}
    assert check([ADULT, CHILD, short]) == [("offers[2].longest_stay_minutes", "30", Weight.WARNING)]


def test_tickets_by_length_of_stay_do_not_overlap(check: Check) -> None:
    """Two hours, a morning and a day are three tickets for the same people."""
    limits: list[dict[str, Any]] = [{}, {"longest_stay_minutes": 120}, {"leave_by": "12:00"}]
    board = [{"name": f"T{n}", "price": str(9 - n), **limit} for n, limit in enumerate(limits)]
    assert check(board) == []


@pytest.mark.parametrize(
    ("rates", "field", "weight"),
    [
        ([{"price": "3"}, {"up_to_minutes": 60, "price": "1"}], "parking.rates[1]", Weight.FAULT),
        ([{"price": "3", "valid": "Su"}, {"price": "1", "valid": "Su"}], "parking.rates[1]", Weight.FAULT),
        ([{"price": "3", "at_most": "2"}], "parking.rates[0].at_most", Weight.FAULT),
        ([{"price": "3", "free_minutes": 30}], "parking.rates[0].free_minutes", Weight.WARNING),
        ([{"price": "3.005"}], "parking.rates[0].price", Weight.FAULT),
    ],
)
def test_prices_of_parking_that_contradict_themselves(
    check: Check, rates: list[dict[str, Any]], field: str, weight: Weight
) -> None:
    """A line that never counts, a highest price below the fixed one, free minutes of no hours."""
    found = check([ADULT, CHILD], parking={"price": "5", "rates": rates})
    assert [(where, how) for where, _, how in found] == [(field, weight)]


SHOW: dict[str, Any] = {"name": "Entry with show", "price": "15", "ages": "18+", "includes": ["Show"]}
RESIDENTS: dict[str, Any] = {"kind": "discount", "name": "Residents", "percent_off": "25"}


def test_entry_with_a_show_stands_beside_plain_entry(check: Check) -> None:
    """It is another ticket for the same people, once the show stands on the card."""
    beside = [{"name": "Show", "price": "4"}]
    assert check([ADULT, CHILD, SHOW], add_ons=beside) == []
    assert check([ADULT, CHILD, SHOW], visit={"shows": [{"name": "Show", "starts": ["11:00"]}]}) == []
    assert check([ADULT, CHILD, SHOW]) == [("offers[2].includes[0]", "Show", Weight.FAULT)]


BOAT: dict[str, Any] = {"name": "Boat", "price": "6"}


@pytest.mark.parametrize(
    ("offers", "card", "field", "weight"),
    [
        ([{**RESIDENTS, "percent_off": "0"}], {}, "offers[2].percent_off", Weight.WARNING),
        ([{**RESIDENTS, "offers": ["Adlut"]}], {}, "offers[2].offers[0]", Weight.FAULT),
        ([{**RESIDENTS, "offers": ["Child"], "ages": "18+"}], {}, "offers[2].ages", Weight.FAULT),
        ([{**RESIDENTS, "one_status_covers": 2}], {}, "offers[2].one_status_covers", Weight.WARNING),
        (
            [
                {
                    "name": "Group",
                    "price": "4",
                    "at_least": 9,
                    "ages": "18+",
                    "other_ages": [{"ages": "12-20", "price": "2"}],
                }
            ],
            {},
            "offers[2].other_ages[0].ages",
            Weight.FAULT,
        ),
        (
            [{**CARD, "guests_at_most": 3, "guests_per_year": 2}],
            {},
            "offers[2].guests_per_year",
            Weight.FAULT,
        ),
        (
            [],
            {"add_ons": [{**BOAT, "with_ticket": [{"offers": ["Adlut"], "price": "2"}]}]},
            "add_ons[0].with_ticket[0].offers[0]",
            Weight.FAULT,
        ),
        (
            [],
            {"add_ons": [{**BOAT, "with_ticket": [{"offers": ["Adult"], "price": "6"}]}]},
            "add_ons[0].with_ticket[0].price",
            Weight.WARNING,
        ),
        (
            [],
            {"add_ons": [{**BOAT, "least_height": "48 in", "most_height": "120 cm"}]},
            "add_ons[0].most_height",
            Weight.FAULT,
        ),
        ([], {"fees": [{"name": "F"}]}, "fees[0]", Weight.FAULT),
        ([], {"fees": [{"name": "F", "price": "1", "percent": "2"}]}, "fees[0]", Weight.FAULT),
        (
            [],
            {"fees": [{"name": "F", "price": "1", "online_only": True}]},
            "fees[0].online_only",
            Weight.WARNING,
        ),
        ([], {"sales_tax": {"percent": "7", "on_fees": True}}, "sales_tax.on_fees", Weight.WARNING),
        (
            [],
            {"vouchers": [{"name": "V", "amount_off": "5", "people_at_most": 2}]},
            "vouchers[0].people_at_most",
            Weight.FAULT,
        ),
    ],
)
def test_rules_for_few_that_contradict_themselves(
    check: Check, offers: list[dict[str, Any]], card: dict[str, Any], field: str, weight: Weight
) -> None:
    """Each is told once, at the field that is to blame."""
    found = check([ADULT, CHILD, *offers], **card)
    assert [(where, how) for where, _, how in found] == [(field, weight)]
