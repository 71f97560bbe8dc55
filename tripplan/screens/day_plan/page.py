"""Day plan: when to leave, what happens when, and what to buy at the till."""

from collections.abc import Iterator

import pandas as pd
import streamlit as st

from tripplan.documents.family.household import Household
from tripplan.files.day_sheet.day_sheet import clock_of, nap_lines
from tripplan.language import wording
from tripplan.language.sentences import told
from tripplan.planning.day import LeaveWindow, against_best, helps_most
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.outing.sentences import (
    at_the_door,
    cars_sentence,
    crowd_sentence,
    drive_source,
    leaving_sentence,
    nap_sentence,
    total_sentence,
)
from tripplan.planning.outing.weather.visit_weather import weather_sentence
from tripplan.planning.outing.window_facts import span_sentence, window_facts
from tripplan.records.kinds import ComparedPlaces
from tripplan.records.sheet_entries import sheet_entries_in
from tripplan.screens.day_plan.day_sheet import render_day_sheet
from tripplan.screens.day_plan.rain_part import render_rain_plan
from tripplan.screens.day_plan.running_late import render_running_late, told_what_is_used
from tripplan.screens.day_plan.shows import render_shows
from tripplan.screens.day_plan.timeline import timeline
from tripplan.screens.day_plan.trade_offs import render_slack, render_trade_offs
from tripplan.screens.day_plan.try_times import render_try_times, render_why_not
from tripplan.screens.day_plan.weather_part import render_weather
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import (
    Selection,
    day_of_planning,
    grid_minutes,
    name_in_address,
    named_in_address,
    next_outing,
    on_record,
    party_picker,
    place_and_day,
    place_named,
    take,
    take_as_planned,
    taken,
    to_the_minute,
    usual_span,
)
from tripplan.screens.widgets.explain import cost_lines, crowd_lines, tickets_of
from tripplan.screens.widgets.frame import family_or_stop, places_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.view import View


def render(view: View) -> None:
    """Show one place on one day as a picture and in words, with the departures to choose from."""
    family = family_or_stop(view)
    answer = st.empty()  # above what is asked, so that it is the first thing read on a phone
    answer.title("When do we leave?", anchor=False)
    places_or_stop(family)
    told_what_is_used(view)
    settled = _place_and_day(view, family)
    with st.expander("Who goes", expanded=False):
        party = party_picker(view, family, on_record(view, settled.place.id, settled.day))
    planned_on = day_of_planning(view, family, settled.place.id, settled.day)
    outing = answers.planned(
        family,
        party,
        settled.place,
        settled.day,
        planned_on,
        settled.leave_at,
        settled.leave_place_at,
        grid_minutes(view),
    )
    if isinstance(outing, NoOuting):
        with answer.container():
            st.title(plain(settled.place.name), anchor=False)
            st.warning(plain(f"{wording.day(settled.day)} cannot be done:"))
            st.markdown(bullets((*outing.reasons, *_what_helps(outing))))
        render_weather(view, family, settled.place, settled.day, None)
        _why_not(view, outing)
        return
    with answer.container():
        _headline(outing)
    _in_short(outing, family.household)
    st.altair_chart(
        timeline(outing),
        alt="The day from left to right, a row for each child who naps and one for everybody else: drives, "
        "rests, visit, meals and naps; the list below says the same",
    )
    _windows(view, outing)
    to_the_minute(view)
    render_weather(view, family, outing.place, outing.day, outing)
    render_rain_plan(view, family, outing)
    render_shows(view, outing)
    with st.expander("What if we left at another time?", key="open_try_times"):
        render_try_times(view, outing)
    st.page_link(
        "screens/pages/on_the_day.py",
        label="Big type for the phone on the day",
        query_params={"place": outing.place.id, "day": outing.day.isoformat()},
    )
    entries = sheet_entries_in(view.records, outing.place.id, outing.day)
    render_running_late(
        view, family, outing, planned_on=planned_on, now=view.services.clock(), booked=bool(entries.bookings)
    )
    _in_words(outing)
    render_slack(outing)
    render_trade_offs(outing)
    _at_the_till(outing)
    render_day_sheet(view, family, outing)


def _place_and_day(view: View, family: Family) -> Selection:
    """Ask for the place and the day: those of the address, else taken elsewhere, else planned next.

    The address then names what is shown, so that it is there again after a reload.
    """
    shown, named = f"plan_address_{view.which}", named_in_address(view, family)
    if named is not None and named != st.session_state.get(shown):
        take_as_planned(view, *named)
    now = taken(view, family) or _planned_next(view, family) or _suggested(view, family)
    place_and_day(view, family, now, "plan")
    name_in_address(now.place.id, now.day)
    st.session_state[shown] = (now.place.id, now.day)
    return now


def _planned_next(view: View, family: Family) -> Selection | None:
    """The next outing that is planned, as it is on record."""
    planned = next_outing(view, family)
    place = None if planned is None else place_named(family, planned.place)
    if planned is None or place is None:
        return None
    return Selection(place, planned.day, planned.leave_home, planned.leave_place)


def _suggested(view: View, family: Family) -> Selection:
    """The cheapest of the compared places on its best day, before the parent has taken anything."""
    kept = view.records.get(ComparedPlaces)
    compared = [place for place in family.places if kept and place.id in kept.value.places]
    party = [member.name for member in family.household.members]
    places = compared or list(family.places[:1])
    candidate = answers.compared(family, party, places, usual_span(view), view.today)[0]
    day = candidate.best.day if candidate.best else usual_span(view).first
    return Selection(candidate.place, day, None)


def _what_helps(nothing: NoOuting) -> Iterator[str]:
    """The one limit that makes the day possible if it gives way a little, if there is one."""
    helps = None if nothing.question is None else helps_most(nothing.question, None)
    if helps is not None:
        yield helps.sentence


def _why_not(view: View, nothing: NoOuting) -> None:
    """Where no times will do: the parent's own, where to change what stands in the way, and other days."""
    if nothing.question is not None:
        to_the_minute(view)
        with st.expander("What if we left at a time of our own?", expanded=True, key="open_why_not"):
            render_why_not(nothing, nothing.question)
        st.page_link("screens/pages/household.py", label="Change what limits the day, on Household")
    st.page_link("screens/pages/choose_day.py", label="Choose another day")


def _headline(outing: Outing) -> None:
    """Where to and when to begin, in the largest type of the page, and what goes with it."""
    plan = outing.plan
    begin, *then = leaving_sentence(plan).split(", ")
    then.append(f"home again at {wording.clock(plan.home)}")
    st.title(plain(f"{outing.place.name}: {begin}"), anchor=False)
    st.header(plain(f"{wording.day(outing.day)}: {', '.join(then)}"), anchor=False)


def _in_short(outing: Outing, household: Household) -> None:
    """What the day gives, what matters first."""
    plan, cars = outing.plan, cars_sentence(outing, household)
    st.markdown(
        bullets(
            (
                f"{wording.minutes(plan.visit_minutes)} at {outing.place.name}, "
                f"{wording.minutes(plan.car_minutes)} of driving both ways "
                f"({outing.way_there.drive.known_in_words})",
                *([cars] if cars else []),
                f"Nap: {nap_sentence(outing)}",
                f"Weather there: {weather_sentence(outing.weather)}",
                f"Crowds: {crowd_sentence(outing.crowd)}",
                f"In all: {total_sentence(outing.cost)}",
            )
        )
    )
    st.caption(plain(drive_source(outing)))


def _windows(view: View, outing: Outing) -> None:
    """Let the parent pick another departure where there are several good ones."""
    windows = outing.search.windows
    own = all(window.best != outing.plan for window in windows)
    if own:
        _own_times(view, outing)
    if len(windows) < 2:
        if windows and not own:
            st.caption(plain(f"Any departure from {span_sentence(windows[0])} is about as good."))
        return

    # Another day, another grid or times of one's own have windows of their own to pick from.
    widget = f"leave_window_{outing.place.id}_{outing.day}_{outing.question.grid_minutes}_{own}"

    def keep() -> None:
        number = st.session_state[widget]
        if number is not None:
            take(view, outing.place.id, outing.day, windows[number].best.leave_home)

    picked = next((number for number, window in enumerate(windows) if window.best == outing.plan), None)
    st.radio(
        "Good times to leave",
        range(len(windows)),
        index=picked,
        format_func=[_window_sentence(window) for window in windows].__getitem__,
        key=widget,
        on_change=keep,
    )
    with st.expander("These times side by side"):
        facts = window_facts(outing.hours, windows)
        columns = {
            span_sentence(window): [fact.of_each[at] for fact in facts] for at, window in enumerate(windows)
        }
        st.table(
            pd.DataFrame(columns, index=[plain(fact.name) for fact in facts]),
            alt="What each of the good times to leave gives",
        )


def _own_times(view: View, outing: Outing) -> None:
    """Say that the parent's own times count, and offer the best plan again."""
    plan, best = outing.plan, outing.search.best
    said = "" if best is None else against_best(outing.question, plan, best)
    st.caption(
        plain(
            f"Planned with your own times: {leaving_sentence(plan)}, leave the place "
            f"{wording.clock(plan.leave_place)}. {said}"
        )
    )
    st.button(
        "Back to the best plan",
        key="back_to_best",
        on_click=take,
        args=(view, outing.place.id, outing.day),
    )


def _window_sentence(window: LeaveWindow) -> str:
    kept = sum(nap.kept_minutes for nap in window.best.naps)
    return plain(
        f"{span_sentence(window)}: {wording.minutes(window.best.visit_minutes)} there, "
        f"{wording.minutes(kept)} of nap kept, home by {wording.clock(window.best.home)}"
    )


def _in_words(outing: Outing) -> None:
    st.header("The day in words", anchor=False)
    plan, at = outing.plan, clock_of(outing.plan)
    steps = (f"{at(step.start)} to {at(step.end)}: {step.label}" for step in plan.steps)
    st.markdown(bullets((*steps, *nap_lines(plan))))
    with st.expander("Why so full or empty?"):
        st.markdown(crowd_lines(outing.crowd))
    if outing.notes:
        with st.expander("Good to know"):
            st.markdown(bullets(outing.notes))
    if outing.cautions:
        with st.expander("Please mind", expanded=True):
            st.markdown(bullets(told(outing.cautions)))


def _at_the_till(outing: Outing) -> None:
    st.header(plain(f"Tickets to buy: {at_the_door(outing)}"), anchor=False)
    st.markdown(tickets_of(outing))
    with st.expander(plain(f"The whole cost: {total_sentence(outing.cost)}")):
        st.markdown(cost_lines(outing.cost))
