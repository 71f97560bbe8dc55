"""What a sweep has found already, at any place, and has yet to search; equal days are searched once."""

from collections.abc import Hashable
from dataclasses import dataclass, field, replace
from datetime import date

from tripplan.planning.cost.items import OutingCost
from tripplan.planning.day.best import Asked, BestChoice, BestChoices, best_between
from tripplan.planning.day.times.shapes import DayQuestion
from tripplan.planning.opening.hours import DayHours
from tripplan.planning.sweep.table import Verdict
from tripplan.planning.travel.drive import Journey

Key = tuple[int, ...]
"""Numbers that stand for all that an answer rests on."""


@dataclass(frozen=True)
class VisitPlan:
    """The best day plan of one kind of day, with what follows from its legs.

    Attributes:
        best: the plan.
        in_car, longest_drive: driving both ways, and on the longer one [min].
        wheels_there, wheels_back: when the wheels first and last turn [min].
    """

    best: BestChoice
    in_car: int
    longest_drive: int
    wheels_there: tuple[int, int]
    wheels_back: tuple[int, int]

    @classmethod
    def of(cls, best: BestChoice, way_there: Journey, way_home: Journey) -> "VisitPlan":
        """That of a day plan."""
        there, back = way_there.at(best.depart), way_home.at(best.leave)
        return cls(
            best,
            there.drive_minutes + back.drive_minutes,
            max(there.drive_minutes, back.drive_minutes),
            (best.depart + there.load_up_minutes, best.depart + there.minutes - there.unload_minutes),
            (best.leave + back.load_up_minutes, best.leave + back.minutes - back.unload_minutes),
        )

    def later(self, minutes: int) -> "VisitPlan":
        """The same day plan so many minutes later."""
        if not minutes:
            return self
        best = self.best
        return replace(
            self,
            best=replace(
                best,
                depart=best.depart + minutes,
                enter=best.enter + minutes,
                leave=best.leave + minutes,
                home=best.home + minutes,
            ),
            wheels_there=(self.wheels_there[0] + minutes, self.wheels_there[1] + minutes),
            wheels_back=(self.wheels_back[0] + minutes, self.wheels_back[1] + minutes),
        )


Answers = tuple[VisitPlan | Verdict, ...]
"""The best day plan in each of some kinds of weather, or why there is none; equal ones are one object."""


@dataclass(frozen=True)
class CostedVisit:
    """A day plan with what the day costs by it.

    Attributes:
        visit: the plan.
        cost: the money.
    """

    visit: VisitPlan
    cost: OutingCost


@dataclass(frozen=True)
class Search:
    """A day that is to be searched.

    Attributes:
        question: the day, as if nobody was engaged and whatever the weather.
        by_night: how much later everything comes that day than on others of its kind [min].
        asked: the engagements and the weather of days that are like it but for them, by all that these days
            rest on.
    """

    question: DayQuestion
    by_night: int
    asked: dict[Key, Asked] = field(default_factory=dict)

    def answers(self, found: BestChoices, *, any_engagement: bool) -> Answers:
        """What was found with engagements and weather, as on other days of the kind.

        Args:
            found: that.
            any_engagement: whether there is a plan at all if nobody is engaged.
        """
        plans = {
            id(best): VisitPlan.of(best, self.question.way_there, self.question.way_home).later(
                -self.by_night
            )
            for best in {id(best): best for best in found.choices if best is not None}.values()
        }
        if found.any_weather:
            none = Verdict.TOO_COLD_OR_HOT
        else:
            none = Verdict.FAMILY_BUSY if any_engagement else Verdict.TOO_LITTLE_TIME
        return tuple(none if best is None else plans[id(best)] for best in found.choices)


@dataclass
class AnswerCache:
    """What a sweep has found already, at any place.

    Attributes:
        visits: the best day plans in each kind of weather that was asked for, by all that they rest on.
        hours: those of an open day, with that day, by all that they rest on.
        searches: those that wait to be made together, by all that they rest on.
    """

    visits: dict[Key, Answers] = field(default_factory=dict)
    hours: dict[Key, tuple[date, DayHours]] = field(default_factory=dict)
    searches: dict[Key, Search] = field(default_factory=dict)
    _numbers: dict[Hashable, int] = field(default_factory=dict)

    def search(self) -> None:
        """Search all days that wait for it, and keep what is found among the visits."""
        searches = self.searches.values()
        found = best_between(
            [search.question for search in searches],
            [[Asked(), *search.asked.values()] for search in searches],
        )
        for search, (free, *each) in zip(searches, found, strict=True):
            for key, one in zip(search.asked, each, strict=True):
                self.visits[key] = search.answers(one, any_engagement=free.any_weather)
        self.searches.clear()

    def number(self, value: Hashable) -> int:
        """A number that stands for a value; equal values have the same."""
        return self._numbers.setdefault(value, len(self._numbers))
