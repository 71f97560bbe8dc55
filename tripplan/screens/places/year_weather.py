"""A picture of a place's year: how warm, how wet, how light; and the same as a table."""

from collections.abc import Sequence

import altair as alt
import pandas as pd
import streamlit as st

from tripplan.documents.family.household import Household
from tripplan.documents.places.place import Place
from tripplan.documents.usual_weather import Degrees
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.climate.places import climate_for
from tripplan.planning.climate.year import UsualMonth, usual_year
from tripplan.planning.family.family import Family
from tripplan.screens.look.charts import DEPTHS, INK
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.view import View
from tripplan.values.units import fahrenheit

_WIDE = 26
"""How wide a month's bar is [pixels]."""


def render_year_weather(view: View, family: Family, place: Place) -> None:
    """Say when it is coldest and warmest at a place, and draw its year when asked.

    Args:
        view: whose page it is.
        family: whose units and stations count.
        place: where.
    """
    climate = climate_for(family.stations, place, family.household)
    if climate is None:
        st.caption(say("places-year-unknown"))
        return
    year = usual_year(climate)
    st.markdown(plain(year_sentence(year, family.household)))
    if st.toggle(say("places-year-show"), key=f"year_weather_{view.which}_{place.id}"):
        degrees = family.household.degrees
        st.altair_chart(
            year_chart(year, degrees),
            alt=say("places-year-chart", place=place.name),
        )
        st.table(year_table(year, degrees), alt=say("places-year-table", place=place.name))
        told = filter(None, (climate.source.text, climate.source.credit))
        st.caption(plain(f"{wording.capital('; '.join(told))}."))


def year_sentence(year: Sequence[UsualMonth], household: Household) -> str:
    """The coldest and the warmest month, such as 'January is coldest, usually 18 to 34 °F; July …'."""
    cold, warm = (pick(range(12), key=lambda n: year[n].low + year[n].high) for pick in (min, max))
    wet = max(range(12), key=lambda n: year[n].wet)

    def usual(n: int) -> str:
        return wording.temperatures(year[n].low, year[n].high, household.degrees)

    return say(
        "places-year",
        coldest=wording.month(cold + 1),
        cold=usual(cold),
        warmest=wording.month(warm + 1),
        warm=usual(warm),
        wettest=wording.month(wet + 1),
        days=round(year[wet].wet),
    )


def year_table(year: Sequence[UsualMonth], degrees: Degrees) -> pd.DataFrame:
    """Every month's figures, a row each."""
    columns: dict[str, list[str]] = {
        say("places-year-temperatures"): [wording.temperatures(one.low, one.high, degrees) for one in year],
        say("places-year-wet"): [f"{one.wet:.0f}" for one in year],
    }
    if any(one.snow is not None and one.snow >= 0.5 for one in year):
        columns[say("places-year-snow")] = ["" if one.snow is None else f"{one.snow:.0f}" for one in year]
    columns[say("places-year-light")] = [wording.minutes(5 * round(one.daylight * 12)) for one in year]
    return pd.DataFrame(columns, index=[wording.month(n + 1) for n in range(12)])


def year_chart(year: Sequence[UsualMonth], degrees: Degrees) -> alt.VConcatChart:
    """Three strips above each other: from low to high, wet days with those of snow, hours of daylight."""

    def shown(celsius: float) -> float:
        return fahrenheit(celsius) if degrees == "F" else celsius

    months = [wording.month(n + 1)[:3] for n in range(12)]
    frame = pd.DataFrame(
        {
            "month": months,
            "low": [shown(one.low) for one in year],
            "high": [shown(one.high) for one in year],
            "wet": [one.wet for one in year],
            "snow": [one.snow or 0.0 for one in year],
            "light": [one.daylight for one in year],
        }
    )
    base = alt.Chart(frame).encode(x=alt.X("month:N", sort=months, title=None))

    def strip(height: int, *marks: alt.Chart) -> alt.LayerChart | alt.FacetChart:
        return alt.layer(*marks).properties(height=height, width="container")

    band = base.mark_bar(size=_WIDE, color=DEPTHS[3]).encode(
        y=alt.Y("low:Q", title=f"°{degrees}"), y2="high:Q"
    )
    freezing = (
        alt.Chart(pd.DataFrame({"freezing": [shown(0)]}))
        .mark_rule(color=INK, strokeDash=[4, 3])
        .encode(y="freezing:Q")
    )
    wet = base.mark_bar(size=_WIDE, color=DEPTHS[4]).encode(y=alt.Y("wet:Q", title=say("places-year-wet")))
    snow = base.mark_bar(size=_WIDE / 2, color=DEPTHS[0]).encode(y="snow:Q")
    light = base.mark_line(color=INK, point=True).encode(
        y=alt.Y("light:Q", title=say("places-year-hours"), scale=alt.Scale(domain=[0, 24]))
    )
    chart: alt.VConcatChart = alt.vconcat(
        strip(150, band, freezing), strip(80, wet, snow), strip(80, light)
    ).configure_axis(labelColor=INK, titleColor=INK)
    return chart
