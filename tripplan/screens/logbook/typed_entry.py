"""What a parent typed about an outing, as the raw values of a logbook entry, and the other way round."""

from collections.abc import Iterator, Mapping, Set
from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

from tripplan.documents.family.car import Fuel
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import ChildDay, LogbookEntry, NapThere, PaidFor
from tripplan.documents.model import Written
from tripplan.errors import Finding
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.draft import PAID_FOR, TAUGHT_FROM_MONTHS
from tripplan.reading.typed.amounts import amount_in
from tripplan.screens.forms import answers
from tripplan.screens.forms.answers import Raw, put_changes
from tripplan.screens.forms.questions import Question, Setting, prefixed, questions
from tripplan.screens.widgets.choices import place_named
from tripplan.screens.widgets.fields import FieldValue, put
from tripplan.values.ages import ADULT, MONTHS

SOMEWHERE_ELSE = ""
ENTRY = questions(LogbookEntry, plain=True)
"""What is asked about the outing as a whole."""
_WHERE = ("place", "title")
_CHILD = tuple(
    replace(one, waiting=2) for one in questions(ChildDay, leaving_out=("member",))
)  # two free lines for subjects
_NAP = questions(NapThere, "minutes", "where")


def about_child(name: str) -> tuple[Question, ...]:
    """What is asked about one child's day."""
    return prefixed(_CHILD, name)


def about_nap(name: str, number: int) -> tuple[Question, ...]:
    """What is asked about one nap of one child."""
    return prefixed(_NAP, f"{name}_nap{number}")


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
    setting = Setting(household.units, entry.currency)
    values = answers.on_record(ENTRY, entry, setting)
    values["title"] = "" if unnamed or entry.place else entry.title
    values["fuel"] = f"{entry.fuel.amount:f}" if entry.fuel else ""
    for kind in PAID_FOR:
        amounts = [one.amount for one in entry.paid if one.kind == kind]
        values[f"paid_{kind}"] = f"{sum(amounts, Decimal(0)):f}" if amounts else ""
    for name, naps in nap_lines(household, entry).items():
        for number, nap in enumerate(naps):
            values |= answers.on_record(about_nap(name, number), nap, setting)
    school_age = {m.name for m in household.members if m.months_on(entry.day) >= TAUGHT_FROM_MONTHS}
    for name in children_in(entry, household):
        values |= answers.on_record(about_child(name), entry.child(name), setting)
        if entry.child(name) is None:
            values[f"{name}_counts_as_day"] = name in school_age
    return values


def entry_values(
    typed: Mapping[str, Any],
    shown: Mapping[str, FieldValue],
    before: LogbookEntry,
    family: Family,
    entry_id: str,
) -> tuple[Raw, list[Finding]]:
    """The raw values of the entry that was typed in, and what the form itself could not read.

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
    values: Raw = {**_raw(before), "id": entry_id}
    asked = tuple(one for one in ENTRY if one.name not in _WHERE)
    found = put_changes(values, asked, typed, shown, Setting(household.units, before.currency))
    if "fuel" in changed:
        unit = before.fuel.unit if before.fuel else fuel_unit(household)
        put(
            values,
            "fuel",
            {"amount": amount_in(typed["fuel"]) or typed["fuel"], "unit": unit}
            if typed["fuel"].strip()
            else "",
        )
    if changed & set(_WHERE) or not (shown["place"] or shown["title"]):
        _put_where(values, typed, shown, family)
    if any(name.startswith("paid_") for name in changed):
        values["paid"] = [item for kind in PAID_FOR for item in _paid(kind, typed, changed, before)]
    naps = [
        (name, number, nap)
        for name, there in nap_lines(household, before).items()
        for number, nap in enumerate(there)
    ]
    of_naps = {one.name for name, number, _ in naps for one in about_nap(name, number)}
    if changed & {"party", *of_naps}:
        values["naps"] = [
            line
            for name, number, nap in naps
            if name in typed["party"]
            for line in _nap(name, number, nap, typed, shown)
        ]
    of_outing = {"fuel", *(one.name for one in ENTRY), *(f"paid_{kind}" for kind in PAID_FOR)}
    if "party" in changed or changed - of_outing - of_naps:
        values["children"] = [
            child
            for name in children_in(before, household)
            if name in typed["party"]
            for child in _child(name, before.child(name), typed, shown)
        ]
    return values, found


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


def _raw(written: Written) -> Raw:
    return written.model_dump(mode="json", exclude_none=True)


def _line(
    name: str,
    there: NapThere | ChildDay | None,
    asked: tuple[Question, ...],
    typed: Mapping[str, Any],
    shown: Mapping[str, FieldValue],
) -> tuple[Raw | None, Set[str]]:
    """What is told of one child or nap, None for nothing, and which of its fields were changed."""
    keys = answers.on_record(asked, there, Setting())
    changed = {key for key in keys if typed[key] != shown[key]}
    if not changed:
        return (_raw(there) if there else None), changed
    line = _raw(there) if there else {"member": name}
    put_changes(line, asked, typed, shown if there else {}, Setting())
    return line, changed


def _nap(
    name: str, number: int, there: NapThere | None, typed: Mapping[str, Any], shown: Mapping[str, FieldValue]
) -> Iterator[Raw]:
    asked = about_nap(name, number)
    line, changed = _line(name, there, asked, typed, shown)
    where = asked[1].name
    if line and ("minutes" in line or (where in changed and typed[where])):
        yield line


def _child(
    name: str, there: ChildDay | None, typed: Mapping[str, Any], shown: Mapping[str, FieldValue]
) -> Iterator[Raw]:
    """A child's line, where anything is told of the child; a day that is newly ticked is something."""
    line, changed = _line(name, there, about_child(name), typed, shown)
    told = line and any(line.get(field) for field in ("did", "learned", "subjects", "hours"))
    counts = f"{name}_counts_as_day"
    if line and (told or not changed or (counts in changed and typed[counts])):
        yield line


def _paid(kind: PaidFor, typed: Mapping[str, Any], changed: Set[str], before: LogbookEntry) -> Iterator[Raw]:
    """One item; where its sum is unchanged, the items that were there."""
    if f"paid_{kind}" not in changed:
        yield from (_raw(one) for one in before.paid if one.kind == kind)
    elif text := typed[f"paid_{kind}"].strip():
        yield {"kind": kind, "amount": amount_in(text) or text}
