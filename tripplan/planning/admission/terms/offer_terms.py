"""The terms of an offer: what each kind says about itself, and what it may know of the party to say it."""

from abc import ABC, abstractmethod
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Any, ClassVar, Generic, NamedTuple, TypeVar

from tripplan.documents.family.member import Member
from tripplan.documents.model import Written
from tripplan.documents.places.offer_sentences import sentence
from tripplan.documents.places.offers import Offer, Seats
from tripplan.errors import Weight
from tripplan.language.sentences import Fact
from tripplan.planning.admission.constraints import Block, Limit, Role, Way
from tripplan.values.ages import AgeBand

Fault = tuple[str, str, str, Weight]
"""What is wrong about an offer: its field, value, message, weight."""


class Entrance(NamedTuple):
    """Whom an offer lets in, by age, and whether their way in counts as paid."""

    ages: AgeBand
    pays: bool


@dataclass(frozen=True)
class Person:
    """Somebody of the party.

    Attributes:
        position: in the party.
        member: who.
        months: age [completed months].
        at_home: whether of the household.
    """

    position: int
    member: Member
    months: int
    at_home: bool

    def shows(self, needs: Collection[str]) -> bool:
        """Whether somebody has one of the statuses, or none is needed."""
        return not needs or any(status in needs for status in self.member.statuses)


@dataclass(frozen=True)
class Guests:
    """The party before a board.

    Attributes:
        people: in order.
        fine_digits: decimal places of a fine price [-].
        day: the date of the visit; without it nobody has a birthday.
        car_seats: seats of a car of the household; any number when left out.
        alone: by name of the ticket, fine price by position of those who could have it alone; asked for once
            somebody pays a part of such a price.
    """

    people: tuple[Person, ...]
    fine_digits: int
    day: date | None = None
    car_seats: int | None = None
    alone: Callable[[], Mapping[str, Mapping[int, int]]] = dict

    def fine(self, price: Decimal) -> int:
        """A price of the card as a whole number of fine units."""
        return int(price.scaleb(self.fine_digits))

    def those(self, test: Callable[[Person], bool]) -> frozenset[int]:
        """Positions of the people who meet a test."""
        return frozenset([person.position for person in self.people if test(person)])

    def singles(self, percent_off: Decimal, among: Collection[str] = ()) -> dict[int, int]:
        """By position, the cheapest ticket somebody could have alone, less a part.

        Exact, because fine digits were chosen to hold every percentage on the board.

        Args:
            percent_off: what is taken off [%].
            among: names of the tickets; any ticket when empty.
        """
        least: dict[int, int] = {}
        for name, prices in self.alone().items():
            if not among or name in among:
                for person, price in prices.items():
                    least[person] = min(least.get(person, price), price)
        return {person: int(price * (100 - percent_off) / 100) for person, price in sorted(least.items())}


Offered = TypeVar("Offered", bound=Offer)
Form = TypeVar("Form", bound=Written)


@dataclass(frozen=True)
class OfferTerms(ABC, Generic[Offered]):
    """The terms of one offer; the board, its solvers, refusals, checks and the till ask nothing else.

    Attributes:
        offer: as on its card.
    """

    offer: Offered
    beside: ClassVar[Mapping[Role, tuple[str, Callable[[Any, str], str]]]] = {}
    """For people who come in otherwise than by the offer's own price: what their line of the order is called
    beside its name, and the sentence that says by which rule, from the offer and the currency."""

    @abstractmethod
    def blocks(self, guests: Guests) -> Iterator[Block]:
        """The offer as constraints on the people of a party, by position."""

    @abstractmethod
    def entrances(self) -> tuple[Entrance, ...]:
        """Whom it lets in, by age."""

    def other_bands(self) -> tuple[AgeBand, ...]:
        """Further age bands that it speaks of."""
        return ()

    def percentages(self) -> tuple[Decimal, ...]:
        """Every part of a price that it takes off [%]."""
        return ()

    def ties(self) -> Iterator[tuple[Offered, Fact]]:
        """The offer without each rule that ties people together, and the rest of "'its name' ..."."""
        return iter(())

    def asks(self) -> Iterator[Fact]:
        """What it asks of each person by itself, as the rest of "'its name' ..."."""
        return iter(())

    def faults(self) -> Iterator[Fault]:
        """What about it contradicts itself or has no effect."""
        return iter(())

    def line(self, role: Role) -> str:
        """What a line of the order is called that lets people in so."""
        return f"{self.offer.name}: {self.beside[role][0]}" if role in self.beside else self.offer.name

    def rule(self, role: Role, currency: str) -> str:
        """The rule by which a line lets people in, as a sentence."""
        said = self.beside[role][1] if role in self.beside else sentence
        return said(self.offer, currency)

    @property
    def bands(self) -> tuple[AgeBand, ...]:
        """Every age band that it speaks of."""
        return (*(entrance.ages for entrance in self.entrances()), *self.other_bands())


def changed(form: Form, **changes: object) -> Form:
    """An offer, or a part of one, with some fields other than they are."""
    return form.model_copy(update=changes)


def seat_ways(
    seats: Sequence[Seats], guests: Guests, *, paid: bool, test: Callable[[Person], bool] = lambda _: True
) -> tuple[Way, ...]:
    """Seats of a unit, for people of their ages who meet a test; the unit's price pays for them."""
    ways = []
    for seat in seats:
        sitting = {one.position for one in guests.people if one.months in seat.ages and test(one)}
        ways.append(free_seats(sitting, seat.count, paid=paid))
    return tuple(ways)


def free_seats(sitting: Collection[int], count: int, *, paid: bool) -> Way:
    """So many seats for certain people, who pay nothing more."""
    prices = dict.fromkeys(sorted(sitting), 0)
    return Way(Role.SEAT, prices, frozenset(prices) if paid else frozenset(), count, is_item=False)


def priced_way(role: Role, prices: Mapping[int, int], *, at_most: int | None = None, with_fees: bool) -> Way:
    """A way on which each person pays a price of their own; what is free does not count as paid."""
    paid = frozenset(person for person, price in prices.items() if price)
    return Way(role, prices, paid, at_most, with_fees=with_fees)


def holds_at_most(count: int, ways: Sequence[Way]) -> Limit:
    """A unit lets in so many by some ways together."""
    counted: dict[Role, dict[int, int]] = {}
    for way in ways:
        counted.setdefault(way.role, {}).update(dict.fromkeys(way.prices, 1))
    return Limit(counted, count)


def at_least(count: int, people: Collection[int], role: Role) -> Limit:
    """So many of certain people come in so with each unit."""
    return Limit({role: dict.fromkeys(sorted(people), -1)}, -count)
