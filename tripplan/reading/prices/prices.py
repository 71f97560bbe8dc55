"""Reading what entry costs from a text as venues write it: who pays how much, with the words it came from."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import pairwise
from operator import itemgetter

from tripplan.reading.prices.conditions import conditions_of, group_size, group_sizes
from tripplan.reading.prices.facts import (
    AMOUNT,
    ENTRY_WORD,
    PRICE,
    WHO,
    EntryPrice,
    FamilyPrice,
    PassPrice,
    PriceOff,
    PricesRead,
)
from tripplan.reading.prices.reductions import (
    MOST_PRICES,
    NO_ENTRY_PRICE,
    parted_by_percent,
    percentages,
    with_ages_that_follow,
    with_reduced_prices,
)
from tripplan.reading.prices.statements import has_price, statements_of, with_bare_prices, with_parties
from tripplan.reading.prices.tokens import Token, tokens
from tripplan.reading.prices.visitors import (
    Visitor,
    is_each,
    kind_by_age,
    kinds_of,
    means_anyone,
    visitors_by_price,
    visitors_in,
)
from tripplan.reading.vocabulary import NUMBER, Person, number_from
from tripplan.values.ages import AgeBand

_MOST_KINDS = 12
"""A price for more kinds of visitors at once is none."""
_GAP = r"[^.!?\n]{0,80}"
_LEADER = re.compile(
    rf"\b(?:for )?(?:every|each|je) (?P<n>{NUMBER}) (?:paying )?(?:students?|children|kids|pupils|people|persons|schüler|kinder)\b"
    rf"{_GAP}\b(?:free|frei)\b|\bone (?:free )?(?:adult|teacher|chaperone|leader){_GAP} (?:per|for every) (?P<m>{NUMBER})\b{_GAP}\bfree\b"
    rf"|\b(?:one|1) free (?:adult|teacher|chaperone|leader){_GAP} (?:per|for every|for each|with every) (?P<l>{NUMBER})\b",
    re.IGNORECASE,
)
_DONATION = re.compile(
    r"\b(?:suggested|recommended|voluntary|requested|appreciated|welcome|accepted|optional|freiwillig\w*|erbeten|willkommen)\b.{0,40}\b(?:donations?|spenden?)\b"
    r"|\b(?:donations?|spenden?)\b.{0,40}\b(?:suggested|recommended|voluntary|requested|appreciated|welcome|accepted|optional|erbeten|willkommen)\b"
    r"|\b(?:by|auf|gegen) (?:donation|spende)|suggested admission|pay what you (?:wish|can|like)|pay-what-you-(?:wish|can)",
    re.IGNORECASE,
)
"""Entry that nobody must pay for."""
_GIFT_AID = re.compile(r"gift ?aid|donations?|spenden?", re.IGNORECASE)
_DEAL = re.compile(
    r"\bbuy (?:one|1|two|2)\b|\b(?:two|2) for (?:one|1)\b|\bbogo\b|\bget (?:one|1)\b", re.IGNORECASE
)
_CHARGE_BEFORE = re.compile(r"(?:\bplus|\bzzgl\.?|(?<!\d)\+|\badd)\s*(?:a |an )?$", re.IGNORECASE)
_CHARGE_AFTER = re.compile(
    r"\s*(?:per \w+ )?(?:booking|service|processing|handling|transaction|convenience|reservation|online|ticketing|ticket|credit card|facility)"
    r" (?:fees?|charges?)\b|\s*(?:surcharge|buchungsgebühr|gebühr|extra\b|zzgl\b|plus (?:admission|entry)|in addition|on top of)",
    re.IGNORECASE,
)
"""An amount on top of the ticket."""
_NOT_FOR_A_FAMILY = re.compile(
    r"\b(?:single[- ]occupan\w*|(?:vehicles?|cars?) with (?:one|1|a single) person|driver only|motor ?coach\w*|bus(?:es)?|commercial|trailers?|boat launch|dogs?|pets?|hund\w*|birthdays?|geburtstag\w*)\b",
    re.IGNORECASE,
)
"""Whose price is no way in for this family, or one on a certain day only."""
_SAME_VISITORS = re.compile(
    r"online|advance|ahead|gate|door|walk|day of|peak|season|saison|saver|vorverkauf|tageskasse|box office|counter",
    re.IGNORECASE,
)
"""What makes a second price of the visitors named before the first."""
_A_PASS = re.compile(r"\b(?<!day )pass(?:es)?\b|\bmemberships?\b", re.IGNORECASE)
_A_YEAR = re.compile(r"\s*(?:/|per|a|each|pro|im)\s?(?:yr|year|annum|jahr)\b", re.IGNORECASE)
_AT_LEAST = re.compile(r"\b(?:from|start(?:ing)? at|ab|as low as)\s*$", re.IGNORECASE)
_PASSES_BELOW = re.compile(
    r"\b(?:memberships?|(?:annual|season|yearly) (?:pass(?:es)?|tickets?)|jahreskarten?|saisonkarten?)\b",
    re.IGNORECASE,
)
_SOMETHING_ELSE_BELOW = re.compile(
    r"\b(?:rentals?|caf[eé]|restaurant|menu|food|snacks?|camps?|birthdays?|part(?:y|ies)|gift shop|workshops?|class(?:es)?|add[- ]?ons?"
    r"|extras?|lockers?|merchandise|verleih|speisekarte|zusatz\w*|tours?|führung\w*)\b",
    re.IGNORECASE,
)
_LONGEST_HEADING = 6
"""A line of more words is no heading."""


@dataclass(frozen=True)
class _Named:
    """A kind of visitor that a line names without a price, as the head of a table does."""

    person: Person
    ages: AgeBand | None
    conditions: tuple[str, ...]


def read_prices(text: str) -> PricesRead:
    """Read all prices of a text.

    Args:
        text: as plain_text leaves it; lines and sentences are read one by one.

    Returns:
        What was read, and what was not; nothing is guessed but the age where one price ends and the next begins.
    """
    found: list[PricesRead] = []
    group: int | None = None
    section = ""
    met = 0
    named: list[_Named] = []
    not_understood: list[str] = []
    in_part: list[str] = []
    passed_over: list[str] = []
    cut = with_parties(text, with_bare_prices(list(tokens(text))))
    for statement in statements_of(text, cut):
        words = text[statement[0].start : statement[-1].end].strip(" |;\n")
        prices = [token for token in statement if token.kind in PRICE]
        groups = [token for token in statement if token.kind == "group"]
        head = _named_without_price(text, statement)
        named = head or named
        if not prices and not any(token.kind == "percent" for token in statement):
            if len(words.split()) <= _LONGEST_HEADING and not any(t.kind == "days" for t in statement):
                section = _section(words)
                group = None
            if groups:
                group = int(str(groups[0].facts["of"]))
            elif not any(kind.ages for kind in head) or any(token.kind == "days" for token in statement):
                passed_over.append(words)  # the ages in the head of a table are no hours
            continue
        met += sum(token.kind in AMOUNT for token in statement)
        read: PricesRead | None = None
        if met <= MOST_PRICES and section != "else":
            named, row = _head(text, statement) or (named, statement)
            read = _row(text, row, words, named) or _read_statement(text, statement, words, group)
            if read is not None and (section == "passes" or _opens_with_pass(statement)):
                read = _as_passes(read)
        if read is None:
            not_understood.append(words)
        else:
            found.append(read)
            not_understood += read.not_understood
            if not read.not_understood and _has_more(text, statement):
                in_part.append(words)
    donation = next((words for words in not_understood if _DONATION.search(words)), None)
    entered = [price for read in found for price in read.entry]
    if donation and not any(price.price or price.person == "anyone" for price in entered):
        found.append(PricesRead((EntryPrice("anyone", None, Decimal(0), donation),)))
    entry, off = with_reduced_prices(
        list(dict.fromkeys(price for read in found for price in read.entry)),
        [off for read in found for off in read.off],
    )
    return PricesRead(
        tuple(with_ages_that_follow(entry)),
        tuple(family for read in found for family in read.families),
        tuple(one for read in found for one in read.passes),
        off,
        next((read.parking for read in reversed(found) if read.parking is not None), None),
        next((read.leader_free_per for read in reversed(found) if read.leader_free_per), None),
        frozenset(str(token.facts["unit"]) for token in cut if token.kind == "money"),
        tuple(dict.fromkeys(not_understood)),
        tuple(dict.fromkeys(in_part)),
        tuple(passed_over),
    )


def _section(heading: str) -> str:
    """What a heading says of the lines below it: passes, something else beside entry, or nothing."""
    if _PASSES_BELOW.search(heading):
        return "passes"
    return "else" if _SOMETHING_ELSE_BELOW.search(heading) and not ENTRY_WORD.search(heading) else ""


def _opens_with_pass(statement: Sequence[Token]) -> bool:
    """Whether it begins as 'Annual passes: individual $65, family $150'."""
    opening, colon = statement[0], statement[1].text if len(statement) > 1 else ""
    return opening.kind == "pass" and opening.facts["pass"] == "annual" and colon == ":"


def _as_passes(read: PricesRead) -> PricesRead:
    """Prices that a heading makes those of annual passes."""
    single = tuple(PassPrice(price.price, price.words, people=1) for price in read.entry if price.price)
    families = tuple(
        PassPrice(
            family.price,
            family.words,
            people=family.people or (family.adults or 0) + (family.children or 0) or None,
        )
        for family in read.families
    )
    passes = tuple(dict.fromkeys((*read.passes, *single, *families)))
    return replace(read, entry=(), families=(), passes=passes)


def _has_more(text: str, statement: Sequence[Token]) -> bool:
    """Whether visitors or small numbers stand in a statement that no price of it has taken up."""
    per_car = any(token.kind in ("parking", "pass") for token in statement)
    lost = any(
        not (is_each(who) or means_anyone(who) or (per_car and who.person == "car"))
        for who in _without_price(text, statement)
    )
    return lost or any(
        token.kind == "word" and token.text.isdigit() and len(token.text) <= 2 for token in statement
    )


def _without_price(text: str, statement: Sequence[Token]) -> list[Visitor]:
    """The visitors that a statement names beside those whom a price of it is for."""
    amounts = [token for token in statement if token.kind in AMOUNT]
    whom = visitors_in(text, statement)
    priced = {who.token.start for mine in visitors_by_price(text, statement, amounts, whom) for who in mine}
    return [who for who in whom if who.token.start not in priced]


def _named_without_price(text: str, statement: Sequence[Token]) -> list[_Named]:
    """The kinds that a statement names before it comes to those that have a price in it."""
    prices = [token for token in statement if token.kind in AMOUNT]
    if len(prices) > MOST_PRICES or not any(
        token.kind in ("person", "ages", "condition") for token in statement
    ):
        return []
    named: list[tuple[int, _Named]] = [
        (token.start, _Named("child", None, (token.text,)))
        for token in statement
        if token.kind == "condition" and _ONE_CHILD.fullmatch(token.text)
    ]
    for who in _without_price(text, statement):
        if who.token.kind in ("person", "ages"):
            only = (who.token.text,) if _ONE_CHILD.fullmatch(who.token.text) else ()
            named.append((who.token.start, _Named(kind_by_age(who.person, who.ages), who.ages, only)))
    return [one for _, one in sorted(named, key=itemgetter(0))]


def _head(text: str, statement: list[Token]) -> tuple[list[_Named], list[Token]] | None:
    """The kinds that a statement names before days with prices side by side, and the rest of it."""
    first = next((token for token in statement if token.kind in (*AMOUNT, "days")), None)
    if first is None or first.kind != "days":
        return None
    before = [token for token in statement if token.end <= first.start]
    named = _named_without_price(text, before) if before else []
    return (named, statement[len(before) :]) if len(named) > 1 else None


_ONE_CHILD = re.compile(r"(?:first|second|additional|each additional)(?: child)?|siblings?", re.IGNORECASE)


def _row(text: str, statement: Sequence[Token], words: str, named: Sequence[_Named]) -> PricesRead | None:
    """Prices side by side, one for each kind that a line before has named: 'weekdays $5 / $3, weekends $7 / $4'."""
    prices = [token for token in statement if token.kind in PRICE]
    if not prices or len(named) < 2 or len(prices) % len(named) or any(t.kind in WHO for t in statement):
        return None
    rows = [prices[at : at + len(named)] for at in range(0, len(prices), len(named))]
    if any(text[a.end : b.start].strip(" /") for row in rows for a, b in pairwise(row)):
        return None
    entry: list[EntryPrice] = []
    since = statement[0].start
    for row in rows:
        days = ", ".join(t.text for t in statement if t.kind == "days" and since <= t.start < row[0].start)
        for price, kind in zip(row, named, strict=True):
            amount = price.facts.get("amount", Decimal(0))
            assert isinstance(amount, Decimal)
            entry.append(
                EntryPrice(kind.person, kind.ages, amount, words, conditions=kind.conditions, days=days)
            )
        since = row[-1].end
    return PricesRead(tuple(entry))


def _read_statement(
    text: str, statement: Sequence[Token], words: str, group: int | None
) -> PricesRead | None:
    parts = parted_by_percent(statement)
    if parts is not None:
        priced, off = parts
        read = (_read_statement(text, priced, words, group) if has_price(priced) else None) or PricesRead()
        taken = percentages(text, off) if off else None
        if taken is None:
            return replace(read, not_understood=(*read.not_understood, words))
        return replace(read, off=(*read.off, *taken))
    prices = [token for token in statement if token.kind in PRICE]
    conditions = [token for token in statement if token.kind in ("condition", "days", "group")]
    whom = visitors_in(text, statement)
    leader = _LEADER.search(words)
    if leader:
        others = any(token.kind == "money" for token in prices)
        per = next(number for number in leader.groups() if number)
        return PricesRead(leader_free_per=number_from(per), not_understood=(words,) if others else ())
    one_child = sum(c.kind == "condition" and _ONE_CHILD.fullmatch(c.text) is not None for c in conditions)
    if (
        _DEAL.search(words)
        or (one_child and len(prices) > 1)
        or (_DONATION.search(words) and any(token.kind == "money" for token in prices))
    ):
        return None
    if NO_ENTRY_PRICE.search(_GIFT_AID.sub("", words)):
        return None
    assigned, groups = visitors_by_price(text, statement, prices, whom), group_sizes(statement)
    beside_each = conditions_of(text, statement, prices, conditions)
    read = PricesRead()
    for number, price in enumerate(prices):
        mine = assigned[number]
        begins = min([price.start, *(who.token.start for who in mine)])
        ends = max([price.end, *(who.token.end for who in mine)])
        until = min(
            [token.start for other in range(number + 1, len(prices))
             for token in (prices[other], *(who.token for who in assigned[other]))],
            default=statement[-1].end,
        )  # fmt: skip
        since = max(
            [
                token.end
                for other in range(number)
                for token in (prices[other], *(w.token for w in assigned[other]))
            ],
            default=statement[0].start,
        )
        beside = beside_each[number]
        again = any(c.kind == "days" or _SAME_VISITORS.search(c.text) for c in beside)
        if not mine and number and again and price.kind == "money":
            mine = assigned[number] = assigned[number - 1]  # adults $15 in advance, $18 at the gate
        said = tuple(c.text for c in beside if c.kind == "condition")
        days = ", ".join(c.text for c in beside if c.kind == "days")
        size = group_size(groups, prices, number)
        came_from = text[begins:ends].strip() if mine else words
        amount = price.facts.get("amount", Decimal(0))
        assert isinstance(amount, Decimal)
        inside = [token for token in statement if since <= token.start < max(until, ends)]
        before, after = text[max(0, price.start - 20) : price.start], text[price.end : price.end + 40]
        if (
            any(t.kind == "height" for t in inside)
            or (said and _GIFT_AID.search(said[-1]))
            or _NOT_FOR_A_FAMILY.search(text[since:until])
            or (read.parking is not None and text[: min(begins, price.start)].rstrip().endswith("("))
            or (price.kind == "money" and (_CHARGE_BEFORE.search(before) or _CHARGE_AFTER.match(after)))
        ):
            read = replace(read, not_understood=(*read.not_understood, text[since:until].strip(" ,;|\n")))
            continue
        if price.kind == "money" and any(token.kind == "discount" for token in inside):
            offs = (PriceOff(words, *kind, amount, None, said, days) for kind in kinds_of(mine))
            read = replace(read, off=(*read.off, *offs))
            continue
        cars = [who for who in mine if who.person == "car" and who.token.kind == "person"]
        mine = cars or mine  # the people of 'per vehicle (one to eight people)' are in it
        kinds = {who.token.kind for who in mine}
        if "parking" in kinds:
            if not (read.parking is not None and text[:begins].rstrip().endswith("(")):
                read = replace(read, parking=amount)
            continue
        if "pass" in kinds:
            pass_token = next(who.token for who in mine if who.token.kind == "pass")
            per_person = any(t.kind == "link" for t in inside) and any(
                t.kind == "person" and t.facts["person"] == "anyone" for t in inside
            )
            read = replace(
                read,
                passes=(
                    *read.passes,
                    PassPrice(
                        amount,
                        came_from,
                        pass_token.facts["pass"] == "annual",
                        1 if per_person else None,
                        "vehicle" in pass_token.text or "car" in pass_token.text,
                    ),
                ),
            )
            continue
        if _A_YEAR.match(after) or (mine and _A_PASS.search(text[mine[-1].token.end : price.start])):
            one_year = PassPrice(amount, came_from, people=None if "family" in kinds else 1)
            read = replace(read, passes=(*read.passes, one_year))
            continue
        if "family" in kinds:
            mine_family = next(who.token for who in mine if who.token.kind == "family")
            counts = {k: v for k, v in mine_family.facts.items() if isinstance(v, int)}
            if counts or len(mine) == 1:
                read = replace(read, families=(*read.families, FamilyPrice(amount, came_from, **counts)))
                continue
            mine = [who for who in mine if who.token.kind != "family"]
        for_entry = ENTRY_WORD.match(text[price.end :].lstrip()) or (
            ENTRY_WORD.search(text[since:until] if number else words)
            and not any(t.kind == "link" and t.start > price.end for t in inside)
        )
        free_on_days = days and (
            price.kind == "free" or any(c.kind == "days" and 0 <= price.start - c.end < 4 for c in beside)
        )
        if len(mine) > _MOST_KINDS or not (
            mine or size or free_on_days or for_entry or (said and price.kind == "money" and number)
        ):
            unread = text[since:until].strip(" ,;|\n") if len(prices) > 1 else words
            read = replace(read, not_understood=(*read.not_understood, unread))
            continue
        highest = price.facts.get("highest")
        for person, ages in kinds_of(mine):
            read = replace(
                read,
                entry=(
                    *read.entry,
                    EntryPrice(
                        person,
                        ages,
                        amount,
                        came_from,
                        highest if isinstance(highest, Decimal) else None,
                        said,
                        days,
                        size or group,
                        bool(price.facts.get("about")) or bool(_AT_LEAST.search(before)),
                    ),
                ),
            )
    return read
