"""The search against a plain walk through every minute of every plan."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from itertools import groupby
from zoneinfo import ZoneInfo

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tests.planning.day_questions import CHICAGO, make_hours, make_leg, make_question
from tripplan.planning.calendars import Busy
from tripplan.planning.day import DayQuestion, Napper, plan_day
from tripplan.planning.household import Habits, Nap, Worth
from tripplan.planning.travel.drive import Leg

MINUTE = timedelta(minutes=1)


@dataclass(frozen=True)
class Walked:
    """One plan as the plain walk sees it, costs in sixtieths of the currency's unit."""

    leave_home: datetime
    leave_place: datetime
    waited: int
    sixtieths: Decimal


def whereabouts(leg: Leg, start: int, name: str) -> list[tuple[int, str]]:
    """What every minute of a leg is spent on; two drives with a rest between them have two names."""
    minutes = ["load"] * leg.load_up_minutes
    for driven in range(leg.drive_minutes):
        for rest in leg.rests:
            if rest.after_minutes == driven:
                minutes += ["rest"] * rest.minutes
        stretch = sum(rest.after_minutes <= driven for rest in leg.rests)
        minutes.append(f"car {name} {stretch}")
    minutes += ["unload"] * leg.unload_minutes
    return list(enumerate(minutes, start))


def slept(nap: Nap, begins: int, places: dict[int, str], pushchair: bool) -> int:
    """The longest sleep of a nap that begins at a minute, walked minute by minute."""
    best = 0
    settled_for, asleep, where_before = 0, 0, None
    # Settling may begin before the nap does, so the walk starts hours earlier.
    for minute in range(begins - 600, begins + nap.minutes):
        where = places.get(minute, "home")
        settled_for = settled_for + 1 if where == where_before else 1
        asleep = asleep if where == where_before else 0
        where_before = where
        needs = 0 if where == "home" else nap.falls_asleep_minutes
        can = (
            where == "home"
            or (where.startswith("car") and nap.in_car)
            or (where.startswith("inside") and pushchair and nap.in_pushchair)
        )
        if can and settled_for > needs and minute >= begins:
            asleep += 1
            best = max(best, asleep)
    return best if best >= min(nap.shortest_minutes, nap.minutes) else 0


def walk(question: DayQuestion) -> list[Walked]:
    """Every plan of the day that keeps the limits, weighed without arrays or formulas."""
    midnight = datetime.combine(question.day, time(0), question.home_zone).astimezone(UTC)

    def minute(moment: datetime) -> int:
        return int((moment - midnight) / MINUTE)

    def clock(value: time) -> int:
        return minute(datetime.combine(question.day, value, question.home_zone))

    habits, worth = question.habits, question.worth
    there, back = question.way_there, question.way_home
    found = []
    for depart in range(0, 26 * 60, question.grid_minutes):
        if depart < clock(habits.earliest_departure):
            continue
        arrive = depart + there.minutes
        for leave in range(0, 26 * 60, question.grid_minutes):
            home = leave + back.minutes
            if home > clock(habits.home_by):
                continue
            if any(depart < minute(b.end) and minute(b.start) < home for b in question.busy):
                continue
            entries = [
                at
                for span in question.hours.spans
                for at in range(minute(span.opens), minute(span.last_entry) + 1)
                if at >= arrive
                and leave <= minute(span.closes)
                and (not question.hours.entry_times or at in map(minute, question.hours.entry_times))
            ]
            if not entries or leave - min(entries) < max(question.shortest_minutes, 1):
                continue
            enter = min(entries)
            places = dict(whereabouts(there, depart, "there") + whereabouts(back, leave, "home"))
            places |= dict.fromkeys(range(arrive, leave), "inside before lunch")
            lunch, length = clock(habits.lunch), min(habits.lunch_minutes, leave - enter)
            if depart < lunch + habits.lunch_minutes and home > lunch:
                begins = max(enter, min(lunch, leave - length))
                places |= dict.fromkeys(range(begins, begins + length), "lunch")
                places |= dict.fromkeys(range(begins + length, leave), "inside after lunch")
            lost = 0
            for napper in question.nappers:
                for nap in napper.naps:
                    usual = clock(nap.start)
                    shifts = range(usual - nap.slack_minutes, usual + nap.slack_minutes + 1)
                    lost += nap.minutes - max(
                        slept(nap, begins, places, question.pushchairs) for begins in shifts
                    )
            car = sum(where.startswith("car") for where in places.values()) + enter - arrive
            missed = max(0, question.comfortable_minutes - (leave - enter))
            found.append(
                Walked(
                    midnight + depart * MINUTE,
                    midnight + leave * MINUTE,
                    enter - arrive,
                    lost * worth.lost_nap_hour + car * worth.hour_in_car + missed * worth.missed_hour_there,
                )
            )
    return found


naps = st.builds(
    Nap,
    start=st.integers(8, 15).map(time),
    minutes=st.sampled_from([15, 45, 60, 100]),
    slack_minutes=st.sampled_from([0, 7, 20]),
    in_car=st.booleans(),
    in_pushchair=st.booleans(),
    falls_asleep_minutes=st.sampled_from([0, 10, 25]),
    shortest_minutes=st.sampled_from([0, 20, 40]),
)
legs = st.builds(
    make_leg,
    st.integers(41, 130),
    load_up=st.sampled_from([0, 10, 25]),
    unload=st.sampled_from([0, 5]),
    rests=st.sampled_from([(), ((40, 15),), ((20, 5), (40, 10))]),
)
prices = st.sampled_from([Decimal(0), Decimal("0.35"), Decimal(6), Decimal("10.01"), Decimal(40)])
days = st.sampled_from([date(2026, 12, 1), date(2026, 11, 1), date(2027, 3, 14)])
zones = st.sampled_from([CHICAGO, ZoneInfo("America/Indiana/Indianapolis")])


@st.composite
def questions(draw: st.DrawFn) -> DayQuestion:
    """Days with every kind of limit, on a coarse grid so that walking stays quick."""
    day, zone = draw(days), draw(zones)
    spans = draw(st.sampled_from([(("10:00", "17:00"),), (("09:30", "12:10"), ("13:45", "16:58"))]))
    entries = draw(st.sampled_from([(), ("10:00", "14:00"), ("11:20",)]))
    busy_from = datetime.combine(day, draw(st.integers(6, 18).map(time)), CHICAGO)
    busy = Busy(start=busy_from, end=busy_from + timedelta(minutes=45))
    return make_question(
        day=day,
        way_there=draw(legs),
        way_home=draw(legs),
        hours=make_hours(*spans, day=day, zone=zone, entry_times=entries),
        nappers=tuple(
            Napper(name, (nap,)) for name, nap in zip("DE", draw(st.lists(naps, max_size=2)), strict=False)
        ),
        pushchairs=draw(st.booleans()),
        shortest_minutes=draw(st.sampled_from([0, 45, 90])),
        comfortable_minutes=draw(st.sampled_from([0, 100, 200])),
        habits=Habits(
            earliest_departure=draw(st.sampled_from([time(1, 30), time(7), time(9, 10)])),
            home_by=draw(st.sampled_from([time(15), time(18, 20), time(21)])),
            lunch=draw(st.sampled_from([time(11, 30), time(12, 5)])),
            lunch_minutes=draw(st.sampled_from([0, 35])),
        ),
        worth=Worth(lost_nap_hour=draw(prices), hour_in_car=draw(prices), missed_hour_there=draw(prices)),
        busy=draw(st.sampled_from([(), (busy,)])),
        grid_minutes=draw(st.sampled_from([40, 60])),
    )


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(questions())
def test_the_search_finds_the_same_best_plan_as_walking_through_all_of_them(question: DayQuestion) -> None:
    """Least felt cost, then least waiting, then earliest: equal to an independent walk, to the cent."""
    walked = walk(question)
    found = plan_day(question)
    if not walked:
        assert found.best is None
        assert found.collisions
        return
    best = min(walked, key=lambda plan: (plan.sixtieths, plan.waited, plan.leave_home, plan.leave_place))
    assert found.best is not None
    assert (found.best.leave_home, found.best.leave_place) == (best.leave_home, best.leave_place)
    assert found.best.felt.amount == round_to_cents(best.sixtieths)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(questions())
def test_leave_windows_hold_just_the_departures_that_are_about_as_good(question: DayQuestion) -> None:
    """With up to five windows, a departure lies in one if and only if its best plan loses little."""
    walked = walk(question)
    windows = plan_day(question).windows
    assume(walked and len(windows) < 5)
    least = min(plan.sixtieths for plan in walked)
    allowed = least + max(Decimal(60), least * Decimal("0.02"))
    good = {plan.leave_home for plan in walked if plan.sixtieths <= allowed}
    assert {d for d in {p.leave_home for p in walked} if any(w.first <= d <= w.last for w in windows)} == good


def round_to_cents(sixtieths: Decimal) -> Decimal:
    """Whole cents, half up, by integers."""
    cents = sixtieths * 100 * 100  # in hundredths of a sixtieth of a cent, exact for prices in cents
    return Decimal((int(cents) + 3000) // 6000) / 100


def test_the_walk_itself_tells_stretches_of_driving_apart() -> None:
    """Self-check of the walk: a rest after 40 of 60 minutes leaves drives of 40 and 20 minutes."""
    minutes = whereabouts(make_leg(60, rests=((40, 15),)), 0, "there")
    runs = [(where, len(list(run))) for where, run in groupby(where for _, where in minutes)]
    assert runs == [("load", 10), ("car there 0", 40), ("rest", 15), ("car there 1", 20), ("unload", 5)]
