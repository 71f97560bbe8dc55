"""Wishes about a day, and the days that nearly meet them or nearly came first."""

from collections.abc import Callable
from datetime import date, time
from decimal import Decimal

import numpy as np
import pytest

from tests.builders import make_household, make_place
from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar
from tripplan.documents.places.place import Place
from tripplan.language.sentences import fact
from tripplan.planning.climate.stations import stations
from tripplan.planning.day.search import SMALL_LOSS
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing
from tripplan.planning.sweep.listing import each_place_first
from tripplan.planning.sweep.misses import Miss, nearest_misses
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.sweep.table import DayTable
from tripplan.planning.sweep.wishes import Weeks, Wishes, all_met, wished
from tripplan.values.money import Money
from tripplan.values.weekday import Weekday as CalendarDay

TODAY = date(2026, 11, 25)
BIRD_WEEKS = DateSpan(first=date(2027, 1, 10), last=date(2027, 1, 20))
JANUARY = DateSpan(first=date(2027, 1, 4), last=date(2027, 2, 14))


def make_table(full_house: str = "20") -> DayTable:
    """The test family at two museums, on every day of some weeks; so much a full house is worth to it."""
    place = make_place()
    far = make_place(id="far", name="Far", where={**place.where.model_dump(), "longitude": -87.6})
    family = Family(make_household(worth={"full_house": full_house}), (place, replace_indoors(far)))
    return sweep(family, family.party(), family.places, JANUARY, today=TODAY)


def replace_indoors(place: Place) -> Place:
    """The same place under a roof."""
    return place.model_copy(update={"visit": place.visit.model_copy(update={"indoors": "indoors"})})


@pytest.fixture(scope="module")
def table() -> DayTable:
    """Two museums in January and February, one near and one far."""
    return make_table()


WISHES: dict[str, tuple[Wishes, Callable[[Outing], bool]]] = {
    "weekdays": (Wishes(weekdays=frozenset(("Tu", "We"))), lambda o: f"{o.day:%a}" in ("Tue", "Wed")),
    "budget": (Wishes(budget=Decimal("75.00")), lambda o: o.cost.total.likely.amount <= 75),
    "drive": (
        Wishes(drive_minutes=70),
        lambda o: max(o.way_there.drive_minutes, o.way_home.drive_minutes) <= 70,
    ),
    "nap": (Wishes(nap_percent=90), lambda o: sum(n.kept_minutes for n in o.plan.naps) >= 90),
    "full house": (Wishes(full_house_percent=20), lambda o: o.crowd.chance <= 0.2),
    "indoors": (Wishes(air="outdoors"), lambda o: o.place.visit.indoors in ("outdoors", "both")),
    "daylight": (Wishes(in_daylight=True), lambda o: not any("-sun" in note.code for note in o.notes)),
    "home by": (Wishes(home_by=time(15, 30)), lambda o: o.plan.home.time() <= time(15, 30)),
    "weeks": (
        Wishes(
            weeks=Weeks(
                "Birds", DateSpan(first=date(2027, 1, 10), last=date(2027, 1, 20)), frozenset({"far"})
            )
        ),
        lambda o: o.place.id == "far" and o.day in BIRD_WEEKS,
    ),
}


@pytest.mark.parametrize(("wishes", "holds"), WISHES.values(), ids=WISHES)
def test_a_wish_is_met_where_the_planned_day_meets_it(
    table: DayTable, wishes: Wishes, holds: Callable[[Outing], bool]
) -> None:
    """What the arrays say of a wish is what the whole outing says."""
    met = all_met(wished(wishes, table), table)
    for row, column in np.argwhere(table.can_go).tolist():
        outing = table.outing(row, column)
        assert isinstance(outing, Outing)
        assert bool(met[row, column]) == holds(outing), outing.day


def test_only_school_days_leaves_out_weekends_and_holidays(table: DayTable) -> None:
    """Martin Luther King Day, 18 January 2027, and every weekend are no days in term."""
    met = all_met(wished(Wishes(in_term=True), table), table)
    days = {table.day(column) for _, column in np.argwhere(met).tolist()}
    assert date(2027, 1, 18) not in days
    assert not [day for day in days if day.weekday() > 4]


def test_where_nobody_knows_whether_school_is_in_a_guess_or_a_typical_year_tells() -> None:
    """Without a calendar July is no time of school and October is; what a calendar says of July wins."""
    place = make_place()
    summer = DateSpan(first=date(2027, 7, 5), last=date(2027, 7, 23))
    district = SchoolCalendar(
        name="All year round",
        country="US",
        subdivision="IL",
        latitude=place.where.point.latitude,
        longitude=place.where.point.longitude,
        known=summer,
    )

    def in_term(span: DateSpan, *calendars: SchoolCalendar) -> int:
        family = Family(make_household(), (place,), school_calendars=calendars)
        found = sweep(family, family.party(), (place,), span, today=TODAY)
        return int(all_met(wished(Wishes(in_term=True), found), found).sum())

    assert in_term(summer) == 0
    assert in_term(DateSpan(first=date(2027, 10, 4), last=date(2027, 10, 8))) > 0
    assert in_term(summer, district) > 0


def test_a_better_day_that_misses_one_wish_is_told_with_its_amount() -> None:
    """With Sundays alone asked for, a weekday weighs less: by how much, and what keeps it out."""
    table = make_table(full_house="80")
    wishes = wished(Wishes(weekdays=frozenset(("Su",))), table)
    best = tuple(table.ranked(all_met(wishes, table))[0].tolist())
    (miss, *_) = nearest_misses(table, wishes)
    assert miss.spot == tuple(table.ranked()[0].tolist())
    assert miss.felt_more == table.money(int(table.felt[miss.spot]) - int(table.felt[best]))
    assert miss.felt_more < Money.zero("USD")
    assert miss.sentence.values["less"] == table.money(-miss.felt_more.minor)
    assert miss.sentence.values["why"] == fact(
        "misses-weekday", day=CalendarDay(table.day(miss.spot.column).weekday())
    )


def test_a_few_cents_are_not_worth_saying() -> None:
    """A weekday weighs under a dollar less than the best Sunday, about equally good; nobody is told of it."""
    table = make_table(full_house="10")
    wishes = wished(Wishes(weekdays=frozenset(("Su",))), table)
    sunday, best = (tuple(table.ranked(met)[0].tolist()) for met in (all_met(wishes, table), table.can_go))
    assert 0 < int(table.felt[sunday]) - int(table.felt[best]) < SMALL_LOSS * 100
    assert not [miss for miss in nearest_misses(table, wishes) if miss.better == wishes[0].words]


def test_where_nothing_meets_all_wishes_each_single_obstacle_is_told(table: DayTable) -> None:
    """A budget of one dollar meets no day; the day that comes nearest is told with its price."""
    (miss,) = nearest_misses(table, wished(Wishes(budget=Decimal(1)), table))
    assert miss.sentence.code == "misses-possible"
    assert miss.better == fact("misses-wish-budget", most=Money(Decimal(1), "USD"))


def quietest_after_a_birthday(child: str) -> tuple[DayTable, Miss]:
    """Cy is eight on 11 March, and has to have a child's ticket from then on; the day before has a fair."""
    place = make_place(
        opening={
            "hours": "2027 Mar 6 10:00-17:00; 2027 Mar 16 10:00-17:00; 2026 Dec 1-2026 Dec 31 Sa 10:00-17:00"
        },
        offers=[
            {"name": "Adult", "price": "14.00", "ages": "18+"},
            {"name": "Child", "price": child, "ages": "8-17"},
            {"name": "Small child", "price": "0.00", "ages": "under 8"},
        ],
        special_days=[{"day": "2027-03-06", "name": "Fair", "crowd_factor": "1.2"}],
    )
    household = make_household(reserve_percent=0, worth={"full_house": "1.00"})
    family = Family(household, (place,))
    span = DateSpan(first=date(2027, 3, 1), last=date(2027, 3, 31))
    found = sweep(family, family.party(), (place,), span, today=TODAY)
    (miss,) = (miss for miss in nearest_misses(found, ()) if miss.better.code == "misses-quietest")
    return found, miss


def test_the_quietest_day_that_falls_after_a_birthday_says_what_that_costs() -> None:
    """The household sets nothing aside here, so the difference is the ticket: 9.00 (worked by hand)."""
    found, miss = quietest_after_a_birthday("9.00")
    assert found.day(miss.spot.column) == date(2027, 3, 16)
    assert miss.costs_more == Money(Decimal("9.00"), "USD")
    after = fact("misses-after-birthday", name="Cy", day=date(2027, 3, 11), more=miss.costs_more)
    assert miss.sentence.values["reasons"] == (after,)


def test_a_reason_of_a_few_cents_gives_way_to_what_the_day_weighs_more() -> None:
    """A ticket of 0.90 is less than days differ by that are about equally good; the whole is told instead."""
    found, miss = quietest_after_a_birthday("0.90")
    assert miss.costs_more == Money(Decimal("0.90"), "USD")
    felt = found.money(int(miss.felt_more.minor))
    assert miss.sentence.values["reasons"] == (fact("misses-weighs-more", more=felt),)


def test_the_best_day_is_no_miss_of_itself(table: DayTable) -> None:
    """A day that is first in every respect has no rival; one that is not has others, and never itself."""
    assert nearest_misses(table, ()) == ()
    found, _ = quietest_after_a_birthday("9.00")
    rivals = [tuple(miss.spot) for miss in nearest_misses(found, ())]
    assert rivals
    assert tuple(found.ranked()[0].tolist()) not in rivals


def test_a_day_far_off_is_not_nearly_as_good(table: DayTable) -> None:
    """Whatever it is better in, no day is told that weighs more than a quarter, and 15.00, above the best."""
    for miss in nearest_misses(table, ()):
        best = table.money(int(table.felt[table.can_go].min()))
        assert miss.felt_more.amount <= max(best.amount / 4, Decimal(15))
    told = {miss.better.code for miss in nearest_misses(table, ())}
    assert told <= {f"misses-{name}" for name in ("quietest", "cheapest", "most-sleep", "shortest-drives")}


def test_a_wish_that_is_missed_by_much_is_not_nearly_met(table: DayTable) -> None:
    """A little over the budget is told, twice the budget is not, as long as some day keeps to it."""
    felt_first = table.ranked()
    row, column = felt_first[0].tolist()
    best = table.money(int(table.likely[row, column]))
    cheapest = table.money(int(table.likely[table.can_go].min()))
    for budget in (cheapest.amount, best.amount - Decimal("0.01")):
        made = wished(Wishes(budget=budget), table)
        for miss in nearest_misses(table, made):
            if miss.better == made[0].words:
                assert table.likely[miss.spot] <= Money(budget, "USD").minor * 1.25


def test_a_list_tells_the_best_day_of_each_place_first() -> None:
    """Two museums take turns, each from its best day on; nothing is lost and nothing told twice."""
    place = make_place()
    near = make_place(id="near", name="Near", where={**place.where.model_dump(), "longitude": -89.3})
    family = Family(make_household(), (place, near))
    table = sweep(family, family.party(), family.places, JANUARY, today=TODAY)
    ranked = table.ranked()
    told = each_place_first(ranked)
    assert sorted(map(tuple, told.tolist())) == sorted(map(tuple, ranked.tolist()))
    assert {row for row, _ in told[:2].tolist()} == {0, 1}
    for row in (0, 1):
        felt = [int(table.felt[row, column]) for at, column in told.tolist() if at == row]
        assert felt == sorted(felt)
    assert table.felt[tuple(told[0])] == table.felt[table.can_go].min()


def test_a_day_with_better_weather_is_told_where_the_best_has_worse() -> None:
    """A prairie in winter, cheap and near, comes first; a museum under a roof weighs nothing outdoors."""
    prairie = make_place(id="prairie", name="Prairie", visit={"indoors": "outdoors"})
    dear = [
        {"name": "Adult", "price": "17.00", "ages": "13+"},
        {"name": "Child", "price": "10.00", "ages": "3-12"},
        {"name": "Small child", "price": "0.00", "ages": "under 3"},
    ]
    museum = replace_indoors(make_place(offers=dear))
    worth = {"hour_in_the_cold": "4.00", "hour_in_the_wet": "0"}
    family = Family(make_household(worth=worth), (prairie, museum), stations=stations())
    found = sweep(family, family.party(), family.places, JANUARY, today=TODAY)
    best = found.ranked()[0].tolist()
    assert found.places[best[0]] == prairie
    assert found.weather[0][found.can_go[0]].min() > 0
    assert not found.weather[1].any()
    (miss,) = (one for one in nearest_misses(found, ()) if one.better.code == "misses-best-weather")
    assert found.weather[miss.spot] < found.weather[tuple(best)]
    assert miss.sentence.code == "misses-best-weather-but"
