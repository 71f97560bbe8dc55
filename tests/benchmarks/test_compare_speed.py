"""How long it takes to compare three outings with their ranges and flips, and what the time goes to."""

import cProfile
import timeit
from collections.abc import Callable, Iterable
from datetime import date
from types import CodeType
from typing import TypeVar

import pytest

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


def best_ms(work: Callable[[], object]) -> float:
    """The shortest of five runs [ms]."""
    return min(timeit.repeat(work, number=1, repeat=5)) * 1000


def test_a_whole_comparison_of_three_outings(capsys: pytest.CaptureFixture[str]) -> None:
    """Three outings on one day, how sure their order is and what would flip it, for a party of seven."""
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

    certainty, flips = whole()
    assert len(outings) == 3
    assert sum(certainty.chances) == pytest.approx(1)
    assert flips == flipped()

    parts = {"outings": best_ms(compared), "chances": best_ms(lambda: how_sure(outings))}
    parts["flips"] = best_ms(flipped)
    profile = cProfile.Profile()
    profile.runcall(whole)
    # A profile slows small calls down most, so it tells shares, not milliseconds.
    stats = {entry.code: entry for entry in profile.getstats()}
    all_of_it = stats[whole.__code__].totaltime
    shares = []
    for made_of in (place_facts, Gate.admission, plan_day, outing_cost, sweep):
        code: CodeType = made_of.__code__
        shares.append(f"{made_of.__name__} {stats[code].totaltime / all_of_it:.0%}")
    with capsys.disabled():
        print(  # noqa: T201 - the figure is the point of the test
            f"\nthree outings with ranges and flips, whole: {best_ms(whole):.0f} ms ("
            + ", ".join(f"{name} {ms:.0f}" for name, ms in parts.items())
            + f"; {len(flips)} flips by {stats[plan_outing.__code__].callcount} plans); of that "
            + ", ".join(shares)
        )
