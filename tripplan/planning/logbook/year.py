"""The year's money: what outings have cost, what is planned, what is left of the budget, by study unit."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.study.units import StudyUnit
from tripplan.planning.logbook.draft import PAID_FOR
from tripplan.values.money import Money, total


@dataclass(frozen=True)
class Purse:
    """What was spent on some outings, and what is left of a budget for them.

    Attributes:
        budget: None where there is none.
        spent: on outings whose money is known.
        planned: likely cost of outings to come.
        outings: how many are in the logbook.
        to_come: how many are planned.
        unknown: outings in the logbook whose money nobody noted; while there are any, `spent` is a lower
            bound and `left` an upper one.
        other_currency: outings in another currency, left out of every sum.
    """

    budget: Money | None
    spent: Money
    planned: Money
    outings: int
    to_come: int
    unknown: tuple[str, ...]
    other_currency: tuple[str, ...]

    @property
    def left(self) -> Money | None:
        """The budget without what was spent; None where there is no budget."""
        return None if self.budget is None else self.budget - self.spent

    @property
    def left_after_planned(self) -> Money | None:
        """The budget without what was spent and what is likely to be; None where there is no budget."""
        return None if self.left is None else self.left - self.planned


@dataclass(frozen=True)
class YearAccount:
    """One year's account.

    Attributes:
        first, last: the first and last day of the year.
        purse: all outings of the year.
        by_kind: what the spent money went to, as far as it was noted.
        not_itemised: what of the receipts no item tells of.
        units: each study unit of the year with an outing, or with a budget and weeks in it, by its name;
            outings without a unit come last, under an empty name.
    """

    first: date
    last: date
    purse: Purse
    by_kind: tuple[tuple[str, Money], ...]
    not_itemised: Money
    units: tuple[tuple[str, Purse], ...]


def year_account(
    entries: Collection[LogbookEntry],
    outings: Collection[PlannedOuting],
    units: Collection[StudyUnit],
    settings: LogbookSettings,
    *,
    currency: str,
    today: date,
    year_with: date | None = None,
) -> YearAccount:
    """Add up one year of outings.

    Args:
        entries: the logbook.
        outings: what is planned; an outing counts as to come from today on, until it is in the logbook.
        units: study units, with their budgets.
        settings: the budget, and where the year begins.
        currency: of the household; counts where the settings name none.
        today: the date at home.
        year_with: any day of the year asked about; today when left out.
    """
    first, last = settings.year_of(year_with or today)
    currency = settings.currency or currency
    written = {entry.planned for entry in entries}
    mine = [entry for entry in entries if first <= entry.day <= last]
    to_come = [
        one
        for one in outings
        if one.day >= today and one.status is not PlanStatus.CANCELLED and one.id not in written
    ]
    coming = [one for one in to_come if first <= one.day <= last]
    budget = None if settings.budget is None else Money(settings.budget, currency)
    in_sums = [entry for entry in mine if entry.currency == currency]
    return YearAccount(
        first=first,
        last=last,
        purse=_purse(mine, coming, budget, currency),
        by_kind=tuple(
            (
                kind,
                total(
                    (Money(p.amount, currency) for e in in_sums for p in e.paid if p.kind == kind), currency
                ),
            )
            for kind in PAID_FOR
        ),
        not_itemised=total((entry.not_itemised for entry in in_sums), currency),
        units=tuple(
            (
                name,
                _purse(
                    # A unit's budget is for all its outings, even where its weeks reach into another year.
                    [e for e in (entries if name else mine) if e.study_unit == name],
                    [one for one in (to_come if name else coming) if one.study_unit == name],
                    _unit_budget(units, name, currency),
                    currency,
                ),
            )
            for name in _units_of_year(mine, coming, units, first, last)
        ),
    )


def _units_of_year(
    mine: Collection[LogbookEntry],
    coming: Collection[PlannedOuting],
    units: Collection[StudyUnit],
    first: date,
    last: date,
) -> Iterable[str]:
    """Names of units with a budget in the year, then of others with outings; outings without a unit last."""
    with_budget = [
        unit.name
        for unit in sorted(units, key=lambda unit: unit.first)
        if unit.budget is not None and unit.first <= last and unit.last >= first
    ]
    used = dict.fromkeys([*with_budget, *(e.study_unit for e in mine), *(o.study_unit for o in coming)])
    yield from filter(None, used)
    if "" in used:
        yield ""


def _unit_budget(units: Collection[StudyUnit], name: str, currency: str) -> Money | None:
    budget = next((unit.spends_at_most for unit in units if unit.name == name), None)
    return budget if budget is not None and budget.currency == currency else None


def _purse(
    mine: Collection[LogbookEntry], coming: Collection[PlannedOuting], budget: Money | None, currency: str
) -> Purse:
    in_sums = [entry for entry in mine if entry.currency == currency]
    other = [
        f"{entry.title} on {entry.day.isoformat()}, in {entry.currency}"
        for entry in mine
        if entry.currency != currency
    ]
    other += [
        f"{one.place} on {one.day.isoformat()}, in {one.currency}"
        for one in coming
        if one.currency != currency
    ]
    return Purse(
        budget=budget,
        spent=total((entry.spent for entry in in_sums if entry.spent is not None), currency),
        planned=total((one.likely_total for one in coming if one.currency == currency), currency),
        outings=len(mine),
        to_come=len(coming),
        unknown=tuple(f"{e.title} on {e.day.isoformat()}" for e in in_sums if e.spent is None),
        other_currency=tuple(other),
    )
