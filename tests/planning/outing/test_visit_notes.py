"""What a plan says about shows, classes and quiet hours."""

from dataclasses import replace
from datetime import datetime, time, timedelta
from decimal import Decimal

from tests.builders import codes
from tests.planning.day.day_questions import (
    CHICAGO,
    PUNCTUAL,
    TUESDAY,
    make_hours,
    make_leg,
    make_napper,
    make_question,
)
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.member import SleepsIn
from tripplan.documents.family.worth import Worth
from tripplan.language.sentences import fact
from tripplan.planning.day import DayPlan, DayQuestion, StepKind, plan_day
from tripplan.planning.opening.hours import DayHours, ShowTimes
from tripplan.planning.outing.visit_notes import visit_notes
from tripplan.values.money import Money


def at(clock: str) -> datetime:
    """A clock time at the place."""
    return datetime.combine(TUESDAY, time.fromisoformat(clock), CHICAGO)


def show(name: str, *starts: str, minutes: int = 30, worth_it: bool = True) -> ShowTimes:
    """A show on the day of the tests."""
    return ShowTimes(name, tuple(map(at, starts)), minutes, worth_it)


def planned(question: DayQuestion) -> DayPlan:
    """The best plan."""
    best = plan_day(question).best
    assert best is not None
    return best


def with_shows(*shows: ShowTimes, hours: DayHours | None = None) -> DayHours:
    """An open day with shows."""
    return replace(hours or make_hours(), shows=shows)


def test_a_show_that_is_worth_it_moves_the_visit() -> None:
    """Without it they have left long before; a show at 15:00 is seen by being there until it is over."""
    shows = with_shows(show("Feeding", "15:00"))
    question = make_question(hours=shows, habits=Habits(lunch_minutes=0, **PUNCTUAL))
    plan = planned(question)
    assert plan.enter <= at("15:00")
    assert plan.leave_place >= at("15:30")
    assert [outcome.seen for outcome in plan.shows] == [(at("15:00"), at("15:30"))]
    assert codes(visit_notes(shows, plan)) == ["notes-show-seen"]
    indifferent = replace(question, worth=Worth(missed_show=Decimal(0)))
    assert planned(indifferent).leave_place < at("15:00")


def test_lunch_gives_way_to_a_show() -> None:
    """A show at noon: lunch follows it or comes before, both half an hour off; the steps tell both."""
    shows = with_shows(show("Sky", "12:00"))
    question = make_question(
        hours=shows,
        habits=Habits(earliest_departure=time(9), **PUNCTUAL),
        comfortable_minutes=200,
    )
    steps = [
        f"{step.label} {step.start:%H:%M}-{step.end:%H:%M}"
        for step in planned(question).steps
        if step.kind in (StepKind.VISIT, StepKind.SHOW, StepKind.LUNCH)
    ]
    assert steps == [
        "visit 10:15-12:00",
        "Sky 12:00-12:30",
        "lunch 12:30-13:05",
        "visit 13:05-14:10",
    ]


def test_a_show_without_time_for_it_is_told_as_missed() -> None:
    """Home by noon, a show at 14:00 cannot be seen, and weighs its whole price."""
    shows = with_shows(show("Feeding", "14:00"), show("Film", "11:00", "13:00", worth_it=False))
    plan = planned(make_question(hours=shows, habits=Habits(home_by=time(12, 30), **PUNCTUAL)))
    assert list(visit_notes(shows, plan)) == [
        fact("notes-show-missed", show="Feeding", starts=(at("14:00"),)),
        fact("notes-show-beside", show="Film", starts=(at("11:00"), at("13:00"))),
    ]
    assert {part.name.code: part.felt.amount for part in plan.parts}["plan-missed-show"] == 10


def test_the_chance_to_come_too_late_for_the_only_show_is_told() -> None:
    """A family that is often late and sure to drive an hour: the show at opening is a risk."""
    shows = with_shows(show("Feeding", "10:00"))
    habits = Habits(earliest_departure=time(8, 30), usual_delay_minutes=10, late_one_day_in_ten_minutes=60)
    plan = planned(make_question(hours=shows, habits=habits, worth=Worth(missed_show=Decimal(40))))
    (note,) = visit_notes(shows, plan)
    assert (note.values["start"], note.values["may_be_late"]) == (at("10:00"), True)
    assert plan.shows[0].missed_chance > 0.3


def test_classes_are_told_against_the_time_inside() -> None:
    """Classes from 9:30 to 12:00: an hour among them, or going in after them where that weighs more."""
    classes = replace(make_hours(), group_spans=((at("09:30"), at("12:00")),))
    early = make_question(hours=classes, worth=Worth(hour_among_classes=Decimal(0)))
    first = planned(early)
    assert first.enter < at("12:00")
    (note,) = visit_notes(classes, first)
    assert note.code == "notes-among-classes"
    assert note.values["inside"] == at("12:00") - first.enter
    later = planned(replace(early, worth=Worth(hour_among_classes=Decimal(30))))
    (note,) = visit_notes(classes, later)
    assert (note.code, note.values["enters"]) == ("notes-after-classes", at("12:00"))


def test_a_quiet_hour_can_be_sought() -> None:
    """Told in any case; where it is worth something to the parent, the plan spends it there."""
    quiet = replace(make_hours(), quiet_spans=((at("15:00"), at("16:00")),))
    plan = planned(make_question(hours=quiet))
    (note,) = visit_notes(quiet, plan)
    assert (note.code, note.values["there"]) == ("notes-quiet-hour", False)
    plan = planned(make_question(hours=quiet, worth=Worth(quiet_hour=Decimal(20))))
    (note,) = visit_notes(quiet, plan)
    assert (note.values["there"], note.values["inside"]) == (True, timedelta(hours=1))


def test_driving_beyond_patience_weighs_by_the_stretch() -> None:
    """By hand: an hour each way, patience for 45 minutes: twice 15 minutes at 12.00 an hour are 6.00."""
    plan = planned(make_question(patience_minutes=45))
    name = "plan-impatience"
    (part,) = [part for part in plan.parts if part.name.code == name]
    assert part.minutes == 30
    assert part.felt == Money(Decimal(6), "USD")
    rested = make_leg(60, rests=((30, 15),))
    plan = planned(make_question(patience_minutes=45, way_there=rested, way_home=rested))
    assert name not in {part.name.code for part in plan.parts}


def test_a_child_may_sleep_through_a_show_in_the_pushchair() -> None:
    """A show does not wake a child: the nap is kept in the pushchair while the others watch."""
    napper = make_napper(
        "13:00", 60, slack_minutes=0, in_car=False, in_pushchair=True, falls_asleep_minutes=0
    )
    shows = with_shows(show("Sky", "13:10"))
    plan = planned(make_question(nappers=(napper,), hours=shows, habits=Habits(lunch=time(11, 30))))
    assert plan.shows[0].seen is not None
    assert plan.naps[0].kept == ((SleepsIn.PUSHCHAIR, 60),)
