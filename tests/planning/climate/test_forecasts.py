"""Forecasts in the place of what days are usually like."""

from dataclasses import replace
from datetime import UTC, date, datetime

import numpy as np
import pytest
from pydantic import ValidationError

from tripplan.documents.places.forecast import ForecastDay, PlaceForecast
from tripplan.planning.climate.climate import Climate
from tripplan.planning.climate.days_of_year import YEAR_DAYS, day_of_year, ten_days
from tripplan.planning.climate.forecasts import with_forecast
from tripplan.planning.climate.outdoors import OutdoorLimits, OutdoorYear
from tripplan.values.ranges import Origin, Source

DAY = date(2026, 11, 27)
NOW = datetime(2026, 11, 25, 15, tzinfo=UTC)
USUAL = Climate(
    41.0,
    np.full(YEAR_DAYS, 8.0),
    np.full(YEAR_DAYS, -2.0),
    np.full(YEAR_DAYS, 0.25),
    None,
    Source(Origin.PUBLISHED, "stations"),
)


def told(day: date = DAY, *, service: str = "api.weather.gov", **figures: float) -> ForecastDay:
    """A forecast of one day."""
    return ForecastDay(day=day, service=service, known_at=NOW, **figures)


def climate(*days: ForecastDay, usual: Climate | None = USUAL) -> Climate:
    """The usual with forecasts."""
    found = with_forecast(usual, 41.0, PlaceForecast(place="barn", days=days))
    assert found is not None
    return found


def test_a_forecast_holds_for_its_date_and_no_other_year() -> None:
    """The same day a year later is as usual, also for whole rows of days."""
    found = climate(told(low=10, high=20, wet=0.9, snow=0.1))
    day = found.on(DAY)
    assert (day.low, day.high, day.wet, day.snow) == (10, 20, 0.9, 0.1)
    later = found.on(DAY.replace(year=2027))
    assert (later.low, later.high, later.wet, later.snow, later.forecast) == (-2, 8, 0.25, None, None)
    days = [date(2026, 11, 26), DAY, DAY.replace(year=2027)]
    numbers = found.numbers(
        np.array([day_of_year(day) for day in days]), np.array([day.toordinal() for day in days])
    )
    assert found.high[numbers].tolist() == [8, 20, 8]
    assert numbers[2] == ten_days()[day_of_year(DAY)]


def test_what_is_not_told_stays_as_usual() -> None:
    """Beside one temperature the other keeps the usual ten degrees between them."""
    assert climate(told(high=35)).on(DAY).low == pytest.approx(25)
    assert climate(told(low=-12)).on(DAY).high == pytest.approx(-2)
    snowy = replace(USUAL, snow=np.full(YEAR_DAYS, 0.2))
    assert climate(told(high=35), usual=snowy).on(DAY).snow == 0
    assert climate(told(high=3), usual=snowy).on(DAY).snow == pytest.approx(0.2)
    rainy = climate(told(wet=1)).on(DAY)
    assert (rainy.low, rainy.high, rainy.wet) == (-2, 8, 1)


def test_where_the_usual_is_not_known_only_the_forecast_counts() -> None:
    """A frosty day weighs and is barred by a limit; days nobody knows of weigh and bar nothing."""
    found = climate(told(low=-20, high=-10, wet=1), usual=None)
    assert found.knows(DAY)
    assert not found.knows(date(2026, 11, 28))
    year = OutdoorYear(found, 0.0, 1.0, OutdoorLimits(below=12, above=18))
    numbers = np.array([found.number(DAY), found.number(date(2026, 11, 28))])
    steps = year.steps(numbers, np.array([0, 0]))
    assert year.bars(numbers, steps).any(axis=1).tolist() == [True, False]
    assert steps.cold[0].min() > 0
    assert not any(part[1].any() for part in (steps.cold, steps.heat, steps.wet))


def test_without_a_forecast_nothing_changes() -> None:
    """The very same object, so nothing slows down."""
    assert with_forecast(USUAL, 41.0, None) is USUAL
    assert with_forecast(USUAL, 41.0, PlaceForecast(place="barn")) is USUAL


def test_what_the_parent_typed_outlasts_a_service() -> None:
    """A newer answer of a service takes an older one's place, not hers; days that are over go."""
    yesterday, tomorrow = date(2026, 11, 24), date(2026, 11, 26)
    kept = PlaceForecast(
        place="barn", days=(told(yesterday, high=1), told(tomorrow, high=2), told(DAY, service="", wet=1))
    )
    now = kept.updated((told(DAY, high=9), told(tomorrow, high=3)), date(2026, 11, 25))
    assert [(one.day, one.high, one.wet) for one in now.days] == [(tomorrow, 3, None), (DAY, None, 1)]
    own = now.updated((told(DAY, service="", high=4),), date(2026, 11, 25))
    assert own.on(DAY) == told(DAY, service="", high=4)
    assert own.without(DAY).on(DAY) is None


@pytest.mark.parametrize(
    "wrong", [{"high": float("nan")}, {"wet": 1.1}, {"high": 99}, {"low": 10, "high": 5}, {"snow": -0.1}]
)
def test_impossible_figures_are_refused(wrong: dict[str, float]) -> None:
    """Not a number, no chance, hotter than the Earth, a low above the high."""
    with pytest.raises(ValidationError):
        ForecastDay.model_validate({"day": DAY, "known_at": NOW, **wrong})


def test_each_day_stands_once() -> None:
    """Two answers for one day would contradict each other."""
    with pytest.raises(ValidationError, match="twice: 2026-11-27"):
        PlaceForecast(place="barn", days=(told(high=1), told(high=2)))
