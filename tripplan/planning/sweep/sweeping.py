"""Every place on every day: equal days are answered once, and the answers spread over the calendar."""

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, field, fields, replace
from datetime import date, time, timedelta
from decimal import Decimal
from functools import cached_property
from zoneinfo import ZoneInfo

import numpy as np
from numpy.typing import NDArray
from opening_hours import State

from tripplan.planning.admission.blocks import bands_on
from tripplan.planning.admission.result import EntryPrice
from tripplan.planning.ages import ADULT
from tripplan.planning.calendars import DateSpan
from tripplan.planning.cost.account import GROWN_APPETITE_MONTHS, outing_cost
from tripplan.planning.cost.mileage_rates import UK_RATES, US_RATES
from tripplan.planning.day.best import BestChoice, best_choice
from tripplan.planning.day.felt import UNITS
from tripplan.planning.day.minutes import DayMinutes
from tripplan.planning.day.shapes import DayQuestion
from tripplan.planning.hours import DayHours, Openness, hours_on
from tripplan.planning.household import Member
from tripplan.planning.money import minor_digits
from tripplan.planning.opening_days import DAY_MINUTES, RuleDays, Spans, rule_days
from tripplan.planning.outing import Family, PlaceFacts, day_question, gate_at, place_facts, ways_on
from tripplan.planning.place import Opening, Place
from tripplan.planning.sweep.dates import DateRow, Numbers, grouped
from tripplan.planning.sweep.table import COLUMNS, DayTable, Verdict
from tripplan.planning.travel.drive import Leg, Way
from tripplan.planning.travel.patience import PATIENCE_CHANGES_MONTHS
from tripplan.planning.travel.rests import NEW_WALKER_UNDER_MONTHS, SMALL_CHILD_UNDER_MONTHS
from tripplan.planning.travel.rush_hours import rush_hours_between

_SATURDAY = 5
_WEEKDAYS = ("Mo", "Tu", "We", "Th", "Fr", "Sa", "Su")
_NIGHT_OVER = time(4)
"""A clock that is changed by then is changed before anybody does anything."""
_GRID = 5
"""A change of the clock by a multiple of this keeps the search on the same clock times [min]."""
_CHANCE_DIGITS = 4
"""A chance is rounded to so many decimals before it is weighed in money, as in `plan_outing`."""


_TOLD_OTHERWISE = {"day", "home_zone", "way_there", "way_home", "hours", "busy", "begun"}
_SAME_FOR_A_PARTY = {"nappers", "habits", "worth", "currency", "last_wakes", "first_bed"}
_OF_PLACE_AND_AGES = tuple(
    asked.name for asked in fields(DayQuestion) if asked.name not in _TOLD_OTHERWISE | _SAME_FOR_A_PARTY
)
"""What the day search is asked that may differ from place to place and with everybody's age."""


@dataclass(frozen=True)
class _Visit:
    """The best day plan of one kind of day, with what follows from its legs.

    Attributes:
        best: the plan.
        in_car, longest_drive: driving both ways, and on the longer one [min].
        wheels_there, wheels_back: when the wheels first and last turn [min].
    """

    best: BestChoice
    in_car: int
    longest_drive: int
    wheels_there: tuple[int, int]
    wheels_back: tuple[int, int]

    def later(self, minutes: int) -> "_Visit":
        """The same day plan so many minutes later."""
        best = self.best
        return replace(
            self,
            best=replace(
                best,
                depart=best.depart + minutes,
                enter=best.enter + minutes,
                leave=best.leave + minutes,
                home=best.home + minutes,
            ),
            wheels_there=(self.wheels_there[0] + minutes, self.wheels_there[1] + minutes),
            wheels_back=(self.wheels_back[0] + minutes, self.wheels_back[1] + minutes),
        )


@dataclass
class _Known:
    """What was found already, at any place.

    Attributes:
        visits: the best day plans, by all that they rest on.
        ways: a number for each pair of ways that takes the same minutes.
    """

    visits: dict[tuple[object, ...], "_Visit | Verdict"] = field(default_factory=dict)
    ways: dict[tuple[object, ...], int] = field(default_factory=dict)


@dataclass
class Progress:
    """How far a sweep has come.

    Attributes:
        done: places finished.
        of: places in all.
        table: the answers, once all are there.
    """

    done: int
    of: int
    table: DayTable | None = None


def sweep(
    family: Family, party: Sequence[Member], places: Sequence[Place], span: DateSpan, *, today: date
) -> DayTable:
    """Every place on every day of a span.

    Args:
        family: people, car, home, calendars.
        party: who goes.
        places: where to.
        span: when.
        today: for booking deadlines.

    Returns:
        The same figures as `plan_outing` gives for each place and day.
    """
    *_, last = sweeping(family, party, places, span, today=today)
    if last.table is None:
        raise AssertionError("a sweep ends with its table")
    return last.table


def sweeping(
    family: Family, party: Sequence[Member], places: Sequence[Place], span: DateSpan, *, today: date
) -> Iterator[Progress]:
    """As `sweep`, but tells after each place how far it is; whoever asks no further stops it."""
    row = DateRow(span.first, (span.last - span.first).days + 1, family, tuple(party))
    columns: dict[str, NDArray[np.generic]] = {
        name: np.zeros((len(places), row.count), dtype=kind) for name, kind in COLUMNS.items()
    }
    known = _Known()
    years = range(span.first.year, span.last.year + 1)
    for number, place in enumerate(places):
        facts = place_facts(family, place, years)
        found = _PlaceDays(family, row, facts, today, known).answers()
        for name, values in found.items():
            columns[name][number] = values
        yield Progress(number + 1, len(places))
    table = DayTable(family, row.party, today, tuple(places), span.first, **columns)  # type: ignore[arg-type]
    yield Progress(len(places), len(places), table)


class _PlaceDays:
    """One place over a row of days."""

    def __init__(
        self,
        family: Family,
        row: DateRow,
        facts: PlaceFacts,
        today: date,
        known: _Known,
    ) -> None:
        self._family, self._row, self._facts, self._today = family, row, facts, today
        self._known = known
        self._place = facts.place
        self._hours_known: dict[tuple[int, ...], tuple[int, DayHours]] = {}
        self._holidays = row.is_among(facts.public_holidays)
        self._out_of_school = row.is_among(facts.days_out_of_school)

    def answers(self) -> dict[str, NDArray[np.generic]]:
        """The columns of the table for this place."""
        row, place = self._row, self._place
        columns: dict[str, NDArray[np.generic]] = {
            name: np.zeros(row.count, dtype=kind) for name, kind in COLUMNS.items()
        }
        columns["in_term"] = (row.weekday < _SATURDAY) & ~self._holidays & ~self._out_of_school
        verdict = columns["verdict"]
        hours = self._hours
        if place.currency != row.household.currency:
            verdict[:] = Verdict.OTHER_CURRENCY
        else:
            lets_in = np.array([_lets_somebody_in(place.opening, spans) for spans in hours.spans])
            verdict[~lets_in[hours.kind]] = Verdict.CLOSED
            verdict[(hours.kind == 0) & (self._unknown_hours(hours) > 0)] = Verdict.HOURS_UNKNOWN
        ahead = row.ordinals - self._today.toordinal()
        verdict[(verdict == Verdict.CAN_GO) & (ahead < place.opening.book_days_ahead)] = (
            Verdict.TOO_LATE_TO_BOOK
        )
        verdict[ahead < 0] = Verdict.OVER
        open_days = np.flatnonzero(verdict == Verdict.CAN_GO)
        if open_days.size:
            self._plan(open_days, columns)
        return columns

    def _rule(self, text: str, state: State = State.OPEN) -> RuleDays:
        facts = self._facts
        return rule_days(
            text,
            self._row.first,
            self._row.count,
            facts.public_holiday_dates,
            facts.days_out_of_school,
            state,
        )

    def _unknown_hours(self, hours: RuleDays) -> Numbers:
        text = self._place.opening.hours
        if "unknown" not in text and '"' not in text:
            return np.zeros_like(hours.kind)
        return self._rule(text, State.UNKNOWN).kind

    def _plan(self, open_days: Numbers, columns: dict[str, NDArray[np.generic]]) -> None:
        firsts, kinds = grouped([column[open_days] for column in self._what_a_day_plan_rests_on()])
        visits = [self._visit(int(open_days[first])) for first in firsts]
        verdicts = np.array([found if isinstance(found, Verdict) else Verdict.CAN_GO for found in visits])
        columns["verdict"][open_days] = verdicts[kinds]
        going = verdicts[kinds] == Verdict.CAN_GO
        open_days, kinds = open_days[going], kinds[going]
        if not open_days.size:
            return
        said = np.array(
            [
                (
                    found.best.enter,
                    found.best.lunch_out,
                    found.best.depart,
                    found.best.home,
                    found.best.leave - found.best.enter,
                    found.best.nap_kept,
                    found.best.nap_usual - found.best.nap_kept,
                    found.in_car,
                    found.longest_drive,
                    _in_coins(found.best.felt, self._place.currency),
                    *found.wheels_there,
                    *found.wheels_back,
                )
                if isinstance(found, _Visit)
                else (0,) * 14
                for found in visits
            ],
            dtype=np.int64,
        )[kinds].T
        enter, lunch_out = said[0], said[1]
        priced = self._costs(open_days, enter, lunch_out)
        no_tickets = priced[0] < 0
        columns["verdict"][open_days[no_tickets]] = Verdict.NO_TICKETS
        open_days, said, priced = open_days[~no_tickets], said[:, ~no_tickets], priced[:, ~no_tickets]
        names = ("leave_home", "home", "visit", "nap_kept", "nap_lost", "in_car", "longest_drive")
        for name, values in zip(names, said[2:9], strict=True):
            columns[name][open_days] = values
        for name, values in zip(("low", "likely", "high", "at_least"), priced, strict=True):
            columns[name][open_days] = values
        rises, sets = (light[open_days] for light in self._row.sun)
        for name, wheels in (("dark_there", said[10:12]), ("dark_back", said[12:14])):
            columns[name][open_days] = _in_the_dark(wheels, rises, sets)
        chance = self._chances()[open_days]
        columns["chance"][open_days] = chance
        columns["felt"][open_days] = self._felt(priced[1], said[9], chance)

    def _chances(self) -> NDArray[np.float64]:
        """The chance of a full house on each day, as far as the place is open."""
        row, begin = self._row, 0
        chances = np.full(row.count, np.nan)
        while begin < row.count:
            day = row.days[begin]
            end = min(row.count, begin + (date(day.year, 12, 31) - day).days + 1)
            with suppress(KeyError):  # a place that is closed all year has no crowds
                in_year = self._facts.crowds.year(day.year).chance
                from_january = day.timetuple().tm_yday - 1
                chances[begin:end] = in_year[from_january : from_january + end - begin]
            begin = end
        return chances

    @cached_property
    def _hours(self) -> RuleDays:
        return self._rule(self._place.opening.hours)

    @cached_property
    def _inside(self) -> tuple[RuleDays, ...]:
        """Rules about times inside the place that a day plan may meet, beside its opening."""
        return tuple(self._reaching_no_further(rule) for rule in self._rules_inside())

    def _rules_inside(self) -> Iterator[RuleDays]:
        classes, row = self._place.opening.school_groups, self._row
        if classes is not None:
            in_term = (row.weekday < _SATURDAY) & ~self._holidays & ~self._out_of_school
            rule = self._rule(classes)
            yield replace(rule, kind=np.where(in_term, rule.kind, 0))
        visit = self._place.visit
        for text in (visit.quiet_hours, *(show.days for show in visit.shows)):
            if text is not None:
                yield self._rule(text)

    def _reaching_no_further(self, rule: RuleDays) -> RuleDays:
        """Where times run past midnight into a day whose kind does not tell, every day is its own kind."""
        if not rule.past_midnight:
            return rule
        count = self._row.count
        return RuleDays(np.arange(count), tuple(((n, -1),) for n in range(count)), past_midnight=True)

    def _ages_of_a_day_plan(self) -> Iterator[int]:
        """Ages at which loading, rests or anything else that a day is planned by changes [months]."""
        yield from (NEW_WALKER_UNDER_MONTHS, SMALL_CHILD_UNDER_MONTHS, *PATIENCE_CHANGES_MONTHS)
        yield from (bound for stay in self._place.visit.stays for bound in stay.ages.bounds)

    @cached_property
    def _growing(self) -> Numbers:
        return self._row.since(self._row.birthdays(self._ages_of_a_day_plan()))

    @cached_property
    def _clocks(self) -> tuple[Numbers, ...]:
        """How the clock at the place goes beside that at home, and a number of its own for a clock change."""
        row, home_zone, place_zone = self._row, self._row.household.home.zone, self._place.where.zone
        past_midnight = self._hours.past_midnight
        home = self._clock_changes(home_zone, past_midnight=past_midnight)
        if place_zone == home_zone:
            return (home, np.zeros_like(home))
        changes = np.maximum(home, self._clock_changes(place_zone, past_midnight=past_midnight))
        return (changes, row.offsets(place_zone)[: row.count] - row.offsets(home_zone)[: row.count])

    def _what_a_day_plan_rests_on(self) -> list[Numbers]:
        row = self._row
        return [
            self._hours.kind,
            row.party_kind,
            row.busy_kind,
            self._growing,
            self._ways_kind,
            *self._clocks,
            *(rule.kind for rule in self._inside),
        ]

    @cached_property
    def _what_ways_rest_on(self) -> tuple[Numbers, ...]:
        row = self._row
        rush = self._rush()
        if not rush.any():
            return (row.party_kind, self._growing)
        return (row.party_kind, self._growing, rush, self._clock_changes(row.household.home.zone))

    @cached_property
    def _ways_by_kind(self) -> tuple[list[tuple[Way, Way]], Numbers]:
        """The different ways there are, and which of them each day has."""
        row = self._row
        firsts, kinds = grouped(self._what_ways_rest_on)
        ways = [ways_on(self._family, row.party_on[n], self._facts, row.days[n]) for n in firsts.tolist()]
        return ways, kinds

    @cached_property
    def _ways_kind(self) -> Numbers:
        """For each day a number; on days with the same number both ways take the same minutes."""
        ways, kinds = self._ways_by_kind
        numbers = self._known.ways
        taken = (tuple(map(_decisive, pair)) for pair in ways)
        return np.array([numbers.setdefault(minutes, len(numbers)) for minutes in taken])[kinds]

    def _ways(self, n: int) -> tuple[Way, Way]:
        ways, kinds = self._ways_by_kind
        return ways[int(kinds[n])]

    def _rush(self) -> Numbers:
        """For each day which of the rush hours there are."""
        row = self._row
        rush = rush_hours_between(row.household.habits.rush_hours, row.household.home, self._place.where)
        found = np.zeros(row.count, dtype=np.int64)
        for number, hours in enumerate(rush):
            days = np.array([weekday in hours.days for weekday in _WEEKDAYS])
            found |= days[row.weekday].astype(np.int64) << number
        return np.where(self._holidays, 0, found)

    def _clock_changes(self, zone: ZoneInfo, *, past_midnight: bool = False) -> Numbers:
        """A number of its own for each day on which a clock is changed; such a day is like no other."""
        row = self._row
        offsets = row.offsets(zone)
        changes = offsets[1 : row.count + 1] != offsets[: row.count]
        if past_midnight:
            changes |= offsets[2 : row.count + 2] != offsets[1 : row.count + 1]
        return np.where(changes, np.arange(1, row.count + 1), 0)

    @cached_property
    def _place_key(self) -> tuple[object, ...]:
        """All of the place itself that a day plan may rest on, with what it cannot left out."""
        visit = self._place.visit.model_copy(update={"topics": (), "cautions": (), "questions": ()})
        unlike_hours = {"hours": "24/7", "school_groups": None, "book_days_ahead": 0, "checked_on_site": True}
        return (visit, self._place.opening.model_copy(update=unlike_hours), self._place.where.zone)

    def _visit(self, n: int, *, busy: bool = True) -> _Visit | Verdict:
        """The best day plan of one day, which stands for all days of its kind."""
        row = self._row
        hours = self._hours_on(n)
        if hours.openness is not Openness.OPEN:
            return Verdict.CLOSED
        asked = day_question(self._family, row.party_on[n], self._facts, row.days[n], hours, self._ways(n))
        busy = busy and bool(row.busy_on[n])
        by_night = 0 if busy else self._changed_by_night(n)
        change, beside_home = (int(clock[n]) for clock in self._clocks)
        key = (
            self._hours.spans[self._hours.kind[n]],
            tuple(rule.spans[rule.kind[n]] for rule in self._inside),
            int(row.party_kind[n]),
            int(row.busy_kind[n]) if busy else 0,
            int(self._ways_kind[n]),
            0 if by_night else change,
            beside_home,
            *(getattr(asked, name) for name in _OF_PLACE_AND_AGES),
            *self._place_key,
        )
        found = self._known.visits.get(key)
        if found is None:
            planned = self._planned(n, replace(asked, busy=row.busy_on[n] if busy else ()))
            found = planned.later(-by_night) if by_night and isinstance(planned, _Visit) else planned
            self._known.visits[key] = found
        return found.later(by_night) if by_night and isinstance(found, _Visit) else found

    def _changed_by_night(self, n: int) -> int:
        """How much later everything comes, counted from midnight, on a day whose clock changed in the night.

        After that the day is like any other: what it rests on is all read off the changed clock, so every
        minute of its best plan moves by as much. 0 where no clock changes, or where that could matter.
        """
        row = self._row
        zone = row.household.home.zone
        offsets = row.offsets(zone)
        later = int(offsets[n] - offsets[n + 1])
        if not later or zone != self._place.where.zone or later % _GRID or self._hours.past_midnight:
            return 0
        if self._rush()[n] or offsets[n + 1] != offsets[n + 2]:
            return 0
        if DayMinutes(row.days[n], zone).by_clock(_NIGHT_OVER) != _NIGHT_OVER.hour * 60 + later:
            return 0
        over = _NIGHT_OVER.hour * 60
        opens = min(start for start, _ in self._hours.spans[self._hours.kind[n]])
        first = min([opens, row.first_minute(n)])
        return later if first >= over else 0

    def _planned(self, n: int, question: DayQuestion) -> _Visit | Verdict:
        best = best_choice(question)
        if best is not None:
            return _visit(question, best)
        if question.busy and isinstance(self._visit(n, busy=False), _Visit):
            return Verdict.FAMILY_BUSY
        return Verdict.TOO_LITTLE_TIME

    def _hours_on(self, n: int) -> DayHours:
        """The place's hours, asked for once for days with the same times by the clock."""
        change, beside_home = (int(clock[n]) for clock in self._clocks)
        inside = (int(rule.kind[n]) for rule in self._inside)
        key = (int(self._hours.kind[n]), change, beside_home, *inside)
        if key not in self._hours_known:
            facts = self._facts
            hours = hours_on(
                self._place, self._row.days[n], facts.public_holidays.keys(), facts.days_out_of_school
            )
            self._hours_known[key] = (n, hours)
        known_on, hours = self._hours_known[key]
        return hours if known_on == n else hours.on_equal_day(timedelta(days=n - known_on))

    def _costs(self, days: Numbers, enter: Numbers, lunch_out: Numbers) -> Numbers:
        """Low, likely and high total, and whether something is unknown; below zero where nobody may enter."""
        row = self._row
        prices, price_of = self._entry_prices(days, enter)
        household = row.household
        ages = [household.food.free_under_months, GROWN_APPETITE_MONTHS, ADULT.first]
        ages += [bound for add_on in self._place.add_ons for bound in add_on.ages.bounds]
        changes = row.birthdays(ages)
        if household.car is None:
            changes |= {*(rates.since for rates in US_RATES), *(rates.since for rates in UK_RATES)}
        era = row.since(changes)[days]
        firsts, kinds = grouped([price_of, lunch_out, era, row.party_kind[days]])
        costs = np.array(
            [
                self._cost(int(days[first]), prices[int(price_of[first])], lunch_out=bool(lunch_out[first]))
                for first in firsts
            ],
            dtype=np.int64,
        )
        return costs[kinds].T

    def _cost(self, n: int, entry: EntryPrice | None, *, lunch_out: bool) -> tuple[int, int, int, bool]:
        if entry is None:
            return (-1, -1, -1, False)
        row, day, place = self._row, self._row.days[n], self._place
        way_there, way_home = self._ways(n)
        cost = outing_cost(
            row.household,
            row.party_on[n],
            day,
            place,
            entry,
            way_there.at(0),
            way_home.at(0),
            lunch_out=lunch_out,
            own=self._family.own_figures_for(place.id),
        )
        total = cost.total
        return total.low.minor, total.likely.minor, total.high.minor, bool(cost.unknown)

    def _entry_prices(self, days: Numbers, enter: Numbers) -> tuple[list[EntryPrice | None], Numbers]:
        """The different prices of entry there are, and which of them each day has."""
        row, place = self._row, self._place
        # A party that is let in on another date by the clock of the place meets that date's prices.
        another_date = self._clock_at(days, enter) // DAY_MINUTES
        columns = [
            row.since(self._price_changes())[days],
            row.party_kind[days],
            np.where(another_date, days + 1, 0),
        ]
        columns += [self._holds(text, days, enter) for text in self._times_on_the_board()]
        firsts, kinds = grouped(columns)
        zone, home = place.where.zone, row.household.home.zone
        prices: list[EntryPrice | None] = []
        for first in firsts:
            n = int(days[first])
            moment = DayMinutes(row.days[n], home).moment(int(enter[first]), zone)
            gate = gate_at(self._family, self._facts, moment, today=self._today)
            prices.append(gate.entry_price(row.party_on[n]))
        numbers: dict[EntryPrice | None, int] = {}
        different = np.array([numbers.setdefault(price, len(numbers)) for price in prices], dtype=np.int64)
        return list(numbers), different[kinds]

    def _price_changes(self) -> set[date]:
        """The dates on which the price of entry may change whatever the hour."""
        row, place, passes = self._row, self._place, self._row.household.passes
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
        return sorted({offer.valid for offer in self._place.offers if offer.valid is not None})

    def _holds(self, text: str, days: Numbers, enter: Numbers) -> Numbers:
        """Whether a rule calls the arrival of each day good."""
        rule, clock = self._rule(text), self._clock_at(days, enter)
        holds = np.zeros(days.size, dtype=np.int64)
        for number, spans in enumerate(rule.spans):
            for starts, ends in spans:
                holds |= (rule.kind[days] == number) & (starts <= clock) & (clock < ends)
        return holds

    def _clock_at(self, days: Numbers, minutes: Numbers) -> Numbers:
        """What the clock at the place shows at minutes of days on which no clock is changed [min]."""
        row = self._row
        return (
            minutes + row.offsets(self._place.where.zone)[days] - row.offsets(row.household.home.zone)[days]
        )

    def _felt(self, likely: Numbers, nuisances: Numbers, chance: NDArray[np.float64]) -> Numbers:
        """Money, nuisances and the crowd risk together, rounded half up to the smallest coin."""
        household = self._row.household
        digits = minor_digits(household.currency)
        worth = household.worth.full_house.scaleb(digits)
        exponent = worth.as_tuple().exponent
        more = max(0, -exponent) if isinstance(exponent, int) else 0
        whole = 10 ** (_CHANCE_DIGITS + more)
        crowd = _in_ten_thousandths(chance) * int(worth.scaleb(more))
        felt: Numbers = ((likely + nuisances) * 2 * whole + 2 * crowd + whole) // (2 * whole)
        return felt


def _lets_somebody_in(opening: Opening, spans: Spans) -> bool:
    """Whether anybody may enter on a day with such hours."""
    entering = [
        (opens, last)
        for opens, closes in spans
        if (last := closes - opening.last_entry_minutes_before_close) >= opens
    ]
    clocks = [entry.hour * 60 + entry.minute for entry in opening.entry_times]
    if not clocks:
        return bool(entering)
    return any(opens <= clock <= last for clock in clocks for opens, last in entering)


def _in_coins(felt: int, currency: str) -> int:
    """Felt cost in the smallest coin, rounded half up."""
    coin = 10 ** minor_digits(currency)
    return int((2 * felt * coin + UNITS) // (2 * UNITS))


def _in_ten_thousandths(chances: NDArray[np.float64]) -> Numbers:
    """Chances as whole numbers of ten thousandths, rounded as Python rounds to four decimals."""
    scaled = chances * 10**_CHANCE_DIGITS
    rounded: Numbers = np.rint(scaled).astype(np.int64)
    for n in np.flatnonzero(np.abs(np.abs(scaled - np.floor(scaled)) - 0.5) < 1e-6):
        rounded[n] = int(Decimal(str(round(float(chances[n]), _CHANCE_DIGITS))).scaleb(_CHANCE_DIGITS))
    return rounded


def _in_the_dark(wheels: Numbers, rises: Numbers, sets: Numbers) -> Numbers:
    """Minutes of a drive before sunrise and after sunset."""
    start, end = wheels
    before: Numbers = np.clip(np.minimum(end, rises) - start, 0, None)
    after: Numbers = np.clip(end - np.maximum(start, sets), 0, None)
    return before + after


def _decisive(way: Way) -> tuple[object, ...]:
    if isinstance(way, Leg):
        halts = tuple((halt.after_minutes, halt.minutes) for halt in way.halts)
        return (way.load_up_minutes, way.drive_minutes, way.drive.minutes, way.unload_minutes, *halts)
    return (way.by_minute, *map(_decisive, way.legs))


def _visit(question: DayQuestion, best: BestChoice) -> _Visit:
    there, back = question.way_there.at(best.depart), question.way_home.at(best.leave)
    return _Visit(
        best,
        there.drive_minutes + back.drive_minutes,
        max(there.drive_minutes, back.drive_minutes),
        (best.depart + there.load_up_minutes, best.depart + there.minutes - there.unload_minutes),
        (best.leave + back.load_up_minutes, best.leave + back.minutes - back.unload_minutes),
    )
