"""`tripplan help`: the guide, topic by topic."""

from collections.abc import Mapping

from tripplan.commands.options.files import HelpOptions
from tripplan.commands.output.console import Console
from tripplan.commands.tree import COMMANDS, Command
from tripplan.errors import UnknownName
from tripplan.guide import guide_text, topics

_COMMANDS = "commands"


def run(options: HelpOptions, console: Console, environment: Mapping[str, str]) -> int:  # noqa: ARG001
    """Show a topic; without one, list them."""
    known = {**topics(), _COMMANDS: "The command line"}
    if options.topic is None:
        console.table(("topic", "what it is about"), list(known.items()))
        return 0
    if options.topic not in known:
        raise UnknownName("topic of the guide", options.topic, tuple(known))
    if options.topic == _COMMANDS:
        _list_commands(console)
        return 0
    console.document(guide_text(options.topic))
    return 0


def _list_commands(console: Console) -> None:
    rows: list[tuple[str, str]] = []
    for command in COMMANDS:
        rows.append((command.name, command.help))
        if not isinstance(command, Command):
            rows += [(f"{command.name} {task.name}", task.help) for task in command.tasks]
    console.table(("command", "what it does"), rows)
    console.line()
    console.line("'tripplan COMMAND --help' tells a command's options, with examples.")
