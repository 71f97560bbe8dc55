"""Good times to leave side by side, each fact worked out by hand."""

from dataclasses import replace
from datetime import datetime, time
from decimal import Decimal

from tests.planning.day.day_questions import (
    CHICAGO,
    PUNCTUAL,
    TUESDAY,
    make_hours,
    make_napper,
    make_question,
)
from tripplan.documents.family.habits import Habits
from tripplan.planning.day import DayPlan, LeaveWindow, plan_choice
from tripplan.planning.outing.window_facts import WindowFact, span_sentence, window_facts
from tripplan.values.money import Money


def at(clock: str) -> datetime:
    """A time of that Tuesday."""
    return datetime.combine(TUESDAY, time.fromisoformat(clock), CHICAGO)


HOURS = replace(make_hours(), group_spans=((at("10:00"), at("12:30")),))
QUESTION = make_question(
    hours=HOURS, nappers=(make_napper("13:00", 60, in_car=True),), habits=Habits(**PUNCTUAL)
)


def window(first: str, last: str, leave_home: str, leave_place: str) -> LeaveWindow:
    """Some departures, with one plan of theirs."""
    plan = plan_choice(QUESTION, at(leave_home), at(leave_place))
    assert isinstance(plan, DayPlan)
    return LeaveWindow(at(first), at(last), plan)


def test_each_window_is_told_by_its_best_plan() -> None:
    """By hand: ten minutes to load, an hour to drive, five to unload.

    Leaving at 8:30 they wait a quarter of an hour for the door at 10:00 and drive from 12:10 to 13:10, too
    early for a nap at one that may move half an hour: it is slept at home. Leaving at 11:00 they are there at
    12:15, a quarter of an hour of it among classes, and drive from 14:25 to 15:25, too late for the nap.
    """
    early, late = window("08:30", "08:45", "08:30", "12:00"), window("11:00", "11:00", "11:00", "14:15")
    assert [span_sentence(one) for one in (early, late)] == ["8:30 AM to 8:45 AM", "11:00 AM"]
    facts = window_facts(HOURS, (early, late))
    assert facts[:6] == (
        WindowFact("load up", ("8:30 AM", "11:00 AM")),
        WindowFact("drive off", ("8:40 AM", "11:10 AM")),
        WindowFact("let in", ("10:00 AM, as it opens, after waiting 15 min", "12:15 PM")),
        WindowFact("time there", ("2 h", "1 h 25 min")),
        WindowFact("with school groups there", ("2 h", "15 min")),
        WindowFact("lunch", ("1:15 PM, at home", "12:15 PM, there")),
    )
    assert facts[6:] == (
        WindowFact("Di's nap", ("1 h of 1 h kept, at home", "lost (1 h)")),
        WindowFact("driving, both ways", ("2 h", "2 h")),
        WindowFact("home", ("1:15 PM", "3:30 PM")),
    )


def test_classes_are_told_only_where_they_come_and_two_naps_in_one_line() -> None:
    """Out of term there is no such line; a child with two naps has one line."""
    twice = (make_napper("09:30", 45), make_napper("14:00", 60))
    napper = replace(twice[0], naps=(*twice[0].naps, *twice[1].naps))
    question = make_question(nappers=(napper,))
    plan = plan_choice(question, at("10:00"), at("13:00"))
    assert isinstance(plan, DayPlan)
    names = [
        fact.name for fact in window_facts(question.hours, (LeaveWindow(at("10:00"), at("10:00"), plan),))
    ]
    assert names == [
        "load up",
        "drive off",
        "let in",
        "time there",
        "lunch",
        "Di's naps",
        "driving, both ways",
        "home",
    ]


def test_windows_that_cost_different_amounts_say_so() -> None:
    """With one price all day nothing is told of it."""
    early, late = window("08:30", "08:45", "08:30", "12:00"), window("11:00", "11:00", "11:00", "14:15")
    plans = [
        replace(one, best=replace(one.best, spent=usd(amount))) for one, amount in ((early, 41), (late, 38))
    ]
    assert window_facts(HOURS, plans)[-1] == WindowFact("total", ("$41.00", "$38.00"))
    same = [replace(one, best=replace(one.best, spent=usd(41))) for one in (early, late)]
    assert window_facts(HOURS, same)[-1].name == "home"


def usd(dollars: int) -> Money:
    """So many dollars."""
    return Money(Decimal(dollars), "USD")
