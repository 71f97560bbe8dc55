"""What must fit together on a place card, beside its price board; one function per subject."""

import re
from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise

from tripplan.documents.places.place import Place
from tripplan.errors import Finding, Weight
from tripplan.files.locations.gazetteer import NotFound, locate
from tripplan.files.toml.toml_text import shown
from tripplan.language import wording
from tripplan.values.opening_hours import open_spans, unknown_spans

PRICES_GROW_OLD_DAYS = 365
"""Prices read longer ago than this are called old [days]. Source: common practice, no source."""
_A_DAY = timedelta(days=1)
_A_YEAR = timedelta(days=366)
_SWAPPED_FROM = timedelta(hours=12)
"""Nobody shows a family round for so long into the night; the two times were probably swapped."""
_DAYS_OF_MONTH = {
    month: 29 if month == "Feb" else 30 if month in ("Apr", "Jun", "Sep", "Nov") else 31
    for month in ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
}
_DAY_OF_MONTH = re.compile(rf"\b({'|'.join(_DAYS_OF_MONTH)}) (\d{{1,2}})\b(?!:)")

Span = tuple[datetime, datetime]


def location_findings(place: Place, file: str) -> Iterator[Finding]:
    """A location that cannot be put on the map."""
    found = locate(place.where)
    if isinstance(found, NotFound):
        value = shown(getattr(place.where, found.field))
        yield Finding(file, f"where.{found.field}", value, found.message)


def visit_findings(place: Place, file: str, today: date) -> Iterator[Finding]:
    """A comfortable stay that is shorter than the shortest; shows and quiet hours that never come about."""
    visit = place.visit
    stays = {"visit": visit} | {f"visit.stays[{index}]": stay for index, stay in enumerate(visit.stays)}
    for field, stay in stays.items():
        if stay.comfortable_minutes < stay.shortest_minutes:
            message = f"must be no less than the shortest stay, {wording.minutes(stay.shortest_minutes)}"
            yield Finding(file, f"{field}.comfortable_minutes", str(stay.comfortable_minutes), message)
    for index, show in enumerate(visit.shows):
        if show.name in {other.name for other in visit.shows[:index]}:
            message = "this show stands above already; give all its times in one entry"
            yield Finding(file, f"visit.shows[{index}].name", shown(show.name), message)
        for nth, start in enumerate(show.starts):
            if not any(
                _falls_into(span, start, show.minutes) for span in _coming_year(place.opening.hours, today)
            ):
                field = f"visit.shows[{index}].starts[{nth}]"
                message = "the place is never open for the whole of it"
                yield Finding(file, field, f"{start:%H:%M}", message, Weight.WARNING)


def _falls_into(span: Span, start: time, minutes: int) -> bool:
    opens, closes = span
    begins = datetime.combine(opens.date(), start, UTC)
    return any(
        opens <= begins + later and begins + later + timedelta(minutes=minutes) <= closes
        for later in (timedelta(), _A_DAY)
    )


def prices_read_findings(place: Place, file: str, today: date) -> Iterator[Finding]:
    """Prices that were read long ago, or on a day to come."""
    read = place.prices_read.on
    if read > today:
        message = f"lies in the future (today is {today}); when were the prices read?"
    elif (today - read).days > PRICES_GROW_OLD_DAYS:
        message = "the prices were read more than a year ago; ask for the new ones"
    else:
        return
    yield Finding(file, "prices_read.on", str(read), message, Weight.WARNING)


def opening_findings(place: Place, file: str, today: date) -> Iterator[Finding]:
    """Hours that nobody can keep: days that do not exist, entries while closed, no opening at all."""
    yield from _missing_days(place, file)
    opening = place.opening
    spans = _coming_year(opening.hours, today)
    if not spans:
        if not _open_if_asked(opening.hours, today):
            message = "these hours open on no day of the coming year"
            yield Finding(file, "opening.hours", shown(opening.hours), message, Weight.WARNING)
        return
    yield from _length_findings(place, file, spans)
    for index, entry in enumerate(opening.entry_times):
        if not any(_lets_in(span, entry, opening.last_entry_minutes_before_close) for span in spans):
            field = f"opening.entry_times[{index}]"
            yield Finding(file, field, f"{entry:%H:%M}", "nobody is let in then by the opening hours")
    for index, (before, after) in enumerate(pairwise(opening.entry_times), start=1):
        if after <= before:
            message = f"entry times rise; this one follows {before:%H:%M}"
            yield Finding(file, f"opening.entry_times[{index}]", f"{after:%H:%M}", message)


def _length_findings(place: Place, file: str, spans: tuple[Span, ...]) -> Iterator[Finding]:
    lengths = [closes - opens for opens, closes in spans]
    longest, shortest = max(lengths), min(lengths)
    swapped = next((span for span in spans if _runs_through_the_night(span)), None)
    if swapped:
        message = f"opens at {swapped[0]:%H:%M} and closes next day at {swapped[1]:%H:%M}; is that meant?"
        yield Finding(file, "opening.hours", shown(place.opening.hours), message, Weight.WARNING)
    last_entry = timedelta(minutes=place.opening.last_entry_minutes_before_close)
    field, value = (
        "opening.last_entry_minutes_before_close",
        f"{place.opening.last_entry_minutes_before_close}",
    )
    if last_entry >= longest:
        message = f"nobody would ever be let in: the longest opening lasts {_in_words(longest)}"
        yield Finding(file, field, value, message)
    elif last_entry >= shortest:
        message = f"nobody would be let in on some days: the shortest opening lasts {_in_words(shortest)}"
        yield Finding(file, field, value, message, Weight.WARNING)
    if timedelta(minutes=place.visit.shortest_minutes) > longest:
        value = str(place.visit.shortest_minutes)
        message = f"the place is never open that long; its longest opening lasts {_in_words(longest)}"
        yield Finding(file, "visit.shortest_minutes", value, message, Weight.WARNING)


def _missing_days(place: Place, file: str) -> Iterator[Finding]:
    texts = {"opening.hours": place.opening.hours, "opening.school_groups": place.opening.school_groups}
    texts["visit.quiet_hours"] = place.visit.quiet_hours
    texts.update((f"visit.shows[{index}].days", show.days) for index, show in enumerate(place.visit.shows))
    texts.update((f"offers[{index}].valid", offer.valid) for index, offer in enumerate(place.offers))
    add_ons = enumerate(place.add_ons)
    texts.update((f"add_ons[{index}].valid", add_on.valid) for index, add_on in add_ons)
    vouchers = enumerate(place.vouchers)
    texts.update((f"vouchers[{index}].valid", voucher.valid) for index, voucher in vouchers)
    rates = enumerate(place.parking.rates)
    texts.update((f"parking.rates[{index}].valid", rate.valid) for index, rate in rates)
    for field, text in texts.items():
        # The engine takes a day that does not exist for every day.
        for month, day in _DAY_OF_MONTH.findall(text or ""):
            if not 1 <= int(day) <= _DAYS_OF_MONTH[month]:
                yield Finding(file, field, shown(text), f"there is no {month} {day}")


def _coming_year(hours: str, today: date) -> tuple[Span, ...]:
    """All openings of a year, with no holidays and with nothing but holidays of either kind."""
    # By UTC, since only the clock on the wall counts here and it should not change on the way.
    start = datetime.combine(today, time(), UTC)
    every_day = frozenset(today + timedelta(days=n) for n in range(-2, _A_YEAR.days + 2))
    none: frozenset[date] = frozenset()
    cases = ((none, none), (every_day, none), (none, every_day))
    found = {
        span for public, school in cases for span in open_spans(hours, start, start + _A_YEAR, public, school)
    }
    whole = {span for span in found if span[0] > start and span[1] < start + _A_YEAR}
    return tuple(sorted(whole or found))


def _open_if_asked(hours: str, today: date) -> bool:
    """Whether the hours hold words such as "by appointment", which leave it open when somebody is there."""
    start = datetime.combine(today, time(), UTC)
    return bool(unknown_spans(hours, start, start + _A_YEAR, frozenset(), frozenset()))


def _runs_through_the_night(span: Span) -> bool:
    opens, closes = span
    return (
        closes.date() > opens.date() and closes.time() > time() and _SWAPPED_FROM <= closes - opens < _A_DAY
    )


def _lets_in(span: Span, entry: time, last_entry_minutes: int) -> bool:
    opens, closes = span
    moment = datetime.combine(opens.date(), entry, UTC)
    last = closes - timedelta(minutes=last_entry_minutes)
    return opens <= moment <= last or opens <= moment + _A_DAY <= last


def _in_words(length: timedelta) -> str:
    return wording.minutes(length.total_seconds() / 60)
