"""An outing as it goes onto a calendar, whole or in parts, with what is to be done before."""

from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from enum import StrEnum
from uuid import UUID, uuid5

from tripplan.documents.outings.planned import PlanStatus
from tripplan.documents.where import Point
from tripplan.errors import PlanError
from tripplan.values.plain_text import one_line

_OUTINGS = UUID("6f0f5d1e-0c0c-4c54-9c3b-2f6d3a1b7e90")


_THERE = "-there"


_BACK = "-back"


_TO_DO = "-todo"


_ENTRY = "-entry"


_A_MOMENT = timedelta(minutes=15)
"""How long a thing to do shows on the calendar where it is an entry."""


class EntryLayout(StrEnum):
    """How an outing lies on the calendar."""

    WHOLE = "one entry"
    PARTS = "drive, visit and way home"


@dataclass(frozen=True)
class Reminder:
    """Something to be told in time.

    Attributes:
        minutes_before: before leaving home [min].
        text: what the reminder says.
    """

    minutes_before: int
    text: str


@dataclass(frozen=True)
class ToDo:
    """Something to be done before an outing.

    Attributes:
        ending: tells its UID from the outing's own.
        text: what is to be done.
        start: when it is reminded of; zone-aware.
        due: until when; zone-aware, later than the start.
        as_entry: whether it is written as a short entry, for programs that know no to-dos.
    """

    ending: str
    text: str
    start: datetime
    due: datetime
    as_entry: bool = False

    def __post_init__(self) -> None:
        if self.start.utcoffset() is None or self.due.utcoffset() is None:
            raise PlanError("a thing to do needs time zones")
        if self.start.astimezone(UTC) >= self.due.astimezone(UTC):
            raise PlanError("a thing to do is due after it is reminded of")


@dataclass(frozen=True)
class OutingEntry:
    """One outing as it goes onto a calendar. Nothing gets into the file that does not stand here.

    Attributes:
        uid: names the outing for good, see `outing_uid`; the same one moves the same entry.
        summary: the title.
        start: leaving home, load-up included.
        arrive: being let in.
        leave_place: setting out for the way home.
        end: everybody is home again. All four are zone-aware and in order.
        sequence: how often the entry was changed after it was first handed out.
        last_modified: when the outing was last changed; zone-aware.
        status: how firm it is; a cancelled one is taken off the calendar and reminds nobody.
        location: where, in words.
        point: where, for a map.
        url: the place's own page; left out unless it is a web address.
        description: everything else, in lines.
        categories: topics of study.
        reminders: in any order.
        layout: one entry, or one per part of the day.
        busy: whether it marks its time as taken.
        colour: a CSS colour keyword; the calendar's own colour when left out.
        to_dos: what is to be done before; each is an entry or a to-do of its own.
        withdrawn: endings of the UIDs of parts and to-dos that earlier files held; those that this one does
            not hold are written as cancelled.

    Raises:
        PlanError: a time has no zone, the times are out of order, or there is no uid.
    """

    uid: str
    summary: str
    start: datetime
    arrive: datetime
    leave_place: datetime
    end: datetime
    sequence: int = 0
    last_modified: datetime | None = None
    status: PlanStatus = PlanStatus.CONFIRMED
    location: str = ""
    point: Point | None = None
    url: str = ""
    description: str = ""
    categories: tuple[str, ...] = ()
    reminders: tuple[Reminder, ...] = ()
    layout: EntryLayout = EntryLayout.WHOLE
    busy: bool = True
    colour: str = ""
    to_dos: tuple[ToDo, ...] = ()
    withdrawn: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        times = (self.start, self.arrive, self.leave_place, self.end)
        if any(moment.utcoffset() is None for moment in times):
            raise PlanError("an entry's times need their time zones")
        instants = [moment.astimezone(UTC) for moment in times]
        if instants != sorted(instants) or instants[0] == instants[-1]:
            raise PlanError("an entry runs from leaving home over the visit to being home again")
        if not one_line(self.uid) or self.sequence < 0:
            raise PlanError("an entry needs a uid, and its sequence counts from 0")


def outing_uid(outing: str) -> str:
    """A UID for an outing, always the same for the same outing.

    Args:
        outing: whatever names the outing in the family's records; it cannot be read back from the UID.

    Source: RFC 7986, section 5.3 (a UID says nothing about what it names); RFC 9562, section 5.5.
    """
    return str(uuid5(_OUTINGS, outing))


def endings(entry: OutingEntry) -> tuple[str, ...]:
    """What the UIDs of an outing's parts and to-dos have after the outing's own."""
    uid = one_line(entry.uid)
    return tuple(part.uid.removeprefix(uid) for part in parts_of(entry) if part.uid != uid)


@dataclass(frozen=True)
class EntryPart:
    """One component of the file: a whole outing, a part of it, or something to do before it."""

    uid: str
    summary: str
    start: datetime
    end: datetime
    entry: OutingEntry
    status: PlanStatus
    described: bool = True
    busy: bool = True
    is_to_do: bool = False
    reminders: tuple[Reminder, ...] = ()


def parts_of(entry: OutingEntry) -> list[EntryPart]:
    """What an outing is on the calendar: one part or several, by its layout, and its things to do."""
    # The visit keeps the outing's own UID, so that changing the layout moves the entry and makes no twin.
    name = one_line(entry.summary)
    uid = one_line(entry.uid)
    whole = EntryPart(
        uid, name, entry.start, entry.end, entry, entry.status, busy=entry.busy, reminders=entry.reminders
    )
    to_dos = [_to_do(entry, to_do) for to_do in entry.to_dos]
    if entry.layout is EntryLayout.WHOLE:
        return [whole, *to_dos]
    way = replace(whole, described=False, reminders=())
    parts = [
        replace(way, uid=f"{uid}{_THERE}", summary=f"Way there: {name}", end=entry.arrive),
        replace(whole, start=entry.arrive, end=entry.leave_place, reminders=()),
        replace(way, uid=f"{uid}{_BACK}", summary=f"Way home: {name}", start=entry.leave_place),
    ]
    first, *rest = (part for part in parts if part.start.astimezone(UTC) < part.end.astimezone(UTC))
    return [replace(first, reminders=entry.reminders), *rest, *to_dos]


def _to_do(entry: OutingEntry, to_do: ToDo) -> EntryPart:
    end = to_do.due
    if to_do.as_entry:
        end = min(end, (to_do.start.astimezone(UTC) + _A_MOMENT).astimezone(to_do.start.tzinfo))
    return EntryPart(
        # A to-do cannot become an entry under one UID, so each has its own.
        f"{one_line(entry.uid)}-{one_line(to_do.ending)}{_ENTRY if to_do.as_entry else _TO_DO}",
        one_line(to_do.text),
        to_do.start,
        end,
        entry,
        entry.status,
        described=False,
        busy=False,
        is_to_do=not to_do.as_entry,
        reminders=(Reminder(0, to_do.text),),
    )


def withdrawn_parts(entry: OutingEntry) -> list[EntryPart]:
    """Parts and to-dos that an earlier file held and this one takes back."""
    uid, here = one_line(entry.uid), endings(entry)
    return [
        EntryPart(
            f"{uid}{one_line(ending)}",
            one_line(entry.summary),
            entry.start,
            entry.end,
            entry,
            PlanStatus.CANCELLED,
            described=False,
            busy=False,
            is_to_do=ending.endswith(_TO_DO),
        )
        for ending in dict.fromkeys(entry.withdrawn)
        if ending not in here
    ]
