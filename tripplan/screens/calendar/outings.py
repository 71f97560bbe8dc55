"""Our outings: the one that the parent took, and what is planned, as cards."""

from collections.abc import Mapping, Sequence
from functools import partial

import streamlit as st

from tripplan.documents.calendars.server_calendar import ServerCalendar
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.files.calendars.calendar_file import calendar_file
from tripplan.files.calendars.entry_text import file_of
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.calendar_entry.entry import OutingEntry
from tripplan.planning.calendar_entry.planned_outing import coming
from tripplan.planning.family.family import Family
from tripplan.records.planned_outings import outings_ever
from tripplan.records.store import StoredDocument
from tripplan.screens.calendar.entry_ticks import STATUSES
from tripplan.screens.calendar.server import (
    ask_password,
    on_the_server,
    removed_but_changed_there,
    send_what_waits,
    server_of,
    setup,
)
from tripplan.screens.calendar.taken import (
    KeptOutings,
    entry_now,
    keep_outing,
    taken_outing,
    times_in_short,
)
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.drawings import kind_of
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.choices import place_named, taken
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.saving import remove_one
from tripplan.screens.widgets.view import View

_PAGE = "calendar"
_ICS = "text/calendar"


def our_outings(view: View, family: Family) -> str:
    """The outing that the parent took, and below it what is planned; the headline is returned."""
    ever = outings_ever(view.records)
    server = server_of(view)
    if server is not None:
        ask_password(server)
    now = taken(view, family)
    said = _headline(view, ever.planned)
    if now is not None:
        said = taken_outing(view, family, now, ever, server)
    elif not ever.planned:
        st.page_link("screens/pages/compare.py", label=say("calendar-compare"))
    _planned_outings(view, family, ever.planned, server)
    setup(view)
    return said


def _headline(view: View, outings: KeptOutings) -> str:
    """How many are ahead, and when the next one is."""
    firm = (kept.value for kept in outings.values() if kept.value.status is not PlanStatus.CANCELLED)
    days = sorted(one.day for one in firm if one.home > view.services.clock())
    if not days:
        return say("calendar-none-ahead")
    return say("calendar-ahead", outings=len(days), day=wording.short_day(days[0]))


def _planned_outings(view: View, family: Family, outings: KeptOutings, server: ServerCalendar | None) -> None:
    """What is ahead as cards; what is over folded."""
    if server is not None:
        send_what_waits(view, server, partial(entry_now, view, family))
        removed_but_changed_there(view, partial(entry_now, view, family))
    if not outings:
        return
    entries = {key: entry_now(view, family, kept.value) for key, kept in outings.items()}
    year = coming((kept.value for kept in outings.values()), view.today)
    if len(year) > 1:
        st.download_button(
            say("calendar-download-year"),
            calendar_file([entries[one.id] for one in year], written_at=view.services.clock()),
            file_name=view.file_name(f"outings-{view.today}.ics"),
            mime=_ICS,
            key="download_year",
            on_click="ignore",
            help=say("calendar-download-year-help"),
        )
    now = view.services.clock()
    over = [kept for kept in outings.values() if kept.value.home <= now]
    ahead = [kept for kept in outings.values() if kept.value.home > now]
    _cards(view, family, ahead, entries, server)
    if over and (part := fold(say("calendar-over", outings=len(over)), "open_over")) is not None:
        with part:
            _cards(view, family, over, entries, server)


def _cards(
    view: View,
    family: Family,
    outings: Sequence[StoredDocument[PlannedOuting]],
    entries: Mapping[str, OutingEntry],
    server: ServerCalendar | None,
) -> None:
    for kept in sorted(outings, key=lambda kept: (kept.value.leave_home, kept.value.id)):
        with st.container(border=True, key=f"card_planned_{kept.value.id}"):
            _planned_outing(view, family, kept, entries[kept.value.id])
            if server is not None:
                on_the_server(view, kept.value, server, partial(entry_now, view, family))


def _planned_outing(
    view: View, family: Family, kept: StoredDocument[PlannedOuting], entry: OutingEntry
) -> None:
    planned = kept.value
    place = place_named(family, planned.place)
    name = place.name if place else planned.place
    cancelled = planned.status is PlanStatus.CANCELLED
    firm = say("calendar-status-cancelled" if cancelled else STATUSES[planned.status.value])
    st.html(
        cards.face(
            cards.name(
                name, wording.whole_money(planned.likely_total), drawing=kind_of(place) if place else ""
            ),
            cards.small(times_in_short(planned)),
            cards.chips([Chip("crowd", _who(family, planned.party)), Chip("plan", firm)]),
        )
    )
    with st.container(horizontal=True):
        if planned.choice and planned.status is PlanStatus.TENTATIVE:
            st.button(
                say("calendar-keep-this"),
                key=f"settle_{planned.id}",
                type="primary",
                help=say("calendar-keep-this-help"),
                on_click=keep_outing,
                args=(
                    view,
                    planned.changed(view.services.clock(), status=PlanStatus.CONFIRMED),
                    kept,
                    say("calendar-settled", place=name, day=planned.day),
                ),
            )
        st.download_button(
            say("calendar-download-cancellation" if cancelled else "calendar-download"),
            file_of(entry, view.services.clock()),
            file_name=f"{planned.place}-{planned.day}.ics",
            mime=_ICS,
            key=f"download_planned_{planned.id}",
            on_click="ignore",
        )
        turned = PlanStatus.CONFIRMED if cancelled else PlanStatus.CANCELLED
        said = "calendar-planned-again" if cancelled else "calendar-called-off"
        st.button(
            say("calendar-plan-again" if cancelled else "calendar-cancel"),
            key=f"turn_{planned.id}",
            type="tertiary",
            on_click=keep_outing,
            args=(
                view,
                planned.changed(view.services.clock(), status=turned),
                kept,
                say(said, place=name, day=planned.day),
            ),
        )
        st.button(
            say("calendar-remove"),
            type="tertiary",
            help=plain(say("calendar-remove-help", place=name)),
            key=f"remove_planned_{planned.id}",
            on_click=remove_one,
            args=(view, _PAGE, PlannedOuting, planned.id, kept.revision, say("calendar-removed", place=name)),
        )
    if cancelled:
        st.caption(say("calendar-cancellation-how"))


def _who(family: Family, party: Sequence[str]) -> str:
    """Who goes, in a word or two."""
    everybody = len(party) == len(family.household.members)
    return say("calendar-all-of-us", people=len(party)) if everybody else wording.listed(list(party))
