"""The days of a row on which a rule of a place card, written as opening hours, applies at all."""

from datetime import UTC, date, datetime, timedelta
from functools import lru_cache

import numpy as np

from tripplan.documents.places.offers import Offer
from tripplan.planning.holidays.days_off import DaysOff, Flags
from tripplan.planning.holidays.schools import SchoolDays
from tripplan.values.opening_hours import open_spans

_OUT_OF_SCHOOL = 0.5
"""Share of the pupils on a break from which on SH applies [-], as for the opening hours."""


def days_of_offer(offer: Offer, off: DaysOff, schools: SchoolDays) -> Flags:
    """Days of a row on which an offer of the price board is good, at least for some hours.

    Args:
        offer: with the rule and the first and last date that it has.
        off: the days.
        schools: what SH stands for in the rule.
    """
    good = np.ones(len(off), dtype=bool) if offer.valid is None else days_of_rule(offer.valid, off, schools)
    dates = np.datetime64(off.first, "D") + np.arange(len(off))
    if offer.first_day is not None:
        good = good & (dates >= np.datetime64(offer.first_day, "D"))
    if offer.last_day is not None:
        good = good & (dates <= np.datetime64(offer.last_day, "D"))
    return good


def days_of_rule(text: str, off: DaysOff, schools: SchoolDays) -> Flags:
    """Days of a row on which a rule applies, at least for some hours.

    Args:
        text: opening_hours syntax.
        off: the days, with those that PH means.
        schools: the days when most pupils are on a break are SH.

    Returns:
        An array that is not to be written to.
    """
    public_holidays = days_out_of_school = frozenset[date]()
    if "PH" in text:
        public_holidays = _dates(off.first, off.kept)
    if "SH" in text:
        days_out_of_school = _dates(off.first, schools.on_break >= _OUT_OF_SCHOOL)
    return _days_of_rule(text, off.first, len(off), public_holidays, days_out_of_school)


def _dates(first: date, flags: Flags) -> frozenset[date]:
    return frozenset(first + timedelta(days=int(index)) for index in np.flatnonzero(flags))


@lru_cache(maxsize=2048)
def _days_of_rule(
    text: str,
    first: date,
    length: int,
    public_holidays: frozenset[date],
    days_out_of_school: frozenset[date],
) -> Flags:
    # Without clock changes, because only the dates are wanted.
    start = datetime(first.year, first.month, first.day, tzinfo=UTC)
    end = start + timedelta(days=length)
    days = np.zeros(length, dtype=bool)
    for opens, closes in open_spans(text, start, end, public_holidays, days_out_of_school):
        last = closes - timedelta(minutes=1)
        days[(opens - start).days : (last - start).days + 1] = True
    days.setflags(write=False)
    return days
