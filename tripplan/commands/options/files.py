"""The options of the commands about maps, school calendars, cards and whole records."""

from argparse import ArgumentParser

from tripplan.commands.options.shared import (
    Tasks,
    count,
    json_option,
    name,
    own_records_options,
    records_options,
    whose,
)

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
    "study-list",
    "study-programme",
    "study-limits",
    "busy-list",
    "holidays-list",
    "schools-list",
)
"""Three forms that a parent writes, and the JSON answers of the commands."""


def roads_options(parser: ArgumentParser) -> None:
    """The tasks of `tripplan roads`."""
    parser.epilog = ROADS_GUIDE
    tasks = Tasks(parser, records_options)
    build = tasks.add("build", "build the road network of a region from a map file", ROADS_GUIDE)
    build.add_argument("file", metavar="REGION.osm.pbf", help="an OpenStreetMap extract on this computer")
    build.add_argument("--name", metavar="NAME", help="what to call the region (default: as the file)")
    tasks.add("list", "list the regions on this computer")
    remove = tasks.add("remove", "remove a region from this computer")
    remove.add_argument("name", metavar="NAME", help="what the region is called")
    ask = tasks.add("ask", "tell the drive between two points; put -- before a latitude below zero")
    ask.add_argument("origin", metavar="LAT,LON", help="where the drive starts")
    ask.add_argument("destination", metavar="LAT,LON", help="where it ends")


def schools_options(parser: ArgumentParser) -> None:
    """The tasks of `tripplan schools`."""
    parser.epilog = SCHOOLS_GUIDE
    tasks = Tasks(parser, own_records_options)
    json_option(tasks.add("list", "list the school calendars on record, and what is known around each place"))
    regions = tasks.add("regions", "list the regions whose school holidays are built in")
    regions.add_argument("country", metavar="COUNTRY", nargs="?", help="code of two letters (default: all)")
    show = tasks.add("show", "tell one calendar's breaks, short days and guesses")
    show.add_argument("name", metavar="NAME", help="what the calendar is called")
    add = tasks.add("add", "put a built-in region or a district's file on record", SCHOOLS_GUIDE)
    add.add_argument("source", metavar="REGION|FILE", help="a region such as DE-BY, or a .ics or .csv file")
    add.add_argument(
        "--name", metavar="NAME", type=name, help="what to call it (default: as it calls itself)"
    )
    add.add_argument("--at", metavar="WHERE", help="where its pupils live (default: at home)")
    add.add_argument("--pupils", metavar="N", type=count, help="how many pupils follow it, roughly")
    look = tasks.add("look", "look through a district's file: what each entry is taken for, and why")
    look.add_argument("source", metavar="FILE", help="a .ics or .csv file")
    for below in (add, look):
        below.add_argument(
            "--dates",
            choices=("day-first", "month-first"),
            help="how a table writes dates such as 03/04/2027",
        )
        for option, means in (
            ("--no-school", "days without school"),
            ("--short", "short days, with school"),
            ("--school", "days with school as always"),
        ):
            below.add_argument(
                option,
                metavar="TITLE",
                nargs="+",
                default=[],
                help=f"entries called so are {means}, whatever they were taken for",
            )
    guess = tasks.add("guess", "guess the year after a calendar's end from its last year, and mark it so")
    guess.add_argument("name", metavar="NAME", help="what the calendar is called")
    remove = tasks.add("remove", "take a calendar off the records")
    remove.add_argument("name", metavar="NAME", help="what the calendar is called")


def check_options(parser: ArgumentParser) -> None:
    """The options of `tripplan check`."""
    parser.add_argument(
        "file", metavar="FILE", nargs="+", help="place cards, household files, or folders of them"
    )
    parser.add_argument("--household", action="store_true", help="take every file for a household file")
    parser.add_argument("--today", metavar="DATE", help="check as if today were this date")


def schema_options(parser: ArgumentParser) -> None:
    """The options of `tripplan schema`."""
    parser.add_argument("form", metavar="FORM", choices=SCHEMAS, help=f"one of {', '.join(SCHEMAS)}")


def export_options(parser: ArgumentParser) -> None:
    """The options of `tripplan export`."""
    parser.add_argument("file", metavar="FILE", help="the file to write; - prints it")
    parser.add_argument("--replace", action="store_true", help="write over a file that is there already")
    whose(parser.add_mutually_exclusive_group().add_argument)


def restore_options(parser: ArgumentParser) -> None:
    """The options of `tripplan restore`."""
    parser.add_argument(
        "day", metavar="DATE", nargs="?", help="the day whose copy to put back; without it, list the copies"
    )
    parser.add_argument(
        "--yes", action="store_true", help="carry it out; without this, only tell what would change"
    )


def import_options(parser: ArgumentParser) -> None:
    """The options of `tripplan import`."""
    parser.add_argument("file", metavar="FILE", help="a file written by 'tripplan export'")
    parser.add_argument(
        "--yes", action="store_true", help="carry it out; without this, only tell what would change"
    )
