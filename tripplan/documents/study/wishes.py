"""What a parent wants of a term's programme: limits, and what she has settled or ruled out."""

from datetime import date
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from tripplan.documents.model import Name, Written
from tripplan.documents.places.place import PlaceId
from tripplan.documents.written_money import Currency, Price
from tripplan.values.money import Money


class SettledFor(Written):
    """A place, a day or both that a unit's outing must have."""

    unit: Name
    """The name of the study unit."""
    place: PlaceId | None = None
    """Where to; any place that fits when left out."""
    day: date | None = None
    """When; any day of the unit's weeks when left out."""


class RuledOut(Written):
    """A place that a unit's outing does not go to."""

    unit: Name
    """The name of the study unit."""
    place: PlaceId
    """Where not."""
    day: date | None = None
    """Only not on this day; never in this programme when left out."""


class ProgrammeWishes(Written):
    """What a term's programme must keep to, and what it is weighed by."""

    currency: Currency
    """ISO 4217 code of the budget."""
    budget: Price | None = None
    """What all its outings may cost together; no limit when left out."""
    first: date | None = None
    """The first day of the term; from tomorrow when left out."""
    last: date | None = None
    """The last day of the term; as far as the units reach when left out."""
    careful: bool = False
    """Whether the budgets must hold even where every outing turns out at the high end of its range."""
    several_a_week: bool = False
    """Whether two outings may lie in one week (Monday to Sunday)."""
    same_place_again: bool = False
    """Whether two units may go to the same place."""
    weigh: Literal["felt", "money"] = "felt"
    """What is made as small as can be: `felt` cost (cost plus hassle) or `money` alone."""
    without: tuple[Name, ...] = ()
    """Units that have no outing in this programme."""
    settled: Annotated[tuple[SettledFor, ...], Field(max_length=60)] = ()
    """What is settled, at most once for each unit."""
    ruled_out: Annotated[tuple[RuledOut, ...], Field(max_length=400)] = ()
    """What is ruled out."""

    @model_validator(mode="after")
    def _makes_sense(self) -> Self:
        if self.first and self.last and self.last < self.first:
            raise ValueError("the last day of the term lies before the first")
        units = [one.unit for one in self.settled]
        if len(units) > len(set(units)):
            raise ValueError("a unit's place and day are settled only once")
        return self

    @property
    def spends_at_most(self) -> Money | None:
        """The budget; None where there is none."""
        return None if self.budget is None else Money(self.budget, self.currency)

    def in_currency(self, currency: str) -> Self:
        """The same wishes for a household that counts in a currency; a budget in another one is dropped."""
        if currency == self.currency:
            return self
        return self.model_validate({**dict(self), "currency": currency, "budget": None})

    def settled_for(self, unit: str) -> SettledFor | None:
        """What is settled for a unit, if anything."""
        return next((one for one in self.settled if one.unit == unit), None)

    def settling(self, unit: str, place: str | None, day: date | None) -> Self:
        """The same wishes with a unit's place and day settled, or with neither settled any more."""
        others = [one for one in self.settled if one.unit != unit]
        if place or day:
            others.append(SettledFor(unit=unit, place=place, day=day))
        return self.model_validate({**dict(self), "settled": tuple(others)})

    def ruling_out(self, unit: str, place: str, day: date | None = None) -> Self:
        """The same wishes without a place for a unit; what was settled on confirmed no more."""
        now = self.settled_for(unit)
        clash = now is not None and now.place in (None, place) and (day is None or now.day in (None, day))
        kept = self.settling(unit, None, None) if clash else self
        new = RuledOut(unit=unit, place=place, day=day)
        if new in kept.ruled_out:
            return kept
        return kept.model_validate({**dict(kept), "ruled_out": (*kept.ruled_out, new)})

    def forgetting(self, unit: str) -> Self:
        """The same wishes with nothing said of a unit any more."""
        without = tuple(one for one in self.without if one != unit)
        left = self.settling(unit, None, None).allowing_again(unit)
        return left.model_validate({**dict(left), "without": without})

    def allowing_again(self, unit: str) -> Self:
        """The same wishes with nothing ruled out for a unit."""
        left = tuple(one for one in self.ruled_out if one.unit != unit)
        return self.model_validate({**dict(self), "ruled_out": left})
