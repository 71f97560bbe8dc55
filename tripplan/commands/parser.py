"""What the command line understands: its commands and their options, and nothing of what they do.

Kept apart from the commands themselves, so that asking for help does not load the planning.
"""

from argparse import ArgumentParser, ArgumentTypeError, RawDescriptionHelpFormatter, _SubParsersAction
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from functools import partial
from typing import NoReturn

USUAL_WEEKS = 6
"""How many weeks, counted from tomorrow, are looked at when no dates are given."""
USUAL_DAYS_SHOWN = 10
WHEREABOUTS = ("home", "way", "there")
"""Where a party can be when its day goes wrong."""
TO_DO = ("none", "tasks", "entries")
"""How booking and packing get onto the calendar; the values of `tripplan.planning.planned.ThingsToDo`."""

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


def _family_options(parser: ArgumentParser) -> None:
    group = parser.add_argument_group("whose outing")
    _whose(group.add_mutually_exclusive_group().add_argument)
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


def _whose(add: Callable[..., object]) -> None:
    add("--demo", dest="which", action="store_const", const="demo", help="use the invented demo family")
    add(
        "--own",
        dest="which",
        action="store_const",
        const="family",
        help="use your own records (default: whichever the screens show)",
    )


def _span_options(parser: ArgumentParser) -> None:
    group = parser.add_argument_group("which days")
    group.add_argument("--from", dest="first", metavar="DATE", help="the first day (default: tomorrow)")
    group.add_argument(
        "--to", dest="last", metavar="DATE", help=f"the last day (default: {USUAL_WEEKS} weeks in all)"
    )


def _records_options(parser: ArgumentParser) -> None:
    parser.add_argument("--data", metavar="FOLDER", help="where the records lie")


def _json_option(parser: ArgumentParser) -> None:
    parser.add_argument("--json", action="store_true", help="answer in JSON, for programs")


def _places_argument(parser: ArgumentParser, default: str) -> None:
    parser.add_argument(
        "place", metavar="PLACE", nargs="*", help=f"ids or names of places (default: {default})"
    )


def _compare(parser: ArgumentParser) -> None:
    _places_argument(parser, "those compared on the screens, or the first three")
    parser.add_argument("--on", metavar="DATE", help="compare on this day, instead of each place's best")
    parser.add_argument("--why", action="store_true", help="tell what every total is made of")


def _days(parser: ArgumentParser) -> None:
    _places_argument(parser, "all")
    parser.add_argument(
        "--most",
        metavar="N",
        type=_count,
        default=USUAL_DAYS_SHOWN,
        help=f"how many days are told (default: {USUAL_DAYS_SHOWN})",
    )
    parser.add_argument(
        "--why", action="store_true", help="tell why days are full, and why others are passed over"
    )
    parser.add_argument(
        "--table", metavar="FILE", help="write every such day to a table (.csv) as well; - prints it alone"
    )
    parser.add_argument("--replace", action="store_true", help="write over a file that is there already")


def _wish_options(parser: ArgumentParser) -> None:
    group = parser.add_argument_group("what the day should be like")
    group.add_argument("--weekdays", metavar="DAY", nargs="+", help="only on these, such as Tu We Th")
    group.add_argument("--budget", metavar="AMOUNT", help="a likely total of at most so much")
    group.add_argument(
        "--drive", metavar="MINUTES", type=_count, help="neither drive longer than so many minutes"
    )
    group.add_argument("--nap", metavar="PERCENT", type=_whole, help="at least so much of the naps kept")
    group.add_argument(
        "--full-house", metavar="PERCENT", type=_whole, help="a chance of a full house of at most so much"
    )
    roof = group.add_mutually_exclusive_group()
    for name in ("indoors", "outdoors"):
        roof.add_argument(
            f"--{name}",
            dest="air",
            action="store_const",
            const=name,
            help=f"only places that are {name} or both",
        )
    group.add_argument("--in-term", action="store_true", help="only while most pupils nearby have school")
    group.add_argument("--daylight", action="store_true", help="no driving in the dark")
    group.add_argument("--home-by", metavar="HH:MM", help="home again by then")
    group.add_argument("--unit", metavar="NAME", help="in this study unit's weeks, at places that fit it")
    group.add_argument(
        "--worth",
        metavar=("NUISANCE", "AMOUNT"),
        nargs=2,
        action="append",
        default=[],
        help="weigh a nuisance otherwise than the household says, such as full-house 35; may be repeated",
    )


def _whole(text: str) -> int:
    if not (text.isdecimal() and len(text) < 10):
        raise ArgumentTypeError(f"a whole number from 0 on, not {text[:40]!r}")
    return int(text)


def _count(text: str) -> int:
    if not (text.isdecimal() and len(text) < 10 and int(text)):
        raise ArgumentTypeError(f"a whole number from 1 on, not {text[:40]!r}")
    return int(text)


def _place_and_day(parser: ArgumentParser) -> None:
    parser.add_argument("place", metavar="PLACE", help="id or name of a place")
    parser.add_argument("day", metavar="DATE", help="day of the visit")


def _day(parser: ArgumentParser) -> None:
    _place_and_day(parser)
    group = parser.add_argument_group("when it goes wrong")
    group.add_argument(
        "--late", metavar="MINUTES", type=_late, help="running late by so many minutes: what can be done now"
    )
    group.add_argument(
        "--where",
        choices=WHEREABOUTS,
        default=WHEREABOUTS[0],
        help="where you are by then (default: %(default)s)",
    )
    group.add_argument("--asleep", metavar="NAME", help="who has just fallen asleep")
    group.add_argument("--ill", metavar="NAME", help="the child that is ill")
    group.add_argument("--rain", action="store_true", help="it rains")
    group.add_argument("--paid", action="store_true", help="the tickets are paid for already")


def _late(text: str) -> int:
    if not (text.isdecimal() and len(text) < 4):
        raise ArgumentTypeError(f"whole minutes from 0 to 999, not {text[:40]!r}")
    return int(text)


def _calendar(parser: ArgumentParser) -> None:
    parser.add_argument("place", metavar="PLACE", nargs="?", help="id or name of a place")
    parser.add_argument("day", metavar="DATE", nargs="?", help="day of the visit")
    parser.add_argument(
        "--planned",
        action="store_true",
        help="all outings planned for the year to come, each as it was saved, instead of one",
    )
    where_to = parser.add_mutually_exclusive_group(required=True)
    where_to.add_argument("--out", metavar="FILE", help="the calendar file (.ics) to write; - prints it")
    where_to.add_argument(
        "--send",
        action="store_true",
        help="send it to your own calendar server, as set up on the Calendar page, with whatever else waits",
    )
    parser.add_argument("--replace", action="store_true", help="write over a file that is there already")
    parser.add_argument(
        "--parts", action="store_true", help="three entries (drive, visit, way home) instead of one"
    )
    parser.add_argument("--tentative", action="store_true", help="mark the outing as not yet certain")
    parser.add_argument("--names", action="store_true", help="let people's names into the entry")
    parser.add_argument("--home", action="store_true", help="let the home address into the entry")
    parser.add_argument("--no-costs", action="store_true", help="keep prices out of the entry")
    parser.add_argument("--no-reminders", action="store_true", help="leave the reminders out")
    parser.add_argument(
        "--to-do",
        choices=TO_DO,
        default=TO_DO[0],
        help="booking and packing as tasks, or as short entries for calendars without tasks "
        "(default: %(default)s)",
    )
    parser.add_argument("--free", action="store_true", help="do not mark the time as taken")
    parser.add_argument("--colour", metavar="NAME", help="colour the entry: one of CSS's sixteen basic names")


def _sheet(parser: ArgumentParser) -> None:
    _place_and_day(parser)
    parser.add_argument(
        "--out",
        metavar="FILE",
        required=True,
        help="the sheet to write: .html (for phone and printer) or .pdf; - prints the HTML",
    )
    parser.add_argument("--replace", action="store_true", help="write over a file that is there already")
    parser.add_argument(
        "--paper", choices=("a4", "letter"), help="what a PDF is printed on (default: as usual at home)"
    )
    parser.add_argument("--needs", action="store_true", help="let noted allergies and needs onto the sheet")
    parser.add_argument("--birth-dates", action="store_true", help="let birth dates onto the sheet")
    parser.add_argument("--home", action="store_true", help="let the home address onto the sheet")


def _passes(parser: ArgumentParser) -> None:
    parser.add_argument(
        "--visit",
        metavar=("PLACE", "DATE"),
        nargs="+",
        action="append",
        default=[],
        help="a place and the days of visits to it; may be repeated",
    )
    parser.add_argument(
        "--planned",
        action="store_true",
        help="count planned outings and the visits listed on the screens too (default where no --visit is)",
    )


def _together(parser: ArgumentParser) -> None:
    _place_and_day(parser)
    parser.add_argument(
        "--group",
        metavar=("NAME", "AGES"),
        nargs="+",
        action="append",
        default=[],
        help="another household: its name, the ages of its people such as '38, 9, 16 mo' or "
        "'38 (educator), 9', seats in its cars (default: 5), and what it has paid; may be repeated "
        "(default: those on the screens)",
    )
    parser.add_argument("--seats", metavar="N", help="seats in your own cars (default: those of your car)")
    parser.add_argument("--paid", metavar="AMOUNT", help="what you have paid for everybody already")
    parser.add_argument("--payer", metavar="NAME", help="the household that pays the rest at the till")


def _check(parser: ArgumentParser) -> None:
    parser.add_argument(
        "file", metavar="FILE", nargs="+", help="place cards, household files, or folders of them"
    )
    parser.add_argument("--household", action="store_true", help="take every file for a household file")
    parser.add_argument("--today", metavar="DATE", help="check as if today were this date")


def _schema(parser: ArgumentParser) -> None:
    parser.add_argument("form", metavar="FORM", choices=SCHEMAS, help=f"one of {', '.join(SCHEMAS)}")


def _export(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="the file to write; - prints it")
    parser.add_argument("--replace", action="store_true", help="write over a file that is there already")
    _whose(parser.add_mutually_exclusive_group().add_argument)


def _restore(parser: ArgumentParser) -> None:
    parser.add_argument(
        "day", metavar="DATE", nargs="?", help="the day whose copy to put back; without it, list the copies"
    )
    parser.add_argument(
        "--yes", action="store_true", help="carry it out; without this, only tell what would change"
    )


def _import(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a file written by 'tripplan export'")
    parser.add_argument(
        "--yes", action="store_true", help="carry it out; without this, only tell what would change"
    )


def _task_of(tasks: "_SubParsersAction[ArgumentParser]", name: str, help_text: str) -> ArgumentParser:
    return tasks.add_parser(
        name, help=help_text, description=f"{help_text[0].upper()}{help_text[1:]}.", allow_abbrev=False
    )


def _days_of(parser: ArgumentParser, *, required: bool) -> None:
    for option, name, end in (("--from", "from_day", "first"), ("--to", "to_day", "last")):
        parser.add_argument(
            option, dest=name, metavar="DATE", type=_date, required=required, help=f"the {end} day of it"
        )


def _date(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise ArgumentTypeError(f"a date reads like 2026-12-08, not {text[:40]!r}") from None


def _study(parser: ArgumentParser) -> None:
    tasks = parser.add_subparsers(dest="task", metavar="TASK", title="tasks", required=True, help="one of:")
    listed = _task_of(tasks, "list", "tell the study units and the places that fit")
    programme = _task_of(tasks, "programme", "choose one outing a unit, together within the budget")
    add = _task_of(tasks, "add", "add a study unit, or change the one of this name")
    add.add_argument("name", metavar="NAME", help="what the unit is called")
    add.add_argument("--topic", metavar="TOPIC", nargs="+", required=True, help="what is studied")
    _days_of(add, required=True)
    add.add_argument("--budget", metavar="AMOUNT", help="what its outing may cost at most")
    for below in (listed, programme, add):
        for group in _PLANNING:
            group(below)


def _busy(parser: ArgumentParser) -> None:
    tasks = parser.add_subparsers(dest="task", metavar="TASK", title="tasks", required=True, help="one of:")
    listed = _task_of(tasks, "list", "tell what keeps the family busy")
    file = _task_of(tasks, "file", "read a calendar file (.ics); read again, it replaces what it held")
    file.add_argument("file", metavar="FILE", help="the calendar file")
    file.add_argument("--keep-names", action="store_true", help="keep what the entries say, not times only")
    block = _task_of(tasks, "block", "add a fixed weekly block; one of this name is replaced")
    block.add_argument("name", metavar="NAME", help="what it is")
    work = _task_of(tasks, "work", "add an adult's working hours")
    work.add_argument("member", metavar="MEMBER", help="who works")
    work.add_argument(
        "--without", action="store_true", help="outings go without this adult (default: they wait)"
    )
    for below in (block, work):
        below.add_argument("start", metavar="START", help="when it begins, such as 16:00")
        below.add_argument("end", metavar="END", help="when it is over")
        below.add_argument("days", metavar="DAY", nargs="+", help="Mo, Tu, We, Th, Fr, Sa or Su")
        _days_of(below, required=False)
    late = _task_of(tasks, "late", "say what a late evening does to the next day")
    late.add_argument("after", metavar="TIME", help="an entry that ends later than this is late")
    late.add_argument(
        "--not-before", metavar="TIME", help="leave no earlier the next day (default: it is not free)"
    )
    for below in (listed, file, block, work, late):
        _whose(below.add_mutually_exclusive_group().add_argument)
        below.add_argument("--today", metavar="DATE", help="act as if today were this date")
        _records_options(below)


def _roads(parser: ArgumentParser) -> None:
    parser.epilog = ROADS_GUIDE
    form = parser.formatter_class
    tasks = parser.add_subparsers(dest="task", metavar="TASK", title="tasks", required=True, help="one of:")

    def task(name: str, help_text: str) -> ArgumentParser:
        below = tasks.add_parser(
            name,
            help=help_text,
            description=f"{help_text[0].upper()}{help_text[1:]}.",
            epilog=ROADS_GUIDE if name == "build" else None,
            allow_abbrev=False,
            formatter_class=form,
        )
        _records_options(below)
        return below

    build = task("build", "build the road network of a region from a map file")
    build.add_argument("file", metavar="REGION.osm.pbf", help="an OpenStreetMap extract on this computer")
    build.add_argument("--name", metavar="NAME", help="what to call the region (default: as the file)")
    task("list", "list the regions on this computer")
    remove = task("remove", "remove a region from this computer")
    remove.add_argument("name", metavar="NAME", help="what the region is called")
    ask = task("ask", "tell the drive between two points; put -- before a latitude below zero")
    ask.add_argument("origin", metavar="LAT,LON", help="where the drive starts")
    ask.add_argument("destination", metavar="LAT,LON", help="where it ends")


def _logbook(parser: ArgumentParser) -> None:
    form = parser.formatter_class
    tasks = parser.add_subparsers(dest="task", metavar="TASK", title="tasks", required=True, help="one of:")

    def task(name: str, help_text: str, *, told: bool = True) -> ArgumentParser:
        below = tasks.add_parser(
            name,
            help=help_text,
            description=f"{help_text[0].upper()}{help_text[1:]}.",
            allow_abbrev=False,
            formatter_class=form,
        )
        _whose(below.add_mutually_exclusive_group().add_argument)
        below.add_argument("--today", metavar="DATE", help="act as if today were this date")
        _records_options(below)
        if told:
            _json_option(below)
        return below

    def period(below: ArgumentParser, usual: str) -> None:
        below.add_argument("--from", dest="first", metavar="DATE", help=f"the first day (default: {usual})")
        below.add_argument("--to", dest="last", metavar="DATE", help="the last day")

    def replace(below: ArgumentParser, what: str) -> None:
        below.add_argument("--replace", action="store_true", help=what)

    draft = task("draft", "write a file to fill in with how an outing was", told=False)
    draft.add_argument("place", metavar="PLACE", nargs="?", help="id or name of a place")
    draft.add_argument("day", metavar="DATE", nargs="?", help="day of the outing (default: today)")
    draft.add_argument("--planned", metavar="ID", help="the planned outing that it was")
    draft.add_argument("--as-planned", action="store_true", help="fill in what the plan had said")
    draft.add_argument("--out", metavar="FILE", default="-", help="the file (.toml); - prints it (default)")
    replace(draft, "write over a file that is there already")
    write = task("write", "put filled-in files into the logbook", told=False)
    write.add_argument("file", metavar="FILE", nargs="+", help="a file as draft writes it")
    replace(write, "change an entry that is there already")
    remove = task("remove", "take an outing out of the logbook; it stays in the records' history", told=False)
    remove.add_argument("id", metavar="ID", help="the entry's id, as list --json tells it")
    listed = task("list", "tell the outings that were written down")
    period(listed, "all of them")
    listed.add_argument("--why", action="store_true", help="tell each in full, and against its plan")
    listed.add_argument("--csv", metavar="FILE", help="write them as a table; - prints it")
    replace(listed, "write over a file that is there already")
    year = task("year", "tell what a year's outings have cost, and what is left")
    year.add_argument("--of", metavar="DATE", help="any day of that year (default: today)")
    record = task("record", "write the record of outings for home-education authorities")
    period(record, "the beginning of the reporting year")
    record.add_argument("--out", metavar="FILE", help="the file: .csv, .html or .pdf; - prints the CSV")
    replace(record, "write over a file that is there already")
    record.add_argument("--children", metavar="NAME", nargs="+", help="whose record (default: everybody's)")
    record.add_argument(
        "--names", metavar="NAME", nargs="+", help="whose names are written out (default: initials only)"
    )
    record.add_argument("--household-name", action="store_true", help="write the household's name on it")
    record.add_argument("--state", metavar="STATE", help="print a state's published figures below; no advice")
    record.add_argument(
        "--paper", choices=("a4", "letter"), help="what a PDF is printed on (default: as usual at home)"
    )
    task("learned", "tell what the outings teach, beside the usual figures")


def _schools(parser: ArgumentParser) -> None:
    parser.epilog = SCHOOLS_GUIDE
    form = parser.formatter_class
    tasks = parser.add_subparsers(dest="task", metavar="TASK", title="tasks", required=True, help="one of:")

    def task(name: str, help_text: str) -> ArgumentParser:
        below = tasks.add_parser(
            name,
            help=help_text,
            description=f"{help_text[0].upper()}{help_text[1:]}.",
            epilog=SCHOOLS_GUIDE if name == "add" else None,
            allow_abbrev=False,
            formatter_class=form,
        )
        _whose(below.add_mutually_exclusive_group().add_argument)
        below.add_argument("--today", metavar="DATE", help="tell as if today were this date")
        _records_options(below)
        return below

    task("list", "list the school calendars on record, and what is known around each place")
    regions = task("regions", "list the regions whose school holidays are built in")
    regions.add_argument("country", metavar="COUNTRY", nargs="?", help="code of two letters (default: all)")
    show = task("show", "tell one calendar's breaks, short days and guesses")
    show.add_argument("name", metavar="NAME", help="what the calendar is called")
    add = task("add", "put a built-in region or a district's file on record")
    add.add_argument("source", metavar="REGION|FILE", help="a region such as DE-BY, or a .ics or .csv file")
    add.add_argument("--name", metavar="NAME", help="what to call it (default: as it calls itself)")
    add.add_argument("--at", metavar="WHERE", help="where its pupils live (default: at home)")
    add.add_argument("--pupils", metavar="N", type=_count, help="how many pupils follow it, roughly")
    add.add_argument(
        "--dates", choices=("day-first", "month-first"), help="how a table writes dates such as 03/04/2027"
    )
    guess = task("guess", "guess the year after a calendar's end from its last year, and mark it so")
    guess.add_argument("name", metavar="NAME", help="what the calendar is called")
    remove = task("remove", "take a calendar off the records")
    remove.add_argument("name", metavar="NAME", help="what the calendar is called")


SCHOOLS_GUIDE = """\
A table (.csv) has the columns: first day, last day, name, kind. The last day and the kind may
be empty; a kind is no school, short day, first day of school, last day of school or other.
Dates read like 2026-12-24. A file brought in again keeps what was ticked on the screen.
"""

ROADS_GUIDE = """\
Where to get a map file: extracts of OpenStreetMap by region are offered by several
servers; search for "OpenStreetMap extract" and your state or country, and save the file
that ends in .osm.pbf. This program fetches nothing. Take a map that holds home and the
places, with some room around: a road beyond its border is not known. A build that is
interrupted goes on from the middle if it got that far, else it starts anew, when the same
command is given again; a half built region is never used.
"""

SCHEMAS = (
    "place",
    "household",
    "logbook",
    "compare",
    "days",
    "day",
    "passes",
    "together",
    "check",
    "import",
    "logbook-list",
    "logbook-year",
    "logbook-record",
    "logbook-learned",
)
"""Three forms that a parent writes, and the JSON answers of the commands."""

_PLANNING = (_family_options, _records_options)

COMMANDS: Sequence[Command] = (
    Command(
        "compare",
        "compare",
        "compare places by what an outing costs in all, each on its best day",
        _compare,
        (_span_options, *_PLANNING, _json_option),
    ),
    Command(
        "days",
        "days",
        "rank the days of a span by money and nuisances",
        _days,
        (_span_options, _wish_options, *_PLANNING, _json_option),
    ),
    Command("day", "day", "plan one day at one place, hour by hour", _day, (*_PLANNING, _json_option)),
    Command(
        "calendar",
        "calendar",
        "write planned outings as a calendar file, or send them to your calendar server",
        _calendar,
        _PLANNING,
    ),
    Command("sheet", "sheet", "write an outing as a page to print and take along", _sheet, _PLANNING),
    Command(
        "passes",
        "passes",
        "find which annual passes pay for a list of visits",
        _passes,
        (*_PLANNING, _json_option),
    ),
    Command(
        "together",
        "together",
        "go with other households: one price, a fair split, seats, who owes whom",
        _together,
        (*_PLANNING, _json_option),
    ),
    Command("logbook", "logbook", "write outings down, and tell what they add up to", _logbook),
    Command("check", "check", "find every fault in place cards and household files", _check, (_json_option,)),
    Command("study", "study", "study units, places that fit, and a term's programme of outings", _study),
    Command("busy", "busy", "when the family is busy: calendars, fixed blocks, working hours", _busy),
    Command("roads", "roads", "use the real roads of a region, from a map file", _roads),
    Command("schools", "schools", "bring in school calendars, and tell how far they reach", _schools),
    Command("schema", "schema", "print the JSON schema of a file or an answer", _schema),
    Command("export", "export_records", "write all records to one file", _export, (_records_options,)),
    Command(
        "restore",
        "restore",
        "put the copy of an earlier day in the place of your own records",
        _restore,
        (_records_options,),
    ),
    Command(
        "import",
        "import_records",
        "put what an exported file holds in the place of your own records",
        _import,
        (_records_options, _json_option),
    ),
)
