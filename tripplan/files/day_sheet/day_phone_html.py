"""The day for the phone as one HTML file that follows the phone's own clock, for the road.

Everything it may ever say stands in it; its few lines of script only show what is on and count down. Without
scripts it still shows the whole day.
"""

from datetime import datetime

from tripplan.files.day_sheet.day_sheet import DaySheet, clock_of
from tripplan.files.day_sheet.day_sheet_html import section_html
from tripplan.files.day_sheet.day_stretches import (
    HOME_AGAIN,
    NO_MAP,
    SOON,
    DaySegment,
    map_link,
    sleeps,
    step_words,
    stretches,
)
from tripplan.files.html_page import escape, page_head
from tripplan.planning.outing.outing import Outing

TAKEN_ALONG = ("emergency", "tickets", "naps", "needs", "cautions")
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
"""
_SCRIPT = """
const all = name => [...document.querySelectorAll(name)], day = 864e5, soon = SOON;
const midnight = ms => new Date(ms).setHours(0, 0, 0, 0);
const minutes = ms => {
  const count = Math.ceil(ms / 6e4), hours = Math.floor(count / 60), rest = count % 60;
  return hours ? (rest ? `${hours} h ${rest} min` : `${hours} h`) : `${rest} min`;
};
const look = () => {
  const now = Date.now(), begun = it => +it.dataset.from <= now, over = it => +it.dataset.until <= now;
  for (const it of all(".stretch")) it.hidden = !begun(it) || over(it);
  for (const it of all("li[data-from]")) {
    it.classList.toggle("on", begun(it) && !over(it));
    it.classList.toggle("over", over(it));
  }
  for (const it of all("[data-left]")) {
    const left = it.dataset.left - now, days = Math.round((midnight(now + left) - midnight(now)) / day);
    const ahead = it.dataset.words === "in " && left >= soon && days;
    if (ahead) it.textContent = days > 1 ? `in ${days} days` : "tomorrow";
    else it.textContent = it.dataset.words + minutes(left);
  }
};
look();
setInterval(look, 10000);
document.addEventListener("visibilitychange", look);
""".replace("SOON", str(round(SOON.total_seconds() * 1000)))


def day_phone_html(outing: Outing, sheet: DaySheet) -> str:
    """One outing as a whole HTML document for the phone.

    Args:
        outing: one place on one day, with its answers.
        sheet: its day sheet, of which some sections are taken along.
    """
    notice = f'<p class="quiet">{escape(sheet.notice)}</p>\n' if sheet.notice else ""
    first, *later = stretches(outing)
    link = map_link(outing.place)
    at = clock_of(outing.plan)
    steps = "".join(
        f"<li{_times(step.start, step.end)}><b>{escape(at(step.start))}</b>{escape(step_words(step))}</li>\n"
        for step in outing.plan.steps
    )
    sections = {section.name: section for section in sheet.sections}
    return f"""{page_head(f"{sheet.title}, {sheet.day}", _STYLE, _SCRIPT)}<body>
{notice}<main>
{_stretch(first, hidden=False)}{"".join(_stretch(stretch, hidden=True) for stretch in later)}
{"".join(_sleep(sleep) for sleep in sleeps(outing))}
<section class="stretch"{_times(None, outing.plan.enter)}>
<p><a class="press" href="{escape(link.address)}">The way there: {escape(link.to_type[0])}</a></p>
<p>{NO_MAP}</p>
<ul>
{"".join(f"<li>{escape(line)}</li>{chr(10)}" for line in link.to_type)}</ul>
</section>
<section>
<h2>The day</h2>
<ul>
{steps}<li><b>{escape(at(outing.plan.home))}</b>{HOME_AGAIN}</li>
</ul>
</section>
{"".join(section_html(sections[name]) for name in TAKEN_ALONG if name in sections)}</main>
<p class="quiet">{escape(sheet.closing)}</p>
<script>{_SCRIPT}</script>
</body>
</html>
"""


def _milliseconds(moment: datetime | None, otherwise: int) -> int:
    return otherwise if moment is None else round(moment.timestamp() * 1000)


def _times(begins: datetime | None, ends: datetime | None) -> str:
    return f' data-from="{_milliseconds(begins, _EARLIEST)}" data-until="{_milliseconds(ends, _LATEST)}"'


def _stretch(stretch: DaySegment, *, hidden: bool) -> str:
    lines = "".join(f"<p>{escape(line)}</p>\n" for line in stretch.lines)
    left = ""
    if stretch.ends is not None:
        words = "in " if stretch.begins is None else "still "
        left = f'<p data-left="{_milliseconds(stretch.ends, _LATEST)}" data-words="{words}"></p>\n'
    following = f"<h2>{escape(stretch.following)}</h2>\n" if stretch.following else ""
    return (
        f'<div class="stretch"{_times(stretch.begins, stretch.ends)}{" hidden" if hidden else ""}>\n'
        f'<div class="now">\n<h1>{escape(stretch.title)}</h1>\n{left}{lines}</div>\n{following}</div>\n'
    )


def _sleep(sleep: DaySegment) -> str:
    times = _times(sleep.begins, sleep.ends)
    return f'<p class="stretch asleep"{times} hidden>{escape(sleep.title)}</p>\n'
