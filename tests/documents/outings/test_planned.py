"""Planned outings keep their zones when written and their identity when changed."""

from datetime import UTC, date, datetime
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from pydantic import ValidationError

from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.values.money import Money

CHICAGO = ZoneInfo("America/Chicago")
INDIANAPOLIS = ZoneInfo("America/Indiana/Indianapolis")


def planned(**changes: Any) -> PlannedOuting:
    """A visit across a zone border."""
    values: dict[str, Any] = {
        "id": "test-mill-2026-12-08",
        "place": "test-mill",
        "day": date(2026, 12, 8),
        "party": ("Ann", "Cy"),
        "leave_home": datetime(2026, 12, 8, 8, 30, tzinfo=CHICAGO),
        "enter": datetime(2026, 12, 8, 11, 0, tzinfo=INDIANAPOLIS),
        "leave_place": datetime(2026, 12, 8, 14, 0, tzinfo=INDIANAPOLIS),
        "home": datetime(2026, 12, 8, 14, 45, tzinfo=CHICAGO),
        "uid": "test-mill-2026-12-08@example.org",
        "changed_at": datetime(2026, 11, 25, 12, 0, tzinfo=UTC),
        "likely_amount": "92.50",
        "currency": "USD",
        **changes,
    }
    return PlannedOuting.model_validate(values)


def test_zones_survive_being_written() -> None:
    """What is read back is equal and still stands in the zones of home and place."""
    outing = planned()
    again = PlannedOuting.model_validate_json(outing.model_dump_json())
    assert again == outing
    assert (again.leave_home.tzinfo, again.enter.tzinfo) == (CHICAGO, INDIANAPOLIS)


def test_a_zoned_time_is_written_as_the_standard_says() -> None:
    """The form is that of RFC 9557, 4.1: an RFC 3339 time, then the zone's name in brackets."""
    written = planned().model_dump(mode="json")
    assert written["leave_home"] == "2026-12-08T08:30:00-06:00[America/Chicago]"


@pytest.mark.parametrize("fold", [0, 1])
def test_the_hour_that_comes_twice_keeps_which_one_it_was(fold: int) -> None:
    """On 1 November 2026 at 1:30 in Chicago there are two moments (US clocks change at 2:00, 15 USC 260a)."""
    leave = datetime(2026, 11, 1, 1, 30, fold=fold, tzinfo=CHICAGO)
    outing = planned(day=date(2026, 11, 1), leave_home=leave)
    again = PlannedOuting.model_validate_json(outing.model_dump_json())
    assert again.leave_home.utcoffset() == leave.utcoffset()


def test_where_zone_rules_have_changed_the_clock_on_the_wall_stays() -> None:
    """A family that agreed on 8:30 leaves at 8:30, whatever offset was believed in when it was written."""
    outing = planned(leave_home="2026-12-08T08:30:00-05:00[America/Chicago]")
    assert outing.leave_home == datetime(2026, 12, 8, 8, 30, tzinfo=CHICAGO)


@pytest.mark.parametrize(
    "wrong",
    [
        {"leave_home": datetime(2026, 12, 8, 8, 30)},  # noqa: DTZ001 - the missing zone is the point
        {"leave_home": "2026-12-08T08:30:00-06:00[Nowhere/Town]"},
        {"leave_home": "2026-12-08T08:30:00-06:00[../../etc/passwd]"},
        {"leave_home": "eight[America/Chicago]"},
        {"home": datetime(2026, 12, 8, 8, 0, tzinfo=CHICAGO)},
        {"likely_amount": "NaN"},
        {"likely_amount": "-1"},
        {"party": ()},
        {"id": "Mill!"},
    ],
    ids=str,
)
def test_what_makes_no_sense_is_refused(wrong: dict[str, Any]) -> None:
    """Times without a zone or out of order, unknown zones, odd amounts and empty parties are refused."""
    with pytest.raises(ValidationError):
        planned(**wrong)


@pytest.mark.parametrize(
    ("changed_at", "on"),
    [
        (datetime(2026, 11, 26, 3, 0, tzinfo=UTC), date(2026, 11, 25)),  # nine in the evening in Chicago
        (datetime(2026, 12, 20, 12, 0, tzinfo=UTC), date(2026, 12, 8)),
    ],
)
def test_it_was_planned_when_it_was_last_changed_at_the_latest_on_its_day(
    changed_at: datetime, on: date
) -> None:
    """By the clock at home; what is written down afterwards does not count."""
    assert planned(changed_at=changed_at).planned_on(CHICAGO) == on


def test_a_change_keeps_the_entry_and_counts_up() -> None:
    """Calling off keeps id and UID, raises the sequence by one and says when (RFC 5546, 2.1.4)."""
    later = datetime(2026, 12, 1, 7, 0, tzinfo=UTC)
    off = planned().changed(later, status=PlanStatus.CANCELLED)
    assert (off.id, off.uid, off.sequence) == (planned().id, planned().uid, 1)
    assert (off.status, off.changed_at) == (PlanStatus.CANCELLED, later)


def test_a_change_that_makes_no_sense_is_refused() -> None:
    """A change is checked as a whole new outing is."""
    with pytest.raises(ValidationError):
        planned().changed(planned().changed_at, home=planned().leave_home.replace(hour=1))


def test_the_likely_total_is_exact_money() -> None:
    """The amount comes back to the cent, with its currency."""
    again = PlannedOuting.model_validate_json(planned().model_dump_json())
    assert again.likely_total == Money(planned().likely_amount, "USD")
