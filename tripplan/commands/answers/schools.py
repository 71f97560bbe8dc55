"""The JSON answer of `tripplan schools list`."""

from collections.abc import Sequence
from datetime import date
from typing import Literal

from tripplan.commands.answers.parts import RecordsAnswer, Told
from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.planning.holidays.coverage import PlaceCoverage


class DistrictShareTold(Told):
    """A calendar that counts at a place."""

    name: str
    share: float
    """Of the pupils counted there [0-1]."""


class PlaceCoverageTold(Told):
    """How far the calendars reach around one place."""

    place: str
    """Its id."""
    said: str
    """What is known, guessed and unknown, in words."""
    districts: tuple[DistrictShareTold, ...]
    """Heaviest first."""
    typical_year: str
    """What the typical year rests on that stands in where nothing is known; empty where all is known."""


class SchoolsListAnswer(RecordsAnswer):
    """The school calendars on record, and how far they reach."""

    calendars: tuple[SchoolCalendar, ...]
    """As they are on record."""
    until: date
    """As far ahead as coverage is told."""
    places: tuple[PlaceCoverageTold, ...]
    built_in: tuple[str, ...]
    """Codes of built-in regions near home and the places that are not on record."""


def schools_list_answer(
    data: Literal["demo", "own"],
    today: date,
    until: date,
    calendars: Sequence[SchoolCalendar],
    covers: Sequence[PlaceCoverage],
    built_in: Sequence[str],
) -> SchoolsListAnswer:
    """The answer of `schools list`."""
    return SchoolsListAnswer(
        data=data,
        today=today,
        calendars=tuple(calendars),
        until=until,
        places=tuple(
            PlaceCoverageTold(
                place=cover.place.id,
                said=cover.sentence,
                districts=tuple(
                    DistrictShareTold(name=name, share=round(share, 4)) for name, share in cover.districts
                ),
                typical_year=cover.typical_source,
            )
            for cover in covers
        ),
        built_in=tuple(built_in),
    )
