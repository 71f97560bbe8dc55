"""On the day: what to do now in very large type, for a phone in one hand; it follows the clock."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta

import streamlit as st

from tripplan.documents.outings.planned import PlanStatus
from tripplan.documents.outings.sheet_entries import SheetEntries
from tripplan.documents.places.place import Place
from tripplan.errors import UnknownName
from tripplan.files.day_sheet.day_phone_html import day_phone_html
from tripplan.files.day_sheet.day_sheet import clock_of, day_sheet, dialled
from tripplan.files.day_sheet.day_stretches import (
    home_again,
    map_link,
    sleeps,
    step_words,
    stretches,
    time_left,
)
from tripplan.language.sentences import fact, say, told
from tripplan.planning.day_sheet.emergency import FROM_MEMORY, emergency_lines
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.outing.sentences import at_the_door, drive_source
from tripplan.planning.outing.weather.visit_weather import weather_there
from tripplan.records.sheet_entries import sheet_entries_in
from tripplan.screens.day_plan.rain_part import render_rain_plan
from tripplan.screens.day_plan.running_late import (
    RAIN,
    render_at_once,
    render_running_late,
    told_what_is_used,
    what_is_said,
)
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import (
    day_of_planning,
    grid_minutes,
    kept_party,
    name_in_address,
    named_in_address,
    on_record,
    place_named,
    planned_outings,
    taken,
)
from tripplan.screens.widgets.explain import tickets_of
from tripplan.screens.widgets.frame import family_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.view import View
from tripplan.screens.widgets.visitor import page_link, sees_everything

LOOKS_AT_THE_CLOCK = "20s"
"""How often what to do now is looked up anew."""

LATE_HOME = timedelta(hours=4)
"""So long after an outing should be over, it may still be on: an evening out can end after midnight."""

_SETTLED = "today-planned"

# Black on white whatever the theme, in sizes that are read at arm's length; nothing is told by colour.
_STYLE = """<style>
.st-key-on_the_day { background: #fff; color: #000; padding: .5rem; gap: .8rem; max-width: 46rem; }
.st-key-on_the_day :is(p, li, label p, summary p) { font-size: 1.35rem; color: #000; }
.st-key-on_the_day :is(input, .stTimeInput span) { font-size: 1.35rem; color: #000; }
.st-key-on_the_day :is([data-testid=stNumberInputContainer], .stSelectbox [role=group],
  [data-testid=stTimeInputTimeDisplay]) { height: 3.6rem; align-items: center; }
.st-key-on_the_day [data-testid^=stNumberInputStep] { min-width: 3rem; }
.st-key-on_the_day :is(h2, h3) { font-size: 1.9rem; color: #000; }
.st-key-on_the_day :is(a, button) { min-height: 3.5rem; color: #000; }
.st-key-on_the_day :is(.stLinkButton a, .stButton button, .stDownloadButton button) {
  border: 3px solid #000; background: #fff; }
.st-key-went_wrong { gap: .5rem; }
.st-key-went_wrong > div { flex: 1 1 30% !important; min-width: 6.5rem; }
.st-key-on_the_day .st-key-went_wrong button { padding: .2rem; }
.st-key-on_the_day .st-key-went_wrong button p { font-size: 1.1rem; font-weight: 600; }
.st-key-on_the_day :is(a, button) :is(div, span, p) { white-space: normal; overflow-wrap: anywhere; }
.st-key-day_now { border: 4px solid #000; border-radius: .6rem; padding: 1rem; gap: .4rem; }
.st-key-on_the_day .st-key-day_now h1 {
  font-size: clamp(2.8rem, 13vw, 4.5rem); line-height: 1.05; padding: 0 0 .6rem; color: #000; }
.st-key-on_the_day .st-key-day_now div p { font-size: 1.7rem; line-height: 1.25; }
</style>"""


@dataclass(frozen=True)
class _Meant:
    """An outing that the page can be about.

    Attributes:
        place: where to.
        day: when.
        party: who goes.
        leave_home, leave_place: the times it is planned with; None for the best ones.
        over: when it should be over; midnight where nothing is on record.
        how: what tells it from the others; the code of its word.
    """

    place: Place
    day: date
    party: tuple[str, ...]
    leave_home: datetime | None
    leave_place: datetime | None
    over: datetime
    how: str

    @property
    def key(self) -> str:
        """Tells it from the others."""
        return f"{self.place.id} {self.day}"


def render(view: View) -> None:
    """Show one outing for the phone: what is on now, what comes, where to ring, what to mind."""
    family = family_or_stop(view)
    st.html(_STYLE)
    told_what_is_used(view)
    known = _known(view, family)
    if not known:
        st.title(say("today-no-outing"))
        st.markdown(say("today-no-outing-lead"))
        page_link("screens/pages/day_plan.py", say("today-plan-a-day"))
        return
    page = st.container(key="on_the_day")
    meant = _pick(view, known)
    # After midnight the day before is still being lived.
    planned_on = min(day_of_planning(view, family, meant.place.id, meant.day), meant.day)
    try:
        outing = answers.planned(
            replace(family, now=None),  # what is on is shown to its end
            meant.party,
            meant.place,
            meant.day,
            planned_on,
            meant.leave_home,
            meant.leave_place,
            grid_minutes(view),
        )
    except UnknownName as error:
        outing = NoOuting(meant.place, meant.day, (fact("outing-nobody-called", name=error.name),))
    with page:
        if isinstance(outing, NoOuting):
            st.title(plain(meant.place.name))
            st.markdown(plain(say("dayplan-cannot", day=meant.day)))
            st.markdown(bullets(outing.reasons))
        else:
            _outing(view, family, outing, meant, planned_on)
        page_link("screens/pages/day_plan.py", say("today-whole-plan"))
        if not sees_everything():
            st.page_link("screens/pages/logbook.py", label=say("today-log"))


# --- which outing -----------------------------------------------------------------------------------------


def _known(view: View, family: Family) -> dict[str, _Meant]:
    """Every outing the page can be about, what it is at first about in front."""
    named = list(_named_in_address(view, family))
    planned = list(_planned(view, family))
    today = [meant for meant in planned if meant.day <= view.today]
    today.sort(key=lambda meant: meant.how != _SETTLED)
    tried = list(_tried(view, family))
    # The times of the Day plan page count where the address names its outing; else those on record.
    ordered = (*_matching(named, (*tried, *planned)), *named, *today, *tried, *planned)
    found: dict[str, _Meant] = {}
    for meant in ordered:
        if meant.day >= view.today or view.services.clock() < meant.over + LATE_HOME:
            found.setdefault(meant.key, meant)
    return found


def _planned(view: View, family: Family) -> Iterator[_Meant]:
    for one in planned_outings(view):
        place = place_named(family, one.place)
        if place is not None:
            how = _SETTLED if one.status is PlanStatus.CONFIRMED else "today-maybe"
            yield _Meant(place, one.day, one.party, one.leave_home, one.leave_place, one.home, how)


def _tried(view: View, family: Family) -> Iterator[_Meant]:
    """The outing of the Day plan page, if there is one."""
    now = taken(view, family)
    if now is not None:
        over = _midnight_after(family, now.day)
        party = tuple(kept_party(view, family, on_record(view, now.place.id, now.day)))
        yield _Meant(now.place, now.day, party, now.leave_at, now.leave_place_at, over, "today-as-on-plan")


def _named_in_address(view: View, family: Family) -> Iterator[_Meant]:
    """The outing that the page's address names, with its best plan."""
    named = named_in_address(view, family)
    place = None if named is None else place_named(family, named[0])
    if named is not None and place is not None:
        day = named[1]
        over, party = _midnight_after(family, day), tuple(kept_party(view, family))
        yield _Meant(place, day, party, None, None, over, "today-the-best")


def _midnight_after(family: Family, day: date) -> datetime:
    """When a day is over at home."""
    return datetime.combine(day + timedelta(days=1), time(0), family.household.home.zone)


def _matching(named: Sequence[_Meant], others: Sequence[_Meant]) -> list[_Meant]:
    keys = {meant.key for meant in named}
    return [meant for meant in others if meant.key in keys]


def _pick(view: View, known: dict[str, _Meant]) -> _Meant:
    """Let the parent pick another outing; at first it is the one in front."""
    keys = list(known)
    if len(keys) == 1:
        return known[keys[0]]
    names = {
        key: say("today-of", day=meant.day, place=meant.place.name, how=say(meant.how))
        for key, meant in known.items()
    }
    picked = st.selectbox(
        say("today-which"), keys, format_func=names.__getitem__, key=f"on_the_day_{view.which}"
    )
    name_in_address(known[picked].place.id, known[picked].day)
    return known[picked]


# --- the outing -------------------------------------------------------------------------------------------


def _outing(view: View, family: Family, outing: Outing, meant: _Meant, planned_on: date) -> None:
    entries = sheet_entries_in(view.records, outing.place.id, outing.day)
    times = (outing.plan.leave_home, outing.plan.leave_place)
    if meant.leave_place is not None and times != (meant.leave_home, meant.leave_place):
        st.markdown(say("today-times-gone"))
    _now(view, outing)
    render_at_once()
    render_running_late(
        view, family, outing, planned_on=planned_on, now=view.services.clock(), booked=bool(entries.bookings)
    )
    if what_is_said() == RAIN:
        render_rain_plan(view, family, outing)
    _steps(view, outing)
    _whom_to_ring(outing, entries)
    if outing.weather is not None:
        st.markdown(plain(say("today-weather", weather=weather_there(outing.weather))))
    with st.expander(say("dayplan-safety")):
        st.markdown(bullets(told(outing.cautions)))
    with st.expander(plain(say("today-at-door", total=at_the_door(outing)))):
        st.markdown(tickets_of(outing))
        st.markdown(
            bullets(say("today-booking", what=one.what, number=one.number) for one in entries.bookings)
        )
    st.markdown(say("today-offline"))
    st.caption(plain(drive_source(outing)))
    notice = family.household.notice
    sheet = day_sheet(outing, family.household, entries, notice=notice)
    st.download_button(
        say("today-save"),
        day_phone_html(outing, sheet, names=entries.ticked.names),
        file_name=f"{outing.place.id}-{outing.day}-phone.html",
        mime="text/html",
        key="download_phone_page",
        help=say("today-save-help"),
        on_click="ignore",
        width="stretch",
    )


@st.fragment(run_every=LOOKS_AT_THE_CLOCK)
def _now(view: View, outing: Outing) -> None:
    """What to do now and what comes after, looked up anew as time passes."""
    now = view.services.clock()
    stretch = next(one for one in stretches(outing) if one.is_on(now))
    with st.container(key="day_now"):
        st.title(plain(stretch.title), anchor=False)
        if stretch.ends is not None:
            st.markdown(plain(time_left(stretch, now)))
        for line in (*stretch.lines, *(sleep.title for sleep in sleeps(outing) if sleep.is_on(now))):
            st.markdown(plain(line))
    if stretch.following:
        st.header(plain(stretch.following), anchor=False)
    if now < outing.plan.enter:
        _way_there(outing.place)


@st.fragment(run_every=LOOKS_AT_THE_CLOCK)
def _steps(view: View, outing: Outing) -> None:
    """The day's steps, the one that is on in front; looked up anew as time passes."""
    now, at = view.services.clock(), clock_of(outing.plan)
    st.header(say("today-the-day"), anchor=False)
    on = [step for step in outing.plan.steps if step.start <= now < step.end]
    told = [
        *(f"**{plain(say('today-now', what=step_words(step), end=at(step.end)))}**" for step in on),
        *(plain(_line(at(step.start), step_words(step))) for step in outing.plan.steps if step.start > now),
        plain(_line(at(outing.plan.home), home_again())),
    ]
    st.markdown("\n".join(f"- {line}" for line in told))
    over = [_line(at(step.start), step_words(step)) for step in outing.plan.steps if step.end <= now]
    if over:
        with st.expander(say("today-over")):
            st.markdown(bullets(over))


def _line(at: str, what: str) -> str:
    return say("today-step", at=at, what=what)


def _way_there(place: Place) -> None:
    """The address, opened by the phone's own map."""
    if place.known_where is None:
        st.markdown(say("sheet-no-address"))
        return
    link = map_link(place)
    st.link_button(
        plain(say("today-way-there", where=link.to_type[0])),
        link.address,
        width="stretch",
        help=say("today-way-there-help"),
    )
    st.markdown(f"{say('sheet-no-map')}\n{bullets(link.to_type)}")


def _whom_to_ring(outing: Outing, entries: SheetEntries) -> None:
    st.header(say("today-if-something"), anchor=False)
    lines = emergency_lines(outing.place, entries.contacts)
    for number, line in enumerate(lines):
        dial = dialled(line.telephone)
        called = say("today-call", who=line.what, number=line.telephone) if line.telephone else line.what
        said = plain(called)
        if dial:
            st.link_button(said, f"tel:{dial}", width="stretch", key=f"ring_{number}")
        else:
            st.markdown(said)
    if any(line.source == FROM_MEMORY for line in lines):
        st.markdown(say("today-check-numbers"))
