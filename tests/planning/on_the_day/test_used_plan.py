"""A way out that is used takes the place of the plan on record, and is shown as it was settled."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from tests.builders import make_place
from tests.planning.on_the_day.test_replan import DAY, MINUTE, NEAR, TODAY, make_family, planned
from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.planning.calendar_entry.planned_outing import entry_of, planned_from
from tripplan.planning.calendar_entry.settled import as_settled
from tripplan.planning.on_the_day.recovery_options import RecoveryKind, RecoveryOption
from tripplan.planning.on_the_day.replan import replan
from tripplan.planning.on_the_day.trouble import Trouble, Whereabouts
from tripplan.planning.on_the_day.used_plan import used_plan
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

MORNING = datetime(2026, 12, 9, 15, tzinfo=UTC)
FAMILY = make_family(make_place(id="mill", name="Mill", where={**NEAR, "latitude": 40.6, "longitude": -89.3}))
TROUBLES: tuple[dict[str, Any], ...] = (
    {"late_minutes": 35},
    {"late_minutes": 17, "asleep": "Di"},
    {"late_minutes": 20, "where": Whereabouts.ON_THE_WAY},
    {"where": Whereabouts.ON_THE_WAY, "asleep": "Di", "still_to_drive_minutes": 10},
    {"where": Whereabouts.THERE, "asleep": "Di"},
    {"late_minutes": 25, "where": Whereabouts.THERE, "rain": True},
    {"late_minutes": 40, "where": Whereabouts.GOING_HOME},
    {"where": Whereabouts.GOING_HOME, "asleep": "Di", "still_to_drive_minutes": 20},
    {"ill": "Cy"},
)


def on_record(outing: Outing) -> PlannedOuting:
    """The outing as it was saved two weeks before."""
    return planned_from(
        outing,
        FAMILY.household,
        EntryTicks(),
        PlanStatus.CONFIRMED,
        before=None,
        ids_taken=(),
        at=datetime(2026, 11, 25, 12, tzinfo=UTC),
    )


def used(way: RecoveryOption, outing: Outing, trouble: Trouble) -> PlannedOuting:
    """What then stands on record."""
    return used_plan(
        way,
        FAMILY,
        outing,
        trouble,
        before=on_record(outing),
        ids_taken=(),
        at=MORNING + timedelta(minutes=1),
    )


def times(planned: PlannedOuting) -> tuple[datetime, ...]:
    """Its four times."""
    return planned.leave_home, planned.enter, planned.leave_place, planned.home


def shown(planned: PlannedOuting) -> Outing:
    """The outing as a page shows it from the record alone."""
    place = next(place for place in FAMILY.places if place.id == planned.place)
    found = plan_outing(
        FAMILY,
        FAMILY.party(planned.party),
        place_facts(FAMILY, place, (DAY.year,)),
        DAY,
        today=planned.planned_on(FAMILY.household.home.zone),
        leave_at=planned.leave_home,
        leave_place_at=planned.leave_place,
        as_asked=as_settled(planned),
    )
    assert isinstance(found, Outing), found
    return found


@pytest.mark.parametrize("trouble", TROUBLES)
def test_what_is_used_is_shown_with_just_its_times(trouble: dict[str, Any]) -> None:
    """Whatever went wrong and wherever they are, the record alone gives the times and the home-coming."""
    outing, told = planned(FAMILY), Trouble(**trouble)
    found = replan(FAMILY, outing, told, today=TODAY)
    assert found.ways
    for way in found.ways:
        new = used(way, outing, told)
        assert (new.uid, new.id, new.sequence) == (on_record(outing).uid, on_record(outing).id, 1)
        if new.status is PlanStatus.CANCELLED:
            assert way.choice is RecoveryKind.TURN_BACK
            continue
        assert new.home == way.home
        if way.outing is not None:
            plan = way.outing.plan
            assert times(new) == (plan.leave_home, plan.enter, plan.leave_place, plan.home)
            assert new.party == tuple(member.name for member in way.outing.party)
        plan = shown(new).plan
        assert (plan.leave_home, plan.enter, plan.leave_place, plan.home) == times(new), way.title
        entry = entry_of(new, FAMILY.household, None, shown(new))
        assert (entry.start, entry.end, entry.sequence) == (new.leave_home, new.home, 1)


def test_the_same_entry_moves_to_another_place() -> None:
    """Going to the mill instead, the entry keeps its UID and names the mill; what tickets cost is counted."""
    outing, told = planned(FAMILY), Trouble(late_minutes=60, tickets_paid=True)
    found = replan(FAMILY, outing, told, today=TODAY)
    (elsewhere,) = (way for way in found.ways if way.choice is RecoveryKind.UNDERSTUDY)
    new = used(elsewhere, outing, told)
    assert (new.place, new.uid) == ("mill", on_record(outing).uid)
    assert new.likely_total == elsewhere.total.rounded()


def test_staying_home_calls_the_outing_off() -> None:
    """Where nobody leaves, the entry is cancelled, with its number one higher."""
    outing, told = planned(FAMILY), Trouble(ill="Cy")
    found = replan(FAMILY, outing, told, today=TODAY)
    (back,) = (way for way in found.ways if way.choice is RecoveryKind.TURN_BACK)
    new = used(back, outing, told)
    assert (new.status, new.sequence) == (PlanStatus.CANCELLED, 1)


def test_going_home_at_once_ends_the_day_earlier() -> None:
    """At the place half an hour after being let in: they leave now, and are home when the way out says."""
    outing = planned(FAMILY)
    told = Trouble(where=Whereabouts.THERE, now=outing.plan.enter + 30 * MINUTE)
    found = replan(FAMILY, outing, told, today=TODAY)
    (back,) = (way for way in found.ways if way.choice is RecoveryKind.TURN_BACK)
    new = used(back, outing, told)
    assert new.leave_place == outing.plan.enter + 30 * MINUTE
    assert shown(new).plan.home == back.home


def test_a_plan_that_was_not_used_on_the_day_is_asked_about_as_any_other() -> None:
    """The limits of the day stand against it: nothing is widened."""
    outing = planned(FAMILY)
    assert as_settled(on_record(outing))(outing.question) is outing.question


def test_without_a_record_the_outing_is_put_on_record() -> None:
    """An outing that was only tried is planned from then on."""
    outing, told = planned(FAMILY), Trouble(late_minutes=35)
    way = replan(FAMILY, outing, told, today=TODAY).ways[0]
    new = used_plan(way, FAMILY, outing, told, before=None, ids_taken=(), at=MORNING)
    assert (new.status, new.sequence) == (PlanStatus.CONFIRMED, 0)
