"""What would have to change for another outing to become the cheapest."""

from datetime import date, datetime, time
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from tests.builders import make_household, make_place
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.household import Household
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.language.sentences import Fact, Value, fact
from tripplan.planning.compare.flips.every_input import what_would_flip
from tripplan.planning.compare.flips.flip import Flip, flips_in_short
from tripplan.planning.compare.flips.measure import Measure
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.values.money import Money

DAY = date(2026, 12, 8)
"""A Tuesday."""
TODAY = date(2026, 11, 25)
NO_FOOD = {"packed_adult": "0", "packed_child": "0", "bought_adult": "0", "bought_child": "0"}
ANN, BO = {"name": "Ann", "born": "1988-05-20"}, {"name": "Bo", "born": "1986-11-02"}
CY = {"name": "Cy", "born": "2019-03-11"}
EVERY_DAY = {"hours": "Mo-Su 10:00-17:00"}


def usd(text: str) -> Money:
    """US dollars."""
    return Money(Decimal(text), "USD")


def household(*members: dict[str, Any], price: str = "3.00", **changes: Any) -> Household:
    """One adult (or those given) who eat for nothing, with a car of 20 miles to the gallon and no reserve."""
    return make_household(
        **{
            "members": members or (ANN,),
            "car": {"fuel": "mpg", "consumption": "20", "fuel_price": price},
            "food": NO_FOOD,
            "reserve_percent": "0",
            **changes,
        }
    )


def place(name: str, *offers: Any, **changes: Any) -> Place:
    """A place that is open every day and sells these offers, the first a price for everybody."""
    board = [{"name": "Entry", "price": offer} if isinstance(offer, str) else offer for offer in offers]
    values = {"offers": board, "opening": EVERY_DAY, "parking": {"price": "0"}, **changes}
    return make_place(id=name.lower(), name=name, **values)


def family(home: Household, places: tuple[Place, ...], miles: tuple[int, ...]) -> Family:
    """A family that knows how many miles it is to each place, one way."""
    drives = tuple(
        TypedDrive(place=there.id, km=far * 1.609344, minutes=max(10, far * 1.2), typed_on=TODAY)
        for there, far in zip(places, miles, strict=True)
    )
    return Family(home, places, typed_drives=drives)


def planned(whose: Family, day: date = DAY, *, today: date = TODAY, among: int = 9) -> tuple[Outing, ...]:
    """An outing to each of the first places, all of which can be done."""
    outings = []
    for there in whose.places[:among]:
        facts = place_facts(whose, there, {day.year})
        outing = plan_outing(whose, whose.party(), facts, day, today=today)
        assert isinstance(outing, Outing)
        outings.append(outing)
    return tuple(outings)


def on(day: date) -> Fact:
    """A day as an input."""
    return fact("flips-day", day=day)


def a_gallon(price: str) -> Fact:
    """So much a gallon."""
    return fact("flips-a-gallon", price=usd(price))


def cheapest(code: str, before: str, then: str, total: str, against: str, **values: Value) -> Fact:
    """That another place is the cheapest under a change."""
    under = fact(code, **values)
    totals = {"total": usd(total), "against": usd(against)}
    return fact("flips-cheapest", under=under, place=before, first=then, **totals)


def flips(
    whose: Family, *, today: date = TODAY, among: int = 9, measure: Measure = Measure.MONEY
) -> dict[str, Flip]:
    """What would flip the order of its first places, by what is said of each; a second price has a number."""
    found: dict[str, Flip] = {}
    outings = planned(whose, today=today, among=among)
    for flip in what_would_flip(whose, whose.party(), outings, today=today):
        if flip.measure is not measure:
            continue
        name = flip.what.text
        found[name if name not in found else f"{name} 2"] = flip
    return found


def first(whose: Family, ahead: str = "") -> str:
    """The cheapest place; among equals the one said to be ahead, then the earliest given."""
    outings = planned(whose)
    return min(outings, key=lambda o: (o.cost.total.likely.amount, o.place.id != ahead)).place.id


# Near: 10 miles out, 20 there and back, one gallon. Far: 50 out, 100 there and back, five gallons.
# Near costs 30 + p, Far 10 + 5 p; they tie where 20 = 4 p, at p = 5.00 a gallon.
NEAR_DEAR, FAR_CHEAP = place("Near", "30.00"), place("Far", "10.00")


def near_and_far(price: str, **changes: Any) -> Family:
    """Near and dear against far and cheap, at so much a gallon."""
    return family(household(price=price, **changes), (NEAR_DEAR, FAR_CHEAP), (10, 50))


def test_a_near_place_is_first_from_a_cent_above_the_tie() -> None:
    """At 5.00 both cost 35.00 and the far place stays; at 5.01 it is 35.05 against 35.01."""
    flip = flips(near_and_far("3.00"))["fuel price"]
    assert (flip.price, flip.new_first) == (usd("5.01"), "near")
    at = fact("flips-or-beyond", price=a_gallon("5.01"), more=True)
    assert (flip.now, flip.at) == (a_gallon("3.00"), at)
    assert flip.sentence == cheapest("flips-at", "Far", "Near", "35.01", "35.05", at=at)


def test_a_far_place_is_first_from_a_cent_below_the_tie() -> None:
    """At 4.99 it is 34.95 for the far place against 34.99."""
    flip = flips(near_and_far("6.00"))["fuel price"]
    at = fact("flips-or-beyond", price=a_gallon("4.99"), more=False)
    assert (flip.price, flip.at, flip.new_first) == (usd("4.99"), at, "far")


def test_a_reserve_does_not_move_the_tie() -> None:
    """With a tenth set aside both totals are 1.1 times as large, so they still tie at 5.00."""
    assert flips(near_and_far("3.00", reserve_percent="10"))["fuel price"].price == usd("5.01")


@pytest.mark.parametrize(
    ("car", "name", "tie", "per"),
    [
        # 10 L/100km: 20 miles take 3.2187 L, 100 miles 16.0934 L; 20 / 12.87475 = 1.5534 a litre.
        ({"fuel": "L/100km", "consumption": "10", "fuel_price": "1.20"}, "fuel price", "1.56", "liter"),
        # 20 kWh/100km: 6.4374 and 32.1869 kWh; 20 / 25.7495 = 0.7767 a kWh.
        (
            {"fuel": "kWh/100km", "consumption": "20", "fuel_price": "0.30"},
            "electricity price",
            "0.78",
            "kWh",
        ),
        # 80 miles further: 20 / 80 = 0.25 a mile.
        ({"fuel": "per mile", "rate": "0.20"}, "cost of driving", "0.26", "mile"),
        # 128.74752 km further: 20 / 128.74752 = 0.1553 a km.
        ({"fuel": "per km", "rate": "0.10"}, "cost of driving", "0.16", "km"),
    ],
)
def test_every_way_to_count_the_drive_has_its_tie(car: Any, name: str, tie: str, per: str) -> None:
    """The price that flips is in the unit the household gave: a liter, a kWh, a mile or a km."""
    flip = flips(near_and_far("3.00", car=car))[name]
    assert (flip.price, flip.new_first) == (usd(tie), "near")
    assert flip.at is not None
    assert flip.at.values["price"] == fact(f"flips-a-{per.lower()}", price=usd(tie))


def test_a_place_in_the_middle_can_lose_either_way() -> None:
    """25 miles out the middle costs 25 + 2.5 p and is ahead of far's 10 + 5 p where 15 < 2.5 p, from 6.01 on.

    It is ahead of near's 38 + p where 1.5 p < 13, up to 8.66.
    """
    places = (place("Near", "38.00"), place("Middle", "25.00"), FAR_CHEAP)
    found = flips(family(household(price="7.00"), places, (10, 25, 50)))
    assert (found["fuel price"].price, found["fuel price"].new_first) == (usd("5.99"), "far")
    assert (found["fuel price 2"].price, found["fuel price 2"].new_first) == (usd("8.67"), "near")


def test_nothing_within_reason_is_said_with_its_span() -> None:
    """At 200.00 for the near place they tie at 190 / 4 = 47.50 a gallon, far beyond 12.00."""
    whose = family(household(), (place("Near", "200.00"), FAR_CHEAP), (10, 50))
    flip = flips(whose)["fuel price"]
    assert (flip.at, flip.price, flip.new_first) == (None, None, None)
    between = fact("flips-between", low=usd("0.75"), high=a_gallon("12.00"))
    assert flip.sentence == fact("flips-stays", under=between, place="Far")


@pytest.mark.parametrize("car", [None, {"fuel": "mpg", "consumption": "20"}])
def test_an_unknown_price_of_driving_is_no_input(car: Any) -> None:
    """Without a car or a price at the pump there is nothing to change."""
    assert not {"fuel price", "cost of driving"} & flips(near_and_far("3.00", car=car)).keys()


def repriced(whose: Family, price: Decimal) -> Family:
    """The same family at another price at the pump."""
    car = whose.household.car
    assert car is not None
    changed = car.model_copy(update={"fuel_price": price})
    return Family(
        whose.household.model_copy(update={"car": changed}), whose.places, typed_drives=whose.typed_drives
    )


@settings(max_examples=25)
@given(
    near=st.integers(1000, 6000),
    cheaper_by=st.integers(100, 3000),
    miles=st.tuples(st.integers(5, 30), st.integers(40, 75)),
    price=st.integers(150, 700),
    reserve=st.sampled_from(["0", "10"]),
)
def test_the_order_changes_at_the_flip_and_not_a_cent_before(
    near: int, cheaper_by: int, miles: tuple[int, int], price: int, reserve: str
) -> None:
    """Planned anew in full, the first place is another one at the flip and the same a cent nearer to now.

    The exact tie is the difference in price over the difference in gallons; rounding four items to cents
    may move it by four cents over that difference.
    """
    assume(cheaper_by < near)
    entries = [str(Decimal(cents).scaleb(-2)) for cents in (near, near - cheaper_by)]
    now = Decimal(price).scaleb(-2)
    whose = family(
        household(price=str(now), reserve_percent=reserve),
        (place("Near", entries[0]), place("Far", entries[1])),
        miles,
    )
    gallons = Fraction(2 * (miles[1] - miles[0]), 20)
    tie = Fraction(cheaper_by, 100) / gallons
    found = flips(whose)["fuel price"]
    slack = Fraction(4, 100) / gallons + Fraction(1, 100)
    if found.price is None:
        assert not Fraction(now) / 4 + slack < tie < 4 * Fraction(now) - slack
        return
    assert abs(Fraction(found.price.amount) - tie) <= slack
    nearer = Decimal("0.01") if found.price.amount < now else Decimal("-0.01")
    present = first(whose)
    assert first(repriced(whose, found.price.amount), present) == found.new_first != present
    assert first(repriced(whose, found.price.amount + nearer), present) == present


HUNGRY = {"hour_late_lunch": "120", "hour_early_lunch": "120"}
"""Nobody waits for lunch at home to save the money."""


def test_food_flips_where_only_one_place_forbids_to_bring_it() -> None:
    """Packed, food costs nothing: 15 + 3 for the drive is 18, against 5 + 3 + 14 where it must be bought, 22.

    Bought, it is 15 + 3 + 14 = 32 against the same 22.
    """
    hours, two_hours = {"hours": "Mo-Su 11:00-14:00"}, {"comfortable_minutes": 120, "shortest_minutes": 120}
    places = (
        place("Own", "15.00", opening=hours, visit=two_hours),
        place("Bought", "5.00", opening=hours, visit={"own_food": False, **two_hours}),
    )
    food = NO_FOOD | {"bought_adult": "14"}
    flip = flips(family(household(food=food, worth=HUNGRY), places, (10, 10)))["food"]
    now, at = (fact("flips-food-bought", bought=bought) for bought in (False, True))
    assert (flip.now, flip.at, flip.new_first) == (now, at, "bought")
    assert flip.sentence == cheapest("flips-with-food", "Own", "Bought", "22.00", "32.00", bought=True)


def test_an_adult_at_home_can_make_another_place_first() -> None:
    """Flat costs 3 x 10 = 30, Steep 2 x 16 + 0 = 32; with one adult 20 against 16, fuel the same."""
    adult = {"name": "Adult", "price": "16.00", "ages": "18+"}
    steep = place("Steep", adult, {"name": "Child", "price": "0", "ages": "under 18"})
    whose = family(household(ANN, BO, CY), (place("Flat", "10.00"), steep), (10, 10))
    found = flips(whose)
    assert found["Ann at home"].new_first == found["Bo at home"].new_first == "steep"
    told = cheapest("flips-without", "Flat", "Steep", "19.00", "23.00", name="Bo")
    assert found["Bo at home"].sentence == told


def test_the_only_adult_never_stays_at_home() -> None:
    """Children do not go alone."""
    whose = family(household(ANN, CY), (NEAR_DEAR, FAR_CHEAP), (10, 50))
    assert not [what for what in flips(whose) if what.endswith("at home")]


def test_a_place_that_cannot_be_entered_any_more_loses_its_rank() -> None:
    """Where each adult may bring one child, two children need both adults."""
    rule = {"ages": "under 12", "by": "18+", "each_minds": 1}
    strict = place("Strict", "5.00", must_be_accompanied=[rule])
    members = (ANN, BO, CY, CY | {"name": "Di"})
    flip = flips(family(household(*members), (strict, place("Free", "9.00")), (10, 10)))["Bo at home"]
    assert (flip.at, flip.new_first) == (fact("flips-at-home"), "free")
    assert (flip.sentence.code, flip.sentence.values["total"]) == ("flips-cannot", usd("30.00"))


def test_a_change_that_ends_every_outing_leaves_no_first_place() -> None:
    """Where all places ask for an adult to each child, nobody is the cheapest without Bo."""
    rule = {"ages": "under 12", "by": "18+", "each_minds": 1}
    places = tuple(place(name, "5.00", must_be_accompanied=[rule]) for name in ("One", "Other"))
    members = (ANN, BO, CY, CY | {"name": "Di"})
    flip = flips(family(household(*members), places, (10, 12)))["Bo at home"]
    assert (flip.at, flip.new_first) == (fact("flips-at-home"), None)
    assert flip.sentence == fact("flips-nothing-left", under=fact("flips-without", name="Bo"))


def test_one_more_child_can_make_a_family_ticket_the_better_one() -> None:
    """Singly 3 x 10 = 30 against 32 for all; with a fourth person 40 against 32."""
    bundle = {"kind": "bundle", "name": "All", "price": "32", "seats": [{"count": 6}]}
    whose = family(household(ANN, BO, CY), (place("Singly", "10.00"), place("Together", bundle)), (10, 10))
    flip = flips(whose)["one more child"]
    assert (flip.at, flip.new_first) == (fact("flips-one-more-like", name="Cy"), "together")


SEASON = {"kind": "pass", "name": "Season", "price": "90", "months": 12}


def test_an_owned_pass_can_make_its_place_first() -> None:
    """Entry of 32 falls to nothing; a pass of the place that is first already changes nothing."""
    with_pass = place("Pass", "16.00", SEASON | {"seats": [{"count": 4}]})
    other = place("Other", "15.00", SEASON | {"name": "Year", "seats": [{"count": 4}]})
    found = flips(family(household(ANN, BO), (other, with_pass), (10, 10)))
    flip = found["“Season” (Pass)"]
    assert (flip.now, flip.at, flip.new_first) == (
        fact("flips-not-owned"),
        fact("flips-owned", passes=1),
        "pass",
    )
    assert (flip.sentence.code, flip.sentence.values["total"]) == ("flips-cheapest", usd("3.00"))
    assert "“Year” (Other)" not in found


def test_a_pass_for_one_person_is_owned_once_by_everybody_it_fits() -> None:
    """Two adults need two; the child of seven, for whom it is not sold, still pays."""
    single = SEASON | {"named": True, "seats": [{"count": 1, "ages": "18+"}]}
    places = (place("Other", "10.00"), place("Pass", "11.00", single))
    flip = flips(family(household(ANN, BO, CY), places, (10, 10)))["“Season” (Pass)"]
    assert flip.at == fact("flips-owned", passes=2)
    assert flip.sentence.values["total"] == usd("14.00")


def test_a_pass_of_a_third_place_counts_where_it_is_honoured() -> None:
    """A pass of a place that is not compared lets its holders in at the second one."""
    far_off = place(
        "Elsewhere", "50.00", SEASON | {"seats": [{"count": 4}], "elsewhere": [{"place": "second"}]}
    )
    places = (place("First", "10.00"), place("Second", "12.00"), far_off)
    flip = flips(family(household(ANN, BO), places, (10, 10, 70)), among=2)["“Season” (Elsewhere)"]
    assert flip.new_first == "second"


def test_a_pass_that_is_owned_already_is_no_input() -> None:
    """It is in the totals."""
    with_pass = place("Pass", "16.00", SEASON | {"seats": [{"count": 1, "ages": "18+"}], "named": True})
    held = HeldPass(place="pass", offer="Season", holders=("Ann",), valid_until=date(2027, 1, 31))
    whose = family(household(ANN, BO, passes=[held]), (place("Other", "3.00"), with_pass), (10, 10))
    assert not [what for what in flips(whose) if "Season" in what]


WEDNESDAYS = {"name": "Wednesday", "price": "2.00", "valid": "We"}


def test_another_weekday_can_make_a_place_first() -> None:
    """Entry costs 12, on Wednesdays 2; the other place costs 10. Tomorrow is nearer than last Wednesday."""
    places = (place("Same", "10.00"), place("Changing", "12.00", WEDNESDAYS))
    found = flips(family(household(), places, (10, 10)))
    flip = found["another weekday at Changing"]
    assert (flip.now, flip.at) == (on(DAY), on(date(2026, 12, 9)))
    assert flip.new_first == "changing"
    going: dict[str, Value] = {"place": "Changing", "day": date(2026, 12, 9)}
    assert flip.sentence == cheapest("flips-go-on", "Same", "Changing", "5.00", "13.00", **going)
    assert found["another weekday at Same"].at is None


def test_the_first_place_can_lose_by_another_weekday() -> None:
    """On Tuesday it costs 2 instead of 12; the nearest other day is dear."""
    tuesdays = {"name": "Tuesday", "price": "2.00", "valid": "Tu"}
    places = (place("Changing", "12.00", tuesdays), place("Same", "10.00"))
    flip = flips(family(household(), places, (10, 10)))["another weekday at Changing"]
    assert (flip.at, flip.new_first) == (on(date(2026, 12, 9)), "same")


def test_days_that_are_over_and_the_same_weekday_are_not_looked_at() -> None:
    """With today as the day of the outing, Mondays lie six days ahead, and Tuesday is no other weekday."""
    mondays = {"name": "Monday", "price": "2.00", "valid": "Mo"}
    tuesdays_later = {"name": "Later", "price": "1.00", "valid": "Tu", "first_day": date(2026, 12, 15)}
    places = (place("Same", "10.00"), place("Changing", "12.00", mondays, tuesdays_later))
    flip = flips(family(household(), places, (10, 10)), today=DAY)["another weekday at Changing"]
    assert flip.at == on(date(2026, 12, 14))


BY_AGE = (
    {"name": "Child", "price": "4.00", "ages": "under 8"},
    {"name": "Others", "price": "14.00", "ages": "8+"},
)


def test_a_birthday_can_make_another_place_first() -> None:
    """Cy turns 8 on March 11 and then pays 14 instead of 4: 28 against 20 + 0 where all pay 10."""
    whose = family(household(ANN, CY), (place("Ages", *BY_AGE), place("Flat", "10.00")), (10, 10))
    flip = flips(whose)["next birthdays"]
    eighth = date(2027, 3, 11)
    assert (flip.at, flip.new_first) == (on(eighth), "flat")
    assert flip.sentence.values["under"] == fact("flips-from-birthday", day=eighth, name="Cy", years=8)


@pytest.mark.parametrize(("born", "looked_at"), [("2019-06-08", True), ("2019-06-11", False)])
def test_birthdays_further_off_than_half_a_year_are_not_looked_at(born: str, looked_at: bool) -> None:
    """From December 8 on 183 days reach June 9."""
    cy = CY | {"born": born}
    whose = family(household(ANN, cy), (place("Ages", *BY_AGE), place("Flat", "10.00")), (10, 10))
    assert ("next birthdays" in flips(whose)) is looked_at


def test_the_first_place_keeps_its_rank_among_equals() -> None:
    """Two outings that cost the same stay in the order given, whichever is named first."""
    places = (place("One", "10.00"), place("Other", "10.00"))
    for order in (places, places[::-1]):
        found = flips(family(household(ANN, BO), order, (10, 10)))
        assert {flip.at for flip in found.values()} == {None}
        assert {(flip.sentence.code, flip.sentence.values["place"]) for flip in found.values()} == {
            ("flips-stays", order[0].name)
        }


def test_a_total_with_an_unknown_item_is_said_to_be_a_lower_bound() -> None:
    """Nobody knows what parking costs at the near place."""
    places = (place("Near", "30.00", parking={}), FAR_CHEAP)
    flip = flips(family(household(), places, (10, 50)))["fuel price"]
    assert flip.sentence.values["total"] == fact("answers-at-least", total=usd("35.01"))


def test_in_short_the_idle_inputs_share_a_sentence() -> None:
    """What changes the first place is said one by one, the rest in one go."""
    whose = near_and_far("3.00")
    found = what_would_flip(whose, whose.party(), planned(whose), today=TODAY)
    by_money = [flip for flip in found if flip.measure is Measure.MONEY]
    first_told, idle = flips_in_short(by_money)
    assert first_told == found[0].sentence
    assert idle == fact("flips-idle", inputs=tuple(flip.what for flip in by_money[1:]))
    assert flips_in_short(()) == ()


def test_one_outing_has_nothing_to_flip() -> None:
    """There is no other place to become the first."""
    whose = near_and_far("3.00")
    assert what_would_flip(whose, whose.party(), planned(whose, among=1), today=TODAY) == ()


def test_a_departure_picked_by_hand_stays() -> None:
    """Picked for the morning, with lunch for 14 each, Timed costs 10 + 28 + 3, without Bo 5 + 14 + 3.

    Other costs 12 + 30 + 3, without Bo 12 + 3, and is first then. The best plan of Timed, after lunch at
    home, would stay ahead of it for 5 + 3.
    """
    one, more = {"name": "One", "price": "12.00", "at_most": 1}, {"name": "More", "price": "30.00"}
    timed = place("Timed", "5.00", opening={"hours": "Mo-Su 10:00-17:00", "entry_times": ["11:00", "14:30"]})
    whose = family(
        household(ANN, BO, food=NO_FOOD | {"way": "bought", "bought_adult": "14"}, worth=HUNGRY),
        (timed, place("Other", one, more)),
        (10, 10),
    )
    best, other = planned(whose)
    facts = place_facts(whose, timed, {DAY.year})
    picked = plan_outing(
        whose,
        whose.party(),
        facts,
        DAY,
        today=TODAY,
        leave_at=datetime.combine(DAY, time(10), timed.where.zone),
        leave_place_at=datetime.combine(DAY, time(13), timed.where.zone),
    )
    assert isinstance(picked, Outing)
    assert (best.cost.total.likely, picked.cost.total.likely) == (usd("13"), usd("41"))
    found = what_would_flip(whose, whose.party(), (picked, other), today=TODAY)
    without_bo = [flip for flip in found if flip.what == fact("flips-somebody-at-home", name="Bo")]
    assert without_bo[0].measure is Measure.MONEY
    assert without_bo[0].new_first == "other"


def test_the_answer_is_the_same_every_time() -> None:
    """Nothing is drawn, so nothing varies."""
    assert flips(near_and_far("3.00")) == flips(near_and_far("3.00"))
