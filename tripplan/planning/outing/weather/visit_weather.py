"""What the weather is usually like during one visit, or is forecast to be; what it weighs; in words."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal

import numpy as np

from tripplan.documents.family.household import Household
from tripplan.documents.places.forecast import ForecastDay
from tripplan.documents.usual_weather import Degrees
from tripplan.language.sentences import Fact, fact
from tripplan.planning.climate.climate import Climate, UsualDay
from tripplan.planning.climate.feels_like import Class, class_of
from tripplan.planning.climate.forecasts import forecast_source
from tripplan.planning.climate.outdoors import STEP_MINUTES, OutdoorLimits, OutdoorYear
from tripplan.planning.day import DayPlan, DayQuestion
from tripplan.planning.day.times.hourly_weather import PARTS
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.outing.place_facts import PlaceFacts
from tripplan.planning.outing.weather.outdoor_hours import one_day
from tripplan.values.money import Money
from tripplan.values.ranges import Source
from tripplan.values.units import Chance, Temperatures

_MILD_DEGREES = 2.0
_WORTH_TELLING = 0.02
"""A smaller chance of snow is not told [0-1]."""


@dataclass(frozen=True)
class VisitWeather:
    """What the weather is usually like during one visit.

    Attributes:
        day: what the whole day is usually like.
        low, high: at the coldest and the warmest hour of the visit [°C].
        felt_low, felt_high: how these feel in a light breeze [°C].
        outdoors: which part of the visit is outdoors [0-1].
        weighs: what being outdoors in it weighs; nothing where all is indoors.
        degrees: in which the family reads temperatures, 'F' or 'C'.
        source: where it comes from.
    """

    day: UsualDay
    low: float
    high: float
    felt_low: float
    felt_high: float
    outdoors: float
    weighs: Money
    degrees: Degrees
    source: Source

    @property
    def feels_like(self) -> Temperatures:
        """How it feels there, as the family reads it."""
        return Temperatures(self.felt_low, self.felt_high, self.degrees)

    @property
    def classes(self) -> frozenset[Class]:
        """How cold and how hot it feels there."""
        return frozenset((class_of(self.felt_low), class_of(self.felt_high)))

    @property
    def forecast(self) -> ForecastDay | None:
        """What has taken the place of the usual; None where nothing has."""
        return self.day.forecast


def visit_weather(
    household: Household, facts: PlaceFacts, question: DayQuestion, plan: DayPlan
) -> VisitWeather | None:
    """What the weather is usually like during a visit; None where nobody knows.

    Args:
        household: in whose degrees.
        facts: the place.
        question: the day, with what its weather weighs.
        plan: when the party is there.
    """
    climate, day = facts.climate, question.day
    if climate is None or not climate.knows(day):
        return None
    usual, minutes = climate.on(day), DayMinutes(day, question.home_zone)
    year = facts.outdoors or _indoors(climate, facts.place.where.point.longitude)
    enter, leave = minutes.rounded_down(plan.enter), minutes.rounded_down(plan.leave_place)
    steps = year.steps(*one_day(year, minutes))
    there = np.arange(enter // STEP_MINUTES, -(-leave // STEP_MINUTES)) % steps.felt.shape[1]
    degrees, felt = steps.degrees[0, there], steps.felt[0, there]
    weighs = 0 if question.weather is None else int(question.weather.weighs(0, *np.array([enter, leave])))
    return VisitWeather(
        day=usual,
        low=float(degrees.min()),
        high=float(degrees.max()),
        felt_low=float(felt.min()),
        felt_high=float(felt.max()),
        outdoors=year.share,
        weighs=Money(Decimal(weighs) / PARTS, household.currency).rounded(),
        degrees=household.degrees,
        source=climate.source if usual.forecast is None else forecast_source(usual.forecast),
    )


def _indoors(climate: Climate, longitude: float) -> OutdoorYear:
    """A place of which nothing is outdoors, to tell what it is like outside."""
    return OutdoorYear(climate, longitude, 0.0, OutdoorLimits())


def weather_there(weather: VisitWeather | None) -> Fact:
    """Such as 'usually 14 to 25 °F, rain or snow: about 1 in 4, snow: about 1 in 5'.

    Args:
        weather: of one visit; None where nobody knows.
    """
    if weather is None:
        return fact("weather-not-known")
    snow = weather.day.snow or 0
    return fact(
        "weather-there",
        known=_how_known(weather.forecast),
        there=Temperatures(weather.low, weather.high, weather.degrees),
        felt=weather.feels_like,
        differs=(
            abs(weather.felt_low - weather.low) > _MILD_DEGREES
            or weather.felt_high - weather.high > _MILD_DEGREES
        ),
        wet=Chance(weather.day.wet),
        snow=Chance(snow),
        may_snow=snow >= _WORTH_TELLING,
    )


def weather_in_short(weather: VisitWeather | None) -> Fact:
    """In a few words, such as '14 to 25 °F, wet: about 1 in 4'."""
    if weather is None:
        return fact("weather-not-known")
    there = Temperatures(weather.low, weather.high, weather.degrees)
    return fact("weather-in-short", there=there, wet=Chance(weather.day.wet))


def _how_known(told: ForecastDay | None) -> str:
    """Whether temperatures are the usual ones, forecast, or typed in."""
    if told is None or (told.low is None and told.high is None):
        return "usual"
    return "forecast" if told.service else "typed"


def barred(weather: VisitWeather, household: Household) -> Fact:
    """Why nobody goes there that day."""
    habits = household.habits
    limits = tuple(
        fact(code, felt=limit.replace(" ", " °"))
        for code, limit in (
            ("outing-never-below", habits.never_outdoors_below),
            ("outing-never-above", habits.never_outdoors_above),
        )
        if limit is not None
    )
    return fact("outing-barred", felt=weather.feels_like, known=_how_known(weather.forecast), limits=limits)


def weather_source(weather: VisitWeather) -> Fact:
    """Where the figures come from, and of a forecast from when it is."""
    told, source = weather.forecast, weather.source.text
    if told is None:
        return fact("weather-usual-from", source=source)
    words = told.words if told.service else ""
    day = told.known_at.date()
    return fact(
        "weather-forecast-from", source=source, day=day, at=told.known_at, words=words, said=bool(words)
    )


def forecast_age(told: ForecastDay, now: datetime) -> Fact:
    """How old a forecast is, such as '3 h old'.

    Args:
        told: the forecast.
        now: zone-aware.
    """
    age = max(timedelta(0), now - told.known_at)
    if age < timedelta(minutes=1):
        return fact("weather-just-now")
    return fact("weather-days-old", days=age.days) if age.days >= 2 else fact("weather-old", age=age)


def weather_notes(weather: VisitWeather | None, *, asked: bool, outdoors: bool) -> Iterator[Fact]:
    """What the parent should know of the weather.

    Args:
        weather: of one visit; None where nobody knows.
        asked: whether the weather matters to whoever asks.
        outdoors: whether any of the visit is outdoors.
    """
    if weather is not None:
        yield fact("weather-note", there=weather_there(weather))
        if weather.weighs.amount:
            yield fact("weather-weighs", weighs=weather.weighs, half=weather.outdoors < 1)
        yield weather_source(weather)
        if weather.source.credit:
            yield fact("weather-credit", credit=weather.source.credit)
    elif asked and outdoors:
        yield fact("weather-counts-for-nothing")
