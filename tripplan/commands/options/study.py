"""The options of `tripplan study`."""

from dataclasses import dataclass
from datetime import date
from typing import Annotated, Literal

from tripplan.commands.options.shared import (
    Dates,
    JsonOption,
    PlanningOptions,
    Words,
    argument,
    date_said,
    dates_said,
    option,
    several,
)

NONE = "none"
"""Said where a limit is to be no longer."""


@dataclass(frozen=True, kw_only=True)
class StudyListOptions(PlanningOptions, JsonOption):
    """The options of `tripplan study list`."""


@dataclass(frozen=True, kw_only=True)
class StudyProgrammeOptions(PlanningOptions, JsonOption):
    """The options of `tripplan study programme`."""

    keep: Annotated[
        bool,
        option("--keep", "put its outings on record as planned, still open, for the calendar"),
    ] = False


@dataclass(frozen=True, kw_only=True)
class UnitOptions(PlanningOptions):
    """The options of a task about one study unit."""

    name: Annotated[str, argument("UNIT", "what the unit is called")]


@dataclass(frozen=True, kw_only=True)
class StudyAddOptions(UnitOptions):
    """The options of `tripplan study add`."""

    topic: Annotated[
        Words | None,
        several("--topic", "what is studied; a new unit needs it", "TOPIC"),
    ] = None
    from_day: Annotated[
        date | None,
        option("--from", "its first day; a new unit needs it", "DATE", parser=date_said),
    ] = None
    to_day: Annotated[
        date | None,
        option("--to", "its last day; a new unit needs it", "DATE", parser=date_said),
    ] = None
    budget: Annotated[
        str | None,
        option("--budget", f"what its outing may cost at most; '{NONE}': no limit", "AMOUNT"),
    ] = None
    also: Annotated[
        Words | None,
        several(
            "--also", f"places that fit although their cards name no topic of it; '{NONE}': none", "PLACE"
        ),
    ] = None


@dataclass(frozen=True, kw_only=True)
class StudyLimitsOptions(PlanningOptions, JsonOption):
    """The options of `tripplan study limits`."""

    budget: Annotated[
        str | None,
        option("--budget", f"what all its outings may cost together; '{NONE}': no limit", "AMOUNT"),
    ] = None
    first_day: Annotated[
        str | None,
        option("--from", f"the first day of the term; '{NONE}': as the units' weeks say", "DATE"),
    ] = None
    last_day: Annotated[
        str | None,
        option("--to", f"the last day of the term; '{NONE}': as the units' weeks say", "DATE"),
    ] = None
    careful: Annotated[
        bool | None,
        option("--careful/--no-careful", "count the high end of every range against the budgets"),
    ] = None
    two_a_week: Annotated[
        bool | None, option("--two-a-week/--no-two-a-week", "two outings may lie in one week")
    ] = None
    place_twice: Annotated[
        bool | None, option("--place-twice/--no-place-twice", "a place may be visited twice")
    ] = None
    least: Annotated[
        Literal["felt", "money"] | None,
        option("--least", "what is made as small as can be: felt (cost plus hassle) or money alone"),
    ] = None
    without: Annotated[
        Words | None,
        several("--without", f"units that have no outing this time; '{NONE}': all have one", "UNIT"),
    ] = None


@dataclass(frozen=True, kw_only=True)
class StudyFixOptions(UnitOptions):
    """The options of `tripplan study fix`."""

    fixed_place: Annotated[str | None, option("--place", "where to", "PLACE")] = None
    fixed_day: Annotated[date | None, option("--on", "when", "DATE", parser=date_said)] = None


@dataclass(frozen=True, kw_only=True)
class StudyRuleOutOptions(UnitOptions):
    """The options of `tripplan study rule-out`."""

    without_place: Annotated[str, argument("PLACE", "where not")]
    days: Annotated[
        Dates | None,
        several("--on", "only not on these days", "DATE", parser=dates_said),
    ] = None
