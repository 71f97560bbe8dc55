"""The demo's outings around today."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from tripplan.documents.outings.planned import PlannedOuting
from tripplan.planning.calendar_entry.demo_outings import outings_around
from tripplan.planning.calendar_entry.planned_outing import planned_again
from tripplan.planning.family.family import Family

_COMPARED = ("ledgewing", "tern-landing", "candlewick-sink-cave")


def around(family: Family, day: date) -> list[PlannedOuting]:
    """The outings around noon of a day, at home."""
    noon = datetime(day.year, day.month, day.day, 18, tzinfo=UTC)
    return outings_around(family, noon, apart_from=_COMPARED, not_on=())


@pytest.mark.parametrize(
    "day",
    [
        date(2026, 11, 26),  # Thanksgiving, on which most places are closed
        date(2026, 12, 25),
        date(2027, 1, 1),
        date(2027, 2, 15),  # a Monday in winter
        date(2027, 7, 4),
        date(2029, 3, 6),  # later than any school calendar reaches
    ],
)
def test_one_is_on_one_comes_and_one_is_over(demo_family: Family, day: date) -> None:
    """Whatever the day, the planner itself finds all three possible at the times they are planned with."""
    now, comes, over = outings = around(demo_family, day)
    assert now.day == day
    assert now.leave_home <= datetime(day.year, day.month, day.day, 18, tzinfo=UTC) < now.home
    assert timedelta() < comes.day - day <= timedelta(days=14)
    assert timedelta() < day - over.day <= timedelta(days=12)
    assert len({one.place for one in outings}) == 3
    with_them = replace(demo_family, planned=tuple(outings))
    for one in (now, comes):
        again = planned_again(with_them, one, day)
        assert again is not None
        assert (again.plan.leave_home, again.plan.home) == (one.leave_home, one.home)


def test_a_day_later_only_what_is_missing_is_planned(demo_family: Family) -> None:
    """Yesterday's outing is the one to log now, and the one to come still comes."""
    day = date(2026, 11, 25)
    planned = tuple(around(demo_family, day))
    assert [one.day for one in around(replace(demo_family, planned=planned), day)] == []
    later = around(replace(demo_family, planned=planned), day + timedelta(days=1))
    assert [one.day for one in later] == [day + timedelta(days=1)]
