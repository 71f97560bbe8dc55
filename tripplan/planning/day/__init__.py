"""When to leave: the search over departures and stays around the children's naps."""

from tripplan.planning.day.front import TradeOff, TradeOffs, trade_offs
from tripplan.planning.day.loosen import Loosened, helps_most
from tripplan.planning.day.search import plan_day
from tripplan.planning.day.shapes import (
    Begun,
    DayPlan,
    DayQuestion,
    DaySearch,
    FeltPart,
    LeaveWindow,
    NapOutcome,
    Napper,
    ShowOutcome,
    SleepsIn,
    Step,
    StepKind,
)
from tripplan.planning.day.slack import Slack, slack

__all__ = [
    "Begun",
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
    "SleepsIn",
    "Step",
    "StepKind",
    "TradeOff",
    "TradeOffs",
    "helps_most",
    "plan_day",
    "slack",
    "trade_offs",
]
