"""The family's own week: fixed blocks, working hours, and what a late evening does to the next day."""

from collections.abc import Sequence
from datetime import time
from typing import Any

import streamlit as st

from tripplan.documents.calendars.family_days import WEEKDAYS, FamilyDays
from tripplan.documents.model import DAY_NAMES
from tripplan.errors import Finding
from tripplan.files.toml_text import write_toml
from tripplan.files.written import read_form
from tripplan.planning.family.family import Family
from tripplan.planning.family.own_week_sentences import (
    WORK_THEN,
    block_sentence,
    late_sentence,
    work_sentence,
)
from tripplan.screens.calendar.typed_days import days_typed_in
from tripplan.screens.widgets.fields import CLOCK_STEP, Fields, filled, refill
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import named, refuse, show_notice
from tripplan.screens.widgets.saving import records_of, save_all

_PAGE = "calendar"
_BLOCK, _WORK, _LATE = "weekly_block", "working_hours", "late_evening"
_LABELS = {
    "weekly": "Fixed block",
    "weekly.name": "What is it?",
    "weekly.days": "On which days?",
    "weekly.start": "From",
    "weekly.end": "To",
    "weekly.first": "First day",
    "weekly.last": "Last day",
    "weekly.every_weeks": "Every so many weeks",
    "work": "Working hours",
    "work.days": "On which days?",
    "work.start": "From",
    "work.end": "To",
}
_LATE_THEN = {
    "nothing": "nothing",
    "later": "we leave later the next day",
    "not_free": "the next day is not free",
}
_NOT_DURING = "Not on these days"

Raw = dict[str, Any]


def own_week(view: View, family: Family) -> None:
    """Say what the family's own week holds, with forms to add to it and buttons to take from it."""
    kept = records_of(view).get(FamilyDays)
    week, revision = (kept.value, kept.revision) if kept else (FamilyDays(), 0)
    st.header("Your own week", anchor=False)
    st.caption("What comes back every week need not stand in a calendar file; outings keep clear of it.")
    for index, block in enumerate(week.weekly):
        left = [one for one in week.weekly if one is not block]
        _line(view, block_sentence(block), f"remove_block_{index}", {"weekly": left}, week, revision)
    for index, work in enumerate(week.work):
        left_work = [one for one in week.work if one is not work]
        _line(view, work_sentence(work), f"remove_work_{index}", {"work": left_work}, week, revision)
    members = {member.name for member in family.household.members}
    gone = [work.member for work in week.work if work.member not in members]
    if gone:
        st.warning(bullets(f"{name} is no member any more; these hours count for nobody." for name in gone))
    st.markdown(plain(late_sentence(week.late_evening)))
    _block_form(view, week, revision)
    _work_form(view, family, week, revision)
    _late_form(view, week, revision)


def _line(
    view: View, sentence: str, key: str, changes: dict[str, Sequence[object]], week: FamilyDays, revision: int
) -> None:
    with st.container(horizontal=True, vertical_alignment="center", key=f"line_{key}"):
        st.markdown(plain(sentence))
        st.button(
            "Remove",
            key=key,
            type="tertiary",
            on_click=_remove,
            args=(view, week.model_copy(update={name: tuple(v) for name, v in changes.items()}), revision),
        )


def _remove(view: View, week: FamilyDays, revision: int) -> None:
    save_all(view, _PAGE, [(week, revision)], "It is taken out of your week.")


# --- fixed blocks and working hours -----------------------------------------------------------------------


def _block_form(view: View, week: FamilyDays, revision: int) -> None:
    fields = filled(_BLOCK, {"name": "", **_every_week(time(16), time(17))})
    with st.expander("Add a fixed weekly block", key="open_weekly_block"):
        with st.form("weekly_block_form"):
            st.text_input(_LABELS["weekly.name"], key=fields.key("name"), placeholder="such as: piano lesson")
            _every_week_inputs(fields)
            st.caption("A block of the same name takes the place of the one before.")
            st.form_submit_button(
                "Add this block",
                key="save_block",
                type="primary",
                on_click=_save_block,
                args=(view, fields, week, revision),
            )
        show_notice(_BLOCK)


def _work_form(view: View, family: Family, week: FamilyDays, revision: int) -> None:
    adults = [m.name for m in family.household.members if m.is_adult_on(view.today)]
    if not adults:
        return
    fields = filled(
        _WORK,
        {
            "member": adults[min(1, len(adults) - 1)],
            **_every_week(time(8), time(16, 30)),
            "public_holidays_off": True,
            "then": "wait",
        },
    )
    with st.expander("Add an adult's working hours", key="open_working_hours"):
        with st.form("working_hours_form"):
            st.selectbox("Who works?", adults, key=fields.key("member"))
            _every_week_inputs(fields)
            st.checkbox(
                "Public holidays are free, and local days off around home",
                key=fields.key("public_holidays_off"),
            )
            st.radio(
                "What then?",
                list(WORK_THEN),
                format_func=WORK_THEN.__getitem__,
                key=fields.key("then"),
                help="Without this adult the outing is also priced without. Where no other adult would be "
                "left, it waits.",
            )
            st.form_submit_button(
                "Add these hours",
                key="save_work",
                type="primary",
                on_click=_save_work,
                args=(view, fields, week, revision),
            )
        show_notice(_WORK)


def _every_week(start: time, end: time) -> dict[str, Any]:
    return {"days": [], "start": start, "end": end, "first": None, "last": None, "weeks": 1, "not_during": ""}


def _every_week_inputs(fields: Fields) -> None:
    st.pills(
        _LABELS["weekly.days"],
        WEEKDAYS,
        selection_mode="multi",
        format_func=DAY_NAMES.__getitem__,
        key=fields.key("days"),
    )
    left, right = st.columns(2)
    left.time_input(_LABELS["weekly.start"], key=fields.key("start"), step=CLOCK_STEP)
    right.time_input(_LABELS["weekly.end"], key=fields.key("end"), step=CLOCK_STEP)
    left, middle, right = st.columns(3)
    left.date_input(
        _LABELS["weekly.first"], value=None, key=fields.key("first"), help="Left empty, it counts always."
    )
    middle.date_input(
        _LABELS["weekly.last"], value=None, key=fields.key("last"), help="Left empty, it goes on."
    )
    right.number_input(
        _LABELS["weekly.every_weeks"],
        min_value=1,
        max_value=12,
        key=fields.key("weeks"),
        help="Counted from the week of the first day.",
    )
    st.text_area(
        f"{_NOT_DURING}, one line each",
        key=fields.key("not_during"),
        placeholder="2026-12-21 to 2027-01-03",
        height=80,
    )


def _raw_every_week(typed: dict[str, Any], findings: list[Finding]) -> Raw:
    not_during, unreadable = days_typed_in(typed["not_during"], _NOT_DURING)
    findings.extend(unreadable)
    raw: Raw = {
        "days": [day for day in WEEKDAYS if day in typed["days"]],
        "start": typed["start"],
        "end": typed["end"],
        "first": typed["first"],
        "last": typed["last"],
        "every_weeks": typed["weeks"],
        "not_during": list(not_during.values()),
    }
    return {name: value for name, value in raw.items() if value is not None}


def _save_block(view: View, fields: Fields, week: FamilyDays, revision: int) -> None:
    typed = fields.typed()
    findings: list[Finding] = []
    new = {"name": typed["name"], **_raw_every_week(typed, findings)}
    others = [
        block
        for block in _raw(week).get("weekly", [])
        if block["name"].casefold() != typed["name"].strip().casefold()
    ]
    said = f"{typed['name'].strip()} is in your week."
    _save(view, _BLOCK, {**_raw(week), "weekly": [*others, new]}, revision, findings, said)


def _save_work(view: View, fields: Fields, week: FamilyDays, revision: int) -> None:
    typed = fields.typed()
    findings: list[Finding] = []
    new = {
        "member": typed["member"],
        **_raw_every_week(typed, findings),
        "public_holidays_off": typed["public_holidays_off"],
        "then": typed["then"],
    }
    raw = _raw(week)
    said = f"The working hours of {typed['member']} are in your week."
    _save(view, _WORK, {**raw, "work": [*raw.get("work", []), new]}, revision, findings, said)


def _raw(week: FamilyDays) -> Raw:
    """A week as a file would hold it."""
    return week.model_dump(mode="json", exclude_none=True)


def _save(view: View, spot: str, raw: Raw, revision: int, findings: list[Finding], said: str) -> None:
    read = read_form(write_toml(raw), "", FamilyDays)
    if read.value is None or findings:
        newest = {"weekly": lambda _: "New block", "work": lambda _: "New hours"}
        refuse(spot, findings=(*findings, *named(read.findings, _LABELS, newest)))
        return
    if save_all(view, _PAGE, [(read.value, revision)], said):
        refill(spot)


# --- late evenings ----------------------------------------------------------------------------------------


def _late_form(view: View, week: FamilyDays, revision: int) -> None:
    late = week.late_evening
    then = "nothing" if late is None else "not_free" if late.not_before is None else "later"
    fields = filled(
        _LATE,
        {
            "then": then,
            "after": late.after if late else time(21),
            "not_before": late.not_before if late and late.not_before else time(9, 30),
        },
    )
    with st.expander("After a late evening", key="open_late_evening"):
        with st.form("late_evening_form"):
            st.radio(
                "What does an entry that ends late do to the next day?",
                list(_LATE_THEN),
                format_func=_LATE_THEN.__getitem__,
                key=fields.key("then"),
            )
            left, right = st.columns(2)
            left.time_input("Late is after", key=fields.key("after"), step=CLOCK_STEP)
            right.time_input("Then nobody leaves before", key=fields.key("not_before"), step=CLOCK_STEP)
            st.form_submit_button(
                "Save",
                key="save_late",
                type="primary",
                on_click=_save_late,
                args=(view, fields, week, revision),
            )
        show_notice(_LATE)


def _save_late(view: View, fields: Fields, week: FamilyDays, revision: int) -> None:
    typed, raw = fields.typed(), _raw(week)
    raw.pop("late_evening", None)
    if typed["then"] != "nothing":
        raw["late_evening"] = {"after": typed["after"]}
    if typed["then"] == "later":
        raw["late_evening"]["not_before"] = typed["not_before"]
    _save(view, _LATE, raw, revision, [], "What a late evening does is saved.")
