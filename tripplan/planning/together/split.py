"""A fair split of a common price, and the fewest payments that settle it."""

from collections.abc import Sequence
from fractions import Fraction

from tripplan.errors import PlanError

EXACT_AT_MOST = 12
"""With more accounts to settle, payments are few but perhaps not the fewest."""


def fair_shares(total: int, alone: Sequence[int]) -> tuple[int, ...]:
    """Divide a price in proportion to what each would have paid alone.

    Everybody first gets the whole coins of the exact part; the coins left over go one by one to the largest
    fractions, the first in order where two are equal.

    Args:
        total: the price [smallest coin].
        alone: what each would have paid [smallest coin]; where all are 0, everybody pays the same.

    Returns:
        The parts, which add up to the total; 0 for who would have paid 0, unless all would have.

    Raises:
        PlanError: there is nobody to pay, or an amount is negative.

    Source: the method of largest remainders, A. Hamilton, 1792; see M. Balinski and H. P. Young, Fair
        Representation, 1982 (from memory).
    """
    if not alone or total < 0 or min(alone) < 0:
        raise PlanError("a price is divided among somebody, and no amount is negative")
    weights = alone if sum(alone) else [1] * len(alone)
    exact = [Fraction(total * weight, sum(weights)) for weight in weights]
    parts = [part.__floor__() for part in exact]
    by_loss = sorted(range(len(parts)), key=lambda number: parts[number] - exact[number])
    for number in by_loss[: total - sum(parts)]:
        parts[number] += 1
    return tuple(parts)


def fewest_payments(balances: Sequence[int]) -> tuple[tuple[int, int, int], ...]:
    """Settle accounts with as few payments as there can be.

    Accounts that cancel out among themselves need one payment less than they are; so the most such sets are
    looked for, by taking accounts away one by one in every order. With more than `EXACT_AT_MOST` accounts all
    are taken for one set, which leaves at most one payment less than there are accounts.

    Args:
        balances: by account, what it gets back; negative for what it owes [smallest coin]; adding up to 0.

    Returns:
        Payments as payer, receiver and amount, accounts by position.

    Raises:
        PlanError: the balances do not add up to 0.

    Source: T. Verhoeff, Settling multiple debts efficiently, Informatics in Education 3, 2004, pp. 105-126.
    """
    if sum(balances):
        raise PlanError("what some owe is not what others get back")
    open_ones = [number for number, balance in enumerate(balances) if balance]
    if len(open_ones) > EXACT_AT_MOST:
        return tuple(_pay_off(balances, open_ones))
    sets = _most_cancelling(balances, open_ones)
    return tuple(payment for one in sets for payment in _pay_off(balances, sorted(one)))


def _most_cancelling(balances: Sequence[int], accounts: Sequence[int]) -> list[list[int]]:
    """The most disjoint sets of accounts that each add up to 0 and together are all of them."""
    everybody = (1 << len(accounts)) - 1
    sums = [0] * (everybody + 1)
    most = [0] * (everybody + 1)
    last = [0] * (everybody + 1)
    for some in range(1, everybody + 1):
        lowest = some & -some
        sums[some] = sums[some ^ lowest] + balances[accounts[lowest.bit_length() - 1]]
        inside = [number for number in range(len(accounts)) if some >> number & 1]
        last[some] = max(inside, key=lambda number: most[some ^ (1 << number)])
        most[some] = most[some ^ (1 << last[some])] + (sums[some] == 0)
    sets: list[list[int]] = []
    some = everybody
    while some:
        if sums[some] == 0:
            sets.append([])
        sets[-1].append(accounts[last[some]])
        some ^= 1 << last[some]
    return sets


def _pay_off(balances: Sequence[int], accounts: Sequence[int]) -> list[tuple[int, int, int]]:
    """Let who owes most pay who gets most back until all is settled: each payment closes an account."""
    left = {number: balances[number] for number in accounts}
    payments = []
    while any(left.values()):
        payer = min(left, key=lambda number: left[number])
        receiver = max(left, key=lambda number: left[number])
        amount = min(-left[payer], left[receiver])
        left[payer] += amount
        left[receiver] -= amount
        payments.append((payer, receiver, amount))
    return payments
