"""What each day at one place costs by the hour; equal days are priced once."""

from collections.abc import Hashable
from dataclasses import replace
from datetime import date, timedelta
from functools import cached_property

import numpy as np

from tripplan.planning.admission.terms.registry import terms_of
from tripplan.planning.cost.account import GROWN_APPETITE_MONTHS, Account
from tripplan.planning.cost.mileage_rates import UK_RATES, US_RATES
from tripplan.planning.family.family import Family
from tripplan.planning.outing.hourly_costs import HourlyCosts, HourlyPrices
from tripplan.planning.sweep.dates import Numbers, grouped
from tripplan.planning.sweep.open_hours import NOT_ASKED_FOR, OpenHours
from tripplan.planning.sweep.place_row import PlaceRow
from tripplan.planning.travel.drive import Journey
from tripplan.values.ages import ADULT, MONTHS, OLDEST_MONTHS


class Prices:
    """The prices of some days at one place."""

    def __init__(
        self,
        family: Family,
        at: PlaceRow,
        days: Numbers,
        today: date,
        ways: tuple[Journey, Journey],
        hours: OpenHours,
    ) -> None:
        """Days: those of the row that the place is open on; the ways of any of them, as all are as long."""
        self._family, self._at, self._row, self._days, self._today = family, at, at.row, days, today
        self._hours = hours
        there, back = (way.at(0) for way in ways)
        own = family.own_figures_for(at.place.id)
        account = Account(self._row.household, at.place, there, back, own=own)
        self._prices = HourlyPrices(family, at.facts, account, today)
        self._known: dict[int, HourlyCosts] = {}

    @cached_property
    def kind(self) -> Numbers:
        """For each day of the row a number; days with the same number cost the same at every hour."""
        at, row, days = self._at, self._row, self._days
        rules = [
            replace(at, facts=facts).rule(text) for facts in self._prices.cases for text in self._prices.times
        ]
        columns = [self._entry_kind, self._eaters_kind, *(rule.kind for rule in rules)]
        if self._prices.by_the_hour:
            columns += [at.hours.kind, at.changes, at.ahead[: row.count]]
        if at.hours.past_midnight or any(rule.past_midnight for rule in rules):
            columns.append(np.arange(row.count))
        kind = np.full(row.count, -1)
        kind[days] = grouped([column[days] for column in columns])[1]
        return kind

    def costs(self, n: int) -> HourlyCosts:
        """What a day costs by the hour."""
        kind = int(self.kind[n])
        if kind not in self._known:
            row, who = self._row, int(self._row.party_kind[n])
            by_the_hour = self._prices.by_the_hour or self._at.hours.past_midnight
            self._known[kind] = self._prices.on(
                row.party_on[n],
                row.days[n],
                self._hours.on(n) if by_the_hour else NOT_ASKED_FOR,
                alike=lambda on: (who, self._alike(on)),
                eaters=int(self._eaters_kind[n]),
            )
        return self._known[kind]

    def _alike(self, day: date) -> Hashable:
        n = (day - self._row.first).days
        return int(self._entry_kind[n]) if n < self._row.count else day

    @cached_property
    def _entry_kind(self) -> Numbers:
        """For each day a number; entry costs the same on days with the same number, whatever the hour."""
        return self._row.kinds_between(self._price_changes())[1]

    @cached_property
    def _eaters_kind(self) -> Numbers:
        """The same for what is paid beside entry."""
        row = self._row
        household = row.household
        ages = [household.food.free_under_months, GROWN_APPETITE_MONTHS, ADULT.first]
        ages += [bound for add_on in self._at.place.add_ons for bound in add_on.ages.bounds]
        changes = row.birthdays(ages)
        if household.car is None:
            changes |= {*(rates.since for rates in US_RATES), *(rates.since for rates in UK_RATES)}
        return row.kinds_between(changes)[1]

    def _price_changes(self) -> set[date]:
        """The dates on which the price of entry may change whatever the hour."""
        row, place, passes = self._row, self._at.place, self._row.household.passes
        bands = [band for offer in place.offers for band in terms_of(offer).bands]
        bands += [add_on.ages for add_on in place.add_ons]
        bands += [ADULT for add_on in place.add_ons if add_on.least_height or add_on.most_height]
        bands += [band for rule in place.must_be_accompanied for band in (rule.ages, rule.by)]
        bands += [
            band
            for other in self._family.places_of_passes
            for offer in other.offers
            for band in terms_of(offer).bands
        ]
        changes = row.birthdays(bound for band in bands for bound in band.bounds)
        for offer in place.offers:
            if offer.first_day is not None:
                changes.add(offer.first_day)
            if offer.last_day is not None:
                changes.add(offer.last_day + timedelta(days=1))
            changes.add(self._today + timedelta(days=offer.book_days_ahead))
        changes |= {self._today + timedelta(days=voucher.book_days_ahead) for voucher in place.vouchers}
        changes |= self._days_of_birth()
        return changes | {held.valid_until + timedelta(days=1) for held in passes}

    def _days_of_birth(self) -> set[date]:
        """The dates about the birthdays of the party, where a ticket is good on them only."""
        row, good_on = self._row, {getattr(offer, "good_on", "any day") for offer in self._at.place.offers}
        changes: set[date] = set()
        if "birthday" in good_on:
            birthdays = {row.first, *row.birthdays(range(0, OLDEST_MONTHS, MONTHS))}
            changes |= birthdays | {day + timedelta(days=1) for day in birthdays}
        if "birth month" in good_on:
            changes |= {day for day in row.days if day.day == 1}
        return changes
