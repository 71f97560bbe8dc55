"""The day as a picture, from left to right: a row for each child who naps, and one for everybody else."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, tzinfo
from enum import Enum

import altair as alt
import pandas as pd

from tripplan.language import wording
from tripplan.planning.day import DayPlan, NapOutcome, Step, StepKind
from tripplan.planning.outing.outing import Outing
from tripplan.screens.widgets.charts import DEPTHS, INK, readable

_LETTER_PIXELS = 6.2
"""Width of an average letter of the words on the bars [px]."""
_MOST_NAMES = 2
"""More people than this are called everybody else."""


class _Group(Enum):
    """What the bars of one depth are, as the legend says it."""

    ASLEEP = "asleep"
    DRIVING = "driving"
    MEAL = "lunch, show"
    HALT = "loading, rest, stop"
    THERE = "at the place"
    WAITING = "waiting, usual nap"


_GROUP_OF = {
    StepKind.LOAD_UP: _Group.HALT,
    StepKind.DRIVE: _Group.DRIVING,
    StepKind.REST: _Group.HALT,
    StepKind.STOP: _Group.HALT,
    StepKind.UNLOAD: _Group.HALT,
    StepKind.WAIT: _Group.WAITING,
    StepKind.VISIT: _Group.THERE,
    StepKind.LUNCH: _Group.MEAL,
    StepKind.SHOW: _Group.MEAL,
}


@dataclass(frozen=True)
class _Bar:
    """One stretch of somebody's day.

    Attributes:
        row: whose.
        group: which depth.
        start, end: zone-aware.
        what: in words.
        short: in fewer words, where these do not fit.
    """

    row: str
    group: _Group
    start: datetime
    end: datetime
    what: str
    short: str


def timeline(outing: Outing) -> alt.LayerChart | alt.FacetChart:
    """Drive, rests, place, meals and naps of each person, by the clock at home.

    Words stand on a bar where they fit; the legend says what a depth is, and each bar tells its times.

    Args:
        outing: one place on one day.
    """
    bars = list(_bars(outing))
    zone = outing.plan.leave_home.tzinfo
    frame = pd.DataFrame([_row_of_table(bar, zone) for bar in bars])
    spans = (max(bar.end for bar in bars) - min(bar.start for bar in bars)).total_seconds() / 60
    row = alt.Y("row:N", sort=None, title=None, axis=alt.Axis(labelLimit=110, ticks=False, domain=False))
    groups = [group.value for group in _Group]
    drawn = (
        alt.Chart(frame)
        .mark_bar(stroke="white", strokeWidth=1.5, height=30)
        .encode(
            y=row,
            x=alt.X("start:T", title=None, axis=alt.Axis(format="%-I %p", values=_full_hours(bars, zone))),
            x2="end:T",
            color=alt.Color(
                "group:N",
                scale=alt.Scale(domain=groups, range=list(DEPTHS)),
                legend=alt.Legend(title=None, orient="bottom", columns=2),
            ),
            tooltip=["row", "what", "said"],
        )
    )
    words = (
        alt.Chart(frame)
        .mark_text(fontSize=11, text=alt.ExprRef(_words_that_fit(spans)))
        .encode(
            y=row,
            x="middle:T",
            color=alt.condition(
                alt.FieldOneOfPredicate(field="group", oneOf=groups[:3]), alt.value("white"), alt.value(INK)
            ),
        )
    )
    return readable(alt.layer(drawn, words).properties(height=alt.Step(46)))


def _words_that_fit(spans: float) -> str:
    """An expression for the longest words that fit a bar of a picture so many minutes wide."""
    room = f"datum.minutes * width / {spans:.0f} - 6"
    return (
        f"{room} > {_LETTER_PIXELS} * length(datum.what) ? datum.what"
        f" : {room} > {_LETTER_PIXELS} * length(datum.short) ? datum.short : ''"
    )


def _bars(outing: Outing) -> Iterator[_Bar]:
    plan = outing.plan
    sleepers = list(dict.fromkeys(nap.member for nap in plan.naps))
    others = [member.name for member in outing.party if member.name not in sleepers]
    if others:
        few = wording.listed(others) if len(others) <= _MOST_NAMES else "everybody else"
        yield from _awake(few if sleepers else "everybody", plan, ())
    for name in sleepers:
        naps = [nap for nap in plan.naps if nap.member == name]
        yield from _awake(name, plan, naps)
        for nap in naps:
            for place, start, end in nap.slept:
                yield _Bar(name, _Group.ASLEEP, start, end, f"asleep {place.where}", "asleep")
        for nap in naps:
            usual = f"{name}'s usual nap"
            yield _Bar(usual, _Group.WAITING, nap.usual_start, nap.usual_end, "usual nap", "nap")


def _awake(row: str, plan: DayPlan, naps: Sequence[NapOutcome]) -> Iterator[_Bar]:
    """The steps of the day, without the time in which somebody sleeps."""
    asleep = [(start, end) for nap in naps for _, start, end in nap.slept]
    for step in plan.steps:
        for start, end in _without(step, asleep):
            kind = step.kind.value
            yield _Bar(row, _GROUP_OF[step.kind], start, end, step.label if _names(step) else kind, kind)


def _names(step: Step) -> bool:
    """Whether the words of a step say more than its kind."""
    return step.kind in (StepKind.SHOW, StepKind.STOP)


def _without(step: Step, spans: Sequence[tuple[datetime, datetime]]) -> list[tuple[datetime, datetime]]:
    """What is left of a step outside some spans."""
    left = [(step.start, step.end)]
    for begins, ends in spans:
        left = [
            piece
            for start, end in left
            for piece in ((start, min(end, begins)), (max(start, ends), end))
            if piece[0] < piece[1]
        ]
    return left


def _row_of_table(bar: _Bar, zone: tzinfo | None) -> dict[str, object]:
    # The chart is drawn in the browser's own zone, so it gets plain clock times of the home.
    start, end = (moment.astimezone(zone).replace(tzinfo=None) for moment in (bar.start, bar.end))
    return {
        "row": bar.row,
        "group": bar.group.value,
        "start": start.isoformat(),
        "end": end.isoformat(),
        "middle": (start + (end - start) / 2).isoformat(),
        "what": bar.what,
        "short": bar.short,
        "said": f"{wording.clock(bar.start)} to {wording.clock(bar.end)}",
        "minutes": (bar.end.astimezone(UTC) - bar.start.astimezone(UTC)).total_seconds() / 60,
    }


def _full_hours(bars: Sequence[_Bar], zone: tzinfo | None) -> list[str]:
    """The full hours within the picture, by the clock at home."""
    first = min(bar.start for bar in bars).astimezone(zone).replace(minute=0, second=0, tzinfo=None)
    last = max(bar.end for bar in bars).astimezone(zone).replace(tzinfo=None)
    return [
        (first + timedelta(hours=n)).isoformat() for n in range(1, 25) if first + timedelta(hours=n) <= last
    ]
