"""What is found to mind in cold, heat and storms."""

from tripplan.language.locales import Locale, speaking
from tripplan.language.sentences import fact, said
from tripplan.planning.climate.cautions import weather_cautions
from tripplan.planning.climate.feels_like import Class, class_of
from tripplan.values.units import celsius


def found(
    felt: float, low: float, high: float, months: int = 14, *, outdoors: bool = True, dark: bool = False
) -> dict[str, object]:
    """The cautions of a visit that feels like so much [°F]: codes with how it feels; low, high likewise."""
    classes = frozenset({class_of(celsius(felt))})
    cautions = weather_cautions(classes, celsius(low), celsius(high), months, outdoors=outdoors, dark=dark)
    return {caution.code: caution.values.get("feels") for caution in cautions}


def test_cold_and_heat_are_told_by_their_classes() -> None:
    """At 10 °F very cold, at 25 °F cold, at 105 °F very hot; at 60 °F nothing."""
    assert found(10, 5, 15) == {"cautions-in-bitter-cold": fact("cautions-very-cold")}
    assert found(25, 20, 30) == {"cautions-in-cold": fact("cautions-cold")}
    assert found(105, 75, 95)["cautions-in-heat"] == fact("cautions-very-hot")
    assert found(60, 45, 62) == {}


def test_indoors_only_the_road_is_told() -> None:
    """Neither heat nor thunder concerns who is inside; that nobody waits in the car, every drive says."""
    assert found(95, 70, 92, outdoors=False) == {}
    assert list(found(25, 20, 30, outdoors=False, dark=True)) == ["cautions-icy-roads"]


def test_ice_and_darkness_together_are_told() -> None:
    """Each alone is not."""
    assert "cautions-icy-roads" in found(40, 25, 40, dark=True)
    assert "cautions-icy-roads" not in found(40, 25, 40)
    assert "cautions-icy-roads" not in found(60, 45, 62, dark=True)


def test_babies_are_told_of_sun_and_water_and_everybody_of_thunder() -> None:
    """Under six months on a warm day outdoors."""
    assert "cautions-baby-in-sun" in found(80, 60, 80, months=3)
    assert "cautions-baby-in-sun" not in found(80, 60, 80, months=8)
    assert "cautions-thunder" in found(80, 60, 80, months=200)


def test_a_forecast_is_told_as_one() -> None:
    """Weather that is forecast does not count as the usual one, in any language."""
    for forecast, words in ((True, ["forecast", "Vorhersage"]), (False, ["usually", "Gewöhnlich"])):
        (caution,) = weather_cautions(
            frozenset({Class.COLD}), -4.0, -1.0, 14, outdoors=True, dark=False, forecast=forecast
        )
        for locale, word in zip((Locale.EN_US, Locale.DE), words, strict=True):
            with speaking(locale):
                assert word in said(caution)
