"""The outing that the parent took, and its entry for the calendar."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import partial
from typing import Any

import streamlit as st

from tripplan.calendar_server.outbox import EntryOf
from tripplan.documents.calendars.server_calendar import ServerCalendar
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus, others_called_off, same_day
from tripplan.errors import UnknownName
from tripplan.files.calendars.entry_text import file_in_words, file_of
from tripplan.language import wording
from tripplan.planning.calendar_entry.entry import OutingEntry
from tripplan.planning.calendar_entry.planned_outing import entry_of, planned_from
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.records.planned_outings import OutingsEver
from tripplan.records.store import StoredDocument
from tripplan.screens.calendar.entry_ticks import ENTRY, first_ticks, ticks, ticks_in_words
from tripplan.screens.calendar.server import in_words, send_now, to_mark
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.drawings import kind_of
from tripplan.screens.look.folds import chip, fold
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import (
    Selection,
    grid_minutes,
    kept_party,
    on_record,
    party_picker,
    place_named,
    place_names,
)
from tripplan.screens.widgets.fields import filled
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

_PAGE = "calendar"
_INSTEAD, _BOTH = "This one instead; the other is called off", "Both on one day"
_ICS = "text/calendar"

KeptOutings = Mapping[str, StoredDocument[PlannedOuting]]


def taken_outing(
    view: View, family: Family, now: Selection, ever: OutingsEver, server: ServerCalendar | None
) -> str:
    """The outing that the parent took: what its entry tells, and what puts it on the calendar.

    Args:
        view: whose records.
        family: the family in use.
        now: what she took.
        ever: what is and was planned.
        server: the family's own calendar server, if it has one.

    Returns:
        The headline.
    """
    planned_then = on_record(view, now.place.id, now.day)
    party = kept_party(view, family, planned_then)
    outing = _as_taken(view, family, party, now)
    if isinstance(outing, NoOuting):
        # What else is planned for the day may give way; that is asked further down.
        free = replace(family, planned=tuple(one for one in family.planned if one.day != now.day))
        outing = _as_taken(view, free, party, now)
    if isinstance(outing, NoOuting):
        st.markdown(bullets(outing.reasons))
        st.page_link("screens/pages/choose_day.py", label="Choose another day")
        return f"{now.place.name} cannot be done on {wording.short_day(now.day)}"
    with st.container(horizontal=True, key="chips"):
        chip(f"{len(party)} of us", "open_who", lambda: party_picker(view, family, planned_then))
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
    with pressed, st.container(border=True, key="card_entry"):
        is_planned = _entry(view, family, outing, planned, before, server)
    called = f"{outing.place.name}, {wording.short_day(outing.day)}"
    return f"{called}: it is planned" if is_planned else f"{called}: not planned yet"


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
) -> bool:
    """What is pressed; whether the outing is on record as it is shown."""
    data = file_of(entry_of(planned, family.household, outing.place, outing), view.services.clock())
    st.html(
        cards.face(
            cards.name(
                outing.place.name,
                wording.whole_money(planned.likely_total),
                drawing=kind_of(outing.place),
            ),
            cards.small(times_in_short(planned)),
            cards.facts([Chip("plan", ticks_in_words(planned))]),
        )
    )
    on_the_list = before is not None and before.revision > 0
    kept_already = on_the_list and before is not None and planned == before.value
    said = f"{outing.place.name} on {wording.day(outing.day)} is planned."
    others = () if kept_already else same_day(planned, family.planned)
    instead_of = _what_gives_way(family, others)
    keep: dict[str, Any] = {
        "on_click": keep_outing,
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
                on_click=keep_outing,
                args=(view, planned, before, said, partial(entry_now, view, family)),
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
    part = fold("The entry as the calendar will show it", "open_entry_shown")
    if part is not None:
        part.code(file_in_words(data), language=None, wrap_lines=True)
    return kept_already


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


def keep_outing(
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
        _PAGE,
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


def entry_now(view: View, family: Family, planned: PlannedOuting) -> OutingEntry:
    """The entry of an outing as it reads now."""
    place = place_named(family, planned.place)
    return entry_of(planned, family.household, place, _as_planned_now(view, family, planned))


def times_in_short(planned: PlannedOuting) -> str:
    """When it begins and ends."""
    day, leave = wording.short_day(planned.day), wording.clock(planned.leave_home)
    return f"{day}: load up {leave}, home {wording.clock(planned.home)}"


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
