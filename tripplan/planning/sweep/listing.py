"""Days of a table written out, one row each, for lists and files."""

from collections.abc import Iterator
from datetime import date, datetime

import numpy as np

from tripplan.planning.sweep.dates import Numbers
from tripplan.planning.sweep.table import DayTable
from tripplan.values.money import minor_digits

HEADINGS = (
    "day",
    "weekday",
    "place",
    "in all",
    "low",
    "high",
    "something unknown",
    "cost plus hassle",
    "currency",
    "leave",
    "back",
    "at the place [min]",
    "driving [min]",
    "driving in the dark [min]",
    "nap kept [min]",
    "nap lost [min]",
    "full house [%]",
    "school is in, known or likely",
)
"""What `day_rows` tells of each day."""


def day_rows(table: DayTable, spots: Numbers) -> Iterator[tuple[date | str | float | int, ...]]:
    """Days that can be done, one row each, as plain numbers and texts.

    Args:
        table: the days.
        spots: rows and columns of those wanted, as `DayTable.ranked` gives them.
    """
    currency = table.family.household.currency
    coin = 10 ** minor_digits(currency)
    for row, column in spots.tolist():
        day = table.day(column)
        yield (
            day,
            f"{day:%a}",
            table.places[row].name,
            int(table.likely[row, column]) / coin,
            int(table.low[row, column]) / coin,
            int(table.high[row, column]) / coin,
            "yes" if table.at_least[row, column] else "no",
            int(table.felt[row, column]) / coin,
            currency,
            _clock(table.at_home(column, int(table.leave_home[row, column]))),
            _clock(table.at_home(column, int(table.home[row, column]))),
            int(table.visit[row, column]),
            int(table.in_car[row, column]),
            int(table.dark_there[row, column]) + int(table.dark_back[row, column]),
            int(table.nap_kept[row, column]),
            int(table.nap_lost[row, column]),
            round(100 * float(table.chance[row, column]), 1),
            "yes" if table.in_term[row, column] else "no",
        )


def each_place_first(ranked: Numbers) -> Numbers:
    """Days in the order in which a list tells them: the best of each place, then the second of each, ...

    Args:
        ranked: rows and columns, the best first, as `DayTable.ranked` gives them.
    """
    turn = np.zeros(len(ranked), dtype=np.int64)
    for row in np.unique(ranked[:, 0]):
        of_place = ranked[:, 0] == row
        turn[of_place] = np.arange(of_place.sum())
    in_turn: Numbers = ranked[np.argsort(turn, kind="stable")]
    return in_turn


def _clock(moment: datetime) -> str:
    return f"{moment:%H:%M}"
