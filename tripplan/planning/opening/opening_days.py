"""What a rule in opening_hours syntax says about each day of a row, so that equal days can be told."""

from collections.abc import Iterator, Set
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray
from opening_hours import State

from tripplan.values.opening_hours import clock_spans, names_public_holidays, names_school_holidays

DAY_MINUTES = 24 * 60
_NOON = DAY_MINUTES // 2
_NO_DATES: frozenset[date] = frozenset()

Spans = tuple[tuple[int, int], ...]
"""Times of one day by the clock, as minutes since its midnight; what runs past it has more than 24 hours."""


@dataclass(frozen=True, eq=False)
class RuleDays:
    """One rule over a row of days.

    Attributes:
        kind: for each day, which entry of `spans` it has [-].
        spans: the different days there are; the first is one without any time.
        past_midnight: whether a time of any day runs past midnight.
    """

    kind: NDArray[np.int64]
    spans: tuple[Spans, ...]
    past_midnight: bool

    def shared_with(self, other: "RuleDays") -> "RuleDays":
        """The times of the same days at which both rules hold."""
        numbers: dict[Spans, int] = {(): 0}
        others = len(other.spans)
        pairs = self.kind * others + other.kind
        which = np.zeros(len(self.spans) * others, dtype=np.int64)
        for pair in np.flatnonzero(np.bincount(pairs)).tolist():
            both = _shared(self.spans[pair // others], other.spans[pair % others])
            which[pair] = numbers.setdefault(both, len(numbers))
        past_midnight = any(closes > DAY_MINUTES for spans in numbers for _, closes in spans)
        return RuleDays(which[pairs], tuple(numbers), past_midnight)

    def part(self, begin: int, count: int) -> "RuleDays":
        """So many days in a row of these, from one of them on."""
        return RuleDays(self.kind[begin : begin + count], self.spans, self.past_midnight)


def _shared(one: Spans, other: Spans) -> Spans:
    spans = ((max(a, c), min(b, d)) for a, b in one for c, d in other)
    return tuple(sorted((opens, closes) for opens, closes in spans if opens < closes))


def rule_days(
    text: str,
    first: date,
    count: int,
    public_holidays: Set[date],
    days_out_of_school: Set[date],
    state: State = State.OPEN,
) -> RuleDays:
    """The times that belong to each day, by the clock on the wall.

    What runs past midnight belongs to the evening it began on, unless it runs past noon too, as in
    `tripplan.planning.opening.hours`.

    Args:
        text: opening_hours syntax.
        first: the first day.
        count: how many days in a row.
        public_holidays: what PH stands for.
        days_out_of_school: what SH stands for.
        state: which times are wanted.
    """
    public = frozenset(public_holidays) if names_public_holidays(text) else _NO_DATES
    of_school = frozenset(days_out_of_school) if names_school_holidays(text) else _NO_DATES
    return _rule_days(text, first, count, public, of_school, state)


@lru_cache(maxsize=4096)
def _rule_days(
    text: str,
    first: date,
    count: int,
    public_holidays: frozenset[date],
    days_out_of_school: frozenset[date],
    state: State,
) -> RuleDays:
    midnight = datetime.combine(first, time(0))
    start, end = midnight - timedelta(days=1), midnight + timedelta(days=count + 1)
    by_day: dict[int, Spans] = {}
    for opens, closes in clock_spans(text, start, end, public_holidays, days_out_of_school, state):
        until_open, until_closed = opens - midnight, closes - midnight
        day, begins = until_open.days, until_open.seconds // 60
        ends = (until_closed.days - day) * DAY_MINUTES + until_closed.seconds // 60
        if ends <= DAY_MINUTES:
            by_day[day] = (*by_day.get(day, ()), (begins, ends))
            continue
        for after, own in _own_days(begins, ends):
            by_day[day + after] = (*by_day.get(day + after, ()), own)
    numbers: dict[Spans, int] = {(): 0}
    kind = np.zeros(count, dtype=np.int64)
    for day, spans in by_day.items():
        if 0 <= day < count:
            kind[day] = numbers.setdefault(spans, len(numbers))
    kind.setflags(write=False)
    past_midnight = any(closes > DAY_MINUTES for spans in numbers for _, closes in spans)
    return RuleDays(kind, tuple(numbers), past_midnight)


def _own_days(opens: int, closes: int) -> Iterator[tuple[int, tuple[int, int]]]:
    """The days that a time belongs to, counted from the one that its minutes count from, and when on each."""
    for day in range(opens // DAY_MINUTES, -(-closes // DAY_MINUTES)):
        begins, ends = opens - day * DAY_MINUTES, closes - day * DAY_MINUTES
        if begins >= 0 or ends > _NOON:
            yield day, (max(begins, 0), ends if ends <= DAY_MINUTES + _NOON else DAY_MINUTES)
