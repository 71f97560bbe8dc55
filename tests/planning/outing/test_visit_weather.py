"""What the weather of a visit is, what it weighs, and what is said of it."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from itertools import product
from typing import Any

import pytest

from tests.builders import make_household, make_place
from tripplan.documents.places.forecast import ForecastDay, PlaceForecast
from tripplan.language.sentences import fact
from tripplan.planning.climate.stations import stations
from tripplan.planning.day import DayPlan, ViolatedLimit, plan_choice, times_to_try
from tripplan.planning.day.weighing.latest_start import about_the_same
from tripplan.planning.day.weighing.nuisances import UNITS
from tripplan.planning.day.weighing.weighing import OUTDOORS
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.outing.weather.visit_weather import forecast_age, weather_there
from tripplan.values.units import Temperatures

TODAY = date(2026, 11, 25)
JANUARY, MAY, JULY = date(2027, 1, 12), date(2027, 5, 11), date(2027, 7, 22)
GROWN_UPS = [{"name": "Ann", "born": "1988-05-20"}, {"name": "Bo", "born": "1986-11-02"}]
MONTHS = {"degrees": "C", "highs": [10] * 12, "lows": [0] * 12, "wet_days": [0] * 12, "snow_days": [0] * 12}


def planned(
    day: date,
    household: dict[str, Any] | None = None,
    *,
    known: bool = True,
    forecast: ForecastDay | None = None,
    **place: Any,
) -> Outing | NoOuting:
    """A place near Peoria on a day, outdoors unless it says otherwise."""
    found = make_place(**{"visit": {"indoors": "outdoors"}, **place})
    family = Family(make_household(**household or {}), (found,))
    forecasts = (PlaceForecast(place=found.id, days=(forecast,)),) if forecast else ()
    family = replace(family, stations=stations() if known else None, forecasts=forecasts)
    return plan_outing(family, family.party(), place_facts(family, found, (day.year,)), day, today=TODAY)


def weighs(outing: Outing | NoOuting) -> Decimal:
    """What its weather weighs."""
    assert isinstance(outing, Outing)
    assert outing.weather is not None
    return outing.weather.weighs.amount


def test_the_weather_is_part_of_what_an_outing_weighs() -> None:
    """To the cent; with it January weighs more than May, and no plan made without it weighs less."""
    with_it, without = planned(JANUARY), planned(JANUARY, known=False)
    assert isinstance(with_it, Outing)
    assert isinstance(without, Outing)
    assert without.weather is None
    (part,) = (part for part in with_it.plan.parts if part.name == OUTDOORS)
    assert part.felt.rounded().amount == weighs(with_it) > 10
    assert weighs(planned(MAY)) < weighs(with_it) / 2
    there_as_without = plan_choice(with_it.question, without.plan.leave_home, without.plan.leave_place)
    assert isinstance(there_as_without, DayPlan)
    assert there_as_without.weighs.amount >= with_it.plan.weighs.amount - 1


def test_a_hot_noon_moves_the_hours() -> None:
    """At a place open from seven to eight, for two without naps: no pair of times weighs less, asked singly.

    Of plans that weigh about the same the latest start is taken.
    """
    hot, mild = (
        planned(
            JULY,
            {"members": GROWN_UPS},
            opening={"hours": "Mo-Su 07:00-20:00"},
            forecast=ForecastDay(day=JULY, low=low, high=high, wet=0, known_at=SAID_AT),
        )
        for low, high in ((24, 38), (14, 20))
    )
    assert isinstance(hot, Outing)
    assert isinstance(mild, Outing)
    assert hot.plan.leave_place < mild.plan.leave_place
    assert hot.weather is not None
    assert hot.weather.felt_high < 38
    times = times_to_try(hot.question)
    plans = [
        plan_choice(hot.question, leave_home, leave_place)
        for leave_home, leave_place in product(times.departures[::4], times.leaving[::4])
    ]
    least = min(plan.weighs.amount for plan in plans if isinstance(plan, DayPlan))
    assert least > hot.plan.weighs.amount - Decimal(about_the_same(hot.question.worth)) / UNITS


def test_the_cold_of_one_hour_that_is_not_allowed_leaves_the_others() -> None:
    """Never below 25 °F: on a January day that is colder in the morning the family comes later."""
    at_dawn = ForecastDay(day=JANUARY, low=-12, high=4, wet=0, known_at=SAID_AT)
    limited = planned(JANUARY, {"habits": {"never_outdoors_below": "25 F"}}, forecast=at_dawn)
    assert isinstance(limited, Outing)
    assert limited.weather is not None
    assert limited.weather.felt_low >= -3.9
    at_opening = datetime(2027, 1, 12, 9, 0, tzinfo=limited.question.home_zone)
    early = plan_choice(limited.question, at_opening, limited.plan.leave_place)
    assert isinstance(early, ViolatedLimit)
    assert [crossed.code for crossed in early.limits] == ["plan-weather-not-allowed"]


def test_indoors_it_is_told_and_weighs_nothing() -> None:
    """The way in from the car is not counted."""
    inside = planned(JANUARY, visit={"indoors": "indoors"})
    assert weighs(inside) == 0
    assert isinstance(inside, Outing)
    assert weather_there(inside.weather).values["known"] == "usual"


def test_amounts_are_the_parents() -> None:
    """Set to nothing, nothing weighs."""
    free = {"hour_in_the_cold": "0", "hour_in_the_heat": "0", "hour_in_the_wet": "0"}
    assert weighs(planned(JANUARY, {"worth": free})) == 0


@pytest.mark.parametrize(
    "where",
    [
        {"latitude": 89.9, "longitude": 0.0, "time_zone": "UTC"},
        {"latitude": -89.9, "longitude": 0.0, "time_zone": "UTC"},
        {"latitude": 38.0, "longitude": -60.0, "time_zone": "UTC"},
    ],
    ids=["north pole", "south pole", "at sea"],
)
def test_where_nobody_knows_the_weather_nothing_is_lost(where: dict[str, Any]) -> None:
    """At a pole and at sea the card still answers, and its weather is not known."""
    place = make_place(where={"town": "Nowhere", "country": "US", **where}, visit={"indoors": "outdoors"})
    family = Family(make_household(), (place,), stations=stations())
    facts = place_facts(family, place, (2027,))
    assert facts.climate is None
    assert facts.outdoors is None
    assert weather_there(None) == fact("weather-not-known")


def test_a_card_knows_its_own_months_best() -> None:
    """Ten degrees by day and none by night all year: January weighs as much as May, but for the sun."""
    january, may = (planned(day, usual_weather=MONTHS) for day in (JANUARY, MAY))
    assert isinstance(january, Outing)
    assert january.weather is not None
    assert january.weather.day.high == pytest.approx(10)
    assert "place card" in january.weather.source.text
    assert abs(weighs(january) - weighs(may)) < 3


def test_never_outdoors_below() -> None:
    """A limit of 30 °F takes January away, says so in her unit, and leaves May."""
    habits = {"habits": {"never_outdoors_below": "30 F"}}
    refused = planned(JANUARY, habits)
    assert isinstance(refused, NoOuting)
    assert refused.reasons[0].values["limits"] == (fact("outing-never-below", felt="30 °F"),)
    assert isinstance(planned(MAY, habits), Outing)


def test_the_sentence_speaks_the_familys_degrees() -> None:
    """Fahrenheit for a family in Illinois; snow only where it falls."""
    january, may = planned(JANUARY), planned(MAY)
    assert isinstance(january, Outing)
    assert isinstance(may, Outing)
    assert make_household().degrees == "F"
    in_winter, in_spring = (weather_there(one.weather).values for one in (january, may))
    there = in_winter["there"]
    assert isinstance(there, Temperatures)
    assert there.unit == "F"
    assert (in_winter["may_snow"], in_spring["may_snow"]) == (True, False)


SAID_AT = datetime(2027, 1, 11, 9, 5, tzinfo=UTC)
MILD = ForecastDay(
    day=JANUARY, low=8, high=16, wet=0.9, words="Rain", service="api.weather.gov", known_at=SAID_AT
)


def test_a_forecast_counts_instead_of_the_usual() -> None:
    """A mild wet January day weighs by its rain, says it is forecast, from when, and by whom."""
    usual, told = planned(JANUARY), planned(JANUARY, forecast=MILD)
    assert isinstance(told, Outing)
    assert told.weather is not None
    assert weighs(told) < weighs(usual)
    there = weather_there(told.weather)
    assert (there.values["known"], there.values["wet"]) == ("forecast", 0.9)
    assert fact("weather-note", there=there) in told.notes
    (source,) = (note for note in told.notes if note.code == "weather-forecast-from")
    assert (source.values["at"], source.values["words"]) == (SAID_AT, "Rain")
    assert not any(caution.values.get("forecast") is False for caution in told.cautions)


def test_what_the_parent_types_says_so() -> None:
    """Rain alone leaves the temperatures as they usually are."""
    typed = ForecastDay(day=JANUARY, wet=1, words="rain", known_at=SAID_AT)
    usual, told = planned(JANUARY), planned(JANUARY, forecast=typed)
    assert isinstance(told, Outing)
    assert isinstance(usual, Outing)
    assert told.weather is not None
    assert told.weather.day.wet == 1
    assert told.plan.weighs.amount > usual.plan.weighs.amount
    assert weather_there(told.weather).values["known"] == "usual"
    (source,) = (note for note in told.notes if note.code == "weather-forecast-from")
    assert "“rain”" in str(source.values["source"])


def test_a_forecast_is_held_against_the_limits() -> None:
    """A mild day is let through in January, a frosty one not in May."""
    habits = {"habits": {"never_outdoors_below": "30 F"}}
    assert isinstance(planned(JANUARY, habits, forecast=MILD), Outing)
    frost = ForecastDay(day=MAY, low=-15, high=-10, words="14", known_at=SAID_AT)
    refused = planned(MAY, habits, forecast=frost)
    assert isinstance(refused, NoOuting)
    assert refused.reasons[0].values["known"] == "typed"


def test_a_forecast_counts_where_no_station_is_near() -> None:
    """The day it tells is known, the next is not."""
    told = planned(JANUARY, known=False, forecast=MILD)
    assert weighs(told) > 0
    other = planned(JANUARY + timedelta(days=1), known=False, forecast=MILD)
    assert isinstance(other, Outing)
    assert other.weather is None


def test_its_age_is_told() -> None:
    """Minutes and hours for two days, then days."""
    ages = [timedelta(0), timedelta(minutes=20), timedelta(hours=30), timedelta(days=3)]
    said = [forecast_age(MILD, SAID_AT + age) for age in ages]
    assert said == [
        fact("weather-just-now"),
        fact("weather-old", age=ages[1]),
        fact("weather-old", age=ages[2]),
        fact("weather-days-old", days=3),
    ]
