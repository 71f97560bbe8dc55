"""An annual pass the family already owns."""

from datetime import date
from typing import Annotated

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
