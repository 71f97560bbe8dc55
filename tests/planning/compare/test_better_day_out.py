"""What would have to change for another outing to be the better day out, hassle counted; weather among it."""

from dataclasses import replace
from datetime import UTC, date, datetime
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.builders import make_household, make_place
from tests.saying import says
from tripplan.documents.family.household import Household
from tripplan.documents.family.worth import Worth
from tripplan.documents.places.forecast import ForecastDay, PlaceForecast
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.language.locales import Locale, speaking
from tripplan.language.sentences import fact
from tripplan.planning.climate.stations import BETWEEN_YEARS, stations
from tripplan.planning.compare.flips.every_input import first_of_each, what_would_flip
from tripplan.planning.compare.flips.flip import Flip, flips_in_short
from tripplan.planning.compare.flips.measure import Measure
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.values.money import Money

DAY, TODAY = date(2026, 12, 8), date(2026, 11, 25)
LATER = date(2026, 12, 9)
MONTH_DAYS = (31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
NOTHING_WEIGHS = dict.fromkeys(Worth.model_fields, "0")


def usd(text: str) -> Money:
    """US dollars."""
    return Money(Decimal(text), "USD")


def household(**worth: str) -> Household:
    """One adult with a car of 20 miles to the gallon at 3.00; nothing weighs but what is said."""
    free = {"packed_adult": "0", "packed_child": "0", "bought_adult": "0", "bought_child": "0"}
    return make_household(
        members=({"name": "Ann", "born": "1988-05-20"},),
        car={"fuel": "mpg", "consumption": "20", "fuel_price": "3.00"},
        food=free,
        reserve_percent="0",
        worth=NOTHING_WEIGHS | worth,
    )


def weather(low: float, high: float, wet: float) -> dict[str, Any]:
    """Twelve equal months, with a chance of rain on every day [°C; 0-1]."""
    # By the days of a leap year's months, of which the program makes the chance.
    days = (31, 29, *MONTH_DAYS[2:])
    return {"degrees": "C", "highs": [high] * 12, "lows": [low] * 12, "wet_days": [wet * n for n in days]}


def place(name: str, price: str, indoors: str, usual: dict[str, Any]) -> Place:
    """A place open for just the two hours that a visit there takes."""
    return make_place(
        id=name.lower(),
        name=name,
        offers=[{"name": "Entry", "price": price}],
        opening={"hours": "Mo-Su 14:00-16:00"},
        parking={"price": "0"},
        visit={"indoors": indoors, "comfortable_minutes": 120, "shortest_minutes": 120},
        usual_weather=usual,
    )


def family(home: Household, *places: Place, miles: tuple[int, ...] = (10, 10)) -> Family:
    """A family that knows how many miles it is to each place, one way, and the weather there."""
    drives = tuple(
        TypedDrive(place=there.id, km=far * 1.609344, minutes=max(10, far * 1.2), typed_on=TODAY)
        for there, far in zip(places, miles, strict=True)
    )
    return Family(home, places, typed_drives=drives, stations=stations())


def planned(whose: Family, *days: date) -> tuple[Outing, ...]:
    """An outing to each place; all on one day where no days are given."""
    outings = []
    for there, day in zip(whose.places, days or [DAY] * len(whose.places), strict=True):
        found = plan_outing(whose, whose.party(), place_facts(whose, there, {2026}), day, today=TODAY)
        assert isinstance(found, Outing)
        outings.append(found)
    return tuple(outings)


def of_weather(whose: Family, *days: date) -> list[Flip]:
    """What is said of other weather, all by the cost with hassle."""
    found = what_would_flip(whose, whose.party(), planned(whose, *days), today=TODAY)
    told = [flip for flip in found if flip.what.code == "flips-weather"]
    assert {flip.measure for flip in told} <= {Measure.WITH_HASSLE}
    return told


def by_at(flips: list[Flip]) -> dict[str, Flip]:
    """Those that change the first place, by what the weather becomes."""
    return {flip.at.code: flip for flip in flips if flip.at is not None}


# Twenty miles there and back are one gallon, 3.00, for each place. Two hours at 6 an hour in the wet weigh 12
# if it rains for certain, 3 at one chance in four.
MILD = weather(12, 20, 0.25)


def test_rain_makes_the_indoor_place_the_better_day_out() -> None:
    """Outdoors 10 + 3 + 3 = 16 against 15 + 3 = 18 indoors; if it rains 10 + 3 + 12 = 25, and if dry 13."""
    whose = family(
        household(hour_in_the_wet="6"),
        place("Meadow", "10.00", "outdoors", MILD),
        place("Museum", "15.00", "indoors", MILD),
    )
    found = by_at(of_weather(whose))
    assert found.keys() == {"flips-wet"}
    rain = found["flips-wet"]
    assert rain.new_first == "museum"
    under = fact("flips-if-wet", day=DAY, snow=False)
    totals = {"total": usd("18.00"), "against": usd("25.00")}
    assert rain.sentence == fact("flips-better", under=under, place="Meadow", first="Museum", **totals)
    assert rain.sentence.text == (
        "If it rains on Tue, Dec 8, 2026, Museum is the better day out: $18.00 against $25.00 for Meadow, "
        "hassle counted."
    )


def test_a_dry_day_makes_the_outdoor_place_the_better_day_out() -> None:
    """Outdoors 14 + 3 + 3 = 20 against 18 indoors; dry it is 17. By money the meadow is dearer by 0.50."""
    whose = family(
        household(hour_in_the_wet="6"),
        place("Meadow", "14.50", "outdoors", MILD),
        place("Museum", "15.00", "indoors", MILD),
    )
    found = by_at(of_weather(whose))
    assert {at: flip.new_first for at, flip in found.items()} == {"flips-dry": "meadow"}
    outings = planned(whose)
    opening = fact(
        "flips-two-firsts", cheapest="Meadow", better="Museum", total=usd("18.00"), against=usd("20.50")
    )
    assert first_of_each(outings) == (opening,)
    assert first_of_each(outings[:1]) == ()


def test_half_outdoors_counts_half() -> None:
    """Both: 10 + 3 + 6 = 19 in the rain against 20 indoors: no change, and none told."""
    whose = family(
        household(hour_in_the_wet="6"),
        place("Zoo", "10.00", "both", MILD),
        place("Museum", "17.00", "indoors", MILD),
    )
    assert not by_at(of_weather(whose))


def test_the_weather_of_a_day_is_that_of_all_places_gone_to_on_it() -> None:
    """On one day the rain falls on both and changes nothing; on two days each has its own weather."""
    whose = family(
        household(hour_in_the_wet="6"),
        place("Meadow", "10.00", "outdoors", MILD),
        place("Wood", "12.00", "outdoors", MILD),
    )
    assert not by_at(of_weather(whose))
    found = [(flip.what.values["day"], flip.at) for flip in of_weather(whose, DAY, LATER) if flip.at]
    assert found == [(DAY, fact("flips-wet")), (LATER, fact("flips-dry"))]


def test_indoors_no_weather_is_an_input() -> None:
    """Nor where nobody knows the weather."""
    inside = (place("Museum", "10.00", "indoors", MILD), place("Hall", "10.50", "indoors", MILD))
    assert not of_weather(family(household(hour_in_the_wet="6"), *inside))
    outside = place("Meadow", "10.00", "outdoors", MILD)
    whose = family(household(hour_in_the_wet="6"), outside, inside[0])
    assert of_weather(whose)
    assert not of_weather(replace(whose, stations=None))


def test_a_cold_day_that_is_not_allowed_is_told_with_the_limit() -> None:
    """Usually 0 to 8 °C; never below 30 °F: some degrees colder, and the meadow cannot be gone to."""
    home = household(hour_in_the_cold="1")
    habits = home.habits.model_copy(update={"never_outdoors_below": "30 F"})
    whose = family(
        home.model_copy(update={"habits": habits}),
        place("Meadow", "5.00", "outdoors", weather(-6, 3, 0)),
        place("Museum", "30.00", "indoors", weather(-6, 3, 0)),
    )
    colder = by_at(of_weather(whose))["flips-degrees"]
    assert colder.sentence.code == "flips-cannot-better"
    assert says(colder.sentence.text, "flips-cannot-better", place="Meadow", first="Museum")
    assert "it would feel like" in colder.sentence.text


def test_where_a_forecast_is_known_it_is_not_colder_than_usual() -> None:
    """Rain and a dry day are still asked; how far off a forecast's temperature is, nobody has stated."""
    meadow = place("Meadow", "10.00", "outdoors", MILD)
    whose = family(household(hour_in_the_wet="6"), meadow, place("Museum", "15.00", "indoors", MILD))
    told = ForecastDay(day=DAY, low=5, high=9, wet=0.1, known_at=datetime(2026, 12, 7, tzinfo=UTC))
    whose = replace(whose, forecasts=(PlaceForecast(place="meadow", days=(told,)),))
    found = of_weather(whose)
    assert len(found) == 2
    assert by_at(found).keys() == {"flips-wet"}


def test_the_fuel_price_counts_with_the_hours_in_the_car() -> None:
    """24 and 84 minutes in the car at 10 an hour weigh 4 and 14: near 34 + p against far's 24 + 3.5 p.

    They tie at 4.00; by money alone 30 + p and 10 + 3.5 p tie at 8.00.
    """
    near, far = place("Near", "30.00", "indoors", MILD), place("Far", "10.00", "indoors", MILD)
    whose = family(household(hour_in_car="10"), near, far, miles=(10, 35))
    outings = planned(whose)
    found = what_would_flip(whose, whose.party(), outings, today=TODAY)
    prices = [
        (flip.measure, flip.price, flip.new_first)
        for flip in found
        if flip.what == fact("flips-fuel-price") and flip.at
    ]
    assert prices == [
        (Measure.MONEY, usd("8.01"), "near"),
        (Measure.WITH_HASSLE, usd("4.01"), "near"),
    ]
    told = flips_in_short(found)
    assert [one.code for one in told[:2]] == ["flips-cheapest", "flips-better"]


def test_what_changes_both_alike_is_told_once() -> None:
    """With nothing that weighs, both measures are the money."""
    near, far = place("Near", "30.00", "indoors", MILD), place("Far", "10.00", "indoors", MILD)
    whose = family(household(), near, far, miles=(10, 50))
    found = what_would_flip(whose, whose.party(), planned(whose), today=TODAY)
    changing = [flip for flip in found if flip.at is not None]
    assert [flip.measure for flip in changing] == [Measure.MONEY, Measure.WITH_HASSLE]
    assert [one.code for one in flips_in_short(found)] == ["flips-cheapest", "flips-idle"]
    assert first_of_each(planned(whose)) == ()


def first_with(whose: Family, ahead: str, **told: float | None) -> str:
    """The better day out with other weather at both places; who is ahead stays so among equals."""
    day = ForecastDay(day=DAY, known_at=datetime(2026, 12, 7, tzinfo=UTC), **told)
    forecasts = tuple(PlaceForecast(place=one.id, days=(day,)) for one in whose.places)
    outings = planned(replace(whose, forecasts=forecasts))
    return min(outings, key=lambda one: (one.generalized_cost.amount, one.place.id != ahead)).place.id


@settings(max_examples=12)
@given(
    cents=st.integers(800, 2600),
    low=st.integers(-18, 20),
    span=st.integers(4, 12),
    wet=st.sampled_from([0.0, 0.25, 0.5, 1.0]),
    country=st.sampled_from([("US", "IL"), ("DE", "BY")]),
)
def test_what_is_told_of_the_weather_holds_when_planned_with_it(
    cents: int, low: int, span: int, wet: float, country: tuple[str, str]
) -> None:
    """Each flip is true and the least of its kind; where none is told, no such weather changes the order."""
    home = household(hour_in_the_wet="3", hour_in_the_cold="4", hour_in_the_heat="4")
    where = dict(zip(("country", "subdivision"), country, strict=True))
    home = home.model_copy(update={"home": home.home.model_copy(update=where)})
    usual, price = weather(low, low + span, wet), str(Decimal(cents).scaleb(-2))
    whose = family(
        home, place("Meadow", price, "outdoors", usual), place("Museum", "15.00", "indoors", usual)
    )
    a_degree = 1.0 if home.degrees == "C" else 5 / 9
    most = int(1.645 * BETWEEN_YEARS / a_degree)
    present = min(planned(whose), key=lambda one: one.generalized_cost.amount).place.id
    rain, dry, *temperatures = of_weather(whose)
    for flip, chance in ((rain, 1.0), (dry, 0.0)):
        then = first_with(whose, present, wet=chance)
        assert (flip.new_first or present) == then
        assert (flip.at is None) == (then == present)
    for flip, sign in zip(temperatures, (-1, 1), strict=True):
        firsts = [
            first_with(
                whose,
                present,
                low=low + sign * degrees * a_degree,
                high=low + span + sign * degrees * a_degree,
            )
            for degrees in range(1, most + 1)
        ]
        changed = [degrees for degrees, first in enumerate(firsts, 1) if first != present]
        if flip.at is None:
            assert not changed
        else:
            assert flip.at.values["degrees"] == changed[0]
            assert flip.new_first == firsts[changed[0] - 1]


@pytest.mark.parametrize("locale", Locale)
def test_it_is_told_in_each_language(locale: Locale) -> None:
    """No sentence lacks a value."""
    whose = family(
        household(hour_in_the_wet="6"),
        place("Meadow", "10.00", "outdoors", MILD),
        place("Museum", "15.00", "indoors", MILD),
    )
    found = of_weather(whose)
    with speaking(locale):
        for flip in found:
            assert "{" not in flip.sentence.text
            assert "{" not in flip.now.text
        assert says(by_at(found)["flips-wet"].sentence.text, "flips-better", locale, first="Museum")
