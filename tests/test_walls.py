"""The walls of the house: which room may use which, and what the planning may never touch."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[1] / "tripplan"

BELOW = {"planning", "documents", "language", "values"}
INSIDE = {"calendar_server", "forecasts", "records", "roads", "files", "reading", "nearby", *BELOW}
MAY_USE = {
    "values": {"values"},
    "language": {"language", "values"},
    "documents": {"documents", "language", "values"},
    "planning": BELOW,
    "records": {"records", "documents", "language", "values"},
    "files": {"files", *BELOW},
    "roads": {"roads", *BELOW},
    "calendar_server": {"calendar_server", "records", "files", *BELOW},
    "guide": {"guide"},
    "forecasts": {"forecasts", "calendar_server", *BELOW},
    "reading": {"reading", "documents", "values"},
    "nearby": {"nearby", "reading", *BELOW},
    "app_server": {"app_server"},
    "commands": {"commands", "services", "guide", "app_server", *INSIDE},
    "screens": {"screens", "services", "guide", "app_server", *INSIDE},
}
PURE = ("values", "documents", "planning")
SHARED = {"clock", "errors", "regular_file", "version"}

OUTSIDE_WORLD = {
    "streamlit", "altair", "pandas", "sqlite3", "socket", "ssl", "urllib", "http", "requests", "subprocess",
    "os", "pathlib", "shutil", "tempfile", "time", "random", "secrets", "platformdirs", "threading",
}  # fmt: skip
RANDOM_IDS = {"uuid1", "uuid4", "uuid6", "uuid7"}
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


def imported_names(path: Path) -> Iterator[str]:
    """The dotted names of what a file imports out of modules, which may be modules themselves."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom):
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


@pytest.mark.parametrize("room", sorted(MAY_USE))
def test_arrows_point_one_way(room: str) -> None:
    """Screens and commands use files, files use planning, planning and records use documents."""
    allowed = MAY_USE[room] | SHARED
    assert modules(room), f"no files in {room}: the wall would stand round nothing"
    for path in modules(room):
        for name in imported(path):
            assert not name.startswith("."), f"{path.name} imports by a relative name"
            if name.startswith("tripplan."):
                assert name.split(".")[1] in allowed, f"{path.relative_to(PACKAGE)} imports {name}"


def module_name(path: Path) -> str:
    """The dotted name of a file of the package."""
    return ".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts).removesuffix(".__init__")


def test_modules_make_no_circle() -> None:
    """No module imports another that, by whatever detour, imports it; not even for its types alone."""
    used: dict[str, set[str]] = {}
    files = {module_name(path): path for path in PACKAGE.rglob("*.py")}
    for name, path in files.items():
        targets = set(imported(path)) | set(imported_names(path))
        used[name] = {target for target in targets if target in files and target != name}
    tuple(TopologicalSorter(used).static_order())


def test_no_folder_is_crowded() -> None:
    """A folder holds at most fifteen loose modules; what is more belongs into rooms."""
    for folder in {path.parent for path in PACKAGE.rglob("*.py")}:
        loose = [path.name for path in folder.glob("*.py") if path.name != "__init__.py"]
        assert len(loose) <= 15, f"{folder.relative_to(PACKAGE)}: {len(loose)}"


def rooms_used(floor: str) -> dict[str, set[str]]:
    """For each folder and loose file of a floor, which others of the same floor it imports."""
    used: dict[str, set[str]] = {}
    for path in modules(floor):
        room = path.relative_to(PACKAGE / floor).parts[0].removesuffix(".py")
        others = (name.split(".") for name in imported(path) if name.startswith(f"tripplan.{floor}."))
        used.setdefault(room, set()).update(name[2] for name in others if name[2] != room)
    return used


FLOORS = ["values", "documents", "planning", "records", "files", "reading", "roads", "calendar_server"]


@pytest.mark.parametrize("floor", FLOORS)
def test_rooms_make_no_circle(floor: str) -> None:
    """No room of a floor uses another that, by whatever detour, uses it."""
    tuple(TopologicalSorter(rooms_used(floor)).static_order())


@pytest.mark.parametrize(
    "path",
    [path for room in PURE for path in modules(room)],
    ids=lambda path: str(path.relative_to(PACKAGE)),
)
def test_planning_touches_no_screen_file_network_or_clock(path: Path) -> None:
    """Planning, documents and values import nothing of the outside world, open no file and ask no clock."""
    for name in imported(path):
        assert name.split(".")[0] not in OUTSIDE_WORLD, f"imports {name}"
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module == "uuid":
            assert not {alias.name for alias in node.names} & RANDOM_IDS
        if isinstance(node, ast.Call):
            called = node.func
            assert not (isinstance(called, ast.Name) and called.id in {"open", "print", "input"})
            assert not (isinstance(called, ast.Attribute) and called.attr in CLOCKS)


def loaded_with(module: str) -> set[str]:
    """The modules that importing one in a fresh interpreter loads."""
    code = f"import sys, {module}; print(*sys.modules)"
    result = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    return set(result.stdout.split())


def test_planning_pulls_in_no_screen_and_no_database() -> None:
    """Even through its libraries, importing the planning loads neither Streamlit nor SQLite."""
    assert not loaded_with("tripplan.planning.compare.choose") & {"streamlit", "sqlite3"}


@pytest.mark.parametrize("module", ["tripplan.records.opening", "tripplan.records.export"])
def test_opening_the_records_loads_no_calculator(module: str) -> None:
    """The store needs the forms only: no module of the planning, and neither NumPy nor SciPy."""
    loaded = loaded_with(module)
    assert "tripplan.documents.family.household" in loaded
    assert not {name for name in loaded if name.startswith(("tripplan.planning", "numpy", "scipy"))}


def test_time_zones_come_from_the_pinned_package() -> None:
    """Zone rules are tzdata's own, not those of the operating system, which may be a year older."""
    code = "import tripplan, zoneinfo; print(zoneinfo.TZPATH)"
    result = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert result.stdout.strip() == "()"
