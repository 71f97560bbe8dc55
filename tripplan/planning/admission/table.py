"""The cheapest way in for a family: a dynamic programme over how many of each kind are still outside.

Tickets that each person may use alone fold into one cheapest price per kind. Every other block becomes a
list of options, each a number of people of every kind and a weight; the programme applies the blocks one
after the other. Whether a free ticket may be had next to a paying companion hangs on who pays; so, where it
matters, the number of payers of each companion kind is fixed first and every possible number tried.

A state is one integer with a field for each kind and a guard bit above each field: an option fits if
subtracting it leaves every guard bit standing.
"""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from itertools import product

from tripplan.planning.admission.blocks import Block, Board, Role, TicketBlock, UnitBlock
from tripplan.planning.admission.charges import Charges, Solution, Use

Pair = tuple[int, int]
"""People by kind, packed: in the first role (users, seats), in the second (leaders, beyond the seats)."""


@dataclass(frozen=True)
class _Part:
    """Some people of one kind, of whom it is known whether they pay; None where nothing hangs on it."""

    kind: int
    count: int
    pays: bool | None

    def may(self, pays: bool) -> bool:
        return self.pays is None or self.pays is pays


@dataclass(frozen=True)
class _Option:
    taken: int
    weight: int
    pair: Pair


@dataclass(frozen=True)
class _Plain:
    """The cheapest ticket for one person of a part."""

    weight: int
    source: int


def states(board: Board) -> int:
    """How many different parties are contained in the whole one [-]; the size of the programme."""
    size = 1
    for kind in board.kinds:
        size *= kind.count + 1
    return size


class CoverTable:
    """Answers for one board and one set of charges; asked again, it leaves out further offers quickly."""

    def __init__(self, board: Board, charges: Charges) -> None:
        self._cases = [_Case(board, charges, parts) for parts in _payer_cases(board)]

    def cheapest(self, left_out: Collection[int] = (), must_buy: int | None = None) -> Solution | None:
        """The cheapest legal way in.

        Args:
            left_out: sources that may not be used.
            must_buy: a source of which at least one unit must be bought.

        Returns:
            The way with the least weight, the first found among equals; None if there is none.
        """
        found = [case.cheapest(left_out, must_buy) for case in self._cases]
        return min((way for way in found if way is not None), key=lambda way: way.weight, default=None)


def payer_cases(board: Board) -> int:
    """How many divisions into payers and others have to be tried [-]."""
    size = 1
    for kind, both in _undecided(board).items():
        size *= board.kinds[kind].count + 1 if both is None else 1
    return size


def _undecided(board: Board) -> dict[int, bool | None]:
    """Companion kinds that must pay: whether they always pay, never, or either (None)."""
    watched: set[int] = set()
    for block in board.blocks:
        if isinstance(block, TicketBlock) and block.companions is not None and block.companions.must_pay:
            watched |= block.companions.kinds
    if not watched:
        return {}
    pay: set[int] = set()
    free: set[int] = set()
    for block in board.blocks:
        paying, others = _kinds_that_pay(block)
        pay |= paying
        free |= others
    return {kind: None if kind in pay and kind in free else kind in pay for kind in sorted(watched)}


def _kinds_that_pay(block: Block) -> tuple[set[int], set[int]]:
    """Kinds that can come in by a block so that it counts as paid, and so that it does not."""
    if isinstance(block, TicketBlock):
        leaders = set(block.leaders) if block.one_free_per is not None else set()
        return (set(block.users), leaders) if block.price else (set(), set(block.users) | leaders)
    seated = {kind for row in block.rows for kind in row.kinds}
    paid_beyond = {kind for kind, price in block.beyond_price.items() if price}
    free_beyond = set(block.beyond_price) - paid_beyond
    if block.seats_are_paid:
        return seated | paid_beyond, free_beyond
    return paid_beyond, seated | free_beyond


def _payer_cases(board: Board) -> Iterator[tuple[_Part, ...]]:
    decided = _undecided(board)
    choices: list[list[tuple[_Part, ...]]] = []
    for number, kind in enumerate(board.kinds):
        if number not in decided:
            choices.append([(_Part(number, kind.count, None),)])
        elif decided[number] is not None:
            choices.append([(_Part(number, kind.count, decided[number]),)])
        else:
            splits = []
            for payers in range(kind.count, -1, -1):
                both = (_Part(number, payers, True), _Part(number, kind.count - payers, False))
                splits.append(tuple(part for part in both if part.count))
            choices.append(splits)
    for choice in product(*choices):
        yield tuple(part for parts in choice for part in parts)


class _Case:
    """The programme for one division of the party into parts."""

    def __init__(self, board: Board, charges: Charges, parts: tuple[_Part, ...]) -> None:
        self._board, self._charges, self._parts = board, charges, parts
        self._ones: list[int] = []
        self._masks: list[int] = []
        self._guards = 0
        self._everybody = 0
        shift = 0
        for part in parts:
            width = part.count.bit_length()
            self._ones.append(1 << shift)
            self._masks.append(((1 << width) - 1) << shift)
            self._guards |= 1 << (shift + width)
            self._everybody |= part.count << shift
            shift += width + 1
        self._payers = {
            kind: sum(part.count for part in parts if part.kind == kind and part.pays is True)
            for kind in range(len(board.kinds))
        }
        self._plain_blocks = [b for b in board.blocks if isinstance(b, TicketBlock) and b.is_plain]
        self._options = {
            block.source: (
                self._ticket_options(block) if isinstance(block, TicketBlock) else self._unit_options(block)
            )
            for block in board.blocks
            if not (isinstance(block, TicketBlock) and block.is_plain)
        }

    def cheapest(self, left_out: Collection[int], must_buy: int | None) -> Solution | None:
        plain = self._plain(left_out)
        layers: list[tuple[int, dict[int, _Option]]] = []
        best = {self._everybody | self._guards: 0}
        if must_buy is not None:
            best, came_by = self._apply({}, best, self._options[must_buy])
            layers.append((must_buy, came_by))
        for source, options in self._options.items():
            if source in left_out:
                continue
            useful = self._useful(options, plain)
            for _ in range(self._most_units(source)):
                spread, came_by = self._apply(best, best, useful)
                if not came_by:
                    break
                best = spread
                layers.append((source, came_by))
        return self._finish(best, layers, plain)

    def _apply(
        self, keep: dict[int, int], old: dict[int, int], options: Sequence[_Option]
    ) -> tuple[dict[int, int], dict[int, _Option]]:
        """One block once: the better of leaving it and of each option."""
        guards = self._guards
        new = dict(keep)
        came_by: dict[int, _Option] = {}
        for outside, weight in old.items():
            for option in options:
                left = outside - option.taken
                if left & guards == guards:
                    total = weight + option.weight
                    known = new.get(left)
                    if known is None or total < known:
                        new[left] = total
                        came_by[left] = option
        return new, came_by

    def _finish(
        self,
        best: dict[int, int],
        layers: Sequence[tuple[int, dict[int, _Option]]],
        plain: Sequence[_Plain | None],
    ) -> Solution | None:
        """Let everybody who is still outside in by single tickets, and trace back what was bought."""
        least: tuple[int, int] | None = None
        for outside, weight in best.items():
            total = weight
            for part, ticket in zip(self._counts(outside), plain, strict=True):
                if part:
                    if ticket is None:
                        break
                    total += part * ticket.weight
            else:
                if least is None or total < least[0]:
                    least = (total, outside)
        if least is None:
            return None
        weight, outside = least
        people: dict[tuple[int, Role, int], int] = {}
        units: dict[int, int] = {}
        for number, (count, ticket) in enumerate(zip(self._counts(outside), plain, strict=True)):
            if count and ticket is not None:
                key = (ticket.source, Role.USER, self._parts[number].kind)
                people[key] = people.get(key, 0) + count
        for source, came_by in reversed(layers):
            option = came_by.get(outside)
            if option is None:
                continue
            outside += option.taken
            is_unit = isinstance(self._board.blocks[source], UnitBlock)
            units[source] = units.get(source, 0) + is_unit
            roles = (Role.SEAT, Role.BEYOND) if is_unit else (Role.USER, Role.LEADER)
            for role, packed in zip(roles, option.pair, strict=True):
                for number, count in enumerate(self._counts(packed)):
                    if count:
                        key = (source, role, self._parts[number].kind)
                        people[key] = people.get(key, 0) + count
        sources = sorted({source for source, _, _ in people})
        return Solution(
            weight,
            tuple(
                Use(
                    source,
                    units.get(source, 0),
                    tuple((role, kind, n) for (s, role, kind), n in sorted(people.items()) if s == source),
                )
                for source in sources
            ),
        )

    def _counts(self, packed: int) -> list[int]:
        return [(packed & mask) // one for mask, one in zip(self._masks, self._ones, strict=True)]

    def _plain(self, left_out: Collection[int]) -> list[_Plain | None]:
        """The cheapest ticket a person of each part may use alone."""
        cheapest: list[_Plain | None] = [None] * len(self._parts)
        for block in self._plain_blocks:
            if block.source in left_out:
                continue
            weight = self._charges.step(block.source, block.price)
            if weight is None:
                continue
            for number, part in enumerate(self._parts):
                if part.kind in block.users and part.may(block.price > 0):
                    known = cheapest[number]
                    if known is None or weight < known.weight:
                        cheapest[number] = _Plain(weight, block.source)
        return cheapest

    def _useful(self, options: Sequence[_Option], plain: Sequence[_Plain | None]) -> list[_Option]:
        """Options that are not dearer than single tickets for the same people."""
        useful = []
        for option in options:
            singly = 0
            for count, ticket in zip(self._counts(option.taken), plain, strict=True):
                if count:
                    if ticket is None:
                        break
                    singly += count * ticket.weight
            else:
                if option.weight >= singly:
                    continue
            useful.append(option)
        return useful

    def _most_units(self, source: int) -> int:
        block = self._board.blocks[source]
        if isinstance(block, TicketBlock):
            return 1
        everybody = sum(part.count for part in self._parts)
        units = everybody // block.at_least
        return units if block.at_most is None else min(units, block.at_most)

    def _choices(self, numbers: Sequence[int], at_most: int | None) -> Iterator[tuple[int, tuple[int, ...]]]:
        """Every choice of people among some parts: how many in all, and how many of each part."""
        for counts in product(*(range(self._parts[number].count + 1) for number in numbers)):
            total = sum(counts)
            if at_most is None or total <= at_most:
                yield total, counts

    def _pack(self, numbers: Sequence[int], counts: Sequence[int]) -> int:
        return sum(count * self._ones[number] for number, count in zip(numbers, counts, strict=True))

    def _parts_in(self, kinds: Collection[int], *, pays: bool) -> list[int]:
        return [n for n, part in enumerate(self._parts) if part.kind in kinds and part.may(pays)]

    def _ticket_options(self, block: TicketBlock) -> list[_Option]:
        weight = self._charges.step(block.source, block.price)
        leader_weight = self._charges.step(block.source, 0) or 0
        if weight is None:
            return []
        users = self._parts_in(block.users, pays=block.price > 0)
        leaders = self._parts_in(block.leaders, pays=False) if block.one_free_per is not None else []
        options = []
        for paying, counts in self._choices(users, block.at_most):
            if paying < max(1, block.at_least) or not self._status_covers(block, users, counts):
                continue
            first = self._pack(users, counts)
            free_at_most = paying // block.one_free_per if block.one_free_per is not None else 0
            for free, free_counts in self._choices(leaders, free_at_most):
                second = self._pack(leaders, free_counts)
                taken = first + second
                if not self._fits(taken) or not self._companions_suffice(block, paying, first, second):
                    continue
                options.append(_Option(taken, paying * weight + free * leader_weight, (first, second)))
        return options

    def _fits(self, taken: int) -> bool:
        left = (self._everybody | self._guards) - taken
        return left & self._guards == self._guards

    def _status_covers(self, block: TicketBlock, users: Sequence[int], counts: Sequence[int]) -> bool:
        if block.users == block.holders:
            return True
        holders = sum(
            count
            for number, count in zip(users, counts, strict=True)
            if self._parts[number].kind in block.holders
        )
        return sum(counts) <= holders * block.covers

    def _companions_suffice(self, block: TicketBlock, paying: int, first: int, second: int) -> bool:
        rule = block.companions
        if rule is None:
            return True
        present = 0
        in_use = self._counts(first + second)
        for number, part in enumerate(self._parts):
            if part.kind in rule.kinds and (not rule.must_pay or part.pays is True):
                present += part.count - in_use[number]
        return paying <= present * rule.each_allows

    def _unit_options(self, block: UnitBlock) -> list[_Option]:
        unit = self._charges.step(block.source, block.price)
        if unit is None:
            return []
        beyond = self._beyond_parts(block)
        options = []
        for seated, first in self._fillings(block):
            weight = unit + seated
            for _, counts in self._choices(beyond, block.beyond_at_most):
                second = self._pack(beyond, counts)
                if self._fits(first + second):
                    extra = sum(
                        count * (self._charges.beyond(block, self._parts[number].kind) or 0)
                        for number, count in zip(beyond, counts, strict=True)
                    )
                    options.append(_Option(first + second, weight + extra, (first, second)))
        return options

    def _beyond_parts(self, block: UnitBlock) -> list[int]:
        return [
            number
            for number, part in enumerate(self._parts)
            if part.kind in block.beyond_price
            and part.may(block.beyond_price[part.kind] > 0)
            and self._charges.beyond(block, part.kind) is not None
        ]

    def _fillings(self, block: UnitBlock) -> Iterator[tuple[int, int]]:
        """Every legal filling of a unit's seats: what its seats weigh, and who sits there."""
        fillings = {0}
        for row in block.rows:
            numbers = [
                number
                for number in self._parts_in(row.kinds, pays=block.seats_are_paid)
                if self._charges.seat(block, self._parts[number].kind) is not None
            ]
            choices = [self._pack(numbers, counts) for _, counts in self._choices(numbers, row.count)]
            fillings = {old + new for old in fillings for new in choices if self._fits(old + new)}
        for filling in sorted(fillings):
            counts = self._counts(filling)
            if sum(counts) < block.at_least:
                continue
            if any(
                not any(count and part.kind in kinds for count, part in zip(counts, self._parts, strict=True))
                for kinds in (block.must_include, block.one_with_status)
                if kinds is not None
            ):
                continue
            weight = sum(
                count * (self._charges.seat(block, part.kind) or 0)
                for count, part in zip(counts, self._parts, strict=True)
                if count
            )
            yield weight, filling
