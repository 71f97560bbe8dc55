"""School holidays that are built in: whole regions of seven countries, by the package `holidays`.

The package answers with no days, silently, outside its years and without a region, and the last year of a
table is often half empty. So a year counts only when it holds every break that the region usually has.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from functools import lru_cache

import holidays as tables

from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar
from tripplan.documents.where import Point
from tripplan.errors import UnknownName
from tripplan.planning.holidays.public_holidays import is_observed, public_holidays
from tripplan.planning.holidays.school_region_table import REGIONS, SchoolRegion
from tripplan.planning.travel.distance import Spots

NEAR_KM = 120.0
"""A region is suggested when one of its towns lies within this distance of a place [km]. No source, our
choice: farther pupils weigh less than a seventh."""

_FIRST_YEAR, _LAST_YEAR = 2018, 2040
"""The years looked at for what a table holds [years]; FR and PL begin with 2018."""
_YEARS_JUDGED_BY = 8
_FRIDAY = 4
_SHORTEST_BREAK = 5
"""Fewer days in a row are no break whose absence tells anything [days]."""
_DECIDED_UNTIL = {"FR": date(2027, 8, 31)}
"""Until when the dates are decided where the package goes on by a rule of its own; after that they are
expected. France: school years up to 2026-27, decree of 7 December 2022."""
_SOURCE = "PyPI package holidays, school breaks"


def school_regions() -> tuple[SchoolRegion, ...]:
    """All regions that are built in, in order of country and name."""
    return REGIONS


def region_called(code: str) -> SchoolRegion:
    """The region with a code such as DE-BY.

    Raises:
        UnknownName: there is none.
    """
    found = _by_code().get(code.strip().upper())
    if found is None:
        raise UnknownName("region with built-in school breaks", code, tuple(_by_code()))
    return found


@lru_cache(maxsize=1)
def _by_code() -> Mapping[str, SchoolRegion]:
    return {region.code: region for region in REGIONS}


def regions_of(country: str, subdivision: str) -> tuple[SchoolRegion, ...]:
    """The regions of a country, or those that a part of it belongs to.

    Args:
        country: ISO 3166-1 code.
        subdivision: ISO 3166-2 code without the country; empty for the whole country.
    """
    return tuple(
        region
        for region in REGIONS
        if region.country == country and (not subdivision or subdivision in region.parts)
    )


def regions_near(points: Sequence[Point]) -> tuple[SchoolRegion, ...]:
    """The regions with a town within `NEAR_KM` of one of some points, nearest first."""
    found: list[tuple[float, SchoolRegion]] = []
    for region in REGIONS:
        towns = Spots.of([Point(town.latitude, town.longitude) for town in region.towns])
        nearest = min((float(towns.km_from(point).min()) for point in points), default=NEAR_KM + 1)
        if nearest <= NEAR_KM:
            found.append((nearest, region))
    return tuple(region for _, region in sorted(found, key=lambda pair: (pair[0], pair[1].code)))


def built_in_calendar(region: SchoolRegion, first_year: int, last_year: int) -> SchoolCalendar | None:
    """A region's school holidays, as far as they are on record.

    Args:
        region: one of `school_regions`.
        first_year: the first calendar year wanted [years].
        last_year: the last one [years].

    Returns:
        A calendar that is known for whole calendar years only; where dates go on by a rule before anybody
        decided them, they are expected. None where none of the years is on record. Public holidays count as
        days without school. Its pupils are a guess.
    """
    return _built_in(region.code, first_year, last_year)


@lru_cache(maxsize=256)
def _built_in(code: str, first_year: int, last_year: int) -> SchoolCalendar | None:
    region = region_called(code)
    years = [year for year in whole_years(code) if first_year <= year <= last_year]
    if not years:
        return None
    span = DateSpan(first=date(years[0], 1, 1), last=date(years[-1], 12, 31))
    breaks = [off for year in years for off in _breaks(code, year)]
    spans = _joined((*breaks, *_public_holidays(region, years)))
    decided = min(span.last, _DECIDED_UNTIL.get(region.country, span.last))
    if decided < span.first:
        return None
    guess = DateSpan(first=decided + timedelta(days=1), last=span.last) if decided < span.last else None
    return SchoolCalendar(
        name=f"{region.name} (school holidays)",
        country=region.country,
        subdivision=region.parts[0] if len(region.parts) == 1 else "",
        latitude=round(sum(town.latitude * town.part for town in region.towns) / region.weight, 2),
        longitude=round(sum(town.longitude * town.part for town in region.towns) / region.weight, 2),
        towns=region.towns if len(region.towns) > 1 else (),
        pupils=region.pupils,
        known=DateSpan(first=span.first, last=decided),
        no_school=tuple(_within(spans, span.first, decided)),
        expected_within=guess,
        expected=tuple(_within(spans, guess.first, guess.last)) if guess else (),
        region=code,
        source=f"{_SOURCE}; students: a guess, 12% of those who live there",
    )


def _within(spans: Sequence[DateSpan], first: date, last: date) -> Iterator[DateSpan]:
    for off in spans:
        if off.last >= first and off.first <= last:
            yield DateSpan(first=max(off.first, first), last=min(off.last, last), name=off.name)


@lru_cache(maxsize=128)
def whole_years(code: str) -> tuple[int, ...]:
    """The calendar years for which a region's table holds every usual break, in one row.

    A break of five days or more is usual when most of the first years on record have one of its name; later
    years may be those in which a table has run out.
    """
    kinds = {
        year: {off.name for off in _breaks(code, year) if (off.last - off.first).days >= _SHORTEST_BREAK - 1}
        for year in range(_FIRST_YEAR, _LAST_YEAR + 1)
    }
    filled = [year for year, names in kinds.items() if names]
    judged = filled[:_YEARS_JUDGED_BY]
    counted = Counter(name for year in judged for name in kinds[year])
    usual = {name for name, count in counted.items() if count > 0.75 * len(judged)}
    whole = [year for year in filled if usual <= kinds[year] and _breaks(code, year)[-1].last >= _late(year)]
    # The row that ends last; a hole in it would look like term.
    row = whole[-1:]
    for year in reversed(whole[:-1]):
        if year != row[0] - 1:
            break
        row.insert(0, year)
    return tuple(row)


def _late(year: int) -> date:
    """By when every region's last break of a calendar year has begun."""
    return date(year, 12, 20)


@lru_cache(maxsize=2048)
def _breaks(code: str, year: int) -> tuple[DateSpan, ...]:
    region = _by_code()[code]
    # The language is always named: left out, the package asks the computer's own settings.
    found = tables.country_holidays(
        region.country,
        subdiv=region.table_name,
        years=year,
        expand=False,
        observed=False,
        categories=("school",),
        language="en_US",
    )
    days = (DateSpan(first=day, last=day, name=name) for day, name in sorted(found.items()))
    return _joined(tuple(days))


def _public_holidays(region: SchoolRegion, years: Sequence[int]) -> Iterator[DateSpan]:
    subdivision = region.parts[0] if len(region.parts) == 1 else ""
    try:
        named = public_holidays(region.country, subdivision, years)
    except UnknownName:
        named = public_holidays(region.country, "", years)
    for day, name in named.items():
        if day.year in years and not (is_observed(name) and region.country != "AU"):
            yield DateSpan(first=day, last=day, name=name)


def _over_weekend(day: date) -> timedelta:
    """From a day to the next one on which a break goes on; some tables leave weekends out."""
    return timedelta(days=3 if day.weekday() == _FRIDAY else 1)


def _joined(spans: Sequence[DateSpan]) -> tuple[DateSpan, ...]:
    """Days of one name in a row as one span; what lies inside an earlier span is dropped."""
    joined: list[DateSpan] = []
    for span in sorted(spans, key=lambda span: (span.first, -span.last.toordinal())):
        before = joined[-1] if joined else None
        if before and span.last <= before.last:
            continue
        if before and span.name == before.name and span.first <= before.last + _over_weekend(before.last):
            joined[-1] = DateSpan(first=before.first, last=span.last, name=span.name)
        else:
            joined.append(span)
    return tuple(joined)
