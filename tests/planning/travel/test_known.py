from dataclasses import dataclass
from datetime import date

import pytest

from tripplan.documents.where import Point
from tripplan.errors import PlanError
from tripplan.planning.travel.drive import KnownBy
from tripplan.planning.travel.drive_sources import known_drive, typed_drive
from tripplan.planning.travel.estimate import estimate_drive
from tripplan.values.ranges import Origin, Range

HOME, MUSEUM = Point(40.6936, -89.589), Point(40.4842, -88.9937)
DAY = date(2026, 11, 2)


@dataclass(frozen=True)
class Typed:
    km: float = 64.0
    minutes: float = 45.0
    typed_on: date = DAY


def test_typed_in_figures_win_and_keep_their_date() -> None:
    """What the parent typed in is used before a road network and an estimate."""
    roads = typed_drive(70, 50, DAY)
    drive = known_drive(HOME, MUSEUM, "US", Typed(), roads)
    assert (drive.km.likely, drive.minutes.likely) == (64.0, 45.0)
    assert drive.known_by is KnownBy.TYPED
    assert drive.source.origin is Origin.PARENT
    assert "2026-11-02" in drive.source.text
    assert drive.notes == ()


def test_typed_in_figures_carry_a_small_range() -> None:
    """Distance 2 % and time 10 % either way (common practice, no source)."""
    drive = typed_drive(100, 60, DAY)
    assert drive.km == Range(98.0, 100, 102.0)
    assert (drive.minutes.low, drive.minutes.high) == pytest.approx((54.0, 66.0))


def test_a_road_network_wins_over_the_estimate() -> None:
    """Without typed-in figures the road network's drive is handed through."""
    roads = typed_drive(70, 50, DAY)
    assert known_drive(HOME, MUSEUM, "US", None, roads) is roads


def test_without_anything_else_the_estimate_counts() -> None:
    """Nothing typed in and no road network: the estimate."""
    assert known_drive(HOME, MUSEUM, "US") == estimate_drive(HOME, MUSEUM, "US")


def test_a_typed_distance_below_the_straight_line_is_doubted() -> None:
    """Forty (miles?) for 55.5 km in a straight line is kept, with a note."""
    drive = known_drive(HOME, MUSEUM, "US", Typed(km=40))
    assert drive.km.likely == 40
    assert any("shorter than the straight line" in note for note in drive.notes)


def test_a_typed_speed_beyond_roads_is_doubted() -> None:
    """128 km in 45 min, probably there and back, is kept, with a note."""
    notes = known_drive(HOME, MUSEUM, "US", Typed(km=128)).notes
    assert any("both for one way" in note for note in notes)


@pytest.mark.parametrize(("km", "doubted"), [(97.5, False), (98, True)])
def test_an_average_of_130_km_an_hour_is_the_fastest_that_is_believed(km: float, doubted: bool) -> None:
    """97.5 km in 45 min are 130 km/h, the advised speed of German motorways (from memory)."""
    assert bool(known_drive(HOME, MUSEUM, "US", Typed(km=km)).notes) is doubted


@pytest.mark.parametrize(
    ("km", "minutes"), [(0, 10), (10, 0), (-3, 10), (10, -3), (float("nan"), 10), (10, float("inf"))]
)
def test_typed_figures_must_be_above_zero(km: float, minutes: float) -> None:
    """A distance or time that is none is refused."""
    with pytest.raises(PlanError, match="above zero"):
        typed_drive(km, minutes, DAY)
