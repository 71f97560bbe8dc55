"""When to leave: the search over departures and stays around the children's naps."""

from tripplan.planning.day.beside_best import beside_the_best
from tripplan.planning.day.front import TradeOff, TradeOffs, against_best, trade_offs
from tripplan.planning.day.one_choice import TimesToTry, ViolatedLimit, plan_choice, times_to_try
from tripplan.planning.day.relaxation import Relaxation, helps_most
from tripplan.planning.day.search import plan_day
from tripplan.planning.day.times.shapes import (
    DayInProgress,
    DayPlan,
    DayQuestion,
    DaySearch,
    LeaveWindow,
    LunchPlace,
    NapOutcome,
    Napper,
    NuisanceCost,
    PlannedLunch,
    ShowOutcome,
    Step,
    StepKind,
)
from tripplan.planning.day.weighing.slack import Slack, slack

__all__ = [
    "DayInProgress",
    "DayPlan",
    "DayQuestion",
    "DaySearch",
    "LeaveWindow",
    "LunchPlace",
    "NapOutcome",
    "Napper",
    "NuisanceCost",
    "PlannedLunch",
    "Relaxation",
    "ShowOutcome",
    "Slack",
    "Step",
    "StepKind",
    "TimesToTry",
    "TradeOff",
    "TradeOffs",
    "ViolatedLimit",
    "against_best",
    "beside_the_best",
    "helps_most",
    "plan_choice",
    "plan_day",
    "slack",
    "times_to_try",
    "trade_offs",
]
