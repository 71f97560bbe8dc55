"""When to leave: the search over departures and stays around the children's naps."""

from tripplan.planning.day.felt import FeltPart, felt_parts
from tripplan.planning.day.front import TradeOff, TradeOffs, trade_offs
from tripplan.planning.day.loosen import Loosened, helps_most
from tripplan.planning.day.search import plan_day
from tripplan.planning.day.shapes import (
    Begun,
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
    "Slack",
    "SleepsIn",
    "Step",
    "StepKind",
    "TradeOff",
    "TradeOffs",
    "felt_parts",
    "helps_most",
    "plan_day",
    "slack",
    "trade_offs",
]
