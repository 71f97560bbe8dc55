"""Admission: the calculator beside its integer programme alone, measured within one run."""

from collections.abc import Callable
from random import Random
from statistics import median
from typing import Any

import pytest

from tests.benchmarks.timing import timed
from tests.builders import make_place
from tests.planning.admission.price_boards import ARRIVAL, DAY, TODAY, Question, person
from tests.planning.admission.reference_programme import least_by_reference
from tripplan.planning.admission.availability import VisitTime, on_sale
from tripplan.planning.admission.board import read_board
from tripplan.planning.admission.charges import charge_of, charges_for
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.constraints import Board
from tripplan.planning.admission.integer import cheapest_by_integers
from tripplan.planning.admission.purchase_plans import PurchasePlanner
from tripplan.planning.admission.result import Admission

BOARDS = 6
"""Price boards per size; each is timed three times and the median taken."""

CHILD, ADULT_AGES = "under 18", "18+"


def board_of(offers: int, random: Random) -> list[dict[str, Any]]:
    """An invented board: two tickets by age, then family tickets, groups, statuses, free children, passes."""

    def price(low: int, high: int) -> str:
        return f"{random.randint(low * 4, high * 4) / 4:.2f}"

    board: list[dict[str, Any]] = [
        {"name": "Adult", "price": price(10, 16), "ages": "13+"},
        {"name": "Child", "price": price(5, 9), "ages": "2-12"},
        {"name": "Small child", "price": "0", "ages": "under 2", "companions": {}},
    ]
    while len(board) < offers:
        number = len(board)
        adults, children = random.randint(1, 2), random.randint(1, 4)
        seats = [{"count": adults, "ages": ADULT_AGES}, {"count": children, "ages": CHILD}]
        special: dict[str, Any] = random.choice(
            [
                {"kind": "bundle", "price": price(20, 40), "seats": seats, "must_include": ADULT_AGES},
                {
                    "kind": "bundle",
                    "price": price(20, 35),
                    "seats": [{"count": random.randint(3, 5)}],
                    "extras": {"price": price(4, 8), "at_most": 2},
                },
                {"price": price(5, 9), "at_least": random.randint(5, 12), "one_free_per": 10},
                {"price": price(3, 8), "needs": ["student"]},
                {"price": price(6, 9), "needs": ["educator"], "one_status_covers": random.randint(2, 4)},
                {"price": "0", "ages": f"under {random.randint(3, 6)}", "companions": {"each_allows": 2}},
                {"price": price(6, 10), "ages": "65+"},
                {
                    "kind": "pass",
                    "price": price(70, 120),
                    "months": 12,
                    "seats": seats,
                    "guests_percent_off": "50",
                    "guests_at_most": 2,
                },
            ]
        )
        board.append({"name": f"Offer {number}", **special})
    return board


def question(people: int, offers: int, random: Random) -> Question:
    """A family or group, a third of it adults, some with a status, and a board."""
    party = tuple(
        person(
            f"P{number}",
            random.choice((31, 36, 40, 67)) if number % 3 == 0 else random.choice((1, 3, 5, 7, 9, 12, 14)),
            random.choice(((), (), (), ("student",), ("educator",))),
        )
        for number in range(people)
    )
    return Question(
        make_place(offers=board_of(offers, random)),
        party,
        frozenset(member.name for member in party[:8]),
        (),
        (),
    )


@pytest.mark.parametrize(("people", "offers"), [(6, 8), (6, 20), (12, 20), (30, 20), (60, 30)])
def test_same_optimum_and_how_fast(people: int, offers: int, tell: Callable[[str], None]) -> None:
    """Both find the same optimum; the ratio of their times is printed."""
    random = Random(people * 100 + offers)
    ours: list[float] = []
    theirs: list[float] = []
    whole: list[float] = []
    for _ in range(BOARDS):
        asked = question(people, offers, random)
        months = [member.months_on(DAY) for member in asked.party]

        def read(asked: Question = asked, months: list[int] = months) -> Board:
            on_board, _ = on_sale(asked.place, VisitTime(ARRIVAL, TODAY))
            return read_board(asked.place, on_board, (), asked.party, months, asked.household)

        def solve(asked: Question = asked, read: Callable[[], Board] = read) -> float:
            way = PurchasePlanner(asked.place, read(), ()).cheapest()
            assert way is not None
            return float(way.order.total)

        def reference(asked: Question = asked, read: Callable[[], Board] = read) -> float:
            board = read()
            way = cheapest_by_integers(board, charges_for(asked.place, board, None))
            assert way is not None
            return float(charge_of(way.weight) / 10 ** (board.fine_digits - 2))

        def answer(asked: Question = asked) -> object:
            return cheapest_admission(
                asked.place, asked.party, ARRIVAL, today=TODAY, household_members=asked.household
            )

        rounds = [(timed(solve), timed(reference), timed(answer)) for _ in range(3)]
        for (_, total), (_, least), (_, full) in rounds:
            assert total == pytest.approx(least, abs=0.01)
            assert isinstance(full, Admission)
        if people <= 12:
            assert solve() == pytest.approx(least_by_reference(asked), abs=0.01)
        for took, times in zip((ours, theirs, whole), zip(*rounds, strict=True), strict=True):
            took.append(median(seconds for seconds, _ in times))
    ratios = sorted(mine / other for mine, other in zip(ours, theirs, strict=True))
    tell(
        f"party {people:2}, {offers:2} offers: ours {median(ours) * 1e3:6.2f} ms, "
        f"milp {median(theirs) * 1e3:6.2f} ms, ratio {median(ratios):.2f} (worst {ratios[-1]:.2f}); "
        f"whole answer with two other ways {median(whole) * 1e3:6.2f} ms"
    )
