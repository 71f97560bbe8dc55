"""Makes a family calendar of a calendar file: when the family is busy, and nothing else unless asked for."""

from collections.abc import Sequence, Set
from operator import itemgetter

from tripplan.documents.calendars.calendars import Busy, DateSpan, FamilyCalendar
from tripplan.files.calendar_reader.content import CalendarContent
from tripplan.language import wording
from tripplan.planning.family.busy_days import day_end


def family_calendar_from(
    content: CalendarContent,
    *,
    name: str = "",
    source: str = "",
    covers: DateSpan | None = None,
    keep_names: bool = False,
    left_out: Set[str] = frozenset(),
) -> FamilyCalendar:
    """When the family is busy.

    Entries that take up no time are left out: those shown as free, called off or declined, and mere points in
    time.

    Args:
        content: the file as `calendar_reader.reading.read_calendar` reads it, in the zone at home.
        name: of the calendar; the file's own name when left out.
        source: where it comes from.
        covers: the days the file was read for; on other days nothing is known of it.
        keep_names: whether to keep what the entries say. Without it overlapping times become one, so that not
            even the number of appointments is kept; what made an evening late stays.
        left_out: keys of entries that do not stand in the way of an outing.

    Returns:
        The calendar, in order of time.
    """
    taken = sorted(
        (entry for entry in content.entries if entry.takes_time and entry.key not in left_out),
        key=lambda entry: (entry.start, entry.end),
    )
    whole_days, hours = (
        [
            Busy(start=entry.start, end=entry.end, name=entry.summary if keep_names else "")
            for entry in taken
            if entry.start < entry.end and entry.all_day is all_day
        ]
        for all_day in (True, False)
    )
    spans = (*whole_days, *hours) if keep_names else (*_joined(whole_days), *_joined_but_evenings(hours))
    return FamilyCalendar(
        name=name or content.name[:80] or "Family calendar",
        busy=tuple(sorted(spans, key=lambda busy: (busy.start, busy.end))),
        covers=covers,
        source=source,
    )


def busy_times(calendar: FamilyCalendar) -> str:
    """How many times of a calendar are taken, such as '1 busy time'."""
    return wording.counted(len(calendar.busy), "busy time")


def not_taken_sentences(content: CalendarContent) -> tuple[str, ...]:
    """What of a file takes up no time and why, counted, in words."""
    counted = {
        ("was called off", "were called off"): sum(entry.cancelled for entry in content.entries),
        ("was declined", "were declined"): sum(
            entry.declined and not entry.cancelled for entry in content.entries
        ),
        ("is shown as free", "are shown as free"): sum(
            not (entry.busy or entry.cancelled or entry.declined) for entry in content.entries
        ),
        ("is a mere moment", "are a mere moment"): sum(
            entry.takes_time and entry.start >= entry.end for entry in content.entries
        ),
    }
    return tuple(
        f"One {one}, and takes up no time." if count == 1 else f"{count} {several}, and take up no time."
        for (one, several), count in counted.items()
        if count
    )


def _joined_but_evenings(spans: Sequence[Busy]) -> tuple[Busy, ...]:
    """The same times without overlaps, and beside them what let a day end later than they tell."""
    joined = _joined(spans)
    told = {day_end(span.start, span.end) for span in joined}
    ends = ((ended, span) for span in spans if (ended := day_end(span.start, span.end)) is not None)
    latest = {ended[0]: (ended, span) for ended, span in sorted(ends, key=itemgetter(0))}
    return (*joined, *(span for ended, span in latest.values() if ended not in told))


def _joined(spans: Sequence[Busy]) -> tuple[Busy, ...]:
    """The same times without overlaps; they come in order of their start."""
    joined: list[Busy] = []
    for span in spans:
        if joined and span.start <= joined[-1].end:
            joined[-1] = Busy(start=joined[-1].start, end=max(joined[-1].end, span.end))
        else:
            joined.append(span)
    return tuple(joined)
