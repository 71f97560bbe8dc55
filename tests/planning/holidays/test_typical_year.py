"""The typical school year where no calendar is known."""

from datetime import date, timedelta

import numpy as np
import pytest

from tripplan.planning.holidays.typical_year import OUT_ON_A_WEEKDAY, typical_days

YEARS = date(2026, 1, 1), date(2028, 12, 31)
DAY = timedelta(days=1)


def chance(country: str, subdivision: str, day: date) -> float:
    """The chance of no school on one day."""
    return float(typical_days(country, subdivision, day, day).out[0])


@pytest.mark.parametrize(
    ("country", "subdivision"),
    [("US", "NY"), ("US", "TN"), ("US", "TX"), ("US", ""), ("GB", "ENG"), ("GB", "SCT"), ("IE", ""),
     ("CA", "ON"), ("NZ", ""), ("DE", "BY"), ("NL", "GE"), ("JP", "13"), ("", "")],
)  # fmt: skip
def test_every_day_has_a_chance(country: str, subdivision: str) -> None:
    """Chances lie from 0 to 1, weekends are free, and a year has about as many school days as usual."""
    days = typical_days(country, subdivision, *YEARS)
    assert days.out.min() >= 0
    assert days.out.max() <= 1
    weekend = np.array([(YEARS[0] + n * DAY).weekday() >= 5 for n in range(len(days.out))])
    assert (days.out[weekend] == 1).all()
    # 180 to 195 days of school a year, common practice, no source; a guess may be a little off.
    assert 170 <= (1 - days.out).sum() / 3 <= 205


def test_a_country_without_habits_on_record_has_the_same_chance_every_weekday() -> None:
    """Nothing is invented for it."""
    days = typical_days("", "", date(2027, 3, 1), date(2027, 3, 5))
    assert set(days.out) == {OUT_ON_A_WEEKDAY}


def test_schools_start_at_other_times_in_other_parts_of_the_united_states() -> None:
    """By 20 August the south is back, the north-east is not.

    Source: Pew Research Center, 2019: no district of New England or the Middle Atlantic before 26 August,
    nearly all of Alabama, Kentucky, Mississippi and Tennessee by mid-August.
    """
    day = date(2027, 8, 20)
    assert chance("US", "TN", day) < 0.1
    assert chance("US", "NY", day) == 1
    assert 0.1 < chance("US", "IL", day) < 0.9


@pytest.mark.parametrize(
    ("country", "subdivision", "day", "low", "high"),
    [
        ("GB", "ENG", date(2026, 9, 7), 0.3, 0.5),  # back between 31 August and Friday of the first full week
        ("GB", "ENG", date(2027, 3, 23), 0.3, 0.45),  # Easter is on 28 March, so most breaks begin after it
        ("GB", "ENG", date(2027, 4, 6), 0.75, 0.85),
        ("GB", "ENG", date(2026, 3, 31), 0.85, 0.95),  # Easter is on 5 April, so most breaks begin before it
        ("GB", "ENG", date(2026, 4, 14), 0.15, 0.3),
        ("GB", "SCT", date(2026, 12, 29), 1, 1),
        ("GB", "SCT", date(2027, 1, 5), 0.5, 0.7),
        ("GB", "SCT", date(2027, 1, 12), 0, 0.1),
        ("IE", "", date(2026, 10, 28), 0.9, 1),
        (
            "IE",
            "",
            date(2027, 2, 17),
            0.45,
            0.55,
        ),  # two days for secondary schools, five for primary
        ("IE", "", date(2027, 2, 18), 0.85, 0.95),
        ("CA", "ON", date(2026, 12, 29), 1, 1),
        ("NZ", "", date(2027, 1, 12), 1, 1),  # summer there
        ("NZ", "", date(2027, 3, 2), 0, 0.1),
        ("US", "OH", date(2026, 12, 29), 1, 1),
        ("US", "OH", date(2027, 1, 12), 0, 0.1),
    ],
)
def test_the_usual_breaks_of_a_country_have_their_chances(
    country: str, subdivision: str, day: date, low: float, high: float
) -> None:
    """Weekdays in and beside the usual breaks; the shares that the product states, worked out by hand."""
    assert low <= chance(country, subdivision, day) <= high


def test_no_week_of_spring_is_known_to_be_the_break() -> None:
    """No statistic says which week it is, so no day but the holidays stands out, and none is certain."""
    days = typical_days("US", "OH", date(2027, 3, 1), date(2027, 3, 19)).out
    weekdays = days[days < 1]
    assert np.ptp(weekdays) < 1e-9
    assert 0.05 < weekdays[0] < 0.3


def test_a_break_has_no_edges() -> None:
    """The chance rises day by day before Christmas."""
    days = typical_days("US", "OH", date(2026, 12, 17), date(2026, 12, 24)).out
    weekdays = [float(c) for n, c in enumerate(days) if (date(2026, 12, 17) + n * DAY).weekday() < 5]
    assert weekdays == sorted(weekdays)
    assert weekdays[0] < 0.2
    assert weekdays[-1] == 1


def test_a_region_with_a_table_of_its_own_goes_by_it_with_a_doubt() -> None:
    """In Bavaria the first August days are summer, nearly for sure, and a November Thursday is not."""
    assert chance("DE", "BY", date(2027, 8, 5)) > 0.9
    assert chance("DE", "BY", date(2027, 11, 25)) < 0.1


def test_it_does_not_matter_how_much_is_asked_at_once() -> None:
    """A day's chance is the same within a year and alone; New Year and weekends too."""
    year = typical_days("US", "WI", date(2026, 1, 1), date(2026, 12, 31))
    for n in (0, 1, 2, 3, 90, 91, 92, 93, 357, 364):
        day = date(2026, 1, 1) + n * DAY
        alone = typical_days("US", "WI", day, day)
        assert (alone.out[0], alone.on_break[0]) == pytest.approx((year.out[n], year.on_break[n]))
