"""The family's own week: fixed blocks, working hours, and what a late evening does to the next day."""

from collections.abc import Callable, Sequence
from datetime import time
from functools import partial

import streamlit as st

from tripplan.documents.calendars.family_days import FamilyDays, LateEvening, WeeklyBlock, WorkingHours
from tripplan.documents.model import Written
from tripplan.errors import Finding
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.family.own_week_sentences import (
    block_sentence,
    late_sentence,
    work_sentence,
)
from tripplan.screens.calendar.typed_days import days_typed_in
from tripplan.screens.forms.answers import Raw
from tripplan.screens.forms.form import Form, form_for, save
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Setting, questions
from tripplan.screens.look import cards
from tripplan.screens.widgets.fields import FieldValue
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

_PAGE = "calendar"
_BLOCK, _WORK, _LATE = "weekly_block", "working_hours", "late_evening"
_LATE_THEN = {
    "nothing": "calendar-late-nothing",
    "later": "calendar-late-later",
    "not_free": "calendar-late-not-free",
}


def own_week(view: View, family: Family) -> dict[str, Callable[[], None]]:
    """Say in a card what the family's own week holds.

    Returns:
        What adds to it, by its name.
    """
    kept = view.records.get(FamilyDays)
    week, revision = (kept.value, kept.revision) if kept else (FamilyDays(), 0)
    members = {member.name for member in family.household.members}
    gone = [work.member for work in week.work if work.member not in members]
    if week != FamilyDays():
        with st.container(border=True, key="card_own_week"):
            st.html(cards.face(cards.name(say("calendar-own-week"), drawing="clock")))
            for index, block in enumerate(week.weekly):
                left = [one for one in week.weekly if one is not block]
                _line(view, block_sentence(block), f"remove_block_{index}", {"weekly": left}, week, revision)
            for index, work in enumerate(week.work):
                left_work = [one for one in week.work if one is not work]
                _line(view, work_sentence(work), f"remove_work_{index}", {"work": left_work}, week, revision)
            if gone:
                st.warning(bullets(say("calendar-no-member", name=name) for name in gone))
            if week.late_evening is not None:
                st.markdown(plain(late_sentence(week.late_evening)))
    return {
        say("calendar-every-week"): partial(_block_form, view, week, revision),
        say("calendar-working-hours"): partial(_work_form, view, family, week, revision),
        say("calendar-late-evenings"): partial(_late_form, view, week, revision),
    }


def _line(
    view: View, sentence: str, key: str, changes: dict[str, Sequence[object]], week: FamilyDays, revision: int
) -> None:
    with st.container(horizontal=True, vertical_alignment="center", key=f"line_{key}"):
        st.markdown(plain(sentence))
        st.button(
            say("calendar-remove"),
            key=key,
            type="tertiary",
            on_click=_remove,
            args=(view, week.model_copy(update={name: tuple(v) for name, v in changes.items()}), revision),
        )


def _remove(view: View, week: FamilyDays, revision: int) -> None:
    save_all(view, _PAGE, [(week, revision)], say("calendar-out-of-week"))


# --- fixed blocks and working hours -----------------------------------------------------------------------


def _block_form(view: View, week: FamilyDays, revision: int) -> None:
    form = _every_week(_BLOCK, WeeklyBlock, Setting(), start=time(16), end=time(17))
    with form_box(form.fields):
        form.draw("name")
        _every_week_inputs(form)
        st.caption(say("calendar-block-same-name"))
        save_button(
            form.fields,
            say("calendar-add-block"),
            key="save_block",
            on_click=_save_block,
            args=(view, form, week, revision),
        )


def _work_form(view: View, family: Family, week: FamilyDays, revision: int) -> None:
    adults = [m.name for m in family.household.members if m.is_adult_on(view.today)]
    if not adults:
        return
    setting = Setting(offered={"adults": {name: name for name in adults}})
    usual = adults[min(1, len(adults) - 1)]
    form = _every_week(_WORK, WorkingHours, setting, start=time(8), end=time(16, 30), member=usual)
    with form_box(form.fields):
        form.draw("member")
        _every_week_inputs(form)
        form.draw("public_holidays_off", "then")
        save_button(
            form.fields,
            say("calendar-add-hours"),
            key="save_work",
            on_click=_save_work,
            args=(view, form, week, revision),
        )


def _every_week(name: str, what: type[Written], setting: Setting, **usual: FieldValue) -> Form:
    return form_for(name, questions(what), None, setting, also={**usual, "not_during": ""})


def _every_week_inputs(form: Form) -> None:
    form.draw("days", "start", "end", "first", "last", "every_weeks")
    st.text_area(
        say("calendar-not-during-lines"),
        key=form.fields.key("not_during"),
        placeholder="2026-12-21 to 2027-01-03",
        height=80,
    )


def _put_every_week(form: Form) -> tuple[Raw, list[Finding]]:
    typed = form.fields.typed()
    not_during, findings = days_typed_in(typed["not_during"], say("calendar-not-during"))
    raw: Raw = {"not_during": list(not_during.values())}
    return raw, [*findings, *form.put(raw)]


def _save_block(view: View, form: Form, week: FamilyDays, revision: int) -> None:
    new, findings = _put_every_week(form)
    name = str(new.get("name", "")).strip()
    raw = _raw(week)
    others = [block for block in raw.get("weekly", []) if block["name"].casefold() != name.casefold()]
    raw["weekly"] = [*others, new]
    _save(view, _BLOCK, raw, revision, findings, say("calendar-block-saved", name=name))


def _save_work(view: View, form: Form, week: FamilyDays, revision: int) -> None:
    new, findings = _put_every_week(form)
    raw = _raw(week)
    raw["work"] = [*raw.get("work", []), new]
    said = say("calendar-work-saved", name=str(new["member"]))
    _save(view, _WORK, raw, revision, findings, said)


def _raw(week: FamilyDays) -> Raw:
    """A week as a file would hold it."""
    return week.model_dump(mode="json", exclude_none=True)


def _save(view: View, spot: str, raw: Raw, revision: int, findings: list[Finding], said: str) -> None:
    read = read_form(write_toml(raw), "", FamilyDays)
    save(view, spot, read, raw, FamilyDays, revision, said, findings, told_at=_PAGE)


# --- late evenings ----------------------------------------------------------------------------------------


def _late_form(view: View, week: FamilyDays, revision: int) -> None:
    late = week.late_evening
    then = "nothing" if late is None else "not_free" if late.not_before is None else "later"
    clocks = late or LateEvening()
    clocks = clocks.model_copy(update={"not_before": clocks.not_before or time(9, 30)})
    form = form_for(_LATE, questions(LateEvening), clocks, also={"then": then})
    with form_box(form.fields):
        st.radio(
            say("calendar-late-what"),
            list(_LATE_THEN),
            format_func={then: say(code) for then, code in _LATE_THEN.items()}.__getitem__,
            key=form.fields.key("then"),
        )
        form.draw()
        save_button(
            form.fields,
            say("calendar-save"),
            key="save_late",
            on_click=_save_late,
            args=(view, form, week, revision),
        )


def _save_late(view: View, form: Form, week: FamilyDays, revision: int) -> None:
    typed, raw = form.fields.typed(), _raw(week)
    raw.pop("late_evening", None)
    if typed["then"] != "nothing":
        raw["late_evening"] = {"after": typed["after"]}
    if typed["then"] == "later":
        raw["late_evening"]["not_before"] = typed["not_before"]
    _save(view, _LATE, raw, revision, [], say("calendar-late-saved"))
