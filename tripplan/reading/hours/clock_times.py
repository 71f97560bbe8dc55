"""Reading times of day and spans of them as venues write them: 10-4, 9:30 AM - 5 PM, noon to 4, 9 bis 17 Uhr."""

import re
from dataclasses import dataclass

_HALF = r"(?:a\.?\s?m\b\.?|p\.?\s?m\b\.?|a\b|p\b)"
_CLOCK = (
    rf"(?:(?P<h{{0}}>\d{{{{1,2}}}})(?:[:.](?P<m{{0}}>\d{{{{2}}}}))?\s?(?P<half{{0}}>{_HALF})?(?:\s?(?:uhr|h)\b)?"
    r"|(?P<word{0}>noon|midday|midnight|mittags?|mitternacht))"
)
_SPAN = re.compile(
    rf"(?:\b(?:from|between|von)\s+)?\b{_CLOCK.format(1)}\s*(?:-|to|until|till|til|bis|and(?= \d{{1,2}}\s?[ap]))\s*{_CLOCK.format(2)}(?![\d:])",
    re.IGNORECASE,
)
_OPEN_CLOSE = re.compile(
    rf"\bopens? (?:daily )?(?:at )?{_CLOCK.format(1)}[^\d]{{1,20}}clos(?:es?|ing) (?:at )?{_CLOCK.format(2)}",
    re.IGNORECASE,
)
SPANS = (_OPEN_CLOSE, _SPAN)
"""How a span of time begins, whatever it means."""
_AT = re.compile(rf"\b(?:at|um|-|:)?\s*{_CLOCK.format(1)}(?![\d:])", re.IGNORECASE)
_NOON = {"noon": 720, "midday": 720, "mittag": 720, "mittags": 720, "midnight": 1440, "mitternacht": 1440}
_DAY = 1440
_HALF_DAY = 720
_EARLIEST_OPENING = 7 * 60


@dataclass(frozen=True)
class TimeSpan:
    """Opening and closing [minutes after midnight].

    Attributes:
        opens: from.
        closes: until; later than `opens`.
        sure: whether the text leaves no doubt between morning and afternoon.
    """

    opens: int
    closes: int
    sure: bool = True

    def __str__(self) -> str:
        return f"{clock(self.opens)}-{clock(self.closes)}"


def clock(minutes: int) -> str:
    """A time of day as 09:30."""
    return f"{minutes // 60:02}:{minutes % 60:02}"


def span_at(text: str, at: int) -> tuple[TimeSpan, int] | None:
    """The span of time that begins at a place of a text, and where it ends; None where there is none."""
    for pattern in SPANS:
        match = pattern.match(text, at)
        span = _span(match) if match else None
        if match and span:
            return span, match.end()
    return None


def time_at(text: str, at: int) -> tuple[int, int] | None:
    """One time of day that begins at a place of a text [minutes after midnight], and where it ends."""
    match = _AT.match(text, at)
    if not match:
        return None
    minutes, half = _minutes(*match.group("h1", "m1", "half1", "word1"))
    if minutes is None or minutes > _DAY:
        return None
    if half is None and minutes < _EARLIEST_OPENING:
        minutes += _HALF_DAY
    return minutes, match.end()


def _minutes(
    hours: str | None, past: str | None, half: str | None, word: str | None
) -> tuple[int | None, str | None]:
    """Minutes after midnight as written, and the half of the day where it is said."""
    if word:
        return _NOON[word.casefold()], "p"
    hour, minute = int(hours or 0), int(past or 0)
    if hour > 24 or minute > 59:
        return None, None
    half = half[0].casefold() if half else None
    if half and not 1 <= hour <= 12:
        return None, None
    if half:
        hour = hour % 12 + (12 if half == "p" else 0)
    return hour * 60 + minute, half


def _span(match: re.Match[str]) -> TimeSpan | None:
    opens, first = _minutes(*match.group("h1", "m1", "half1", "word1"))
    closes, second = _minutes(*match.group("h2", "m2", "half2", "word2"))
    if opens is None or closes is None:
        return None
    written = match[0]
    sure = bool(first or second) or "uhr" in written.casefold() or max(opens, closes) >= 13 * 60
    if first is None and second == "p" and opens < _HALF_DAY and opens + _HALF_DAY < closes:
        # 1 to 5 p.m. is in the afternoon, but 9 to 5 p.m. begins in the morning; 7 to 9 p.m. is left in doubt.
        opens += _HALF_DAY
        sure = opens < 19 * 60
    elif first is None and second is None and opens < _EARLIEST_OPENING and closes < _HALF_DAY:
        opens += _HALF_DAY
    if closes <= opens and closes <= _HALF_DAY and second is None:
        closes += _HALF_DAY
    if closes <= opens:
        closes += _DAY if closes < 6 * 60 else 0
    return TimeSpan(opens, closes, sure) if opens < closes <= 30 * 60 else None
