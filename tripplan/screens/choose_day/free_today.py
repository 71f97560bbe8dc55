"""An hour that opens up: what could we still do today, between two times of the clock?"""

from datetime import datetime, time, timedelta

import streamlit as st

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.outing.sentences import leaving_sentence, naps_in_short
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import keep, kept_party, open_or_close, take
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.view import View
from tripplan.values import wording

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
        "Close: what we could still do today" if is_open else "What could we still do today?",
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
        start = _clock(view, "We are free from", "free_from", _from_now(family))
    with right:
        end = _clock(view, "Home again by", "free_until", family.household.habits.home_by)
    if end <= start:
        st.warning("The free time ends before it begins.")
        return
    party = kept_party(view, family)
    today = DateSpan(first=view.today, last=view.today)
    table = answers.swept(family.free_between(start, end), party, family.places, today, view.today)
    found = [table.outing(row, column) for row, column in table.ranked()[:SHOWN].tolist()]
    outings = [one for one in found if isinstance(one, Outing)]
    if not outings:
        st.markdown(f"**Nothing fits between {_said(view, start)} and {_said(view, end)}.**")
    for outing in outings:
        _card(view, outing)
    others = [table.outing(row, 0) for row in range(len(table.places)) if not table.can_go[row, 0]]
    if others:
        with st.expander("Why nowhere else?" if outings else "Why not?", key="open_free_today_why"):
            st.markdown(
                bullets(
                    f"{one.place.name}: {'; '.join(one.reasons)}"
                    for one in others
                    if isinstance(one, NoOuting)
                )
            )


def _card(view: View, outing: Outing) -> None:
    with st.container(border=True, key=f"free_today_{outing.place.id}"):
        total = wording.whole_money(outing.cost.total.likely)
        at_least = "at least " if outing.cost.unknown else ""
        st.markdown(f"**{plain(f'{outing.place.name}: {at_least}{total}')}**")
        leaving = leaving_sentence(outing.plan)
        st.markdown(
            plain(
                f"{wording.capital(leaving)}, home {wording.clock(outing.plan.home)}. "
                f"{wording.minutes(outing.plan.visit_minutes)} there, "
                f"{wording.minutes(outing.way_there.drive_minutes)} drive, {naps_in_short(outing)}, "
                f"{outing.crowd.word}."
            )
        )
        if st.button(
            "Plan this",
            key=f"plan_today_{outing.place.id}",
            help=f"{plain(outing.place.name)}: opens the plan of the day.",
        ):
            take(view, outing.place.id, outing.day, outing.plan.leave_home, outing.plan.leave_place)
            st.switch_page("screens/pages/day_plan.py")


def _clock(view: View, label: str, name: str, at_first: time) -> time:
    kept = f"{name}_{view.which}"
    now: time = st.session_state.setdefault(kept, at_first)
    midnight = datetime.combine(view.today, time())
    quarters = (midnight + step * STEP for step in range(_DAY // STEP))
    clocks = sorted({now, *(moment.time() for moment in quarters if FIRST <= moment.time() <= LAST)})
    labels = {clock: _said(view, clock) for clock in clocks}
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


def _said(view: View, clock: time) -> str:
    return wording.clock(datetime.combine(view.today, clock))
