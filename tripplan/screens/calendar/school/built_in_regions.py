"""School holidays that are built in: suggested for home and the places, added with one press."""

from collections.abc import Mapping

import streamlit as st

from tripplan.documents.calendars.calendars import SchoolCalendar, with_guess_kept
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.coverage import LOOK_AHEAD
from tripplan.planning.holidays.school_region_table import SchoolRegion
from tripplan.planning.holidays.school_regions import (
    built_in_calendar,
    region_called,
    regions_near,
    school_regions,
)
from tripplan.records.store import StoredDocument
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

_PAGE = "calendar"
_SUGGESTED = 6


def built_in_regions(
    view: View, family: Family, calendars: Mapping[str, StoredDocument[SchoolCalendar]]
) -> None:
    """Offer the regions around home and the places, and all others from a list."""
    there = {kept.value.region for kept in calendars.values()}
    points = [family.household.home.point, *(place.where.point for place in family.places)]
    near = [region for region in regions_near(points) if region.code not in there]
    st.caption(
        "Whole regions of Australia, Austria, Belgium, France, Germany, the Netherlands and Poland. "
        "How many students a region has is a guess, 12 % of those who live there. For other countries "
        "bring a file."
    )
    for region in near[:_SUGGESTED]:
        st.button(
            plain(f"Add {region.name}, near you"),
            key=f"add_near_{region.code}",
            on_click=_add,
            args=(view, calendars, region),
        )
    names = {region.code: f"{region.code}: {region.name}" for region in school_regions()}
    st.selectbox("Any region", list(names), format_func=names.__getitem__, key="built_in_region")
    st.button("Add this region", key="add_built_in", on_click=_add_picked, args=(view, calendars))


def _add_picked(view: View, calendars: Mapping[str, StoredDocument[SchoolCalendar]]) -> None:
    _add(view, calendars, region_called(st.session_state["built_in_region"]))


def _add(view: View, calendars: Mapping[str, StoredDocument[SchoolCalendar]], region: SchoolRegion) -> None:
    calendar = built_in_calendar(region, view.today.year - 1, (view.today + LOOK_AHEAD).year)
    if calendar is None:
        refuse(_PAGE, f"{region.name} has no school breaks on record for these years.")
        return
    kept = calendars.get(calendar.name)
    calendar = with_guess_kept(calendar, kept.value if kept else None)
    save_all(view, _PAGE, [(calendar, kept.revision if kept else 0)], f"{calendar.name} is added.")
