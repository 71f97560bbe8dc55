"""The day for the phone as one HTML file that follows the phone's own clock, for the road.

Everything it may ever say stands in it; its few lines of script (`day_phone.js`) only show what is on, count
down, and move the day when the family is late. Without scripts it still shows the whole day.
"""

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import datetime
from importlib.resources import files

from tripplan.documents.places.place import Place
from tripplan.files.day_sheet.day_sheet import DaySheet, clock_of
from tripplan.files.day_sheet.day_sheet_html import section_html
from tripplan.files.day_sheet.day_stretches import (
    SOON,
    Clock,
    DaySegment,
    home_again,
    map_link,
    sleeps,
    step_words,
    stretches,
)
from tripplan.files.html_page import escape, page_head
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.day import Step, StepKind
from tripplan.planning.outing.outing import Outing

TAKEN_ALONG = ("emergency", "tickets", "weather", "naps", "needs", "cautions")
"""The sections of the day sheet that stand below what is on now, most urgent first."""

_EARLIEST, _LATEST = 0, 9 * 10**15
"""Before and after every day, as scripts count time [ms since 1970]."""

_STYLE = """
body { max-width: 46rem; color: #000; font-size: 1.35rem; line-height: 1.4; overflow-wrap: anywhere; }
.now { border: 4px solid #000; border-radius: .6rem; padding: 1rem; margin: 1rem 0; font-size: 1.7rem; }
.now h1 { font-size: clamp(2.8rem, 13vw, 4.5rem); line-height: 1.05; }
.now p, .asleep { margin: .3em 0 0; }
.asleep { font-size: 1.7rem; }
h2 { font-size: 1.9rem; line-height: 1.2; margin: 1.2em 0 .3em; }
ul { padding: 0; margin: 0; list-style: none; }
li { margin: .5em 0; }
li > b { margin-right: .4em; }
.press { display: block; border: 3px solid #000; border-radius: .6rem; padding: .8rem; text-align: center; }
#emergency li { border: 3px solid #000; border-radius: .6rem; padding: .6rem; }
a { color: inherit; }
.on { font-weight: 700; }
.on::before { content: "now: "; }
.over { text-decoration: line-through; }
[hidden] { display: none; }
.late { display: flex; flex-wrap: wrap; gap: .6rem; margin: 1rem 0; }
.late button { flex: 1 1 12rem; min-height: 3.5rem; font: inherit; color: #000; background: #fff;
  border: 3px solid #000; border-radius: .6rem; padding: .4rem .8rem; }
.late button:focus-visible { outline: 3px solid #000; outline-offset: 3px; }
"""
_SCRIPT = "\n" + (files(__package__) / "day_phone.js").read_text(encoding="utf-8").replace(
    "SOON", str(round(SOON.total_seconds() * 1000))
)
_LATE = """<section id="late" hidden>
<div class="late">
<button id="later">We are 15 minutes late</button>
<button id="planned">Back to the plan</button>
</div>
<div role="status" id="moved"></div>
</section>
"""
_GIVES_WAY = (StepKind.VISIT, StepKind.WAIT, StepKind.LUNCH)
"""What becomes shorter when the party comes late to something that does not wait."""
_MOMENT = re.compile(r"\x02(\d+) ([^ \x03]+) ([^\x03]*)\x03")


def day_phone_html(outing: Outing, sheet: DaySheet, *, names: bool = False) -> str:
    """One outing as a whole HTML document for the phone.

    Args:
        outing: one place on one day, with its answers.
        sheet: its day sheet, of which some sections are taken along.
        names: whether the party's names stand on it; else a first letter stands for each.
    """
    said = str if names else _with_initials([member.name for member in outing.party])
    notice = f'<p class="quiet">{escape(sheet.notice)}</p>\n' if sheet.notice else ""
    at = _marked(clock_of(outing.plan))
    first, *later = (_said(one, said) for one in stretches(outing, at))
    steps = "".join(
        f"<li{_times(step.start, step.end)}{_bounds(outing, step)}><b>{_moments(at(step.start))}</b>"
        f"<span>{escape(said(step_words(step)))}</span></li>\n"
        for step in outing.plan.steps
    )
    sections = {
        one.name: replace(one, lines=tuple(replace(line, text=said(line.text)) for line in one.lines))
        for one in sheet.sections
    }
    return f"""{page_head(f"{sheet.title}, {sheet.day}", _STYLE, _SCRIPT)}<body>
{notice}<main>
{_stretch(first, hidden=False)}{"".join(_stretch(stretch, hidden=True) for stretch in later)}
{"".join(_sleep(_said(sleep, said)) for sleep in sleeps(outing, at))}
{_LATE}<section class="stretch"{_times(None, outing.plan.enter)}>
{_way_there(outing.place)}
</section>
<section>
<h2>{escape(say("today-the-day"))}</h2>
<ul>
{steps}<li><b>{_moments(at(outing.plan.home))}</b>{escape(home_again())}</li>
</ul>
</section>
{"".join(section_html(sections[name]) for name in TAKEN_ALONG if name in sections)}</main>
<p class="quiet">{escape(sheet.closing)}</p>
<script>{_SCRIPT}</script>
</body>
</html>
"""


def _with_initials(names: Sequence[str]) -> Callable[[str], str]:
    """Puts a first letter in the place of each name, numbered where two begin alike; dates (May 3) stay."""
    short: dict[str, str] = {}
    for name in names:
        initial = name[:1].upper()
        alike = sum(one.startswith(initial) for one in short.values())
        short[name] = f"{initial}{alike + 1 if alike else ''}."
    longest_first = sorted(map(re.escape, short), key=len, reverse=True)
    named = re.compile(rf"(?<![\w/])(?:{'|'.join(longest_first)})(?!\w)(?! \d)")
    return lambda text: named.sub(lambda found: short[found[0]], text)


def _said(segment: DaySegment, said: Callable[[str], str]) -> DaySegment:
    return replace(
        segment,
        title=said(segment.title),
        lines=tuple(map(said, segment.lines)),
        following=said(segment.following),
    )


def _milliseconds(moment: datetime | None, otherwise: int) -> int:
    return otherwise if moment is None else round(moment.timestamp() * 1000)


def _times(begins: datetime | None, ends: datetime | None) -> str:
    return f' data-from="{_milliseconds(begins, _EARLIEST)}" data-until="{_milliseconds(ends, _LATEST)}"'


def _stretch(stretch: DaySegment, *, hidden: bool) -> str:
    lines = "".join(f"<p>{_moments(line)}</p>\n" for line in stretch.lines)
    left = ""
    if stretch.ends is not None:
        code = "sheet-in" if stretch.begins is None else "sheet-still"
        words = escape(say(code, left=""))
        days, tomorrow = escape(say("sheet-in-days", days="#")), escape(say("sheet-tomorrow"))
        left = f'<p data-left="{_milliseconds(stretch.ends, _LATEST)}" data-words="{words}"'
        left += f' data-days="{days}" data-tomorrow="{tomorrow}"></p>\n'
    following = f"<h2>{_moments(stretch.following)}</h2>\n" if stretch.following else ""
    return (
        f'<div class="stretch"{_times(stretch.begins, stretch.ends)}{" hidden" if hidden else ""}>\n'
        f'<div class="now">\n<h1>{_moments(stretch.title)}</h1>\n{left}{lines}</div>\n{following}</div>\n'
    )


def _sleep(sleep: DaySegment) -> str:
    times = _times(sleep.begins, sleep.ends)
    return f'<p class="stretch asleep"{times} hidden>{_moments(sleep.title)}</p>\n'


def _marked(at: Clock) -> Clock:
    """The same way of writing moments, with marks that `_moments` turns into something a script can find."""

    def written(moment: datetime) -> str:
        bare = wording.clock(moment)
        return at(moment).replace(bare, f"\x02{_milliseconds(moment, _LATEST)} {moment.tzinfo} {bare}\x03")

    return written


def _moments(text: str) -> str:
    """A text as HTML, its marked moments as elements that hold when they are and by which clock."""
    before, *marked = _MOMENT.split(text)
    written = [escape(before)]
    for at, zone, bare, after in zip(*(iter(marked),) * 4, strict=True):
        written.append(
            f'<time data-at="{at}" data-zone="{escape(zone)}">{escape(bare)}</time>{escape(after)}'
        )
    return "".join(written)


def _bounds(outing: Outing, step: Step) -> str:
    """What does not move with the rest: when a show or timed entry begins, when a show or the place ends."""
    plan, hours = outing.plan, outing.hours
    told = {}
    show = step.kind is StepKind.SHOW
    if show or (step.start == plan.enter and plan.enter in hours.entry_times):
        told["due"] = step.start
    if show:
        told["shut"] = step.end
    elif plan.enter <= step.start < plan.leave_place:
        closes = next((one.closes for one in hours.spans if one.opens <= step.start < one.closes), None)
        if closes is not None:
            told["shut"] = closes
    bounds = "".join(f' data-{name}="{_milliseconds(moment, _LATEST)}"' for name, moment in told.items())
    return f"{bounds} data-gives" if step.kind in _GIVES_WAY else bounds


def _way_there(place: Place) -> str:
    if place.known_where is None:
        return f"<p>{escape(say('sheet-no-address'))}</p>"
    link = map_link(place)
    lines = "".join(f"<li>{escape(line)}</li>\n" for line in link.to_type)
    where = escape(say("today-way-there", where=link.to_type[0]))
    return (
        f'<p><a class="press" href="{escape(link.address)}">{where}</a></p>\n'
        f"<p>{escape(say('sheet-no-map'))}</p>\n<ul>\n{lines}</ul>"
    )
