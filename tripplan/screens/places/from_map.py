"""Places to go near home, out of a map file on this computer: one press makes an idea or a card."""

from collections import OrderedDict
from collections.abc import Sequence
from functools import partial
from pathlib import Path
from tempfile import NamedTemporaryFile

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.documents.places.idea import Idea
from tripplan.documents.places.place import Place
from tripplan.documents.where import Where
from tripplan.errors import InputFaults
from tripplan.files.locations.gazetteer import NotFound, locate
from tripplan.language import wording
from tripplan.nearby.keeping import kept_place
from tripplan.nearby.kinds import KINDS, NAMES
from tripplan.nearby.listing import ATTRIBUTION, NearbyPlace, list_nearby
from tripplan.nearby.map_places import STEPS, MapPlace, OsmiumMissing, read_places
from tripplan.planning.family.family import Family
from tripplan.regular_file import path_from
from tripplan.screens.widgets.fields import filled
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, show_findings, show_notice
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View

_SPOT = "from_map"
_READ = f"{_SPOT}_file"
_LARGEST_UPLOAD = 100
"""A larger map is named by its path, as an upload is held in memory [MB]."""
_SHOWN = 15
_DOING = {
    "places": "looking for places",
    "outlines": "reading outlines",
    "positions": "finding where they are",
}
_DRIVES = (30, 45, 60, 90, 120)
_MAPS_KEPT = 2
_TOPICS = tuple(sorted({topic for kind in KINDS for topic in kind.topics}))


@st.cache_resource(show_spinner=False)
def _maps() -> "OrderedDict[tuple[str, int, int], list[MapPlace]]":
    """The places of the maps that were read last, newest last."""
    return OrderedDict()


def from_map(view: View, family: Family) -> None:
    """Offer to list the places of a map file.

    Args:
        view: whose places.
        family: whose home the drives begin at.
    """
    with st.expander("Find places on a map file", key="open_from_map"):
        fields = filled(_SPOT, {"path": ""})
        with st.form(f"{_SPOT}_form", border=False):
            st.text_input(
                "Where is the map on this computer?",
                key=fields.key("path"),
                placeholder="~/Downloads/my-state.osm.pbf",
                help="An OpenStreetMap extract (.osm.pbf) of your region; nothing is fetched.",
            )
            file = st.file_uploader(
                "Or bring a small one", type=["pbf"], key=f"{_SPOT}_upload", max_upload_size=_LARGEST_UPLOAD
            )
            st.form_submit_button("List its places", key=f"{_SPOT}_list", type="primary", on_click=_begin)
        if st.session_state.get(_READ):
            typed = str(st.session_state[fields.key("path")]).strip()
            places = _from_upload(file.getvalue()) if file is not None else _from_path(typed)
            if places is not None:
                _listed(view, family, places)
        show_notice(_SPOT)
        take_back_button(view, _SPOT)


def _begin() -> None:
    st.session_state[_READ] = True


def _stop() -> None:
    st.session_state[_READ] = False


def _from_path(typed: str) -> list[MapPlace] | None:
    if not typed:
        st.info("Name a map file, or bring one.")
        return None
    path = path_from(typed)
    try:
        found = path.stat()
    except OSError as trouble:
        st.error(plain(f"{typed}: {trouble.strerror or trouble}"))
        return None
    return _read(path, (str(path), found.st_size, int(found.st_mtime)))


def _from_upload(content: bytes) -> list[MapPlace] | None:
    key = ("upload", len(content), hash(content))
    if key in _maps():
        return _maps()[key]
    with NamedTemporaryFile(suffix=".osm.pbf") as kept:
        kept.write(content)
        kept.flush()
        return _read(Path(kept.name), key)


def _show(bar: DeltaGenerator, step: str, found: int) -> None:
    """Which step it is at; how far through the map it is, nobody can know before its end."""
    at = STEPS.index(step)
    bar.progress(at / len(STEPS), f"Step {at + 1} of {len(STEPS)}: {_DOING[step]}, {found:,} so far")


def _read(path: Path, key: tuple[str, int, int]) -> list[MapPlace] | None:
    """The places of a map, read once; pressing Stop, or leaving the page, ends the reading."""
    maps = _maps()
    if key not in maps:
        while_reading = st.empty()
        with while_reading.container():
            bar = st.progress(0.0, "Opening the map")
            st.button("Stop", key=f"{_SPOT}_stop", on_click=_stop)
        try:
            maps[key] = read_places(path, partial(_show, bar))
        except OsmiumMissing as missing:
            st.error(plain(f"{missing}"))
            return None
        except InputFaults as faults:
            show_findings(faults.findings)
            return None
        finally:
            while_reading.empty()
        while len(maps) > _MAPS_KEPT:
            maps.popitem(last=False)
    return maps[key]


@st.fragment
def _listed(view: View, family: Family, places: Sequence[MapPlace]) -> None:
    home = family.household.home
    with st.container(horizontal=True):
        kinds = st.multiselect("Kinds", list(NAMES), key=f"{_SPOT}_kinds", placeholder="all", width=220)
        topic = st.selectbox("To study", ["", *_TOPICS], key=f"{_SPOT}_topic", width=160)
        drive = st.selectbox("Within, in minutes", _DRIVES, index=2, key=f"{_SPOT}_drive", width=130)
    found = list_nearby(places, home.point, home.country, kinds=kinds, topic=topic or "", most_minutes=drive)
    st.caption(
        plain(
            f"{wording.counted(len(found), 'place')} on the map. Map data {ATTRIBUTION}. Ask before you go."
        )
    )
    shown = _SHOWN * (1 + int(st.session_state.get(f"{_SPOT}_more", 0)))
    for place in found[:shown]:
        _row(view, family, place)
    if len(found) > shown:
        st.button("Show more", key=f"{_SPOT}_show_more", on_click=_more)


def _more() -> None:
    st.session_state[f"{_SPOT}_more"] = int(st.session_state.get(f"{_SPOT}_more", 0)) + 1


def _row(view: View, family: Family, place: NearbyPlace) -> None:
    units, name = family.household.units, place.name or f"A {place.kind} without a name"
    way = f"{wording.minutes(place.drive_minutes.likely)}, {wording.distance(place.drive_km.likely, units)}"
    facts = (
        place.address,
        place.opening_hours,
        "free" if place.free else place.charge or ("costs something" if place.free is False else ""),
        place.telephone,
        place.web,
    )
    with st.container(border=True, key=f"{_SPOT}_{place.osm.replace('/', '_')}"):
        st.markdown(f"**{plain(name)}**  \n{plain(f'{place.kind}, {way}')}")
        told = " · ".join(filter(None, facts))
        if told:
            st.caption(plain(told))
        if st.button(
            plain(f"Add {name}"),
            key=f"{_SPOT}_add_{place.osm}",
            help="A card where the map says hours and price, else an idea.",
            on_click=_add,
            args=(view, family, place),
        ):
            st.rerun()


def _add(view: View, family: Family, place: NearbyPlace) -> None:
    household = family.household
    point = Where(
        address=place.address[:200],
        country=household.home.country,
        latitude=place.point.latitude,
        longitude=place.point.longitude,
    )
    where = locate(point)
    if isinstance(where, NotFound):
        refuse(_SPOT, f"{place.name}: {where.message}.")
        return
    taken = {*view.records.all(Place), *view.records.all(Idea)}
    kept = kept_place(place, where, household.currency, taken, view.today)
    called = "an idea" if isinstance(kept, Idea) else "a place"
    save_all(view, _SPOT, [(kept, 0)], f"{kept.name} is added as {called}, from the map.")
