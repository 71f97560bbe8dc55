"""The best choice of a day in bare minutes, for whoever looks at many days."""

from dataclasses import dataclass

from tripplan.planning.day.limits import Choices, Limits
from tripplan.planning.day.minutes import DayMinutes, chosen
from tripplan.planning.day.naps import out_at_lunch
from tripplan.planning.day.shapes import DayQuestion
from tripplan.planning.day.weighing import Weighed, felt_of


@dataclass(frozen=True)
class BestChoice:
    """The plan that `plan_day` calls best, in minutes since midnight at home.

    Attributes:
        depart: when load-up begins at home [min].
        enter: when the party is let in [min].
        leave: when load-up for the way home begins [min].
        home: when everybody is home again [min].
        felt: what its nuisances weigh, in whole units of `weighing.UNITS`.
        nap_kept: of all usual naps together [min].
        nap_usual: their usual length together [min].
        lunch_out: whether the party is out at lunch time.
    """

    depart: int
    enter: int
    leave: int
    home: int
    felt: int
    nap_kept: int
    nap_usual: int
    lunch_out: bool


def best_choice(question: DayQuestion) -> BestChoice | None:
    """The choice with the least felt cost, the same as that of `plan_day`; None on an impossible day.

    Args:
        question: the day; the place must be open.
    """
    minutes = DayMinutes(question.day, question.home_zone)
    choices = Choices.of(Limits.of(question, minutes))
    if not choices.depart.size:
        return None
    weighed = Weighed(question, choices, minutes)
    row, column = divmod(int(weighed.rank.argmin()), choices.leave.size)
    if not choices.possible[row, column]:
        return None
    lunch = minutes.by_clock(question.habits.lunch)
    out = out_at_lunch(lunch, question.habits, choices.depart[row], choices.home[column])
    return BestChoice(
        depart=int(choices.depart[row]),
        enter=chosen(choices.enter, row, column),
        leave=int(choices.leave[column]),
        home=int(choices.home[column]),
        felt=felt_of(int(weighed.rank[row, column])),
        nap_kept=chosen(weighed.kept, row, column),
        nap_usual=sum(window.nap.minutes for window in weighed.windows),
        lunch_out=bool(out) and question.habits.lunch_minutes > 0,
    )
