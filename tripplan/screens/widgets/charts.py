"""The pictures: one hue in several depths, and words beside every mark, so that colour alone says nothing."""

from collections.abc import Sequence
from datetime import datetime, timedelta

import altair as alt
import pandas as pd

from tripplan.planning import wording
from tripplan.planning.cost import CostKind
from tripplan.planning.day import StepKind
from tripplan.planning.outing import Outing

ACCENT = "#1f6f6b"
DEPTHS = ("#12403e", "#1f6f6b", "#4a918c", "#7db3ae", "#abd0cc", "#d5e8e6")
"""The accent from deep to pale, one for each kind of cost."""

INK = "#22302f"


def cost_chart(outings: Sequence[Outing]) -> alt.LayerChart | alt.FacetChart:
    """What each outing's likely total is made of, as one bar each; a line shows low to high.

    Args:
        outings: at least one, in the order of the bars, top first.
    """
    order = [outing.place.name for outing in outings]
    frame = pd.DataFrame([part for outing in outings for part in _parts(outing)])
    ranges = pd.DataFrame([_span(outing) for outing in outings])
    longest = float(ranges["high"].max())
    place = alt.Y("place:N", sort=order, title=None, axis=alt.Axis(labelLimit=130, ticks=False, domain=False))
    kinds = [kind.value for kind in CostKind]
    currency = outings[0].cost.total.currency
    bars = (
        alt.Chart(frame)
        .mark_bar(stroke="white", strokeWidth=1.5, height=26)
        .encode(
            y=place,
            x=alt.X("from:Q", title=f"likely cost [{currency}], with its range"),
            x2="to:Q",
            color=alt.Color(
                "kind:N",
                scale=alt.Scale(domain=kinds, range=list(DEPTHS)),
                legend=alt.Legend(title=None, orient="bottom", columns=2),
            ),
            tooltip=["place", "kind", alt.Tooltip("amount:Q", format=",.2f")],
        )
    )
    names = (
        alt.Chart(frame[frame["amount"] > longest * 0.16])
        .mark_text(fontSize=11)
        .encode(
            y=place,
            x="middle:Q",
            text="kind:N",
            color=alt.condition(
                alt.FieldOneOfPredicate(field="kind", oneOf=kinds[3:]), alt.value(INK), alt.value("white")
            ),
        )
    )
    ends = (
        alt.Chart(ranges)
        .mark_rule(strokeWidth=2, color=INK, yOffset=19)
        .encode(y=place, x="low:Q", x2="high:Q", tooltip=["place", "said"])
    )
    return alt.layer(bars, names, ends).properties(height=alt.Step(64))


def _parts(outing: Outing) -> list[dict[str, object]]:
    """The likely cost by kind, each where the one before ends."""
    parts: list[dict[str, object]] = []
    start = 0.0
    for kind in CostKind:
        known = (item.amount for item in outing.cost.items if item.kind is kind)
        amount = sum(float(span.likely.amount) for span in known if span is not None)
        end = start + amount
        if amount:
            parts.append(
                {
                    "place": outing.place.name,
                    "kind": kind.value,
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


STEP_DEPTHS = {
    StepKind.LOAD_UP: DEPTHS[3],
    StepKind.DRIVE: DEPTHS[1],
    StepKind.REST: DEPTHS[3],
    StepKind.STOP: DEPTHS[3],
    StepKind.UNLOAD: DEPTHS[3],
    StepKind.WAIT: DEPTHS[5],
    StepKind.VISIT: DEPTHS[4],
    StepKind.LUNCH: DEPTHS[2],
    StepKind.SHOW: DEPTHS[0],
}


def _full_hours(outing: Outing) -> list[str]:
    """The full hours of a day out, by the clock at home."""
    first = outing.plan.leave_home.replace(minute=0, tzinfo=None)
    last = outing.plan.home.replace(tzinfo=None)
    return [(first + timedelta(hours=n)).isoformat() for n in range(25) if first + timedelta(hours=n) <= last]


def day_chart(outing: Outing) -> alt.LayerChart | alt.FacetChart:
    """One day from left to right: what everybody does, and each usual nap with the sleep that is kept."""
    zone = outing.plan.leave_home.tzinfo

    def bar(row: str, start: datetime, end: datetime, what: str, depth: str) -> dict[str, object]:
        # The chart is drawn in the browser's own zone, so it gets plain clock times of the home.
        local = [moment.astimezone(zone).replace(tzinfo=None) for moment in (start, end)]
        return {
            "row": row,
            "start": local[0].isoformat(),
            "end": local[1].isoformat(),
            "middle": (local[0] + (local[1] - local[0]) / 2).isoformat(),
            "what": what,
            "said": f"{wording.clock(start)} to {wording.clock(end)}",
            "minutes": (end - start).total_seconds() / 60,
            "depth": depth,
        }

    everybody = "everybody"
    rows = [
        bar(everybody, step.start, step.end, step.kind.value, STEP_DEPTHS[step.kind])
        for step in outing.plan.steps
    ]
    for nap in outing.plan.naps:
        for place, start, end in nap.slept:
            rows.append(bar(f"{nap.member} sleeps", start, end, place.value, DEPTHS[2]))
        rows.append(bar(f"{nap.member}'s usual nap", nap.usual_start, nap.usual_end, "usual nap", DEPTHS[5]))
    frame = pd.DataFrame(rows)
    row = alt.Y("row:N", sort=None, title=None, axis=alt.Axis(labelLimit=140, ticks=False, domain=False))
    bars = (
        alt.Chart(frame)
        .mark_bar(stroke="white", strokeWidth=1.5, height=30)
        .encode(
            y=row,
            x=alt.X("start:T", title=None, axis=alt.Axis(format="%-I %p", values=_full_hours(outing))),
            x2="end:T",
            color=alt.Color("depth:N", scale=None),
            tooltip=["row", "what", "said"],
        )
    )
    words = (
        alt.Chart(frame[frame["minutes"] >= 45])
        .mark_text(fontSize=11)
        .encode(
            y=row,
            x="middle:T",
            text="what:N",
            color=alt.condition(
                alt.FieldOneOfPredicate(field="depth", oneOf=list(DEPTHS[:3])),
                alt.value("white"),
                alt.value(INK),
            ),
        )
    )
    return alt.layer(bars, words).properties(height=46 * frame["row"].nunique() + 30)
