"""Opening hours in OpenStreetMap's opening_hours syntax: checked when written, asked by day.

PH and SH (public and school holidays) are replaced by dates before the engine sees the text, and the
parts of a text between fallback marks (``||``) are asked one after the other, because the engine reads
both wrongly without saying so. Everything is by the clock of the place: a rule means
what the clock on its wall shows, also on the two days a year when clocks change.
"""

import re
from collections.abc import Iterable, Iterator, Set
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from itertools import groupby
from typing import Annotated

# The engine's stubs leave its own error out.
from opening_hours import OpeningHours, ParserError, State  # type: ignore[attr-defined]
from pydantic import AfterValidator

LONGEST_TEXT = 1000
"""A longer rule is refused unread [characters]; OpenStreetMap itself stops at 255."""

_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_ONE_DAY = timedelta(days=1)
_LONGEST_SPAN_DAYS = 2
"""A rule may run into the following night, at most to 48:00 [days]."""
_NO_DATE = "1900 Jan 1"
"""Stands where a holiday rule meets no day near those asked for, so that the order of rules stays."""

_NEW_PART = ("", "||")

_QUOTED = r'"[^"]*"'
_SEPARATOR = re.compile(rf"{_QUOTED}|;|\|\||,")
_HOURS_BEGIN = re.compile(r'\b\d{1,2}:\d{2}|\b24/7|\b(?:open|closed|off|unknown)\b|"')
_TIME_FOLLOWS = re.compile(r"\s*\d{1,2}:\d{2}")
_MODIFIER = re.compile(r"\b(?:open|closed|off|unknown)\b")
_RULE_ENDS = re.compile(rf'{_MODIFIER.pattern}|"')
_SHIFT = r"(?: ?([+-])(\d+) days?)?"
_HOLIDAY = re.compile(rf"\b(PH|SH)\b{_SHIFT}")
_WEEKDAY_NAME = r"(?:Mo|Tu|We|Th|Fr|Sa|Su)"
_WEEKDAY = re.compile(rf"\b{_WEEKDAY_NAME}\b(?: ?- ?{_WEEKDAY_NAME}\b)?(?: ?\[[^\]]*\])?(?: ?[+-]\d+ days?)?")
_DAY_ITEM = re.compile(rf"(?:{_HOLIDAY.pattern})|(?:{_WEEKDAY.pattern})")
_BETWEEN_ITEMS = re.compile(r"\s*,\s*|\s+")

_REFUSED = (
    (re.compile(r"\b(?:dawn|sunrise|sunset|dusk)\b"), "give clock times in place of sunrise and sunset"),
    (re.compile(r"\d{1,2}:\d{2}\+"), "give a closing time in place of '+'"),
    (re.compile(r"\d{1,2}:\d{2}/\d"), "give spans of time, no repeated moments"),
)
_HINT = "opening hours read like 'Tu-Su 10:00-17:00; PH off' (OpenStreetMap opening_hours syntax)"


@dataclass(frozen=True)
class _Holiday:
    """PH or SH as a choice of days, perhaps the day before or after."""

    school: bool
    offset: timedelta

    def among(self, days: Set[date], public_holidays: Set[date], out_of_school: Set[date]) -> Set[date]:
        return days & {day + self.offset for day in (out_of_school if self.school else public_holidays)}


@dataclass(frozen=True)
class _Dates:
    """A choice of days that the engine reads rightly, such as ``Mo-Fr`` or ``Dec``."""

    engine: OpeningHours

    def among(self, days: Set[date], _public_holidays: Set[date], _out_of_school: Set[date]) -> Set[date]:
        return {day for day in days if self.engine.is_open(datetime.combine(day, time(12)))}


@dataclass(frozen=True)
class _Rule:
    """One rule of a text.

    Attributes:
        separator: what stands before it: nothing, ``;``, ``,`` or ``||``.
        days: the days as written.
        hours: times, modifier and comment as written.
        choices: for a rule with PH or SH: every group must hold, of a group any member; else empty.
    """

    separator: str
    days: str
    hours: str
    choices: tuple[tuple[_Holiday | _Dates, ...], ...]

    def dated(self, days: tuple[date, ...], public_holidays: Set[date], days_out_of_school: Set[date]) -> str:
        """The rule as the engine may read it, right for the days given."""
        written = self.days
        if self.choices:
            met: Set[date] = frozenset(days)
            for group in self.choices:
                among = [choice.among(met, public_holidays, days_out_of_school) for choice in group]
                met = frozenset().union(*among)
            written = ",".join(_in_stretches(sorted(met))) or _NO_DATE
        return f"{written} {self.hours}".strip()


def _in_stretches(days: Iterable[date]) -> Iterator[str]:
    """Dates in order as the engine reads them, days in a row as one stretch: each entry slows every day."""
    for _, row in groupby(enumerate(days), lambda numbered: numbered[1].toordinal() - numbered[0]):
        stretch = [day for _, day in row]
        first, last = (f"{day.year} {_MONTHS[day.month - 1]} {day.day}" for day in (stretch[0], stretch[-1]))
        yield first if len(stretch) == 1 else f"{first}-{last}"


def _engine_for(text: str, written: str = "") -> OpeningHours:
    """The engine for a text; a fault names the text, or what was written in its place."""
    try:
        return OpeningHours(text)
    except ParserError as unreadable:
        raise ValueError(f"'{written or text}' is not understood; {_HINT}") from unreadable


_dated_engine = lru_cache(maxsize=8192)(_engine_for)


def _holiday(found: re.Match[str]) -> _Holiday:
    kind, sign, count = found.groups()
    if count is not None and int(count) > 1:
        raise ValueError(f"{found[0]}: only the day before (-1 day) or after (+1 day) a holiday can be read")
    return _Holiday(kind == "SH", _ONE_DAY * int(f"{sign}{count}") if count else timedelta(0))


def _choices(days: str) -> tuple[tuple[_Holiday | _Dates, ...], ...]:
    """Days with PH or SH taken apart: a blank between them means both, a comma means either."""
    first = _DAY_ITEM.search(days)
    if first is None or not _HOLIDAY.search(days):
        return ()
    dates = days[: first.start()].strip().removesuffix(":")
    if dates.endswith(","):
        raise ValueError(f"'{days}' may mean two things; write one rule for the dates and one for the rest")
    groups: list[list[_Holiday | _Dates]] = [[]]
    at = first.start()
    while item := _DAY_ITEM.match(days, at):
        holiday = _HOLIDAY.fullmatch(item[0])
        groups[-1].append(_holiday(holiday) if holiday else _Dates(_engine_for(item[0])))
        at = item.end()
        between = _BETWEEN_ITEMS.match(days, at)
        if between is None or between.end() == len(days):
            break
        at = between.end()
        if "," not in between[0]:
            if len(groups[-1]) > 1 and isinstance(groups[-1][0], _Holiday):
                raise ValueError(f"'{days}' may mean two things; write one rule for each kind of holiday")
            groups.append([])
    if days[at:].strip():
        raise ValueError(f"'{days}' cannot be read; dates come first, then PH or SH, then weekdays")
    if dates:
        groups.append([_Dates(_engine_for(dates))])
    return tuple(tuple(group) for group in groups)


def _rule(separator: str, text: str) -> _Rule:
    begin = _HOURS_BEGIN.search(text)
    days, hours = (text[: begin.start()], text[begin.start() :]) if begin else (text, "")
    if not text.strip():
        raise ValueError(f"there is an empty rule; {_HINT}")
    comment_free = re.sub(_QUOTED, "", hours)
    if _HOLIDAY.search(comment_free):
        raise ValueError(f"'{text.strip()}' cannot be read; PH and SH come before the times")
    if '"' in hours and not _MODIFIER.search(comment_free):
        # The syntax calls hours with a condition in words unknown; the engine calls them open.
        hours = re.sub(f"({_QUOTED})", r"unknown \1", hours, count=1)
    days = re.sub(r"\s*,\s*", ",", days.strip().removesuffix(":"))
    return _Rule(separator, days, hours.strip(), _choices(days))


@lru_cache(maxsize=2048)
def _rules(text: str) -> tuple[_Rule, ...]:
    """The rules of a text in order, everything checked that can be checked without a date.

    Raises:
        ValueError: it is empty, too long, no opening_hours syntax, or asks for what cannot be worked out.
    """
    if not text.strip():
        raise ValueError(f"opening hours are empty; {_HINT}")
    if len(text) > LONGEST_TEXT:
        raise ValueError(f"opening hours are longer than {LONGEST_TEXT} characters")
    bare = re.sub(_QUOTED, "", text)
    for pattern, advice in _REFUSED:
        if pattern.search(bare):
            raise ValueError(f"these opening hours cannot be worked out: {advice}")
    rules: list[_Rule] = []
    separator, begin = "", 0
    for mark in _SEPARATOR.finditer(text):
        if mark[0].startswith('"'):
            continue
        in_days = not _HOURS_BEGIN.search(text, begin, mark.start())
        in_times = _TIME_FOLLOWS.match(text, mark.end()) and not _RULE_ENDS.search(text, begin, mark.start())
        in_list = mark[0] == "," and (in_days or in_times)
        if not in_list:
            rules.append(_rule(separator, text[begin : mark.start()]))
            separator, begin = mark[0], mark.end()
    if text[begin:].strip() or separator != ";":  # one ';' at the end is harmless
        rules.append(_rule(separator, text[begin:]))
    separators = [rule.separator for rule in rules]
    if "||" in separators and set(separators[separators.index("||") :]) != {"||"}:
        raise ValueError("what follows '||' stands in when all else is closed; it comes last")
    for rule in rules:
        _engine_for(rule.dated((), frozenset(), frozenset()), f"{rule.days} {rule.hours}".strip())
    for part in _dated_parts(tuple(rules), (), frozenset(), frozenset()):
        _engine_for(part)
    return tuple(rules)


def _dated_parts(
    rules: tuple[_Rule, ...],
    days: tuple[date, ...],
    public_holidays: Set[date],
    days_out_of_school: Set[date],
) -> list[str]:
    """The text between fallback marks, with PH and SH written out as dates."""
    parts: list[str] = []
    for rule in rules:
        dated = rule.dated(days, public_holidays, days_out_of_school)
        if rule.separator in _NEW_PART:
            parts.append(dated)
        else:
            parts[-1] += f"{rule.separator} {dated}"
    return parts


@lru_cache(maxsize=8192)
def _engines_between(
    text: str, first: date, last: date, public_holidays: frozenset[date], days_out_of_school: frozenset[date]
) -> tuple[OpeningHours, ...]:
    days = tuple(first + _ONE_DAY * count for count in range((last - first).days + 1))
    parts = _dated_parts(_rules(text), days, public_holidays, days_out_of_school)
    return tuple(_dated_engine(part) for part in parts)


@lru_cache(maxsize=2048)
def _plain_engines(text: str) -> tuple[OpeningHours, ...] | None:
    """The engines of a text that names no holidays, one for each part between fallback marks."""
    rules = _rules(text)
    if any(rule.choices for rule in rules):
        return None
    return tuple(_dated_engine(part) for part in _dated_parts(rules, (), frozenset(), frozenset()))


def _engines(
    text: str, start: datetime, end: datetime, public_holidays: Set[date], days_out_of_school: Set[date]
) -> tuple[OpeningHours, ...]:
    """The engines for a text, right for the time from start to end; a later one asks where all are closed."""
    plain = _plain_engines(text)
    if plain is not None:
        return plain
    first = start.date() - _ONE_DAY * _LONGEST_SPAN_DAYS
    last = end.date()
    around = [first + _ONE_DAY * count for count in range(-1, (last - first).days + 2)]
    return _engines_between(
        text,
        first,
        last,
        frozenset(day for day in around if day in public_holidays),
        frozenset(day for day in around if day in days_out_of_school),
    )


def _states(
    engines: tuple[OpeningHours, ...], start: datetime, end: datetime
) -> Iterator[tuple[datetime, datetime, State]]:
    """Stretches of one state from start to end, in order."""
    for first, last, state, _comment in engines[0].intervals(start, end):
        if state == State.CLOSED and len(engines) > 1:
            yield from _states(engines[1:], first, last)
        else:
            yield first, last, state


def _checked(text: str) -> str:
    _rules(text)
    return text


HoursText = Annotated[str, AfterValidator(_checked)]
"""A rule in opening_hours syntax as a field of a written form."""


def clock_spans(
    text: str,
    start: datetime,
    end: datetime,
    public_holidays: Set[date],
    days_out_of_school: Set[date],
    state: State = State.OPEN,
) -> Iterator[tuple[datetime, datetime]]:
    """The times between start and end in one state, by the clock on the wall.

    Args:
        text: opening_hours syntax.
        start: without a zone.
        end: likewise, later.
        public_holidays: the dates PH stands for.
        days_out_of_school: the dates SH stands for.
        state: which times are wanted; open ones when left out.

    Returns:
        Spans in order, joined where they touch, without a zone.
    """
    begun: tuple[datetime, datetime] | None = None
    engines = _engines(text, start, end, public_holidays, days_out_of_school)
    for first, last, found in _states(engines, start, end):
        if found != state:
            continue
        if begun is not None and begun[1] == first:
            begun = (begun[0], last)
            continue
        if begun is not None:
            yield begun
        begun = (first, last)
    if begun is not None:
        yield begun


@lru_cache(maxsize=2048)
def names_school_holidays(text: str) -> bool:
    """Whether a rule speaks of school holidays."""
    return re.search(r"\bSH\b", re.sub(_QUOTED, "", text)) is not None


@lru_cache(maxsize=2048)
def names_public_holidays(text: str) -> bool:
    """Whether a rule speaks of public holidays."""
    return re.search(r"\bPH\b", re.sub(_QUOTED, "", text)) is not None


def _spans(
    state: State,
    text: str,
    start: datetime,
    end: datetime,
    public_holidays: Set[date],
    days_out_of_school: Set[date],
) -> tuple[tuple[datetime, datetime], ...]:
    zone = start.tzinfo
    if zone is None or end.tzinfo is None:
        raise ValueError("start and end need a time zone")
    end = end.astimezone(zone)
    clock_start, clock_end = start.replace(tzinfo=None), end.replace(tzinfo=None)

    def zoned(clock: datetime) -> datetime:
        if clock == clock_start:
            return start
        if clock == clock_end:
            return end
        # Through UTC and back, so that a time skipped in spring becomes the one the clock then shows.
        return clock.replace(tzinfo=zone).astimezone(UTC).astimezone(zone)

    found = clock_spans(text, clock_start, clock_end, public_holidays, days_out_of_school, state)
    return tuple((zoned(first), zoned(last)) for first, last in found)


def open_spans(
    text: str, start: datetime, end: datetime, public_holidays: Set[date], days_out_of_school: Set[date]
) -> tuple[tuple[datetime, datetime], ...]:
    """The times between start and end that a rule calls open.

    Args:
        text: opening_hours syntax.
        start: zone-aware, in the zone whose clock the rule means.
        end: likewise, later.
        public_holidays: the dates PH stands for.
        days_out_of_school: the dates SH stands for.

    Returns:
        Spans in order, joined where they touch, clipped to start and end. What is open only under a
        condition in words ("by appointment") is not among them, see `unknown_spans`.

    Raises:
        ValueError: the text is not opening_hours syntax, or start or end has no time zone.

    Source: https://wiki.openstreetmap.org/wiki/Key:opening_hours/specification
    """
    return _spans(State.OPEN, text, start, end, public_holidays, days_out_of_school)


def unknown_spans(
    text: str, start: datetime, end: datetime, public_holidays: Set[date], days_out_of_school: Set[date]
) -> tuple[tuple[datetime, datetime], ...]:
    """The times when a rule leaves it unknown whether it is open; else like `open_spans`."""
    return _spans(State.UNKNOWN, text, start, end, public_holidays, days_out_of_school)


def holds_at(text: str, moment: datetime, public_holidays: Set[date], days_out_of_school: Set[date]) -> bool:
    """Whether a rule calls a moment open; the arguments are those of `open_spans`."""
    clock = moment.replace(tzinfo=None)
    for engine in _engines(text, clock, clock, public_holidays, days_out_of_school):
        if not engine.is_closed(clock):
            return engine.is_open(clock)
    return False
