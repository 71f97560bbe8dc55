"""The Calendar page with a calendar server of the family's own."""

import sqlite3
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from keyring.backend import KeyringBackend
from streamlit.testing.v1 import AppTest

from tests.builders import make_household, make_place
from tests.calendar_server.keyring_for_tests import MemoryKeyring, no_keyring, used
from tests.calendar_server.radicale_server import PASSWORD, USER, Running, free_port
from tests.screens.conftest import said
from tripplan.documents.calendars.server_calendar import OnServer, ServerCalendar
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.records.opening import Which, open_records, show
from tripplan.records.store import Records

NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)
ID = "test-museum-2026-12-08"


@pytest.fixture
def keyring_in_use() -> Iterator[KeyringBackend]:
    """A keyring in memory."""
    backend = MemoryKeyring()
    with used(backend):
        yield backend


@pytest.fixture
def own(data: Path) -> Records:
    """The family's own records, shown by the screens."""
    records = open_records(data, Which.FAMILY, NOW)
    drive = TypedDrive(place="test-museum", km=64, minutes=30, typed_on=NOW.date())
    with records.change(NOW) as change:
        change.replace_all((make_household(), make_place(), drive))
    show(records, Which.FAMILY, NOW)
    return records


def opened(open_app: Callable[..., AppTest], day: str = "2026-12-08") -> AppTest:
    """The page with an outing taken."""
    app = open_app("calendar")
    app.session_state["taken_family"] = ("test-museum", day, None)
    return checked(app.run())


def checked(app: AppTest) -> AppTest:
    """A run that raised nothing."""
    assert not app.exception
    return app


def set_up(app: AppTest, server: Running, calendar: str) -> AppTest:
    """Look for the calendars and pick one."""
    app.text_input(key="calendar_server_address").set_value(server.address)
    app.text_input(key="calendar_server_user").set_value(USER)
    app.text_input(key="calendar_server_password").set_value(PASSWORD)
    checked(app.button(key="look_for_calendars").click().run())
    app.radio(key="calendar_server_picked").set_value(calendar).run()
    return checked(app.button(key="use_calendar").click().run())


def keys(app: AppTest) -> list[str]:
    """The buttons there are."""
    return [button.key or "" for button in app.button]


def test_an_outing_is_sent_moved_and_taken_off(
    open_app: Callable[..., AppTest],
    own: Records,
    calendar_server: Running,
    new_calendar: Callable[[], str],
    keyring_in_use: MemoryKeyring,
) -> None:
    """From setting up to an empty calendar again, each with one press that says where it goes."""
    calendar = new_calendar()
    app = opened(open_app)
    assert "send_entry" not in keys(app)
    set_up(app, calendar_server, calendar)
    assert "its password is in the keyring" in said(app.success)
    assert list(keyring_in_use.kept.values()) == [PASSWORD]
    checked(app.button(key="send_entry").click().run())
    assert "It is on the calendar." in said(app.success)
    (text,) = calendar_server.files(calendar).values()
    assert "SEQUENCE:0" in text
    assert "Ann" not in text
    checked(app.button(key=f"turn_{ID}").click().run())
    assert "Waits to be sent" in said(app.caption)
    checked(app.button(key="send_waiting").click().run())
    (text,) = calendar_server.files(calendar).values()
    assert "STATUS:CANCELLED" in text
    checked(app.button(key=f"remove_planned_{ID}").click().run())
    assert app.button(key="send_waiting").label == "Send what waits: 1 to remove there"
    checked(app.button(key="send_waiting").click().run())
    assert calendar_server.files(calendar) == {}
    assert own.all(OnServer) == {}
    checked(app.button(key="forget_server").click().run())
    assert keyring_in_use.kept == {}
    assert "look_for_calendars" in keys(app)


def test_the_password_never_gets_into_the_records(
    open_app: Callable[..., AppTest],
    own: Records,
    calendar_server: Running,
    new_calendar: Callable[[], str],
) -> None:
    """Without a keyring it stays in the tab; the database holds it nowhere, and the next tab asks."""
    with used(no_keyring()):
        app = opened(open_app)
        set_up(app, calendar_server, new_calendar())
        assert "asked for in each new tab" in said(app.success)
        assert "calendar_server_password" not in app.session_state  # the form is gone, and with it its field
        checked(app.button(key="send_entry").click().run())
        assert "It is on the calendar." in said(app.success)
        for file in own.database.path.parent.glob("*.sqlite3*"):
            assert PASSWORD.encode() not in file.read_bytes()
        with sqlite3.connect(own.database.path) as connection:
            dump = "\n".join(connection.iterdump())
        connection.close()
        assert USER in dump
        assert PASSWORD not in dump
        again = opened(open_app, "2026-12-09")
        assert "calendar_server_password_typed" in [field.key for field in again.text_input]
        checked(again.button(key="send_entry").click().run())
        assert "type the password of your calendar server" in said(again.error)
        again.text_input(key="calendar_server_password_typed").set_value(PASSWORD)
        checked(again.button(key="send_waiting").click().run())
        assert "on the calendar" in said(again.success)


@pytest.mark.usefixtures("own", "keyring_in_use")
def test_a_change_made_there_is_shown_beside_ours_and_decided(
    open_app: Callable[..., AppTest],
    calendar_server: Running,
    new_calendar: Callable[[], str],
) -> None:
    """Nothing is written over unseen: both texts stand side by side, and a press sends ours."""
    calendar = new_calendar()
    app = set_up(opened(open_app), calendar_server, calendar)
    checked(app.button(key="send_entry").click().run())
    ((name, text),) = calendar_server.files(calendar).items()
    theirs = text.replace("SUMMARY:Test museum", "SUMMARY:Dentist first")
    assert theirs != text
    calendar_server.ask("PUT", f"{calendar}{name}", theirs, Content_Type="text/calendar").raise_for_status()
    app.checkbox(key="entry_names").check().run()
    checked(app.button(key="send_entry").click().run())
    assert "look at both and decide" in said(app.error)
    shown = said(app.code)
    assert "Dentist first" in shown
    assert calendar_server.files(calendar)[name] == theirs
    checked(app.button(key=f"ours_wins_{ID}").click().run())
    assert "Dentist" not in calendar_server.files(calendar)[name]
    assert "Ann" in calendar_server.files(calendar)[name]
    assert "as it is here" in said(app.caption)


def test_a_server_that_is_away_keeps_the_outing_waiting(
    open_app: Callable[..., AppTest], own: Records, keyring_in_use: MemoryKeyring
) -> None:
    """The outing is planned all the same, and says why it is not there yet."""
    away = f"http://127.0.0.1:{free_port()}/"
    own.save(ServerCalendar(server=away, user=USER, calendar=f"{away}home/x/", name="Ours"), NOW)
    keyring_in_use.set_password("tripplan calendar server", f"{USER} at {away}", PASSWORD)
    app = opened(open_app)
    checked(app.button(key="send_entry").click().run())
    assert "is planned. Not sent: it cannot be reached" in said(app.error)
    assert "Waits to be sent to 'Ours'" in said(app.caption)
    assert own.all(OnServer)[ID].value.sent == ""


@pytest.mark.usefixtures("own")
def test_faults_in_setting_up_are_told_in_words(
    open_app: Callable[..., AppTest], calendar_server: Running
) -> None:
    """Nothing is set up, and what is wrong is said."""
    app = open_app("calendar")
    right = {"address": calendar_server.address, "user": USER, "password": PASSWORD}
    for name, value, fault in (
        ("address", "http://example.org/", "others can read it"),
        ("address", "nowhere at all", "give the server's address"),
        ("user", "", "Type the user name"),
        ("password", "wrong", "the user name or the password is wrong"),
    ):
        for field, typed in {**right, name: value}.items():
            app.text_input(key=f"calendar_server_{field}").set_value(typed)
        checked(app.button(key="look_for_calendars").click().run())
        assert fault in said(app.error)
        assert "use_calendar" not in keys(app)
