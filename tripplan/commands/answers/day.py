"""The JSON answer of `tripplan day`."""

from dataclasses import dataclass

from tripplan.commands.answers import outing as _outing  # noqa: F401 - states the keys of outings
from tripplan.commands.answers.common import OPENING, Answer
from tripplan.commands.answers.json_keys import json_keys, json_step
from tripplan.language.sentences import Fact
from tripplan.planning.day import NuisanceCost, Slack
from tripplan.planning.day.front import TradeOff, TradeOffs
from tripplan.planning.day.relaxation import Relaxation
from tripplan.planning.on_the_day.rain_plan import RainPlan
from tripplan.planning.on_the_day.recovery_options import RecoveryOption, RevisedDay
from tripplan.planning.outing.outing import NoOuting, Outing


@dataclass(frozen=True, kw_only=True)
class DayAnswer(Answer):
    """One place on one day.

    Attributes:
        outing: null where it cannot be done.
        passed_over: why it cannot be done; null where it can.
        against_best: what leaving at the times asked for gains and loses against the best plan; null where it
            cannot be done.
        trade_offs: null where it cannot be done.
        slack: null where it cannot be done.
        rain_plan: null where the outing is not in the open air, or nothing indoors can be done that day.
        replanned: null where nothing is said to go wrong, or the day cannot be done.
    """

    outing: Outing | None
    passed_over: NoOuting | None
    against_best: Fact | None
    trade_offs: TradeOffs | None
    slack: Slack | None
    replanned: RevisedDay | None
    rain_plan: RainPlan | None


@dataclass(frozen=True)
class Point:
    """One way to spend the day of which nobody has more nap without less time there.

    Attributes:
        trade_off: the way.
        best: whether it is the best plan.
    """

    trade_off: TradeOff
    best: bool


@json_step
def points_told(found: TradeOffs) -> tuple[Point, ...]:
    """What the best plan could be traded for, most nap first."""
    return tuple(Point(point, point.plan == found.best) for point in found.points)


@json_step
def limit_that_helps(found: TradeOffs) -> Relaxation | None:
    """The limit that helps most if it gives way by 15 minutes; null where none does."""
    return found.helps if found.helps is not None and found.helps.saves is not None else None


json_keys(
    DayAnswer,
    f"{OPENING} outing passed_over grid_minutes=outing.question.grid_minutes against_best trade_offs slack "
    "replanned rain_plan",
)
json_keys(RainPlan, "place=outing.place.id total=outing.cost.total change=change.rounded unit sentence")
json_keys(TradeOffs, "parts why points=points_told helps=limit_that_helps")
json_keys(
    Point,
    "leave_home=trade_off.plan.leave_home enter=trade_off.plan.enter leave_place=trade_off.plan.leave_place "
    "home=trade_off.plan.home nap_kept_minutes=trade_off.kept_minutes stay_minutes=trade_off.stay_minutes "
    "felt=trade_off.plan.felt weighs=trade_off.plan.weighs best sentence=trade_off.against_best",
)
json_keys(NuisanceCost, "name said minutes felt=felt.rounded")
json_keys(Relaxation, "words=change saves")
json_keys(
    Slack,
    "entry timed_entry=timed make_entry:4 sure_departure home_by home_in_time:4 bed home_before_bed:4 "
    "usually_home nearly_always_home",
)
json_keys(RevisedDay, "now ways impossible(title,reasons) cautions")
json_keys(
    RecoveryOption,
    "choice title place=outing.place.id plan=outing.plan home total=total.rounded change=change.rounded "
    "tickets_lost=tickets.lost tickets_back=tickets.back felt notes",
)
