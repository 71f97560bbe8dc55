"""Lateness by plain loops over every delay, to hold the search's tables against."""

from functools import lru_cache

from tripplan.planning.day.weighing.delays import Delay, longer_than_likely
from tripplan.planning.travel.drive import Journey
from tripplan.values.ranges import Range


def ends(way: Journey, off: Delay, start: int) -> list[tuple[int, float]]:
    """When a way may end that is planned to begin at a minute, each minute with its chance."""
    found: dict[int, float] = {}
    for late, chance in each_minute(off):
        leg = way.at(start + late)
        punctual = start + late + leg.minutes
        for longer, likely in changes(leg.drive.minutes):
            found[punctual + longer] = found.get(punctual + longer, 0.0) + chance * likely
    return sorted(found.items())


def each_minute(delay: Delay) -> list[tuple[int, float]]:
    """A delay minute by minute, each with its chance."""
    return list(zip(delay.minutes.tolist(), delay.chances.tolist(), strict=True))


@lru_cache
def changes(drive: Range) -> list[tuple[int, float]]:
    """How much longer than likely a drive takes, likewise."""
    return each_minute(longer_than_likely(drive))


def thousandths_after(arrivals: list[tuple[int, float]], due: int) -> int:
    """The chance of arriving after a minute, in whole thousandths."""
    return int(1000 * sum(chance for minute, chance in arrivals if minute > due) + 0.5)


def tenths_after(arrivals: list[tuple[int, float]], due: int) -> int:
    """How much later than a minute one arrives on average, in whole tenths of a minute."""
    return int(10 * sum(chance * (minute - due) for minute, chance in arrivals if minute > due) + 0.5)
