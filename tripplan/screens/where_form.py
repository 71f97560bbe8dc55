"""Fields for a location: town and state, ZIP code, or pasted coordinates; looked up offline."""

from typing import Any

import streamlit as st

from tripplan.errors import Finding
from tripplan.files.gazetteer import parse_coordinates
from tripplan.planning.where import Where
from tripplan.screens.fields import Fields, FieldValue

_FIELDS = ("town", "subdivision", "postal_code", "coordinates", "address", "country", "time_zone")
_NAMED = ("town", "subdivision", "postal_code", "country")
_STAND_IN = {"latitude": 0, "longitude": 0, "time_zone": "UTC"}


def where_labels(path: str) -> dict[str, str]:
    """How the fields of the location at a path are called."""
    return {
        f"{path}.town": "Town",
        f"{path}.subdivision": "State",
        f"{path}.postal_code": "ZIP code",
        f"{path}.coordinates": "Coordinates",
        f"{path}.latitude": "Coordinates, latitude",
        f"{path}.longitude": "Coordinates, longitude",
        f"{path}.address": "Street and number",
        f"{path}.country": "Country",
        f"{path}.time_zone": "Time zone",
        path: "Location",
    }


def where_on_record(where: Where | None) -> dict[str, FieldValue]:
    """What the fields say for a location; nothing but the country for none."""
    if where is None:
        return {name: "US" if name == "country" else "" for name in _FIELDS}
    return {**{name: str(getattr(where, name, None) or "") for name in _FIELDS}, "coordinates": _pair(where)}


def _pair(where: Where) -> str:
    return "" if where.latitude is None else f"{where.latitude}, {where.longitude}"


def where_inputs(fields: Fields, *, with_address: bool) -> None:
    """Draw the fields.

    Args:
        fields: as filled with `where_on_record`.
        with_address: whether street and number matter; they are never looked up.
    """
    st.caption(
        "Give a town and its state, or a ZIP code, or coordinates; they are looked up on this computer. "
        "Outside the United States give coordinates, or paste the link of a map."
    )
    st.text_input("Town", key=fields.key("town"))
    st.text_input("State", key=fields.key("subdivision"), help="Two letters, such as IA.")
    st.text_input("ZIP code", key=fields.key("postal_code"))
    st.text_input(
        "Coordinates",
        key=fields.key("coordinates"),
        help="Latitude and longitude, such as 40.69, -89.59; pasted from a map they are "
        "usually right. A map's link is read, not opened.",
    )
    if with_address:
        st.text_input("Street and number (if you like)", key=fields.key("address"))
    st.text_input("Country", key=fields.key("country"), help="Two letters, such as US.")
    st.text_input(
        "Time zone (found by itself if left empty)",
        key=fields.key("time_zone"),
        help="A name such as America/Chicago.",
    )


def where_values(
    typed: dict[str, Any], before: Where | None, path: str
) -> tuple[dict[str, object], list[Finding]]:
    """What was typed, as the raw values of a location.

    Coordinates win over a ZIP code, and that over a town; so of the old location, what a change has made
    wrong is dropped, and the rest is looked up anew.

    Args:
        typed: the fields.
        before: the location that the form was filled with.
        path: of the location, for findings.

    Returns:
        The values and what could not be read of them; a stand-in then takes the place of bad coordinates.
    """
    told = {name: str(typed.get(name) or "").strip() for name in _FIELDS}
    for code in ("subdivision", "country"):
        told[code] = told[code].upper()
    values: dict[str, object] = {name: told[name] for name in (*_NAMED, "address", "time_zone") if told[name]}
    if before is not None and before.metropolitan:
        values["metropolitan"] = True
    filled_with = where_on_record(before)
    changed = {name for name in _FIELDS if told[name] != filled_with[name]}
    renamed, pasted_anew = changed & set(_NAMED), "coordinates" in changed
    if before is not None:
        outdated: set[str] = {"time_zone"} if renamed or pasted_anew else set()
        if renamed and not pasted_anew:
            outdated |= {"town", "subdivision"} if renamed == {"postal_code"} else {"postal_code"}
        for name in outdated - changed:
            values.pop(name, None)
    if not told["coordinates"] or (before is not None and renamed and not pasted_anew):
        return values, []
    try:
        point = parse_coordinates(told["coordinates"])
    except ValueError as unreadable:
        finding = Finding("", f"{path}.coordinates", told["coordinates"][:60], str(unreadable))
        return {**values, **_STAND_IN}, [finding]
    return {**values, "latitude": point.latitude, "longitude": point.longitude}, []
