"""What an outing costs by the hour: every price of entry and parking, each with lunch at home and out."""

from collections.abc import Callable, Hashable, Iterator, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from functools import cached_property
from itertools import chain, pairwise, product

from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import AddOn, price_beside
from tripplan.documents.places.place import Place
from tripplan.planning.admission.availability import VisitTime, limits_on_stay
from tripplan.planning.admission.cheapest import Gate
from tripplan.planning.admission.result import EntryPrice
from tripplan.planning.cost.account import Account, wanted_add_ons
from tripplan.planning.cost.driving import seats_in_a_car
from tripplan.planning.cost.items import OutingCost
from tripplan.planning.cost.parking import parking_price
from tripplan.planning.day.times.hourly_money import EVER, HourlyMoney, PriceHours
from tripplan.planning.day.times.limits import NEVER
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.family.family import Family
from tripplan.planning.opening.hours import DayHours
from tripplan.planning.opening.opening_days import DAY_MINUTES, Spans, rule_days
from tripplan.planning.outing.place_facts import PlaceFacts
from tripplan.values.clocks import minute_of_day
from tripplan.values.opening_hours import names_school_holidays

_NOON = time(12)
_ALL_DAY: tuple[Spans, ...] = ((), ((0, DAY_MINUTES),))
_HOUR = 60


@dataclass(frozen=True)
class HourlyCosts:
    """What an outing costs by the hour.

    Attributes:
        hours: which hours have a price of their own.
        costs: for each of them, by `PriceHours.number`, the cost with lunch at home, and out; None where
            nobody lets the party in, or nobody could be there at such hours.
    """

    hours: PriceHours
    costs: tuple[tuple[OutingCost, OutingCost] | None, ...]

    def at(self, enter: int, leave: int, *, lunch_there: bool) -> OutingCost | None:
        """The cost of a visit from one minute to another, with lunch out or at home."""
        each = self.costs[self.hours.number(enter, leave)]
        return each and each[lunch_there]

    @property
    def same_all_day(self) -> bool:
        """Whether neither the hour nor the place of lunch makes a difference."""
        return len(self.costs) == 1 and (self.costs[0] is None or self.costs[0][0] is self.costs[0][1])

    @cached_property
    def money(self) -> HourlyMoney:
        """For the day search."""
        likely = (each and (each[0].total.likely.minor, each[1].total.likely.minor) for each in self.costs)
        return HourlyMoney(self.hours, tuple(likely))


def gate_at(
    family: Family, facts: PlaceFacts, moment: datetime, leaving: datetime | None = None, *, today: date
) -> Gate:
    """The till of a place as the family meets it at the moment it is let in, to leave at another."""
    return Gate(
        facts.place,
        moment,
        today,
        household=frozenset(member.name for member in family.household.members),
        held=family.household.passes,
        public_holidays=facts.public_holidays.keys(),
        days_out_of_school=facts.days_out_of_school,
        other_places=family.places_of_passes,
        leaving=leaving,
        car_seats=seats_in_a_car(family.household),
        add_ons=wanted_add_ons(facts.place, family.own_figures_for(facts.place.id)),
    )


@dataclass(frozen=True, eq=False)
class HourlyPrices:
    """What outings to one place cost, day by day and hour by hour; what is equal is priced once.

    Prices change only where the times of an offer or of a parking rate begin or end, or at midnight, by the
    clock at the place; by when one leaves; and with the length of the stay.

    Attributes:
        family: whose passes count.
        facts: the place.
        account: the household and the way to the place.
        today: for bookings.
    """

    family: Family
    facts: PlaceFacts
    account: Account
    today: date
    _entries: dict[Hashable, EntryPrice | None] = field(default_factory=dict)
    _costs: dict[Hashable, tuple[OutingCost, OutingCost]] = field(default_factory=dict)

    def on(
        self,
        party: Sequence[Member],
        day: date,
        hours: DayHours,
        *,
        alike: Callable[[date], Hashable],
        eaters: Hashable = None,
    ) -> HourlyCosts:
        """What a day costs at every hour at which somebody can be there.

        Args:
            party: who goes.
            day: the date, at home and at the place.
            hours: when the place can be visited that day.
            alike: the same for dates on which entry costs the same while the same offers are good.
            eaters: the same for days on which all costs but entry and parking are the same.
        """
        if not self.by_the_hour and not _past_midnight(day, hours):
            noon = datetime.combine(day, _NOON, self.facts.place.where.zone)
            return HourlyCosts(PriceHours(), (self._cost(party, day, (noon, None), alike, eaters),))
        minutes = DayMinutes(day, self.family.household.home.zone)
        priced = self._hours(day, hours, minutes)
        zone = self.facts.place.where.zone

        def cost(enter: int, leave: int) -> tuple[OutingCost, OutingCost] | None:
            visit = (minutes.moment(enter, zone), minutes.moment(leave, zone))
            return self._cost(party, day, visit, alike, eaters)

        visits = _visits(priced, hours, minutes)
        return HourlyCosts(priced, tuple(visit and cost(*visit) for visit in visits))

    def _cost(
        self,
        party: Sequence[Member],
        day: date,
        visit: tuple[datetime, datetime | None],
        alike: Callable[[date], Hashable],
        eaters: Hashable,
    ) -> tuple[OutingCost, OutingCost] | None:
        """What a visit costs with lunch at home, and out; the dearer if nobody knows of a school break."""
        costs = [self._cost_in(facts, party, day, visit, alike, eaters) for facts in self.cases]
        if None in costs:
            return None
        return max((cost for cost in costs if cost is not None), key=lambda cost: cost[0].total.likely.amount)

    def _cost_in(
        self,
        facts: PlaceFacts,
        party: Sequence[Member],
        day: date,
        visit: tuple[datetime, datetime | None],
        alike: Callable[[date], Hashable],
        eaters: Hashable,
    ) -> tuple[OutingCost, OutingCost] | None:
        gate = gate_at(self.family, facts, *visit, today=self.today)
        time_there = gate.visit
        key = (alike(time_there.day), *self._offers_good(facts, time_there))
        if key not in self._entries:
            self._entries[key] = gate.entry_price(party)
        price = self._entries[key]
        if price is None:
            return None
        place = facts.place
        beside = tuple(time_there.meets(one.valid) for one in place.add_ons if one.valid is not None)
        same = (price, parking_price(place.parking, time_there), beside, eaters)
        if same not in self._costs:
            self._costs[same] = self.account.costs(party, day, price, time_there)
        return self._costs[same]

    def _offers_good(self, facts: PlaceFacts, visit: VisitTime) -> Iterator[bool]:
        """What tells which offers are good for a visit on its date: their times and limits on the stay."""
        clock = minute_of_day(visit.moment)
        for text in self._offer_times:
            yield _holds(facts, text, visit.day, clock)
        for longest, leave_by in limits_on_stay(facts.place):
            fits = longest is None or visit.minutes is None or visit.minutes <= longest
            in_time = leave_by is None or (visit.moment.time() < leave_by and visit.is_over_by(leave_by))
            yield fits and in_time

    @cached_property
    def cases(self) -> tuple[PlaceFacts, ...]:
        """The place as it is, and as it is if all pupils of whom nothing is known are on a break.

        One where no price hangs on that. A price that does is the dearer of both.
        """
        if any(map(names_school_holidays, self.times)):
            return self.facts, self.facts.if_unknown_are_on_break
        return (self.facts,)

    def dearest(
        self, party: Sequence[Member], day: date, enter: datetime, leave: datetime
    ) -> tuple[Gate, bool]:
        """The till for a visit, the dearer if nobody knows of a school break; and whether that matters."""
        costs = [
            self._cost_in(facts, party, day, (enter, leave), alike=lambda on: on, eaters=None)
            for facts in self.cases
        ]
        amounts = [None if cost is None else cost[0].total.likely.amount for cost in costs]
        worst = max(range(len(amounts)), key=lambda n: (amounts[n] is None, amounts[n] or 0))
        gate = gate_at(self.family, self.cases[worst], enter, leave, today=self.today)
        return gate, len(set(amounts)) > 1

    @cached_property
    def _offer_times(self) -> tuple[str, ...]:
        place = self.facts.place
        with_ticket = (add_on for add_on in place.add_ons if _hangs_on_ticket(add_on, place))
        sold = (*place.offers, *place.vouchers, *with_ticket)
        return tuple(sorted({one.valid for one in sold if one.valid is not None}))

    @cached_property
    def times(self) -> tuple[str, ...]:
        """The rules by which offers and parking rates are good at some times only."""
        place = self.facts.place
        beside = {rate.valid for rate in place.parking.rates} | {add_on.valid for add_on in place.add_ons}
        return tuple(sorted({*self._offer_times, *(text for text in beside if text is not None)}))

    @cached_property
    def by_the_hour(self) -> bool:
        """Whether the price of a day may hang on the hour or the length of the stay."""
        place = self.facts.place
        if place.parking.rates or limits_on_stay(place):
            return True
        return any(
            spans not in _ALL_DAY
            for text in self.times
            for facts in self.cases
            for spans in facts.rule(text).spans
        )

    def _hours(self, day: date, hours: DayHours, minutes: DayMinutes) -> PriceHours:
        """Where within a day prices may change."""
        place = self.facts.place
        limits = limits_on_stay(place)
        dates = [day, day + timedelta(days=1)] if _past_midnight(day, hours) else [day]

        def at(on: date, clock: int) -> datetime:
            return datetime.combine(on, time(clock // 60, clock % 60), place.where.zone)

        out_by = [minute_of_day(leave_by) for _, leave_by in limits if leave_by is not None]
        changes = {at(on, 0) for on in dates[1:]}
        for on in dates:
            changes |= {at(on, clock) for clock in out_by}
            changes |= {
                at(on, edge)
                for facts in self.cases
                for text in self.times
                for edge in _edges(facts, text, on)
            }
        longest = max(
            (minutes.rounded_down(span.closes) - minutes.rounded_up(span.opens) for span in hours.spans),
            default=0,
        )
        stays = {stay for stay, _ in limits if stay is not None} | set(self._parked(longest))
        return PriceHours(
            (EVER, *sorted({minutes.rounded_up(moment) for moment in changes})),
            tuple(sorted({minutes.rounded_down(at(on, clock)) for on in dates for clock in out_by})),
            tuple(sorted(stay for stay in stays if stay < longest)),
        )

    def _parked(self, longest: int) -> Iterator[int]:
        """Up to and with which lengths of stay parking costs the same [min]."""
        for rate in self.facts.place.parking.rates:
            if rate.up_to_minutes is not None:
                yield rate.up_to_minutes
            if rate.per_hour:
                free, most = rate.free_minutes or 0, rate.up_to_minutes or longest
                hours = (most - free) // _HOUR + 1
                if rate.at_most is not None:
                    hours = min(hours, int(max(rate.at_most - rate.price, Decimal(0)) / rate.per_hour) + 1)
                yield from range(free, free + hours * _HOUR, _HOUR)


def _hangs_on_ticket(add_on: AddOn, place: Place) -> bool:
    """Whether what an add-on costs, and so which tickets are cheapest in all, hangs on the ticket."""
    return any(price_beside(add_on, offer) != add_on.price for offer in place.offers)


def _edges(facts: PlaceFacts, text: str, day: date) -> Iterator[int]:
    """When within a date a rule begins or ceases to hold, as minutes of its clock."""
    before = _spans(facts, text, day - timedelta(days=1))
    edges = (*chain(*_spans(facts, text, day)), *(edge - DAY_MINUTES for edge in chain(*before)))
    return (edge for edge in edges if 0 < edge < DAY_MINUTES)


def _holds(facts: PlaceFacts, text: str, day: date, clock: int) -> bool:
    """Whether a rule holds at a minute of a date."""
    own, before = _spans(facts, text, day), _spans(facts, text, day - timedelta(days=1))
    return any(start <= clock < end for start, end in own) or any(
        start <= clock + DAY_MINUTES < end for start, end in before
    )


def _spans(facts: PlaceFacts, text: str, day: date) -> Spans:
    """When a rule holds on one day."""
    rule, number = facts.rule(text), (day - facts.first).days
    if not 0 <= number < len(rule.kind):
        rule = rule_days(text, day, 1, facts.public_holiday_dates, facts.days_out_of_school)
        number = 0
    return rule.spans[int(rule.kind[number])]


def _past_midnight(day: date, hours: DayHours) -> bool:
    """Whether somebody may be let in after the midnight that ends a day."""
    return any(span.closes.date() > day for span in hours.spans)


def _visits(priced: PriceHours, hours: DayHours, minutes: DayMinutes) -> Iterator[tuple[int, int] | None]:
    """For each of the hours with a price of its own a visit in it, from when to when; None if none can be."""
    spans = [(minutes.rounded_up(span.opens), minutes.rounded_down(span.closes)) for span in hours.spans]
    entries = [minutes.rounded_up(moment) for moment in hours.entry_times]
    for entered, left, stayed in product(
        pairwise((*priced.begins, NEVER)),
        pairwise((EVER, *priced.leave_by, NEVER)),
        pairwise((0, *priced.stays, NEVER)),
    ):
        times = (
            (max(first, opens), min(end - 1, closes), opens, closes)
            for opens, closes in spans
            for first, end in (
                [(entry, entry + 1) for entry in entries if entered[0] <= entry < entered[1]]
                if entries
                else [entered]
            )
        )
        yield next(
            (
                visit
                for first, last, opens, closes in times
                if first <= last
                and (visit := _visit((first, last), (max(left[0] + 1, opens), min(left[1], closes)), stayed))
            ),
            None,
        )


def _visit(enter: tuple[int, int], leave: tuple[int, int], stay: tuple[int, int]) -> tuple[int, int] | None:
    """A visit that comes and leaves between some minutes, and lasts longer than one length up to another."""
    shortest = max(leave[0] - enter[1], stay[0] + 1)
    if shortest > min(leave[1] - enter[0], stay[1]):
        return None
    begins = max(enter[0], leave[0] - shortest)
    return begins, begins + shortest
