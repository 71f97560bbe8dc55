"""An annual pass the family already owns."""

from datetime import date
from typing import Annotated

from tripplan.documents.asked import Asked
from tripplan.documents.model import Name, Written


class HeldPass(Written):
    """An annual pass the family already owns."""

    place: Annotated[Name, Asked("Place")]
    """The id of the place card whose pass it is."""
    offer: Annotated[Name, Asked("Name of the pass")]
    """The name of the pass on that card."""
    holders: Annotated[tuple[Name, ...], Asked("Who it is written out to")]
    """The members it is written out to."""
    valid_until: Annotated[date, Asked("Until which day it counts")]
    """The last day it counts."""
