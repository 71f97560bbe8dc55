"""Lateness by plain loops over every delay, to hold the search's tables against."""

from tripplan.planning.day.delays import Delay, longer_than_likely
from tripplan.planning.travel.drive import Way


def ends(way: Way, off: Delay, start: int) -> list[tuple[int, float]]:
    """When a way may end that is planned to begin at a minute, each minute with its chance."""
    found: dict[int, float] = {}
    for late, chance in zip(off.minutes.tolist(), off.chances.tolist(), strict=True):
        leg = way.at(start + late)
        punctual = start + late + leg.minutes
        change = longer_than_likely(leg.drive.minutes)
        for longer, likely in zip(change.minutes.tolist(), change.chances.tolist(), strict=True):
            found[punctual + longer] = found.get(punctual + longer, 0.0) + chance * likely
    return sorted(found.items())


def thousandths_after(arrivals: list[tuple[int, float]], due: int) -> int:
    """The chance of arriving after a minute, in whole thousandths."""
    return int(1000 * sum(chance for minute, chance in arrivals if minute > due) + 0.5)


def tenths_after(arrivals: list[tuple[int, float]], due: int) -> int:
    """How much later than a minute one arrives on average, in whole tenths of a minute."""
    return int(10 * sum(chance * (minute - due) for minute, chance in arrivals if minute > due) + 0.5)
