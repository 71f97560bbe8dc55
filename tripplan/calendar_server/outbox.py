"""Outings on their way to the server; what waits is read off the records, so nothing gets lost."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from tripplan.documents.calendars.server_calendar import OnServer, ServerCalendar
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.errors import RecordConflict
from tripplan.files.calendars.calendar_file import calendar_objects
from tripplan.planning.calendar_entry.entry import OutingEntry
from tripplan.records.store import Change, Records, StoredDocument

EntryOf = Callable[[PlannedOuting], OutingEntry]


@dataclass(frozen=True)
class Sending:
    """What came of one press.

    Attributes:
        arrived: how many outings are on the server as they are here, those called off left out.
        called_off: how many lie there as called off.
        removed: how many were taken off there.
        troubles: why others wait, each reason once.
        changed_there: how many wait for the parent to decide.
    """

    arrived: int = 0
    called_off: int = 0
    removed: int = 0
    troubles: tuple[str, ...] = ()
    changed_there: int = 0

    @property
    def complete(self) -> bool:
        """Whether nothing waits."""
        return not self.troubles and not self.changed_there

    def in_words(self) -> str:
        """What came of it, in sentences."""
        said = [
            f"{count} outings are {what}." if count > 1 else f"It is {what}."
            for count, what in (
                (self.arrived, "on the calendar"),
                (self.called_off, "on the calendar as called off"),
                (self.removed, "off the calendar now"),
            )
            if count
        ]
        if self.changed_there:
            said.append("Somebody has changed an entry there meanwhile: look at both and decide.")
        said += [f"Not sent: {trouble}. It waits and goes the next time." for trouble in self.troubles]
        return " ".join(said) or "There was nothing to send."


def to_be_sent(change: Change, outing: str, calendar: str) -> None:
    """Note, as part of a change, that an outing is to be on the server from now on."""
    kept = change.get(OnServer, outing)
    if kept is None:
        change.save(OnServer(outing=outing, calendar=calendar))


def on_its_way(records: Records, outing: str, calendar: str, now: datetime) -> None:
    """Note by itself that an outing is to be on the server from now on."""
    with records.change(now) as change:
        to_be_sent(change, outing, calendar)


def waiting(records: Records, server: ServerCalendar) -> list[str]:
    """The ids of outings that the next press sends or removes, in order; those that had trouble go last."""
    planned = records.all(PlannedOuting)
    due = []
    on_server = records.all(OnServer)
    for outing, kept in on_server.items():
        now = planned.get(outing)
        if kept.value.calendar != server.calendar:
            if now is not None:
                due.append(outing)
        elif kept.value.is_due(None if now is None else now.value.edition):
            due.append(outing)
    return sorted(due, key=lambda one: bool(on_server[one].value.trouble))


def send_waiting(
    records: Records, server: ServerCalendar, password: str, entry_of: EntryOf, now: datetime
) -> Sending:
    """Send everything that waits, and note of each outing what lies on the server as soon as it is known.

    Args:
        records: the family's.
        server: where to.
        password: of its user.
        entry_of: the entry of an outing as it is to read.
        now: what to record as the time of the change; zone-aware.

    Raises:
        CalendarServerTrouble: the address on record may not be asked.
        RecordsUnusable: what lies there could not be noted; the next sending finds it by itself.
    """
    # The library takes a while to load, and only whoever sends needs it.
    from tripplan.calendar_server.connection import Connection
    from tripplan.calendar_server.sending import ToSend, send

    kept = records.all(OnServer)
    planned = records.all(PlannedOuting)
    due = waiting(records, server)
    if not due:
        return Sending()
    outings = [
        ToSend(
            _lying(kept[one].value, server),
            _entries(planned.get(one), server, entry_of),
            planned[one].value.edition if one in planned else "",
        )
        for one in due
    ]
    states = []
    with Connection(
        server.server,
        server.user,
        password,
        plain_http=server.plain_http,
        certificate=server.certificate,
    ) as connection:
        for state in send(connection, outings):
            states.append(_noted(records, state, kept[state.outing].revision, state.outing in planned, now))
    done = [state for state in states if not state.trouble and not state.changed_there]
    there = [planned[state.outing].value for state in done if state.outing in planned]
    called_off = sum(one.status is PlanStatus.CANCELLED for one in there)
    return Sending(
        arrived=len(there) - called_off,
        called_off=called_off,
        removed=len(done) - len(there),
        troubles=tuple(dict.fromkeys(state.trouble for state in states if state.trouble)),
        changed_there=sum(bool(state.changed_there) for state in states),
    )


def _noted(records: Records, state: OnServer, revision: int, is_planned: bool, now: datetime) -> OnServer:
    """What lies there, once it is on record; where another window was faster, the next press looks."""
    try:
        with records.change(now) as change:
            if not is_planned and not state.copies and not state.changed_there:
                change.remove(OnServer, state.outing, revision)
            else:
                change.save(state, revision)
    except RecordConflict:
        return state.model_copy(update={"trouble": "another window has sent or changed it meanwhile"})
    return state


def _lying(before: OnServer, server: ServerCalendar) -> OnServer:
    # What lies in another calendar stays there; only the parent knows whether it is still used.
    same = before.calendar == server.calendar
    return before if same else OnServer(outing=before.outing, calendar=server.calendar)


def _entries(
    planned: StoredDocument[PlannedOuting] | None, server: ServerCalendar, entry_of: EntryOf
) -> Mapping[str, bytes]:
    if planned is None:
        return {}
    entry = entry_of(planned.value)
    if not server.takes_tasks:
        entry = replace(entry, to_dos=tuple(replace(one, as_entry=True) for one in entry.to_dos))
    return calendar_objects(entry, written_at=planned.value.changed_at)
