"""On the Places page a price board is typed in and changed without TOML, and says at once what it means."""

from collections.abc import Callable, Iterable
from datetime import date

import pytest
from streamlit.testing.v1 import AppTest

from tripplan.planning.place import Place
from tripplan.records.store import Kept
from tripplan.services import open_services

Opened = Callable[..., AppTest]
TODAY = date(2026, 11, 25)
FARM = "oatsparrow-farm"
EDITOR = f"board_demo_{FARM}"


def said(elements: Iterable[object]) -> str:
    """Everything that some elements of a page say, as one text without marks."""
    return (
        "\n".join(str(getattr(element, "value", "")) for element in elements)
        .replace("\\", "")
        .replace("**", "")
    )


def on_record(app: AppTest, place_id: str = FARM) -> Kept[Place]:
    """A demo card as it is on record."""
    assert not app.exception, app.exception
    return records().all(Place)[place_id]


def records() -> "object":
    """The demo's records of this test."""
    return open_services(dict(os.environ)).demo


@pytest.fixture
def editor(open_app: Opened) -> AppTest:
    """The farm's board, opened for changes: three tickets, a group, a pass, two add-ons and more."""
    app = open_app("places")
    return app.button(key=f"{EDITOR}_change").click().run()


def last_row(app: AppTest) -> int:
    """The number of the row that was added last."""
    return int(app.session_state[f"{EDITOR}_rows_made"]) - 1
