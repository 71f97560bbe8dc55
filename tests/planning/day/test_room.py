"""A day has room for a visit exactly where some departure and leaving time keep its limits."""

from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.planning.day.day_questions import CHICAGO, TUESDAY
from tripplan.documents.family.habits import RushHours
from tripplan.planning.day.room import has_room
from tripplan.planning.day.times.choices import Choices
from tripplan.planning.day.times.legs import LegTimes
from tripplan.planning.day.times.limits import Limits, OpeningMinutes
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.timed_legs import timed_leg
from tripplan.planning.travel.drive import Drive, KnownBy, Leg
from tripplan.planning.travel.rests import plan_leg
from tripplan.values.ranges import Origin, Range, Source


@st.composite
def ways(draw: st.DrawFn) -> LegTimes:
    """A drive with rests, in half of the cases through rush hours."""
    minutes = draw(st.integers(5, 200))
    known = Range.exactly(float(minutes))
    drive = Drive(known, known, KnownBy.TYPED, Source(Origin.PARENT, "drawn"))
    stretch, rest = draw(st.integers(20, 120)), draw(st.integers(0, 30))
    around = draw(st.integers(0, 30))

    def leg_of(drive_minutes: int | None) -> Leg:
        return plan_leg(
            drive,
            load_up_minutes=around,
            unload_minutes=around // 2,
            drive_at_most_minutes=stretch,
            rest_minutes=rest,
            drive_minutes=drive_minutes,
        )

    rush = RushHours.model_validate({"start": "07:00", "end": "09:30", "factor": Decimal("1.8")})
    evening = RushHours.model_validate({"start": "15:10", "end": "18:05", "factor": Decimal("1.3")})
    hours = draw(st.sampled_from(((), (rush, evening))))
    return LegTimes(timed_leg(leg_of, hours, DayMinutes(TUESDAY, CHICAGO)))


@st.composite
def limits(draw: st.DrawFn) -> Limits:
    """A day with one or two times of opening, timed entries on some days."""
    opened = []
    begin = draw(st.integers(420, 900))
    for _ in range(draw(st.integers(1, 2))):
        end = begin + draw(st.integers(20, 420))
        last = draw(st.integers(begin, end))
        entries = draw(st.none() | st.lists(st.integers(begin, last), max_size=3).map(sorted))
        opened.append(OpeningMinutes(begin, end, last, None if entries is None else tuple(entries)))
        begin = end + draw(st.integers(1, 120))
    there = draw(ways())
    return Limits(
        earliest=draw(st.integers(360, 660)),
        home_by=draw(st.integers(720, 1380)),
        shortest=draw(st.integers(1, 240)),
        busy=(),
        opened=tuple(opened),
        there=there,
        back=there if draw(st.booleans()) else draw(ways()),
        grid=draw(st.sampled_from((5, 5, 15, 1))),
    )


@settings(max_examples=150)
@given(limits())
def test_there_is_room_where_a_choice_is_possible(day: Limits) -> None:
    """Against looking at every departure with every leaving time."""
    assert has_room(day) == bool(Choices.of(day).possible.any())
