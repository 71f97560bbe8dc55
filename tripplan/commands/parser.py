"""The command line as Typer reads it, made from the tree of commands and the dataclasses of their options."""

import inspect
import io
from collections.abc import Callable, Iterator, Sequence
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import MISSING, Field, dataclass, fields
from importlib import import_module
from typing import Annotated, Any, TextIO, get_args, get_type_hints

import typer
from typer.core import TyperCommand

from tripplan.commands.options.shared import BETWEEN_WORDS
from tripplan.commands.tree import COMMANDS, Command, Group
from tripplan.values.plain_text import lines
from tripplan.version import __version__

_EXIT_STATUS = """\
Options follow the command. Dates read like 2026-12-08. A place is its id or its name.

Exit status 0: done. 1: the answer is no; nothing can be done, or something is refused. 2: bad input; every
fault is told, nothing was changed."""

COMPLETION_VARIABLE = "_TRIPPLAN_COMPLETE"
"""By which a shell asks how a command line may go on."""


@dataclass(frozen=True)
class Asked:
    """What a command line asks for.

    Attributes:
        module: where it is carried out.
        task: the task that is meant; empty for a command without tasks.
        options: an instance of the command's class of options.
    """

    module: str
    task: str
    options: Any


def parse(argv: Sequence[str], out: TextIO, err: TextIO, *, complete: bool = False) -> Asked | int:
    """Read a command line.

    Args:
        argv: the words after the program's name.
        out: where help goes.
        err: where faults go.
        complete: whether a shell asks how a line may go on.

    Returns:
        What is asked for; the exit status where nothing is left to do.
    """
    asked: list[Asked] = []
    named = [one for one in COMMANDS if one.name == next(iter(argv), "")]
    app = application(COMMANDS if complete else named or COMMANDS, asked.append)
    told, faults = io.StringIO(), io.StringIO()
    status = 0
    with redirect_stdout(told), redirect_stderr(faults):
        try:
            typer.main.get_command(app).main(list(argv) or ["--help"], prog_name="tripplan")
        except SystemExit as end:
            status = end.code if isinstance(end.code, int) else 2
    if not argv and not complete:
        err.write(told.getvalue())
        return 2
    out.write(told.getvalue())
    if faults.getvalue():
        err.write(f"{lines(faults.getvalue())}\n")
    return asked[0] if asked else status


def application(commands: Sequence[Command | Group], ask: Callable[[Asked], None]) -> typer.Typer:
    """The command line of some commands.

    Args:
        commands: those that can be named.
        ask: told what a command line asks for.
    """
    app = typer.Typer(epilog=_EXIT_STATUS, context_settings={"help_option_names": ["-h", "--help"]})
    app.callback()(_program)
    for command in commands:
        if isinstance(command, Command):
            _add(app, command, command.module or command.name, "", ask)
            continue
        below = typer.Typer()
        for task in command.tasks:
            _add(below, task, command.module, task.name, ask)
        guide = command.guide.replace("\n", " ")
        app.add_typer(below, name=command.name, help=_sentence(command.help), epilog=guide)
    return app


def options_class(command: Command) -> type[Any]:
    """The class of a command's options."""
    module, name = command.options.split(".")
    found: type[Any] = getattr(import_module(f"tripplan.commands.options.{module}"), name)
    return found


def _say_version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"tripplan {__version__}")
        raise typer.Exit


def _program(
    version: Annotated[
        bool, typer.Option("--version", callback=_say_version, is_eager=True, help="print the version")
    ] = False,
) -> None:
    """Plan and price family outings: drive, tickets, naps, crowds and total cost."""


def _add(app: typer.Typer, command: Command, module: str, task: str, ask: Callable[[Asked], None]) -> None:
    kind = options_class(command)
    hints = get_type_hints(kind, include_extras=True)

    def carry_out(**given: object) -> None:
        ask(Asked(module, task, kind(**given)))

    carry_out.__signature__ = inspect.Signature(  # type: ignore[attr-defined]
        [
            inspect.Parameter(
                one.name, inspect.Parameter.KEYWORD_ONLY, default=_default(one), annotation=hints[one.name]
            )
            for one in fields(kind)
        ]
    )
    carry_out.__annotations__ = {one.name: hints[one.name] for one in fields(kind)}
    reader = type("Reader", (_ManyWords,), {"several": _several(hints)})
    guide = command.guide.replace("\n", " ")
    examples = (f"tripplan {example}" for example in command.examples)
    epilog = "\n\n".join([guide, "Examples:", *examples]).strip()
    app.command(command.name, cls=reader, help=_sentence(command.help), epilog=epilog)(carry_out)


def _default(one: Field[Any]) -> object:
    if one.default_factory is not MISSING:
        return one.default_factory()
    return inspect.Parameter.empty if one.default is MISSING else one.default


def _sentence(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}."


def _several(hints: dict[str, Any]) -> frozenset[str]:
    """The options that take all words up to the next option."""
    found = (info for hint in hints.values() for info in get_args(hint)[1:])
    return frozenset(
        name
        for info in found
        if getattr(info, "parser", None) is not None and info.parser.__name__ in ("words", "dates_said")
        for name in (info.default, *(info.param_decls or ()))  # an option's first name stands there
    )


_Context = Any
"""Typer's own, which it does not export."""


class _ManyWords(TyperCommand):
    """A command of which some options take several words: they reach the parser as one."""

    several: frozenset[str] = frozenset()

    def parse_args(self, ctx: _Context, args: list[str]) -> list[str]:
        """Read the words behind the command."""
        return super().parse_args(ctx, list(self._joined(args)))

    def _joined(self, args: Sequence[str]) -> Iterator[str]:
        left = list(args)
        while left:
            word = left.pop(0)
            yield word
            if word == "--":
                yield from left
                return
            if word in self.several:
                found: list[str] = []
                while left and not left[0].startswith("--"):
                    found.append(left.pop(0))
                if found:
                    yield BETWEEN_WORDS.join(found)
