"""Study units: what is studied from when to when, and for whom."""

from datetime import date
from typing import Annotated, Self

from pydantic import Field, model_validator

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.model import Name, Written
from tripplan.documents.places.place import PlaceId
from tripplan.documents.written_money import Currency, Price
from tripplan.values.money import Money

UNITS_AT_MOST = 12
"""No more units than these can have an outing in one programme [units]."""


class StudyUnit(Written):
    """A stretch of study that may be closed with an outing."""

    name: Annotated[
        Name,
        FieldSpec(
            "What is the unit called?", called="Name of the unit", example="such as: From grain to bread"
        ),
    ]
    """What the unit is called; tells it from the others."""
    topics: Annotated[
        tuple[Name, ...],
        Field(min_length=1, max_length=20),
        FieldSpec(
            "Topics",
            help="The words that place cards use are listed; a place fits where its card names one of them.",
            control=Control.OWN_WORDS,
            offered="topics",
            example="pick some, or type your own",
        ),
    ]
    """What is studied, in the words that place cards use for their topics."""
    first: Annotated[date, FieldSpec("First day", width=220)]
    """The first day of the unit's weeks."""
    last: Annotated[date, FieldSpec("Last day", width=220)]
    """The last day of them; both ends count."""
    currency: Currency
    """ISO 4217 code of the budget."""
    budget: Annotated[
        Price | None,
        FieldSpec(
            "Budget for its outing", help="Left empty, the unit has no limit of its own.", unit=Unit.MONEY
        ),
    ] = None
    """What the unit's outing may cost in all; no limit of its own when left out."""
    members: Annotated[
        tuple[Name, ...],
        FieldSpec(
            "Who goes?",
            called="Who goes",
            help="With nobody picked it is for everybody. Pick the adults who come along, too.",
            control=Control.SOME,
            offered="people",
        ),
    ] = ()
    """The names of those who go on its outing; the whole household when left out."""
    also_places: Annotated[
        tuple[PlaceId, ...],
        FieldSpec("Places that fit all the same", control=Control.WORDS, offered="places"),
    ] = ()
    """Ids of place cards that fit although none of their topics is the unit's."""

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.last < self.first:
            raise ValueError("the last day lies before the first")
        return self

    @property
    def weeks(self) -> DateSpan:
        """The days on which its outing may lie."""
        return DateSpan(first=self.first, last=self.last)

    @property
    def spends_at_most(self) -> Money | None:
        """Its own budget; None where it has none."""
        return None if self.budget is None else Money(self.budget, self.currency)
