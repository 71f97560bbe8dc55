"""Asking a server over a connection of one's own, with whatever headers a test likes."""

import ssl
from functools import cache
from http.client import HTTPConnection, HTTPResponse, HTTPSConnection
from typing import NamedTuple
from urllib.parse import urlsplit


class Answer(NamedTuple):
    """What came back.

    Attributes:
        status: of HTTP; 101 where a websocket was opened.
        headers: with names in small letters; of several with one name the last.
        body: as it came; nothing of an open websocket is read.
        cookies: each Set-Cookie header.
    """

    status: int
    headers: dict[str, str]
    body: bytes
    cookies: list[str]


@cache
def trusting() -> ssl.SSLContext:
    """TLS to a server whose certificate nobody has signed; made once, for that takes longer than asking."""
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
    context.check_hostname, context.verify_mode = False, ssl.CERT_NONE
    return context


def ask(
    address: str,
    path: str = "/",
    method: str = "GET",
    headers: dict[str, str] | None = None,
    body: bytes = b"",
) -> Answer:
    """One request. A Host among the headers takes the place of the address's own."""
    parts = urlsplit(address)
    if parts.scheme == "https":
        connection: HTTPConnection = HTTPSConnection(parts.netloc, timeout=20, context=trusting())
    else:
        connection = HTTPConnection(parts.netloc, timeout=20)
    try:
        connection.request(method, path, body=body or None, headers=headers or {})
        came: HTTPResponse = connection.getresponse()
        text = b"" if came.status == 101 else came.read()
        names = {name.lower(): value for name, value in came.getheaders()}
        return Answer(came.status, names, text, came.headers.get_all("Set-Cookie") or [])
    finally:
        connection.close()
