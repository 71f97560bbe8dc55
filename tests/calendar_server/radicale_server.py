"""A real calendar server, Radicale, started on loopback for the tests."""

import importlib.util
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import requests

from tests.calendar_server.certificates import Certificate
from tests.missing import not_installed

USER, PASSWORD = "home", "only for tests"
_WITHIN_SECONDS = 20


@dataclass(frozen=True)
class Running:
    """A server that is up.

    Attributes:
        address: where it listens.
        folder: where it keeps its calendars.
        certificate: of its own, where it is spoken with over an encrypted connection.
    """

    address: str
    folder: Path
    certificate: Certificate | None = None

    def make_calendar(self, name: str, kinds: tuple[str, ...] = ("VEVENT", "VTODO")) -> str:
        """A new calendar; its address."""
        address = f"{self.address}{USER}/{name}/"
        set_ = "".join(f'<C:comp name="{kind}"/>' for kind in kinds)
        body = (
            '<?xml version="1.0"?><C:mkcalendar xmlns:D="DAV:" xmlns:C="urn:ietf:params:xml:ns:caldav">'
            f"<D:set><D:prop><D:displayname>{name.title()}</D:displayname>"
            f"<C:supported-calendar-component-set>{set_}</C:supported-calendar-component-set>"
            "</D:prop></D:set></C:mkcalendar>"
        )
        self.ask("MKCALENDAR", address, body).raise_for_status()
        return address

    def ask(self, method: str, address: str, body: str = "", **headers: str) -> requests.Response:
        """What another program of the family would ask or tell."""
        with requests.Session() as session:
            session.trust_env = False
            session.verify = True if self.certificate is None else str(self.certificate.public)
            return session.request(
                method,
                address,
                data=body.encode(),
                headers={name.replace("_", "-"): value for name, value in headers.items()},
                auth=(USER, PASSWORD),
                timeout=10,
            )

    def files(self, calendar: str) -> dict[str, str]:
        """What lies in a calendar, by file name."""
        folder = self.folder / "collection-root" / calendar.removeprefix(self.address).strip("/")
        return {file.name: file.read_text(encoding="utf-8") for file in sorted(folder.glob("*.ics"))}


def free_port() -> int:
    """A port on loopback that nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


@contextmanager
def radicale(folder: Path, certificate: Certificate | None = None) -> Iterator[Running]:
    """A server with one user; it ends with the block.

    Args:
        folder: for its files.
        certificate: its own, for encrypted connections and no others; plain ones where left out.
    """
    if importlib.util.find_spec("radicale") is None:
        not_installed("Radicale is not installed; it is in tests/requirements.txt")
    port = free_port()
    users = folder / "users"
    users.write_text(f"{USER}:{PASSWORD}\n", encoding="utf-8")
    options = {
        "server-hosts": f"127.0.0.1:{port}",
        "auth-type": "htpasswd",
        "auth-htpasswd-filename": str(users),
        "auth-htpasswd-encryption": "plain",
        "auth-delay": "0",
        "storage-filesystem-folder": str(folder / "calendars"),
        "logging-level": "warning",
    }
    if certificate is not None:
        options |= {"server-certificate": str(certificate.public), "server-key": str(certificate.private)}
    command = [sys.executable, "-m", "radicale", "--config", "", *(f"--{k}={v}" for k, v in options.items())]
    if certificate is not None:
        command.append("--server-ssl")
    with (folder / "log").open("wb") as log:
        server = subprocess.Popen(command, stdout=log, stderr=log)
        try:
            scheme = "http" if certificate is None else "https"
            running = Running(f"{scheme}://127.0.0.1:{port}/", folder / "calendars", certificate)
            wait_until_up(running, server, folder / "log")
            yield running
        finally:
            server.terminate()
            server.wait(timeout=10)


def wait_until_up(running: Running, server: "subprocess.Popen[bytes]", log: Path) -> None:
    """Wait until a server answers.

    Raises:
        RuntimeError: it has ended, or does not answer in time.
    """
    deadline = time.monotonic() + _WITHIN_SECONDS
    while time.monotonic() < deadline:
        if server.poll() is not None:
            break
        try:
            running.ask("OPTIONS", running.address)
        except (requests.ConnectionError, OSError):  # or its certificate is not made yet
            time.sleep(0.05)
        else:
            return
    raise RuntimeError(f"the calendar server did not start: {log.read_text(encoding='utf-8')}")
