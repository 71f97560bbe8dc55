from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from typing import Any

import pytest

from tests.builders import make_household, make_place
from tripplan.documents.calendars.calendars import Busy, DateSpan, FamilyCalendar, SchoolCalendar
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.errors import PlanError, UnknownName
from tripplan.language.sentences import fact, told
from tripplan.planning.day import DayPlan, StepKind
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, total

TODAY = date(2026, 11, 25)
WEDNESDAY = date(2026, 12, 9)
MONDAY = date(2026, 12, 7)


def answer(family: Family, day: date = WEDNESDAY, today: date = TODAY) -> Outing | NoOuting:
    """Everything about the family's only place on one day."""
    facts = place_facts(family, family.places[0], (day.year,))
    return plan_outing(family, family.party(), facts, day, today=today)


def outing(family: Family, day: date = WEDNESDAY) -> Outing:
    """The answer, which must be that the outing can be done."""
    found = answer(family, day)
    assert isinstance(found, Outing), found
    return found


def refusal(family: Family, day: date = WEDNESDAY, today: date = TODAY) -> str:
    """The answer, which must be that the outing cannot be done; its reasons as one text."""
    found = answer(family, day, today)
    assert isinstance(found, NoOuting)
    return "; ".join(told(found.reasons))


def with_place(**changes: Any) -> Family:
    """The usual family with a changed place."""
    return Family(make_household(), (make_place(**changes),))


def test_the_answers_of_one_outing_agree_with_each_other(family: Family) -> None:
    """Entry lies in the opening hours, the steps fill the day, and the admission is an item of the cost."""
    found = outing(family)
    plan = found.plan
    assert any(span.opens <= plan.enter <= span.last_entry for span in found.hours.spans)
    assert plan.steps[0].start == plan.leave_home
    assert plan.steps[-1].end == plan.home
    assert all(a.end == b.start for a, b in zip(plan.steps, plan.steps[1:], strict=False))
    driving = sum((s.end - s.start for s in plan.steps if s.kind is StepKind.DRIVE), timedelta())
    assert driving == timedelta(minutes=found.way_there.drive_minutes + found.way_home.drive_minutes)
    (admission,) = (item for item in found.cost.items if item.kind is CostKind.ADMISSION)
    assert admission.amount is not None
    assert admission.amount.likely == found.admission.total


def test_the_price_board_is_paid_at_everybodys_age() -> None:
    """Two adults at 14.00, one child of seven at 9.00, a toddler free: 37.00 (worked by hand)."""
    assert outing(with_place()).admission.total == Money(Decimal("37.00"), "USD")


def test_the_total_is_the_sum_of_its_items(family: Family) -> None:
    """The likely total is what the likely items add up to, to the cent, and lies inside its range."""
    cost = outing(family).cost
    known = [item.amount.likely for item in cost.items if item.amount is not None]
    assert cost.total.likely == total(known, "USD")
    assert cost.total.low <= cost.total.likely <= cost.total.high


def test_the_felt_cost_adds_what_the_nuisances_weigh(family: Family) -> None:
    """Money, the day's nuisances and the crowd risk times what a full house is worth, nothing else."""
    found = outing(family)
    crowd = Money(Decimal("20.00") * Decimal(str(round(found.crowd.chance, 4))), "USD")
    assert found.generalized_cost == (found.cost.total.likely + found.plan.felt + crowd).rounded()


def test_a_closed_day_says_why(family: Family) -> None:
    """The museum is closed on Mondays, and the reason says closed."""
    assert "closed" in refusal(family, MONDAY)


def test_a_day_that_is_over_cannot_be_planned(family: Family) -> None:
    """Yesterday is refused."""
    assert refusal(family, WEDNESDAY, today=WEDNESDAY + timedelta(days=1)) == "the day is over"


def test_two_currencies_are_told_instead_of_added() -> None:
    """A place with prices in euros says so to a household that counts in dollars."""
    assert "EUR" in refusal(with_place(currency="EUR"))


def test_a_visit_that_must_be_booked_ahead_is_refused_at_short_notice() -> None:
    """Twenty days ahead is too late for the 9th of December on the 25th of November (14 days)."""
    late = with_place(opening={"hours": "Tu-Su 10:00-17:00", "book_days_ahead": 20})
    assert "20 days ahead" in refusal(late)


def test_nobody_enters_where_no_ticket_fits() -> None:
    """With tickets for adults only, the children's names stand in the reason."""
    adults_only = with_place(offers=[{"name": "Adult", "price": 14, "ages": "18+"}])
    assert "Cy" in refusal(adults_only)


def test_a_busy_day_leaves_no_room() -> None:
    """A family that is busy from morning to evening cannot go, and the collision is named."""
    start = datetime.combine(WEDNESDAY, time(12), UTC)
    busy = FamilyCalendar(name="ours", busy=(Busy(start=start, end=start + timedelta(hours=13)),))
    family = Family(make_household(), (make_place(),), family_calendars=(busy,))
    assert refusal(family)


def test_a_typed_drive_wins_over_the_estimate(family: Family) -> None:
    """What the parent typed in is the likely distance and time, and says so."""
    typed = TypedDrive(place="test-museum", km=66, minutes=48, typed_on=TODAY)
    drive = outing(Family(family.household, family.places, typed_drives=(typed,))).way_there.drive
    assert (drive.km.likely, drive.minutes.likely) == (66, 48)
    assert drive.known_by == "typed in"


def test_another_leave_window_is_taken_on_request(family: Family) -> None:
    """A departure inside a window selects that window's best plan."""
    found = outing(family)
    facts = place_facts(family, family.places[0], (2026,))
    for window in found.search.windows:
        again = plan_outing(
            family, family.party(), facts, WEDNESDAY, today=TODAY, leave_at=window.best.leave_home
        )
        assert isinstance(again, Outing)
        assert again.plan == window.best


def test_a_departure_and_a_return_of_ones_own_are_taken_where_they_can_be(family: Family) -> None:
    """Just these two times are planned; where they cross a limit, the departure's window counts."""
    best = outing(family).plan
    facts = place_facts(family, family.places[0], (2026,))

    def planned(leave_place_at: datetime) -> DayPlan:
        found = plan_outing(
            family,
            family.party(),
            facts,
            WEDNESDAY,
            today=TODAY,
            leave_at=best.leave_home,
            leave_place_at=leave_place_at,
        )
        assert isinstance(found, Outing)
        return found.plan

    earlier = best.leave_place - timedelta(minutes=7)
    assert (planned(earlier).leave_home, planned(earlier).leave_place) == (best.leave_home, earlier)
    assert planned(best.leave_home).leave_home == best.leave_home
    assert planned(best.leave_home).leave_place > best.enter


def test_a_height_that_a_ride_hangs_on_is_asked_for() -> None:
    """Only for what the family takes there."""
    people = [{"name": "Ann", "born": "1988-05-20"}, {"name": "Cy", "born": "2019-03-11"}]
    ride = {"name": "Ride", "price": "3", "least_height": "42 in"}
    for usual in (True, False):
        place = make_place(add_ons=[{**ride, "usual": usual}])
        notes = outing(Family(make_household(members=people), (place,))).notes
        assert [note.values["name"] for note in notes if note.code == "notes-height-asked"] == ["Cy"] * usual


def test_missing_birth_days_and_missing_adults_are_told() -> None:
    """A party without an adult, and an age in doubt, stand among the notes."""
    children = make_household(members=[{"name": "Eli", "born": "2012-12"}])
    notes = outing(Family(children, (make_place(),))).notes
    assert {fact("notes-age-in-doubt", names=("Eli",)), fact("notes-no-adult")} <= set(notes)


def test_a_party_is_named_or_everybody(family: Family) -> None:
    """No names mean everybody, in the household's order; an unknown name and an empty list are refused."""
    assert [m.name for m in family.party()] == ["Ann", "Bo", "Cy", "Di"]
    assert [m.name for m in family.party(["Di", "Ann"])] == ["Ann", "Di"]
    with pytest.raises(UnknownName, match="Zoe"):
        family.party(["Zoe"])
    with pytest.raises(PlanError):
        family.party([])


def test_no_school_classes_come_in_july_even_where_no_calendar_reaches() -> None:
    """A typical year tells: on a Wednesday in October they do, in July not; a calendar's word wins."""
    family = with_place(opening={"hours": "Mo-Su 10:00-17:00", "school_groups": "10:00-12:00"})
    july, october = date(2027, 7, 14), date(2027, 10, 6)
    assert not outing(family, july).hours.group_spans
    assert outing(family, october).hours.group_spans
    point = family.places[0].where.point
    open_in_july = SchoolCalendar(
        name="All year round",
        country="US",
        subdivision="IL",
        latitude=point.latitude,
        longitude=point.longitude,
        known=DateSpan(first=july, last=july),
    )
    assert outing(replace(family, school_calendars=(open_in_july,)), july).hours.group_spans
