"""Readers of the open tables of daily visitors, and the plain least squares their levels were fitted with."""

import csv
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tests.builders import make_place
from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.documents.places.place import KindOfPlace, Place, WhoComes
from tripplan.planning.crowds.levels import EFFECTS, Levels
from tripplan.planning.crowds.season import around_christmas, season
from tripplan.planning.holidays.days_off import days_off
from tripplan.planning.holidays.public_holidays import is_weekend, public_holidays
from tripplan.planning.holidays.schools import SchoolDays, school_days


@dataclass(frozen=True)
class Counts:
    """A table of visitors by day, and what crowd risk has to know about where they were counted."""

    name: str
    place: Place
    visitors: Mapping[date, int]
    holidays: Mapping[date, str]
    calendars: tuple[SchoolCalendar, ...] = ()

    def between(self, first: date, last: date) -> "Counts":
        """The same table, only these days."""
        kept = {day: n for day, n in self.visitors.items() if first <= day <= last}
        return replace(self, name=f"{self.name} {first} to {last}", visitors=kept)

    def in_year(self, year: int) -> "Counts":
        """The same table, only that year."""
        return self.between(date(year, 1, 1), date(year, 12, 31))

    def schools_in(self, year: int) -> SchoolDays:
        """The schools around in one year, as the planning takes them: the typical year without a calendar."""
        where = self.place.where
        first, last = date(year, 1, 1), date(year, 12, 31)
        return school_days(
            self.calendars, where.point, first, last, country=where.country, subdivision=where.subdivision
        )

    @property
    def days(self) -> list[date]:
        """All its days, in order."""
        return sorted(self.visitors)

    @property
    def busiest(self) -> NDArray[np.float64]:
        """1 for each day that really was among the busiest fifth, else 0."""
        visitors = np.array([self.visitors[day] for day in self.days])
        threshold = np.sort(visitors)[::-1][round(len(visitors) / 5) - 1]
        return np.asarray(visitors >= threshold, dtype=float)

    @property
    def free_days(self) -> NDArray[np.bool_]:
        """Which days are a weekend or public holiday."""
        return np.array([is_weekend(day) or day in self.holidays for day in self.days])


def _counted_at(
    latitude: float,
    longitude: float,
    country: str,
    subdivision: str,
    zone: str,
    who_comes: WhoComes,
    kind: KindOfPlace,
) -> Place:
    where: dict[str, Any] = {
        "latitude": latitude,
        "longitude": longitude,
        "country": country,
        "subdivision": subdivision,
        "time_zone": zone,
    }
    indoors = "indoors" if kind == "museum" else "outdoors"
    return make_place(where=where, visit={"indoors": indoors, "who_comes": who_comes, "kind": kind})


ZOO_DAY_1 = date(1990, 1, 1)
ORDINARY, WEEKEND, SCHOOL_HOLIDAY, PUBLIC_HOLIDAY = 1, 2, 3, 4


def zoo_kinds(folder: Path) -> dict[date, tuple[int, int]]:
    """Kind of day and visitors, by date; day 1 of the table is taken to be 1 January 1990."""
    with (folder / "crowd" / "zoo_daily_attendance.csv").open(newline="") as file:
        return {
            ZOO_DAY_1 + timedelta(days=int(row["time"]) - 1): (int(row["day.type"]), int(row["attendance"]))
            for row in csv.DictReader(file)
        }


def zoo(folder: Path) -> Counts:
    """The city zoo, with a school calendar made from the table's own school-holiday weekdays."""
    kinds = zoo_kinds(folder)
    no_school = [day for day, (kind, _) in kinds.items() if kind in (SCHOOL_HOLIDAY, PUBLIC_HOLIDAY)]
    calendar = SchoolCalendar.model_validate(
        {
            "name": "the table's own",
            "country": "NZ",
            "latitude": -36.86,
            "longitude": 174.72,
            "known": {"first": min(kinds), "last": max(kinds)},
            "no_school": [{"first": day, "last": day} for day in no_school],
        }
    )
    return Counts(
        "zoo",
        _counted_at(-36.86, 174.72, "NZ", "AUK", "Pacific/Auckland", "families", "zoo_or_farm"),
        {day: visitors for day, (_, visitors) in kinds.items()},
        public_holidays("NZ", "AUK", range(1989, 1993)),
        (calendar,),
    )


def bicycles(folder: Path) -> Counts:
    """Leisure riders of hired bicycles; the district's typical school year."""
    with (folder / "crowd" / "bikeshare_daily_2011_2012.csv").open(newline="") as file:
        visitors = {date.fromisoformat(row["dteday"]): int(row["casual"]) for row in csv.DictReader(file)}
    place = _counted_at(38.9, -77.0, "US", "DC", "America/New_York", "everybody", "park_or_trail")
    return Counts("bicycles", place, visitors, public_holidays("US", "DC", range(2010, 2014)))


VICTORIA = SchoolCalendar.model_validate(
    {
        "name": "government schools of Victoria",
        "country": "AU",
        "subdivision": "VIC",
        "latitude": -37.82,
        "longitude": 144.97,
        "known": {"first": "2014-12-20", "last": "2017-01-29"},
        "no_school": [
            {"first": "2014-12-20", "last": "2015-01-28"},
            {"first": "2015-03-28", "last": "2015-04-12"},
            {"first": "2015-06-27", "last": "2015-07-12"},
            {"first": "2015-09-19", "last": "2015-10-04"},
            {"first": "2015-12-19", "last": "2016-01-26"},
            {"first": "2016-03-25", "last": "2016-04-10"},
            {"first": "2016-06-25", "last": "2016-07-10"},
            {"first": "2016-09-17", "last": "2016-10-02"},
            {"first": "2016-12-21", "last": "2017-01-29"},
        ],
        "source": "Victorian school holiday dates 2015 (schoolholidaysaustralia.com) and 2016 "
        "(atarcalculatorscore.net, as far as April); what follows in 2016 from memory",
    }
)


def park(folder: Path) -> Counts:
    """Walkers in the riverside park, with the state's school holidays."""
    with (folder / "crowd" / "melbourne_pedestrian_daily_2015_2016.csv").open(newline="") as file:
        visitors = {
            date.fromisoformat(row["Date"]): int(row["count"])
            for row in csv.DictReader(file)
            if row["Sensor"] == "Birrarung Marr"
        }
    place = _counted_at(-37.82, 144.97, "AU", "VIC", "Australia/Melbourne", "everybody", "park_or_trail")
    return Counts("park", place, visitors, public_holidays("AU", "VIC", range(2014, 2018)), (VICTORIA,))


BRISTOL = SchoolCalendar.model_validate(
    {
        "name": "schools of Bristol",
        "country": "GB",
        "subdivision": "ENG",
        "latitude": 51.45,
        "longitude": -2.6,
        "known": {"first": "2015-01-05", "last": "2019-04-30"},
        "no_school": [
            {"first": first, "last": last}
            for first, last in (
                ("2015-02-14", "2015-02-22"),
                ("2015-03-28", "2015-04-12"),
                ("2015-05-23", "2015-05-31"),
                ("2015-07-22", "2015-09-02"),
                ("2015-10-24", "2015-11-01"),
                ("2015-12-19", "2016-01-03"),
                ("2016-02-13", "2016-02-21"),
                ("2016-03-25", "2016-04-10"),
                ("2016-05-28", "2016-06-05"),
                ("2016-07-21", "2016-09-04"),
                ("2016-10-22", "2016-10-30"),
                ("2016-12-17", "2017-01-02"),
                ("2017-02-11", "2017-02-19"),
                ("2017-04-08", "2017-04-23"),
                ("2017-05-27", "2017-06-04"),
                ("2017-07-22", "2017-09-03"),
                ("2017-10-21", "2017-10-29"),
                ("2017-12-21", "2018-01-03"),
                ("2018-02-10", "2018-02-18"),
                ("2018-03-24", "2018-04-08"),
                ("2018-05-26", "2018-06-03"),
                ("2018-07-25", "2018-09-03"),
                ("2018-10-27", "2018-11-04"),
                ("2018-12-22", "2019-01-06"),
                ("2019-02-16", "2019-02-24"),
                ("2019-04-06", "2019-04-22"),
            )
        ],
        "source": "the pattern of English counties; dates from memory",
    }
)
MUSEUM_NAMES = ("Bristol Museum", "Blaise", "Georgian House")


def museum(folder: Path, name: str) -> Counts:
    """Visitors of one of three city museums; days that were closed or noted twice are left out."""
    with (folder / "crowd" / "bristol_museums_daily_2015_2019.csv").open(newline="") as file:
        visitors = {
            date.fromisoformat(row["date"]): int(row["visitors"])
            for row in csv.DictReader(file)
            if row["museum"] == name and int(row["visitors"]) > 0 and row["conflict"] == "0"
        }
    return Counts(
        name,
        _counted_at(51.45, -2.6, "GB", "ENG", "Europe/London", "families", "museum"),
        visitors,
        public_holidays("GB", "ENG", range(2014, 2021)),
        (BRISTOL,),
    )


_PLAIN_WAVE = dict.fromkeys(EFFECTS, 0.0)


def fitted(counts: Counts, *, grows: bool = False, whole_year: bool = True) -> dict[str, float]:
    """Least squares of the logarithm of daily visitors on all effects at once, by the names of `Levels`.

    Args:
        counts: the table.
        grows: whether a steady growth over the years is fitted and left out.
        whole_year: whether all seasons are counted; otherwise the time of year is not fitted.
    """
    days = counts.days
    columns: dict[str, Sequence[float] | NDArray[np.float64]] = {"ordinary": np.ones(len(days))}
    columns |= {name: np.array(column)[_places_in(days)] for name, column in _columns(counts).items()}
    columns = {name: column for name, column in columns.items() if np.any(column)}
    if not whole_year:
        del columns["season"], columns["shoulder"]
    if grows:
        columns["growth"] = [(day - days[0]).days / 365 for day in days]
    design = np.column_stack(list(columns.values()))
    seen = np.log([counts.visitors[day] for day in days])
    effects = np.linalg.lstsq(design, seen, rcond=None)[0]
    rest = seen - design @ effects
    # Indoors the time of year is none that goes by the warmth of the latitude.
    indoors = counts.place.visit.indoors == "indoors"
    left_out = {"ordinary", "growth", *(("season", "shoulder") if indoors else ())}
    return {
        **{
            name: float(effect) for name, effect in zip(columns, effects, strict=True) if name not in left_out
        },
        "noise": float(np.sqrt(rest @ rest / (len(days) - design.shape[1]))),
    }


def _places_in(days: Sequence[date]) -> list[int]:
    first = date(days[0].year, 1, 1)
    return [(day - first).days for day in days]


def _columns(counts: Counts) -> dict[str, NDArray[np.float64]]:
    """What each effect is multiplied with, one entry for every day of the table's calendar years."""
    found: dict[str, list[NDArray[np.float64]]] = {}
    place = counts.place
    latitude = place.where.point.latitude
    for year in range(counts.days[0].year, counts.days[-1].year + 1):
        off = days_off(date(year, 1, 1), date(year, 12, 31), counts.holidays)
        schools = counts.schools_in(year)
        on_break = schools.on_break + schools.unknown * schools.chance_on_break
        weekday = ~(off.public_holiday | off.weekend)
        wave, shoulder = (
            season(off.first, len(off), latitude, "outdoors", (), Levels(**{**_PLAIN_WAVE, name: 1.0})).effect
            for name in ("season", "shoulder")
        )
        advent, festive = around_christmas(off)
        for name, column in {
            "friday": weekday & (off.weekday == 4),
            "saturday": off.weekend & (off.weekday == 5),
            "sunday": off.weekend & (off.weekday == 6),
            "public_holiday": off.public_holiday,
            "long_weekend": off.long_weekend,
            "off_work": off.in_lieu | off.bridge,
            "advent": advent & weekday,
            "advent_weekend": advent & off.weekend,
            "festive": festive,
            "season": wave,
            "shoulder": shoulder,
            "school_holiday": weekday * on_break,
            "weekend_on_break": off.weekend * on_break,
        }.items():
            found.setdefault(name, []).append(np.asarray(column, dtype=float))
    return {name: np.concatenate(years) for name, years in found.items()}
