"""Days with slack: chances added up minute by minute, held against drawing whole days at random."""

from dataclasses import replace
from datetime import datetime, time, timedelta
from decimal import Decimal
from statistics import NormalDist

import numpy as np
import pytest
from pydantic import ValidationError

from tests.planning.day.day_questions import CHICAGO, PUNCTUAL, TUESDAY, make_hours, make_leg, make_question
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.worth import Worth
from tripplan.language.sentences import say
from tripplan.planning.day import DayInProgress, DayPlan, DayQuestion, plan_day, slack
from tripplan.planning.day.times.minutes import Minutes
from tripplan.planning.day.weighing.delays import getting_off, longer_than_likely
from tripplan.planning.travel.drive import Journey, Leg, TimedLeg
from tripplan.values.ranges import Range

DRAWS = 200_000
CLOSE_ENOUGH = 0.005
"""Four standard errors of a chance from so many draws."""
NORMAL = NormalDist()


def unsure(leg: Leg, low: float, high: float) -> Leg:
    """The same leg with a range around its likely driving time."""
    minutes = Range(low, leg.drive_minutes, high)
    return replace(leg, drive=replace(leg.drive, minutes=minutes))


def drawn_delays(random: np.random.Generator, habits: Habits) -> Minutes:
    """Delays drawn from what the setting means: five minutes more are lognormal, never below zero."""
    usual, late = habits.usual_delay_minutes + 5, habits.late_one_day_in_ten_minutes + 5
    spread = np.log(late / usual) / NORMAL.inv_cdf(0.9)
    drawn = usual * np.exp(spread * random.standard_normal(DRAWS)) - 5
    whole: Minutes = np.clip(np.rint(drawn), 0, 12 * 60).astype(np.int64)
    return whole


def drawn_arrivals(random: np.random.Generator, way: Journey, starts: Minutes) -> Minutes:
    """Ends of a drive as it is at each start, its length drawn from a normal distribution in two halves."""
    legs = [way.at(start) for start in range(int(starts.max()) + 1)]
    low, likely, high = (
        np.array([getattr(leg.drive.minutes, end) for leg in legs])[starts]
        for end in ("low", "likely", "high")
    )
    z = random.standard_normal(DRAWS) / NORMAL.inv_cdf(0.95)
    longer = np.rint(np.where(z < 0, z * (likely - low), z * (high - likely))).astype(np.int64)
    ends: Minutes = starts + np.array([leg.minutes for leg in legs])[starts] + longer
    return ends


def drawn_day(question: DayQuestion, plan: DayPlan, due: str) -> tuple[list[float], list[float]]:
    """From whole days drawn, chances and minutes of the day.

    The chances to arrive by a clock time, to be home by the limit and by bedtime; and by when everybody is
    home on half of the days and on nine tenths.
    """
    random = np.random.default_rng(11)

    def minute(moment: datetime) -> int:
        local = moment.astimezone(CHICAGO)
        return local.hour * 60 + local.minute

    def clock(value: time) -> int:
        return value.hour * 60 + value.minute

    off = minute(plan.leave_home) + drawn_delays(random, question.habits)
    arrive = drawn_arrivals(random, question.way_there, off)
    (span,) = (span for span in question.hours.spans if span.opens <= plan.enter <= span.last_entry)
    opens, closes, last = minute(span.opens), minute(span.closes), minute(span.last_entry)
    entries = [minute(entry) for entry in question.hours.entry_times]
    leaves = []
    for came in arrive.tolist():
        let_in = min((e for e in entries if e >= came), default=None) if entries else max(came, opens)
        if let_in is None or let_in > last:
            leaves.append(came)
        else:
            leaves.append(min(max(minute(plan.leave_place), let_in + question.shortest_minutes), closes))
    start = np.array(leaves) + drawn_delays(random, question.habits)
    home = drawn_arrivals(random, question.way_home, start)
    bed = question.first_bed or time(23, 59)
    by = time.fromisoformat(due)
    chances = [
        float(np.mean(moments <= clock(limit)))
        for moments, limit in ((arrive, by), (home, question.habits.home_by), (home, bed))
    ]
    return chances, [float(np.quantile(home, share)) for share in (0.5, 0.9)]


TWO_SPANS = replace(
    make_hours(("09:00", "12:00"), ("14:00", "17:00")),
    spans=(
        *make_hours(("09:00", "12:00"), last_entry="10:00").spans,
        *make_hours(("14:00", "17:00")).spans,
    ),
)
"""Whoever misses the last entry at 10:00 turns round; nobody sits four hours in front of a door."""
MINUTES = np.arange(3 * 24 * 60)
RUSH = TimedLeg((make_leg(60), make_leg(90)), (MINUTES >= 9 * 60).astype(np.int16))
QUESTIONS = {
    "timed entry": (
        make_question(
            way_there=unsure(make_leg(), 50, 85),
            way_home=unsure(make_leg(), 55, 80),
            hours=make_hours(entry_times=("10:00", "13:00")),
            habits=Habits(home_by=time(16, 0)),
            first_bed=time(18, 0),
            grid_minutes=1,
        ),
        "10:00",
    ),
    "last entry": (
        make_question(
            way_there=unsure(make_leg(), 40, 70),
            way_home=unsure(make_leg(), 55, 95),
            hours=make_hours(("10:00", "15:00"), last_entry="12:00"),
            habits=Habits(
                earliest_departure=time(10, 30),
                home_by=time(15, 0),
                usual_delay_minutes=15,
                late_one_day_in_ten_minutes=45,
            ),
            first_bed=time(19, 0),
        ),
        "12:00",
    ),
    "rush hour": (
        make_question(
            way_there=RUSH,
            hours=make_hours(entry_times=("10:15", "11:30")),
            habits=Habits(usual_delay_minutes=0, late_one_day_in_ten_minutes=30, home_by=time(14, 30)),
            first_bed=time(18, 30),
        ),
        "10:15",
    ),
    "rush hour on the way home": (
        make_question(
            way_there=unsure(make_leg(), 50, 85),
            way_home=TimedLeg(
                (unsure(make_leg(60), 50, 80), unsure(make_leg(95), 80, 125)),
                ((MINUTES >= 14 * 60 + 15) & (MINUTES < 17 * 60)).astype(np.int16),
            ),
            hours=make_hours(("12:00", "17:00"), last_entry="14:00"),
            habits=Habits(usual_delay_minutes=10, late_one_day_in_ten_minutes=40, home_by=time(16, 30)),
            first_bed=time(17, 0),
        ),
        "14:00",
    ),
    "the morning of two spans": (
        make_question(
            way_there=unsure(make_leg(), 50, 85),
            way_home=unsure(make_leg(), 55, 80),
            hours=TWO_SPANS,
            habits=Habits(
                earliest_departure=time(8, 20),
                home_by=time(14, 0),
                usual_delay_minutes=10,
                late_one_day_in_ten_minutes=40,
            ),
            first_bed=time(14, 30),
        ),
        "10:00",
    ),
    "the afternoon of two spans": (
        make_question(
            way_there=unsure(make_leg(), 50, 85),
            way_home=unsure(make_leg(), 55, 80),
            hours=make_hours(("09:00", "11:00"), ("14:00", "17:00")),
            habits=Habits(earliest_departure=time(13, 0), home_by=time(18, 0)),
            first_bed=time(18, 15),
        ),
        "17:00",
    ),
}

CARELESS = Worth(missed_entry=Decimal(0))
"""What nuisances weigh to a parent who does not mind missing an entry, so that the plan aims just at it."""


@pytest.mark.parametrize("name", list(QUESTIONS))
def test_chances_are_those_of_drawing_the_day_many_times(name: str) -> None:
    """Late departures, slow roads and late entries drawn at random give the same three chances.

    Each day drawn has the range of the drive that it really takes, in rush hours or not.
    """
    question, due = QUESTIONS[name]
    plan = plan_day(question).best
    assert plan is not None
    found = slack(question, plan)
    if question.hours.entry_times:
        due = f"{plan.enter:%H:%M}"
    assert f"{found.entry:%H:%M}" == due
    chances, home = drawn_day(question, plan, due)
    told = [found.make_entry, found.home_in_time, found.home_before_bed]
    assert told == pytest.approx(chances, abs=CLOSE_ENOUGH)
    by_clock = [moment.hour * 60 + moment.minute for moment in (found.usually_home, found.nearly_always_home)]
    assert by_clock == pytest.approx(home, abs=1)


@pytest.mark.parametrize(("usual", "late"), [(5, 20), (0, 30), (15, 45), (10, 11)])
def test_a_delay_is_what_the_parent_said(usual: int, late: int) -> None:
    """Half of all days stay within the usual delay, nine of ten within the other; to half a minute."""
    delay = getting_off(Habits(usual_delay_minutes=usual, late_one_day_in_ten_minutes=late))
    assert delay.chances.sum() == pytest.approx(1)
    assert delay.at_most(usual - 1) < 0.5 <= delay.at_most(usual)
    assert delay.at_most(late - 1) < 0.9 <= delay.at_most(late)
    assert delay.at_most(-1) == 0


def test_a_family_that_is_never_later_than_usual_has_one_delay() -> None:
    """With both figures the same there is no doubt."""
    delay = getting_off(Habits(usual_delay_minutes=10, late_one_day_in_ten_minutes=10))
    assert (delay.at_most(9), delay.at_most(10)) == (0, 1)


def test_a_drives_range_is_its_middle_nine_tenths() -> None:
    """One drive in twenty is quicker than low, one in twenty slower than high; half within likely."""
    change = longer_than_likely(Range(50, 60, 90))
    assert change.at_most(-10) == pytest.approx(0.05, abs=0.01)
    assert 1 - change.at_most(30) == pytest.approx(0.05, abs=0.01)
    assert change.at_most(0) == pytest.approx(0.5, abs=0.04)
    assert change.chances.sum() == pytest.approx(1)


def test_drives_whose_ranges_are_as_wide_share_one_delay() -> None:
    """To the nearest minute and wherever they lie, so that a year of places needs few of them."""
    one = longer_than_likely(Range(50, 60, 90))
    assert longer_than_likely(Range(70.4, 80, 109.6)) is one
    assert longer_than_likely(Range(70.6, 80, 110)) is not one


def test_what_is_certain_has_no_doubt() -> None:
    """No delay and a known drive: the plan holds for certain, to the minute."""
    question = make_question(
        habits=Habits(usual_delay_minutes=0, late_one_day_in_ten_minutes=0), first_bed=time(12, 0)
    )
    plan = plan_day(question).best
    assert plan is not None
    found = slack(question, plan)
    assert (found.make_entry, found.home_in_time, found.home_before_bed) == (1, 1, 0)
    assert found.usually_home == found.nearly_always_home == plan.home


def test_the_place_closes_on_those_who_come_late() -> None:
    """In at 11:30 for a visit of an hour, out when it closes at noon, home after ten minutes and 65 more."""
    question = make_question(hours=make_hours(("10:00", "12:00")), habits=Habits(**PUNCTUAL))
    plan = plan_day(question).best
    assert plan is not None
    late = slack(question, replace(plan, leave_home=datetime.combine(TUESDAY, time(10, 15), CHICAGO)))
    assert f"{late.usually_home:%H:%M}" == f"{late.nearly_always_home:%H:%M}" == "13:15"


def test_a_sure_departure_makes_the_entry_nine_times_in_ten() -> None:
    """It is the last on the grid that does: five minutes later the chance is below nine in ten."""
    question = replace(QUESTIONS["timed entry"][0], grid_minutes=5, worth=CARELESS)
    plan = plan_day(question).best
    assert plan is not None
    sure = slack(question, plan).sure_departure
    assert sure is not None
    chances = [
        slack(question, replace(plan, leave_home=sure + timedelta(minutes=later))).make_entry
        for later in (0, 5)
    ]
    assert chances[0] >= 0.9 > chances[1]


def test_whoever_has_left_already_is_no_longer_late_in_leaving() -> None:
    """On a day that has begun only the drive is in doubt on the way there."""
    left = datetime.combine(TUESDAY, time(8, 40), CHICAGO)
    question = make_question(begun=DayInProgress(left, left), hours=make_hours(entry_times=("10:00",)))
    plan = plan_day(question).best
    assert plan is not None
    found = slack(question, plan)
    assert (found.make_entry, found.sure_departure) == (1, None)


def test_chances_are_said_as_parents_say_them() -> None:
    """'About 9 in 10' rather than a percentage, with the clock times they are about."""
    question = replace(QUESTIONS["timed entry"][0], worth=CARELESS)
    plan = plan_day(question).best
    assert plan is not None
    told = {chance.code: chance for chance in slack(question, plan).chances}
    assert list(told)[:2] == ["plan-chance-of-timed-entry", "plan-sure-by"]
    assert say("figures-almost-certain") in told["plan-chance-of-bed"].text


def test_delays_out_of_order_are_a_fault() -> None:
    """One day in ten cannot be more punctual than the usual one."""
    with pytest.raises(ValidationError, match="no less than the usual one"):
        Habits(usual_delay_minutes=30, late_one_day_in_ten_minutes=20)


def test_the_plan_leaves_slack_for_a_timed_entry() -> None:
    """Aiming just at the entry makes it on fewer than half of all days; the default plan on most."""
    question, _ = QUESTIONS["timed entry"]
    aimed, planned = plan_day(replace(question, worth=CARELESS)).best, plan_day(question).best
    assert aimed is not None
    assert planned is not None
    assert slack(question, aimed).make_entry < 0.5
    assert slack(question, planned).make_entry > 0.75


@pytest.mark.parametrize("name", list(QUESTIONS))
def test_the_search_weighs_the_chance_that_is_told(name: str) -> None:
    """What the plan weighs for a missed entry is its price times the chance that days with slack tell."""
    question, _ = QUESTIONS[name]
    plan = plan_day(question).best
    assert plan is not None
    missed = 1 - slack(question, plan).make_entry
    weighs = {part.name.code: part.felt.amount for part in plan.parts}
    what = "timed" if question.hours.entry_times else "last"
    price = question.worth.missed_entry
    felt = weighs.get(f"plan-late-for-{what}-entry", Decimal(0))
    assert float(felt) == pytest.approx(float(price) * missed, abs=float(price) / 1000)


@pytest.mark.parametrize(
    ("late", "there", "chance"), [("30", "10", 2 / 3), ("40", "10", 3 / 4), ("20", "10", 0.5)]
)
def test_time_to_spare_for_being_home_is_worth_what_it_costs(late: str, there: str, chance: float) -> None:
    """A stay is cut short until another minute less is worth no more than the chance to be home in time.

    So the chance of being late is the price of an hour there over that of an hour late, the critical fractile
    of the newsvendor problem. Source: K. J. Arrow, T. Harris, J. Marschak, Optimal Inventory Policy,
    Econometrica 19, 1951 (from memory).
    """
    worth = Worth(
        missed_hour_there=Decimal(there), hour_past_home_by=Decimal(late), hour_past_bedtime=Decimal(0)
    )
    question = make_question(
        hours=make_hours(("10:00", "21:00")), comfortable_minutes=600, worth=worth, grid_minutes=1
    )
    plan = plan_day(question).best
    assert plan is not None
    # One minute more or less changes the chance by up to 0.06, and weights are rounded to tenths of minutes.
    assert slack(question, plan).home_in_time == pytest.approx(chance, abs=0.07)


def test_without_a_price_on_being_late_the_plan_is_home_just_in_time() -> None:
    """Left at nothing, everybody is planned home at 7:00 PM sharp, and is on fewer than half of all days."""
    question = make_question(
        hours=make_hours(("10:00", "21:00")),
        comfortable_minutes=600,
        worth=Worth(hour_past_home_by=Decimal(0)),
        grid_minutes=1,
    )
    plan = plan_day(question).best
    assert plan is not None
    assert f"{plan.home:%H:%M}" == "19:00"
    assert slack(question, plan).home_in_time < 0.5
