"""The Records page gets back what was there: change by change, by the day, or from one file."""

import json
import os
import re
from datetime import date, timedelta
from html import unescape
from pathlib import Path

import pytest
import streamlit as st
from streamlit.testing.v1 import AppTest

from tests.builders import make_household, make_place
from tests.screens.conftest import APP, Opened, drawn, place_page, said
from tripplan.documents.family.household import Household
from tripplan.documents.places.place import Place
from tripplan.records.copies.daily import back_up
from tripplan.records.copies.listed import copies_of
from tripplan.records.export import export_all
from tripplan.records.migrations import summed
from tripplan.records.opening import Which
from tripplan.records.store import Records
from tripplan.screens.widgets import frame
from tripplan.services import Services, open_services


def headings(app: AppTest) -> str:
    """What is said of each change, the newest first."""
    faces = (str(one.proto.body) for one in app.get("html"))
    said_of = (re.search('tp-small.*<p class="tp-said">(.*)</p>', face) for face in faces)
    return "\n".join(unescape(found[1]) for found in said_of if found)


@pytest.fixture
def own(data: Path) -> Records:
    """The family's own records, in use: a household that was renamed after yesterday's copy."""
    services = open_services({"TRIPPLAN_DATA": str(data), "TRIPPLAN_TODAY": "2026-11-25"})
    services.use(Which.FAMILY)
    first = services.own.save(make_household(), services.clock())
    services.own.save(make_place(), services.clock())
    back_up(services.own.database, date(2026, 11, 24))
    services.own.save(make_household(name="Renamed"), services.clock(), first.revision)
    return services.own


def household_name(records: Records) -> str:
    """What the household on record is called."""
    kept = records.get(Household)
    assert kept is not None
    return kept.value.name


def test_changes_are_told_in_words_and_taken_back(own: Records, open_app: Opened) -> None:
    """The newest stands first with old and new value; taken back, it can be brought back too."""
    app = open_app("records")
    assert "Changed: household." in headings(app)
    assert "Name of the household: from Test household to Renamed" in said(app.markdown)
    newest = own.past_changes(1)[0].number
    app.button(key=f"take_back_change_{newest}").click().run()
    assert household_name(own) == "Test household"
    assert "Taken back: Changed: household." in headings(app)
    assert app.button(key=f"take_back_change_{newest}").disabled
    app.button(key=f"take_back_change_{newest + 1}").click().run()
    assert household_name(own) == "Renamed"


def test_what_a_page_says_of_a_change_stands_in_the_list(open_app: Opened) -> None:
    """A place removed on Places is brought back on Records, in the demo as well."""
    app = place_page(open_app, "ledgewing")
    app.button(key="remove_ledgewing").click().run()
    app.switch_page("screens/pages/records.py").run()
    app.run()
    assert "Ledgewing" in headings(app).splitlines()[0]
    assert "is removed" in headings(app).splitlines()[0]
    newest = next(str(one.key) for one in app.button if str(one.key).startswith("take_back_change_"))
    app.button(key=newest).click().run()
    app.switch_page("screens/pages/places.py").run()
    app.run()
    assert "Ledgewing" in drawn(app)


def test_a_change_of_many_documents_is_told_in_short(open_app: Opened) -> None:
    """The demo's first filling is one change; the list names some of its documents and counts the others."""
    app = open_app("records")
    assert " more." in headings(app)
    assert any(caption.value.startswith("And ") for caption in app.caption)


def test_a_days_copy_is_looked_at_and_put_back(own: Records, open_app: Opened) -> None:
    """What would be different is named first; afterwards everything is as it was that day."""
    app = open_app("records")
    assert "put_copy_back" not in [button.key for button in app.button]
    app.selectbox(key="copy_picked").set_value("2026-11-24").run()
    assert "Changed:" in said(app.markdown)
    app.button(key="put_copy_back").click().run()
    assert not app.exception
    assert household_name(own) == "Test household"
    assert "is put back" in said(app.success)


def test_a_copy_that_cannot_be_read_is_said_plainly(own: Records, open_app: Opened) -> None:
    """The records stay, and no button offers it."""
    for copy in (own.database.path.parent / "backups").iterdir():
        copy.write_bytes(b"no database, only words" * 400)
    app = open_app("records")
    app.selectbox(key="copy_picked").set_value("2026-11-24").run()
    assert not app.exception
    assert "cannot be read" in said(app.error)
    assert "put_copy_back" not in [button.key for button in app.button]
    assert household_name(own) == "Renamed"


def test_a_damaged_file_is_replaced_by_a_copy_from_any_page(own: Records) -> None:
    """Where the records cannot be opened the page says so and offers the copies; the damaged file is kept."""
    path = own.database.path
    for beside in path.parent.glob("family.sqlite3*"):
        beside.unlink()
    path.write_bytes(b"only some words" * 900)
    st.cache_resource.clear()
    app = AppTest.from_file(str(APP), default_timeout=30).run()
    assert not app.exception
    assert "it is no records file" in said(app.error)
    app.selectbox(key="recover_from").set_value("2026-11-24").run()
    app.button(key="recover").click().run()
    assert not app.exception
    assert not app.error
    assert household_name(own) == "Test household"
    assert [left.read_bytes()[:9] for left in path.parent.glob("family-damaged-*")] == [b"only some"]


def test_a_damaged_demo_is_made_anew(data: Path) -> None:
    """It has no copies and needs none."""
    for beside in data.glob("demo.sqlite3*"):
        beside.unlink()
    (data / "demo.sqlite3").write_bytes(b"only some words" * 900)
    st.cache_resource.clear()
    app = AppTest.from_file(str(APP), default_timeout=30).run()
    app.button(key="recover").click().run()
    assert not app.exception
    assert not app.error
    assert "Demo: an invented family." in said(app.markdown)
    assert app.title[0].value.startswith("Three outings")


def test_all_records_are_replaced_only_after_a_tick(own: Records, open_app: Opened) -> None:
    """A file of records says what it would change, and its button works only once the box is ticked."""
    app = open_app("records")
    whole = json.loads(export_all(own))
    whole["documents"] = [entry for entry in whole["documents"] if entry["kind"] == "household"]
    file = ("all.json", json.dumps(whole).encode(), "application/json")
    app.file_uploader(key="records_upload_0").set_value(file).run()
    assert "place test-museum" in said(app.markdown)
    assert app.button(key="replace_records").disabled
    app.checkbox(key="records_agreed_0").check().run()
    app.button(key="replace_records").click().run()
    assert not app.exception
    assert own.all(Place) == {}
    assert "Everything was replaced from all.json." in headings(app)


def test_a_damaged_file_of_records_is_refused(own: Records, open_app: Opened) -> None:
    """What is no file of records is named as such, and no button to replace anything appears."""
    app = open_app("records")
    app.file_uploader(key="records_upload_0").set_value(("all.json", b"{", "application/json")).run()
    assert "all.json" in said(app.error)
    assert "replace_records" not in [button.key for button in app.button]
    assert household_name(own) == "Renamed"


def test_records_that_have_gone_are_told_on_every_page_and_put_back(own: Records, data: Path) -> None:
    """The file vanishes: the page says that there is a copy, and one press brings it back."""
    for beside in data.glob("family.sqlite3*"):
        beside.unlink()
    st.cache_resource.clear()
    app = AppTest.from_file(str(APP), default_timeout=30).run()
    assert "holds 2 records" in said(app.warning)
    app.button(key="put_lost_copy_back").click().run()
    assert not app.exception
    assert "holds 2 records" not in said(app.warning)
    assert household_name(own) == "Test household"


def test_what_is_damaged_is_named_and_has_a_way_on(own: Records, data: Path) -> None:
    """A changed byte in the household: every page opens and names it; Records brings back what was before."""
    path = own.database.path
    raw = path.read_bytes()
    assert raw.count(b"Renamed") == 1
    path.write_bytes(raw.replace(b"Renamed", b"Penamed"))
    st.cache_resource.clear()
    app = AppTest.from_file(str(APP), default_timeout=30).run()
    assert not app.exception
    assert "can be read: household." in said(app.warning)
    app.switch_page("screens/pages/records.py").run()
    app.run()
    assert not app.exception
    app.button(key="aside_earlier_0").click().run()
    assert household_name(own) == "Test household"
    assert "can be read: household." not in said(app.warning)
    app.button(key="remove_damaged_files").click().run()
    assert not list(data.glob("*damaged*"))
    assert not app.warning


def test_what_this_version_refuses_is_kept_without_it_or_let_go(own: Records, open_app: Opened) -> None:
    """A field that is refused by now is named with its value; the parent keeps the rest, or does without."""
    with own.database.writing() as connection:
        connection.execute("UPDATE version SET body = json_set(body, '$.reserve_percent', '250')")
        connection.execute("UPDATE version SET body = json_set(body, '$.id', 7) WHERE kind = 'place'")
        connection.execute(f"UPDATE version SET checksum = {summed('version')}")
    app = open_app("records")
    assert "250" in said(app.markdown)
    app.button(key="aside_keep_0").click().run()
    assert [one.called for one in own.set_aside()] == ["place test-museum"]
    app.button(key="aside_let_go_0").click().run()
    assert own.set_aside() == ()
    assert not app.exception


def test_an_app_left_running_makes_a_copy_every_day(
    own: Records, open_app: Opened, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Two days later, without a start in between: a press makes the copy of that day, the next one none."""
    app = open_app("records")
    services = frame._services(frame._settings(os.environ))
    own.save(make_place(id="another"), services.clock())
    later = services.clock() + timedelta(days=2)
    monkeypatch.setattr(Services, "clock", property(lambda _: lambda: later), raising=False)
    app.run()
    app.run()
    days = [copy.day for copy in copies_of(own.database.path)]
    assert days == [date(2026, 11, 27), date(2026, 11, 25), date(2026, 11, 24)]


def test_deleting_for_good_says_what_goes_and_asks_first(own: Records, open_app: Opened) -> None:
    """Earlier states and copies are counted; the press needs a tick, and one state is left."""
    app = open_app("records")
    assert "not encrypted" in said(app.markdown)
    assert "earlier states of what is on record (1)" in said(app.markdown)
    assert app.button(key="forget").disabled
    app.checkbox(key="forget_agreed").check().run()
    app.button(key="forget").click().run()
    assert not app.exception
    assert household_name(own) == "Renamed"
    assert b"Test household" not in own.database.path.read_bytes()
