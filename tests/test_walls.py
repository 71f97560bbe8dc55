"""The walls of the house: which room may use which, and what the planning may never touch."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[1] / "tripplan"

INSIDE = {"calendar_server", "records", "roads", "files", "planning"}
MAY_USE = {
    "guide": {"guide"},
    "planning": {"planning"},
    "files": {"files", "planning"},
    "records": {"records", "planning"},
    "roads": {"roads", "planning"},
    "calendar_server": {"calendar_server", "records", "files", "planning"},
    "app_server": {"app_server"},
    "commands": {"commands", "services", "guide", "app_server", *INSIDE},
    "screens": {"screens", "services", "guide", "app_server", *INSIDE},
}
SHARED = {"errors", "regular_file", "version"}

OUTSIDE_WORLD = {
    "streamlit", "altair", "pandas", "sqlite3", "socket", "ssl", "urllib", "http", "requests", "subprocess",
    "os", "pathlib", "shutil", "tempfile", "time", "random", "uuid", "secrets", "platformdirs", "threading",
}  # fmt: skip
CLOCKS = {"today", "now", "utcnow"}


def modules(room: str) -> list[Path]:
    """Every Python file of a room."""
    return sorted((PACKAGE / room).rglob("*.py"))


def imported(path: Path) -> Iterator[str]:
    """The dotted names a file imports, wherever in the file they stand."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            module = node.module or "."
            if module == "tripplan":
                yield from (f"tripplan.{alias.name}" for alias in node.names)
            else:
                yield module


@pytest.mark.parametrize("room", sorted(MAY_USE))
def test_arrows_point_one_way(room: str) -> None:
    """Screens and commands use records and files, these use planning, planning uses nobody."""
    allowed = MAY_USE[room] | SHARED
    assert modules(room), f"no files in {room}: the wall would stand round nothing"
    for path in modules(room):
        for name in imported(path):
            assert not name.startswith("."), f"{path.name} imports by a relative name"
            if name.startswith("tripplan."):
                assert name.split(".")[1] in allowed, f"{path.relative_to(PACKAGE)} imports {name}"


@pytest.mark.parametrize("path", modules("planning"), ids=lambda path: str(path.relative_to(PACKAGE)))
def test_planning_touches_no_screen_file_network_or_clock(path: Path) -> None:
    """The planning imports nothing of the outside world, opens no file and asks no clock."""
    for name in imported(path):
        assert name.split(".")[0] not in OUTSIDE_WORLD, f"imports {name}"
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            called = node.func
            assert not (isinstance(called, ast.Name) and called.id in {"open", "print", "input"})
            assert not (isinstance(called, ast.Attribute) and called.attr in CLOCKS)


def test_planning_pulls_in_no_screen_and_no_database() -> None:
    """Even through its libraries, importing the planning loads neither Streamlit nor SQLite."""
    code = "import sys, tripplan.planning.compare.choose; print(sorted({'streamlit', 'sqlite3'} & set(sys.modules)))"
    result = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert result.stdout.strip() == "[]"


def test_time_zones_come_from_the_pinned_package() -> None:
    """Zone rules are tzdata's own, not those of the operating system, which may be a year older."""
    code = "import tripplan, zoneinfo; print(zoneinfo.TZPATH)"
    result = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert result.stdout.strip() == "()"
