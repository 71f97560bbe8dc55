"""The day sheet on the Day plan page."""

from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from streamlit.testing.v1 import AppTest

SPOT = "sheet_demo_ledgewing_2026-12-17"


@pytest.fixture
def app(open_app: Callable[..., AppTest]) -> AppTest:
    """The Day plan page on a day of the demo that can be done."""
    page = open_app("day_plan")
    page.selectbox(key="plan_place").set_value("ledgewing").run()
    page.date_input(key="plan_day").set_value(date(2026, 12, 17)).run()
    assert not page.exception
    return page


def save(app: AppTest, **typed: Any) -> None:
    """Type into the form, and save."""
    for name, value in typed.items():
        key = f"{SPOT}_{name}"
        kinds = {bool: app.checkbox, list: app.multiselect}
        kinds.get(type(value), app.text_area)(key=key).set_value(value)
    app.button(key=f"{SPOT}_save").click().run()
    assert not app.exception


def typed(app: AppTest, name: str) -> Any:
    """What a text field says."""
    return app.text_area(key=f"{SPOT}_{name}").value


def test_both_files_are_offered(app: AppTest) -> None:
    """A web page and a PDF, on paper of the demo's country, and nothing ticked."""
    labels = {button.proto.label for button in app.get("download_button")}
    assert {"Download the web page (.html)", "Download the PDF"} <= labels
    assert app.radio(key="sheet_paper").value == "letter"
    assert not any(
        app.checkbox(key=f"{SPOT}_{tick}").value for tick in ("names", "needs", "birth_dates", "home_address")
    )


def test_what_is_typed_is_kept_and_taken_back(app: AppTest) -> None:
    """Saved for this outing, shown again, and gone after taking it back."""
    save(app, bookings="noon flight: K7-3312", contacts="Aunt Vera: (608) 555-0100", needs=True)
    assert any("is saved" in said.value for said in app.success)
    app.run()
    assert typed(app, "bookings") == "noon flight: K7-3312"
    assert typed(app, "contacts") == "Aunt Vera: (608) 555-0100"
    app.button(key=f"take_back_{SPOT}").click().run()
    assert not app.exception
    assert typed(app, "bookings") == ""
    assert typed(app, "contacts") == ""
    assert not app.checkbox(key=f"{SPOT}_needs").value


def test_packing_is_remembered_for_other_outings(app: AppTest) -> None:
    """What is left out and added here is so at another place, too."""
    save(app, left_out=["Stroller"], added="the grey rabbit")
    (told,) = [text.value for text in app.markdown if text.value.startswith("**To pack:**")]
    assert "the grey rabbit" in told
    assert "Stroller:" not in told
    app.selectbox(key="plan_place").set_value("tern-landing").run()
    other = "sheet_demo_tern-landing_2026-12-17"
    assert app.multiselect(key=f"{other}_left_out").value == ["Stroller"]
    assert app.text_area(key=f"{other}_added").value == "the grey rabbit"


def test_faults_change_nothing_and_are_told_together(app: AppTest) -> None:
    """A booking without a number, a contact without one, and a fourth question: three things, none saved."""
    save(app, bookings="noon flight", contacts="Aunt Vera: ask Joel", questions="1?\n2?\n3?\n4?")
    said = "\n".join(error.value for error in app.error)
    assert "Please fix 3 things. Nothing was changed yet." in said
    assert "Who to call 1, number" in said
    assert "phone number has digits" in said
    assert not any("is saved" in success.value for success in app.success)
