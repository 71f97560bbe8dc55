"""The app in a process of its own, as its tests start it."""

import os
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from urllib.error import URLError

import pytest

ROOT = Path(__file__).resolve().parents[1]
START_SECONDS = 60


@dataclass
class RunningApp:
    """A running app.

    Attributes:
        address: where its pages are.
        outside: the file in which the server's guard notes addresses outside this computer.
        server: its process.
        log: the file with what the server says.
    """

    address: str
    outside: Path
    server: "subprocess.Popen[bytes]"
    log: Path

    def reached_outside(self) -> list[str]:
        """Every address outside this computer that the server tried to reach."""
        return self.outside.read_text(encoding="utf-8").split()


@contextmanager
def started_app(folder: Path, *options: str, **variables: str) -> Iterator[RunningApp]:
    """The app, watched, on a free port of this computer; its records lie in `data` within the folder.

    Args:
        folder: where it may write.
        options: further options of Streamlit, as `--server.address=0.0.0.0`.
        variables: further environment variables.
    """
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    outside = folder / "outside.log"
    environment = (
        os.environ | {"TRIPPLAN_DATA": str(folder / "data"), "TRIPPLAN_TODAY": "2026-11-25"} | variables
    )
    command = [
        sys.executable,
        str(Path(__file__).with_name("guarded_app.py")),
        str(outside),
        str(port),
        *options,
    ]
    with (folder / "server.log").open("wb") as log:
        server = subprocess.Popen(command, cwd=ROOT, env=environment, stdout=log, stderr=log)
    try:
        address = f"http://127.0.0.1:{port}"
        wait_until_healthy(address, server, folder / "server.log")
        yield RunningApp(address, outside, server, folder / "server.log")
    finally:
        server.terminate()
        server.wait(timeout=20)


def wait_until_healthy(address: str, server: subprocess.Popen[bytes], log: Path) -> None:
    """Wait until a server of pages answers; the test fails with its log where it does not."""
    deadline = time.monotonic() + START_SECONDS
    while time.monotonic() < deadline:
        if server.poll() is not None:
            pytest.fail(f"the app did not start: {log.read_text(encoding='utf-8')}")
        try:
            with urllib.request.urlopen(f"{address}/_stcore/health", timeout=2) as answer:
                if answer.status == 200:
                    return
        except (URLError, OSError):
            time.sleep(0.2)
    pytest.fail(f"the app was not ready after {START_SECONDS} s: {log.read_text(encoding='utf-8')}")
