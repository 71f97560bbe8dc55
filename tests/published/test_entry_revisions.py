"""Whatever becomes of an outing, calendars that hold its entry take the newest file.

Source: Daboo (ed.), iCalendar Transport-Independent Interoperability Protocol (iTIP), RFC 5546, 2009,
sections 2.1.4 (a revision has a higher SEQUENCE) and 2.1.5 (of one UID the highest SEQUENCE counts, then the
latest DTSTAMP). Independent: vobject 0.9.9 (PyPI) reads what counts; Radicale 3.9.0 keeps what was sent.
"""

from collections.abc import Callable, Iterable
from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest
import vobject

from tests.builders import make_household, make_place
from tests.calendar_server.radicale_server import PASSWORD, USER, Running
from tripplan.calendar_server.outbox import on_its_way, send_waiting
from tripplan.documents.calendars.server_calendar import ServerCalendar
from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.files.calendars.entry_text import file_of
from tripplan.planning.calendar_entry.entry import OutingEntry
from tripplan.planning.calendar_entry.planned_outing import entry_of, planned_from, with_next_sequence
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.records.opening import Which, open_records
from tripplan.records.planned_outings import outings_ever
from tripplan.records.store import Records

HOUSEHOLD, PLACE = make_household(), make_place()
DAY = date(2026, 12, 5)
START = datetime(2026, 11, 25, 12, tzinfo=UTC)
HOUR = timedelta(hours=1)


def outing() -> Outing:
    """The day at the museum."""
    family = Family(HOUSEHOLD, (PLACE,))
    found = plan_outing(
        family, HOUSEHOLD.members, place_facts(family, PLACE, (DAY.year,)), DAY, today=date(2026, 11, 25)
    )
    assert isinstance(found, Outing)
    return found


class Home:
    """A family that plans, calls off, removes and plans anew, an hour between any two of these."""

    def __init__(self, records: Records) -> None:
        self.records = records
        self.now = START

    def plans(self, ticked: EntryTicks) -> bytes:
        """Put the outing on the list, as the screens and commands do; its file."""
        self.now += HOUR
        ever = outings_ever(self.records)
        before = ever.on(PLACE.id, DAY)
        planned = planned_from(
            outing(),
            HOUSEHOLD,
            ticked,
            PlanStatus.CONFIRMED,
            before=before.value if before else None,
            ids_taken=ever.ids,
            at=self.now,
        )
        self.records.save(planned, self.now, before.revision if before else 0)
        return self.file(planned)

    def calls_off(self) -> bytes:
        """Call it off; the file of the cancellation."""
        self.now += HOUR
        (kept,) = self.records.all(PlannedOuting).values()
        off = kept.value.changed(self.now, status=PlanStatus.CANCELLED)
        self.records.save(off, self.now, kept.revision)
        return self.file(off)

    def removes(self) -> None:
        """Take it off the list, which makes no file."""
        self.now += HOUR
        (kept,) = self.records.all(PlannedOuting).values()
        self.records.remove(PlannedOuting, kept.value.id, self.now, kept.revision)

    def takes_back(self) -> bytes:
        """Take the last change back, as the Records page does; the file."""
        self.now += HOUR
        with self.records.change(self.now) as change:
            change.take_back(self.records.past_changes(1)[0].number, with_next_sequence)
        (kept,) = self.records.all(PlannedOuting).values()
        return self.file(kept.value)

    def entry(self, planned: PlannedOuting) -> OutingEntry:
        """Its entry."""
        return entry_of(planned, HOUSEHOLD, PLACE, outing())

    def file(self, planned: PlannedOuting) -> bytes:
        """Its calendar file, written now."""
        return file_of(self.entry(planned), self.now)


@pytest.fixture
def home(tmp_path: Any) -> Home:
    """A family with fresh records."""
    return Home(open_records(tmp_path, Which.FAMILY, START))


def what_counts(files: Iterable[bytes]) -> dict[str, str]:
    """The status of every entry by its UID, once all files were imported by a reader of RFC 5546, 2.1.5."""
    held: dict[str, tuple[int, datetime, str]] = {}
    for data in files:
        for event in vobject.readOne(data.decode()).vevent_list:
            state = (int(event.sequence.value), event.dtstamp.value, str(event.status.value))
            uid = str(event.uid.value)
            if uid not in held or state[:2] > held[uid][:2]:
                held[uid] = state
    return {uid: status for uid, (_, _, status) in held.items()}


@pytest.mark.parametrize("called_off", [True, False])
def test_an_outing_removed_and_planned_anew_is_on_the_calendar(home: Home, called_off: bool) -> None:
    """One entry, settled, whether or not the calendar was told in between that it is called off."""
    files = [home.plans(EntryTicks(in_parts=True))]
    if called_off:
        files.append(home.calls_off())
    home.removes()
    files.append(home.plans(EntryTicks()))
    counts = what_counts(files)
    assert sorted(counts.values()) == ["CANCELLED", "CANCELLED", "CONFIRMED"]  # drive and way home are over
    (uid,) = (uid for uid, status in counts.items() if status == "CONFIRMED")
    (kept,) = home.records.all(PlannedOuting).values()
    assert uid == kept.value.uid


def test_a_calling_off_that_is_taken_back_is_taken_back_on_the_calendar(home: Home) -> None:
    """And once more removed and planned anew, as it was, it stays one entry."""
    files = [home.plans(EntryTicks()), home.calls_off(), home.takes_back()]
    assert list(what_counts(files).values()) == ["CONFIRMED"]
    home.removes()
    files.append(home.plans(EntryTicks()))
    assert list(what_counts(files).values()) == ["CONFIRMED"]


def test_an_outing_removed_from_the_server_and_planned_anew_lies_there_again(
    home: Home, calendar_server: Running, new_calendar: Callable[[], str]
) -> None:
    """Sent, removed there, planned anew and sent: one entry, settled, and nothing waits."""
    server = ServerCalendar(server=calendar_server.address, user=USER, calendar=new_calendar(), name="Ours")
    home.plans(EntryTicks())
    for _ in range(2):
        (kept,) = home.records.all(PlannedOuting).values()
        on_its_way(home.records, kept.value.id, server.calendar, home.now)
        assert send_waiting(home.records, server, PASSWORD, home.entry, home.now).complete
        (text,) = calendar_server.files(server.calendar).values()
        assert "STATUS:CONFIRMED" in text
        home.removes()
        assert send_waiting(home.records, server, PASSWORD, home.entry, home.now).complete
        assert calendar_server.files(server.calendar) == {}
        home.plans(EntryTicks())
