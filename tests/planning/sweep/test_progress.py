"""A sweep tells how far it is, and stops when nobody asks further."""

from collections.abc import Iterable
from datetime import date

import pytest

from tests.builders import make_household, make_place
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.places.place import Place
from tripplan.planning.family.family import Family
from tripplan.planning.outing.place_facts import PlaceFacts, place_facts
from tripplan.planning.sweep import sweeping as room

SPAN = DateSpan(first=date(2026, 12, 1), last=date(2026, 12, 7))
TODAY = date(2026, 11, 25)
FAMILY = Family(make_household(), tuple(make_place(id=f"place-{n}", name=f"Place {n}") for n in range(3)))


def test_a_step_is_told_after_every_place_and_the_table_comes_last() -> None:
    """Three places are three steps and the table; each step knows how many there are."""
    steps = list(room.sweeping(FAMILY, FAMILY.party(), FAMILY.places, SPAN, today=TODAY))
    assert [(step.done, step.of) for step in steps] == [(1, 3), (2, 3), (3, 3), (3, 3)]
    assert [step.table is not None for step in steps] == [False, False, False, True]


def test_nothing_more_is_worked_out_once_nobody_asks(monkeypatch: pytest.MonkeyPatch) -> None:
    """Asked for its first step only, the sweep has looked at no place beyond those searched together."""
    looked_at: list[str] = []

    def watched(family: Family, place: Place, years: Iterable[int]) -> PlaceFacts:
        looked_at.append(place.id)
        return place_facts(family, place, years)

    monkeypatch.setattr(room, "place_facts", watched)
    monkeypatch.setattr(room, "TOGETHER", 2)
    next(iter(room.sweeping(FAMILY, FAMILY.party(), FAMILY.places, SPAN, today=TODAY)))
    assert looked_at == ["place-0", "place-1"]


def test_equal_places_are_answered_once_and_alike() -> None:
    """Three places that differ by name alone have the same figures."""
    table = room.sweep(FAMILY, FAMILY.party(), FAMILY.places, SPAN, today=TODAY)
    assert (table.felt == table.felt[0]).all()
    assert table.can_go.any()
