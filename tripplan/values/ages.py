"""Ages on the day of a visit, and the inclusive age bands that price boards use."""

import re
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Annotated

from pydantic import BeforeValidator, PlainSerializer, WithJsonSchema

MONTHS = 12
OLDEST_MONTHS = 120 * MONTHS
"""Nobody is older [months]."""


def completed_months(born: date, day: date) -> int:
    """Age in completed months on a day [months]; negative before birth.

    A child born on 29 February turns a year older on 1 March in a common year.
    """
    months = (day.year - born.year) * MONTHS + day.month - born.month
    return months - (1 if day.day < born.day else 0)


def months_later(day: date, months: int) -> date:
    """The day on which so many months are completed; the 1st of the next where the month is too short."""
    years, month = divmod(day.month - 1 + months, MONTHS)
    first = date(day.year + years, month + 1, 1)
    try:
        return first.replace(day=day.day)
    except ValueError:
        return (first + timedelta(days=31)).replace(day=1)


@dataclass(frozen=True)
class AgeBand:
    """An inclusive span of ages, such as ``3-12``, ``65+``, ``under 2``, ``6-23 months``, ``any``.

    Attributes:
        first: youngest age let in [completed months].
        last: oldest age let in [completed months]; None for no upper end.
    """

    first: int = 0
    last: int | None = None

    def __contains__(self, months: int) -> bool:
        return self.first <= months and (self.last is None or months <= self.last)

    @property
    def bounds(self) -> tuple[int, ...]:
        """The ages at which somebody enters or leaves it [completed months]."""
        return (self.first,) if self.last is None else (self.first, self.last + 1)

    def overlaps(self, other: "AgeBand") -> bool:
        """Whether some age falls in both bands."""
        starts_before_other_ends = other.last is None or self.first <= other.last
        return starts_before_other_ends and (self.last is None or other.first <= self.last)

    def __str__(self) -> str:
        if self.last is None:
            return "any" if self.first == 0 else self._from_text()
        in_years = self.first % MONTHS == 0 and (self.last + 1) % MONTHS == 0
        if self.first == 0:
            end = self.last + 1
            return f"under {end // MONTHS}" if in_years else f"under {end} months"
        if in_years:
            first, last = self.first // MONTHS, self.last // MONTHS
            return f"{first}" if first == last else f"{first}-{last}"
        return f"{self.first}-{self.last} months"

    def _from_text(self) -> str:
        return f"{self.first // MONTHS}+" if self.first % MONTHS == 0 else f"{self.first}+ months"


_BAND_FORMS = (
    (re.compile(r"any"), lambda _: (0, None)),
    (re.compile(r"under (\d{1,3})(?: years)?"), lambda m: (0, int(m[1]) * MONTHS - 1)),
    (re.compile(r"under (\d{1,4}) months"), lambda m: (0, int(m[1]) - 1)),
    (re.compile(r"(\d{1,3})\+(?: years)?"), lambda m: (int(m[1]) * MONTHS, None)),
    (re.compile(r"(\d{1,4}) ?(?:\+ ?months|months ?\+)"), lambda m: (int(m[1]), None)),
    (re.compile(r"(\d{1,4}) ?- ?(\d{1,4}) months"), lambda m: (int(m[1]), int(m[2]))),
    (
        re.compile(r"(\d{1,3}) ?- ?(\d{1,3})(?: years)?"),
        lambda m: (int(m[1]) * MONTHS, int(m[2]) * MONTHS + 11),
    ),
    (re.compile(r"(\d{1,3})(?: years)?"), lambda m: (int(m[1]) * MONTHS, int(m[1]) * MONTHS + 11)),
)


def parse_age_band(text: str) -> AgeBand:
    """Read an age band; both ends count, and years are completed years.

    Args:
        text: ``3-12``, ``7``, ``65+``, ``under 2``, ``6-23 months``, ``18+ months`` (or ``18 months+``) or
            ``any``.

    Raises:
        ValueError: the text has another form, or its end lies before its start.
    """
    for form, months in _BAND_FORMS:
        match = form.fullmatch(text.strip().lower())
        if match:
            first, last = months(match)
            if last is not None and last < first:
                raise ValueError("an age band ends at or after the age it starts with")
            return AgeBand(first, last)
    raise ValueError("an age band reads like '3-12', '7', '65+', 'under 2', '6-23 months' or 'any'")


def _read_band(value: object) -> AgeBand:
    if isinstance(value, AgeBand):
        return value
    if isinstance(value, int) and not isinstance(value, bool):
        value = str(value)
    if not isinstance(value, str):
        raise ValueError("an age band is a text such as '3-12' or '65+'")  # noqa: TRY004 - pydantic wants it
    return parse_age_band(value)


Ages = Annotated[
    AgeBand,
    BeforeValidator(_read_band),
    PlainSerializer(str, return_type=str),
    WithJsonSchema({"type": "string", "examples": ["3-12", "65+", "under 2", "6-23 months", "any"]}),
]
"""An age band as a field of a written form."""

EVERYONE = AgeBand()
ADULT = AgeBand(18 * MONTHS)
