"""What the weather is usually like during one visit, or is forecast to be; what it weighs; in words."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal

import numpy as np

from tripplan.documents.family.household import Household
from tripplan.documents.places.forecast import ForecastDay
from tripplan.documents.usual_weather import Degrees
from tripplan.language import wording
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
from tripplan.values.units import Temperatures

NOT_KNOWN = "not known there"
_MILD_DEGREES = 2.0


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


def weather_sentence(weather: VisitWeather | None) -> str:
    """Such as 'usually 14 to 25 °F, rain or snow about 1 day in 4, snow about 1 day in 5'.

    Of a forecast such as 'forecast 48 to 55 °F, rain or snow: chance about 7 in 10'.

    Args:
        weather: of one visit; None where nobody knows.
    """
    if weather is None:
        return NOT_KNOWN
    degrees, told = weather.degrees, weather.forecast
    said = [f"{_how_known(told)} {wording.temperatures(weather.low, weather.high, degrees)}"]
    if (
        abs(weather.felt_low - weather.low) > _MILD_DEGREES
        or weather.felt_high - weather.high > _MILD_DEGREES
    ):
        said.append(f"feels like {wording.temperatures(weather.felt_low, weather.felt_high, degrees)}")
    chance = _days if told is None or told.wet is None else wording.odds
    said.append(f"rain or snow {chance(weather.day.wet)}")
    if weather.day.snow is not None and weather.day.snow >= 0.02:
        said.append(f"snow {chance(weather.day.snow)}")
    return ", ".join(said)


def weather_in_short(weather: VisitWeather | None) -> str:
    """In a few words, such as '14 to 25 °F, wet about 1 in 4'; 'not known' where nobody knows."""
    if weather is None:
        return "not known"
    temperatures = wording.temperatures(weather.low, weather.high, weather.degrees)
    return f"{temperatures}, wet {wording.odds(weather.day.wet)}"


def _how_known(told: ForecastDay | None) -> str:
    """Whether temperatures are the usual ones."""
    if told is None or (told.low is None and told.high is None):
        return "usually"
    return "forecast" if told.service else "by your word"


def _days(chance: float) -> str:
    """Such as 'about 1 day in 5' or 'about 2 days in 9'."""
    odds = wording.odds(chance)
    return odds.replace(" in ", " day in " if odds.startswith("about 1 in ") else " days in ")


def weighs_sentence(weather: VisitWeather) -> str:
    """What being outdoors in it weighs, such as 'being outdoors in it weighs $12.00'; empty for nothing."""
    if not weather.weighs.amount:
        return ""
    where = "outdoors" if weather.outdoors == 1 else "outdoors for half of the visit"
    return f"being {where} in it weighs {wording.money(weather.weighs)}"


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
    felt = Temperatures(weather.felt_low, weather.felt_high, weather.degrees)
    return fact("outing-barred", felt=felt, forecast=weather.forecast is not None, limits=limits)


def known_sentence(weather: VisitWeather) -> str:
    """Where the figures come from, and of a forecast from when it is."""
    told = weather.forecast
    if told is None:
        return f"Usual figures from {weather.source.text}; the day itself may be far from them."
    at = told.known_at
    said = f"{wording.capital(weather.source.text)}, as of {wording.day(at.date())}, {wording.clock(at)}"
    return f"{said}{f': “{told.words}”' if told.words and told.service else ''}."


def age_sentence(told: ForecastDay, now: datetime) -> str:
    """How old a forecast is, such as '3 h old'.

    Args:
        told: the forecast.
        now: zone-aware.
    """
    minutes = max(0, (now - told.known_at) // timedelta(minutes=1))
    if minutes < 1:
        return "just now"
    days = minutes // (24 * 60)
    return f"{wording.minutes(minutes) if days < 2 else f'{days} days'} old"


def weather_notes(weather: VisitWeather | None, *, asked: bool, outdoors: bool) -> Iterator[str]:
    """What the parent should know of the weather, in whole sentences.

    Args:
        weather: of one visit; None where nobody knows.
        asked: whether the weather matters to whoever asks.
        outdoors: whether any of the visit is outdoors.
    """
    if weather is not None:
        weighs = weighs_sentence(weather)
        yield (
            f"Weather at that time: {weather_sentence(weather)}{f'; {weighs}' if weighs else ''}. "
            f"{known_sentence(weather)}"
        )
        if weather.source.credit:
            yield f"{weather.source.credit}."
    elif asked and outdoors:
        yield (
            "What the weather is usually like there is not known, so it counts for nothing; the place's card "
            "can hold its twelve months."
        )
