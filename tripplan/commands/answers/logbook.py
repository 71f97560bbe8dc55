"""The JSON answers of `tripplan logbook`."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from typing import Any

from tripplan.commands.answers.parts import MoneyTold, RecordsAnswer, Told, money_told
from tripplan.commands.logbook_on_record import Logbook
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import Learnable
from tripplan.files.record_of_outings import closing_lines
from tripplan.planning.logbook.against_plan import YearAgainstPlan, against_plan
from tripplan.planning.logbook.education_record import EducationRecord
from tripplan.planning.logbook.learning import LearnedFigure
from tripplan.planning.logbook.year import Purse, YearAccount
from tripplan.values.money import Money


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


class LogbookListAnswer(RecordsAnswer):
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


class LogbookYearAnswer(RecordsAnswer):
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


class LogbookRecordAnswer(RecordsAnswer):
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


class LogbookLearnedAnswer(RecordsAnswer):
    """All that outings teach."""

    figures: tuple[LearnedTold, ...]


def list_answer(logbook: Logbook, entries: Sequence[LogbookEntry]) -> LogbookListAnswer:
    """Outings that were written down."""
    return LogbookListAnswer(**_opening(logbook), entries=tuple(map(_entry, entries)))


def year_answer(logbook: Logbook, account: YearAccount, against: YearAgainstPlan) -> LogbookYearAnswer:
    """What a year's outings have cost, and how the plans have held."""
    return LogbookYearAnswer(
        **_opening(logbook),
        first=account.first,
        last=account.last,
        year=_purse("year", account.purse),
        by_kind=tuple(KindTold(kind=kind, amount=_paid(amount)) for kind, amount in account.by_kind),
        not_itemised=_paid(account.not_itemised),
        study_units=tuple(_purse(name, purse) for name, purse in account.units),
        money_against_plan=tuple(
            MoneyOverYearTold(
                what=line.what,
                planned=_paid(line.planned),
                real=_paid(line.real),
                outings=line.outings,
                unknown=line.unknown,
            )
            for line in against.money
        ),
        minutes_against_plan=tuple(
            MinutesOverYearTold(
                what=line.what, mean_more=line.mean_more, outings=line.outings, unknown=line.unknown
            )
            for line in against.minutes
        ),
    )


def record_answer(logbook: Logbook, record: EducationRecord) -> LogbookRecordAnswer:
    """The record for home-education authorities."""
    return LogbookRecordAnswer(
        **_opening(logbook),
        first=record.first,
        last=record.last,
        household=record.household,
        lines=tuple(
            RecordLineTold(
                day=line.day,
                child=line.child,
                grade_band=line.grade_band,
                where=line.where,
                away=line.away,
                counts_as_day=line.counts_as_day,
                hours=line.hours,
                subjects=tuple(SubjectTold(subject=name, hours=hours) for name, hours in line.subjects),
                did=line.did,
                learned=line.learned,
            )
            for line in record.lines
        ),
        totals=tuple(
            ChildTotalTold(
                child=total.child,
                grade_band=total.grade_band,
                days=total.days,
                days_away=total.days_away,
                hours=total.hours,
                hours_away=total.hours_away,
                days_without_hours=total.days_without_hours,
                subjects=tuple(SubjectTold(subject=one.subject, hours=one.hours) for one in total.subjects),
            )
            for total in record.totals
        ),
        notes=tuple(closing_lines(record)),
    )


def learned_answer(logbook: Logbook, figures: Sequence[LearnedFigure]) -> LogbookLearnedAnswer:
    """All that outings teach."""
    return LogbookLearnedAnswer(
        **_opening(logbook),
        figures=tuple(
            LearnedTold(
                what=figure.what,
                label=figure.label,
                place=figure.place,
                unit=figure.unit,
                usual=figure.usual,
                own=figure.own,
                low=figure.likely.low,
                high=figure.likely.high,
                outings=figure.outings,
                told_by=figure.told_by,
                planned_with=logbook.settings.learns(figure.what),
            )
            for figure in figures
        ),
    )


def _opening(logbook: Logbook) -> dict[str, Any]:
    return {"data": logbook.data, "today": logbook.today}


def _entry(entry: LogbookEntry) -> EntryTold:
    against = against_plan(entry)
    return EntryTold(
        entry=entry,
        spent=_paid_or_null(entry.spent),
        stay_minutes=entry.moments.stay_minutes,
        km=entry.km_driven,
        money=tuple(
            MoneyAgainstTold(
                what=line.what,
                planned=_paid_or_null(line.planned),
                real=_paid_or_null(line.real),
                worked_out=line.worked_out,
            )
            for line in (against.money if against else ())
        ),
        minutes=tuple(
            MinutesAgainstTold(what=line.what, planned=line.planned, real=line.real)
            for line in ((*against.minutes, *against.naps) if against else ())
        ),
        unknown=against.unknown if against else (),
    )


def _purse(name: str, purse: Purse) -> PurseTold:
    return PurseTold(
        name=name,
        budget=_paid_or_null(purse.budget),
        spent=_paid(purse.spent),
        planned=_paid(purse.planned),
        left=_paid_or_null(purse.left),
        left_after_planned=_paid_or_null(purse.left_after_planned),
        outings=purse.outings,
        to_come=purse.to_come,
        unknown=purse.unknown,
        other_currency=purse.other_currency,
    )


def _paid_or_null(amount: Money | None) -> MoneyTold | None:
    return None if amount is None else _paid(amount)


def _paid(amount: Money) -> MoneyTold:
    """An amount in whole coins, since a share of a filling is finer than anybody pays."""
    return money_told(amount.rounded())
