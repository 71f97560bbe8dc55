"""The JSON answer of `tripplan days`."""

from collections.abc import Sequence
from datetime import date

from tripplan.commands.answers.outing import OutingTold, outing_told
from tripplan.commands.answers.parts import (
    Answer,
    DaysTold,
    MoneyTold,
    PassedOverTold,
    Told,
    money_told,
    opening,
    passed_over_told,
    span_told,
)
from tripplan.commands.question import Question
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.sweep.misses import Miss
from tripplan.planning.sweep.table import DayTable
from tripplan.planning.sweep.wishes import Wish


class NearMissTold(Told):
    """A day that nearly came first."""

    place: str
    """Its id."""
    day: date
    better: str
    """In what it is better: a wish let go, or quietest and the like."""
    costs_more: MoneyTold
    """Its likely total against that of the best day, negative for less; 0 where there is no best day."""
    felt_more: MoneyTold
    """The same with nuisances counted."""
    sentence: str


class DaysAnswer(Answer):
    """Days of a span, least felt cost first."""

    span: DaysTold
    count: int
    """How many can be done as wished; no more than `--most` of them are told."""
    outings: tuple[OutingTold, ...]
    passed_over: tuple[PassedOverTold, ...]
    wishes: tuple[str, ...]
    """What was wished of a day, in words."""
    not_as_wished: int
    """How many further days can be done, but not as wished."""
    nearly: tuple[NearMissTold, ...]
    """Days that are better than the best in one respect."""


def days_answer(
    question: Question,
    table: DayTable,
    wishes: Sequence[Wish],
    count: int,
    outings: Sequence[Outing],
    misses: Sequence[Miss],
    passed_over: Sequence[NoOuting],
) -> DaysAnswer:
    """The best days of a span, and those that nearly came first."""
    return DaysAnswer(
        **opening(question),
        span=span_told(question.span),
        count=count,
        outings=tuple(map(outing_told, outings)),
        passed_over=tuple(map(passed_over_told, passed_over)),
        wishes=tuple(wish.words for wish in wishes),
        not_as_wished=int(table.can_go.sum()) - count,
        nearly=tuple(
            NearMissTold(
                place=table.places[miss.spot.row].id,
                day=table.day(miss.spot.column),
                better=miss.better,
                costs_more=money_told(miss.costs_more),
                felt_more=money_told(miss.felt_more),
                sentence=miss.sentence,
            )
            for miss in misses
        ),
    )
