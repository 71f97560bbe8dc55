"""A form for the hours in which the roads are full."""

import streamlit as st

from tripplan.documents.family.habits import Habits
from tripplan.documents.family.household import Household
from tripplan.errors import Finding
from tripplan.language import wording
from tripplan.planning.travel.rush_hours import METROPOLITAN_RUSH, VERY_LARGE_CITY_RUSH
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.answers import on_record
from tripplan.screens.forms.form import Form, form_for
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import entries
from tripplan.screens.household.saving import check_and_save, raw_household
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.lasting import let_go, let_last
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.view import View

_WAYS = {
    "published": "By the published figures, near large cities only",
    "own": "In the hours below",
    "never": "Never",
}
_MORE = "more_rush_hours"
_ASKED = entries(Habits, "rush_hours", entry="{name}{index}", leave_out="leave them out")


def rush_form(view: View, kept: StoredDocument[Household]) -> None:
    """Whether rush hours are planned with, and which; the published figures are said."""
    habits = kept.value.habits
    rows = habits.rush_hours or METROPOLITAN_RUSH
    rows = (*rows, *METROPOLITAN_RUSH[-1:] * int(st.session_state.get(_MORE, 0)))
    suggested = habits.model_copy(update={"rush_hours": rows})
    way = "published" if habits.rush_hours is None else "own" if habits.rush_hours else "never"
    part = fold("Rush hours", "open_rush")
    if part is None:
        return
    with part:
        st.caption(plain(_published()))
        form = form_for("rush", _ASKED, habits, suggested=suggested, also={"way": way})
        with form_box(form.fields):
            st.radio(
                "When are the roads full where you drive?",
                list(_WAYS),
                format_func=_WAYS.__getitem__,
                key=form.fields.key("way"),
            )
            form.draw()
            save_button(
                form.fields, "Save", key="save_rush", on_click=_save, args=(view, kept, form, suggested)
            )
        show_notice("rush")
        st.button("Add other hours", key="add_rush", on_click=_one_more, args=(form,))


def _published() -> str:
    hours = wording.listed([f"{rush.start:%H:%M} to {rush.end:%H:%M}" for rush in METROPOLITAN_RUSH])
    *_, by_day = VERY_LARGE_CITY_RUSH
    return (
        "On a full road the same drive takes longer, so leaving a little earlier or later may save time. "
        f"The published figure: {METROPOLITAN_RUSH[0].factor} times as long on working days, counted from "
        f"{hours}, as an average of 52 large US metropolitan areas (Federal Highway Administration, "
        "2021 Urban Congestion Trends). It counts where your home or a place lies in or near a large US "
        "city, by how closely ZIP codes lie there, or is ticked so. In and near the six largest it is "
        f"{VERY_LARGE_CITY_RUSH[0].factor}, and {by_day.factor} between these hours. Your own roads may "
        "differ far more: you know them best. On a public holiday there is no rush."
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
            message = "no hours are left; keep some, or choose one of the other two answers"
    else:
        raw["habits"].pop("rush_hours", None)
        if typed["way"] == "never":
            raw["habits"]["rush_hours"] = []
        before = on_record(_ASKED, suggested, form.setting)
        if any(typed[name] != value for name, value in before.items()):
            message = f"you changed the hours below; they count only with the answer '{_WAYS['own']}'"
    found = [Finding("", "habits.rush_hours", "", message)] if message else []
    if check_and_save(view, "rush", kept.revision, raw, found):
        let_go(_MORE)
