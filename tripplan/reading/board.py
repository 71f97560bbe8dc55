"""A venue's pasted text as what a place card holds: offers, opening hours, parking; with what is left open."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from types import MappingProxyType

from tripplan.documents.places.offers import (
    AddOn,
    AlsoAt,
    Bundle,
    Companions,
    Discount,
    Offer,
    Pass,
    Seats,
    Ticket,
    WithTicket,
    prices_in,
)
from tripplan.reading.hours.hours import read_hours
from tripplan.reading.hours.pieces import days_from
from tripplan.reading.own_sentences import read_own_sentence
from tripplan.reading.prices.beside_entry import BesideEntry, parted_beside_entry
from tripplan.reading.prices.facts import EntryPrice, FamilyPrice, PassPrice, PriceOff, PricesRead
from tripplan.reading.prices.prices import read_prices
from tripplan.reading.prices.two_places import TwoPlaces, parted_two_places, place_named
from tripplan.reading.vocabulary import Person, plain_text
from tripplan.values.ages import MONTHS, AgeBand

LONGEST = 20_000
"""A longer text is read up to here [characters]; a page with prices is far shorter."""

_DOLLARS = {"US": "USD", "CA": "CAD", "AU": "AUD", "NZ": "NZD"}
_CURRENCIES = {
    "€": "EUR", "euro": "EUR", "euros": "EUR", "eur": "EUR", "£": "GBP", "gbp": "GBP", "pounds": "GBP", "pound": "GBP",
    "p": "GBP", "pence": "GBP", "r": "ZAR", "chf": "CHF", "us$": "USD", "usd": "USD", "ca$": "CAD", "c$": "CAD",
    "cad": "CAD", "a$": "AUD",
}  # fmt: skip
_HOME_CURRENCIES = _DOLLARS | {
    "GB": "GBP",
    "DE": "EUR",
    "AT": "EUR",
    "FR": "EUR",
    "IE": "EUR",
    "CH": "CHF",
    "ZA": "ZAR",
}

_NAMES: dict[Person, str] = {
    "anyone": "Entry", "adult": "Adult", "child": "Child", "youth": "Youth", "infant": "Infant", "preschool": "Preschooler",
    "senior": "Senior", "student": "Student", "reduced": "Reduced", "member": "Member", "military": "Military",
    "teacher": "Teacher or chaperone", "car": "Car", "motorcycle": "Motorcycle", "group": "Group",
}  # fmt: skip
_USUAL_AGES: dict[Person, str] = {
    "adult": "18+", "child": "under 18", "youth": "13-17", "infant": "under 2", "preschool": "under 5", "senior": "65+",
}  # fmt: skip
_STATUS: dict[Person, str] = {
    "student": "student", "reduced": "reduced rate", "member": "member", "military": "military", "teacher": "teacher",
}  # fmt: skip
_STATUS_WORDS = (
    (re.compile(r"(?:local )?residents?|einheimische", re.IGNORECASE), "resident"),
    (re.compile(r"home[- ]?school.*", re.IGNORECASE), "home educated"),
    (re.compile(r"(?:with )?(?:an? )?(?:ebt|snap|wic)\b.*", re.IGNORECASE), "benefit card"),
)
"""Conditions that are a status of a visitor, and its name with the people of a household."""
_WITH_GROWN_UP = re.compile(r"\b(?:adult|parent|guardian|erwachsene)", re.IGNORECASE)
_AHEAD = re.compile(r"\b(?:online|in advance|ahead|vorverkauf)\b", re.IGNORECASE)
_HARMLESS = re.compile(
    r"\bat the |\b(?:gate|door|walk[- ]?up)\b|day of|tageskasse|^w/ ?(?:valid )?id|\bwith (?:an? )?(?:valid )?(?:id|card)\b|mit ausweis",
    re.IGNORECASE,
)
_TAX_ON_TOP = re.compile(
    r"(?:plus|\+|exclud\w+|excl\.|before|zzgl\.?) (?:sales |applicable )?(?:tax(?:es)?|gst|hst|vat|mwst)\b|\btax(?:es)? (?:not|is not|are not) included",
    re.IGNORECASE,
)
_A_CAR_FULL = 8
_A_FAMILY = 4
_PRICES_BELOW = re.compile(
    r"\b(?:admission|tickets?|prices?|rates?|fees?|eintritt\w*|preise?)\b[^\d]*", re.IGNORECASE
)
"""A title such as 'Daily admission' says nothing of hours."""
_PART_OF_THE_YEAR = re.compile(r"peak|season|saison|saver", re.IGNORECASE)


@dataclass(frozen=True)
class OfferRead:
    """One offer and the words it was read from."""

    offer: Offer
    words: str


@dataclass(frozen=True)
class AddOnRead:
    """Something beside entry, and the words it was read from."""

    add_on: AddOn
    words: str


@dataclass(frozen=True)
class BoardRead:
    """What a text says of a place.

    Attributes:
        currency: ISO 4217 code; None where the text names none and the country is not known.
        offers: the ways in.
        opening_hours: OpenStreetMap opening_hours syntax; empty where nothing is said.
        last_entry: the latest time people are let in, as 16:15.
        last_entry_minutes_before_close: said so [min].
        parking: what leaving the car costs; None where it is not said.
        not_understood: statements that may matter and were not read, word for word.
        doubts: what is left open, and what was taken for it, as sentences.
        add_ons: what is paid beside entry, as far as a ticket makes it cheaper.
    """

    currency: str | None
    offers: tuple[OfferRead, ...]
    opening_hours: str
    last_entry: str | None
    last_entry_minutes_before_close: int | None
    parking: Decimal | None
    not_understood: tuple[str, ...]
    doubts: tuple[str, ...]
    add_ons: tuple[AddOnRead, ...] = ()


def read_board(
    text: str, country: str | None = None, places: Mapping[str, str] = MappingProxyType({})
) -> BoardRead:
    """Read prices and opening hours from a text as venues write them, in English or German.

    Args:
        text: as pasted.
        country: ISO 3166-1 alpha-2 code of the place, which settles what a dollar is.
        places: names of the family's places by id, at which a ticket may be good too.

    Returns:
        What was read. Nothing is dropped: what may matter and was not understood stands word for word in
        `not_understood`, and every figure that the text leaves open in `doubts`.
    """
    doubts: list[str] = []
    if len(text) > LONGEST:
        doubts.append(f"Only the first {LONGEST} characters are read.")
    own, rest = _own_sentences(text[:LONGEST])
    plain = plain_text(rest)
    beside, plain = parted_beside_entry(plain)
    for_two, plain = parted_two_places(plain)
    prices = read_prices(plain)
    hours = read_hours("\n".join(words for words in prices.passed_over if not _is_title_of_prices(words)))
    signs = prices.signs.union(*(one.signs for one in for_two), (one.unit for one in beside if one.unit))
    currency = _currency(signs, country, doubts)
    ages = {one.person: one.ages for one in reversed(prices.entry) if one.ages is not None and one.price}
    read = [*_offers(prices, doubts), *_tickets_for_two(for_two, places, ages, doubts)]
    offers = (*(one for one, _ in own), *_with_own_names(read))
    add_ons = tuple(_add_on(one, [one.offer for one in offers], doubts) for one in beside)
    if _TAX_ON_TOP.search(plain):
        doubts.append("Tax is added to these prices; how much is not read.")
    doubts += [f"Not all of '{words}' was read." for words in prices.in_part]
    currency = currency or next((code for _, code in own), None)
    if prices.leader_free_per:
        doubts.append(
            f"One leader goes free for every {prices.leader_free_per} who pay; the price it goes with is not said."
        )
    return BoardRead(
        currency,
        offers,
        hours.opening_hours,
        hours.last_entry,
        hours.last_entry_minutes_before_close,
        prices.parking,
        (*prices.not_understood, *hours.not_understood),
        tuple(dict.fromkeys((*doubts, *hours.doubts))),
        add_ons,
    )


def _tickets_for_two(
    found: Iterable[TwoPlaces],
    places: Mapping[str, str],
    ages: Mapping[Person, AgeBand],
    doubts: list[str],
) -> Iterator[OfferRead]:
    for one in found:
        there = place_named(one.where, places)
        if there is None:
            doubts.append(
                f"'{one.words}' is good at another place too: once that place has a card, name it at the "
                "ticket."
            )
        elif one.days is None:
            doubts.append(f"'{one.words}' does not say within how many days; the same day is taken.")
        for price in one.prices:
            ticket = _entry(replace(price, ages=price.ages or ages.get(price.person)), None, 0, doubts)
            who = "" if price.person == "anyone" else f", {_NAMES[price.person].casefold()}"
            also = (AlsoAt(place=there, within_days=one.days or 1),) if there else ()
            yield OfferRead(
                ticket.model_copy(
                    update={"name": f"{one.name[:1].upper()}{one.name[1:]}{who}", "also_at": also}
                ),
                one.words,
            )


def _add_on(one: BesideEntry, offers: Sequence[Offer], doubts: list[str]) -> AddOnRead:
    tickets = tuple(
        offer.name for offer in offers if isinstance(offer, Ticket | Bundle) and any(prices_in(offer))
    )
    told = "with every ticket that costs something" if tickets else "once its tickets stand on the card"
    doubts.append(f"'{one.words}' is taken as cheaper {told}; it is for each person.")
    with_ticket = (WithTicket(offers=tickets, price=one.with_ticket),) if tickets else ()
    return AddOnRead(AddOn(name=one.name, price=one.price, with_ticket=with_ticket), one.words)


def _is_title_of_prices(words: str) -> bool:
    return _PRICES_BELOW.search(words) is not None and not re.search(
        r"\d|\b(?:open|closed|last|geöffnet)\b", words, re.IGNORECASE
    )


def _own_sentences(text: str) -> tuple[list[tuple[OfferRead, str]], str]:
    """The lines in which this program itself says offers, with their currency; and all other lines."""
    own: list[tuple[OfferRead, str]] = []
    rest: list[str] = []
    for line in text.splitlines():
        found = read_own_sentence(line)
        if found is None:
            rest.append(line)
        else:
            own.append((OfferRead(found[0], line.strip()), found[1]))
    return own, "\n".join(rest)


def _currency(signs: frozenset[str], country: str | None, doubts: list[str]) -> str | None:
    named = {_CURRENCIES[sign] for sign in signs if sign in _CURRENCIES}
    if signs & {"$", "dollar", "dollars", "cent", "cents", "¢"} and not named & set(_DOLLARS.values()):
        dollar = _DOLLARS.get(country or "")
        if dollar is None and country is None:
            doubts.append("Which country's dollar it is, is not said; taken as US dollars.")
        named.add(dollar or "USD")
    if len(named) > 1:
        doubts.append(
            f"Prices stand in {' and '.join(sorted(named))}; only one currency can be kept on a card."
        )
        return None
    if named:
        return named.pop()
    return _HOME_CURRENCIES.get(country or "")


def _offers(prices: PricesRead, doubts: list[str]) -> Iterator[OfferRead]:
    grown_up = next((p.ages for p in prices.entry if p.person == "adult" and p.ages), None)
    first_paid = min((p.ages.first for p in prices.entry if p.ages and p.price and p.ages.first), default=0)
    child = next((p.ages for p in prices.entry if p.person == "child" and p.ages and p.price), None)
    for price in prices.entry:
        yield OfferRead(_entry(price, grown_up, first_paid, doubts), price.words)
    for family in prices.families:
        yield OfferRead(_family(family, grown_up, child, doubts), family.words)
    for a_pass in prices.passes:
        if a_pass.yearly:
            yield OfferRead(_pass(a_pass, doubts), a_pass.words)
        else:
            doubts.append(f"'{a_pass.words}' is good for a few days; it is not counted yet.")
    for off in prices.off:
        discount = _discount(off, doubts)
        if discount is not None:
            yield OfferRead(discount, off.words)
        else:
            doubts.append(
                f"'{off.words}' is not counted yet: enter what it takes off as a voucher or an offer."
            )


def _entry(price: EntryPrice, grown_up: AgeBand | None, first_paid: int, doubts: list[str]) -> Offer:
    name = _NAMES[price.person]
    amount = price.price if price.highest is None else price.highest
    if price.highest is not None:
        doubts.append(f"'{price.words}' gives a span of prices; the higher one is taken.")
    if price.about:
        doubts.append(f"'{price.words}' is only about so much.")
    limits = _limits(price, doubts)
    if limits.needs and price.person not in _STATUS:
        name = f"{name}, {limits.needs[0]}"
    if price.person in ("car", "motorcycle"):
        people = _A_CAR_FULL if price.person == "car" else 2
        doubts.append(f"How many people one {name.casefold()} may bring is not said; {people} are taken.")
        return Bundle(
            name=f"{name}, everybody in it", price=amount, seats=(Seats(count=people),), valid=limits.valid, needs=limits.needs,
            book_days_ahead=limits.ahead, online_only=limits.online,
        )  # fmt: skip
    return Ticket(
        name=name, price=amount, ages=_ages(price, grown_up, first_paid, doubts), valid=limits.valid, needs=limits.needs,
        companions=limits.companions, book_days_ahead=limits.ahead, online_only=limits.online, at_least=price.group_of or 1,
    )  # fmt: skip


@dataclass(frozen=True)
class _Limits:
    """What must hold for a price: days, statuses, company, booking ahead [days], and whether only online."""

    valid: str | None
    needs: tuple[str, ...]
    companions: Companions | None
    ahead: int
    online: bool


def _limits(price: EntryPrice | PriceOff, doubts: list[str]) -> _Limits:
    valid = days_from(price.days) if price.days else None
    needs = [_STATUS[price.person]] if price.person in _STATUS else []
    companions: Companions | None = None
    ahead, online = 0, False
    for condition in price.conditions:
        told = " ".join(condition.split())
        status = next((status for pattern, status in _STATUS_WORDS if pattern.fullmatch(told)), None)
        if _WITH_GROWN_UP.search(condition):
            companions = Companions(must_pay="pay" in condition.casefold() or "paid" in condition.casefold())
        elif _AHEAD.search(condition):
            ahead, online = 1, online or "online" in condition.casefold()
            doubts.append(f"'{price.words}' asks for booking ahead; one day is taken.")
        elif status is not None:
            needs.append(status)
        elif not (_HARMLESS.search(condition) or (valid and _PART_OF_THE_YEAR.search(condition))):
            needs.append(told)
            doubts.append(f"'{price.words}' counts only for '{told}'.")
    if price.days and valid is None:
        needs.append(" ".join(price.days.split()))
        doubts.append(
            f"'{price.words}' counts only on '{' '.join(price.days.split())}'; these days are not understood."
        )
    return _Limits(valid, tuple(needs), companions, ahead, online)


def _discount(off: PriceOff, doubts: list[str]) -> Discount | None:
    """A part off the single price; None where it is no percentage, or for nobody in particular."""
    told: list[str] = []
    limits = _limits(off, told)
    by_age = off.ages or (_band(_USUAL_AGES[off.person]) if off.person in _USUAL_AGES else None)
    if off.percent is None or limits.companions is not None or (off.days and limits.valid is None):
        return None
    if not (limits.needs or by_age or limits.valid or limits.ahead):
        return None
    if by_age and not off.ages:
        told.append(f"The ages of '{off.words}' are not said; '{_USUAL_AGES[off.person]}' is taken.")
    doubts += told
    who = limits.needs[0].capitalize() if limits.needs else _NAMES[off.person]
    return Discount(
        name=f"{who} discount", percent_off=Decimal(off.percent), needs=limits.needs, ages=by_age or AgeBand(),
        valid=limits.valid, book_days_ahead=limits.ahead, online_only=limits.online,
    )  # fmt: skip


def _ages(price: EntryPrice, grown_up: AgeBand | None, first_paid: int, doubts: list[str]) -> AgeBand:
    if price.ages is not None:
        return price.ages
    usual = _USUAL_AGES.get(price.person)
    if usual is None:
        return AgeBand()
    band = _band(usual)
    if price.person == "child" and grown_up is not None and grown_up.first:
        return AgeBand(0, grown_up.first - 1)
    if price.person in ("infant", "preschool") and not price.price and first_paid:
        band = AgeBand(0, first_paid - 1)
        usual = str(band)
    doubts.append(f"The ages of '{price.words}' are not said; '{usual}' is taken.")
    return band


def _band(text: str) -> AgeBand:
    if text.startswith("under "):
        return AgeBand(0, int(text.removeprefix("under ")) * MONTHS - 1)
    if text.endswith("+"):
        return AgeBand(int(text[:-1]) * MONTHS)
    first, last = text.split("-")
    return AgeBand(int(first) * MONTHS, int(last) * MONTHS + MONTHS - 1)


def _family(family: FamilyPrice, grown_up: AgeBand | None, child: AgeBand | None, doubts: list[str]) -> Offer:
    adults = AgeBand(grown_up.first) if grown_up else _band("18+")
    children = child or AgeBand(0, max(adults.first - 1, 0)) if adults.first else _band("under 18")
    if family.people:
        return Bundle(
            name="Family", price=family.price, seats=(Seats(count=family.people),), must_include=adults
        )
    if not (family.adults and family.children):
        doubts.append(
            f"How many people '{family.words}' lets in is not said; two adults and two children are taken."
        )
    seats = (
        Seats(count=family.adults or 2, ages=adults),
        Seats(count=family.children or 2, ages=AgeBand(0, children.last)),
    )
    return Bundle(name="Family", price=family.price, seats=seats, must_include=adults)


def _pass(a_pass: PassPrice, doubts: list[str]) -> Offer:
    family = _A_FAMILY if "famil" in a_pass.words.casefold() else 1
    people = a_pass.people or (_A_CAR_FULL if a_pass.per_car else family)
    if a_pass.people is None:
        doubts.append(f"How many people '{a_pass.words}' lets in is not said; {people} taken.")
    return Pass(name="Annual pass", price=a_pass.price, months=12, seats=(Seats(count=people),))


def _with_own_names(offers: Iterable[OfferRead]) -> Iterator[OfferRead]:
    """No two offers of a card share a name: the ages, or a number, tell them apart."""
    used: set[str] = set()
    for read in offers:
        offer = read.offer
        name = offer.name
        if name in used and isinstance(offer, Ticket) and str(offer.ages) != "any":
            name = f"{offer.name} {offer.ages}"
        if name in used:
            name = next(
                f"{offer.name} {n}" for n in range(2, len(used) + 3) if f"{offer.name} {n}" not in used
            )
        used.add(name)
        yield OfferRead(offer.model_copy(update={"name": name}), read.words)
