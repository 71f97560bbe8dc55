"""The rules of a price board as constraints on whole numbers, the only form in which solvers know them.

A block is one thing that may be had: by its ways people come in, at a price each, and its limits hold for
what they have together. The dynamic programme, the integer programme and the till read nothing else, so
whatever the terms of an offer say in ways and limits (`terms/`), every one of them understands.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from enum import StrEnum

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.places.offers import Offer


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
    """

    people: tuple[int, ...]

    @property
    def count(self) -> int:
        """How many they are."""
        return len(self.people)


@dataclass(frozen=True)
class Way:
    """One way of coming in by a block.

    Attributes:
        role: how.
        prices: fine price by kind of person that may.
        paid: kinds whose way in by it counts as having cost something.
        at_most: how many come in so for each unit of the block; None for no limit.
        is_item: whether each person's is an item of the order.
        with_fees: whether fees on every ticket come on it where it has a price.
    """

    role: Role
    prices: Mapping[int, int]
    paid: frozenset[int]
    at_most: int | None = None
    is_item: bool = True
    with_fees: bool = True

    @property
    def free(self) -> frozenset[int]:
        """Kinds whose way in by it does not count as having cost something."""
        return frozenset(self.prices) - self.paid


@dataclass(frozen=True)
class Limit:
    """What people who come in by a block keep to: counted by role and kind, they come to so much at most.

    Attributes:
        counted: what each of them counts.
        at_most: for each unit of the block.
    """

    counted: Mapping[Role, Mapping[int, int]]
    at_most: int

    @property
    def demands(self) -> frozenset[int]:
        """Kinds of whom some must come in; none for a limit that is kept by nobody's coming in."""
        if self.at_most >= 0:
            return frozenset()
        return frozenset(kind for kinds in self.counted.values() for kind, each in kinds.items() if each < 0)


@dataclass(frozen=True)
class CompanionRule:
    """Who must be there for a block to be good: kinds that count, whether they must pay, users for each."""

    kinds: frozenset[int]
    must_pay: bool
    each_allows: int


@dataclass(frozen=True)
class Block:
    """One thing that lets people in: a ticket, a bundle, a pass to be bought or held.

    Attributes:
        offer: as on its card.
        ways: how people come in by it.
        limits: what those who do keep to.
        unit_price: fine price of a unit that lets several in, 0 for a pass already held; None for what is had
            by the head, which is one unit for all who use it.
        units_at_most: how many units may be had; None for any number.
        companions: who else must be there for its users, if anybody.
        held: the pass as the family holds it; None for what is bought now.
        other_place: name of the place whose held pass is honoured here; None for offers of this place.
        percent_off: what a pass from elsewhere takes off the single price [%].
        beside: fine price by kind of what somebody wants beside entry and pays on top of it.
        never_beside_free: whether nobody enters on a free ticket beside it.
        source: position among what the party holds and the board offers; the order in which ties break.
    """

    offer: Offer
    ways: tuple[Way, ...]
    limits: tuple[Limit, ...] = ()
    unit_price: int | None = None
    units_at_most: int | None = 1
    companions: CompanionRule | None = None
    held: HeldPass | None = None
    other_place: str | None = None
    percent_off: Decimal = Decimal(0)
    beside: Mapping[int, int] = field(default_factory=dict)
    never_beside_free: bool = False
    source: int = 0

    @property
    def is_unit(self) -> bool:
        """Whether it is bought or shown by the unit, each letting several people in."""
        return self.unit_price is not None

    @property
    def is_plain(self) -> bool:
        """Whether each person may use it whatever the others do."""
        return not (self.is_unit or self.limits or self.companions) and all(
            way.role is Role.USER and way.at_most is None for way in self.ways
        )

    @property
    def is_for_groups(self) -> bool:
        """Whether it is had by several together: a unit, a smallest number, a free leader."""
        return (
            self.is_unit
            or any(limit.at_most < 0 for limit in self.limits)
            or any(way.role is Role.LEADER for way in self.ways)
        )

    @property
    def seats(self) -> int:
        """How many people a unit seats."""
        return sum(way.at_most or 0 for way in self.ways if way.role is Role.SEAT)

    @property
    def kinds(self) -> frozenset[int]:
        """Kinds that may come in by it."""
        return frozenset(kind for way in self.ways for kind in way.prices)

    def kinds_in(self, role: Role) -> frozenset[int]:
        """Kinds that may come in by it so."""
        return frozenset(kind for way in self.ways if way.role is role for kind in way.prices)

    def way(self, role: Role, kind: int) -> Way:
        """By which way people of a kind come in so; of several, which cost the same, the first."""
        return next(way for way in self.ways if way.role is role and kind in way.prices)

    def price(self, role: Role, kind: int) -> int:
        """Fine price of coming in so."""
        return self.way(role, kind).prices[kind]


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

    def fine(self, price: Decimal) -> int:
        """A price of the card as a whole number of fine units."""
        return int(price.scaleb(self.fine_digits))


def board_of(people: int, blocks: Sequence[Block], fine_digits: int) -> Board:
    """Put people whom no block tells apart together.

    Args:
        people: how many the party is.
        blocks: by person; the positions in the party stand where kinds will.
        fine_digits: decimal places of a fine price [-].
    """
    known = [look for block in blocks for look in _known_by(block)]
    alike: dict[tuple[int | None, ...], list[int]] = {}
    for person in range(people):
        alike.setdefault(tuple([look(person) for look in known]), []).append(person)
    kinds = tuple(PersonClass(tuple(positions)) for positions in alike.values())
    kind_at = {kind.people[0]: number for number, kind in enumerate(kinds)}
    by_kind = tuple(_by_kind(block, source, kind_at) for source, block in enumerate(blocks))
    free = [block.source for block in by_kind if not block.is_unit and _may_be_free(block)]
    return Board(
        kinds,
        by_kind,
        fine_digits,
        tuple(
            frozenset({block.source, other}) for block in by_kind if block.never_beside_free for other in free
        ),
    )


def _may_be_free(block: Block) -> bool:
    return any(not price for way in block.ways if way.role is Role.USER for price in way.prices.values())


def _known_by(block: Block) -> Iterator[Callable[[int], int | None]]:
    """All that a block knows about somebody, by position."""
    for way in block.ways:
        yield way.prices.get
        yield way.paid.__contains__
    for limit in block.limits:
        for counted in limit.counted.values():
            yield counted.get
    if block.beside:
        yield block.beside.get
    if block.companions is not None:
        yield block.companions.kinds.__contains__


def _by_kind(block: Block, source: int, kind_at: Mapping[int, int]) -> Block:
    """A block with the numbers of kinds in the place of people's positions; kinds by their first person.

    Written out, since `dataclasses.replace` would take half the time of reading a board.
    """

    def mapped(by_person: Mapping[int, int]) -> dict[int, int]:
        return {kind_at[person]: value for person, value in by_person.items() if person in kind_at}

    def those(people: frozenset[int]) -> frozenset[int]:
        return frozenset([kind_at[person] for person in people if person in kind_at])

    rule = block.companions
    return Block(
        block.offer,
        tuple(
            Way(way.role, mapped(way.prices), those(way.paid), way.at_most, way.is_item, way.with_fees)
            for way in block.ways
        ),
        tuple(
            Limit({role: mapped(counted) for role, counted in limit.counted.items()}, limit.at_most)
            for limit in block.limits
        ),
        block.unit_price,
        block.units_at_most,
        rule and CompanionRule(those(rule.kinds), rule.must_pay, rule.each_allows),
        block.held,
        block.other_place,
        block.percent_off,
        mapped(block.beside),
        block.never_beside_free,
        source,
    )
