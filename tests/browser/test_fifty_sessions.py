"""Fifty windows of the app at once on this computer: nobody sees an error, and no save is lost."""

import sqlite3
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, closing
from datetime import UTC, date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from tests.app_session import AppSession, app_session
from tests.builders import make_household, make_place
from tests.running_app import RunningApp, started_app
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.records.opening import Which
from tripplan.records.store import Records
from tripplan.services import open_services

NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)
SESSIONS, WRITERS, CHANGERS, READERS = 50, 12, 6, 12
LOOKERS = ("", "choose_day", "day_plan", "calendar", "passes", "together", "places", "records", "study_units")
OFTEN = ("", "passes", "records")
"""Pages that are drawn quickly, so that fifty windows are not kept waiting for two processors."""
RESERVE, TREATS = "reserve_reserve_percent", "reserve_treats_per_child"


@pytest.fixture
def own_records(tmp_path: Path) -> Records:
    """A family's own records with two places, shown by the app."""
    services = open_services({"TRIPPLAN_DATA": str(tmp_path / "data"), "TRIPPLAN_TODAY": "2026-11-25"})
    services.use(Which.FAMILY)
    with services.own.change(NOW) as change:
        for value in (make_household(), make_place(), make_place(id="mill", name="Old mill")):
            change.save(value)
    return services.own


@pytest.fixture
def app(own_records: Records, tmp_path: Path) -> Iterator[RunningApp]:
    """The app on these records."""
    assert own_records.database.path.is_relative_to(tmp_path / "data")
    with started_app(tmp_path) as running:
        yield running


def at_once(work: Callable[[AppSession, int], None], sessions: list[AppSession]) -> None:
    """Let every session do something at the same time, each with a number of its own."""
    with ThreadPoolExecutor(len(sessions)) as pool:
        list(pool.map(work, sessions, range(len(sessions))))


def open_entry(session: AppSession, _: int) -> None:
    """Open the form of the logbook."""
    session.run(press="write_other")


def open_reserve(session: AppSession, _: int) -> None:
    """Open the part of the household page that is changed."""
    session.run(press="turn_reserve")


def write_entry(session: AppSession, number: int) -> None:
    """Write an outing of one's own into the logbook."""
    typed = {"entry_family_title": f"Pond {number}", "entry_family_receipts_total": f"{number}.50"}
    session.run(typed, press="save_logbook_entry")


def change_household(session: AppSession, number: int) -> None:
    """Change the household from the state that all of them have seen."""
    session.run({RESERVE: str(number + 20), TREATS: f"{number}.25"}, press="save_reserve")


def test_fifty_sessions_write_and_read_at_once(app: RunningApp, own_records: Records) -> None:
    """Every entry is in the logbook; of all that change one household one saves and the others are asked."""
    pages = ["logbook"] * WRITERS + ["household"] * CHANGERS
    pages += LOOKERS
    pages += [OFTEN[number % len(OFTEN)] for number in range(SESSIONS - len(pages))]
    with ExitStack() as stack:
        sessions = [stack.enter_context(app_session(app.address, page)) for page in pages]
        writers, changers = sessions[:WRITERS], sessions[WRITERS : WRITERS + CHANGERS]
        readers = sessions[-READERS:]
        at_once(lambda session, _: session.run(), sessions)
        assert all(session.widgets and session.texts for session in sessions)
        at_once(open_entry, writers)
        at_once(open_reserve, changers)

        def everything(session: AppSession, number: int) -> None:
            if session in writers:
                write_entry(session, number)
            elif session in changers:
                change_household(session, number - WRITERS)
            else:
                session.run()

        at_once(everything, [*writers, *changers, *readers])
        assert [told for session in sessions for told in session.exceptions] == []
        assert all("is in the logbook" in session.said for session in writers)
        asked = [session for session in changers if "conflict_mine" in session.widgets]
        (winner,) = (number for number, session in enumerate(changers) if session not in asked)
        assert "Saved." in changers[winner].said

        # One of those who are asked decides; her change goes on top, and nobody else's is lost.
        asked[0].run(press="conflict_mine")
        decided = changers.index(asked[0])
        assert asked[0].exceptions == []
    entries = [kept.value for kept in own_records.all(LogbookEntry).values()]
    assert {(one.title, one.receipts_total, one.day) for one in entries} == {
        (f"Pond {number}", Decimal(f"{number}.50"), date(2026, 11, 25)) for number in range(WRITERS)
    }
    for revision, (reserve, treats) in {
        1: (make_household().reserve_percent, make_household().treats_per_child),
        2: (Decimal(winner + 20), Decimal(f"{winner}.25")),
        3: (Decimal(decided + 20), Decimal(f"{decided}.25")),
    }.items():
        state = own_records.as_of(Household, "only", revision)
        assert state is not None
        assert (state.reserve_percent, state.treats_per_child) == (reserve, treats)
    kept = own_records.get(Household)
    assert kept is not None
    assert kept.revision == 3
    assert app.server.poll() is None
    assert "Traceback" not in app.log.read_text(encoding="utf-8")
    with closing(sqlite3.connect(own_records.database.path)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
