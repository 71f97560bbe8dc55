"""The family's own calendar server: set up once, off until then, and told only what a button says."""

from typing import Any

import streamlit as st

from tripplan.calendar_server.addresses import host_of, path_of
from tripplan.calendar_server.outbox import EntryOf, on_its_way, send_waiting, waiting
from tripplan.calendar_server.passwords import (
    WRONG_PASSWORD,
    forget_password,
    keep_password,
    kept_password,
    keyring_name,
)
from tripplan.documents.calendars.server_calendar import OnServer, ServerCalendar
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.errors import CalendarServerTrouble
from tripplan.files.calendars.entry_text import text_in_words
from tripplan.language import wording
from tripplan.records.opening import Which
from tripplan.records.store import StoredDocument
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.fields import Fields, filled
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, show_notice, tell
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View

PAGE = "calendar"
_SPOT = "calendar_server"
_FOUND = "calendar_server_found"
_PASSWORD = "calendar_server_password_kept"
"""Where the password is kept while the browser's tab is open, unless the system's keyring has it."""
_TYPED = "calendar_server_password_typed"
_ASK = "calendar_server_password_wrong"
"""Set where the password that is kept has turned out wrong."""


def server_of(view: View) -> ServerCalendar | None:
    """Where the family's outings go to; None until it is set up, and for the invented family."""
    if view.which is Which.DEMO:
        return None
    kept = view.records.get(ServerCalendar)
    return None if kept is None else kept.value


def in_words(server: ServerCalendar) -> str:
    """The calendar and its server."""
    return f"'{server.name}' on {host_of(server.calendar)}"


def ask_password(server: ServerCalendar) -> None:
    """Ask for the password where neither the keyring nor this tab has it."""
    if _password(server) is None:
        st.text_input(f"Password of {server.user} on {host_of(server.calendar)}", type="password", key=_TYPED)
        st.caption("It is kept until this tab is closed and not written down.")


def _password(server: ServerCalendar) -> str | None:
    if _ASK in st.session_state:
        return None
    known: str | None = st.session_state.get(_PASSWORD) or kept_password(server.server, server.user)
    return known


def to_mark(view: View, outing: str) -> list[tuple[OnServer, int]]:
    """What to save so that an outing is on the server from now on; nothing where it is already."""
    server = server_of(view)
    if server is None or view.records.get(OnServer, outing) is not None:
        return []
    return [(OnServer(outing=outing, calendar=server.calendar), 0)]


def send_now(view: View, entry_of: EntryOf, said: str = "") -> None:
    """Send everything that waits, and say what came of it.

    Args:
        view: whose records.
        entry_of: the entry of an outing.
        said: what was done before, if anything.
    """
    server = server_of(view)
    if server is None:
        return
    password = st.session_state.get(_TYPED) or _password(server)
    if not password:
        refuse(PAGE, f"{said} It waits to be sent: type the password of your calendar server.".strip())
        return
    with report_errors(PAGE):
        try:
            sending = send_waiting(view.records, server, password, entry_of, view.services.clock())
        except CalendarServerTrouble as trouble:
            refuse(PAGE, f"{said} Not sent: {trouble}.".strip())
            return
        if WRONG_PASSWORD in sending.troubles:
            st.session_state[_ASK] = True
        elif sending.complete:
            st.session_state.pop(_ASK, None)
            st.session_state[_PASSWORD] = password
            if kept_password(server.server, server.user) not in (None, password):
                keep_password(server.server, server.user, password)
        (tell if sending.complete else refuse)(PAGE, f"{said} {sending.in_words()}".strip())


def send_what_waits(view: View, server: ServerCalendar, entry_of: EntryOf) -> None:
    """Offer to send everything that waits, where something does."""
    due = waiting(view.records, server)
    if not due:
        return
    planned = view.records.all(PlannedOuting)
    gone = sum(outing not in planned for outing in due)
    what = [f"{len(due) - gone} to send"] if len(due) > gone else []
    what += [f"{gone} to remove there"] if gone else []
    st.button(
        f"Send what waits: {wording.listed(what)}",
        key="send_waiting",
        on_click=send_now,
        args=(view, entry_of),
        help=f"Sends them to {plain(in_words(server))} and nothing to anybody else.",
    )


# --- one outing -------------------------------------------------------------------------------------------


def on_the_server(view: View, planned: PlannedOuting, server: ServerCalendar, entry_of: EntryOf) -> None:
    """Say how one outing stands on the server, and let the parent decide where somebody changed it there."""
    kept = view.records.get(OnServer, planned.id)
    if kept is None:
        st.button(
            "Send to our calendar",
            key=f"send_{planned.id}",
            on_click=_send_one,
            args=(view, planned.id, server, entry_of),
            help=f"Sends this entry to {plain(in_words(server))} and nothing to anybody else.",
        )
        return
    state = kept.value
    if state.changed_there:
        _decide(view, planned.id, kept, entry_of)
    elif state.calendar != server.calendar or state.is_due(planned.edition):
        why = f": {state.trouble}" if state.trouble else ""
        st.caption(plain(f"Waits to be sent to {in_words(server)}{why}."))
    else:
        st.caption(plain(f"On {in_words(server)} as it is here."))


def _send_one(view: View, outing: str, server: ServerCalendar, entry_of: EntryOf) -> None:
    with report_errors(PAGE):
        on_its_way(view.records, outing, server.calendar, view.services.clock())
        send_now(view, entry_of)


def _decide(view: View, outing: str, kept: StoredDocument[OnServer], entry_of: EntryOf) -> None:
    st.warning("Somebody has changed this on our calendar since it was sent.")
    for changed in kept.value.changed_there:
        ours, theirs = st.columns(2)
        with ours:
            st.markdown("**Here**")
            _shown(changed.ours, "It is taken off.")
        with theirs:
            st.markdown("**On our calendar**")
            _shown(changed.theirs, "It was removed there.")
    with st.container(horizontal=True):
        for name, label in (("ours", "Send ours over it"), ("theirs", "Leave theirs")):
            st.button(
                label,
                key=f"{name}_wins_{outing}",
                on_click=_decided,
                args=(view, kept, name == "ours", entry_of),
            )


def _shown(text: str, nothing: str) -> None:
    if text:
        st.code(text_in_words(text), language=None, wrap_lines=True)
    else:
        st.markdown(nothing)


def _decided(view: View, kept: StoredDocument[OnServer], ours: bool, entry_of: EntryOf) -> None:
    state = kept.value.ours_wins() if ours else kept.value.theirs_wins()
    with report_errors(PAGE):
        with view.records.change(view.services.clock()) as change:
            change.save(state, kept.revision)
        send_now(view, entry_of)


def removed_but_changed_there(view: View, entry_of: EntryOf) -> None:
    """Let the parent decide about outings that were taken off the list here and changed there."""
    planned = view.records.all(PlannedOuting)
    for outing, kept in view.records.all(OnServer).items():
        if outing not in planned and kept.value.changed_there:
            with st.container(border=True, key=f"removed_{outing}"):
                st.markdown(plain(f"{outing} was taken off this list."))
                _decide(view, outing, kept, entry_of)


# --- setting it up ----------------------------------------------------------------------------------------


def setup(view: View) -> None:
    """Set the server up, or stop using it."""
    part = fold("Send outings straight to our own calendar server", "open_calendar_server")
    if part is None:
        return
    with part:
        if view.which is Which.DEMO:
            st.caption("The invented family sends nothing. Use your own family to set this up.")
            return
        show_notice(_SPOT)
        server = server_of(view)
        if server is None:
            _look(view)
        else:
            st.markdown(plain(f"Outings go to {in_words(server)}, as {server.user}, when you press Send."))
            st.button("Stop using it", key="forget_server", on_click=_forget, args=(view, server))
            st.caption("Entries that were sent stay there. The password is taken out of the keyring.")


def _look(view: View) -> None:
    st.caption(
        "For a calendar of your own that speaks CalDAV. Nothing is contacted until you press the button, and "
        "then only the server you name: it gets your user name and password, and is asked for your calendars."
    )
    fields = filled(
        _SPOT,
        {"address": "", "user": "", "password": "", "keep": True, "plain_http": False, "certificate": ""},
    )
    keyring = keyring_name()
    with st.form("calendar_server_form"):
        st.text_input("Address", key=fields.key("address"), placeholder="https://calendar.example.org/dav/")
        st.text_input("User name", key=fields.key("user"))
        st.text_input("Password", type="password", key=fields.key("password"))
        if keyring:
            st.checkbox(plain(f"Keep the password in this computer's {keyring}"), key=fields.key("keep"))
        else:
            st.caption(
                "This computer has no keyring that tripplan can use, so the password is asked for again in "
                "each new tab. It is never written down."
            )
        st.checkbox(
            "Allow http:// without encryption",
            key=fields.key("plain_http"),
            help="Only inside your own home: whoever can listen in reads your password and your calendar.",
        )
        st.text_input(
            "Certificate file (optional)",
            key=fields.key("certificate"),
            help="Only where the server made its certificate itself: the path of that file on this computer.",
        )
        st.form_submit_button(
            "Look for our calendars", key="look_for_calendars", on_click=_looked, args=(fields,)
        )
    found: list[tuple[str, str, bool]] = st.session_state.get(_FOUND, [])
    if found:
        names = {address: plain(f"{name} ({path_of(address)})") for address, name, _ in found}
        st.radio("Which one?", list(names), format_func=names.__getitem__, key="calendar_server_picked")
        st.button(
            "Use this calendar",
            key="use_calendar",
            type="primary",
            on_click=_use,
            args=(view, fields, found, bool(keyring)),
        )


def _looked(fields: Fields) -> None:
    # The library takes a while to load, and only whoever presses the button needs it.
    from tripplan.calendar_server.connection import Connection

    typed = fields.typed()
    st.session_state.pop(_FOUND, None)
    if not typed["user"].strip() or not typed["password"]:
        refuse(_SPOT, "Type the user name and the password as well; nothing was sent.")
        return
    try:
        with Connection(
            typed["address"],
            typed["user"].strip(),
            typed["password"],
            plain_http=typed["plain_http"],
            certificate=typed["certificate"].strip(),
        ) as connection:
            found = connection.calendars()
    except CalendarServerTrouble as trouble:
        refuse(_SPOT, f"No calendar was found: {trouble}.")
        return
    st.session_state[_FOUND] = [(one.address, one.name, one.takes_tasks) for one in found]


def _use(view: View, fields: Fields, found: list[tuple[str, str, bool]], keyring: bool) -> None:
    typed = fields.typed()
    picked = st.session_state["calendar_server_picked"]
    calendar, name, takes_tasks = next(each for each in found if each[0] == picked)
    address = typed["address"].strip()
    values: dict[str, Any] = {
        "server": address if "://" in address else f"https://{address}",
        "user": typed["user"],
        "calendar": calendar,
        "name": name,
        "takes_tasks": takes_tasks,
        "plain_http": typed["plain_http"],
        "certificate": typed["certificate"],
    }
    server = ServerCalendar.model_validate(values)
    with report_errors(_SPOT):
        view.records.save(server, view.services.clock())
        st.session_state[_PASSWORD] = typed["password"]
        st.session_state.pop(_FOUND, None)
        kept = keyring and typed["keep"] and keep_password(server.server, server.user, typed["password"])
        where = "its password is in the keyring" if kept else "its password is asked for in each new tab"
        tell(PAGE, f"Outings can be sent to {in_words(server)} now; {where}.")


def _forget(view: View, server: ServerCalendar) -> None:
    with report_errors(_SPOT):
        records = view.records
        kept = records.get(ServerCalendar)
        if kept is not None:
            records.remove(ServerCalendar, "only", view.services.clock(), kept.revision)
        forget_password(server.server, server.user)
        st.session_state.pop(_PASSWORD, None)
        tell(PAGE, f"Nothing is sent to {in_words(server)} any more.")
