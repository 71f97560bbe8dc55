"""Two weather services on loopback, asked as the real ones would be; see `answers` for their shapes."""

import json
from datetime import UTC, date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tests.forecasts.answers import (
    CHICAGO,
    OSLO,
    grid_forecast,
    grid_links,
    series,
    usual_series,
    weather_server,
)
from tripplan.documents.places.forecast import FARTHEST_DAYS, ForecastDay
from tripplan.documents.where import Point
from tripplan.errors import LookupFailed
from tripplan.forecasts.asking import Forecasts, real_forecasts, sent

NOW = datetime(2026, 11, 25, 15, 30, tzinfo=UTC)
TODAY = date(2026, 11, 25)
OMAHA = Point(41.25861, -95.93779)
WEEK = [(50, 30, 10, "Sunny"), (41, 23, 70, "Rain And Snow Likely"), (32, 14, None, "Cloudy")]


def in_the_us(forecasts: Forecasts, zone: ZoneInfo = CHICAGO) -> tuple[ForecastDay, ...]:
    """What the service for the United States says."""
    return forecasts.ask(OMAHA, "US", zone, NOW)


def grid(answer: Any) -> Any:
    """A server that leads to the grid, and says something there."""
    return lambda server, path: grid_links(server) if path.startswith("/points") else answer


def test_a_point_leads_to_the_forecast_of_its_square() -> None:
    """High of the day and low of the night before in Celsius, chance and words; today the night after."""
    with weather_server(grid(grid_forecast(TODAY, WEEK))) as (forecasts, asked):
        days = in_the_us(forecasts)
    assert asked == ["GET /points/41.26,-95.94", "GET /gridpoints/DVN/33,35/forecast"]
    assert [one.day for one in days] == [TODAY + timedelta(days=n) for n in range(3)]
    assert [one.high for one in days] == pytest.approx([10, 5, 0])  # 50, 41 and 32 °F
    assert [one.low for one in days] == pytest.approx([-1.111, -1.111, -5], abs=0.001)  # 30, 30, 23 °F
    assert [one.wet for one in days] == [0.1, 0.7, None]
    assert [one.snow for one in days] == [0.0, 0.7, 0.0]
    assert days[1].words == "Rain And Snow Likely"
    assert {one.service for one in days} == {"api.weather.gov"}
    assert {one.known_at for one in days} == {NOW}


def test_elsewhere_the_hours_of_a_day_are_gathered_by_the_clock_there() -> None:
    """Highest and lowest of a local day and the likeliest of its hours; a day told by half is left out."""
    with weather_server(lambda _, __: usual_series()) as (forecasts, asked):
        days = forecasts.ask(Point(59.913, 10.752), "NO", OSLO, NOW)
    assert asked == ["GET /weatherapi/locationforecast/2.0/complete?lat=59.91&lon=10.75"]
    assert days[0].day == date(2026, 11, 26)
    wet = days[1]
    # 27 November at Oslo begins at 23:00 UTC of the 26th, its warmest hour; 00:00 UTC is its coldest.
    assert (wet.low, wet.high, wet.wet, wet.snow) == (-6.0, 5.5, 0.6, 0.6)
    assert (days[0].wet, days[0].snow) == (0.05, 0.0)
    assert all(one.service == "api.met.no" for one in days)
    assert days[-1].day <= TODAY + timedelta(days=FARTHEST_DAYS)


def test_without_a_chance_the_amount_tells_whether_a_day_is_wet() -> None:
    """A quarter of a millimeter in all is wet, as in the tables of what is usual."""
    first = datetime(2026, 11, 26, 0, tzinfo=UTC)
    hours = range(0, 48, 6)
    answer = series(first, hours, lambda hour: {"degrees": 5.0, "mm": 0.2 if hour < 24 else 0.05})
    with weather_server(lambda _, __: answer) as (forecasts, _):
        days = forecasts.ask(Point(51, 0), "GB", ZoneInfo("Europe/London"), NOW)
    assert [one.wet for one in days] == [1.0, 0.0]


def test_no_more_than_ten_days_count() -> None:
    """What a service tells beyond is left out."""
    with weather_server(grid(grid_forecast(TODAY, [(50, 30, 0, "Sunny")] * 15))) as (forecasts, _):
        assert in_the_us(forecasts)[-1].day == TODAY + timedelta(days=FARTHEST_DAYS)


def damaged(**changes: object) -> dict[str, Any]:
    """A forecast whose second day is not as it should be."""
    answer = grid_forecast(TODAY, WEEK)
    answer["properties"]["periods"][2] |= changes
    return answer


def no_second_day() -> dict[str, Any]:
    """A forecast without tomorrow's daytime."""
    answer = grid_forecast(TODAY, WEEK)
    del answer["properties"]["periods"][2]
    return answer


def test_tomorrow_may_be_missing() -> None:
    """The other days count all the same."""
    with weather_server(grid(no_second_day())) as (forecasts, _):
        assert [one.day.day for one in in_the_us(forecasts)] == [25, 27]


@pytest.mark.parametrize(
    ("answer", "said"),
    [
        (b"", "damaged or not whole"),
        (b"<html>Welcome to the hotel</html>", "damaged or not whole"),
        (json.dumps(grid_forecast(TODAY, WEEK)).encode()[:900], "damaged or not whole"),
        (damaged(temperature=float("nan")), "damaged or not whole"),
        (damaged(temperature=None), "damaged or not whole"),
        (damaged(temperature=9000), "damaged or not whole"),
        (damaged(temperatureUnit="K"), "damaged or not whole"),
        (damaged(startTime="tomorrow"), "damaged or not whole"),
        (damaged(probabilityOfPrecipitation={"value": 700}), "damaged or not whole"),
        (b"[" * 100_000, "damaged or not whole"),
        ({"properties": {}}, "damaged or not whole"),
        ([], "damaged or not whole"),
        ({"properties": {"periods": []}}, "nothing of the next days"),
        (grid_forecast(date(2026, 11, 1), WEEK), "nothing of the next days"),
        (b'{"properties": "' + b"x" * 10_000_000 + b'"}', "more than 2 MB"),
        (500, "trouble itself"),
        (404, "no forecast for that spot"),
        (403, "refuses this program"),
        (429, "fewer questions"),
        (304, "no answer"),
    ],
)
def test_no_usable_answer_is_said_in_words(answer: object, said: str) -> None:
    """Half an answer, none, nonsense, ten megabytes: nothing of it counts."""
    with weather_server(grid(answer)) as (forecasts, _), pytest.raises(LookupFailed, match=said):
        in_the_us(forecasts)


def test_the_way_to_another_server_is_not_followed() -> None:
    """A square of the grid lies where the point was asked, and nowhere else."""
    strange = grid_links("http://127.0.0.2:9/")
    with (
        weather_server(lambda _, __: strange) as (forecasts, asked),
        pytest.raises(LookupFailed, match="another"),
    ):
        in_the_us(forecasts)
    assert len(asked) == 1


def test_no_network_is_said() -> None:
    """Nobody listens there any more."""
    with weather_server(lambda _, __: 200) as (forecasts, _):
        pass
    with pytest.raises(LookupFailed, match="cannot be reached"):
        in_the_us(forecasts)


def test_what_is_sent_is_rounded() -> None:
    """To about a kilometer, without zeros at the end, at which the service answers with a detour."""
    assert sent(OMAHA) == ("41.26", "-95.94")
    assert sent(Point(40.0, -0.001)) == ("40", "0")
    assert sent(Point(-33.9, 151.2)) == ("-33.9", "151.2")


def test_the_real_services_are_told_by_country_and_encrypted() -> None:
    """The National Weather Service for states and territories, MET Norway for all others."""
    real = real_forecasts()
    assert {real.provider(one).service for one in ("US", "PR")} == {"api.weather.gov"}
    assert {real.provider(one).service for one in ("CA", "GB", "NO")} == {"api.met.no"}
    assert real.in_the_us.address == "https://api.weather.gov"
    assert real.elsewhere.address == "https://api.met.no"
