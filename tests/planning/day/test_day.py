from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest

from tests.planning.day.day_questions import (
    CHICAGO,
    PUNCTUAL,
    TUESDAY,
    make_hours,
    make_leg,
    make_napper,
    make_question,
)
from tripplan.documents.calendars.calendars import Busy
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.member import Nap, SleepsIn
from tripplan.documents.family.worth import Worth
from tripplan.errors import PlanError
from tripplan.language.sentences import Fact, fact
from tripplan.planning.day import (
    DayPlan,
    DayQuestion,
    LunchPlace,
    Napper,
    StepKind,
    plan_choice,
    plan_day,
    slack,
)
from tripplan.planning.opening.hours import DayHours, Openness, ShowTimes
from tripplan.values.money import Money
from tripplan.values.weekday import Weekday

PUSHCHAIR = {"slack_minutes": 0, "in_pushchair": True}
INDIANAPOLIS = ZoneInfo("America/Indiana/Indianapolis")


def best_of(question: DayQuestion) -> DayPlan:
    """The best plan of a day that must have one."""
    best = plan_day(question).best
    assert best is not None
    return best


def clock(moment: datetime) -> str:
    """Time of day by the moment's own zone."""
    return f"{moment:%H:%M}"


def test_nobody_napping_the_family_arrives_at_opening_without_waiting() -> None:
    """With nothing to weigh but the stay, the earliest day that never waits wins."""
    best = best_of(make_question())
    assert [clock(m) for m in (best.leave_home, best.enter, best.leave_place, best.home)] == [
        "08:45",
        "10:00",
        "12:00",
        "13:15",
    ]
    assert (best.visit_minutes, best.car_minutes) == (120, 120)


def test_nobody_goes_in_at_ten_for_a_show_at_three() -> None:
    """Time beyond a comfortable stay weighs a little: two hours that end with the show, in from 1:30 PM."""
    starts = (datetime.combine(TUESDAY, time(15), CHICAGO),)
    shows = (ShowTimes("Feeding", starts, 30, worth_it=True),)
    habits = Habits(lunch_minutes=0, **PUNCTUAL)
    best = best_of(make_question(hours=replace(make_hours(), shows=shows), habits=habits))
    assert [clock(best.enter), clock(best.leave_place)] == ["13:30", "15:30"]
    assert {part.name.code for part in best.parts} == {"plan-driving"}


def test_an_hour_beyond_a_comfortable_stay_weighs_what_the_parent_says() -> None:
    """Let in at ten and kept until one by a show at half past twelve: an hour beyond two, at 3.00."""
    starts = (datetime.combine(TUESDAY, time(12, 30), CHICAGO),)
    hours = make_hours(entry_times=("10:00",))
    best = best_of(
        make_question(
            hours=replace(hours, shows=(ShowTimes("Feeding", starts, 30, worth_it=True),)),
            worth=Worth(hour_beyond_comfortable=Decimal(3)),
            habits=Habits(**PUNCTUAL),
        )
    )
    weighs = {part.name.code: part.felt.amount for part in best.parts}
    assert weighs["plan-long-stay"] == Decimal(3)


def test_of_plans_that_weigh_the_same_the_shortest_day_is_best() -> None:
    """Where time beyond a comfortable stay weighs nothing, nobody is kept longer all the same."""
    worth = Worth(hour_beyond_comfortable=Decimal(0), missed_entry=Decimal(0), hour_past_home_by=Decimal(0))
    best = best_of(make_question(worth=worth))
    assert (clock(best.leave_home), best.visit_minutes) == ("08:45", 120)


def test_the_nuisance_cost_is_the_nuisances_at_the_parents_prices() -> None:
    """Two hours of driving at 6.00 and half an hour missed at 10.00 weigh 17.00."""
    best = best_of(
        make_question(hours=make_hours(("10:00", "11:30")), habits=Habits(lunch_minutes=0, **PUNCTUAL))
    )
    assert best.felt == Money(Decimal("17.00"), "USD")


def test_the_nuisance_cost_is_rounded_once_to_the_smallest_coin() -> None:
    """Two hours in the car at 5.005 are 10.01, not twice 5.01."""
    best = best_of(make_question(worth=Worth(hour_in_car=Decimal("5.005"))))
    assert best.felt == Money(Decimal("10.01"), "USD")


def test_steps_fill_the_day_without_gaps() -> None:
    """Every step begins where the one before ends, from leaving home to being home."""
    rests = ((40, 15),)
    best = best_of(make_question(way_there=make_leg(rests=rests), way_home=make_leg(rests=rests)))
    assert (best.steps[0].start, best.steps[-1].end) == (best.leave_home, best.home)
    assert all(earlier.end == later.start for earlier, later in pairwise(best.steps))
    assert [step.kind for step in best.steps[:5]] == [
        StepKind.LOAD_UP,
        StepKind.DRIVE,
        StepKind.REST,
        StepKind.DRIVE,
        StepKind.UNLOAD,
    ]
    minutes = {kind: timedelta(0) for kind in StepKind}
    for step in best.steps:
        minutes[step.kind] += step.end - step.start
    assert minutes[StepKind.DRIVE] == timedelta(minutes=best.car_minutes)
    assert minutes[StepKind.VISIT] + minutes[StepKind.LUNCH] == timedelta(minutes=best.visit_minutes)


@pytest.mark.parametrize(
    ("lunch", "expected"),
    [("11:00", "11:00-11:35"), ("09:30", "10:00-10:35"), ("12:10", "11:25-12:00"), ("14:00", None)],
)
def test_lunch_is_as_near_to_lunch_time_as_the_visit_allows(lunch: str, expected: str | None) -> None:
    """Inside if the family is there, else on arrival or before leaving, at home if it is back by then."""
    habits = Habits(lunch=time.fromisoformat(lunch))
    hungry = Worth(missed_hour_there=Decimal(0), hour_late_lunch=Decimal(60))
    question = make_question(habits=habits, hours=make_hours(("10:00", "12:00")), worth=hungry)
    plan = plan_choice(question, *(datetime.combine(TUESDAY, at, CHICAGO) for at in (time(8, 45), time(12))))
    assert isinstance(plan, DayPlan)
    meals = [f"{clock(s.start)}-{clock(s.end)}" for s in plan.steps if s.kind is StepKind.LUNCH]
    assert meals == ([expected] if expected else [])


def test_a_nap_at_home_moves_the_departure() -> None:
    """A costly nap that works only at home is slept out before or after the outing."""
    napper = make_napper("10:00", 90, in_car=False, slack_minutes=0)
    best = best_of(make_question(nappers=(napper,), worth=Worth(lost_nap_hour=Decimal(90))))
    (nap,) = best.naps
    assert nap.kept == ((SleepsIn.HOME, 90),)
    assert best.leave_home >= datetime(2026, 12, 1, 11, 30, tzinfo=CHICAGO)


def test_a_nap_nobody_values_is_given_up() -> None:
    """With a lost nap worth nothing the day is that of a family without naps."""
    napper = make_napper("10:00", 90, in_car=False, slack_minutes=0)
    free = Worth(lost_nap_hour=Decimal(0))
    assert best_of(make_question(nappers=(napper,), worth=free)).steps == best_of(make_question()).steps


def fixed_day(**changes: object) -> DayQuestion:
    """A day with one entry time, so that the drive there runs from 08:55 to 09:55."""
    return make_question(
        hours=make_hours(("10:00", "12:00"), entry_times=("10:00",)),
        habits=Habits(earliest_departure=time(8, 45), home_by=time(13, 15), lunch=time(11, 0)),
        shortest_minutes=120,
        **changes,
    )


@pytest.mark.parametrize(
    ("nap", "kept"),
    [
        ({"start": "09:00", "minutes": 45}, ((SleepsIn.CAR, 45),)),
        ({"start": "09:30", "minutes": 60, "slack_minutes": 0}, ((SleepsIn.CAR, 25),)),
        ({"start": "09:30", "minutes": 60, "slack_minutes": 30}, ((SleepsIn.CAR, 50),)),
        ({"start": "09:30", "minutes": 60, "slack_minutes": 0, "shortest_minutes": 26}, ()),
        (
            {"start": "09:40", "minutes": 15, "slack_minutes": 0, "shortest_minutes": 60},
            ((SleepsIn.CAR, 15),),
        ),
        ({"start": "09:00", "minutes": 45, "falls_asleep_minutes": 40}, ((SleepsIn.CAR, 20),)),
        ({"start": "09:00", "minutes": 45, "in_car": False, "slack_minutes": 0}, ()),
        ({"start": "08:00", "minutes": 45, "slack_minutes": 0}, ((SleepsIn.HOME, 45),)),
        ({"start": "13:15", "minutes": 45, "slack_minutes": 0}, ((SleepsIn.HOME, 30),)),
        ({"start": "10:10", "minutes": 45, "slack_minutes": 0}, ()),
        (
            {"start": "10:10", "minutes": 45, **PUSHCHAIR},
            ((SleepsIn.PUSHCHAIR, 45),),
        ),
        (
            {"start": "10:40", "minutes": 60, **PUSHCHAIR},
            ((SleepsIn.PUSHCHAIR, 60),),
        ),
    ],
)
def test_a_nap_is_kept_by_its_longest_unbroken_stretch(
    nap: dict[str, object], kept: tuple[tuple[SleepsIn, int], ...]
) -> None:
    """Worked out by hand: drive 08:55-09:55, at the place 10:00-12:00, lunch 11:00-11:35, home 13:15.

    Who comes home awake sleeps 15 minutes later.
    """
    best = best_of(fixed_day(nappers=(Napper("Di", (Nap.model_validate(nap),)),)))
    assert best.naps[0].kept == kept


def test_a_rest_on_the_way_wakes_the_child() -> None:
    """Of an hour's drive with a rest after 40 minutes, 10 of them to fall asleep, 30 minutes count."""
    leg = make_leg(60, rests=((40, 5),), load_up=5)
    napper = make_napper("09:00", 50, slack_minutes=20)
    best = best_of(fixed_day(nappers=(napper,), way_there=leg, way_home=leg))
    assert best.naps[0].kept == ((SleepsIn.CAR, 30),)


def test_a_pushchair_nap_needs_a_place_that_allows_pushchairs() -> None:
    """Where no pushchair may go, the child that sleeps in one stays awake."""
    napper = make_napper("10:10", 45, slack_minutes=0, in_pushchair=True)
    best = best_of(fixed_day(nappers=(napper,), pushchairs=False))
    assert best.naps[0].kept == ()


def test_two_naps_of_one_child_do_not_share_a_sleep() -> None:
    """Each of two naps alone would have 40 minutes of the one car sleep of 50; both have half of it.

    By hand: asleep in the car from 09:05 to 09:55, slacks from 08:55 to 09:55 and from 09:05 to 10:05, which
    meet half way between 09:05 and 09:55.
    """
    naps = tuple(
        Nap(start=time.fromisoformat(start), minutes=40, slack_minutes=10, shortest_minutes=5)
        for start in ("09:05", "09:15")
    )
    alone = [best_of(fixed_day(nappers=(Napper("Di", (nap,)),))).naps[0].kept for nap in naps]
    assert alone == [((SleepsIn.CAR, 40),)] * 2
    both = best_of(fixed_day(nappers=(Napper("Di", naps),))).naps
    assert [nap.kept for nap in both] == [((SleepsIn.CAR, 25),)] * 2


def test_the_sleep_lies_as_near_to_the_usual_time_as_the_place_allows() -> None:
    """Car asleep from 09:05 to 09:55: a nap usual at 9:00 begins late, one usual at 9:15 is on time."""
    late, on_time = make_napper("09:00", 45), make_napper("09:15", 30, "El")
    naps = best_of(fixed_day(nappers=(late, on_time))).naps
    assert [[clock(moment) for moment in nap.asleep or ()] for nap in naps] == [
        ["09:05", "09:50"],
        ["09:15", "09:45"],
    ]
    assert [(clock(nap.usual_start), clock(nap.usual_end)) for nap in naps] == [
        ("09:00", "09:45"),
        ("09:15", "09:45"),
    ]


def test_every_usual_nap_has_its_outcome() -> None:
    """One outcome per nap, child by child, and kept with lost make the usual length."""
    twice = Napper("El", (Nap(start=time(9, 30), minutes=40), Nap(start=time(13), minutes=90)))
    best = best_of(make_question(nappers=(make_napper(), twice)))
    assert [(nap.member, nap.usual_minutes) for nap in best.naps] == [("Di", 100), ("El", 40), ("El", 90)]
    assert all(nap.kept_minutes + nap.lost_minutes == nap.usual_minutes for nap in best.naps)


def test_waiting_to_be_let_in_weighs_like_the_car() -> None:
    """Leaving 45 minutes early on a two-hour grid costs 45 minutes at 6.00 an hour: 4.50."""
    habits = Habits(earliest_departure=time(7, 45), home_by=time(13, 15), **PUNCTUAL)
    awake = Worth(hour_early_departure=Decimal(0))
    timed = make_question(
        worth=awake, habits=habits, hours=make_hours(("10:00", "12:00"), entry_times=("10:00",))
    )
    on_time, early = best_of(timed), best_of(replace(timed, grid_minutes=120))
    assert (clock(on_time.leave_home), clock(early.leave_home)) == ("08:45", "08:00")
    assert early.felt.amount - on_time.felt.amount == Decimal("4.50")
    assert [step.kind for step in early.steps][3] is StepKind.WAIT


@pytest.mark.parametrize(
    ("changes", "departure"),
    [
        ({"habits": Habits(earliest_departure=time(9, 2), lunch_minutes=0)}, "09:05"),
        ({"last_wakes": time(9, 30)}, "09:30"),
        ({"hours": make_hours(entry_times=("11:30",)), "habits": Habits(**PUNCTUAL)}, "10:15"),
        ({"hours": make_hours(("13:00", "17:00")), "habits": Habits(lunch_minutes=0)}, "11:45"),
    ],
)
def test_hard_limits_move_the_departure(changes: dict[str, object], departure: str) -> None:
    """Earliest departure, waking, entry time and opening each set the earliest useful departure."""
    assert clock(best_of(make_question(**changes)).leave_home) == departure


def test_where_it_opens_after_lunch_time_the_family_eats_at_home_first() -> None:
    """Lunch at noon takes 35 minutes; who wants all of the afternoon eats while waiting for one."""
    afternoon = make_question(hours=make_hours(("13:00", "17:00")), habits=Habits(home_by=time(16)))
    at_home = best_of(replace(afternoon, habits=Habits()))
    assert (clock(at_home.leave_home), at_home.lunch_out) == ("12:35", False)
    hurried = best_of(replace(afternoon, worth=Worth(missed_hour_there=Decimal(30))))
    weighs = {part.name.code: (part.minutes, part.felt.amount) for part in hurried.parts}
    assert hurried.lunch is not None
    assert (clock(hurried.enter), hurried.lunch.place) == ("13:00", LunchPlace.OUTSIDE)
    assert weighs["plan-late-lunch"] == (25, Decimal("2.5"))
    unhurried = best_of(replace(afternoon, worth=Worth(hour_early_lunch=Decimal(0))))
    assert clock(unhurried.leave_home) == "11:50"


def test_the_day_keeps_clear_of_engagements() -> None:
    """From load-up to home again nothing in the family calendar is touched."""
    busy = Busy(
        start=datetime(2026, 12, 1, 8, 0, tzinfo=CHICAGO), end=datetime(2026, 12, 1, 10, 3, tzinfo=CHICAGO)
    )
    best = best_of(make_question(busy=(busy,)))
    assert clock(best.leave_home) == "10:05"


@pytest.mark.parametrize(("entries", "windows"), [(4, 4), (8, 5)])
def test_no_more_than_five_windows_are_told(entries: int, windows: int) -> None:
    """Each hourly entry has a window of its own, as an hour's waiting costs more; the best five stay."""
    entry_times = tuple(f"{hour:02}:00" for hour in range(9, 9 + entries))
    question = make_question(
        hours=make_hours(("09:00", "19:00"), entry_times=entry_times),
        habits=Habits(usual_departure=time(7), home_by=time(21), lunch_minutes=0, **PUNCTUAL),
    )
    search = plan_day(question)
    assert len(search.windows) == windows
    assert len({window.best.enter for window in search.windows}) == windows
    assert search.best in [window.best for window in search.windows]


def test_leave_windows_are_in_order_and_hold_the_best() -> None:
    """Windows do not touch, each best plan lies within its window, one of them is the best of the day."""
    napper = make_napper("12:30", 120, in_car=False)
    search = plan_day(make_question(nappers=(napper,)))
    assert 1 <= len(search.windows) <= 5
    assert all(w.first <= w.best.leave_home <= w.last for w in search.windows)
    assert all(earlier.last < later.first for earlier, later in pairwise(search.windows))
    assert search.best in [window.best for window in search.windows]


@pytest.mark.parametrize("day", [date(2026, 11, 1), date(2027, 3, 14)])
def test_clock_changes_do_not_bend_the_day(day: date) -> None:
    """On the days clocks change, times by the clock are as ever and the drive takes its hour."""
    best = best_of(make_question(day=day, hours=make_hours(day=day), nappers=(make_napper(),)))
    plain = best_of(make_question(nappers=(make_napper(),)))
    assert [clock(s.start) for s in best.steps] == [clock(s.start) for s in plain.steps]
    assert [nap.kept for nap in best.naps] == [nap.kept for nap in plain.naps]


@pytest.mark.parametrize(("day", "hours_away"), [(date(2026, 11, 1), 4), (date(2027, 3, 14), 4)])
def test_a_drive_through_the_clock_change_takes_the_time_it_takes(day: date, hours_away: int) -> None:
    """Leaving at 01:30 across the change, steps add up in elapsed time although the clock jumps."""
    question = make_question(
        day=day,
        hours=make_hours(("00:00", "12:00"), day=day),
        habits=Habits(earliest_departure=time(1, 30), usual_departure=time(1, 30)),
        comfortable_minutes=90,
    )
    best = best_of(question)
    away = best.home.astimezone(UTC) - best.leave_home.astimezone(UTC)
    assert (clock(best.leave_home), away) == ("01:30", timedelta(hours=hours_away))
    assert clock(best.home) == {"2026-11-01": "04:30", "2027-03-14": "06:30"}[str(day)]


def test_a_place_in_another_zone_is_entered_by_its_own_clock() -> None:
    """Ten in Indianapolis is nine in Chicago; each step shows the clock of where it happens."""
    habits = Habits(usual_departure=time(7), lunch_minutes=0)
    best = best_of(make_question(hours=make_hours(zone=INDIANAPOLIS), habits=habits))
    assert [clock(m) for m in (best.leave_home, best.enter, best.leave_place, best.home)] == [
        "07:45",
        "10:00",
        "12:00",
        "12:15",
    ]
    kinds = {step.kind: step.start.tzinfo for step in best.steps}
    assert (kinds[StepKind.DRIVE], kinds[StepKind.VISIT]) == (CHICAGO, INDIANAPOLIS)


def test_a_place_that_is_closed_is_a_callers_mistake() -> None:
    """Only an open day can be planned."""
    closed = DayHours(Openness.CLOSED, (), (), (), fact("hours-closed-weekday", day=Weekday.TUESDAY))
    with pytest.raises(PlanError, match="closed on Tuesdays"):
        plan_day(make_question(hours=closed))


AN_HOUR = fact("plan-limit-stay", shortest=timedelta(hours=1))


def home_by(hour: int) -> Fact:
    """The limit in the evening."""
    return fact("plan-limit-home", latest=datetime.combine(TUESDAY, time(hour), CHICAGO))


def leaving_from(hour: int, minute: int = 0) -> Fact:
    """The limit in the morning."""
    return fact("plan-limit-leaving", earliest=datetime.combine(TUESDAY, time(hour, minute), CHICAGO))


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        (
            {"habits": Habits(home_by=time(12, 0))},
            (
                fact("plan-too-long", over=timedelta(minutes=15), stay=AN_HOUR, home=home_by(12)),
                fact("plan-stay-too-long", stay=AN_HOUR, left=timedelta(minutes=45)),
            ),
        ),
        (
            {"habits": Habits(earliest_departure=time(15, 0))},
            (
                fact(
                    "plan-too-late",
                    over=timedelta(minutes=15),
                    stay=AN_HOUR,
                    home=home_by(19),
                    leaving=leaving_from(15),
                ),
                fact("plan-stay-too-long", stay=AN_HOUR, left=timedelta(minutes=45)),
            ),
        ),
        (
            {"shortest_minutes": 450},
            (
                fact(
                    "plan-stay-too-long",
                    stay=fact("plan-limit-stay", shortest=timedelta(minutes=450)),
                    left=timedelta(hours=7),
                ),
            ),
        ),
        (
            {"way_there": make_leg(18 * 60)},
            (fact("plan-nobody-let-in", drive=timedelta(hours=18, minutes=15)),),
        ),
        (
            {
                "habits": Habits(earliest_departure=time(16, 30), home_by=time(12, 0)),
                "hours": make_hours(("10:00", "16:00")),
                "way_home": make_leg(3 * 60),
            },
            (fact("plan-limits-together", limits=(leaving_from(16, 30), home_by(12))),),
        ),
    ],
)
def test_an_impossible_day_says_which_limits_collide(
    changes: dict[str, object], expected: tuple[Fact, ...]
) -> None:
    """Each reason names limits that would make the day possible if they gave way, and by how much."""
    search = plan_day(make_question(**changes))
    assert (search.best, search.windows) == (None, ())
    assert search.collisions == expected


def test_an_engagement_all_day_is_named_as_the_obstacle() -> None:
    """A busy day is told apart from a day that is too short."""
    busy = Busy(
        start=datetime(2026, 12, 1, tzinfo=CHICAGO),
        end=datetime(2026, 12, 2, tzinfo=CHICAGO),
        name="dentist",
    )
    taken = fact("plan-limit-taken-by", names=("dentist",))
    assert plan_day(make_question(busy=(busy,))).collisions == (fact("plan-no-room", taken=taken),)


def test_the_same_question_has_the_same_answer() -> None:
    """Nothing is kept between two searches."""
    question = make_question(nappers=(make_napper(),))
    assert plan_day(question) == plan_day(question)
    assert question.day == TUESDAY


def test_home_by_half_past_midnight_is_in_the_night_after() -> None:
    """A show from 8 to 10 PM, an hour's drive away: home before 12:30 AM, and not by noon the same day."""
    hours = make_hours(("19:00", "22:00"))
    question = make_question(hours=hours, habits=Habits(home_by=time(0, 30), **PUNCTUAL))
    best = best_of(question)
    by = datetime.combine(TUESDAY + timedelta(days=1), time(0, 30), CHICAGO)
    assert datetime.combine(TUESDAY, time(20), CHICAGO) < best.home <= by
    assert slack(question, best).home_by == by
    assert plan_day(replace(question, habits=Habits(home_by=time(12), **PUNCTUAL))).best is None
