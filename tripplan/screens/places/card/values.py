"""What the fields of a card say: from a card to the fields, and back to the card as its file holds it."""

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from pydantic import BaseModel

from tripplan.documents.places.place import Opening, Place, SpecialDay, Visit
from tripplan.errors import Finding
from tripplan.screens.places.card.fields import (
    FIELDS,
    MONTHS,
    MORE_OF_VISIT,
    SPECIAL_DAY_EXAMPLE,
    WHERE,
    How,
    field_beside,
)
from tripplan.screens.places.card.visit_fields import FIRST_VISIT_FIELDS, put_visit, show_line
from tripplan.screens.widgets.fields import FieldValue, lines_in, listed_in, put
from tripplan.screens.widgets.where_form import where_on_record, where_values

_SPECIAL_DAY = re.compile(
    r"(?P<day>\d{4}-\d{2}-\d{2})\s*:\s*(?P<name>.+?)(?:\s*;\s*(?P<factor>\d+(?:\.\d+)?)\s*(?:times)?)?"
)
_FORMS: Mapping[str, type[BaseModel]] = {"visit": Visit, "opening": Opening}


def on_record(place: Place | None, currency: str) -> dict[str, FieldValue]:
    """What the fields say for a card; what usually counts for a card that is yet to be made.

    Args:
        place: the card.
        currency: ISO 4217 code, for a new card's prices.
    """
    told = {field.name: _shown(field.how, _value(place, field.path)) for field in FIELDS}
    if place is None:
        told["currency"] = currency
    where = place.where if place else None
    return {**told, **where_on_record(where), **_visit_on_record(place)}


def _value(place: Place | None, path: str) -> object:
    holder, _, name = path.rpartition(".")
    if place is not None:
        return getattr(getattr(place, holder) if holder else place, name)
    field = _FORMS.get(holder, Place).model_fields[name]
    return None if field.is_required() else field.get_default()


def _special_days_written(days: Sequence[SpecialDay]) -> str:
    return "\n".join(f"{one.day}: {one.name}; {one.crowd_factor.normalize():f} times" for one in days)


_AS_SHOWN: Mapping[How, Callable[[Any], FieldValue]] = {
    How.TICK: bool,
    How.LINES: "\n".join,
    How.TIMES: lambda clocks: ", ".join(f"{clock:%H:%M}" for clock in clocks),
    How.MONTHS: lambda months: [MONTHS[month - 1] for month in months],
    How.SPECIAL_DAYS: _special_days_written,
}
_AS_ON_CARD: Mapping[How, Callable[[Any], object]] = {
    How.LINES: lines_in,
    How.TIMES: lambda text: [f"{clock:0>5}" for clock in listed_in(text)],
    How.MONTHS: lambda months: sorted(MONTHS.index(month) + 1 for month in months),
    How.CODE: lambda text: text.strip().upper(),
}


def _shown(how: How, value: object) -> FieldValue:
    if how in _AS_SHOWN:
        return _AS_SHOWN[how](value)
    return "" if value is None else str(value)


def _visit_on_record(place: Place | None) -> dict[str, FieldValue]:
    if place is None:
        return dict(FIRST_VISIT_FIELDS)
    visit = place.visit
    shows = [show_line(show) for show in visit.shows]
    stays = [
        f"{stay.ages}: {stay.shortest_minutes} to {stay.comfortable_minutes} min" for stay in visit.stays
    ]
    return {"shows": "\n".join(shows), "stays": "\n".join(stays), "quiet": visit.quiet_hours or ""}


def put_fields(values: dict[str, Any], typed: Mapping[str, Any], before: Place | None) -> list[Finding]:
    """Write the fields into a card as its file would hold it.

    What was not changed is left as it stands there, so that nothing is lost that a field cannot show.

    Args:
        values: the card; changed.
        typed: the fields.
        before: the card that they were filled from; None for a new one.

    Returns:
        What the form itself could not read.
    """
    said_before = {} if before is None else on_record(before, before.currency)
    changed = {name for name, value in typed.items() if before is None or value != said_before[name]}
    findings: list[Finding] = []
    if changed & set(WHERE):
        where = before.where if before else None
        values["where"], findings = where_values(dict(typed), where, "where")
    for field in (field for field in FIELDS if field.name in changed):
        read = _AS_ON_CARD.get(field.how)
        put(values, field.path, read(typed[field.name]) if read else typed[field.name])
    if "special_days" in changed:
        values["special_days"] = list(_special_days(typed["special_days"], findings))
    if changed & FIRST_VISIT_FIELDS.keys():
        findings += _put_visit(values, typed, changed)
    return findings


def _special_days(text: str, findings: list[Finding]) -> Iterator[dict[str, str]]:
    for line in lines_in(text):
        match = _SPECIAL_DAY.fullmatch(line)
        if match is None:
            findings.append(
                Finding("", "special_days", line[:60], f"a line reads like '{SPECIAL_DAY_EXAMPLE}'")
            )
            continue
        factor = {"crowd_factor": match["factor"]} if match["factor"] else {}
        yield {"day": match["day"], "name": match["name"], **factor}


def _put_visit(values: dict[str, Any], typed: Mapping[str, Any], changed: set[str]) -> list[Finding]:
    """Shows, stays and quiet hours, as far as they were changed."""
    told: dict[str, Any] = {}
    findings = [found for found in put_visit(told, typed) if field_beside(found.field) in changed]
    new, visit = told.get("visit", {}), values.setdefault("visit", {})
    for path in (path for name, path in MORE_OF_VISIT.items() if name in changed):
        visit.pop(path, None)
        if path in new:
            visit[path] = new[path]
    return findings
