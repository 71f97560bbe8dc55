"""Day plan: when to leave, what happens when, and what it costs."""

from collections.abc import Iterator

import pandas as pd
import streamlit as st

from tripplan.files.day_sheet.day_sheet import nap_lines
from tripplan.language import wording
from tripplan.language.sentences import Fact, say, told
from tripplan.planning.day import LeaveWindow, against_best, helps_most
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.outing.sentences import (
    at_the_door,
    cars_sentence,
    crowd_sentence,
    drive_source,
    leaving_sentence,
    naps_in_short,
    total_sentence,
)
from tripplan.planning.outing.weather.visit_weather import weather_in_short
from tripplan.planning.outing.window_facts import span_sentence, window_facts
from tripplan.records.sheet_entries import sheet_entries_in
from tripplan.screens.calendar.page import show_our_outings
from tripplan.screens.compared_places import compared_places
from tripplan.screens.day_plan.day_line import SHEET, day_line
from tripplan.screens.day_plan.day_sheet import print_button, render_day_sheet
from tripplan.screens.day_plan.rain_part import render_rain_plan
from tripplan.screens.day_plan.running_late import render_running_late, told_what_is_used
from tripplan.screens.day_plan.shows import render_shows
from tripplan.screens.day_plan.trade_offs import render_slack, render_trade_offs
from tripplan.screens.day_plan.try_times import render_try_times, render_why_not
from tripplan.screens.day_plan.weather_part import render_weather
from tripplan.screens.look.cards import Chip, facts
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
    """Show one place on one day: the answer first, then the day as a line, then what it could be instead."""
    family = family_or_stop(view)
    answer = st.container()  # above what is asked, so that it is the first thing read on a phone
    places_or_stop(family)
    told_what_is_used(view)
    settled, party = _asked(view, family)
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
        with answer:
            st.title(plain(settled.place.name), anchor=False)
            st.warning(plain(say("dayplan-cannot", day=settled.day)))
            st.markdown(bullets((*outing.reasons, *_what_helps(outing))))
        render_weather(view, family, settled.place, settled.day, None)
        _why_not(view, outing)
        return
    with answer:
        _headline(outing)
        _deed(view, outing, settled)
        _in_short(outing)
    st.html(f"<style>{SHEET}</style>{day_line(outing)}")
    st.caption(plain("; ".join(nap_lines(outing.plan))))
    _windows(view, outing)
    render_weather(view, family, outing.place, outing.day, outing)
    render_rain_plan(view, family, outing)
    render_shows(view, outing)
    entries = sheet_entries_in(view.records, outing.place.id, outing.day)
    render_running_late(
        view, family, outing, planned_on=planned_on, now=view.services.clock(), booked=bool(entries.bookings)
    )
    _more(view, family, outing)
    with st.container(horizontal=True, key="day_bar"):
        named = {"place": outing.place.id, "day": outing.day.isoformat()}
        st.page_link("screens/pages/calendar.py", label=say("dayplan-calendar-entry"))
        print_button(view, family, outing)
        st.page_link("screens/pages/on_the_day.py", label=say("dayplan-phone"), query_params=named)


def _asked(view: View, family: Family) -> tuple[Selection, list[str]]:
    """Where to, when and who, behind one press."""
    with st.container(horizontal=True, key="chips"), st.popover(say("dayplan-asked"), key="open_asked"):
        settled = _place_and_day(view, family)
        party = party_picker(view, family, on_record(view, settled.place.id, settled.day))
    return settled, party


def _deed(view: View, outing: Outing, settled: Selection) -> None:
    """The one thing to do next."""
    if st.button(say("dayplan-to-calendar"), key="plan_to_calendar", type="primary"):
        take(view, outing.place.id, outing.day, settled.leave_at, settled.leave_place_at)
        show_our_outings()
        st.switch_page("screens/pages/calendar.py")


def _more(view: View, family: Family, outing: Outing) -> None:
    """What stands behind the answer, folded."""
    with st.expander(say("dayplan-other-time"), key="open_try_times"):
        to_the_minute(view)
        render_try_times(view, outing)
    with st.expander(say("dayplan-why"), key="open_why"):
        st.markdown(bullets(filter(None, (drive_source(outing), cars_sentence(outing, family.household)))))
        render_slack(outing)
        render_trade_offs(outing)
        st.header(say("dayplan-crowds"), anchor=False)
        st.markdown(crowd_lines(outing.crowd))
        if outing.notes:
            st.header(say("dayplan-good-to-know"), anchor=False)
            st.markdown(bullets(outing.notes))
    with st.expander(plain(say("dayplan-tickets", total=at_the_door(outing))), key="open_cost"):
        st.markdown(tickets_of(outing))
        st.markdown(cost_lines(outing.cost))
    if outing.cautions:
        with st.expander(say("dayplan-safety"), key="open_safety"):
            st.markdown(bullets(told(outing.cautions)))
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
    party = [member.name for member in family.household.members]
    places = compared_places(view, family)
    candidate = answers.compared(family, party, places, usual_span(view), view.today)[0]
    day = candidate.best.day if candidate.best else usual_span(view).first
    return Selection(candidate.place, day, None)


def _what_helps(nothing: NoOuting) -> Iterator[Fact]:
    """The one limit that makes the day possible if it gives way a little, if there is one."""
    helps = None if nothing.question is None else helps_most(nothing.question, None)
    if helps is not None:
        yield helps.brings


def _why_not(view: View, nothing: NoOuting) -> None:
    """Where no times will do: the parent's own, where to change what stands in the way, and other days."""
    if nothing.question is not None:
        to_the_minute(view)
        with st.expander(say("dayplan-own-time"), expanded=True, key="open_why_not"):
            render_why_not(nothing, nothing.question)
        st.page_link("screens/pages/household.py", label=say("dayplan-change-limits"))
    st.page_link("screens/pages/choose_day.py", label=say("dayplan-other-day"))


def _headline(outing: Outing) -> None:
    """Where to and when to begin, in the largest type of the page, and what goes with it."""
    plan, day = outing.plan, wording.short_day(outing.day)
    if plan.drive_off == plan.leave_home:
        title = say("dayplan-headline-off", place=outing.place.name, at=plan.drive_off)
        under = say("dayplan-under-home", day=day, home=plan.home)
    else:
        title = say("dayplan-headline", place=outing.place.name, at=plan.leave_home)
        under = say("dayplan-under", day=day, off=plan.drive_off, home=plan.home)
    st.title(plain(title), anchor=False)
    st.header(plain(under), anchor=False)


def _in_short(outing: Outing) -> None:
    """What the day gives, in five lines."""
    there, car = wording.minutes(outing.plan.visit_minutes), wording.minutes(outing.plan.car_minutes)
    said = (
        Chip("money", total_sentence(outing.cost)),
        Chip("drive", say("dayplan-time", there=there, car=car)),
        Chip("nap", naps_in_short(outing)),
        Chip("crowd", crowd_sentence(outing.crowd)),
        Chip("weather", weather_in_short(outing.weather).text),
    )
    st.html(facts(Chip(one.drawing, wording.capital(one.said)) for one in said))


def _windows(view: View, outing: Outing) -> None:
    """Let the parent pick another departure where there are several good ones."""
    windows = outing.search.windows
    own = all(window.best != outing.plan for window in windows)
    if own:
        _own_times(view, outing)
    if len(windows) < 2:
        if windows and not own:
            st.caption(plain(say("dayplan-any-departure", span=span_sentence(windows[0]))))
        return

    # Another day, another grid or times of one's own have windows of their own to pick from.
    widget = f"leave_window_{outing.place.id}_{outing.day}_{outing.question.grid_minutes}_{own}"

    def keep() -> None:
        number = st.session_state[widget]
        if number is not None:
            take(view, outing.place.id, outing.day, windows[number].best.leave_home)

    picked = next((number for number, window in enumerate(windows) if window.best == outing.plan), None)
    st.radio(
        say("dayplan-good-times"),
        range(len(windows)),
        index=picked,
        format_func=[_window_sentence(window) for window in windows].__getitem__,
        key=widget,
        on_change=keep,
    )
    with st.expander(say("dayplan-side-by-side")):
        facts = window_facts(outing.hours, windows)
        columns = {
            span_sentence(window): [fact.of_each[at] for fact in facts] for at, window in enumerate(windows)
        }
        st.table(
            pd.DataFrame(columns, index=[plain(fact.name) for fact in facts]),
            alt=say("dayplan-side-by-side-what"),
        )


def _own_times(view: View, outing: Outing) -> None:
    """Say that the parent's own times count, and offer the best plan again."""
    plan, best = outing.plan, outing.search.best
    said = "" if best is None else against_best(outing.question, plan, best)
    st.caption(
        plain(f"{say('dayplan-own-times', leaving=leaving_sentence(plan), back=plan.leave_place)} {said}")
    )
    st.button(
        say("dayplan-back-to-best"),
        key="back_to_best",
        on_click=take,
        args=(view, outing.place.id, outing.day),
    )


def _window_sentence(window: LeaveWindow) -> str:
    kept = sum(nap.kept_minutes for nap in window.best.naps)
    return plain(
        say(
            "dayplan-window",
            span=span_sentence(window),
            there=wording.minutes(window.best.visit_minutes),
            nap=wording.minutes(kept),
            home=window.best.home,
        )
    )
