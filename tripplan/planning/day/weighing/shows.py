"""Shows at fixed times: which a visit sees, where lunch goes then, and how likely one is missed.

* A visit sees the first performance of a show that begins once the party is in and is over when it leaves.
* Nobody sees two shows at once: the show that stands first on the card goes first.
* Lunch gives way to a show: it follows it or comes before it, whichever is nearer to lunch time. A
  performance that leaves no room for lunch is not seen.
* Who comes too late for a performance takes a later one if the visit leaves time for it, so a show is missed
  by those who come too late for the last such performance.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from tripplan.planning.day.times.choices import Choices, Flags
from tripplan.planning.day.times.limits import NEVER, OpeningMinutes
from tripplan.planning.day.times.minutes import DayMinutes, Minutes
from tripplan.planning.day.weighing.lateness import THOUSANDTHS, Lateness
from tripplan.planning.day.weighing.naps import Lunch
from tripplan.planning.opening.hours import ShowTimes


@dataclass(frozen=True, eq=False)
class ShowAttendance:
    """One show, for every choice.

    Attributes:
        show: which.
        start: when the performance begins that is seen; `NEVER` where none is [min].
        missed: the chance that none is seen, in thousandths; all of them where none is planned.
    """

    show: ShowTimes
    start: Minutes
    missed: Minutes


def with_shows(
    shows: Sequence[ShowTimes],
    choices: Choices,
    lunch: Lunch,
    minutes: DayMinutes,
    late: Lateness,
) -> tuple[Lunch, tuple[ShowAttendance, ...]]:
    """What is seen of the shows that are worth being there for, and when lunch is then.

    Args:
        shows: those of the day.
        choices: departures and leaving times of one day.
        lunch: when it would be without shows.
        minutes: how the day is counted.
        late: how late the party may arrive.

    Returns:
        Lunch, and one entry a show that is worth it.
    """
    begins, length, eats, usual = lunch.begins, lunch.minutes, lunch.inside, lunch.begins
    seen: list[ShowAttendance] = []

    def free(start: Minutes, lasts: Minutes | int) -> Flags:
        """Where no show that is seen already meets a span."""
        open_ = np.ones(choices.visit.shape, dtype=np.bool_)
        for other in seen:
            open_ &= (start + lasts <= other.start) | (start >= other.start + other.show.minutes)
        return open_

    for show in shows:
        if not show.worth_it:
            continue
        attended = np.full(choices.visit.shape, NEVER)
        for start in sorted(minutes.rounded_down(moment) for moment in show.starts):
            end = start + show.minutes
            fits = (choices.enter <= start) & (end <= choices.leave) & (attended == NEVER)
            if not fits.any():
                continue
            fits &= free(np.array(start), show.minutes)
            clash = eats & (begins < end) & (begins + length > start)
            after, before = np.array(end), start - length
            may_after = (after + length <= choices.leave) & free(after, length)
            may_before = (before >= choices.enter) & free(before, length)
            nearer_after = np.abs(after - usual) <= np.abs(before - usual)
            moved = np.where(may_after & (nearer_after | ~may_before), after, before)
            sees = fits & (~clash | may_after | may_before)
            begins = np.where(sees & clash, moved, begins)
            attended = np.where(sees, start, attended)
        seen.append(ShowAttendance(show, attended, _missed(show, attended, choices, minutes, late)))
    return replace(lunch, begins=begins), tuple(seen)


def _missed(
    show: ShowTimes, attended: Minutes, choices: Choices, minutes: DayMinutes, late: Lateness
) -> Minutes:
    missed = np.full(choices.visit.shape, THOUSANDTHS)
    for opened in choices.limits[0].opened:
        for start in sorted(minutes.rounded_down(moment) for moment in show.starts):
            due = _due(opened, start)
            if due is None:
                continue
            chance = late.chance_after(choices.depart, np.array(due))
            in_time = (attended < NEVER) & (start + show.minutes <= choices.leave)
            missed = np.where(in_time & (choices.leave <= opened.closes), chance, missed)
    return missed


def _due(opened: OpeningMinutes, start: int) -> int | None:
    """The latest arrival that is let in before a performance begins; None where it is in another span."""
    if not opened.opens <= start < opened.closes:
        return None
    if opened.entries is None:
        return min(start, opened.last_entry)
    return max((entry for entry in opened.entries if entry <= start), default=None)
