"""Real roads: the regions on this computer, and setting one up from a map file."""

from pathlib import Path

import streamlit as st

from tripplan.errors import InputFaults, RoadsUnusable, UnknownName
from tripplan.language import wording
from tripplan.regular_file import path_from
from tripplan.roads.background import BackgroundBuilds
from tripplan.roads.building import build_state, extract_of, megabytes, space_for
from tripplan.roads.engine import roads_missing
from tripplan.roads.extract import Extract, read_extract
from tripplan.roads.network import CREDIT
from tripplan.roads.regions import RegionFolder, region_name
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, show_notice, tell
from tripplan.screens.widgets.view import View

_SPOT = "roads"
_PATH = "roads_path"
_CHECKED = "roads_checked"
_LOOK_AGAIN_SECONDS = 1.0
_GUIDE = (
    "With a map of your region, distances and times are those of the real roads instead of an estimate, and "
    "nothing is sent anywhere. Extracts of OpenStreetMap by region are offered by several servers: search "
    'for "OpenStreetMap extract" and your state or country, and save the file that ends in .osm.pbf. Take '
    "a map that holds home and the places, with some room around; a road beyond its border is not known."
)


@st.cache_resource(show_spinner=False)
def _builds() -> BackgroundBuilds:
    return BackgroundBuilds()


def render_roads(view: View) -> None:
    """List the regions, show how far a build is, and offer to set one up."""
    st.header("Real roads", anchor=False)
    show_notice(_SPOT)
    network = view.services.roads
    folder = network.folder
    regions, unfinished = folder.regions(), folder.unfinished()
    missing = roads_missing()
    if missing:
        st.caption(plain(missing))
    for reason in network.unusable():
        if reason != missing:
            st.warning(plain(reason))
    for region in regions:
        dated = f"map of {wording.day(region.map_date)}" if region.map_date else "map without a date"
        st.markdown(plain(f"{region.name}: {dated}, {megabytes(region.size)}"))
        _remove_button(folder, region.name)
    if regions:
        st.caption(plain(f"Credit: {CREDIT}."))
    for name in sorted({*unfinished, *_builds().going_on()}):
        if _going_on(folder, name):
            _progress(folder, name)
        else:
            _interrupted(view, folder, name)
    if not missing:
        with st.expander("Set up the roads of a region", key="open_roads"):
            _set_up(view, folder)


def _remove_button(folder: RegionFolder, name: str) -> None:
    st.button(plain(f"Remove {name}"), key=f"remove_roads_{name}", on_click=_remove, args=(folder, name))


def _remove(folder: RegionFolder, name: str) -> None:
    try:
        folder.remove(name)
    except (RoadsUnusable, UnknownName) as trouble:
        refuse(_SPOT, str(trouble))
    else:
        tell(_SPOT, f"The roads of {name} are removed.")


def _going_on(folder: RegionFolder, name: str) -> bool:
    """Whether this window or another one builds a region; a build just begun does not hold its lock yet."""
    return name in _builds().going_on() or folder.being_built(name)


@st.fragment(run_every=_LOOK_AGAIN_SECONDS)
def _progress(folder: RegionFolder, name: str) -> None:
    """A bar that moves by itself; when the build has ended the whole page is shown again."""
    if not _going_on(folder, name):
        st.rerun()
    state = build_state(folder, name)
    share, doing = (state.share, state.doing) if state else (0.0, "beginning")
    st.progress(share, text=plain(f"{name}: {doing}. This page may be left meanwhile."))


def _interrupted(view: View, folder: RegionFolder, name: str) -> None:
    state, path = build_state(folder, name), extract_of(folder, name)
    why = state.failed if state and state.failed else "the building was interrupted"
    st.warning(plain(f"{name} is not finished: {why}"))
    if path is not None and roads_missing() is None:
        st.button("Build it again", key=f"again_roads_{name}", on_click=_begin, args=(view, path, name))
    if name not in {region.name for region in folder.regions()}:
        _remove_button(folder, name)


def _set_up(view: View, folder: RegionFolder) -> None:
    st.caption(_GUIDE)
    with st.form("roads_form"):
        st.text_input("Where the map file lies on this computer", key=_PATH, placeholder="region.osm.pbf")
        st.form_submit_button("Look at this file", key="check_roads", on_click=_check)
    show_notice("roads_file")
    checked = st.session_state.get(_CHECKED)
    if not checked:
        return
    extract = _read(checked)
    if extract is None:
        return
    name = region_name(extract.path.name)
    space = space_for(extract, folder, name)
    dated = f"a map of {wording.day(extract.map_date)}" if extract.map_date else "a map without a date"
    st.markdown(
        plain(
            f"{extract.path.name} is {dated} and has {megabytes(extract.size)}. Building takes up to "
            f"{megabytes(space.building)} on the disk, of which about {megabytes(space.afterwards)} stay; "
            f"{megabytes(space.free)} are free."
        )
    )
    if not space.enough:
        st.error("There is not enough room on the disk.")
        return
    st.button(
        plain(f"Build the roads of {name}"),
        key="build_roads",
        type="primary",
        on_click=_begin,
        args=(view, extract.path, name),
    )


def _check() -> None:
    typed = st.session_state[_PATH].strip().strip('"')
    st.session_state.pop(_CHECKED, None)
    if typed and _read(typed) is not None:
        st.session_state[_CHECKED] = typed


def _read(typed: str) -> Extract | None:
    """The map file at a path; says what is wrong with it."""
    try:
        extract = read_extract(path_from(typed))
        region_name(extract.path.name)
    except InputFaults as faults:
        refuse("roads_file", findings=faults.findings)
        return None
    return extract


def _begin(view: View, path: Path, name: str) -> None:
    st.session_state.pop(_CHECKED, None)
    _builds().begin(path, name, view.services.roads.folder.path.parent)
    tell(_SPOT, f"The roads of {name} are being built.")
