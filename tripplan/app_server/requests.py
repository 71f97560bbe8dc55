"""What a browser says about where a request comes from, and whether that is this app itself."""

import ipaddress
from urllib.parse import urlsplit

from starlette.datastructures import Headers
from starlette.types import Scope

LOOPBACK_NAMES = frozenset({"localhost"})
_OWN_SITES = frozenset({"same-origin", "none"})
"""Values of Sec-Fetch-Site that a page of another site cannot cause (W3C, Fetch Metadata, section 2.3)."""


def host_name(headers: Headers) -> str | None:
    """The name or address in the one Host header, without its port; None where there is none, or not one."""
    hosts = headers.getlist("host")
    if len(hosts) != 1:
        return None
    try:
        parts = urlsplit(f"//{hosts[0]}")
        _ = parts.port  # a port that is no number makes the whole unreadable
    except ValueError:
        return None
    if parts.netloc != hosts[0] or "@" in parts.netloc or not parts.hostname:
        return None
    return parts.hostname


def address_in(name: str) -> ipaddress.IPv4Address | ipaddress.IPv6Address | None:
    """The address that a Host header spells out in figures; None for a name."""
    try:
        return ipaddress.ip_address(name)
    except ValueError:
        return None


def is_this_computer(name: str) -> bool:
    """Whether a Host header means this computer, by a name or address that nobody else can point here."""
    address = address_in(name)
    return name in LOOPBACK_NAMES if address is None else address.is_loopback


def comes_from_elsewhere(scope: Scope, headers: Headers) -> bool:
    """Whether a page of another site, another port or another scheme caused a request.

    An Origin is compared as a whole: scheme, name and port (RFC 6454, section 5). Browsers send one with
    every websocket and with every request that changes something. A page that merely embeds something says
    so in Sec-Fetch-Site; only a link that opens the app in a window of its own may do that.
    """
    origin = headers.get("origin")
    if origin is not None:
        scheme = "https" if scope["scheme"] in ("https", "wss") else "http"
        return origin.lower() != f"{scheme}://{headers['host'].lower()}"
    if headers.get("sec-fetch-site", "none") in _OWN_SITES:
        return False
    return (headers.get("sec-fetch-mode"), headers.get("sec-fetch-dest")) != ("navigate", "document")
