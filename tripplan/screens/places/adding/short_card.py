"""What the short form says, as a card's file would hold it, or as an idea where that is not enough yet."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from tripplan.documents.places.place import FORMAT
from tripplan.documents.where import Where
from tripplan.errors import Finding
from tripplan.files.locations.gazetteer import NotFound
from tripplan.files.locations.where_text import locate_text
from tripplan.reading.typed.amounts import amount_in
from tripplan.screens.places.adding.week import DAYS, HOLIDAYS, hours_of_week
from tripplan.screens.widgets.fields import FieldValue
from tripplan.screens.widgets.locations.where_form import where_message

PRICE_ROWS = (
    ("adult", "Adult", "13+"),
    ("child", "Child", "3-12"),
    ("senior", "Senior", "65+"),
    ("small", "Small child", "under 3"),
)
"""The rows of prices: the beginning of the fields' names, the usual name and ages."""
_OPEN_BAND = re.compile(r"(\d{1,3})\s?\+")
ADULTS = "18+"
"""Somebody of these ages must come along on a family ticket."""


@dataclass(frozen=True)
class ShortCard:
    """The short form, as far as it was read.

    Attributes:
        raw: the card as its file would hold it; what is missing is left out.
        findings: what cannot be read, by the names of the form's fields.
        where: where it lies; None while that is not said, or not found.
        hours: in opening_hours syntax; empty while no day has times.
        priced: whether a price or free entry is said.
    """

    raw: dict[str, Any]
    findings: tuple[Finding, ...] = field(default=())
    where: Where | None = None
    hours: str = ""
    priced: bool = False

    @property
    def complete(self) -> bool:
        """Whether it is enough for a card."""
        return bool(self.raw.get("name") and self.where and self.hours and self.priced)


def at_first(name: str = "", where: str = "") -> dict[str, FieldValue]:
    """What the fields say at first."""
    said: dict[str, FieldValue] = {"name": name, "where": where, "season": "", "closed_on": [], "free": False}
    said |= dict.fromkeys(DAYS, "")
    for row, called, ages in PRICE_ROWS:
        said |= {f"{row}_name": called, f"{row}_ages": ages, f"{row}_price": "free" if row == "small" else ""}
    return {**said, "family_count": "", "family_price": "", "parking": ""}


def short_card(typed: Mapping[str, Any], card_id: str, home: Where, currency: str, today: date) -> ShortCard:
    """Read the short form.

    Args:
        typed: its fields.
        card_id: the id that the card gets.
        home: where the family lives: gives country and, where none is named, the state.
        currency: of the prices.
        today: when they were typed in.
    """
    findings: list[Finding] = []
    where = _where(str(typed["where"]), home, findings)
    closed = HOLIDAYS.get(home.country, HOLIDAYS[""])
    known = (where.point, where.zone) if where else None
    hours, faults = hours_of_week(
        {day: str(typed[day]) for day in DAYS},
        str(typed["season"]),
        [closed[name] for name in typed["closed_on"] if name in closed],
        known,
        today.year,
    )
    findings += [Finding("", fault.field, fault.typed[:60], fault.message) for fault in faults]
    offers, parking = (
        _offers(typed, home.country, findings),
        _amount(typed, "parking", home.country, findings),
    )
    raw: dict[str, Any] = {
        "format": FORMAT,
        "id": card_id,
        "name": str(typed["name"]).strip(),
        "currency": currency,
    }
    raw |= {"where": where.model_dump(mode="json", exclude_none=True)} if where else {}
    raw |= {"opening": {"hours": hours}} if hours else {}
    raw |= {"offers": offers} if offers else {}
    raw |= {"parking": {"price": parking}} if parking else {}
    raw["prices_read"] = {"on": today, "source": "typed in by you"}
    return ShortCard(raw, tuple(findings), where, hours, bool(offers))


def _where(text: str, home: Where, findings: list[Finding]) -> Where | None:
    if not text.strip():
        return None
    try:
        found = locate_text(text, home)
    except ValueError as unreadable:
        findings.append(Finding("", "where", text[:60], where_message(str(unreadable))))
        return None
    if isinstance(found, NotFound):
        findings.append(Finding("", "where", text[:60], where_message(found.message)))
        return None
    return found


def _amount(typed: Mapping[str, Any], name: str, country: str, findings: list[Finding]) -> str:
    """A price as a file holds it; empty where none is typed or it cannot be read."""
    text = str(typed[name]).strip()
    if not text:
        return ""
    amount = amount_in(text, country)
    if amount is None or amount.startswith("-"):
        findings.append(Finding("", name, text[:60], "a price reads like 14, $14, 14.50 or free"))
        return ""
    return amount


def _offers(typed: Mapping[str, Any], country: str, findings: list[Finding]) -> list[dict[str, Any]]:
    if typed["free"]:
        return [{"kind": "ticket", "name": "Entry", "price": "0"}]
    prices = {row: _amount(typed, f"{row}_price", country, findings) for row, *_ in PRICE_ROWS}
    family = _amount(typed, "family_price", country, findings)
    if not family and not any(price for row, price in prices.items() if row != "small"):
        return []
    offers: list[dict[str, Any]] = [
        {
            "kind": "ticket",
            "name": str(typed[f"{row}_name"]).strip() or called,
            "price": prices[row],
            "ages": str(typed[f"{row}_ages"]).strip() or "any",
        }
        for row, called, _ in PRICE_ROWS
        if prices[row]
    ]
    _end_before_older(offers)
    if family:
        count = amount_in(str(typed["family_count"]).strip() or "4", country) or "0"
        if not count.isdigit() or not 1 <= int(count) <= 50:
            findings.append(
                Finding("", "family_count", str(typed["family_count"])[:60], "how many people, such as 6")
            )
            count = "4"
        offers.append(
            {
                "kind": "bundle",
                "name": "Family",
                "price": family,
                "seats": [{"count": int(count)}],
                "must_include": ADULTS,
            }
        )
    return offers


def _end_before_older(offers: list[dict[str, Any]]) -> None:
    """'13+' beside '65+' means 13 to 64: an open band ends where the next open one begins."""
    starts = sorted(int(match[1]) for one in offers if (match := _OPEN_BAND.fullmatch(one["ages"])))
    for one in offers:
        match = _OPEN_BAND.fullmatch(one["ages"])
        older = next((start for start in starts if match and start > int(match[1])), None)
        if match and older is not None:
            one["ages"] = f"{int(match[1])}-{older - 1}"
