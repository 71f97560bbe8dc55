from datetime import date

import pytest

from tripplan.planning.travel.cautions import CAUTIONS, drive_cautions
from tripplan.planning.travel.drive import Leg
from tripplan.planning.travel.drive_sources import typed_drive
from tripplan.planning.travel.rests import plan_leg


@pytest.fixture
def leg() -> Leg:
    """Three quarters of an hour."""
    return plan_leg(typed_drive(64, 45, date(2026, 11, 2)), load_up_minutes=10, unload_minutes=5)


def test_adults_alone_are_told_about_tired_drivers_only(leg: Leg) -> None:
    """Without children one caution remains."""
    (caution,) = drive_cautions(leg, [450, 430])
    assert "15 minutes' break after every two hours" in caution
    assert "midnight" in caution


def test_children_bring_seats_and_parked_cars(leg: Leg) -> None:
    """With children the seat and the parked car are named."""
    text = " ".join(drive_cautions(leg, [450, 84, 16]))
    assert "rides in the seat" in text
    assert "Never leave a child alone in a parked car" in text
    assert "flat surface" not in text


def test_a_baby_is_moved_to_a_flat_surface(leg: Leg) -> None:
    """Under twelve months the sleeping baby is taken out of the seat on arrival."""
    text = " ".join(drive_cautions(leg, [450, 11]))
    assert "flat surface" in text
    assert "30 minutes in a car seat" not in text


def test_a_newborn_adds_the_advice_for_the_first_weeks(leg: Leg) -> None:
    """In the first month the shorter advice stands, and that a midwife or doctor decides."""
    assert "Ask your midwife or doctor" in drive_cautions(leg, [450, 0])[-1]


def test_every_caution_defers_to_somebody_and_names_its_source() -> None:
    """No caution has the last word, and each was read somewhere."""
    for caution in CAUTIONS:
        assert caution.defers_to.endswith(".")
        assert caution.source


@pytest.mark.parametrize(("fahrenheit", "celsius"), [(19, 11), (34, 19)])
def test_heat_figures_agree_in_both_scales(fahrenheit: int, celsius: int) -> None:
    """A rise of so many degrees is five ninths as many on the other scale, and both are shown."""
    assert round(fahrenheit * 5 / 9) == celsius
    assert any(f"{fahrenheit} °F ({celsius} °C)" in caution.text for caution in CAUTIONS)
