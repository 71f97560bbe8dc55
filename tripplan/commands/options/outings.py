"""The options of the commands that plan outings."""

from dataclasses import dataclass, field
from typing import Annotated, Literal

from typer import BadParameter

from tripplan.commands.options.shared import (
    DayArgument,
    JsonOption,
    Paper,
    PlaceArgument,
    PlanningOptions,
    Replace,
    SpanOptions,
    Words,
    argument,
    only_one,
    option,
    several,
)

LONGEST_GRID_MINUTES = 60
"""Departures further apart than this are no plan of a day [min]."""
WHEREABOUTS = ("home", "way", "there", "back")
"""Where a party can be when its day goes wrong."""
_WISHES, _WRONG, _LEAVING = "What the day should be like", "When it goes wrong", "When to leave"


@dataclass(frozen=True, kw_only=True)
class CompareOptions(SpanOptions, PlanningOptions, JsonOption):
    """The options of `tripplan compare`."""

    place: Annotated[
        list[str] | None,
        argument("PLACE", "ids or names of places; those compared on the screens where none is given"),
    ] = None
    on: Annotated[
        str | None,
        option("--on", "compare on this day, instead of each place's best", "DATE"),
    ] = None
    why: Annotated[bool, option("--why", "tell what every total is made of")] = False


@dataclass(frozen=True, kw_only=True)
class DaysOptions(SpanOptions, PlanningOptions, JsonOption):
    """The options of `tripplan days`."""

    place: Annotated[
        list[str] | None,
        argument("PLACE", "ids or names of places; all but those of late where none is given"),
    ] = None
    again: Annotated[bool, option("--again", "also places planned for or visited in the last four weeks")] = (
        False
    )
    free_from: Annotated[
        str | None,
        option(
            "--free-from",
            "an hour opens up: leave home no earlier, today or on the days named",
            "HH:MM",
        ),
    ] = None
    free_until: Annotated[
        str | None,
        option("--free-until", "home again by then, likewise; one of the two is enough", "HH:MM"),
    ] = None
    most: Annotated[int, option("--most", "how many days are told", "N", min=1)] = 10
    why: Annotated[bool, option("--why", "tell why days are full, and why others are passed over")] = False
    table: Annotated[
        str | None,
        option("--table", "write every such day to a table (.csv) as well; - prints it alone", "FILE"),
    ] = None
    replace: Replace = False
    weekdays: Annotated[
        Words | None,
        several("--weekdays", "only on these, such as Tu We Th", "DAY", panel=_WISHES),
    ] = None
    budget: Annotated[
        str | None,
        option("--budget", "a likely total of at most so much", "AMOUNT", panel=_WISHES),
    ] = None
    drive: Annotated[
        int | None,
        option(
            "--drive",
            "neither drive longer than so many minutes",
            "MINUTES",
            panel=_WISHES,
            min=1,
        ),
    ] = None
    nap: Annotated[
        int | None,
        option("--nap", "at least so much of the naps kept", "PERCENT", panel=_WISHES, min=0),
    ] = None
    full_house: Annotated[
        int | None,
        option(
            "--full-house", "a chance of a full house of at most so much", "PERCENT", panel=_WISHES, min=0
        ),
    ] = None
    indoors: Annotated[bool, option("--indoors", "only places that are indoors or both", panel=_WISHES)] = (
        False
    )
    outdoors: Annotated[
        bool, option("--outdoors", "only places that are outdoors or both", panel=_WISHES)
    ] = False
    in_term: Annotated[
        bool,
        option("--in-term", "only while most students nearby have school, or likely have", panel=_WISHES),
    ] = False
    daylight: Annotated[bool, option("--daylight", "no driving in the dark", panel=_WISHES)] = False
    home_by: Annotated[
        str | None,
        option("--home-by", "home again by then", "HH:MM", panel=_WISHES),
    ] = None
    unit: Annotated[
        str | None,
        option("--unit", "in this study unit's weeks, at places that fit it", "NAME", panel=_WISHES),
    ] = None
    worth: Annotated[
        list[Words],
        several(
            "--worth",
            "weigh a hassle otherwise than the household says, such as full-house 35; may be repeated",
            "HASSLE AMOUNT",
            panel=_WISHES,
        ),
    ] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Refuse both kinds of roof at once, and half a weight."""
        super().__post_init__()
        only_one(indoors=self.indoors, outdoors=self.outdoors)
        if any(len(pair) != 2 for pair in self.worth):
            raise BadParameter("--worth takes a hassle and an amount")

    @property
    def air(self) -> Literal["indoors", "outdoors"] | None:
        """Under what sky."""
        return "indoors" if self.indoors else "outdoors" if self.outdoors else None


@dataclass(frozen=True, kw_only=True)
class LeavingOptions:
    """When to leave."""

    grid: Annotated[
        int | None,
        option(
            "--grid",
            "try departures and returns so many minutes apart: 1 plans to the minute; 5 where not given",
            "MINUTES",
            panel=_LEAVING,
            min=1,
            max=LONGEST_GRID_MINUTES,
        ),
    ] = None
    leave_home: Annotated[
        str | None,
        option(
            "--leave-home",
            "with --leave-place: what leaving just then gives, or which limits it crosses",
            "HH:MM",
            panel=_LEAVING,
        ),
    ] = None
    leave_place: Annotated[
        str | None,
        option("--leave-place", "when to start home, by the clock there", "HH:MM", panel=_LEAVING),
    ] = None


@dataclass(frozen=True, kw_only=True)
class DayOptions(PlanningOptions, LeavingOptions, JsonOption):
    """The options of `tripplan day`."""

    place: PlaceArgument
    day: DayArgument
    late: Annotated[
        int | None,
        option(
            "--late",
            "running late by so many minutes: what can be done now",
            "MINUTES",
            panel=_WRONG,
            min=0,
            max=999,
        ),
    ] = None
    where: Annotated[
        Literal["home", "way", "there", "back"],
        option(
            "--where", "where you are by then: at home, on the way, there, or on the way back", panel=_WRONG
        ),
    ] = "home"
    to_drive: Annotated[
        int | None,
        option(
            "--to-drive",
            "on either way: how far it still is; half where not given",
            "MINUTES",
            panel=_WRONG,
            min=0,
            max=999,
        ),
    ] = None
    now: Annotated[
        str | None,
        option("--now", "there: what time it is; when you got in where not given", "HH:MM", panel=_WRONG),
    ] = None
    asleep: Annotated[
        str | None,
        option("--asleep", "who has just fallen asleep", "NAME", panel=_WRONG),
    ] = None
    ill: Annotated[str | None, option("--ill", "the child that is ill", "NAME", panel=_WRONG)] = None
    stays: Annotated[
        str | None,
        option("--stays", "who stays at home with it; who suits best where not given", "NAME", panel=_WRONG),
    ] = None
    weather: Annotated[
        str | None,
        option(
            "--weather",
            "what the weather is going to be, such as 'rain', '95' or 'dry, 40 to 55'; counts instead of the "
            "usual",
            "WORDS",
        ),
    ] = None
    forecast: Annotated[
        bool,
        option(
            "--forecast",
            "ask a public weather service for that day; sends where the place is, to about a kilometer, and "
            "this program's name",
        ),
    ] = False
    rain: Annotated[bool, option("--rain", "it rains", panel=_WRONG)] = False
    paid: Annotated[bool, option("--paid", "the tickets are paid for already", panel=_WRONG)] = False


@dataclass(frozen=True, kw_only=True)
class CalendarOptions(PlanningOptions, LeavingOptions):
    """The options of `tripplan calendar`."""

    place: Annotated[str | None, argument("PLACE", "id or name of a place")] = None
    day: Annotated[str | None, argument("DATE", "day of the visit")] = None
    planned: Annotated[
        bool,
        option("--planned", "all outings planned for the year to come, each as it was saved, instead of one"),
    ] = False
    out: Annotated[str | None, option("--out", "the calendar file (.ics) to write; - prints it", "FILE")] = (
        None
    )
    send: Annotated[
        bool,
        option(
            "--send",
            "send it to your own calendar server, as set up on the Calendar page, with whatever else waits",
        ),
    ] = False
    replace: Replace = False
    parts: Annotated[bool, option("--parts", "three entries (drive, visit, way home) instead of one")] = False
    tentative: Annotated[bool, option("--tentative", "mark the outing as not yet certain")] = False
    names: Annotated[bool, option("--names", "let people's names into the entry")] = False
    home: Annotated[bool, option("--home", "let the home address into the entry")] = False
    no_costs: Annotated[bool, option("--no-costs", "keep prices out of the entry")] = False
    no_reminders: Annotated[bool, option("--no-reminders", "leave the reminders out")] = False
    to_do: Annotated[
        Literal["none", "tasks", "entries"],
        option("--to-do", "booking and packing as tasks, or as short entries for calendars without tasks"),
    ] = "none"
    free: Annotated[bool, option("--free", "do not mark the time as taken")] = False
    colour: Annotated[
        str | None,
        option("--color", "color the entry: one of CSS's sixteen basic names", "NAME"),
    ] = None

    def __post_init__(self) -> None:
        """Ask for one of the two ways out."""
        super().__post_init__()
        only_one(out=self.out is not None, send=self.send)
        if self.out is None and not self.send:
            raise BadParameter("say where to, with --out or --send")


@dataclass(frozen=True, kw_only=True)
class SheetOptions(PlanningOptions, LeavingOptions):
    """The options of `tripplan sheet`."""

    place: PlaceArgument
    day: DayArgument
    out: Annotated[
        str,
        option(
            "--out", "the sheet to write: .html (for phone and printer) or .pdf; - prints the HTML", "FILE"
        ),
    ]
    replace: Replace = False
    paper: Paper = None
    phone: Annotated[
        bool,
        option(
            "--phone",
            "the page for the phone instead (.html): what to do now in large type, by the phone's own clock",
        ),
    ] = False
    names: Annotated[bool, option("--names", "let names onto the page for the phone")] = False
    needs: Annotated[bool, option("--needs", "let noted allergies and needs onto the sheet")] = False
    birth_dates: Annotated[bool, option("--birth-dates", "let birth dates onto the sheet")] = False
    home: Annotated[bool, option("--home", "let the home address onto the sheet")] = False


@dataclass(frozen=True, kw_only=True)
class PassesOptions(PlanningOptions, JsonOption):
    """The options of `tripplan passes`."""

    visit: Annotated[
        list[Words],
        several("--visit", "a place and the days of visits to it; may be repeated", "PLACE DATE"),
    ] = field(default_factory=list)
    planned: Annotated[
        bool,
        option("--planned", "count planned outings and visits listed on the screens too; so without --visit"),
    ] = False


@dataclass(frozen=True, kw_only=True)
class TogetherOptions(PlanningOptions, JsonOption):
    """The options of `tripplan together`."""

    place: PlaceArgument
    day: DayArgument
    group: Annotated[
        list[Words],
        several(
            "--group",
            "another household: its name, the ages of its people such as '38, 9, 16 mo' or "
            "'38 (educator), 9', seats in its cars (else 5), and what it has paid; may be repeated; "
            "those on the screens where none is given",
            "NAME AGES",
        ),
    ] = field(default_factory=list)
    seats: Annotated[
        str | None,
        option("--seats", "seats in your own cars; those of your car where not given", "N"),
    ] = None
    paid: Annotated[str | None, option("--paid", "what you have paid for everybody already", "AMOUNT")] = None
    payer: Annotated[
        str | None,
        option("--payer", "the household that pays the rest at the ticket counter", "NAME"),
    ] = None
