"""The command line as such: help, version, and words it does not know."""

import importlib
import subprocess
import sys

import pytest

from tests.commands.conftest import Run
from tripplan.commands.parser import COMMANDS, Command, CommandParser
from tripplan.version import __version__

NAMES = [command.name for command in COMMANDS]


@pytest.mark.parametrize("command", COMMANDS, ids=NAMES)
def test_every_command_can_be_carried_out(command: Command) -> None:
    """Behind every name stands a module that runs."""
    assert callable(importlib.import_module(f"tripplan.commands.{command.module}").run)


@pytest.mark.parametrize("command", COMMANDS, ids=NAMES)
def test_every_command_explains_all_its_options(run: Run, command: Command) -> None:
    """Help goes to the output, ends well, and says something about every option."""
    parser = CommandParser()
    for add in (command.options, *command.shared):
        add(parser)
    said = run(command.name, "--help")
    assert (said.status, said.err) == (0, "")
    for action in parser._actions:
        assert action.help
        assert all(option in said.out for option in action.option_strings)


def test_help_comes_without_the_planning() -> None:
    """Asking for help loads neither the forms, nor numpy, nor the database."""
    code = (
        "import io, sys; from tripplan.__main__ import main; "
        "status = main(['--help'], stdout=io.StringIO()); "
        "print(status, sorted({'pydantic', 'numpy', 'sqlite3', 'babel'} & set(sys.modules)))"
    )
    result = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert result.stdout.strip() == "0 []"


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
        ("calendar", "ledgewing", "2026-12-08"),
        ("schema", "car"),
    ],
    ids=" ".join,
)
def test_misuse_is_told_with_the_usage(run: Run, argv: tuple[str, ...]) -> None:
    """A wrong command line ends with 2 and the usage, and shortened options are not guessed at."""
    said = run(*argv)
    assert (said.status, said.out) == (2, "")
    assert "usage: tripplan" in said.err


def test_misuse_shows_no_control_characters(run: Run) -> None:
    """What was typed cannot move the cursor when it is told back."""
    assert "\x1b" not in run("compare", "--\x1b[2J").err
