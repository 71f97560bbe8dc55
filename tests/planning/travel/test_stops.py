"""Fuel stops, pick-ups and a stop on the way back."""

from datetime import date
from typing import Any

import pytest

from tripplan.documents.family.habits import PickUp, Stops
from tripplan.documents.where import Point, Where
from tripplan.language.sentences import fact
from tripplan.planning.travel.drive_sources import typed_drive
from tripplan.planning.travel.rests import WantedStop, plan_leg
from tripplan.planning.travel.stops import StoppedDrive, there_and_back

HOME = Point(42.5, -90.66)
PLACE = Where(country="US", latitude=42.0, longitude=-89.6, time_zone="America/Chicago")


def ways(**stops: Any) -> tuple[StoppedDrive, StoppedDrive]:
    """A way of 100 km and 80 minutes with some stops."""
    drive = typed_drive(100, 80, date(2026, 11, 2))
    return there_and_back(drive, Stops.model_validate(stops), HOME, PLACE, "km")


def test_without_stops_both_ways_are_the_drive() -> None:
    """Nothing is added to a family that stops for nothing."""
    there, back = ways()
    assert there == back == StoppedDrive(typed_drive(100, 80, date(2026, 11, 2)))


@pytest.mark.parametrize(
    ("range_km", "there_shares", "back_shares"),
    [(200, [], []), (199, [], [0.0]), (90, [2 / 3], [1 / 3]), (60, [0.5], [0.0, 0.5])],
)
def test_fuel_is_stopped_for_when_there_and_back_exceed_the_range(
    range_km: float, there_shares: list[float], back_shares: list[float]
) -> None:
    """200 km on a range of 199 need one stop, on leaving the place; of 90 two; of 60 three (by hand)."""
    there, back = ways(fuel_range_km=range_km)
    assert [stop.share for stop in there.stops] == pytest.approx(there_shares)
    assert [stop.share for stop in back.stops] == pytest.approx(back_shares)
    assert all(stop.minutes == 10 for stop in (*there.stops, *back.stops))


def test_a_pick_up_makes_both_ways_longer_and_is_near_home() -> None:
    """Ten km and twelve minutes more each way; met after 12 of 92 minutes, let out 12 before the end."""
    there, back = ways(pick_up={"name": "Oma", "extra_km": 10, "extra_minutes": 12, "stop_minutes": 8})
    for way in (there, back):
        assert way.drive.km.likely == pytest.approx(110)
        assert way.drive.minutes.likely == pytest.approx(92)
        assert "Oma" in way.drive.source.text
    assert [(stop.minutes, stop.what.code) for stop in there.stops] == [(8, "drive-stop-to-pick-up")]
    assert [(stop.minutes, stop.what.code) for stop in back.stops] == [(8, "drive-stop-to-bring-home")]
    assert [way.stops[0].share for way in (there, back)] == pytest.approx([12 / 92, 80 / 92])


def test_somebody_who_stays_is_not_brought_home() -> None:
    """Then only the way there is longer."""
    there, back = ways(pick_up={"name": "Oma", "extra_km": 10, "extra_minutes": 12, "brought_home": False})
    assert (there.drive.km.likely, back.drive.km.likely) == (110, 100)
    assert back.stops == ()


def test_a_pick_up_at_a_point_adds_the_estimated_detour() -> None:
    """Half-way on the straight line adds next to nothing; far to the side it adds a lot."""
    on_the_way, _ = ways(pick_up={"name": "Oma", "latitude": 42.25, "longitude": -90.13})
    aside, _ = ways(pick_up={"name": "Oma", "latitude": 43.2, "longitude": -90.66})
    assert 100 <= on_the_way.drive.km.likely < 115
    assert aside.drive.km.likely > 150
    assert on_the_way.stops[0].share == pytest.approx(0.5, abs=0.05)


def test_the_stop_on_the_way_back_comes_half_way() -> None:
    """Twenty minutes for the farm shop, on the way home only."""
    there, back = ways(way_back="farm shop", way_back_minutes=20)
    assert there.stops == ()
    assert back.stops == (WantedStop(0.5, 20, fact("drive-stop", what="farm shop")),)


def test_stops_count_in_the_leg_and_a_long_one_is_a_rest() -> None:
    """Three hours with a stop of fifteen minutes or more half-way need no other rest; with five they do."""
    drive = typed_drive(220, 180, date(2026, 11, 2))
    long, as_long, short = (
        plan_leg(
            drive,
            load_up_minutes=10,
            unload_minutes=5,
            stops=(WantedStop(0.5, minutes, fact("drive-stop", what="lunch")),),
        )
        for minutes in (20, 15, 5)
    )
    assert (long.rests, long.minutes) == ((), 10 + 180 + 20 + 5)
    assert (as_long.rests, as_long.minutes) == ((), 10 + 180 + 15 + 5)
    assert [rest.after_minutes for rest in short.rests] == [90]
    assert short.minutes == 10 + 180 + 5 + 15 + 5


@pytest.mark.parametrize("wrong", [{"latitude": 42.0}, {"latitude": 42.0, "longitude": -90.0, "extra_km": 3}])
def test_a_pick_up_is_placed_in_one_way(wrong: dict[str, float]) -> None:
    """Half a point, or a point and extra km together, are refused."""
    with pytest.raises(ValueError, match=r"together|not both"):
        PickUp.model_validate({"name": "Oma", **wrong})
