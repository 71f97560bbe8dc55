"""A plain walk through every minute of every plan of a day, to hold the search against."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from decimal import Decimal
from itertools import groupby

import numpy as np

from tests.planning.day.plain_lateness import ends, tenths_after, thousandths_after
from tripplan.documents.family.member import Nap
from tripplan.planning.day import DayQuestion
from tripplan.planning.day.times.hourly_money import HourlyMoney
from tripplan.planning.day.weighing.delays import Delay, getting_off
from tripplan.planning.travel.drive import Leg, Rest, Stop

MINUTE = timedelta(minutes=1)


@dataclass(frozen=True)
class Walked:
    """One plan as the plain walk sees it, money and nuisances together in sixtieths of the currency's unit.

    `spent` is the money among them, in cents, `kept` is the nap kept by all children, `stay` the time
    inside up to a comfortable stay, in minutes, and `seen` are the minutes at which the performances
    begin that are seen.
    """

    leave_home: datetime
    leave_place: datetime
    away: int
    sixtieths: Decimal
    kept: int
    stay: int
    seen: tuple[int, ...]
    spent: int = 0


def prices_of(money: HourlyMoney, enter: int, leave: int) -> tuple[int, int] | None:
    """What an outing costs that comes and leaves at some minutes, with lunch from home and there [cents].

    None where nobody lets it in.
    """
    hours = money.hours
    entered = max(n for n, begin in enumerate(hours.begins) if begin <= enter)
    left = sum(leave > by for by in hours.leave_by)
    stayed = sum(leave - enter > stay for stay in hours.stays)
    return money.coins[(entered * (len(hours.leave_by) + 1) + left) * (len(hours.stays) + 1) + stayed]


def whereabouts(leg: Leg, start: int, name: str) -> list[tuple[int, str]]:
    """What every minute of a leg is spent on; two drives with a rest or stop between them have two names."""
    minutes = ["load"] * leg.load_up_minutes
    halts: list[Rest | Stop] = [*leg.stops, *leg.rests]
    for driven in range(leg.drive_minutes + 1):
        for halt in halts:
            if halt.after_minutes == driven:
                minutes += [f"halt {halts.index(halt)}"] * halt.minutes
        stretch = sum(halt.after_minutes <= driven for halt in halts)
        minutes += [f"car {name} {stretch}"] * (driven < leg.drive_minutes)
    minutes += [f"unload {name}"] * leg.unload_minutes
    return list(enumerate(minutes, start))


def halting(places: dict[int, str]) -> list[tuple[int, int]]:
    """When each halt of a day begins and ends."""
    minutes = sorted(minute for minute, where in places.items() if where.startswith("halt"))
    runs = groupby(minutes, key=lambda minute: (places[minute], minute - minutes.index(minute)))
    return [(run[0], run[-1] + 1) for run in (list(run) for _, run in runs)]


def earliest_nap(nap: Nap, usual: int, eats: int, eaten: int) -> int:
    """The first minute of a nap; one that usually comes after lunch never comes before it."""
    earliest = usual - nap.slack_minutes
    return earliest if usual < eats else max(earliest, min(usual, eaten))


def slept(nap: Nap, begins: int, places: dict[int, str], pushchair: bool) -> list[tuple[int, int]]:
    """Every sleep of a nap that begins at a minute, as first minute and length, walked minute by minute."""
    pushchair = pushchair and nap.in_pushchair
    found: dict[int, int] = {}
    settled_for, asleep, where_before, carried, home_again = 0, 0, "home", False, False
    # Settling may begin before the nap does, so the walk starts hours earlier.
    for minute in range(begins - 600, begins + nap.minutes):
        where = places.get(minute, "home")
        if where != where_before:
            goal = "inside" if "there" in where_before else "home"
            out_of_car = where_before.startswith("car") and where in (goal, f"unload {where_before[4:-2]}")
            into_goal = carried and where_before.startswith("unload") and where == goal
            may = nap.stays_asleep_when_moved and asleep and (goal == "home" or pushchair)
            carried = bool(may and (out_of_car or into_goal))
            asleep = asleep if carried else 0
            settled_for, home_again = 0, where == "home"
        settled_for += 1
        where_before = where
        needs = nap.falls_asleep_minutes
        if where == "home":
            needs = 15 if home_again else 0  # coats off, a bite, into bed
        can = where == "home" or (where.startswith("car") and nap.in_car) or (where == "inside" and pushchair)
        if carried or (can and settled_for > needs and minute >= begins):
            asleep += 1
            found[minute - asleep + 1] = asleep
    shortest = max(1, min(nap.shortest_minutes, nap.minutes))
    return [(first, lasts) for first, lasts in found.items() if lasts >= shortest]


def preferred(sleeps: list[tuple[int, int]], usual: int, places: dict[int, str]) -> tuple[int, int]:
    """The sleep that is meant of several: longest, elsewhere than inside, begun in the car, when usual."""

    def order(sleep: tuple[int, int]) -> tuple[int, bool, bool, int]:
        first, lasts = sleep
        whereabouts = [places.get(minute, "home") for minute in range(first, first + lasts)]
        return -lasts, "inside" in whereabouts, whereabouts[0] == "inside", abs(first - usual)

    return min(sleeps, key=order, default=(0, 0))


def meets(start: int, length: int, spans: list[tuple[int, int]]) -> bool:
    """Whether a stretch of time meets some spans."""
    return any(start < end and begin < start + length for begin, end in spans)


Performance = tuple[int, int]
"""When one performance of a show begins and ends [min]."""


def see(shows: dict[str, list[Performance]], enter: int, leave: int) -> dict[str, Performance]:
    """What a visit sees of every show."""
    seen: dict[str, Performance] = {}
    for name, performances in shows.items():
        for start, end in performances:
            if enter <= start and end <= leave and not meets(start, end - start, list(seen.values())):
                seen[name] = (start, end)
                break
    return seen


@dataclass(frozen=True)
class Visit:
    """A visit as lunch meets it: minutes of leaving home, arriving, entering, leaving and being home again.

    `halts` are begin and end of every halt on the way, `shows` those of every show that is seen.
    """

    depart: int
    arrive: int
    enter: int
    leave: int
    home: int
    halts: list[tuple[int, int]]
    shows: list[Performance]


def lunches(question: DayQuestion, lunch: int, visit: Visit) -> Iterator[tuple[str, int]]:
    """Where and when lunch could begin, every minute that is possible tried."""
    length, earliest = question.habits.lunch_minutes, lunch - 45
    for begins in range(earliest, max(lunch, visit.home) + 1):
        if begins + length <= visit.depart or begins >= visit.home:
            yield "home", begins
        if any(begins == start and end - start >= 15 for start, end in visit.halts):
            yield "car", begins
        if visit.arrive <= begins and begins + length <= visit.enter:
            yield "outside", begins
        ends = begins + length
        if visit.enter <= begins and ends <= visit.leave and not meets(begins, length, visit.shows):
            after = bool(question.hours.entry_times) or not question.eats_there
            left = visit.leave - visit.enter - length
            if (ends == visit.leave or not after) and left >= max(question.shortest_minutes, 1):
                yield "there", begins
            only_sold = question.eats_there and not question.own_food
            if only_sold and ends == visit.leave and left >= max(question.shortest_minutes, 1):
                yield "by the car", begins


def latest_arrivals(
    performances: list[Performance], span: tuple[int, int, int], slots: list[int] | None, leave: int
) -> list[int]:
    """The latest arrivals with which each performance that a visit has time for can still be seen."""
    opens, closes, last_entry = span
    dues = []
    for start, end in performances:
        if end <= leave and opens <= start < closes:
            lets_in = [min(start, last_entry)] if slots is None else [slot for slot in slots if slot <= start]
            dues += lets_in[-1:]
    return dues


def walk(question: DayQuestion) -> list[Walked]:
    """Every plan of the day that keeps the limits, weighed without arrays or formulas."""
    midnight = datetime.combine(question.day, time(0), question.home_zone).astimezone(UTC)

    def minute(moment: datetime) -> int:
        return int((moment - midnight) / MINUTE)

    def clock(value: time) -> int:
        return minute(datetime.combine(question.day, value, question.home_zone))

    def overlap(enter: int, leave: int, spans: tuple[tuple[datetime, datetime], ...]) -> int:
        return sum(minute(start) <= at < minute(end) for at in range(enter, leave) for start, end in spans)

    habits, worth = question.habits, question.worth
    there, back = question.way_there, question.way_home
    home_by = clock(habits.home_by)
    if habits.home_by <= time(4) and habits.home_by < habits.earliest_departure:
        home_by = minute(
            datetime.combine(question.day + timedelta(days=1), habits.home_by, question.home_zone)
        )
    shows = {
        show.name: [(minute(at), minute(at) + show.minutes) for at in show.starts]
        for show in question.hours.shows
        if show.worth_it
    }
    off = getting_off(habits)
    off_there = Delay(0, np.ones(1)) if question.begun is not None else off
    patience = question.patience_minutes

    def beyond(leg: Leg) -> int:
        driven = [where for _, where in whereabouts(leg, 0, "")]
        stretches = [len(list(run)) for where, run in groupby(driven) if where.startswith("car")]
        return 0 if patience is None else sum(max(0, length - patience) for length in stretches)

    found = []
    departures = list(range(0, 26 * 60, question.grid_minutes))
    if question.begun is not None:
        departures = [minute(question.begun.left_home)]
    late_home: dict[int, Decimal] = {}
    for depart in departures:
        if question.begun is None and depart < clock(habits.earliest_departure):
            continue
        if question.last_wakes is not None:
            up = clock(question.last_wakes) + question.ready_minutes
            if question.begun is None and depart < up:
                continue
        out = there.at(depart)
        arrive = depart + out.minutes
        arrivals: list[tuple[int, float]] = []
        for leave in range(0, 26 * 60, question.grid_minutes):
            home = leave + back.at(leave).minutes
            if home > home_by:
                continue
            driven = out.drive_minutes + back.at(leave).drive_minutes
            if question.begun is None and driven > (question.most_driving_minutes or driven):
                continue
            if question.begun is not None and leave < minute(question.begun.now):
                continue
            if any(depart < minute(b.end) and minute(b.start) < home for b in question.busy):
                continue
            entries = [
                (at, span)
                for span in question.hours.spans
                for at in range(minute(span.opens), minute(span.last_entry) + 1)
                if at >= arrive
                and minute(span.opens) < leave <= minute(span.closes)
                and (not question.hours.entry_times or at in map(minute, question.hours.entry_times))
            ]
            if not entries or leave - min(entries)[0] < max(question.shortest_minutes, 1):
                continue
            enter, span = min(entries, key=lambda entry: entry[0])
            places = dict(whereabouts(out, depart, "there") + whereabouts(back.at(leave), leave, "home"))
            places |= dict.fromkeys(range(arrive, leave), "inside")
            prices = (0, 0) if question.money is None else prices_of(question.money, enter, leave)
            if prices is None:
                continue
            lunch, length = clock(habits.lunch), habits.lunch_minutes
            seen = see(shows, enter, leave)
            lost = kept = 0
            children = max(question.children, len(question.nappers), 1)
            asleep: dict[str, set[int]] = {}
            asleep_inside = 0
            for napper in question.nappers:
                for nap in napper.naps:
                    usual = clock(nap.start)
                    latest = usual + nap.slack_minutes
                    if napper.latest_end is not None:
                        latest = min(latest, max(usual, clock(napper.latest_end) - nap.minutes))
                    shifts = range(earliest_nap(nap, usual, lunch, lunch + length), latest + 1)
                    sleeps = [
                        sleep for shift in shifts for sleep in slept(nap, shift, places, question.pushchairs)
                    ]
                    first, longest = preferred(sleeps, usual, places)
                    kept += longest
                    lost += nap.minutes - longest
                    inside = set(range(first, first + longest)) & set(range(enter, leave))
                    asleep_inside += len(inside)
                    asleep.setdefault(napper.member, set()).update(inside)
            car = sum(where.startswith("car") for where in places.values()) + enter - arrive
            awake = leave - enter - asleep_inside // children

            def stay_weighs(awake: int) -> Decimal:
                short = max(0, question.comfortable_minutes - awake)
                beyond = max(0, awake - question.comfortable_minutes)
                return short * worth.missed_hour_there + beyond * worth.hour_beyond_comfortable

            visit = Visit(depart, arrive, enter, leave, home, halting(places), list(seen.values()))
            eaten = [("none", lunch)] if not length else lunches(question, lunch, visit)
            weight, eats_there, spent = min(
                (
                    max(0, begins - lunch) * worth.hour_late_lunch
                    + max(0, lunch - begins) * worth.hour_early_lunch
                    + stay_weighs(awake - length * (place in ("there", "by the car")))
                    + Decimal(60 * (price := prices[place == "there" and question.eats_there])) / 100,
                    place in ("there", "by the car"),
                    price,
                )
                for place, begins in eaten
            )
            awake -= length * eats_there
            missed = max(0, question.comfortable_minutes - awake)
            early = max(0, clock(habits.usual_departure) - depart)

            arrivals = arrivals or ends(there, off_there, depart)
            opened = (minute(span.opens), minute(span.closes), minute(span.last_entry))
            slots = (
                [at for at in map(minute, question.hours.entry_times) if opened[0] <= at <= opened[2]]
                if question.hours.entry_times
                else None
            )
            risk = thousandths_after(arrivals, opened[2] if slots is None else enter) * worth.missed_entry
            for name, performances in shows.items():
                dues = latest_arrivals(performances, opened, slots, leave) if name in seen else []
                unseen = min((thousandths_after(arrivals, due) for due in dues[-1:]), default=1000)
                start, end = seen.get(name, (0, 0))
                half = (end - start) / 2
                miss = sum(0 < len(minutes & set(range(start, end))) >= half for minutes in asleep.values())
                risk += (unseen + (1000 - unseen) * miss // children) * worth.missed_show
            if leave not in late_home:
                homes = ends(back, off, leave)
                late_home[leave] = tenths_after(homes, home_by) * worth.hour_past_home_by / 10
                if question.first_bed is not None:
                    past = tenths_after(homes, clock(question.first_bed))
                    late_home[leave] += past * worth.hour_past_bedtime / 10
            quiet = sum(minute(end) - minute(start) for start, end in question.hours.quiet_spans)
            found.append(
                Walked(
                    midnight + depart * MINUTE,
                    midnight + leave * MINUTE,
                    home - depart,
                    lost * worth.lost_nap_hour
                    + car * worth.hour_in_car
                    + weight
                    + early * worth.hour_early_departure
                    + (beyond(out) + beyond(back.at(leave))) * worth.hour_past_patience
                    + overlap(enter, leave, question.hours.group_spans) * worth.hour_among_classes
                    + (quiet - overlap(enter, leave, question.hours.quiet_spans)) * worth.quiet_hour
                    + risk * 60 / 1000
                    + late_home[leave],
                    kept,
                    question.comfortable_minutes - missed,
                    tuple(start for start, _ in seen.values()),
                    spent,
                )
            )
    return found
