"""The picture of a place's year on Places."""

import pytest
from streamlit.testing.v1 import AppTest

from tests.builders import make_household
from tests.screens.conftest import said
from tripplan.planning.climate.year import UsualMonth
from tripplan.screens.places.year_weather import year_chart, year_sentence, year_table

YEAR = [UsualMonth(low=n - 6.0, high=n + 4.0, wet=n + 1.0, snow=0.0, daylight=8.0 + n) for n in range(12)]


def page() -> None:
    """The part for two places; whole in itself, as the test runs it from its text."""
    import os

    from tripplan.screens.places.year_weather import render_year_weather
    from tripplan.screens.widgets.view import View
    from tripplan.services import open_services

    services = open_services(dict(os.environ))
    family = services.family()
    assert family is not None
    view = View(services, services.which, family, services.today(family))
    place = family.places[0]
    render_year_weather(view, family, place)
    at_sea = place.where.model_copy(update={"latitude": 0.0, "longitude": -30.0})
    render_year_weather(view, family, place.model_copy(update={"id": "at-sea", "where": at_sea}))


@pytest.mark.usefixtures("data")
def test_the_year_is_told_and_drawn_when_asked() -> None:
    """A sentence first; picture, table and source by a press; in the middle of an ocean nobody knows."""
    app = AppTest.from_function(page, default_timeout=30).run()
    assert not app.exception, app.exception
    assert "is coldest, usually" in said(app.markdown)
    assert "no weather station is near" in said(app.caption)
    assert not app.table
    (toggle,) = app.toggle
    toggle.set_value(True).run()
    assert not app.exception, app.exception
    assert len(app.table[0].value) == 12
    assert "weather stations around it" in said(app.caption)


def test_the_sentence_names_the_months_in_her_degrees() -> None:
    """By hand: January from -6 to 4 °C is 21 to 39 °F, December from 5 to 15 °C is 41 to 59 °F."""
    assert year_sentence(YEAR, make_household()) == (
        "January is coldest, usually 21 to 39 °F; December is warmest, 41 to 59 °F. December is wettest, "
        "with 12 wet days."
    )


def test_the_table_has_what_the_picture_has() -> None:
    """Snow stands in it only where it falls; the chart is of three strips."""
    table = year_table(YEAR, "C")
    assert list(table.columns) == ["low to high", "wet days", "daylight"]
    assert list(table.loc["March", :]) == ["-4 to 6 °C", "3", "10 h"]
    snowy = [*YEAR[:11], UsualMonth(low=-5, high=0, wet=9, snow=6, daylight=9)]
    assert year_table(snowy, "C").loc["December", "with snow"] == "6"
    assert len(year_chart(YEAR, "F").to_dict()["vconcat"]) == 3
