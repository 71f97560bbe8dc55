"""Rush hours, stops, darkness and clocks as they show in an outing."""

from datetime import date, datetime, timedelta
from decimal import Decimal
from itertools import pairwise
from typing import Any

import pytest

from tests.builders import codes, make_household, make_place
from tripplan.documents.family.household import Household
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.language.sentences import fact
from tripplan.planning.day import StepKind
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

TODAY = date(2026, 11, 25)
WEDNESDAY = date(2026, 12, 9)
HOUR_AWAY = TypedDrive(place="test-museum", km=80, minutes=60, typed_on=TODAY)


def outing(day: date = WEDNESDAY, place: dict[str, Any] | None = None, **household: Any) -> Outing:
    """A museum an hour's drive away; habits and home of the household can be changed."""
    family = Family(make_household(**household), (make_place(**(place or {})),), typed_drives=(HOUR_AWAY,))
    found = plan_outing(
        family, family.party(), place_facts(family, family.places[0], (day.year,)), day, today=TODAY
    )
    assert isinstance(found, Outing), found
    return found


def steps(found: Outing, kind: StepKind) -> list[tuple[str, int]]:
    """Label and minutes of every step of a kind."""
    minute = timedelta(minutes=1)
    return [
        (step.label.text, (step.end - step.start) // minute) for step in found.plan.steps if step.kind is kind
    ]


def test_old_households_and_cards_know_no_rush_and_no_stops() -> None:
    """Without the new fields the drive is what it was: an hour there and an hour back."""
    found = outing()
    assert (found.way_there.drive_minutes, found.way_home.drive_minutes) == (60, 60)
    assert steps(found, StepKind.STOP) == []


def test_a_child_newly_out_of_nappies_has_its_toilet_breaks() -> None:
    """By hand: an hour with 25 minutes between toilets is three stretches of 20, with two rests of 15."""
    cy = {"name": "Cy", "born": "2023-10-02", "toilet_minutes": 25}
    people = [{"name": "Ann", "born": "1988-05-20"}, cy]
    found = outing(members=people, habits={"lunch_minutes": 0})
    assert [minutes for _, minutes in steps(found, StepKind.REST)] == [15] * 4
    assert [minutes for _, minutes in steps(found, StepKind.DRIVE)] == [20] * 6
    plain = outing(members=[people[0], {**cy, "toilet_minutes": None}], habits={"lunch_minutes": 0})
    assert steps(plain, StepKind.REST) == []
    assert found.way_there.minutes == plain.way_there.minutes + 30


def test_without_the_child_nobody_stops_for_it() -> None:
    """The breaks are those of the party that goes, not of the household."""
    cy = {"name": "Cy", "born": "2023-10-02", "toilet_minutes": 25}
    people = [{"name": "Ann", "born": "1988-05-20"}, cy]
    family = Family(make_household(members=people), (make_place(),), typed_drives=(HOUR_AWAY,))
    facts = place_facts(family, family.places[0], (WEDNESDAY.year,))
    alone = plan_outing(family, family.party(["Ann"]), facts, WEDNESDAY, today=TODAY)
    assert isinstance(alone, Outing)
    assert steps(alone, StepKind.REST) == []


def test_rush_hours_make_the_planned_leg_longer_and_say_so() -> None:
    """Twice as long all day: two hours of driving each way, told in the range and its source."""
    all_day = [{"start": "05:00", "end": "22:00", "factor": "2"}]
    found = outing(habits={"rush_hours": all_day})
    assert (found.way_there.drive_minutes, found.way_home.drive_minutes) == (120, 120)
    assert found.way_there.drive.minutes.likely == pytest.approx(120)
    assert "rush hours add 1 h" in found.way_there.drive.source.text
    assert sum(minutes for _, minutes in steps(found, StepKind.DRIVE)) == found.plan.car_minutes == 240


def test_the_search_moves_the_day_out_of_the_rush() -> None:
    """With an hour in the car at 60.00 and no naps, a rush from seven to ten is waited for at home."""
    rush = [{"start": "07:00", "end": "10:00", "factor": "3"}]
    people = [{"name": "Ann", "born": "1988-05-20"}]
    found = outing(habits={"rush_hours": rush}, members=people, worth={"hour_in_car": "60.00"})
    assert found.plan.leave_home.strftime("%H:%M") >= "09:55"
    assert found.way_there.drive_minutes == 60


def test_there_is_no_rush_on_a_public_holiday() -> None:
    """New Year's Eve is a Thursday like others, New Year's Day a holiday of the United States."""
    rush = {"rush_hours": [{"start": "05:00", "end": "22:00", "factor": "2"}]}
    every_day = {"opening": {"hours": "Mo-Su 10:00-17:00"}}
    eve, new_year = (outing(day, every_day, habits=rush) for day in (date(2026, 12, 31), date(2027, 1, 1)))
    assert (eve.way_there.drive_minutes, new_year.way_there.drive_minutes) == (120, 60)


def test_a_place_in_a_large_city_has_the_published_rush_hours() -> None:
    """A drive that has to begin between seven and eight takes 1.19 times as long as far as nine o'clock."""
    where = {**make_place().where.model_dump(), "metropolitan": True}
    early = {"where": where, "opening": {"hours": "Tu-Su 08:30-09:40"}}
    found = outing(place=early, habits={"ready_minutes": 0})
    assert 60 < found.way_there.drive_minutes <= 72  # 60 * 1.19 = 71.4


def test_stops_are_steps_and_count_in_minutes_and_km() -> None:
    """Oma is picked up and brought home, fuel and the farm shop are stopped for, without gaps."""
    found = outing(
        habits={
            "stops": {
                "fuel_range_km": 170,
                "pick_up": {"name": "Oma", "extra_km": 8, "extra_minutes": 10},
                "way_back": "farm shop",
                "way_back_minutes": 20,
            }
        }
    )
    assert steps(found, StepKind.STOP) == [
        ("pick up Oma", 10),
        ("fuel stop", 10),
        ("farm shop", 20),
        ("bring Oma home", 10),
    ]
    assert all(earlier.end == later.start for earlier, later in pairwise(found.plan.steps))
    assert (found.way_there.drive_minutes, found.way_home.drive_minutes) == (70, 70)
    assert found.way_there.drive.km.likely == pytest.approx(88)
    assert (found.plan.home - found.plan.leave_place) == timedelta(minutes=found.way_home.minutes)


def test_extra_km_cost_fuel() -> None:
    """The car's item of the cost grows with the detour of 8 km each way: 176 km instead of 160 (by hand)."""
    pick_up = {"stops": {"pick_up": {"name": "Oma", "extra_km": 8, "extra_minutes": 10}}}
    plain, longer = outing(), outing(habits=pick_up)
    before, after = (
        next(item.amount for item in found.cost.items if item.kind == "car") for found in (plain, longer)
    )
    assert before is not None
    assert after is not None
    assert float(after.likely.amount / before.likely.amount) == pytest.approx(1.1, abs=0.001)


def test_a_drive_home_after_sunset_is_told() -> None:
    """In December the sun sets in Peoria about half past four, before this drive; in June it does not."""
    late = {"opening": {"hours": "Tu-Su 15:00-18:00"}}
    notes = outing(place=late, habits={"home_by": "20:00"}).notes
    (dark,) = [note for note in notes if note.code == "drive-after-sunset"]
    assert (dark.values["there"], dark.values["whole"]) == (False, True)
    assert f"{dark.values['sets']:%H:%M}" == "16:31"  # the sun: tests/published/test_sunset.py
    assert not [note for note in outing(date(2027, 6, 9)).notes if "-sun" in note.code]


def test_another_clock_at_the_place_is_told() -> None:
    """A place in Indianapolis' zone is an hour ahead of a home in Chicago's."""
    where = {**make_place().where.model_dump(), "time_zone": "America/Indiana/Indianapolis"}
    found = outing(place={"where": where})
    assert fact("notes-another-zone", by=timedelta(hours=1), ahead=True) in found.notes


def test_a_clock_change_is_told() -> None:
    """Planned for the Saturday before the second Sunday of March 2027."""
    found = outing(date(2027, 3, 13))
    assert "notes-clocks-change" in codes(found.notes)


def test_rush_hours_and_stops_are_read_from_a_household() -> None:
    """The forms as a parent writes them, and back again unchanged."""
    household = make_household(
        habits={
            "rush_hours": [{"days": ["Mo", "Fr"], "start": "07:00", "end": "09:00", "factor": 1.25}],
            "stops": {"pick_up": {"name": "Oma", "latitude": 40.7, "longitude": -89.4}},
        }
    )
    (rush,) = household.habits.rush_hours or ()
    assert (rush.days, rush.factor) == (("Mo", "Fr"), Decimal("1.25"))
    assert Household.model_validate_json(household.model_dump_json()) == household


@pytest.mark.parametrize("clock", ["07:10", "12:00"])
def test_another_departure_brings_its_own_leg(clock: str) -> None:
    """The leg of an outing is the one that begins when its plan leaves home."""
    family = Family(
        make_household(habits={"rush_hours": [{"start": "07:00", "end": "09:00", "factor": "1.5"}]}),
        (make_place(),),
        typed_drives=(HOUR_AWAY,),
    )
    facts = place_facts(family, family.places[0], (2026,))
    asked = datetime.fromisoformat(f"2026-12-09T{clock}").replace(tzinfo=family.household.home.zone)
    found = plan_outing(family, family.party(), facts, WEDNESDAY, today=TODAY, leave_at=asked)
    assert isinstance(found, Outing)
    on_the_way = [step for step in found.plan.steps if step.start < found.plan.enter]
    driving = sum((s.end - s.start for s in on_the_way if s.kind is StepKind.DRIVE), timedelta())
    assert driving == timedelta(minutes=found.way_there.drive_minutes)
