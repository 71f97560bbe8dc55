"""Whether another weekday for one of the outings changes which place is the cheapest."""

from collections.abc import Iterator
from datetime import date, timedelta

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.language.sentences import fact
from tripplan.planning.compare.flips.comparison import Comparison, first_of
from tripplan.planning.compare.flips.flip import Flip
from tripplan.planning.sweep.sweeping import sweep

DAYS_EITHER_SIDE = 6
"""How far off another day of the week is looked for [days]; the seventh is the same weekday again."""


def other_weekdays(comparison: Comparison) -> Iterator[Flip]:
    """For each outing the other weekday, by its nearest date, with the least total that makes a change."""
    for index, outing in enumerate(comparison.outings):
        place, now = outing.place.name, fact("flips-day", day=outing.day)
        what = fact("flips-weekday", place=place)
        changing = {
            day: total
            for day, total in _on_other_weekdays(comparison, index).items()
            if first_of({**comparison.totals(), index: total}) != 0
        }
        if not changing:
            under = fact("flips-any-weekday", place=place, day=outing.day)
            yield comparison.stays(what, now, under)
            continue
        day = min(changing, key=changing.__getitem__)
        at, under = fact("flips-day", day=day), fact("flips-go-on", place=place, day=day)
        answers = comparison.with_outing(index, comparison.replanned(index, day=day))
        yield comparison.flip(what, now, at, under, answers)


def _on_other_weekdays(comparison: Comparison, index: int) -> dict[date, int]:
    """What one outing costs on each other weekday, by the nearest date on which it can be done, in order."""
    outing, today = comparison.outings[index], comparison.today
    around = timedelta(days=DAYS_EITHER_SIDE)
    span = DateSpan(first=max(outing.day - around, today), last=outing.day + around)
    table = sweep(comparison.family, comparison.party, [outing.place], span, today=today)
    found: dict[date, int] = {}
    for distance in range(1, DAYS_EITHER_SIDE + 1):
        for day in _dates_at(outing.day, distance, today):
            total = comparison.measure.in_table(table, 0, (day - span.first).days)
            if total is not None and day.weekday() not in {other.weekday() for other in found}:
                found[day] = total
    return found


def _dates_at(day: date, distance: int, today: date) -> Iterator[date]:
    """The dates so many days after and before a day, as far as they are not over."""
    later, earlier = day + timedelta(days=distance), day - timedelta(days=distance)
    return (one for one in (later, earlier) if one >= today)


def years_around(day: date, today: date) -> set[int]:
    """The years of an outing's day and of those near it."""
    return {day.year, *(one.year for one in _dates_at(day, DAYS_EITHER_SIDE, today))}
