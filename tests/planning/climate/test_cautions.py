"""What is said to mind in cold, heat and storms."""

from tripplan.planning.climate.cautions import weather_cautions
from tripplan.planning.climate.feels_like import Class, class_of
from tripplan.values.units import celsius


def said(
    felt: float, low: float, high: float, months: int = 14, *, outdoors: bool = True, dark: bool = False
) -> str:
    """All cautions of a visit that feels like so much [°F]; low and high likewise."""
    classes = frozenset({class_of(celsius(felt))})
    return " ".join(
        weather_cautions(classes, celsius(low), celsius(high), months, outdoors=outdoors, dark=dark)
    )


def test_cold_and_heat_are_told_by_their_classes() -> None:
    """At 10 °F very cold, at 25 °F cold, at 105 °F very hot; at 60 °F nothing; a doctor has the last word."""
    assert Class.VERY_COLD.value in said(10, 5, 15)
    assert "every half hour" in said(25, 20, 30)
    hot = said(105, 75, 95)
    assert Class.VERY_HOT.value in hot
    assert "call emergency" in hot
    assert "doctor" in hot
    assert said(60, 45, 62) == ""


def test_indoors_only_the_road_and_the_car_are_told() -> None:
    """No child waits in the car while it is warm, whatever the visit."""
    inside = said(95, 70, 92, outdoors=False)
    assert "parked car" in inside
    assert "thunder" not in inside


def test_ice_and_darkness_together_are_told() -> None:
    """Each alone is not."""
    assert "icy" in said(40, 25, 40, dark=True)
    assert "icy" not in said(40, 25, 40)
    assert "icy" not in said(60, 45, 62, dark=True)


def test_babies_are_told_of_sun_and_water_and_everybody_of_thunder() -> None:
    """Under six months on a warm day outdoors."""
    assert "milk instead of water" in said(80, 60, 80, months=3)
    assert "milk instead of water" not in said(80, 60, 80, months=8)
    assert "thunder" in said(80, 60, 80, months=200)
