"""The best choice of one day in each of many kinds of weather, the choices being weighed but once."""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from tripplan.planning.day.times.hourly_weather import HourlyWeather
from tripplan.planning.day.times.minutes import Minutes
from tripplan.planning.day.weighing.latest_start import IMPOSSIBLE, Preference, Spot


def best_in_weather(
    rank: Minutes,
    times: tuple[Minutes, Minutes, Minutes],
    weather: HourlyWeather,
    part: int,
    preference: Preference,
) -> Iterator[Spot | None]:
    """The best choice of a day in each kind of weather, as if each had been weighed with it.

    Weather never makes a choice lighter. So whoever leaves later than somebody who weighs no more is never
    the best, and neither is who weighs more without weather than the lightest choice does with it.

    Args:
        rank: what each choice weighs without weather, of shape (departures, leaving times); not all of them
            impossible.
        times: departures of shape (departures,), being let in of shape (departures, 1) or that of the rank,
            and leaving times of shape (leaving times,) [min].
        weather: by the hour.
        part: what one of the parts in which weather is counted weighs in a rank.
        preference: which departure is best.

    Returns:
        For each kind of weather which departure and which leaving time; None where nobody may be outdoors at
        any hour that would do.
    """
    depart, enter, leave = times
    rows, columns = _worth_weighing(rank, times, weather, part, preference.apart)
    begins = np.flatnonzero(np.diff(rows, prepend=-1))
    of_departure = np.repeat(np.arange(len(begins)), np.diff(begins, append=len(rows)))
    kinds = np.arange(len(weather))[:, None]
    here = rows, columns if enter.shape[1] > 1 else 0
    parts = weather.weighs_until(kinds, leave)[:, columns]
    if enter.shape[1] > 1:
        parts -= weather.weighs_until(kinds, enter[here])
    else:
        parts -= weather.weighs_until(kinds, enter[rows[begins], 0])[:, of_departure]
    weighs = rank[rows, columns] + parts * part
    if weather.bars_any:
        weighs = np.where(weather.bars(kinds, enter[here], leave[columns]), IMPOSSIBLE, weighs)
    least = np.minimum.reduceat(weighs, begins, axis=1)
    best = preference.best_and_lightest(least, depart[rows[begins]][None])[0]
    least_of_best = least[np.arange(len(least)), best]
    at = ((weighs == least_of_best[:, None]) & (of_departure == best[:, None])).argmax(axis=1)
    spots = zip(rows[at].tolist(), columns[at].tolist(), least_of_best.tolist(), strict=True)
    return (None if weight == IMPOSSIBLE else (row, column) for row, column, weight in spots)


def _worth_weighing(
    rank: Minutes,
    times: tuple[Minutes, Minutes, Minutes],
    weather: HourlyWeather,
    part: int,
    apart: int,
) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """The choices that may be the best in some weather, by departure and leaving time."""
    _, enter, leave = times
    worth = rank < IMPOSSIBLE
    if enter.shape[1] == 1:
        worth[:, 1:] &= rank[:, 1:] < np.minimum.accumulate(rank, axis=1)[:, :-1]
    row, column = divmod(int(rank.argmin()), rank.shape[1])
    visit = enter[row, min(column, enter.shape[1] - 1)], leave[column]
    kinds = np.arange(len(weather))
    if not weather.bars(kinds, *visit).any():
        worth &= rank <= rank[row, column] + int(weather.weighs(kinds, *visit).max()) * part + apart
    rows, columns = np.nonzero(worth)
    return rows, columns
