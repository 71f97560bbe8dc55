"""The JSON answer of `tripplan compare`."""

from collections.abc import Iterable, Sequence
from datetime import date

from tripplan.commands.answers.outing import OutingTold, outing_told
from tripplan.commands.answers.parts import (
    Answer,
    DaysTold,
    FeltTold,
    MoneyRangeTold,
    PassedOverTold,
    PlaceTold,
    Told,
    felt_told,
    money_range_told,
    opening,
    passed_over_told,
    place_told,
    span_told,
)
from tripplan.commands.question import Question
from tripplan.planning.compare.certainty import how_sure
from tripplan.planning.compare.choose import Candidate
from tripplan.planning.compare.flips.flip import Flip


class DayTold(Told):
    """One day of a ranking in short."""

    day: date
    total: MoneyRangeTold
    felt_cost: FeltTold


class CandidateTold(Told):
    """One place of a comparison."""

    place: PlaceTold
    best: OutingTold | None
    """On its best day; null where no day can be done."""
    other_days: tuple[DayTold, ...]
    """The further days that can be done, least felt cost first."""
    passed_over: tuple[PassedOverTold, ...]


class FlipTold(Told):
    """One input, and what it must become for another place to be the cheapest."""

    what: str
    now: str
    at: str | None
    """Null where nothing within reason changes the first place."""
    new_first: str | None
    """The id of the place that is the cheapest then."""
    sentence: str


class CompareAnswer(Answer):
    """Places side by side, least likely total first, those without a day last."""

    span: DaysTold
    candidates: tuple[CandidateTold, ...]
    chances_cheapest: tuple[float, ...]
    """For each candidate that has a day, the chance that it is the cheapest of them [0-1]."""
    too_close_to_call: bool
    flips: tuple[FlipTold, ...]


def compare_answer(
    question: Question, candidates: Sequence[Candidate], flips: Iterable[Flip]
) -> CompareAnswer:
    """Places side by side, how sure their order is, and what would change it."""
    outings = [candidate.best for candidate in candidates if candidate.best is not None]
    certainty = how_sure(outings) if outings else None
    return CompareAnswer(
        **opening(question),
        span=span_told(question.span),
        candidates=tuple(map(_candidate, candidates)),
        chances_cheapest=certainty.chances if certainty else (),
        too_close_to_call=certainty is not None and certainty.too_close,
        flips=tuple(
            FlipTold(
                what=flip.what,
                now=flip.now,
                at=flip.at,
                new_first=flip.new_first,
                sentence=flip.sentence,
            )
            for flip in flips
        ),
    )


def _candidate(candidate: Candidate) -> CandidateTold:
    return CandidateTold(
        place=place_told(candidate.place),
        best=outing_told(candidate.best) if candidate.best else None,
        other_days=tuple(
            DayTold(day=other.day, total=money_range_told(other.total), felt_cost=felt_told(other.felt_cost))
            for other in candidate.other_days
        ),
        passed_over=tuple(map(passed_over_told, candidate.passed_over)),
    )
