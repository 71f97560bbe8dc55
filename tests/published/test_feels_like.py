"""Wind chill and heat index against the charts of the United States' National Weather Service.

Source: both charts as printed in Child Care Weather Watch (Iowa Department of Public Health, 2009), read from
public copies of that leaflet; 10 mph and 15 mph columns for cold, 40 to 90 % for heat.
"""

import pytest

from tripplan.planning.climate.feels_like import Class, class_of, feels_like, heat_index, humidity, wind_chill
from tripplan.values.units import celsius

CHILLS = [
    (40, 5, 36),
    (30, 5, 25),
    (20, 5, 13),
    (10, 5, 1),
    (0, 5, -11),
    (-10, 5, -22),
    (40, 10, 34),
    (20, 15, 6),
    (0, 30, -26),
    (-10, 40, -43),
]
INDICES = [
    (80, 40, 80),
    (84, 60, 88),
    (90, 50, 95),
    (90, 70, 105),
    (94, 60, 110),
    (100, 40, 109),
    (104, 50, 131),
    (84, 90, 98),
]


@pytest.mark.parametrize(("degrees", "mph", "chart"), CHILLS)
def test_the_wind_chill_is_that_of_the_chart(degrees: int, mph: int, chart: int) -> None:
    """To the whole degree that the chart prints."""
    assert round(wind_chill(degrees, mph)) == chart


@pytest.mark.parametrize(("degrees", "percent", "chart"), INDICES)
def test_the_heat_index_is_that_of_the_chart(degrees: int, percent: int, chart: int) -> None:
    """Within the 1.3 °F that the regression is said to be off, and the chart's own rounding."""
    assert heat_index(degrees, percent) == pytest.approx(chart, abs=1.8)


def test_between_cold_and_heat_air_feels_as_it_is() -> None:
    """From 51 to 79 °F neither index holds; still air chills nobody."""
    for degrees in (51, 60, 70, 79):
        assert feels_like(celsius(degrees), 5) == pytest.approx(celsius(degrees))
    assert wind_chill(20, 2) == 20


def test_full_air_has_a_hundred_percent() -> None:
    """At its dew point; 86 °F with a dew point of 68 °F has 55 % (psychrometric chart, from memory)."""
    assert humidity(20, 20) == 100
    assert humidity(30, 20) == pytest.approx(55, abs=1)


@pytest.mark.parametrize(
    ("fahrenheit", "is_called"),
    [
        (-1, Class.BITTER),
        (1, Class.VERY_COLD),
        (16, Class.COLD),
        (31, Class.FINE),
        (89, Class.FINE),
        (91, Class.HOT),
        (101, Class.VERY_HOT),
        (111, Class.DANGEROUS),
    ],
)
def test_the_classes_are_those_of_the_leaflet(fahrenheit: int, is_called: Class) -> None:
    """Wind chills of 0, 15 and 30 °F, heat indices of 90, 100 and 110 °F."""
    assert class_of(celsius(fahrenheit)) is is_called
