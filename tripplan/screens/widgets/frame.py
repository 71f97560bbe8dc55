"""What every page begins with: the services, the family in use, and whose data is shown."""

import os
from collections.abc import Mapping
from datetime import date

import streamlit as st
from streamlit.runtime.scriptrunner import get_script_run_ctx

from tripplan.errors import RecordsDamaged, RecordsUnusable
from tripplan.language import wording
from tripplan.language.locales import Locale, ask, of_tag, speak
from tripplan.planning.family.family import Family
from tripplan.records.copies.listed import DayCopy
from tripplan.records.opening import Which
from tripplan.screens.widgets.conflict import show_conflict
from tripplan.screens.widgets.fields import remember_all
from tripplan.screens.widgets.lasting import bring_back
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice, tell
from tripplan.screens.widgets.recovery import offer_recovery
from tripplan.screens.widgets.saving import EXPECTED_TROUBLE, report_errors
from tripplan.screens.widgets.view import View
from tripplan.screens.widgets.visitor import page_link, sees_everything
from tripplan.services import SETTINGS, Services, open_services

_SPOT = "whose"
_LOCALE = "locale"


@st.cache_resource(show_spinner=False)
def _services(settings: tuple[tuple[str, str], ...]) -> Services:
    return open_services(dict(settings))


@st.cache_resource(show_spinner=False, max_entries=4)
def _copied_on(settings: tuple[tuple[str, str], ...], _services: Services, day: date) -> str:
    """Make the copy of a day once, however long the app has been running; what went wrong, in words."""
    del settings, day
    try:
        _services.copy_daily()
    except RecordsUnusable as trouble:
        return f"There is no copy of today's records: {trouble}."
    return ""


def _settings(environment: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    """The environment variables that matter, so that a changed one opens other records."""
    return tuple((name, environment[name]) for name in SETTINGS if name in environment)


def _opened(settings: tuple[tuple[str, str], ...]) -> tuple[Services, Which, Family | None]:
    """The services, whose records are shown, and that family.

    Records that were damaged while the app was running are opened anew, which mends what can be mended.
    """
    services = _services(settings)
    try:
        return services, services.which, services.family()
    except RecordsUnusable:
        _services.clear()
    services = _services(settings)
    return services, services.which, services.family()


def open_page(*, may_change_whose: bool = True) -> View:
    """Open the records and say whose data is shown; every page file calls this first.

    Where the records cannot be used the page says why and ends.

    Args:
        may_change_whose: whether a button leads to the other records; a page for the phone has none that a
            child could press.
    """
    settings = _settings(os.environ)
    try:
        services, which, family = _opened(settings)
    except EXPECTED_TROUBLE as trouble:
        st.error(plain(str(trouble)))
        if isinstance(trouble, RecordsDamaged) and sees_everything():
            offer_recovery(trouble, dict(settings))
        st.stop()
    _speak_as(family)
    uncopied = _copied_on(settings, services, services.clock().date())
    if may_change_whose and sees_everything():
        _say_whose(services, which, family)
        _say_trouble(services, uncopied)
    elif family is not None and family.household.notice:
        st.caption(family.household.notice)
    view = View(services, which, family, services.today(family))
    remember_all()
    bring_back(view)
    show_conflict(view)
    return view


def _speak_as(family: Family | None) -> None:
    """Speak as the family does; to whom there is no family of yet, as the browser does.

    A press is answered, and a part of a page drawn anew, in a thread that has not been through here.
    """
    locale = of_tag(st.context.locale or "") if family is None else family.household.locale
    speak(locale)
    st.session_state[_LOCALE] = locale


def _of_window() -> Locale | None:
    return st.session_state.get(_LOCALE) if get_script_run_ctx() else None


ask(_of_window)


def _say_whose(services: Services, which: Which, family: Family | None) -> None:
    """One line where what is shown is not the parent's own; in the cupboard she gets to the demo."""
    if which is Which.DEMO:
        with st.container(horizontal=True, vertical_alignment="center", key="whose"):
            st.markdown("**Demo:** an invented family.")
            st.button(
                "Use my own family", key="leave_demo", type="tertiary", on_click=_use_own, args=(services,)
            )
    elif family is None:
        demo_button(services)
    elif family.household.invented:
        st.markdown(
            "**These are your own records, but the family in them is invented**, with its places and prices."
        )
    show_notice(_SPOT)


def demo_button(services: Services) -> None:
    """Offer to look at the demo, which leaves the own records as they are."""
    st.button("Show the demo", key="load_demo", type="tertiary", on_click=_load_demo, args=(services,))


def _say_trouble(services: Services, uncopied: str) -> None:
    for warning in dict.fromkeys((*services.warnings(), *filter(None, [uncopied]))):
        st.warning(plain(warning))
    copy = services.lost_copy()
    if copy is not None:
        st.button(
            plain(f"Put back the copy of {wording.day(copy.day)}"),
            key="put_lost_copy_back",
            on_click=_put_lost_copy_back,
            args=(services, copy),
        )


def _put_lost_copy_back(services: Services, copy: DayCopy) -> None:
    with report_errors(_SPOT):
        services.put_lost_copy_back(copy)
        tell(_SPOT, f"Your records are those of {wording.day(copy.day)}.")


def _use_own(services: Services) -> None:
    with report_errors(_SPOT):
        services.use(Which.FAMILY)


def _load_demo(services: Services) -> None:
    with report_errors(_SPOT):
        services.load_demo()


def family_or_stop(view: View) -> Family:
    """The family in use; where there is none yet the page points to Household and ends."""
    if view.family is None:
        st.info("There is no household here yet. Enter your family first; places come next.")
        page_link("screens/pages/household.py", "Enter your household")
        st.stop()
    return view.family


def places_or_stop(family: Family, title: str = "") -> None:
    """End the page, with the way to add one, where the family keeps no place yet.

    Args:
        family: the family in use.
        title: of the page, where it has none by then.
    """
    if not family.places:
        if title:
            st.title(title, anchor=False)
        st.info("There are no places here yet.")
        page_link("screens/pages/places.py", "Add a place")
        st.stop()
