"""How a benchmark tells its figures."""

import sys
from collections.abc import Callable

import pytest


@pytest.fixture
def tell(capsys: pytest.CaptureFixture[str]) -> Callable[[str], None]:
    """Prints a figure whether or not pytest shows what tests print."""

    def told(figures: str) -> None:
        with capsys.disabled():
            sys.stdout.write(f"\n{figures}\n")

    return told
