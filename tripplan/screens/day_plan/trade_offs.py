"""Day plan, second thoughts: how likely it holds, why it is the best, what it could be traded for."""

from collections.abc import Sequence

import altair as alt
import pandas as pd
import streamlit as st

from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.day import DayPlan, TradeOff, TradeOffs, beside_the_best, slack, trade_offs
from tripplan.planning.outing.outing import Outing
from tripplan.screens.look.charts import DEPTHS, page_accent, page_ink, readable
from tripplan.screens.widgets.markdown import bullets, plain


def render_slack(outing: Outing) -> None:
    """How likely the plan holds, in words."""
    st.header(say("dayplan-will-it-work"), anchor=False)
    st.markdown(bullets(slack(outing.question, outing.plan).chances))
    habits = outing.question.habits
    usual, late = habits.usual_delay_minutes, habits.late_one_day_in_ten_minutes
    known = habits.delays_from
    told = say("dayplan-delays-from", known=known) if known else say("dayplan-delays-household")
    st.caption(plain(f"{say('dayplan-delays', usual=usual, late=late)} {told}"))


def render_trade_offs(outing: Outing) -> None:
    """Why the best plan is the best, what it could be traded for, and which limit costs most."""
    found = trade_offs(outing.question)
    st.header(say("dayplan-trade"), anchor=False)
    if len(found.points) == 1 and found.best is not None and found.points[0].plan == found.best:
        st.markdown(say("dayplan-nothing-to-trade"))
    else:
        _chart_and_table(found, beside_the_best(outing.question, found))
    with st.expander(say("dayplan-why-best")):
        st.markdown(bullets(filter(None, (found.why, found.what_helps))))


def _chart_and_table(found: TradeOffs, shown: Sequence[TradeOff]) -> None:
    stays, naps = ({point.stay_minutes for point in shown}, {point.kept_minutes for point in shown})
    if len(stays) > 1 < len(naps):
        st.caption(say("dayplan-trade-lead"))
        st.altair_chart(
            trade_off_chart(found, shown),
            alt=say("dayplan-trade-chart"),
        )
    rows = [_row(point, found.best) for point in shown]
    st.table(pd.DataFrame(rows), hide_index=True, alt=say("dayplan-trade-table"))
    st.markdown(
        bullets(
            say("dayplan-trade-line", at=point.plan.leave_home, home=point.plan.home, what=point.against_best)
            for point in shown
        )
    )


def _row(point: TradeOff, best: DayPlan | None) -> dict[str, str]:
    at = wording.clock(point.plan.leave_home)
    return {
        say("dayplan-trade-load-up"): say("dayplan-trade-best-at", at=at) if point.plan == best else at,
        say("dayplan-trade-nap"): wording.minutes(point.kept_minutes),
        say("dayplan-trade-there"): wording.minutes(point.stay_minutes),
        say("dayplan-trade-home"): wording.clock(point.plan.home),
        say("dayplan-trade-weighs"): wording.money(point.plan.weighs),
    }


def trade_off_chart(found: TradeOffs, shown: Sequence[TradeOff]) -> alt.LayerChart | alt.FacetChart:
    """Nap kept against time at the place, a mark for each way to spend the day with the words beside it.

    Args:
        found: the trade-offs, which a line joins.
        shown: these and the best plan; at least one.
    """
    frame = pd.DataFrame(_marks(found, shown))
    base = alt.Chart(frame).encode(
        x=alt.X(
            "there:Q",
            title=say("dayplan-trade-axis-there"),
            scale=alt.Scale(zero=False, padding=36),
            axis=alt.Axis(tickCount=6, format="d"),
        ),
        y=alt.Y("nap:Q", title=say("dayplan-trade-axis-nap"), scale=alt.Scale(zero=False, padding=24)),
        tooltip=alt.Tooltip("said"),
    )
    line = base.transform_filter(alt.datum.traded).mark_line(color=DEPTHS[4], strokeWidth=2)
    marks = base.mark_circle(opacity=1, color=page_accent()).encode(
        size=alt.condition(alt.datum.best, alt.value(220), alt.value(90))
    )
    # Above and below in turn, so that neighbours' words do not meet on a narrow screen.
    above = base.mark_text(dy=-14, fontSize=11, color=page_ink()).encode(text=alt.Text("above:N"))
    below = base.mark_text(dy=16, fontSize=11, color=page_ink()).encode(text=alt.Text("below:N"))
    return readable(alt.layer(line, marks, above, below).properties(height=260))


def _marks(found: TradeOffs, shown: Sequence[TradeOff]) -> list[dict[str, object]]:
    marks: list[dict[str, object]] = []
    for number, point in enumerate(shown):
        best = point.plan == found.best
        label = say("dayplan-trade-best") if best else say("dayplan-trade-mark", home=point.plan.home)
        marks.append(
            {
                "there": point.stay_minutes,
                "nap": point.kept_minutes,
                "best": best,
                "traded": point in found.points,
                "above": label if number % 2 == 0 else "",
                "below": label if number % 2 else "",
                "said": point.against_best.text,
            }
        )
    return marks
