"""The best plan among what it could be traded for, so that each can be held against it."""

from tripplan.planning.day.front import TradeOff, TradeOffs, against_best
from tripplan.planning.day.times.shapes import DayQuestion


def beside_the_best(question: DayQuestion, found: TradeOffs) -> tuple[TradeOff, ...]:
    """The trade-offs with the best plan among them, most nap first.

    The best plan need not be one of them: another may keep more nap for as long a stay, and weigh more by
    what else there is, such as lunch or lateness.

    Args:
        question: the day.
        found: its trade-offs.
    """
    best = found.best
    if best is None or any(point.plan == best for point in found.points):
        return found.points
    own = TradeOff(
        plan=best,
        kept_minutes=sum(nap.kept_minutes for nap in best.naps),
        stay_minutes=min(best.awake_minutes, question.comfortable_minutes),
        against_best=against_best(question, best, best),
    )
    return tuple(sorted((*found.points, own), key=lambda point: (-point.kept_minutes, point.stay_minutes)))
