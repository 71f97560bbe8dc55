"""What benchmarks share: one browser for all that need one, since a process can drive but one."""

from tests.browser.conftest import browser

__all__ = ["browser"]
