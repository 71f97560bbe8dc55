"""The collector of reference cycles is put off during a sweep, and on again between its steps."""

import gc
from collections.abc import Iterator
from datetime import date

import pytest

from tests.benchmarks.many_places import many_places
from tests.builders import make_household
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.planning.family.family import Family
from tripplan.planning.sweep.gc_pause import gc_paused
from tripplan.planning.sweep.sweeping import sweep, sweeping

TODAY = date(2026, 11, 25)
SPAN = DateSpan(first=date(2026, 12, 1), last=date(2026, 12, 31))
FAMILY = Family(make_household(), many_places(12))


@pytest.fixture(autouse=True)
def collector_as_it_was() -> Iterator[None]:
    """Whatever a test does to it."""
    on = gc.isenabled()
    yield
    (gc.enable if on else gc.disable)()


def test_a_sweep_leaves_no_cycles_behind() -> None:
    """Which is why the collector may wait: what a sweep makes is freed as soon as nothing refers to it."""
    sweep(FAMILY, FAMILY.party(), FAMILY.places, SPAN, today=TODAY)
    gc.collect()
    gc.disable()
    sweep(FAMILY, FAMILY.party(), FAMILY.places, SPAN, today=TODAY)
    assert gc.collect() == 0


def test_whoever_looks_at_the_progress_finds_the_collector_on() -> None:
    """Also whoever then asks no further."""
    gc.enable()
    steps = sweeping(FAMILY, FAMILY.party(), FAMILY.places, SPAN, today=TODAY)
    next(steps)
    assert gc.isenabled()


def test_the_collector_is_left_as_it_was_found() -> None:
    """On or off, and after a fault as well."""
    gc.enable()
    with pytest.raises(ZeroDivisionError), gc_paused():
        raise ZeroDivisionError
    assert gc.isenabled()
    with gc_paused():
        assert not gc.isenabled()
        with gc_paused():
            pass
        assert not gc.isenabled()
    assert gc.isenabled()
