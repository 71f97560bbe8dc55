"""The Household page keeps what a parent enters, refuses what cannot be, and shows everything harmlessly."""

from datetime import date, time
from html import unescape
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.screens.conftest import Opened, drawn, said
from tripplan.documents.family.habits import PickUp, Stops
from tripplan.documents.family.household import Household
from tripplan.documents.where import Where
from tripplan.errors import Finding
from tripplan.files.locations.gazetteer import NotFound, locate
from tripplan.screens.forms.words import in_words
from tripplan.screens.household.sections import SECTIONS
from tripplan.screens.look.folds import ALL_OPENED
from tripplan.screens.widgets.locations.where_form import where_message, where_on_record, where_values

DUBUQUE = Where(
    town="Dubuque",
    postal_code="52001",
    country="US",
    subdivision="IA",
    latitude=42.5006,
    longitude=-90.6646,
    time_zone="America/Chicago",
)


def own_household(open_app: Opened, people: str = "Ada, 1988-05-20\nLeo, 2019-03") -> AppTest:
    """The family's own records with a household that the first form made."""
    app = open_app("household")
    app.button(key="leave_demo").click().run()
    app.run()
    app.text_input(key="first_name").set_value("Ours")
    for row, line in enumerate(people.splitlines()):
        name, _, born = line.partition(",")
        app.text_input(key=f"first_person{row}").set_value(name.strip())
        app.text_input(key=f"first_born{row}").set_value(born.strip())
    app.text_input(key="first_postal_code").set_value("61602")
    app.button(key="save_first").click().run()
    assert not app.exception
    return app


def facts(app: AppTest) -> str:
    """What the cards say, with single blanks."""
    return " ".join(drawn(app).split())


def html(app: AppTest) -> str:
    """The cards with their markup."""
    return unescape("".join(str(element.proto.body) for element in app.get("html")))


def test_the_demo_family_is_shown_with_ages_and_where_its_data_stay(open_app: Opened) -> None:
    """The page names everybody with today's age, and says that all stays on this computer."""
    app = open_app("household")
    told = facts(app)
    assert "Odile 4 years up 6:45 AM, bed 7:30 PM booster seat spare clothes" in told
    assert "Bram 16 months up 6:30 AM, bed 7:00 PM nap 12:30 PM, 1 h 40 min" in told
    assert 'aria-label="Awake 6:30 AM to 7:00 PM; asleep 12:30 PM to 2:10 PM"' in html(app)
    assert "stays on this computer" in said(app.caption)


def test_a_faulty_section_changes_nothing_and_names_every_fault(open_app: Opened) -> None:
    """Both are said at the button and at their fields, what was typed stays, and the car is as before."""
    app = open_app("household")
    app.text_input(key="car_car.consumption").set_value("abc")
    app.text_input(key="car_car.fuel_price").set_value("three")
    app.button(key="save_car").click().run()
    faults = said(app.error)
    assert "Please fix 2 things. Nothing was changed yet." in faults
    assert "Gas mileage or consumption" in faults
    assert "Price of fuel" in faults
    at_fields = [error.value for error in app.error if "Please fix" not in error.value]
    assert len(at_fields) == 2
    assert all("It says: " in told for told in at_fields)
    assert app.text_input(key="car_car.consumption").value == "abc"
    assert "22 miles per US gallon" in facts(app)
    app.text_input(key="car_car.consumption").set_value("22 mpg")
    app.button(key="save_car").click().run()
    assert [error.value for error in app.error if "Please fix" not in error.value] == at_fields[1:]


def test_a_section_is_saved_and_the_last_change_can_be_undone(open_app: Opened) -> None:
    """Saving shows in the summary; undoing brings the figure before it back, also into the field."""
    app = open_app("household")
    app.text_input(key="car_car.consumption").set_value("25.5")
    app.button(key="save_car").click().run()
    assert not app.error
    assert "25.5 miles per US gallon" in facts(app)
    app.button(key="undo_household").click().run()
    assert "22 miles per US gallon" in facts(app)
    assert app.text_input(key="car_car.consumption").value == "22"


@pytest.mark.parametrize(
    ("section", "path", "changed"),
    [
        ("car", "car.consumption_from", ("car.consumption", "23")),
        ("food", "food.packed_from", ("food.packed_adult", "3.25")),
        ("food", "food.bought_from", ("food.bought_child", "8.00")),
        ("habits", "habits.delays_from", ("habits.usual_delay_minutes", "7")),
    ],
)
def test_where_a_figure_comes_from_is_typed_and_stays(
    open_app: Opened, section: str, path: str, changed: tuple[str, str]
) -> None:
    """The source stands in its field, and saving another figure of the section does not lose it."""
    app = open_app("household")
    app.text_input(key=f"{section}_{path}").set_value("receipts of November 2026")
    app.button(key=f"save_{section}").click().run()
    assert not app.error
    field, value = changed
    app.text_input(key=f"{section}_{field}").set_value(value)
    app.button(key=f"save_{section}").click().run()
    assert not app.error
    assert app.text_input(key=f"{section}_{path}").value == "receipts of November 2026"
    app.text_input(key=f"{section}_{path}").set_value("x" * 201)
    app.button(key=f"save_{section}").click().run()
    assert "come" in said(app.error)
    assert "Please fix 1 thing" in said(app.error)


def test_an_emptied_field_goes_back_to_the_usual_figure(open_app: Opened) -> None:
    """The demo packs lunch for 3.50; without a figure it is 3.00 again."""
    app = open_app("household")
    app.text_input(key="food_food.packed_adult").set_value("")
    app.button(key="save_food").click().run()
    assert app.text_input(key="food_food.packed_adult").value == "3.00"


def test_a_person_gets_a_nap_and_loses_it_again(open_app: Opened) -> None:
    """A nap is added below the person, counted in the heading, and left out when ticked off."""
    app = open_app("household")
    app.button(key="add_nap_5").click().run()
    app.text_input(key="member_5_nap0_minutes").set_value("45")
    app.button(key="save_member_5").click().run()
    assert not app.error
    assert "Odile 4 years up 6:45 AM, bed 7:30 PM nap 12:30 PM, 45 min" in facts(app)
    app.checkbox(key="member_5_nap0_gone").check()
    app.button(key="save_member_5").click().run()
    assert "Odile 4 years up 6:45 AM, bed 7:30 PM booster seat" in facts(app)


def test_a_persons_faults_are_named_with_person_and_nap(open_app: Opened) -> None:
    """An impossible birth date and an endless nap are both said, by the person's name."""
    app = open_app("household")
    app.text_input(key="member_6_born").set_value("2031")
    app.text_input(key="member_6_nap0_minutes").set_value("9999")
    app.button(key="save_member_6").click().run()
    faults = said(app.error)
    assert "Bram, birth date" in faults
    assert "Bram, nap 1, usual length, in minutes" in faults


def test_people_are_added_and_removed(open_app: Opened) -> None:
    """A new person appears in the summary; a removed one disappears, and undo brings it back."""
    app = own_household(open_app)
    app.text_input(key="new_member_name").set_value("Mia")
    app.text_input(key="new_member_born").set_value("2024-02-29")
    app.text_input(key="new_member_statuses").set_value("student, , resident of Peoria")
    app.button(key="save_new_member").click().run()
    assert "Mia 2 years" in facts(app)
    assert app.text_input(key="member_2_statuses").value == "student, resident of Peoria"
    app.button(key="remove_member_2").click().run()
    assert "Mia" not in facts(app)
    app.button(key="undo_household").click().run()
    assert "Mia 2 years" in facts(app)


def test_an_empty_record_asks_for_three_things_only(open_app: Opened) -> None:
    """Without a household there is one short form, and an empty one is refused with all three faults."""
    app = open_app("household")
    app.button(key="leave_demo").click().run()
    app.run()
    app.button(key="save_first").click().run()
    faults = said(app.error)
    assert "Please fix 3 things" in faults
    for field in ("Name of the household", "Home", "People"):
        assert field in faults
    assert app.title[0].value == "Your family"


def test_the_first_form_finds_the_home_offline(open_app: Opened) -> None:
    """A ZIP code is enough to know town and time zone; currency and miles follow from the country."""
    app = own_household(open_app)
    assert "Peoria, IL · America/Chicago" in facts(app)
    assert app.text_input(key="home_currency").value == "USD"
    assert app.radio(key="home_units").value == "mi"


def test_names_that_look_like_code_are_shown_as_they_are(open_app: Opened) -> None:
    """Markup, formulas and icon names come out letter by letter."""
    app = own_household(open_app, people="<script>alert(1)</script>, 1988-05-20\n=cmd $x$ :red[a], 2019-03")
    assert "<script>alert(1)</script> 38 years" in facts(app)
    assert "<script>" not in "".join(str(element.proto.body) for element in app.get("html"))
    assert r"Change =cmd \$x\$ \:red\[a\]" in [button.label for button in app.button]


def test_a_household_file_is_looked_at_before_it_is_taken_over(open_app: Opened) -> None:
    """A faulty file is refused with every fault; a good one is shown first and taken over on request."""
    app = own_household(open_app)
    bad = b'name = "x"\ncurrency = "XXY"\n[home]\ntown = "Nowhere at all"\ncountry = "US"\n'
    app.file_uploader(key="household_upload_0").set_value(("bad.toml", bad, "application/toml")).run()
    assert "bad.toml: currency" in said(app.error)
    assert "bad.toml: members" in said(app.error)
    good = Path("demo_places/household.toml").read_bytes()
    app.file_uploader(key="household_upload_0").set_value(("good.toml", good, "application/toml")).run()
    assert not app.error
    assert app.title[0].value == "Ours"
    app.button(key="take_household").click().run()
    assert "Quillmarsh" in app.title[0].value


def test_a_held_pass_needs_somebody_and_can_be_left_out_again(open_app: Opened) -> None:
    """A pass without holders is refused; with one it is listed, and a tick leaves it out."""
    app = open_app("household")
    pick = app.selectbox(key="passes_new")
    pick.select_index(1)
    app.button(key="save_passes").click().run()
    assert "pick at least one person" in said(app.error)
    app.multiselect(key="passes_holders").select("Joel")
    app.button(key="save_passes").click().run()
    assert not app.error
    assert "for Joel, until" in facts(app)
    app.checkbox(key="passes_gone0").check()
    app.button(key="save_passes").click().run()
    assert "for Joel, until" not in facts(app)


@pytest.mark.parametrize(
    ("typed", "kept", "dropped"),
    [
        ({"town": "Peoria", "subdivision": "il"}, {"town", "subdivision"}, {"latitude", "postal_code"}),
        ({"postal_code": "61602"}, {"postal_code"}, {"latitude", "town", "subdivision", "time_zone"}),
        ({"coordinates": "40.69, -89.59"}, {"latitude", "longitude", "town"}, {"time_zone"}),
        ({"address": "1 Elm Street"}, {"latitude", "town", "postal_code", "time_zone"}, set()),
    ],
)
def test_what_a_new_location_makes_wrong_is_looked_up_anew(
    typed: dict[str, str], kept: set[str], dropped: set[str]
) -> None:
    """Coordinates win over names, so the old ones are dropped where only names were changed."""
    values, found = where_values({**where_on_record(DUBUQUE), **typed}, DUBUQUE, "home")
    assert not found
    assert kept <= values.keys()
    assert not dropped & values.keys()


def test_unreadable_coordinates_are_a_fault_of_their_own() -> None:
    """They are named, and a stand-in keeps other faults readable."""
    values, found = where_values({"coordinates": "somewhere", "country": "US"}, None, "home")
    assert [finding.field for finding in found] == ["home.coordinates"]
    assert {"latitude", "longitude"} <= values.keys()
    assert isinstance(found[0], Finding)


def test_every_field_of_a_section_has_a_name_for_its_faults() -> None:
    """A fault is called by the same words as the field on the screen."""
    for section in SECTIONS:
        assert section.asked
        for question in section.asked:
            found = Finding("", question.path, "", "is wrong")
            assert in_words([found], Household, {})[0].field == question.asked.label_in()


def test_ages_in_the_summary_are_those_of_today(open_app: Opened) -> None:
    """On November 25, 2026 somebody born in March 2019 is seven (counted by hand)."""
    app = own_household(open_app)
    assert "Leo 7 years" in facts(app)


@pytest.mark.parametrize(
    ("line", "home"),
    [
        ("Galena, IL", "Galena, IL · America/Chicago"),
        ("galena, illinois", "Galena, IL · America/Chicago"),
        ("80302", "Boulder, CO · America/Denver"),
        ("1 Main Street, Galena, IL 61036", "Galena, IL · America/Chicago"),
    ],
)
def test_one_line_moves_the_home_by_names(open_app: Opened, line: str, home: str) -> None:
    """A town with its state, a ZIP code or an address is looked up offline, with its time zone."""
    app = open_app("household")
    app.text_input(key="home_where").set_value(line)
    app.button(key="save_home").click().run()
    assert not app.error
    assert home.casefold() in facts(app).casefold()


@pytest.mark.parametrize(
    "line",
    [
        "42.4167, -90.4290",
        "42.4167 N 90.4290 W",
        "geo:42.4167,-90.4290",
        "geo:0,0?q=42.4167,-90.4290(Main Street)",
        "https://maps.example.org/?q=42.4167,-90.4290",
    ],
)
def test_one_line_moves_the_home_by_coordinates(open_app: Opened, line: str) -> None:
    """Coordinates in any form, or a map's link, give the point; what the town is called stays."""
    app = open_app("household")
    app.text_input(key="home_where").set_value(line)
    app.button(key="save_home").click().run()
    assert not app.error
    assert app.text_input(key="home_coordinates").value == "42.4167, -90.429"
    assert app.text_input(key="home_town").value == "Dubuque"


@pytest.mark.parametrize(
    ("line", "field", "message"),
    [
        ("Nowheresville, IL", "Town", "give coordinates or a map's link, or look it up on the internet"),
        ("Springfield", "Town", "give the state, such as IL"),
        ("00000", "ZIP code", "no such ZIP code is known"),
        ("https://maps.example.org/abc", "Where is it?", "no coordinates stand in this link"),
        ("geo:95,-90.4", "Where is it?", "found 95"),
        ("42.4, 90.4", "Coordinates, longitude", "write -89.59 for 89.59"),
    ],
)
def test_a_home_that_cannot_be_found_is_said_in_the_words_of_the_screen(
    open_app: Opened, line: str, field: str, message: str
) -> None:
    """The field is called as on the screen, the line stays, and the home is as before."""
    app = open_app("household")
    app.text_input(key="home_where").set_value(line)
    app.button(key="save_home").click().run()
    assert field in said(app.error)
    assert message in said(app.error)
    assert app.text_input(key="home_where").value == line
    assert "Dubuque, IA ·" in facts(app)


def test_an_unknown_time_zone_is_said_without_jargon(open_app: Opened) -> None:
    """A zone that does not exist is refused with an example of one that does."""
    app = open_app("household")
    app.text_input(key="home_time_zone").set_value("Mars/Olympus")
    app.button(key="save_home").click().run()
    assert "Time zone: a time zone has a name such as America/Chicago" in said(app.error)


def test_no_message_about_a_location_speaks_of_fields_of_a_file() -> None:
    """Everything the offline look-up can say is said in the words of the screen."""
    asked = (
        Where(town="Nowheresville", country="US", subdivision="IL"),
        Where(town="Nowheresville", country="US"),
        Where(town="Springfield", country="US"),
        Where(town="Peoria", country="US", subdivision="XX"),
        Where(town="Lyon", country="FR"),
        Where(postal_code="69001", country="FR"),
        Where(postal_code="00000", country="US"),
        Where(postal_code="61602", subdivision="WI", country="US"),
        Where(latitude=40, longitude=89, country="US"),
    )
    for where in asked:
        found = locate(where)
        assert isinstance(found, NotFound)
        shown = where_message(found.message)
        for jargon in ("subdivision", "IANA", "latitude and longitude", "offline look"):
            assert jargon not in shown


def test_the_home_is_ticked_as_near_a_large_city_and_stays_so(open_app: Opened) -> None:
    """The tick is kept when another part of the home changes, and can be taken away."""
    app = open_app("household")
    app.checkbox(key="home_metropolitan").check()
    app.button(key="save_home").click().run()
    app.text_input(key="home_where").set_value("Galena, IL")
    app.button(key="save_home").click().run()
    assert app.checkbox(key="home_metropolitan").value
    app.checkbox(key="home_metropolitan").uncheck()
    app.button(key="save_home").click().run()
    assert not app.checkbox(key="home_metropolitan").value


def test_the_published_rush_hours_are_shown_with_their_source(open_app: Opened) -> None:
    """Before anything is set, figure, hours and source are said, and stand in the rows to start from."""
    app = open_app("household")
    assert app.radio(key="rush_way").value == "published"
    told = said(app.caption)
    assert "1.19 times as long on working days" in told
    assert "counted from 6:00 AM to 9:00 AM and 4:00 PM to 7:00 PM" in told
    assert "Federal Highway Administration" in told
    assert app.text_input(key="rush_factor1").value == "1.19"


def test_own_rush_hours_are_added_and_left_out(open_app: Opened) -> None:
    """A third row is saved with its days; a tick leaves a row out; 'never' takes them all away."""
    app = open_app("household")
    app.button(key="add_rush").click().run()
    assert app.radio(key="rush_way").value == "own"
    app.button_group(key="rush_days2").set_value(["Sa", "Su"])
    app.time_input(key="rush_start2").set_value(time(10))
    app.time_input(key="rush_end2").set_value(time(12, 30))
    app.text_input(key="rush_factor2").set_value("1.4")
    app.checkbox(key="rush_gone0").check()
    app.button(key="save_rush").click().run()
    assert not app.error
    assert app.text_input(key="rush_factor1").value == "1.4"
    assert app.button_group(key="rush_days1").value == ["Sa", "Su"]
    assert "rush_factor2" not in [field.key for field in app.text_input]
    app.radio(key="rush_way").set_value("never")
    app.button(key="save_rush").click().run()
    assert not app.error
    assert app.radio(key="rush_way").value == "never"


def test_every_fault_of_the_rush_hours_is_said_at_once(open_app: Opened) -> None:
    """An unreadable factor, a row without days and one that ends before it begins are named by row."""
    app = open_app("household")
    app.button(key="add_rush").click().run()
    app.text_input(key="rush_factor0").set_value("much")
    app.button_group(key="rush_days1").set_value([])
    app.time_input(key="rush_end2").set_value(time(5))
    app.button(key="save_rush").click().run()
    faults = said(app.error)
    assert "Please fix 3 things" in faults
    assert "Rush hours 1, how many times as long" in faults
    assert "Rush hours 2, on these days" in faults
    assert "Rush hours 3: the rush is over later" in faults


def test_changed_hours_that_would_not_count_are_not_dropped_silently(open_app: Opened) -> None:
    """Hours that were changed under another answer are asked about."""
    app = open_app("household")
    app.text_input(key="rush_factor0").set_value("1.5")
    app.button(key="save_rush").click().run()
    assert "they count only with the answer" in said(app.error)
    assert app.text_input(key="rush_factor0").value == "1.5"


def test_stops_are_kept_in_the_households_unit(open_app: Opened) -> None:
    """300 miles stay 300 miles after saving; the same is 482.8 km (1.609344 km each) once km are shown."""
    app = open_app("household")
    app.text_input(key="stops_fuel_range_km").set_value("300")
    app.text_input(key="stops_pick_up.name").set_value("Grandpa")
    app.text_input(key="stops_pick_up.extra_km").set_value("4.5")
    app.text_input(key="stops_pick_up.extra_minutes").set_value("12")
    app.text_input(key="stops_way_back_minutes").set_value("20")
    app.button(key="save_stops").click().run()
    assert not app.error
    assert app.text_input(key="stops_fuel_range_km").value == "300"
    assert app.text_input(key="stops_fuel_range_km").label.endswith("in miles")
    app.radio(key="home_units").set_value("km")
    app.button(key="save_home").click().run()
    assert app.text_input(key="stops_fuel_range_km").value == "482.8"
    assert app.text_input(key="stops_pick_up.extra_km").value == "7.2"
    assert app.text_input(key="stops_pick_up.extra_km").label.endswith("in km")
    app.button(key="save_stops").click().run()
    assert not app.error


def test_a_pick_up_by_its_place_is_looked_up_offline(open_app: Opened) -> None:
    """A town gives the point; without a name and a place there is no pick-up any more."""
    app = open_app("household")
    app.text_input(key="stops_pick_up.name").set_value("The neighbours")
    app.text_input(key="stops_pick_up.where").set_value("Galena, IL")
    app.button(key="save_stops").click().run()
    assert not app.error
    latitude, longitude = str(app.text_input(key="stops_pick_up.where").value).split(", ")
    # Galena, Illinois lies at 42.42 N, 90.43 W (from memory).
    assert (float(latitude), float(longitude)) == pytest.approx((42.42, -90.43), abs=0.05)
    for name in ("name", "where"):
        app.text_input(key=f"stops_pick_up.{name}").set_value("")
    app.button(key="save_stops").click().run()
    assert not app.error
    assert app.text_input(key="stops_pick_up.where").value == ""


def test_every_fault_of_the_stops_is_said_at_once(open_app: Opened) -> None:
    """A range in words of miles, a nameless pick-up, an unknown town and bad minutes are all named."""
    app = open_app("household")
    app.text_input(key="stops_fuel_range_km").set_value("5")
    app.text_input(key="stops_fuel_minutes").set_value("soon")
    app.text_input(key="stops_pick_up.where").set_value("Nowheresville, IL")
    app.button(key="save_stops").click().run()
    faults = said(app.error)
    assert "Please fix 4 things" in faults
    assert "One filling takes you this far: a distance from 12 mi to 3107 mi" in faults
    assert "A fuel stop takes, in minutes" in faults
    assert "Who is picked up" in faults
    assert "Where they are picked up: no such town is known in IL" in faults


def test_coordinates_and_an_extra_distance_are_not_both_taken(open_app: Opened) -> None:
    """The pick-up is said by a place or by what it adds."""
    app = open_app("household")
    app.text_input(key="stops_pick_up.name").set_value("Grandpa")
    app.text_input(key="stops_pick_up.where").set_value("Galena, IL")
    app.text_input(key="stops_pick_up.extra_minutes").set_value("10")
    app.button(key="save_stops").click().run()
    assert "Pick-up on the way: give a place, or how much longer it makes the way and the drive" in said(
        app.error
    )


@pytest.mark.parametrize(("ends", "km"), [((20.0, 5000.0), "fuel_range_km"), ((0.0, 1000.0), "extra_km")])
def test_the_distances_a_form_takes_are_those_of_the_household(ends: tuple[float, float], km: str) -> None:
    """Both ends are taken and what lies beyond is refused, as the form's own check says."""
    given = {"name": "Grandpa"} if km == "extra_km" else {}
    form = PickUp if km == "extra_km" else Stops
    for end in ends:
        assert getattr(form.model_validate({**given, km: end}), km) == end
    for beyond in (ends[0] - 0.1, ends[1] + 0.1):
        with pytest.raises(ValueError, match=km):
            form.model_validate({**given, km: beyond})


def test_the_longest_stretch_is_explained_with_its_source(open_app: Opened) -> None:
    """The default, the rest after it and the shorter stretch for a child under two are said."""
    told = said(open_app("household").caption)
    assert "After 120 minutes of driving a rest of at least 15 minutes is advised" in told
    assert "The Highway Code, Great Britain, rule 91" in told
    assert "after 90 minutes at the latest" in told


def test_usual_naps_are_filled_in_for_the_parent_to_change(open_app: Opened) -> None:
    """A child of a year gets the two naps of its age into the form; they count once they are saved."""
    app = own_household(open_app, people="Ada, 1988-05-20\nBea, 2025-11-20")
    assert "11 to 14 hours of sleep in 24" in said(app.caption)
    app.button(key="offer_usual_naps_1").click().run()
    assert app.time_input(key="member_1_nap0_start").value == time(9, 30)
    assert app.text_input(key="member_1_nap1_minutes").value == "90"
    app.text_input(key="member_1_nap1_minutes").set_value("80")
    app.text_input(key="member_1_patience_minutes").set_value("45")
    app.button(key="save_member_1").click().run()
    assert not app.exception
    app.run()
    assert "Bea 12 months up 6:30 AM, bed 7:30 PM nap 9:30 AM, 1 h nap 1:00 PM, 1 h 20 min" in facts(app)
    assert app.text_input(key="member_1_nap1_minutes").value == "80"
    assert app.text_input(key="member_1_patience_minutes").value == "45"


def test_a_height_is_typed_in_any_usual_way_but_with_its_unit(open_app: Opened) -> None:
    """A bare figure is refused with an example; feet and inches are kept as inches."""
    app = own_household(open_app, people="Ada, 1988-05-20\nBea, 2019-11-20")
    app.text_input(key="member_1_height").set_value("46")
    app.button(key="save_member_1").click().run()
    assert "3 ft 10" in said(app.error)
    app.text_input(key="member_1_height").set_value("3 ft 10")
    app.date_input(key="member_1_height_on").set_value(date(2026, 11, 1))
    app.button(key="save_member_1").click().run()
    assert not app.exception
    app.run()
    assert app.text_input(key="member_1_height").value == "46 in"
    assert app.date_input(key="member_1_height_on").value == date(2026, 11, 1)


def test_one_form_is_open_at_a_time_and_stays_so(open_app: Opened) -> None:
    """A press opens one person's form, another's closes it; a second window finds the same, a save closes."""
    app = open_app("household")
    del app.session_state[ALL_OPENED]
    app.run()
    assert not app.text_input
    app.button(key="turn_member_6").click().run()
    app.text_input(key="member_6_name").set_value("Bramwell").run()
    app.button(key="turn_car").click().run()
    assert {str(field.key).partition("_")[0] for field in app.text_input} == {"car"}
    app.button(key="turn_member_6").click().run()
    assert app.text_input(key="member_6_name").value == "Bramwell"
    again = open_app("household")
    del again.session_state[ALL_OPENED]
    again.run()
    assert again.text_input(key="member_6_name").value == "Bramwell"
    again.button(key="save_member_6").click().run()
    assert not again.text_input
    assert said(again.success) == "Saved."
    assert "Bramwell 16 months" in facts(again)


def test_unlikely_figures_are_asked_about_at_their_card(open_app: Opened) -> None:
    """Four seats for seven people, and fuel at 309: saved, and asked about beside the car."""
    app = open_app("household")
    app.text_input(key="car_car.seats").set_value("4")
    app.text_input(key="car_car.fuel_price").set_value("309")
    app.button(key="save_car").click().run()
    assert not app.error
    assert "4 seats for 7 people: 2 cars?" in facts(app)
    assert "Fuel at 309 USD: is the point in its place?" in facts(app)


def test_birth_dates_and_clocks_stand_as_the_family_writes_them(open_app: Opened) -> None:
    """At home in the United States: month first, and the half of the day behind the clock."""
    app = open_app("household")
    born = [app.text_input(key=f"member_{index}_born").value for index in (5, 6)]
    assert born == ["12/18/2021", "7/14/2025"]
    assert {one.proto.format for one in app.time_input} == {"12h"}
