"""What a price in a sentence is limited to: days, conditions, and how many must come together."""

from collections.abc import Sequence

from tripplan.reading.prices.facts import AMOUNT, WHO
from tripplan.reading.prices.tokens import Token


def conditions_of(
    text: str, statement: Sequence[Token], prices: Sequence[Token], conditions: Sequence[Token]
) -> list[list[Token]]:
    """For each price the conditions and days it is limited to.

    What stands before a colon holds for all prices up to the next such title; anything else belongs to one price: to
    the next where it stands right before it or behind a break, or else to the one before.
    """
    beside: list[list[Token]] = [[] for _ in prices]
    breaks = [token.start for token in statement if token.kind == "break"]
    titles = [c for c in conditions if _is_title(text, statement, c)]
    for condition in conditions:
        number = sum(price.start < condition.start for price in prices)
        alone = not any(c.kind == condition.kind and c.start > prices[0].start for c in conditions)
        if condition in titles or (number == 0 and condition.start == statement[0].start and alone):
            ends = min(
                (t.start for t in titles if any(condition.start < p.start < t.start for p in prices)),
                default=statement[-1].end,
            )
            for later in range(number, len(prices)):
                if prices[later].start < ends:
                    beside[later].append(condition)
            continue
        if number == len(prices):
            number -= 1
        elif number:
            parted = any(prices[number - 1].end <= at < condition.start for at in breaks)
            joined = not any(condition.end <= at < prices[number].start for at in breaks)
            right_before = prices[number].start - condition.end < 4 and (
                condition.kind == "days" or text[condition.start - 1] == "("
            )
            if not (joined and (parted or right_before)):
                number -= 1
        beside[number].append(condition)
    return beside


def _is_title(text: str, statement: Sequence[Token], condition: Token) -> bool:
    """Whether a colon follows before any visitor or price, as in 'Peak (weekends): adults $9'."""
    until = min(
        (t.start for t in statement if t.start >= condition.end and t.kind in (*WHO, *AMOUNT)),
        default=statement[-1].end,
    )
    return ":" in text[condition.end : until]


def group_sizes(statement: Sequence[Token]) -> list[tuple[Token, bool]]:
    """The group sizes of a statement, and whether each opens a clause: it is then said of the price behind it."""
    return [
        (token, before is not None and before.kind == "break" and token.start - before.end < 2)
        for before, token in zip((None, *statement), statement, strict=False)
        if token.kind == "group"
    ]


def group_size(groups: Sequence[tuple[Token, bool]], prices: Sequence[Token], number: int) -> int | None:
    """How many must come together for a price: said before all prices, right before this one, or after it."""
    price = prices[number]
    for group, opens_a_clause in groups:
        mine = not (number and group.start < prices[number - 1].start) and not (
            number + 1 < len(prices) and group.start > prices[number + 1].start
        )
        if group.start < prices[0].start or (mine and (group.start < price.start or not opens_a_clause)):
            return int(str(group.facts["of"]))
    return None
