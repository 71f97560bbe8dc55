"""Sunrise and sunset against printed almanacs of the United States Naval Observatory."""

from datetime import date
from zoneinfo import ZoneInfo

import pytest

from tripplan.documents.where import Point
from tripplan.planning.travel.daylight import daylight

# Atlanta: USNO, Sun and Moon Data for One Day, 6 September 2009, as quoted in the documentation of PyEphem,
# page 'Risings and Settings'; it gives the observatory's point for Atlanta as 33.8 N, 84.4 W.
# San Francisco: USNO, Rise/Set/Transit Times for Major Solar System Bodies, August 2016, W122 26'24",
# N37 45'36", zone 7 h west of Greenwich, as quoted in a public gist (user blech).
ATLANTA = Point(33.8, -84.4), ZoneInfo("America/New_York")
SAN_FRANCISCO = Point(37.76, -122.44), ZoneInfo("America/Los_Angeles")

ALMANAC = [
    (*ATLANTA, date(2009, 9, 6), "07:15", "19:56"),
    (*SAN_FRANCISCO, date(2016, 8, 13), "06:24", "20:04"),
    (*SAN_FRANCISCO, date(2016, 8, 14), "06:25", "20:03"),
    (*SAN_FRANCISCO, date(2016, 8, 15), "06:26", "20:02"),
    (*SAN_FRANCISCO, date(2016, 8, 16), "06:27", "20:00"),
    (*SAN_FRANCISCO, date(2016, 8, 17), "06:28", "19:59"),
]


@pytest.mark.parametrize(("point", "zone", "day", "rises", "sets"), ALMANAC)
def test_sunrise_and_sunset_are_those_of_the_almanac(
    point: Point, zone: ZoneInfo, day: date, rises: str, sets: str
) -> None:
    """Within one minute of the almanac, which is itself rounded to the minute."""
    light = daylight(point, day, zone)
    for found, printed in ((light.rises, rises), (light.sets, sets)):
        assert found is not None
        hours, minutes = map(int, printed.split(":"))
        assert abs(found.hour * 60 + found.minute - hours * 60 - minutes) <= 1
