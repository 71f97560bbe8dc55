"""What the entry on the calendar tells and reminds of, ticked by the parent."""

import streamlit as st

from tripplan.documents.outings.planned import COLOURS, EntryTicks, PlannedOuting, PlanStatus, ThingsToDo
from tripplan.language import wording
from tripplan.screens.widgets.fields import Fields, FieldValue

ENTRY = "entry"
STATUSES = {PlanStatus.CONFIRMED.value: "confirmed", PlanStatus.TENTATIVE.value: "tentative"}
_LAYOUTS = {False: "one entry", True: "three: drive, visit, way home"}
_COLOURS = {"": "the calendar's own", **{name: name for name in COLOURS}}
_TO_DO = {
    ThingsToDo.NONE.value: "reminders are enough",
    ThingsToDo.TASKS.value: "tasks, for a calendar that has a list of tasks",
    ThingsToDo.ENTRIES.value: "short entries, which every calendar shows",
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
    with st.expander("What the entry tells", expanded=False):
        st.checkbox("Names of those who go", key=fields.key("names"))
        st.checkbox("Our home address", key=fields.key("home_address"))
        st.checkbox("Prices and what it costs in all", key=fields.key("costs"))
        st.caption("Whoever sees the calendar can read what is ticked. Birth dates are never told.")
        st.radio(
            "How firm is it?", list(STATUSES), format_func=STATUSES.__getitem__, key=fields.key("status")
        )
        st.radio("Entries", list(_LAYOUTS), format_func=_LAYOUTS.__getitem__, key=fields.key("in_parts"))
        st.checkbox("Mark the time as taken", key=fields.key("busy"))
        st.selectbox("Color", list(_COLOURS), format_func=_COLOURS.__getitem__, key=fields.key("colour"))
    with st.expander("What it reminds us of", expanded=False):
        st.checkbox("To book, the evening before the last day for it", key=fields.key("booking"))
        st.checkbox("To pack, the evening before", key=fields.key("packing"))
        st.checkbox("To get ready", key=fields.key("leaving"))
        st.number_input(
            "How many minutes before leaving?",
            min_value=1,
            max_value=24 * 60,
            step=5,
            key=fields.key("leaving_minutes"),
        )
        st.checkbox("To leave, when it is time", key=fields.key("leave_now"))
        st.radio(
            "Booking and packing as",
            list(_TO_DO),
            format_func=_TO_DO.__getitem__,
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


def ticks_in_words(planned: PlannedOuting) -> str:
    """One line with what whoever sees the calendar can read, and what it reminds of."""
    ticked = planned.ticked
    told = [
        f"{'with' if is_told else 'without'} {what}"
        for what, is_told in (
            ("names", ticked.names),
            ("home address", ticked.home_address),
            ("prices", ticked.costs),
        )
    ]
    minutes = ticked.leaving_reminder_minutes
    reminded = [
        what
        for what, is_reminded in (
            ("to book", ticked.booking_reminder and planned.book_by is not None),
            ("to pack", ticked.packing_reminder),
            (f"{wording.minutes(minutes)} ahead" if minutes else "", bool(minutes)),
            ("to leave", ticked.leave_now_reminder),
        )
        if is_reminded
    ]
    reminders = f"Reminders: {wording.listed(reminded)}." if reminded else "No reminders."
    return f"The entry goes out {wording.listed(told)}. {reminders}"
