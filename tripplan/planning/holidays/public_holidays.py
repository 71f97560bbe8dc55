"""Public holidays: the day that is celebrated, the day that offices are closed instead, long weekends.

The two differ when a holiday falls on a weekend. The actual day is the crowded one; the observed day is
the one off work. Weekends here are Saturday and Sunday.
"""

from collections.abc import Iterable, Mapping, Set
from contextlib import suppress
from datetime import date, timedelta
from functools import lru_cache
from types import MappingProxyType

import holidays as tables
from holidays.version import __version__ as _version

from tripplan.errors import UnknownName

OBSERVED = " (observed)"
"""How the name of a day off work ends that stands in for a holiday on another date."""

TABLE = f"package holidays {_version}"
"""Where all public holidays here come from."""
_TABLE_NOTES = {
    # The law: Minn. Stat. 645.44, subd. 5, as of August 2024 (casetext). Until 2022 at least it left the
    # day out for the state's own offices and to others' choice (HF 3910, 92nd session, which quotes it). The
    # table names this law among its sources, and has nothing for the state in October.
    ("US", "MN"): (
        "Minnesota's law names the second Monday in October (Indigenous Peoples Day) a holiday; the table "
        "does not have it, so it counts as a working day. Ask whether schools and offices near you keep it."
    )
}
"""What a table is known to leave out, by country and subdivision; found by comparing it with another one
(tests/published/test_holidays_second_table.py)."""

_SATURDAY = 5
_DAY = timedelta(days=1)


def public_holidays(country: str, subdivision: str, years: Iterable[int]) -> Mapping[date, str]:
    """Public holidays of a country and, where one is given, of its state or region.

    Args:
        country: ISO 3166-1 code of two letters.
        subdivision: ISO 3166-2 code without the country; empty for national holidays only.
        years: calendar years [years].

    Returns:
        Names by date, in order of date, in English where there are English names. Actual and observed days
        both count; the name of an observed day ends in `OBSERVED`. Two holidays on one date share its name.

    Raises:
        UnknownName: the country, the subdivision or a year is not on record. An empty answer would read
            as 'no holidays', so there is none.

    Source: PyPI package holidays, exact version in requirements.txt.
    """
    return _public_holidays(country, subdivision, tuple(sorted(set(years))))


def table_notes(regions: Iterable[tuple[str, str]]) -> tuple[str, ...]:
    """What the table is known to leave out in some regions, in words, each once.

    Args:
        regions: ISO 3166-1 codes, each with the ISO 3166-2 code without the country.
    """
    return tuple(_TABLE_NOTES[region] for region in dict.fromkeys(regions) if region in _TABLE_NOTES)


def holidays_around(country: str, subdivision: str, years: Iterable[int]) -> Mapping[date, str]:
    """The public holidays of some years and, as far as they are on record, of the years beside them.

    Long weekends across New Year, and rules about the day before or after a holiday, need the neighbours.

    Raises:
        UnknownName: as `public_holidays`; a neighbouring year that is not on record is left out.
    """
    return _holidays_around(country, subdivision, tuple(sorted(set(years))))


@lru_cache(maxsize=256)
def _holidays_around(country: str, subdivision: str, years: tuple[int, ...]) -> Mapping[date, str]:
    beside = {year + step for year in years for step in (-1, 1)}.difference(years)
    with suppress(UnknownName):
        return public_holidays(country, subdivision, (*years, *beside))
    found = dict(public_holidays(country, subdivision, years))
    for year in beside:
        with suppress(UnknownName):
            found |= public_holidays(country, subdivision, (year,))
    return MappingProxyType(dict(sorted(found.items())))


@lru_cache(maxsize=256)
def _public_holidays(country: str, subdivision: str, years: tuple[int, ...]) -> Mapping[date, str]:
    language, region = _readable(country, subdivision, years)
    # The language is always named: left out, the package asks the computer's own settings.
    actual, with_observed = (
        tables.country_holidays(
            country, subdiv=region, years=years, expand=False, observed=observed, language=language
        )
        for observed in (False, True)
    )
    return MappingProxyType(
        {
            day: actual.get(day) or (name if name.endswith(OBSERVED) else f"{name}{OBSERVED}")
            for day, name in sorted(with_observed.items())
        }
    )


def _readable(country: str, subdivision: str, years: tuple[int, ...]) -> tuple[str | None, str | None]:
    """Language and subdivision as the tables want them, after checking that they know all of this."""
    known = tables.list_supported_countries(include_aliases=False)
    if country not in known:
        raise UnknownName("country with public holidays on record", country)
    regions = tuple(known[country])
    if regions and subdivision and subdivision not in regions:
        raise UnknownName(f"part of {country} with public holidays on record", subdivision, regions)
    first, last, language = _table_of(country)
    for year in years:
        if not first <= year <= last:
            span = (f"{first} to {last}",)
            raise UnknownName(f"year with public holidays of {country} on record", str(year), span)
    # A country without regional holidays has none listed; then the national ones are complete.
    return language, (subdivision or None) if regions else None


@lru_cache(maxsize=256)
def _table_of(country: str) -> tuple[int, int, str | None]:
    """The first and the last year of a country's table, and the language it is read in, English if it can."""
    table = tables.country_holidays(country)
    english = [language for language in table.supported_languages if language.startswith("en")]
    return table.start_year, table.end_year, (english[0] if english else table.default_language)


def is_observed(name: str) -> bool:
    """Whether a holiday's name marks a day off work for a holiday on another date."""
    return name.endswith(OBSERVED)


def is_weekend(day: date) -> bool:
    """Whether a day is a Saturday or Sunday."""
    return day.weekday() >= _SATURDAY


def is_bridge_day(day: date, public_holidays: Set[date]) -> bool:
    """Whether a working day stands alone between a public holiday and a weekend or another holiday.

    Args:
        day: the date.
        public_holidays: the dates of public holidays; must reach a day beyond `day` on either side.
    """
    if is_weekend(day) or day in public_holidays:
        return False
    before, after = day - _DAY, day + _DAY
    off_on_both_sides = all(is_weekend(d) or d in public_holidays for d in (before, after))
    return off_on_both_sides and (before in public_holidays or after in public_holidays)


def long_weekend(day: date, public_holidays: Set[date]) -> tuple[date, ...]:
    """The days off in a row that a weekend, public holidays and bridge days make together.

    Args:
        day: one of them, or any other date.
        public_holidays: the dates of public holidays; must reach a week beyond `day` on either side.

    Returns:
        At least three dates in order, or nothing if `day` is not part of such a row.
    """

    def off(d: date) -> bool:
        return is_weekend(d) or d in public_holidays or is_bridge_day(d, public_holidays)

    if not off(day):
        return ()
    first = last = day
    while off(first - _DAY):
        first -= _DAY
    while off(last + _DAY):
        last += _DAY
    row = tuple(first + n * _DAY for n in range((last - first).days + 1))
    return row if len(row) > 2 else ()
