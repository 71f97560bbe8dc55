"""The weather of the day that is planned: the usual, a forecast by a press, or what the parent types."""

from datetime import date

import streamlit as st

from tripplan.documents.places.forecast import ForecastDay, PlaceForecast
from tripplan.documents.places.place import Place
from tripplan.errors import InputFaults, LookupFailed
from tripplan.forecasts.asking import sent
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.climate.typed_weather import EXAMPLES, LONGEST, too_far, typed_weather
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.weather.visit_weather import (
    forecast_age,
    weather_source,
    weather_there,
)
from tripplan.records.store import StoredDocument
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, show_notice
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View
from tripplan.version import USER_AGENT

_SPOT, _TYPED = "weather_of_the_day", "weather_typed"


def render_weather(view: View, family: Family, place: Place, day: date, outing: Outing | None) -> None:
    """Say what weather counts for a day, and offer a forecast or the parent's own word instead.

    Args:
        view: whose records keep it, and whose services are asked.
        family: whose units and home count.
        place: where.
        day: when.
        outing: the day as it is planned; None where it cannot be done.
    """
    weather = outing.weather if outing else None
    with st.expander(say("dayplan-weather"), key="open_weather"):
        kept = view.records.get(PlaceForecast, place.id)
        told = None if kept is None else kept.value.on(day)
        if weather is not None:
            st.markdown(plain(f"{wording.capital(weather_there(weather).text)}."))
            age = f" ({forecast_age(told, view.services.clock())})" if told else ""
            credit = f" {wording.capital(weather.source.credit)}." if weather.source.credit else ""
            st.caption(plain(f"{weather_source(weather)}{age}{credit}"))
        show_notice(_SPOT)
        far = too_far(day, view.today)
        if far:
            st.caption(plain(f"{wording.capital(far)}."))
            return
        args = (view, family, place, day)
        such_as = say("dayplan-weather-such-as", examples=EXAMPLES)
        st.text_input(say("dayplan-weather-better"), key=_TYPED, placeholder=such_as, max_chars=LONGEST)
        st.button(say("dayplan-weather-use"), key="use_typed_weather", on_click=_use_typed, args=args)
        provider = view.services.forecasts.provider(place.where.country)
        latitude, longitude = sent(place.where.point)
        st.caption(
            plain(
                say(
                    "dayplan-weather-sends",
                    latitude=str(latitude),
                    longitude=str(longitude),
                    place=place.name,
                    provider=provider.in_words,
                    program=USER_AGENT,
                )
            )
        )
        st.button(say("dayplan-weather-ask"), key="ask_forecast", on_click=_ask, args=args)
        if kept is not None and told is not None:
            st.button(
                say("dayplan-weather-forget"), key="forget_forecast", on_click=_forget, args=(view, day, kept)
            )


def _use_typed(view: View, family: Family, place: Place, day: date) -> None:
    household, now = family.household, view.services.clock().astimezone(family.household.home.zone)
    try:
        told = typed_weather(st.session_state[_TYPED], day, household.degrees, now, view.today)
    except InputFaults as faults:
        refuse(_SPOT, findings=faults.findings)
        return
    said = say("dayplan-weather-counts", words=told.words, day=told.day, place=place.name)
    if told.day != day:
        said = f"{said} {say('dayplan-weather-other-day', day=day)}"
    if _save(view, place, (told,), said):
        st.session_state[_TYPED] = ""


def _ask(view: View, family: Family, place: Place, day: date) -> None:
    now = view.services.clock().astimezone(family.household.home.zone)
    where = place.where
    try:
        days = view.services.forecasts.ask(where.point, where.country, where.zone, now)
    except LookupFailed as failed:
        refuse(_SPOT, say("dayplan-weather-failed", trouble=str(failed)))
        return
    said = say("dayplan-weather-until", first=days[0].day, last=days[-1].day)
    if all(one.day != day for one in days):
        said = f"{say('dayplan-weather-not-of-day', day=day)} {said}"
    _save(view, place, days, said)


def _save(view: View, place: Place, days: tuple[ForecastDay, ...], said: str) -> bool:
    kept = view.records.get(PlaceForecast, place.id)
    before = PlaceForecast(place=place.id) if kept is None else kept.value
    revision = 0 if kept is None else kept.revision
    return save_all(
        view, _SPOT, [(before.updated(days, view.today), revision)], said, can_be_taken_back=False
    )


def _forget(view: View, day: date, kept: StoredDocument[PlaceForecast]) -> None:
    said = say("dayplan-weather-usual", day=day)
    save_all(view, _SPOT, [(kept.value.without(day), kept.revision)], said, can_be_taken_back=False)
