"""What clocks do to an outing: a change in the night, another time zone."""

from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from tripplan.language.sentences import Fact, fact


def clock_notes(day: date, home_zone: ZoneInfo, enter: datetime) -> tuple[Fact, ...]:
    """What the parent should know about clocks.

    Args:
        day: the date at home.
        home_zone: whose clock the household lives by.
        enter: when the party is let in, by the place's clock.
    """
    return (*_another_zone(home_zone, enter), *_change(day, home_zone))


def _another_zone(home_zone: ZoneInfo, enter: datetime) -> Iterator[Fact]:
    ahead = _offset(enter) - _offset(enter.astimezone(home_zone))
    if ahead:
        yield fact("notes-another-zone", by=abs(ahead), ahead=ahead > timedelta(0))


def _change(day: date, zone: ZoneInfo) -> Iterator[Fact]:
    before, on_the_day, after = (
        _offset(datetime.combine(day + timedelta(days=days), time(12), zone)) for days in (-1, 0, 1)
    )
    for change, night in ((on_the_day - before, "before"), (after - on_the_day, "after")):
        if change:
            forward = change > timedelta(0)
            yield fact("notes-clocks-change", by=abs(change), forward=forward, night=night)


def _offset(moment: datetime) -> timedelta:
    return moment.utcoffset() or timedelta(0)
