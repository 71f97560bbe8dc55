"""The options of the commands about maps, school calendars, cards and whole records."""

from dataclasses import dataclass, field
from typing import Annotated, Literal

from tripplan.commands.options.shared import (
    CarriedOut,
    DataOptions,
    JsonOption,
    OwnRecordsOptions,
    RecordsOptions,
    Replace,
    Words,
    argument,
    name_said,
    option,
    several,
)

Form = Literal[
    "place",
    "household",
    "logbook",
    "compare",
    "days",
    "day",
    "passes",
    "together",
    "check",
    "read",
    "nearby",
    "idea-list",
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
]
"""Three forms that a parent writes, and the JSON answers of the commands."""


@dataclass(frozen=True, kw_only=True)
class RoadsBuildOptions(DataOptions):
    """The options of `tripplan roads build`."""

    file: Annotated[str, argument("REGION.osm.pbf", "an OpenStreetMap extract on this computer")]
    name: Annotated[
        str | None,
        option("--name", "what to call the region; as the file where not given", "NAME"),
    ] = None


@dataclass(frozen=True, kw_only=True)
class RoadsRemoveOptions(DataOptions):
    """The options of `tripplan roads remove`."""

    name: Annotated[str, argument("NAME", "what the region is called")]


@dataclass(frozen=True, kw_only=True)
class RoadsAskOptions(DataOptions):
    """The options of `tripplan roads ask`."""

    origin: Annotated[str, argument("LAT,LON", "where the drive starts")]
    destination: Annotated[str, argument("LAT,LON", "where it ends")]


@dataclass(frozen=True, kw_only=True)
class RecordsListOptions(OwnRecordsOptions, JsonOption):
    """The options of a task that tells what is on record."""


@dataclass(frozen=True, kw_only=True)
class SchoolsRegionsOptions(OwnRecordsOptions):
    """The options of `tripplan schools regions`."""

    country: Annotated[str | None, argument("COUNTRY", "code of two letters; all where not given")] = None


@dataclass(frozen=True, kw_only=True)
class CalendarNameOptions(OwnRecordsOptions):
    """The options of a task about one school calendar."""

    name: Annotated[str, argument("NAME", "what the calendar is called")]


@dataclass(frozen=True, kw_only=True)
class SchoolsLookOptions(OwnRecordsOptions):
    """The options of `tripplan schools look`."""

    source: Annotated[str, argument("FILE", "a .ics or .csv file")]
    dates: Annotated[
        Literal["day-first", "month-first"] | None,
        option("--dates", "how a table writes dates such as 03/04/2027"),
    ] = None
    no_school: Annotated[
        Words,
        several(
            "--no-school", "entries called so are days without school, whatever they were taken for", "TITLE"
        ),
    ] = field(default_factory=Words)
    short: Annotated[
        Words,
        several("--short", "entries called so are short days, with school", "TITLE"),
    ] = field(default_factory=Words)
    school: Annotated[
        Words,
        several("--school", "entries called so are days with school as always", "TITLE"),
    ] = field(default_factory=Words)


@dataclass(frozen=True, kw_only=True)
class SchoolsAddOptions(SchoolsLookOptions):
    """The options of `tripplan schools add`."""

    source: Annotated[str, argument("REGION|FILE", "a region such as DE-BY, or a .ics or .csv file")]
    name: Annotated[
        str | None,
        option("--name", "what to call it; as it calls itself where not given", "NAME", parser=name_said),
    ] = None
    at: Annotated[
        str | None,
        option("--at", "where its students live; at home where not given", "WHERE"),
    ] = None
    pupils: Annotated[
        int | None,
        option("--students", "how many students follow it, roughly", "N", min=1),
    ] = None


@dataclass(frozen=True, kw_only=True)
class CheckOptions(JsonOption):
    """The options of `tripplan check`."""

    file: Annotated[list[str], argument("FILE", "place cards, household files, or folders of them")]
    household: Annotated[bool, option("--household", "take every file for a household file")] = False
    today: Annotated[str | None, option("--today", "check as if today were this date", "DATE")] = None


@dataclass(frozen=True, kw_only=True)
class IdeaAddOptions(OwnRecordsOptions):
    """The options of `tripplan idea add`."""

    line: Annotated[
        str, argument("IDEA", "a name, and what you guess: 'Fish ladder, about $20 for us, an hour away'")
    ]
    topics: Annotated[Words, several("--topics", "what can be studied there", "TOPIC")] = field(
        default_factory=Words
    )
    where: Annotated[str | None, option("--where", "a town, ZIP code or address", "WHERE")] = None
    hours: Annotated[
        str | None, option("--hours", "when it is open, as the place writes it or as on a card", "HOURS")
    ] = None
    web: Annotated[str | None, option("--web", "address of its page", "ADDRESS")] = None


@dataclass(frozen=True, kw_only=True)
class IdeaNameOptions(OwnRecordsOptions):
    """The options of `tripplan idea remove`."""

    name: Annotated[str, argument("NAME", "the idea's name or id")]


@dataclass(frozen=True, kw_only=True)
class ReadOptions(JsonOption):
    """The options of `tripplan read`."""

    file: Annotated[
        str, argument("FILE", "a text, or a saved web page (.html, .mhtml); - for standard input")
    ]
    country: Annotated[
        str | None, option("--country", "where the place is, such as US; settles what a dollar is", "CODE")
    ] = None


@dataclass(frozen=True, kw_only=True)
class NearbyOptions(OwnRecordsOptions, JsonOption):
    """The options of `tripplan nearby`."""

    file: Annotated[str, argument("EXTRACT", "an OpenStreetMap extract (.osm.pbf) on this computer")]
    kind: Annotated[
        Words, several("--kind", "only places of these kinds, such as museum or 'nature reserve'", "KIND")
    ] = field(default_factory=Words)
    topic: Annotated[
        str | None, option("--topic", "only where this can usually be studied, such as animals", "TOPIC")
    ] = None
    drive: Annotated[int | None, option("--drive", "the longest drive one way", "MINUTES", min=1)] = None
    most: Annotated[int, option("--most", "how many to show", "N", min=1, max=1000)] = 20


@dataclass(frozen=True, kw_only=True)
class SchemaOptions:
    """The options of `tripplan schema`."""

    form: Annotated[Form, argument("FORM", "a file's form, or a command's answer in JSON")]


@dataclass(frozen=True, kw_only=True)
class ExportOptions(RecordsOptions):
    """The options of `tripplan export`."""

    file: Annotated[str, argument("FILE", "the file to write; - prints it")]
    replace: Replace = False


@dataclass(frozen=True, kw_only=True)
class RestoreOptions(DataOptions):
    """The options of `tripplan restore`."""

    day: Annotated[
        str | None,
        argument("DATE", "the day whose copy to put back; without it, list the copies"),
    ] = None
    yes: CarriedOut = False


@dataclass(frozen=True, kw_only=True)
class ImportOptions(DataOptions, JsonOption):
    """The options of `tripplan import`."""

    file: Annotated[str, argument("FILE", "a file written by 'tripplan export'")]
    yes: CarriedOut = False


@dataclass(frozen=True, kw_only=True)
class HelpOptions:
    """The options of `tripplan help`."""

    topic: Annotated[
        list[str] | None,
        argument("TOPIC", "what to read about, or a command such as days; without it, list the topics"),
    ] = None


@dataclass(frozen=True, kw_only=True)
class AppOptions:
    """The options of `tripplan app`."""

    port: Annotated[int, option("--port", "where the screens answer", "N", min=1024, max=65535)] = 8501
    no_browser: Annotated[bool, option("--no-browser", "do not open them in a browser")] = False
    phone: Annotated[bool, option("--phone", "let a phone in by a code, as the page Phones does")] = False
