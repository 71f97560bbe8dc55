"""What to mind outdoors in cold, heat and storms; each caution says whom it defers to."""

from collections.abc import Iterator

from tripplan.language.sentences import Fact, fact
from tripplan.planning.climate.feels_like import Class

BABY_UNDER_MONTHS = 6
WARM = 21.0
"""From here on sun and thunderstorms are told of [°C]; common practice, no source."""
ICE = 2.0
"""At and below this, roads and paths may be icy [°C]; common practice, no source."""
_COLD, _HOT = {Class.COLD, Class.VERY_COLD, Class.BITTER}, {Class.HOT, Class.VERY_HOT, Class.DANGEROUS}


def weather_cautions(
    classes: frozenset[Class],
    low: float,
    high: float,
    youngest_months: int,
    *,
    outdoors: bool,
    dark: bool,
    forecast: bool = False,
) -> Iterator[Fact]:
    """What to mind in the weather of a visit; that no child waits in the car, every drive says.

    Args:
        classes: how cold and hot it feels during the visit.
        low: the day's low [°C].
        high: the temperature at the warmest hour of the visit [°C].
        youngest_months: age of the youngest [completed months].
        outdoors: whether any of the visit is outdoors.
        dark: whether a part of the drives is in the dark.
        forecast: whether the weather is forecast, and not the usual.

    Sources: classes of `feels_like.Class`; 'When thunder roars, go indoors': National Weather
    Service; sun and water for babies: American Academy of Pediatrics; all from memory.
    """
    if outdoors and classes & _COLD:
        bitter = classes & {Class.VERY_COLD, Class.BITTER}
        feels = _worst(classes & _COLD)
        yield fact(
            "cautions-in-bitter-cold" if bitter else "cautions-in-cold", feels=feels, forecast=forecast
        )
    if outdoors and classes & _HOT:
        yield fact("cautions-in-heat", feels=_worst(classes & _HOT), forecast=forecast)
    if outdoors and high >= WARM:
        if youngest_months < BABY_UNDER_MONTHS:
            yield fact("cautions-baby-in-sun")
        yield fact("cautions-thunder")
    if low <= ICE and dark:
        yield fact("cautions-icy-roads", forecast=forecast)


def _worst(classes: set[Class] | frozenset[Class]) -> Fact:
    order = list(Class)
    middle = order.index(Class.FINE)
    worst = max(classes, key=lambda one: abs(order.index(one) - middle))
    return fact(f"cautions-{worst.value.replace(' ', '-')}")
