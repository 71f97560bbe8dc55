"""What is installed: pinned, with a reason and hashes, and no test tool in the program itself."""

import re
import tomllib
from pathlib import Path

import pytest

from tests.packaging.license_table import GUIDE, HEAD, LOCKED, ROOT, locked_versions, rows

TESTS_LOCKED = ROOT / "tests/locked_requirements.txt"
ALL_REQUIREMENTS = [
    ROOT / name
    for name in (
        "requirements.txt",
        "tripplan/nearby/requirements.txt",
        "tripplan/roads/requirements.txt",
        "tests/requirements.txt",
    )
]


def direct_pins(path: Path) -> dict[str, str]:
    """The exact version of every package that a file names itself, by normalized name (PEP 503)."""
    pins = re.findall(r"^([\w.-]+)==([\w.]+)", path.read_text(encoding="utf-8"), re.MULTILINE)
    return {re.sub(r"[-_.]+", "-", name).lower(): version for name, version in pins}


@pytest.mark.parametrize("path", ALL_REQUIREMENTS, ids=lambda path: str(path.relative_to(ROOT)))
def test_requirements_are_pinned_with_a_reason_each(path: Path) -> None:
    """Every requirement has one exact version and says why it is there."""
    lines = path.read_text(encoding="utf-8").splitlines()
    pinned = [line for line in lines if line and not line.startswith(("#", "-r "))]
    assert pinned
    for line in pinned:
        assert re.fullmatch(r"[\w.-]+==[\w.]+( ; [^#]+)? +# \S.+", line), line


def test_the_project_reads_its_dependencies_from_the_requirements() -> None:
    """There is one list of dependencies, not two, and no test tool stands in it."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    assert "dependencies" in project["project"]["dynamic"]
    assert project["tool"]["setuptools"]["dynamic"]["dependencies"]["file"] == ["requirements.txt"]
    program, tests = direct_pins(ROOT / "requirements.txt"), direct_pins(ROOT / "tests/requirements.txt")
    assert {"pytest", "hypothesis", "pypdf", "ruff", "mypy"} <= set(tests)
    assert not set(program) & set(tests)


def test_what_is_locked_agrees_with_what_is_required() -> None:
    """Both files of locked requirements hold every direct pin; `.ci/lock` makes them anew."""
    everything: dict[str, str] = {}
    for path in ALL_REQUIREMENTS:
        everything |= direct_pins(path)
    assert direct_pins(ROOT / "requirements.txt").items() <= locked_versions(LOCKED).items()
    assert everything.items() <= locked_versions(TESTS_LOCKED).items()
    assert locked_versions(LOCKED).items() <= locked_versions(TESTS_LOCKED).items()


@pytest.mark.parametrize("path", [LOCKED, TESTS_LOCKED], ids=lambda path: str(path.relative_to(ROOT)))
def test_every_locked_package_has_its_hashes(path: Path) -> None:
    """Each entry is one exact version with at least one SHA-256, and no address of a package index."""
    text = path.read_text(encoding="utf-8")
    entries = re.split(r"\n(?=[a-zA-Z])", text.strip())
    assert len(entries) > 50
    for entry in entries:
        assert re.fullmatch(r"[\w.-]+==[^\\]+(\\\n    --hash=sha256:[0-9a-f]{64} ?)+", entry), entry[:80]
    assert "://" not in text


def test_the_table_of_licenses_is_that_of_the_locked_packages() -> None:
    """Every package the program installs stands there with its license; those under the LGPL are named."""
    text = GUIDE.read_text(encoding="utf-8")
    table = text[text.index(HEAD) + len(HEAD) :]
    assert table == "".join(rows())
    under_lgpl = re.findall(r"^\| (\S+) \| \S+ \| LGPL", table, re.MULTILINE)
    assert under_lgpl
    for package in under_lgpl:
        assert f"**{package}**" in text
