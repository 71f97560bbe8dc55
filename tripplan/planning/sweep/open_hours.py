"""The hours of one place over a row of days, asked for once for days with the same times by the clock."""

from tripplan.language.sentences import fact
from tripplan.planning.opening.hours import DayHours, Openness
from tripplan.planning.sweep.answer_cache import AnswerCache
from tripplan.planning.sweep.place_row import PlaceRow

NOT_ASKED_FOR = DayHours(Openness.UNKNOWN, (), (), (), fact("hours-not-asked"))
"""Stands for the hours of a day where nothing hangs on them."""


class OpenHours:
    """When one place can be visited on the days of a row."""

    def __init__(self, at: PlaceRow, known: AnswerCache) -> None:
        self._at, self._known = at, known
        place, opening = at.place, at.place.opening
        self._times_of_day = known.number(
            (
                opening.entry_times,
                opening.last_entry_minutes_before_close,
                place.visit.quiet_hours,
                place.visit.shows,
                place.where.zone,
                place.id if any(rule.past_midnight for rule in at.inside) else None,
            )
        )

    def times(self, n: int) -> tuple[int, ...]:
        """Numbers for all that the hours of a day rest on."""
        at, known = self._at, self._known
        return (
            self._times_of_day,
            known.number(at.hours.spans[at.hours.kind[n]]),
            int(at.ahead[n]),
            *(known.number(rule.spans[rule.kind[n]]) for rule in at.inside),
        )

    def on(self, n: int) -> DayHours:
        """The hours of a day."""
        day, facts, known = self._at.row.days[n], self._at.facts, self._known
        key = (int(self._at.changes[n]), *self.times(n))
        if key not in known.hours:
            known.hours[key] = (day, facts.hours_on(day))
        known_on, hours = known.hours[key]
        return hours if known_on == day else hours.on_equal_day(day - known_on)
