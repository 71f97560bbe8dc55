"""Reading the sentences in which this program itself says an offer, back into the offer.

A line is taken only where the offer that was read says the same line again, letter by letter.
"""

import re
from collections.abc import Callable, Mapping
from datetime import date, datetime
from typing import Any

from pydantic import TypeAdapter, ValidationError

from tripplan.documents.places.offer_sentences import sentence
from tripplan.documents.places.offers import Offer
from tripplan.reading.typed.amounts import amount_in
from tripplan.reading.typed.clocks import clock_in
from tripplan.reading.typed.durations import minutes_in
from tripplan.values.ages import MONTHS, AgeBand

LONGEST_SENTENCE = 600
"""A longer line is none of the program's [characters]."""
_OFFER: TypeAdapter[Offer] = TypeAdapter(Offer)
_SIGNS = {"$": "USD", "€": "EUR", "£": "GBP", "CA$": "CAD", "A$": "AUD"}
_PRICE = r"(?:[A-Z]{1,2}\$|[$€£]|[A-Z]{3}\s?)\d[\d,]*(?:\.\d+)?"
_AGES = (
    r"(?:of any age|aged \d+(?: months)? or over|under \d+(?: months)?|aged \d+ to \d+(?: months)?|aged \d+)"
)
_SEAT = rf"\d+ (?:person|people) {_AGES}"
_SEATS = rf"{_SEAT}(?:(?:,? and |, ){_SEAT})*"
_LIST = r"'[^']*'(?:, '[^']*')*(?:,? or '[^']*')?"
_NAMES = r"'[^']*'(?:, '[^']*')*(?:,? and '[^']*')?"
_HEADS: tuple[tuple[str, re.Pattern[str]], ...] = (
    (
        "ticket",
        re.compile(rf"(?P<name>.+?): (?:free|(?P<price>{_PRICE}) each) for people (?P<ages>{_AGES})"),
    ),
    (
        "discount",
        re.compile(
            rf"(?P<name>.+?): (?P<percent>[\d.]+) % off (?:(?P<offers>{_NAMES})|the single price)"
            rf" for people (?P<ages>{_AGES})"
        ),
    ),
    (
        "bundle",
        re.compile(rf"(?P<name>.+?): (?:free|(?P<price>{_PRICE})) for up to (?P<seats>{_SEATS}) together"),
    ),
    (
        "pass",
        re.compile(
            rf"(?P<name>.+?): (?P<price>{_PRICE}) for (?P<months>\d+) months? of visits by up to"
            rf" (?P<seats>{_SEATS}) (?P<whose>named persons|of the household)"
        ),
    ),
)
_CLAUSES = tuple(
    re.compile(pattern)
    for pattern in (
        rf"with proof of (?P<needs>{_LIST})(?: by one of them)?",
        r"which covers (?P<one_status_covers>\d+) people, its holder included",
        rf"up to (?P<each_allows>\d+) for each (?P<paying>paying )?companion (?P<companion_ages>{_AGES})"
        rf"(?: with proof of (?P<companion_needs>{_LIST}))?",
        r"from (?P<at_least>\d+) people(?: together)? on",
        rf"(?:free|(?P<other_price>{_PRICE}) each) for people (?P<other_ages>{_AGES})",
        r"only on the visitor's (?P<birthday>birthday)",
        r"only in the month of (?P<birth_month>the visitor's birthday)",
        r"for at most (?P<at_most>\d+) of one party",
        r"(?P<one_family>all of one family)",
        r"(?P<per_car>one for each car, infants counted)",
        r"(?P<counts_everybody>infants counted)",
        rf"with (?P<includes>{_NAMES})",
        r"(?P<online_only>sold only online)",
        r"with at least (?P<taken>\d+) of its seats taken",
        r"at most (?P<at_most>\d+) to one (?:party|family)",
        rf"with a leader (?P<leader_ages>{_AGES}) free for every (?P<one_free_per>\d+) payers?",
        rf"(?P<extra_price>{_PRICE}) for each further person (?P<extra_ages>{_AGES})(?: \(at most (?P<extra_most>\d+)\))?",
        rf"with somebody (?P<must_include>{_AGES}) among them",
        r"(?P<guests_off>[\d.]+) % off the single price of up to (?P<guests>\d+) guests?"
        r"(?: on a visit and (?P<guests_per_year>\d+) in all)?",
        r"(?P<parking_included>parking included)",
        r"(?:free entry|(?P<elsewhere_off>[\d.]+) % off) at '(?P<elsewhere>[^']*)'"
        r"(?: for up to (?P<elsewhere_most>\d+))?",
        r"good at '(?P<also_at>[^']*)' too (?:on the same day|within (?P<within_days>\d+) days)",
        r"good only at these times: (?P<valid>.+?)(?=, (?:from |until |to be booked |with '|sold only online|for a stay |to leave )|$)",
        r"from (?P<first_day>[A-Z][a-z]{2}, [A-Z][a-z]{2} \d+, \d{4})",
        r"until (?P<last_day>[A-Z][a-z]{2}, [A-Z][a-z]{2} \d+, \d{4})",
        r"to be booked at least (?P<book_days_ahead>\d+) days? ahead",
        r"for a stay of at most (?P<longest>\d+ h(?: \d+ min)?|\d+ min)",
        r"to leave by (?P<leave_by>\d{1,2}:\d{2}\s[AP]M)",
    )
)


def read_own_sentence(line: str) -> tuple[Offer, str] | None:
    """The offer that a sentence of this program says, and its currency; None where it is no such sentence.

    Args:
        line: with or without the full stop.
    """
    told = line.strip().removeprefix("- ").strip()
    if len(told) > LONGEST_SENTENCE or ": " not in told:
        return None
    body = told.removesuffix(".")
    for kind, head in _HEADS:
        match = head.match(body)
        found = _clauses(body, match.end()) if match else None
        if match is None or found is None:
            continue
        currency = _currency(match.groupdict().get("price") or found.get("extra_price") or "$0")
        try:
            offer = _OFFER.validate_python(_written(kind, match.groupdict(), found))
        except (ValidationError, ValueError):
            continue
        if sentence(offer, currency) == f"{body}.":
            return offer, currency
    return None


def _clauses(body: str, at: int) -> dict[str, Any] | None:
    """What stands behind the head, clause by clause; None where something is none of them."""
    found: dict[str, Any] = {"elsewhere": [], "other_ages": [], "also_at": []}
    while at < len(body):
        if not body.startswith(", ", at):
            return None
        match = next((m for clause in _CLAUSES if (m := clause.match(body, at + 2))), None)
        if match is None:
            return None
        told = {name: value for name, value in match.groupdict().items() if value is not None}
        if "elsewhere" in told:
            percent = told.get("elsewhere_off", "100")
            most = told.get("elsewhere_most")
            found["elsewhere"].append(
                {"place": told["elsewhere"], "percent_off": percent, "at_most": int(most) if most else None}
            )
        elif "also_at" in told:
            found["also_at"].append(
                {"place": told["also_at"], "within_days": int(told.get("within_days", "1"))}
            )
        elif "other_ages" in told:
            price = _amount(told.get("other_price"))
            found["other_ages"].append({"ages": _band(told["other_ages"]), "price": price})
        else:
            found |= told
        at = match.end()
    return found


def _currency(price: str) -> str:
    sign = re.match(r"[^\d]+", price)
    told = sign[0].strip() if sign else "$"
    return _SIGNS.get(told, told)


def _written(kind: str, head: Mapping[str, str | None], found: Mapping[str, Any]) -> dict[str, Any]:
    """The offer as a card holds it."""
    written: dict[str, Any] = {"kind": kind, "name": head["name"]}
    if kind == "discount":
        written |= {"percent_off": head["percent"], "offers": _list(head["offers"] or "")}
    else:
        written["price"] = _amount(head["price"])
    if head.get("ages"):
        written["ages"] = _band(str(head["ages"]))
    else:
        written["seats"] = [
            {"count": int(seat.split(" ")[0]), "ages": _band(seat.split(" ", 2)[2])}
            for seat in re.findall(_SEAT, str(head["seats"]))
        ]
    if kind == "pass":
        written |= {"months": int(head["months"] or 0), "named": head["whose"] == "named persons"}
    written |= {name: read(found[name]) for name, read in _READERS.items() if name in found}
    written |= {"at_least": int(found["taken"])} if "taken" in found else {}
    if "each_allows" in found:
        written["companions"] = {
            "ages": _band(found["companion_ages"]),
            "needs": _list(found.get("companion_needs", "")),
            "must_pay": "paying" in found,
            "each_allows": int(found["each_allows"]),
        }
    if "extra_price" in found:
        most = found.get("extra_most")
        written["extras"] = {
            "price": _amount(found["extra_price"]),
            "ages": _band(found["extra_ages"]),
            "at_most": int(most) if most else None,
        }
    if "guests" in found:
        written |= {"guests_at_most": int(found["guests"]), "guests_percent_off": found["guests_off"]}
    if "longest" in found:
        written["longest_stay_minutes"] = minutes_in(found["longest"])
    if "birthday" in found or "birth_month" in found:
        written["good_on"] = "birthday" if "birthday" in found else "birth month"
    written |= {"also_at": found["also_at"]} if found["also_at"] else {}
    written |= {"other_ages": found["other_ages"]} if found["other_ages"] else {}
    return written | ({"elsewhere": found["elsewhere"]} if found["elsewhere"] else {})


def _amount(price: str | None) -> str:
    return "0" if price is None else amount_in(re.sub(r"^[^\d]+", "", price)) or ""


def _list(text: str) -> list[str]:
    return re.findall(r"'([^']*)'", text)


def _day(text: str) -> date:
    return datetime.strptime(text, "%a, %b %d, %Y").date()  # noqa: DTZ007 - a date of the calendar


def _band(text: str) -> AgeBand:
    """The band of ages that 'aged 3 to 12', 'under 2', 'aged 6 to 23 months' or 'of any age' says."""
    numbers = [int(number) for number in re.findall(r"\d+", text)]
    unit = 1 if text.endswith("months") or " months " in text else MONTHS
    if not numbers:
        return AgeBand()
    if text.startswith("under"):
        return AgeBand(0, numbers[0] * unit - 1)
    if text.endswith("or over"):
        return AgeBand(numbers[0] * unit)
    first, last = numbers[0], numbers[-1]
    return AgeBand(first * unit, last if unit == 1 else last * unit + MONTHS - 1)


_READERS: Mapping[str, Callable[[str], object]] = {
    "needs": _list,
    "one_status_covers": int,
    "at_least": int,
    "at_most": int,
    "one_free_per": int,
    "leader_ages": _band,
    "must_include": _band,
    "parking_included": bool,
    "one_family": bool,
    "per_car": bool,
    "counts_everybody": bool,
    "includes": _list,
    "online_only": bool,
    "guests_per_year": int,
    "valid": str,
    "first_day": _day,
    "last_day": _day,
    "book_days_ahead": int,
    "leave_by": clock_in,
}
