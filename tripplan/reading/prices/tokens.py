"""Cutting a sentence about prices into what it is made of: amounts, kinds of visitors, ages, conditions."""

import re
from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal
from typing import NamedTuple

from tripplan.reading.vocabulary import NUMBER, PERSON, Person, first_look, number_from, small_letters
from tripplan.values.ages import MONTHS, AgeBand

_AMOUNT = r"\d{1,3}(?:,\d{3}){1,3}(?:\.\d{2})?|\d+(?:[.,]\d{1,2})?(?!\d)"
_SIGNS = r"us\$|ca\$|c\$|a\$|\$|£|€|r(?=\d)|chf|eur|usd|gbp|cad|euro"
_UNITS = r"€|euros?\b|eur\b|dollars?\b|usd\b|pounds?\b|gbp\b|cad\b|chf\b|p\b(?!\.?\s?m)|pence\b|cents?\b|¢"
_MONEY = re.compile(
    rf"(?P<about>\b(?:about|around|approx(?:imately|\.)?|ca\.?|rund|ungefähr|etwa|~)\s*)?"
    rf"(?:(?P<sign>{_SIGNS})\s?(?P<first>{_AMOUNT})(?:,-)?|(?P<second>{_AMOUNT})(?:,--?)?\s?(?P<unit>{_UNITS}))",
    re.IGNORECASE,
)
_TO = re.compile(r"\s*(?:-|to|bis|through)\s*", re.IGNORECASE)
_FREE = re.compile(
    r"\b(?:free(?: of charge| admission| entry)?|no charge|no cost|not charged(?: to \w+)?|complimentary|pay[- ]what[- ]you[- ](?:wish|can|want|like)|by donation|gegen spende|auf spendenbasis|gratis"
    r"|kostenlos(?:e[rn]?)?|kostenfrei|umsonst|freie[rnm]? eintritt|eintritt frei|frei)\b(?![ ]*(?:parking|wi-?fi|of\b|parken))",
    re.IGNORECASE,
)
_YEARS = r"(?:\s*-?\s*(?:(?:years?|yrs?\.?|y/?o|jahren?)(?:[- ]old|[- ]of[- ]age)?\b|j\.))"
_OR = r"\s*(?:and|&|or|und|oder)\s*"
_UNDER = r"(?:under|younger|below|less|jünger|darunter)"
_OVER = r"(?:over|better|older|up|above|upwards?|älter|darüber)"
_AGE_FORMS = (
    (rf"(?P<a>{NUMBER})\s*(?:-|to|through|bis)\s*(?P<b>{NUMBER})\s*(?P<m>months?|mos?\b|monaten?)", "span"),
    (rf"(?:under|younger than|below|less than|unter)\s*(?:the )?(?:ages? of |age )?(?P<b>{NUMBER})\s*(?P<m>months?|mos?\b|monaten?)"
     r"(?: of age| old)?", "under"),
    (rf"(?:(?:at,? or,? over|at least|from|over|ab)[, ]*)(?P<a>{NUMBER})\s*(?P<m>months?|mos?\b|monaten?)(?: of age| old)?", "from"),
    (rf"(?P<a>{NUMBER})\s*(?P<m>months?|mos?\b|monaten?){_OR}{_OVER}", "from"),
    (rf"(?P<b>{NUMBER})\s*(?P<m>months?|mos?\b|monaten?){_OR}{_UNDER}", "to"),
    (rf"(?P<a>{NUMBER}){_YEARS}?\s*(?:-|to|through|bis|and up to)\s*(?P<b>{NUMBER}){_YEARS}?(?!\s*(?:am|pm|a\.m|p\.m|uhr|:\d|people|persons|passengers|visitors))", "span"),
    (rf"(?:under|younger than|below|less than|unter)[-\s]*(?:the )?(?:ages? of |age )?(?P<b>{NUMBER})'?s?\b{_YEARS}?", "under"),
    (rf"(?P<b>{NUMBER}){_YEARS}?{_OR}{_UNDER}\b", "to"),
    (rf"(?:up to|through|bis)\s*(?:(?:and including|zu|einschließlich)\s*)?(?:age |ages )(?P<b>{NUMBER}){_YEARS}?|bis (?:einschließlich |inklusive |inkl\. |zu )?(?P<c>{NUMBER}){_YEARS}", "to"),
    (rf"(?P<a>{NUMBER})\s*(?:\+|plus\b){_YEARS}?", "from"),
    (rf"(?P<a>{NUMBER}){_YEARS}?{_OR}{_OVER}\b", "from"),
    (rf"(?:above|over|older than|über)\s*(?:the )?(?:ages? of |age )?(?P<a>{NUMBER})\b{_YEARS}?(?: old)?", "over"),
    (rf"(?:from|ab|starting at)\s*(?:ages? )?(?P<a>{NUMBER}){_YEARS}", "from"),
    (rf"ab\s+(?P<a>{NUMBER})(?=\s*(?:[:=|)]|\d))", "from"),
    (rf"(?:ages?|aged)\s*(?P<a>{NUMBER})\b{_YEARS}?", "one"),
)  # fmt: skip
_AGES = [
    (re.compile(rf"(?:\b(?:ages?|aged|im alter von)\s*:?\s*)?\b{form}", re.IGNORECASE), kind)
    for form, kind in _AGE_FORMS
]
_COMPOSED = (
    rf"(?:up to |bis zu )?(?P<adults>{NUMBER}) (?:adults?|erwachsenen?|grown-ups?|parents?)(?:\s*(?:and|,|\+|&|plus|with|und|mit)?\s*)"
    rf"(?P<most>up to |bis zu )?(?P<children>{NUMBER})?\s*(?:children|child|kids?|kinder[n]?)"
    rf"|(?P<two>\d)\s*\+\s*(?P<three>\d)"
    rf"|(?:up to |bis zu )?(?P<people>{NUMBER})\b(?![\d.,-]*\s?(?:€|%|euro|eur\b|dollars|pounds|,\d))(?: people| persons?| members| personen|[- ]pack)?"
)  # fmt: skip
_FAMILY = re.compile(
    rf"\b(?:famil(?:y|ies)|familien?)(?:[- ]?(?:tickets?|pass|admission|rate|day ticket|karte|ticket))?"
    rf"(?:(?:\s*[:(]\s*|\s+(?:of|for|from|with|mit|für)\s+|\s+)(?:{_COMPOSED})\s*\)?)?",
    re.IGNORECASE,
)
_PASS = re.compile(
    r"\b(?P<annual>(?:annual|yearly|year-?long|season|12[- ]month)(?: \w+)? (?:pass(?:es)?|tickets?|memberships?)|memberships?"
    r"|season pass(?:es)?|jahreskarten?|saisonkarten?)\b|\b(?P<weekend>weekend pass(?:es)?|wochenendkarten?)\b",
    re.IGNORECASE,
)
_PARKING = re.compile(
    r"\b(?:car ?park(?:ing)?|parking(?: fee)?(?: is)?|park(?:en|platz|gebühr)\w*)\b", re.IGNORECASE
)
_GROUP = re.compile(
    rf"\b(?:groups?|parties|gruppen?)(?:\s*(?:prices?|admission|tickets?))?\s*(?:\(\s*)?(?:of|with|rate[s]?|ab|from|von)?\s*(?:\(\s*)?(?:at least |minimum )?(?P<n>{NUMBER})"
    rf"(?:\s*\+|{_OR}more| (?:personen|people|persons))?\)?|\b(?P<m>{NUMBER})\s*(?:\+|{_OR}more) (?:people|visitors|persons)",
    re.IGNORECASE,
)
_DISCOUNT = re.compile(
    r"\boff\b(?![- ]?(?:peak|season))|\bsave\b|\bless\b(?! than)|\bdiscount of\b|\brabatt\b|\bnachlass\b|\bgünstiger\b",
    re.IGNORECASE,
)
_PERCENT = re.compile(r"(?P<n>\d{1,2})\s?%|(?P<h>\bhalf price\b|\bhalber preis\b)", re.IGNORECASE)
_UNITS_AFTER_SLASH = r"(?:person|adult|child|kid|student|senior|member|vehicle|car|carload|ticket|family|day|tag|pers|people|head|pp|each)"
_LINK = re.compile(
    r"\b(?:for(?: each| every| all| any| one)?|per|pro|für|je|to|an?(?=\s+(?:person|child|kid|adult|car|vehicle|head|carload)\b))\b"
    rf"|/(?={_UNITS_AFTER_SLASH}\b(?!\s*[:$£€]))|/(?=\s+{_UNITS_AFTER_SLASH}\b(?!\s*[-:$£€(\d]))|(?<=[a-zäöü])/(?=[a-zäöü])",
    re.IGNORECASE,
)
_CONDITION = re.compile(
    r"\b(?:with(?: an?| one| each| every)?(?: full)?(?:[- ]?(?:paying|paid))? (?:adult|parent|child|id|guardian|card)\w*(?: \w+ card)?"
    r"|who visit with an adult|when accompanied[^,.;)]*|in begleitung[^,.;)]*|mit ausweis"
    r"|w/ ?(?:valid |paying |paid )?(?:id|adult|parent)"
    r"|at the (?:gate|door|box office|counter)|(?:gate|door|walk[- ]?up)(?: price| admission)?(?=\W)|(?:on the )?day of(?: your)?(?: visit)?|tageskasse"
    r"|off[- ]?peak|(?:low|off)[- ]season|peak(?: season| days?)?|high[- ]season|nebensaison|hauptsaison|super saver"
    r"|(?:with |incl(?:uding|\.)? )?gift ?aid(?: prices?| admission| donation)?|incl(?:uding|\.)? (?:a )?(?:voluntary )?donation"
    r"|online|in advance|book(?:ed|ing) ahead|vorverkauf|cash|bar\b|home[- ]?school(?:ers?|ed|ing)?(?: famil(?:y|ies))?|residents?|einheimische|(?:an? )?(?:ebt|snap|wic)\b[^,.;:)|$£€\d]*"
    r"|school (?:groups?|visits?|programs?)|for schools[^,.;)]*|school and non-profit[^,.;)]*"
    r"|first child|each additional|additional|second|first program|jede[rs]? weitere[rs]?)\b",
    re.IGNORECASE,
)  # fmt: skip
_HEIGHT = re.compile(
    r"(?:(?:under|over|below|above|up to|less than|at least|unter|über|bis|ab)\s+)?\d{1,3}(?:[.,]\d{1,2})?\s?(?:\"|inch(?:es)?\b|cm\b|ft\b|feet\b|'(?!\s?s)(?=\s|\d|$))"
    r"(?:\s?\d{1,2}\s?(?:\"|in\b))?(?:\s*(?:tall|(?:and|or|&) (?:taller|shorter|over|under)))?"
    r"|(?:under|over|unter|über|bis|ab)\s+\d(?:[.,]\d{1,2})?\s?m(?:eter)?\b",
    re.IGNORECASE,
)
"""A limit by height, which is no age."""
_PARTY = re.compile(
    rf"(?:up to |bis zu )?(?P<adults>{NUMBER}) (?:adults?|erwachsenen?|erw\.?|grown-ups?|parents?|elternteile?)\s*(?:(?:and|,|\+|&|plus|with|und|mit)\s*)+"
    rf"(?:up to |bis zu |max\.? )?(?:(?P<children>{NUMBER}) )?(?:(?:all|any|their|own|eigene[nr]?|deren|minor|zugehörige) )*(?:children|child|kids?|kinder[n]?)\b"
    rf"|(?P<two>\d)\s?(?:a|ad|adults?|erw\.?)\s?\+\s?(?P<three>\d)\s?(?:c|ch|k|ki\.?|kids?|children|kinder)\b",
    re.IGNORECASE,
)
"""Who goes in on a family ticket, where it is said beside it."""
_DAY_NAMES = r"(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?s?|montags?|dienstags?|mittwochs?|donnerstags?|freitags?|samstags?|sonntags?|mo|di|mi|do|fr|sa|so"
_DAYS = re.compile(
    rf"\b(?:(?:each|every|on|jeden|the)\s+){{0,3}}(?:(?:1st|first|2nd|second|3rd|third|4th|fourth|last|erste[rn]?|letzte[rn]?)\s+)?(?:{_DAY_NAMES})\b\.?(?:\s*(?:-|to|through|bis|,|and|&|und)\s*(?:{_DAY_NAMES})\b\.?)*(?:\s+of (?:the|each|every) month)?"
    r"|\b(?:weekends?|weekdays?|wochenende[n]?|wochentags?|werktags?|school holidays?|(?:public |bank |federal )?holidays?|feiertag\w*|schulferien)\b",
    re.IGNORECASE,
)  # fmt: skip
_DEAREST = 10_000
"""What looks like a higher price is a number of something else."""
_BREAK = re.compile(
    r"\s*(?:,|;|\||(?<=[\d\s])/(?=[\sa-zäöü$£€])|\band\b|&|\bund\b|\bbzw\.|\bor\b|\boder\b)\s*",
    re.IGNORECASE,
)
_WORD = re.compile(r"(?:non-)?[^\W\d_]+(?:'[a-z]+)?|\d+(?:[.,]\d{2})?|\S", re.IGNORECASE)
_MARK = re.compile(r"[~$£€/,;|&]|\d[\d.,]{0,9}\s?(?:[^\W\d_]|[€¢%+'\"&-])")
"""Signs that mean something, and numbers with something behind them that says of what; one look tells that."""


class Token(NamedTuple):
    """One piece of a sentence about prices.

    Attributes:
        kind: money, free, person, ages, height, family, party, pass, parking, group, discount, percent, link, condition,
            days, break or word.
        start: where it begins in the text [characters].
        end: where it ends.
        text: as written.
        facts: what was read from it, by name.
    """

    kind: str
    start: int
    end: int
    text: str
    facts: Mapping[str, object] = {}


def tokens(text: str) -> Iterator[Token]:
    """Cut a sentence into its pieces, in order; nothing of it is left out but blanks."""
    at, small = 0, small_letters(text)
    while at < len(text):
        if text[at].isspace():
            at += 1
            continue
        token = _token_at(text, small, at)
        yield token
        at = token.end


def _token_at(text: str, small: str, at: int) -> Token:
    begins = _BEGINS.match(small, at) if text[at].isalpha() or _MARK.match(text, at) else None
    if begins and begins.lastgroup:
        for reader in _READERS[begins.lastgroup]:
            token = reader(text, at)
            if token is not None:
                return token
    word = _WORD.match(text, at)
    end = word.end() if word else at + 1
    return Token("word", at, end, text[at:end])


def amount_from(text: str) -> Decimal:
    """An amount as written, with thousands after commas, or cents after a comma or point."""
    if re.fullmatch(r"\d{1,3}(?:,\d{3})+(?:\.\d{2})?", text):
        return Decimal(text.replace(",", ""))
    return Decimal(text.replace(",", "."))


def _money(text: str, at: int) -> Token | None:
    match = _MONEY.match(text, at)
    if not match or (match["unit"] and at and text[at - 1] in ":."):
        return None
    amount = amount_from(match["first"] or match["second"])
    unit = (match["unit"] or match["sign"]).casefold()
    if amount > _DEAREST:
        return None
    if unit in ("p", "pence", "cent", "cents", "¢"):
        amount /= 100
    facts: dict[str, object] = {"amount": amount, "unit": unit, "about": match["about"] is not None}
    end = match.end()
    span = _TO.match(text, end)
    upper = _MONEY.match(text, span.end()) if span else None
    if upper and upper["first"]:
        facts["highest"] = amount_from(upper["first"])
        end = upper.end()
    return Token("money", at, end, text[at:end], facts)


def _bundle(text: str, at: int) -> Token | None:
    match = _FAMILY.match(text, at)
    if not match:
        return None
    counts = {
        name: number_from(match[name])
        for name in ("adults", "children", "people", "two", "three")
        if match[name] is not None
    }
    facts: dict[str, object] = {
        "adults": counts.get("adults", counts.get("two")),
        "children": counts.get("children", counts.get("three")),
        "people": counts.get("people"),
    }
    end = at + len(match[0].rstrip())
    return Token("family", at, end, text[at:end], facts)


def _height(text: str, at: int) -> Token | None:
    match = _HEIGHT.match(text, at)
    return Token("height", at, match.end(), match[0]) if match else None


def _party(text: str, at: int) -> Token | None:
    match = _PARTY.match(text, at)
    if not match:
        return None
    adults, children = match["adults"] or match["two"], match["children"] or match["three"]
    counts = {"adults": number_from(adults)} | ({"children": number_from(children)} if children else {})
    return Token("party", at, match.end(), match[0], counts)


def _group(text: str, at: int) -> Token | None:
    match = _GROUP.match(text, at)
    if not match:
        return None
    return Token("group", at, match.end(), match[0], {"of": number_from(match["n"] or match["m"])})


def _ages(text: str, at: int) -> Token | None:
    if at and text[at - 1].isalnum():
        return None
    for pattern, kind in _AGES:
        match = pattern.match(text, at)
        if not match:
            continue
        read = match.groupdict()
        unit = 1 if read.get("m") else MONTHS
        first = number_from(read["a"]) * unit if read.get("a") else 0
        upper = read.get("b") or read.get("c")
        last = None if upper is None else number_from(upper) * unit + unit - 1
        if kind == "under" and last is not None:
            last -= unit
        elif kind == "over":
            first += unit
        elif kind == "one":
            last = first + unit - 1
        if last is not None and not first <= last < 130 * MONTHS:
            return None
        return Token("ages", at, match.end(), match[0], {"band": AgeBand(first, last)})
    return None


_SIMPLE = (
    ("link", _LINK),
    ("break", _BREAK),
    ("free", _FREE),
    ("parking", _PARKING),
    ("discount", _DISCOUNT),
    ("days", _DAYS),
    ("condition", _CONDITION),
)


def _simple(text: str, at: int) -> Token | None:
    for kind, pattern in _SIMPLE:
        match = pattern.match(text, at)
        if match and match.end() > at:
            return Token(kind, at, match.end(), match[0])
    return None


def _pass(text: str, at: int) -> Token | None:
    match = _PASS.match(text, at)
    if not match:
        return None
    return Token("pass", at, match.end(), match[0], {"pass": "annual" if match["annual"] else "weekend"})


def _percent(text: str, at: int) -> Token | None:
    match = _PERCENT.match(text, at)
    if not match:
        return None
    return Token("percent", at, match.end(), match[0], {"percent": 50 if match["h"] else int(match["n"])})


def _person(text: str, at: int) -> Token | None:
    match = PERSON.match(text, at)
    if not match or match.lastgroup is None:
        return None
    person: Person = match.lastgroup  # type: ignore[assignment]
    return Token("person", at, match.end(), match[0], {"person": person})


_IN_ORDER: dict[str, tuple[Callable[[str, int], Token | None], tuple[re.Pattern[str], ...]]] = {
    "money": (_money, (_MONEY,)),
    "height": (_height, (_HEIGHT,)),
    "party": (_party, (_PARTY,)),
    "family": (_bundle, (_FAMILY,)),
    "group": (_group, (_GROUP,)),
    "ages": (_ages, tuple(form for form, _ in _AGES)),
    "pass": (_pass, (_PASS,)),
    "percent": (_percent, (_PERCENT,)),
    "simple": (_simple, tuple(pattern for _, pattern in _SIMPLE)),
    "person": (_person, (PERSON,)),
}
_BEGINS = first_look({name: patterns for name, (_, patterns) in _IN_ORDER.items()})
_READERS = {
    name: [reader for reader, _ in list(_IN_ORDER.values())[number:]] for number, name in enumerate(_IN_ORDER)
}
"""What reads a piece, by what may begin there; and what is tried after that."""
