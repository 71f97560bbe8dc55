"""The next planned outing: when to load up, what is still to book, what the weather usually is."""

from datetime import date

import streamlit as st

from tripplan.documents.outings.planned import PlannedOuting
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.outing.sentences import naps_in_short
from tripplan.planning.outing.weather.visit_weather import weather_there
from tripplan.records.sheet_entries import sheet_entries_in
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.drawings import kind_of
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import day_of_planning, grid_minutes, place_named
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.view import View


def render_next_outing(view: View, family: Family, coming: PlannedOuting) -> None:
    """The headline, one thing to press, and at most five facts.

    Args:
        view: whose records.
        family: the family in use.
        coming: the outing, to one of the family's places.
    """
    place = place_named(family, coming.place)
    if place is None:
        return
    answer = answers.planned(
        family,
        [name for name in coming.party if any(name == one.name for one in family.household.members)]
        or list(coming.party),
        place,
        coming.day,
        day_of_planning(view, family, coming.place, coming.day),
        coming.leave_home,
        coming.leave_place,
        grid_minutes(view),
    )
    under_way = coming.leave_home <= view.services.clock()
    st.title(
        plain(
            say("start-under-way", place=place.name, at=coming.home)
            if under_way
            else say("start-headline", when=_day(view, coming.day), place=place.name, at=coming.leave_home)
        ),
        anchor=False,
    )
    with st.container(border=True, key="card_next"):
        total = wording.whole_money(coming.likely_total)
        st.html(
            cards.face(
                cards.name(
                    wording.short_day(coming.day), say("start-about", total=total), drawing=kind_of(place)
                ),
                cards.facts(_facts(view, coming, answer)),
                *(
                    cards.warning(reason.text)
                    for reason in (answer.reasons if isinstance(answer, NoOuting) else ())
                ),
            )
        )
        today = coming.day == view.today
        label = say("start-go-through-day") if today else say("start-open-plan")
        if st.button(label, key="open_next", type="primary"):
            st.switch_page(
                f"screens/pages/{'on_the_day' if today else 'day_plan'}.py",
                query_params={"place": coming.place, "day": coming.day.isoformat()},
            )


def _day(view: View, day: date) -> str:
    ahead = (day - view.today).days
    near = {0: "start-day-today", 1: "start-day-tomorrow"}
    return say(near[ahead]) if ahead in near else wording.short_day(day)


def _facts(view: View, coming: PlannedOuting, answer: Outing | NoOuting) -> list[Chip]:
    found = [
        Chip("clock", say("start-home-again", at=coming.home)),
        Chip("book", _to_book(view, coming)),
    ]
    if isinstance(answer, Outing):
        found += [
            Chip("weather", weather_there(answer.weather).text),
            Chip("nap", naps_in_short(answer)),
            Chip("crowd", answer.crowd.word),
        ]
    return [Chip(one.drawing, wording.capital(one.said)) for one in found]


def _to_book(view: View, coming: PlannedOuting) -> str:
    """What is still to book, and until when."""
    booked = sheet_entries_in(view.records, coming.place, coming.day).bookings
    if booked:
        return say("start-booked", what=tuple(one.what for one in booked))
    if coming.book_by is None:
        return say("start-nothing-to-book")
    if coming.book_by < view.today:
        return say("start-was-to-book", day=wording.short_day(coming.book_by))
    return say("start-to-book", day=wording.short_day(coming.book_by))
