"""The parent's own questions for the children, by place."""

from typing import Annotated

from pydantic import Field

from tripplan.documents.model import Written
from tripplan.documents.places.place import PlaceId

ON_THE_SHEET = 3
"""How many questions a day sheet has [-]."""


Question = Annotated[str, Field(min_length=1, max_length=300)]


class OwnQuestions(Written):
    """The parent's own questions for one place."""

    place: PlaceId
    """The id of the place card."""
    questions: Annotated[tuple[Question, ...], Field(max_length=ON_THE_SHEET)] = ()
    """They come before those of the card."""
