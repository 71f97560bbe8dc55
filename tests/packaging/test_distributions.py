"""What `pip install .` brings: the program with its guide and demo, and nothing besides."""

import shutil
import subprocess
import sys
import tarfile
from email.parser import Parser
from pathlib import Path
from zipfile import ZipFile

import pytest

from tests.packaging.license_table import ROOT

TEST_TOOLS = {"pytest", "hypothesis", "pypdf", "jsonschema", "vobject", "mypy", "ruff"}
# Only what this machine's Python says of itself, not of the project.
HARMLESS = "byte-compiling is disabled"


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with both distributions, what was said while building them, and the wheel unpacked."""
    folder = tmp_path_factory.mktemp("built")
    shutil.copytree(
        ROOT,
        folder / "checkout",
        ignore=shutil.ignore_patterns(".*", "node_modules", "__pycache__", "build", "*.egg-info"),
    )
    command = [sys.executable, "-m", "build", "--no-isolation", "-o", str(folder), str(folder / "checkout")]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    (folder / "said.txt").write_text(done.stdout + done.stderr, encoding="utf-8")
    assert done.returncode == 0, done.stdout[-2000:] + done.stderr[-2000:]
    with ZipFile(next(folder.glob("*.whl"))) as wheel:
        wheel.extractall(folder / "installed")
    return folder


def files_below(folder: Path, *patterns: str) -> set[str]:
    """Files of a folder by their path in it."""
    found = (
        path for pattern in patterns for path in folder.rglob(pattern) if "__pycache__" not in path.parts
    )
    return {str(path.relative_to(folder)) for path in found}


def test_building_says_no_warning(built: Path) -> None:
    """Nothing about missing, ambiguous or deprecated parts."""
    said = (built / "said.txt").read_text(encoding="utf-8").splitlines()
    assert not [line for line in said if "warn" in line.casefold() and HARMLESS not in line]


def test_the_wheel_holds_the_program_its_guide_and_its_demo_and_nothing_else(built: Path) -> None:
    """Every module and every file of data that the program reads, no test and no picture."""
    installed = built / "installed"
    program = files_below(ROOT / "tripplan", "*.py", "*.md", "*.csv", "py.typed") | {
        "nearby/requirements.txt",
        "roads/requirements.txt",
    }
    demo = {f"demo_places/{name}" for name in files_below(ROOT / "demo_places", "*.toml", "*.ics")}
    assert (
        files_below(installed / "tripplan", "*.*", "py.typed") - {"locked_requirements.txt"} == program | demo
    )
    assert {p.name.partition("-")[0] for p in installed.iterdir()} == {"tripplan"}


def test_the_source_distribution_holds_no_tests_and_no_pictures(built: Path) -> None:
    """It holds what building needs."""
    with tarfile.open(next(built.glob("*.tar.gz"))) as archive:
        names = [name.partition("/")[2] for name in archive.getnames()]
    assert {"pyproject.toml", "requirements.txt", "README.md", "tripplan/__main__.py"} <= set(names)
    assert not [name for name in names if name.startswith("tests") or name.endswith(".png")]


def test_the_program_requires_no_test_tool(built: Path) -> None:
    """Its metadata name what it runs with; reading maps and roads are extras."""
    text = next((built / "installed").glob("*.dist-info/METADATA")).read_text(encoding="utf-8")
    facts = Parser().parsestr(text)
    required = {line.partition("==")[0] for line in facts.get_all("Requires-Dist", [])}
    assert {"streamlit", "geopy", "pandas", "holidays", "icalendar"} <= required
    assert not required & TEST_TOOLS
    assert facts.get_all("Provides-Extra") == ["nearby", "roads"]


def test_the_installed_program_plans_the_demo(built: Path, tmp_path: Path) -> None:
    """Away from the checkout, the demo's comparison comes out of the unpacked wheel alone."""
    command = [sys.executable, "-m", "tripplan", "compare", "--demo", "--today", "2026-11-25", "--json"]
    environment = {
        "PYTHONPATH": str(built / "installed"),
        "TRIPPLAN_DATA": str(tmp_path),
        "PYTHONSAFEPATH": "1",
    }
    done = subprocess.run(command, capture_output=True, text=True, check=False, cwd=tmp_path, env=environment)
    assert done.returncode == 0, done.stderr
    assert '"total"' in done.stdout
