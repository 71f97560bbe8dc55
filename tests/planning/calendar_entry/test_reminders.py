"""What an outing's entry reminds of."""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from tripplan.documents.outings.planned import EntryTicks, ThingsToDo
from tripplan.planning.calendar_entry.reminders import reminders, to_dos

CHICAGO = ZoneInfo("America/Chicago")
LEAVE = datetime(2026, 12, 8, 8, 40, tzinfo=CHICAGO)
BOOK_BY = date(2026, 12, 1)


def test_the_usual_reminders_are_to_book_to_pack_to_get_ready_and_to_leave() -> None:
    """At seven the evening before booking closes and before the day, an hour ahead, and at the time."""
    told = {
        one.text: LEAVE - timedelta(minutes=one.minutes_before)
        for one in reminders(EntryTicks(), LEAVE, BOOK_BY)
    }
    assert told == {
        "Book the tickets by Tue, Dec 1, 2026": datetime(2026, 11, 30, 19, tzinfo=CHICAGO),
        "Pack for tomorrow's outing": datetime(2026, 12, 7, 19, tzinfo=CHICAGO),
        "Load up in 1 h": datetime(2026, 12, 8, 7, 40, tzinfo=CHICAGO),
        "Load up now": LEAVE,
    }


def test_what_need_not_be_booked_is_not_reminded_of() -> None:
    """Where tickets are had at the door three reminders stay."""
    assert [one.minutes_before for one in reminders(EntryTicks(), LEAVE, None)] == [820, 60, 0]


def test_nothing_ticked_reminds_of_nothing() -> None:
    """Every reminder can be switched off."""
    off = EntryTicks(
        booking_reminder=False,
        packing_reminder=False,
        leaving_reminder_minutes=None,
        leave_now_reminder=False,
    )
    assert reminders(off, LEAVE, BOOK_BY) == ()


def test_the_evening_reminder_comes_at_seven_when_the_clock_changes_at_night() -> None:
    """The night of 13 to 14 March 2027 is an hour short, so the reminder is an hour closer."""
    packing, *_ = reminders(EntryTicks(), datetime(2027, 3, 14, 8, 40, tzinfo=CHICAGO), None)
    assert packing.minutes_before == 12 * 60 + 40


def test_things_to_do_take_the_place_of_their_reminders() -> None:
    """As tasks or entries, booking and packing remind by themselves and not twice."""
    ticked = EntryTicks(things_to_do=ThingsToDo.TASKS)
    booking, packing = to_dos(ticked, "Mill", LEAVE, BOOK_BY)
    assert (booking.text, booking.due) == (
        "Book the tickets by Tue, Dec 1, 2026: Mill",
        datetime(2026, 12, 1, 22, tzinfo=CHICAGO),
    )
    assert (packing.start, packing.due) == (datetime(2026, 12, 7, 19, tzinfo=CHICAGO), LEAVE)
    assert not packing.as_entry
    assert [one.text for one in reminders(ticked, LEAVE, BOOK_BY)] == ["Load up in 1 h", "Load up now"]
    assert all(
        one.as_entry for one in to_dos(EntryTicks(things_to_do=ThingsToDo.ENTRIES), "Mill", LEAVE, None)
    )
    assert to_dos(EntryTicks(), "Mill", LEAVE, BOOK_BY) == ()
