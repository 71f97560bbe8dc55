"""What one input must become for the first place to change."""

from collections.abc import Sequence
from dataclasses import dataclass

from tripplan.documents.places.place import PlaceId
from tripplan.language.sentences import Fact, fact
from tripplan.planning.compare.flips.measure import Measure
from tripplan.values.money import Money


@dataclass(frozen=True)
class Flip:
    """One input, and what it must become for the first place to change.

    Attributes:
        measure: by what the first place is found.
        what: the input, such as the price of fuel.
        now: what it is at present.
        at: what it must become; None where nothing within reason changes the first place.
        price: the same as money, for an input that is a price; None for any other, or without a change.
        new_first: id of the place that is the first then; None without a change, or where none of the
            outings can be done any more.
        sentence: all of it.
    """

    measure: Measure
    what: Fact
    now: Fact
    at: Fact | None
    price: Money | None
    new_first: PlaceId | None
    sentence: Fact


def flips_in_short(flips: Sequence[Flip]) -> tuple[Fact, ...]:
    """What changes the first place, one by one, and in one all that does not.

    What changes it by both measures alike is told once, by the money.
    """
    changing = [flip for flip in flips if flip.at is not None]
    told = {(flip.what, flip.at, flip.new_first): flip for flip in reversed(changing)}
    said = [flip.sentence for flip in changing if told[flip.what, flip.at, flip.new_first] is flip]
    idle = dict.fromkeys(flip.what for flip in flips)
    for flip in changing:
        idle.pop(flip.what, None)
    if idle:
        said.append(fact("flips-idle", inputs=tuple(idle)))
    return tuple(said)
