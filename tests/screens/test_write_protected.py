"""Records that may only be read: pages are shown, saving says why it cannot be, and nothing breaks."""

from pathlib import Path

import pytest

from tests.builders import make_household, make_place
from tests.screens.conftest import all_opened
from tests.sealed import Sealed, sealed
from tripplan.records.opening import Which
from tripplan.services import open_services

PAGE = """
from tripplan.screens.household.page import render
from tripplan.screens.widgets.frame import demo_button, open_page

view = open_page()
render(view)
demo_button(view.services)
"""


@pytest.mark.parametrize("what", ["files", "folder"])
def test_a_page_of_write_protected_records_is_shown_and_saves_nothing(
    reachable_folder: Path, what: Sealed, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The household is there; a change, and switching to the demo, are refused in words."""
    script, data = reachable_folder / "page.py", reachable_folder / "data"
    script.write_text(PAGE, encoding="utf-8")
    monkeypatch.setenv("TRIPPLAN_DATA", str(data))
    monkeypatch.setenv("TRIPPLAN_TODAY", "2026-11-25")
    services = open_services({"TRIPPLAN_DATA": str(data), "TRIPPLAN_TODAY": "2026-11-25"})
    services.use(Which.FAMILY)
    with services.own.change(services.clock()) as change:
        change.save(make_household())
        change.save(make_place())
    app = all_opened(script)
    app.text_input(key="reserve_reserve_percent").set_value("22")
    app.button(key="save_reserve").click().run()  # it can be saved, and all that it takes has been loaded
    assert not app.exception
    before = services.own.raw_documents()
    monkeypatch.setenv("TRIPPLAN_TODAY", "2026-11-26")  # so that the records are opened anew
    with sealed(data, what):
        app.run()
        assert not app.exception
        assert app.title[0].value == "Test household"
        warned = " ".join(warning.value for warning in app.warning)
        assert ("no copy of today" in warned) == (what == "folder")
        app.text_input(key="reserve_reserve_percent").set_value("33")
        app.button(key="save_reserve").click().run()
        assert not app.exception
        assert "Nothing was changed" in app.error[0].value
        assert "write-protected" in app.error[0].value.replace("\\", "")
        app.button(key="load_demo").click().run()
        assert not app.exception
        assert "write-protected" in app.error[0].value.replace("\\", "")
        assert app.title[0].value == "Test household"
    assert services.own.raw_documents() == before
