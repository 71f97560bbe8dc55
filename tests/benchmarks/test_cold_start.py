"""How long commands take from nothing, against the bare import of the libraries that every plan needs."""

import os
import subprocess
import sys
import timeit
from pathlib import Path

import pytest

from tests.conftest import ROOT

LIBRARIES = ("-c", "import geopy, holidays, icalendar")
TODAY = ("--today", "2026-11-25")
COMMANDS = {
    "--help": ("--help",),
    "check": ("check", "demo_places/places/ledgewing.toml", *TODAY),
    "schema": ("schema", "place"),
    "roads list": ("roads", "list"),
    "compare --demo": ("compare", "--demo", *TODAY),
}


def test_commands_from_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each command ends well; its time is printed as a ratio to the import, both the shorter of two."""
    environment = {**os.environ, "TRIPPLAN_DATA": str(tmp_path)}

    def seconds(*words: str) -> float:
        def once() -> None:
            subprocess.run(
                [sys.executable, *words], cwd=ROOT, env=environment, check=True, stdout=subprocess.DEVNULL
            )

        once()  # fills the caches of the disk, and the demo's records
        return min(timeit.repeat(once, number=1, repeat=2))

    bare = seconds(*LIBRARIES)
    told = [f"{name} {seconds('-m', 'tripplan', *words) / bare:.1f}" for name, words in COMMANDS.items()]
    with capsys.disabled():
        print(f"\ncold starts against importing geopy, holidays and icalendar: {', '.join(told)}")  # noqa: T201


@pytest.mark.parametrize("name", ["check", "schema"])
def test_what_plans_nothing_loads_no_planning(tmp_path: Path, name: str) -> None:
    """Neither arrays nor distances nor holidays are loaded to look at a card."""
    code = (
        "import io, sys; from tripplan.__main__ import main; "
        f"main({list(COMMANDS[name])!r}, stdout=io.StringIO()); "
        "print(sorted({'numpy', 'geopy', 'holidays', 'icalendar', 'sqlite3'} & set(sys.modules)))"
    )
    environment = {**os.environ, "TRIPPLAN_DATA": str(tmp_path)}
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, env=environment, check=True, capture_output=True, text=True
    )
    assert done.stdout.strip() == "[]"
