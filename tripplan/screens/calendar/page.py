"""Calendar: the outing onto the family's calendar; school and family calendars into the planning."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import partial
from typing import Any

import streamlit as st

from tripplan.calendar_server.outbox import EntryOf
from tripplan.documents.calendars.server_calendar import ServerCalendar
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus, others_called_off, same_day
from tripplan.errors import UnknownName
from tripplan.files.calendars.calendar_file import calendar_file
from tripplan.files.calendars.entry_text import file_in_words, file_of
from tripplan.language import wording
from tripplan.planning.calendar_entry.entry import OutingEntry
from tripplan.planning.calendar_entry.planned_outing import coming, entry_of, planned_from
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.records.planned_outings import OutingsEver, outings_ever
from tripplan.records.store import StoredDocument
from tripplan.screens.calendar.entry_ticks import ENTRY, STATUSES, first_ticks, ticks, ticks_in_words
from tripplan.screens.calendar.family_import import family_calendars
from tripplan.screens.calendar.festivals import festivals
from tripplan.screens.calendar.own_week import own_week
from tripplan.screens.calendar.school_import import school_calendars
from tripplan.screens.calendar.server import (
    ask_password,
    in_words,
    on_the_server,
    removed_but_changed_there,
    send_now,
    send_what_waits,
    server_of,
    setup,
    to_mark,
)
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import (
    Selection,
    grid_minutes,
    on_record,
    party_picker,
    place_named,
    place_names,
    taken,
)
from tripplan.screens.widgets.fields import filled
from tripplan.screens.widgets.frame import family_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import remove_one, save_all, take_back_button
from tripplan.screens.widgets.view import View

PAGE = "calendar"
_INSTEAD, _BOTH = "This one instead; the other is called off", "Both on one day"
_ICS = "text/calendar"

KeptOutings = Mapping[str, StoredDocument[PlannedOuting]]


def render(view: View) -> None:
    """Make the entry of the outing the parent took, list what is planned, and read other calendars."""
    family = family_or_stop(view)
    st.title("Calendar")
    show_notice(PAGE)
    take_back_button(view, PAGE)
    ever = outings_ever(view.records)
    server = server_of(view)
    if server is not None:
        ask_password(server)
    # The entry stands first but is drawn last, because picking nobody ends the page.
    entry = st.container()
    _planned_outings(view, family, ever.planned, server)
    setup(view)
    st.header("Busier when school is out", anchor=False)
    school_calendars(view, family)
    st.header("Holidays and festivals", anchor=False)
    festivals(view, family)
    st.header("When the family is busy", anchor=False)
    family_calendars(view, family)
    own_week(view, family)
    with entry:
        _outing(view, family, ever, server)


# --- the outing the parent took ---------------------------------------------------------------------------


def _outing(view: View, family: Family, ever: OutingsEver, server: ServerCalendar | None) -> None:
    now = taken(view, family)
    if now is None:
        st.info("No outing is taken yet. Compare places, take one, and it can be put on the calendar here.")
        st.page_link("screens/pages/compare.py", label="Compare outings")
        return
    with st.expander("Who goes", expanded=False):
        party = party_picker(view, family, on_record(view, now.place.id, now.day))
    outing = _as_taken(view, family, party, now)
    if isinstance(outing, NoOuting):
        # What else is planned for the day may give way; that is asked further down.
        free = replace(family, planned=tuple(one for one in family.planned if one.day != now.day))
        outing = _as_taken(view, free, party, now)
    if isinstance(outing, NoOuting):
        st.warning(plain(f"{now.place.name} on {wording.day(now.day)} cannot be done:"))
        st.markdown(bullets(outing.reasons))
        st.page_link("screens/pages/choose_day.py", label="Choose another day")
        return
    st.header(plain(f"{now.place.name} on {wording.day(now.day)}"), anchor=False)
    before = ever.on(now.place.id, now.day)
    if before is None or not before.revision:
        before = _moved_from(view, now, ever.planned) or before
    # What is pressed stands above what it can be set to.
    pressed = st.container()
    fields = filled(ENTRY, first_ticks(before.value if before else None))
    ticked, status = ticks(fields)
    planned = planned_from(
        outing,
        family.household,
        ticked,
        status,
        before=before.value if before else None,
        ids_taken=ever.ids,
        at=view.services.clock(),
    )
    with pressed:
        _entry(view, family, outing, planned, before, server)


def _as_taken(view: View, family: Family, party: Sequence[str], now: Selection) -> Outing | NoOuting:
    return answers.planned(
        family,
        party,
        now.place,
        now.day,
        view.today,
        now.leave_at,
        now.leave_place_at,
        grid_minutes(view),
    )


def _moved_from(view: View, now: Selection, outings: KeptOutings) -> StoredDocument[PlannedOuting] | None:
    """Ask whether this is an outing to the same place that was planned for another day."""
    others = {
        outing_id: f"moved here from {wording.day(kept.value.day)}; the same entry moves"
        for outing_id, kept in outings.items()
        if kept.value.place == now.place.id
        and kept.value.day >= view.today
        and kept.value.status is not PlanStatus.CANCELLED
    }
    if not others:
        return None
    picked = st.selectbox(
        "Is it a new outing?",
        ["", *others],
        format_func={"": "yes, another one", **others}.__getitem__,
        key="moved_from",
    )
    return outings.get(picked)


def _entry(
    view: View,
    family: Family,
    outing: Outing,
    planned: PlannedOuting,
    before: StoredDocument[PlannedOuting] | None,
    server: ServerCalendar | None,
) -> None:
    data = file_of(entry_of(planned, family.household, outing.place, outing), view.services.clock())
    st.caption(plain(ticks_in_words(planned)))
    on_the_list = before is not None and before.revision > 0
    kept_already = on_the_list and before is not None and planned == before.value
    said = f"{outing.place.name} on {wording.day(outing.day)} is planned."
    others = () if kept_already else same_day(planned, family.planned)
    instead_of = _what_gives_way(family, others)
    keep: dict[str, Any] = {
        "on_click": _keep,
        "args": (view, planned, before, said),
        "kwargs": {"instead_of": instead_of or ()},
        "disabled": kept_already or instead_of is None,
    }
    with st.container(horizontal=True):
        if server is not None:
            st.button(
                "Send to our calendar",
                key="send_entry",
                type="primary",
                on_click=_keep,
                args=(view, planned, before, said, partial(_entry_now, view, family)),
                kwargs={"instead_of": instead_of or ()},
                disabled=instead_of is None,
                help=f"Sends this entry to {plain(in_words(server))}, with whatever waits, and nothing to "
                "anybody else. It is also saved as a planned outing.",
            )
        st.download_button(
            "Download for the calendar (.ics)",
            data,
            file_name=f"{planned.place}-{planned.day}.ics",
            mime=_ICS,
            key="download_entry",
            type="primary" if server is None else "secondary",
            help="Open the file on your phone or computer, and its calendar takes the outing. It is also "
            "saved as a planned outing.",
            **({"on_click": "ignore"} if kept_already else keep),
        )
        st.button("Save as planned outing", key="save_entry", **keep)
    if kept_already:
        st.caption("This outing is kept below as it is shown here.")
    elif on_the_list:
        st.caption(
            "It was planned before; saving changes that entry, and the new file moves it on the calendar."
        )
    elif before is not None:
        st.caption(
            "It was on the list before; a calendar that still has its entry takes this one in its place."
        )
    with st.expander("The entry as the calendar will show it", expanded=False):
        st.code(file_in_words(data), language=None, wrap_lines=True)


def _what_gives_way(family: Family, others: Sequence[PlannedOuting]) -> tuple[PlannedOuting, ...] | None:
    """Ask what becomes of what is planned for the same day; None before she has said.

    Returns:
        Those that are called off.
    """
    if not others:
        return ()
    names = place_names(family)
    listed = wording.listed(
        [
            f"{names.get(one.place, one.place)} (load up at {wording.clock(one.leave_home)}, home again "
            f"{wording.clock(one.home)})"
            for one in others
        ]
    )
    st.warning(plain(f"You have planned something for that day already: {listed}."))
    said = st.radio("What becomes of it?", [_INSTEAD, _BOTH], index=None, key="same_day")
    return None if said is None else tuple(others) if said == _INSTEAD else ()


def _keep(
    view: View,
    planned: PlannedOuting,
    before: StoredDocument[PlannedOuting] | None,
    said: str,
    then_send: EntryOf | None = None,
    instead_of: Sequence[PlannedOuting] = (),
) -> None:
    """Save an outing; when it settles a choice, the other candidates are called off with it.

    Args:
        view: whose records.
        planned: the outing.
        before: as it is on record.
        said: the sentence where it worked.
        then_send: the entry of an outing, where it is to go to the calendar server at once.
        instead_of: what is called off for it.
    """
    others, now = view.records.all(PlannedOuting), view.services.clock()
    off = others_called_off(planned, (kept.value for kept in others.values()), now)
    if off:
        said += f" Called off: the other candidate{'s' if len(off) > 1 else ''} for it."
    given_way = [others[one.id].value.changed(now, status=PlanStatus.CANCELLED) for one in instead_of]
    if given_way:
        said += f" Called off: what was planned for {wording.day(planned.day)} before."
    gone = {one.id for one in (*off, *given_way)}
    both = [one for one in same_day(planned, (kept.value for kept in others.values())) if one.id not in gone]
    if both and planned.takes_time:
        said += f" {len(both) + 1} outings are planned for that day now."
    saved = save_all(
        view,
        PAGE,
        [
            (planned, before.revision if before else 0),
            *((other, others[other.id].revision) for other in (*off, *given_way)),
            *(to_mark(view, planned.id) if then_send is not None else ()),
        ],
        said,
        # Taking it back would count the sequence down again, which calendar programs do not follow.
        can_be_taken_back=False,
    )
    if saved and then_send is not None:
        send_now(view, then_send, said)


def _entry_now(view: View, family: Family, planned: PlannedOuting) -> OutingEntry:
    """The entry of an outing as it reads now."""
    place = place_named(family, planned.place)
    return entry_of(planned, family.household, place, _as_planned_now(view, family, planned))


# --- planned outings --------------------------------------------------------------------------------------


def _planned_outings(view: View, family: Family, outings: KeptOutings, server: ServerCalendar | None) -> None:
    st.header("Planned outings", anchor=False)
    if server is not None:
        send_what_waits(view, server, partial(_entry_now, view, family))
        removed_but_changed_there(view, partial(_entry_now, view, family))
    if not outings:
        st.caption("None yet.")
        return
    entries = {key: _entry_now(view, family, kept.value) for key, kept in outings.items()}
    year = coming((kept.value for kept in outings.values()), view.today)
    if len(year) > 1:
        st.download_button(
            "Download all of the coming year (.ics)",
            calendar_file([entries[one.id] for one in year], written_at=view.services.clock()),
            file_name=view.file_name(f"outings-{view.today}.ics"),
            mime=_ICS,
            key="download_year",
            on_click="ignore",
            help="One file with every outing below; importing it again moves entries and makes no twins.",
        )
    for kept in sorted(outings.values(), key=lambda kept: (kept.value.leave_home, kept.value.id)):
        with st.container(border=True, key=f"planned_{kept.value.id}"):
            _planned_outing(view, family, kept, entries[kept.value.id])
            if server is not None:
                on_the_server(view, kept.value, server, partial(_entry_now, view, family))


def _planned_outing(
    view: View, family: Family, kept: StoredDocument[PlannedOuting], entry: OutingEntry
) -> None:
    planned = kept.value
    place = place_named(family, planned.place)
    name = place.name if place else planned.place
    st.markdown(f"**{plain(f'{wording.day(planned.day)}: {name}')}**")
    cancelled = planned.status is PlanStatus.CANCELLED
    firm = "called off" if cancelled else STATUSES[planned.status.value]
    st.markdown(
        plain(
            f"{wording.listed(planned.party)}. Load up at {wording.clock(planned.leave_home)}, home again "
            f"{wording.clock(planned.home)}, about {wording.money(planned.likely_total)}; {firm}."
        )
    )
    with st.container(horizontal=True):
        if planned.choice and planned.status is PlanStatus.TENTATIVE:
            st.button(
                "Keep this one",
                key=f"settle_{planned.id}",
                type="primary",
                help="It is settled, and the candidates it was pencilled in with are called off.",
                on_click=_keep,
                args=(
                    view,
                    planned.changed(view.services.clock(), status=PlanStatus.CONFIRMED),
                    kept,
                    f"{name} on {wording.day(planned.day)} is settled.",
                ),
            )
        st.download_button(
            "Download the cancellation (.ics)" if cancelled else "Download (.ics)",
            file_of(entry, view.services.clock()),
            file_name=f"{planned.place}-{planned.day}.ics",
            mime=_ICS,
            key=f"download_planned_{planned.id}",
            on_click="ignore",
        )
        turned = PlanStatus.CONFIRMED if cancelled else PlanStatus.CANCELLED
        said = "is planned again" if cancelled else "is called off"
        st.button(
            "Plan it again" if cancelled else "Cancel this outing",
            key=f"turn_{planned.id}",
            on_click=_keep,
            args=(
                view,
                planned.changed(view.services.clock(), status=turned),
                kept,
                f"{name} on {wording.day(planned.day)} {said}.",
            ),
        )
        st.button(
            "Remove from this list",
            key=f"remove_planned_{planned.id}",
            on_click=remove_one,
            args=(view, PAGE, PlannedOuting, planned.id, kept.revision, f"{name} is off the list."),
        )
    if cancelled:
        st.caption(
            "Open the cancellation on every device that has the entry; where the entry stays all the same, "
            "delete it by hand. Tickets bought may be returnable; ask the place."
        )
    elif planned.day < view.today:
        st.caption("This day is over.")


def _as_planned_now(view: View, family: Family, planned: PlannedOuting) -> Outing | None:
    """The outing as it would be planned now with the same times; None where it cannot be."""
    place = place_named(family, planned.place)
    if place is None or planned.day < view.today:
        return None
    try:
        outing = answers.planned(
            family,
            planned.party,
            place,
            planned.day,
            planned.planned_on(family.household.home.zone),
            planned.leave_home,
            planned.leave_place,
        )
    except UnknownName:  # Somebody of the party is no member any more.
        return None
    return outing if isinstance(outing, Outing) else None
