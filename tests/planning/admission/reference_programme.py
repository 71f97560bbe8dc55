"""The cheapest admission as one plain integer programme, written from the card and solved by SciPy.

It shares nothing with the calculator but the shapes of the card: every unit of a bundle or pass has unknowns
of its own, every voucher is one programme, and nothing is folded together beforehand but people who are
alike in age, statuses, household and passes held.
"""

from collections import Counter, defaultdict
from typing import Any

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from tests.planning.admission.exhaustive import (
    Held,
    family_of,
    held_passes,
    is_usable,
    single_price,
    status,
    ticket_price,
)
from tests.planning.admission.price_boards import DAY, Question
from tripplan.documents.places.offers import Bundle, Discount, Pass, Ticket, Voucher
from tripplan.values.ages import AgeBand

Terms = dict[int, float]


class Programme:
    """One programme for one voucher or none."""

    def __init__(self, question: Question, voucher: Voucher | None) -> None:
        self.question, self.voucher = question, voucher
        self.upper: list[float] = []
        self.whole: list[bool] = []
        self.rows: list[tuple[Terms, float]] = []
        self.entry: Terms = {}
        self.counted: Terms = {}
        self.tickets: Terms = {}
        self.priced: set[int] = set()
        self.online: set[int] = set()
        self.for_people: dict[int, int] = {}
        self.uses: dict[str, list[int]] = defaultdict(list)
        self.lets_in: list[Terms] = []
        self.paying: list[list[tuple[str, int]]] = []
        counts: Counter[Any] = Counter()
        self.someone: dict[Any, Any] = {}
        for member in question.party:
            holds = tuple(member.name in one.holders for one in question.held)
            key = (
                member.months_on(DAY),
                member.statuses,
                member.name in question.household,
                holds,
                family_of(question, member),
                (member.born.month, member.born.day),
            )
            counts[key] += 1
            self.someone[key] = member
        self.kinds = list(counts)
        self.counts = [counts[key] for key in self.kinds]
        self.months = [key[0] for key in self.kinds]
        self.people = [self.someone[key] for key in self.kinds]
        self.singles = [single_price(question, member) for member in self.people]

    def new(self, upper: float, *, whole: bool = True) -> int:
        self.upper.append(upper)
        self.whole.append(whole)
        return len(self.upper) - 1

    def no_more(self, terms: Terms, bound: float = 0) -> None:
        self.rows.append((terms, bound))

    def comes_in(self, kind: int, price: float, name: str | None, owner: str, *, counts_as_paid: bool) -> int:
        """An unknown number of people of a kind who come in one way, each at a price."""
        number = self.new(self.counts[kind])
        self.lets_in[kind][number] = 1
        self.uses[owner].append(number)
        self.charge(number, price, name)
        if counts_as_paid:
            self.paying[kind].append((owner, number))
        return number

    def charge(self, number: int, price: float, name: str | None, people: int = 1) -> None:
        if price:
            self.entry[number] = price
            self.priced.add(number)
            self.for_people[number] = people
            if any(offer.name == name and offer.online_only for offer in self.question.place.offers):
                self.online.add(number)
            if self.voucher is not None and (not self.voucher.offers or name in self.voucher.offers):
                self.counted[number] = price

    def least(self) -> float | None:
        """The least total before rounding [cents]; None if there is no way in."""
        question = self.question
        self.lets_in = [{} for _ in self.kinds]
        self.paying = [[] for _ in self.kinds]
        late = []
        for offer in question.place.offers:
            if isinstance(offer, Ticket | Discount):
                late.append((offer, *self.ticket(offer)))
            elif isinstance(offer, Bundle) and offer.one_family:
                for family in dict.fromkeys(family_of(question, member) for member in self.people):
                    self.units(offer, offer, f"{offer.name}", family)
            else:
                self.units(offer, offer, f"{offer.name}")
        self.not_together()
        for held in held_passes(question):
            self.units(held, held.offer, f"held {held.number} {held.here}")
        for offer, users, leaders in late:
            self.companions(offer, users, leaders)
        if not all(self.lets_in):
            return None
        return self.solve()

    def price(self, offer: Ticket | Discount, kind: int) -> float | None:
        """What people of a kind pay on a ticket; None where it is not for them."""
        member = self.people[kind]
        if not status(member, offer.needs) and offer.one_status_covers == 1:
            return None
        if isinstance(offer, Ticket):
            price = ticket_price(offer, member)
            return None if price is None else float(price)
        single = single_price(self.question, member, offer.offers)
        if single is None or self.months[kind] not in offer.ages:
            return None
        return float(single) * (100 - float(offer.percent_off)) / 100

    def not_together(self) -> None:
        """Where a bundle counts everybody, nobody enters on a free ticket beside it."""
        offers = self.question.place.offers
        for bundle in offers:
            if not isinstance(bundle, Bundle) or not (bundle.counts_everybody or bundle.per_car):
                continue
            switch = self.new(1)
            self.no_more({**dict.fromkeys(self.uses[bundle.name], 1.0), switch: -sum(self.counts)})
            for offer in offers:
                if isinstance(offer, Ticket | Discount) and any(
                    self.price(offer, kind) == 0 for kind in range(len(self.kinds))
                ):
                    party = sum(self.counts)
                    self.no_more({**dict.fromkeys(self.uses[offer.name], 1.0), switch: party}, party)

    def ticket(self, offer: Ticket | Discount) -> tuple[Terms, Terms]:
        users: Terms = {}
        coverage: Terms = {}
        for kind in range(len(self.kinds)):
            price = self.price(offer, kind)
            if price is not None:
                number = self.comes_in(kind, price, offer.name, offer.name, counts_as_paid=price > 0)
                users[number] = 1
                holds = status(self.people[kind], offer.needs)
                coverage[number] = 1 - (offer.one_status_covers if holds else 0)
                if price:
                    self.tickets[number] = 1
        self.no_more(coverage)
        party = sum(self.counts)
        if isinstance(offer, Ticket):
            switch = self.new(1)
            self.no_more({**users, switch: -party})
            self.no_more({**dict.fromkeys(users, -1.0), switch: offer.at_least})
        if offer.at_most is not None:
            self.no_more(users, offer.at_most)
        leaders: Terms = {}
        if isinstance(offer, Ticket) and offer.one_free_per is not None:
            for kind, months in enumerate(self.months):
                if months in offer.leader_ages:
                    leaders[self.comes_in(kind, 0, offer.name, offer.name, counts_as_paid=False)] = 1
            frees = 1 / offer.one_free_per
            self.no_more({**leaders, **dict.fromkeys(users, -frees)}, 1e-9)
        return users, leaders

    def companions(self, offer: Ticket | Discount, users: Terms, leaders: Terms) -> None:
        rule = offer.companions if isinstance(offer, Ticket) else None
        if rule is None:
            return
        terms = dict(users)
        bound = 0.0
        for kind, months in enumerate(self.months):
            if months not in rule.ages or not status(self.people[kind], rule.needs):
                continue
            if rule.must_pay:
                for owner, number in self.paying[kind]:
                    if owner != offer.name:
                        terms[number] = terms.get(number, 0) - rule.each_allows
            else:
                bound += rule.each_allows * self.counts[kind]
                for number in {**users, **leaders}:
                    if number in self.lets_in[kind]:
                        terms[number] = terms.get(number, 0) + rule.each_allows
        self.no_more(terms, bound)

    def units(
        self, offer: Bundle | Pass | Held, board: Bundle | Pass, owner: str, family: str | None = None
    ) -> None:
        party = sum(self.counts)
        least = board.at_least if isinstance(board, Bundle) else 1
        most = 1 if isinstance(offer, Held) else party // least
        if isinstance(board, Bundle) and board.at_most is not None:
            most = min(most, board.at_most)
        before: int | None = None
        for _ in range(most):
            unit = self.new(1)
            if before is not None:
                self.no_more({unit: 1, before: -1})
            before = unit
            self.unit(offer, board, owner, unit, least, family)

    def unit(
        self,
        offer: Bundle | Pass | Held,
        board: Bundle | Pass,
        owner: str,
        unit: int,
        least: int,
        family: str | None,
    ) -> None:
        held = offer if isinstance(offer, Held) else None
        here = held is None or held.here
        name = board.name if here else None
        if held is None:
            self.charge(unit, float(board.price), name, sum(seat.count for seat in board.seats))
            if board.price:
                self.tickets[unit] = 1
        paid = isinstance(board, Pass) or board.price > 0
        seated: list[tuple[int, int]] = []
        party = sum(self.counts)
        rows: list[tuple[int, AgeBand]] = [(seat.count, seat.ages) for seat in board.seats]
        if held is not None and held.offer.named:
            rows = [(party, AgeBand())]
        for count, ages in rows:
            taken: Terms = {}
            for kind in range(len(self.kinds)):
                if self.months[kind] in ages and self.may_sit(offer, board, kind, family):
                    price = 0.0
                    if held is not None and not here:
                        single = self.singles[kind]
                        if single is None and held.percent_off != 100:
                            continue
                        price = float((single or 0) * (100 - held.percent_off) / 100)
                    number = self.comes_in(kind, price, name, owner, counts_as_paid=paid)
                    if price:
                        self.tickets[number] = 1
                    taken[number] = 1
                    seated.append((kind, number))
            self.no_more({**taken, unit: -count})
        self.no_more({**{n: -1.0 for _, n in seated}, unit: least})
        if isinstance(board, Bundle):
            if board.must_include is not None:
                some = {n: -1.0 for k, n in seated if self.months[k] in board.must_include}
                self.no_more({**some, unit: 1})
            if board.needs:
                some = {n: -1.0 for k, n in seated if status(self.people[k], board.needs)}
                self.no_more({**some, unit: 1})
        elif held is not None and not board.named:
            some = {n: -1.0 for k, n in seated if self.people[k].name in held.held.holders}
            self.no_more({**some, unit: 1})
        coming = self.beyond(offer, board, owner, unit, family, here=here)
        everybody = {**dict.fromkeys((n for _, n in seated), 1.0), **coming}
        car_seats = self.question.car_seats
        if isinstance(board, Bundle) and board.per_car and car_seats is not None:
            self.no_more({**everybody, unit: -car_seats})
        if held is not None and not here and held.people_at_most is not None:
            self.no_more({**everybody, unit: -held.people_at_most})

    def may_sit(
        self, offer: Bundle | Pass | Held, board: Bundle | Pass, kind: int, family: str | None
    ) -> bool:
        if isinstance(board, Bundle):
            return family in (None, family_of(self.question, self.people[kind]))
        if isinstance(offer, Held) and board.named:
            return self.people[kind].name in offer.held.holders
        return self.people[kind].name in self.question.household

    def beyond(
        self,
        offer: Bundle | Pass | Held,
        board: Bundle | Pass,
        owner: str,
        unit: int,
        family: str | None,
        *,
        here: bool,
    ) -> Terms:
        coming: Terms = {}
        for kind in range(len(self.kinds)):
            if isinstance(board, Bundle):
                if board.extras is None or self.months[kind] not in board.extras.ages:
                    continue
                if not self.may_sit(offer, board, kind, family):
                    continue
                price = float(board.extras.price)
            else:
                single = self.singles[kind]
                if single is None or not here:
                    continue
                price = float(single) * (100 - float(board.guests_percent_off)) / 100
            number = self.comes_in(kind, price, board.name, owner, counts_as_paid=price > 0)
            if price and isinstance(board, Pass):
                self.tickets[number] = 1
            coming[number] = 1
        if isinstance(board, Bundle):
            limit = board.extras.at_most if board.extras is not None else 0
            most = sum(self.counts) if limit is None else limit
        else:
            most = board.guests_at_most
            if board.guests_per_year is not None:
                so_far = offer.held.guests_so_far if isinstance(offer, Held) else 0
                most = min(most, max(board.guests_per_year - so_far, 0))
        self.no_more({**coming, unit: -most})
        return coming

    def solve(self) -> float | None:
        place = self.question.place
        rate = float(place.sales_tax.percent) / 100 if place.sales_tax is not None else 0
        tax = 1 + rate
        fee_tax = 1 + (rate if place.sales_tax is not None and place.sales_tax.on_fees else 0)
        cost = {number: price * tax for number, price in self.entry.items()}
        if self.voucher is not None and self.voucher.percent_off is not None:
            part = float(self.voucher.percent_off) / 100
            used: Terms = {}
            for number, price in self.counted.items():
                taken = self.new(self.upper[number])
                self.no_more({taken: 1, number: -1})
                cost[taken] = -price * tax * part
                used[taken] = self.for_people[number]
            if self.voucher.people_at_most is not None:
                self.no_more(used, self.voucher.people_at_most)
        elif self.voucher is not None and self.voucher.amount_off is not None:
            off = self.new(float(self.voucher.amount_off), whole=False)
            self.no_more({off: 1, **{number: -price for number, price in self.counted.items()}})
            cost[off] = -tax
        for fee in place.fees:
            bearing = self.priced & self.online if fee.online_only else self.priced
            if fee.percent is not None:
                for number in bearing:
                    cost[number] += self.entry[number] * float(fee.percent) / 100 * fee_tax
            elif fee.per == "ticket":
                for number in bearing & self.tickets.keys():
                    cost[number] += float(fee.price or 0) * fee_tax
            elif bearing:
                ordered = self.new(1)
                cost[ordered] = float(fee.price or 0) * fee_tax
                most = sum(self.upper[number] for number in bearing)
                self.no_more({**dict.fromkeys(bearing, 1.0), ordered: -most})
        for kind, terms in enumerate(self.lets_in):
            self.no_more(terms, self.counts[kind])
            self.no_more(dict.fromkeys(terms, -1), -self.counts[kind])
        matrix = np.zeros((len(self.rows), len(self.upper)))
        for row, (terms, _) in enumerate(self.rows):
            for number, coefficient in terms.items():
                matrix[row, number] = coefficient
        objective = np.array([cost.get(number, 0.0) for number in range(len(self.upper))])
        found = milp(
            objective * 100,
            integrality=np.array(self.whole, dtype=int),
            bounds=Bounds(0, self.upper),
            constraints=LinearConstraint(matrix, -np.inf, [bound for _, bound in self.rows]),
            options={"mip_rel_gap": 0},
        )
        if found.status == 2:
            return None
        assert found.status == 0, found.message
        return float(found.fun)


def least_by_reference(question: Question) -> float | None:
    """The least total before rounding [cents] over all vouchers; None if there is no way in."""
    party = question.party
    usable = [voucher for voucher in question.place.vouchers if is_usable(voucher, party)]
    totals = [Programme(question, voucher).least() for voucher in (None, *usable)]
    return min((total for total in totals if total is not None), default=None)
