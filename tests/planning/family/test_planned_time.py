"""What is planned takes its time, and nothing is proposed that has begun."""

from dataclasses import replace
from datetime import date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tests.builders import make_outing, make_place
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.language.sentences import told
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.sweep.table import Verdict

CHICAGO = ZoneInfo("America/Chicago")
TODAY = date(2026, 12, 8)
WEEK = DateSpan(first=TODAY, last=TODAY + timedelta(days=3))


def alone(family: Family, day: date, **asked: Any) -> Outing | NoOuting:
    """The museum on one day, planned by itself."""
    facts = place_facts(family, family.places[0], (day.year,))
    return plan_outing(family, family.party(asked.pop("who", None)), facts, day, today=TODAY, **asked)


def free_days(family: Family, *who: str) -> list[int]:
    """Days of the week from today on which a list of days offers the museum."""
    table = sweep(family, family.party(who or None), family.places, WEEK, today=TODAY)
    return [day.day for day, can_go in zip(table.days, table.can_go[0], strict=True) if can_go]


def test_a_planned_outing_takes_its_day(family: Family) -> None:
    """The day of an outing elsewhere is not offered again, alone or in a list, and the reason names it."""
    tomorrow = TODAY + timedelta(days=1)
    busy = replace(family, planned=(make_outing(tomorrow),))
    assert free_days(family) == [8, 9, 10, 11]
    assert free_days(busy) == [8, 10, 11]
    refused = alone(busy, tomorrow)
    assert isinstance(refused, NoOuting)
    assert "farm" in " ".join(told(refused.reasons))


def test_beside_a_short_outing_there_may_be_time_left(family: Family) -> None:
    """From leaving home to home again the time is taken, and no longer: the day around it stays free."""
    busy = replace(family, planned=(make_outing(TODAY, "07:00", "11:00"),))
    found = alone(busy, TODAY)
    assert isinstance(found, Outing)
    assert found.plan.leave_home >= busy.planned[0].home


def test_only_those_who_go_are_taken(family: Family) -> None:
    """Ann and Cy are away at the farm; Bo and Di are free for the museum."""
    busy = replace(family, planned=(make_outing(TODAY),))
    assert free_days(busy, "Bo", "Di") == [8, 9, 10, 11]
    assert free_days(busy, "Bo", "Cy") == [9, 10, 11]


@pytest.mark.parametrize(
    ("changes", "taken"),
    [
        ({"status": "tentative"}, True),
        ({"status": "cancelled"}, False),
        ({"status": "tentative", "choice": "farm or mill"}, False),
        ({"status": "confirmed", "choice": "farm or mill"}, True),
    ],
)
def test_what_is_called_off_or_one_of_several_takes_no_time(
    family: Family, changes: dict[str, Any], taken: bool
) -> None:
    """A pencilled outing takes its time; not so one called off, or a candidate while none is kept."""
    busy = replace(family, planned=(make_outing(TODAY, **changes),))
    assert (8 not in free_days(busy)) is taken


def test_an_outing_does_not_stand_in_its_own_way(family: Family) -> None:
    """Asked about just that place and day, its own time is free, and its having begun is no obstacle."""
    noon = datetime.combine(TODAY, time(12), CHICAGO)
    own = make_outing(TODAY, place="test-museum")
    busy = replace(family, planned=(own, make_outing(TODAY + timedelta(days=1)))).at(noon)
    assert isinstance(alone(busy, TODAY), NoOuting)
    about = busy.about("test-museum", TODAY)
    found = alone(about, TODAY)
    assert isinstance(found, Outing)
    assert found.plan == alone(family, TODAY).plan  # type: ignore[union-attr]
    assert free_days(about) == [8, 10, 11]


def test_what_is_not_on_record_begins_after_the_present(family: Family) -> None:
    """Asked about a place for today that is not planned, the clock counts, and so do all outings."""
    about = family.at(datetime.combine(TODAY, time(12), CHICAGO)).about("test-museum", TODAY)
    found = alone(about, TODAY)
    assert isinstance(found, Outing)
    assert found.plan.leave_home.time() >= time(12)


def test_nothing_that_has_begun_is_proposed(family: Family) -> None:
    """At 11:02 nobody is told to leave before 11:05 that day; the next day is as it was."""
    now = datetime.combine(TODAY, time(11, 2), CHICAGO)
    family = replace(family, places=(make_place(opening={"hours": "Tu-Su 10:00-14:00"}),))
    usual = alone(family, TODAY)
    assert isinstance(usual, Outing)
    assert usual.plan.leave_home.time() < time(11)
    asked = family.at(now)
    assert asked.now == now.replace(minute=5)
    table = sweep(asked, asked.party(), asked.places, WEEK, today=TODAY)
    for column, day in enumerate(table.days[:2]):
        single = alone(asked, day)
        assert isinstance(single, Outing)
        assert table.at_home(column, table.leave_home[0, column]) == single.plan.leave_home
    assert table.at_home(0, table.leave_home[0, 0]).time() >= time(11, 5)
    tomorrow = TODAY + timedelta(days=1)
    assert alone(asked, tomorrow).plan == alone(family, tomorrow).plan  # type: ignore[union-attr]


def test_late_in_the_day_it_is_said_why_nothing_is_left(family: Family) -> None:
    """At three the museum an hour away is out of reach, because of the hour and nothing else."""
    late = family.at(datetime.combine(TODAY, time(15), CHICAGO))
    refused = alone(late, TODAY)
    assert isinstance(refused, NoOuting)
    assert "the day so far" in " ".join(told(refused.reasons))
    table = sweep(late, late.party(), late.places, WEEK, today=TODAY)
    assert table.verdict[0, 0] == Verdict.FAMILY_BUSY


def test_an_afternoon_that_opens_up_is_kept_to(family: Family) -> None:
    """Free from 12:15 to 17:30: every departure and every return lies between, whatever the habits say."""
    free = family.free_between(time(12, 15), time(17, 30))
    found = alone(free, TODAY)
    assert isinstance(found, Outing)
    assert found.plan.leave_home.time() >= time(12, 15)
    assert found.plan.home.time() <= time(17, 30)
    early = family.free_between(time(5, 0), time(12, 0))
    assert isinstance(alone(early, TODAY), NoOuting)


def test_the_present_counts_only_among_the_days_asked_about(family: Family) -> None:
    """Answers about other days do not change with the minutes, so that they can be kept."""
    asked = family.at(datetime.combine(TODAY, time(11), CHICAGO))
    tomorrow = TODAY + timedelta(days=1)
    assert asked.asked_between(tomorrow, tomorrow) == family
    assert asked.asked_between(TODAY, tomorrow) == asked
