"""When the day goes wrong: what can be done from here and now, and what becomes of the money."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from typing import Any

import pytest

from tests.builders import make_household, make_place
from tests.saying import says
from tripplan.documents.family.member import SleepsIn
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.errors import PlanError, UnknownName
from tripplan.language.sentences import fact
from tripplan.planning.family.family import Family
from tripplan.planning.on_the_day.recovery_options import RecoveryKind, RecoveryOption, RevisedDay
from tripplan.planning.on_the_day.replan import replan
from tripplan.planning.on_the_day.trouble import Trouble, Whereabouts
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, total
from tripplan.values.weekday import Weekday

TODAY = date(2026, 11, 25)
DAY = date(2026, 12, 9)
MINUTE = timedelta(minutes=1)
NEAR = {"town": "Near", "country": "US", "subdivision": "IL", "time_zone": "America/Chicago"}


DI = {
    "name": "Di",
    "born": "2025-07-15",
    "naps": [{"start": "12:30", "minutes": 100, "in_pushchair": True}],
}
MEMBERS = [
    {"name": "Ann", "born": "1988-05-20"},
    {"name": "Bo", "born": "1986-11-02"},
    {"name": "Cy", "born": "2019-03-11"},
    DI,
]


def make_family(*others: Place, household: dict[str, Any] | None = None, **changes: Any) -> Family:
    """Two adults, a child of seven and a toddler, who know that the museum for half a day is an hour away."""
    museum = make_place(**{"visit": {"comfortable_minutes": 240}, **changes})
    typed = TypedDrive(place=museum.id, km=60, minutes=60, typed_on=TODAY)
    return Family(
        make_household(**{"members": MEMBERS, **(household or {})}), (museum, *others), typed_drives=(typed,)
    )


def planned(family: Family) -> Outing:
    """The museum on a Wednesday."""
    place = family.places[0]
    found = plan_outing(family, family.party(), place_facts(family, place, (DAY.year,)), DAY, today=TODAY)
    assert isinstance(found, Outing), found
    return found


def again(family: Family, **trouble: Any) -> tuple[Outing, RevisedDay]:
    """The day as planned, and anew after something went wrong."""
    outing = planned(family)
    return outing, replan(family, outing, Trouble(**trouble), today=TODAY)


def way(found: RevisedDay, choice: RecoveryKind) -> RecoveryOption:
    """The one way of a kind."""
    (one,) = (way for way in found.ways if way.choice is choice)
    return one


def nearer(name: str, latitude: float, **changes: Any) -> Place:
    """Another museum, north of the household's home at 40.69."""
    where = {**NEAR, "latitude": latitude, "longitude": -89.589}
    return make_place(id=name.lower(), name=name, where=where, **changes)


def dollars(amount: str) -> Money:
    """An amount."""
    return Money(Decimal(amount), "USD")


def test_a_day_without_trouble_stays_as_planned() -> None:
    """Nought minutes late, going on is the old plan at the old price."""
    outing, found = again(make_family())
    on = way(found, RecoveryKind.GO_ON)
    assert on.outing is not None
    assert (on.outing.plan.leave_home, on.outing.plan.home) == (outing.plan.leave_home, outing.plan.home)
    assert (on.change, on.tickets) == (dollars("0"), None)
    assert says(on.money_sentence, "recovery-costs-as-planned")
    enter, leave = outing.plan.enter, outing.plan.leave_place
    assert says(on.times_sentence, "recovery-times", enter=enter, leave_place=leave)
    assert not says(on.times_sentence, "recovery-left")


@pytest.mark.parametrize("late", [20, 40, 95])
def test_leaving_late_is_the_best_day_that_leaves_no_earlier(late: int) -> None:
    """The new plan is what the search finds when the earliest departure is now."""
    family = make_family()
    outing, found = again(family, late_minutes=late)
    now = outing.plan.leave_home + timedelta(minutes=late)
    habits = {"earliest_departure": f"{now:%H:%M}"}
    members = [{**m.model_dump(mode="json"), "wakes": "05:00"} for m in family.household.members]
    later = planned(make_family(household={"habits": habits, "members": members}))
    on = way(found, RecoveryKind.GO_ON)
    assert found.now == now
    assert on.outing is not None
    assert on.outing.plan == later.plan
    assert on.total == later.cost.total.likely


def test_the_same_place_comes_before_another_and_another_before_turning_back() -> None:
    """Of the two ways on to the same place, the one with less money and nuisances stands first."""
    _, found = again(make_family(nearer("Mill", 40.8)), asleep="Di")
    assert [way.choice for way in found.ways[-2:]] == [RecoveryKind.UNDERSTUDY, RecoveryKind.TURN_BACK]
    here = [way.weighs.amount for way in found.ways[:-2]]
    assert len(here) == 2
    assert here == sorted(here)


def test_too_late_for_the_place_says_why_and_leaves_the_other_ways() -> None:
    """Six hours late nobody is let in for long enough; staying at home and its saving remain."""
    outing, found = again(make_family(), late_minutes=6 * 60, tickets_paid=False)
    ((title, reasons),) = found.impossible
    assert title == fact("recovery-go-on", place="Test museum")
    assert reasons
    home = way(found, RecoveryKind.TURN_BACK)
    assert home.title == fact("recovery-stay-home")
    assert home.change == dollars("0") - outing.cost.total.likely


def test_tickets_already_paid_for_are_lost_by_staying_at_home() -> None:
    """37.00 were paid for two adults and a child; nothing is refundable, so the day costs just that."""
    _, found = again(make_family(), late_minutes=60, tickets_paid=True)
    home = way(found, RecoveryKind.TURN_BACK)
    assert home.tickets is not None
    assert (home.tickets.lost, home.tickets.back) == (dollars("37.00"), dollars("0"))
    assert home.total == dollars("37.00")
    assert says(home.money_sentence, "recovery-tickets-lost", lost=dollars("37.00"))
    assert not says(home.money_sentence, "recovery-tickets-back")


def test_refundable_tickets_come_back() -> None:
    """Only the adults' tickets are refundable: 28.00 come back, the child's 9.00 are lost."""
    offers = [
        {"name": "Adult", "price": "14.00", "ages": "13+", "refundable": True},
        {"name": "Child", "price": "9.00", "ages": "3-12"},
        {"name": "Small child", "price": "0.00", "ages": "under 3"},
    ]
    _, found = again(make_family(offers=offers), tickets_paid=True)
    home = way(found, RecoveryKind.TURN_BACK)
    assert home.tickets is not None
    assert (home.tickets.lost, home.tickets.back) == (dollars("9.00"), dollars("28.00"))
    assert says(home.money_sentence, "recovery-tickets-back", back=dollars("28.00"))


def test_an_annual_pass_is_not_lost_when_the_day_is() -> None:
    """A pass bought for the day stays good for other days: paid, but not lost."""
    offers = [
        {
            "kind": "pass",
            "name": "Year",
            "price": "30.00",
            "months": 12,
            "seats": [{"count": 4}],
        },
    ]
    _, found = again(make_family(offers=offers), tickets_paid=True)
    home = way(found, RecoveryKind.TURN_BACK)
    assert home.tickets is not None
    assert (home.tickets.spent, home.tickets.lost) == (dollars("30.00"), dollars("0"))


@pytest.mark.parametrize(("paid", "lost"), [(False, None), (True, "23.00")])
def test_one_adult_stays_with_a_child_that_is_ill(paid: bool, lost: str | None) -> None:
    """Cy (9.00) and one adult (14.00) stay; paid tickets for them are lost, unpaid ones are not bought."""
    outing, found = again(make_family(), ill="Cy", tickets_paid=paid)
    on = way(found, RecoveryKind.GO_ON)
    assert on.outing is not None
    names = {member.name for member in on.outing.party}
    assert "Di" in names
    assert "Cy" not in names
    assert len(names & {"Ann", "Bo"}) == 1
    if lost is None:
        assert on.tickets is None
        assert on.change < dollars("0")
    else:
        assert on.tickets is not None
        assert on.tickets.lost == dollars(lost)
        # Paid tickets stay in the total, which is otherwise that of the smaller party.
        smaller = on.outing.cost.total.likely - on.outing.admission.total
        assert on.total == smaller + outing.admission.total


def test_the_parent_may_say_who_stays_home() -> None:
    """With Ann at home, Bo goes with the healthy child."""
    _, found = again(make_family(), ill="Cy", stays_home="Ann")
    on = way(found, RecoveryKind.GO_ON)
    assert on.outing is not None
    assert [member.name for member in on.outing.party] == ["Bo", "Di"]
    go_on = fact("recovery-go-on", place="Test museum")
    assert on.title == fact("recovery-with", what=go_on, who=("Bo", "Di"))


def test_nobody_goes_where_no_adult_is_left_to_go() -> None:
    """One adult alone with the children stays at home with the one that is ill."""
    members = [{"name": "Ann", "born": "1988-05-20"}, {"name": "Cy", "born": "2019-03-11"}]
    _, found = again(make_family(household={"members": members}), ill="Cy")
    assert [way.choice for way in found.ways] == [RecoveryKind.TURN_BACK]
    assert found.impossible[0][1] == (fact("recovery-no-adult-left", name="Cy"),)


def test_a_child_ill_on_the_way_means_turning_back() -> None:
    """Out of the house there is no way on."""
    _, found = again(make_family(), ill="Cy", where=Whereabouts.ON_THE_WAY)
    assert [way.choice for way in found.ways] == [RecoveryKind.TURN_BACK]


def test_waiting_for_a_sleeping_child_keeps_its_sleep() -> None:
    """Fallen asleep at the planned departure, Di sleeps 100 minutes at home; going at once loses some."""
    outing, found = again(make_family(), asleep="Di")
    wait, on = way(found, RecoveryKind.WAIT), way(found, RecoveryKind.GO_ON)
    assert wait.outing is not None
    assert wait.outing.plan.leave_home >= outing.plan.leave_home + timedelta(minutes=100)
    assert [nap.kept for nap in wait.naps] == [((SleepsIn.HOME, 100),)]
    assert sum(nap.kept_minutes for nap in on.naps) < 100


def test_on_the_way_everybody_sits_in_the_car_until_the_child_wakes() -> None:
    """Asleep since ten minutes before the end of the drive: 90 minutes more in the car, and a caution."""
    family = make_family()
    outing, found = again(family, where=Whereabouts.ON_THE_WAY, still_to_drive_minutes=10, asleep="Di")
    wait = way(found, RecoveryKind.WAIT)
    assert wait.outing is not None
    (nap,) = wait.naps
    assert nap.kept == ((SleepsIn.CAR, 100),)
    unload = outing.way_there.unload_minutes
    assert wait.outing.plan.enter == found.now + timedelta(minutes=100 + unload)
    assert fact("cautions-asleep-in-car") in found.cautions


def test_going_on_late_on_the_way_moves_the_whole_drive() -> None:
    """Half an hour late on the way, they arrive half an hour later than planned."""
    outing, found = again(make_family(), where=Whereabouts.ON_THE_WAY, late_minutes=30)
    on = way(found, RecoveryKind.GO_ON)
    assert on.outing is not None
    assert on.outing.plan.leave_home == outing.plan.leave_home + timedelta(minutes=30)
    assert says(on.times_sentence, "recovery-left", at=on.outing.plan.leave_home)
    arrival = outing.plan.leave_home + timedelta(minutes=30 + outing.way_there.minutes)
    assert on.outing.plan.enter == max(arrival, outing.hours.spans[0].opens)


def test_turning_back_on_the_way_drives_back_what_was_driven() -> None:
    """20 of 60 minutes driven: 20 back, a third of the car's cost, and the food that was packed."""
    outing, found = again(make_family(), where=Whereabouts.ON_THE_WAY, still_to_drive_minutes=40)
    back = way(found, RecoveryKind.TURN_BACK)
    leg = outing.way_there
    assert back.title == fact("recovery-turn-back")
    assert back.home == outing.plan.leave_home + timedelta(
        minutes=leg.load_up_minutes + 40 + leg.unload_minutes
    )
    by_kind: dict[CostKind, list[Money]] = {kind: [] for kind in CostKind}
    for item in outing.cost.items:
        if item.amount is not None:
            by_kind[item.kind].append(item.amount.likely)
    expected = total(by_kind[CostKind.FOOD], "USD") + total(by_kind[CostKind.CAR], "USD") * Decimal("0.3333")
    assert back.total == expected


def test_at_the_place_nobody_leaves_before_now() -> None:
    """At one o'clock the ways are to stay on or to go home; what was paid is spent, not lost."""
    family = make_family()
    outing = planned(family)
    now = outing.plan.enter.replace(hour=13, minute=2)
    found = replan(family, outing, Trouble(where=Whereabouts.THERE, now=now), today=TODAY)
    on, back = way(found, RecoveryKind.GO_ON), way(found, RecoveryKind.TURN_BACK)
    assert on.outing is not None
    assert on.title == fact("recovery-stay-at", place="Test museum")
    assert on.outing.plan.enter == outing.plan.enter
    assert on.outing.plan.leave_place >= now
    assert back.title == fact("recovery-go-home")
    assert back.home == now + timedelta(minutes=outing.way_home.minutes)
    assert (back.total, back.tickets and back.tickets.lost) == (outing.cost.total.likely, dollars("0"))


def test_the_understudy_is_the_nearest_place_that_is_still_worth_it() -> None:
    """The nearest is closed on Wednesdays; the next, some 11 km away, is taken before the farther ones."""
    closed = nearer("Closed", 40.72, opening={"hours": "Sa-Su 10:00-17:00"})
    mill, dam = nearer("Mill", 40.79), nearer("Dam", 40.95)
    _, found = again(make_family(dam, closed, mill), late_minutes=60)
    understudy = way(found, RecoveryKind.UNDERSTUDY)
    assert understudy.outing is not None
    assert understudy.outing.place.name == "Mill"
    assert (understudy.title.code, understudy.title.values["place"]) == ("recovery-instead", "Mill")
    away = understudy.title.values["away"]
    assert isinstance(away, timedelta)
    assert timedelta(minutes=5) < away < timedelta(minutes=30)


def test_tickets_for_the_first_place_are_added_to_those_for_the_understudy() -> None:
    """37.00 are lost, and the other museum's 37.00 are paid all the same."""
    _, found = again(make_family(nearer("Mill", 40.79)), late_minutes=60, tickets_paid=True)
    understudy = way(found, RecoveryKind.UNDERSTUDY)
    assert understudy.outing is not None
    assert understudy.total == understudy.outing.cost.total.likely + dollars("37.00")
    assert understudy.tickets is not None
    assert understudy.tickets.lost == dollars("37.00")


@pytest.mark.parametrize("where", [Whereabouts.ON_THE_WAY, Whereabouts.THERE])
def test_the_understudy_on_the_way_begins_from_here(where: Whereabouts) -> None:
    """The day still begins at home when it did, and the steps fill it without gaps."""
    family = make_family(nearer("Mill", 40.6), visit={"comfortable_minutes": 400})
    outing, found = again(family, where=where, late_minutes=20)
    for one in found.ways:
        if one.choice is RecoveryKind.UNDERSTUDY:
            assert one.outing is not None
            plan = one.outing.plan
            assert plan.leave_home == outing.plan.leave_home + timedelta(minutes=20)
            assert plan.enter > found.now
            assert all(a.end == b.start for a, b in zip(plan.steps, plan.steps[1:], strict=False))
            break
    else:
        pytest.fail("there is no understudy")


def test_in_rain_the_open_air_comes_last_and_is_no_understudy() -> None:
    """The park is passed over for the mill with a roof, and going on to an open-air museum comes last."""
    park = nearer("Park", 40.72, visit={"indoors": "outdoors"})
    mill = nearer("Mill", 40.79, visit={"indoors": "indoors"})
    _, found = again(make_family(park, mill, visit={"indoors": "outdoors"}), rain=True)
    assert found.ways[-1].choice is RecoveryKind.GO_ON
    assert found.ways[-1].notes == (fact("recovery-open-air", whole=True),)
    understudy = way(found, RecoveryKind.UNDERSTUDY)
    assert understudy.outing is not None
    assert understudy.outing.place.name == "Mill"


def test_after_midnight_the_way_home_is_still_told() -> None:
    """From the place it is an hour home at half past midnight too; a day later nobody is out any more."""
    family = make_family(opening={"hours": "10:00-23:00"}, household={"habits": {"home_by": "23:59"}})
    night = datetime(2026, 12, 10, 0, 30, tzinfo=family.household.home.zone)
    outing, found = again(family, where=Whereabouts.THERE, now=night)
    (back,) = found.ways
    assert back.title == fact("recovery-go-home")
    assert back.home == night + timedelta(minutes=outing.way_home.minutes)
    assert found.impossible[0][0] == fact("recovery-stay-at", place="Test museum")
    for late in (
        {"where": Whereabouts.THERE, "now": night + timedelta(days=1)},
        {"where": Whereabouts.HOME, "late_minutes": 24 * 60},
    ):
        with pytest.raises(PlanError, match="the day is over"):
            again(family, **late)


def test_names_and_minutes_are_checked() -> None:
    """A stranger, a negative delay and a delay beyond midnight are callers' mistakes."""
    family = make_family()
    outing = planned(family)
    with pytest.raises(UnknownName):
        replan(family, outing, Trouble(asleep="Zed"), today=TODAY)
    with pytest.raises(PlanError, match="no less than zero"):
        replan(family, outing, Trouble(late_minutes=-5), today=TODAY)
    with pytest.raises(PlanError, match="the day is over"):
        replan(family, outing, Trouble(late_minutes=18 * 60), today=TODAY)


def test_a_sleep_that_began_a_while_ago_is_shorter_to_wait_for() -> None:
    """Asleep for an hour already, Di wakes 40 minutes from now."""
    family = make_family()
    outing = planned(family)
    now = outing.plan.leave_home.astimezone(UTC)
    trouble = Trouble(asleep="Di", asleep_since=datetime.fromtimestamp(now.timestamp() - 3600, UTC))
    found = replan(family, outing, trouble, today=TODAY)
    wait = way(found, RecoveryKind.WAIT)
    assert wait.outing is not None
    first = outing.plan.leave_home + timedelta(minutes=40)
    assert first <= wait.outing.plan.leave_home
    none = replan(family, outing, replace(trouble, asleep_since=now - timedelta(hours=3)), today=TODAY)
    assert RecoveryKind.WAIT not in [way.choice for way in none.ways]


EVENING: dict[str, Any] = {"where": Whereabouts.GOING_HOME}
NO_NAP_OUT = {**DI, "naps": [{"start": "12:30", "minutes": 100, "in_car": False, "slack_minutes": 0}]}


def test_on_the_way_home_lateness_moves_being_home_and_costs_nothing_more() -> None:
    """By hand: 20 minutes of driving are left; half an hour late in leaving is half an hour late home."""
    outing, found = again(make_family(), late_minutes=30, still_to_drive_minutes=20, **EVENING)
    (on,) = found.ways
    assert (on.title, on.choice, on.outing) == (fact("recovery-drive-home"), RecoveryKind.GO_ON, None)
    assert on.home == outing.plan.home + timedelta(minutes=30)
    assert on.home - found.now == timedelta(minutes=20 + outing.way_home.unload_minutes)
    assert fact("recovery-later", late=30 * MINUTE) in on.notes
    assert (on.change, on.naps) == (dollars("0"), outing.plan.naps)
    assert not found.impossible
    assert on.total == outing.cost.total.likely
    assert fact("cautions-while-driving") in found.cautions


def test_on_the_way_home_what_is_late_is_told_by_how_much() -> None:
    """By hand: 4:46 PM and 2 h 55 min are 41 minutes past seven, eleven past half past seven."""
    outing, found = again(make_family(), late_minutes=175, **EVENING)
    (late,), (in_time,) = found.ways, again(make_family(), **EVENING)[1].ways
    assert f"{outing.plan.home:%H:%M}" == "16:46"
    by = late.home.replace(hour=19, minute=0)
    assert late.notes == (
        fact("recovery-later", late=175 * MINUTE),
        fact("recovery-after", late=41 * MINUTE, what=fact("recovery-home-by", at=by)),
        fact("recovery-after", late=11 * MINUTE, what=fact("recovery-bedtime", at=by.replace(minute=30))),
    )
    # The usual worth of an hour past either is 30.00 and 12.00.
    assert late.felt - in_time.felt == dollars("22.70")


def test_a_child_that_missed_its_nap_may_sleep_on_in_the_car_at_home() -> None:
    """Asleep with half an hour to go: carried in it wakes; left in the car it sleeps its 100 minutes."""
    family = make_family(
        household={"members": [*MEMBERS[:3], NO_NAP_OUT]},
        visit={"comfortable_minutes": 240, "pushchairs": False},
    )
    outing = planned(family)
    assert outing.plan.naps[0].kept_minutes < 100
    _, found = again(family, asleep="Di", still_to_drive_minutes=30, **EVENING)
    on, wait = way(found, RecoveryKind.GO_ON), way(found, RecoveryKind.WAIT)
    assert wait.title == fact("recovery-sleep-on-in-car", name="Di")
    assert [(nap.kept, nap.usual_minutes) for nap in on.naps] == [(((SleepsIn.CAR, 30),), 100)]
    assert [nap.kept for nap in wait.naps] == [((SleepsIn.CAR, 100),)]
    assert wait.home - on.home == timedelta(minutes=70)
    assert fact("cautions-asleep-in-car") in found.cautions


def test_a_child_that_stays_asleep_when_moved_is_carried_in() -> None:
    """Nobody has to wait in the car; the rest of the sleep is in bed."""
    moved = {**NO_NAP_OUT, "naps": [{"start": "12:30", "minutes": 100, "stays_asleep_when_moved": True}]}
    family = make_family(household={"members": [*MEMBERS[:3], moved]}, opening={"hours": "10:00-17:00"})
    outing = planned(family)
    late = replace(outing, plan=replace(outing.plan, naps=()))
    found = replan(family, late, Trouble(asleep="Di", still_to_drive_minutes=30, **EVENING), today=TODAY)
    (on,) = found.ways
    assert [nap.kept for nap in on.naps] == [((SleepsIn.CAR, 30), (SleepsIn.HOME, 70))]


def test_a_second_sleep_on_the_way_home_is_no_nap_that_was_missed() -> None:
    """Who has slept by the plan keeps that nap, and is told how long the evening gets."""
    outing, found = again(make_family(), asleep="Di", late_minutes=120, **EVENING)
    (nap,) = outing.plan.naps
    assert nap.asleep is not None
    assert nap.asleep[1] <= outing.plan.leave_place
    assert [way.choice for way in found.ways] == [RecoveryKind.GO_ON, RecoveryKind.WAIT]
    assert all(way.naps == (nap,) for way in found.ways)
    # Half of an hour's drive is over: asleep since 6:10 PM for 100 minutes; bed is at 7:30 PM.
    awake = found.now.replace(hour=16, minute=30)
    wakes = found.now.replace(hour=19, minute=50)
    assert found.ways[0].notes == (
        fact("recovery-later", late=120 * MINUTE),
        fact("recovery-slept-already", name="Di"),
        fact("recovery-tired-at-bedtime", name="Di", awake=awake, wakes=wakes),
    )


def test_a_child_asleep_at_the_place_is_not_woken_for_lunch() -> None:
    """Asleep at noon in the pushchair it sleeps its 100 minutes, whether the others wait or go on."""
    family = make_family()
    noon = datetime(2026, 12, 9, 12, 0, tzinfo=family.household.home.zone)
    _, found = again(family, where=Whereabouts.THERE, now=noon, asleep="Di")
    wait = way(found, RecoveryKind.WAIT)
    assert wait.title == fact("recovery-sleep-on-and-stay", name="Di", place="Test museum")
    assert [nap.kept for nap in wait.naps] == [((SleepsIn.PUSHCHAIR, 100),)]
    assert way(found, RecoveryKind.GO_ON).naps[0].kept_minutes == 100
    assert wait.outing is not None
    assert wait.outing.plan.leave_place >= noon + timedelta(minutes=100)


def test_where_there_is_no_understudy_it_is_told_why() -> None:
    """The three nearest others with what stands in the way of each; in rain, that none has a roof."""
    closed = nearer("Closed", 40.72, opening={"hours": "Mo 10:00-17:00"})
    far = nearer("Far", 44.0)
    family = make_family(closed, far)
    _, found = again(family, late_minutes=240)
    closed_why, far_why = dict(found.impossible)[fact("recovery-elsewhere")]
    assert closed_why.values["place"] == "Closed"
    assert says(closed_why.text, "hours-closed-weekday", day=Weekday.WEDNESDAY)
    assert (far_why.code, far_why.values["place"]) == ("recovery-place-why", "Far")
    open_air = nearer("Meadow", 40.72, visit={"indoors": "outdoors"})
    _, found = again(make_family(open_air), rain=True)
    assert dict(found.impossible)[fact("recovery-elsewhere")] == (fact("recovery-all-open-air"),)
    assert again(make_family(), late_minutes=30)[1].impossible == ()


def test_who_stays_at_home_with_the_child_and_who_waits_where_is_told() -> None:
    """Ann may stay with Cy; with Di asleep everybody waits, at home or all together in the car."""
    _, found = again(make_family(), ill="Cy", stays_home="Ann")
    stays = fact("recovery-stays-with", who=("Ann",), name="Cy")
    assert stays in way(found, RecoveryKind.GO_ON).notes
    stay = way(found, RecoveryKind.TURN_BACK)
    assert (stay.title, stay.home_sentence) == (fact("recovery-stay-home"), "")
    _, found = again(make_family(), asleep="Di")
    assert "recovery-home-until" in [note.code for note in way(found, RecoveryKind.WAIT).notes]
    _, found = again(make_family(), asleep="Di", where=Whereabouts.ON_THE_WAY)
    (note,) = way(found, RecoveryKind.WAIT).notes
    assert (note.code, note.values["name"]) == ("recovery-in-car-until", "Di")
    back = way(found, RecoveryKind.TURN_BACK)
    assert says(back.home_sentence, "recovery-home-at", at=back.home)
