"""What the weather is usually like at a place: by its card, by stations around it, or by the household."""

import numpy as np

from tripplan.documents.family.habits import Habits
from tripplan.documents.family.household import Household
from tripplan.documents.places.place import Place
from tripplan.documents.temperature import in_celsius
from tripplan.documents.usual_weather import UsualWeather
from tripplan.planning.climate.climate import Climate, UsualMonths
from tripplan.planning.climate.days_of_year import Floats
from tripplan.planning.climate.outdoors import SHARE, OutdoorLimits, OutdoorYear
from tripplan.planning.climate.stations import FARTHEST_KM, Stations
from tripplan.planning.travel.distance import geodesic_km
from tripplan.values.ranges import Origin, Source
from tripplan.values.units import celsius


def climate_for(stations: Stations | None, place: Place, household: Household) -> Climate | None:
    """What the weather is usually like at a place; None where nobody knows, or where it does not matter.

    Args:
        stations: those that come with the program; None where the weather does not matter.
        place: what its card says wins.
        household: what it says holds near home, where no station is near.
    """
    if stations is None:
        return None
    point = place.where.point
    own, near_home = place.usual_weather, household.usual_weather
    if own is not None:
        months: UsualMonths | None = _typed(own, "the place card")
    else:
        months = stations.months_at(point, place.height_m)
        if (
            months is None
            and near_home is not None
            and geodesic_km(point, household.home.point) <= FARTHEST_KM
        ):
            months = _typed(near_home, "the household")
    return None if months is None else Climate.of_months(point.latitude, months)


def outdoor_year(climate: Climate | None, place: Place, habits: Habits) -> OutdoorYear | None:
    """What the weather means for time outdoors at a place; None where it is not known or all is indoors."""
    share = SHARE[place.visit.indoors]
    if climate is None or not share:
        return None
    below, above = (
        None if limit is None else in_celsius(limit)
        for limit in (habits.never_outdoors_below, habits.never_outdoors_above)
    )
    return OutdoorYear(climate, place.where.point.longitude, share, OutdoorLimits(below, above))


def _typed(weather: UsualWeather, where: str) -> UsualMonths:
    def temperatures(months: tuple[object, ...]) -> Floats:
        degrees = np.array([float(str(one)) for one in months])
        return celsius(degrees) if weather.degrees == "F" else degrees  # type: ignore[arg-type, return-value]

    return UsualMonths(
        high=temperatures(weather.highs),
        low=temperatures(weather.lows),
        wet=np.array([float(one) for one in weather.wet_days]),
        snow=np.array([float(one) for one in weather.snow_days]) if weather.snow_days else None,
        source=Source(Origin.PARENT, weather.source or f"the twelve months written on {where}"),
    )
