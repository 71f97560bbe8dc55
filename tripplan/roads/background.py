"""Builds a region beside the screens, in a process of its own that goes on when a page is left."""

import os
import subprocess
import sys
from pathlib import Path

_ROOT = Path(__file__).resolve().parents[2]


class BackgroundBuilds:
    """The builds that this process has begun."""

    def __init__(self) -> None:
        self._begun: dict[str, subprocess.Popen[bytes]] = {}

    def begin(self, extract: Path, name: str, data_folder: Path) -> None:
        """Begin to build a region; how far it is tells `tripplan.roads.building.build_state`.

        Args:
            extract: the map file.
            name: what to call the region.
            data_folder: where the records lie.
        """
        words = ("roads", "build", str(extract.absolute()), "--name", name, "--data", str(data_folder))
        path = os.pathsep.join(filter(None, (str(_ROOT), os.environ.get("PYTHONPATH"))))
        self._begun[name] = subprocess.Popen(
            [sys.executable, "-m", "tripplan", *words],
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            env={**os.environ, "PYTHONPATH": path},
        )

    def going_on(self) -> tuple[str, ...]:
        """The names of those that are not done yet."""
        return tuple(sorted(name for name, process in self._begun.items() if process.poll() is None))

    def wait(self, seconds: float) -> None:
        """Wait until all of them are done.

        Raises:
            subprocess.TimeoutExpired: they take longer.
        """
        for process in self._begun.values():
            process.wait(seconds)
