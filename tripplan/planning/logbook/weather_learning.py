"""What being outdoors teaches: how much cold, heat and wet weigh for this family, gently.

Only what surprises moves an amount: too cold on a day that counts as mild makes an hour in the cold dearer,
fine on a day that counts as cold makes it cheaper, and what was to be expected pulls it back.
The weather is that of the plan, forecast or usual, for nobody measured it.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from tripplan.documents.family.household import Household
from tripplan.documents.logbook.as_planned import AsPlanned
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.outdoors import Outdoors
from tripplan.planning.climate.outdoors import how_bad
from tripplan.planning.logbook.bayes import Belief
from tripplan.values.money import Money

_SPREAD, _WORTH = 0.4, 6
"""One outing's word about the family's own mean [ln], and how many outings the usual amount weighs as
much as. The day's weather may have been another than the plan's, so it moves slowly. No source."""
_UNPLEASANT = 0.5
"""What weighs half as much as very cold or very hot is unpleasant, by the classes of `feels_like` [-]."""
_MOST = math.log(2)
"""One outing says at most that an amount is half or twice as large [ln]. No source, our choice."""
_WET, _LIKELY_WET = math.log(1.25), 0.5
"""What one wet outing says [ln], and from which chance on a day that was fine says the opposite [0-1]. No
source, our choice."""


@dataclass(frozen=True)
class LearnedWorth:
    """One amount of the household, as the outings say.

    Attributes:
        field: of `Worth`.
        label: what it is, in words.
        usual: the household's.
        own: what the outings make of it.
        ends: what it may be in truth; its middle 90 %.
        outings: how many outings tell.
    """

    field: str
    label: str
    usual: Decimal
    own: Decimal
    ends: tuple[float, float]
    outings: int


_LABELS: Mapping[str, str] = {
    "hour_in_the_cold": "an hour outdoors in the cold",
    "hour_in_the_heat": "an hour outdoors in the heat",
    "hour_in_the_wet": "an hour outdoors on a wet day",
}


def learned_worths(household: Household, entries: Sequence[LogbookEntry]) -> Iterator[LearnedWorth]:
    """What outings teach of what weather weighs; amounts of zero stay, and those that no outing tells of."""
    told = [said for entry in entries if (said := _told(entry)) is not None]
    for field, label in _LABELS.items():
        usual: Decimal = getattr(household.worth, field)
        seen = [one[field] for one in told if field in one]
        if not seen or not usual:
            continue
        belief = Belief(0.0, _SPREAD, _WORTH, _WORTH).after(seen)
        own = Money(usual * Decimal(str(math.exp(belief.mean))), household.currency).rounded().amount
        low, high = (math.exp(belief.mean_at(chance)) * float(usual) for chance in (0.05, 0.95))
        yield LearnedWorth(field, label, usual, own, (low, high), len(seen))


def _told(entry: LogbookEntry) -> dict[str, float] | None:
    """What one outing says of each amount, as a logarithm of how many times the usual one it is."""
    said, plan = entry.outdoors, entry.as_planned
    if said is None or plan is None or plan.felt_low is None or plan.felt_high is None:
        return None
    cold, heat = how_bad(plan.felt_low, plan.felt_high)
    found = {
        "hour_in_the_cold": _surprise(cold, said, Outdoors.TOO_COLD),
        "hour_in_the_heat": _surprise(heat, said, Outdoors.TOO_HOT),
        "hour_in_the_wet": _wet(plan, said),
    }
    return {field: moved for field, moved in found.items() if moved is not None}


def _surprise(bad: float, said: Outdoors, too_much: Outdoors) -> float | None:
    """What one word says where the plan's weather counts as so bad [-]; None where it says nothing."""
    if said is too_much:
        return min(_MOST, max(0.0, math.log(_UNPLEASANT / max(bad, _UNPLEASANT / 4))))
    if said is Outdoors.FINE and bad > _UNPLEASANT:
        return -min(_MOST, math.log(bad / _UNPLEASANT))
    return None


def _wet(plan: AsPlanned, said: Outdoors) -> float | None:
    if said is Outdoors.TOO_WET:
        return _WET
    likely = plan.wet_chance is not None and plan.wet_chance >= _LIKELY_WET
    return -_WET if said is Outdoors.FINE and likely else None
