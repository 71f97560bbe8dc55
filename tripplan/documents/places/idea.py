"""An idea: somewhere to go of which little more may be known than its name, and the place it stands for."""

import re
import unicodedata
from collections.abc import Container
from datetime import date
from typing import Annotated

from pydantic import Field

from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.model import LONGEST_NAME, Minutes, Name, Written
from tripplan.documents.places.offers import Ticket
from tripplan.documents.places.place import LONGEST_ID, Opening, Place, PlaceId, PricesRead, Visit
from tripplan.documents.where import Where
from tripplan.documents.written_money import Price
from tripplan.values.opening_hours import HoursText

MARK = " (idea)"
"""What stands behind the name of an idea wherever places are named."""
LONGEST_IDEA = LONGEST_NAME - len(MARK)
"""What the name of an idea may have [characters]."""
ASSUMED_HOURS = "Mo-Su 09:00-17:00"
"""When an idea is taken to be open while nobody knows better. No source, our choice."""
A_GUESS = "a guess of yours"
"""Where a figure of an idea comes from, in words."""


class Idea(Written):
    """Somewhere to go, as a wish; all but its name may be unknown."""

    id: Annotated[PlaceId, FieldSpec("Short name")]
    """Small letters, digits and hyphens; the card that grows out of it keeps it."""
    name: Annotated[Name, Field(max_length=LONGEST_IDEA), FieldSpec("Name")]
    """What it is called."""
    noted_on: date
    """When it was written down."""
    topics: Annotated[
        tuple[Name, ...],
        FieldSpec("What can be studied there", help="One topic a line.", control=Control.LINES),
    ] = ()
    """What can be studied there."""
    money: Annotated[Price | None, FieldSpec("About what for us?", help="Tickets and parking together.")] = (
        None
    )
    """A guess of tickets and parking together for the whole party, in the household's currency."""
    drive_minutes: Annotated[
        Annotated[Minutes, Field(ge=1)] | None, FieldSpec("About how far?", unit=Unit.MINUTES)
    ] = None
    """A guess of the drive, one way [min]."""
    where: Annotated[Where | None, FieldSpec("Where is it?")] = None
    """Where it lies, as far as that is known."""
    hours: Annotated[HoursText | None, FieldSpec("Opening hours")] = None
    """In opening_hours syntax, as far as they are known."""
    web: Annotated[str, Field(max_length=500), FieldSpec("Web page")] = ""
    """Address of its own page."""
    telephone: Annotated[str, Field(max_length=60), FieldSpec("Phone")] = ""
    """To ask for what is not known."""
    notes: Annotated[str, Field(max_length=2000), FieldSpec("Notes", control=Control.NOTE)] = ""
    """Anything else."""
    source: Annotated[str, Field(max_length=300), FieldSpec("Where this comes from")] = ""
    """Where what is known comes from, such as a map, with the credit that its license asks for."""

    def as_place(self, home: Where, currency: str) -> "IdeaPlace":
        """The place that planning works with until more is known; what is assumed in it is no fact.

        Args:
            home: where the family lives, which stands in for an unknown location.
            currency: the household's.
        """
        # Only the point of home, so that no street of hers is taken for the place's.
        stand_in = home.model_copy(update={"address": "", "town": "", "postal_code": ""})
        source = self.source or A_GUESS
        return IdeaPlace(
            id=self.id,
            name=f"{self.name}{MARK}",
            currency=currency,
            where=self.where or stand_in,
            visit=Visit(topics=self.topics),
            opening=Opening(hours=self.hours or ASSUMED_HOURS, checked_on_site=False),
            offers=(Ticket(name="Entry, price not known", price=0),),
            prices_read=PricesRead(on=self.noted_on, source=source),
            web=self.web,
            telephone=self.telephone,
            notes=self.notes,
            idea=self,
        )


class IdeaPlace(Place):
    """A place of which only an idea is on record: hours, location and entry may be assumed."""

    idea: Idea
    """What is known of it."""

    @property
    def known_where(self) -> Where | None:
        """Where it is; None while the home stands in for it."""
        return self.idea.where

    @property
    def way_is_a_guess(self) -> bool:
        """Whether the way there is guessed rather than worked out from where it lies."""
        return self.idea.where is None or self.idea.drive_minutes is not None


def place_id(name: str) -> str:
    """An id for a place of that name, such as 'muller-s-farm' for 'Müller's Farm'."""
    letters = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    words = re.sub(r"[^a-z0-9]+", "-", letters).strip("-")[:LONGEST_ID].strip("-")
    return words or ("place" if name.strip() else "")


def free_id(name: str, taken: Container[str]) -> str:
    """An id for a place of that name which no other has yet.

    Args:
        name: what it is called.
        taken: the ids that are not free.
    """
    wanted = free = place_id(name)
    number = 2
    while free in taken:
        free = f"{wanted[: LONGEST_ID - len(str(number)) - 1].rstrip('-')}-{number}"
        number += 1
    return free
