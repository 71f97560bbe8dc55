"""Money that hangs on the hour is part of what the day search minimises."""

from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from tests.builders import codes, make_household, make_place
from tests.planning.sweep.families import TODAY, families
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.language.sentences import fact
from tripplan.planning.day import ViolatedLimit, plan_choice, trade_offs
from tripplan.planning.day.weighing.delays import usual_at_most
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

TUESDAY = date(2026, 12, 8)
SEEN = (
    ("candlewick-sink-cave", date(2027, 5, 5), "12:35", "16:30"),
    ("tern-landing", date(2026, 12, 4), "12:35", "15:45"),
    ("lantern-bluestem", date(2027, 1, 5), "09:50", "13:30"),
)
"""Days of the demo on which other times once cost less and weighed less than the best plan."""


def planned(family: Family, day: date, place: int = 0, **asked: object) -> Outing | NoOuting:
    """One of the family's places on a day."""
    facts = place_facts(family, family.places[place], (day.year, day.year + 1))
    return plan_outing(family, family.party(), facts, day, today=TODAY, **asked)  # type: ignore[arg-type]


@pytest.mark.parametrize(("place", "day", "leave", "leave_place"), SEEN)
def test_no_other_times_weigh_less_than_the_best(
    demo_family: Family, place: str, day: date, leave: str, leave_place: str
) -> None:
    """Money counted; and what other times weigh against the best is the difference of both outings."""
    (number,) = [n for n, one in enumerate(demo_family.places) if one.id == place]
    best = planned(demo_family, day, number)
    assert isinstance(best, Outing)
    zone = best.question.home_zone
    picked = planned(
        demo_family,
        day,
        number,
        leave_at=datetime.combine(day, time.fromisoformat(leave), zone),
        leave_place_at=datetime.combine(day, time.fromisoformat(leave_place), zone),
    )
    assert isinstance(picked, Outing)
    assert picked.plan.leave_home == datetime.combine(day, time.fromisoformat(leave), zone)
    quarter = best.question.worth.hour_in_car / 4
    assert best.generalized_cost.amount <= picked.generalized_cost.amount + quarter
    assert best.plan.spent == best.cost.total.likely
    assert picked.plan.spent == picked.cost.total.likely


NO_SHRINKING = (Phase.explicit, Phase.reuse, Phase.generate)


@settings(max_examples=15, phases=NO_SHRINKING, suppress_health_check=list(HealthCheck))
@given(families(), st.integers(1, 100), st.sampled_from((60, 40)))
def test_the_best_is_the_least_of_all_pairs_of_times(family: Family, later: int, grid: int) -> None:
    """A day asked for every departure with every leaving time: none weighs less than the search says."""
    day = TODAY + timedelta(days=later)
    best = planned(family, day, grid_minutes=grid)
    if isinstance(best, NoOuting):
        assert best.question is None or not list(_every_pair(best, family, day, grid))
        return
    least = min(_every_pair(best, family, day, grid))
    assert least == trade_offs(best.question).least.minor
    # Whoever may start later takes it for a quarter of an hour in the car.
    quarter = (best.question.worth.hour_in_car / 4).scaleb(2)
    assert least <= best.plan.weighs.minor <= least + quarter + 1


def _every_pair(asked: Outing | NoOuting, family: Family, day: date, grid: int) -> Iterator[int]:
    """What each pair of times that can be weighs, by the outing planned for it [cents]."""
    question = asked.question
    assert question is not None
    midnight = datetime.combine(day, time(0), question.home_zone)
    moments = [midnight + timedelta(minutes=minute) for minute in range(0, 26 * 60, grid)]
    for leave_at in moments:
        for leave_place_at in moments:
            if leave_place_at <= leave_at:
                continue
            if isinstance(plan_choice(question, leave_at, leave_place_at), ViolatedLimit):
                continue
            found = planned(family, day, leave_at=leave_at, leave_place_at=leave_place_at, grid_minutes=grid)
            if isinstance(found, Outing):
                assert found.plan.leave_home == leave_at
                yield (found.cost.total.likely + found.plan.felt).minor


def test_an_hour_at_which_nobody_is_let_in_is_no_choice() -> None:
    """Where the only ticket is good from 14:00 on, the party goes in then or later, whatever that weighs."""
    afternoon = {"name": "Afternoon", "price": "5.00", "valid": "14:00-17:00"}
    family = Family(make_household(), (make_place(offers=[afternoon]),))
    outing = planned(family, TUESDAY)
    assert isinstance(outing, Outing)
    assert outing.plan.enter.hour >= 14
    leave = datetime.combine(TUESDAY, time(9), outing.question.home_zone)
    crossed = plan_choice(outing.question, leave, leave.replace(hour=13))
    assert isinstance(crossed, ViolatedLimit)
    (limit,) = crossed.limits
    assert limit.code == "plan-no-offer-between"
    assert limit.values["leaves"] == leave.replace(hour=13)
    # They leave home at nine and are there after an hour and some minutes.
    enters = limit.values["enters"]
    assert isinstance(enters, datetime)
    assert leave.replace(hour=10) < enters < leave.replace(hour=10, minute=20)


def test_a_day_that_no_ticket_leaves_room_for_says_so() -> None:
    """The ticket of the last hour is too late for a visit of an hour."""
    late = {"name": "Late", "price": "5.00", "valid": "16:30-17:00"}
    family = Family(make_household(), (make_place(offers=[late]),))
    missed = planned(family, TUESDAY)
    assert isinstance(missed, NoOuting)
    assert fact("plan-no-offer-then") in missed.reasons


EVENING = {"name": "Evening", "price": "1.00", "valid": "15:00-17:00"}
BOARD: tuple[dict[str, Any], ...] = (
    {"name": "Adult", "price": "14.00", "ages": "13+"},
    {"name": "Child", "price": "9.00", "ages": "3-12"},
    {"name": "Small child", "price": "0.00", "ages": "under 3"},
)


def test_where_a_cheaper_hour_exists_it_is_said() -> None:
    """Two adults at 14, one child at 9 and a toddler for nothing are 37; from 15:00 on three at 1 are 3."""
    worth = {"missed_hour_there": "100.00"}
    opening = {"hours": "Tu-Su 10:00-17:00"}
    stay = {"comfortable_minutes": 240}
    place = make_place(offers=[*BOARD, EVENING], opening=opening, visit=stay)
    household = make_household(
        worth=worth, reserve_percent="0", food={"packed_adult": "0", "packed_child": "0"}
    )
    outing = planned(Family(household, (place,)), TUESDAY)
    assert isinstance(outing, Outing)
    assert outing.plan.enter.hour < 15
    assert outing.cheaper_hour is not None
    assert outing.cheaper_hour.saves.minor == 3400
    (change,) = outing.cheaper_hour.changes
    assert change.code == "notes-in-from"
    assert outing.cheaper_hour.brings in outing.notes


def test_the_best_plan_waits_for_a_price_that_saves_more_than_the_wait_weighs() -> None:
    """The same board where a short stay weighs little: in at 15:00 or later, and nothing is left to tell."""
    worth = {"missed_hour_there": "1.00"}
    outing = planned(Family(make_household(worth=worth), (make_place(offers=[*BOARD, EVENING]),)), TUESDAY)
    assert isinstance(outing, Outing)
    assert outing.plan.enter.hour >= 15
    assert outing.cheaper_hour is None


@pytest.mark.parametrize(
    ("cheap", "saves"),
    [
        ({"name": "Short", "price": "2.00", "longest_stay_minutes": 90}, "notes-inside-at-most"),
        ({"name": "Morning", "price": "2.00", "leave_by": "12:00"}, "notes-out-by"),
    ],
)
def test_a_ticket_for_a_short_stay_is_sold_for_no_longer_one(cheap: dict[str, object], saves: str) -> None:
    """Whoever stays longer pays the usual price, and is told what leaving in time would save."""
    worth = {"missed_hour_there": "100.00", "hour_early_departure": "0.00"}
    place = make_place(offers=[*BOARD, cheap], visit={"comfortable_minutes": 300})
    household = make_household(worth=worth, reserve_percent="0")
    outing = planned(Family(household, (place,)), TUESDAY)
    assert isinstance(outing, Outing)
    assert outing.plan.visit_minutes > 120
    assert outing.admission.total.minor == 3700
    assert outing.cheaper_hour is not None
    assert codes(outing.cheaper_hour.changes) == [saves]


def test_a_price_that_ends_soon_after_coming_widens_the_range() -> None:
    """In shortly before 10:00, until when all pay 2 each: a little later it is the usual 37."""
    early = {"name": "Early", "price": "2.00", "valid": "08:00-10:00"}
    place = make_place(offers=[*BOARD, early], opening={"hours": "Tu-Su 08:00-17:00"})
    outing = planned(Family(make_household(reserve_percent="0"), (place,)), TUESDAY)
    assert isinstance(outing, Outing)
    assert outing.admission.total.minor == 600
    assert timedelta(0) < datetime.combine(TUESDAY, time(10), place.where.zone) - outing.plan.enter
    total = outing.cost.total
    assert total.high.minor - total.likely.minor >= 3700 - 600


def test_what_only_early_tickets_include_is_paid_for_later() -> None:
    """With the boat ride in the early price, a little later it is the usual 37 and four rides at 5."""
    early = {"name": "Early", "price": "2.00", "valid": "08:00-10:00", "includes": ["Boat"]}
    boat = {"name": "Boat", "price": "5.00", "usual": True}
    place = make_place(offers=[*BOARD, early], opening={"hours": "Tu-Su 08:00-17:00"}, add_ons=[boat])
    outing = planned(Family(make_household(reserve_percent="0"), (place,)), TUESDAY)
    assert isinstance(outing, Outing)
    assert outing.admission.total.minor < 3700
    rides_now = sum(
        item.likely.minor
        for item in outing.cost.items
        if item.likely and item.label.values.get("name") == "Boat"
    )
    assert rides_now < 4 * 500
    later = 3700 + 4 * 500 - outing.admission.total.minor - rides_now
    assert outing.cost.total.high.minor - outing.cost.total.likely.minor >= later


def test_the_ticket_that_includes_what_is_wanted_is_bought_where_it_pays_in_all() -> None:
    """Four rides at 5 beside 37 are 57; tickets that include the ride at 2 more each are 45 in all."""
    boat = {"name": "Boat", "price": "5.00", "usual": True}
    plus = [
        {**offer, "name": f"{offer['name']} plus", "price": str(Decimal(offer["price"]) + 2)}
        for offer in BOARD
    ]
    place = make_place(offers=[*BOARD, *({**offer, "includes": ["Boat"]} for offer in plus)], add_ons=[boat])
    outing = planned(Family(make_household(reserve_percent="0"), (place,)), TUESDAY)
    assert isinstance(outing, Outing)
    assert outing.admission.total.minor == 4500
    assert not [item for item in outing.cost.items if item.label.values.get("name") == "Boat"]
    without = planned(Family(make_household(reserve_percent="0"), (place,), own_figures=(NOTHING,)), TUESDAY)
    assert isinstance(without, Outing)
    assert without.admission.total.minor == 3700


NOTHING = OwnFigures(place="test-museum", add_ons=())
"""A family that takes nothing beside entry."""


@settings(max_examples=25, phases=NO_SHRINKING, suppress_health_check=list(HealthCheck))
@given(families(), st.integers(1, 100), st.integers(0, 25), st.integers(0, 25))
def test_no_usual_delay_costs_more_or_less_than_the_range(
    family: Family, later: int, there: int, back: int
) -> None:
    """Leaving home and the place later, as on nineteen of twenty days, stays within the range."""
    day = TODAY + timedelta(days=later)
    outing = planned(family, day)
    if isinstance(outing, NoOuting):
        return
    plan, most = outing.plan, usual_at_most(family.household.habits, None)
    delayed = planned(
        family,
        day,
        leave_at=plan.leave_home + timedelta(minutes=min(there, most)),
        leave_place_at=plan.leave_place + timedelta(minutes=min(back, most)),
    )
    assert isinstance(delayed, Outing)
    if delayed.plan.leave_home == plan.leave_home + timedelta(minutes=min(there, most)):
        assert outing.cost.total.low <= delayed.cost.total.likely <= outing.cost.total.high
