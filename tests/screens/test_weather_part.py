"""The weather of a day on Day plan, with a weather service on loopback."""

import os
from datetime import date
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.forecasts.answers import grid_forecast, grid_links, weather_server
from tests.screens.conftest import said, services_in
from tripplan.documents.places.forecast import PlaceForecast

PLACE, DAY = "ledgewing", date(2026, 12, 3)
WEEK = [(50, 30, 0, "Sunny")] * 8 + [(86, 77, 90, "Thunderstorms")]


def page() -> None:
    """The part of Day plan with made-up services; whole in itself, as the test runs it from its text."""
    import os
    from dataclasses import replace
    from datetime import date

    import streamlit as st

    from tripplan.forecasts.asking import Forecasts
    from tripplan.forecasts.national_weather_service import NationalWeatherService
    from tripplan.planning.outing.outing import Outing
    from tripplan.planning.outing.weather.visit_weather import weather_there
    from tripplan.screens.day_plan.weather_part import render_weather
    from tripplan.screens.widgets import answers
    from tripplan.screens.widgets.view import View
    from tripplan.services import open_services

    us = replace(NationalWeatherService(), address=os.environ["WEATHER"])
    services = replace(open_services(dict(os.environ)), forecasts=Forecasts(us, us))
    family = services.family()
    assert family is not None
    view = View(services, services.which, family, services.today(family))
    place = next(one for one in family.places if one.id == "ledgewing")
    day = date(2026, 12, 3)
    outing = answers.planned(family, [one.name for one in family.household.members], place, day, view.today)
    weather = outing.weather if isinstance(outing, Outing) else None
    st.header(f"Weather there: {weather_there(weather)}")
    render_weather(view, family, place, day, outing if isinstance(outing, Outing) else None)


def opened(monkeypatch: pytest.MonkeyPatch, address: str) -> AppTest:
    """The page for `PLACE` on `DAY`."""
    monkeypatch.setenv("WEATHER", address)
    app = AppTest.from_function(page, default_timeout=30).run()
    assert not app.exception, app.exception
    return app


def kept() -> PlaceForecast | None:
    """What is on record."""
    stored = services_in(Path(os.environ["TRIPPLAN_DATA"])).demo.get(PlaceForecast, PLACE)
    return stored.value if stored else None


@pytest.mark.usefixtures("data")
def test_a_press_fetches_and_another_forgets(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is sent is said before; the forecast takes the usual's place, with its age, until it is let go."""
    answer = grid_forecast(date(2026, 11, 25), WEEK)

    def reply(server: str, path: str) -> object:
        return grid_links(server) if path.startswith("/points") else answer

    with weather_server(reply) as (forecasts, asked):
        app = opened(monkeypatch, forecasts.in_the_us.address)
        assert asked == []
        assert "sends 4" in said(app.caption)
        assert "api.weather.gov" in said(app.caption)
        assert "Weather there: usually" in said(app.header)
        app.button(key="ask_forecast").click().run()
        assert not app.exception
        assert len(asked) == 2
        assert "Weather there: forecast" in said(app.header)
        assert "just now" in said(app.caption)
        assert "Thunderstorms" in said(app.caption)
        app.button(key="forget_forecast").click().run()
        assert "Weather there: usually" in said(app.header)


@pytest.mark.usefixtures("data")
def test_what_goes_wrong_is_said_and_her_word_counts(monkeypatch: pytest.MonkeyPatch) -> None:
    """An error leaves the usual; 900 degrees are refused; rain tomorrow is kept for tomorrow."""
    with weather_server(lambda _, __: 500) as (forecasts, _):
        app = opened(monkeypatch, forecasts.in_the_us.address)
        app.button(key="ask_forecast").click().run()
        assert "trouble itself" in said(app.error)
        assert "What counted before still counts" in said(app.error)
        assert kept() is None
        app.text_input(key="weather_typed").set_value("900")
        app.button(key="use_typed_weather").click().run()
        assert "900 °F is no temperature" in said(app.error)
        assert app.text_input(key="weather_typed").value == "900"
        app.text_input(key="weather_typed").set_value("rain tomorrow")
        app.button(key="use_typed_weather").click().run()
        assert "This plan is for Thu, Dec 3, 2026" in said(app.success)
        app.text_input(key="weather_typed").set_value("snow, 14")
        app.button(key="use_typed_weather").click().run()
        assert not app.exception
        assert "Weather there: by your word" in said(app.header)
    found = kept()
    assert found is not None
    assert [(one.day, one.wet) for one in found.days] == [(date(2026, 11, 26), 1), (DAY, 1)]
