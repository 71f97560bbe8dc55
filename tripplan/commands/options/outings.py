"""The options of the commands that plan outings."""

from argparse import ArgumentParser, ArgumentTypeError

from tripplan.commands.options.shared import count, place_and_day, whole

USUAL_DAYS_SHOWN = 10


LONGEST_GRID_MINUTES = 60
"""Departures further apart than this are no plan of a day [min]."""


WHEREABOUTS = ("home", "way", "there", "back")
"""Where a party can be when its day goes wrong."""


TO_DO = ("none", "tasks", "entries")
"""How booking and packing get onto the calendar; the values of `ThingsToDo`."""


def _places_argument(parser: ArgumentParser, default: str) -> None:
    parser.add_argument(
        "place", metavar="PLACE", nargs="*", help=f"ids or names of places (default: {default})"
    )


def compare_options(parser: ArgumentParser) -> None:
    """The options of `tripplan compare`."""
    _places_argument(parser, "those compared on the screens, or the first three")
    parser.add_argument("--on", metavar="DATE", help="compare on this day, instead of each place's best")
    parser.add_argument("--why", action="store_true", help="tell what every total is made of")


def days_options(parser: ArgumentParser) -> None:
    """The options of `tripplan days`."""
    _places_argument(parser, "all")
    parser.add_argument(
        "--most",
        metavar="N",
        type=count,
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


def wish_options(parser: ArgumentParser) -> None:
    """What the day should be like."""
    group = parser.add_argument_group("what the day should be like")
    group.add_argument("--weekdays", metavar="DAY", nargs="+", help="only on these, such as Tu We Th")
    group.add_argument("--budget", metavar="AMOUNT", help="a likely total of at most so much")
    group.add_argument(
        "--drive", metavar="MINUTES", type=count, help="neither drive longer than so many minutes"
    )
    group.add_argument("--nap", metavar="PERCENT", type=whole, help="at least so much of the naps kept")
    group.add_argument(
        "--full-house", metavar="PERCENT", type=whole, help="a chance of a full house of at most so much"
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
    group.add_argument(
        "--in-term", action="store_true", help="only while most pupils nearby have school, or likely have"
    )
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


def day_options(parser: ArgumentParser) -> None:
    """The options of `tripplan day`."""
    place_and_day(parser)
    _leaving_options(parser)
    group = parser.add_argument_group("when it goes wrong")
    group.add_argument(
        "--late", metavar="MINUTES", type=_late, help="running late by so many minutes: what can be done now"
    )
    group.add_argument(
        "--where",
        choices=WHEREABOUTS,
        default=WHEREABOUTS[0],
        help="where you are by then: at home, on the way, there, or on the way back (default: %(default)s)",
    )
    group.add_argument(
        "--to-drive", metavar="MINUTES", type=_late, help="on either way: how far it still is (default: half)"
    )
    group.add_argument("--now", metavar="HH:MM", help="there: what time it is (default: when you got in)")
    group.add_argument("--asleep", metavar="NAME", help="who has just fallen asleep")
    group.add_argument("--ill", metavar="NAME", help="the child that is ill")
    group.add_argument("--stays", metavar="NAME", help="who stays at home with it (default: who suits best)")
    group.add_argument("--rain", action="store_true", help="it rains")
    group.add_argument("--paid", action="store_true", help="the tickets are paid for already")


def _leaving_options(parser: ArgumentParser) -> None:
    group = parser.add_argument_group("when to leave")
    group.add_argument(
        "--grid",
        metavar="MINUTES",
        type=_grid,
        help="try departures and returns so many minutes apart: 1 to plan to the minute (default: 5)",
    )
    group.add_argument(
        "--leave-home",
        metavar="HH:MM",
        help="with --leave-place: what leaving just then gives, or which limits it crosses",
    )
    group.add_argument("--leave-place", metavar="HH:MM", help="when to start home, by the clock there")


def _grid(text: str) -> int:
    if not (text.isdecimal() and len(text) < 3 and 1 <= int(text) <= LONGEST_GRID_MINUTES):
        raise ArgumentTypeError(f"whole minutes from 1 to {LONGEST_GRID_MINUTES}, not {text[:40]!r}")
    return int(text)


def _late(text: str) -> int:
    if not (text.isdecimal() and len(text) < 4):
        raise ArgumentTypeError(f"whole minutes from 0 to 999, not {text[:40]!r}")
    return int(text)


def calendar_options(parser: ArgumentParser) -> None:
    """The options of `tripplan calendar`."""
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
    _leaving_options(parser)


def sheet_options(parser: ArgumentParser) -> None:
    """The options of `tripplan sheet`."""
    place_and_day(parser)
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
    parser.add_argument(
        "--phone",
        action="store_true",
        help="the page for the phone instead (.html): what to do now in large type, by the phone's own clock",
    )
    parser.add_argument("--needs", action="store_true", help="let noted allergies and needs onto the sheet")
    parser.add_argument("--birth-dates", action="store_true", help="let birth dates onto the sheet")
    parser.add_argument("--home", action="store_true", help="let the home address onto the sheet")
    _leaving_options(parser)


def passes_options(parser: ArgumentParser) -> None:
    """The options of `tripplan passes`."""
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


def together_options(parser: ArgumentParser) -> None:
    """The options of `tripplan together`."""
    place_and_day(parser)
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
