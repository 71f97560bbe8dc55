"""What `pip install .` brings: the program with its guide and demo, and nothing besides."""

import os
import shutil
import signal
import socket
import subprocess
import sys
import tarfile
import time
import urllib.request
from contextlib import suppress
from email.message import Message
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
    program = files_below(
        ROOT / "tripplan", "*.py", "*.md", "*.csv", "*.ftl", "*.js", "*.npz", "py.typed"
    ) | {
        "app_server/settings.toml",
        "nearby/requirements.txt",
        "roads/requirements.txt",
    }
    demo = {f"demo_places/{name}" for name in files_below(ROOT / "demo_places", "*.toml", "*.ics")}
    there = files_below(installed / "tripplan", "*.*", "py.typed") - {"locked_requirements.txt"}
    assert there == program | demo
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


def test_the_screens_are_set_up_alike_however_they_are_started() -> None:
    """What the installed program starts with is what `streamlit run app.py` reads in a checkout."""
    checkout, package = ROOT / ".streamlit/config.toml", ROOT / "tripplan/app_server/settings.toml"
    assert checkout.read_bytes() == package.read_bytes()


def test_the_installed_program_opens_the_screens(built: Path, tmp_path: Path) -> None:
    """Away from the checkout, `app` serves the pages on this computer, with its guards, until it is ended."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    environment = {
        "PYTHONPATH": str(built / "installed"),
        "TRIPPLAN_DATA": str(tmp_path),
        "PYTHONSAFEPATH": "1",
        "HOME": str(tmp_path),
    }
    command = [sys.executable, "-m", "tripplan", "app", "--no-browser", "--port", str(port)]
    with (tmp_path / "said.txt").open("w") as said:
        program = subprocess.Popen(
            command, cwd=tmp_path, env=environment, stdout=said, stderr=said, start_new_session=True
        )
        try:
            headers = _headers(f"http://127.0.0.1:{port}/", program)
        finally:
            with suppress(ProcessLookupError):  # it has ended by itself, and says why
                os.killpg(program.pid, signal.SIGINT)
            program.wait(timeout=30)
    assert headers is not None, (tmp_path / "said.txt").read_text(encoding="utf-8")
    assert "frame-ancestors" in headers.get("Content-Security-Policy", "")


def _headers(address: str, program: subprocess.Popen[bytes]) -> Message | None:
    """What the server answers once it is there; None where it is not within a minute or ends before."""
    deadline = time.monotonic() + 60
    while time.monotonic() < deadline and program.poll() is None:
        try:
            with urllib.request.urlopen(address, timeout=5) as answer:
                headers: Message = answer.headers
                return headers
        except OSError:
            time.sleep(0.5)
    return None
