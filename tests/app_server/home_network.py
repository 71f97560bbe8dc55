"""A home network of the test's own: this computer at one end, a phone in an empty namespace at the other."""

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

from tests.running_app import ROOT

_NUMBER = os.getpid() % 250
_HERE, _THERE = f"10.213.{_NUMBER}.1", f"10.213.{_NUMBER}.2"
"""Two tests that run at once are in two networks."""
_ELSEWHERE_ON_LOOPBACK = "127.0.0.2"


@dataclass(frozen=True)
class HomeNetwork:
    """Where the app listens, and how a program is run on the other side.

    Attributes:
        address: of this computer.
        prefix: what is written before a command so that it runs there; empty where namespaces cannot be made.
    """

    address: str
    prefix: tuple[str, ...]

    def run(self, module: str, *arguments: str, given: str = "") -> str:
        """What a module of the tests prints when it runs on the other side."""
        command = [*self.prefix, sys.executable, "-m", module, *arguments]
        asked = subprocess.run(
            command, cwd=ROOT, input=given, capture_output=True, text=True, timeout=300, check=False
        )
        assert asked.returncode == 0, asked.stderr
        return asked.stdout


@contextmanager
def home_network() -> Iterator[HomeNetwork]:
    """Two ends of a cable (veth), one of them in a namespace that holds nothing else.

    Where that is not allowed, another loopback address takes the place of the network.
    """
    if shutil.which("ip") is None or os.name != "posix" or os.geteuid() != 0:
        yield HomeNetwork(_ELSEWHERE_ON_LOOPBACK, ())
        return
    name, cable = f"phone{os.getpid()}", f"tp{os.getpid()}"
    _ip("netns", "add", name)
    try:
        _ip("link", "add", f"{cable}a", "type", "veth", "peer", "name", f"{cable}b", "netns", name)
        _ip("addr", "add", f"{_HERE}/30", "dev", f"{cable}a")
        _ip("link", "set", f"{cable}a", "up")
        _ip("-n", name, "addr", "add", f"{_THERE}/30", "dev", f"{cable}b")
        _ip("-n", name, "link", "set", f"{cable}b", "up")
        yield HomeNetwork(_HERE, ("ip", "netns", "exec", name))
    finally:
        _ip("netns", "del", name)  # the cable goes with it


def _ip(*words: str) -> None:
    command: Sequence[str] = ("ip", *words)
    subprocess.run(command, check=True, capture_output=True, timeout=20)
