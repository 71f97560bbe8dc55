"""How far school calendars reach, drawn: one row a calendar, one a place, and each place in words."""

from collections import Counter
from collections.abc import Mapping, Sequence
from datetime import date, timedelta

import altair as alt
import pandas as pd
import streamlit as st

from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.coverage import (
    LOOK_AHEAD,
    CoveragePeriod,
    PlaceCoverage,
    SchoolState,
    place_coverage,
    place_stretches,
    stretches,
    typical_year_sentences,
)
from tripplan.screens.look.charts import in_lines, page_accent, page_ink, tooltips
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.markdown import bullets, plain

_HEIGHTS = {
    SchoolState.OUT: 22,
    SchoolState.LIKELY_OUT: 12,
    SchoolState.SCHOOL: 3,
    SchoolState.LIKELY_SCHOOL: 1,
}
"""A day off stands high, a guess half as high, term is a line; of unknown days nothing is drawn [pixels]."""


def coverage_chart(
    told: Mapping[str, Sequence[CoveragePeriod]], today: date
) -> alt.LayerChart | alt.FacetChart:
    """A row each over eighteen months: high for no school, low for term, nothing where nobody knows.

    Args:
        told: what is known from today on, by the name of a calendar or place; at least one.
        today: where the chart begins.
    """
    rows = pd.DataFrame(
        [
            {
                "whose": name,
                "from": stretch.first.isoformat(),
                "to": (stretch.last + timedelta(days=1)).isoformat(),
                "state": stretch.state.value,
                "said": f"{wording.day(stretch.first)} to {wording.day(stretch.last)}",
            }
            for name, of_one in told.items()
            for stretch in of_one
        ]
    )
    # The whole span is drawn, so that what nobody knows shows as a gap.
    span = [today.isoformat(), (today + LOOK_AHEAD).isoformat()]
    layers = [
        alt.Chart(rows[rows["state"] == state.value])
        .mark_bar(
            height=height, color=page_accent(), filled=state is not SchoolState.LIKELY_OUT, stroke=page_ink()
        )
        .encode(
            x=alt.X(
                "from:T",
                title=None,
                scale=alt.Scale(domain=span),
                axis=alt.Axis(format="%b %Y", labelOverlap=True),
            ),
            x2=alt.X2("to:T"),
            y=alt.Y(
                "whose:N",
                title=None,
                sort=list(told),
                axis=alt.Axis(labelExpr=in_lines(24), labelLimit=140, ticks=False, domain=False),
            ),
            tooltip=tooltips("whose", "state", "said"),
        )
        for state, height in _HEIGHTS.items()
    ]
    return alt.layer(*layers).properties(height=38 * len(told) + 40)


def _by_place(covers: Sequence[PlaceCoverage]) -> dict[str, Sequence[CoveragePeriod]]:
    """What most pupils around each place do, by its name; by its id where two places are called the same."""
    names = Counter(cover.place.name for cover in covers)
    return {
        cover.place.name if names[cover.place.name] == 1 else str(cover.place.id): place_stretches(cover.days)
        for cover in covers
    }


def show_coverage(family: Family, today: date) -> None:
    """Charts of all calendars and all places, and for every place how much of its pupils' days is known."""
    calendars, last = family.school_calendars, today + LOOK_AHEAD
    part = fold("How far this reaches", "open_coverage")
    if part is None:  # the charts take longer than the rest of the page
        return
    with part:
        covers = [place_coverage(calendars, place, today, last) for place in family.places]
        if calendars:
            st.markdown("**What each calendar says**")
            st.altair_chart(
                coverage_chart({one.name: stretches(one, today, last) for one in calendars}, today),
                alt="One row a calendar: high for no school, a line in term; each place in words below",
            )
        if calendars and covers:
            st.markdown("**What most students around each place do**")
            st.altair_chart(
                coverage_chart(_by_place(covers), today),
                alt="One row a place: high where most students have no school; each place in words below",
            )
        if calendars:
            st.caption(
                "A full, high bar is no school; a hollow one, half as high, is a guess, or a typical year "
                "where no calendar reaches; a line is term, a thin one by such a guess; where there is "
                "nothing, nobody has said."
            )
        st.markdown(
            bullets(
                f"{cover.place.name}: {cover.sentence}"
                + "".join(f" {name} counts {share:.0%}." for name, share in cover.districts)
                for cover in covers
            )
        )
        for sentence in typical_year_sentences(covers):
            st.markdown(plain(sentence))
        if not covers:
            st.caption(plain("There are no places yet."))
