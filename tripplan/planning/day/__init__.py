"""When to leave: the search over departures and stays around the children's naps."""

from tripplan.planning.day.search import plan_day
from tripplan.planning.day.shapes import (
    DayPlan,
    DayQuestion,
    DaySearch,
    LeaveWindow,
    NapOutcome,
    Napper,
    SleepsIn,
    Step,
    StepKind,
)

__all__ = [
    "DayPlan",
    "DayQuestion",
    "DaySearch",
    "LeaveWindow",
    "NapOutcome",
    "Napper",
    "SleepsIn",
    "Step",
    "StepKind",
    "plan_day",
]
