"""An annual pass the family already owns."""

from datetime import date

from tripplan.planning.model import Name, Written


class HeldPass(Written):
    """An annual pass the family already owns."""

    place: Name
    """The id of the place card whose pass it is."""
    offer: Name
    """The name of the pass on that card."""
    holders: tuple[Name, ...]
    """The members it is written out to."""
    valid_until: date
    """The last day it counts."""
