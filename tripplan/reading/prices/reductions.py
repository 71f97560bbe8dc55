"""What is taken off, and the ages and prices that follow from others."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from tripplan.reading.prices.facts import AMOUNT, EntryPrice, PriceOff
from tripplan.reading.prices.statements import has_price
from tripplan.reading.prices.tokens import Token
from tripplan.reading.prices.visitors import (
    GROWN_UP_FROM,
    is_linked,
    kinds_of,
    visitors_by_price,
    visitors_in,
)
from tripplan.values.ages import MONTHS, AgeBand

NO_ENTRY_PRICE = re.compile(
    r"\b(?:minimum|deposit|donation|spende|kaution|rental|rents?\b|hire|locker|leihgebühr|menu|meal|lunch|dinner|breakfast|burger|pizza"
    r"|coffee|kaffee|kuchen|speise\w*|soup|drink|sandwich|t-?shirt|souvenir|feed|popcorn|ice cream)\w*\b",
    re.IGNORECASE,
)
_OFF = re.compile(
    r"\b(?:off|save|less|discount\w*|half price|rabatt\w*|nachlass\w*|günstiger|ermäßig\w*|halber preis)\b",
    re.IGNORECASE,
)
_SOLD_BESIDE = re.compile(
    r"\b(?:gifts?|shops?|stores?|caf[eé]s?|restaurants?|purchases?|merchandise|camps?|class(?:es)?|programs?|workshops?"
    r"|part(?:y|ies)|tax(?:es)?|steuer\w*|laden|einkauf\w*)\b",
    re.IGNORECASE,
)
"""What a percentage may be taken off, beside entry."""
MOST_PRICES = 60
"""As many as a card takes; of a text with more, the rest is left word for word."""


def parted_by_percent(statement: Sequence[Token]) -> tuple[list[Token], list[Token]] | None:
    """A statement cut into what has prices and what has percentages; None where it has none of the latter.

    A percentage beside a price may be a tax as well as what is taken off; the second part is then empty.
    """
    if not _has_percent(statement):
        return None
    clauses: list[list[Token]] = [[]]
    for token in statement:
        if token.kind == "break" and any(t.kind in AMOUNT for t in clauses[-1]):
            clauses.append([])
        clauses[-1].append(token)
    if len(clauses) > 1 and not any(t.kind in AMOUNT for t in clauses[-1]):
        last = clauses.pop()
        clauses[-1] += last
    off = [clause for clause in clauses if not has_price(clause)]
    priced = [_before_percent(clause) for clause in clauses if has_price(clause)]
    if any(has_price(clause) and _has_percent(clause) for clause in clauses):
        off = []
    return [t for clause in priced for t in clause], [t for clause in off for t in clause]


def _before_percent(clause: list[Token]) -> list[Token]:
    """A clause up to its percentage; where the price stands behind that, all of it but what says the percentage."""
    percent = next((place for place, token in enumerate(clause) if token.kind == "percent"), len(clause))
    if has_price(clause[:percent]):
        return clause[:percent]
    return [token for token in clause if token.kind not in ("percent", "discount")]


def _has_percent(statement: Sequence[Token]) -> bool:
    return any(token.kind == "percent" for token in statement)


def percentages(text: str, statement: Sequence[Token]) -> list[PriceOff] | None:
    """What percentages are taken off for whom; None where they may be something else, such as a tax."""
    percents = [token for token in statement if token.kind == "percent"]
    told = text[statement[0].start : statement[-1].end]
    if not _OFF.search(told) or NO_ENTRY_PRICE.search(told) or _SOLD_BESIDE.search(told):
        return None
    if any(token.kind == "group" for token in statement):
        return None
    assigned = visitors_by_price(text, statement, percents, visitors_in(text, statement))
    read: list[PriceOff] = []
    since = statement[0].start
    for number, percent in enumerate(percents):
        until = percents[number + 1].start if number + 1 < len(percents) else statement[-1].end
        breaks = [t.start for t in statement if t.kind == "break" and percent.end <= t.start < until]
        if breaks and number + 1 < len(percents):
            until = breaks[-1 if is_linked(statement, percent) else 0]
        inside = [t for t in statement if since <= t.start < until]
        said = tuple(t.text for t in inside if t.kind == "condition")
        days = ", ".join(t.text for t in inside if t.kind == "days")
        off, words = int(str(percent.facts["percent"])), text[since:until].strip(" |,;\n")
        read += [PriceOff(words, *kind, None, off, said, days) for kind in kinds_of(assigned[number])]
        since = until
    return read


_BY_AGE = ("child", "youth", "infant", "preschool", "senior")


def with_reduced_prices(
    entry: list[EntryPrice], offs: Iterable[PriceOff]
) -> tuple[list[EntryPrice], tuple[PriceOff, ...]]:
    """The prices with those that follow from what is taken off, and what is taken off one does not know what.

    An amount off for a kind of visitor whose price is known is a price of its own, under its condition; so is one
    for everybody. A kind without a price of its own has the grown-ups' price, less what is taken off.
    """
    left: list[PriceOff] = []
    plain = [price for price in entry if price.plain and price.price]
    usual = [price for price in plain if price.person in ("adult", "anyone")][:1]
    for off in offs:
        limited = bool(off.conditions or off.days)
        own = [price for price in plain if price.person == off.person]
        if off.percent is not None:
            base = usual if off.person in _BY_AGE and not own and not limited else []
        elif own or off.person == "anyone":
            base = (plain if off.person == "anyone" else own) if limited else []
        else:
            base = usual
        base = [price for price in base if off.taken_from(price.price) >= 0]
        if not base or len(entry) + len(base) > MOST_PRICES:
            left.append(off)
            continue
        entry = entry + [
            replace(
                price,
                person=price.person if own or off.person == "anyone" else off.person,
                ages=price.ages if own or off.person == "anyone" else off.ages,
                price=off.taken_from(price.price),
                conditions=off.conditions,
                days=off.days,
                words=off.words,
            )
            for price in base
        ]
    return entry, tuple(left)


def with_ages_that_follow(entry: Iterable[EntryPrice]) -> Iterator[EntryPrice]:
    """The same prices with the ages that others leave: 'children under 4 free' makes the rest four or older."""
    entry = tuple(entry)
    plain = [price for price in entry if price.plain and price.ages is not None]
    free_until = max(
        (
            p.ages.last
            for p in plain
            if p.ages and p.ages.first == 0 and p.ages.last is not None and not p.price
        ),
        default=None,
    )
    young_until = max(
        (p.ages.last for p in plain if p.ages and p.ages.last is not None and p.person in ("child", "youth")),
        default=None,
    )
    senior_from = min((p.ages.first for p in plain if p.ages and p.person == "senior"), default=None)
    for price in entry:
        if price.ages is not None or price.group_of:
            overlaps = free_until is not None and price.ages is not None and price.ages.first == 0
            if overlaps and price.price and free_until is not None and (price.ages.last or 9999) > free_until:  # type: ignore[union-attr]
                yield replace(price, ages=AgeBand(free_until + 1, price.ages.last))  # type: ignore[union-attr]
            else:
                yield price
            continue
        first: int | None = None
        last: int | None = None
        if price.price and price.person in ("anyone", "child", "youth") and free_until is not None:
            first = free_until + 1
        elif price.person == "adult":
            if young_until is not None and young_until >= GROWN_UP_FROM * MONTHS:
                first = young_until + 1
            if senior_from is not None:
                last = senior_from - 1
        if first is None and last is None:
            yield price
        else:
            yield replace(price, ages=AgeBand(first or 0, last))
