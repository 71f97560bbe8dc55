"""Cutting a text about prices into statements: sentences, lines and cells of a table."""

import re
from collections.abc import Iterator, Sequence

from tripplan.reading.hours.pieces import ONE_MONTH as MONTH
from tripplan.reading.prices.facts import ENTRY_WORD, PRICE, WHO
from tripplan.reading.prices.tokens import Token, amount_from, tokens


def with_parties(text: str, cut: Sequence[Token]) -> list[Token]:
    """Who goes in on a family ticket, said beside it; by itself it is a family."""
    whole: list[Token] = []
    for token in cut:
        if token.kind != "party":
            whole.append(token)
            continue
        families = [
            at
            for at, before in enumerate(whole[-_NEAR:], max(0, len(whole) - _NEAR))
            if before.kind == "family"
        ]
        at = families[-1] if families else None
        if at is not None and "\n\n" not in text[whole[at].start : token.start] and not _counted(whole[at]):
            whole[at] = whole[at]._replace(facts=token.facts)
            whole.append(token._replace(kind="word"))
        else:
            whole.append(token._replace(kind="family"))
    return whole


_SHORTENED = (
    "erm",
    "erw",
    "pers",
    "ki",
    "kd",
    "j",
    "ca",
    "incl",
    "inkl",
    "excl",
    "zzgl",
    "approx",
    "min",
    "max",
)
_SHORT_DATES = tuple(
    "jan feb mar apr jun jul aug sep sept oct nov dec okt dez mon tue tues wed thu thur thurs fri sat sun mo di mi do fr sa so".split()
)
_NEAR = 8
"""So many pieces back a family ticket is looked for, whose people are then named."""


def _counted(family: Token) -> bool:
    return any(isinstance(count, int) for count in family.facts.values())


def statements_of(text: str, cut: Sequence[Token]) -> Iterator[list[Token]]:
    """Sentences and lines; a price that opens a line belongs to a line before it that has none."""
    statement: list[Token] = []
    table = _table(text) if "|" in text else []
    if table:
        yield from table
        return
    for token in cut:
        before = text[statement[-1].end : token.start] if statement else ""
        ends = "\n" in before or (statement and "\n" in statement[-1].text)
        opens_with_price = (
            token.kind in PRICE and statement and not has_price(statement) and _names_something(statement)
        )
        if ends and not opens_with_price:
            yield statement
            statement = []
        statement.append(token)
        if _ends_a_sentence(text, statement) or (token.kind == "break" and ";" in token.text):
            yield statement
            statement = []
    if statement:
        yield statement


def with_bare_prices(cut: list[Token]) -> list[Token]:
    """Where no money sign stands anywhere, a number right after a visitor is a price."""
    if any(token.kind == "money" for token in cut):
        return cut
    named = False
    for place, token in enumerate(cut):
        if token.kind == "word" and named and re.fullmatch(r"\d+(?:[.,]\d{2})?", token.text):
            facts: dict[str, object] = {"amount": amount_from(token.text), "unit": "", "about": False}
            cut[place] = Token("money", token.start, token.end, token.text, facts)
        named = token.kind in ("person", "ages", "family") or (named and token.text in ":-()=")
    return cut


def _ends_a_sentence(text: str, statement: Sequence[Token]) -> bool:
    """Whether its last piece is a full stop, and not that of a.m., Sat. or 4.50."""
    stop = statement[-1]
    if stop.text not in (".", "!", "?") and not re.search(r"days?\.$", stop.text):
        return False
    before = statement[-2].text.casefold() if len(statement) > 1 else ""
    if stop.text == "." and before in _SHORTENED:
        return False
    follows = text[stop.end : stop.end + 20].lstrip(" ")
    if stop.text == "." and before in _SHORT_DATES and follows[:1] in "-0123456789":
        return False
    if stop.text == "." and (text[stop.end : stop.end + 1].isalnum() or _is_day_of_month(statement, follows)):
        return False
    if len(statement) > 1 and len(statement[-2].text) == 1 and statement[-2].text.isalpha():
        return bool(re.match(r"[A-ZÄÖÜ](?!(?:on|ue|ed|hu|ri|at|un)\w*)", follows)) or follows[:1] in (
            "",
            "\n",
        )
    return not follows or follows[0] == "\n" or not (follows[0].islower() or follows[0] in ",;-&|")


def _is_day_of_month(statement: Sequence[Token], follows: str) -> bool:
    """Whether the full stop is that of 1. November or 24.12."""
    before = statement[-2].text if len(statement) > 1 else ""
    if not before.isdigit() or len(before) > 2:
        return False
    in_digits = len(statement) > 3 and statement[-3].text == "." and statement[-4].text.isdigit()
    return in_digits or follows[:1].isdigit() or follows[:1] == "/" or MONTH.match(follows) is not None


def has_price(statement: Sequence[Token]) -> bool:
    """Whether an amount, or free, is in it."""
    return any(token.kind in PRICE for token in statement)


def _names_something(statement: Sequence[Token]) -> bool:
    return any(token.kind in WHO or ENTRY_WORD.fullmatch(token.text) for token in statement)


def _table(text: str) -> list[list[Token]]:
    """A table with kinds of visitors across: a statement for each price, made of the head and the price below."""
    rows = [
        [cell.strip() for cell in line.strip().strip("|").split("|")]
        for line in text.splitlines()
        if "|" in line
    ]
    if len(rows) < 2 or any(line.strip() and "|" not in line for line in text.splitlines()):
        return []
    head = [cell for cell in rows[0] if cell]
    if not head or not all(
        any(t.kind in ("person", "ages", "family") for t in tokens(cell)) for cell in head
    ):
        return []
    if any(has_price(list(tokens(cell))) for cell in head):
        return []
    pairs: list[list[Token]] = []
    at = 0
    for row in rows[1:]:
        cells = row[-len(head) :]
        if len(cells) != len(head) or not all(has_price(list(tokens(cell))) for cell in cells):
            return []
        for name, price in zip(head, cells, strict=True):
            pair: list[Token] = []
            for cell in (name, price):
                at = text.index(cell, at if cell is price else 0)
                pair += [t._replace(start=t.start + at, end=t.end + at) for t in tokens(cell)]
            pairs.append(pair)
    return pairs
