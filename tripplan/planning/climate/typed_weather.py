"""What a parent types about a day's weather, such as 'rain tomorrow' or '95', read."""

import re
from collections.abc import Iterator
from datetime import date, datetime, timedelta

from tripplan.documents.places.forecast import FARTHEST_DAYS, ForecastDay
from tripplan.documents.usual_weather import COLDEST, HOTTEST, Degrees
from tripplan.errors import Finding, InputFaults
from tripplan.language import wording
from tripplan.values.units import celsius

EXAMPLES = "rain tomorrow, 95, or dry, 40 to 55"
LONGEST = 120
"""No description is longer [characters]."""
_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_WET = {"rain", "rains", "raining", "rainy", "wet", "showers", "shower", "storms", "storm", "thunderstorms"}
_SNOW = {"snow", "snows", "snowing", "snowy", "sleet"}
_DRY = {"dry", "sun", "sunny", "clear", "fair", "cloudy"}
_FILLERS = {
    "and", "with", "to", "a", "an", "about", "of", "up", "around", "on", "it", "is", "will", "be", "high",
    "low", "highs", "lows", "degrees", "deg", "likely", "light", "heavy", "some",
}  # fmt: skip
_PIECE = re.compile(
    r"(?P<minus>(?<!\d)[-\u2212])?(?P<number>\d+(?:\.\d+)?)(?:\s*°)?"
    r"\s*(?P<unit>%|(?:fahrenheit|celsius|[fc])(?![a-z]))?"
    r"|(?P<word>[a-z]+)|(?P<other>[^\s,;:.+/°\u2013-]\S*)"
)


def typed_weather(text: str, day: date, degrees: Degrees, now: datetime, today: date) -> ForecastDay:
    """Read what a parent says the weather is going to be.

    Args:
        text: words for wet, snow or dry; one temperature, the day's high unless it is called the low, or
            both; and a day, such as 'tomorrow' or 'Friday'.
        day: the day that is meant where none is named.
        degrees: in which temperatures are where no unit stands with them.
        now: when it is typed; zone-aware.
        today: which day 'today' is.

    Raises:
        InputFaults: it cannot be read; every fault at once.
    """
    reading = _Reading(degrees, today)
    if len(text) > LONGEST:
        reading.faults.append(f"at most {LONGEST} characters; {EXAMPLES}")
    else:
        for piece in _PIECE.finditer(text.casefold()):
            reading.take(piece)
        reading.faults += reading.missing()
    if reading.faults:
        shown = text if len(text) <= LONGEST else f"{text[:LONGEST]}…"
        raise InputFaults(tuple(Finding("", "", shown, fault) for fault in reading.faults))
    low, high = reading.extremes
    return ForecastDay(
        day=reading.day or day,
        low=low,
        high=high,
        wet=reading.chance(reading.wet),
        snow=reading.chance(reading.snow),
        words=" ".join(text.split()),
        known_at=now,
    )


class _Reading:
    """What is read so far."""

    def __init__(self, degrees: Degrees, today: date) -> None:
        self.degrees, self.today = degrees, today
        self.temperatures: list[float] = []
        self.says_low = False
        self.wet: float | None = None
        self.snow: float | None = None
        self.percent: float | None = None
        self.day: date | None = None
        self.faults: list[str] = []

    def take(self, piece: re.Match[str]) -> None:
        """Take one number or word."""
        if piece["number"]:
            self._number(float(f"{'-' if piece['minus'] else ''}{piece['number']}"), piece["unit"])
        elif piece["other"]:
            self.faults.append(f"“{piece['other'][:20]}” is no word for weather here; try {EXAMPLES}")
        else:
            self._word(piece["word"])

    @property
    def extremes(self) -> tuple[float | None, float | None]:
        """Low and high [°C]; one temperature alone is the high, unless it is called the low."""
        found = sorted(self.temperatures)
        if len(found) == 1:
            return (found[0], None) if self.says_low else (None, found[0])
        return (found[0], found[-1]) if found else (None, None)

    def chance(self, certain: float | None) -> float | None:
        """The chance of something that was named, by the percentage that stands with it [0-1]."""
        return certain if not certain or self.percent is None else self.percent / 100

    def missing(self) -> Iterator[str]:
        """What is wrong with all of it together."""
        if len(self.temperatures) > 2:
            yield "at most two temperatures, the low and the high"
        if self.percent is not None and not self.wet:
            yield "a percentage stands with rain or snow, such as rain 70 %"
        elif not self.faults and self.wet is None and not self.temperatures:
            yield f"say rain, snow or dry, or a temperature; such as {EXAMPLES}"

    def _number(self, number: float, unit: str | None) -> None:
        if unit == "%":
            self.percent = number
            if not 0 <= number <= 100:
                self.faults.append(f"{number:g} % is no chance; 0 to 100")
            return
        scale: Degrees = self.degrees if unit is None else "F" if unit.startswith("f") else "C"
        if not COLDEST[scale] <= number <= HOTTEST[scale]:
            self.faults.append(
                f"{number:g} °{scale} is no temperature of a day; "
                f"{COLDEST[scale]} to {HOTTEST[scale]} °{scale} are"
            )
            return
        self.temperatures.append(celsius(number) if scale == "F" else number)

    def _word(self, word: str) -> None:
        self.says_low |= word in ("low", "lows")
        if word in _WET | _SNOW | _DRY:
            wet = 0.0 if word in _DRY else 1.0
            if self.wet not in (None, wet):
                self.faults.append("either dry or wet, not both")
            self.wet = wet
            self.snow = 1.0 if word in _SNOW else self.snow or 0.0
        elif (named := self._day(word)) is not None:
            if self.day not in (None, named):
                self.faults.append("one day at a time")
            self.day = named
        elif word not in _FILLERS:
            self.faults.append(f"“{word[:20]}” is no word for weather here; try {EXAMPLES}")

    def _day(self, word: str) -> date | None:
        if word == "today":
            return self.today
        if word == "tomorrow":
            return self.today + timedelta(days=1)
        fitting = [n for n, name in enumerate(_WEEKDAYS) if len(word) >= 3 and name.startswith(word)]
        return self.today + timedelta(days=(fitting[0] - self.today.weekday()) % 7) if fitting else None


def too_far(day: date, today: date) -> str:
    """Why nothing is told of a day so far away, in words; empty where it is near enough."""
    if today <= day <= today + timedelta(days=FARTHEST_DAYS):
        return ""
    return (
        f"forecasts are for today and {FARTHEST_DAYS} days ahead, so until "
        f"{wording.day(today + timedelta(days=FARTHEST_DAYS))}"
    )
