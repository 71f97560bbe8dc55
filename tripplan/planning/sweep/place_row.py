"""One place over a row of days: its hours, its holidays, its clock and the rush hours on the way to it."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray
from opening_hours import State

from tripplan.documents.places.place import Opening, Place
from tripplan.planning.opening.opening_days import RuleDays, Spans
from tripplan.planning.outing.place_facts import PlaceFacts
from tripplan.planning.sweep.dates import DateRow, Numbers
from tripplan.planning.sweep.table import Verdict
from tripplan.planning.travel.rush_hours import rush_hours_between
from tripplan.values.clocks import minute_of_day

_SATURDAY = 5


@dataclass(frozen=True, eq=False)
class PlaceRow:
    """One place over a row of days.

    Attributes:
        row: the days as the party lives them.
        facts: what all days at the place share; must cover the calendar years of the row.
    """

    row: DateRow
    facts: PlaceFacts

    @property
    def place(self) -> Place:
        """The card."""
        return self.facts.place

    @cached_property
    def holidays(self) -> NDArray[np.bool_]:
        """Which days are public holidays at the place."""
        return self.row.is_among(self.facts.public_holiday_dates)

    @cached_property
    def school_is_in(self) -> NDArray[np.bool_]:
        """On which days most pupils nearby have school; a guess or a typical year tells of unknown ones."""
        likely_out = self.row.is_among(self.facts.days_without_classes)
        return (self.row.weekday < _SATURDAY) & ~self.holidays & ~likely_out

    def rule(self, text: str, state: State = State.OPEN) -> RuleDays:
        """What a rule of the card says about each day."""
        row, facts = self.row, self.facts
        return facts.rule(text, state).part((row.first - facts.first).days, row.count)

    @cached_property
    def hours(self) -> RuleDays:
        """When the place is open."""
        row, facts = self.row, self.facts
        return facts.opening.part((row.first - facts.first).days, row.count)

    def closed(self) -> NDArray[np.int8]:
        """For each day what the place itself says against it, as numbers of `Verdict`."""
        hours, opening = self.hours, self.place.opening
        by_kind = [
            Verdict.CAN_GO if _lets_somebody_in(opening, spans) else Verdict.CLOSED for spans in hours.spans
        ]
        verdict = np.array(by_kind, dtype=np.int8)[hours.kind]
        if "unknown" in opening.hours or '"' in opening.hours:
            unknown = self.rule(opening.hours, State.UNKNOWN).kind > 0
            verdict[(hours.kind == 0) & unknown] = Verdict.HOURS_UNKNOWN
        return verdict

    @cached_property
    def inside(self) -> tuple[RuleDays, ...]:
        """Rules about times inside the place that a day plan may meet, beside its opening."""
        return tuple(self._reaching_no_further(rule) for rule in self._rules_inside())

    def _rules_inside(self) -> Iterator[RuleDays]:
        classes, visit = self.place.opening.school_groups, self.place.visit
        if classes is not None:
            rule = self.rule(classes)
            yield replace(rule, kind=np.where(self.school_is_in, rule.kind, 0))
        for text in (visit.quiet_hours, *(show.days for show in visit.shows)):
            if text is not None:
                yield self.rule(text)

    def _reaching_no_further(self, rule: RuleDays) -> RuleDays:
        """Where times run past midnight into a day whose kind does not tell, every day is its own kind."""
        if not rule.past_midnight:
            return rule
        count = self.row.count
        return RuleDays(np.arange(count), tuple(((n, -1),) for n in range(count)), past_midnight=True)

    @cached_property
    def rush(self) -> Numbers:
        """For each day which of the rush hours there are."""
        row = self.row
        rush = rush_hours_between(row.household.habits.rush_hours, row.household.home, self.place.where)
        return np.where(self.holidays, 0, row.on_weekdays(tuple(hours.days for hours in rush)))

    @property
    def past_midnight(self) -> bool:
        """Whether an outing may go on into the night after the day."""
        return self.hours.past_midnight or self.row.household.habits.home_after_midnight

    @cached_property
    def changes(self) -> Numbers:
        """A number of its own for each day on which a clock is changed, at home or at the place; else 0."""
        row, zone, past_midnight = self.row, self.place.where.zone, self.past_midnight
        at_home = row.clock_changes(row.household.home.zone, past_midnight=past_midnight)
        if zone == row.household.home.zone:
            return at_home
        return np.maximum(at_home, row.clock_changes(zone, past_midnight=past_midnight))

    @cached_property
    def ahead(self) -> Numbers:
        """How much further the clock at the place is than that at home, at each midnight [min]."""
        return self.row.offsets(self.place.where.zone) - self.row.offsets(self.row.household.home.zone)

    def clock(self, days: Numbers, minutes: Numbers) -> Numbers:
        """What the clock at the place shows at minutes of days on which no clock is changed [min]."""
        return minutes + self.ahead[days]


def _lets_somebody_in(opening: Opening, spans: Spans) -> bool:
    """Whether anybody may enter on a day with such hours."""
    entering = [
        (opens, last)
        for opens, closes in spans
        if (last := closes - opening.last_entry_minutes_before_close) >= opens
    ]
    clocks = [minute_of_day(entry) for entry in opening.entry_times]
    if not clocks:
        return bool(entering)
    return any(opens <= clock <= last for clock in clocks for opens, last in entering)
