"""A second calendar server, Xandikos, started on loopback for the tests; by other people than the first."""

import base64
import hashlib
import importlib.util
import shutil
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tests.calendar_server.certificates import self_signed
from tests.calendar_server.radicale_server import PASSWORD, USER, Running, free_port, wait_until_up
from tests.missing import not_installed


@contextmanager
def xandikos(folder: Path) -> Iterator[Running]:
    """A server with one user; it asks for passwords over encrypted connections only.

    Args:
        folder: for its files.
    """
    if importlib.util.find_spec("xandikos") is None:
        not_installed("Xandikos is not installed; it is in tests/requirements.txt")
    port = free_port()
    digest = base64.b64encode(hashlib.sha1(PASSWORD.encode(), usedforsecurity=False).digest()).decode()
    (folder / "users").write_text(f"{USER}:{{SHA}}{digest}\n", encoding="utf-8")
    certificate = self_signed(folder / "certificate")
    own = folder / "state" / "certs"
    own.mkdir(parents=True)
    shutil.copyfile(certificate.public, own / "selfsigned.crt")
    shutil.copyfile(certificate.private, own / "selfsigned.key")
    options = {
        "directory": str(folder / "calendars"),
        "current-user-principal": f"/{USER}/",
        "listen-address": "127.0.0.1",
        "port": str(port),
        "state-dir": str(folder / "state"),
        "htpasswd": str(folder / "users"),
    }
    command = [sys.executable, "-m", "xandikos", "serve", *(f"--{k}={v}" for k, v in options.items())]
    command += ["--autocert", "--defaults", "--no-detect-systemd"]
    with (folder / "log").open("wb") as log:
        server = subprocess.Popen(command, stdout=log, stderr=log)
        try:
            running = Running(f"https://127.0.0.1:{port}/", folder / "calendars", certificate)
            wait_until_up(running, server, folder / "log")
            yield running
        finally:
            server.terminate()
            server.wait(timeout=10)
