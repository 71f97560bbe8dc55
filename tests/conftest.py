"""What every test may use."""

import os
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]


@pytest.fixture(scope="session")
def shared_data() -> Path:
    """The folder of open data that lies beside the repository; the test skips where it is absent."""
    folder = Path(os.environ.get("TRIPPLAN_SHARED_DATA", ROOT.parent / "shared" / "data"))
    if not folder.is_dir():
        pytest.skip("the open data folder beside the repository is not here")
    return folder
