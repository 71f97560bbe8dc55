"""What a parent typed about an outing, as the raw values of a logbook entry, and the other way round."""

import re
from collections.abc import Iterator, Mapping, Set
from datetime import date, time
from decimal import Decimal, InvalidOperation
from typing import Any

from tripplan.documents.family.car import Fuel
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import LogbookEntry, NapThere, PaidFor, SubjectTime
from tripplan.documents.model import Written
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.draft import PAID_FOR, TAUGHT_FROM_MONTHS
from tripplan.screens.widgets.choices import place_named
from tripplan.screens.widgets.fields import FieldValue, put
from tripplan.values.ages import ADULT, MONTHS
from tripplan.values.units import KM_PER_MILE

SOMEWHERE_ELSE = ""
CLOCKS = {
    "left_home": "Left home",
    "arrived": "Were there",
    "left_place": "Left for home",
    "home_again": "Home again",
}
_TIME = re.compile(r"(\d{1,2})(?:[:.h ]?(\d{2}))?\s*([ap])?\.?m?\.?", re.IGNORECASE)
_DISTANCES = {"km": "km", "odometer_out": "odometer_out_km", "odometer_home": "odometer_home_km"}
_OF_A_CHILD = ("did_", "learned_", "hours_", "counts_", "subject", "split")
_VALUE_OF = {
    **{name: name for name in ("day", "party", "study_unit", "away", "food", "fullness", "weather", "notes")},
    **{name: name for name in CLOCKS},
    **_DISTANCES,
    "receipts": "receipts_total",
}
"""Fields that stand for one value of the entry, and the name of that value."""
_FREE_SUBJECTS = 2
"""Empty lines for subjects beside those that are there."""


def children_of(household: Household, day: date) -> list[str]:
    """Who gets lines for what was done and learned: from the first birthday until they are grown."""
    return [
        member.name
        for member in household.members
        if member.months_on(day) >= MONTHS and member.months_on(day) not in ADULT
    ]


def children_in(entry: LogbookEntry, household: Household) -> list[str]:
    """The household's children on that day, and whoever else the entry tells of."""
    told = [child.member for child in entry.children]
    return list(dict.fromkeys([*children_of(household, entry.day), *told]))


def nap_lines(household: Household, entry: LogbookEntry) -> dict[str, list[NapThere | None]]:
    """Every nap that has a line, by name: those noted, then None for usual ones that are not."""
    usual = {member.name: len(member.naps) for member in household.members if member.naps}
    lines: dict[str, list[NapThere | None]] = {name: [] for name in usual}
    for nap in entry.naps:
        lines.setdefault(nap.member, []).append(nap)
    for name, count in usual.items():
        lines[name] += [None] * (count - len(lines[name]))
    return lines


def subject_lines(entry: LogbookEntry, name: str) -> list[SubjectTime | None]:
    """A child's subjects, then None for lines that are free."""
    child = entry.child(name)
    return [*(child.subjects if child else ()), *[None] * _FREE_SUBJECTS]


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
        "fuel": _text(entry.fuel.amount) if entry.fuel else "",
        "food": entry.food,
        "fullness": entry.fullness.value if entry.fullness else None,
        "study_unit": entry.study_unit,
        "away": entry.away,
        "weather": entry.weather,
        "notes": entry.notes,
    }
    for field, name in _DISTANCES.items():
        values[field] = _far(getattr(entry, name), household.units)
    for name in CLOCKS:
        clock: time | None = getattr(entry, name)
        values[name] = f"{clock:%H:%M}" if clock else ""
    for kind in PAID_FOR:
        amounts = [one.amount for one in entry.paid if one.kind == kind]
        values[f"paid_{kind}"] = _text(sum(amounts, Decimal(0))) if amounts else ""
    for name, naps in nap_lines(household, entry).items():
        for number, nap in enumerate(naps):
            values[f"nap{number}_{name}"] = str(nap.minutes) if nap else ""
            values[f"slept{number}_{name}"] = nap.where.value if nap and nap.where else None
    school_age = {m.name for m in household.members if m.months_on(entry.day) >= TAUGHT_FROM_MONTHS}
    for name in children_in(entry, household):
        child = entry.child(name)
        values[f"did_{name}"] = child.did if child else ""
        values[f"learned_{name}"] = child.learned if child else ""
        values[f"hours_{name}"] = _text(child.hours) if child else ""
        values[f"counts_{name}"] = child.counts_as_day if child else name in school_age
        for number, one in enumerate(subject_lines(entry, name)):
            values[f"subject{number}_{name}"] = one.subject if one else ""
            values[f"split{number}_{name}"] = _text(one.hours) if one else ""
    return values


def _text(amount: Decimal | None) -> str:
    return "" if amount is None else f"{amount:f}"


def _far(km: float | None, units: str) -> str:
    if km is None:
        return ""
    return f"{km / float(KM_PER_MILE) if units == 'mi' else km:.1f}".removesuffix(".0")


def entry_values(
    typed: Mapping[str, Any],
    shown: Mapping[str, FieldValue],
    before: LogbookEntry,
    family: Family,
    entry_id: str,
) -> dict[str, Any]:
    """The raw values of the entry that was typed in; texts that cannot be read stay, for the finding.

    Only fields that were changed are written: what they round, join or do not show stays as it was.

    Args:
        typed: what stands in the fields now.
        shown: what `on_record` filled them with.
        before: the entry or draft that they were filled from.
        family: the household and its places.
        entry_id: the id of the entry.
    """
    household = family.household
    changed = {name for name, value in shown.items() if typed[name] != value}
    values: dict[str, Any] = {**before.model_dump(mode="json", exclude_none=True), "id": entry_id}
    for field in changed & _VALUE_OF.keys():
        value = typed[field]
        if field in CLOCKS:
            value = clock_text(value)
        elif field in _DISTANCES:
            value = km_text(value, household.units)
        put(values, _VALUE_OF[field], "" if value is None else value)
    if "fuel" in changed:
        unit = before.fuel.unit if before.fuel else fuel_unit(household)
        put(values, "fuel", {"amount": typed["fuel"], "unit": unit} if typed["fuel"].strip() else "")
    if changed & {"place", "title"} or not (shown["place"] or shown["title"]):
        _put_where(values, typed, shown, family)
    if any(name.startswith("paid_") for name in changed):
        values["paid"] = [item for kind in PAID_FOR for item in _paid(kind, typed, changed, before)]
    if "party" in changed or any(name.startswith(("nap", "slept")) for name in changed):
        values["naps"] = [
            nap
            for name, naps in nap_lines(household, before).items()
            if name in typed["party"]
            for number, there in enumerate(naps)
            for nap in _nap(name, number, there, typed, changed)
        ]
    if "party" in changed or any(name.startswith(_OF_A_CHILD) for name in changed):
        values["children"] = [
            child
            for name in children_in(before, household)
            if name in typed["party"]
            for child in _child(name, before, typed, changed)
        ]
    return values


def _put_where(
    values: dict[str, Any], typed: Mapping[str, Any], shown: Mapping[str, FieldValue], family: Family
) -> None:
    """Set where it was; the outing to a place whose card is gone keeps its title."""
    place = place_named(family, typed["place"]) if typed["place"] else None
    put(values, "place", typed["place"])
    if place is not None:
        values["place_zone"] = place.where.zone.key
    elif typed["place"] != shown["place"]:
        values.pop("place_zone", None)
    if title := typed["title"].strip():
        values["title"] = title
    elif place is not None:
        values["title"] = place.name
    elif not typed["place"]:
        values["title"] = ""


def _raw(written: Written) -> dict[str, Any]:
    return written.model_dump(mode="json", exclude_none=True)


def _if_told(name: str, text: object) -> dict[str, str]:
    told = str(text or "").strip()
    return {name: told} if told else {}


def _paid(
    kind: PaidFor, typed: Mapping[str, Any], changed: Set[str], before: LogbookEntry
) -> Iterator[dict[str, Any]]:
    """One item; where its sum is unchanged, the items that were there."""
    if f"paid_{kind}" not in changed:
        yield from (_raw(one) for one in before.paid if one.kind == kind)
    elif text := typed[f"paid_{kind}"].strip():
        yield {"kind": kind, "amount": text}


def _nap(
    name: str, number: int, there: NapThere | None, typed: Mapping[str, Any], changed: Set[str]
) -> Iterator[dict[str, Any]]:
    slept, where = f"nap{number}_{name}", f"slept{number}_{name}"
    if not changed & {slept, where}:
        yield from [_raw(there)] if there else []
    elif typed[slept].strip() or (where in changed and typed[where]):
        yield {"member": name, **_if_told("minutes", typed[slept]), **_if_told("where", typed[where])}


def _child(
    name: str, before: LogbookEntry, typed: Mapping[str, Any], changed: Set[str]
) -> Iterator[dict[str, Any]]:
    """A child's line, where anything is told of the child; a day that is newly ticked is something."""
    subjects = [
        {
            "subject": typed[f"subject{number}_{name}"].strip(),
            **_if_told("hours", typed[f"split{number}_{name}"]),
        }
        for number in range(len(subject_lines(before, name)))
    ]
    line = {
        "member": name,
        "did": typed[f"did_{name}"],
        "learned": typed[f"learned_{name}"],
        "subjects": [one for one in subjects if any(one.values())],
        "counts_as_day": typed[f"counts_{name}"],
        **_if_told("hours", typed[f"hours_{name}"]),
    }
    mine = {f"{field}_{name}" for field in ("did", "learned", "hours", "counts")}
    mine |= {f"{field}{n}_{name}" for field in ("subject", "split") for n in range(len(subjects))}
    there = before.child(name)
    if not changed & mine:
        yield from [_raw(there)] if there else []
    elif (
        line["did"].strip()
        or line["learned"].strip()
        or line["subjects"]
        or "hours" in line
        or (f"counts_{name}" in changed and line["counts_as_day"])
    ):
        yield line


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
