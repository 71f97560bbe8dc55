"""The year at a glance: a shelf a month, on which the days that can be done stand, the better the taller."""

import json

import altair as alt
import numpy as np
import pandas as pd
from numpy.typing import NDArray

from tripplan.planning.sweep.table import DayTable
from tripplan.planning.sweep.wishes import Mask
from tripplan.screens.widgets.charts import ACCENT, INK
from tripplan.values import wording

ALT = "One shelf a month; every day stands on it that can be done, taller where it costs and weighs less"
LEGEND = (
    "Each month is a shelf, and every day that can be done as you wish stands on it: the taller, the less it "
    "costs and weighs. Filled: most pupils nearby have school; hollow: they have not. Where no calendar "
    "reaches, a guess or a typical year tells. Dots under a shelf are Saturdays and Sundays. 1, 2 and 3 are "
    "the days told above."
)
_LOWEST, _HIGHEST = 0.16, 0.62
"""How tall the worst and the best day stand, as shares of the room between two shelves [-]; above the best is
room for its number."""
_SHELF_HEIGHT = 44
"""Between two shelves [pixels]."""


def year_chart(
    table: DayTable, wanted: Mask, shown: list[tuple[int, int]]
) -> alt.LayerChart | alt.FacetChart:
    """All days of a table, of several places the best one each day.

    Args:
        table: the days.
        wanted: which of its entries count; at least one.
        shown: rows and columns of the days that get a number.
    """
    frame = _days(table, wanted, shown)
    months = list(dict.fromkeys(frame["month"]))
    shelf = alt.Axis(
        values=list(range(len(months))),
        labelExpr=f"{json.dumps(months)}[datum.value]",
        title=None,
        ticks=False,
        domain=False,
        grid=False,
    )
    up = alt.Scale(domain=[-1, len(months) - 0.6], reverse=True, nice=False)
    along = alt.X(
        "from:Q",
        title=None,
        scale=alt.Scale(domain=[0.4, 31.6], nice=False),
        axis=alt.Axis(values=[1, 8, 15, 22, 29], grid=False, ticks=False, domain=False),
    )
    base = alt.Chart(frame).encode(x=along)
    shelves = base.mark_rule(color=INK, strokeWidth=1).encode(
        x=alt.X("all_from:Q"), x2="all_to:Q", y=alt.Y("shelf:Q", scale=up, axis=shelf)
    )
    tooltip = ["said", "place", "in all", "with nuisances", "full house"]
    going = base.transform_filter("datum.can_go")
    bars = going.mark_bar(stroke=ACCENT, strokeWidth=1).encode(
        x2="to:Q",
        y=alt.Y("top:Q", scale=up, axis=shelf),
        y2="shelf:Q",
        color=alt.condition("datum.in_term", alt.value(ACCENT), alt.value("white")),
        tooltip=tooltip,
    )
    weekends = (
        base.transform_filter("datum.weekend")
        .mark_circle(size=9, color=INK, opacity=1)
        .encode(x=alt.X("day:Q"), y=alt.Y("below:Q", scale=up, axis=shelf))
    )
    numbers = (
        base.transform_filter("datum.number != ''")
        .mark_text(fontSize=11, fontWeight="bold", color=INK, dy=-6)
        .encode(x=alt.X("day:Q"), y=alt.Y("top:Q", scale=up, axis=shelf), text="number:N")
    )
    height = _SHELF_HEIGHT * (len(months) + 1)
    return alt.layer(shelves, bars, weekends, numbers).properties(height=height)


def _days(table: DayTable, wanted: Mask, shown: list[tuple[int, int]]) -> pd.DataFrame:
    felt = np.where(wanted, table.felt, np.iinfo(np.int64).max)
    rows = felt.argmin(axis=0)
    columns = np.arange(felt.shape[1])
    can_go = wanted[rows, columns]
    least = felt[rows, columns]
    heights = _heights(least, can_go)
    numbers = {column: str(number) for number, (_, column) in reversed(list(enumerate(shown, start=1)))}
    first = table.first
    records = []
    for column, day in enumerate(table.days):
        shelf = (day.year - first.year) * 12 + day.month - first.month
        row = int(rows[column])
        entry: dict[str, object] = {
            "day": day.day,
            "from": day.day - 0.38,
            "to": day.day + 0.38,
            "all_from": 0.5,
            "all_to": 31.5,
            "month": f"{day:%b %y}",
            "shelf": shelf,
            "below": shelf + 0.12,
            "top": shelf - float(heights[column]),
            "weekend": day.weekday() > 4,
            "can_go": bool(can_go[column]),
            "in_term": bool(table.in_term[row, column]),
            "number": numbers.get(column, "") if can_go[column] else "",
        }
        if can_go[column]:
            entry |= {
                "said": wording.day(day),
                "place": table.places[row].name,
                "in all": wording.money(table.money(table.likely[row, column])),
                "with nuisances": wording.money(table.money(least[column])),
                "full house": wording.percent(float(table.chance[row, column])),
            }
        records.append(entry)
    return pd.DataFrame(records)


def _heights(felt: NDArray[np.int64], can_go: NDArray[np.bool_]) -> NDArray[np.float64]:
    heights = np.zeros(felt.size)
    going = felt[can_go].astype(np.float64)
    # The worst tenth all stand as low as can be, so that a few bad days do not make all others look equal.
    worst = float(np.quantile(going, 0.9))
    spread = (worst - float(going.min())) or 1.0
    heights[can_go] = _LOWEST + (_HIGHEST - _LOWEST) * np.clip((worst - going) / spread, 0, 1)
    return heights
