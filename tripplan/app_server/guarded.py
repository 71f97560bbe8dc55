"""What the app is made of: the pages, and the guards in front of them."""

from pathlib import Path
from typing import Any

from starlette.middleware import Middleware

from tripplan.app_server.address_lookup import forbid_address_lookup
from tripplan.app_server.crowd import CrowdLimit
from tripplan.app_server.local_guard import LocalGuard
from tripplan.app_server.phone_link import phone_link


def guarded_pages() -> dict[str, Any]:
    """What Streamlit's own `App` is called with, so that every start has the same guards.

    Streamlit looks for that call in the file that it is started with; hence the two files that make it.
    """
    forbid_address_lookup()
    return {
        "script_path": str(Path(__file__).resolve().parents[1] / "page_list.py"),
        "middleware": [Middleware(LocalGuard), Middleware(CrowdLimit)],
        "lifespan": phone_link.lifespan,
    }
