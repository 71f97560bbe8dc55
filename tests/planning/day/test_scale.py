"""Weights counted in few bits are the weights counted in many."""

from decimal import Decimal

import numpy as np
import pytest

from tests.planning.day.day_questions import make_hours, make_napper, make_question
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.worth import Worth
from tripplan.planning.day import DayQuestion
from tripplan.planning.day.times.choices import Choices
from tripplan.planning.day.times.hourly_money import EVER, HourlyMoney, PriceHours
from tripplan.planning.day.times.limits import Limits
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.weighing.nuisances import AS_IT_IS, Scale
from tripplan.planning.day.weighing.weighing import WeighedChoices

DAYS = {
    "naps, lunch, delays and two prices": make_question(
        nappers=(make_napper(in_pushchair=True), make_napper("13:00", 60, "El")),
        habits=Habits(),
        money=HourlyMoney(PriceHours((EVER, 13 * 60)), ((24_350, 31_875), (19_350, 26_875))),
    ),
    "timed entry, lunch out cheaper": make_question(
        hours=make_hours(entry_times=("10:00", "11:30", "14:00")),
        habits=Habits(),
        money=HourlyMoney(PriceHours(), ((9_000, 8_500),)),
    ),
    "no money": make_question(nappers=(make_napper(),), habits=Habits()),
}


def weighed(question: DayQuestion) -> WeighedChoices:
    """All choices of a day."""
    minutes = DayMinutes(question.day, question.home_zone)
    return WeighedChoices.of(question, Choices.of(Limits.of(question, minutes)), minutes)


@pytest.mark.parametrize("question", DAYS.values(), ids=DAYS.keys())
def test_every_possible_choice_weighs_the_same_in_few_bits(question: DayQuestion) -> None:
    """Rank and lunch of each choice are those that 64 bits and the smallest unit give."""
    narrow, wide = weighed(question), weighed(question)
    vars(wide)["scale"] = AS_IT_IS
    possible = narrow.choices.possible
    assert possible.any()
    assert narrow.scale.kind is np.int32
    assert (narrow.rank == wide.rank).all()
    one, other = (np.broadcast_to(each.lunch_there, possible.shape) for each in (narrow, wide))
    assert (one[possible] == other[possible]).all()


def test_a_price_that_has_no_common_part_or_is_too_large_is_counted_in_many_bits() -> None:
    """A ten-thousandth of a dollar an hour cannot be left out, and millions do not fit 32 bits."""
    fine = Scale.of(Worth(hour_in_car=Decimal("7.0001")), 6000, [5000])
    assert (fine.unit, fine.kind) == (1, np.int64)
    assert Scale.of(Worth(), 6000, [10**9]).kind is np.int64
    assert Scale.of(Worth(), 6000, [5000]).kind is np.int32
