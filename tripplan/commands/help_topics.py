"""`tripplan help`: the guide, topic by topic, and every command with its options and examples."""

from collections.abc import Mapping

from tripplan.commands.options.files import HelpOptions
from tripplan.commands.output.console import Console
from tripplan.commands.parser import parse
from tripplan.commands.tree import COMMANDS, Command
from tripplan.errors import UnknownName
from tripplan.guide import guide_text, topics

_COMMANDS = "commands"


def run(options: HelpOptions, console: Console, environment: Mapping[str, str]) -> int:  # noqa: ARG001
    """Show a topic, or a command's options with examples; without either, list the topics."""
    known = {**topics(), _COMMANDS: "The command line"}
    words = options.topic or []
    topic = " ".join(words)
    if not words:
        console.table(("topic", "what it is about"), list(known.items()))
    elif topic == _COMMANDS:
        _list_commands(console)
    elif topic in known:
        console.document(guide_text(topic))
    elif words[0] in {command.name for command in COMMANDS}:
        parse([*words, "--help"], console.stdout, console.stderr)
    else:
        raise UnknownName("topic of the guide or command", topic, tuple(known))
    return 0


def _list_commands(console: Console) -> None:
    rows: list[tuple[str, str]] = []
    for command in COMMANDS:
        rows.append((command.name, command.help))
        if not isinstance(command, Command):
            rows += [(f"{command.name} {task.name}", task.help) for task in command.tasks]
    console.table(("command", "what it does"), rows)
    console.line()
    console.line("'tripplan help COMMAND' tells a command's options, with examples.")
