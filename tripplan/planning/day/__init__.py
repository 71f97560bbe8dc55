"""When to leave: the search over departures and stays around the children's naps."""

from tripplan.planning.day.beside_best import beside_the_best
from tripplan.planning.day.front import TradeOff, TradeOffs, against_best, trade_offs
from tripplan.planning.day.loosen import Loosened, helps_most
from tripplan.planning.day.one_choice import Crossed, TimesToTry, plan_choice, times_to_try
from tripplan.planning.day.search import plan_day
from tripplan.planning.day.times.shapes import (
    Begun,
    DayPlan,
    DayQuestion,
    DaySearch,
    FeltPart,
    LeaveWindow,
    NapOutcome,
    Napper,
    ShowOutcome,
    Step,
    StepKind,
)
from tripplan.planning.day.weighing.slack import Slack, slack

__all__ = [
    "Begun",
    "Crossed",
    "DayPlan",
    "DayQuestion",
    "DaySearch",
    "FeltPart",
    "LeaveWindow",
    "Loosened",
    "NapOutcome",
    "Napper",
    "ShowOutcome",
    "Slack",
    "Step",
    "StepKind",
    "TimesToTry",
    "TradeOff",
    "TradeOffs",
    "against_best",
    "beside_the_best",
    "helps_most",
    "plan_choice",
    "plan_day",
    "slack",
    "times_to_try",
    "trade_offs",
]
