"""Brings what lies on the server up to date with the family's outings, one entry at a time."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Protocol

from pydantic import ValidationError

from tripplan.calendar_server.connection import ChangedMeanwhile, ServerEntry, entry_address
from tripplan.calendar_server.entries import same
from tripplan.documents.calendars.server_calendar import LONGEST_TROUBLE, ChangedThere, OnServer, SentCopy
from tripplan.errors import CalendarServerTrouble


class Server(Protocol):
    """What is asked of a connection; as `tripplan.calendar_server.connection.Connection`."""

    def put(self, address: str, body: bytes, etag: str | None) -> ServerEntry:
        """Write an entry."""

    def fetch(self, address: str) -> ServerEntry | None:
        """An entry as it lies there."""

    def find(self, calendar: str, body: bytes) -> ServerEntry | None:
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


def send(server: Server, outings: Iterable[ToSend]) -> Iterator[OnServer]:
    """Send outings as far as the server takes them; trouble with one does not keep the others here.

    Args:
        server: a connection.
        outings: in the order they go; where nothing more is to be expected the rest is left for later.

    Yields:
        What lies on the server of each, in the same order, with what could not be done and why.
    """
    stopped = ""
    for outing in outings:
        if stopped:
            yield _with_trouble(outing.before, stopped)
            continue
        after, trouble = _send_one(server, outing)
        yield after
        if trouble is not None and trouble.stops:
            stopped = str(trouble)


def _with_trouble(before: OnServer, said: str) -> OnServer:
    return before.model_copy(update={"trouble": said[:LONGEST_TROUBLE]})


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
    except ValidationError:  # an address that no other program could use either
        trouble = CalendarServerTrouble("the server says where an entry lies in a way that cannot be kept")
    arrived = trouble is None and not changed
    after = before.model_copy(
        update={
            "copies": tuple(copies.values()),
            "changed_there": tuple(changed.values()),
            "sent": outing.edition if arrived else before.sent,
            "trouble": "",
        }
    )
    return (after if trouble is None else _with_trouble(after, str(trouble))), trouble


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
