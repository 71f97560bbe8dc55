"""Opening hours as read, said as people say them: 'Tue to Sat 10:00 AM to 5:00 PM'."""

import re
from datetime import time
from itertools import pairwise

from tripplan.language import wording
from tripplan.values.weekday import Weekday

_DAYS = ("Mo", "Tu", "We", "Th", "Fr", "Sa", "Su")
_DAY = "|".join(_DAYS)
_MONTHS = "Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec"
_SPAN = re.compile(r"(\d\d):(\d\d)-(\d\d):(\d\d)")
_NTH = re.compile(rf"\b(?:(?P<month>{_MONTHS}) )?(?P<day>{_DAY})\[(?P<nth>-?\d(?:,-?\d)*)\]")
_DAYS_LISTED = re.compile(rf"\b(?:{_DAY})(?:[-,](?:{_DAY}))*\b")
_WORDS = (("off", "closed"), ("PH", "public holidays"), ("SH", "school breaks"), ("easter", "Easter"))


def hours_in_words(opening_hours: str) -> tuple[str, ...]:
    """What each rule says, in the spoken language's days and clock.

    Args:
        opening_hours: OpenStreetMap opening_hours syntax, as `read_hours` writes it.
    """
    return tuple(_rule(rule) for rule in opening_hours.split("; ") if rule)


def _rule(rule: str) -> str:
    rule = _SPAN.sub(lambda span: f"\0{_times(span)}\0", rule)  # so that no days are sought in the times
    parts = rule.split("\0")
    parts[::2] = [_dates(part) for part in parts[::2]]
    return " ".join(word for word in "".join(parts).replace(",", ", ").split())


def _times(span: re.Match[str]) -> str:
    hour, minute, until, past = map(int, span.groups())
    if (hour, minute, until) == (0, 0, 24):
        return "all day"
    return wording.from_to(wording.clock(time(hour, minute)), wording.clock(time(until % 24, past)))


def _dates(text: str) -> str:
    text = _NTH.sub(_nth, text)
    text = _DAYS_LISTED.sub(lambda days: _weekdays(days[0]), text)
    for code, words in _WORDS:
        text = re.sub(rf"\b{code}\b", words, text)
    return re.sub(r"(?<=[\w\]])-(?=[A-Z]|last|first|second|third|fourth)", " to ", text)


def _nth(match: re.Match[str]) -> str:
    numbers = [
        "last" if number == "-1" else wording.ordinal(int(number)) for number in match["nth"].split(",")
    ]
    day = wording.short_weekday(Weekday(_DAYS.index(match["day"])))
    return f"{wording.listed(numbers)} {day}" + (f" in {match['month']}" if match["month"] else "")


def _weekdays(listed: str) -> str:
    """Days in a row as a span; all of them as every day."""
    days: list[int] = []
    for part in listed.split(","):
        first, _, last = part.partition("-")
        begin, count = _DAYS.index(first), 0
        if last:
            count = (_DAYS.index(last) - begin) % 7
        days += [(begin + later) % 7 for later in range(count + 1)]
    if len(set(days)) == len(_DAYS):
        return "every day"
    names = [wording.short_weekday(Weekday(day)) for day in days]
    in_a_row = all((one + 1) % 7 == two for one, two in pairwise(days))
    return wording.from_to(names[0], names[-1]) if in_a_row and len(days) > 2 else wording.listed(names)
