"""Every route the app's server lists, with an example of a path for each."""

import json
import re
import subprocess
import sys
from functools import cache
from typing import NamedTuple

from tests.running_app import ROOT

WEBSOCKET = "websocket"
_ASK = """
import json
from app import app
listed = app._build_starlette_app().routes
def told(route):
    methods = getattr(route, "methods", None) or ["GET"]
    return getattr(route, "path", ""), sorted(methods), type(route).__name__
print(json.dumps(list(map(told, listed))))
"""
UPGRADE = {
    "Upgrade": "websocket",
    "Connection": "Upgrade",
    "Sec-WebSocket-Version": "13",
    "Sec-WebSocket-Key": "dGhlIHNhbXBsZSBub25jZQ==",  # the example of RFC 6455, section 1.3
}


class Route(NamedTuple):
    """One way into the app.

    Attributes:
        method: of HTTP, or `WEBSOCKET`.
        path: an example of the paths it takes.
    """

    method: str
    path: str

    @property
    def headers(self) -> dict[str, str]:
        """What the request needs beside Host and Origin."""
        return UPGRADE if self.method == WEBSOCKET else {}

    @property
    def verb(self) -> str:
        """The method that HTTP knows."""
        return "GET" if self.method == WEBSOCKET else self.method


@cache
def every_route() -> list[Route]:
    """All routes, asked of the app itself in a process of its own, and some pages; asked once."""
    asked = subprocess.run(
        [sys.executable, "-c", _ASK], cwd=ROOT, capture_output=True, text=True, check=True, timeout=60
    )
    found = [
        Route("GET", path) for path in ("/", "/compare", "/household", "/static/js/none.js", "/index.html")
    ]
    for path, methods, kind in json.loads(asked.stdout.splitlines()[-1]):
        example = re.sub(r"{[^}]*}", "example", path) or "/"
        found += [Route(method, example) for method in ([WEBSOCKET] if kind == "WebSocketRoute" else methods)]
    return found
