"""What README.md and the guide show must run, and what can be run must stand in the guide."""

import io
import re
import shlex
from pathlib import Path
from typing import get_args, get_type_hints

import pytest

from tripplan.__main__ import main
from tripplan.commands.parser import options_class
from tripplan.commands.tree import COMMANDS, Command, Group
from tripplan.guide import topics

ROOT = Path(__file__).resolve().parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
COMMAND_LINE = (ROOT / "tripplan/guide/commands.md").read_text(encoding="utf-8")
PAGES = (ROOT / "tripplan/guide/pages.md").read_text(encoding="utf-8")
EXAMPLES = re.findall(r"^python -m tripplan (.+)$", README + COMMAND_LINE, re.MULTILINE)


def test_the_examples_run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
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
def test_every_command_and_option_stands_in_the_guide(command: Command | Group) -> None:
    """A command or option that the guide does not mention would never be found."""
    name: str = command.name
    assert re.search(rf"`{name}[ `]", COMMAND_LINE), f"the guide lacks the command {name}"
    for task in (command,) if isinstance(command, Command) else command.tasks:
        for hint in get_type_hints(options_class(task), include_extras=True).values():
            # The first name of an option is its default in the annotation; an argument has none.
            option = str(getattr(get_args(hint)[-1], "default", "")).partition("/")[0]
            if option.startswith("--"):
                assert re.search(rf"`{option}[ `]", COMMAND_LINE), f"the guide lacks {name} {option}"


def test_every_page_has_a_picture_and_every_picture_is_there() -> None:
    """One screenshot a page but the guide's own, and one of a place; none missing, none left over."""
    pictures = set(re.findall(r"\]\(\.\./\.\./(demo_places/screenshots/[a-z_]+\.png)\)", PAGES))
    files = (ROOT / "tripplan/screens/pages").glob("[a-z]*.py")
    pages = {*(path.stem for path in files), "cupboard", "place"}
    assert {Path(picture).stem for picture in pictures} == pages - {"guide"}
    assert {str(p.relative_to(ROOT)) for p in (ROOT / "demo_places/screenshots").glob("*")} == pictures


def test_the_readme_is_read_in_five_minutes() -> None:
    """It has at most 900 words, and every file it points to is there."""
    assert len(README.split()) <= 900
    for target in re.findall(r"\]\(([^)#]+)\)", README):
        assert (ROOT / target).is_file(), target


def test_the_readme_points_to_every_topic_of_the_guide() -> None:
    """A topic that nobody finds might as well not be there."""
    for topic in topics():
        assert f"(tripplan/guide/{topic}.md)" in README, topic
