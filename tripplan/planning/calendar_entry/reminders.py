"""What an outing's entry reminds of, and what is to be done before, from what the parent ticked."""

from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta

from tripplan.documents.outings.planned import EntryTicks, ThingsToDo
from tripplan.language import wording
from tripplan.planning.calendar_entry.entry import Reminder, ToDo

EVENING = time(19, 0)
"""When small children are in bed; common practice, no source."""
_LATE = time(22, 0)
_DAY = timedelta(days=1)


def reminders(ticked: EntryTicks, leave_home: datetime, book_by: date | None) -> tuple[Reminder, ...]:
    """What the entry reminds of; booking and packing only where they are no things to do of their own.

    Args:
        ticked: what the parent wants to be reminded of.
        leave_home: zone-aware, by the clock at home.
        book_by: the last day for booking; None where there is none.
    """

    def ahead(moment: datetime) -> int:
        return int((leave_home.astimezone(UTC) - moment.astimezone(UTC)).total_seconds() // 60)

    def all_of_them() -> Iterator[Reminder]:
        if ticked.things_to_do is ThingsToDo.NONE:
            if ticked.booking_reminder and book_by is not None:
                yield Reminder(ahead(_evening_before(book_by, leave_home)), _book(book_by))
            if ticked.packing_reminder:
                yield Reminder(ahead(_evening_before(leave_home.date(), leave_home)), _PACK)
        minutes = ticked.leaving_reminder_minutes
        if minutes:
            yield Reminder(minutes, f"Load up in {wording.minutes(minutes)}")
        if ticked.leave_now_reminder:
            yield Reminder(0, "Load up now")

    return tuple(all_of_them())


def to_dos(ticked: EntryTicks, place: str, leave_home: datetime, book_by: date | None) -> tuple[ToDo, ...]:
    """Booking and packing as things to do, where the parent wants them so.

    Args:
        ticked: whether and how.
        place: its name.
        leave_home: zone-aware, by the clock at home.
        book_by: the last day for booking; None where there is none.
    """
    if ticked.things_to_do is ThingsToDo.NONE:
        return ()
    as_entry = ticked.things_to_do is ThingsToDo.ENTRIES
    packing = ToDo(
        "pack", f"{_PACK}: {place}", _evening_before(leave_home.date(), leave_home), leave_home, as_entry
    )
    if book_by is None:
        return (packing,)
    last = datetime.combine(book_by, _LATE, leave_home.tzinfo)
    booking = ToDo("book", f"{_book(book_by)}: {place}", _evening_before(book_by, leave_home), last, as_entry)
    return (booking, packing)


_PACK = "Pack for tomorrow's outing"


def _book(book_by: date) -> str:
    return f"Book the tickets by {wording.day(book_by)}"


def _evening_before(day: date, leave_home: datetime) -> datetime:
    return datetime.combine(day - _DAY, EVENING, leave_home.tzinfo)
