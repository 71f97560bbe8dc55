"""The pictures: one hue in several depths, and words beside every mark, so that colour alone says nothing."""

from collections.abc import Sequence

import altair as alt
import pandas as pd
import streamlit as st

from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import kind_word
from tripplan.values.cost_kind import CostKind

ACCENT = "#1f6f6b"
DEPTHS = ("#12403e", "#1f6f6b", "#3f807b", "#7db3ae", "#abd0cc", "#d5e8e6")
"""The accent from deep to pale, one for each kind of cost."""

INK = "#22302f"
"""Of words on bars; on the three palest depths they stand out as WCAG 2.2, 1.4.3 asks (4.5 to 1)."""
_INK_ON_DARK, _MARKS_ON_DARK = "#f1efe8", "#7cc7bb"

_LETTER = 6.2
"""How wide a letter of the size used in bars is about [pixels]."""


def page_ink() -> str:
    """Of words and lines on the page's own ground, which is dark in dark mode."""
    return _INK_ON_DARK if st.context.theme.type == "dark" else INK


def page_accent() -> str:
    """Of marks on the page's own ground; they stand out from it as WCAG 2.2, 1.4.11 asks (3 to 1)."""
    return _MARKS_ON_DARK if st.context.theme.type == "dark" else ACCENT


def readable(chart: alt.LayerChart | alt.FacetChart) -> alt.LayerChart | alt.FacetChart:
    """The chart with the words of its axes and legend in ink, for the theme's grey is too pale to read."""
    ink = page_ink()
    inked: alt.LayerChart | alt.FacetChart = chart.configure_axis(labelColor=ink, titleColor=ink)
    inked.config.legend = alt.LegendConfig(labelColor=ink)
    return inked


def tooltips(*fields: str) -> list[alt.Tooltip]:
    """What a mark says of these fields; names alone would cost Altair a look through all its classes each."""
    return [alt.Tooltip(field) for field in fields]


def in_lines(letters: int) -> str:
    """The label expression of an axis that breaks long labels between words, so that they are not cut.

    Args:
        letters: at most so many in a line, where words allow it.
    """
    return f"split(trim(replace(datum.label, regexp('(.{{1,{letters}}})( |$)', 'g'), '$1\\n')), '\\n')"


def cost_chart(outings: Sequence[Outing]) -> alt.LayerChart | alt.FacetChart:
    """What each outing's likely total is made of, as one bar each; a line shows low to high.

    Args:
        outings: at least one, in the order of the bars, top first.
    """
    order = [outing.place.name for outing in outings]
    frame = pd.DataFrame([part for outing in outings for part in _parts(outing)])
    ranges = pd.DataFrame([_span(outing) for outing in outings])
    longest = float(ranges["high"].max())
    place = alt.Y(
        "place:N",
        sort=order,
        title=None,
        axis=alt.Axis(labelExpr=in_lines(20), labelLimit=130, ticks=False, domain=False),
    )
    kinds = [kind_word(kind) for kind in CostKind]
    currency = outings[0].cost.total.currency
    bars = (
        alt.Chart(frame)
        .mark_bar(stroke="white", strokeWidth=1.5, height=26)
        .encode(
            y=place,
            x=alt.X(
                "from:Q",
                title=say("cards-likely-cost", currency=currency),
                scale=alt.Scale(domain=[0, longest], nice=False),
            ),
            x2=alt.X2("to:Q"),
            color=alt.Color(
                "kind:N",
                scale=alt.Scale(domain=kinds, range=list(DEPTHS)),
                legend=alt.Legend(title=None, orient="bottom", columns=2),
            ),
            tooltip=[*tooltips("place", "kind"), alt.Tooltip("amount:Q", format=",.2f")],
        )
    )
    # Drawn where it fits at the width the chart has, on a phone as on a desk; the legend names all.
    fits = f"datum.amount / {longest} * width > {_LETTER} * length(datum.kind)"
    names = (
        alt.Chart(frame)
        .transform_filter(fits)
        .mark_text(fontSize=11)
        .encode(
            y=place,
            x=alt.X("middle:Q"),
            text=alt.Text("kind:N"),
            color=alt.condition(
                alt.FieldOneOfPredicate(field="kind", oneOf=kinds[3:]), alt.value(INK), alt.value("white")
            ),
        )
    )
    ends = (
        alt.Chart(ranges)
        .mark_rule(strokeWidth=2, color=page_ink(), yOffset=19)
        .encode(y=place, x=alt.X("low:Q"), x2=alt.X2("high:Q"), tooltip=tooltips("place", "said"))
    )
    return readable(alt.layer(bars, names, ends).properties(height=alt.Step(64)))


def _parts(outing: Outing) -> list[dict[str, object]]:
    """The likely cost by kind, each where the one before ends."""
    parts: list[dict[str, object]] = []
    start = 0.0
    for kind in CostKind:
        known = (item.likely for item in outing.cost.items if item.kind is kind)
        amount = sum(float(likely.amount) for likely in known if likely is not None)
        end = start + amount
        if amount:
            parts.append(
                {
                    "place": outing.place.name,
                    "kind": kind_word(kind),
                    "from": start,
                    "to": end,
                    "middle": (start + end) / 2,
                    "amount": amount,
                }
            )
        start = end
    return parts


def _span(outing: Outing) -> dict[str, object]:
    total = outing.cost.total
    return {
        "place": outing.place.name,
        "low": float(total.low.amount),
        "high": float(total.high.amount),
        "said": wording.money_range(total),
    }
