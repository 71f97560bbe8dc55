"""Other times tried on sliders: what leaving then gives, told at once; nothing else is worked out anew."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

import streamlit as st

from tripplan.documents.family.member import Nap
from tripplan.language import wording
from tripplan.language.sentences import say, told
from tripplan.planning.day import (
    DayPlan,
    DayQuestion,
    Napper,
    TimesToTry,
    ViolatedLimit,
    against_best,
    plan_choice,
    plan_day,
    slack,
    times_to_try,
)
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.outing.sentences import naps_sentence
from tripplan.screens.widgets.choices import take
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.view import View

NAP_MOVES = tuple(timedelta(minutes=minutes) for minutes in range(-90, 91, 15))
"""How much earlier or later than usual a child may be tried to get tired."""


@st.fragment
def render_try_times(view: View, outing: Outing) -> None:
    """Sliders for leaving home and the place and for each nap, with what they give.

    Args:
        view: whose choice it becomes where the parent takes it.
        outing: the day as it is planned; the sliders begin there.
    """
    plan, tried = outing.plan, times_to_try(outing.question)
    # A plan picked elsewhere on the page has sliders of its own, which begin at its times.
    spot = f"try_{outing.place.id}_{plan.leave_home.isoformat()}_{plan.leave_place.isoformat()}"
    leave_home, leave_place = _sliders(tried, plan.leave_home, plan.leave_place, spot)
    question = _with_naps_moved(outing.question, spot)
    picked = plan_choice(question, leave_home, leave_place)
    if isinstance(picked, ViolatedLimit):
        _cannot_be(picked)
        return
    naps_moved = question != outing.question
    best = plan_day(question).best if naps_moved else outing.search.best
    st.markdown(bullets(_given(question, picked, outing.place.name)))
    if best is not None:
        st.markdown(f"**{plain(against_best(question, picked, best).text)}**")
    if naps_moved:
        st.caption(say("dayplan-naps-only-tried"))
    # What this button does is seen outside this part of the page too.
    if (leave_home, leave_place) != (plan.leave_home, plan.leave_place) and st.button(
        say("dayplan-use-tried"),
        key="take_tried",
        on_click=take,
        args=(view, outing.place.id, outing.day, leave_home, leave_place),
    ):
        st.rerun()


@st.fragment
def render_why_not(nothing: NoOuting, question: DayQuestion) -> None:
    """Sliders for a day on which no times will do: by which limits the parent's own fail.

    Args:
        nothing: the day that cannot be done.
        question: what the search was asked.
    """
    tried = times_to_try(question)
    spot = f"why_not_{nothing.place.id}_{nothing.day}_{question.grid_minutes}"
    leave_home, leave_place = _sliders(tried, tried.leave_home, tried.leave_place, spot)
    picked = plan_choice(question, leave_home, leave_place)
    if isinstance(picked, ViolatedLimit):
        _cannot_be(picked)


def _sliders(
    tried: TimesToTry, leave_home: datetime, leave_place: datetime, spot: str
) -> tuple[datetime, datetime]:
    left, right = st.columns(2)
    with left:
        leave_home = _slider(say("dayplan-we-load-up"), tried.departures, leave_home, f"{spot}_home")
    with right:
        leave_place = _slider(say("dayplan-we-leave"), tried.leaving, leave_place, f"{spot}_place")
    return leave_home, leave_place


def _cannot_be(picked: ViolatedLimit) -> None:
    st.markdown(f"**{say('dayplan-cannot-be')}**")
    st.markdown(bullets(picked.limits))


def _slider(label: str, moments: Sequence[datetime], at_first: datetime, key: str) -> datetime:
    options = sorted({*moments, at_first})
    picked: datetime = st.select_slider(label, options, value=at_first, format_func=wording.clock, key=key)
    return picked


def _with_naps_moved(question: DayQuestion, spot: str) -> DayQuestion:
    """The day with every nap at the time that its slider says."""
    return replace(
        question,
        nappers=tuple(
            replace(
                napper,
                naps=tuple(
                    _moved(question, napper, nap, f"{spot}_nap_{napper.member}_{number}")
                    for number, nap in enumerate(napper.naps)
                ),
            )
            for napper in question.nappers
        ),
    )


def _moved(question: DayQuestion, napper: Napper, nap: Nap, key: str) -> Nap:
    usual = datetime.combine(question.day, nap.start, question.home_zone)
    moments = [usual + move for move in NAP_MOVES if (usual + move).date() == question.day]
    start = _slider(plain(say("dayplan-gets-tired", name=napper.member)), moments, usual, key)
    return nap if start == usual else nap.model_copy(update={"start": start.time()})


def _given(question: DayQuestion, plan: DayPlan, place: str) -> Iterator[str]:
    """What a choice gives, what matters first."""
    yield say("dayplan-given-nap", nap=naps_sentence(plan.naps))
    yield say("dayplan-given-visit", there=wording.minutes(plan.visit_minutes), place=place, at=plan.enter)
    for show in plan.shows:
        if show.seen is None:
            yield say("dayplan-given-no-show", name=show.name)
        else:
            yield say("dayplan-given-show", name=show.name, at=show.seen[0])
    yield say("dayplan-given-home", home=plan.home)
    yield from told(slack(question, plan).chances)
