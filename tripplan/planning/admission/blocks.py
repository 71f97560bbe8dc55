"""A price board as one party meets it: people of a kind counted together, offers as blocks of whole numbers.

Two people are of one kind when no rule on the board tells them apart. A solver only has to say how many
of each kind come in by which block, in which role.

What the rules mean, where a price board leaves it open (common practice, no source):

- A companion is somebody of the party who does not use the same offer. Where companions must pay, their own
  way in must cost something before vouchers: a ticket, a seat of a bundle that has a price, a guest's reduced
  price; entry by a pass, held or bought, counts as paid. Each offer counts its companions by itself.
- A group's minimum and maximum count those who pay; free leaders come on top.
- One status holder brings in others only by using the offer too.
- A bundle's `must_include` and `needs` speak of the people in its seats, not of extra persons.
- A pass bought now, and one held that is not written out by name, seats people of the household. A held pass
  that is written out by name lets in its holders; one that is not needs a holder among those it lets in.
- Guests of a pass, and people with a percentage off here or elsewhere, pay that part of their single price:
  the cheapest ticket they could have alone, without companions, group or limit.
- A bundle for one family is a block of its own for each family of the party: the household, and people with
  the same word for their family. Others are each a family of one. Its largest number counts for each family.
- A permit for a car lets in as many as a car of the household seats, extra persons included. Beside it, and
  beside every other bundle whose seats count everybody, nobody enters on a free ticket.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from enum import StrEnum

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import Bundle, Discount, Offer, Pass, Seats, Ticket, prices_in
from tripplan.documents.places.place import Place
from tripplan.values.ages import MONTHS, AgeBand
from tripplan.values.money import minor_digits


class Role(StrEnum):
    """How a person comes in by a block."""

    USER = "user"
    LEADER = "leader"
    SEAT = "seat"
    BEYOND = "beyond"


@dataclass(frozen=True)
class PersonClass:
    """People whom no rule on the board tells apart.

    Attributes:
        people: their positions in the party, in order.
        single: fine price of the cheapest ticket such a person could have alone; None without one.
    """

    people: tuple[int, ...]
    single: int | None

    @property
    def count(self) -> int:
        """How many they are."""
        return len(self.people)


@dataclass(frozen=True)
class CompanionRule:
    """Who must be there for a ticket to be good: kinds that count, whether they must pay, users for each."""

    kinds: frozenset[int]
    must_pay: bool
    each_allows: int


@dataclass(frozen=True)
class TicketBlock:
    """A ticket: a price per user, and what limits their number.

    Attributes:
        source: position among what the party holds and the board offers; the order in which ties break.
        offer: the ticket, or the part off one.
        prices: fine price by kind that may use it.
        holders: kinds among the users that have the status it needs.
        covers: people one holder brings in, itself included.
        companions: who must be there, if anybody.
        at_least, at_most: how many must, and may, pay it.
        one_free_per: payers per free leader, if leaders go free.
        leaders: kinds that may lead.
    """

    source: int
    offer: Ticket | Discount
    prices: Mapping[int, int]
    holders: frozenset[int]
    covers: int
    companions: CompanionRule | None
    at_least: int
    at_most: int | None
    one_free_per: int | None
    leaders: frozenset[int]

    @property
    def users(self) -> frozenset[int]:
        """Kinds that may use it."""
        return frozenset(self.prices)

    @property
    def is_plain(self) -> bool:
        """Whether each person may use it whatever the others do."""
        return (
            self.users == self.holders
            and self.companions is None
            and self.at_least == 1
            and self.at_most is None
            and self.one_free_per is None
        )


@dataclass(frozen=True)
class SeatRow:
    """Seats of a unit that the same kinds may take."""

    count: int
    kinds: frozenset[int]


@dataclass(frozen=True)
class UnitBlock:
    """A bundle or pass: bought by the unit, each letting several people in.

    Attributes:
        source: position among what the party holds and the board offers.
        offer: the bundle or pass.
        held: the pass as the family holds it; None for what is bought now.
        other_place: name of the place whose held pass is honoured here; None for offers of this place.
        percent_off: what a pass from elsewhere takes off the single price [%].
        price: fine price of a unit; 0 for a pass already held.
        at_most: units at most; None for no limit.
        rows: the seats.
        seat_price: fine price by kind of taking a seat; 0 but with a pass from elsewhere.
        seats_are_paid: whether people in its seats count as having paid.
        at_least: seats that must be taken in each unit.
        must_include: kinds of which one must sit in each unit, if any.
        one_with_status: likewise, for the status a unit needs.
        beyond_price: fine price by kind of coming along without a seat: extra persons, guests.
        beyond_at_most: people without a seat per unit; None for no limit.
        holds_at_most: people per unit in all, with or without a seat; None for no limit.
    """

    source: int
    offer: Bundle | Pass
    held: HeldPass | None
    other_place: str | None
    percent_off: Decimal
    price: int
    at_most: int | None
    rows: tuple[SeatRow, ...]
    seat_price: Mapping[int, int]
    seats_are_paid: bool
    at_least: int
    must_include: frozenset[int] | None
    one_with_status: frozenset[int] | None
    beyond_price: Mapping[int, int]
    beyond_at_most: int | None
    holds_at_most: int | None = None

    @property
    def single_tickets_inside(self) -> bool:
        """Whether people who pay within it buy a reduced single ticket; a bundle's extra persons do not."""
        return isinstance(self.offer, Pass)


Block = TicketBlock | UnitBlock


@dataclass(frozen=True)
class Board:
    """Everything a solver needs.

    Attributes:
        kinds: the party, by kind.
        blocks: in order of source.
        fine_digits: decimal places of a fine price [-]; fine prices are whole numbers.
        never_together: sets of sources, of each of which at least one must be done without.
    """

    kinds: tuple[PersonClass, ...]
    blocks: tuple[Block, ...]
    fine_digits: int
    never_together: tuple[frozenset[int], ...] = ()

    def free_leaders(self, block: TicketBlock) -> frozenset[int]:
        """Kinds of which somebody may lead a group; none where the party is too small for a free leader."""
        payers = max(block.one_free_per or 0, block.at_least)
        party = sum(kind.count for kind in self.kinds)
        return block.leaders if block.one_free_per is not None and party > payers else frozenset()

    def fine(self, price: Decimal) -> int:
        """A price of the card as a whole number of fine units."""
        return int(price.scaleb(self.fine_digits))


@dataclass(frozen=True)
class HeldHere:
    """A pass the family holds that is honoured at this place.

    Attributes:
        held: the pass as held.
        offer: the pass on its own card.
        other_place: name of the place it belongs to; None for this place.
        percent_off: what it takes off the single price here; 100 for free entry [%].
        people_at_most: how many it lets in here; None for all that its seats hold.
    """

    held: HeldPass
    offer: Pass
    other_place: str | None
    percent_off: Decimal
    people_at_most: int | None = None


@dataclass(frozen=True)
class _OnSale:
    """An offer as one block of the board sees it.

    Attributes:
        offer: the offer.
        people: names of those who may come in by this block; None for everybody.
        holds_at_most: people per unit in all; None for no limit.
        units_at_most: how often it is sold; None for no limit.
    """

    offer: Offer
    people: frozenset[str] | None = None
    holds_at_most: int | None = None
    units_at_most: int | None = None


def read_board(
    place: Place,
    offers: Sequence[Offer],
    held: Sequence[HeldHere],
    party: Sequence[Member],
    months: Sequence[int],
    household: Collection[str],
    *,
    day: date | None = None,
    car_seats: int | None = None,
) -> Board:
    """See a place's offers with the eyes of one party.

    Args:
        place: the place; only prices of `offers` and its fees and vouchers are read from it.
        offers: what can be had for this visit, in card order.
        held: passes that count here.
        party: who comes along.
        months: their ages, in the same order [completed months].
        household: names of those who belong to the household.
        day: the date of the visit, for what is good on a birthday; without it nobody has one.
        car_seats: seats of a car of the household, for permits by car; any number when left out.

    Returns:
        The board; sources count `held` first, then `offers`, those for one family once for each family.
    """
    digits = _price_digits(place, offers) + _percent_digits(offers, held)
    on_sale = [one for offer in offers for one in _for_whom(offer, party, household, car_seats)]
    facts = [
        (
            *(_facts_of_held(one, member, age, household) for one in held),
            *(_facts_on_sale(one, member, age, household, day) for one in on_sale),
        )
        for member, age in zip(party, months, strict=True)
    ]
    positions: dict[tuple[tuple[int, ...], ...], list[int]] = {}
    for position, fact in enumerate(facts):
        positions.setdefault(fact, []).append(position)
    # by_source[s][k] holds what block s has to know about kind k.
    by_source = list(zip(*positions, strict=True))

    tickets: dict[int, TicketBlock] = {}
    singles: list[int | None] = [None] * len(positions)
    for source, one in enumerate(on_sale, start=len(held)):
        if isinstance(one.offer, Ticket):
            block = _ticket_block(source, one.offer, by_source[source], digits)
            tickets[source] = block
            if sold_singly(one.offer):
                _lower(singles, block)
    kinds = tuple(
        PersonClass(tuple(people), single) for people, single in zip(positions.values(), singles, strict=True)
    )

    blocks: list[Block] = [
        _held_block(source, one, by_source[source], singles) for source, one in enumerate(held)
    ]
    for source, one in enumerate(on_sale, start=len(held)):
        offer, fact = one.offer, by_source[source]
        if isinstance(offer, Ticket):
            blocks.append(tickets[source])
        elif isinstance(offer, Discount):
            blocks.append(_discount_block(source, offer, fact, _singles_among(offer, tickets, singles)))
        elif isinstance(offer, Bundle):
            blocks.append(_bundle_block(source, offer, one, fact, digits))
        else:
            blocks.append(_pass_block(source, offer, fact, singles, digits))
    return Board(kinds, tuple(blocks), digits, tuple(_never_together(blocks)))


def _for_whom(
    offer: Offer, party: Sequence[Member], household: Collection[str], car_seats: int | None
) -> Iterator[_OnSale]:
    """An offer once for everybody, or once for each family of the party, and once for all who have none."""
    if not isinstance(offer, Bundle):
        yield _OnSale(offer)
        return
    in_a_car = car_seats if offer.per_car else None
    if not offer.one_family:
        yield _OnSale(offer, None, in_a_car, offer.at_most)
        return
    families: dict[str, list[str]] = {}
    alone: list[str] = []
    for member in party:
        if member.family or member.name in household:
            families.setdefault(member.family, []).append(member.name)
        else:
            alone.append(member.name)
    for names in families.values():
        yield _OnSale(offer, frozenset(names), in_a_car, offer.at_most)
    if alone:
        yield _OnSale(offer, frozenset(alone), 1)


def _lower(singles: list[int | None], block: TicketBlock) -> None:
    """Take a ticket's prices for those who could have it alone, where they are the lowest so far."""
    for kind in block.holders:
        known = singles[kind]
        price = block.prices[kind]
        singles[kind] = price if known is None else min(known, price)


def _singles_among(
    offer: Discount, tickets: Mapping[int, TicketBlock], singles: Sequence[int | None]
) -> Sequence[int | None]:
    """The single prices that a part is taken off."""
    if not offer.offers:
        return singles
    found: list[int | None] = [None] * len(singles)
    for block in tickets.values():
        if block.offer.name in offer.offers and isinstance(block.offer, Ticket) and sold_singly(block.offer):
            _lower(found, block)
    return found


def _never_together(blocks: Sequence[Block]) -> Iterator[frozenset[int]]:
    """Bundles whose seats count everybody, each with each free ticket."""
    free = [
        block.source
        for block in blocks
        if isinstance(block, TicketBlock) and any(not price for price in block.prices.values())
    ]
    for block in blocks:
        offer = block.offer
        if isinstance(offer, Bundle) and (offer.counts_everybody or offer.per_car):
            yield from (frozenset({block.source, other}) for other in free)


def sold_singly(offer: Ticket) -> bool:
    """Whether one person may have the ticket alone; it then counts as that person's single price."""
    return offer.companions is None and offer.at_least == 1 and offer.at_most is None


def _price_digits(place: Place, offers: Iterable[Offer]) -> int:
    prices = [price for offer in offers for price in prices_in(offer)]
    prices += [fee.price for fee in place.fees if fee.price is not None]
    prices += [voucher.amount_off for voucher in place.vouchers if voucher.amount_off is not None]
    return max(minor_digits(place.currency), *(decimals(price) for price in prices), 0)


def _percent_digits(offers: Sequence[Offer], held: Iterable[HeldHere]) -> int:
    passes = [offer for offer in offers if isinstance(offer, Pass)] + [one.offer for one in held]
    percents = [offer.guests_percent_off for offer in passes if offer.guests_at_most]
    percents += [one.percent_off for one in held]
    percents += [offer.percent_off for offer in offers if isinstance(offer, Discount)]
    return max((2 + decimals(percent) for percent in percents), default=0)


def decimals(value: Decimal) -> int:
    """Decimal places a number is written with [-]."""
    exponent = value.as_tuple().exponent
    return max(0, -exponent) if isinstance(exponent, int) else 0


def _has_status(member: Member, needs: Collection[str]) -> bool:
    return not needs or any(status in needs for status in member.statuses)


def _facts_of_held(one: HeldHere, member: Member, months: int, household: Collection[str]) -> tuple[int, ...]:
    holder = member.name in one.held.holders
    if one.offer.named:
        return (holder,)
    at_home = member.name in household
    return (holder, *(at_home and months in seat.ages for seat in one.offer.seats))


def _facts_on_sale(
    one: _OnSale, member: Member, months: int, household: Collection[str], day: date | None
) -> tuple[int, ...]:
    facts = _facts_of_offer(one.offer, member, months, household, day)
    return facts if one.people is None or member.name in one.people else (0,) * len(facts)


def _facts_of_offer(
    offer: Offer, member: Member, months: int, household: Collection[str], day: date | None
) -> tuple[int, ...]:
    """What a block has to know about somebody: yes or no, but which price of a ticket it is, from 1 on."""
    if isinstance(offer, Ticket):
        rule = offer.companions
        return (
            _which_price(offer, months) if _on_the_right_day(offer, member, day) else 0,
            _has_status(member, offer.needs),
            rule is not None and months in rule.ages and _has_status(member, rule.needs),
            offer.one_free_per is not None and months in offer.leader_ages,
        )
    if isinstance(offer, Discount):
        return (months in offer.ages, _has_status(member, offer.needs))
    if isinstance(offer, Bundle):
        return (
            offer.extras is not None and months in offer.extras.ages,
            _has_status(member, offer.needs),
            offer.must_include is not None and months in offer.must_include,
            *(months in seat.ages for seat in offer.seats),
        )
    at_home = member.name in household
    return tuple(at_home and months in seat.ages for seat in offer.seats)


def _which_price(offer: Ticket, months: int) -> int:
    """The number of the price that somebody pays on a ticket, from 1 on; 0 for none."""
    return next((number for number, band in enumerate(offer.bands, start=1) if months in band), 0)


def _on_the_right_day(offer: Ticket, member: Member, day: date | None) -> bool:
    """Whether the day is one that a ticket for birthdays is good on for somebody."""
    if offer.good_on == "any day":
        return True
    if day is None:
        return False
    if offer.good_on == "birth month":
        return day.month == member.born.month
    turns = member.months_on(day)
    return (
        member.born.day is not None
        and turns % MONTHS == 0
        and turns > member.months_on(day - timedelta(days=1))
    )


Facts = Sequence[tuple[int, ...]]


def _kinds_with(facts: Facts, column: int) -> frozenset[int]:
    return frozenset(kind for kind, fact in enumerate(facts) if fact[column])


def _ticket_block(source: int, offer: Ticket, facts: Facts, digits: int) -> TicketBlock:
    fitting = _kinds_with(facts, 0)
    holders = fitting & _kinds_with(facts, 1)
    companions = None
    if offer.companions is not None:
        rule = offer.companions
        companions = CompanionRule(_kinds_with(facts, 2), rule.must_pay, rule.each_allows)
    prices = [int(price.scaleb(digits)) for price in prices_in(offer)]
    users = fitting if offer.one_status_covers > 1 else holders
    return TicketBlock(
        source=source,
        offer=offer,
        prices={kind: prices[facts[kind][0] - 1] for kind in sorted(users)},
        holders=holders,
        covers=offer.one_status_covers,
        companions=companions,
        at_least=offer.at_least,
        at_most=offer.at_most,
        one_free_per=offer.one_free_per,
        leaders=_kinds_with(facts, 3),
    )


def _discount_block(source: int, offer: Discount, facts: Facts, singles: Sequence[int | None]) -> TicketBlock:
    prices = {
        kind: _reduced(single, offer.percent_off)
        for kind, single in enumerate(singles)
        if single is not None and facts[kind][0]
    }
    holders = frozenset(prices) & _kinds_with(facts, 1)
    covers_others = offer.one_status_covers > 1
    return TicketBlock(
        source=source,
        offer=offer,
        prices={kind: price for kind, price in prices.items() if covers_others or kind in holders},
        holders=holders,
        covers=offer.one_status_covers,
        companions=None,
        at_least=1,
        at_most=offer.at_most,
        one_free_per=None,
        leaders=frozenset(),
    )


def _rows(seats: Sequence[Seats], facts: Facts, first_column: int) -> tuple[SeatRow, ...]:
    return tuple(
        SeatRow(seat.count, _kinds_with(facts, column)) for column, seat in enumerate(seats, first_column)
    )


def _bundle_block(source: int, offer: Bundle, on_sale: _OnSale, facts: Facts, digits: int) -> UnitBlock:
    extras = offer.extras
    extra_price = int(extras.price.scaleb(digits)) if extras is not None else 0
    price = int(offer.price.scaleb(digits))
    return UnitBlock(
        source=source,
        offer=offer,
        held=None,
        other_place=None,
        percent_off=Decimal(0),
        price=price,
        at_most=on_sale.units_at_most,
        rows=_rows(offer.seats, facts, 3),
        seat_price={},
        seats_are_paid=price > 0,
        at_least=offer.at_least,
        must_include=_kinds_with(facts, 2) if offer.must_include is not None else None,
        one_with_status=_kinds_with(facts, 1) if offer.needs else None,
        beyond_price=dict.fromkeys(sorted(_kinds_with(facts, 0)), extra_price),
        beyond_at_most=extras.at_most if extras is not None else 0,
        holds_at_most=on_sale.holds_at_most,
    )


def _reduced(single: int, percent_off: Decimal) -> int:
    """Part of a fine price; exact, because fine digits were chosen to hold every percentage on the board."""
    return int(single * (100 - percent_off) / 100)


def _guest_prices(offer: Pass, singles: Sequence[int | None]) -> dict[int, int]:
    if not offer.guests_at_most:
        return {}
    return {
        kind: _reduced(single, offer.guests_percent_off)
        for kind, single in enumerate(singles)
        if single is not None
    }


def _guests_left(offer: Pass, so_far: int = 0) -> int:
    """How many guests a pass lets in on this visit."""
    if offer.guests_per_year is None:
        return offer.guests_at_most
    return min(offer.guests_at_most, max(offer.guests_per_year - so_far, 0))


def _pass_block(
    source: int, offer: Pass, facts: Facts, singles: Sequence[int | None], digits: int
) -> UnitBlock:
    return UnitBlock(
        source=source,
        offer=offer,
        held=None,
        other_place=None,
        percent_off=Decimal(0),
        price=int(offer.price.scaleb(digits)),
        at_most=None,
        rows=_rows(offer.seats, facts, 0),
        seat_price={},
        seats_are_paid=True,
        at_least=1,
        must_include=None,
        one_with_status=None,
        beyond_price=_guest_prices(offer, singles),
        beyond_at_most=_guests_left(offer),
    )


def _held_block(source: int, one: HeldHere, facts: Facts, singles: Sequence[int | None]) -> UnitBlock:
    holders = _kinds_with(facts, 0)
    if one.offer.named:
        rows: tuple[SeatRow, ...] = (SeatRow(len(one.held.holders), holders),)
    else:
        rows = _rows(one.offer.seats, facts, 1)
    free = one.percent_off == 100
    priced = {
        kind: 0 if free else _reduced(single or 0, one.percent_off)
        for kind, single in enumerate(singles)
        if free or single is not None
    }
    return UnitBlock(
        source=source,
        offer=one.offer,
        held=one.held,
        other_place=one.other_place,
        percent_off=one.percent_off,
        price=0,
        at_most=1,
        rows=tuple(SeatRow(row.count, row.kinds & frozenset(priced)) for row in rows),
        seat_price={kind: price for kind, price in priced.items() if price},
        seats_are_paid=True,
        at_least=1,
        must_include=None,
        one_with_status=None if one.offer.named else holders,
        beyond_price=_guest_prices(one.offer, singles) if one.other_place is None else {},
        beyond_at_most=_guests_left(one.offer, one.held.guests_so_far) if one.other_place is None else 0,
        holds_at_most=one.people_at_most,
    )


def bands_on(offer: Offer) -> tuple[AgeBand, ...]:
    """Every age band that an offer speaks of."""
    if isinstance(offer, Ticket):
        companions = (offer.companions.ages,) if offer.companions is not None else ()
        leaders = (offer.leader_ages,) if offer.one_free_per is not None else ()
        return (*offer.bands, *companions, *leaders)
    if isinstance(offer, Discount):
        return (offer.ages,)
    seats = tuple(seat.ages for seat in offer.seats)
    if isinstance(offer, Pass):
        return seats
    extras = (offer.extras.ages,) if offer.extras is not None else ()
    included = (offer.must_include,) if offer.must_include is not None else ()
    return (*seats, *extras, *included)
