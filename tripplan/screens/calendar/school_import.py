"""School calendars: listed with the days they cover, and the ways to add one."""

import streamlit as st

from tripplan.documents.calendars.calendars import SchoolCalendar, with_next_year_expected
from tripplan.errors import PlanError
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.coverage import LOOK_AHEAD, calendar_coverage
from tripplan.records.store import StoredDocument
from tripplan.screens.calendar.built_in_regions import built_in_regions
from tripplan.screens.calendar.coverage_chart import show_coverage
from tripplan.screens.calendar.school_file_form import from_file
from tripplan.screens.calendar.school_typed import by_hand
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse
from tripplan.screens.widgets.saving import remove_one, save_all
from tripplan.screens.widgets.view import View

_PAGE = "calendar"


def school_calendars(view: View, family: Family) -> None:
    """List the school calendars on record, and offer to add one from a file or by hand."""
    calendars = view.records.all(SchoolCalendar)
    st.caption(
        "On days when schools near a place are out, it is fuller. Bring the calendar of your district and of "
        "districts near the places. One of the same name takes the place of the one before."
    )
    for name, kept in calendars.items():
        calendar = kept.value
        days_off = wording.counted(len(calendar.no_school), "break or day off", "breaks and days off")
        short = wording.counted(len(calendar.short_days), "short day with school", "short days with school")
        st.markdown(
            plain(
                f"{name}: {wording.day(calendar.known.first)} to {wording.day(calendar.known.last)}, "
                f"{days_off}{f', {short}' if calendar.short_days else ''}, "
                f"{calendar.pupils:,} students. "
                f"{calendar_coverage(calendar, view.today, view.today + LOOK_AHEAD)}"
            )
        )
        with st.container(horizontal=True):
            st.button(
                plain(f"Remove {name}"),
                key=f"remove_school_{name}",
                on_click=remove_one,
                args=(view, _PAGE, SchoolCalendar, name, kept.revision, f"{name} is removed."),
            )
            if calendar.known.last < view.today + LOOK_AHEAD and calendar.expected_within is None:
                st.button(
                    "Guess next year from this one",
                    key=f"guess_school_{name}",
                    on_click=_guess,
                    args=(view, kept),
                    help="Breaks move to the same weekdays a year on. A guess is a chance, never a fact.",
                )
    show_coverage(family, view.today)
    built_in_regions(view, family, calendars)
    from_file(view, family, calendars)
    by_hand(view, family, calendars)


def _guess(view: View, kept: StoredDocument[SchoolCalendar]) -> None:
    try:
        guessed = with_next_year_expected(kept.value)
    except PlanError as trouble:
        refuse(_PAGE, f"Nothing was guessed: {trouble}.")
        return
    save_all(view, _PAGE, [(guessed, kept.revision)], f"The year after is guessed for {guessed.name}.")
