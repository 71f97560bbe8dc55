"""The regions with built-in school holidays: what they are called, where their pupils live, about how many.

Towns with their position and residents, and the residents of each region, are rounded and from memory; they
only weigh calendars against each other. Which part of a country follows which calendar: France, decree of
7 December 2022 (zones by académie; every region lies in one zone, Corsica in none); Netherlands and Belgium,
from memory, Gelderland and Brussels follow two; elsewhere every state has its own.

They stand in `school_regions.csv`, a part of the program, one region a line: its code, its name in the
package `holidays`, its name, its parts (ISO 3166-2), its residents [thousands], and its towns, each with its
name, degrees north and east, and weight.
"""

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.resources import files

from tripplan.documents.calendars.calendars import PupilTown

_PUPILS_OF_RESIDENTS = 0.12
"""Share of residents who go to school [-]. No source, our guess."""


@dataclass(frozen=True)
class SchoolRegion:
    """A region whose schools share one calendar.

    Attributes:
        code: the country's code and the region's, such as DE-BY or FR-A.
        country: ISO 3166-1 code.
        table_name: what the package `holidays` calls the region.
        name: in English.
        parts: ISO 3166-2 codes, without the country, of the parts that follow it.
        residents: how many people live there, in thousands; from memory.
        towns: where they live, weighed by their residents.
    """

    code: str
    country: str
    table_name: str
    name: str
    parts: tuple[str, ...]
    residents: int
    towns: tuple[PupilTown, ...]

    @property
    def pupils(self) -> int:
        """How many go to school there; a guess, a share of the residents."""
        return round(self.residents * _PUPILS_OF_RESIDENTS) * 1000

    @property
    def weight(self) -> float:
        """All its towns together [-]."""
        return sum(town.part for town in self.towns)


def _region(row: Mapping[str, str]) -> SchoolRegion:
    return SchoolRegion(
        code=row["code"],
        country=row["code"][:2],
        table_name=row["table name"],
        name=row["name"],
        parts=tuple(row["parts"].split()),
        residents=int(row["residents"]),
        towns=tuple(map(_town, row["towns"].split("; "))),
    )


def _town(told: str) -> PupilTown:
    name, latitude, longitude, part = told.rsplit(" ", 3)
    return PupilTown(name=name, latitude=float(latitude), longitude=float(longitude), part=float(part))


_TABLE = files(__package__).joinpath("school_regions.csv").read_text(encoding="utf-8")
REGIONS = tuple(map(_region, csv.DictReader(_TABLE.splitlines())))
