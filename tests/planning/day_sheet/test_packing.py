"""What to pack, rule by rule."""

from collections.abc import Mapping
from datetime import date
from typing import Any

import pytest
from pydantic import ValidationError

from tests.builders import make_member, make_place
from tripplan.documents.family.food import Food
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.language.locales import Locale, speaking
from tripplan.language.sentences import fact, say
from tripplan.planning.day_sheet.packing import RULES, Season, Trip, packing_list, season_on, suggested_items

WINTER, SUMMER = date(2026, 12, 8), date(2027, 7, 6)
ADULT = make_member("Ann")

# Ages on December 8, 2026, worked out by hand.
NEWBORN = make_member("Fi", "2026-09-01")  # 3 months
TODDLER = make_member("Di", "2025-07-15", naps=[{"start": "12:30", "minutes": 100}])  # 16 months
FOUR = make_member("Ed", "2022-11-02")
SEVEN = make_member("Cy", "2019-03-11")
TEEN = make_member("Jo", "2012-06-01")  # 14


def packed(
    *party: Any, day: date = WINTER, place: Mapping[str, Any] | None = None, **changes: Any
) -> dict[str, str]:
    """Codes of suggested things with their details; six hours out and an hour's drive unless changed."""
    values: dict[str, Any] = {
        "place": make_place(**(place or {})),
        "party": (ADULT, *party),
        "day": day,
        "minutes_out": 360,
        "drive_minutes": 60,
        "lunch_out": True,
        "food": Food(),
        **changes,
    }
    items = suggested_items(Trip(**values))
    return {item.what.code.removeprefix("packing-"): str(item.detail or "") for item in items}


def outdoors(**visit: Any) -> dict[str, Any]:
    """A place in the open."""
    return {"visit": {"indoors": "outdoors", **visit}}


def test_papers_telephone_and_first_aid_go_on_every_outing() -> None:
    """Adults alone, indoors, on a short drive still take these three."""
    things = packed(place={"visit": {"indoors": "indoors"}}, day=SUMMER, drive_minutes=20)
    assert "papers" in things
    assert "phone" in things
    assert things["first-aid"] == ""


def test_noted_needs_are_pointed_at_but_not_told() -> None:
    """The first-aid line names who has a need, and never what it is."""
    detail = packed(make_member("Petra", "2019-06-21", needs="hazelnut allergy"))["first-aid"]
    assert "Petra" in detail
    assert "hazelnut" not in detail


def test_children_under_four_need_a_child_seat_and_those_under_twelve_a_booster() -> None:
    """Each child is named with the kind of seat of its age; a teenager and adults with none."""
    things = packed(TODDLER, FOUR, SEVEN, TEEN)
    assert things["child-seat"] == "Di"
    assert things["booster"] == "Ed and Cy"


def test_nappies_are_counted_by_the_hours_out() -> None:
    """One every two hours and two spare: five for six hours, six for seven; a four-year-old takes none."""
    assert packed(TODDLER)["diapers"] == "about 5 for Di"
    assert packed(TODDLER, minutes_out=420)["diapers"] == "about 6 for Di"
    assert packed(TODDLER, NEWBORN)["diapers"] == "about 10 for Di and Fi"
    assert "diapers" not in packed(FOUR)


def test_under_fives_take_a_change_of_clothes() -> None:
    """The toddler and the four-year-old do, the seven-year-old does not."""
    assert packed(TODDLER, FOUR, SEVEN)["clothes"] == "Di and Ed"
    assert "clothes" not in packed(SEVEN)


def test_babies_take_milk_and_those_from_six_months_a_bib() -> None:
    """Milk is for under one, bib and spoon from six months to under three."""
    things = packed(NEWBORN, TODDLER)
    assert things["bottles"] == "Fi"
    assert things["bib"] == "Di"


def test_a_pushchair_goes_where_it_is_let_in_and_a_carrier_where_it_is_not() -> None:
    """The place card decides between the two."""
    let_in, not_let_in = packed(TODDLER), packed(TODDLER, place={"visit": {"pushchairs": False}})
    assert let_in["stroller"] == "Di"
    assert "carrier" not in let_in
    assert not_let_in["carrier"] == "Di"
    assert "stroller" not in not_let_in


def test_a_pushchair_is_covered_outdoors_only() -> None:
    """Inside a house neither rain nor sun falls on it."""
    cover = "stroller-cover"
    assert packed(TODDLER, place=outdoors())[cover] == "Di"
    assert cover not in packed(TODDLER, place={"visit": {"indoors": "indoors"}})


def test_whoever_naps_takes_a_comforter() -> None:
    """The child with a usual nap is named; children without one are not."""
    assert packed(TODDLER, FOUR)["lovey"] == "Di"
    assert "lovey" not in packed(FOUR)


def test_a_long_drive_asks_for_something_to_do_and_for_bags() -> None:
    """At 45 minutes both are packed, at 44 neither."""
    far, near = packed(FOUR, SEVEN, drive_minutes=45), packed(FOUR, SEVEN, drive_minutes=44)
    assert far["car-games"] == "Ed and Cy"
    assert "trash-bags" in far
    assert not {"car-games", "trash-bags"} & near.keys()


def test_school_children_take_notebooks() -> None:
    """From five to seventeen; smaller children and adults do not."""
    assert packed(FOUR, SEVEN, TEEN)["notebook"] == "Cy and Jo"


def test_everybody_has_a_bottle_and_is_told_where_it_may_not_go() -> None:
    """One each; where own food is not allowed, to ask first."""
    assert packed(SEVEN)["water"] == "2"
    assert "ask" in packed(SEVEN, place={"visit": {"own_food": False}})["water"]


def test_lunch_is_packed_only_where_it_is_packed_allowed_and_eaten_out() -> None:
    """Bought food, a place without own food, or lunch at home: none of them asks for a lunch box."""
    lunch = "lunch"
    assert packed(SEVEN)[lunch] == "for 2"
    assert lunch not in packed(SEVEN, lunch_out=False)
    assert lunch not in packed(SEVEN, food=Food(way="bought"))
    forbidden = packed(SEVEN, place={"visit": {"own_food": False}})
    assert lunch not in forbidden
    assert "not allowed" in forbidden["car-snacks"]


def test_winter_asks_for_coats_and_a_warm_car() -> None:
    """Coats everywhere, with the caution about straps for children; a blanket on long drives."""
    things = packed(SEVEN)
    assert "straps" in things["coats"]
    assert "blanket" in things
    assert packed()["coats"] == ""
    assert not {"coats", "blanket"} & packed(day=SUMMER).keys()


def test_rain_jackets_go_outdoors_outside_winter() -> None:
    """Nobody knows the weather, so they always go; in winter the coats do."""
    rain = "rain-jackets"
    assert rain in packed(day=SUMMER, place=outdoors())
    assert rain not in packed(day=WINTER, place=outdoors())
    assert rain not in packed(day=SUMMER, place={"visit": {"indoors": "indoors"}})


def test_sun_asks_for_hats_and_shades_babies() -> None:
    """Outdoors in spring and summer; a baby under six months is kept in the shade, and a doctor asked."""
    sun = "sun-hats"
    assert packed(SEVEN, day=SUMMER, place=outdoors())[sun] == ""
    baby = make_member("Fi", "2027-04-01")
    assert "Fi in the shade; ask your doctor" in packed(baby, day=SUMMER, place=outdoors())[sun]
    assert sun not in packed(SEVEN, day=WINTER, place=outdoors())


def test_long_grass_asks_for_repellent_while_insects_fly() -> None:
    """A card that speaks of a meadow, outdoors, not in winter."""
    meadow = outdoors(cautions=["Paths through the meadow."])
    assert "repellent" in packed(day=SUMMER, place=meadow)
    assert "repellent" not in packed(day=WINTER, place=meadow)
    assert "repellent" not in packed(day=SUMMER, place=outdoors())


def test_a_cave_asks_for_warm_jackets_and_firm_shoes_even_in_summer() -> None:
    """The name of the place is enough; a cave that is only studied does not count."""
    cave = packed(day=SUMMER, place={"name": "Hollow Hill Cave"})
    assert {"underground", "grip"} <= cave.keys()
    studied = packed(day=SUMMER, place={"visit": {"topics": ["caves"]}})
    assert not {"underground", "grip"} & studied.keys()


def test_wet_ground_animals_and_noise_are_read_from_the_card() -> None:
    """Each caution brings its thing, and a calm dry card none of them."""
    card = {"visit": {"cautions": ["Wet steps.", "Goats and lambs to stroke.", "The forge is loud."]}}
    things = packed(SEVEN, TEEN, place=card)
    assert "grip" in things
    assert "before eating" in things["soap"]
    assert things["ears"] == "Cy"
    calm = packed(SEVEN)
    assert not {"grip", "soap", "ears"} & calm.keys()


@pytest.mark.parametrize(
    ("day", "latitude", "season"),
    [
        (date(2026, 12, 1), 42.5, Season.WINTER),
        (date(2027, 2, 28), 42.5, Season.WINTER),
        (date(2027, 3, 1), 42.5, Season.SPRING),
        (date(2027, 8, 31), 42.5, Season.SUMMER),
        (date(2027, 9, 1), 42.5, Season.AUTUMN),
        (date(2026, 12, 1), -33.9, Season.SUMMER),
        (date(2027, 7, 1), -33.9, Season.WINTER),
        (date(2027, 7, 1), 1.3, Season.ALWAYS_WARM),
    ],
)
def test_seasons_are_those_of_the_weather_services(day: date, latitude: float, season: Season) -> None:
    """They begin with a month, are turned round in the south, and there are none in the tropics."""
    assert season_on(day, latitude) is season


def test_every_rule_says_why() -> None:
    """No suggestion without a reason or a source, and no two of one name."""
    assert all(say(f"{rule.code}-why", minutes=45) for rule in RULES)
    assert len({rule.code for rule in RULES}) == len(RULES)


def trip() -> Trip:
    """A toddler's winter outing."""
    return Trip(make_place(), (ADULT, TODDLER), WINTER, 360, 60, lunch_out=True, food=Food())


def test_what_the_family_leaves_out_is_gone_and_what_it_adds_is_last() -> None:
    """Capitals do not matter; everything else stays in its order."""
    changes = PackingChanges(added=("The grey rabbit", "water BOTTLES"), left_out=("stroller",))
    before = [item.what for item in suggested_items(trip())]
    after = [item.what for item in packing_list(trip(), changes)]
    own = fact("packing-own", thing="The grey rabbit")
    assert after == [what for what in before if what != fact("packing-stroller")] + [own]


@pytest.mark.parametrize("name", ["Stroller", "Pushchair", "Kinderwagen"])
def test_a_removal_holds_when_the_language_changes(name: str) -> None:
    """It is kept as the list called the thing then; who reads German now still goes without."""
    changes = PackingChanges(left_out=(name,))
    for locale in Locale:
        with speaking(locale):
            items = packing_list(trip(), changes)
        assert fact("packing-stroller") not in [item.what for item in items]


def test_what_was_left_out_for_one_outing_stays_out_of_the_next() -> None:
    """The removal names the thing, not its detail, so other numbers bring nothing back."""
    changes = PackingChanges(left_out=("Diapers, wipes, changing pad, bags",))
    longer = Trip(make_place(), (ADULT, TODDLER, NEWBORN), SUMMER, 600, 90, lunch_out=True, food=Food())
    assert fact("packing-diapers") not in (item.what for item in packing_list(longer, changes))


def test_nothing_is_added_and_left_out_at_once() -> None:
    """Such a list says nothing, and is refused."""
    with pytest.raises(ValidationError, match="at once"):
        PackingChanges(added=("Kite",), left_out=("kite",))


def test_what_is_worn_goes_by_the_usual_weather_where_it_is_known() -> None:
    """A mild winter day takes sun hats and no coats; a cold wet one in May coats and spare socks."""
    mild = packed(place=outdoors(), day=WINTER, felt_low=16.0, felt_high=24.0, wet=0.1)
    assert "sun-hats" in mild
    assert "coats" not in mild
    raw = packed(TODDLER, place=outdoors(), day=date(2027, 5, 4), felt_low=1.0, felt_high=4.0, wet=0.4)
    assert "coats" in raw
    assert "spare-socks" in raw
    assert "sun-hats" not in raw


def test_a_hot_day_takes_more_water() -> None:
    """From 90 °F as it feels; on other days a bottle each."""
    hot = packed(place=outdoors(), day=SUMMER, felt_low=30.0, felt_high=36.0, wet=0.1)["water"]
    mild = packed(place=outdoors(), day=SUMMER, felt_low=15.0, felt_high=22.0, wet=0.1)["water"]
    assert hot.startswith(mild)
    assert "every 20 minutes" in hot
