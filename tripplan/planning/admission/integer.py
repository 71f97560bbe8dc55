"""The cheapest way in for a large group: an integer programme over how many of each kind use what.

SciPy's solver takes a third of a second to import, so it is imported where it is first needed. Its answer
is rounded to whole numbers, checked against every rule in whole numbers, and weighed exactly.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import gcd

from tripplan.errors import PlanError
from tripplan.planning.admission.charges import (
    ANYTHING,
    ITEM_BITS,
    ORDER_BITS,
    Charges,
    SaleLimits,
    Solution,
    Use,
    charge_of,
    people_of,
)
from tripplan.planning.admission.constraints import Block, Board, Role, Way
from tripplan.planning.integer_programme import minimized

Terms = dict[int, float]
"""A linear expression: coefficient by column."""

ITEMS = (1 << ITEM_BITS) - 1
SOURCES = (1 << ORDER_BITS) - 1
_NO_BLOCK = -1
"""The source of columns that hold what a voucher leaves to pay, or what it is used on."""
_TOLD_APART = 1 << 50
"""Objectives above this leave no room for ties in a double [-]."""
_SCALE = 1000.0
"""Brings objectives to a size that the solver's fixed tolerances suit; measured."""


@dataclass(frozen=True)
class _Column:
    """A whole-number unknown.

    Attributes:
        source: the block it belongs to; or `_NO_BLOCK`.
        role: how people come in by it; None for units and switches.
        kind: which people; -1 for none.
        weight: what one adds to the order.
        price: fine price of one; 0 for what is free, and for switches.
        upper: its largest value; None for an unbounded amount of money [coins].
        is_unit: whether it counts units bought.
        pays: whether people in it count as having paid.
    """

    source: int
    role: Role | None
    kind: int
    weight: int
    upper: int | None
    is_unit: bool = False
    price: int = 0
    pays: bool = False


class _Programme:
    """Columns and rows, collected block by block."""

    def __init__(self, board: Board, charges: Charges) -> None:
        self.board, self.charges = board, charges
        self.columns: list[_Column] = []
        self.rows: list[tuple[Terms, float, float]] = []
        self.party = sum(kind.count for kind in board.kinds)

    def column(self, column: _Column) -> int:
        self.columns.append(column)
        return len(self.columns) - 1

    def coins(self, charge: int) -> float:
        """A charge in the currency's main unit, as the solver sees it."""
        return float(charge / 10**self.charges.digits)

    def at_most(self, terms: Terms, bound: float) -> None:
        self.rows.append((terms, float("-inf"), bound))

    def people(self, block: Block, way: Way) -> dict[int, int]:
        """One column per kind that may come in by a way."""
        found = {}
        for kind in sorted(way.prices):
            weight = self.charges.entering(block, way, kind)
            if weight is not None:
                found[kind] = self.one_kind(block.source, way, kind, weight)
        return found

    def one_kind(self, source: int, way: Way, kind: int, weight: int) -> int:
        """A column for people of a kind who come in by a way."""
        upper = self.board.kinds[kind].count
        price, pays = way.prices[kind], kind in way.paid
        return self.column(_Column(source, way.role, kind, weight, upper, price=price, pays=pays))


def cheapest_by_integers(board: Board, charges: Charges, limits: SaleLimits = ANYTHING) -> Solution | None:
    """The cheapest legal way in, by branch and bound.

    Args:
        board: the board.
        charges: what things add to the order; the only place where a fixed voucher is minded.
        limits: what the way must keep to beside the board's rules.

    Returns:
        The way with the least charge and, among those, the fewest items, then the first on the card; None if
        there is none.

    Raises:
        PlanError: the solver gave up, or what it found breaks a rule.
    """
    programme = _Programme(board, charges)
    blocks = [block for block in board.blocks if block.source not in limits.left_out]
    joint = [block for block in blocks if not block.is_plain]
    beside = [(block, _joint(programme, block, limits.must_buy)) for block in joint]
    plain = [block for block in blocks if block.is_plain]
    fees_differ = len(set(zip(charges.fee_factors, charges.ticket_fees, strict=True))) > 1
    by_voucher = bool(charges.reduced_sources) and fees_differ
    _plain_tickets(programme, plain, all_of_them=bool(limits.not_all_of) or by_voucher)
    for block, people in beside:
        if block.companions is not None and people.get(Role.USER):
            _companions(programme, block, people)
    for number, kind in enumerate(board.kinds):
        everybody = {i: 1.0 for i, column in enumerate(programme.columns) if column.kind == number}
        if not everybody:
            return None
        programme.rows.append((everybody, kind.count, kind.count))
    for sources in (*limits.not_all_of, *board.never_together):
        _do_without_one(programme, sources - {limits.must_buy})
    instead: dict[int, int] = {}
    if charges.reduction:
        instead = _fixed_voucher(programme)
    elif charges.people_at_most is not None:
        instead = _voucher_for_some(programme, charges.people_at_most)
    values = _solve(programme, _objective(programme, instead))
    return None if values is None else _read(programme, values)


def _objective(programme: _Programme, instead: Mapping[int, int]) -> list[float]:
    """Charges first, then items, then places on the card, as one figure for each column.

    A unit of charge outweighs every possible sum of items and places, and an item every sum of places, as
    long as the figures stay small enough to be told apart; where they would not, only charges count.

    Args:
        programme: all columns.
        instead: by column, the charge that counts in place of its own, where a voucher changes it.
    """
    columns = programme.columns
    charges = [instead.get(number, charge_of(column.weight)) for number, column in enumerate(columns)]
    unit = gcd(*charges) or 1
    item = 2 * programme.party * len(programme.board.blocks) + 1
    first = (2 * programme.party + 1) * item
    if sum(abs(charge) for charge in charges) // unit * first > _TOLD_APART:
        return [charge / unit for charge in charges]
    ties = [_tie(column.weight, item) for column in columns]
    return [(charge // unit * first + tie) / _SCALE for charge, tie in zip(charges, ties, strict=True)]


def _tie(weight: int, item: int) -> int:
    return ((weight >> ORDER_BITS) & ITEMS) * item + (weight & SOURCES)


def _plain_tickets(programme: _Programme, blocks: Iterable[Block], *, all_of_them: bool) -> None:
    """Tickets for one person alone.

    Of those for one kind of person only the lightest matters among those that cost, among those that are free
    and among those that a voucher counts for; unless some must be done without, or a voucher leaves fees to
    pay that are not the same on all, which needs all.
    """
    lightest: dict[tuple[int, bool, bool, int], tuple[int, int, Way]] = {}
    for block in blocks:
        reduced = block.source in programme.charges.reduced_sources
        for way in block.ways:
            for kind in way.prices:
                weight = programme.charges.entering(block, way, kind)
                key = (kind, kind in way.paid, reduced, block.source if all_of_them else 0)
                if weight is not None and (key not in lightest or weight < lightest[key][0]):
                    lightest[key] = (weight, block.source, way)
    for (kind, *_), (weight, source, way) in sorted(lightest.items(), key=lambda item: item[0]):
        programme.one_kind(source, way, kind, weight)


People = Mapping[Role, Sequence[tuple[int, int]]]
"""Kinds with their columns, by role."""


def _joint(programme: _Programme, block: Block, must_buy: int | None) -> People:
    """What is had by several together: its units with the people in them, who keep to its limits.

    Limits of each unit are stated for all its units together. With one kind of person that each demands this
    is exact: put such a person in each, then even out the others. With two, it is not; such units are stated
    one by one.
    """
    unit = programme.charges.unit(block)
    if unit is None:
        return {}
    demands = [limit for limit in block.limits if limit.at_most < 0]
    most = programme.party // max((-limit.at_most for limit in demands), default=1)
    if block.units_at_most is not None:
        most = min(most, block.units_at_most)
    scarce = [limit.demands for limit in demands if limit.demands < block.kinds_in(Role.SEAT)]
    one_by_one = len(scarce) > 1
    if one_by_one:
        count = [sum(programme.board.kinds[kind].count for kind in kinds) for kinds in scarce]
        most = min(most, *count)
    people: dict[Role, list[tuple[int, int]]] = {}
    bought = []
    for _ in range(most if one_by_one else min(most, 1)):
        bought.append(_units(programme, block, unit, 1 if one_by_one else most, people))
    if must_buy == block.source:
        programme.at_most(dict.fromkeys(bought, -1.0), -1)
    return people


def _units(
    programme: _Programme, block: Block, unit: int, most: int, people: dict[Role, list[tuple[int, int]]]
) -> int:
    """Some units of a block with the people who come in by them; the number of the units' column."""
    price = block.unit_price or 0
    units = programme.column(_Column(block.source, None, -1, unit, most, is_unit=block.is_unit, price=price))
    coming: dict[Role, list[tuple[int, int]]] = {}
    for way in block.ways:
        columns = programme.people(block, way)
        at_most = programme.party if way.at_most is None else way.at_most
        programme.at_most({**dict.fromkeys(columns.values(), 1.0), units: -float(at_most)}, 0)
        coming.setdefault(way.role, []).extend(columns.items())
    for limit in block.limits:
        terms = {
            column: float(counted[kind])
            for role, counted in limit.counted.items()
            for kind, column in coming.get(role, ())
            if kind in counted
        }
        programme.at_most({**terms, units: -float(limit.at_most)}, 0)
    for role, columns_of in coming.items():
        people.setdefault(role, []).extend(columns_of)
    return units


def _companions(programme: _Programme, block: Block, people: People) -> None:
    """Users of a block are no more than its companions, who do not come in by it themselves, allow."""
    rule = block.companions
    if rule is None:
        return
    each = float(rule.each_allows)
    terms: Terms = {column: 1.0 for _, column in people[Role.USER]}
    if rule.must_pay:
        for number, column in enumerate(programme.columns):
            if column.pays and column.kind in rule.kinds and column.source != block.source:
                terms[number] = terms.get(number, 0.0) - each
        programme.at_most(terms, 0)
        return
    for columns in people.values():
        for kind, number in columns:
            if kind in rule.kinds:
                terms[number] = terms.get(number, 0.0) + each
    present = sum(programme.board.kinds[kind].count for kind in rule.kinds)
    programme.at_most(terms, each * present)


def _do_without_one(programme: _Programme, sources: frozenset[int | None]) -> None:
    """Of some sources at least one lets nobody in."""
    switches: Terms = {}
    for source in sorted(source for source in sources if source is not None):
        people: Terms = {
            number: 1.0
            for number, column in enumerate(programme.columns)
            if column.source == source and column.role is not None
        }
        switch = programme.column(_Column(source, None, -1, 0, 1))
        programme.at_most({**people, switch: -float(programme.party)}, 0)
        switches[switch] = 1.0
    programme.at_most(switches, len(switches) - 1)


def _fixed_voucher(programme: _Programme) -> dict[int, int]:
    """Let what the voucher counts for cost only what it leaves to pay, never below nothing.

    Returns:
        By column, the charge that counts in place of its own.
    """
    charges = programme.charges
    instead: dict[int, int] = {}
    terms: Terms = {}
    for number, column in enumerate(programme.columns):
        price = _price_within(programme, column)
        if price:
            reducible = price * charges.factors[column.source]
            instead[number] = charge_of(column.weight) - reducible
            terms[number] = programme.coins(reducible)
    left = programme.column(_Column(_NO_BLOCK, None, -1, 0, None))
    instead[left] = 10**charges.digits
    programme.at_most({**terms, left: -1.0}, programme.coins(charges.reduction))
    return instead


def _voucher_for_some(programme: _Programme, people: int) -> dict[int, int]:
    """Let a part come off things that are for so many people at most.

    Returns:
        By column, the charge that counts in place of its own.
    """
    charges = programme.charges
    instead: dict[int, int] = {}
    counted: Terms = {}
    for number, column in enumerate(tuple(programme.columns)):
        price = _price_within(programme, column)
        if price and column.upper is not None:
            taken = programme.column(_Column(_NO_BLOCK, None, -1, 0, column.upper))
            instead[taken] = -price * charges.off_factors[column.source]
            programme.at_most({taken: 1.0, number: -1.0}, 0)
            counted[taken] = float(people_of(programme.board.blocks[column.source], column.role))
    programme.at_most(counted, people)
    return instead


def _price_within(programme: _Programme, column: _Column) -> int:
    """The fine price of one of a column, where a voucher counts for it; else 0."""
    return column.price if column.source in programme.charges.reduced_sources else 0


def _solve(programme: _Programme, objective: Sequence[float]) -> list[int] | None:
    """The least of an objective over whole numbers; None if the rows contradict each other."""
    import numpy as np
    from scipy.optimize import LinearConstraint

    rows = programme.rows
    matrix = np.zeros((len(rows), len(programme.columns)))
    for number, (terms, _, _) in enumerate(rows):
        matrix[number, list(terms)] = list(terms.values())
    found = minimized(
        objective,
        LinearConstraint(matrix, [low for _, low, _ in rows], [high for _, _, high in rows]),
        what="the cheapest admission",
        upper=[np.inf if column.upper is None else column.upper for column in programme.columns],
        whole=[column.upper is not None for column in programme.columns],
    )
    if found is None:
        return None
    values = [round(value) for value in found]
    _check(programme, values)
    return values


def _check(programme: _Programme, values: Sequence[int]) -> None:
    """Hold a rounded answer against every row that speaks of people and units."""
    for terms, low, high in programme.rows:
        if all(programme.columns[column].upper is not None for column in terms):
            total = sum(coefficient * values[column] for column, coefficient in terms.items())
            if not low <= total <= high:
                raise PlanError("the cheapest admission could not be worked out in whole numbers")


def _read(programme: _Programme, values: Sequence[int]) -> Solution:
    people: dict[int, dict[tuple[Role, int], int]] = {}
    units: dict[int, int] = {}
    for column, value in zip(programme.columns, values, strict=True):
        if value and column.role is not None:
            block_people = people.setdefault(column.source, {})
            key = (column.role, column.kind)
            block_people[key] = block_people.get(key, 0) + value
        elif value and column.is_unit:
            units[column.source] = units.get(column.source, 0) + value
    return Solution(
        _weight(programme, values),
        tuple(
            Use(
                source,
                units.get(source, 0),
                tuple((role, kind, n) for (role, kind), n in sorted(who.items())),
            )
            for source, who in sorted(people.items())
        ),
    )


def _weight(programme: _Programme, values: Sequence[int]) -> int:
    return sum(column.weight * value for column, value in zip(programme.columns, values, strict=True))
