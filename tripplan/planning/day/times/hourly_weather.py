"""What being outdoors weighs by the hour: a frosty morning, a hot noon, rain."""

from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.climate.outdoors import STEP_MINUTES
from tripplan.planning.day.times.minutes import Minutes

_DAY_MINUTES = 24 * 60
PARTS = 10**4
"""In so many parts of the currency's main unit it is counted: whole ones a minute, which add up exactly."""

Kinds = NDArray[np.integer[Any]] | int
"""Which kinds of weather, by their numbers."""


@dataclass(frozen=True, eq=False)
class HourlyWeather:
    """What being at a place weighs by its weather, in some kinds of weather; every day is like the next.

    Attributes:
        until: what being there from midnight at home until each half hour weighs, share of the visit and age
            of the youngest counted in; shape (kinds, half hours + 1) [`PARTS`].
        barred: how many of the half hours until then nobody may spend there; likewise.
    """

    until: NDArray[np.int64]
    barred: NDArray[np.int64]

    def __len__(self) -> int:
        """How many kinds of weather there are."""
        return len(self.until)

    def of(self, kinds: NDArray[np.int64]) -> "HourlyWeather":
        """Some of the kinds."""
        return HourlyWeather(self.until[kinds], self.barred[kinds])

    @cached_property
    def bars_any(self) -> bool:
        """Whether there is a half hour that nobody may spend there."""
        return bool(self.barred.any())

    @classmethod
    def of_half_hours(cls, weight: NDArray[np.float64], barred: NDArray[np.bool_]) -> "HourlyWeather":
        """From what a minute weighs in each half hour, and whether nobody may be there.

        Args:
            weight: of shape (kinds, half hours) [main unit of the currency].
            barred: likewise.
        """
        before = ((0, 0), (1, 0))
        by_minute = np.rint(weight * PARTS).astype(np.int64)
        until = np.pad((by_minute * STEP_MINUTES).cumsum(axis=1), before)
        return cls(until, np.pad(barred.cumsum(axis=1), before))

    def without_bars(self) -> "HourlyWeather":
        """The same where everybody may be there at every hour."""
        return replace(self, barred=np.zeros_like(self.barred))

    @property
    def most(self) -> int:
        """More than any visit that begins and ends within two days weighs [`PARTS`]."""
        return 2 * int(self.until.max()) + 1

    def weighs(self, kind: Kinds, enter: Minutes, leave: Minutes) -> NDArray[np.int64]:
        """What visits weigh, each in its kind of weather; all of shapes that fit [`PARTS`]."""
        weighs: NDArray[np.int64] = self.weighs_until(kind, leave) - self.weighs_until(kind, enter)
        return weighs

    def weighs_until(self, kind: Kinds, minutes: Minutes) -> NDArray[np.int64]:
        """What being there from midnight until some minutes weighs, likewise [`PARTS`]."""
        days, minute = np.divmod(minutes, _DAY_MINUTES)
        step, beyond = np.divmod(minute, STEP_MINUTES)
        until: NDArray[np.int64] = (
            self.until[kind, -1] * days + self.until[kind, step] + self._by_minute[kind, step] * beyond
        )
        return until

    @cached_property
    def _by_minute(self) -> NDArray[np.int64]:
        by_minute: NDArray[np.int64] = np.diff(self.until, axis=1) // STEP_MINUTES
        return by_minute

    def bars(self, kind: Kinds, enter: Minutes, leave: Minutes) -> NDArray[np.bool_]:
        """Which visits nobody may make, likewise."""
        bars: NDArray[np.bool_] = self._barred_until(kind, leave + STEP_MINUTES - 1) > self._barred_until(
            kind, enter
        )
        return bars

    def _barred_until(self, kind: Kinds, minutes: Minutes) -> NDArray[np.int64]:
        days, minute = np.divmod(minutes, _DAY_MINUTES)
        until: NDArray[np.int64] = self.barred[kind, -1] * days + self.barred[kind, minute // STEP_MINUTES]
        return until
