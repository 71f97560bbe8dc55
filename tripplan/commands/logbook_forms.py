"""The JSON answers of `tripplan logbook`, key by key; as those in `answer_forms`."""

from datetime import date
from decimal import Decimal
from typing import Literal

from tripplan.commands.answer_forms import MoneyTold, Told
from tripplan.planning.logbook.entry import LogbookEntry
from tripplan.planning.logbook.settings import Learnable


class LogbookAnswer(Told):
    """What every answer about the logbook begins with."""

    format: Literal[1] = 1
    """Version of the answers' keys."""
    data: Literal["demo", "own"]
    """Whose records: the invented family's or the own ones."""
    today: date


class MoneyAgainstTold(Told):
    """One item of money against its plan."""

    what: str
    planned: MoneyTold | None
    """Null where nobody knew it."""
    real: MoneyTold | None
    """Null where nobody noted it."""
    worked_out: bool
    """Whether driving was worked out from the distance and not paid that day."""


class MinutesAgainstTold(Told):
    """One span of time against its plan [min]; null where unknown."""

    what: str
    planned: int | None
    real: int | None


class EntryTold(Told):
    """One outing of the logbook."""

    entry: LogbookEntry
    """As it was written down."""
    spent: MoneyTold | None
    """In all; null where nobody noted it."""
    stay_minutes: int | None
    km: float | None
    money: tuple[MoneyAgainstTold, ...]
    """Against the plan; none where it was not planned here."""
    minutes: tuple[MinutesAgainstTold, ...]
    """Likewise, naps last."""
    unknown: tuple[str, ...]
    """What nobody noted although the plan had a figure for it."""


class LogbookListAnswer(LogbookAnswer):
    """Outings that were written down, oldest first."""

    entries: tuple[EntryTold, ...]


class PurseTold(Told):
    """What some outings have cost, and what is left."""

    name: str
    """The study unit; empty for outings without one, 'year' for all of the year."""
    budget: MoneyTold | None
    spent: MoneyTold
    planned: MoneyTold
    """Likely cost of outings to come."""
    left: MoneyTold | None
    """Of the budget without what was spent; null without a budget."""
    left_after_planned: MoneyTold | None
    outings: int
    to_come: int
    unknown: tuple[str, ...]
    """Outings whose money nobody noted; while there are any, `spent` is a lower bound."""
    other_currency: tuple[str, ...]
    """Left out of the sums."""


class KindTold(Told):
    """What was paid for one kind of thing, as far as it was noted."""

    kind: str
    amount: MoneyTold


class MoneyOverYearTold(Told):
    """One item over the outings for which plan and reality are both known."""

    what: str
    planned: MoneyTold
    real: MoneyTold
    outings: int
    unknown: tuple[str, ...]


class MinutesOverYearTold(Told):
    """One span of time over the outings that tell."""

    what: str
    mean_more: float | None
    """Longer or later than planned on average [min]."""
    outings: int
    unknown: tuple[str, ...]


class LogbookYearAnswer(LogbookAnswer):
    """The account of one year."""

    first: date
    last: date
    year: PurseTold
    by_kind: tuple[KindTold, ...]
    not_itemised: MoneyTold
    study_units: tuple[PurseTold, ...]
    money_against_plan: tuple[MoneyOverYearTold, ...]
    minutes_against_plan: tuple[MinutesOverYearTold, ...]


class SubjectTold(Told):
    """One subject with its hours; null where they are not split."""

    subject: str
    hours: Decimal | None


class RecordLineTold(Told):
    """One child on one outing."""

    day: date
    child: str
    grade_band: str
    where: str
    away: bool
    counts_as_day: bool
    hours: Decimal | None
    """Null where none are counted."""
    subjects: tuple[SubjectTold, ...]
    did: str
    learned: str


class ChildTotalTold(Told):
    """One child's period."""

    child: str
    grade_band: str
    days: int
    days_away: int
    hours: Decimal
    hours_away: Decimal
    days_without_hours: int
    subjects: tuple[SubjectTold, ...]


class LogbookRecordAnswer(LogbookAnswer):
    """The record for home-education authorities."""

    first: date
    last: date
    household: str
    """Empty unless it was asked for."""
    lines: tuple[RecordLineTold, ...]
    totals: tuple[ChildTotalTold, ...]
    notes: tuple[str, ...]


class LearnedTold(Told):
    """A figure that outings teach."""

    what: Learnable
    label: str
    place: str
    """The id of the place it is for; empty for all."""
    unit: str
    usual: Decimal
    """Without the logbook."""
    own: Decimal
    """With it."""
    low: float
    """The own figure is no less than this, 19 times in 20."""
    high: float
    """It is no more than this, 19 times in 20."""
    outings: int
    told_by: str
    planned_with: bool
    """Whether plans are made with it."""


class LogbookLearnedAnswer(LogbookAnswer):
    """All that outings teach."""

    figures: tuple[LearnedTold, ...]
