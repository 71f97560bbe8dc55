"""Public holidays, the days off work that stand in for them, and long weekends."""

import os
import subprocess
import sys
from datetime import date, timedelta

import pytest

from tripplan.errors import UnknownName
from tripplan.planning.holidays.public_holidays import (
    is_bridge_day,
    is_observed,
    long_weekend,
    public_holidays,
)


def test_a_holiday_on_a_saturday_is_there_twice_and_says_which_is_which() -> None:
    """Independence Day 2026 is a Saturday; offices close on Friday (5 USC 6103)."""
    holidays = public_holidays("US", "", [2026])
    assert not is_observed(holidays[date(2026, 7, 4)])
    assert is_observed(holidays[date(2026, 7, 3)])


def test_a_state_adds_its_own_holidays() -> None:
    """Illinois celebrates Lincoln's Birthday, the nation as a whole does not."""
    lincoln = date(2026, 2, 12)
    assert lincoln in public_holidays("US", "IL", [2026])
    assert lincoln not in public_holidays("US", "", [2026])


@pytest.mark.parametrize(
    ("country", "subdivision", "year"), [("XX", "", 2026), ("US", "ZZ", 2026), ("US", "IL", 2300)]
)
def test_what_is_not_on_record_is_an_error_and_never_no_holidays(
    country: str, subdivision: str, year: int
) -> None:
    """A wrong country, state or year must not look like a year without holidays."""
    with pytest.raises(UnknownName):
        public_holidays(country, subdivision, [year])


def test_a_country_without_regional_holidays_takes_any_region() -> None:
    """Japan's holidays are the same in all its prefectures."""
    assert public_holidays("JP", "13", [2026]) == public_holidays("JP", "", [2026])


def test_names_do_not_follow_the_computers_language() -> None:
    """The same names come out under a German system setting."""
    code = (
        "from tripplan.planning.holidays.public_holidays import public_holidays;"
        "print(sorted(public_holidays('DE', 'BY', [2026]).values()))"
    )
    outputs = {
        subprocess.run(
            [sys.executable, "-c", code],
            env={**os.environ, "LANGUAGE": language},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for language in ("de", "en_US")
    }
    assert len(outputs) == 1
    assert "Epiphany" in outputs.pop()


def test_the_answer_cannot_be_changed() -> None:
    """It is shared between callers."""
    with pytest.raises(TypeError):
        public_holidays("US", "", [2026])[date(2026, 3, 3)] = "mine"  # type: ignore[index]


THANKSGIVING = date(2026, 11, 26)


def test_the_friday_after_a_thursday_holiday_is_a_bridge_day() -> None:
    """So is a Monday before a Tuesday holiday, but no ordinary Friday, no weekend and no holiday."""
    assert is_bridge_day(date(2026, 11, 27), {THANKSGIVING})
    assert is_bridge_day(date(2026, 11, 30), {date(2026, 12, 1)})
    assert not is_bridge_day(date(2026, 12, 4), {THANKSGIVING})
    assert not is_bridge_day(date(2026, 11, 28), {THANKSGIVING})
    assert not is_bridge_day(THANKSGIVING, {THANKSGIVING})


def test_a_long_weekend_is_one_row_of_days_off_whichever_day_is_asked() -> None:
    """Thursday to Sunday around Thanksgiving; two days of an ordinary weekend are not long."""
    row = tuple(THANKSGIVING + timedelta(days=n) for n in range(4))
    assert {long_weekend(day, {THANKSGIVING}) for day in row} == {row}
    assert long_weekend(date(2026, 11, 21), {THANKSGIVING}) == ()
    assert long_weekend(date(2026, 11, 25), {THANKSGIVING}) == ()
