"""A home network of the test's own, unseen by the machine: the test at one end, a phone at the other."""

import ctypes
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.running_app import ROOT

_HERE, _THERE = "10.213.0.1", "10.213.0.2"
ELSEWHERE_ON_LOOPBACK = "127.0.0.2"
"""An address that only this computer reaches, yet not the one at which it is answered itself."""
_NEW_NETWORK = 0x40000000  # CLONE_NEWNET of linux/sched.h


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
    """Two ends of a cable (veth), each in a namespace that holds nothing else; this thread is in one of them.

    The machine's own network stays as it is: a Chromium that sees it change gives up what it is loading.
    Where that is not allowed, another loopback address takes the place of the network.
    """
    if shutil.which("ip") is None or os.name != "posix" or os.geteuid() != 0:
        yield HomeNetwork(ELSEWHERE_ON_LOOPBACK, ())
        return
    here, there = f"home{os.getpid()}", f"phone{os.getpid()}"
    with ExitStack() as to_undo:
        for name in (here, there):
            _ip("netns", "add", name)
            to_undo.callback(_ip, "netns", "del", name)  # the cable goes with it
        _ip("-n", here, "link", "add", "cable", "type", "veth", "peer", "name", "cable", "netns", there)
        for name, address in ((here, _HERE), (there, _THERE)):
            _ip("-n", name, "addr", "add", f"{address}/30", "dev", "cable")
            _ip("-n", name, "link", "set", "cable", "up")
        _ip("-n", here, "link", "set", "lo", "up")
        to_undo.enter_context(_moved_to(Path("/run/netns") / here))
        yield HomeNetwork(_HERE, ("ip", "netns", "exec", there))


@contextmanager
def _moved_to(namespace: Path) -> Iterator[None]:
    """This thread, and what it starts, in another network."""
    with Path("/proc/thread-self/ns/net").open("rb") as own, namespace.open("rb") as other:
        _enter(other.fileno())
        try:
            yield
        finally:
            _enter(own.fileno())


def _enter(namespace: int) -> None:
    if ctypes.CDLL(None, use_errno=True).setns(namespace, _NEW_NETWORK):
        number = ctypes.get_errno()
        raise OSError(number, os.strerror(number))


def _ip(*words: str) -> None:
    command: Sequence[str] = ("ip", *words)
    subprocess.run(command, check=True, capture_output=True, timeout=20)
