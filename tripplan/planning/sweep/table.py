"""The answers for many places on many days, as arrays."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from enum import IntEnum

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.family.member import Member
from tripplan.documents.places.place import Place
from tripplan.language.sentences import say
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.values.money import Money, MoneyRange


class Verdict(IntEnum):
    """Whether an outing can be done, and if not, what stands in its way."""

    CAN_GO = 0
    OVER = 1
    OTHER_CURRENCY = 2
    CLOSED = 3
    HOURS_UNKNOWN = 4
    TOO_LATE_TO_BOOK = 5
    FAMILY_BUSY = 6
    TOO_LITTLE_TIME = 7
    NO_TICKETS = 8
    TOO_COLD_OR_HOT = 9

    def on_days(self, number: int) -> str:
        """On how many days it is so, such as 'closed on 4 days'."""
        return say(_WORDS[self], days=number)


_WORDS = {
    Verdict.CAN_GO: "days-verdict-can-go",
    Verdict.OVER: "days-verdict-over",
    Verdict.OTHER_CURRENCY: "days-verdict-currency",
    Verdict.CLOSED: "days-verdict-closed",
    Verdict.HOURS_UNKNOWN: "days-verdict-hours",
    Verdict.TOO_LATE_TO_BOOK: "days-verdict-booking",
    Verdict.FAMILY_BUSY: "days-verdict-busy",
    Verdict.TOO_LITTLE_TIME: "days-verdict-time",
    Verdict.NO_TICKETS: "days-verdict-tickets",
    Verdict.TOO_COLD_OR_HOT: "days-verdict-weather",
}

COLUMNS = {
    "verdict": np.int8,
    "low": np.int64,
    "likely": np.int64,
    "high": np.int64,
    "at_least": np.bool_,
    "felt": np.int64,
    "weather": np.int64,
    "chance": np.float64,
    "nap_kept": np.int16,
    "nap_lost": np.int16,
    "visit": np.int16,
    "in_car": np.int16,
    "longest_drive": np.int16,
    "leave_home": np.int16,
    "home": np.int16,
    "dark_there": np.int16,
    "dark_back": np.int16,
    "in_term": np.bool_,
}
"""What a row of days is told about, and how."""


@dataclass(frozen=True, eq=False)
class DayTable:
    """Every place on every day of a row, one array entry each; shape (places, days).

    Only `verdict` and `in_term` mean anything where an outing cannot be done.

    Attributes:
        family, party, today: what was asked.
        places: one row each.
        first: the first day; the others follow it.
        verdict: whether it can be done, as numbers of `Verdict`.
        low, likely, high: total cost [smallest coins].
        at_least: whether something in the total is unknown.
        felt: generalized cost [smallest coins].
        weather: what of it being outdoors in the weather weighs [smallest coins].
        chance: of a full house [0-1].
        nap_kept, nap_lost: of all usual naps together [min].
        visit: time inside [min].
        in_car: driving, both ways [min].
        longest_drive: driving, the longer of the two ways [min].
        leave_home, home: minutes since midnight at home [min].
        dark_there, dark_back: driving in the dark on either way [min].
        in_term: whether most pupils near the place have school that day; where nobody knows, whether they
            likely have.
    """

    family: Family
    party: tuple[Member, ...]
    today: date
    places: tuple[Place, ...]
    first: date
    verdict: NDArray[np.int8]
    low: NDArray[np.int64]
    likely: NDArray[np.int64]
    high: NDArray[np.int64]
    at_least: NDArray[np.bool_]
    felt: NDArray[np.int64]
    weather: NDArray[np.int64]
    chance: NDArray[np.float64]
    nap_kept: NDArray[np.int16]
    nap_lost: NDArray[np.int16]
    visit: NDArray[np.int16]
    in_car: NDArray[np.int16]
    longest_drive: NDArray[np.int16]
    leave_home: NDArray[np.int16]
    home: NDArray[np.int16]
    dark_there: NDArray[np.int16]
    dark_back: NDArray[np.int16]
    in_term: NDArray[np.bool_]
    _planned: dict[tuple[int, int], Outing | NoOuting] = field(default_factory=dict)

    @property
    def days(self) -> tuple[date, ...]:
        """The days, in order."""
        return tuple(self.first + timedelta(days=n) for n in range(self.verdict.shape[1]))

    @property
    def can_go(self) -> NDArray[np.bool_]:
        """Where an outing can be done."""
        can_go: NDArray[np.bool_] = self.verdict == Verdict.CAN_GO
        return can_go

    def day(self, column: int) -> date:
        """The date of a column."""
        return self.first + timedelta(days=int(column))

    def money(self, coins: int) -> Money:
        """An amount of the table."""
        return Money.from_minor(int(coins), self.family.household.currency)

    def total(self, row: int, column: int) -> MoneyRange:
        """What is known of the total cost of one place on one day."""
        return MoneyRange(*(self.money(ends[row, column]) for ends in (self.low, self.likely, self.high)))

    def at_home(self, column: int, minute: int) -> datetime:
        """A minute of a day as a moment by the clock at home."""
        zone = self.family.household.home.zone
        return DayMinutes(self.day(column), zone).moment(int(minute), zone)

    def outing(self, row: int, column: int) -> Outing | NoOuting:
        """One place on one day with all its answers, or with the reasons why not; worked out when asked."""
        if (row, column) not in self._planned:
            self._planned[row, column] = self.planned_for(self.party, row, column)
        return self._planned[row, column]

    def planned_for(self, party: Sequence[Member], row: int, column: int) -> Outing | NoOuting:
        """As `outing`, for another party."""
        day = self.day(column)
        facts = place_facts(self.family, self.places[row], (day.year,))
        return plan_outing(self.family, party, facts, day, today=self.today)

    def ranked(self, wanted: NDArray[np.bool_] | None = None) -> NDArray[np.int64]:
        """Outings that can be done, least generalized cost first; ties by date, then place id.

        Args:
            wanted: which of them; all when left out.

        Returns:
            Rows and columns; shape (outings, 2).
        """
        rows, columns = np.nonzero(self.can_go if wanted is None else self.can_go & wanted)
        by_id = np.argsort(np.argsort([place.id for place in self.places]))
        order = np.lexsort((by_id[rows], columns, self.felt[rows, columns]))
        return np.stack((rows[order], columns[order]), axis=1)
