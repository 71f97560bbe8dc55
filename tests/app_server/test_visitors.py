"""What a page shows by the way it was reached."""

from pathlib import Path

from tests.app_session import app_session
from tests.running_app import ROOT, RunningApp, started_app

WARNING = "Everybody in your network can read and change everything here."


def test_started_for_the_network_by_hand_every_page_warns(running_app: RunningApp, tmp_path: Path) -> None:
    """On all addresses each page begins with the warning; on this computer's own none has it."""
    with started_app(tmp_path, "--server.address=0.0.0.0") as app:
        for page in ("", "household", "logbook", "records", "on_the_day", "guide"):
            with app_session(app.address, page) as window:
                window.run()
                assert window.said.startswith(WARNING), page
    with app_session(running_app.address) as window:
        window.run()
        assert WARNING not in window.said


def test_pages_without_a_guard_in_front_stay_shut(tmp_path: Path) -> None:
    """The list of pages, started itself instead of the app, shows nothing of the family."""
    with started_app(tmp_path, APP_SCRIPT="tripplan/page_list.py", PYTHONPATH=str(ROOT)) as app:
        for page in ("", "household", "phones"):
            with app_session(app.address, page) as window:
                window.run()
                assert window.said.startswith("This page is closed.")
                assert window.widgets == {}
