"""What README.md shows must run, and what can be run must stand in README.md."""

import io
import re
import shlex
import tomllib
from pathlib import Path

import pytest

from tripplan.__main__ import main
from tripplan.commands.parser import COMMANDS, Command, CommandParser

ROOT = Path(__file__).resolve().parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
EXAMPLES = re.findall(r"^python -m tripplan (.+)$", README, re.MULTILINE)


def test_the_examples_of_the_readme_run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every command line shown ends with status 0, one after the other as somebody would paste them."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "demo_places").symlink_to(ROOT / "demo_places")
    assert len(EXAMPLES) >= len(COMMANDS)
    for example in EXAMPLES:
        out, err = io.StringIO(), io.StringIO()
        environment = {"TRIPPLAN_DATA": str(tmp_path / "data")}
        status = main(shlex.split(example), environment=environment, stdout=out, stderr=err)
        assert status == 0, f"{example}: {err.getvalue()}"
        assert out.getvalue().strip(), f"{example} printed nothing"
    assert (tmp_path / "outing.ics").read_bytes().startswith(b"BEGIN:VCALENDAR")


@pytest.mark.parametrize("command", COMMANDS, ids=[command.name for command in COMMANDS])
def test_every_command_and_option_stands_in_the_readme(command: Command) -> None:
    """A command or option that README.md does not mention would never be found."""
    name: str = command.name
    assert re.search(rf"`{name}[ `]", README), f"README.md lacks the command {name}"
    parser = CommandParser()
    command.options(parser)
    for group in command.shared:
        group(parser)
    for action in parser._actions:
        for option in action.option_strings:
            if option.startswith("--") and option != "--help":
                assert re.search(rf"`{option}[ `]", README), f"README.md lacks {name} {option}"


def test_every_page_has_a_picture_and_every_picture_is_there() -> None:
    """One screenshot a page, none missing, none left over."""
    pictures = set(re.findall(r"\]\((demo_places/screenshots/[a-z_]+\.png)\)", README))
    pages = {path.stem for path in (ROOT / "tripplan/screens/pages").glob("[a-z]*.py")}
    assert {Path(picture).stem for picture in pictures} == pages
    assert {str(p.relative_to(ROOT)) for p in (ROOT / "demo_places/screenshots").glob("*")} == pictures


def test_requirements_are_pinned_with_a_reason_each() -> None:
    """Every requirement has one exact version and says why it is there."""
    for name in ("requirements.txt", "tests/requirements.txt"):
        for line in (ROOT / name).read_text(encoding="utf-8").splitlines():
            if line and not line.startswith(("#", "-r ")):
                assert re.fullmatch(r"[\w.-]+==[\w.]+ +# \S.+", line), f"{name}: {line}"


def test_the_project_reads_its_dependencies_from_the_requirements() -> None:
    """There is one list of dependencies, not two."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    assert "dependencies" in project["project"]["dynamic"]
    assert project["tool"]["setuptools"]["dynamic"]["dependencies"]["file"] == ["requirements.txt"]


def test_an_installed_tripplan_has_every_package_and_the_demo() -> None:
    """What `pip install .` copies is every package there is, and the demo's files."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    there = {".".join(path.parent.relative_to(ROOT).parts) for path in (ROOT / "tripplan").rglob("*.py")}
    assert set(project["tool"]["setuptools"]["packages"]) == there | {"tripplan.demo_places"}
