"""Small valid questions about a day for tests; every field can be changed by name."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, time
from typing import Any
from zoneinfo import ZoneInfo

from tripplan.documents.family.habits import Habits
from tripplan.documents.family.member import Nap
from tripplan.documents.family.worth import Worth
from tripplan.language.sentences import fact
from tripplan.planning.day import DayQuestion, Napper
from tripplan.planning.day.best import Asked, BestChoice, best_between
from tripplan.planning.opening.hours import DayHours, Openness, OpenSpan
from tripplan.planning.travel.drive import Drive, KnownBy, Leg, Rest
from tripplan.values.ranges import Origin, Range, Source

CHICAGO = ZoneInfo("America/Chicago")
TUESDAY = date(2026, 12, 1)


def make_leg(
    drive: int = 60, *, load_up: int = 10, unload: int = 5, rests: tuple[tuple[int, int], ...] = ()
) -> Leg:
    """A drive of so many minutes; rests as (after minutes of driving, length)."""
    known = Drive(
        Range.exactly(drive), Range.exactly(drive), KnownBy.TYPED, Source(Origin.PARENT, "written for tests")
    )
    return Leg(known, load_up, drive, tuple(Rest(after, length) for after, length in rests), unload)


def make_hours(
    *spans: tuple[str, str],
    day: date = TUESDAY,
    zone: ZoneInfo = CHICAGO,
    last_entry: str | None = None,
    entry_times: tuple[str, ...] = (),
) -> DayHours:
    """An open day; spans as clock times at the place, 10:00 to 17:00 when left out."""

    def at(clock: str) -> datetime:
        return datetime.combine(day, time.fromisoformat(clock), zone)

    return DayHours(
        Openness.OPEN,
        tuple(
            OpenSpan(at(opens), at(closes), at(last_entry or closes))
            for opens, closes in spans or (("10:00", "17:00"),)
        ),
        tuple(at(clock) for clock in entry_times),
        (),
        fact("hours-open"),
    )


def make_napper(start: str = "12:30", minutes: int = 100, member: str = "Di", **changes: Any) -> Napper:
    """A child with one usual nap."""
    return Napper(member, (Nap.model_validate({"start": start, "minutes": minutes, **changes}),))


PUNCTUAL: dict[str, Any] = {"usual_delay_minutes": 0, "late_one_day_in_ten_minutes": 0}
"""Habits of a family that is never late."""


def make_question(**changes: Any) -> DayQuestion:
    """An hour's drive to a place open from 10 to 17, nobody napping, and no lunch to think of."""
    question = DayQuestion(
        day=TUESDAY,
        home_zone=CHICAGO,
        way_there=make_leg(),
        way_home=make_leg(),
        hours=make_hours(),
        nappers=(),
        pushchairs=True,
        shortest_minutes=60,
        comfortable_minutes=120,
        habits=Habits(lunch_minutes=0),
        worth=Worth(),
        busy=(),
        currency="USD",
    )
    return replace(question, **changes)


def best_choices(questions: Sequence[DayQuestion]) -> list[BestChoice | None]:
    """The best choice of each day as it is asked, all of them weighed together."""
    return [found.choices[0] for (found,) in best_between(questions, [[Asked()]] * len(questions))]
