"""The hard limits of a day in minutes."""

from dataclasses import dataclass

from tripplan.planning.day.times.hourly_money import HourlyMoney
from tripplan.planning.day.times.hourly_weather import HourlyWeather
from tripplan.planning.day.times.legs import LegTimes
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.shapes import DayQuestion

NEVER = 10**5
"""Later than any minute of the day [min]."""
LONGEST_DAY = 3 * 24 * 60
"""Later than any visit that begins that day can end at home [min]."""

Engagements = tuple[tuple[int, int], ...]
"""Times that a day may not touch, as (start, end) in minutes since midnight at home [min]."""


@dataclass(frozen=True)
class OpeningMinutes:
    """One span of opening in minutes since midnight at home.

    Attributes:
        opens: the first minute inside.
        closes: by when everybody is out.
        last_entry: the last minute to be let in.
        entries: the only minutes people are let in; None where any will do.
    """

    opens: int
    closes: int
    last_entry: int
    entries: tuple[int, ...] | None


@dataclass(frozen=True)
class Limits:
    """What may not be bent, in minutes since midnight at home.

    Attributes:
        earliest: nobody leaves before.
        home_by: everybody is home by.
        shortest: a shorter visit is not allowed [min].
        busy: the engagements of the day.
        opened: when the place can be visited.
        there: from leaving home to being at the place.
        back: from leaving the place to being home.
        grid: departures and leaving times are tried on this grid [min].
        left: the settled departure of a day that has begun; None while all is open.
        not_before: nobody leaves the place before.
        most_driving: no more driving than this, both ways together [min].
        money: what the outing costs by the hour, for the hours at which nobody lets the party in.
        weather: what it is like by the hour, for the hours at which nobody may be outdoors; None where there
            are no such hours.
    """

    earliest: int
    home_by: int
    shortest: int
    busy: Engagements
    opened: tuple[OpeningMinutes, ...]
    there: LegTimes
    back: LegTimes
    grid: int
    left: int | None = None
    not_before: int = 0
    most_driving: int = NEVER
    money: HourlyMoney | None = None
    weather: HourlyWeather | None = None

    @classmethod
    def of(cls, question: DayQuestion, minutes: DayMinutes) -> "Limits":
        """The limits that a question sets."""
        earliest = minutes.by_clock(question.habits.earliest_departure)
        if question.last_wakes is not None:
            earliest = max(earliest, minutes.by_clock(question.last_wakes) + question.ready_minutes)
        most_driving = NEVER if question.begun is not None else question.most_driving_minutes
        entries = tuple(sorted(minutes.rounded_up(moment) for moment in question.hours.entry_times))
        opened: list[OpeningMinutes] = []
        for span in question.hours.spans:
            opens, last_entry = minutes.rounded_up(span.opens), minutes.rounded_down(span.last_entry)
            within = tuple(entry for entry in entries if opens <= entry <= last_entry) if entries else None
            opened.append(OpeningMinutes(opens, minutes.rounded_down(span.closes), last_entry, within))
        return cls(
            earliest=earliest,
            home_by=minutes.home_by(question.habits),
            shortest=max(question.shortest_minutes, 1),
            busy=tuple(
                (minutes.rounded_down(busy.start), minutes.rounded_up(busy.end))
                for busy in question.busy
                if busy.meets(minutes.midnight, minutes.moment(LONGEST_DAY, question.home_zone))
            ),
            opened=tuple(opened),
            there=LegTimes(question.way_there),
            back=LegTimes(question.way_home),
            grid=question.grid_minutes,
            left=None if question.begun is None else minutes.rounded_down(question.begun.left_home),
            not_before=0 if question.begun is None else minutes.rounded_up(question.begun.now),
            most_driving=NEVER if most_driving is None else most_driving,
            money=question.money,
            weather=question.weather if question.weather and question.weather.bars_any else None,
        )


def keeps_clear(depart: int, home: int, engagements: Engagements) -> bool:
    """Whether a party that is out between two minutes misses no engagement."""
    return all(home <= start or depart >= end for start, end in engagements)
