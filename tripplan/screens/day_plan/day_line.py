"""The day from top to bottom, as HTML: its steps along a line, and beside them a band for each nap."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise

from tripplan.files.day_sheet.day_sheet import clock_of
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.day import DayPlan, Step, StepKind
from tripplan.planning.outing.outing import Outing
from tripplan.screens.look.cards import text
from tripplan.screens.look.drawings import drawn, kind_of

PIXELS_A_MINUTE = 0.8
"""A stretch takes as much room as it lasts, as long as its words fit [px/min]."""
_TALLEST = 130
"""A stretch is drawn no higher, so that a long day is seen at a glance [px]."""
_DRAWINGS = {StepKind.DRIVE: "drive", StepKind.LOAD_UP: "drive", StepKind.UNLOAD: "drive"}

SHEET = """
.st-key-day_bar { position: fixed; bottom: .75rem; left: 50%; transform: translateX(-50%); z-index: 99;
  background: var(--card); border: 1px solid var(--line); border-radius: 1rem;
  padding: .1rem .8rem; gap: .75rem;
  flex-wrap: nowrap !important; width: max-content !important; box-shadow: 0 2px 10px #0003; }
.st-key-day_bar :is(a, button) { min-height: 2.75rem; white-space: nowrap; color: var(--accent); }
@media (max-width: 640px) { .st-key-day_bar { bottom: calc(4.2rem + env(safe-area-inset-bottom)); } }
@media print { .st-key-day_bar { display: none; } }
.tp-day { display: grid; list-style: none; margin: 0; padding: 0 !important; column-gap: .5rem;
  max-width: 34rem; color: var(--ink); line-height: 1.25; }
.tp-day li { margin: 0; padding: .1rem 0; }
.tp-step { grid-column: 1; display: grid; grid-template-columns: 5rem 1fr; gap: .6rem; }
.tp-step > b { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
.tp-step > span { border-left: .3rem solid var(--line); padding-left: .6rem; }
.tp-step .tp-i, .tp-nap .tp-i { margin-right: .35em; }
.tp-step.tp-drive > span { border-color: var(--part-2); }
.tp-step.tp-visit > span { border-color: var(--part-0); }
.tp-step.tp-visit strong { font-weight: 650; }
.tp-day small { color: var(--faint); font-size: var(--small); }
.tp-nap { background: var(--soft); border-left: .3rem double var(--accent); border-radius: .5rem;
  padding: .3rem .6rem !important; font-size: var(--small); width: 7.5rem; }
@media (max-width: 640px) {
  .tp-step { grid-template-columns: 4.2rem 1fr; gap: .4rem; }
  .tp-nap { width: 5.6rem; padding: .3rem .4rem !important; }
}
"""
"""The lines of the style sheet for it."""


@dataclass(frozen=True)
class Band:
    """Some sleep of one child.

    Attributes:
        who: the child.
        where: such as 'in the car'.
        start, end: zone-aware.
    """

    who: str
    where: str
    start: datetime
    end: datetime


def bands(plan: DayPlan) -> tuple[Band, ...]:
    """Every stretch of sleep while the party is out, or just before or after."""
    return tuple(
        Band(nap.member, place.where, start, end) for nap in plan.naps for place, start, end in nap.slept
    )


def day_line(outing: Outing) -> str:
    """The steps of a day in order, with their times by the clock there, and the naps beside them.

    It is a list that reads well without its style sheet. Each row of the grid is a stretch in which nothing
    begins or ends; steps and naps span theirs.

    Args:
        outing: one place on one day.
    """
    plan, naps = outing.plan, bands(outing.plan)
    spans = [*((step.start, step.end) for step in plan.steps), *((nap.start, nap.end) for nap in naps)]
    edges = sorted({edge for span in spans for edge in span})
    rows = " ".join(f"minmax({_height(after - before)}px, auto)" for before, after in pairwise(edges))
    lines = [
        *((step.start, _step(outing, step, _span(edges, step.start, step.end))) for step in plan.steps),
        *((nap.start, _nap(plan, nap, _column(naps, nap), _span(edges, nap.start, nap.end))) for nap in naps),
    ]
    lines.sort(key=lambda line: line[0])
    listed = "".join(html for _, html in lines)
    home = f"<b>{_at(plan, plan.home)}</b><span>{text(say('dayplan-home'))}</span>"
    last = f'<li class="tp-step" style="grid-row: {len(edges)}">{home}</li>'
    return f'<ol class="tp-day" style="grid-template-rows: {rows} auto">{listed}{last}</ol>'


def _height(length: timedelta) -> int:
    return min(_TALLEST, round(PIXELS_A_MINUTE * length.total_seconds() / 60))


def _span(edges: Sequence[datetime], start: datetime, end: datetime) -> str:
    return f"grid-row: {edges.index(start) + 1} / {edges.index(end) + 1}"


def _column(naps: Sequence[Band], nap: Band) -> int:
    """One column a child, beside the steps."""
    return 2 + list(dict.fromkeys(one.who for one in naps)).index(nap.who)


def _at(plan: DayPlan, moment: datetime) -> str:
    return text(clock_of(plan)(moment))


def _step(outing: Outing, step: Step, span: str) -> str:
    visit = step.kind is StepKind.VISIT
    kind = "visit" if visit else "drive" if step.kind is StepKind.DRIVE else "other"
    drawing = kind_of(outing.place) if visit else _DRAWINGS.get(step.kind, "clock")
    label = wording.capital(step.label.text)
    said = text(f"{label}: {outing.place.name}" if visit else label)
    lasts = text(wording.minutes(round((step.end - step.start).total_seconds() / 60)))
    return (
        f'<li class="tp-step tp-{kind}" style="{span}"><b>{_at(outing.plan, step.start)}</b>'
        f"<span>{drawn(drawing)}<strong>{said}</strong> <small>{lasts}</small></span></li>"
    )


def _nap(plan: DayPlan, nap: Band, column: int, span: str) -> str:
    at = clock_of(plan)
    said = text(say("dayplan-asleep", name=nap.who, where=nap.where))
    return (
        f'<li class="tp-nap" style="{span}; grid-column: {column}">{drawn("nap")}{said} '
        f"<small>{text(wording.from_to(at(nap.start), at(nap.end)))}</small></li>"
    )
