"""At which hours a day would be better outdoors."""

from dataclasses import replace
from datetime import date, datetime
from typing import Any

import numpy as np
import pytest

from tests.builders import make_household, make_place
from tripplan.documents.places.forecast import ForecastDay, PlaceForecast
from tripplan.planning.climate.stations import stations
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import PlaceFacts, place_facts
from tripplan.planning.outing.weather.better_hour import BetterHour, better_hour
from tripplan.values.money import Money

TODAY, DAY = date(2027, 7, 20), date(2027, 7, 22)
GROWN_UPS = [{"name": "Ann", "born": "1988-05-20"}, {"name": "Bo", "born": "1986-11-02"}]
OPEN_LONG = {"hours": "Mo-Su 07:00-20:00"}


def asked(low: float, high: float, **changes: Any) -> tuple[Outing, PlaceFacts, BetterHour | None]:
    """A day with a forecast at a place that is open from seven to eight, for two without naps."""
    place = make_place(visit={"indoors": "outdoors"}, opening=OPEN_LONG)
    household = make_household(members=GROWN_UPS, **changes)
    told = ForecastDay(
        day=DAY, low=low, high=high, wet=0, known_at=datetime.fromisoformat("2027-07-20T12:00Z")
    )
    family = Family(
        household, (place,), stations=stations(), forecasts=(PlaceForecast(place=place.id, days=(told,)),)
    )
    facts = place_facts(family, place, (2027,))
    outing = plan_outing(family, family.party(), facts, DAY, today=TODAY)
    assert isinstance(outing, Outing)
    return outing, facts, better_hour(outing, facts, household)


def test_on_a_hot_day_the_cooler_hours_are_told() -> None:
    """Outside the early afternoon it feels less hot, and all counted the day weighs less."""
    outing, facts, found = asked(24, 38)
    assert found is not None
    assert found.weather.felt_high < found.instead_of.felt_high
    assert found.saves.amount >= 1
    now, then = outing.plan.weighs + found.instead_of.weighs, found.plan.weighs + found.weather.weighs
    assert found.saves == (now - then).rounded()
    assert "instead of" in found.sentence
    again = plan_outing(
        Family(make_household(members=GROWN_UPS), (facts.place,)),
        outing.party,
        facts,
        DAY,
        today=TODAY,
        leave_at=found.plan.leave_home,
        leave_place_at=found.plan.leave_place,
    )
    assert isinstance(again, Outing)
    assert again.plan == found.plan


def test_no_other_hour_is_told_where_the_weather_weighs_nothing() -> None:
    """On a mild day, or where the parent says that heat weighs nothing."""
    assert asked(12, 20)[2] is None
    assert asked(24, 38, worth={"hour_in_the_heat": "0"})[2] is None


@pytest.mark.parametrize(("low", "high"), [(24, 38), (-14, 3)])
def test_no_pair_of_times_weighs_less(low: float, high: float) -> None:
    """By brute force: every window's plan and its weather, asked one by one, weighs at least as much."""
    outing, facts, found = asked(low, high)
    least = outing.plan.weighs + (outing.weather.weighs if outing.weather else Money.zero("USD"))
    if found is not None:
        least = least - found.saves
    family = Family(make_household(members=GROWN_UPS), (facts.place,))
    for window in outing.search.windows:
        other = plan_outing(family, outing.party, facts, DAY, today=TODAY, leave_at=window.best.leave_home)
        assert isinstance(other, Outing)
        assert other.weather is not None
        assert (other.plan.weighs + other.weather.weighs - least).amount > -0.02
    assert np.isfinite(float(least.amount))


def test_indoors_no_hour_is_better() -> None:
    """Nothing is outdoors."""
    outing, facts, _ = asked(24, 38)
    assert (
        better_hour(outing, replace(facts, stations=None, forecast=None), make_household(members=GROWN_UPS))
        is None
    )
