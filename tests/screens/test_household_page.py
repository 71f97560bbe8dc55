"""The Household page keeps what a parent enters, refuses what cannot be, and shows everything harmlessly."""

import json
from collections.abc import Callable, Iterable
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tripplan.errors import Finding
from tripplan.planning.where import Where
from tripplan.screens.household_words import LABELS, SECTIONS
from tripplan.screens.notices import field_in_words
from tripplan.screens.where_form import where_on_record, where_values

Opened = Callable[..., AppTest]
DUBUQUE = Where(
    town="Dubuque",
    postal_code="52001",
    country="US",
    subdivision="IA",
    latitude=42.5006,
    longitude=-90.6646,
    time_zone="America/Chicago",
)


def said(elements: Iterable[object]) -> str:
    """Everything that some elements of a page say, as one text without marks."""
    return (
        "\n".join(str(getattr(element, "value", "")) for element in elements)
        .replace("\\", "")
        .replace("**", "")
    )


def own_household(open_app: Opened, people: str = "Ada, 1988-05-20\nLeo, 2019-03") -> AppTest:
    """The family's own records with a household that the first form made."""
    app = open_app("household")
    app.button(key="leave_demo").click().run()
    app.run()
    app.text_input(key="first_name").set_value("Ours")
    app.text_area(key="first_people").set_value(people)
    app.text_input(key="first_postal_code").set_value("61602")
    app.button(key="save_first").click().run()
    assert not app.exception
    return app


def test_the_demo_family_is_shown_with_ages_and_where_the_file_lies(open_app: Opened) -> None:
    """The page names everybody with today's age, and the file on this computer that holds it all."""
    app = open_app("household")
    assert "Odile (4 years) and Bram (16 months)" in said(app.markdown)
    assert "stays on this computer" in said(app.caption)
    assert "demo.sqlite3" in said(app.caption)


def test_a_faulty_section_changes_nothing_and_names_every_fault(open_app: Opened) -> None:
    """Both faults of the car are said at once, what was typed stays, and the car is as before."""
    app = open_app("household")
    app.text_input(key="car_car.consumption").set_value("abc")
    app.text_input(key="car_car.fuel_price").set_value("3,05")
    app.button(key="save_car").click().run()
    faults = said(app.error)
    assert "2 things to put right. Nothing was changed." in faults
    assert "Consumption" in faults
    assert "Price of fuel" in faults
    assert app.text_input(key="car_car.consumption").value == "abc"
    assert "22 miles per US gallon" in said(app.markdown)


def test_a_section_is_saved_and_the_last_change_can_be_undone(open_app: Opened) -> None:
    """Saving shows in the summary; undoing brings the figure before it back, also into the field."""
    app = open_app("household")
    app.text_input(key="car_car.consumption").set_value("25.5")
    app.button(key="save_car").click().run()
    assert not app.error
    assert "25.5 miles per US gallon" in said(app.markdown)
    app.button(key="undo_household").click().run()
    assert "22 miles per US gallon" in said(app.markdown)
    assert app.text_input(key="car_car.consumption").value == "22"


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
    assert "Odile, 4 years, one nap" in [expander.label.replace("\\", "") for expander in app.expander]
    app.checkbox(key="member_5_nap0_gone").check()
    app.button(key="save_member_5").click().run()
    assert "Odile, 4 years" in [expander.label.replace("\\", "") for expander in app.expander]


def test_a_persons_faults_are_named_with_person_and_nap(open_app: Opened) -> None:
    """An impossible birth date and an endless nap are both said, by the person's name."""
    app = open_app("household")
    app.text_input(key="member_6_born").set_value("2031")
    app.text_input(key="member_6_nap0_minutes").set_value("9999")
    app.button(key="save_member_6").click().run()
    faults = said(app.error)
    assert "Bram, Birth date" in faults
    assert "Bram, nap 1, usual length in minutes" in faults


def test_people_are_added_and_removed(open_app: Opened) -> None:
    """A new person appears in the summary; a removed one disappears, and undo brings it back."""
    app = own_household(open_app)
    app.text_input(key="new_member_name").set_value("Mia")
    app.text_input(key="new_member_born").set_value("2024-02-29")
    app.text_input(key="new_member_statuses").set_value("student, , resident of Peoria")
    app.button(key="save_new_member").click().run()
    assert "Mia (2 years)" in said(app.markdown)
    assert app.text_input(key="member_2_statuses").value == "student, resident of Peoria"
    app.button(key="remove_member_2").click().run()
    assert "Mia" not in said(app.markdown)
    app.button(key="undo_household").click().run()
    assert "Mia (2 years)" in said(app.markdown)


def test_an_empty_record_asks_for_three_things_only(open_app: Opened) -> None:
    """Without a household there is one short form, and an empty one is refused with all three faults."""
    app = open_app("household")
    app.button(key="leave_demo").click().run()
    app.run()
    app.button(key="save_first").click().run()
    faults = said(app.error)
    assert "3 things to put right" in faults
    for field in ("Name of the household", "Home", "People"):
        assert field in faults
    assert app.title[0].value == "Your family"


def test_the_first_form_finds_the_home_offline(open_app: Opened) -> None:
    """A ZIP code is enough to know town and time zone; currency and miles follow from the country."""
    app = own_household(open_app)
    assert "Outings start in Peoria, IL (America/Chicago)" in said(app.markdown)
    assert app.text_input(key="home_currency").value == "USD"
    assert app.radio(key="home_units").value == "mi"


def test_names_that_look_like_code_are_shown_as_they_are(open_app: Opened) -> None:
    """Markup, formulas and icon names come out letter by letter."""
    app = own_household(open_app, people="<script>alert(1)</script>, 1988-05-20\n=cmd $x$ :red[a], 2019-03")
    shown = "\n".join(element.value for element in app.markdown)
    assert r"\<script\>alert\(1\)\</script\>" in shown
    assert r"=cmd \$x\$ \:red\[a\]" in shown


def test_a_change_in_another_window_is_never_overwritten(open_app: Opened) -> None:
    """The second of two windows that change the same household is told so, and its change is not saved."""
    first, second = open_app("household"), open_app("household")
    first.text_input(key="reserve_reserve_percent").set_value("5")
    first.button(key="save_reserve").click().run()
    second.text_input(key="reserve_reserve_percent").set_value("50")
    second.button(key="save_reserve").click().run()
    assert "changed in another window" in said(second.error)
    assert second.text_input(key="reserve_reserve_percent").value == "5"


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


def test_all_records_are_replaced_only_after_a_tick(open_app: Opened) -> None:
    """A file of records says what it holds, and its button works only once the box is ticked."""
    app = own_household(open_app)
    data = json.dumps({"tripplan_records": 1, "documents": []}).encode()
    app.file_uploader(key="records_upload_0").set_value(("all.json", data, "application/json")).run()
    assert app.button(key="replace_records").disabled
    app.checkbox(key="records_agreed_0").check().run()
    app.button(key="replace_records").click().run()
    assert app.title[0].value == "Your family"


def test_a_damaged_file_of_records_is_refused(open_app: Opened) -> None:
    """What is no file of records is named as such, and no button to replace anything appears."""
    app = own_household(open_app)
    app.file_uploader(key="records_upload_0").set_value(("all.json", b"{", "application/json")).run()
    assert "all.json" in said(app.error)
    assert "replace_records" not in [button.key for button in app.button]


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
    assert "for Joel, until" in said(app.markdown)
    app.checkbox(key="passes_gone0").check()
    app.button(key="save_passes").click().run()
    assert "for Joel, until" not in said(app.markdown)


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
        for field in section.fields:
            assert field_in_words(field.path, LABELS, {}) == field.label


def test_ages_in_the_summary_are_those_of_today(open_app: Opened) -> None:
    """On November 25, 2026 somebody born in March 2019 is seven (counted by hand)."""
    app = own_household(open_app)
    assert "Leo (7 years)" in said(app.markdown)
