"""The JSON answers of `tripplan logbook`."""

from dataclasses import dataclass

from tripplan.commands.answers.common import RecordsAnswer
from tripplan.commands.answers.json_keys import json_keys
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.planning.logbook.against_plan import (
    AgainstPlan,
    MinutesAgainst,
    MoneyAgainst,
    MoneyOverYear,
    YearAgainstPlan,
)
from tripplan.planning.logbook.education_record import EducationRecord, RecordLine, SubjectTotal
from tripplan.planning.logbook.learning import LearnedFigure
from tripplan.planning.logbook.year import Purse, YearAccount


@dataclass(frozen=True)
class OutingWrittenDown:
    """One outing of the logbook.

    Attributes:
        entry: as it was written down.
        against: what was planned against what came of it; None where it was not planned here.
    """

    entry: LogbookEntry
    against: AgainstPlan | None

    @property
    def money(self) -> tuple[MoneyAgainst, ...]:
        """Against the plan; none where it was not planned here."""
        return self.against.money if self.against else ()

    @property
    def minutes(self) -> tuple[MinutesAgainst, ...]:
        """Against the plan, naps last; none where it was not planned here."""
        return (*self.against.minutes, *self.against.naps) if self.against else ()

    @property
    def unknown(self) -> tuple[str, ...]:
        """What nobody noted although the plan had a figure for it."""
        return self.against.unknown if self.against else ()


@dataclass(frozen=True, kw_only=True)
class LogbookListAnswer(RecordsAnswer):
    """Outings that were written down.

    Attributes:
        entries: oldest first.
    """

    entries: tuple[OutingWrittenDown, ...]


@dataclass(frozen=True)
class NamedPurse:
    """What some outings have cost, and what is left.

    Attributes:
        name: the study unit; empty for outings without one, 'year' for all of the year.
        purse: the money.
    """

    name: str
    purse: Purse


@dataclass(frozen=True, kw_only=True)
class LogbookYearAnswer(RecordsAnswer):
    """The account of one year.

    Attributes:
        account: the year's money.
        against: how the plans have held.
    """

    account: YearAccount
    against: YearAgainstPlan

    @property
    def year(self) -> NamedPurse:
        """All outings of the year."""
        return NamedPurse("year", self.account.purse)

    @property
    def study_units(self) -> tuple[NamedPurse, ...]:
        """Each study unit with an outing, or with a budget and weeks in the year; without a unit last."""
        return tuple(NamedPurse(name, purse) for name, purse in self.account.units)


@dataclass(frozen=True, kw_only=True)
class LogbookRecordAnswer(RecordsAnswer):
    """The record for home-education authorities.

    Attributes:
        record: what is handed in.
        notes: what goes with it in words.
    """

    record: EducationRecord
    notes: tuple[str, ...]


@dataclass(frozen=True)
class FigureInUse:
    """A figure that outings teach.

    Attributes:
        figure: the figure.
        planned_with: whether plans are made with it.
    """

    figure: LearnedFigure
    planned_with: bool


@dataclass(frozen=True, kw_only=True)
class LogbookLearnedAnswer(RecordsAnswer):
    """All that outings teach.

    Attributes:
        figures: each beside the usual one; it lies between low and high 19 times in 20.
    """

    figures: tuple[FigureInUse, ...]


# Money is told in whole coins here, since a share of a filling is finer than anybody pays.
json_keys(
    OutingWrittenDown,
    "entry spent=entry.spent.rounded stay_minutes=entry.moments.stay_minutes km=entry.km_driven money "
    "minutes unknown",
)
json_keys(MoneyAgainst, "what planned=planned.rounded real=real.rounded worked_out")
json_keys(
    LogbookYearAnswer,
    "format data today first=account.first last=account.last year "
    "by_kind=account.by_kind(kind,amount.rounded) not_itemised=account.not_itemised.rounded study_units "
    "money_against_plan=against.money minutes_against_plan=against.minutes",
)
json_keys(
    NamedPurse,
    "name budget=purse.budget.rounded spent=purse.spent.rounded planned=purse.planned.rounded "
    "left=purse.left.rounded left_after_planned=purse.left_after_planned.rounded outings=purse.outings "
    "to_come=purse.to_come unknown=purse.unknown other_currency=purse.other_currency",
)
json_keys(MoneyOverYear, "what planned=planned.rounded real=real.rounded outings unknown")
json_keys(
    LogbookRecordAnswer,
    "format data today first=record.first last=record.last household=record.household lines=record.lines "
    "totals=record.totals notes",
)
json_keys(
    RecordLine,
    "day child grade_band where away counts_as_day hours subjects(subject,hours) did learned",
)
json_keys(SubjectTotal, "subject hours")
json_keys(
    FigureInUse,
    "what=figure.what label=figure.label place=figure.place unit=figure.unit usual=figure.usual "
    "own=figure.own low=figure.likely.low high=figure.likely.high outings=figure.outings "
    "told_by=figure.told_by planned_with",
)
