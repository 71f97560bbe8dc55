"""The usual weather of any point near a weather station, out of the table that comes with the program.

Sources and licenses: `SOURCES.md`.
"""

from dataclasses import dataclass, fields
from functools import cached_property, lru_cache
from importlib.resources import files

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.where import Point
from tripplan.planning.climate.climate import UsualMonths
from tripplan.planning.climate.days_of_year import Floats
from tripplan.values.ranges import Origin, Source

COOLING = 0.0055
"""How much colder it is a meter higher up [°C]; common practice, no source."""
FARTHEST_KM = 80.0
"""No station tells of a place farther away [km]: beyond, highs and lows of a place without a station are off
by 1.3 and 1.5 °C on average, twice and one and a half times as much as nearer by."""
_AROUND = 8
"""So many stations around a place are averaged [-]: by leave-one-out, monthly highs and lows are 0.62 and
0.92 °C off on average and wet days 0.89, against 0.78, 1.15 and 1.11 from the nearest alone."""
_SOFTENING_KM = 5.0
"""Added to every distance before its square weighs [km]: a station next door does not decide alone."""
_EARTH_KM = 6371.0

HIGH_OFF, LOW_OFF, WET_DAYS_OFF = 1.3, 2.0, 1.9
"""In nine of ten months a place without a station is off by less: highs and lows [°C], wet days [days]; by
leave-one-out, see `tests/published/make_climate_table.py`."""
BETWEEN_YEARS = 2.1
"""Standard deviation of a month's mean temperature from one year to another [°C]: what the difference between
the means of 2006-2020 and 1981-2010 at 254 stations implies, years being independent of each other."""


@dataclass(frozen=True, eq=False)
class Stations:
    """Weather stations, one entry or row of twelve months each.

    Attributes:
        name: as the table of the weather service has it.
        direction: unit vectors from the middle of the Earth, of shape (stations, 3).
        height: above sea level [m].
        high, low: mean daily extremes [°C].
        wet: days with rain or snow [days a month].
        snow: days with snowfall [days a month]; negative where nobody counted.
        free: whether no credit need be given.
    """

    name: NDArray[np.str_]
    direction: Floats
    height: Floats
    high: Floats
    low: Floats
    wet: Floats
    snow: Floats
    free: NDArray[np.bool_]

    @property
    def counts_snow(self) -> NDArray[np.bool_]:
        """Which of them count days with snowfall."""
        counts: NDArray[np.bool_] = self.snow[:, 0] >= 0
        return counts

    @cached_property
    def counting_snow(self) -> NDArray[np.intp]:
        """The numbers of those."""
        return np.flatnonzero(self.counts_snow)

    def point(self, number: int) -> Point:
        """Where one of them stands."""
        x, y, z = self.direction[number]
        return Point(float(np.degrees(np.arcsin(z))), float(np.degrees(np.arctan2(y, x))))

    def without(self, left_out: NDArray[np.bool_]) -> "Stations":
        """The same without some of them."""
        stay = ~left_out
        return Stations(**{one.name: getattr(self, one.name)[stay] for one in fields(self)})

    def km_from(self, point: Point) -> Floats:
        """How far each of them is from a point, over a round Earth [km]."""
        return _km(self.direction, direction_of(point.latitude, point.longitude))

    def months_at(self, point: Point, height: float | None = None) -> UsualMonths | None:
        """What the months are usually like at a point; None where no station is near.

        Args:
            point: where.
            height: above sea level [m]; when left out, that of the stations around it.
        """
        found = self._around(point, None)
        if found is None:
            return None
        around, weight, km = found
        up = 0.0 if height is None else height - float(weight @ self.height[around])
        snowy = self._around(point, self.counting_snow)
        return UsualMonths(
            high=weight @ self.high[around] - COOLING * up,
            low=weight @ self.low[around] - COOLING * up,
            wet=weight @ self.wet[around],
            snow=None if snowy is None else snowy[1] @ self.snow[snowy[0]],
            source=self._source(around, float(km[0])),
        )

    def _around(
        self, point: Point, among: NDArray[np.intp] | None
    ) -> tuple[NDArray[np.intp], Floats, Floats] | None:
        """The stations nearest to a point, their shares and distances [km]; None where none is near."""
        directions = self.direction if among is None else self.direction[among]
        if not len(directions):
            return None
        here = direction_of(point.latitude, point.longitude)
        count = min(_AROUND, len(directions))
        nearest = np.argpartition(-(directions @ here), count - 1)[:count]
        km = _km(directions[nearest], here)
        order = np.argsort(km)
        nearest, km = nearest[order], km[order]
        if km[0] > FARTHEST_KM:
            return None
        weight = 1 / (km + _SOFTENING_KM) ** 2
        return nearest if among is None else among[nearest], weight / weight.sum(), km

    def _source(self, around: NDArray[np.intp], km: float) -> Source:
        nearest = int(around[0])
        told = f"{around.size} weather stations around it, the nearest {self.name[nearest]}, {km:.0f} km away"
        credit = "" if self.free[around].all() else "weather: KNMI and Met Éireann, CC BY 4.0"
        return Source(Origin.PUBLISHED, told, credit)


def direction_of(latitude: Floats | float, longitude: Floats | float) -> Floats:
    """Unit vectors from the middle of the Earth to points, along the last axis."""
    north, east = np.radians(latitude), np.radians(longitude)
    return np.stack([np.cos(north) * np.cos(east), np.cos(north) * np.sin(east), np.sin(north)], axis=-1)


def _km(directions: Floats, here: Floats) -> Floats:
    """How far points are from one, over a round Earth [km]."""
    km: Floats = 2 * _EARTH_KM * np.arcsin(np.minimum(np.linalg.norm(directions - here, axis=1) / 2, 1))
    return km


@lru_cache(maxsize=1)
def stations() -> Stations:
    """Those that come with the program; unpacked when first asked for."""
    with files(__package__).joinpath("stations.npz").open("rb") as packed, np.load(packed) as table:
        tenths = {name: table[name].astype(np.float64) / 10 for name in ("high", "low", "wet", "snow")}
        return Stations(
            name=table["name"],
            direction=direction_of(table["latitude"].astype(float), table["longitude"].astype(float)),
            height=table["height"].astype(np.float64),
            free=table["free"],
            **tenths,
        )
