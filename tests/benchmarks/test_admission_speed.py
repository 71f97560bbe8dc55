"""Admission: the calculator's solvers beside one plain integer programme, measured within one run."""

from random import Random
from statistics import median
from time import perf_counter
from typing import Any

import pytest

from tests.builders import make_place
from tests.planning.admission.price_boards import ARRIVAL, DAY, TODAY, Question, person
from tests.planning.admission.reference_programme import Programme
from tripplan.planning.admission.availability import Visit, on_sale
from tripplan.planning.admission.blocks import read_board
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission
from tripplan.planning.admission.ways import WayFinder

BOARDS = 12
"""Price boards per size; each is timed five times and the median taken."""

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


def seconds(run: Any) -> float:
    """The median time of a call [s]."""
    times = []
    for _ in range(5):
        start = perf_counter()
        run()
        times.append(perf_counter() - start)
    return median(times)


@pytest.mark.parametrize(("people", "offers"), [(6, 8), (6, 20), (12, 20), (30, 20), (60, 30)])
def test_same_optimum_and_how_fast(people: int, offers: int, capsys: pytest.CaptureFixture[str]) -> None:
    """Both find the same optimum; the ratio of their times is printed."""
    random = Random(people * 100 + offers)
    ours, theirs, whole = [], [], []
    for _ in range(BOARDS):
        asked = question(people, offers, random)
        months = [member.months_on(DAY) for member in asked.party]

        def solve(asked: Question = asked, months: list[int] = months) -> int:
            on_board, _ = on_sale(asked.place, Visit(ARRIVAL, TODAY))
            board = read_board(asked.place, on_board, (), asked.party, months, asked.household)
            way = WayFinder(asked.place, board, ()).cheapest()
            assert way is not None
            return round(way.order.total)

        def reference(asked: Question = asked) -> float | None:
            return Programme(asked, None).least()

        def answer(asked: Question = asked) -> object:
            return cheapest_admission(
                asked.place, asked.party, ARRIVAL, today=TODAY, household_members=asked.household
            )

        least = reference()
        assert least is not None
        assert solve() == pytest.approx(least, abs=0.01)
        assert isinstance(answer(), Admission)
        ours.append(seconds(solve))
        theirs.append(seconds(reference))
        whole.append(seconds(answer))
    ratios = sorted(mine / other for mine, other in zip(ours, theirs, strict=True))
    with capsys.disabled():
        print(
            f"\nparty {people:2}, {offers:2} offers: ours {median(ours) * 1e3:6.2f} ms, "
            f"milp {median(theirs) * 1e3:6.2f} ms, ratio {median(ratios):.2f} (worst {ratios[-1]:.2f}); "
            f"whole answer with two other ways {median(whole) * 1e3:6.2f} ms"
        )
