"""The JSON answer of `tripplan day`."""

from datetime import datetime

from tripplan.commands.answers.outing import OutingTold, PlanTold, outing_told, plan_told
from tripplan.commands.answers.parts import (
    Answer,
    MoneyTold,
    PassedOverTold,
    Told,
    money_told,
    opening,
    passed_over_told,
)
from tripplan.commands.question import Question
from tripplan.planning.day import against_best, slack, trade_offs
from tripplan.planning.on_the_day.ways_out import Choice, Replanned, WayOut
from tripplan.planning.outing.outing import NoOuting, Outing


class FeltPartTold(Told):
    """One nuisance of the best plan."""

    name: str
    said: str
    """How much of it there is, in words."""
    minutes: int | None
    """Null where it is a chance [min]."""
    felt: MoneyTold
    """What it weighs, rounded to the smallest coin."""


class TradeOffTold(Told):
    """One way to spend the day of which nobody has more nap without less time there."""

    leave_home: datetime
    enter: datetime
    leave_place: datetime
    home: datetime
    nap_kept_minutes: int
    stay_minutes: int
    """Time at the place, up to a comfortable stay [min]."""
    felt: MoneyTold
    """What lost nap, driving, waiting and a stay cut short weigh; no money is in it."""
    best: bool
    """Whether it is the best plan."""
    sentence: str


class HelpsTold(Told):
    """The limit that helps most if it gives way by 15 minutes."""

    words: str
    saves: MoneyTold
    """How much less the best plan weighs then."""


class TradeOffsTold(Told):
    """What the best plan of the day weighs, and what it could be traded for."""

    parts: tuple[FeltPartTold, ...]
    why: str
    points: tuple[TradeOffTold, ...]
    """Most nap first."""
    helps: HelpsTold | None
    """Null where no limit helps."""


class SlackTold(Told):
    """How likely the plan holds, with the family's usual delays and the range of the drives."""

    entry: datetime
    """The timed entry the plan is for, else the last entry."""
    timed_entry: bool
    make_entry: float
    """Chance to arrive by then [0-1]."""
    sure_departure: datetime | None
    """The latest departure that makes the entry nine times in ten; null where none does."""
    home_by: datetime
    home_in_time: float
    """Chance to be home by then [0-1]."""
    bed: datetime | None
    """When the first of the party should be in bed."""
    home_before_bed: float | None
    """Chance to be home by then [0-1]."""
    usually_home: datetime
    """On half of all days."""
    nearly_always_home: datetime
    """On nine of ten days."""


class WayOutTold(Told):
    """One thing that can be done when the day goes wrong."""

    choice: Choice
    title: str
    place: str | None
    """The id of the place that is gone to; null where the party turns back, stays home or drives home."""
    plan: PlanTold | None
    home: datetime
    total: MoneyTold
    """What the whole day costs then, tickets already paid for included."""
    change: MoneyTold
    """How much more that is than planned; negative where it is less."""
    tickets_lost: MoneyTold | None
    """Paid for and of no use to anybody; null where nothing was paid yet."""
    tickets_back: MoneyTold | None
    """What comes back if it is called off in time; null where nothing was paid yet."""
    felt: MoneyTold
    notes: tuple[str, ...]


class NotAnyMoreTold(Told):
    """What cannot be done any more."""

    title: str
    reasons: tuple[str, ...]


class ReplannedTold(Told):
    """What can be done from here and now."""

    now: datetime
    ways: tuple[WayOutTold, ...]
    """The same place first, then another, then turning back."""
    impossible: tuple[NotAnyMoreTold, ...]
    cautions: tuple[str, ...]


class DayAnswer(Answer):
    """One place on one day."""

    outing: OutingTold | None
    """Null where it cannot be done."""
    passed_over: PassedOverTold | None
    """Why it cannot be done; null where it can."""
    grid_minutes: int | None = None
    """How far apart the departures and returns are that were tried [min]; null where it cannot be done."""
    against_best: str | None = None
    """What leaving at the times asked for gains and loses against the best plan; null where it cannot be
    done."""
    trade_offs: TradeOffsTold | None = None
    """Null where it cannot be done."""
    slack: SlackTold | None = None
    """Null where it cannot be done."""
    replanned: ReplannedTold | None = None
    """Null where nothing is said to go wrong, or the day cannot be done."""


def day_answer(
    question: Question, answer: Outing | NoOuting, replanned: Replanned | None = None
) -> DayAnswer:
    """One place on one day."""
    return DayAnswer(
        **opening(question),
        outing=outing_told(answer) if isinstance(answer, Outing) else None,
        passed_over=passed_over_told(answer) if isinstance(answer, NoOuting) else None,
        grid_minutes=answer.question.grid_minutes if isinstance(answer, Outing) else None,
        against_best=_against_best(answer) if isinstance(answer, Outing) else None,
        trade_offs=_trade_offs(answer) if isinstance(answer, Outing) else None,
        slack=_slack(answer) if isinstance(answer, Outing) else None,
        replanned=None if replanned is None else _replanned(replanned),
    )


def _against_best(outing: Outing) -> str | None:
    best = outing.search.best
    return None if best is None else against_best(outing.question, outing.plan, best)


def _replanned(found: Replanned) -> ReplannedTold:
    return ReplannedTold(
        now=found.now,
        ways=tuple(map(_way_out, found.ways)),
        impossible=tuple(NotAnyMoreTold(title=title, reasons=reasons) for title, reasons in found.impossible),
        cautions=found.cautions,
    )


def _way_out(way: WayOut) -> WayOutTold:
    outing, tickets = way.outing, way.tickets
    return WayOutTold(
        choice=way.choice,
        title=way.title,
        place=None if outing is None else outing.place.id,
        plan=None if outing is None else plan_told(outing.plan),
        home=way.home,
        total=money_told(way.total.rounded()),
        change=money_told(way.change.rounded()),
        tickets_lost=None if tickets is None else money_told(tickets.lost),
        tickets_back=None if tickets is None else money_told(tickets.back),
        felt=money_told(way.felt),
        notes=way.notes,
    )


def _trade_offs(outing: Outing) -> TradeOffsTold:
    found = trade_offs(outing.question)
    helps = found.helps
    return TradeOffsTold(
        parts=tuple(
            FeltPartTold(
                name=part.name, said=part.said, minutes=part.minutes, felt=money_told(part.felt.rounded())
            )
            for part in found.parts
        ),
        why=found.why,
        points=tuple(
            TradeOffTold(
                leave_home=point.plan.leave_home,
                enter=point.plan.enter,
                leave_place=point.plan.leave_place,
                home=point.plan.home,
                nap_kept_minutes=point.kept_minutes,
                stay_minutes=point.stay_minutes,
                felt=money_told(point.plan.felt),
                best=point.plan == found.best,
                sentence=point.sentence,
            )
            for point in found.points
        ),
        helps=None
        if helps is None or helps.saves is None
        else HelpsTold(words=helps.words, saves=money_told(helps.saves)),
    )


def _slack(outing: Outing) -> SlackTold:
    found = slack(outing.question, outing.plan)
    return SlackTold(
        entry=found.entry,
        timed_entry=found.timed,
        make_entry=round(found.make_entry, 4),
        sure_departure=found.sure_departure,
        home_by=found.home_by,
        home_in_time=round(found.home_in_time, 4),
        bed=found.bed,
        home_before_bed=None if found.home_before_bed is None else round(found.home_before_bed, 4),
        usually_home=found.usually_home,
        nearly_always_home=found.nearly_always_home,
    )
