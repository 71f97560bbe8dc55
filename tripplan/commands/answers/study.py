"""The JSON answers of `tripplan study`."""

from collections.abc import Sequence
from datetime import date
from typing import Literal

from tripplan.commands.answers.parts import (
    MoneyRangeTold,
    MoneyTold,
    Told,
    money_range_told,
    money_told,
)
from tripplan.commands.question import Question
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.planning.study.programme import Programme
from tripplan.planning.topic_fit import Fits


class StudyAnswer(Told):
    """What every answer about study units begins with."""

    format: Literal[1] = 1
    """Version of the answers' keys."""
    data: Literal["demo", "own", "files"]
    """Whose household: the invented one, the one on record, or the one from a file. Study units, limits and
    planned outings are always those on record."""
    today: date


class FittingPlaceTold(Told):
    """A place that fits a study unit."""

    place: str
    """Its id."""
    topics: tuple[str, ...]
    """The unit's topics that its card names."""
    by_parent: bool
    """Whether the parent named the place herself."""


class CloseSpellingTold(Told):
    """A topic that may be meant by what cards say; it does not count until the parent says so."""

    topic: str
    on_cards: str
    places: tuple[str, ...]
    """Ids of the cards that have it."""


class UnitTold(Told):
    """One study unit and what the places have for it."""

    unit: StudyUnit
    """As it was written down."""
    places: tuple[FittingPlaceTold, ...]
    close: tuple[CloseSpellingTold, ...]
    nowhere: tuple[str, ...]
    """Its topics that no card names."""


class StudyListAnswer(StudyAnswer):
    """The study units, in order of time."""

    units: tuple[UnitTold, ...]


class UnitOutingTold(Told):
    """The outing that one unit gets."""

    unit: str
    place: str
    """The id of its card."""
    day: date
    cost: MoneyRangeTold
    """Of what is known; a lower bound while anything is unknown."""
    felt_cost: MoneyTold
    unknown: tuple[str, ...]
    """Labels of the costs that nobody knows."""
    settled: bool
    """Whether the parent fixed its place or day."""
    planned: str | None
    """The id of the planned outing that it is already; null where it is none."""


class UnitWithoutTold(Told):
    """A unit that gets no outing."""

    unit: str
    reasons: tuple[str, ...]


class StudyProgrammeAnswer(StudyAnswer):
    """One outing for each unit that can have one, at the least weight in all."""

    limits: tuple[str, ...]
    """What the programme keeps to, in words."""
    outings: tuple[UnitOutingTold, ...]
    """In order of day; none where limits stand in the way."""
    without: tuple[UnitWithoutTold, ...]
    obstacles: tuple[str, ...]
    """What would have to give way, where not all units with days can have an outing."""
    total: MoneyRangeTold
    felt_cost: MoneyTold
    unknown: bool
    """Whether nobody knows some of the costs, so that the total is a lower bound."""


class StudyLimitsAnswer(StudyAnswer):
    """What a term's programme keeps to."""

    wishes: ProgrammeWishes
    """Its limits, with what is fixed and ruled out."""


def study_limits_answer(question: Question, wishes: ProgrammeWishes) -> StudyLimitsAnswer:
    """The answer of `study limits`."""
    return StudyLimitsAnswer(data=question.whose, today=question.today, wishes=wishes)


def study_list_answer(question: Question, units: Sequence[tuple[StudyUnit, Fits]]) -> StudyListAnswer:
    """The answer of `study list`."""
    return StudyListAnswer(
        data=question.whose,
        today=question.today,
        units=tuple(
            UnitTold(
                unit=unit,
                places=tuple(
                    FittingPlaceTold(place=fit.place.id, topics=fit.topics, by_parent=fit.by_parent)
                    for fit in fits.places
                ),
                close=tuple(
                    CloseSpellingTold(
                        topic=close.topic,
                        on_cards=close.on_cards,
                        places=tuple(place.id for place in close.places),
                    )
                    for close in fits.close
                ),
                nowhere=fits.nowhere,
            )
            for unit, fits in units
        ),
    )


def study_programme_answer(
    question: Question, found: Programme, limits: Sequence[str]
) -> StudyProgrammeAnswer:
    """The answer of `study programme`.

    Args:
        question: whose.
        found: the programme.
        limits: what it keeps to, in words.
    """
    return StudyProgrammeAnswer(
        data=question.whose,
        today=question.today,
        limits=tuple(limits),
        outings=tuple(
            UnitOutingTold(
                unit=one.unit.name,
                place=one.option.place,
                day=one.option.day,
                cost=money_range_told(one.option.cost),
                felt_cost=money_told(one.option.felt),
                unknown=one.option.unknown,
                settled=one.settled,
                planned=None if one.planned is None else one.planned.id,
            )
            for one in found.outings
        ),
        without=tuple(UnitWithoutTold(unit=one.unit.name, reasons=one.reasons) for one in found.without),
        obstacles=found.obstacles,
        total=money_range_told(found.total),
        felt_cost=money_told(found.felt),
        unknown=found.unknown,
    )
