"""The whole account of one outing."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import make_household, make_place
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.place import Place
from tripplan.errors import CurrencyMismatch, PlanError
from tripplan.language.sentences import fact
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.planning.cost import CostItem, OutingCost, Swing, outing_cost
from tripplan.planning.cost.items import add_up, known_item
from tripplan.planning.travel.drive import Drive, KnownBy, Leg
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, MoneyRange, total
from tripplan.values.ranges import Origin, Range, Source

DAY = date(2026, 12, 8)
SOURCE = Source(Origin.ESTIMATE, "made up for tests")


WAGON = fact("costs-extra", name="Wagon")


def usd(text: str) -> Money:
    """US dollars."""
    return Money(Decimal(text), "USD")


def way(low: float, likely: float, high: float) -> Leg:
    """One way of so many kilometres."""
    drive = Drive(Range(low, likely, high), Range.exactly(60), KnownBy.ESTIMATE, SOURCE)
    return Leg(drive, 10, 60, (), 10)


def entry(text: str = "37.00", *, parking_included: bool = False) -> Admission:
    """An admission of so much."""
    return Admission((), usd(text), {}, (), (), parking_included=parking_included)


def cost_of(
    household: Household | None = None,
    place: Place | None = None,
    *,
    party: Sequence[Member] | None = None,
    admission: Admission | NoAdmission | None = None,
    leg: Leg | None = None,
    **more: Any,
) -> OutingCost:
    """An outing's cost; what is not given is usual."""
    household = household or make_household()
    return outing_cost(
        household,
        household.members if party is None else party,
        DAY,
        place or make_place(),
        admission or entry(),
        leg or way(60, 60, 60),
        leg or way(60, 60, 60),
        **more,
    )


def of_kind(cost: OutingCost, kind: CostKind) -> CostItem:
    """The only item of that kind."""
    (item,) = (item for item in cost.items if item.kind is kind)
    return item


def likely(item: CostItem) -> Decimal:
    """The likely amount of a known item."""
    assert item.amount is not None
    return item.amount.likely.amount


def test_every_item_stands_in_the_order_a_total_is_shown_in() -> None:
    """Admission comes first, the reserve last."""
    cost = cost_of(make_household(treats_per_child="4"))
    assert [item.kind for item in cost.items] == list(CostKind)


def test_a_reserve_is_a_share_of_all_the_rest() -> None:
    """Ten percent of admission, car, parking and food."""
    cost = cost_of()
    *rest, reserve = cost.items
    assert reserve.amount is not None
    assert reserve.amount.likely == Money(sum(map(likely, rest), Decimal(0)) / 10, "USD").rounded()
    assert reserve.label == fact("costs-reserve", share=0.1)


def test_a_household_without_a_reserve_has_no_such_item() -> None:
    """Nothing is set aside at 0 %."""
    cost = cost_of(make_household(reserve_percent="0"))
    assert CostKind.RESERVE not in {item.kind for item in cost.items}


def test_what_is_unknown_is_listed_and_not_counted() -> None:
    """Parking and fuel at unknown prices and entry that nobody sells leave food as a lower bound."""
    household = make_household(car={"fuel": "mpg", "consumption": "24"}, reserve_percent="0")
    cost = cost_of(household, make_place(parking={}), admission=NoAdmission((fact("refusals-household"),)))
    assert len(cost.unknown) == 3
    assert [item.kind for item in cost.items if item.amount is None] == [
        CostKind.ADMISSION,
        CostKind.CAR,
        CostKind.PARKING,
    ]
    assert cost.total.likely == of_kind(cost, CostKind.FOOD).amount.likely  # type: ignore[union-attr]


def test_free_parking_is_known_to_cost_nothing() -> None:
    """A price of 0 on the card is no unknown."""
    parking = of_kind(cost_of(place=make_place(parking={"price": "0"})), CostKind.PARKING)
    assert parking.amount is not None
    assert parking.amount.high == usd("0.00")


def test_a_pass_that_includes_parking_makes_it_free() -> None:
    """Even where the card does not say what parking costs."""
    cost = cost_of(place=make_place(parking={}), admission=entry(parking_included=True))
    assert likely(of_kind(cost, CostKind.PARKING)) == 0
    assert not cost.unknown


def test_more_people_than_seats_take_more_cars() -> None:
    """Four people in a car of three seats drive and park two cars."""
    one, two = (
        cost_of(
            make_household(car={"fuel": "mpg", "consumption": "24", "fuel_price": "3.12", "seats": seats})
        )
        for seats in (4, 3)
    )
    single, double = (likely(of_kind(cost, CostKind.CAR)) for cost in (one, two))
    assert abs(double - 2 * single) <= Decimal("0.01")
    assert single > 1
    assert likely(of_kind(two, CostKind.PARKING)) == 2 * likely(of_kind(one, CostKind.PARKING))
    kinds = (CostKind.CAR, CostKind.PARKING)
    cars = [[of_kind(cost, kind).label.values["cars"] for kind in kinds] for cost in (one, two)]
    assert cars == [[1, 1], [2, 2]]


def test_usual_detours_are_driven_too() -> None:
    """A household that adds 10 % on the way pays 10 % more for fuel."""
    plain, wandering = (
        likely(of_kind(cost_of(make_household(habits={"detour_percent": p})), CostKind.CAR))
        for p in ("0", "10")
    )
    assert wandering == pytest.approx(plain * Decimal("1.1"), abs=Decimal("0.01"))


def test_a_typed_rate_covers_everything() -> None:
    """At 0.50 a kilometre 120 km cost 60, and wear is not counted twice."""
    household = make_household(car={"fuel": "per km", "rate": "0.50"})
    assert likely(of_kind(cost_of(household, count_wear=True), CostKind.CAR)) == 60


def test_a_household_without_a_car_pays_a_published_rate_or_nobody_knows() -> None:
    """In the US the IRS rate stands in, with a wide range; elsewhere the item is unknown."""
    us = of_kind(cost_of(make_household(car=None)), CostKind.CAR)
    assert us.source.origin is Origin.PUBLISHED
    assert us.amount is not None
    assert us.amount.high.amount == pytest.approx(
        us.amount.likely.amount * Decimal("1.4"), abs=Decimal("0.01")
    )
    abroad = make_household(car=None).model_dump()
    abroad["home"] |= {"country": "FR", "subdivision": ""}
    assert of_kind(cost_of(Household.model_validate(abroad)), CostKind.CAR).amount is None


def test_wear_is_an_item_only_when_asked_for() -> None:
    """It stands apart from fuel and says that it is optional."""
    cost = cost_of(count_wear=True)
    fuel, wear = (item for item in cost.items if item.kind is CostKind.CAR)
    assert wear.label.code == "costs-wear"
    assert [fuel] == [item for item in cost_of().items if item.kind is CostKind.CAR]


@pytest.mark.parametrize(
    ("way_of_eating", "visit", "expected"),
    [
        ("packed", {}, "packed"),
        ("packed", {"own_food": False}, "bought"),
        ("packed", {"own_food": False, "food_sold": False}, "packed"),
        ("bought", {}, "bought"),
        ("bought", {"food_sold": False}, "packed"),
    ],
)
def test_food_follows_what_the_place_allows(
    way_of_eating: str, visit: dict[str, bool], expected: str
) -> None:
    """Food is packed or bought as the family likes, unless the place leaves only the other way.

    Two adults and a child of 7 eat, the child of 16 months too: packed 3 + 3 + 2 + 2, bought 14 + 14 + 9 + 9.
    """
    household = make_household(food={"way": way_of_eating, "count_all": True})
    food = of_kind(cost_of(household, make_place(visit=visit)), CostKind.FOOD)
    assert food.label.values["bought"] is (expected == "bought")
    assert likely(food) == {"packed": 10, "bought": 46}[expected]


@pytest.mark.parametrize("count_all", [False, True])
@pytest.mark.parametrize(("way", "more"), [("packed", 0), ("bought", 36)])
def test_lunch_out_costs_what_it_does_over_lunch_at_home(way: str, more: int, count_all: bool) -> None:
    """As above, 10 packed or at home and 46 bought; the difference is one, whatever counts."""
    household = make_household(food={"way": way, "count_all": count_all}, reserve_percent="0")
    at_home, out = (of_kind(cost_of(household, lunch_there=lunch), CostKind.FOOD) for lunch in (False, True))
    assert likely(at_home) == (10 if count_all else 0)
    assert likely(out) - likely(at_home) == more


def test_a_baby_eats_nothing_extra() -> None:
    """Below the household's age limit nothing is counted, and with nobody else there is no food at all."""
    household = make_household(food={"free_under_months": 24, "count_all": True})
    assert likely(of_kind(cost_of(household), CostKind.FOOD)) == 8
    only_baby = cost_of(household, party=household.members[3:])
    assert CostKind.FOOD not in {item.kind for item in only_baby.items}


def test_from_thirteen_on_a_child_eats_as_much_as_a_grown_up() -> None:
    """On the birthday itself packed food costs 3, the day before 2; each beside a grown-up's 3."""
    for born, price in (("2013-12-08", 6), ("2013-12-09", 5)):
        household = make_household(
            members=[{"name": "Ann", "born": "1988-05-20"}, {"name": "Cy", "born": born}],
            food={"count_all": True},
        )
        assert likely(of_kind(cost_of(household), CostKind.FOOD)) == price


def test_treats_are_for_every_child_and_no_grown_up() -> None:
    """Ann, Cy and Di: two children at 4.00 are 8.00."""
    household = make_household(treats_per_child="4")
    party = [member for member in household.members if member.name != "Bo"]
    assert likely(of_kind(cost_of(household, party=party), CostKind.EXTRAS)) == 8


def test_where_the_cars_consumption_comes_from_is_told() -> None:
    """A figure with a source of its own is not called the parent's alone."""
    car = {"fuel": "mpg", "consumption": "24", "fuel_price": "3.12"}
    told = of_kind(cost_of(make_household(car={**car, "consumption_from": "the log"})), CostKind.CAR)
    plain = of_kind(cost_of(make_household(car=car)), CostKind.CAR)
    assert "the log" in told.source.text
    assert "consumption" not in plain.source.text


ADD_ONS: list[dict[str, Any]] = [
    {"name": "Boat ride", "price": "6.00", "ages": "3+", "usual": True},
    {"name": "Feed bag", "price": "2.50", "per": "party"},
]


def test_usual_add_ons_are_planned_for_unless_told_otherwise() -> None:
    """The boat ride for the three who are old enough, with its tax; the feed bag only when chosen."""
    place = make_place(add_ons=ADD_ONS, sales_tax={"percent": "10"})
    assert likely(of_kind(cost_of(place=place), CostKind.EXTRAS)) == Decimal("19.80")
    fed = OwnFigures(place="test-museum", add_ons=("Feed bag",))
    assert likely(of_kind(cost_of(place=place, own=fed), CostKind.EXTRAS)) == Decimal("2.75")
    nothing = OwnFigures(place="test-museum", add_ons=())
    assert CostKind.EXTRAS not in {item.kind for item in cost_of(place=place, own=nothing).items}


@pytest.mark.parametrize(
    ("height", "cost", "low"), [("46 in", "18.00", "18"), ("41 in", "12.00", "12"), (None, "18.00", "12")]
)
def test_who_is_too_short_pays_no_ride_and_who_may_be_is_counted(
    height: str | None, cost: str, low: str
) -> None:
    """Two grown-ups and a child at 6.00 from 42 in on; not knowing the child's height, it may be 6 less."""
    people = [{"name": "Ann", "born": "1988-05-20"}, {"name": "Bo", "born": "1986-11-02"}]
    cy = {"name": "Cy", "born": "2019-03-11", "height": height}
    place = make_place(add_ons=[{**ADD_ONS[0], "least_height": "42 in"}])
    item = of_kind(cost_of(make_household(members=[*people, cy]), place=place), CostKind.EXTRAS)
    assert likely(item) == Decimal(cost)
    assert item.amount is not None
    assert item.amount.low.amount == Decimal(low)


def test_a_ride_for_the_party_is_in_doubt_only_where_nobody_is_sure_to_take_it() -> None:
    """Paid once: with a grown-up it is due for certain, for the child alone it may not be."""
    cy = {"name": "Cy", "born": "2019-03-11"}
    place = make_place(add_ons=[{**ADD_ONS[0], "least_height": "42 in", "per": "party"}])
    for people, low in (([{"name": "Ann", "born": "1988-05-20"}, cy], "6"), ([cy], "0")):
        item = of_kind(cost_of(make_household(members=people), place=place), CostKind.EXTRAS)
        assert item.amount is not None
        assert (item.amount.low.amount, item.amount.high.amount) == (Decimal(low), Decimal(6))


def test_an_add_on_costs_each_what_goes_with_their_ticket() -> None:
    """Of three who are old enough, one has it with the ticket and one pays 2 in place of 6: 2 + 6."""
    admission = replace(entry(), beside=(("Boat ride", ((0, Decimal(0)), (1, Decimal(2)))),))
    cost = cost_of(place=make_place(add_ons=ADD_ONS), admission=admission)
    assert likely(of_kind(cost, CostKind.EXTRAS)) == 8


def test_add_ons_are_taxed_only_where_the_card_says_so() -> None:
    """Three boat rides at 6.00 are 18.00, with 10 % on add-ons 19.80."""
    for on_add_ons, expected in ((False, "18.00"), (True, "19.80")):
        place = make_place(add_ons=ADD_ONS, sales_tax={"percent": "10", "on_add_ons": on_add_ons})
        assert likely(of_kind(cost_of(place=place), CostKind.EXTRAS)) == Decimal(expected)


def test_nothing_costs_less_than_nothing() -> None:
    """10 give or take 15 is 0 to 25."""
    swing = Swing("a", usd("15"), usd("15"))
    found = add_up([known_item(CostKind.EXTRAS, WAGON, usd("10"), SOURCE, (swing,))], "USD").total
    assert (found.low, found.likely, found.high) == (usd("0.00"), usd("10.00"), usd("25.00"))


def test_an_add_on_that_left_the_card_is_unknown_and_not_free() -> None:
    """What was picked once and is gone from the card stands among the unknown items."""
    picked = OwnFigures(place="test-museum", add_ons=("Balloon",))
    cost = cost_of(place=make_place(add_ons=ADD_ONS), own=picked)
    assert fact("costs-extra-gone", name="Balloon") in cost.unknown


def test_tolls_and_own_extras_count_as_typed_in() -> None:
    """A toll of 4.80 and a wagon at 12.00, give or take a half, are items from the parent."""
    own = OwnFigures.model_validate(
        {
            "place": "test-museum",
            "tolls": "4.80",
            "extras": [{"name": "Wagon", "price": "12.00", "give_or_take_percent": 50}],
        }
    )
    items = {item.label: item.amount for item in cost_of(own=own).items}
    assert items[fact("costs-tolls")] == MoneyRange.exactly(usd("4.80"))
    assert items[WAGON] == MoneyRange(usd("6.00"), usd("12.00"), usd("18.00"))


def test_figures_of_another_place_are_refused() -> None:
    """Mixing up two places' figures is the caller's mistake."""
    with pytest.raises(PlanError, match="elsewhere"):
        cost_of(own=OwnFigures(place="elsewhere"))


def test_parking_is_taxed_only_where_the_card_says_so() -> None:
    """5.00 with 10 % on parking is 5.50."""
    for on_parking, expected in ((False, "5.00"), (True, "5.50")):
        place = make_place(sales_tax={"percent": "10", "on_parking": on_parking})
        assert likely(of_kind(cost_of(place=place), CostKind.PARKING)) == Decimal(expected)


def test_old_prices_move_together() -> None:
    """Admission 37 and parking 5 read long ago, give or take 10 %, make 4.20 either way, not less."""
    place = make_place(prices_read={"on": "2024-05-01", "source": "board", "give_or_take_percent": "10"})
    free_ride = make_household(
        car={"fuel": "per km", "rate": "0"},
        reserve_percent="0",
        food={"packed_adult": "0", "packed_child": "0"},
    )
    amounts = cost_of(free_ride, place).total
    assert (amounts.low, amounts.likely, amounts.high) == (usd("37.80"), usd("42.00"), usd("46.20"))


def test_different_causes_add_up_as_the_root_of_squares() -> None:
    """Swings of 3 and 4 from different causes make 5, from one cause 7."""
    for causes, width in ((("a", "b"), 5), (("a", "a"), 7)):
        swings = (Swing(causes[0], usd("3"), usd("3")), Swing(causes[1], usd("4"), usd("4")))
        items = [known_item(CostKind.EXTRAS, WAGON, usd("50"), SOURCE, (swing,)) for swing in swings]
        found = add_up(items, "USD").total
        assert (found.low, found.high) == (usd(f"{100 - width}.00"), usd(f"{100 + width}.00"))


def test_the_distance_makes_the_range_of_a_drive() -> None:
    """With an exact fuel price, 10 % less road is 10 % less fuel; both ways err together."""
    car = {"fuel": "L/100km", "consumption": "10", "fuel_price": "1", "fuel_price_give_or_take_percent": "0"}
    fuel = of_kind(cost_of(make_household(car=car), leg=way(90, 100, 130)), CostKind.CAR).amount
    assert fuel is not None
    assert (fuel.low, fuel.likely, fuel.high) == (usd("18.00"), usd("20.00"), usd("26.00"))


def test_what_is_paid_on_every_day_bounds_the_total_from_below() -> None:
    """A drive that may turn out free, by two causes of more than it costs together, pays for no parking."""
    car = {"fuel": "mpg", "consumption": "24", "fuel_price": "2.677"}
    household = make_household(car=car, food={"packed_adult": "0"}, reserve_percent=0)
    place = make_place(parking={"price": "0.06"})
    found = cost_of(household, place, admission=entry("0.00"), leg=way(0, 120, 120))
    assert found.total.low == usd("0.06")


def test_two_currencies_are_never_mixed() -> None:
    """A place that charges pounds is not added to a household that counts dollars."""
    with pytest.raises(CurrencyMismatch):
        cost_of(place=make_place(currency="GBP"))


def test_an_outing_needs_people() -> None:
    """An empty party is the caller's mistake."""
    with pytest.raises(PlanError):
        cost_of(party=())


cents = st.decimals("0", "300", places=2)


@given(
    admission=cents,
    parking=cents,
    packed=cents,
    treats=cents,
    reserve=st.integers(0, 100),
    price=st.decimals("0", "9", places=3),
    old=st.integers(0, 100),
    kms=st.lists(st.floats(0, 900), min_size=3, max_size=3).map(sorted),
    add_on=cents,
    tax=st.decimals("0", "30", places=3),
)
def test_totals_are_sums_and_ranges_run_upwards(
    admission: Decimal,
    parking: Decimal,
    packed: Decimal,
    treats: Decimal,
    reserve: int,
    price: Decimal,
    old: int,
    kms: list[float],
    add_on: Decimal,
    tax: Decimal,
) -> None:
    """The likely total is the exact sum of likely items to the cent, and no total is surer than its items."""
    household = make_household(
        car={"fuel": "mpg", "consumption": "24", "fuel_price": price},
        food={"packed_adult": packed},
        treats_per_child=treats,
        reserve_percent=reserve,
    )
    place = make_place(
        parking={"price": parking},
        add_ons=[{"name": "Ride", "price": add_on, "usual": True}],
        sales_tax={"percent": tax, "on_parking": True},
        prices_read={"on": "2026-01-01", "source": "board", "give_or_take_percent": old},
    )
    cost = cost_of(household, place, admission=entry(str(admission)), leg=way(*kms))
    amounts = [item.amount for item in cost.items if item.amount is not None]
    assert cost.total.likely == total((amount.likely for amount in amounts), "USD")
    assert all(amount.likely == amount.likely.rounded() for amount in amounts)
    lows, highs = (total((getattr(a, end) for a in amounts), "USD") for end in ("low", "high"))
    cent_an_item = Money.from_minor(len(amounts), "USD")
    assert lows <= cost.total.low + cent_an_item
    assert cost.total.high <= highs + cent_an_item
    widest = max(amount.high.amount - amount.likely.amount for amount in amounts)
    assert cost.total.high.amount - cost.total.likely.amount >= widest - Decimal("0.01")
