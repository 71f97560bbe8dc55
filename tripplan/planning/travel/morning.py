"""How long a party takes from waking to 'shoes on'."""

from collections.abc import Sequence

from tripplan.values.ages import MONTHS

_READY_MINUTES = 30
"""Waking, washing, breakfast, for whoever dresses alone [min]. Common practice, no source."""
_MORE_FOR_EACH = ((3 * MONTHS, 15), (6 * MONTHS, 10))
"""For each child under an age [completed months], so much more [min]. Common practice, no source."""
READY_AT_MOST_MINUTES = 120
"""However many they are [min]. Common practice, no source."""

READINESS_CHANGES_MONTHS = tuple(under for under, _ in _MORE_FOR_EACH)
"""The ages at which it changes [completed months]."""


def usual_ready_minutes(ages_months: Sequence[int]) -> int:
    """From waking to 'shoes on': half an hour, and more for each child under six and under three [min].

    Args:
        ages_months: everybody's age on the day [completed months].

    Source: common practice, no source; the parent's own figure wins.
    """
    more = sum(
        next((minutes for under, minutes in _MORE_FOR_EACH if months < under), 0) for months in ages_months
    )
    return min(_READY_MINUTES + more, READY_AT_MOST_MINUTES)
