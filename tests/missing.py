"""What to do where a test needs a tool that is not installed."""

import os
from typing import NoReturn

import pytest

ALL_REQUIRED = "TRIPPLAN_ALL_TESTS"
"""Set on the machine that must run every test: there, a missing tool fails instead of skipping."""


def not_installed(reason: str) -> NoReturn:
    """Skip a test with the reason, or fail it where every test is required."""
    if os.environ.get(ALL_REQUIRED):
        pytest.fail(f"every test is required here, but {reason}")
    pytest.skip(reason)
