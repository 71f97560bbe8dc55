"""The time zone of a point, against the coordinates that the tz database prints for its own zones.

Source: IANA Time Zone Database, file zone.tab, column "coordinates" (the principal location of each zone,
ISO 6709), read from the package tzdata.
"""

import re
from importlib.resources import files

from tripplan.documents.where import Point
from tripplan.files.locations.gazetteer import zone_of

_DIFFERENT_HERE = {
    # The official time of China is that of Shanghai everywhere; Urumqi's local use is disputed.
    "Asia/Urumqi": "Asia/Shanghai",
    # The coordinates in zone.tab, lie just across the border.
    "Europe/Monaco": "Europe/Paris",
}


def _degrees(text: str) -> float:
    sign, degrees, minutes, seconds = re.fullmatch(r"([+-])(\d{2,3})(\d{2})(\d{2})?", text).groups()  # type: ignore[union-attr]
    return (int(degrees) + int(minutes) / 60 + int(seconds or 0) / 3600) * (-1 if sign == "-" else 1)


def test_the_principal_location_of_every_zone_lies_in_it() -> None:
    """All 418 places of zone.tab get their own zone, but for two that are explained."""
    table = (files("tzdata") / "zoneinfo" / "zone.tab").read_text(encoding="utf-8")
    rows = [line.split("\t") for line in table.splitlines() if not line.startswith("#")]
    assert len(rows) > 400
    for _, coordinates, zone, *_ in rows:
        latitude, longitude = re.findall(r"[+-]\d+", coordinates)
        point = Point(_degrees(latitude), _degrees(longitude))
        assert zone_of(point) == _DIFFERENT_HERE.get(zone, zone), coordinates
