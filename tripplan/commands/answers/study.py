"""The JSON answers of `tripplan study`."""

from dataclasses import dataclass
from datetime import date
from typing import Literal

from tripplan.commands.answers import common as _common  # noqa: F401 - states the keys of money
from tripplan.commands.answers.json_keys import json_keys
from tripplan.commands.input.question import Whose
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.planning.study.programme import Programme, UnitOuting, UnitWithout
from tripplan.planning.topic_fit import CloseSpelling, Fits, PlaceFit


@dataclass(frozen=True, kw_only=True)
class StudyAnswer:
    """What every answer about study units begins with.

    Attributes:
        format: version of the answers' keys.
        data: whose household: the invented one, the one on record, or the one from a file. Study units,
            limits and planned outings are always those on record.
        today: the date at home.
    """

    format: Literal[1] = 1
    data: Whose
    today: date


@dataclass(frozen=True)
class UnitWithPlaces:
    """One study unit and what the places have for it.

    Attributes:
        unit: as it was written down.
        fits: what the places have.
    """

    unit: StudyUnit
    fits: Fits


@dataclass(frozen=True, kw_only=True)
class StudyListAnswer(StudyAnswer):
    """The study units.

    Attributes:
        units: in order of time.
    """

    units: tuple[UnitWithPlaces, ...]


@dataclass(frozen=True, kw_only=True)
class StudyProgrammeAnswer(StudyAnswer):
    """One outing for each unit that can have one, at the least weight in all.

    Attributes:
        limits: what the programme keeps to, in words.
        programme: the outings.
    """

    limits: tuple[str, ...]
    programme: Programme


@dataclass(frozen=True, kw_only=True)
class StudyLimitsAnswer(StudyAnswer):
    """What a term's programme keeps to.

    Attributes:
        wishes: its limits, with what is fixed and ruled out.
    """

    wishes: ProgrammeWishes


json_keys(UnitWithPlaces, "unit places=fits.places close=fits.close nowhere=fits.nowhere")
json_keys(PlaceFit, "place=place.id topics by_parent")
json_keys(CloseSpelling, "topic on_cards places=places.id")
json_keys(
    StudyProgrammeAnswer,
    "format data today limits outings=programme.outings without=programme.without "
    "obstacles=programme.obstacles total=programme.total felt_cost=programme.felt unknown=programme.unknown",
)
json_keys(
    UnitOuting,
    "unit=unit.name place=option.place day=option.day cost=option.cost felt_cost=option.felt "
    "unknown=option.unknown settled planned=planned.id",
)
json_keys(UnitWithout, "unit=unit.name reasons")
