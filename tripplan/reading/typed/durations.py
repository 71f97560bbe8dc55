"""Reading spans of time as people write them: 80, 80 min, 1 h 20, 1:20, an hour and a half."""

import re

_HOURS = r"h(?:ou)?rs?\.?|hours?|h|std\.?|stunden?"
_MINUTES = r"m(?:in(?:ute)?s?)?\.?|min(?:uten)?|'"
_AMOUNT = r"\d{1,4}(?:[.,]\d{1,2})?"
_FRACTIONS = {"½": 0.5, "¼": 0.25, "¾": 0.75, "1/2": 0.5, "1/4": 0.25, "3/4": 0.75}
_FRACTION = "|".join(map(re.escape, _FRACTIONS))
DURATION = (
    rf"(?:(?:\d{{1,2}}:\d{{2}}(?:\s?(?:{_HOURS}))?)"
    rf"|(?:{_AMOUNT})?\s?(?:{_FRACTION})\s?(?:{_HOURS})"
    rf"|{_AMOUNT}\s?(?:{_HOURS})(?:\s?(?:and|und|,)?\s?\d{{1,3}}(?:\s?(?:{_MINUTES}))?)?"
    rf"|{_AMOUNT}\s?(?:{_MINUTES})"
    r"|(?:an?|one|eine) (?:hour|stunde)(?: and a half| und eine halbe)?|half an hour|eine halbe stunde"
    r"|(?:two|three|four) hours)(?![a-z\d])"
)
"""A span of time with its unit, as a piece of a pattern; letters in any case."""
_WORDS = {
    "half an hour": 30, "eine halbe stunde": 30, "an hour": 60, "a hour": 60, "one hour": 60, "eine stunde": 60,
    "an hour and a half": 90, "one hour and a half": 90, "two hours": 120, "three hours": 180, "four hours": 240,
}  # fmt: skip
_WHOLE = re.compile(
    rf"(?:(?P<clock_h>\d{{1,2}}):(?P<clock_m>[0-5]\d)(?:\s?(?:{_HOURS}))?"
    rf"|(?P<whole>\d{{1,2}})?\s?(?P<part>{_FRACTION})\s?(?:{_HOURS})"
    rf"|(?P<h>{_AMOUNT})\s?(?:{_HOURS})(?:\s?(?:and|und|,)?\s?(?P<hm>\d{{1,3}})(?:\s?(?:{_MINUTES}))?)?"
    rf"|(?P<m>{_AMOUNT})(?:\s?(?:{_MINUTES}))?)",
    re.IGNORECASE,
)


def minutes_in(text: str) -> int | None:
    """A span of time, a bare number being minutes [min]; None where it reads like none.

    Args:
        text: as typed.
    """
    told = " ".join(text.casefold().split()).rstrip(".")
    if told in _WORDS:
        return _WORDS[told]
    match = _WHOLE.fullmatch(told)
    if not match:
        return None
    if match["clock_h"]:
        return 60 * int(match["clock_h"]) + int(match["clock_m"])
    if match["part"]:
        return round(60 * (int(match["whole"] or 0) + _FRACTIONS[match["part"]]))
    if match["h"]:
        return round(60 * float(match["h"].replace(",", "."))) + int(match["hm"] or 0)
    return round(float(match["m"].replace(",", ".")))
