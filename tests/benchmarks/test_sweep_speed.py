"""How long every place on every day of a year takes, how it grows, and against planning day by day."""

import resource
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date
from functools import partial
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray

from tests.benchmarks.many_places import many_places
from tests.benchmarks.test_compare_speed import demo
from tests.benchmarks.timing import timed
from tests.builders import make_household, make_place
from tests.planning.day.day_questions import best_choices
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.planning.climate.stations import stations
from tripplan.planning.day import DayQuestion, trade_offs
from tripplan.planning.day.best import BestChoices, best_between
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.sweep import answer_cache as known
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.sweep.table import DayTable

TODAY = date(2026, 11, 25)
YEAR = DateSpan(first=date(2026, 11, 26), last=date(2027, 11, 25))
SAMPLE = 60
"""So many place-days are planned one by one, and stand for all."""

Small = NDArray[np.int16]


def seconds(work: Callable[[], object], repeat: int = 1) -> float:
    """The shortest of some runs, each from nothing [s]."""
    return min(timed(work)[0] for _ in range(repeat))


def megabytes() -> float:
    """The most memory this process has held so far [MB]."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


@pytest.mark.parametrize("sizes", [(10, 100, 1000)], ids=["10 to 1000 places"])
def test_a_year_of_many_places(sizes: tuple[int, ...], tell: Callable[[str], None]) -> None:
    """10, 100 and 1 000 drawn places on 365 days for a party of seven, against a plain loop on a sample.

    The shorter of two sweeps counts, each of other places and from nothing.
    """
    family, _ = demo()
    party = family.party()
    took: dict[int, float] = {}
    held: dict[int, float] = {}
    table: DayTable | None = None
    for size in sizes:
        before, each_took = megabytes(), []
        for drawn in range(2):
            places = many_places(size, seed=1000 * size + drawn)
            larger = replace(family, places=places, stations=stations())
            took_so_long, table = timed(partial(sweep, larger, party, places, YEAR, today=TODAY))
            each_took.append(took_so_long)
        took[size], held[size] = min(each_took), megabytes() - before
    assert table is not None
    spots = np.argwhere(table.can_go)
    chosen = spots[:: max(1, len(spots) // SAMPLE)][:SAMPLE].tolist()
    facts = {row: place_facts(table.family, table.places[row], (2026, 2027)) for row, _ in chosen}

    def one_by_one() -> list[Outing]:
        found = [
            plan_outing(table.family, party, facts[row], table.day(column), today=TODAY)
            for row, column in chosen
        ]
        return [outing for outing in found if isinstance(outing, Outing)]

    loops = [timed(one_by_one) for _ in range(2)]
    for _, outings in loops:
        assert [o.generalized_cost.minor for o in outings] == [int(table.felt[r, c]) for r, c in chosen]
    each = min(took_so_long for took_so_long, _ in loops) / len(chosen)
    largest = sizes[-1]
    tell(
        "365 days, party of seven: "
        + "; ".join(f"{n} places {took[n]:.2f} s, {held[n]:.0f} MB more" for n in sizes)
        + f"; {largest} places take {took[largest] / took[100]:.1f} times as long as 100; a plain loop "
        f"over the {len(spots)} days that can be done would take {each * len(spots):.0f} s "
        f"({each * len(spots) / took[largest]:.0f} times as long)"
    )


DEPARTURES, LEAVINGS, PLACES = 100, 40, 20


def test_a_year_of_departures_against_brute_force(tell: Callable[[str], None]) -> None:
    """20 places, 365 days, 100 departures and 40 leaving times: the same optimum as weighing all of them.

    The brute force weighs every pair of every day at once in 16-bit whole numbers, in cents: driving and
    waiting at 10, a short visit at 15, lost nap at 20 a minute, and tickets that from 13:00 on cost 4.50 less
    for each of three. It knows no lunch, no pushchair, no rush and no delay.
    """
    family = _open_plain_family()
    party = family.party()
    span = DateSpan(first=YEAR.first, last=YEAR.last)
    table = sweep(family, party, family.places, span, today=TODAY)
    felt = _brute_force(family, table)
    assert table.can_go.all()
    singles = [
        plan_outing(family, party, place_facts(family, place, (2026, 2027)), table.day(row), today=TODAY)
        for row, place in enumerate(family.places)
    ]
    outings = [single for single in singles if isinstance(single, Outing)]
    # Of plans that weigh about the same the latest start is taken; the least of all is what is compared.
    least = [trade_offs(outing.question).least.minor for outing in outings]
    usual = [_usual_total(outing) for outing in outings]
    assert least == [usual[row] + int(felt[row, row]) for row in range(PLACES)]
    whole = seconds(lambda: sweep(family, party, family.places, span, today=TODAY), repeat=3)
    asked: list[DayQuestion] = []

    def remembered(questions: Sequence[DayQuestion], *asked_with: Any) -> list[list[BestChoices]]:
        asked.extend(questions)
        return best_between(questions, *asked_with)

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(known, "best_between", remembered)
        sweep(family, party, family.places, span, today=TODAY)
    # In turns, so that a machine that is slow for a while is slow for both.
    brutes, searches = [], []
    for _ in range(8):
        took, weighed = timed(lambda: _brute_force(family, table))
        assert (weighed == felt).all()
        brutes.append(took)
        searches.append(seconds(lambda: best_choices(asked), repeat=5))
    brute, searched = min(brutes), min(searches)
    tell(
        f"{PLACES} places, 365 days, {DEPARTURES} x {LEAVINGS}: 16-bit brute force "
        f"{brute * 1000:.0f} ms; all searches of a sweep, for {len(asked)} kinds of day, "
        f"{searched * 1000:.2f} ms ({brute / searched:.0f} times as fast); a whole sweep with prices, "
        f"crowds and daylight {whole * 1000:.0f} ms ({brute / whole:.1f} times as fast)"
    )


def _usual_total(outing: Outing) -> int:
    """What an outing costs before 13:00 [cents]."""
    costs = outing.hourly_costs.costs[0]
    assert costs is not None
    return costs[0].total.likely.minor


def _open_plain_family() -> Family:
    """A child who naps at home or in the car, and places open from 10:50 to 15:15 every day."""
    household = make_household(
        habits={"earliest_departure": "06:00", "home_by": "18:00", "load_up_minutes": 10},
        worth={
            "lost_nap_hour": "12",
            "hour_in_car": "6",
            "missed_hour_there": "9",
            "hour_beyond_comfortable": "0",
            "hour_late_lunch": "0",
            "hour_past_home_by": "0",
            "full_house": "20",
            "hour_early_departure": "0",
            "missed_entry": "0",
        },
        reserve_percent="0",
    )
    offers = [
        {"name": name, "price": price, "ages": ages, **valid}
        for name, ages, prices in (
            ("Adult", "13+", ("14.00", "9.50")),
            ("Child", "3-12", ("9.00", "4.50")),
            ("Small child", "under 3", ("0.00", "0.00")),
        )
        for price, valid in zip(prices, ({}, {"valid": "13:00-24:00"}), strict=True)
        for name in (name if not valid else f"{name} in the afternoon",)
    ]
    places = tuple(
        make_place(
            id=f"place-{n}",
            opening={"hours": "Mo-Su 10:50-15:15"},
            visit={"comfortable_minutes": 180},
            offers=offers,
        )
        for n in range(PLACES)
    )
    drives = tuple(
        TypedDrive(place=f"place-{n}", km=20 + 2 * n, minutes=20 + 2 * n, typed_on=TODAY)
        for n in range(PLACES)
    )
    return Family(household, places, typed_drives=drives)


def _brute_force(family: Family, table: DayTable) -> NDArray[np.int64]:
    """The least that every place weighs on every day, over what it costs before 13:00 [cents]."""
    days, least = len(table.days), np.zeros((PLACES, len(table.days)), dtype=np.int64)
    depart = np.arange(360, 360 + 5 * DEPARTURES, 5, dtype=np.int16)[None, :, None]
    leave = np.arange(720, 720 + 5 * LEAVINGS, 5, dtype=np.int16)[None, None, :]
    opens = np.full((days, 1, 1), 650, dtype=np.int16)
    first, last, usual = (np.full((days, 1, 1), minute, dtype=np.int16) for minute in (750, 880, 100))
    for row, drive in enumerate(family.typed_drives):
        driven = np.int16(drive.minutes)
        before, after = np.int16(10), np.int16(_unloading(family))
        arrive = depart + before + driven + after
        enter = np.maximum(arrive, opens)
        home = leave + before + driven + after
        wait, visit = enter - arrive, leave - enter
        asleep = [
            (np.full_like(opens, 0), depart),
            (home + np.int16(15), np.full_like(opens, 2000)),
            (depart + before + np.int16(10), depart + before + driven),
            (leave + before + np.int16(10), leave + before + driven),
        ]
        kept = np.zeros((days, DEPARTURES, LEAVINGS), dtype=np.int16)
        for start, end in asleep:
            shared = np.clip(end, first, last) - np.clip(start, first, last)
            shared = np.minimum(shared, usual)
            kept = np.maximum(kept, np.where(shared >= 20, shared, np.int16(0)))
        felt = np.int16(10) * (wait + 2 * driven) + np.int16(15) * np.maximum(180 - visit, 0)
        felt = felt + np.int16(20) * (usual - kept)
        felt = felt - np.where(enter >= 780, np.int16(3 * 450), np.int16(0))
        felt = np.where((visit >= 60) & (home <= 1080), felt, np.int16(32767))
        least[row] = felt.reshape(days, -1).min(axis=1)
    return least


def _unloading(family: Family) -> int:
    """From parking to walking with one child under six [min]."""
    return 3 + 3 * sum(member.months_on(TODAY) < 72 for member in family.household.members)
