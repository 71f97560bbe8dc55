"""Whom a price in a sentence is for: the visitors it names, and to which amount each belongs."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from tripplan.reading.prices.facts import AMOUNT, ENTRY_WORD, PRICE, WHO
from tripplan.reading.prices.tokens import Token
from tripplan.reading.vocabulary import Person
from tripplan.values.ages import MONTHS, AgeBand

_EACH = ("each", "pp", "per head", "p.p.", "p. p.")
GROWN_UP_FROM = 11
_SENIOR_FROM = 55


@dataclass(frozen=True)
class Visitor:
    """Whom a price is for, before it is known which price."""

    token: Token
    person: Person | None
    ages: AgeBand | None
    after_break: bool
    linked: bool


def visitors_in(text: str, statement: Sequence[Token]) -> list[Visitor]:
    """The visitors a statement names, each with the ages beside it."""
    whom: list[Visitor] = []
    after_break = linked = False
    previous: Token | None = None
    for place, (token, before) in enumerate(zip(statement, (None, *statement), strict=False)):
        if token.kind == "person" and _heads_others(statement, place):
            continue
        if before is not None and (
            (token.kind == "person" and _counts_at_most(text, before))
            or (token.kind == "family" and _IN_A.search(text[max(0, token.start - 10) : token.start]))
        ):
            continue
        if token.kind == "break":
            after_break, linked = True, False
        elif token.kind == "link":
            linked = True
        elif token.kind in WHO:
            person = token.facts.get("person")
            ages = token.facts.get("band")
            beside = previous is not None and previous.kind in WHO
            last = whom[-1] if whom and beside and not after_break else None
            if last and isinstance(ages, AgeBand) and last.ages is None and last.token.kind == "person":
                whom[-1] = replace(last, ages=ages, token=last.token._replace(end=token.end))
                if len(whom) > 1 and not whom[-2].ages and _are_one_group(text, whom[-2], last):
                    whom[-2] = replace(whom[-2], ages=ages)
            elif last and person and last.token.kind == "ages" and last.person is None:
                whom[-1] = replace(last, person=person)  # type: ignore[arg-type]
            elif last and person == last.person and person is not None:
                pass
            else:
                whom.append(
                    Visitor(token, person, ages if isinstance(ages, AgeBand) else None, after_break, linked)  # type: ignore[arg-type]
                )
            after_break = linked = False
        elif token.kind in PRICE:
            after_break = linked = False
        if not (token.kind == "word" and (token.text in "(:-*[,of" or ENTRY_WORD.fullmatch(token.text))):
            previous = token
    return whom


def _are_one_group(text: str, one: Visitor, other: Visitor) -> bool:
    """Whether ages behind the second are those of both, as in 'children/youths (6-17)'."""
    between = text[one.token.end : other.token.start]
    return between == "/" or (
        between.strip().casefold() in ("and", "und", "&") and {one.person, other.person} == {"child", "youth"}
    )


def _heads_others(statement: Sequence[Token], place: int) -> bool:
    """Whether 'General admission:' is only the title of those named after it, before any price."""
    if statement[place].facts.get("person") != "anyone" or not statement[place + 1 : place + 2]:
        return False
    if statement[place + 1].text not in (":", "-"):
        return False
    until = next((at for at in range(place, len(statement)) if statement[at].kind in AMOUNT), place)
    return any(t.kind in ("person", "ages", "family") for t in statement[place + 1 : until])


_IN_A = re.compile(r"\bin (?:a|the|one) $", re.IGNORECASE)


def _counts_at_most(text: str, before: Token) -> bool:
    """Whether a visitor is only counted, as in 'per car (up to 4 adults)'."""
    return bool(
        re.search(
            r"\b(?:up to|max\\.?|maximum|bis zu)\s+\S+\s*$", text[max(0, before.start - 12) : before.end]
        )
    )


def visitors_by_price(
    text: str, statement: Sequence[Token], prices: Sequence[Token], whom: Sequence[Visitor]
) -> list[list[Visitor]]:
    """For each price those it is for: named after it with `for` or `per`, or else before it."""
    assigned: list[list[Visitor]] = [[] for _ in prices]
    before = [who for who in whom if prices and who.token.start < prices[0].start]
    pairs = [t for a, b in pairwise(prices) for t in whom if a.end <= t.token.start < b.start]
    if len(prices) > 1 and len(before) == len(prices) and not pairs:
        return [[who] for who in before]
    pending = _list_before(text, before)
    for number, price in enumerate(prices):
        following = prices[number + 1] if number + 1 < len(prices) else None
        after = [
            who
            for who in whom
            if who.token.start >= price.end and (following is None or who.token.start < following.start)
        ]
        if pending and after and _are_ages_in_brackets(text, price, after[0]) and not pending[-1].ages:
            pending[-1] = replace(pending[-1], ages=after.pop(0).ages)
        link = next((t for t in statement if t.kind == "link" and t.start >= price.end), None)
        linked = bool(after) and link is not None and link.end <= after[0].token.start and not any(
            t.kind == "break" for t in statement if price.end <= t.start < link.start
        )  # fmt: skip
        adjacent = bool(after) and not text[price.end : after[0].token.start].strip(" (")
        if adjacent and following is not None and "(" in text[price.end : after[0].token.start]:
            adjacent = ")" in text[after[0].token.end : following.start]  # not as in '$4 (members $2)'
        counted = any(who.token.kind in ("pass", "parking", "family") for who in pending)
        if (
            pending
            and linked
            and all(means_anyone(who) or (counted and who.person == "car") for who in after)
        ):
            linked = False
        if linked:
            theirs: list[Visitor] = []
            if (
                following is not None
                and not is_linked(statement, following)
                and len(after) > 1
                and after[-1].after_break
            ):
                theirs = [after[-1]] if not after[-1].linked else []
            assigned[number] = [who for who in after if who not in theirs]
            pending = theirs
        elif pending:
            assigned[number] = pending
            pending = _list_before(text, [who for who in after if not (is_each(who) and adjacent)])
        elif adjacent and (
            not before or following is None or is_linked(statement, following) or len(after) > 1
        ):
            list_goes_on = following is None or (
                bool(after[-1].token.end < following.start) and _is_adjacent(text, whom, following)
            )
            assigned[number] = [after[0]]
            pending = after[1:]
            while (
                pending
                and list_goes_on
                and _IN_A_LIST.fullmatch(text[assigned[number][-1].token.end : pending[0].token.start])
            ):
                assigned[number].append(pending.pop(0))
        else:
            pending = _list_before(text, after)
    for number, mine in enumerate(assigned):
        if number and len(mine) == 1 and is_each(mine[0]):
            assigned[number] = [
                replace(who, token=mine[0].token)
                for who in assigned[number - 1]
                if who.token.kind in ("person", "ages")
            ] or mine
    return assigned


def _are_ages_in_brackets(text: str, price: Token, who: Visitor) -> bool:
    """Whether it is the (1-17) of 'Child $9 (1-17)'."""
    return (
        who.token.kind == "ages"
        and who.person is None
        and text[price.end : who.token.start].strip() == "("
        and text[who.token.end : who.token.end + 1] == ")"
    )


def _is_adjacent(text: str, whom: Sequence[Visitor], price: Token) -> bool:
    """Whether a visitor is named right behind a price."""
    return any(
        who.token.start >= price.end and not text[price.end : who.token.start].strip(" (") for who in whom
    )


_IN_A_LIST = re.compile(
    r"[\s,;:|&/()+.*-]*(?:(?:and|und|or|oder|bzw\.|for|für|per|pro|all|the|with id|mit ausweis|with valid id)\b[\s,&/()|]*)*",
    re.IGNORECASE,
)


def _list_before(text: str, whom: Sequence[Visitor]) -> list[Visitor]:
    """The visitors of one list that ends right before a price: words between two of them end the list."""
    kept: list[Visitor] = []
    for who in reversed(whom):
        if kept and not _IN_A_LIST.fullmatch(text[who.token.end : kept[0].token.start]):
            break
        kept.insert(0, who)
    return kept


def is_linked(statement: Sequence[Token], price: Token) -> bool:
    """Whether 'for' or 'per' follows a price before anybody is named."""
    after = [t for t in statement if t.start >= price.end]
    for token in after:
        if token.kind == "link":
            return True
        if token.kind in ("break", *PRICE, *WHO):
            return False
    return False


def means_anyone(who: Visitor) -> bool:
    """Whether it says person or people, of any age."""
    return who.token.kind == "person" and who.person == "anyone" and who.ages is None


def is_each(who: Visitor) -> bool:
    """Whether it says only that a price is for one."""
    return who.token.text.casefold() in _EACH


def kinds_of(whom: Sequence[Visitor]) -> Iterator[tuple[Person, AgeBand | None]]:
    """Kinds of visitors and their ages; grown-ups and children at one price are anyone."""
    named = [who for who in whom if not is_each(who)] or list(whom)
    people = {who.person for who in named if who.ages is None}
    if not named or {"adult", "child"} <= people or {"student", "child"} <= people:
        yield "anyone", None
        return
    for who in named:
        yield kind_by_age(who.person, who.ages), who.ages


def kind_by_age(person: Person | None, ages: AgeBand | None) -> Person:
    """The kind of visitor that ages without a word mean."""
    if person in (None, "child") and ages is not None and ages.last is not None and ages.last < MONTHS:
        return "infant"
    if person is not None or ages is None:
        return person or "anyone"
    if ages.last is not None and ages.last < 18 * MONTHS:
        return "child"
    return "senior" if ages.first >= _SENIOR_FROM * MONTHS else "anyone"
