"""The command line as such: help, version, completion, and words it does not know."""

import importlib
import os
import shlex
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.commands.conftest import NOON, Run
from tests.language.test_american_words import BANNED
from tripplan.commands.parser import options_class
from tripplan.commands.tree import COMMANDS, Command
from tripplan.records.copies.daily import back_up
from tripplan.records.opening import Which, open_records
from tripplan.version import __version__

ROOT = Path(__file__).resolve().parents[2]
NAMES = [command.name for command in COMMANDS]
SHOWN_ALONE = ("nearby", "roads build", "roads remove", "app")
"""Examples that need what a test of this kind has not: a map file with a region built from it, a browser."""


def all_of_them() -> Iterator[tuple[str, Command, str]]:
    """Every command and task, as it is typed, and the module where it is carried out."""
    for command in COMMANDS:
        if isinstance(command, Command):
            yield command.name, command, command.module or command.name
        else:
            for task in command.tasks:
                yield f"{command.name} {task.name}", task, command.module


ALL = list(all_of_them())


@pytest.mark.parametrize(("typed", "command", "module"), ALL, ids=[typed for typed, *_ in ALL])
def test_every_command_explains_its_options_with_examples(
    run: Run, monkeypatch: pytest.MonkeyPatch, typed: str, command: Command, module: str
) -> None:
    """Behind every name stands a module that runs; its help names every option and shows what to type.

    It says so in American words.
    """
    assert callable(importlib.import_module(f"tripplan.commands.{module}").run)
    monkeypatch.setenv("COLUMNS", "160")
    said = run(*typed.split(), "--help")
    assert (said.status, said.err) == (0, "")
    assert BANNED.findall(said.out) == []
    words = set(said.out.replace("/", " ").split())
    hints = options_class(command).__dataclass_fields__
    assert command.examples
    assert all(example.startswith(typed) for example in command.examples)
    assert "Examples:" in said.out
    options = {word for word in words if word.startswith("--")}
    assert len(options - {"--help"}) >= sum("option" in str(hint.type).casefold() for hint in hints.values())


def test_every_example_works(run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, data: Path) -> None:
    """Every example of the help ends well, one after the other as they stand there, and says something.

    An American family reads no word of another country, of mathematics or of the code; keys of JSON are none.
    """
    monkeypatch.chdir(tmp_path)
    (tmp_path / "demo_places").symlink_to(ROOT / "demo_places")
    back_up(open_records(data, Which.FAMILY, NOON).database, NOON.date())
    for typed, command, _ in ALL:
        for example in command.examples if typed not in SHOWN_ALONE else ():
            said = run(*shlex.split(example))
            assert said.status == 0, (example, said.err)
            assert said.out, example
            if not said.out.startswith(("{", "[")):
                assert BANNED.findall(said.out + said.err) == [], example


def test_help_comes_without_the_planning() -> None:
    """Asking for help loads neither the forms, nor numpy, nor the database."""
    code = (
        "import io, sys; from tripplan.__main__ import main; "
        "status = main(['--help'], stdout=io.StringIO()); "
        "print(status, sorted({'pydantic', 'numpy', 'sqlite3', 'babel'} & set(sys.modules)))"
    )
    result = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert result.stdout.strip() == "0 []"


def test_a_shell_completes_commands_and_options() -> None:
    """Asked by a shell how a line may go on, the program names what begins so."""

    def completed(line: str) -> set[str]:
        asked = {
            "_TRIPPLAN_COMPLETE": "complete_bash",
            "COMP_WORDS": line,
            "COMP_CWORD": str(line.count(" ")),
        }
        done = subprocess.run(
            [sys.executable, "-m", "tripplan"],
            capture_output=True,
            text=True,
            check=False,
            env={**os.environ, **asked, "PYTHONPATH": str(ROOT)},
        )
        return set(done.stdout.split())

    assert completed("tripplan comp") == {"compare"}
    assert completed("tripplan days --week") == {"--weekdays"}


def test_version_is_the_packages_own(run: Run) -> None:
    """`--version` prints the name and the version."""
    assert run("--version").out == f"tripplan {__version__}\n"


def test_no_command_shows_the_help_as_a_fault(run: Run) -> None:
    """Without a command nothing is done, and the commands are told."""
    said = run()
    assert (said.status, said.out) == (2, "")
    assert all(name in said.err for name in NAMES)


@pytest.mark.parametrize(
    "argv",
    [
        ("no-such-command",),
        ("compare", "--no-such-option"),
        ("compare", "--wh"),
        ("day", "ledgewing"),
        ("days", "--most", "0"),
        ("days", "--most", "many"),
        ("days", "--demo", "--own"),
        ("days", "--demo", "--worth", "full-house"),
        ("calendar", "ledgewing", "2026-12-08"),
        ("busy", "block", "Piano", "16:00", "17:00", "Tu", "--not-during", "2026-12-21"),
        ("holidays", "add", "Fair", "2027-09-17"),
        ("study",),
        ("schema", "car"),
    ],
    ids=" ".join,
)
def test_misuse_is_told_with_the_usage(run: Run, argv: tuple[str, ...]) -> None:
    """A wrong command line ends with 2 and the usage, and shortened options are not guessed at."""
    said = run(*argv)
    assert (said.status, said.out) == (2, "")
    assert "Usage: tripplan" in said.err


def test_misuse_shows_no_control_characters(run: Run) -> None:
    """What was typed cannot move the cursor when it is told back."""
    assert "\x1b" not in run("compare", "--\x1b[2J").err


def test_the_guide_is_read_topic_by_topic(run: Run) -> None:
    """Topics are listed and shown; the commands are told from the tree itself; an unknown one names them."""
    listed = run("help")
    assert all(topic in listed.out for topic in ("privacy", "roads", "commands"))
    assert run("help", "privacy").out.strip()
    commands = run("help", "commands").out
    assert all(typed in commands for typed, *_ in ALL)
    unknown = run("help", "weather")
    assert (unknown.status, unknown.out) == (2, "")
    assert "privacy" in unknown.err


@pytest.mark.parametrize("typed", ["days", "study add"])
def test_help_of_a_command_is_what_it_says_itself(run: Run, typed: str) -> None:
    """`help days` and `days --help` say the same, examples and all."""
    assert run("help", *typed.split()) == run(*typed.split(), "--help")


def test_help_of_what_is_unknown_names_what_is_known(run: Run) -> None:
    """A topic that is none is refused, with those there are."""
    said = run("help", "dragons")
    assert said.status == 2
    assert "dragons" in said.err
    assert "privacy" in said.err
