"""The app, started for a test with records of its own and a fixed date."""

from collections.abc import Callable
from pathlib import Path

import pytest
import streamlit as st
from streamlit.testing.v1 import AppTest

ROOT = Path(__file__).resolve().parents[2]
APP = ROOT / "app.py"
TODAY = "2026-11-25"


@pytest.fixture
def open_app(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[..., AppTest]:
    """Opens the app on a page, with fresh records in a folder of the test's own."""
    monkeypatch.setenv("TRIPPLAN_DATA", str(tmp_path / "data"))
    monkeypatch.setenv("TRIPPLAN_TODAY", TODAY)
    monkeypatch.chdir(ROOT)
    st.cache_resource.clear()

    def opened(page: str = "compare") -> AppTest:
        app = AppTest.from_file(str(APP), default_timeout=30).run()
        if page != "compare":
            app.switch_page(f"tripplan/screens/pages/{page}.py").run()
            app.run()  # the keys of the new page are there from the second run on
        assert not app.exception, app.exception
        return app

    return opened
