"""What weather weighs moves gently with what the family says of being outdoors."""

import math
from datetime import date, timedelta
from decimal import Decimal

import pytest

from tests.builders import make_household, make_place
from tests.planning.logbook.entries import make_entry
from tests.planning.logbook.test_against_plan import said
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import Learnable, LogbookSettings
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.learning import learned_figures, with_logbook

FAMILY = Family(make_household(), (make_place(),))
VERY_COLD, MILD, HOT = -9.4, 10.0, 37.8
"""15, 50 and 100 °F [°C]: an hour in the first counts whole, in the second nothing, in the third whole."""


def outings(
    word: str | None, *, low: float | None = MILD, high: float = MILD, wet: float = 0.2, count: int = 6
) -> list[LogbookEntry]:
    """So many outings planned in one weather, of which the family says one word."""
    days = [date(2026, 9, 1) + timedelta(days=n) for n in range(count)]
    plan = said().model_copy(
        update={"felt_low": low, "felt_high": None if low is None else high, "wet_chance": wet}
    )
    return [make_entry(id=f"{day}-trip", day=day, outdoors=word, as_planned=plan) for day in days]


def factors(entries: list[LogbookEntry]) -> dict[str, float]:
    """How many times the usual amount each learned one is."""
    figures = [one for one in learned_figures(FAMILY, entries) if one.what is Learnable.WEATHER]
    assert all(one.likely.low <= float(one.own) <= one.likely.high for one in figures)
    return {one.field.removeprefix("hour_in_the_"): float(one.own / one.usual) for one in figures}


def test_fine_on_a_very_cold_day_makes_the_cold_cheaper() -> None:
    """Six outings say it is half as bad, the usual amount weighs as six: by hand exp(-ln 2 / 2) = 0.707."""
    assert factors(outings("fine", low=VERY_COLD)) == pytest.approx({"cold": math.sqrt(0.5)}, abs=0.01)
    assert factors(outings("fine", high=HOT)) == pytest.approx({"heat": math.sqrt(0.5)}, abs=0.01)


def test_too_cold_on_a_mild_day_makes_it_dearer_by_a_factor_of_two_at_most() -> None:
    """One outing of six moves it by a seventh of the way on the logarithm: 2 ** (1 / 7) = 1.10."""
    assert factors(outings("too cold")) == pytest.approx({"cold": math.sqrt(2)}, abs=0.01)
    assert factors(outings("too hot", count=1)) == pytest.approx({"heat": 2 ** (1 / 7)}, abs=0.01)


def test_what_was_to_be_expected_changes_nothing() -> None:
    """Too cold where it is very cold, fine where it is mild, and where nobody knows what was planned."""
    assert factors(outings("too cold", low=VERY_COLD)) == {"cold": 1.0}
    assert factors(outings("fine")) == {}
    assert factors(outings("too cold", low=None)) == {}
    assert factors(outings(None, low=VERY_COLD)) == {}


def test_rain_moves_by_a_quarter_either_way() -> None:
    """Too wet, and fine on a day that was to be wet: by hand 1.25 ** (6 / 12) and its inverse."""
    assert factors(outings("too wet")) == pytest.approx({"wet": math.sqrt(1.25)}, abs=0.01)
    assert factors(outings("fine", wet=0.8)) == pytest.approx({"wet": math.sqrt(0.8)}, abs=0.01)


def test_planning_takes_the_learned_amounts_unless_they_are_switched_off() -> None:
    """Only the amount that outings tell of changes; one that is zero stays zero."""
    entries = outings("too cold")
    worth = with_logbook(FAMILY, entries, LogbookSettings()).household.worth
    assert worth.hour_in_the_cold == Decimal("16.97")  # 12.00 times the root of two
    assert worth.hour_in_the_heat == FAMILY.household.worth.hour_in_the_heat
    off = LogbookSettings(not_learned=(Learnable.WEATHER,))
    assert with_logbook(FAMILY, entries, off).household.worth == FAMILY.household.worth
    nothing = Family(make_household(worth={"hour_in_the_cold": "0"}), FAMILY.places)
    assert not [one for one in learned_figures(nothing, entries) if one.what is Learnable.WEATHER]
