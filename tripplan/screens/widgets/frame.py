"""What every page begins with: the services, the family in use, and whose data is shown."""

import os
from collections.abc import Mapping
from contextlib import suppress
from datetime import date

import streamlit as st
from streamlit.runtime.scriptrunner import get_script_run_ctx

from tripplan.documents.family.household import Household
from tripplan.errors import RecordsDamaged, RecordsUnusable
from tripplan.language.locales import Locale, ask, of_tag, speak
from tripplan.language.sentences import say
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
        return say("doors-no-copy", trouble=str(trouble))
    return ""


@st.cache_resource(show_spinner=False, max_entries=4)
def _demo_planned_on(settings: tuple[tuple[str, str], ...], _services: Services, day: date) -> None:
    """See to the demo's outings once a day, so that they are always around today."""
    del settings, day
    with suppress(RecordsUnusable):  # what can be read of the demo shows without them
        _services.plan_demo()


def _settings(environment: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    """The environment variables that matter, so that a changed one opens other records."""
    return tuple((name, environment[name]) for name in SETTINGS if name in environment)


def _opened(settings: tuple[tuple[str, str], ...]) -> tuple[Services, Which, Family | None]:
    """The services, whose records are shown, and that family.

    Records that were damaged while the app was running are opened anew, which mends what can be mended.
    """
    services = _services(settings)
    try:
        if services.which is Which.DEMO:
            _demo_planned_on(settings, services, services.clock().date())
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
    _speak_to(None if family is None else family.household)
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


def speak_to_window() -> None:
    """Speak as the household whose records are shown, for what stands around the page.

    Records that cannot be used are the page's to tell of.
    """
    try:
        kept = _services(_settings(os.environ)).records.get(Household)
    except EXPECTED_TROUBLE:
        kept = None
    _speak_to(kept.value if kept else None)


def _speak_to(household: Household | None) -> None:
    """Speak as the household does; to whom has none yet, as the browser does.

    A press is answered, and a part of a page drawn anew, in a thread that has not been through here.
    """
    locale = of_tag(st.context.locale or "") if household is None else household.locale
    speak(locale)
    st.session_state[_LOCALE] = locale


def _of_window() -> Locale | None:
    return st.session_state.get(_LOCALE) if get_script_run_ctx() else None


ask(_of_window)


def _say_whose(services: Services, which: Which, family: Family | None) -> None:
    """One line where what is shown is not the parent's own; in the cupboard she gets to the demo."""
    if which is Which.DEMO:
        with st.container(horizontal=True, vertical_alignment="center", key="whose"):
            st.markdown(f"**{say('doors-demo')}** {say('doors-demo-invented')}")
            st.button(
                say("doors-leave-demo"),
                key="leave_demo",
                type="tertiary",
                on_click=_use_own,
                args=(services,),
            )
    elif family is None:
        demo_button(services)
    elif family.household.invented:
        st.markdown(f"**{say('doors-own-invented')}**")
    show_notice(_SPOT)


def demo_button(services: Services) -> None:
    """Offer to look at the demo, which leaves the own records as they are."""
    st.button(say("doors-load-demo"), key="load_demo", type="tertiary", on_click=_load_demo, args=(services,))


def _say_trouble(services: Services, uncopied: str) -> None:
    for warning in dict.fromkeys((*services.warnings(), *filter(None, [uncopied]))):
        st.warning(plain(warning))
    copy = services.lost_copy()
    if copy is not None:
        st.button(
            plain(say("doors-put-back", day=copy.day)),
            key="put_lost_copy_back",
            on_click=_put_lost_copy_back,
            args=(services, copy),
        )


def _put_lost_copy_back(services: Services, copy: DayCopy) -> None:
    with report_errors(_SPOT):
        services.put_lost_copy_back(copy)
        tell(_SPOT, say("doors-were-put-back", day=copy.day))


def _use_own(services: Services) -> None:
    with report_errors(_SPOT):
        services.use(Which.FAMILY)


def _load_demo(services: Services) -> None:
    with report_errors(_SPOT):
        services.load_demo()


def family_or_stop(view: View) -> Family:
    """The family in use; where there is none yet the page points to Household and ends."""
    if view.family is None:
        st.info(say("doors-no-household"))
        page_link("screens/pages/household.py", say("doors-enter-household"))
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
        st.info(say("doors-no-places"))
        page_link("screens/pages/places.py", say("doors-add-place"))
        st.stop()
