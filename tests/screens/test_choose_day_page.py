from collections.abc import Callable

from streamlit.testing.v1 import AppTest

OpenApp = Callable[..., AppTest]


def test_the_best_day_of_each_of_three_places_comes_first(open_app: OpenApp) -> None:
    """With all places asked, three different ones are shown in full, and every day stands in the table."""
    app = open_app("choose_day")
    names = [heading.value.split("\\: ", 1)[1] for heading in app.subheader[:3]]
    assert len(set(names)) == 3
    assert len(app.dataframe[0].value) > 40


def test_one_place_shows_its_own_best_days(open_app: OpenApp) -> None:
    """Asked about one place, all days in the table are its own, least felt cost first."""
    app = open_app("choose_day")
    app.multiselect(key="day_places").set_value(["ledgewing"]).run()
    assert not app.exception
    table = app.dataframe[0].value
    assert set(table["place"]) == {"Ledgewing Birds of Prey"}
    felt = [float(cell.strip("$").replace(",", "")) for cell in table["with nuisances"]]
    assert felt == sorted(felt)


def test_days_that_cannot_be_done_say_why(open_app: OpenApp) -> None:
    """The mill that is closed in winter stands among the days passed over, with the reason."""
    app = open_app("choose_day")
    (passed,) = (box for box in app.expander if "passed over" in box.label)
    assert "closed" in passed.markdown[0].value


def test_a_day_is_taken_for_the_other_pages(open_app: OpenApp) -> None:
    """After the press, Day plan opens on that place."""
    app = open_app("choose_day")
    app.multiselect(key="day_places").set_value(["tern-landing"]).run()
    app.button(key="take_day_0").click().run()
    app.switch_page("tripplan/screens/pages/day_plan.py").run()
    app.run()
    assert not app.exception
    assert app.selectbox(key="plan_place").value == "tern-landing"
