"""What one input must become for the first place to change, in words."""

from collections.abc import Sequence
from dataclasses import dataclass

from tripplan.documents.places.place import PlaceId
from tripplan.language import wording
from tripplan.values.money import Money


@dataclass(frozen=True)
class Flip:
    """One input, and what it must become for the first place to change.

    Attributes:
        what: the input's short name, such as 'fuel price'.
        now: what it is at present, in words.
        at: what it must become, in words; None where nothing within reason changes the first place.
        price: the same as money, for an input that is a price; None for any other, or without a change.
        new_first: id of the place that is the cheapest then; None without a change, or where none of the
            outings can be done any more.
        sentence: all of it in words.
    """

    what: str
    now: str
    at: str | None
    price: Money | None
    new_first: PlaceId | None
    sentence: str


def flips_in_short(flips: Sequence[Flip]) -> tuple[str, ...]:
    """What changes the first place, a sentence each, and one sentence on all that does not."""
    said = [flip.sentence for flip in flips if flip.at is not None]
    idle = [flip.what for flip in flips if flip.at is None]
    if idle:
        said.append(f"None of these changes the first place, within reason: {wording.listed(idle)}.")
    return tuple(said)
