"""What clocks do to an outing: a change in the night, another time zone."""

from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from tripplan.language import wording


def clock_notes(day: date, home_zone: ZoneInfo, enter: datetime) -> tuple[str, ...]:
    """What the parent should know about clocks, in whole sentences.

    Args:
        day: the date at home.
        home_zone: whose clock the household lives by.
        enter: when the party is let in, by the place's clock.
    """
    return (*_another_zone(home_zone, enter), *_change(day, home_zone))


def _another_zone(home_zone: ZoneInfo, enter: datetime) -> Iterator[str]:
    ahead = _offset(enter) - _offset(enter.astimezone(home_zone))
    if ahead:
        side = "ahead of" if ahead > timedelta(0) else "behind"
        yield f"The place's clock is {_in_words(ahead)} {side} the clock at home."


def _change(day: date, zone: ZoneInfo) -> Iterator[str]:
    before, on_the_day, after = (
        _offset(datetime.combine(day + timedelta(days=days), time(12), zone)) for days in (-1, 0, 1)
    )
    for change, night in ((on_the_day - before, "before"), (after - on_the_day, "after")):
        if change:
            way = "forward" if change > timedelta(0) else "back"
            yield f"Clocks at home go {way} {_in_words(change)} in the night {night} this day."


def _offset(moment: datetime) -> timedelta:
    return moment.utcoffset() or timedelta(0)


def _in_words(difference: timedelta) -> str:
    minutes = abs(difference) // timedelta(minutes=1)
    return "one hour" if minutes == 60 else wording.minutes(minutes)
