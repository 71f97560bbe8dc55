"""The point that a map's address shows; the address is only read, never opened."""

import re
from urllib.parse import parse_qs, unquote, urlsplit

_DEGREES = r"([+-]?\d{1,3}(?:\.\d{1,15})?)"
_PAIR = re.compile(rf"\s*(?:loc:)?\s*{_DEGREES}\s*[,\s]\s*{_DEGREES}\s*")
_PIN = re.compile(rf"!3d{_DEGREES}!4d{_DEGREES}")
_VIEW = re.compile(rf"@{_DEGREES},{_DEGREES}(?=[,/?]|$)")
_MAP = re.compile(rf"(?:^|&)map=\d+(?:\.\d+)?/{_DEGREES}/{_DEGREES}(?=[/&]|$)")
_LINK = re.compile(r"(?:https?://|www\.)\S+", re.IGNORECASE)
LONGEST_ADDRESS = 4000
"""A longer text is no address of a map [characters]."""

_MARKED = (("mlat", "mlon"),)
_CENTRED = (("lat", "lon"), ("lat", "lng"))
_PAIRS = ("q", "query", "ll", "center")


def is_link(text: str) -> bool:
    """Whether a text is the address of a page."""
    return _LINK.fullmatch(text.strip()[:LONGEST_ADDRESS]) is not None


def pair_in_map_link(link: str) -> tuple[float, float] | None:
    """Latitude and longitude in a map's address, as they stand there [degrees].

    A marked point wins over the middle of the view: `mlat` and `mlon`, a pin (`!3d...!4d...`), a pair in `q`,
    `query`, `ll` or `center`, `lat` and `lon`, `@lat,lon,zoom`, and `#map=zoom/lat/lon`, in this order.

    Args:
        link: the address, as copied.

    Returns:
        The pair, or None where there is none; a short address that only leads to another has none.
    """
    try:
        parts = urlsplit(link.strip()[:LONGEST_ADDRESS])
    except ValueError:  # such as a bracket that is left open
        return None
    asked = {name: values[0] for name, values in parse_qs(parts.query).items()}
    return (
        _from_names(asked, _MARKED)
        or _first(_PIN, parts.path)
        or next((pair for name in _PAIRS if (pair := whole_pair(asked.get(name, "")))), None)
        or _from_names(asked, _CENTRED)
        or _first(_VIEW, unquote(parts.path))
        or _first(_MAP, unquote(parts.fragment))
    )


def _from_names(asked: dict[str, str], names: tuple[tuple[str, str], ...]) -> tuple[float, float] | None:
    pairs = (
        whole_pair(f"{asked[first]},{asked[second]}")
        for first, second in names
        if {first, second} <= asked.keys()
    )
    return next((pair for pair in pairs if pair), None)


def whole_pair(text: str) -> tuple[float, float] | None:
    """Latitude and longitude, where a text is such a pair and nothing else [degrees]."""
    match = _PAIR.fullmatch(text)
    return (float(match[1]), float(match[2])) if match else None


def _first(pattern: re.Pattern[str], text: str) -> tuple[float, float] | None:
    match = pattern.search(text)
    return (float(match[1]), float(match[2])) if match else None
