"""An annual pass the family already owns."""

from datetime import date
from typing import Annotated

from pydantic import Field

from tripplan.documents.field_spec import FieldSpec
from tripplan.documents.model import Name, Written


class HeldPass(Written):
    """An annual pass the family already owns."""

    place: Annotated[Name, FieldSpec("Place")]
    """The id of the place card whose pass it is."""
    offer: Annotated[Name, FieldSpec("Name of the pass")]
    """The name of the pass on that card."""
    holders: Annotated[tuple[Name, ...], FieldSpec("Who it is written out to")]
    """The members it is written out to."""
    valid_until: Annotated[date, FieldSpec("Until which day it counts")]
    """The last day it counts."""
    guests_so_far: Annotated[
        int, Field(ge=0, le=1000), FieldSpec("Guests it has let in so far", help="Where they are limited.")
    ] = 0
    """How many guests it has let in so far, where the card limits them for all the time it counts."""
