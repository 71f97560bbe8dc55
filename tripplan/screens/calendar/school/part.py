"""When schools are out: their calendars as cards, one place to add one, holidays and local days."""

from calendar import monthrange
from datetime import date, timedelta
from functools import partial

import streamlit as st

from tripplan.documents.calendars.calendars import SchoolCalendar, with_next_year_expected
from tripplan.errors import PlanError
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.coverage import LOOK_AHEAD, calendar_coverage, days_off
from tripplan.records.store import StoredDocument
from tripplan.screens.calendar.festivals import festivals
from tripplan.screens.calendar.school.built_in_regions import built_in_regions
from tripplan.screens.calendar.school.coverage_chart import show_coverage
from tripplan.screens.calendar.school.file_form import from_file
from tripplan.screens.calendar.school.typed import by_hand
from tripplan.screens.calendar.ways import one_way
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse
from tripplan.screens.widgets.saving import remove_one, save_all
from tripplan.screens.widgets.view import View

_PAGE = "calendar"
_NEARLY_OVER = timedelta(days=10)


def school_part(view: View, family: Family) -> str:
    """When schools are out: their calendars, public holidays, local days; the headline is returned."""
    calendars = view.records.all(SchoolCalendar)
    if not calendars:
        st.markdown(say("calendar-school-lead"))
    for name, kept in calendars.items():
        with st.container(border=True, key=f"card_school_{name}"):
            _card(view, name, kept)
    part = fold(say("calendar-add-school"), "open_add_school")
    if part is not None:
        with part:
            ways = {
                say("calendar-a-file"): partial(from_file, view, family, calendars),
                say("calendar-type-in"): partial(by_hand, view, family, calendars),
                say("calendar-built-in"): partial(built_in_regions, view, family, calendars),
            }
            one_way(say("calendar-how-have"), "add_school_how", ways)
    show_coverage(family, view.today)
    festivals(view, family)
    return _headline([kept.value for kept in calendars.values()], view.today)


def _headline(calendars: list[SchoolCalendar], today: date) -> str:
    """How many days off come within this month, or within the next where this one is nearly over."""
    if not calendars:
        return say("calendar-no-school-yet")
    first = today
    if (today + _NEARLY_OVER).month != today.month:
        first = (today + _NEARLY_OVER).replace(day=1)
    last = first.replace(day=monthrange(first.year, first.month)[1])
    month = wording.month(first.month)
    days = days_off(calendars, first, last)
    if not days:
        return say("calendar-none-off", month=month)
    return say("calendar-days-off-in", days=days, month=month)


def _card(view: View, name: str, kept: StoredDocument[SchoolCalendar]) -> None:
    calendar = kept.value
    off = next((span for span in calendar.no_school if span.last >= view.today), None)
    listed = say("calendar-listed-off", days=len(calendar.no_school))
    if calendar.short_days:
        listed = f"{listed}, {say('calendar-listed-short', days=len(calendar.short_days))}"
    st.html(
        cards.face(
            cards.name(name, drawing="day"),
            cards.facts(
                [
                    Chip(
                        "sun",
                        say("calendar-next-off", days=wording.short_days(off.first, off.last)) if off else "",
                    ),
                    Chip("book", listed),
                    Chip("crowd", say("calendar-so-many-students", students=calendar.pupils)),
                    Chip("clock", calendar_coverage(calendar, view.today, view.today + LOOK_AHEAD)),
                ]
            ),
        )
    )
    with st.container(horizontal=True):
        if calendar.known.last < view.today + LOOK_AHEAD and calendar.expected_within is None:
            st.button(
                say("calendar-guess"),
                key=f"guess_school_{name}",
                on_click=_guess,
                args=(view, kept),
                help=say("calendar-guess-help"),
            )
        st.button(
            plain(say("calendar-remove-named", name=name)),
            key=f"remove_school_{name}",
            type="tertiary",
            on_click=remove_one,
            args=(view, _PAGE, SchoolCalendar, name, kept.revision, say("calendar-is-removed", name=name)),
        )


def _guess(view: View, kept: StoredDocument[SchoolCalendar]) -> None:
    try:
        guessed = with_next_year_expected(kept.value)
    except PlanError as trouble:
        refuse(_PAGE, say("calendar-not-guessed", why=str(trouble)))
        return
    save_all(view, _PAGE, [(guessed, kept.revision)], say("calendar-guessed", name=guessed.name))
