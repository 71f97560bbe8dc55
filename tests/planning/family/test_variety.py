"""What the family saw lately, or is going to see, is not proposed again."""

from dataclasses import replace
from datetime import date

from tests.builders import make_household, make_outing, make_place
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.outings.planned import PlanStatus
from tripplan.planning.family.family import Family
from tripplan.planning.family.variety import lately, places_to_choose_among

TODAY = date(2026, 12, 8)
MILL = make_place(id="mill", name="Mill")
FARM = make_place(id="farm", name="Farm")
ZOO = make_place(id="zoo", name="Zoo")
US = Family(make_household(), places=(MILL, FARM, ZOO))


def ids(family: Family) -> list[str]:
    """The places to choose among on the eighth of December."""
    return [place.id for place in places_to_choose_among(family, TODAY)]


def test_a_place_rests_for_four_weeks_after_a_visit() -> None:
    """Visited on the 11th of November, the mill is proposed again on the ninth of December and not before."""
    visited = replace(US, last_visits={"mill": date(2026, 11, 11)})
    assert lately(visited, TODAY) == {"mill": date(2026, 11, 11)}
    assert ids(visited) == ["farm", "zoo"]
    assert ids(replace(US, last_visits={"mill": date(2026, 11, 10)})) == ["mill", "farm", "zoo"]


def test_where_the_family_is_going_anyway_is_not_proposed() -> None:
    """The farm is planned for March; called off it counts no more."""
    planned = make_outing(date(2027, 3, 2), place="farm")
    assert ids(replace(US, planned=(planned,))) == ["mill", "zoo"]
    off = planned.model_copy(update={"status": PlanStatus.CANCELLED})
    assert ids(replace(US, planned=(off,))) == ["mill", "farm", "zoo"]


def test_the_latest_day_is_told() -> None:
    """Visited in November and planned for March, the farm is told with the day in March."""
    planned = make_outing(date(2027, 3, 2), place="farm")
    both = replace(US, last_visits={"farm": date(2026, 11, 20)}, planned=(planned,))
    assert lately(both, TODAY) == {"farm": date(2027, 3, 2)}


def test_a_pass_is_there_to_be_used() -> None:
    """A place whose annual pass the family holds is proposed however lately it was there."""
    held = HeldPass(place="mill", offer="none", holders=("Ann",), valid_until=date(2027, 6, 1))
    family = replace(US, household=make_household(passes=[held]), last_visits={"mill": date(2026, 12, 1)})
    assert ids(family) == ["mill", "farm", "zoo"]


def test_where_all_were_visited_all_are_proposed() -> None:
    """Better an old place than none."""
    assert ids(replace(US, last_visits=dict.fromkeys(("mill", "farm", "zoo"), TODAY))) == [
        "mill",
        "farm",
        "zoo",
    ]
