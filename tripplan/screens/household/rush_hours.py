"""A form for the hours in which the roads are full."""

from typing import Any, get_args

import streamlit as st

from tripplan.errors import Finding
from tripplan.planning import wording
from tripplan.planning.habits import RushHours
from tripplan.planning.household import Household
from tripplan.planning.model import Weekday
from tripplan.planning.travel.rush_hours import METROPOLITAN_RUSH
from tripplan.records.store import Kept
from tripplan.screens.household.saving import Raw, check_and_save, clock_text, raw_household
from tripplan.screens.household.words import RUSH
from tripplan.screens.widgets.fields import CLOCK_STEP, Fields, FieldValue, filled, put
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice

_WEEKDAYS: tuple[Weekday, ...] = get_args(Weekday)
_DAY_NAMES = dict(zip(_WEEKDAYS, ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"), strict=True))
_WAYS = {
    "published": "By the published figures, near large cities only",
    "own": "In the hours below",
    "never": "Never",
}
_MORE = "more_rush_hours"


def rush_form(view: View, kept: Kept[Household]) -> None:
    """Whether rush hours are planned with, and which; the published figures are said."""
    asked = kept.value.habits.rush_hours
    rows = [*(asked or METROPOLITAN_RUSH)]
    rows += [METROPOLITAN_RUSH[-1]] * int(st.session_state.get(_MORE, 0))
    way = "published" if asked is None else "own" if asked else "never"
    with st.expander("Rush hours", key="open_rush"):
        st.caption(plain(_published()))
        fields = filled("rush", {"way": way, **_on_record(rows)})
        with st.form("rush_form"):
            st.radio(
                "When are the roads full where you drive?",
                list(_WAYS),
                format_func=_WAYS.__getitem__,
                key=fields.key("way"),
            )
            for index in range(len(rows)):
                _row_inputs(fields, index)
            st.form_submit_button(
                "Save", key="save_rush", type="primary", on_click=_save, args=(view, kept, fields, rows)
            )
        show_notice("rush")
        st.button("Add other hours", key="add_rush", on_click=_one_more, args=(fields,))


def _published() -> str:
    hours = wording.listed([f"{rush.start:%H:%M} to {rush.end:%H:%M}" for rush in METROPOLITAN_RUSH])
    return (
        "On a full road the same drive takes longer, so leaving a little earlier or later may save time. "
        f"The published figure: {METROPOLITAN_RUSH[0].factor} times as long on working days, counted from "
        f"{hours}, as an average of 52 large US metropolitan areas (Federal Highway Administration, "
        "2021 Urban Congestion Trends). It counts where your home or a place is ticked as lying near a large "
        "city. Your own roads may differ far more: you know them best. On a public holiday there is no rush."
    )


def _on_record(rows: list[RushHours]) -> dict[str, FieldValue]:
    on_record: dict[str, FieldValue] = {}
    for index, rush in enumerate(rows):
        on_record |= {
            f"days{index}": list(rush.days),
            f"start{index}": rush.start,
            f"end{index}": rush.end,
            f"factor{index}": str(rush.factor),
            f"gone{index}": False,
        }
    return on_record


def _row_inputs(fields: Fields, index: int) -> None:
    def label(name: str) -> str:
        return f"Hours {index + 1}: {RUSH[name]}"

    st.divider()
    st.pills(
        label("days"),
        _WEEKDAYS,
        selection_mode="multi",
        format_func=_DAY_NAMES.__getitem__,
        key=fields.key(f"days{index}"),
    )
    for name in ("start", "end"):
        st.time_input(label(name), key=fields.key(f"{name}{index}"), step=CLOCK_STEP)
    st.text_input(
        label("factor"), key=fields.key(f"factor{index}"), help="Such as 1.5 for half as long again."
    )
    st.checkbox(f"Hours {index + 1}: leave them out", key=fields.key(f"gone{index}"))


def _one_more(fields: Fields) -> None:
    st.session_state[fields.key("way")] = "own"
    st.session_state[_MORE] = int(st.session_state.get(_MORE, 0)) + 1


def _save(view: View, kept: Kept[Household], fields: Fields, rows: list[RushHours]) -> None:
    typed = fields.typed()
    raw = raw_household(kept.value)
    found: list[Finding] = []
    raw["habits"].pop("rush_hours", None)
    if typed["way"] == "never":
        raw["habits"]["rush_hours"] = []
    elif typed["way"] == "own":
        raw["habits"]["rush_hours"] = [
            _typed_row(typed, index) for index in range(len(rows)) if not typed[f"gone{index}"]
        ]
        if not raw["habits"]["rush_hours"]:
            message = "no hours are left; keep some, or choose one of the other two answers"
            found.append(Finding("", "habits.rush_hours", "", message))
    if typed["way"] != "own" and any(typed[name] != value for name, value in _on_record(rows).items()):
        message = f"you changed the hours below; they count only with the answer '{_WAYS['own']}'"
        found.append(Finding("", "habits.rush_hours", "", message))
    if check_and_save(view, "rush", kept.revision, raw, found):
        st.session_state[_MORE] = 0


def _typed_row(typed: dict[str, Any], index: int) -> Raw:
    row: Raw = {"days": [day for day in _WEEKDAYS if day in typed[f"days{index}"]]}
    for name in ("start", "end"):
        put(row, name, clock_text(typed[f"{name}{index}"]))
    put(row, "factor", typed[f"factor{index}"])
    return row
