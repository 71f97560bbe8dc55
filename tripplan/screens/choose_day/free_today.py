"""An hour that opens up: what could we still do today, between two times of the clock?"""

from datetime import datetime, time, timedelta

import streamlit as st

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.language import wording
from tripplan.language.sentences import say, told
from tripplan.planning.family.family import Family
from tripplan.planning.family.variety import lately
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.screens.look.outing_card import outing_face, scale_of
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import keep, kept_party, open_or_close, take
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.view import View

SHOWN = 3
"""So many outings answer the question; more are a list to be read."""
STEP = timedelta(minutes=15)
"""How finely the free time is picked."""
FIRST, LAST = time(6), time(22)
"""Times to pick from; others count where they are the present or the household's own."""
_DAY = timedelta(days=1)
_OPEN = "free_today_open"


def render_free_today(view: View, family: Family) -> None:
    """Offer the question with one press, and answer it at once for the time from now on.

    Args:
        view: whose records.
        family: the family in use, with at least one place.
    """
    is_open = st.session_state.get(_OPEN, False)
    st.button(
        say("days-today-close") if is_open else say("days-today"),
        key="free_today",
        width="stretch",
        on_click=open_or_close,
        args=(_OPEN,),
    )
    if is_open:
        with st.container(border=True, key="free_today_part"):
            _answer(view, family)


def _answer(view: View, family: Family) -> None:
    left, right = st.columns(2)
    with left:
        start = _clock(view, say("days-free-from"), "free_from", _from_now(family))
    with right:
        end = _clock(view, say("days-free-until"), "free_until", family.household.habits.home_by)
    if end <= start:
        st.warning(say("days-free-ends-first"))
        return
    party = kept_party(view, family)
    today = DateSpan(first=view.today, last=view.today)
    table = answers.swept(family.free_between(start, end), party, family.places, today, view.today)
    apart = lately(family, view.today)
    new_first = sorted(table.ranked().tolist(), key=lambda spot: table.places[spot[0]].id in apart)
    found = [table.outing(row, column) for row, column in new_first[:SHOWN]]
    outings = [one for one in found if isinstance(one, Outing)]
    if not outings:
        st.markdown(f"**{say('days-nothing-fits', start=start, end=end)}**")
    for outing in outings:
        _card(view, outing, scale_of(outings))
    others = [table.outing(row, 0) for row in range(len(table.places)) if not table.can_go[row, 0]]
    if others:
        label = say("days-why-nowhere") if outings else say("days-why-not")
        with st.expander(label, key="open_free_today_why", on_change="rerun") as part:
            if part.open:
                missed = [one for one in others if isinstance(one, NoOuting)]
                st.markdown(bullets(f"{one.place.name}: {'; '.join(told(one.reasons))}" for one in missed))


def _card(view: View, outing: Outing, scale: float) -> None:
    with st.container(border=True, key=f"card_today_{outing.place.id}"):
        st.html(outing_face(outing, scale))
        if st.button(
            plain(say("compare-plan", place=outing.place.name)), key=f"plan_today_{outing.place.id}"
        ):
            take(view, outing.place.id, outing.day, outing.plan.leave_home, outing.plan.leave_place)
            st.switch_page("screens/pages/day_plan.py")


def _clock(view: View, label: str, name: str, at_first: time) -> time:
    kept = f"{name}_{view.which}"
    now: time = st.session_state.setdefault(kept, at_first)
    midnight = datetime.combine(view.today, time())
    quarters = (midnight + step * STEP for step in range(_DAY // STEP))
    clocks = sorted({now, *(moment.time() for moment in quarters if FIRST <= moment.time() <= LAST)})
    labels = {clock: wording.clock(clock) for clock in clocks}
    picked: time = st.selectbox(
        label,
        clocks,
        index=clocks.index(now),
        format_func=labels.__getitem__,
        key=name,
        on_change=keep,
        args=(kept, name),
    )
    return picked


def _from_now(family: Family) -> time:
    """The present, or when the household is ready at the earliest."""
    earliest = family.household.habits.earliest_departure
    return earliest if family.now is None else max(earliest, family.now.time())
