"""The public holidays and long weekends of the coming year, at home and at the places."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.where import Where
from tripplan.errors import UnknownName
from tripplan.planning.holidays.public_holidays import (
    TABLE,
    holidays_around,
    is_bridge_day,
    long_weekend,
    table_notes,
)

_A_YEAR = 366
_DAY = timedelta(days=1)
BRIDGE_DAY = "bridge day"
"""What a working day alone between days off is called in the list."""


@dataclass(frozen=True)
class ComingHoliday:
    """A public holiday, an observed day or a bridge day.

    Attributes:
        day: when.
        name: what it is called; `BRIDGE_DAY` for a bridge day.
        where: 'home', and the countries and states of places, such as US-IL.
        row: the long weekend that it is part of; None where it is part of none.
    """

    day: date
    name: str
    where: tuple[str, ...]
    row: DateSpan | None


def coming_holidays(home: Where, places: Iterable[Where], today: date) -> tuple[ComingHoliday, ...]:
    """The public holidays and bridge days of the year from today on, in order of date.

    Args:
        home: where the family lives.
        places: where its places are; a country and state is told once.
        today: the first day.

    Returns:
        Nothing of a country whose holidays are not on record.
    """
    spots = {(home.country, home.subdivision): "home"}
    for place in places:
        region = (place.country, place.subdivision)
        spots.setdefault(region, "-".join(filter(None, region)))
    last = today + (_A_YEAR - 1) * _DAY
    found: dict[tuple[date, str], tuple[list[str], DateSpan | None]] = {}
    for (country, subdivision), spot in spots.items():
        try:
            names = holidays_around(country, subdivision, {today.year, last.year})
        except UnknownName:
            continue
        for n in range(_A_YEAR):
            day = today + n * _DAY
            name = names.get(day) or (BRIDGE_DAY if is_bridge_day(day, names.keys()) else "")
            if name:
                days = long_weekend(day, names.keys())
                row = DateSpan(first=days[0], last=days[-1]) if days else None
                found.setdefault((day, name), ([], row))[0].append(spot)
    return tuple(
        ComingHoliday(day, name, tuple(where), row)
        for (day, name), (where, row) in sorted(found.items(), key=lambda one: one[0])
    )


def holiday_source_sentences(home: Where, places: Iterable[Where]) -> tuple[str, ...]:
    """Where the public holidays come from, and what is known to be missing in these countries and states."""
    regions = [(where.country, where.subdivision) for where in (home, *places)]
    return (f"Public holidays are those of the {TABLE}, by country and state.", *table_notes(regions))
