"""Which addresses may be asked: encrypted ones, or this computer, unless the parent allows more."""

import ipaddress
from urllib.parse import SplitResult, urlsplit

from tripplan.errors import CalendarServerTrouble

LONGEST = 1000
"""[characters]"""


def checked(text: str, *, plain_http: bool) -> str:
    """An address as typed, if it may be asked.

    Args:
        text: such as 'https://calendar.example.org/dav/'; 'https://' may be left out.
        plain_http: whether a connection without encryption is allowed beyond this computer.

    Returns:
        The address.

    Raises:
        CalendarServerTrouble: it may not be asked, or is none; says why in words.
    """
    typed = text.strip()
    if typed and "://" not in typed:
        typed = f"https://{typed}"
    if not typed or len(typed) > LONGEST or not all("!" <= letter <= "~" for letter in typed):
        raise CalendarServerTrouble("give the server's address, such as https://calendar.example.org/dav/")
    try:
        parts = urlsplit(typed)
        host, _ = parts.hostname, parts.port
    except ValueError:
        raise CalendarServerTrouble("this is no web address") from None
    if parts.scheme not in ("https", "http") or not host:
        raise CalendarServerTrouble("the address begins with https:// and names a server")
    if "@" in parts.netloc:
        raise CalendarServerTrouble("user name and password have fields of their own, not the address")
    if parts.query or parts.fragment:
        raise CalendarServerTrouble("leave out what follows ? or # in the address")
    if parts.scheme == "http" and not plain_http and not is_this_computer(host):
        raise CalendarServerTrouble(
            "http:// would send your password so that others can read it; use https://, or tick that you "
            "allow it inside your own home"
        )
    return typed


def is_this_computer(host: str) -> bool:
    """Whether a host is this computer itself (loopback)."""
    if host == "localhost":
        return True
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False


def origin(address: str) -> tuple[str, str, int]:
    """Scheme, host and port of an address (RFC 6454, section 4)."""
    parts: SplitResult = urlsplit(address)
    usual = 443 if parts.scheme == "https" else 80
    return parts.scheme, (parts.hostname or "").casefold(), parts.port or usual


def host_of(address: str) -> str:
    """The server's name, for sentences."""
    return urlsplit(address).netloc


def path_of(address: str) -> str:
    """What follows the server's name in an address."""
    return urlsplit(address).path
