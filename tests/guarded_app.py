"""Runs the app with a guard that writes down every address the server tries to reach outside this computer.

Usage: python guarded_app.py LOG_FILE PORT [OPTION OF STREAMLIT...]; the environment variable APP_SCRIPT names
another script than app.py.
"""

import ipaddress
import os
import socket
import sys
from pathlib import Path
from typing import Any

import streamlit.web.cli

LOG = Path(sys.argv[1])


def is_loopback(host: str) -> bool:
    """Whether a host name or address means this computer."""
    if host in ("localhost", ""):
        return True
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False


def note(address: Any) -> None:
    """Write an outside address down; Unix sockets and pairs have no host."""
    if isinstance(address, tuple) and not is_loopback(str(address[0])):
        with LOG.open("a", encoding="utf-8") as log:
            log.write(f"{address[0]}\n")


class GuardedSocket(socket.socket):
    """A socket that notes where it connects and sends to."""

    def connect(self, address: Any) -> None:
        """As socket.connect."""
        note(address)
        super().connect(address)

    def connect_ex(self, address: Any) -> int:
        """As socket.connect_ex."""
        note(address)
        return super().connect_ex(address)

    def sendto(self, *arguments: Any) -> int:
        """As socket.sendto; the address comes last."""
        note(arguments[-1])
        return super().sendto(*arguments)


_look_up = socket.getaddrinfo


def guarded_look_up(host: Any, *rest: Any, **options: Any) -> Any:
    """As socket.getaddrinfo; looking a name up already tells somebody."""
    if host is not None:
        note((host.decode() if isinstance(host, bytes) else host,))
    return _look_up(host, *rest, **options)


if __name__ == "__main__":
    socket.socket = GuardedSocket  # type: ignore[misc]
    socket.getaddrinfo = guarded_look_up
    LOG.touch()
    root = Path(__file__).resolve().parents[1]
    sys.path.insert(0, str(root))
    from tests.pseudo import speak_pseudo_to_who_asks  # the package is found only now

    speak_pseudo_to_who_asks()
    options = ["--server.headless=true", f"--server.port={int(sys.argv[2])}", *sys.argv[3:]]
    sys.argv = ["streamlit", "run", str(root / os.environ.get("APP_SCRIPT", "app.py")), *options]
    streamlit.web.cli.main()
