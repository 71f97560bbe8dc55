"""The search: every departure with every leaving time, weighed in the parent's own money."""

from decimal import Decimal

import numpy as np

from tripplan.errors import PlanError
from tripplan.planning.day.collisions import collisions
from tripplan.planning.day.times.choices import Choices, Flags
from tripplan.planning.day.times.limits import Limits
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.shapes import DayQuestion, DaySearch, LeaveWindow
from tripplan.planning.day.weighing.latest_start import BestSpots, about_the_same
from tripplan.planning.day.weighing.nuisances import UNITS
from tripplan.planning.day.weighing.weighing import LONGEST_AWAY, WeighedChoices, plan_at
from tripplan.planning.opening.hours import Openness

SMALL_LOSS = Decimal("1.00")
"""Departures that weigh at most this much more than the best, money included, count as equally good
[household currency]."""
SMALL_LOSS_SHARE = Decimal("0.02")
"""Or at most this share of what the nuisances of the best weigh, where that is the larger amount [-]."""
MOST_WINDOWS = 5
"""More leave windows than this only confuse; the best ones stay [-]."""


def plan_day(question: DayQuestion) -> DaySearch:
    """Search every departure and leaving time for the day with the least generalized cost.

    Hard limits (opening, last entry, entry times, shortest visit, earliest departure, being home, busy
    times) stay hard, and so do hours at which nobody lets the party in. Generalized cost is money, as far
    as it hangs on the hour, and nuisances: lost nap, time in the car or waiting to be let in (which weighs
    as much), driving beyond the children's patience, time short of a comfortable stay or beyond it, time
    among school classes, a quiet hour not used, and what lateness is likely to cost: the chance to miss the
    entry or a show, and how long after the set time and after the first bedtime the family is to be
    expected home, with its usual delays and the range of the drives. Each has the parent's own price. Among
    plans that weigh the same to within a quarter of an hour in the car the latest start is best, see
    `weighing.latest_start`; then the one that weighs the least, then the one that is away the shortest. The
    party is let in as soon as the place allows in the span of opening in which it leaves. The nap model
    stands in `weighing.naps`, lunch in `weighing.lunch`, shows in `weighing.shows`.

    Args:
        question: the day; a clock change inside it is allowed for.

    Returns:
        The best plan and the leave windows, or which limits collide.

    Raises:
        PlanError: the place is not open that day.
    """
    if question.hours.openness is not Openness.OPEN or not question.hours.spans:
        raise PlanError(f"the place cannot be visited that day: {question.hours.reason}")
    if question.grid_minutes < 1:
        raise PlanError("the grid is at least one minute wide")
    minutes = DayMinutes(question.day, question.home_zone)
    limits = Limits.of(question, minutes)
    choices = Choices.of(limits)
    if not choices.possible.any():
        return DaySearch(None, (), collisions(question, limits, minutes))

    weighed = WeighedChoices.of(question, choices, minutes)
    rank, depart = weighed.rank, choices.depart[:, :, 0]
    apart = about_the_same(question.worth)

    def spots_between(first: int, last: int) -> BestSpots:
        rows = slice(first, last + 1)
        return BestSpots.of(rank[:, rows], depart[:, rows], weighed.preference)

    def best_between(first: int, last: int) -> int:
        return first + int(spots_between(first, last).rows[0, 0])

    spots = spots_between(0, depart.size - 1)
    (best_row, _), (row, column) = next(spots.of_days)
    best_rank = spots.least[0]
    weighs = best_rank // LONGEST_AWAY
    least = int(weighs[row])
    nuisances = least - weighed.coin * weighed.spent((0, row, column))
    loss = max(SMALL_LOSS * UNITS, SMALL_LOSS_SHARE * nuisances, apart)
    good = choices.possible[0].any(axis=1) & (weighs <= least + int(loss))
    spans = [
        (best_row if first <= best_row <= last else best_between(first, last), first, last)
        for first, last in _runs(good)
    ]
    spans.sort(key=lambda span: (span[0] != best_row, int(best_rank[span[0]])))
    chosen = sorted(spans[:MOST_WINDOWS])
    windows = tuple(
        LeaveWindow(
            first=minutes.moment(int(choices.depart[0, first, 0]), question.home_zone),
            last=minutes.moment(int(choices.depart[0, last, 0]), question.home_zone),
            best=plan_at(weighed, row),
        )
        for row, first, last in chosen
    )
    best = next(window.best for window, (row, _, _) in zip(windows, chosen, strict=True) if row == best_row)
    return DaySearch(best, windows, ())


def _runs(good: Flags) -> list[tuple[int, int]]:
    """First and last index of every run of true values."""
    edges = np.flatnonzero(np.diff(np.concatenate(([0], good.astype(np.int8), [0]))))
    return [(int(first), int(after) - 1) for first, after in zip(edges[::2], edges[1::2], strict=True)]
