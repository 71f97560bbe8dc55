"""The weather of a row of days at one place; equal days are weighed once."""

from dataclasses import dataclass

from tripplan.planning.day.times.hourly_weather import HourlyWeather
from tripplan.planning.outing.weather.outdoor_hours import hourly_weather
from tripplan.planning.sweep.dates import Numbers, grouped
from tripplan.planning.sweep.place_row import PlaceRow


@dataclass(frozen=True, eq=False)
class WeatherOfDays:
    """What being outdoors weighs on the days of a row.

    Attributes:
        hourly: the different kinds of weather there are.
        kind: which of them each day has.
    """

    hourly: HourlyWeather
    kind: Numbers


def weather_of_days(at: PlaceRow, later: Numbers) -> WeatherOfDays | None:
    """That of a place; None where nothing is outdoors or nobody knows its weather.

    Args:
        at: the place over a row of days.
        later: how much later everything comes on each day than on others of its kind [min].
    """
    row, outdoors = at.row, at.facts.outdoors
    if outdoors is None:
        return None
    household = row.household
    number = outdoors.climate.numbers(row.of_year, row.ordinals)
    begins = later - row.offsets(household.home.zone)[: row.count]
    firsts, kind = grouped([number, begins, row.outdoor_percent])
    hourly = hourly_weather(outdoors, household, number[firsts], begins[firsts], row.outdoor_percent[firsts])
    return WeatherOfDays(hourly, kind)
