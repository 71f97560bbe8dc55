"""A planned outing, planned once more as it would be now."""

from datetime import UTC, date, datetime, timedelta

from tests.builders import make_household, make_place
from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.planning.calendar_entry.planned_outing import planned_again, planned_from
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

DAY = date(2026, 12, 9)
NOON = datetime(2026, 11, 25, 18, 0, tzinfo=UTC)
FAMILY = Family(make_household(), (make_place(opening={"hours": "Tu-Su 10:00-17:00", "book_days_ahead": 7}),))


def answered(today: date, leave_later: timedelta | None = None) -> Outing | NoOuting:
    """The museum that is booked a week ahead, perhaps with a return of one's own."""
    facts = place_facts(FAMILY, FAMILY.places[0], (2026,))
    best = plan_outing(FAMILY, FAMILY.party(), facts, DAY, today=today)
    if leave_later is None or isinstance(best, NoOuting):
        return best
    plan = best.plan
    return plan_outing(
        FAMILY,
        FAMILY.party(),
        facts,
        DAY,
        today=today,
        leave_at=plan.leave_home,
        leave_place_at=plan.leave_place + leave_later,
    )


def planned(outing: Outing | NoOuting) -> PlannedOuting:
    """The outing put on record two weeks before its day."""
    assert isinstance(outing, Outing)
    return planned_from(
        outing, FAMILY.household, EntryTicks(), PlanStatus.CONFIRMED, before=None, ids_taken=(), at=NOON
    )


def test_who_planned_in_time_still_goes_when_it_is_too_late_to_book() -> None:
    """The day before, nobody can book any more, but the outing on record is planned in full."""
    eve = DAY - timedelta(days=1)
    assert isinstance(answered(eve), NoOuting)
    assert isinstance(planned_again(FAMILY, planned(answered(NOON.date())), eve), Outing)
    assert planned_again(FAMILY, planned(answered(NOON.date())), DAY + timedelta(days=1)) is None


def test_times_of_ones_own_are_kept() -> None:
    """Seven minutes later than the best return, which is on no grid, stays so."""
    mine = planned(answered(NOON.date(), timedelta(minutes=7)))
    again = planned_again(FAMILY, mine, NOON.date())
    assert again is not None
    assert (again.plan.leave_home, again.plan.leave_place) == (mine.leave_home, mine.leave_place)
