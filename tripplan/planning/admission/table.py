"""The cheapest way in for a family: a dynamic programme over how many of each kind are still outside.

Every block becomes a list of options, each a number of people of every kind and a weight. What may be had
any number of times (single tickets, bundles and passes without a limit) makes a table of the least weight
that lets in any part of the party: whoever of those outside comes first in the order of kinds must come in
by something, so each set of purchases is looked at once. Blocks that are used once or a few times (group
prices, companions, limits, passes held) are applied before, one after the other. Whether a free ticket may
be had next to a paying companion hangs on who pays; so, where it matters, the number of payers of each
companion kind is fixed first and every possible number tried.

A state is one integer with a field for each kind and a guard bit above each field: an option fits if
subtracting it leaves every guard bit standing.
"""

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product
from typing import NamedTuple

from tripplan.planning.admission.charges import Charges, SaleLimits, Solution, Use
from tripplan.planning.admission.constraints import Block, Board, Limit, Role, Way


@dataclass(frozen=True)
class _Part:
    """Some people of one kind, of whom it is known whether they pay; None where nothing hangs on it."""

    kind: int
    count: int
    pays: bool | None

    def may(self, pays: bool) -> bool:
        return self.pays is None or self.pays is pays


class _Option(NamedTuple):
    """Some people let in by one use of a block.

    Attributes:
        taken: all of them, packed.
        weight: what it adds to the order.
        pair: the same people by role, packed: users or seated, then leaders or beyond the seats.
    """

    taken: int
    weight: int
    pair: tuple[int, int]


_Kept = Callable[[int, int], bool]
"""Whether people of a first and a second role, packed, keep to a limit."""

_NO_WAY = 1 << 200
"""A weight that stands for "not at all"."""


def states(board: Board) -> int:
    """How many different parties are contained in the whole one [-]; the size of the programme."""
    size = 1
    for kind in board.kinds:
        size *= kind.count + 1
    return size


class CoverTable:
    """Answers for one board and one set of charges; asked again with other limits, it answers quickly."""

    def __init__(self, board: Board, charges: Charges) -> None:
        self._never_together = board.never_together
        self._cases = [_Case(board, charges, parts) for parts in _payer_cases(board)]
        self._known: dict[tuple[frozenset[int], int | None], Solution | None] = {}

    def cheapest(self, limits: SaleLimits) -> Solution | None:
        """The legal way in with the least weight, the first found among equals; None if there is none."""
        cuts = {limits.left_out}
        for sources in (*limits.not_all_of, *self._never_together):
            cuts = _smallest(
                {cut | {source} for cut in cuts for source in sources if source != limits.must_buy}
            )
        found = [self._without(cut, limits.must_buy) for cut in sorted(cuts, key=sorted)]
        return min((way for way in found if way is not None), key=lambda way: way.weight, default=None)

    def _without(self, left_out: frozenset[int], must_buy: int | None) -> Solution | None:
        key = (left_out, must_buy)
        if key not in self._known:
            found = [case.cheapest(left_out, must_buy) for case in self._cases]
            self._known[key] = min(
                (way for way in found if way is not None), key=lambda way: way.weight, default=None
            )
        return self._known[key]


def _smallest(cuts: set[frozenset[int]]) -> set[frozenset[int]]:
    """Those that hold none of the others: who may use more has no dearer way."""
    return {cut for cut in cuts if not any(other < cut for other in cuts)}


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
        if block.companions is not None and block.companions.must_pay and block.kinds:
            watched |= block.companions.kinds
    if not watched:
        return {}
    ways = [way for block in board.blocks for way in block.ways]
    pay = frozenset[int]().union(*(way.paid for way in ways))
    free = frozenset[int]().union(*(way.free for way in ways))
    return {kind: None if kind in pay and kind in free else kind in pay for kind in sorted(watched)}


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
        self._choices_known: dict[tuple[tuple[int, ...], int], list[tuple[int, int]]] = {}
        self._fillings_known: dict[tuple[tuple[tuple[int, ...], int | None], ...], dict[int, int]] = {}
        self._options_known: dict[int, list[_Option]] = {}
        self._weighed_known: dict[tuple[tuple[tuple[int, int], ...], int | None], list[tuple[int, int]]] = {}

    def cheapest(self, left_out: Collection[int], must_buy: int | None) -> Solution | None:
        any_number, limited = self._repeatable_and_not(left_out)
        by_kind = self._sorted_options(any_number)
        least: dict[int, tuple[int, int, _Option | None]] = {self._guards: (0, 0, None)}
        layers: list[tuple[int, dict[int, _Option]]] = []
        best = {self._everybody | self._guards: 0}
        if must_buy is not None:
            best, came_by = self._apply({}, best, self._options(self._board.blocks[must_buy]))
            layers.append((must_buy, came_by))
        for source, at_most in limited:
            useful = [
                option
                for option in self._options(self._board.blocks[source])
                if option.weight < self._least(option.taken | self._guards, by_kind, least)
            ]
            for _ in range(at_most):
                best, came_by = self._apply(best, best, useful)
                if not came_by:
                    break
                layers.append((source, came_by))
        found: tuple[int, int] | None = None
        for outside, weight in best.items():
            total = weight + self._least(outside, by_kind, least)
            if total < _NO_WAY and (found is None or total < found[0]):
                found = (total, outside)
        return None if found is None else self._traced(found, layers, least)

    def _repeatable_and_not(self, left_out: Collection[int]) -> tuple[list[int], list[tuple[int, int]]]:
        """The blocks that may be used any number of times, and those that may not, with how often they may.

        A unit that weighs as much as single tickets for everybody cannot be part of anything better.
        """
        any_number: list[int] = []
        limited: list[tuple[int, int]] = []
        alone: list[int] = [_NO_WAY] * len(self._parts)
        everybody = sum(part.count for part in self._parts)
        for block in self._board.blocks:
            if block.is_plain and block.source not in left_out:
                any_number.append(block.source)
                for option in self._options(block):
                    number = self._ones.index(option.taken)
                    alone[number] = min(alone[number], option.weight)
        singly = sum(part.count * weight for part, weight in zip(self._parts, alone, strict=True))
        for block in self._board.blocks:
            if block.source in left_out:
                continue
            if not block.is_unit:
                if not block.is_plain:
                    limited.append((block.source, 1))
                continue
            unit = self._charges.unit(block)
            if unit is None or unit >= singly:
                continue
            possible = everybody // max((-limit.at_most for limit in block.limits), default=1)
            if block.units_at_most is None or block.units_at_most >= possible:
                any_number.append(block.source)
            else:
                limited.append((block.source, block.units_at_most))
        return any_number, limited

    def _options(self, block: Block) -> list[_Option]:
        if block.source not in self._options_known:
            made = self._plain_options if block.is_plain else self._joint_options
            self._options_known[block.source] = made(block)
        return self._options_known[block.source]

    def _sorted_options(self, sources: Sequence[int]) -> list[list[tuple[int, int, int, _Option]]]:
        """For each part, what lets at least one of it in: people taken, weight, source, option.

        Of options for the same people only the lightest is kept, and none that weighs more than letting the
        same people in one by one.
        """
        lightest: dict[int, tuple[int, int, _Option]] = {}
        for source in sources:
            for option in self._options(self._board.blocks[source]):
                known = lightest.get(option.taken)
                if known is None or option.weight < known[0]:
                    lightest[option.taken] = (option.weight, source, option)
        alone = [lightest[one][0] if one in lightest else _NO_WAY for one in self._ones]
        useful = [
            (taken, weight, source, option)
            for taken, (weight, source, option) in lightest.items()
            if weight <= sum(count * alone[n] for n, count in enumerate(self._counts(taken)) if count)
        ]
        return [[entry for entry in useful if entry[0] & mask] for mask in self._masks]

    def _least(
        self,
        outside: int,
        by_kind: Sequence[Sequence[tuple[int, int, int, _Option]]],
        least: dict[int, tuple[int, int, _Option | None]],
    ) -> int:
        """The least weight that lets everybody in who is outside, by what may be had any number of times."""
        known = least.get(outside)
        if known is not None:
            return known[0]
        guards = self._guards
        first = next(number for number, mask in enumerate(self._masks) if outside & mask)
        best: tuple[int, int, _Option | None] = (_NO_WAY, 0, None)
        for taken, weight, source, option in by_kind[first]:
            left = outside - taken
            if left & guards == guards and weight < best[0]:
                rest = least.get(left)
                total = weight + (self._least(left, by_kind, least) if rest is None else rest[0])
                if total < best[0]:
                    best = (total, source, option)
        least[outside] = best
        return best[0]

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

    def _traced(
        self,
        found: tuple[int, int],
        layers: Sequence[tuple[int, dict[int, _Option]]],
        least: dict[int, tuple[int, int, _Option | None]],
    ) -> Solution:
        """What was bought to come to a state with a weight."""
        weight, outside = found
        used: list[tuple[int, _Option]] = []
        rest = outside
        while (step := least[rest])[2] is not None:
            used.append((step[1], step[2]))
            rest -= step[2].taken
        for source, came_by in reversed(layers):
            option = came_by.get(outside)
            if option is not None:
                used.append((source, option))
                outside += option.taken
        people: dict[tuple[int, Role, int], int] = {}
        units: dict[int, int] = {}
        for source, option in used:
            is_unit = self._board.blocks[source].is_unit
            units[source] = units.get(source, 0) + is_unit
            roles = (Role.SEAT, Role.BEYOND) if is_unit else (Role.USER, Role.LEADER)
            for role, packed in zip(roles, option.pair, strict=True):
                for number, count in enumerate(self._counts(packed)):
                    if count:
                        key = (source, role, self._parts[number].kind)
                        people[key] = people.get(key, 0) + count
        return Solution(
            weight,
            tuple(
                Use(
                    source,
                    units[source],
                    tuple((role, kind, n) for (s, role, kind), n in sorted(people.items()) if s == source),
                )
                for source in sorted(units)
            ),
        )

    def _counts(self, packed: int) -> list[int]:
        return [(packed & mask) // one for mask, one in zip(self._masks, self._ones, strict=True)]

    def _choices(self, numbers: Sequence[int], at_most: int | None) -> list[tuple[int, int]]:
        """Every choice of people among some parts: how many in all, and who, packed."""
        limit = sum(part.count for part in self._parts) if at_most is None else at_most
        key = (tuple(numbers), limit)
        if key not in self._choices_known:
            choices = [(0, 0)]
            for number in numbers:
                one, most = self._ones[number], self._parts[number].count
                choices = [
                    (total + count, packed + count * one)
                    for total, packed in choices
                    for count in range(min(most, limit - total) + 1)
                ]
            self._choices_known[key] = choices
        return self._choices_known[key]

    def _weights(self, block: Block, way: Way) -> dict[int, int]:
        """What a person of each part weighs who comes in by a way."""
        weights = {}
        for number, part in enumerate(self._parts):
            if part.kind in way.prices and part.may(part.kind in way.paid):
                weight = self._charges.entering(block, way, part.kind)
                if weight is not None:
                    weights[number] = weight
        return weights

    def _plain_options(self, block: Block) -> list[_Option]:
        return [
            _Option(self._ones[number], weight, (self._ones[number], 0))
            for way in block.ways
            for number, weight in self._weights(block, way).items()
        ]

    def _joint_options(self, block: Block) -> list[_Option]:
        """Who may come in by one unit of a block, or by one that is for several at a time."""
        unit = self._charges.unit(block)
        if unit is None:
            return []
        first_role = Role.SEAT if block.is_unit else Role.USER
        firsts = self._filled(block, [way for way in block.ways if way.role is first_role])
        seconds = [
            (way, tuple(self._weights(block, way).items()))
            for way in block.ways
            if way.role is not first_role
        ]
        if not seconds:
            limits = [self._kept(limit) for limit in block.limits]
            return [
                _Option(first, unit + weight, (first, 0))
                for first, weight in firsts.items()
                if first
                and all(kept(first, 0) for kept in limits)
                and self._companions_suffice(block, first, first)
            ]
        of_first, of_both = self._split(block.limits)
        guards, room = self._guards, self._everybody | self._guards
        lightest: dict[int, _Option] = {}
        for first, weight in firsts.items():
            if not first or not all(kept(first, 0) for kept in of_first):
                continue
            others = [(0, 0)]
            for way, weights in seconds:
                # Whoever could take a free seat does not come along beyond the seats.
                more = (
                    tuple(item for item in weights if first + self._ones[item[0]] not in firsts)
                    if block.is_unit
                    else weights
                )
                choices = self._weighed(more, way.at_most)
                others = [(one + two, w + extra) for one, w in others for two, extra in choices]
            for second, extra in others:
                taken = first + second
                if (room - taken) & guards == guards:
                    total = unit + weight + extra
                    known = lightest.get(taken)
                    if (
                        (known is None or total < known.weight)
                        and all(kept(first, second) for kept in of_both)
                        and self._companions_suffice(block, first, taken)
                    ):
                        lightest[taken] = _Option(taken, total, (first, second))
        return list(lightest.values())

    def _split(self, limits: Sequence[Limit]) -> tuple[list[_Kept], list[_Kept]]:
        """Limits on those alone who use or are seated, and on others too."""
        first = frozenset((Role.USER, Role.SEAT))
        return (
            [self._kept(limit) for limit in limits if limit.counted.keys() <= first],
            [self._kept(limit) for limit in limits if not limit.counted.keys() <= first],
        )

    def _filled(self, block: Block, ways: Sequence[Way]) -> dict[int, int]:
        """Who may come in by ways of one role, and what they weigh, which is the same in each way."""
        all_weights = [self._weights(block, way) for way in ways]
        by_part = {number: weight for weights in all_weights for number, weight in weights.items()}
        key = tuple((tuple(weights), way.at_most) for weights, way in zip(all_weights, ways, strict=True))
        if key not in self._fillings_known:
            fillings = {0: 0}
            for numbers, at_most in key:
                choices = self._choices(numbers, at_most)
                fillings = {
                    old + new: seated + more
                    for old, seated in fillings.items()
                    for more, new in choices
                    if self._fits(old + new)
                }
            self._fillings_known[key] = fillings
        fillings = self._fillings_known[key]
        same = next(iter(by_part.values()), 0)
        if all(weight == same for weight in by_part.values()):
            return {packed: count * same for packed, count in fillings.items()}
        return {packed: self._sum(by_part, packed) for packed in fillings}

    def _weighed(self, weights: tuple[tuple[int, int], ...], at_most: int | None) -> list[tuple[int, int]]:
        """Every choice of people by a second role: who, packed, and what they weigh; from part and weight."""
        key = (weights, at_most)
        if key not in self._weighed_known:
            each = dict(weights)
            choices = self._choices(tuple(each), at_most)
            self._weighed_known[key] = [(packed, self._sum(each, packed)) for _, packed in choices]
        return self._weighed_known[key]

    def _sum(self, each: Mapping[int, int], packed: int) -> int:
        masks, ones = self._masks, self._ones
        return sum([weight * ((packed & masks[n]) // ones[n]) for n, weight in each.items()])

    def _fits(self, taken: int) -> bool:
        left = (self._everybody | self._guards) - taken
        return left & self._guards == self._guards

    def _kept(self, limit: Limit) -> _Kept:
        """Whether people by role, packed, keep to a limit."""
        if limit.at_most == -1 and set(limit.counted) == {Role.SEAT}:
            mask = sum(
                mask
                for mask, part in zip(self._masks, self._parts, strict=True)
                if part.kind in limit.demands
            )
            return lambda first, _: bool(first & mask)
        first_each, second_each = (
            {
                number: counted[part.kind]
                for role in roles
                if (counted := limit.counted.get(role)) is not None
                for number, part in enumerate(self._parts)
                if part.kind in counted
            }
            for roles in ((Role.SEAT, Role.USER), (Role.BEYOND, Role.LEADER))
        )
        if not second_each:
            return lambda first, _: self._sum(first_each, first) <= limit.at_most
        return lambda first, second: (
            self._sum(first_each, first) + self._sum(second_each, second) <= limit.at_most
        )

    def _companions_suffice(self, block: Block, users: int, taken: int) -> bool:
        rule = block.companions
        if rule is None:
            return True
        present = sum(
            part.count - used
            for used, part in zip(self._counts(taken), self._parts, strict=True)
            if part.kind in rule.kinds and (not rule.must_pay or part.pays is True)
        )
        return sum(self._counts(users)) <= present * rule.each_allows
