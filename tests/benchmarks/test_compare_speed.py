"""How long it takes to compare three outings with their ranges and flips, and what the time goes to."""

import cProfile
from collections.abc import Callable, Iterable
from datetime import date
from types import CodeType
from typing import TypeVar

import pytest

from tests.benchmarks.timing import again, forget, timed
from tests.conftest import ROOT
from tripplan.documents.calendars.calendars import FamilyCalendar, SchoolCalendar
from tripplan.documents.family.household import Household
from tripplan.documents.model import Written
from tripplan.documents.places.place import Place
from tripplan.files.demo import read_demo
from tripplan.planning.admission.cheapest import Gate
from tripplan.planning.compare.certainty import Certainty, how_sure
from tripplan.planning.compare.choose import compare
from tripplan.planning.compare.flips.every_input import what_would_flip
from tripplan.planning.compare.flips.flip import Flip
from tripplan.planning.cost import outing_cost
from tripplan.planning.day import plan_day
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.sweep.sweeping import sweep

Kind = TypeVar("Kind", bound=Written)
TODAY, DAY = date(2026, 11, 25), date(2026, 12, 12)


def demo() -> tuple[Family, tuple[Place, ...]]:
    """The invented family, and the three places it compares."""
    contents = read_demo(ROOT / "demo_places", TODAY)
    (household,) = of_kind(contents.documents, Household)
    family = Family(
        household,
        of_kind(contents.documents, Place),
        of_kind(contents.documents, SchoolCalendar),
        of_kind(contents.documents, FamilyCalendar),
    )
    return family, tuple(place for place in family.places if place.id in contents.compared)


def of_kind(documents: Iterable[Written], kind: type[Kind]) -> tuple[Kind, ...]:
    """The documents of one kind."""
    return tuple(document for document in documents if isinstance(document, kind))


def test_a_whole_comparison_of_three_outings(tell: Callable[[str], None]) -> None:
    """Three outings on one day, how sure their order is and what would flip it, for a party of seven.

    From nothing, as when the app has just been started, and again with all that it remembers.
    """
    family, places = demo()
    party = family.party()

    def compared() -> tuple[Outing, ...]:
        candidates = compare(family, party, places, (DAY,), today=TODAY)
        return tuple(candidate.best for candidate in candidates if candidate.best is not None)

    outings = compared()

    def flipped() -> tuple[Flip, ...]:
        return what_would_flip(family, party, outings, today=TODAY)

    def whole() -> tuple[Certainty, tuple[Flip, ...]]:
        again = compared()
        return how_sure(again), what_would_flip(family, party, again, today=TODAY)

    first: list[float] = []
    later: list[float] = []
    for _ in range(5):
        for took, answer in ((first, timed(whole)), (later, again(whole))):
            seconds, (certainty, flips) = answer
            took.append(seconds * 1000)
            assert sum(certainty.chances) == pytest.approx(1)
            assert flips == flipped()
    assert len(outings) == 3
    steps = {"outings": compared, "chances": lambda: how_sure(outings), "flips": flipped}
    parts = {name: min(timed(step)[0] for _ in range(5)) * 1000 for name, step in steps.items()}
    forget()
    profile = cProfile.Profile()
    profile.runcall(whole)
    # A profile slows small calls down most, so it tells shares, not milliseconds.
    stats = {entry.code: entry for entry in profile.getstats()}
    all_of_it = stats[whole.__code__].totaltime
    shares = []
    for made_of in (place_facts, Gate.admission, plan_day, outing_cost, sweep):
        code: CodeType = made_of.__code__
        shares.append(f"{made_of.__name__} {stats[code].totaltime / all_of_it:.0%}")
    tell(
        f"three outings with ranges and flips, whole: {min(first):.0f} ms from nothing ("
        + ", ".join(f"{name} {ms:.0f}" for name, ms in parts.items())
        + f"; {len(flips)} flips by {stats[plan_outing.__code__].callcount} plans), {min(later):.0f} ms "
        f"again; of the first " + ", ".join(shares)
    )
