"""Brings what lies on the server up to date with the family's outings, one entry at a time."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Protocol

from icalendar import Calendar, Component

from tripplan.calendar_server.connection import ChangedMeanwhile, Lying, entry_address
from tripplan.documents.calendars.server_calendar import ChangedThere, OnServer, SentCopy
from tripplan.errors import CalendarServerTrouble

_SAYS_NOTHING = frozenset({"DTSTAMP", "CREATED", "LAST-MODIFIED", "SEQUENCE"})
"""What a server may touch without anybody having changed the entry (RFC 5545, 3.8.7)."""


class Server(Protocol):
    """What is asked of a connection; as `tripplan.calendar_server.connection.Connection`."""

    def put(self, address: str, body: bytes, etag: str | None) -> Lying:
        """Write an entry."""

    def fetch(self, address: str) -> Lying | None:
        """An entry as it lies there."""

    def find(self, calendar: str, body: bytes) -> Lying | None:
        """The entry with the same UID."""

    def delete(self, address: str, etag: str) -> None:
        """Remove an entry."""


@dataclass(frozen=True)
class ToSend:
    """One outing that is to be on the server.

    Attributes:
        before: what lies there of it.
        entries: its entries by UID; none where it is planned no more.
        edition: tells its state from every other; empty likewise.
    """

    before: OnServer
    entries: Mapping[str, bytes]
    edition: str


def send(server: Server, outings: Iterable[ToSend]) -> list[OnServer]:
    """Send outings as far as the server takes them.

    Args:
        server: a connection.
        outings: in the order they go; where the server cannot be reached the rest is left for later.

    Returns:
        What lies on the server of each, in the same order, with what could not be done and why.
    """
    after = []
    stopped = ""
    for outing in outings:
        if stopped:
            after.append(outing.before.model_copy(update={"trouble": stopped}))
            continue
        done, trouble = _send_one(server, outing)
        after.append(done)
        if trouble is not None and trouble.stops:
            stopped = str(trouble)
    return after


def _send_one(server: Server, outing: ToSend) -> tuple[OnServer, CalendarServerTrouble | None]:
    before = outing.before
    copies = {copy.uid: copy for copy in before.copies}
    changed: dict[str, ChangedThere] = {}
    trouble: CalendarServerTrouble | None = None
    try:
        for uid, body in outing.entries.items():
            copy = copies.get(uid)
            if copy is not None and copy.body == body.decode():
                continue
            result = _write(server, before.calendar, uid, body, copy)
            if isinstance(result, SentCopy):
                copies[uid] = result
            else:
                changed[uid] = result
        for uid in [uid for uid in copies if uid not in outing.entries]:
            left = _remove(server, copies[uid])
            if left is None:
                del copies[uid]
            else:
                changed[uid] = left
    except CalendarServerTrouble as met:
        trouble = met
    arrived = trouble is None and not changed
    after = before.model_copy(
        update={
            "copies": tuple(copies.values()),
            "changed_there": tuple(changed.values()),
            "sent": outing.edition if arrived else before.sent,
            "trouble": "" if trouble is None else str(trouble),
        }
    )
    return after, trouble


def _write(
    server: Server, calendar: str, uid: str, body: bytes, copy: SentCopy | None
) -> SentCopy | ChangedThere:
    """Write one entry over the state that is known; say what has changed there instead."""
    address = copy.address if copy else entry_address(calendar, uid)
    text = body.decode()
    try:
        lying = server.put(address, body, copy.etag if copy else None)
    except ChangedMeanwhile:
        there = server.fetch(address) or server.find(calendar, body)
        if there is None:
            return ChangedThere(uid=uid, address=address, ours=text, theirs="")
        if same(there.body, text):
            # An answer got lost on the way, or the file was imported before: it is there already.
            return SentCopy(uid=uid, address=there.address, etag=there.etag, body=text)
        if copy is None or not copy.etag or not same(there.body, copy.body):
            return ChangedThere(uid=uid, address=there.address, ours=text, theirs=there.body, etag=there.etag)
        # Nobody changed it; the server only calls its state otherwise now.
        try:
            lying = server.put(there.address, body, there.etag)
        except ChangedMeanwhile:
            return ChangedThere(uid=uid, address=there.address, ours=text, theirs=there.body, etag=there.etag)
    return SentCopy(uid=uid, address=lying.address, etag=lying.etag, body=text)


def _remove(server: Server, copy: SentCopy) -> ChangedThere | None:
    """Remove one entry in the state that is known; say what has changed there instead."""
    if not copy.etag:
        return None  # The parent left what others wrote there; it is not ours to remove.
    try:
        server.delete(copy.address, copy.etag)
    except ChangedMeanwhile:
        there = server.fetch(copy.address)
        if there is None:
            return None
        if same(there.body, copy.body):
            try:
                server.delete(copy.address, there.etag)
            except ChangedMeanwhile:
                pass
            else:
                return None
        return ChangedThere(uid=copy.uid, address=copy.address, ours="", theirs=there.body, etag=there.etag)
    return None


def same(one: str, other: str) -> bool:
    """Whether two calendar files tell the same, however they are written."""
    try:
        return _told(one) == _told(other)
    except (ValueError, TypeError, LookupError, AttributeError):  # Text that is no calendar tells nothing.
        return False


def _told(text: str) -> list[object]:
    calendar = Calendar.from_ical(text)
    return [_lines(one) for one in calendar.walk() if one.name in ("VEVENT", "VTODO")]


def _lines(component: Component) -> list[tuple[str, str]]:
    told = []
    for name, value in component.property_items():
        if name in ("BEGIN", "END") or name in _SAYS_NOTHING:
            continue
        moment = getattr(value, "dt", None)
        if isinstance(moment, datetime) and moment.tzinfo is not None:
            told.append((name, moment.astimezone(UTC).isoformat()))
        else:
            written = value.to_ical() if hasattr(value, "to_ical") else str(value)
            told.append((name, written.decode() if isinstance(written, bytes) else str(written)))
    return sorted(told)
