"""Festival days that no table knows: a town's fair, a parade, a local day off; the parent lists them."""

from calendar import isleap
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from datetime import date, timedelta

from tripplan.documents.calendars.local_days import LocalDay
from tripplan.documents.places.place import Place, SpecialDay
from tripplan.documents.where import Point
from tripplan.errors import UnknownName
from tripplan.language import wording
from tripplan.planning.holidays.public_holidays import holidays_around
from tripplan.planning.travel.distance import geodesic_km


def local_dates(local: LocalDay, years: Iterable[int]) -> Iterator[date]:
    """The days of a festival in some calendar years.

    Args:
        local: the festival.
        years: calendar years [years].
    """
    wanted = set(years)
    spans = [(local.first, local.last)]
    if local.every_year:
        over_new_year = local.last.year - local.first.year
        spans = [
            (_in_year(local.first, year), _in_year(local.last, year + over_new_year))
            for year in range(min(wanted, default=0) - 1, max(wanted, default=0) + 1)
            if year >= local.first.year
        ]
    for first, last in spans:
        length = (last - first).days + 1
        yield from (day for n in range(length) if (day := first + timedelta(days=n)).year in wanted)


def local_day_sentence(local: LocalDay, names: Mapping[str, str], unit: str) -> str:
    """What is on record of a local day, such as 'Hop fair: Sun, May 2, 2027, Old Mill, 2 times ...'.

    Args:
        local: the festival or day off.
        names: of the places, by the ids of their cards.
        unit: of distances, 'mi' or 'km'.
    """
    where = (
        names.get(str(local.place), str(local.place))
        if local.town is None
        else f"within {wording.distance(local.reach_km, unit)} of {local.town.town or 'a town'}"
    )
    span = wording.days(local.first, local.last)
    yearly = ", every year" if local.every_year else ""
    off = ", people are off work" if local.day_off else ""
    hours = ", places keep it like a public holiday" if local.hours_as_on_holidays else ""
    return (
        f"{local.name}: {span}{yearly}, {where}, {local.crowd_factor} times the usual visitors{off}{hours}."
    )


def _in_year(day: date, year: int) -> date:
    """The same date of another year; a leap day moves to 1 March where there is none."""
    if (day.month, day.day) == (2, 29) and not isleap(year):
        return date(year, 3, 1)
    return day.replace(year=year)


def is_near(local: LocalDay, point: Point) -> bool:
    """Whether a point lies in or around the town that a festival concerns."""
    return local.town is not None and geodesic_km(local.town.point, point) <= local.reach_km


def concerns(local: LocalDay, place: Place) -> bool:
    """Whether a festival is at a place or near enough to it."""
    return local.place == place.id if local.town is None else is_near(local, place.where.point)


def with_local_days(place: Place, locals_: Sequence[LocalDay], years: Iterable[int]) -> Place:
    """The card with the festivals that concern the place among its special days.

    A day the card already lists keeps what the card says.
    """
    asked = tuple(years)
    listed = {special.day for special in place.special_days}
    added = [
        SpecialDay(day=day, name=local.name, crowd_factor=local.crowd_factor)
        for local in locals_
        if concerns(local, place)
        for day in local_dates(local, asked)
        if day not in listed
    ]
    return place.model_copy(update={"special_days": (*place.special_days, *added)}) if added else place


@dataclass(frozen=True)
class PlaceHolidays:
    """The holidays at a place in some years and those beside them, names by date, in order of date.

    Attributes:
        kept: what PH means in the card's rules: public holidays, and local days that places keep like one.
        off_work: when people are off work: public holidays and local days off.
        known: whether the country's public holidays are on record; where not, only local days are listed.
    """

    kept: Mapping[date, str]
    off_work: Mapping[date, str]
    known: bool


def place_holidays(place: Place, locals_: Sequence[LocalDay], years: Iterable[int]) -> PlaceHolidays:
    """The holidays at a place.

    Args:
        place: the card.
        locals_: what the parent listed; only what concerns the place counts.
        years: calendar years [years].
    """
    asked = frozenset(years)
    around = {year + step for year in asked for step in (-1, 0, 1)}
    public: Mapping[date, str] = {}
    known = True
    try:
        public = holidays_around(place.where.country, place.where.subdivision, asked)
    except UnknownName:
        known = False
    near = [local for local in locals_ if concerns(local, place)]
    return PlaceHolidays(
        _with(public, (local for local in near if local.hours_as_on_holidays), around),
        _with(public, (local for local in near if local.day_off), around),
        known,
    )


def _with(public: Mapping[date, str], locals_: Iterable[LocalDay], years: Set[int]) -> Mapping[date, str]:
    added = {day: local.name for local in locals_ for day in local_dates(local, years)}
    return dict(sorted({**added, **public}.items())) if added else public
