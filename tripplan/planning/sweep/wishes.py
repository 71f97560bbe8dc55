"""What a parent asks of a day beside its price: each wish by itself, so that a near miss can name the one."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import time, timedelta
from decimal import Decimal
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.calendars.family_days import WEEKDAYS
from tripplan.documents.model import Weekday
from tripplan.documents.places.place import Place
from tripplan.documents.study.units import StudyUnit
from tripplan.language.sentences import Fact, fact
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.sweep.table import DayTable
from tripplan.planning.topic_fit import fits_of
from tripplan.values.money import Money
from tripplan.values.weekday import Weekday as CalendarDay

Mask = NDArray[np.bool_]

NEAR_SHARE = 0.25
"""By so much a budget may be exceeded and is nearly kept [-]; like the next ones our choice, no source."""
NEAR_MINUTES = 30
"""So much more driving, driving in the dark, lost nap or lateness is still near a wish [min]."""
NEAR_CHANCE = 0.1
"""So much more of a chance of a full house likewise [0-1]."""
NEAR_DAYS = timedelta(days=14)
"""So far outside the weeks of a study unit likewise."""
_ANYWHERE: Mask = np.array([True])
"""A wish of which one cannot say by how much it is missed."""


@dataclass(frozen=True)
class Weeks:
    """Days and places that a stretch of study leaves open.

    Attributes:
        name: of the study unit.
        days: its weeks.
        places: ids of the places that fit it.
    """

    name: str
    days: DateSpan
    places: frozenset[str]

    @classmethod
    def of(cls, unit: StudyUnit, places: Sequence[Place]) -> "Weeks":
        """Those of a study unit, at the places whose topics meet its own."""
        fitting = frozenset(fit.place.id for fit in fits_of(unit, places).places)
        return cls(unit.name, unit.weeks, fitting)


@dataclass(frozen=True)
class Wishes:
    """What a day should be like; what is left out is no wish.

    Attributes:
        weekdays: on which days of the week.
        budget: the likely total at most, in the household's currency.
        drive_minutes: driving at most, on the longer of the two ways [min].
        nap_percent: how much of the usual naps is kept at least [%].
        full_house_percent: the chance of a full house at most [%].
        air: a place where one can stay indoors, or one that is outdoors.
        in_term: only days on which most pupils near the place have school, or likely have.
        in_daylight: only days without driving in the dark.
        home_by: home again by then, by the clock at home.
        weeks: only in the weeks of a study unit, at places that fit it.
    """

    weekdays: frozenset[Weekday] = frozenset(WEEKDAYS)
    budget: Decimal | None = None
    drive_minutes: int | None = None
    nap_percent: int = 0
    full_house_percent: int | None = None
    air: Literal["indoors", "outdoors"] | None = None
    in_term: bool = False
    in_daylight: bool = False
    home_by: time | None = None
    weeks: Weeks | None = None


@dataclass(frozen=True, eq=False)
class Wish:
    """One wish on the days of a table.

    Attributes:
        words: the wish in short, such as at most $120.
        met: where it is met; of the table's shape, or one that stretches to it.
        nearly: where it is met, or missed by so little that a parent may think again.
        missed: how a row and column of the table miss it, as the end of a sentence that begins with 'but'.
    """

    words: Fact
    met: Mask
    nearly: Mask
    missed: Callable[[int, int], Fact]


def wished(wishes: Wishes, table: DayTable) -> tuple[Wish, ...]:
    """Every wish that was made, with where it is met.

    Args:
        wishes: what was asked.
        table: the days.
    """
    return (*_of_the_calendar(wishes, table), *_of_the_outing(wishes, table), *_of_the_place(wishes, table))


def _of_the_calendar(wishes: Wishes, table: DayTable) -> Iterator[Wish]:
    days = table.days
    if wishes.weekdays != frozenset(WEEKDAYS):
        wanted = tuple(number for number in CalendarDay if WEEKDAYS[number] in wishes.weekdays)
        met = np.array([day.weekday() in wanted for day in days])
        yield Wish(
            fact("misses-wish-weekdays", days=wanted),
            met,
            _ANYWHERE,
            lambda _, column: fact("misses-weekday", day=CalendarDay(days[column].weekday())),
        )
    if wishes.in_term:
        yield Wish(
            fact("misses-wish-in-school"), table.in_term, _ANYWHERE, lambda *_: fact("misses-no-school")
        )
    if wishes.weeks is not None:
        unit = wishes.weeks.name
        span = wishes.weeks.days
        met = np.array([day in span for day in days])
        first, last = span.first - NEAR_DAYS, span.last + NEAR_DAYS
        nearly = np.array([first <= day <= last for day in days])
        words = fact("misses-wish-weeks", unit=unit)
        yield Wish(words, met, nearly, lambda *_: fact("misses-other-weeks", unit=unit))


def _of_the_outing(wishes: Wishes, table: DayTable) -> Iterator[Wish]:
    if wishes.budget is not None:
        most = Money(wishes.budget, table.family.household.currency)
        budget = fact("misses-wish-budget", most=most)
        yield Wish(
            budget,
            table.likely <= most.minor,
            table.likely <= most.minor * (1 + NEAR_SHARE),
            lambda *spot: fact("misses-costs", total=table.money(table.likely[spot]), wish=budget),
        )
    if wishes.drive_minutes is not None:
        drive = fact("misses-wish-drive", most=timedelta(minutes=wishes.drive_minutes))
        yield Wish(
            drive,
            table.longest_drive <= wishes.drive_minutes,
            table.longest_drive <= wishes.drive_minutes + NEAR_MINUTES,
            lambda *spot: fact("misses-drive", takes=_minutes(table.longest_drive[spot]), wish=drive),
        )
    if wishes.nap_percent:
        nap = fact("misses-wish-nap", share=wishes.nap_percent / 100)
        kept, lost = table.nap_kept.astype(np.int64), table.nap_lost.astype(np.int64)
        yield Wish(
            nap,
            kept * 100 >= (kept + lost) * wishes.nap_percent,
            kept * 100 >= (kept + lost) * wishes.nap_percent - 100 * NEAR_MINUTES,
            lambda *spot: fact("misses-nap", lost=_minutes(lost[spot]), wish=nap),
        )
    if wishes.full_house_percent is not None:
        yield Wish(
            fact("misses-wish-quiet", share=wishes.full_house_percent / 100),
            # A day that is not open has no chance, and a comparison with it is false.
            table.chance * 100 <= wishes.full_house_percent,
            table.chance <= wishes.full_house_percent / 100 + NEAR_CHANCE,
            lambda *spot: fact("misses-packed", share=float(table.chance[spot])),
        )
    if wishes.in_daylight:
        dark = table.dark_there.astype(np.int64) + table.dark_back
        yield Wish(
            fact("misses-wish-daylight"),
            dark == 0,
            dark <= NEAR_MINUTES,
            lambda *spot: fact("misses-dark", minutes=_minutes(dark[spot])),
        )
    if wishes.home_by is not None:
        yield Wish(
            fact("misses-wish-home", latest=wishes.home_by),
            table.home <= _by_clock(table, wishes.home_by),
            table.home <= _by_clock(table, wishes.home_by) + NEAR_MINUTES,
            lambda row, column: fact("misses-home", at=table.at_home(column, int(table.home[row, column]))),
        )


def _of_the_place(wishes: Wishes, table: DayTable) -> Iterator[Wish]:
    places = table.places
    if wishes.air is not None:
        met = np.array([place.visit.indoors in (wishes.air, "both") for place in places])
        yield Wish(
            fact("misses-wish-air", air=wishes.air),
            met[:, None],
            _ANYWHERE,
            lambda row, _: fact("misses-air", air=places[row].visit.indoors),
        )
    if wishes.weeks is not None:
        weeks = wishes.weeks
        met = np.array([place.id in weeks.places for place in places])
        yield Wish(
            fact("misses-wish-fitting", unit=weeks.name),
            met[:, None],
            _ANYWHERE,
            lambda *_: fact("misses-does-not-fit", unit=weeks.name),
        )


def all_met(wishes: Sequence[Wish], table: DayTable) -> Mask:
    """Where an outing can be done and every wish is met."""
    met = table.can_go
    for wish in wishes:
        met = met & wish.met
    return met


def _minutes(count: float) -> timedelta:
    return timedelta(minutes=int(count))


def _by_clock(table: DayTable, clock: time) -> NDArray[np.int64]:
    """A time of the clock at home on every day of a table [min]."""
    zone = table.family.household.home.zone
    return np.array([DayMinutes(day, zone).by_clock(clock) for day in table.days], dtype=np.int64)
