"""Shows at fixed times: which a visit sees, and how likely one is missed.

* A visit sees the first performance of a show that begins once the party is in and is over when it leaves.
* Nobody sees two shows at once: the show that stands first on the card goes first.
* Lunch gives way to a show, see `lunch`.
* Who comes too late for a performance takes a later one if the visit leaves time for it, so a show is missed
  by those who come too late for the last such performance.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tripplan.planning.day.times.choices import Choices
from tripplan.planning.day.times.limits import NEVER, OpeningMinutes
from tripplan.planning.day.times.minutes import DayMinutes, Minutes
from tripplan.planning.day.weighing.lateness import THOUSANDTHS, Lateness
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


def seen_shows(
    shows: Sequence[ShowTimes], choices: Choices, minutes: DayMinutes, late: Lateness
) -> tuple[ShowAttendance, ...]:
    """What is seen of the shows that are worth being there for, one entry each.

    Args:
        shows: those of the day.
        choices: departures and leaving times of one day.
        minutes: how the day is counted.
        late: how late the party may arrive.
    """
    seen: list[ShowAttendance] = []
    for show in shows:
        if not show.worth_it:
            continue
        attended = np.full(choices.visit.shape, NEVER)
        for start in sorted(minutes.rounded_down(moment) for moment in show.starts):
            end = start + show.minutes
            fits = (choices.enter <= start) & (end <= choices.leave) & (attended == NEVER)
            for other in seen:
                fits &= (end <= other.start) | (start >= other.start + other.show.minutes)
            attended = np.where(fits, start, attended)
        seen.append(ShowAttendance(show, attended, _missed(show, attended, choices, minutes, late)))
    return tuple(seen)


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
