"""The year's account adds up what is known, exactly, and names what is not."""

from datetime import date
from decimal import Decimal

import pytest

from tests.planning.logbook.entries import make_entry
from tests.planning.logbook.test_against_plan import planned, usd
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.study.units import StudyUnit
from tripplan.planning.logbook.sentences import year_lines
from tripplan.planning.logbook.year import year_account

TODAY = date(2026, 11, 25)
SETTINGS = LogbookSettings(budget=Decimal("300.00"))
WATER = StudyUnit(
    name="Water",
    topics=("water",),
    first=date(2026, 9, 1),
    last=date(2026, 11, 30),
    currency="USD",
    budget=Decimal("50.00"),
)
ENTRIES = (
    make_entry(study_unit="Water"),  # 41.40
    make_entry(id="2026-10-02-mill", day="2026-10-02", study_unit="Water", paid=[], receipts_total="20.10"),
    make_entry(id="2026-10-03-walk", day="2026-10-03", title="Walk", paid=[]),
    make_entry(id="2026-06-30-zoo", day="2026-06-30", receipts_total="99"),
)
COMING = planned(
    id="mill-2026-12-05",
    day=date(2026, 12, 5),
    leave_home="2026-12-05T09:00:00-06:00",
    enter="2026-12-05T10:00:00-06:00",
    leave_place="2026-12-05T12:00:00-06:00",
    home="2026-12-05T13:00:00-06:00",
)


def test_the_year_from_july_holds_what_lies_in_it() -> None:
    """By hand: 41.40 + 20.10 = 61.50 spent, 238.50 left of 300, 178.50 after the 60 that are planned."""
    account = year_account(ENTRIES, [COMING], [WATER], SETTINGS, currency="USD", today=TODAY)
    assert (account.first, account.last) == (date(2026, 7, 1), date(2027, 6, 30))
    assert (account.purse.spent, account.purse.left) == (usd("61.50"), usd("238.50"))
    assert account.purse.left_after_planned == usd("178.50")
    assert account.purse.unknown == ("Walk on 2026-10-03",)
    assert dict(account.by_kind)["food"] == usd("18.40")
    assert account.not_itemised == usd("20.10")


def test_a_study_unit_has_its_own_purse() -> None:
    """Water: 61.50 of 50.00 is 11.50 too much; the rest stands without a unit."""
    account = year_account(ENTRIES, [COMING], [WATER], SETTINGS, currency="USD", today=TODAY)
    assert [name for name, _ in account.units] == ["Water", ""]
    water = account.units[0][1]
    assert (water.spent, water.left) == (usd("61.50"), usd("-11.50"))
    told = "\n".join(year_lines(account))
    assert "$11.50 over the budget of $50.00" in told
    assert "at most $238.50 left of $300.00" in told
    assert "Nobody noted the money of Walk on 2026-10-03." in told


def test_another_year_and_another_beginning() -> None:
    """The year before holds the zoo alone; a year that begins in January holds all four."""
    before = year_account(ENTRIES, [], [], SETTINGS, currency="USD", today=TODAY, year_with=date(2026, 6, 1))
    assert (before.purse.spent, before.purse.outings) == (usd("99"), 1)
    january = LogbookSettings(year_begins_month=1)
    whole = year_account(ENTRIES, [], [], january, currency="USD", today=TODAY)
    assert (whole.last, whole.purse.outings) == (date(2026, 12, 31), 4)
    assert whole.purse.left is None


def test_currencies_never_mix() -> None:
    """An outing in euros is named and left out of every sum."""
    euros = make_entry(id="2026-09-09-alp", day="2026-09-09", title="Alp", currency="EUR")
    account = year_account([*ENTRIES, euros], [], [], SETTINGS, currency="USD", today=TODAY)
    assert account.purse.spent == usd("61.50")
    assert account.purse.other_currency == ("Alp on 2026-09-09, in EUR",)


def test_a_planned_outing_stops_counting_once_it_is_written_down() -> None:
    """Neither twice while it is on both lists, nor once its day is over."""
    written = make_entry(planned=COMING.id)
    for outings, entries, today in (([COMING], [written], TODAY), ([COMING], [], date(2026, 12, 6))):
        account = year_account(entries, outings, [], SETTINGS, currency="USD", today=today)
        assert account.purse.planned == usd("0")


@pytest.mark.parametrize("day", [date(2026, 6, 30), date(2026, 7, 1), date(2027, 6, 30), date(2028, 2, 29)])
def test_a_year_has_no_gap_and_no_overlap(day: date) -> None:
    """Every day lies in its year, and the next one begins the day after its end."""
    first, last = SETTINGS.year_of(day)
    assert first <= day <= last
    assert SETTINGS.year_of(date.fromordinal(last.toordinal() + 1))[0].toordinal() == last.toordinal() + 1
