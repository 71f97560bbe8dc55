"""Reading what entry costs from a text as venues write it: who pays how much, with the words it came from."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import ROUND_HALF_UP, Decimal
from itertools import pairwise
from operator import itemgetter

from tripplan.reading.hours import ONE_MONTH as MONTH
from tripplan.reading.price_tokens import Token, amount_from, tokens
from tripplan.reading.vocabulary import NUMBER, Person, number_from
from tripplan.values.ages import MONTHS, AgeBand


@dataclass(frozen=True)
class EntryPrice:
    """What one kind of visitor pays.

    Attributes:
        person: the kind of visitor.
        ages: as written, or as follows from the other prices; None where nobody says it.
        price: for each; 0 is free.
        highest: the upper end where a span of prices is given.
        conditions: what must hold beside, word for word.
        days: the days it is limited to, word for word; may be empty.
        group_of: sold only to so many together [people]; None for no minimum.
        words: where it was read.
        about: whether the text says that it is only about so much.
    """

    person: Person
    ages: AgeBand | None
    price: Decimal
    words: str
    highest: Decimal | None = None
    conditions: tuple[str, ...] = ()
    days: str = ""
    group_of: int | None = None
    about: bool = False

    @property
    def plain(self) -> bool:
        """Whether anybody of that kind may have it on any day."""
        return not (self.conditions or self.days or self.group_of)


@dataclass(frozen=True)
class FamilyPrice:
    """One price for a family; the counts are None where the text does not say them [people]."""

    price: Decimal
    words: str
    adults: int | None = None
    children: int | None = None
    people: int | None = None


@dataclass(frozen=True)
class PassPrice:
    """A pass for a year or a weekend; `people` is None where the text does not say for whom."""

    price: Decimal
    words: str
    yearly: bool = True
    people: int | None = None
    per_car: bool = False


@dataclass(frozen=True)
class PriceOff:
    """Something taken off: an amount or a percentage, for whom, and what must hold, word for word."""

    words: str
    person: Person = "anyone"
    ages: AgeBand | None = None
    amount: Decimal | None = None
    percent: int | None = None
    conditions: tuple[str, ...] = ()
    days: str = ""

    def taken_from(self, price: Decimal) -> Decimal:
        """What is left of a price; to the cent, halves up."""
        if self.percent is None:
            return price - (self.amount or 0)
        return (price * (100 - self.percent) / 100).quantize(Decimal("0.01"), ROUND_HALF_UP)


@dataclass(frozen=True)
class PricesRead:
    """All that was read of prices.

    Attributes:
        entry: who pays how much.
        families: prices for a family at once.
        passes: annual and weekend passes.
        off: what is taken off.
        parking: what leaving the car costs; None where it is not said.
        leader_free_per: one leader goes free for so many who pay [people]; None where it is not said.
        signs: the money signs and words met, in small letters.
        not_understood: statements with a price in them that were not read, word for word.
        in_part: statements of which something was read and something was not, word for word.
        passed_over: other statements, word for word.
    """

    entry: tuple[EntryPrice, ...] = ()
    families: tuple[FamilyPrice, ...] = ()
    passes: tuple[PassPrice, ...] = ()
    off: tuple[PriceOff, ...] = ()
    parking: Decimal | None = None
    leader_free_per: int | None = None
    signs: frozenset[str] = frozenset()
    not_understood: tuple[str, ...] = ()
    in_part: tuple[str, ...] = ()
    passed_over: tuple[str, ...] = ()


_PRICE = ("money", "free")
_AMOUNT = (*_PRICE, "percent")
_WHO = ("person", "ages", "family", "pass", "parking")
_ENTRY_WORD = re.compile(
    r"\b(?:admission|entry|entrance|tickets?|fees?|prices?|costs?|fares?|eintritt\w*|preis\w*|kosten|general)\b",
    re.IGNORECASE,
)
_NO_ENTRY_PRICE = re.compile(
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
    r" (?:fees?|charges?)\b|\s*(?:surcharge|buchungsgebühr|gebühr|extra\b)",
    re.IGNORECASE,
)
"""An amount on top of the ticket."""
_A_YEAR = re.compile(r"\s*(?:/|per|a|each|pro|im)\s?(?:yr|year|annum|jahr)\b", re.IGNORECASE)
_AT_LEAST = re.compile(r"\b(?:from|starting at|ab|as low as)\s*$", re.IGNORECASE)
_ALONE_FREE = re.compile(
    r"\bfree (?:admission|entry)\b|\b(?:admission|entry|entrance) (?:is )?free\b|eintritt(?: ist)? frei",
    re.IGNORECASE,
)
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
_EACH = ("each", "pp", "per head", "p.p.", "p. p.")
_MOST_PRICES = 60
"""As many as a card takes; of a text with more, the rest is left word for word."""
_GROWN_UP_FROM = 11
_SENIOR_FROM = 55


@dataclass(frozen=True)
class _Who:
    """Whom a price is for, before it is known which price."""

    token: Token
    person: Person | None
    ages: AgeBand | None
    after_break: bool
    linked: bool


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
    cut = _with_parties(text, _priced(list(tokens(text))))
    for statement in _statements(text, cut):
        words = text[statement[0].start : statement[-1].end].strip(" |;\n")
        prices = [token for token in statement if token.kind in _PRICE]
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
        met += sum(token.kind in _AMOUNT for token in statement)
        read: PricesRead | None = None
        if met <= _MOST_PRICES and section != "else":
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
    if donation and not any(price.price for read in found for price in (*read.entry, *read.families)):
        found.append(PricesRead((EntryPrice("anyone", None, Decimal(0), donation),)))
    entry, off = _with_reduced_prices(
        list(dict.fromkeys(price for read in found for price in read.entry)),
        [off for read in found for off in read.off],
    )
    return PricesRead(
        tuple(_with_ages_that_follow(entry)),
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
    return "else" if _SOMETHING_ELSE_BELOW.search(heading) and not _ENTRY_WORD.search(heading) else ""


def _opens_with_pass(statement: Sequence[Token]) -> bool:
    """Whether it begins as 'Annual passes: individual $65, family $150'."""
    kinds = [token.kind for token in statement[:2]]
    return (
        kinds[:1] == ["pass"]
        and statement[0].facts["pass"] == "annual"
        and statement[1:2] != []
        and statement[1].text == ":"
    )


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
    prices = [token for token in statement if token.kind in _AMOUNT]
    whom = _whom(text, statement)
    assigned = {who.token.start for mine in _assigned(text, statement, prices, whom) for who in mine}
    per_car = any(token.kind in ("parking", "pass") for token in statement)
    whom = [who for who in whom if not (per_car and who.person == "car")]
    lost = any(
        who.token.start not in assigned and not _is_each(who) and not _means_anyone(who) for who in whom
    )
    return lost or any(
        token.kind == "word" and token.text.isdigit() and len(token.text) <= 2 for token in statement
    )


def _with_parties(text: str, cut: Sequence[Token]) -> list[Token]:
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


_NEAR = 8
"""So many pieces back a family ticket is looked for, whose people are then named."""


def _counted(family: Token) -> bool:
    return any(isinstance(count, int) for count in family.facts.values())


def _statements(text: str, cut: Sequence[Token]) -> Iterator[list[Token]]:
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
            token.kind in _PRICE and statement and not _has_price(statement) and _names_something(statement)
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


def _priced(cut: list[Token]) -> list[Token]:
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
    follows = text[stop.end : stop.end + 20].lstrip(" ")
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


def _has_price(statement: Sequence[Token]) -> bool:
    return any(token.kind in _PRICE for token in statement)


def _names_something(statement: Sequence[Token]) -> bool:
    return any(token.kind in _WHO or _ENTRY_WORD.fullmatch(token.text) for token in statement)


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
    if any(_has_price(list(tokens(cell))) for cell in head):
        return []
    pairs: list[list[Token]] = []
    at = 0
    for row in rows[1:]:
        cells = row[-len(head) :]
        if len(cells) != len(head) or not all(_has_price(list(tokens(cell))) for cell in cells):
            return []
        for name, price in zip(head, cells, strict=True):
            pair: list[Token] = []
            for cell in (name, price):
                at = text.index(cell, at if cell is price else 0)
                pair += [t._replace(start=t.start + at, end=t.end + at) for t in tokens(cell)]
            pairs.append(pair)
    return pairs


def _whom(text: str, statement: Sequence[Token]) -> list[_Who]:
    """The visitors a statement names, each with the ages beside it."""
    whom: list[_Who] = []
    after_break = linked = False
    previous: Token | None = None
    for token, before in zip(statement, (None, *statement), strict=False):
        if token.kind == "person" and _heads_others(statement, token):
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
        elif token.kind in _WHO:
            person = token.facts.get("person")
            ages = token.facts.get("band")
            beside = previous is not None and previous.kind in _WHO
            last = whom[-1] if whom and beside and not after_break else None
            if last and isinstance(ages, AgeBand) and last.ages is None and last.token.kind == "person":
                whom[-1] = replace(last, ages=ages, token=last.token._replace(end=token.end))
                if len(whom) > 1 and text[whom[-2].token.end : last.token.start] == "/" and not whom[-2].ages:
                    whom[-2] = replace(whom[-2], ages=ages)  # children/youths (6-17)
            elif last and person and last.token.kind == "ages" and last.person is None:
                whom[-1] = replace(last, person=person)  # type: ignore[arg-type]
            elif last and person == last.person and person is not None:
                pass
            else:
                whom.append(
                    _Who(token, person, ages if isinstance(ages, AgeBand) else None, after_break, linked)  # type: ignore[arg-type]
                )
            after_break = linked = False
        elif token.kind in _PRICE:
            after_break = linked = False
        if not (token.kind == "word" and (token.text in "(:-*[,of" or _ENTRY_WORD.fullmatch(token.text))):
            previous = token
    return whom


def _heads_others(statement: Sequence[Token], token: Token) -> bool:
    """Whether 'General admission:' is only the title of those named after it, before any price."""
    behind = [t for t in statement if t.start >= token.end]
    if token.facts.get("person") != "anyone" or not behind or behind[0].text not in (":", "-"):
        return False
    until = next((at for at, t in enumerate(behind) if t.kind in _AMOUNT), 0)
    return any(t.kind in ("person", "ages", "family") for t in behind[:until])


def _named_without_price(text: str, statement: Sequence[Token]) -> list[_Named]:
    """The kinds that a statement names before it comes to those that have a price in it."""
    prices = [token for token in statement if token.kind in _AMOUNT]
    if len(prices) > _MOST_PRICES or not any(
        token.kind in ("person", "ages", "condition") for token in statement
    ):
        return []
    whom = _whom(text, statement)
    priced = {who.token.start for mine in _assigned(text, statement, prices, whom) for who in mine}
    named: list[tuple[int, _Named]] = [
        (token.start, _Named("child", None, (token.text,)))
        for token in statement
        if token.kind == "condition" and _ONE_CHILD.fullmatch(token.text)
    ]
    for who in whom:
        if who.token.start not in priced and who.token.kind in ("person", "ages"):
            only = (who.token.text,) if _ONE_CHILD.fullmatch(who.token.text) else ()
            named.append((who.token.start, _Named(_kind_by_age(who.person, who.ages), who.ages, only)))
    return [one for _, one in sorted(named, key=itemgetter(0))]


def _head(text: str, statement: list[Token]) -> tuple[list[_Named], list[Token]] | None:
    """The kinds that a statement names before days with prices side by side, and the rest of it."""
    first = next((token for token in statement if token.kind in (*_AMOUNT, "days")), None)
    if first is None or first.kind != "days":
        return None
    before = [token for token in statement if token.end <= first.start]
    named = _named_without_price(text, before) if before else []
    return (named, statement[len(before) :]) if len(named) > 1 else None


_ONE_CHILD = re.compile(r"(?:first|second|additional|each additional)(?: child)?|siblings?", re.IGNORECASE)


def _row(text: str, statement: Sequence[Token], words: str, named: Sequence[_Named]) -> PricesRead | None:
    """Prices side by side, one for each kind that a line before has named: 'weekdays $5 / $3, weekends $7 / $4'."""
    prices = [token for token in statement if token.kind in _PRICE]
    if not prices or len(named) < 2 or len(prices) % len(named) or any(t.kind in _WHO for t in statement):
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


_IN_A = re.compile(r"\bin (?:a|the|one) $", re.IGNORECASE)


def _counts_at_most(text: str, before: Token) -> bool:
    """Whether a visitor is only counted, as in 'per car (up to 4 adults)'."""
    return bool(
        re.search(
            r"\b(?:up to|max\\.?|maximum|bis zu)\s+\S+\s*$", text[max(0, before.start - 12) : before.end]
        )
    )


def _read_statement(
    text: str, statement: Sequence[Token], words: str, group: int | None
) -> PricesRead | None:
    parts = _parts(statement)
    if parts is not None:
        priced, off = parts
        read = (_read_statement(text, priced, words, group) if _has_price(priced) else None) or PricesRead()
        taken = _percentages(text, off) if off else None
        if taken is None:
            return replace(read, not_understood=(*read.not_understood, words))
        return replace(read, off=(*read.off, *taken))
    prices = [token for token in statement if token.kind in _PRICE]
    conditions = [token for token in statement if token.kind in ("condition", "days", "group")]
    whom = _whom(text, statement)
    leader = _LEADER.search(words)
    if leader:
        others = any(token.kind == "money" for token in prices)
        per = next(number for number in leader.groups() if number)
        return PricesRead(leader_free_per=number_from(per), not_understood=(words,) if others else ())
    if _DEAL.search(words) or (_DONATION.search(words) and any(token.kind == "money" for token in prices)):
        return None
    if _NO_ENTRY_PRICE.search(_GIFT_AID.sub("", words)):
        return None
    assigned, groups = _assigned(text, statement, prices, whom), _group_sizes(statement)
    beside_each = _conditions_of(text, statement, prices, conditions)
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
        if not mine and number and beside and price.kind == "money":
            mine = assigned[number] = assigned[number - 1]  # adults $15 in advance, $18 at the gate
        said = tuple(c.text for c in beside if c.kind == "condition")
        days = ", ".join(c.text for c in beside if c.kind == "days")
        size = _group_size(groups, prices, number)
        came_from = text[begins:ends].strip() if mine else words
        amount = price.facts.get("amount", Decimal(0))
        assert isinstance(amount, Decimal)
        inside = [token for token in statement if since <= token.start < max(until, ends)]
        before, after = text[max(0, price.start - 20) : price.start], text[price.end : price.end + 40]
        if (
            any(t.kind == "height" for t in inside)
            or (said and _GIFT_AID.search(said[-1]))
            or (price.kind == "money" and (_CHARGE_BEFORE.search(before) or _CHARGE_AFTER.match(after)))
        ):
            read = replace(read, not_understood=(*read.not_understood, text[since:until].strip(" ,;|\n")))
            continue
        if price.kind == "money" and any(token.kind == "discount" for token in inside):
            offs = (PriceOff(words, *kind, amount, None, said, days) for kind in _kinds(mine))
            read = replace(read, off=(*read.off, *offs))
            continue
        kinds = {who.token.kind for who in mine}
        if "parking" in kinds:
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
        if _A_YEAR.match(after):
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
        for_entry = _ENTRY_WORD.match(text[price.end :].lstrip()) or (
            _ENTRY_WORD.search(text[since:until] if number else words)
            and not any(t.kind == "link" and t.start > price.end for t in inside)
        )
        free_on_days = days and (
            price.kind == "free" or any(c.kind == "days" and 0 <= price.start - c.end < 4 for c in beside)
        )
        if len(mine) > _MOST_KINDS or not (mine or size or free_on_days or for_entry):
            read = replace(read, not_understood=(*read.not_understood, words))
            continue
        highest = price.facts.get("highest")
        for person, ages in _kinds(mine):
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


def _conditions_of(
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
            right_before = condition.kind == "days" and prices[number].start - condition.end < 4
            if not (joined and (parted or right_before)):
                number -= 1
        beside[number].append(condition)
    return beside


def _is_title(text: str, statement: Sequence[Token], condition: Token) -> bool:
    """Whether a colon follows before any visitor or price, as in 'Peak (weekends): adults $9'."""
    until = min(
        (t.start for t in statement if t.start >= condition.end and t.kind in (*_WHO, *_AMOUNT)),
        default=statement[-1].end,
    )
    return ":" in text[condition.end : until]


def _parts(statement: Sequence[Token]) -> tuple[list[Token], list[Token]] | None:
    """A statement cut into what has prices and what has percentages; None where it has none of the latter.

    A percentage beside a price may be a tax as well as what is taken off; the second part is then empty.
    """
    if not _has_percent(statement):
        return None
    clauses: list[list[Token]] = [[]]
    for token in statement:
        if token.kind == "break" and any(t.kind in _AMOUNT for t in clauses[-1]):
            clauses.append([])
        clauses[-1].append(token)
    if len(clauses) > 1 and not any(t.kind in _AMOUNT for t in clauses[-1]):
        last = clauses.pop()
        clauses[-1] += last
    off = [clause for clause in clauses if not _has_price(clause)]
    priced = [_before_percent(clause) for clause in clauses if _has_price(clause)]
    if any(_has_price(clause) and _has_percent(clause) for clause in clauses):
        off = []
    return [t for clause in priced for t in clause], [t for clause in off for t in clause]


def _before_percent(clause: list[Token]) -> list[Token]:
    """A clause up to its percentage; where the price stands behind that, all of it but what says the percentage."""
    percent = next((place for place, token in enumerate(clause) if token.kind == "percent"), len(clause))
    if _has_price(clause[:percent]):
        return clause[:percent]
    return [token for token in clause if token.kind not in ("percent", "discount")]


def _has_percent(statement: Sequence[Token]) -> bool:
    return any(token.kind == "percent" for token in statement)


def _percentages(text: str, statement: Sequence[Token]) -> list[PriceOff] | None:
    """What percentages are taken off for whom; None where they may be something else, such as a tax."""
    percents = [token for token in statement if token.kind == "percent"]
    told = text[statement[0].start : statement[-1].end]
    if not _OFF.search(told) or _NO_ENTRY_PRICE.search(told) or _SOLD_BESIDE.search(told):
        return None
    if any(token.kind == "group" for token in statement):
        return None
    assigned = _assigned(text, statement, percents, _whom(text, statement))
    read: list[PriceOff] = []
    since = statement[0].start
    for number, percent in enumerate(percents):
        until = percents[number + 1].start if number + 1 < len(percents) else statement[-1].end
        breaks = [t.start for t in statement if t.kind == "break" and percent.end <= t.start < until]
        if breaks and number + 1 < len(percents):
            until = breaks[-1 if _is_linked(statement, percent) else 0]
        inside = [t for t in statement if since <= t.start < until]
        said = tuple(t.text for t in inside if t.kind == "condition")
        days = ", ".join(t.text for t in inside if t.kind == "days")
        off, words = int(str(percent.facts["percent"])), text[since:until].strip(" |,;\n")
        read += [PriceOff(words, *kind, None, off, said, days) for kind in _kinds(assigned[number])]
        since = until
    return read


def _group_sizes(statement: Sequence[Token]) -> list[tuple[Token, bool]]:
    """The group sizes of a statement, and whether each opens a clause: it is then said of the price behind it."""
    return [
        (token, before is not None and before.kind == "break" and token.start - before.end < 2)
        for before, token in zip((None, *statement), statement, strict=False)
        if token.kind == "group"
    ]


def _group_size(groups: Sequence[tuple[Token, bool]], prices: Sequence[Token], number: int) -> int | None:
    """How many must come together for a price: said before all prices, right before this one, or after it."""
    price = prices[number]
    for group, opens_a_clause in groups:
        mine = not (number and group.start < prices[number - 1].start) and not (
            number + 1 < len(prices) and group.start > prices[number + 1].start
        )
        if group.start < prices[0].start or (mine and (group.start < price.start or not opens_a_clause)):
            return int(str(group.facts["of"]))
    return None


def _assigned(
    text: str, statement: Sequence[Token], prices: Sequence[Token], whom: Sequence[_Who]
) -> list[list[_Who]]:
    """For each price those it is for: named after it with `for` or `per`, or else before it."""
    assigned: list[list[_Who]] = [[] for _ in prices]
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
        link = next((t for t in statement if t.kind == "link" and t.start >= price.end), None)
        linked = bool(after) and link is not None and link.end <= after[0].token.start and not any(
            t.kind == "break" for t in statement if price.end <= t.start < link.start
        )  # fmt: skip
        adjacent = bool(after) and not text[price.end : after[0].token.start].strip(" (")
        counted = any(who.token.kind in ("pass", "parking", "family") for who in pending)
        if (
            pending
            and linked
            and all(_means_anyone(who) or (counted and who.person == "car") for who in after)
        ):
            linked = False
        if linked:
            theirs: list[_Who] = []
            if (
                following is not None
                and not _is_linked(statement, following)
                and len(after) > 1
                and after[-1].after_break
            ):
                theirs = [after[-1]] if not after[-1].linked else []
            assigned[number] = [who for who in after if who not in theirs]
            pending = theirs
        elif pending:
            assigned[number] = pending
            pending = _list_before(text, [who for who in after if not (_is_each(who) and adjacent)])
        elif adjacent and (
            not before or following is None or _is_linked(statement, following) or len(after) > 1
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
        if number and len(mine) == 1 and _is_each(mine[0]):
            assigned[number] = [
                replace(who, token=mine[0].token)
                for who in assigned[number - 1]
                if who.token.kind in ("person", "ages")
            ] or mine
    return assigned


def _is_adjacent(text: str, whom: Sequence[_Who], price: Token) -> bool:
    """Whether a visitor is named right behind a price."""
    return any(
        who.token.start >= price.end and not text[price.end : who.token.start].strip(" (") for who in whom
    )


_IN_A_LIST = re.compile(
    r"[\s,;:|&/()+.*-]*(?:(?:and|und|or|oder|bzw\.|for|für|per|pro|all|the|with id|mit ausweis|with valid id)\b[\s,&/()|]*)*",
    re.IGNORECASE,
)


def _list_before(text: str, whom: Sequence[_Who]) -> list[_Who]:
    """The visitors of one list that ends right before a price: words between two of them end the list."""
    kept: list[_Who] = []
    for who in reversed(whom):
        if kept and not _IN_A_LIST.fullmatch(text[who.token.end : kept[0].token.start]):
            break
        kept.insert(0, who)
    return kept


def _is_linked(statement: Sequence[Token], price: Token) -> bool:
    after = [t for t in statement if t.start >= price.end]
    for token in after:
        if token.kind == "link":
            return True
        if token.kind in ("break", *_PRICE, *_WHO):
            return False
    return False


def _means_anyone(who: _Who) -> bool:
    return who.token.kind == "person" and who.person == "anyone" and who.ages is None


def _is_each(who: _Who) -> bool:
    return who.token.text.casefold() in _EACH


def _kinds(whom: Sequence[_Who]) -> Iterator[tuple[Person, AgeBand | None]]:
    """Kinds of visitors and their ages; grown-ups and children at one price are anyone."""
    named = [who for who in whom if not _is_each(who)] or list(whom)
    people = {who.person for who in named if who.ages is None}
    if not named or {"adult", "child"} <= people or {"student", "child"} <= people:
        yield "anyone", None
        return
    for who in named:
        yield _kind_by_age(who.person, who.ages), who.ages


def _kind_by_age(person: Person | None, ages: AgeBand | None) -> Person:
    if person in (None, "child") and ages is not None and ages.last is not None and ages.last < MONTHS:
        return "infant"
    if person is not None or ages is None:
        return person or "anyone"
    if ages.last is not None and ages.last < 18 * MONTHS:
        return "child"
    return "senior" if ages.first >= _SENIOR_FROM * MONTHS else "anyone"


_BY_AGE = ("child", "youth", "infant", "preschool", "senior")


def _with_reduced_prices(
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
        if not base or len(entry) + len(base) > _MOST_PRICES:
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


def _with_ages_that_follow(entry: Iterable[EntryPrice]) -> Iterator[EntryPrice]:
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
        if price.person in ("anyone", "child", "youth") and free_until is not None:
            first = free_until + 1
        elif price.person == "adult":
            if young_until is not None and young_until >= _GROWN_UP_FROM * MONTHS:
                first = young_until + 1
            if senior_from is not None:
                last = senior_from - 1
        if first is None and last is None:
            yield price
        else:
            yield replace(price, ages=AgeBand(first or 0, last))
