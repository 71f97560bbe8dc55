"""Fields for a location: one that understands everything, and one for each part; looked up offline."""

import re
from typing import Any

import streamlit as st

from tripplan.documents.field_spec import asked, labels
from tripplan.documents.where import LookupResult, Where
from tripplan.errors import Finding
from tripplan.files.locations.gazetteer import parse_coordinates
from tripplan.files.locations.where_text import read_where
from tripplan.screens.widgets.fields import Fields, FieldValue

_PARTS = ("town", "subdivision", "postal_code", "coordinates", "address", "country", "time_zone")
_NAMED = ("town", "subdivision", "postal_code", "country")
_STAND_IN = {"latitude": 0, "longitude": 0, "time_zone": "UTC"}
_ON_SCREEN = (
    (
        "give latitude and longitude instead",
        "give coordinates or a map's link, or look it up on the internet",
    ),
    ("give latitude and longitude, or a town, or a postal code", "say where it is"),
    ("give its state as subdivision", "give its state"),
    ("give the state as subdivision", "give the state"),
    ("give its IANA name", "give its name, such as America/Chicago"),
    (
        "a time zone is an IANA name such as 'America/Chicago'",
        "a time zone has a name such as America/Chicago",
    ),
    (
        "west of Greenwich is negative; this lies on the other side",
        "this lies east of Greenwich and the United States lie west of it: write -89.59 for 89.59 there, or "
        "put the country right",
    ),
)
"""What the findings about a location say of a file's fields, and how the screen says it."""


def where_labels(path: str) -> dict[str, str]:
    """How the fields of the location at a path are called."""
    own = {f"{path}.where": "Where is it?", f"{path}.coordinates": "Coordinates", path: "Location"}
    return {**dict(labels(Where, path)), **own}


def where_message(message: str) -> str:
    """What is wrong with a location, in the words of the screen rather than of its file."""
    for in_file, on_screen in _ON_SCREEN:
        message = message.replace(in_file, on_screen)
    return message


def where_on_record(where: Where | None) -> dict[str, FieldValue]:
    """What the fields say for a location; nothing but the country for none."""
    if where is None:
        return {**_parts_on_record(None), "where": "", "metropolitan": False}
    return {**_parts_on_record(where), "where": _written(where), "metropolitan": where.metropolitan}


def _parts_on_record(where: Where | None) -> dict[str, str]:
    if where is None:
        return {name: "US" if name == "country" else "" for name in _PARTS}
    return {**{name: str(getattr(where, name, None) or "") for name in _PARTS}, "coordinates": _pair(where)}


def _pair(where: Where) -> str:
    return "" if where.latitude is None else f"{where.latitude}, {where.longitude}"


def _written(where: Where) -> str:
    """A location on one line, such as 'Dubuque, IA 52001'."""
    state = f"{where.subdivision} {where.postal_code}".strip()
    return ", ".join(filter(None, (where.town, state))) if where.town or where.postal_code else _pair(where)


def where_inputs(fields: Fields, *, with_address: bool, with_metropolitan: bool = False) -> None:
    """Draw the fields.

    Args:
        fields: as filled with `where_on_record`.
        with_address: whether street and number matter; they are never looked up.
        with_metropolitan: whether it matters that the roads around are full at times.
    """
    st.text_input("Where is it?", key=fields.key("where"), placeholder="Peoria, IL")
    st.caption(
        "A town and its state, a ZIP code, coordinates such as 40.69, -89.59, or the link of a map. It is "
        "read and looked up on this computer, and no link is opened. Outside the United States give "
        "coordinates or a link."
    )
    st.text_input("Country", key=fields.key("country"), help="Two letters, such as US.")
    if with_metropolitan:
        st.checkbox(asked(Where, "metropolitan").spoken().label, key=fields.key("metropolitan"))
    with st.expander("Or enter the address in parts", key=fields.key("parts")):
        st.caption("What is changed in the line above wins over these.")
        st.text_input("Town", key=fields.key("town"))
        st.text_input("State", key=fields.key("subdivision"), help="Two letters, such as IA.")
        st.text_input("ZIP code", key=fields.key("postal_code"))
        st.text_input("Coordinates", key=fields.key("coordinates"), help="Latitude first; or a map's link.")
        if with_address:
            st.text_input("Street and number (if you like)", key=fields.key("address"))
        st.text_input(
            "Time zone (found by itself if left empty)",
            key=fields.key("time_zone"),
            help="A name such as America/Chicago.",
        )


def where_values(
    typed: dict[str, Any], before: Where | None, path: str
) -> tuple[dict[str, object], list[Finding]]:
    """What was typed, as the raw values of a location.

    'Where is it?' wins over the parts where it was changed. Of the parts, coordinates win over a ZIP code,
    and that over a town; so of the old location, what a change has made wrong is dropped, and the rest is
    looked up anew.

    Args:
        typed: the fields.
        before: the location that the form was filled with.
        path: of the location, for findings.

    Returns:
        The values and what could not be read of them; a stand-in then takes the place of bad coordinates.
    """
    told = {name: str(typed.get(name) or "").strip() for name in _PARTS}
    line = str(typed.get("where") or "").strip()
    in_line: dict[str, str] = {}
    if line and line != where_on_record(before)["where"]:
        try:
            in_line = _parts_in(line)
        except ValueError as unreadable:
            return {**_values(told), **_STAND_IN}, [_unreadable(f"{path}.where", line, unreadable)]
    told |= in_line
    for code in ("subdivision", "country"):
        told[code] = told[code].upper()
    values = _values(told)
    if typed.get("metropolitan", before is not None and before.metropolitan):
        values["metropolitan"] = True
    filled_with = _parts_on_record(before)
    changed = {name for name in _PARTS if told[name] != filled_with[name]}
    renamed = changed & set(_NAMED)
    pasted_anew = "coordinates" in changed or bool(in_line.get("coordinates"))
    if before is not None:
        outdated: set[str] = {"time_zone"} if renamed or pasted_anew else set()
        if renamed and not pasted_anew:
            by_code = renamed == {"postal_code"} and told["postal_code"]
            outdated |= {"town", "subdivision"} if by_code else {"postal_code"}
        for name in outdated - changed:
            values.pop(name, None)
    if before is not None and before.by_town and not renamed and not pasted_anew:
        values["by_town"] = True
    if not told["coordinates"] or (before is not None and renamed and not pasted_anew):
        return values, []
    try:
        point = parse_coordinates(told["coordinates"])
    except ValueError as unreadable:
        finding = _unreadable(f"{path}.coordinates", told["coordinates"], unreadable)
        return {**values, **_STAND_IN}, [finding]
    return {**values, "latitude": point.latitude, "longitude": point.longitude}, []


def _values(told: dict[str, str]) -> dict[str, object]:
    return {name: told[name] for name in (*_NAMED, "address", "time_zone") if told[name]}


def _unreadable(field: str, text: str, why: ValueError) -> Finding:
    return Finding("", field, text[:60], str(why))


def _parts_in(line: str) -> dict[str, str]:
    """The parts that a line names; a name takes the place of every other name and of coordinates."""
    read = read_where(line)
    if read.point is not None:
        return {"coordinates": f"{round(read.point.latitude, 6)}, {round(read.point.longitude, 6)}"}
    parts = {"town": read.town, "subdivision": read.subdivision, "postal_code": read.postal_code}
    return parts | ({"address": read.address} if read.address else {}) | {"coordinates": ""}


def text_to_look_up(fields: Fields) -> str:
    """What stands in the fields of a location, as a question to an address search; without the street.

    Args:
        fields: as filled with `where_on_record`; of a form, as they were last sent.

    Returns:
        The question; empty where nothing is named or where coordinates already say it.
    """
    typed = {name: str(st.session_state.get(fields.key(name), "")).strip() for name in (*_PARTS, "where")}
    names = [typed["town"], typed["subdivision"], typed["postal_code"]]
    if typed["where"]:
        try:
            read = read_where(typed["where"])
        except ValueError:
            return ""
        names = [read.town, read.subdivision, read.postal_code]
    elsewhere = typed["country"] if typed["country"] != "US" else ""
    return ", ".join(filter(None, (*names, elsewhere))) if any(names) else ""


def fill_in_answer(fields: Fields, found: LookupResult) -> None:
    """Put what an address search answered into the fields of a location; to be called by a button's press.

    Args:
        fields: as filled with `where_on_record`.
        found: the answer; a part of the question without a number is taken to be the town.
    """
    parts = (part.strip() for part in found.text.split(","))
    answer = {
        "where": f"{found.latitude}, {found.longitude}",
        "town": next((part for part in parts if part and not re.search(r"\d", part)), ""),
        "postal_code": "",
        "subdivision": found.subdivision,
        "time_zone": "",
        **({"country": found.country} if found.country else {}),
    }
    for name, value in answer.items():
        st.session_state[fields.key(name)] = value
