"""What the parent sets for the logbook: the year's budget, the reporting year, what may be learned."""

from datetime import date
from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from tripplan.documents.model import Name, Written
from tripplan.documents.written_money import Currency, Price


class Learnable(StrEnum):
    """A figure that the family's own outings can teach."""

    FUEL = "what the car uses"
    FOOD = "what eating costs"
    STAYS = "how long we stay"
    DELAYS = "how late we get off"
    CROWDS = "how full it gets"
    WEATHER = "what cold, heat and rain weigh"


class GradeBand(Written):
    """Which grades a child's work is reported in; some states ask for other hours by grade."""

    member: Name
    band: Name
    """In the state's words, such as 'grades 1-6'."""


class LogbookSettings(Written):
    """What the parent sets for the logbook."""

    currency: Currency | None = None
    """ISO 4217 code of the budget; the household's when left out."""
    budget: Price | None = None
    """What outings may cost in one year; no budget when left out."""
    year_begins_month: Annotated[int, Field(ge=1, le=12)] = 7
    """The month in which the year of budget and record begins, 1 to 12."""
    year_begins_day: Annotated[int, Field(ge=1, le=28)] = 1
    """The day of that month, 1 to 28."""
    grade_bands: tuple[GradeBand, ...] = ()
    """Grades of the children, where they are reported."""
    not_learned: tuple[Learnable, ...] = ()
    """What the plan keeps the household's and the cards' own figures for."""

    @model_validator(mode="after")
    def _once(self) -> Self:
        members = [band.member for band in self.grade_bands]
        if len(set(members)) < len(members):
            raise ValueError("each child has one grade band")
        return self

    def learns(self, what: Learnable) -> bool:
        """Whether planning takes the family's own figure."""
        return what not in self.not_learned

    def year_of(self, day: date) -> tuple[date, date]:
        """The first and last day of the year that a day lies in."""
        first = date(day.year, self.year_begins_month, self.year_begins_day)
        if day < first:
            first = first.replace(year=day.year - 1)
        return first, date.fromordinal(first.replace(year=first.year + 1).toordinal() - 1)

    def band_of(self, member: str) -> str:
        """The grade band of a child; empty for none."""
        return next((band.band for band in self.grade_bands if band.member == member), "")
