"""How far school calendars reach, drawn: one row a calendar, and what each place knows, in words."""

from collections.abc import Sequence
from datetime import date, timedelta

import altair as alt
import pandas as pd
import streamlit as st

from tripplan.planning import wording
from tripplan.planning.calendars import SchoolCalendar
from tripplan.planning.crowds.coverage import LOOK_AHEAD, SchoolState, place_coverage, stretches
from tripplan.planning.outing import Family
from tripplan.screens.widgets.charts import DEPTHS, INK
from tripplan.screens.widgets.markdown import bullets, plain

_HEIGHTS = {
    SchoolState.OUT: 22,
    SchoolState.LIKELY_OUT: 12,
    SchoolState.SCHOOL: 3,
    SchoolState.LIKELY_SCHOOL: 1,
}
"""A day off stands high, a guess half as high, term is a line; of unknown days nothing is drawn [pixels]."""


def coverage_chart(calendars: Sequence[SchoolCalendar], today: date) -> alt.LayerChart | alt.FacetChart:
    """One row a calendar over eighteen months: high for no school, low for term, nothing where nobody knows.

    Args:
        calendars: at least one.
        today: where the chart begins.
    """
    rows = pd.DataFrame(
        [
            {
                "calendar": calendar.name,
                "from": stretch.first.isoformat(),
                "to": (stretch.last + timedelta(days=1)).isoformat(),
                "state": stretch.state.value,
                "said": f"{wording.day(stretch.first)} to {wording.day(stretch.last)}",
            }
            for calendar in calendars
            for stretch in stretches(calendar, today, today + LOOK_AHEAD)
        ]
    )
    # The whole span is drawn, so that what nobody knows shows as a gap.
    span = [today.isoformat(), (today + LOOK_AHEAD).isoformat()]
    layers = [
        alt.Chart(rows[rows["state"] == state.value])
        .mark_bar(height=height, color=DEPTHS[1], filled=state is not SchoolState.LIKELY_OUT, stroke=INK)
        .encode(
            x=alt.X(
                "from:T",
                title=None,
                scale=alt.Scale(domain=span),
                axis=alt.Axis(format="%b %Y", labelOverlap=True),
            ),
            x2="to:T",
            y=alt.Y("calendar:N", title=None, axis=alt.Axis(labelLimit=110, ticks=False, domain=False)),
            tooltip=["calendar", "state", "said"],
        )
        for state, height in _HEIGHTS.items()
    ]
    return alt.layer(*layers).properties(height=34 * len(calendars) + 40)


def show_coverage(family: Family, today: date) -> None:
    """The chart of all calendars, and for every place how much of its pupils' days is known."""
    calendars = family.school_calendars
    with st.expander("How far this reaches", key="open_coverage"):
        if calendars:
            st.altair_chart(
                coverage_chart(calendars, today),
                alt="One row a calendar: high for no school, a line in term; each place in words below",
            )
            st.caption(
                "A full, high bar is no school; a hollow one of half the height is a guess; a line is term; "
                "where there is nothing, nobody has said."
            )
        covers = [place_coverage(calendars, place, today, today + LOOK_AHEAD) for place in family.places]
        st.markdown(
            bullets(
                f"{cover.place.name}: {cover.sentence}"
                + "".join(f" {name} counts {share:.0%}." for name, share in cover.districts)
                for cover in covers
            )
        )
        if not covers:
            st.caption(plain("There are no places yet."))
