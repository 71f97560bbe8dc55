"""The headers that every answer carries, and refusals."""

import base64
import hashlib
import re
from functools import cache
from pathlib import Path

import streamlit
from starlette.datastructures import MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import Message, Receive, Scope, Send

POLICY_VIOLATION = 1008
"""The close code of a websocket that is refused (RFC 6455, section 7.4.1)."""


@cache
def answer_headers() -> dict[str, str]:
    """Headers that keep other sites from showing, embedding or learning anything of the app.

    Streamlit's page has one script within itself, which is allowed by its hash. Its charts are drawn by
    functions made from text and its styles are written at run time, so these two stay allowed.
    """
    content = {
        "default-src": "'self'",
        "script-src": f"'self' 'unsafe-eval' {_scripts_within_the_page()}",
        "style-src": "'self' 'unsafe-inline'",
        "img-src": "'self' data: blob:",
        "media-src": "'self' data: blob:",
        "font-src": "'self' data:",
        "worker-src": "'self' blob:",
        "object-src": "'none'",
        "base-uri": "'none'",
        "form-action": "'self'",
        "frame-ancestors": "'none'",
    }
    return {
        "content-security-policy": "; ".join(f"{name} {value}" for name, value in content.items()),
        "x-frame-options": "DENY",
        "x-content-type-options": "nosniff",
        "referrer-policy": "same-origin",  # "no-referrer" would hide the Origin of a form as well
        "cross-origin-opener-policy": "same-origin",
        "cross-origin-resource-policy": "same-origin",
    }


def _scripts_within_the_page() -> str:
    page = (Path(streamlit.__file__).parent / "static" / "index.html").read_text(encoding="utf-8")
    scripts = re.findall(r"<script>(.*?)</script>", page, re.DOTALL)
    hashes = (base64.b64encode(hashlib.sha256(script.encode()).digest()).decode() for script in scripts)
    return " ".join(f"'sha256-{value}'" for value in hashes)


def with_headers(send: Send) -> Send:
    """The same way out, on which every answer gets the headers of `answer_headers`."""

    async def sent(message: Message) -> None:
        if message["type"] == "http.response.start":
            MutableHeaders(scope=message).update(answer_headers())
        await send(message)

    return sent


async def refuse(scope: Scope, receive: Receive, send: Send, because: str) -> None:
    """Answer a request with 403 and a sentence; a websocket is closed before it opens."""
    if scope["type"] == "websocket":
        await send({"type": "websocket.close", "code": POLICY_VIOLATION, "reason": because})
        return
    await PlainTextResponse(because + "\n", status_code=403)(scope, receive, with_headers(send))
