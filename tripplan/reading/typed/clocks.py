"""Reading times of day as people type them into a field: 9, 9am, 0900, 9.30 pm, noon."""

import re

from tripplan.reading.hours.clock_times import clock
from tripplan.reading.vocabulary import plain_text

_CLOCK = re.compile(
    r"(?:(?P<four>\d{4})|(?P<h>\d{1,2})(?:\s?[:.h]\s?(?P<m>\d{2})| (?P<m2>\d{2}))?)(?::00)?\s?(?P<half>[ap])?\.?\s?m?\.?"
    r"(?:\s?(?:o'?clock|uhr|h))?",
    re.IGNORECASE | re.ASCII,
)
_THREE = re.compile(r"(\d)(\d{2})\s?([ap])?\.?m?\.?", re.IGNORECASE | re.ASCII)
_WORDS = {
    "noon": 720,
    "midday": 720,
    "12 noon": 720,
    "midnight": 0,
    "mittag": 720,
    "mittags": 720,
    "mitternacht": 0,
}
_HALF_DAY = 12


def clock_in(text: str) -> str | None:
    """A time of day as 09:30; None where it reads like none, or where morning or afternoon must be asked.

    Args:
        text: as typed.
    """
    told = " ".join(plain_text(text).casefold().split())
    if told in _WORDS:
        return clock(_WORDS[told])
    match = _CLOCK.fullmatch(told)
    three = _THREE.fullmatch(told)
    if three and (match is None or not match["four"]):
        hour, minute, half = int(three[1]), int(three[2]), three[3]
    elif match:
        four = match["four"]
        hour, minute = (
            (int(four[:2]), int(four[2:])) if four else (int(match["h"]), int(match["m"] or match["m2"] or 0))
        )
        half = match["half"]
    else:
        return None
    if minute > 59 or hour > 23 or (half and not 1 <= hour <= _HALF_DAY):
        return None
    if half:
        hour = hour % _HALF_DAY + (_HALF_DAY if half == "p" else 0)
    elif half_is_asked(told):
        return None
    return clock(60 * hour + minute)


def half_is_asked(text: str) -> bool:
    """Whether a time leaves open if morning or afternoon is meant: a bare 1 to 6, with or without minutes."""
    match = re.fullmatch(r"([1-6])(?:\s?[:.h]?\s?\d{2})?(?:\s?(?:o'?clock|uhr|h))?", text.strip().casefold())
    return match is not None
