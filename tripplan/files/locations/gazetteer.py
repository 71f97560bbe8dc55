"""Where a town, a postal code or a pair of coordinates lies, found offline.

Towns and postal codes are those of the United States, by GeoNames (CC BY 4.0) in the package `zipcodes`;
its table takes about a quarter of a second to unpack, which happens at the first look-up.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from functools import lru_cache
from statistics import median
from typing import Any

import zipcodes

from tripplan.documents.where import Point, Where
from tripplan.files.locations.geo_address import is_geo_address, pair_in_geo_address
from tripplan.files.locations.map_links import is_link, pair_in_map_link
from tripplan.files.toml.toml_text import shown
from tripplan.language import wording

_INSTEAD = "give latitude and longitude instead"
_DECIMAL = r"\d{1,3}(?:\.\d+)?"
_NUMBER = re.compile(rf"[+-]?{_DECIMAL}")
_MINUTE, _SECOND = "['\u2032\u2019]", "(?:[\"\u2033\u201d]|''|\u2032\u2032)"
_ANGLE = (
    rf"({_DECIMAL})\s*°?"
    rf"(?:(?<=[\s°])\s*({_DECIMAL})\s*{_MINUTE}?)?"
    rf"(?:(?<=[\s'\u2032\u2019])\s*({_DECIMAL})\s*{_SECOND}?)?\s*"
)
_NAMED_ANGLES = (
    re.compile(rf"{_ANGLE}([NSEW])[\s,;]*{_ANGLE}([NSEW])", re.IGNORECASE),
    re.compile(rf"([NSEW])\s*{_ANGLE}[\s,;]*([NSEW])\s*{_ANGLE}", re.IGNORECASE),
)
_COORDINATES_READ = """coordinates read like '40.69, -89.59', '40.69 N, 89.59 W' or 40°41'37" N 89°35'20" W"""

_LONG_FORMS = {"st": "saint", "ft": "fort", "mt": "mount"}
_Entry = dict[str, Any]


@dataclass(frozen=True)
class GazetteerMatch:
    """A town or postal code on the map.

    Attributes:
        name: the town as the table calls it.
        point: its middle.
        subdivision: ISO 3166-2 code without the country, such as IL.
        time_zone: IANA name.
    """

    name: str
    point: Point
    subdivision: str
    time_zone: str


@dataclass(frozen=True)
class NotFound:
    """Something that could not be placed.

    Attributes:
        field: the field of a location that is at fault.
        message: why, and what to give instead.
    """

    field: str
    message: str


@lru_cache(maxsize=1024)
def find_postal_code(postal_code: str, country: str) -> GazetteerMatch | NotFound:
    """Where a postal code lies.

    Args:
        postal_code: a US ZIP code of five digits, or with the four more.
        country: ISO 3166-1 code of two letters.
    """
    if country != "US":
        return NotFound("postal_code", f"postal codes are known offline for the US only; {_INSTEAD}")
    if not re.fullmatch(r"\d{5}(-\d{4})?", postal_code):
        return NotFound("postal_code", "a ZIP code has five digits, such as 61602")
    entries = _with_coordinates(zipcodes.matching(postal_code))  # type: ignore[no-untyped-call]
    if not entries:
        return NotFound("postal_code", f"no such ZIP code is known; give a town, or {_INSTEAD}")
    return _middle(entries)


@lru_cache(maxsize=1024)
def find_town(town: str, subdivision: str, country: str) -> GazetteerMatch | NotFound:
    """Where a town lies: the median of its postal codes' points, some kilometres from its centre at worst.

    Args:
        town: its name, in any case; 'St.' and 'Saint' are the same.
        subdivision: ISO 3166-2 code without the country, such as IL; may be empty for a name that is the
            only one of its kind.
        country: ISO 3166-1 code of two letters.
    """
    if country != "US":
        return NotFound("town", f"towns are known offline for the US only; {_INSTEAD}")
    if subdivision:
        return _town_in_state(town, subdivision)
    spellings = {town, town.title(), _spelled_out(town).title()}
    entries = [e for name in spellings for e in _listed_under(city=name)]
    states = sorted({e["state"] for e in entries})
    if not entries:
        return NotFound("town", f"no such town is known; give its state as subdivision, or {_INSTEAD}")
    if len(states) > 1:
        several = wording.listed(states[:8]) if len(states) <= 8 else f"{len(states)} states"
        return NotFound("town", f"there is one in {several}; give the state as subdivision, such as IL")
    return _middle(entries)


def _town_in_state(town: str, state: str) -> GazetteerMatch | NotFound:
    in_state = _listed_under(state=state)
    if not in_state:
        return NotFound("subdivision", "no such US state is known; it is a code of two letters, such as IL")
    wanted = _key(town)
    entries = [e for e in in_state if _key(e["city"]) == wanted]
    # Smaller towns share a postal code with a larger neighbour, whose name is then the official one.
    entries = entries or [e for e in in_state if wanted in map(_key, e["acceptable_cities"])]
    if entries:
        return _middle(entries)
    names = {_key(e["city"]): e["city"] for e in in_state}
    close = get_close_matches(wanted[:80], names, n=1)
    meant = f"did you mean {names[close[0]]}? Otherwise " if close else ""
    return NotFound("town", f"no such town is known in {state}; {meant}{_INSTEAD}")


def _spelled_out(town: str) -> str:
    words = re.split(r"[\s.]+", town.strip().casefold())
    return " ".join(_LONG_FORMS.get(word, word) for word in words if word)


def _key(town: str) -> str:
    """The letters of a name, so that O'Fallon, O Fallon and Ofallon are one."""
    return "".join(filter(str.isalnum, _spelled_out(town)))


def _listed_under(**asked: str) -> list[_Entry]:
    return _with_coordinates(zipcodes.filter_by(**asked))  # type: ignore[no-untyped-call]


def _with_coordinates(entries: Iterable[_Entry]) -> list[_Entry]:
    """Without military post offices, which the table puts at 0, 0."""
    return [e for e in entries if e["lat"] != "0" and e["timezone"] and e["country"] in ("US", "")]


def _middle(entries: list[_Entry]) -> GazetteerMatch:
    # Post boxes and firms with a code of their own stand in for the town only where nothing else does.
    delivered = [e for e in entries if e["zip_code_type"] == "STANDARD"] or entries
    first = delivered[0]
    point = Point(
        round(median(float(e["lat"]) for e in delivered), 5),
        round(median(float(e["long"]) for e in delivered), 5),
    )
    return GazetteerMatch(first["city"], point, first["state"], first["timezone"])


def zone_of(point: Point) -> str | None:
    """The IANA time zone of a point, or None where there is none; the first call takes a tenth of a second.

    Source: timezone-boundary-builder polygons (OpenStreetMap, ODbL), by the package tzfpy.
    """
    from tzfpy import get_tz  # Most families never need it, and it takes long to load.

    return get_tz(point.longitude, point.latitude) or None


def locate(where: Where) -> Where | NotFound:
    """Fill in what a location leaves out: coordinates, time zone and, if it can be told, the subdivision.

    Coordinates that are given always win; a postal code is looked up before a town.
    """
    if where.latitude is not None and where.longitude is not None:
        if where.country == "US" and where.longitude > 0 and where.subdivision not in ("AK", "GU", "MP"):
            return NotFound("longitude", "west of Greenwich is negative; this lies on the other side")
        if where.time_zone is not None:
            return by_town_noted(where)
        zone = zone_of(where.point)
        if zone is None:
            return NotFound("time_zone", "no time zone is known for these coordinates; give its IANA name")
        return by_town_noted(where.model_copy(update={"time_zone": zone}))
    found = _by_names(where)
    if isinstance(found, NotFound):
        return found
    if where.subdivision and where.subdivision != found.subdivision:
        return NotFound("postal_code", f"this ZIP code lies in {found.subdivision}, not {where.subdivision}")
    return where.model_copy(
        update={
            "town": where.town or found.name,
            "subdivision": found.subdivision,
            "latitude": found.point.latitude,
            "longitude": found.point.longitude,
            "time_zone": where.time_zone or found.time_zone,
            "by_town": True,
        }
    )


def _by_names(where: Where) -> GazetteerMatch | NotFound:
    if where.postal_code:
        return find_postal_code(where.postal_code, where.country)
    return find_town(where.town, where.subdivision, where.country)


def by_town_noted(where: Where) -> Where:
    """A location, with a note where its coordinates are only those of its town or ZIP code.

    An older one does not say so; that the look-up gives the very same point tells it.
    """
    if where.by_town or where.address or where.latitude is None or not (where.town or where.postal_code):
        return where
    found = _by_names(where)
    if isinstance(found, NotFound) or found.point != where.point:
        return where
    return where.model_copy(update={"by_town": True})


def parse_coordinates(text: str) -> Point:
    """Read coordinates as people and programs write them.

    Args:
        text: decimal degrees with signs or with N, S, E, W; degrees, minutes and seconds with letters, in
            either order; a geo: address; or the address of a map, which is not opened.

    Raises:
        ValueError: it reads like none of these, is a geo: address with a fault, or lies off the globe.
    """
    if is_link(text):
        pair = pair_in_map_link(text)
        if pair is None:
            raise ValueError(
                "no coordinates stand in this link, and it is not opened; copy them from the map"
            )
        return _on_the_globe(*pair)
    if is_geo_address(text):
        return _on_the_globe(*pair_in_geo_address(text))
    text = text.strip()[:200]
    numbers = [part for part in re.split(r"[\s,;]+", text.replace("°", " ")) if part]
    if len(numbers) == 2 and all(_NUMBER.fullmatch(part) for part in numbers):
        return _on_the_globe(float(numbers[0]), float(numbers[1]))
    for form in _NAMED_ANGLES:
        match = form.fullmatch(text)
        if match:
            return _from_named_angles([part or "0" for part in match.groups()])
    raise ValueError(f"{_COORDINATES_READ}; found {shown(text)!r}")


def _from_named_angles(parts: list[str]) -> Point:
    by_letter: dict[str, float] = {}
    for half in (parts[:4], parts[4:]):
        letter = next(part for part in half if part.isalpha()).upper()
        degrees, minutes, seconds = (float(part) for part in half if not part.isalpha())
        if minutes >= 60 or seconds >= 60:
            raise ValueError("minutes and seconds of an angle are less than 60")
        sign = -1 if letter in "SW" else 1
        by_letter["latitude" if letter in "NS" else "longitude"] = sign * (
            degrees + minutes / 60 + seconds / 3600
        )
    if len(by_letter) < 2:
        raise ValueError("one of the two is north or south, the other east or west")
    return _on_the_globe(by_letter["latitude"], by_letter["longitude"])


def _on_the_globe(latitude: float, longitude: float) -> Point:
    faults = []
    if abs(latitude) > 90:
        faults.append(
            f"a latitude lies between -90 and 90 and stands before the longitude; found {latitude:.10g}"
        )
    if abs(longitude) > 180:
        faults.append(f"a longitude lies between -180 and 180; found {longitude:.10g}")
    if faults:
        raise ValueError("; ".join(faults))
    return Point(latitude, longitude)
