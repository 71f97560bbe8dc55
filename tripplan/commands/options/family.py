"""The options of the commands about the family's busy times, holidays and its logbook."""

from argparse import ArgumentParser, ArgumentTypeError

from tripplan.commands.options.shared import (
    Tasks,
    count,
    date_said,
    days_of,
    json_option,
    name,
    own_records_options,
)


def _number(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        raise ArgumentTypeError(f"a number such as 25, not {text[:40]!r}") from None


def busy_options(parser: ArgumentParser) -> None:
    """The tasks of `tripplan busy`."""
    tasks = Tasks(parser, own_records_options)
    json_option(tasks.add("list", "tell what keeps the family busy"))
    file = tasks.add("file", "read a calendar file (.ics); read again, it replaces what it held")
    file.add_argument("file", metavar="FILE", help="the calendar file")
    file.add_argument("--keep-names", action="store_true", help="keep what the entries say, not times only")
    file.add_argument(
        "--name", metavar="NAME", type=name, help="what to call it (default: as it calls itself)"
    )
    file.add_argument(
        "--addresses",
        metavar="ADDRESS",
        nargs="+",
        default=[],
        help="your e-mail addresses, by which invitations you declined are known; they are not kept",
    )
    file.add_argument(
        "--not-busy",
        metavar="TITLE",
        nargs="+",
        default=[],
        help="entries called so do not stand in the way of an outing",
    )
    block = tasks.add("block", "add a fixed weekly block; one of this name is replaced")
    block.add_argument("name", metavar="NAME", help="what it is")
    work = tasks.add("work", "add an adult's working hours")
    work.add_argument("member", metavar="MEMBER", help="who works")
    work.add_argument(
        "--without", action="store_true", help="outings go without this adult (default: they wait)"
    )
    work.add_argument(
        "--on-holidays",
        action="store_true",
        help="also on public holidays and local days off around home (default: these are free)",
    )
    for below in (block, work):
        below.add_argument("start", metavar="START", help="when it begins, such as 16:00")
        below.add_argument("end", metavar="END", help="when it is over")
        below.add_argument("days", metavar="DAY", nargs="+", help="Mo, Tu, We, Th, Fr, Sa or Su")
        days_of(below)
        below.add_argument(
            "--every-weeks",
            metavar="N",
            type=count,
            help="every so many weeks, counted from the week of --from (default: 1)",
        )
        below.add_argument(
            "--not-during",
            metavar=("FIRST", "LAST"),
            type=date_said,
            nargs=2,
            action="append",
            help="not from one day to another, such as a break; as often as needed",
        )
    late = tasks.add("late", "say what a late evening does to the next day")
    late.add_argument(
        "after", metavar="TIME", help="an entry that ends later than this is late; 'never': it does nothing"
    )
    late.add_argument(
        "--not-before", metavar="TIME", help="leave no earlier the next day (default: it is not free)"
    )
    remove = tasks.add("remove", "take a fixed block, working hours or a calendar off the records")
    remove.add_argument("name", metavar="NAME", help="of the block or calendar, or who works no more")


def holidays_options(parser: ArgumentParser) -> None:
    """The tasks of `tripplan holidays`."""
    tasks = Tasks(parser, own_records_options)
    json_option(tasks.add("list", "tell the coming year's public holidays and the local days on record"))
    add = tasks.add("add", "add a festival or local day off, or change the one of this name")
    add.add_argument("name", metavar="NAME", help="what it is called")
    add.add_argument("first", metavar="DATE", type=date_said, help="its first day")
    add.add_argument(
        "last", metavar="LAST", type=date_said, nargs="?", help="its last day (default: the first)"
    )
    where = add.add_mutually_exclusive_group(required=True)
    where.add_argument("--place", metavar="PLACE", help="the one place it concerns: an id or a name")
    where.add_argument("--town", metavar="WHERE", help="the town it concerns, with all places near")
    add.add_argument(
        "--within", metavar="KM", type=_number, help="how far around the town places are near (default: 25)"
    )
    add.add_argument(
        "--crowd", metavar="FACTOR", help="how many times the usual visitors come (default: 1.5, a guess)"
    )
    add.add_argument("--every-year", action="store_true", help="it comes back on the same dates")
    add.add_argument("--day-off", action="store_true", help="people there are off work")
    add.add_argument(
        "--holiday-hours",
        action="store_true",
        help="places there keep the hours and prices of a public holiday (default: they do not)",
    )
    remove = tasks.add("remove", "take a local day off the records")
    remove.add_argument("name", metavar="NAME", help="what it is called")


def logbook_options(parser: ArgumentParser) -> None:
    """The tasks of `tripplan logbook`."""
    tasks = Tasks(parser, own_records_options)

    def told(name: str, help_text: str) -> ArgumentParser:
        below = tasks.add(name, help_text)
        json_option(below)
        return below

    def period(below: ArgumentParser, usual: str) -> None:
        below.add_argument("--from", dest="first", metavar="DATE", help=f"the first day (default: {usual})")
        below.add_argument("--to", dest="last", metavar="DATE", help="the last day")

    def replace(below: ArgumentParser, what: str) -> None:
        below.add_argument("--replace", action="store_true", help=what)

    draft = tasks.add("draft", "write a file to fill in with how an outing was")
    draft.add_argument("place", metavar="PLACE", nargs="?", help="id or name of a place")
    draft.add_argument("day", metavar="DATE", nargs="?", help="day of the outing (default: today)")
    draft.add_argument("--planned", metavar="ID", help="the planned outing that it was")
    draft.add_argument("--as-planned", action="store_true", help="fill in what the plan had said")
    draft.add_argument("--out", metavar="FILE", default="-", help="the file (.toml); - prints it (default)")
    replace(draft, "write over a file that is there already")
    write = tasks.add("write", "put filled-in files into the logbook")
    write.add_argument("file", metavar="FILE", nargs="+", help="a file as draft writes it")
    replace(write, "change an entry that is there already")
    remove = tasks.add("remove", "take an outing out of the logbook; it stays in the records' history")
    remove.add_argument("id", metavar="ID", help="the entry's id, as list --json tells it")
    listed = told("list", "tell the outings that were written down")
    period(listed, "all of them")
    listed.add_argument("--why", action="store_true", help="tell each in full, and against its plan")
    listed.add_argument("--csv", metavar="FILE", help="write them as a table; - prints it")
    replace(listed, "write over a file that is there already")
    year = told("year", "tell what a year's outings have cost, and what is left")
    year.add_argument("--of", metavar="DATE", help="any day of that year (default: today)")
    record = told("record", "write the record of outings for home-education authorities")
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
    told("learned", "tell what the outings teach, beside the usual figures")
