"""A plain walk through every minute of every plan of a day, to hold the search against."""

from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from decimal import Decimal

from tripplan.planning.day import DayQuestion
from tripplan.planning.household import Nap
from tripplan.planning.travel.drive import Leg, Rest, Stop

MINUTE = timedelta(minutes=1)


@dataclass(frozen=True)
class Walked:
    """One plan as the plain walk sees it, costs in sixtieths of the currency's unit.

    `kept` is the nap kept by all children, `stay` the time inside up to a comfortable stay, in minutes.
    """

    leave_home: datetime
    leave_place: datetime
    waited: int
    sixtieths: Decimal
    kept: int
    stay: int


def whereabouts(leg: Leg, start: int, name: str) -> list[tuple[int, str]]:
    """What every minute of a leg is spent on; two drives with a rest or stop between them have two names."""
    minutes = ["load"] * leg.load_up_minutes
    halts: list[Rest | Stop] = [*leg.stops, *leg.rests]
    for driven in range(leg.drive_minutes + 1):
        for halt in halts:
            if halt.after_minutes == driven:
                minutes += ["halt"] * halt.minutes
        stretch = sum(halt.after_minutes <= driven for halt in halts)
        minutes += [f"car {name} {stretch}"] * (driven < leg.drive_minutes)
    minutes += ["unload"] * leg.unload_minutes
    return list(enumerate(minutes, start))


def slept(nap: Nap, begins: int, places: dict[int, str], pushchair: bool) -> int:
    """The longest sleep of a nap that begins at a minute, walked minute by minute."""
    best = 0
    settled_for, asleep, where_before = 0, 0, None
    # Settling may begin before the nap does, so the walk starts hours earlier.
    for minute in range(begins - 600, begins + nap.minutes):
        where = places.get(minute, "home")
        settled_for = settled_for + 1 if where == where_before else 1
        asleep = asleep if where == where_before else 0
        where_before = where
        needs = 0 if where == "home" else nap.falls_asleep_minutes
        can = (
            where == "home"
            or (where.startswith("car") and nap.in_car)
            or (where.startswith("inside") and pushchair and nap.in_pushchair)
        )
        if can and settled_for > needs and minute >= begins:
            asleep += 1
            best = max(best, asleep)
    return best if best >= min(nap.shortest_minutes, nap.minutes) else 0


def walk(question: DayQuestion) -> list[Walked]:
    """Every plan of the day that keeps the limits, weighed without arrays or formulas."""
    midnight = datetime.combine(question.day, time(0), question.home_zone).astimezone(UTC)

    def minute(moment: datetime) -> int:
        return int((moment - midnight) / MINUTE)

    def clock(value: time) -> int:
        return minute(datetime.combine(question.day, value, question.home_zone))

    habits, worth = question.habits, question.worth
    there, back = question.way_there, question.way_home
    found = []
    departures = list(range(0, 26 * 60, question.grid_minutes))
    if question.begun is not None:
        departures = [minute(question.begun.left_home)]
    for depart in departures:
        if question.begun is None and depart < clock(habits.earliest_departure):
            continue
        out = there.at(depart)
        arrive = depart + out.minutes
        for leave in range(0, 26 * 60, question.grid_minutes):
            home = leave + back.at(leave).minutes
            if home > clock(habits.home_by):
                continue
            if question.begun is not None and leave < minute(question.begun.now):
                continue
            if any(depart < minute(b.end) and minute(b.start) < home for b in question.busy):
                continue
            entries = [
                at
                for span in question.hours.spans
                for at in range(minute(span.opens), minute(span.last_entry) + 1)
                if at >= arrive
                and leave <= minute(span.closes)
                and (not question.hours.entry_times or at in map(minute, question.hours.entry_times))
            ]
            if not entries or leave - min(entries) < max(question.shortest_minutes, 1):
                continue
            enter = min(entries)
            places = dict(whereabouts(out, depart, "there") + whereabouts(back.at(leave), leave, "home"))
            places |= dict.fromkeys(range(arrive, leave), "inside before lunch")
            lunch, length = clock(habits.lunch), min(habits.lunch_minutes, leave - enter)
            if length and depart < lunch + habits.lunch_minutes and home > lunch + 30:
                begins = max(enter, min(lunch, leave - length))
                places |= dict.fromkeys(range(begins, begins + length), "lunch")
                places |= dict.fromkeys(range(begins + length, leave), "inside after lunch")
            lost = kept = 0
            for napper in question.nappers:
                for nap in napper.naps:
                    usual = clock(nap.start)
                    latest = usual + nap.slack_minutes
                    if napper.latest_end is not None:
                        latest = min(latest, max(usual, clock(napper.latest_end) - nap.minutes))
                    shifts = range(usual - nap.slack_minutes, latest + 1)
                    longest = max(slept(nap, begins, places, question.pushchairs) for begins in shifts)
                    kept += longest
                    lost += nap.minutes - longest
            car = sum(where.startswith("car") for where in places.values()) + enter - arrive
            missed = max(0, question.comfortable_minutes - (leave - enter))
            found.append(
                Walked(
                    midnight + depart * MINUTE,
                    midnight + leave * MINUTE,
                    enter - arrive,
                    lost * worth.lost_nap_hour + car * worth.hour_in_car + missed * worth.missed_hour_there,
                    kept,
                    question.comfortable_minutes - missed,
                )
            )
    return found
