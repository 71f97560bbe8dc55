"""The point that a geo: address names; the address is only read, never opened.

Source: A. Mayrhofer, C. Spanring, RFC 5870, 2010; that `?q=` names the point to be marked, after it a name
in brackets, and that geo:0,0 before such a query means nothing, is common practice, no source.
"""

import re
from urllib.parse import parse_qs, unquote

from tripplan.files.locations.map_links import LONGEST_ADDRESS, whole_pair
from tripplan.files.toml.toml_text import shown

_SCHEME = "geo:"
_NUMBER = r"\s*([+-]?\d+(?:\.\d+)?)\s*"
_COORDINATES = re.compile(rf"{_NUMBER},{_NUMBER}(?:,{_NUMBER})?")
_UNCERTAINTY = re.compile(r"\d+(?:\.\d+)?")


def is_geo_address(text: str) -> bool:
    """Whether a text can only be meant as a geo: address."""
    return text.strip().lower().startswith(_SCHEME)


def pair_in_geo_address(address: str) -> tuple[float, float]:
    """Latitude and longitude in a geo: address, as they stand there [degrees].

    A pair in the query wins over the one before it. Height, uncertainty and parameters of any other name
    are passed over.

    Args:
        address: one for which `is_geo_address` holds.

    Raises:
        ValueError: every fault of it: it is in another system than WGS84, its uncertainty is no number, it
            has no coordinates, or it only says what to search for.
    """
    place, _, query = address.strip()[:LONGEST_ADDRESS].partition("?")
    written, *parameters = place[len(_SCHEME) :].split(";")
    faults = [fault for parameter in parameters if (fault := _fault_of(parameter))]
    match = _COORDINATES.fullmatch(unquote(written))
    if match is None:
        faults.append(f"a geo: address is written like geo:40.69,-89.59; found {shown(written)!r}")
    if match is None or faults:
        raise ValueError("; ".join(faults))
    pair = (float(match[1]), float(match[2]))
    asked = parse_qs(query, keep_blank_values=True).get("q")
    if asked is None:
        return pair
    wanted = asked[0]
    marked = whole_pair(wanted.partition("(")[0])
    if marked is None and pair == (0, 0):
        raise ValueError(
            f"this geo: address has no coordinates, it only says to search for {shown(wanted)!r}; name the "
            "town or copy the coordinates from the map"
        )
    return marked or pair


def _fault_of(parameter: str) -> str:
    """What is wrong with a parameter; empty where nothing is."""
    name, _, value = (part.strip() for part in parameter.partition("="))
    if name.lower() == "crs" and value.lower() != "wgs84":
        return f"a geo: address must be in WGS84; found crs {shown(value)!r}"
    if name.lower() == "u" and not _UNCERTAINTY.fullmatch(value):
        return f"the uncertainty u of a geo: address is a number of metres; found {shown(value)!r}"
    return ""
