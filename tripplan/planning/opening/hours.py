"""Is the place open that day, and when may one enter?"""

from collections.abc import Iterator, Set
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

import numpy as np

from tripplan.documents.places.place import Opening, Place, Visit
from tripplan.language.sentences import Fact, fact
from tripplan.planning.opening.opening_days import rule_days
from tripplan.values.opening_hours import holds_at, open_spans, unknown_spans
from tripplan.values.weekday import Weekday

_NOON = time(12)
_ONE_DAY = timedelta(days=1)
_ONE_WEEK = timedelta(days=7)
_SATURDAY = 5


class Openness(StrEnum):
    """Whether a place can be visited on a day."""

    OPEN = "open"
    CLOSED = "closed"
    UNKNOWN = "unknown"


@dataclass(frozen=True)
class OpenSpan:
    """A time during which visitors may be inside.

    Attributes:
        opens, closes: in the place's time zone.
        last_entry: the latest moment to be let in; between the two.
    """

    opens: datetime
    closes: datetime
    last_entry: datetime


@dataclass(frozen=True)
class ShowTimes:
    """A show on one day.

    Attributes:
        name: what it is called.
        starts: when its performances begin, in the place's time zone, in order; at least one.
        minutes: how long each lasts [min].
        worth_it: whether the parent wants to be there for it.
    """

    name: str
    starts: tuple[datetime, ...]
    minutes: int
    worth_it: bool


SEASON_DAYS = 14
"""A place that is closed for so many days in a row has a season [days]."""


@dataclass(frozen=True)
class DayHours:
    """When a place can be visited on one day.

    Attributes:
        openness: open, closed, or not known.
        spans: in order, none overlapping; empty unless open.
        entry_times: the only moments people are let in; empty where any moment will do.
        group_spans: when school classes usually fill the place that day; empty out of term.
        reason: how this is known; its words are a part of a sentence, such as 'closed on Mondays'.
        quiet_spans: when the place keeps a quiet hour that day.
        shows: what is shown that day at fixed times.
    """

    openness: Openness
    spans: tuple[OpenSpan, ...]
    entry_times: tuple[datetime, ...]
    group_spans: tuple[tuple[datetime, datetime], ...]
    reason: Fact
    quiet_spans: tuple[tuple[datetime, datetime], ...] = ()
    shows: tuple[ShowTimes, ...] = ()

    def shared_with(self, other: "DayHours", doubt: Fact) -> "DayHours":
        """The times of the same day at which this one and another say that the place can be visited.

        Args:
            other: closed, or open at other times.
            doubt: why nobody knows which of the two it is; added to the reason where they differ.
        """
        if (other.openness, other.spans, other.entry_times) == (self.openness, self.spans, self.entry_times):
            return self
        spans = tuple(
            OpenSpan(opens, closes, min(one.last_entry, two.last_entry))
            for one in self.spans
            for two in other.spans
            if (opens := max(one.opens, two.opens)) < (closes := min(one.closes, two.closes))
            and opens <= min(one.last_entry, two.last_entry)
        )
        entries = tuple(
            moment
            for moment in self.entry_times
            if any(span.opens <= moment <= span.last_entry for span in spans)
        )
        if not spans or (self.entry_times and not entries):
            return DayHours(Openness.CLOSED, (), (), (), fact("hours-closed-in-doubt", doubt=doubt))
        reason = fact("hours-sure-ones", reason=self.reason, doubt=doubt)
        return replace(self, spans=spans, entry_times=entries, reason=reason)

    def on_equal_day(self, later: timedelta) -> "DayHours":
        """The hours of a day that is so much later and has the same times by the clock.

        Right only where no clock is changed on either day.
        """
        return DayHours(
            self.openness,
            tuple(
                OpenSpan(span.opens + later, span.closes + later, span.last_entry + later)
                for span in self.spans
            ),
            tuple(moment + later for moment in self.entry_times),
            tuple((start + later, end + later) for start, end in self.group_spans),
            self.reason,
            tuple((start + later, end + later) for start, end in self.quiet_spans),
            tuple(replace(show, starts=tuple(start + later for start in show.starts)) for show in self.shows),
        )


def _on_clock(day: date, clock: time, zone: ZoneInfo) -> datetime:
    """A clock time on a day; one that is skipped in spring becomes what the clock then shows."""
    return datetime.combine(day, clock, zone).astimezone(UTC).astimezone(zone)


def _days_own(
    spans: tuple[tuple[datetime, datetime], ...], day: date, zone: ZoneInfo
) -> tuple[tuple[datetime, datetime], ...]:
    """The spans that belong to a day, from spans that reach into the days around it.

    What runs past midnight belongs to the evening it began on, unless it runs past noon too: then the
    place is open day and night, and each day has its own part.
    """
    midnight, next_midnight = _on_clock(day, time(0), zone), _on_clock(day + _ONE_DAY, time(0), zone)
    noon, next_noon = _on_clock(day, _NOON, zone), _on_clock(day + _ONE_DAY, _NOON, zone)
    own = (
        (max(opens, midnight), closes if closes <= next_noon else next_midnight)
        for opens, closes in spans
        if opens < next_midnight and closes > midnight and (opens >= midnight or closes > noon)
    )
    return tuple((opens, closes) for opens, closes in own if opens < closes)


def _later(moment: datetime, minutes: int) -> datetime:
    """A moment so many elapsed minutes later, also across a clock change."""
    return (moment.astimezone(UTC) + timedelta(minutes=minutes)).astimezone(moment.tzinfo)


def _why_closed(
    place: Place, day: date, public_holidays: Set[date], days_out_of_school: Set[date], zone: ZoneInfo
) -> Fact:
    text = place.opening.hours
    if day in public_holidays and "PH" in text:
        return fact("hours-closed-holiday")

    def open_on(other: date) -> bool:
        start = _on_clock(other, time(0), zone)
        end = _on_clock(other + _ONE_DAY, time(0), zone)
        return bool(open_spans(text, start, end, public_holidays, days_out_of_school))

    opens = season_opens(place, day, public_holidays, days_out_of_school)
    if opens is not None:
        return fact("hours-closed-season", opens=opens)
    same_weekday = any(open_on(day + _ONE_WEEK * weeks) for weeks in (-2, -1, 1, 2))
    same_week = any(open_on(day + _ONE_DAY * days) for days in (-3, -2, -1, 1, 2, 3))
    if same_week and not same_weekday:
        return fact("hours-closed-weekday", day=Weekday(day.weekday()))
    return fact("hours-closed" if same_week or same_weekday else "hours-closed-time-of-year")


def season_opens(
    place: Place, day: date, public_holidays: Set[date], days_out_of_school: Set[date]
) -> date | None:
    """When a place opens again that is closed for weeks on end; None where it is not, or never opens again.

    Args:
        place: the card.
        day: one on which it is closed.
        public_holidays: what PH in the hours stands for.
        days_out_of_school: what SH in the hours stands for.
    """
    # Whole years, so that all days of a season share one answer.
    first = date(day.year - 1, 1, 1)
    count = (date(day.year + 2, 1, 1) - first).days
    days = rule_days(place.opening.hours, first, count, public_holidays, days_out_of_school)
    opens = np.flatnonzero(days.kind)
    after = int(np.searchsorted(opens, (day - first).days))
    if after == len(opens):
        return None
    before = int(opens[after - 1]) if after else -1
    return first + _ONE_DAY * int(opens[after]) if opens[after] - before > SEASON_DAYS else None


def _group_spans(
    opening: Opening,
    day: date,
    public_holidays: Set[date],
    days_out_of_school: Set[date],
    no_classes: Set[date] | None,
    zone: ZoneInfo,
) -> tuple[tuple[datetime, datetime], ...]:
    out = days_out_of_school if no_classes is None else no_classes
    in_term = day.weekday() < _SATURDAY and day not in public_holidays and day not in out
    if opening.school_groups is None or not in_term:
        return ()
    return _spans_on(opening.school_groups, day, public_holidays, days_out_of_school, zone)


def _spans_on(
    text: str, day: date, public_holidays: Set[date], days_out_of_school: Set[date], zone: ZoneInfo
) -> tuple[tuple[datetime, datetime], ...]:
    """When a rule holds on one day, midnight to midnight."""
    start, end = _on_clock(day, time(0), zone), _on_clock(day + _ONE_DAY, time(0), zone)
    return open_spans(text, start, end, public_holidays, days_out_of_school)


def _shows(
    visit: Visit, day: date, public_holidays: Set[date], days_out_of_school: Set[date], zone: ZoneInfo
) -> Iterator[ShowTimes]:
    for show in visit.shows:
        starts = tuple(
            moment
            for moment in (_on_clock(day, clock, zone) for clock in sorted(show.starts))
            if show.days is None or holds_at(show.days, moment, public_holidays, days_out_of_school)
        )
        if starts:
            yield ShowTimes(show.name, starts, show.minutes, show.worth_it)


def hours_on(
    place: Place,
    day: date,
    public_holidays: Set[date],
    days_out_of_school: Set[date],
    *,
    no_classes: Set[date] | None = None,
) -> DayHours:
    """When a place can be visited on one day.

    Where the card itself says that its hours were not read at their source, the day is still open or
    closed by them, and the reason says that they are a guess.

    Args:
        place: the card; its hours are by its own clock.
        day: the date at the place.
        public_holidays: what PH in the hours stands for; must reach a day beyond `day`.
        days_out_of_school: what SH in the hours stands for.
        no_classes: on which days no school classes come; those out of school when left out.

    Returns:
        The day's hours; a span past midnight belongs to the day it starts on.

    Raises:
        PlanError: the place's time zone is not known yet.
    """
    opening, zone = place.opening, place.where.zone

    def known(reason: Fact) -> Fact:
        return reason if opening.checked_on_site else fact("hours-guess", reason=reason)

    def without_visit(openness: Openness, reason: Fact) -> DayHours:
        return DayHours(openness, (), (), (), known(reason))

    start = _on_clock(day - _ONE_DAY, time(0), zone)
    end = _on_clock(day + 2 * _ONE_DAY, time(0), zone)
    said_open = _days_own(
        open_spans(opening.hours, start, end, public_holidays, days_out_of_school), day, zone
    )
    if not said_open:
        unknown = unknown_spans(opening.hours, start, end, public_holidays, days_out_of_school)
        if _days_own(unknown, day, zone):
            return without_visit(Openness.UNKNOWN, fact("hours-ask"))
        reason = _why_closed(place, day, public_holidays, days_out_of_school, zone)
        return without_visit(Openness.CLOSED, reason)

    before_close = opening.last_entry_minutes_before_close
    spans = tuple(
        OpenSpan(opens, closes, last_entry)
        for opens, closes in said_open
        if (last_entry := _later(closes, -before_close)) >= opens
    )
    if not spans:
        return without_visit(Openness.CLOSED, fact("hours-last-entry-too-early"))
    entries = tuple(
        moment
        for moment in (_on_clock(day, clock, zone) for clock in sorted(opening.entry_times))
        if any(span.opens <= moment <= span.last_entry for span in spans)
    )
    if opening.entry_times and not entries:
        return without_visit(Openness.CLOSED, fact("hours-no-entry-time"))
    return DayHours(
        Openness.OPEN,
        spans,
        entries,
        _group_spans(opening, day, public_holidays, days_out_of_school, no_classes, zone),
        known(fact("hours-open")),
        quiet_spans=()
        if place.visit.quiet_hours is None
        else _spans_on(place.visit.quiet_hours, day, public_holidays, days_out_of_school, zone),
        shows=tuple(_shows(place.visit, day, public_holidays, days_out_of_school, zone)),
    )


def open_days(
    place: Place, first: date, last: date, public_holidays: Set[date], days_out_of_school: Set[date]
) -> tuple[date, ...]:
    """The dates from first to last on which a place is open at some time, in order.

    Answers many days at once; whether anybody is let in is for `hours_on` to say.

    Args:
        place: the card; its hours are by its own clock.
        first: the first date asked for, at the place.
        last: the last one; it counts.
        public_holidays: what PH in the hours stands for.
        days_out_of_school: what SH in the hours stands for.
    """
    days = rule_days(place.opening.hours, first, (last - first).days + 1, public_holidays, days_out_of_school)
    return tuple(first + _ONE_DAY * int(n) for n in np.flatnonzero(days.kind))
