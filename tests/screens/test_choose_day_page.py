from collections.abc import Callable
from datetime import date
from pathlib import Path

from streamlit.testing.v1 import AppTest

from tests.builders import make_outing
from tests.saying import says
from tests.screens.conftest import drawn, opened_part, services_in

OpenApp = Callable[..., AppTest]


def asked_about(app: AppTest, *places: str) -> AppTest:
    """The page about some places only."""
    opened_part(app, "open_places").multiselect(key="day_places").set_value(list(places)).run()
    assert not app.exception
    return app


def test_the_best_day_of_each_of_three_places_comes_first(open_app: OpenApp) -> None:
    """With all places asked, three different ones are cards; all days stand in the calendar and the list."""
    app = open_app("choose_day")
    plans = {button.label for button in app.button if str(button.key).startswith("take_day_")}
    assert len(plans) == 3
    said = drawn(app).split()
    assert {"best", "good", "fair", "poor", "no"} <= set(said)
    assert said.count("Sun") == 3
    assert not app.dataframe
    assert len(opened_part(app, "open_all_days").dataframe[0].value) > 40


def test_one_place_shows_its_own_best_days(open_app: OpenApp) -> None:
    """Asked about one place, all days in the table are its own, least felt cost first."""
    app = opened_part(asked_about(open_app("choose_day"), "ledgewing"), "open_all_days")
    table = app.dataframe[0].value
    assert set(table["place"]) == {"Ledgewing Birds of Prey"}
    felt = list(table["cost plus hassle"])
    assert felt == sorted(felt)


def test_days_that_cannot_be_done_say_why(open_app: OpenApp) -> None:
    """The mill that is closed in winter stands among the days passed over, with the reason."""
    app = opened_part(open_app("choose_day"), "open_passed_over")
    (passed,) = (box for box in app.expander if "passed over" in box.label)
    assert "closed" in passed.markdown[0].value


def test_a_day_is_taken_for_the_other_pages(open_app: OpenApp) -> None:
    """After the press, Day plan opens on that place."""
    app = asked_about(open_app("choose_day"), "tern-landing")
    app.button(key="take_day_0").click().run()
    assert not app.exception
    assert app.title[0].value.startswith("Tern Landing River House")


def test_wishes_leave_days_out_and_the_nearest_misses_say_why(open_app: OpenApp) -> None:
    """With Sundays asked for, only they stand in the table, and a better weekday is told with its amount."""
    app = opened_part(asked_about(open_app("choose_day"), "tern-landing"), "open_wishes")
    app.button_group(key="weekdays").set_value(["Su"]).run()
    assert not app.exception
    opened_part(opened_part(app, "open_all_days"), "open_misses")
    assert {cell[:3] for cell in app.dataframe[0].value["day"]} == {"Sun"}
    assert any("are not among your weekdays" in block.value for block in app.markdown)


def test_a_budget_that_nobody_can_keep_shows_the_day_that_comes_nearest(open_app: OpenApp) -> None:
    """One dollar is too little for any day; the page says what the nearest would cost."""
    app = opened_part(open_app("choose_day"), "open_wishes")
    app.text_input(key="wish_budget").set_value("1").run()
    assert not app.exception
    assert "as you wish" in app.warning[0].value
    assert any("could be done for" in block.value for block in app.markdown)


def test_a_wish_outlives_its_page(open_app: OpenApp) -> None:
    """Back from another page, the wish still stands."""
    app = opened_part(open_app("choose_day"), "open_wishes")
    app.text_input(key="wish_budget").set_value("90").run()
    app.switch_page("screens/pages/household.py").run()
    app.switch_page("screens/pages/choose_day.py").run()
    opened_part(app, "open_wishes")
    assert app.text_input(key="wish_budget").value == "90"


def test_what_a_nuisance_is_worth_changes_the_order_and_can_be_kept(open_app: OpenApp) -> None:
    """Another figure is said on the page, weighs at once, and stands in the household after the press."""
    app = opened_part(opened_part(open_app("choose_day"), "open_all_days"), "open_weights")
    before = list(app.dataframe[0].value["cost plus hassle"])
    app.text_input(key="weight_full_house").set_value("80").run()
    assert not app.exception
    assert list(app.dataframe[0].value["cost plus hassle"]) != before
    app.button(key="keep_weights").click().run()
    assert not app.exception
    app.switch_page("screens/pages/household.py").run()
    app.run()
    assert app.text_input(key="worth_worth.full_house").value in ("80", "80.00")


def test_an_amount_that_cannot_be_read_is_said_by_its_name(open_app: OpenApp) -> None:
    """Words for an amount are refused with the field's name, and nothing breaks."""
    app = opened_part(open_app("choose_day"), "open_weights")
    app.text_input(key="weight_hour_in_car").set_value("much").run()
    assert not app.exception
    assert "An hour in the car" in app.error[0].value


def test_one_day_can_be_asked_about(open_app: OpenApp) -> None:
    """The mill that is closed in winter says so for the day picked."""
    app = opened_part(open_app("choose_day"), "open_passed_over")
    app.selectbox(key="why_place").set_value(app.selectbox(key="why_place").options[-1]).run()
    assert not app.exception
    (passed,) = (box for box in app.expander if "passed over" in box.label)
    assert len(passed.markdown) > 1


def test_a_whole_year_is_one_press_away(open_app: OpenApp) -> None:
    """After the press the span reaches a year ahead, and the table says how many days there are."""
    app = opened_part(open_app("choose_day"), "open_when")
    app.button(key="span_365").click().run()
    assert not app.exception
    opened_part(app, "open_when")
    assert app.date_input(key="span_picker").value == (date(2026, 11, 26), date(2027, 11, 25))
    opened_part(app, "open_all_days")
    assert any("the file below has them all" in caption.value for caption in app.caption)


def test_a_place_of_late_is_left_out_until_it_is_wanted(open_app: OpenApp, data: Path) -> None:
    """Planned for December 8, the best place is no card and is named; with a press it counts again."""
    best = str(open_app("choose_day").title[0].value)
    services = services_in(data)
    family = services.family()
    assert family is not None
    place = next(card for card in family.places if best.endswith(card.name))
    services.records.save(make_outing(date(2026, 12, 8), place=place.id), services.clock())
    app = open_app("choose_day")
    assert not app.title[0].value.endswith(place.name)
    assert any(says(one.value, "days-visit", place=place.name, day=date(2026, 12, 8)) for one in app.caption)
    app.toggle(key="places_of_late").set_value(True).run()
    assert app.title[0].value.endswith(place.name)
    assert open_app("choose_day").title[0].value.endswith(place.name)
