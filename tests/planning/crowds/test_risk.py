"""Crowd risk of the open days of a year."""

import math
from datetime import date, timedelta
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import make_place
from tripplan.errors import PlanError
from tripplan.planning.calendars import SchoolCalendar
from tripplan.planning.crowds.public_holidays import public_holidays
from tripplan.planning.crowds.risk import (
    WORDS,
    CrowdRisk,
    busiest_fifth_chances,
    crowd_risks,
    crowd_year,
    word_for,
)
from tripplan.planning.crowds.schools import school_days

YEAR = tuple(date(2026, 1, 1) + timedelta(days=n) for n in range(365))
HOLIDAYS = public_holidays("US", "IL", range(2025, 2028))
TUESDAY, SATURDAY = date(2026, 10, 20), date(2026, 10, 24)
TUESDAY_ON_BREAK, SATURDAY_ON_BREAK = date(2026, 3, 24), date(2026, 3, 28)
SCHOOLS = SchoolCalendar.model_validate(
    {
        "name": "district",
        "country": "US",
        "latitude": 40.5,
        "longitude": -89.0,
        "known": {"first": "2026-01-01", "last": "2026-12-31"},
        "no_school": [{"first": "2026-03-21", "last": "2026-03-29"}],
    }
)


def year(*, known: bool = True, **place: Any) -> dict[date, CrowdRisk]:
    """The risks of 2026 at a place that is open every day."""
    return dict(crowd_risks(make_place(**place), YEAR, HOLIDAYS, (SCHOOLS,) if known else ()))


def said(risk: CrowdRisk) -> str:
    """All reasons in one text."""
    return " / ".join(reason.text for reason in risk.reasons)


def test_chances_add_up_to_a_fifth_of_the_open_days() -> None:
    """The busiest fifth is a fifth, whatever the days are."""
    assert sum(risk.chance for risk in year().values()) == pytest.approx(73, abs=1e-6)


@given(st.lists(st.tuples(st.floats(-5, 5), st.floats(0.05, 3)), min_size=1, max_size=60))
def test_a_fifth_stays_a_fifth_for_any_levels(days: list[tuple[float, float]]) -> None:
    """Chances are chances, and fuller days have higher ones where the noise is the same."""
    level, noise = np.array(days).T
    chances = busiest_fifth_chances(level, noise)
    assert chances.sum() == pytest.approx(len(days) / 5, abs=1e-6)
    assert ((chances >= 0) & (chances <= 1)).all()
    same_noise = busiest_fifth_chances(level, np.full(len(days), 0.5))
    assert (np.diff(same_noise[np.argsort(level)]) >= -1e-12).all()


def test_chances_agree_with_throwing_dice() -> None:
    """Days drawn 20 000 times with logistic noise are among the busiest fifth about as often as said.

    Second, independent computation: simulation with a fixed seed, over enough days that the threshold hardly
    moves.
    """
    level = np.log(np.tile([1.0, 1.0, 1.0, 1.0, 1.0, 2.6, 2.6], 30))
    noise = np.where(np.arange(210) % 3 == 0, 0.8, 0.5)
    dice = np.random.default_rng(1)
    drawn = level + dice.logistic(0, noise * math.sqrt(3) / math.pi, (20_000, 210))
    threshold = np.sort(drawn, axis=1)[:, -42]
    often = (drawn >= threshold[:, None]).mean(axis=0)
    assert np.abs(often - busiest_fifth_chances(level, noise)).max() < 0.02


def test_days_off_are_fuller_than_school_days() -> None:
    """A weekend, a weekday on break and a public holiday each beat a Tuesday in term."""
    risks = year()
    for fuller in (SATURDAY, TUESDAY_ON_BREAK, date(2026, 10, 12)):
        assert risks[fuller].chance > risks[TUESDAY].chance
    assert risks[SATURDAY_ON_BREAK].chance > risks[date(2026, 3, 14)].chance


def test_the_celebrated_day_is_a_public_holiday_and_the_day_off_work_says_so() -> None:
    """Independence Day is on Saturday; on Friday many are off work for it."""
    risks = year()
    assert "public holiday (Independence Day)" in said(risks[date(2026, 7, 4)])
    assert "off work for Independence Day" in said(risks[date(2026, 7, 3)])


def test_a_bridge_day_counts_like_a_weekend_at_least() -> None:
    """The Friday after Thanksgiving beats other Fridays in term, and says why."""
    bridge = year()[date(2026, 11, 27)]
    assert bridge.chance > year()[date(2026, 11, 20)].chance
    assert "alone between days off" in said(bridge)


def test_half_the_pupils_bring_half_the_crowd() -> None:
    """With every second pupil on break a weekday lies halfway in visitors, not in logarithms."""
    in_school = SCHOOLS.model_copy(update={"no_school": ()})
    factors = [
        crowd_risks(make_place(visit={"indoors": "indoors"}), YEAR, HOLIDAYS, calendars)[TUESDAY_ON_BREAK]
        .reasons[0]
        .factor
        for calendars in ((SCHOOLS,), (SCHOOLS, in_school))
    ]
    assert factors[1] - 1 == pytest.approx((factors[0] - 1) / 2)


def test_reasons_come_largest_first_and_name_their_size() -> None:
    """A special day of ten times outweighs the weekend, and both say how much they bring."""
    place: dict[str, Any] = {
        "special_days": [{"day": SATURDAY, "name": "Harvest fair", "crowd_factor": "10"}]
    }
    first, second, *_ = year(**place)[SATURDAY].reasons
    assert first.text == "Harvest fair: 10.0 times a usual day"
    assert second.text == "weekend: 2.6 times an ordinary weekday"


def test_a_special_day_is_fuller() -> None:
    """The same Saturday without the fair has a lower chance."""
    place: dict[str, Any] = {"special_days": [{"day": SATURDAY, "name": "Harvest fair", "crowd_factor": "3"}]}
    assert year(**place)[SATURDAY].chance > year()[SATURDAY].chance


def test_an_ordinary_day_says_that_it_is_one() -> None:
    """A reason is never missing."""
    (reason,) = year(visit={"indoors": "indoors"})[TUESDAY].reasons
    assert reason.text == "an ordinary school-term weekday"


def test_unknown_schools_are_a_doubt_between_school_and_none() -> None:
    """The chance lies between that of a term day and that of a break, and a reason says what is unknown."""
    unknown, known = year(known=False), year()
    assert known[TUESDAY].chance < unknown[TUESDAY].chance < known[TUESDAY_ON_BREAK].chance
    assert "no school calendar for the pupils nearby" in said(unknown[TUESDAY])
    assert "no school calendar" not in said(known[TUESDAY])


def test_summer_is_where_the_place_is() -> None:
    """Outdoors in the north July is the fuller month, in the south January, in the tropics neither."""
    january, july = date(2026, 1, 20), date(2026, 7, 21)
    where = make_place().where.model_dump()
    chance = {}
    for latitude in (45.0, 5.0, -45.0):
        place = make_place(where={**where, "latitude": latitude}, visit={"indoors": "outdoors"})
        risks = crowd_risks(place, YEAR, HOLIDAYS, ())
        chance[latitude] = risks[july].chance - risks[january].chance
    assert chance[45.0] > 0.02
    assert chance[-45.0] < -0.02
    assert chance[5.0] == pytest.approx(0)


def test_only_open_days_are_compared_and_each_year_with_itself() -> None:
    """Closed days get no answer, no open day is no answer at all, and a second year changes nothing."""
    assert list(crowd_risks(make_place(), [SATURDAY, TUESDAY], HOLIDAYS, ())) == [TUESDAY, SATURDAY]
    assert crowd_risks(make_place(), [], HOLIDAYS, ()) == {}
    two_years = crowd_risks(make_place(), [*YEAR, date(2027, 1, 5)], HOLIDAYS, (SCHOOLS,))
    assert two_years[SATURDAY] == year()[SATURDAY]
    assert len(two_years) == 366


def test_the_arrays_say_what_the_days_say() -> None:
    """Chances by date, from the year's arrays and from the risks are the same; closed days have none."""
    weekdays = [day for day in YEAR if day.weekday() < 5]
    crowds = crowd_risks(make_place(), weekdays, HOLIDAYS, (SCHOOLS,))
    of_2026 = crowds.year(2026)
    assert list(of_2026.chance[of_2026.is_open]) == [risk.chance for risk in crowds.values()]
    assert [crowds.chance_on(day) for day in weekdays] == [risk.chance for risk in crowds.values()]
    assert np.isnan(of_2026.chance[~of_2026.is_open]).all()
    for closed in (SATURDAY, date(2027, 1, 5)):
        with pytest.raises(KeyError):
            crowds.chance_on(closed)
        with pytest.raises(KeyError):
            crowds[closed]


def test_a_year_needs_an_entry_for_each_of_its_days() -> None:
    """Arrays of another length or another year are refused."""
    schools = school_days((SCHOOLS,), make_place().where.point, YEAR[0], YEAR[-1])
    with pytest.raises(PlanError):
        crowd_year(make_place(), 2026, np.ones(364, dtype=bool), HOLIDAYS, schools)
    with pytest.raises(PlanError):
        crowd_year(make_place(), 2027, np.ones(365, dtype=bool), HOLIDAYS, schools)


def test_every_chance_has_one_of_four_words() -> None:
    """The words cover all chances, in rising order, without gap."""
    assert [word for _, word in WORDS] == [word_for(chance) for chance in (0.0, 0.2, 0.4, 1.0)]
    assert [limit for limit, _ in WORDS] == sorted(limit for limit, _ in WORDS)
    assert word_for(0.5) == "well filled"
    assert word_for(0.500001) == "packed, most likely"
