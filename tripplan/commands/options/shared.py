"""Options that several commands have in common, and how numbers are read."""

from argparse import ArgumentParser, ArgumentTypeError
from collections.abc import Callable
from datetime import date

USUAL_WEEKS = 6
"""How many weeks, counted from tomorrow, are looked at when no dates are given."""


def family_options(parser: ArgumentParser) -> None:
    """Whose outing: the family, its places and calendars, who goes, and when "today" is."""
    group = parser.add_argument_group("whose outing")
    whose(group.add_mutually_exclusive_group().add_argument)
    group.add_argument(
        "--household",
        metavar="FILE",
        help="a household file, instead of the family on record and its calendars",
    )
    group.add_argument(
        "--places",
        metavar="PATH",
        nargs="+",
        help="place cards or folders of them, instead of those on record",
    )
    group.add_argument(
        "--school-calendar",
        metavar="FILE",
        nargs="+",
        help="files (.ics or .csv) of school districts around the home, besides those on record",
    )
    group.add_argument("--party", metavar="NAME", nargs="+", help="who goes (default: everybody)")
    group.add_argument("--today", metavar="DATE", help="plan as if today were this date")


def whose(add: Callable[..., object]) -> None:
    """Whose records; to be told with the method that adds an argument to a group in which only one counts."""
    add("--demo", dest="which", action="store_const", const="demo", help="use the invented demo family")
    add(
        "--own",
        dest="which",
        action="store_const",
        const="family",
        help="use your own records (default: whichever the screens show)",
    )


def span_options(parser: ArgumentParser) -> None:
    """The first and the last day."""
    group = parser.add_argument_group("which days")
    group.add_argument("--from", dest="first", metavar="DATE", help="the first day (default: tomorrow)")
    group.add_argument(
        "--to", dest="last", metavar="DATE", help=f"the last day (default: {USUAL_WEEKS} weeks in all)"
    )


def records_options(parser: ArgumentParser) -> None:
    """Where the records lie."""
    parser.add_argument("--data", metavar="FOLDER", help="where the records lie")


def json_option(parser: ArgumentParser) -> None:
    """An answer for programs."""
    parser.add_argument("--json", action="store_true", help="answer in JSON, for programs")


def whole(text: str) -> int:
    """A whole number from 0 on."""
    if not (text.isdecimal() and len(text) < 10):
        raise ArgumentTypeError(f"a whole number from 0 on, not {text[:40]!r}")
    return int(text)


def count(text: str) -> int:
    """A whole number from 1 on."""
    if not (text.isdecimal() and len(text) < 10 and int(text)):
        raise ArgumentTypeError(f"a whole number from 1 on, not {text[:40]!r}")
    return int(text)


def date_said(text: str) -> date:
    """A date."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise ArgumentTypeError(f"a date reads like 2026-12-08, not {text[:40]!r}") from None


def days_of(parser: ArgumentParser) -> None:
    """The first and the last day of something that is put on record."""
    for option, dest, end in (("--from", "from_day", "first"), ("--to", "to_day", "last")):
        parser.add_argument(option, dest=dest, metavar="DATE", type=date_said, help=f"the {end} day of it")


LONGEST_NAME = 80
"""As `tripplan.documents.model.LONGEST_NAME`, which is not loaded here [characters]."""


def name(text: str) -> str:
    """A name to keep on record."""
    said = text.strip()
    if not 0 < len(said) <= LONGEST_NAME:
        raise ArgumentTypeError(f"a name has 1 to {LONGEST_NAME} characters, not {len(said)}")
    return said


def place_and_day(parser: ArgumentParser) -> None:
    """One place and the day of the visit."""
    parser.add_argument("place", metavar="PLACE", help="id or name of a place")
    parser.add_argument("day", metavar="DATE", help="day of the visit")


PLANNING = (family_options, records_options)


def own_records_options(parser: ArgumentParser) -> None:
    """What a task that works on the records alone has: whose they are, today, and where they lie."""
    whose(parser.add_mutually_exclusive_group().add_argument)
    parser.add_argument("--today", metavar="DATE", help="act as if today were this date")
    records_options(parser)


class Tasks:
    """The tasks below one command, such as `add` in `tripplan schools add`."""

    def __init__(self, parser: ArgumentParser, *shared: Callable[[ArgumentParser], None]) -> None:
        """Give a command its tasks.

        Args:
            parser: the command's.
            shared: adds the groups of options that every task has.
        """
        self._form = parser.formatter_class
        self._shared = shared
        self._below = parser.add_subparsers(
            dest="task", metavar="TASK", title="tasks", required=True, help="one of:"
        )

    def add(self, name: str, help_text: str, epilog: str | None = None) -> ArgumentParser:
        """A task, to which its own options are to be added.

        Args:
            name: what the user types.
            help_text: what it does, in one line.
            epilog: what stands below its help.
        """
        task = self._below.add_parser(
            name,
            help=help_text,
            description=f"{help_text[0].upper()}{help_text[1:]}.",
            epilog=epilog,
            allow_abbrev=False,
            formatter_class=self._form,
        )
        for group in self._shared:
            group(task)
        return task
