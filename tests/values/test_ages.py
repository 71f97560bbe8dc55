from datetime import date

import pytest
from dateutil.relativedelta import relativedelta
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import make_member
from tripplan.values.ages import AgeBand, completed_months, parse_age_band

DAYS = st.dates(date(1930, 1, 1), date(2090, 12, 31))


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("3-12", 36, 155),
        ("7", 84, 95),
        ("65+", 780, None),
        ("under 2", 0, 23),
        ("6-23 months", 6, 23),
        ("18+ months", 18, None),
        ("any", 0, None),
    ],
)
def test_both_ends_of_a_band_count_in_completed_years(text: str, first: int, last: int | None) -> None:
    """'3-12' runs from the third birthday to the eve of the thirteenth (common practice, no source)."""
    assert parse_age_band(text) == AgeBand(first, last)


@given(st.integers(0, 1200), st.none() | st.integers(0, 1200))
def test_a_band_reads_back_what_it_writes(first: int, length: int | None) -> None:
    """Written as text and read again, every band is the same band."""
    band = AgeBand(first, None if length is None else first + length)
    assert parse_age_band(str(band)) == band


@pytest.mark.parametrize("text", ["", "12-3", "abc", "3 to 12", "-3", "3-"])
def test_another_form_is_refused_in_words(text: str) -> None:
    """What is no age band says how one is written."""
    with pytest.raises(ValueError, match="age band"):
        parse_age_band(text)


@given(DAYS, DAYS)
def test_ages_agree_with_an_independent_calendar(born: date, day: date) -> None:
    """Completed months agree with dateutil wherever it does not clip the end of a month."""
    if day < born or born.day > 28:
        return
    passed = relativedelta(day, born)
    assert completed_months(born, day) == passed.years * 12 + passed.months


def test_a_leap_day_child_is_a_year_older_on_the_first_of_march() -> None:
    """Born on 29 February, the birthday of a common year is 1 March (common practice, no source)."""
    born = date(2020, 2, 29)
    assert completed_months(born, date(2027, 2, 28)) == 6 * 12 + 11
    assert completed_months(born, date(2027, 3, 1)) == 7 * 12


def test_a_birth_month_alone_counts_from_its_first_day_and_says_so() -> None:
    """With only the month known the higher age is taken, so no price is too low; doubt is told."""
    child = make_member("Eli", "2021-12")
    assert child.months_on(date(2026, 12, 10)) == 60
    assert child.age_in_doubt_on(date(2026, 12, 10))
    assert not child.age_in_doubt_on(date(2026, 11, 30))
    assert not child.age_in_doubt_on(date(2026, 12, 31))
