"""How much driving children bear: at a stretch, and in a day."""

from collections.abc import Sequence

from tripplan.values.ages import ADULT, MONTHS

_BEARS = ((0, 60), (3 * MONTHS, 90), (7 * MONTHS, 120))
"""From an age on [completed months], so long [min]. Common practice, no source."""
_BEARS_IN_A_DAY = (
    (0, 180),
    (MONTHS, 240),
    (3 * MONTHS, 300),
    (6 * MONTHS, 360),
    (13 * MONTHS, 480),
    (ADULT.first, 540),
)
"""With a youngest from an age on [completed months], so much driving in a day [min]. Common practice, no
source; that of grown-ups is what lorry drivers in the European Union may drive on most days: Regulation (EC)
No 561/2006, article 6 (from memory)."""

PATIENCE_CHANGES_MONTHS = tuple(sorted({*(first for first, _ in (*_BEARS, *_BEARS_IN_A_DAY)), ADULT.first}))
"""The ages at which it changes [completed months]."""


def usual_patience(months: int) -> int | None:
    """How long somebody of an age bears driving at a stretch.

    Args:
        months: age [completed months].

    Returns:
        The time [min]; None for grown-ups, whom the rests of the driver serve.

    Source: common practice, no source; the parent's own figure wins.
    """
    if months in ADULT:
        return None
    return next(minutes for first, minutes in reversed(_BEARS) if months >= first)


def usual_driving_in_a_day(ages_months: Sequence[int]) -> int:
    """The most driving in a day, there and back together, by the age of the youngest [min].

    Args:
        ages_months: everybody's age on the day [completed months]; at least one.

    Source: see `_BEARS_IN_A_DAY`; the parent's own figure wins.
    """
    youngest = min(ages_months)
    return next(minutes for first, minutes in reversed(_BEARS_IN_A_DAY) if youngest >= first)
