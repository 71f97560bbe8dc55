"""What one input must become for the first place to change."""

from collections.abc import Sequence
from dataclasses import dataclass

from tripplan.documents.places.place import PlaceId
from tripplan.language.sentences import Fact, fact
from tripplan.values.money import Money


@dataclass(frozen=True)
class Flip:
    """One input, and what it must become for the first place to change.

    Attributes:
        what: the input, such as the price of fuel.
        now: what it is at present.
        at: what it must become; None where nothing within reason changes the first place.
        price: the same as money, for an input that is a price; None for any other, or without a change.
        new_first: id of the place that is the cheapest then; None without a change, or where none of the
            outings can be done any more.
        sentence: all of it.
    """

    what: Fact
    now: Fact
    at: Fact | None
    price: Money | None
    new_first: PlaceId | None
    sentence: Fact


def flips_in_short(flips: Sequence[Flip]) -> tuple[Fact, ...]:
    """What changes the first place, one by one, and in one all that does not."""
    said = [flip.sentence for flip in flips if flip.at is not None]
    idle = tuple(flip.what for flip in flips if flip.at is None)
    if idle:
        said.append(fact("flips-idle", inputs=idle))
    return tuple(said)
