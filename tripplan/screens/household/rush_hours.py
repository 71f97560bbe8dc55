"""A form for the hours in which the roads are full."""

import streamlit as st

from tripplan.documents.family.habits import Habits
from tripplan.documents.family.household import Household
from tripplan.errors import Finding
from tripplan.language.sentences import fact, say
from tripplan.planning.travel.rush_hours import METROPOLITAN_RUSH, VERY_LARGE_CITY_RUSH
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.answers import on_record
from tripplan.screens.forms.form import Form, form_for
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import entries
from tripplan.screens.household.saving import check_and_save, raw_household
from tripplan.screens.widgets.lasting import let_go, let_last
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.view import View

_WAYS = {
    "published": "household-way-published",
    "own": "household-way-own",
    "never": "household-way-never",
}
_MORE = "more_rush_hours"
_ASKED = entries(Habits, "rush_hours", entry="{name}{index}", leave_out="household-leave-hours-out")


def rush_form(view: View, kept: StoredDocument[Household]) -> None:
    """Whether rush hours are planned with, and which; the published figures are said."""
    habits = kept.value.habits
    rows = habits.rush_hours or METROPOLITAN_RUSH
    rows = (*rows, *METROPOLITAN_RUSH[-1:] * int(st.session_state.get(_MORE, 0)))
    suggested = habits.model_copy(update={"rush_hours": rows})
    way = "published" if habits.rush_hours is None else "own" if habits.rush_hours else "never"
    st.caption(plain(_published()))
    form = form_for("rush", _ASKED, habits, suggested=suggested, also={"way": way})
    with form_box(form.fields, border=False):
        st.radio(
            say("household-when-full"),
            list(_WAYS),
            format_func={way: say(code) for way, code in _WAYS.items()}.__getitem__,
            key=form.fields.key("way"),
        )
        form.draw()
        st.button(say("household-add-hours"), key="add_rush", on_click=_one_more, args=(form,))
        save_button(
            form.fields,
            say("household-save", what=say("household-the-rush")),
            key="save_rush",
            on_click=_save,
            args=(view, kept, form, suggested),
        )


def _published() -> str:
    hours = tuple(fact("household-span", start=rush.start, end=rush.end) for rush in METROPOLITAN_RUSH)
    *_, by_day = VERY_LARGE_CITY_RUSH
    return say(
        "household-published-rush",
        factor=str(METROPOLITAN_RUSH[0].factor),
        hours=hours,
        largest=str(VERY_LARGE_CITY_RUSH[0].factor),
        by_day=str(by_day.factor),
    )


def _one_more(form: Form) -> None:
    st.session_state[form.fields.key("way")] = "own"
    let_last({_MORE: int(st.session_state.get(_MORE, 0)) + 1})


def _save(view: View, kept: StoredDocument[Household], form: Form, suggested: Habits) -> None:
    typed, raw = form.fields.typed(), raw_household(kept.value)
    message = ""
    if typed["way"] == "own":
        form.put(raw["habits"])
        if not raw["habits"].get("rush_hours"):
            message = say("household-no-hours-left")
    else:
        raw["habits"].pop("rush_hours", None)
        if typed["way"] == "never":
            raw["habits"]["rush_hours"] = []
        before = on_record(_ASKED, suggested, form.setting)
        if any(typed[name] != value for name, value in before.items()):
            message = say("household-hours-not-counted", answer=fact("household-way-own"))
    found = [Finding("", "habits.rush_hours", "", message)] if message else []
    if check_and_save(view, "rush", kept.revision, raw, found):
        let_go(_MORE)
