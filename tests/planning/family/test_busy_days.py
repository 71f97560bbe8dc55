"""Fixed blocks, working hours and late evenings keep outings away from where they do not fit."""

from dataclasses import replace
from datetime import date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from pydantic import ValidationError

from tests.builders import codes, make_household
from tripplan.documents.calendars.calendars import Busy, DateSpan, FamilyCalendar
from tripplan.documents.calendars.family_days import FamilyDays, WeeklyBlock
from tripplan.documents.calendars.local_days import LocalDay
from tripplan.language.sentences import fact
from tripplan.planning.family.busy_days import BusyDays
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.sweep.sweeping import sweep

CHICAGO = ZoneInfo("America/Chicago")
TODAY = date(2026, 11, 25)
TUESDAY = date(2026, 12, 8)
EVERYBODY = ("Ann", "Bo", "Cy", "Di")
PIANO: dict[str, Any] = {"name": "Piano", "days": ["Tu"], "start": "16:00", "end": "17:00"}
BO_WORKS: dict[str, Any] = {"member": "Bo", "days": ["Tu", "We"], "start": "08:00", "end": "16:30"}


def own_week(**fields: Any) -> FamilyDays:
    """A family's own week, as its record would hold it."""
    return FamilyDays.model_validate(fields)


def busy(week: FamilyDays, *entries: tuple[str, str, str]) -> BusyDays:
    """The usual household with a week of its own and calendar entries as (start, end, name)."""
    spans = tuple(
        Busy(
            start=datetime.fromisoformat(start).replace(tzinfo=CHICAGO),
            end=datetime.fromisoformat(end).replace(tzinfo=CHICAGO),
            name=name,
        )
        for start, end, name in entries
    )
    return BusyDays(make_household(), (FamilyCalendar(name="Ours", busy=spans),), week)


def told(days: BusyDays, day: date, party: tuple[str, ...] = EVERYBODY) -> list[str]:
    """What stands in the way on a day, by the clock at home."""
    return [f"{found.start:%d %H:%M}-{found.end:%d %H:%M} {found.name}" for found in days.on(day, party)]


def test_a_weekly_block_comes_on_its_days_only() -> None:
    """Piano on Tuesdays is busy on a Tuesday by the clock at home, and on no other day."""
    days = busy(own_week(weekly=[PIANO]))
    assert told(days, TUESDAY) == ["08 16:00-08 17:00 Piano"]
    assert told(days, TUESDAY + timedelta(days=1)) == []
    summer = days.on(date(2027, 7, 6), EVERYBODY)[0]
    assert summer.start.isoformat() == "2027-07-06T16:00:00-05:00"


@pytest.mark.parametrize(
    ("changes", "weeks"),
    [
        ({}, [0, 1, 2, 3, 4, 5]),
        ({"first": "2026-12-14"}, [1, 2, 3, 4, 5]),
        ({"first": "2026-12-08", "last": "2026-12-22"}, [0, 1, 2]),
        ({"first": "2026-12-11", "every_weeks": 2}, [2, 4]),
        ({"not_during": [{"first": "2026-12-20", "last": "2027-01-03"}]}, [0, 1, 4, 5]),
    ],
)
def test_a_block_may_run_in_some_weeks_only(changes: dict[str, Any], weeks: list[int]) -> None:
    """From a day on, until a day, every other week counted from the first day's week, not in a break."""
    block = WeeklyBlock.model_validate({**PIANO, **changes})
    assert [week for week in range(6) if block.happens_on(TUESDAY + timedelta(weeks=week))] == weeks


def test_working_hours_count_only_for_who_goes_and_not_on_a_holiday() -> None:
    """Bo's hours stand in the way of an outing with Bo; not without, and not on New Year's Day off."""
    days = busy(own_week(work=[{**BO_WORKS, "days": ["Fr", "Tu"]}]))
    assert told(days, TUESDAY) == ["08 08:00-08 16:30 Bo works"]
    assert told(days, TUESDAY, ("Ann", "Cy")) == []
    assert told(days, date(2027, 1, 1)) == []
    at_work = busy(own_week(work=[{**BO_WORKS, "days": ["Fr"], "public_holidays_off": False}]))
    assert told(at_work, date(2027, 1, 1)) == ["01 08:00-01 16:30 Bo works"]


def test_a_local_day_off_around_home_frees_working_hours() -> None:
    """Bo is free on the town's own holiday, every year; not where it is far, nobody is off, or Bo is not."""
    household = make_household()
    home = household.home.point

    def works(years: int = 0, km_north: float = 0.0, day_off: bool = True, **work: Any) -> bool:
        town = {"country": "US", "latitude": home.latitude + km_north / 111.195, "longitude": home.longitude}
        fair = LocalDay.model_validate(
            {
                "name": "Founders' day",
                "first": TUESDAY,
                "last": TUESDAY,
                "every_year": True,
                "town": town,
                "day_off": day_off,
            }
        )
        every_day = {**BO_WORKS, "days": ["Tu", "We"], **work}
        days = BusyDays(household, (), own_week(work=[every_day]), (fair,))
        return bool(days.on(TUESDAY.replace(year=TUESDAY.year + years), EVERYBODY))

    assert not works()
    assert not works(years=1)
    assert works(km_north=30)
    assert works(day_off=False)
    assert works(public_holidays_off=False)


def test_an_outing_may_go_without_the_adult_at_work() -> None:
    """Where the parent says so Bo stays behind that day, which is said; nothing else changes."""
    days = busy(own_week(work=[{**BO_WORKS, "then": "without"}]))
    members = days.household.members
    on_tuesday = days.who_goes(members, TUESDAY)
    assert [member.name for member in on_tuesday.members] == ["Ann", "Cy", "Di"]
    assert on_tuesday.notes == (fact("notes-at-work", name="Bo", start=time(8), end=time(16, 30)),)
    assert days.who_goes(members, TUESDAY + timedelta(days=2)).members == members


def test_children_never_go_alone() -> None:
    """Where both adults work, everybody would go, so the outing waits for their hours."""
    work = [{**BO_WORKS, "then": "without"}, {**BO_WORKS, "member": "Ann", "then": "without"}]
    days = busy(own_week(work=work))
    members = days.household.members
    assert days.who_goes(members, TUESDAY).members == members
    assert told(days, TUESDAY) == ["08 08:00-08 16:30 Bo works", "08 08:00-08 16:30 Ann works"]
    alone = days.who_goes(members[1:], TUESDAY)
    assert [member.name for member in alone.members] == ["Bo", "Cy", "Di"]


@pytest.mark.parametrize(
    ("entry", "late"),
    [
        (("2026-12-07 19:00", "2026-12-07 22:30", "Concert"), True),
        (("2026-12-07 19:00", "2026-12-07 21:00", "Concert"), False),
        (("2026-12-07 19:00", "2026-12-08 00:00", "Concert"), True),
        (("2026-12-07 19:00", "2026-12-08 01:30", "Concert"), True),
        (("2026-12-07 00:00", "2026-12-08 00:00", "Whole day"), False),
        (("2026-12-06 23:00", "2026-12-07 23:00", "Whole day by the clock of New York"), False),
        (("2026-12-07 00:00", "2026-12-07 23:59", "Whole day up to its last minute"), False),
        (("2026-12-06 23:00", "2026-12-07 22:59:59", "The same by the clock of New York"), False),
    ],
)
def test_a_late_evening_makes_the_next_morning_slow(entry: tuple[str, str, str], late: bool) -> None:
    """What ends after nine, past midnight included, keeps the family at home until ten; whole days do not."""
    days = busy(own_week(late_evening={"after": "21:00", "not_before": "10:00"}), entry)
    slow = [line for line in told(days, TUESDAY) if line.startswith("08 00:00-08 10:00 late evening before:")]
    assert bool(slow) is late
    assert not [line for line in told(days, TUESDAY + timedelta(days=1)) if "late evening" in line]


def test_the_day_after_a_late_evening_may_not_be_free_at_all() -> None:
    """Without an hour to leave from, the whole day is taken; a late fixed block counts as an entry does."""
    week = own_week(weekly=[{**PIANO, "name": "Choir", "start": "20:00", "end": "22:00"}], late_evening={})
    assert told(busy(week), TUESDAY + timedelta(days=1)) == [
        "09 00:00-10 00:00 late evening before: Choir",
    ]


def test_entries_are_found_on_every_day_they_touch() -> None:
    """A visit of four days blocks each of them, once."""
    days = busy(FamilyDays(), ("2026-12-08 00:00", "2026-12-12 00:00", "Guests"))
    for ahead in range(4):
        assert told(days, TUESDAY + timedelta(days=ahead)) == ["08 00:00-12 00:00 Guests"]
    assert told(days, TUESDAY + timedelta(days=5)) == []


def test_a_day_beyond_what_was_read_is_not_called_free(family: Family) -> None:
    """The outing says that nobody knows whether the family is free on a day the file was not read for."""
    calendar = FamilyCalendar.model_validate(
        {"name": "Ours", "covers": {"first": "2026-11-01", "last": "2026-12-08"}}
    )
    asked = replace(family, family_calendars=(calendar,))
    facts = place_facts(asked, asked.places[0], (2026,))
    inside, beyond = (
        plan_outing(asked, asked.party(), facts, day, today=TODAY) for day in (TUESDAY, date(2026, 12, 9))
    )
    assert isinstance(inside, Outing)
    assert isinstance(beyond, Outing)
    assert "notes-calendar-ends" not in codes(inside.notes)
    assert "notes-calendar-ends" in codes(beyond.notes)


def test_an_outing_obeys_the_familys_own_week(family: Family) -> None:
    """A block over most of the day leaves no time for it; Bo at work is not paid for; both are said."""
    facts = place_facts(family, family.places[0], (2026,))
    blocked = replace(family, own_week=own_week(weekly=[{**PIANO, "start": "10:00", "end": "16:30"}]))
    refused = plan_outing(blocked, blocked.party(), facts, TUESDAY, today=TODAY)
    assert isinstance(refused, NoOuting)
    assert "Piano" in " ".join(map(str, refused.reasons))
    usual = plan_outing(family, family.party(), facts, TUESDAY, today=TODAY)
    without = replace(family, own_week=own_week(work=[{**BO_WORKS, "then": "without"}]))
    smaller = plan_outing(without, without.party(), facts, TUESDAY, today=TODAY)
    assert isinstance(usual, Outing)
    assert isinstance(smaller, Outing)
    # One adult's ticket of 14.00 less, by the place's price board.
    assert (usual.admission.total - smaller.admission.total).amount == 14
    assert [member.name for member in smaller.party] == ["Ann", "Cy", "Di"]
    assert "notes-at-work" in codes(smaller.notes)


def test_a_ranking_of_days_obeys_the_familys_own_week(family: Family) -> None:
    """What is ranked over many days goes without Bo on Bo's days, and passes over those that are taken."""
    week = own_week(
        weekly=[{**PIANO, "days": ["Th"], "start": "10:00", "end": "16:30"}],
        work=[{**BO_WORKS, "then": "without"}],
    )
    asked = replace(family, own_week=week)
    span = DateSpan(first=TUESDAY, last=TUESDAY + timedelta(days=3))
    table = sweep(asked, asked.party(), asked.places, span, today=TODAY)
    found = {f"{day:%a}": table.outing(0, column) for column, day in enumerate(table.days)}
    parties = {
        day: [member.name for member in one.party] for day, one in found.items() if isinstance(one, Outing)
    }
    assert parties == {"Tue": ["Ann", "Cy", "Di"], "Wed": ["Ann", "Cy", "Di"], "Fri": list(EVERYBODY)}
    assert table.can_go.tolist() == [[True, True, False, True]]


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"weekly": [{**PIANO, "end": "16:00"}]}, "later on the same day"),
        ({"weekly": [{**PIANO, "days": []}]}, "at least 1 item"),
        ({"weekly": [{**PIANO, "every_weeks": 2}]}, "first day to count from"),
        ({"weekly": [{**PIANO, "first": "2027-02-01", "last": "2027-01-01"}]}, "before the first"),
        ({"weekly": [PIANO, {**PIANO, "name": "PIANO"}]}, "twice: piano"),
        ({"work": [{**BO_WORKS, "then": "maybe"}]}, "'wait' or 'without'"),
    ],
)
def test_what_makes_no_sense_is_refused(fields: dict[str, Any], said: str) -> None:
    """Hours out of order, no days, weeks counted from nowhere, two blocks of one name."""
    with pytest.raises(ValidationError, match=said):
        FamilyDays.model_validate(fields)
