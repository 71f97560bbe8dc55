"""What each day at one place costs; days with the same price of entry and the same ages are priced once."""

from dataclasses import dataclass
from datetime import date, timedelta

import numpy as np

from tripplan.planning.admission.availability import VisitTime, limits_on_stay
from tripplan.planning.admission.blocks import bands_on
from tripplan.planning.admission.cheapest import Gate
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
from tripplan.values.clocks import minute_of_day

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


@dataclass(frozen=True)
class Stays:
    """From when to when a place is visited on some days.

    Attributes:
        enter: when the party is let in on each of the days [min].
        leave: when it leaves [min].
    """

    enter: Numbers
    leave: Numbers


class Prices:
    """The prices of some days at one place."""

    def __init__(self, family: Family, at: PlaceRow, days: Numbers, today: date) -> None:
        self._family, self._at, self._row, self._days, self._today = family, at, at.row, days, today

    def costs(self, entry: Entry, stays: Stays, lunch_out: Numbers, ways: tuple[Journey, Journey]) -> Numbers:
        """Low, likely and high total, and whether something is unknown; `NO_ENTRY` where nobody may enter.

        Args:
            entry: what the method of that name says.
            stays: when the place is visited.
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
        ones, kinds = grouped([entry.which, lunch_out, eaters, *self._parked(stays)])
        place = self._at.place
        there, back = (way.at(0) for way in ways)
        account = Account(household, place, there, back, own=self._family.own_figures_for(place.id))
        costs = np.array(
            [
                self._cost(
                    account,
                    int(days[one]),
                    entry.prices[int(entry.which[one])],
                    self._gate(stays, int(one)).visit if place.parking.rates else None,
                    lunch_out=bool(lunch_out[one]),
                )
                for one in ones
            ],
            dtype=np.int64,
        )
        return costs[kinds].T

    def _cost(
        self, account: Account, n: int, entry: EntryPrice | None, visit: VisitTime | None, *, lunch_out: bool
    ) -> tuple[int, int, int, bool]:
        if entry is None:
            return NO_ENTRY
        row = self._row
        cost = account.cost(row.party_on[n], row.days[n], entry, lunch_out=lunch_out, visit=visit)
        total = cost.total
        return total.low.minor, total.likely.minor, total.high.minor, bool(cost.unknown)

    def entry(self, stays: Stays) -> Entry:
        """What entry costs where the party comes and leaves at such times on each of the days."""
        row, days = self._row, self._days
        clock = self._at.clock(days, stays.enter)
        # A party that is let in on another date by the clock of the place meets that date's prices.
        another_date = clock // DAY_MINUTES
        columns = [
            row.kinds_between(self._price_changes())[1][days],
            np.where(another_date, days + 1, 0),
        ]
        columns += [self._holds(text, clock) for text in self._times_on_the_board()]
        columns += self._limits_kept(stays, clock)
        ones, kinds = grouped(columns)
        prices = [self._gate(stays, int(one)).entry_price(row.party_on[int(days[one])]) for one in ones]
        numbers: dict[EntryPrice | None, int] = {}
        different = np.array([numbers.setdefault(price, len(numbers)) for price in prices], dtype=np.int64)
        return Entry(tuple(numbers), different[kinds])

    def _gate(self, stays: Stays, one: int) -> Gate:
        """The till as the party meets it on one of the days."""
        zone = self._at.place.where.zone
        minutes = DayMinutes(self._row.days[int(self._days[one])], self._row.household.home.zone)
        enter, leave = (minutes.moment(int(times[one]), zone) for times in (stays.enter, stays.leave))
        return gate_at(self._family, self._at.facts, enter, leave, today=self._today)

    def _limits_kept(self, stays: Stays, clock: Numbers) -> list[Numbers]:
        """Which of the board's limits on the stay each visit keeps; days of a clock change by themselves."""
        limits = limits_on_stay(self._at.place)
        if not limits:
            return []
        leaves = self._at.clock(self._days, stays.leave)
        kept = [self._at.changes[self._days]]
        for longest, leave_by in limits:
            fits = np.ones(leaves.size, dtype=np.int64)
            if longest is not None:
                fits &= stays.leave - stays.enter <= longest
            if leave_by is not None:
                by = minute_of_day(leave_by)
                fits &= (clock % DAY_MINUTES < by) & (leaves - clock // DAY_MINUTES * DAY_MINUTES <= by)
            kept.append(fits)
        return kept

    def _parked(self, stays: Stays) -> list[Numbers]:
        """What the price of parking hangs on, where it is not always the same."""
        rates = self._at.place.parking.rates
        if not rates:
            return []
        clock = self._at.clock(self._days, stays.enter)
        texts = sorted({rate.valid for rate in rates if rate.valid is not None})
        changes = self._at.changes[self._days]
        return [stays.leave - stays.enter, changes, *(self._holds(text, clock) for text in texts)]

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
