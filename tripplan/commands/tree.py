"""The commands and their tasks: what each is called and does, with examples, and nothing of how it is done.

Modules and options are named by text and loaded for the command that is meant, so that help comes at once.
"""

from collections.abc import Sequence
from dataclasses import dataclass

_ROADS_GUIDE = """\
Where to get a map file: extracts of OpenStreetMap by region are offered by several servers; search for
"OpenStreetMap extract" and your state or country, and save the file that ends in .osm.pbf. This program
fetches nothing. Take a map that holds home and the places, with some room around: a road beyond its border
is not known. A build that is interrupted goes on from the middle if it got that far, else it starts anew,
when the same command is given again; a half built region is never used."""
_NEARBY_GUIDE = """\
Kinds: museum, zoo, aquarium, planetarium, farm, garden, nature reserve, mill, lock, lighthouse, castle,
historic site, library, playground and more. It needs one more package, osmium: tripplan help nearby."""
_SCHOOLS_GUIDE = """\
A table (.csv) has the columns: first day, last day, name, kind. The last day and the kind may be empty; a
kind is no school, short day, first day of school, last day of school or other. Dates read like 2026-12-24.
A file brought in again keeps what was ticked on the screen."""


@dataclass(frozen=True)
class Command:
    """A command, or a task of one.

    Attributes:
        name: what the user types.
        help: what it does, in one line.
        options: the class of its options, below `tripplan.commands.options`.
        examples: command lines that work, one after the other as they stand here, without the program's name.
        module: where it is carried out, below `tripplan.commands`; as the command where empty.
        guide: what else to know, in a paragraph.
    """

    name: str
    help: str
    options: str
    examples: tuple[str, ...]
    module: str = ""
    guide: str = ""


@dataclass(frozen=True)
class Group:
    """A command that has tasks.

    Attributes:
        name: what the user types.
        help: what it does, in one line.
        tasks: what comes behind the name.
        module: where they are carried out, below `tripplan.commands`.
        guide: what else to know, in a paragraph.
    """

    name: str
    help: str
    tasks: tuple[Command, ...]
    module: str
    guide: str = ""


_D = "--demo --today 2026-11-25"
COMMANDS: Sequence[Command | Group] = (
    Command(
        "compare",
        "compare places by what an outing costs in all, each on its best day",
        "outings.CompareOptions",
        (f"compare {_D}", f"compare ledgewing tern-landing {_D} --to 2026-12-20 --why"),
    ),
    Command(
        "days",
        "rank the days of a span by cost plus hassle",
        "outings.DaysOptions",
        (
            f"days {_D} --most 5",
            f"days {_D} --weekdays Tu We Th --budget 120 --full-house 12 --worth full-house 35",
        ),
    ),
    Command(
        "day",
        "plan one day at one place, hour by hour",
        "outings.DayOptions",
        (
            f"day ledgewing 2026-12-17 {_D} --party Tamsin Petra Odile Bram",
            f"day ledgewing 2026-12-17 {_D} --grid 1 --leave-home 10:20 --leave-place 14:10",
        ),
    ),
    Command(
        "calendar",
        "write planned outings as a calendar file, or send them to your calendar server",
        "outings.CalendarOptions",
        (f"calendar ledgewing 2026-12-17 {_D} --out outing.ics --replace",),
        module="calendars.calendar",
    ),
    Command(
        "sheet",
        "write an outing as a page to print and take along",
        "outings.SheetOptions",
        (
            f"sheet ledgewing 2026-12-17 {_D} --out outing.pdf --replace",
            f"sheet ledgewing 2026-12-17 {_D} --phone --out phone.html --replace",
        ),
    ),
    Command(
        "passes",
        "find which annual passes pay for a list of visits",
        "outings.PassesOptions",
        (f"passes {_D} --visit tern-landing 2026-12-05 2027-01-16 2027-02-13",),
    ),
    Command(
        "together",
        "go with other households: one price, a fair split, seats, how to settle it",
        "outings.TogetherOptions",
        (f'together oatsparrow-farm 2026-12-12 {_D} --group Thistlewood "41, 38, 12, 10, 19 mo" 7 40.00',),
    ),
    Group(
        "logbook",
        "write outings down, and tell what they add up to",
        (
            Command(
                "draft",
                "write a file to fill in with how an outing was",
                "family.LogbookDraftOptions",
                (f"logbook draft ledgewing 2026-11-20 {_D} --out filled-in.toml --replace",),
            ),
            Command(
                "write",
                "put filled-in files into the logbook",
                "family.LogbookWriteOptions",
                (f"logbook write filled-in.toml {_D} --replace",),
            ),
            Command(
                "remove",
                "take an outing out of the logbook; it stays in the records' history",
                "family.LogbookRemoveOptions",
                (f"logbook remove 2026-11-20-ledgewing {_D}",),
            ),
            Command(
                "list",
                "tell the outings that were written down",
                "family.LogbookListOptions",
                (f"logbook list {_D} --why",),
            ),
            Command(
                "year",
                "tell what a year's outings have cost, and what is left",
                "family.LogbookYearOptions",
                (f"logbook year {_D}",),
            ),
            Command(
                "record",
                "write the record of outings for home-education authorities",
                "family.LogbookRecordOptions",
                (f"logbook record {_D} --names Ivo --out record.html --replace",),
            ),
            Command(
                "learned",
                "tell what the outings teach, beside the usual figures",
                "files.RecordsListOptions",
                (f"logbook learned {_D}",),
            ),
        ),
        module="logbook.logbook",
    ),
    Group(
        "study",
        "study units, places that fit, and a term's programme of outings",
        (
            Command(
                "list",
                "tell the study units and the places that fit",
                "study.StudyListOptions",
                (f"study list {_D}",),
            ),
            Command(
                "programme",
                "choose one outing a unit, together within the budget",
                "study.StudyProgrammeOptions",
                (f"study programme {_D}",),
            ),
            Command(
                "add",
                "add a study unit, or change the one of this name; of it stays what is not named",
                "study.StudyAddOptions",
                (f'study add "From grain to bread" {_D} --to 2026-12-18 --budget 100',),
            ),
            Command(
                "limits",
                "tell what a programme keeps to, or change it; what is not named stays",
                "study.StudyLimitsOptions",
                (f"study limits {_D} --budget 280 --careful",),
            ),
            Command(
                "fix",
                "fix the place, the day or both of a unit's outing",
                "study.StudyFixOptions",
                (f'study fix "Stone and water" {_D} --place candlewick-sink-cave',),
            ),
            Command(
                "rule-out",
                "say where a unit's outing does not go, or where not on some days",
                "study.StudyRuleOutOptions",
                (f'study rule-out "Who eats whom" tern-landing {_D} --on 2027-01-09 2027-01-10',),
            ),
            Command(
                "free",
                "forget what is fixed and ruled out for a unit, and give it an outing again",
                "study.UnitOptions",
                (f'study free "Stone and water" {_D}',),
            ),
            Command(
                "remove",
                "take a study unit off the records",
                "study.UnitOptions",
                (f'study remove "Stone and water" {_D}',),
            ),
        ),
        module="study.study",
    ),
    Group(
        "busy",
        "when the family is busy: calendars, fixed blocks, working hours",
        (
            Command(
                "list",
                "tell what keeps the family busy",
                "files.RecordsListOptions",
                (f"busy list {_D}",),
            ),
            Command(
                "file",
                "read a calendar file (.ics); read again, it replaces what it held",
                "family.BusyFileOptions",
                (f"busy file demo_places/calendars/quillmarsh-family.ics {_D} --name Ours",),
            ),
            Command(
                "block",
                "add a fixed weekly block; one of this name is replaced",
                "family.BusyBlockOptions",
                (f"busy block Piano 16:00 17:00 Tu Th {_D} --from 2027-01-05",),
            ),
            Command(
                "work",
                "add an adult's working hours",
                "family.BusyWorkOptions",
                (f"busy work Joel 08:00 16:00 Mo Tu We {_D} --without",),
            ),
            Command(
                "late",
                "say what a late evening does to the next day",
                "family.BusyLateOptions",
                (f"busy late 21:30 {_D} --not-before 10:00",),
            ),
            Command(
                "remove",
                "take a fixed block, working hours or a calendar off the records",
                "family.NameOptions",
                (f"busy remove Piano {_D}",),
            ),
        ),
        module="calendars.busy",
    ),
    Group(
        "holidays",
        "public holidays, and the festivals and local days you add",
        (
            Command(
                "list",
                "tell the coming year's public holidays and the local days on record",
                "files.RecordsListOptions",
                (f"holidays list {_D}",),
            ),
            Command(
                "add",
                "add a festival or local day off, or change the one of this name",
                "family.HolidaysAddOptions",
                (f'holidays add "Hop fair" 2027-09-17 2027-09-19 {_D} --town "Dubuque, IA"',),
            ),
            Command(
                "remove",
                "take a local day off the records",
                "family.NameOptions",
                (f'holidays remove "Hop fair" {_D}',),
            ),
        ),
        module="calendars.holidays",
    ),
    Group(
        "schools",
        "bring in school calendars, and tell how far they reach",
        (
            Command(
                "list",
                "list the school calendars on record, and what is known around each place",
                "files.RecordsListOptions",
                (f"schools list {_D}",),
            ),
            Command(
                "regions",
                "list the regions whose school breaks are built in",
                "files.SchoolsRegionsOptions",
                (f"schools regions DE {_D}",),
            ),
            Command(
                "add",
                "put a built-in region or a district's file on record",
                "files.SchoolsAddOptions",
                (f"schools add DE-BW {_D}",),
                guide=_SCHOOLS_GUIDE,
            ),
            Command(
                "look",
                "look through a district's file: what each entry is taken for, and why",
                "files.SchoolsLookOptions",
                (f"schools look demo_places/calendars/otter-slough-district-wi.ics {_D}",),
                guide=_SCHOOLS_GUIDE,
            ),
            Command(
                "show",
                "tell one calendar's breaks, short days and guesses",
                "files.CalendarNameOptions",
                (f'schools show "Baden-Württemberg (school holidays)" {_D}',),
            ),
            Command(
                "guess",
                "guess the year after a calendar's end from its last year, and mark it so",
                "files.CalendarNameOptions",
                (f'schools guess "Otter Slough district (invented)" {_D}',),
            ),
            Command(
                "remove",
                "take a calendar off the records",
                "files.CalendarNameOptions",
                (f'schools remove "Baden-Württemberg (school holidays)" {_D}',),
            ),
        ),
        module="calendars.schools",
        guide=_SCHOOLS_GUIDE,
    ),
    Command(
        "check",
        "find every fault in place cards and household files",
        "files.CheckOptions",
        ("check demo_places/places demo_places/household.toml --today 2026-11-25",),
    ),
    Group(
        "idea",
        "keep places that you know little more of than the name, as a wish list",
        (
            Command(
                "add",
                "write an idea down, of which all but the name may be unknown; it counts at once",
                "files.IdeaAddOptions",
                (f'idea add "Fish ladder, about $20 for us, an hour away" {_D} --topics animals water',),
            ),
            Command(
                "list",
                "tell the ideas on record, what is not known of them, and what to ask",
                "files.RecordsListOptions",
                (f"idea list {_D}",),
            ),
            Command(
                "remove",
                "take an idea off the records",
                "files.IdeaNameOptions",
                (f'idea remove "Fish ladder" {_D}',),
            ),
        ),
        module="places.idea",
    ),
    Command(
        "read",
        "read prices and opening hours out of a text or a saved web page",
        "files.ReadOptions",
        ("read demo_places/price-board.txt --country US",),
        module="places.read",
    ),
    Command(
        "nearby",
        "find places to go near home in a map file, nearest first",
        "files.NearbyOptions",
        ("nearby iowa.osm.pbf --demo --kind museum farm --drive 60",),
        module="places.nearby",
        guide=_NEARBY_GUIDE,
    ),
    Group(
        "roads",
        "use the real roads of a region, from a map file",
        (
            Command(
                "build",
                "build the road network of a region from a map file",
                "files.RoadsBuildOptions",
                ("roads build iowa.osm.pbf --name iowa",),
                guide=_ROADS_GUIDE,
            ),
            Command("list", "list the regions on this computer", "shared.DataOptions", ("roads list",)),
            Command(
                "remove",
                "remove a region from this computer",
                "files.RoadsRemoveOptions",
                ("roads remove iowa",),
            ),
            Command(
                "ask",
                "tell the drive between two points; put -- before a latitude below zero",
                "files.RoadsAskOptions",
                ("roads ask 42.5006,-90.6646 43.1,-90.4",),
            ),
        ),
        module="roads",
        guide=_ROADS_GUIDE,
    ),
    Command(
        "schema",
        "print the JSON schema of a file or an answer",
        "files.SchemaOptions",
        ("schema place",),
    ),
    Command(
        "export",
        "write all records to one file",
        "files.ExportOptions",
        ("export records.json --demo --replace",),
        module="whole_records.export_records",
    ),
    Command(
        "restore",
        "put the copy of an earlier day in the place of your own records",
        "files.RestoreOptions",
        ("restore",),
        module="whole_records.restore",
    ),
    Command(
        "import",
        "put what an exported file holds in the place of your own records",
        "files.ImportOptions",
        ("import records.json",),
        module="whole_records.import_records",
    ),
    Command("app", "open the screens in a browser", "files.AppOptions", ("app",)),
    Command(
        "help",
        "read the guide: pages, roads, calendar server, privacy and the rest",
        "files.HelpOptions",
        ("help", "help privacy", "help commands", "help days", "help study add"),
        module="help_topics",
    ),
)
