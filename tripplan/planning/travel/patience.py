"""How long children bear driving at a stretch."""

from tripplan.values.ages import ADULT, MONTHS

_BEARS = ((0, 60), (3 * MONTHS, 90), (7 * MONTHS, 120))
"""From an age on [completed months], so long [min]. Common practice, no source."""

PATIENCE_CHANGES_MONTHS = (*(first for first, _ in _BEARS), ADULT.first)
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
