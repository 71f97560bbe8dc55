"""Who looks at a page, as the guards in front of the server saw it."""

import secrets
from collections.abc import Mapping

from starlette.types import Scope

VISITOR_HEADER = "tripplan-visitor"
THIS_COMPUTER = "this computer"
_MARK = secrets.token_hex(16)
"""Known to this process alone, so that nobody can send the header himself."""


def mark(scope: Scope, visitor: str = THIS_COMPUTER) -> Scope:
    """The same request, marked with who sends it; a mark that was sent along is dropped.

    Args:
        scope: the request.
        visitor: `THIS_COMPUTER`, or the number of a paired phone.
    """
    name = VISITOR_HEADER.encode()
    others = [(key, value) for key, value in scope["headers"] if key.lower() != name]
    return {**scope, "headers": [*others, (name, f"{_MARK} {visitor}".encode())]}


def visitor_in(headers: Mapping[str, str]) -> str | None:
    """Who sent the request behind a page; None where it passed no guard.

    One without any headers is no request: a page that runs in a test.
    """
    if not headers:
        return THIS_COMPUTER
    marked, _, visitor = headers.get(VISITOR_HEADER, "").partition(" ")
    return visitor if secrets.compare_digest(marked.encode(), _MARK.encode()) else None


def is_marked(scope: Scope) -> bool:
    """Whether a guard has let a request in already."""
    told = dict(scope["headers"]).get(VISITOR_HEADER.encode(), b"").decode("latin-1")
    return visitor_in({VISITOR_HEADER: told}) is not None
