"""What a parent typed about an outing, as the raw values of a logbook entry, and the other way round."""

import re
from collections.abc import Mapping, Sequence
from datetime import date, time
from decimal import Decimal, InvalidOperation
from typing import Any

from tripplan.planning.ages import ADULT, MONTHS
from tripplan.planning.car import Fuel
from tripplan.planning.family import Family
from tripplan.planning.household import Household
from tripplan.planning.logbook.draft import PAID_FOR, TAUGHT_FROM_MONTHS
from tripplan.planning.logbook.entry import LogbookEntry
from tripplan.planning.member import Member
from tripplan.planning.units import KM_PER_MILE
from tripplan.screens.widgets.choices import place_named
from tripplan.screens.widgets.fields import FieldValue

SOMEWHERE_ELSE = ""
CLOCKS = {
    "left_home": "Left home",
    "arrived": "Were there",
    "left_place": "Left for home",
    "home_again": "Home again",
}
_TIME = re.compile(r"(\d{1,2})(?:[:.h ]?(\d{2}))?\s*([ap])?\.?m?\.?", re.IGNORECASE)
_SUBJECT = re.compile(r"(.*?)\s+(\d+(?:[.]\d+)?)\s*h?")


def children_of(household: Household, day: date) -> list[Member]:
    """Those who get lines for what they did and learned: from the first birthday until they are grown."""
    return [
        member
        for member in household.members
        if member.months_on(day) >= MONTHS and member.months_on(day) not in ADULT
    ]


def nappers_of(household: Household) -> list[Member]:
    """Those who get a line for their nap."""
    return [member for member in household.members if member.naps]


def fuel_unit(household: Household) -> str:
    """The unit in which this family reads what the car took."""
    if household.car is not None and household.car.fuel is Fuel.KWH_PER_100_KM:
        return "kWh"
    return "US gal" if household.units == "mi" else "L"


def on_record(entry: LogbookEntry, household: Household, *, unnamed: bool) -> dict[str, FieldValue]:
    """What the fields of the form say for an entry.

    Args:
        entry: the entry, or a draft of one.
        household: the people and units.
        unnamed: whether the parent has yet to say where it was.
    """
    values: dict[str, FieldValue] = {
        "place": entry.place or SOMEWHERE_ELSE,
        "title": "" if unnamed or entry.place else entry.title,
        "day": entry.day,
        "party": list(entry.party),
        "receipts": _text(entry.receipts_total),
        "km": _far(entry.km, household.units),
        "odometer_out": _far(entry.odometer_out_km, household.units),
        "odometer_home": _far(entry.odometer_home_km, household.units),
        "fuel": _text(entry.fuel.amount) if entry.fuel else "",
        "food": entry.food,
        "fullness": entry.fullness.value if entry.fullness else None,
        "study_unit": entry.study_unit,
        "away": entry.away,
        "weather": entry.weather,
        "notes": entry.notes,
    }
    for name in CLOCKS:
        clock: time | None = getattr(entry, name)
        values[name] = f"{clock:%H:%M}" if clock else ""
    for kind in PAID_FOR:
        amounts = [one.amount for one in entry.paid if one.kind == kind]
        values[f"paid_{kind}"] = _text(sum(amounts, Decimal(0))) if amounts else ""
    for member in nappers_of(household):
        naps = [nap for nap in entry.naps if nap.member == member.name]
        values[f"nap_{member.name}"] = str(sum(nap.minutes for nap in naps)) if naps else ""
        values[f"slept_{member.name}"] = naps[0].where.value if naps and naps[0].where else None
    for member in children_of(household, entry.day):
        child = entry.child(member.name)
        values[f"did_{member.name}"] = child.did if child else ""
        values[f"learned_{member.name}"] = child.learned if child else ""
        values[f"subjects_{member.name}"] = _subjects_text(entry, member.name)
        values[f"hours_{member.name}"] = _text(child.hours) if child else ""
        values[f"counts_{member.name}"] = (
            child.counts_as_day if child else member.months_on(entry.day) >= TAUGHT_FROM_MONTHS
        )
    return values


def _text(amount: Decimal | None) -> str:
    return "" if amount is None else f"{amount:f}"


def _far(km: float | None, units: str) -> str:
    if km is None:
        return ""
    return f"{km / float(KM_PER_MILE) if units == 'mi' else km:.1f}".removesuffix(".0")


def _subjects_text(entry: LogbookEntry, name: str) -> str:
    child = entry.child(name)
    return ", ".join(
        one.subject if one.hours is None else f"{one.subject} {one.hours.normalize():f}"
        for one in (child.subjects if child else ())
    )


def entry_values(
    typed: Mapping[str, Any], before: LogbookEntry, family: Family, entry_id: str
) -> dict[str, Any]:
    """The raw values of the entry that was typed in; texts that cannot be read stay, for the finding.

    Args:
        typed: what stands in the fields of `on_record`.
        before: the entry or draft that the form was filled with; what has no field is kept.
        family: the household and its places.
        entry_id: the id of the entry.
    """
    household = family.household
    place = place_named(family, typed["place"]) if typed["place"] else None
    party = list(typed["party"])
    title = str(typed["title"]).strip()
    if not title and place is not None:
        title = place.name
    elif not title and typed["place"] == before.place:
        title = before.title  # the card is gone, the outing stays
    values: dict[str, Any] = {
        "id": entry_id,
        "day": typed["day"],
        "title": title,
        "party": party,
        "currency": before.currency,
        "home_zone": before.home_zone,
        "planned": before.planned,
        "study_unit": str(typed["study_unit"]).strip(),
        "away": bool(typed["away"]),
        "paid": _paid(typed, before),
        "naps": [
            {"member": m.name, "minutes": minutes, **_if_told("where", typed[f"slept_{m.name}"])}
            for m in nappers_of(household)
            if m.name in party and (minutes := str(typed[f"nap_{m.name}"]).strip())
        ],
        "children": [
            _child(typed, member.name)
            for member in children_of(household, before.day)
            if member.name in party and _told_of(typed, member.name)
        ],
        "weather": str(typed["weather"]),
        "notes": str(typed["notes"]),
        **_if_told("place", typed["place"]),
        **_if_told("receipts_total", typed["receipts"]),
        **_if_told("food", typed["food"]),
        **_if_told("fullness", typed["fullness"]),
    }
    if place is not None:
        values["place_zone"] = place.where.zone.key
    elif before.place_zone and typed["place"] == (before.place or ""):
        values["place_zone"] = before.place_zone
    for name in CLOCKS:
        values |= _if_told(name, clock_text(str(typed[name])))
    for name, field in (
        ("km", "km"),
        ("odometer_out_km", "odometer_out"),
        ("odometer_home_km", "odometer_home"),
    ):
        values |= _if_told(name, km_text(str(typed[field]), household.units))
    if fuel := str(typed["fuel"]).strip():
        values["fuel"] = {"amount": fuel, "unit": before.fuel.unit if before.fuel else fuel_unit(household)}
    if before.as_planned is not None:
        values["as_planned"] = before.as_planned.model_dump(mode="json", exclude_none=True)
    return values


def _if_told(name: str, text: object) -> dict[str, str]:
    told = str(text or "").strip()
    return {name: told} if told else {}


def _paid(typed: Mapping[str, Any], before: LogbookEntry) -> list[dict[str, str]]:
    """One item a kind; where its sum is unchanged, the items that were there stay as they were."""
    paid: list[dict[str, str]] = []
    for kind in PAID_FOR:
        there = [one for one in before.paid if one.kind == kind]
        text = str(typed[f"paid_{kind}"]).strip()
        if there and text == _text(sum((one.amount for one in there), Decimal(0))):
            paid += [{"kind": kind, "amount": _text(one.amount), "what": one.what} for one in there]
        elif text:
            paid.append({"kind": kind, "amount": text})
    return paid


def _told_of(typed: Mapping[str, Any], name: str) -> bool:
    """Whether anything is noted of a child; an unticked day is something."""
    texts = (typed[f"{field}_{name}"] for field in ("did", "learned", "subjects", "hours"))
    return any(str(text).strip() for text in texts)


def _child(typed: Mapping[str, Any], name: str) -> dict[str, Any]:
    return {
        "member": name,
        "did": str(typed[f"did_{name}"]),
        "learned": str(typed[f"learned_{name}"]),
        "subjects": subjects_in(str(typed[f"subjects_{name}"])),
        "counts_as_day": bool(typed[f"counts_{name}"]),
        **_if_told("hours", typed[f"hours_{name}"]),
    }


def subjects_in(text: str) -> Sequence[dict[str, str]]:
    """Subjects with commas between them, hours behind where they are split: 'science 1.5, history'."""
    subjects: list[dict[str, str]] = []
    for part in text.replace("\n", ",").split(","):
        told = " ".join(part.split())
        match = _SUBJECT.fullmatch(told)
        if match and match[1]:
            subjects.append({"subject": match[1], "hours": match[2]})
        elif told:
            subjects.append({"subject": told})
    return subjects


def clock_text(text: str) -> str:
    """A time of day as a form takes it, from '9:05', '905', '9.05' or '9:05 pm'; else the text itself."""
    told = text.strip()
    match = _TIME.fullmatch(told)
    if not match:
        return told
    hour, minute = int(match[1]), int(match[2] or 0)
    if match[3]:
        if not 1 <= hour <= 12:
            return told
        hour = hour % 12 + (12 if match[3].casefold() == "p" else 0)
    return f"{hour:02}:{minute:02}"


def km_text(text: str, units: str) -> str:
    """A distance in the household's unit as kilometres; what is no number stays as it is."""
    told = text.strip().replace(",", "")
    try:
        far = Decimal(told)
    except InvalidOperation:
        return text.strip()
    if not far.is_finite():
        return told
    return f"{(far * KM_PER_MILE if units == 'mi' else far).normalize():f}"
