"""Who looks at a page, as the guards in front of the server saw it."""

import secrets
from collections.abc import Mapping

from starlette.types import Scope

VISITOR_HEADER = "tripplan-visitor"
_MARK = secrets.token_hex(16)
"""Known to this process alone, so that nobody can send the header himself."""


def mark(scope: Scope) -> Scope:
    """The same request, marked as one that a guard has let in; a mark that was sent along is dropped."""
    name = VISITOR_HEADER.encode()
    others = [(key, value) for key, value in scope["headers"] if key.lower() != name]
    return {**scope, "headers": [*others, (name, _MARK.encode())]}


def was_let_in(headers: Mapping[str, str]) -> bool:
    """Whether the request behind a page passed a guard; one without any headers is no request, but a test."""
    return not headers or secrets.compare_digest(headers.get(VISITOR_HEADER, ""), _MARK)
