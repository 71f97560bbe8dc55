"""What the entry on the calendar tells and reminds of, ticked by the parent."""

from collections.abc import Callable, Mapping
from datetime import timedelta
from typing import TypeVar

import streamlit as st

from tripplan.documents.outings.planned import COLOURS, EntryTicks, PlannedOuting, PlanStatus, ThingsToDo
from tripplan.language.sentences import fact, say
from tripplan.screens.widgets.fields import Fields, FieldValue

T = TypeVar("T")
ENTRY = "entry"
STATUSES = {
    PlanStatus.CONFIRMED.value: "calendar-status-confirmed",
    PlanStatus.TENTATIVE.value: "calendar-status-tentative",
}
_LAYOUTS = {False: "calendar-one-entry", True: "calendar-three-entries"}
_TO_DO = {
    ThingsToDo.NONE.value: "calendar-reminders-enough",
    ThingsToDo.TASKS.value: "calendar-as-tasks",
    ThingsToDo.ENTRIES.value: "calendar-as-entries",
}


def first_ticks(before: PlannedOuting | None) -> dict[str, FieldValue]:
    """What the fields say at first: as the outing was planned before, else the usual."""
    ticked = before.ticked if before else EntryTicks()
    status = before.status if before else PlanStatus.CONFIRMED
    return {
        "in_parts": ticked.in_parts,
        "names": ticked.names,
        "home_address": ticked.home_address,
        "costs": ticked.costs,
        "busy": ticked.busy,
        "colour": ticked.colour,
        "booking": ticked.booking_reminder,
        "packing": ticked.packing_reminder,
        "leaving": ticked.leaving_reminder_minutes is not None,
        "leaving_minutes": ticked.leaving_reminder_minutes or 60,
        "leave_now": ticked.leave_now_reminder,
        "things_to_do": ticked.things_to_do.value,
        "status": status.value if status.value in STATUSES else PlanStatus.CONFIRMED.value,
    }


def ticks(fields: Fields) -> tuple[EntryTicks, PlanStatus]:
    """Ask what the entry tells and reminds of."""
    with st.expander(say("calendar-entry-tells"), expanded=False):
        st.checkbox(say("calendar-tell-names"), key=fields.key("names"))
        st.checkbox(say("calendar-tell-home"), key=fields.key("home_address"))
        st.checkbox(say("calendar-tell-costs"), key=fields.key("costs"))
        st.caption(say("calendar-who-reads"))
        st.radio(
            say("calendar-how-firm"), list(STATUSES), format_func=_said(STATUSES), key=fields.key("status")
        )
        st.radio(
            say("calendar-layout"), list(_LAYOUTS), format_func=_said(_LAYOUTS), key=fields.key("in_parts")
        )
        st.checkbox(say("calendar-mark-busy"), key=fields.key("busy"))
        colours = {"": say("calendar-own-color"), **{name: name for name in COLOURS}}
        st.selectbox(
            say("calendar-color"), list(colours), format_func=colours.__getitem__, key=fields.key("colour")
        )
    with st.expander(say("calendar-entry-reminds"), expanded=False):
        st.checkbox(say("calendar-remind-book"), key=fields.key("booking"))
        st.checkbox(say("calendar-remind-pack"), key=fields.key("packing"))
        st.checkbox(say("calendar-remind-ready"), key=fields.key("leaving"))
        st.number_input(
            say("calendar-remind-minutes"),
            min_value=1,
            max_value=24 * 60,
            step=5,
            key=fields.key("leaving_minutes"),
        )
        st.checkbox(say("calendar-remind-leave"), key=fields.key("leave_now"))
        st.radio(
            say("calendar-to-do-as"),
            list(_TO_DO),
            format_func=_said(_TO_DO),
            key=fields.key("things_to_do"),
        )
    typed = fields.typed()
    ticked = EntryTicks(
        in_parts=typed["in_parts"],
        names=typed["names"],
        home_address=typed["home_address"],
        costs=typed["costs"],
        busy=typed["busy"],
        colour=typed["colour"],
        booking_reminder=typed["booking"],
        packing_reminder=typed["packing"],
        leaving_reminder_minutes=typed["leaving_minutes"] if typed["leaving"] else None,
        leave_now_reminder=typed["leave_now"],
        things_to_do=typed["things_to_do"],
    )
    return ticked, PlanStatus(typed["status"])


def _said(codes: Mapping[T, str]) -> Callable[[T], str]:
    return {value: say(code) for value, code in codes.items()}.__getitem__


def ticks_in_words(planned: PlannedOuting) -> str:
    """One line with what whoever sees the calendar can read, and what it reminds of."""
    ticked = planned.ticked
    told = tuple(
        fact("calendar-goes-with" if is_told else "calendar-goes-without", what=fact(what))
        for what, is_told in (
            ("calendar-goes-names", ticked.names),
            ("calendar-goes-home", ticked.home_address),
            ("calendar-goes-prices", ticked.costs),
        )
    )
    minutes = ticked.leaving_reminder_minutes or 0
    reminded = tuple(
        what
        for what, is_reminded in (
            (fact("calendar-reminds-book"), ticked.booking_reminder and planned.book_by is not None),
            (fact("calendar-reminds-pack"), ticked.packing_reminder),
            (fact("calendar-reminds-ahead", time=timedelta(minutes=minutes)), bool(minutes)),
            (fact("calendar-reminds-leave"), ticked.leave_now_reminder),
        )
        if is_reminded
    )
    reminders = fact("calendar-reminders", what=reminded) if reminded else fact("calendar-no-reminders")
    return say("calendar-goes-out", told=told, reminders=reminders)
