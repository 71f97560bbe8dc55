"""The dumbest possible search for the cheapest admission: every person tries every way in.

It reads the card by itself and shares nothing with the calculator but the shapes of the card.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from itertools import combinations
from typing import Any

from tests.planning.admission.price_boards import BAD_ON_ARRIVAL, DAY, TODAY, Question
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import AddOn, Bundle, Discount, Pass, Seats, Ticket, Voucher

Choice = tuple[str, Any, int]
"""How one person comes in: 'user', 'leader', 'seat' or 'beyond', of which offer, in which unit of it."""


Line = tuple[str | None, Fraction, bool, int]
"""What is paid: for which offer, how much, whether with a fee per ticket, for how many people it counts."""


@dataclass(frozen=True)
class Held:
    """A pass held, here or from elsewhere, as the search sees it."""

    number: int
    held: HeldPass
    offer: Pass
    here: bool
    percent_off: Fraction
    people_at_most: int | None = None


def status(member: Member, needs: tuple[str, ...]) -> bool:
    """Whether somebody has one of the statuses, or none is needed."""
    return not needs or bool(set(needs) & set(member.statuses))


def is_usable(voucher: Voucher, party: tuple[Member, ...]) -> bool:
    """Whether a voucher counts for an order placed a week before the visit."""
    if voucher.valid == BAD_ON_ARRIVAL or voucher.book_days_ahead > (DAY - TODAY).days:
        return False
    if voucher.last_day is not None and voucher.last_day < TODAY:
        return False
    return any(status(member, voucher.needs) for member in party)


def takes_it(member: Member, add_on: AddOn) -> bool:
    """Whether somebody takes something beside entry, as far as anybody knows."""
    if add_on.valid == BAD_ON_ARRIVAL or member.months_on(DAY) not in add_on.ages:
        return False
    return status(member, add_on.needs) and not wrong_height(member, add_on)


def wrong_height(member: Member, add_on: AddOn) -> bool:
    """Whether somebody is too short or too tall for sure; grown-ups stand between 140 and 210 cm."""
    if member.height is not None:
        least = most = float(member.height.cm)
    else:
        least, most = (140.0, 210.0) if member.months_on(DAY) >= 216 else (0.0, 300.0)
    too_short = add_on.least_height is not None and most < float(add_on.least_height.cm)
    return too_short or (add_on.most_height is not None and least > float(add_on.most_height.cm))


def single_price(question: Question, member: Member, among: tuple[str, ...] = ()) -> Fraction | None:
    """The cheapest ticket somebody could have alone."""
    prices = [
        price
        for o in question.place.offers
        if isinstance(o, Ticket) and o.companions is None and o.at_least == 1 and o.at_most is None
        if (not among or o.name in among) and status(member, o.needs)
        if (price := ticket_price(o, member)) is not None
    ]
    return min(prices, default=None)


def ticket_price(offer: Ticket, member: Member) -> Fraction | None:
    """What a ticket costs somebody by age and birthday; None where it is not for them."""
    months = member.months_on(DAY)
    if offer.good_on == "birth month" and member.born.month != DAY.month:
        return None
    if offer.good_on == "birthday" and (member.born.month, member.born.day) != (DAY.month, DAY.day):
        return None
    if months in offer.ages:
        return Fraction(offer.price)
    return next((Fraction(other.price) for other in offer.other_ages if months in other.ages), None)


def family_of(question: Question, member: Member) -> str:
    """What tells the families of a party apart."""
    if member.family or member.name in question.household:
        return f"family {member.family}"
    return f"alone {member.name}"


def held_passes(question: Question) -> list[Held]:
    """The passes of the family that count here."""
    found = []
    for number, one in enumerate(question.held):
        for place in (question.place, *question.others):
            for offer in place.offers:
                if place.id != one.place or offer.name != one.offer:
                    continue
                if isinstance(offer, Ticket | Bundle):
                    # Who has a ticket for two places enters on it here, as on a card written out to them.
                    card = Pass(
                        name=offer.name, price=Decimal(0), months=1, seats=(Seats(count=1),), named=True
                    )
                    if any(there.place == question.place.id for there in offer.also_at):
                        found.append(Held(number, one, card, False, Fraction(100)))
                if isinstance(offer, Pass):
                    if place is question.place:
                        found.append(Held(number, one, offer, True, Fraction(100)))
                    found += [
                        Held(number, one, offer, False, Fraction(e.percent_off), e.at_most)
                        for e in offer.elsewhere
                        if e.place == question.place.id
                    ]
    return found


class Search:
    """Every assignment of people to ways in, each judged as a whole."""

    def __init__(self, question: Question) -> None:
        self.question = question
        self.party = question.party
        self.months = [member.months_on(DAY) for member in self.party]
        self.singles = [single_price(question, member) for member in self.party]
        self.held = held_passes(question)

    def cheapest(self) -> int | None:
        """The least total in cents; None if nobody may let this party in."""
        totals = [total for total, _ in self.ways()]
        return min(totals, default=None)

    def least_in_all(self) -> Fraction | None:
        """The least in cents, not rounded, with everything on the card beside entry, which all want."""
        found = [
            self._exact(lines) + self._beside(choices)
            for choices in self._assign(0, [])
            if (lines := self._judge(choices)) is not None
        ]
        return min(found, default=None)

    def _beside(self, choices: list[Choice]) -> Fraction:
        """What is paid beside entry [cents]: each add-on at the price that goes with each one's ticket."""
        place, paid = self.question.place, Fraction(0)
        for add_on in place.add_ons:
            for position, (_, offer, _) in enumerate(choices):
                if takes_it(self.party[position], add_on):
                    card = offer.offer if isinstance(offer, Held) else offer
                    here = not isinstance(offer, Held) or offer.here
                    special = [
                        Fraction(w.price) for w in add_on.with_ticket if here and card.name in w.offers
                    ]
                    free = [Fraction(0)] if here and add_on.name in card.includes else []
                    paid += (*free, *special, Fraction(add_on.price))[0]
        tax = place.sales_tax
        rate = Fraction(tax.percent) / 100 if tax is not None and tax.on_add_ons else Fraction(0)
        return paid * (1 + rate) * 100

    def ways(self) -> Iterator[tuple[int, frozenset[str]]]:
        """Every legal way: its total in cents, and the names of what it uses."""
        for choices in self._assign(0, []):
            lines = self._judge(choices)
            if lines is not None:
                yield self._total(lines), frozenset(str(offer_key(offer)) for _, offer, _ in choices)

    def _assign(self, position: int, so_far: list[Choice]) -> Iterator[list[Choice]]:
        if position == len(self.party):
            yield list(so_far)
            return
        for choice in self._choices(position, so_far):
            so_far.append(choice)
            yield from self._assign(position + 1, so_far)
            so_far.pop()

    def _choices(self, position: int, so_far: list[Choice]) -> Iterator[Choice]:
        months, member = self.months[position], self.party[position]
        at_home = member.name in self.question.household
        for offer in self.question.place.offers:
            if isinstance(offer, Ticket):
                if ticket_price(offer, member) is not None and (
                    offer.one_status_covers > 1 or status(member, offer.needs)
                ):
                    yield ("user", offer, 0)
                if offer.one_free_per is not None and months in offer.leader_ages:
                    yield ("leader", offer, 0)
                continue
            if isinstance(offer, Discount):
                if self.price(offer, position) is not None and (
                    offer.one_status_covers > 1 or status(member, offer.needs)
                ):
                    yield ("user", offer, 0)
                continue
            used = {unit for _, other, unit in so_far if other is offer}
            for unit in range(len(used) + 1):
                if any(months in seat.ages for seat in offer.seats) and (
                    isinstance(offer, Bundle) or at_home
                ):
                    yield ("seat", offer, unit)
                if self._may_come_along(offer, position):
                    yield ("beyond", offer, unit)
        for one in self.held:
            if one.here or one.percent_off == 100 or self.singles[position] is not None:
                if one.offer.named:
                    if member.name in one.held.holders:
                        yield ("seat", one, 0)
                elif at_home and any(months in seat.ages for seat in one.offer.seats):
                    yield ("seat", one, 0)
            if one.here and self._may_come_along(one.offer, position):
                yield ("beyond", one, 0)

    def price(self, offer: Ticket | Discount, position: int) -> Fraction | None:
        """What somebody pays who uses a ticket."""
        member = self.party[position]
        if isinstance(offer, Ticket):
            return ticket_price(offer, member)
        single = single_price(self.question, member, offer.offers)
        if single is None or self.months[position] not in offer.ages:
            return None
        return single * (100 - Fraction(offer.percent_off)) / 100

    def _may_come_along(self, offer: Bundle | Pass, position: int) -> bool:
        if isinstance(offer, Bundle):
            return offer.extras is not None and self.months[position] in offer.extras.ages
        return offer.guests_at_most > 0 and self.singles[position] is not None

    def _judge(self, choices: list[Choice]) -> list[Line] | None:
        """What is paid: for which offer, how much, whether with a fee per ticket; None if it is not legal."""
        users: dict[str, list[int]] = defaultdict(list)
        leaders: dict[str, list[int]] = defaultdict(list)
        units: dict[tuple[Any, int], tuple[list[int], list[int]]] = defaultdict(lambda: ([], []))
        things: dict[Any, Any] = {}
        for position, (role, offer, unit) in enumerate(choices):
            key = offer_key(offer)
            things[key] = offer
            if role == "user":
                users[key].append(position)
            elif role == "leader":
                leaders[key].append(position)
            else:
                units[key, unit][role == "beyond"].append(position)
        paid = [False] * len(choices)
        lines: list[Line] = []
        for (key, _), (seated, beyond) in units.items():
            unit_lines = self._judge_unit(things[key], seated, beyond, paid)
            if unit_lines is None:
                return None
            lines += unit_lines
        for key, thing in things.items():
            if not isinstance(thing, Bundle):
                continue
            mine = [seated for (other, _), (seated, _) in units.items() if other == key]
            buyers = [
                family_of(self.question, self.party[seated[0]]) if thing.one_family else ""
                for seated in mine
                if seated
            ]
            if thing.at_most is not None and any(buyers.count(one) > thing.at_most for one in buyers):
                return None
            if (thing.counts_everybody or thing.per_car) and any(
                isinstance(other, Ticket | Discount) and self._could_be_free(other)
                for other in things.values()
            ):
                return None
        for key, payers in users.items():
            for position in payers:
                price = self.price(things[key], position) or Fraction(0)
                paid[position] = price > 0
                lines.append((key, price, True, 1))
        for key in {*users, *leaders}:
            if not self._judge_ticket(things[key], users[key], leaders[key], paid):
                return None
        return lines

    def _could_be_free(self, offer: Ticket | Discount) -> bool:
        """Whether somebody of the party could enter on a ticket for nothing."""
        return any(
            self.price(offer, position) == 0
            and (offer.one_status_covers > 1 or status(self.party[position], offer.needs))
            for position in range(len(self.party))
        )

    def _judge_unit(
        self, offer: Bundle | Pass | Held, seated: list[int], beyond: list[int], paid: list[bool]
    ) -> list[Line] | None:
        board = offer.offer if isinstance(offer, Held) else offer
        lines: list[Line] = []
        name: str | None = board.name
        if isinstance(offer, Held):
            if not seated:
                return None
            if not offer.offer.named:
                if not self._sit(board, seated):
                    return None
                if not any(self.party[p].name in offer.held.holders for p in seated):
                    return None
            if not offer.here:
                if offer.people_at_most is not None and len(seated) > offer.people_at_most:
                    return None
                name = None
                part = (100 - offer.percent_off) / 100
                lines += [(None, part * (self.singles[p] or 0), True, 1) for p in seated]
        else:
            least = board.at_least if isinstance(board, Bundle) else 1
            if len(seated) < least or not self._sit(board, seated):
                return None
            lines.append((name, Fraction(board.price), True, sum(seat.count for seat in board.seats)))
        for position in seated:
            paid[position] = isinstance(board, Pass) or board.price > 0
        if isinstance(board, Bundle):
            if board.must_include is not None and not any(
                self.months[p] in board.must_include for p in seated
            ):
                return None
            if not any(status(self.party[p], board.needs) for p in seated):
                return None
            seats = self.question.car_seats
            if board.per_car and seats is not None and len(seated) + len(beyond) > seats:
                return None
            if (
                board.one_family
                and len({family_of(self.question, self.party[p]) for p in (*seated, *beyond)}) > 1
            ):
                return None
            if beyond and board.extras is not None:
                if board.extras.at_most is not None and len(beyond) > board.extras.at_most:
                    return None
                lines += [(name, Fraction(board.extras.price), False, 1)] * len(beyond)
                for position in beyond:
                    paid[position] = board.extras.price > 0
        else:
            so_far = offer.held.guests_so_far if isinstance(offer, Held) else 0
            if len(beyond) > board.guests_at_most:
                return None
            if board.guests_per_year is not None and len(beyond) > max(board.guests_per_year - so_far, 0):
                return None
            part = (100 - Fraction(board.guests_percent_off)) / 100
            for position in beyond:
                price = part * (self.singles[position] or 0)
                paid[position] = price > 0
                lines.append((name, price, True, 1))
        return lines

    def _sit(self, offer: Bundle | Pass, people: list[int]) -> bool:
        """Whether people can take one seat each, by trying."""

        def place_rest(rest: list[int], free: tuple[int, ...]) -> bool:
            if not rest:
                return True
            return any(
                count
                and self.months[rest[0]] in seat.ages
                and place_rest(rest[1:], (*free[:i], count - 1, *free[i + 1 :]))
                for i, (count, seat) in enumerate(zip(free, offer.seats, strict=True))
            )

        return place_rest(people, tuple(seat.count for seat in offer.seats))

    def _judge_ticket(
        self, offer: Ticket | Discount, users: list[int], leaders: list[int], paid: list[bool]
    ) -> bool:
        if isinstance(offer, Discount):
            holders = sum(status(self.party[p], offer.needs) for p in users)
            few_enough = offer.at_most is None or len(users) <= offer.at_most
            return few_enough and len(users) <= holders * offer.one_status_covers
        if users and len(users) < offer.at_least:
            return False
        if offer.at_most is not None and len(users) > offer.at_most:
            return False
        if leaders and len(leaders) > len(users) // (offer.one_free_per or 1):
            return False
        holders = sum(status(self.party[p], offer.needs) for p in users)
        if len(users) > holders * offer.one_status_covers and len(users) > holders:
            return False
        rule = offer.companions
        if rule is None:
            return True
        there = [
            p
            for p in range(len(self.party))
            if p not in users
            and p not in leaders
            and self.months[p] in rule.ages
            and status(self.party[p], rule.needs)
            and (paid[p] or not rule.must_pay)
        ]
        return len(users) <= len(there) * rule.each_allows

    def _total(self, lines: list[Line]) -> int:
        return int(self._exact(lines) + Fraction(1, 2))

    def _exact(self, lines: list[Line]) -> Fraction:
        """What the order comes to, not rounded [cents]."""
        place = self.question.place
        entry = sum((price for _, price, _, _ in lines), Fraction(0))
        fees = Fraction(0)
        online = {offer.name for offer in place.offers if offer.online_only}
        for fee in place.fees:
            bearing = [
                (price, with_fee)
                for name, price, with_fee, _ in lines
                if price > 0 and (not fee.online_only or name in online)
            ]
            if fee.percent is not None:
                fees += sum((price for price, _ in bearing), Fraction(0)) * Fraction(fee.percent) / 100
            elif fee.per == "ticket":
                fees += Fraction(fee.price or 0) * sum(with_fee for _, with_fee in bearing)
            else:
                fees += Fraction(fee.price or 0) * bool(bearing)
        reductions = [Fraction(0)]
        for voucher in place.vouchers:
            if not is_usable(voucher, self.party):
                continue
            counted = [
                (price, people)
                for name, price, _, people in lines
                if not voucher.offers or name in voucher.offers
            ]
            if voucher.percent_off is not None:
                base = most_for(counted, voucher.people_at_most)
                reductions.append(base * Fraction(voucher.percent_off) / 100)
            elif voucher.amount_off is not None:
                reductions.append(
                    min(sum((price for price, _ in counted), Fraction(0)), Fraction(voucher.amount_off))
                )
        net = entry - max(reductions)
        if place.sales_tax is not None:
            rate = Fraction(place.sales_tax.percent) / 100
            net *= 1 + rate
            fees *= 1 + (rate if place.sales_tax.on_fees else 0)
        return (net + fees) * 100


def most_for(counted: list[tuple[Fraction, int]], people: int | None) -> Fraction:
    """The most that things for so many people cost together, by trying every choice of them."""
    if people is None:
        return sum((price for price, _ in counted), Fraction(0))
    return max(
        (
            sum((price for price, _ in some), Fraction(0))
            for size in range(len(counted) + 1)
            for some in combinations(counted, size)
            if sum(each for _, each in some) <= people
        ),
        default=Fraction(0),
    )


def offer_key(offer: Any) -> Any:
    """What tells offers and held passes apart."""
    return ("held", offer.number, offer.here) if isinstance(offer, Held) else offer.name
