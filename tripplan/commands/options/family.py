"""The options of the commands about the family's busy times, holidays and its logbook."""

from dataclasses import dataclass, field
from datetime import date
from typing import Annotated

from typer import BadParameter

from tripplan.commands.options.shared import (
    Dates,
    JsonOption,
    OwnRecordsOptions,
    Paper,
    Replace,
    Words,
    argument,
    date_said,
    dates_said,
    name_said,
    only_one,
    option,
    several,
)


@dataclass(frozen=True, kw_only=True)
class BusyFileOptions(OwnRecordsOptions):
    """The options of `tripplan busy file`."""

    file: Annotated[str, argument("FILE", "the calendar file")]
    keep_names: Annotated[bool, option("--keep-names", "keep what the entries say, not times only")] = False
    name: Annotated[
        str | None,
        option("--name", "what to call it; as it calls itself where not given", "NAME", parser=name_said),
    ] = None
    addresses: Annotated[
        Words,
        several(
            "--addresses",
            "your e-mail addresses, by which invitations you declined are known; they are not kept",
            "ADDRESS",
        ),
    ] = field(default_factory=Words)
    not_busy: Annotated[
        Words,
        several("--not-busy", "entries called so do not stand in the way of an outing", "TITLE"),
    ] = field(default_factory=Words)


@dataclass(frozen=True, kw_only=True)
class WeeklyOptions(OwnRecordsOptions):
    """When something is every week."""

    start: Annotated[str, argument("START", "when it begins, such as 16:00")]
    end: Annotated[str, argument("END", "when it is over")]
    days: Annotated[list[str], argument("DAY", "Mo, Tu, We, Th, Fr, Sa or Su")]
    from_day: Annotated[date | None, option("--from", "the first day of it", "DATE", parser=date_said)] = None
    to_day: Annotated[date | None, option("--to", "the last day of it", "DATE", parser=date_said)] = None
    every_weeks: Annotated[
        int | None,
        option(
            "--every-weeks",
            "every so many weeks, counted from the week of --from; each week where not given",
            "N",
            min=1,
        ),
    ] = None
    not_during: Annotated[
        list[Dates],
        several(
            "--not-during",
            "not from one day to another, such as a break; may be repeated",
            "FIRST LAST",
            parser=dates_said,
        ),
    ] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Refuse half a break."""
        super().__post_init__()
        if any(len(days) != 2 for days in self.not_during):
            raise BadParameter("--not-during takes a first and a last day")


@dataclass(frozen=True, kw_only=True)
class _BlockName:
    name: Annotated[str, argument("NAME", "what it is")]


@dataclass(frozen=True, kw_only=True)
class BusyBlockOptions(WeeklyOptions, _BlockName):
    """The options of `tripplan busy block`; the name comes before the times."""


@dataclass(frozen=True, kw_only=True)
class _Worker:
    member: Annotated[str, argument("MEMBER", "who works")]


@dataclass(frozen=True, kw_only=True)
class BusyWorkOptions(WeeklyOptions, _Worker):
    """The options of `tripplan busy work`; the member comes before the times."""

    without: Annotated[bool, option("--without", "outings go without this adult; else they wait")] = False
    on_holidays: Annotated[
        bool,
        option("--on-holidays", "also on public holidays and local days off around home, else free"),
    ] = False


@dataclass(frozen=True, kw_only=True)
class BusyLateOptions(OwnRecordsOptions):
    """The options of `tripplan busy late`."""

    after: Annotated[
        str,
        argument("TIME", "an entry that ends later than this is late; 'never': it does nothing"),
    ]
    not_before: Annotated[
        str | None,
        option("--not-before", "leave no earlier the next day; it is not free where not given", "TIME"),
    ] = None


@dataclass(frozen=True, kw_only=True)
class NameOptions(OwnRecordsOptions):
    """The options of a task that takes something off the records."""

    name: Annotated[str, argument("NAME", "what it is called, or who works no more")]


@dataclass(frozen=True, kw_only=True)
class HolidaysAddOptions(OwnRecordsOptions):
    """The options of `tripplan holidays add`."""

    name: Annotated[str, argument("NAME", "what it is called")]
    first: Annotated[date, argument("DATE", "its first day", parser=date_said)]
    last: Annotated[
        date | None,
        argument("LAST", "its last day; the first where not given", parser=date_said),
    ] = None
    place: Annotated[
        str | None,
        option("--place", "the one place it concerns: an id or a name", "PLACE"),
    ] = None
    town: Annotated[
        str | None,
        option("--town", "the town it concerns, with all places near", "WHERE"),
    ] = None
    within: Annotated[
        float | None,
        option("--within", "how far around the town places are near; 25 where not given", "KM"),
    ] = None
    crowd: Annotated[
        str | None,
        option("--crowd", "how many times the usual visitors come; 1.5, a guess, where not given", "FACTOR"),
    ] = None
    every_year: Annotated[bool, option("--every-year", "it comes back on the same dates")] = False
    day_off: Annotated[bool, option("--day-off", "people there are off work")] = False
    holiday_hours: Annotated[
        bool,
        option(
            "--holiday-hours", "places there keep the hours and prices of a public holiday; else they do not"
        ),
    ] = False

    def __post_init__(self) -> None:
        """Ask for one place or town."""
        super().__post_init__()
        only_one(place=self.place is not None, town=self.town is not None)
        if self.place is None and self.town is None:
            raise BadParameter("say where, with --place or --town")


@dataclass(frozen=True, kw_only=True)
class PeriodOptions(OwnRecordsOptions, JsonOption):
    """The first and the last day that are told about."""

    first: Annotated[str | None, option("--from", "the first day", "DATE")] = None
    last: Annotated[str | None, option("--to", "the last day", "DATE")] = None


@dataclass(frozen=True, kw_only=True)
class LogbookDraftOptions(OwnRecordsOptions):
    """The options of `tripplan logbook draft`."""

    place: Annotated[str | None, argument("PLACE", "id or name of a place")] = None
    day: Annotated[str | None, argument("DATE", "day of the outing; today where not given")] = None
    planned: Annotated[str | None, option("--planned", "the planned outing that it was", "ID")] = None
    as_planned: Annotated[bool, option("--as-planned", "fill in what the plan had said")] = False
    out: Annotated[str, option("--out", "the file (.toml); - prints it", "FILE")] = "-"
    replace: Replace = False


@dataclass(frozen=True, kw_only=True)
class LogbookWriteOptions(OwnRecordsOptions):
    """The options of `tripplan logbook write`."""

    file: Annotated[list[str], argument("FILE", "a file as draft writes it")]
    replace: Annotated[bool, option("--replace", "change an entry that is there already")] = False


@dataclass(frozen=True, kw_only=True)
class LogbookRemoveOptions(OwnRecordsOptions):
    """The options of `tripplan logbook remove`."""

    id: Annotated[str, argument("ID", "the entry's id, as list --json tells it")]


@dataclass(frozen=True, kw_only=True)
class LogbookListOptions(PeriodOptions):
    """The options of `tripplan logbook list`."""

    why: Annotated[bool, option("--why", "tell each in full, and against its plan")] = False
    csv: Annotated[str | None, option("--csv", "write them as a table; - prints it", "FILE")] = None
    replace: Replace = False


@dataclass(frozen=True, kw_only=True)
class LogbookYearOptions(OwnRecordsOptions, JsonOption):
    """The options of `tripplan logbook year`."""

    of: Annotated[str | None, option("--of", "any day of that year; today where not given", "DATE")] = None


@dataclass(frozen=True, kw_only=True)
class LogbookRecordOptions(PeriodOptions):
    """The options of `tripplan logbook record`; usually the reporting year so far."""

    out: Annotated[str | None, option("--out", "the file: .csv, .html or .pdf; - prints the CSV", "FILE")] = (
        None
    )
    replace: Replace = False
    children: Annotated[
        Words | None,
        several("--children", "whose record; everybody's where not given", "NAME"),
    ] = None
    names: Annotated[
        Words | None,
        several("--names", "whose names are written out; initials only where not given", "NAME"),
    ] = None
    household_name: Annotated[bool, option("--household-name", "write the household's name on it")] = False
    state: Annotated[
        str | None,
        option("--state", "print a state's published figures below; no advice", "STATE"),
    ] = None
    paper: Paper = None
