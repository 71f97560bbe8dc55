"""What the command line understands: its commands and their options, and nothing of what they do.

Kept apart from the commands themselves, so that asking for help does not load the planning.
"""

from argparse import ArgumentParser, RawDescriptionHelpFormatter, _SubParsersAction
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import NoReturn

from tripplan.commands.options.family import busy_options, holidays_options, logbook_options
from tripplan.commands.options.files import (
    check_options,
    export_options,
    import_options,
    restore_options,
    roads_options,
    schema_options,
    schools_options,
)
from tripplan.commands.options.outings import (
    calendar_options,
    compare_options,
    day_options,
    days_options,
    passes_options,
    sheet_options,
    together_options,
    wish_options,
)
from tripplan.commands.options.shared import PLANNING, json_option, records_options, span_options
from tripplan.commands.options.study import study_options

_EPILOG = """\
Options follow the command. Dates read like 2026-12-08. A place is its id or its name.

exit status:
  0  done
  1  the answer is no: nothing can be done, or something is refused
  2  bad input: every fault is told, nothing was changed
"""


class HelpWanted(Exception):
    """Somebody asked for help.

    Attributes:
        text: the help.
    """

    def __init__(self, text: str) -> None:
        self.text = text
        super().__init__(text)


class Misuse(Exception):
    """The command line itself is wrong.

    Attributes:
        text: what is wrong, and how the command is used.
    """

    def __init__(self, text: str) -> None:
        self.text = text
        super().__init__(text)


class CommandParser(ArgumentParser):
    """A parser that raises what it has to say instead of printing it and ending the program."""

    def print_help(self, file: object = None) -> NoReturn:  # noqa: ARG002 - where to is the caller's choice
        """Hand out the help.

        Raises:
            HelpWanted: always.
        """
        raise HelpWanted(self.format_help())

    def error(self, message: str) -> NoReturn:
        """Tell what is wrong with the command line.

        Raises:
            Misuse: always.
        """
        raise Misuse(f"{message}\n{self.format_usage().strip()}\n")


@dataclass(frozen=True)
class Command:
    """One command as the parser knows it.

    Attributes:
        name: what the user types.
        module: where it is carried out, in this package.
        help: what it does, in one line.
        options: adds its own arguments.
        shared: adds the groups of options that it has in common with others.
    """

    name: str
    module: str
    help: str
    options: Callable[[ArgumentParser], None]
    shared: tuple[Callable[[ArgumentParser], None], ...] = ()


def build_parser(width: int) -> CommandParser:
    """The parser of the whole command line.

    Args:
        width: of the terminal [characters].
    """
    form = partial(RawDescriptionHelpFormatter, width=max(20, width - 2))
    parser = CommandParser(
        prog="tripplan",
        description="Plans and prices family outings: drive, tickets, naps, crowds and total cost.",
        epilog=_EPILOG,
        allow_abbrev=False,
        formatter_class=form,
    )
    parser.add_argument("--version", action="store_true", help="print the version")
    commands: _SubParsersAction[CommandParser] = parser.add_subparsers(
        dest="command", metavar="COMMAND", title="commands"
    )
    for command in COMMANDS:
        below = commands.add_parser(
            command.name,
            help=command.help,
            description=f"{command.help[0].upper()}{command.help[1:]}.",
            allow_abbrev=False,
            formatter_class=form,
        )
        command.options(below)
        for group in command.shared:
            group(below)
    return parser


COMMANDS: Sequence[Command] = (
    Command(
        "compare",
        "compare",
        "compare places by what an outing costs in all, each on its best day",
        compare_options,
        (span_options, *PLANNING, json_option),
    ),
    Command(
        "days",
        "days",
        "rank the days of a span by money and nuisances",
        days_options,
        (span_options, wish_options, *PLANNING, json_option),
    ),
    Command("day", "day", "plan one day at one place, hour by hour", day_options, (*PLANNING, json_option)),
    Command(
        "calendar",
        "calendar",
        "write planned outings as a calendar file, or send them to your calendar server",
        calendar_options,
        PLANNING,
    ),
    Command("sheet", "sheet", "write an outing as a page to print and take along", sheet_options, PLANNING),
    Command(
        "passes",
        "passes",
        "find which annual passes pay for a list of visits",
        passes_options,
        (*PLANNING, json_option),
    ),
    Command(
        "together",
        "together",
        "go with other households: one price, a fair split, seats, who owes whom",
        together_options,
        (*PLANNING, json_option),
    ),
    Command("logbook", "logbook", "write outings down, and tell what they add up to", logbook_options),
    Command(
        "check", "check", "find every fault in place cards and household files", check_options, (json_option,)
    ),
    Command(
        "study", "study", "study units, places that fit, and a term's programme of outings", study_options
    ),
    Command("busy", "busy", "when the family is busy: calendars, fixed blocks, working hours", busy_options),
    Command(
        "holidays",
        "holidays",
        "public holidays, and the festivals and local days you add",
        holidays_options,
    ),
    Command("roads", "roads", "use the real roads of a region, from a map file", roads_options),
    Command("schools", "schools", "bring in school calendars, and tell how far they reach", schools_options),
    Command("schema", "schema", "print the JSON schema of a file or an answer", schema_options),
    Command("export", "export_records", "write all records to one file", export_options, (records_options,)),
    Command(
        "restore",
        "restore",
        "put the copy of an earlier day in the place of your own records",
        restore_options,
        (records_options,),
    ),
    Command(
        "import",
        "import_records",
        "put what an exported file holds in the place of your own records",
        import_options,
        (records_options, json_option),
    ),
)
