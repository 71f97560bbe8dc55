"""Answers of two weather services, made for tests in the shapes that their documentation describes.

National Weather Service: weather.gov/documentation/services-web-api, OpenAPI components Point and
GridpointForecastPeriod. MET Norway: docs.api.met.no/doc/ForecastJSON, locationforecast 2.0 complete. The
figures are invented, and nothing was recorded from either service.
"""

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from tests.calendar_server.odd_server import Asked, odd_server
from tripplan.forecasts.asking import Forecasts
from tripplan.forecasts.met_norway import MetNorway
from tripplan.forecasts.national_weather_service import NationalWeatherService

CHICAGO, OSLO = ZoneInfo("America/Chicago"), ZoneInfo("Europe/Oslo")


def grid_links(server: str) -> dict[str, Any]:
    """What /points answers."""
    grid = f"{server}gridpoints/DVN/33,35"
    return {
        "id": f"{server}points/41.26,-95.93",
        "type": "Feature",
        "geometry": {"type": "Point", "coordinates": [-95.93, 41.26]},
        "properties": {
            "@type": "wx:Point",
            "gridId": "DVN",
            "gridX": 33,
            "gridY": 35,
            "forecast": f"{grid}/forecast",
            "forecastHourly": f"{grid}/forecast/hourly",
            "forecastGridData": grid,
            "timeZone": "America/Chicago",
        },
    }


def grid_forecast(first: date, days: Sequence[tuple[int, int, int | None, str]]) -> dict[str, Any]:
    """What /gridpoints/.../forecast answers from the morning of a day on.

    Args:
        first: the first day.
        days: high of each day and low of the night after it [°F], chance of rain by day [%], words.
    """
    periods: list[dict[str, Any]] = []
    for number, (high, low, percent, words) in enumerate(days):
        six = datetime.combine(first + timedelta(days=number), time(6), CHICAGO)
        for daytime, start, temperature in ((True, six, high), (False, six + timedelta(hours=12), low)):
            periods.append(
                {
                    "number": len(periods) + 1,
                    "name": f"{start:%A}{'' if daytime else ' Night'}",
                    "startTime": start.isoformat(),
                    "endTime": (start + timedelta(hours=12)).isoformat(),
                    "isDaytime": daytime,
                    "temperature": temperature,
                    "temperatureUnit": "F",
                    "temperatureTrend": None,
                    "probabilityOfPrecipitation": {"unitCode": "wmoUnit:percent", "value": percent},
                    "windSpeed": "5 to 10 mph",
                    "windDirection": "SW",
                    "icon": "https://api.weather.gov/icons/land/day/rain?size=medium",
                    "shortForecast": words if daytime else "Mostly Clear",
                    "detailedForecast": words,
                }
            )
    return {
        "type": "Feature",
        "properties": {
            "units": "us",
            "forecastGenerator": "BaselineForecastGenerator",
            "generatedAt": "2026-11-25T15:00:00+00:00",
            "elevation": {"unitCode": "wmoUnit:m", "value": 213.36},
            "periods": periods,
        },
    }


def series(
    first: datetime, hours: Sequence[int], of_hour: Callable[[int], Mapping[str, Any]]
) -> dict[str, Any]:
    """What locationforecast answers.

    Args:
        first: the first entry.
        hours: how many hours after it each entry is.
        of_hour: temperature [°C], chance [%], amount [mm] and symbol at each of them.
    """

    def entry(hour: int, lasts: int) -> dict[str, Any]:
        said = of_hour(hour)
        fallen = {"precipitation_amount": said.get("mm", 0.0)}
        if "percent" in said:
            fallen["probability_of_precipitation"] = said["percent"]
        return {
            "time": f"{first + timedelta(hours=hour):%Y-%m-%dT%H:%M:%SZ}",
            "data": {
                "instant": {
                    "details": {
                        "air_pressure_at_sea_level": 1011.2,
                        "air_temperature": said["degrees"],
                        "relative_humidity": 74.5,
                        "wind_speed": 3.4,
                    }
                },
                f"next_{lasts}_hours": {
                    "summary": {"symbol_code": said.get("symbol", "cloudy")},
                    "details": fallen,
                },
            },
        }

    lasting = [after - hour for hour, after in zip(hours, [*hours[1:], hours[-1] + 6], strict=True)]
    return {
        "type": "Feature",
        "geometry": {"type": "Point", "coordinates": [10.75, 59.91, 94]},
        "properties": {
            "meta": {"updated_at": "2026-11-25T14:10:05Z", "units": {"air_temperature": "celsius"}},
            "timeseries": [
                entry(hour, 1 if lasts == 1 else 6) for hour, lasts in zip(hours, lasting, strict=True)
            ],
        },
    }


def usual_series() -> dict[str, Any]:
    """From 25 November 16:00 UTC on: hourly for two days, then every six hours; 27 November is wet."""
    first = datetime(2026, 11, 25, 16, tzinfo=UTC)

    def of_hour(hour: int) -> dict[str, Any]:
        moment = first + timedelta(hours=hour)
        wet = moment.day == 27
        symbol = "lightsnow" if wet else "partlycloudy_day"
        return {"degrees": float(moment.hour - 12) / 2, "percent": 60.0 if wet else 5.0, "symbol": symbol}

    return series(first, [*range(44), *range(44, 200, 6)], of_hour)


Said = Callable[[str], Any]
"""What a server says to a path: JSON, bytes, or a number for a status."""


@contextmanager
def weather_server(said: Callable[[str, str], Any]) -> Iterator[tuple[Forecasts, list[str]]]:
    """Both services on loopback; what asks them, and what they were asked.

    Args:
        said: what is answered at a server's address to a path: JSON, bytes, or a number for a status.
    """
    heads: list[str] = []

    def answer(handler: Asked) -> None:
        heads.append(handler.headers["User-Agent"])
        host = f"http://{handler.headers['Host']}/"
        found = said(host, handler.path)
        body = (
            found
            if isinstance(found, bytes)
            else b""
            if isinstance(found, int)
            else json.dumps(found).encode()
        )
        handler.send_response(found if isinstance(found, int) else 200)
        handler.send_header("Content-Type", "application/geo+json")
        handler.send_header("Content-Length", str(len(body)))
        handler.end_headers()
        handler.wfile.write(body)

    with odd_server(answer) as (address, asked):
        server = address.rstrip("/")
        forecasts = Forecasts(
            replace(NationalWeatherService(), address=server), replace(MetNorway(), address=server)
        )
        yield forecasts, asked
        assert all(head.startswith("tripplan/") for head in heads)
