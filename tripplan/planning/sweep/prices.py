"""What each day at one place costs; days with the same price of entry and the same ages are priced once."""

from dataclasses import dataclass
from datetime import date, timedelta

import numpy as np

from tripplan.planning.admission.blocks import bands_on
from tripplan.planning.admission.result import EntryPrice
from tripplan.planning.cost.account import GROWN_APPETITE_MONTHS, Account
from tripplan.planning.cost.mileage_rates import UK_RATES, US_RATES
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.family.family import Family
from tripplan.planning.opening.opening_days import DAY_MINUTES
from tripplan.planning.outing.outing import gate_at
from tripplan.planning.sweep.dates import Numbers, grouped
from tripplan.planning.sweep.place_row import PlaceRow
from tripplan.planning.travel.drive import Journey
from tripplan.values.ages import ADULT

NO_ENTRY = (-1, -1, -1, False)
"""What stands for the cost of a day on which nobody lets the party in."""


@dataclass(frozen=True)
class Entry:
    """What it costs to be let in on some days.

    Attributes:
        prices: the different ones there are; None where nobody lets the party in.
        which: for each day, which of them it has.
    """

    prices: tuple[EntryPrice | None, ...]
    which: Numbers


class Prices:
    """The prices of some days at one place."""

    def __init__(self, family: Family, at: PlaceRow, days: Numbers, today: date) -> None:
        self._family, self._at, self._row, self._days, self._today = family, at, at.row, days, today

    def costs(self, entry: Entry, lunch_out: Numbers, ways: tuple[Journey, Journey]) -> Numbers:
        """Low, likely and high total, and whether something is unknown; `NO_ENTRY` where nobody may enter.

        Args:
            entry: what the method of that name says.
            lunch_out: whether the party is out at lunch time on each of the days.
            ways: there and home on any of the days, as the distance is always the same.

        Returns:
            One column a day [smallest coins].
        """
        row, days = self._row, self._days
        household = row.household
        ages = [household.food.free_under_months, GROWN_APPETITE_MONTHS, ADULT.first]
        ages += [bound for add_on in self._at.place.add_ons for bound in add_on.ages.bounds]
        changes = row.birthdays(ages)
        if household.car is None:
            changes |= {*(rates.since for rates in US_RATES), *(rates.since for rates in UK_RATES)}
        eaters = row.kinds_between(changes)[1][days]
        ones, kinds = grouped([entry.which, lunch_out, eaters])
        place = self._at.place
        there, back = (way.at(0) for way in ways)
        account = Account(household, place, there, back, own=self._family.own_figures_for(place.id))
        costs = np.array(
            [
                self._cost(
                    account,
                    int(days[one]),
                    entry.prices[int(entry.which[one])],
                    lunch_out=bool(lunch_out[one]),
                )
                for one in ones
            ],
            dtype=np.int64,
        )
        return costs[kinds].T

    def _cost(
        self, account: Account, n: int, entry: EntryPrice | None, *, lunch_out: bool
    ) -> tuple[int, int, int, bool]:
        if entry is None:
            return NO_ENTRY
        row = self._row
        cost = account.cost(row.party_on[n], row.days[n], entry, lunch_out=lunch_out)
        total = cost.total
        return total.low.minor, total.likely.minor, total.high.minor, bool(cost.unknown)

    def entry(self, enter: Numbers) -> Entry:
        """What entry costs where the party is let in at such times on each of the days [min]."""
        row, at, days = self._row, self._at, self._days
        clock = at.clock(days, enter)
        # A party that is let in on another date by the clock of the place meets that date's prices.
        another_date = clock // DAY_MINUTES
        columns = [
            row.kinds_between(self._price_changes())[1][days],
            np.where(another_date, days + 1, 0),
        ]
        columns += [self._holds(text, clock) for text in self._times_on_the_board()]
        ones, kinds = grouped(columns)
        zone, home = at.place.where.zone, row.household.home.zone
        prices: list[EntryPrice | None] = []
        for one in ones:
            n = int(days[one])
            moment = DayMinutes(row.days[n], home).moment(int(enter[one]), zone)
            gate = gate_at(self._family, at.facts, moment, today=self._today)
            prices.append(gate.entry_price(row.party_on[n]))
        numbers: dict[EntryPrice | None, int] = {}
        different = np.array([numbers.setdefault(price, len(numbers)) for price in prices], dtype=np.int64)
        return Entry(tuple(numbers), different[kinds])

    def _price_changes(self) -> set[date]:
        """The dates on which the price of entry may change whatever the hour."""
        row, place, passes = self._row, self._at.place, self._row.household.passes
        bands = [band for offer in place.offers for band in bands_on(offer)]
        bands += [band for rule in place.must_be_accompanied for band in (rule.ages, rule.by)]
        bands += [
            band
            for other in self._family.places_of_passes
            for offer in other.offers
            for band in bands_on(offer)
        ]
        changes = row.birthdays(bound for band in bands for bound in band.bounds)
        for offer in place.offers:
            if offer.first_day is not None:
                changes.add(offer.first_day)
            if offer.last_day is not None:
                changes.add(offer.last_day + timedelta(days=1))
            changes.add(self._today + timedelta(days=offer.book_days_ahead))
        return changes | {held.valid_until + timedelta(days=1) for held in passes}

    def _times_on_the_board(self) -> list[str]:
        return sorted({offer.valid for offer in self._at.place.offers if offer.valid is not None})

    def _holds(self, text: str, clock: Numbers) -> Numbers:
        """Whether a rule calls the arrival of each day good."""
        rule = self._at.rule(text)
        holds = np.zeros(clock.size, dtype=np.int64)
        for number, spans in enumerate(rule.spans):
            for starts, ends in spans:
                holds |= (rule.kind[self._days] == number) & (starts <= clock) & (clock < ends)
        return holds
