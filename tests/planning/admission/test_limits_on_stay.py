"""Tickets for a length of stay, and tickets to leave by a time; the sums are worked by hand."""

from datetime import datetime, time, timedelta
from typing import Any

import pytest

from tests.builders import make_place
from tests.planning.admission.price_boards import ARRIVAL, TODAY, person
from tripplan.errors import PlanError
from tripplan.planning.admission.availability import limits_on_stay
from tripplan.planning.admission.cheapest import Gate, cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission

BOARD: list[dict[str, Any]] = [
    {"name": "Day", "price": "16"},
    {"name": "Two hours", "price": "9", "longest_stay_minutes": 120},
    {"name": "Morning", "price": "7", "leave_by": "12:00"},
]
"""Arrival is at 10:00."""
PARTY = (person("Ann", 40), person("Cy", 8))


def paid(leaving: datetime | None, moment: datetime = ARRIVAL, **card: Any) -> tuple[str, set[str]]:
    """What two people pay, and for what."""
    answer = cheapest_admission(
        make_place(**{"offers": BOARD, **card}), PARTY, moment, today=TODAY, leaving=leaving
    )
    assert isinstance(answer, Admission), answer
    return str(answer.total.amount), {line.name for line in answer.purchases}


@pytest.mark.parametrize(
    ("leaves_after", "total", "name"),
    [
        (120, "14.00", "Morning"),  # out at 12:00, which is still by 12:00: 2 x 7
        (121, "32.00", "Day"),  # a minute over both limits: 2 x 16
        (60, "14.00", "Morning"),
    ],
)
def test_a_morning_ticket_is_not_sold_for_a_stay_past_noon(leaves_after: int, total: str, name: str) -> None:
    """Who stays on past noon pays for the day, and two hours end with their last minute."""
    assert paid(ARRIVAL + timedelta(minutes=leaves_after)) == (total, {name})


def test_a_two_hour_ticket_goes_by_the_length_of_the_stay() -> None:
    """From 11:00 to 13:00 the morning ticket is out of the question and the two hours are kept: 2 x 9."""
    eleven = ARRIVAL + timedelta(hours=1)
    assert paid(eleven + timedelta(hours=2), eleven) == ("18.00", {"Two hours"})


def test_a_morning_ticket_is_nothing_for_the_afternoon() -> None:
    """Who arrives at noon cannot have left before it, whatever is said of leaving."""
    noon = ARRIVAL + timedelta(hours=2)
    assert paid(None, noon) == ("18.00", {"Two hours"})


def test_without_a_leaving_time_the_limit_is_told() -> None:
    """Where nobody has said when the party leaves, the cheapest ticket is told with its limit."""
    answer = cheapest_admission(make_place(offers=BOARD), PARTY, ARRIVAL, today=TODAY)
    assert isinstance(answer, Admission)
    assert any("12:00" in note for note in answer.notes)


def test_only_a_ticket_that_ends_too_early_lets_nobody_in() -> None:
    """The reason names the ticket and its limit."""
    place = make_place(offers=BOARD[1:2])
    answer = cheapest_admission(place, PARTY, ARRIVAL, today=TODAY, leaving=ARRIVAL + timedelta(minutes=150))
    assert isinstance(answer, NoAdmission)
    assert all("Two hours" in reason and "2 h" in reason for reason in map(str, answer.reasons))


def test_nobody_leaves_before_arriving() -> None:
    """Such a question is a mistake of whoever asks it."""
    with pytest.raises(PlanError):
        paid(ARRIVAL - timedelta(minutes=1))


def test_entry_and_its_price_agree_for_every_stay() -> None:
    """The quick price is that of the whole answer, for stays either side of each limit."""
    for minutes in range(60, 200, 10):
        gate = Gate(
            make_place(offers=BOARD),
            ARRIVAL,
            TODAY,
            frozenset({"Ann", "Cy"}),
            leaving=ARRIVAL + timedelta(minutes=minutes),
        )
        whole, quick = gate.admission(PARTY), gate.entry_price(PARTY)
        assert isinstance(whole, Admission)
        assert quick is not None
        assert quick.total == whole.total


def test_the_limits_of_a_board_are_each_told_once() -> None:
    """So that whoever weighs many stays knows where the price may change."""
    twice = [*BOARD, {**BOARD[1], "name": "Two hours, child", "ages": "under 9"}]
    assert limits_on_stay(make_place(offers=twice)) == ((None, time(12)), (120, None))
