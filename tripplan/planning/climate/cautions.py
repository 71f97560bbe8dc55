"""What to mind outdoors in cold, heat and storms; each caution says whom it defers to."""

from collections.abc import Iterator

from tripplan.planning.climate.feels_like import Class

BABY_UNDER_MONTHS, SMALL_UNDER_MONTHS = 6, 72
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
) -> Iterator[str]:
    """What to mind in the weather of a visit.

    Args:
        classes: how cold and hot it feels during the visit.
        low: the day's low [°C].
        high: the temperature at the warmest hour of the visit [°C].
        youngest_months: age of the youngest [completed months].
        outdoors: whether any of the visit is outdoors.
        dark: whether a part of the drives is in the dark.
        forecast: whether the weather is forecast, and not the usual.

    Sources: classes of `feels_like.Class`; 'When thunder roars, go indoors' and heat in cars: National
    Weather Service; sun and water for babies: American Academy of Pediatrics; all from memory.
    """
    feels = "is forecast to feel" if forecast else "usually feels"
    freezes = "is forecast to freeze" if forecast else "usually freezes"
    small = youngest_months < SMALL_UNDER_MONTHS
    if outdoors and classes & _COLD:
        bitter = classes & {Class.VERY_COLD, Class.BITTER}
        often = "every 10 to 15 minutes, or stay indoors" if bitter else "every half hour"
        yield (
            f"It {feels} {_worst(classes & _COLD)} there: dry layers, hats and mittens, and warm up "
            f"{often}. Numb, white or hard skin, or a child that is drowsy or shivers hard: go in and get "
            "medical help. Local warnings and your doctor have the last word."
        )
    if outdoors and classes & _HOT:
        yield (
            f"It {feels} {_worst(classes & _HOT)} there: shade, rests, and something to drink every 15 "
            "to 20 minutes. A child that is dizzy, vomits, is hot and confused or limp: call emergency and "
            "cool it at once. Local warnings and your doctor have the last word."
        )
    if high >= WARM and small:
        yield (
            "Never leave a child in a parked car, not for a minute and not with a window open; look before "
            "you lock."
        )
    if outdoors and high >= WARM:
        if youngest_months < BABY_UNDER_MONTHS:
            yield (
                "Babies under six months: shade and light clothes instead of sun, milk instead of water; a "
                "covered stroller gets hot. Ask your doctor about sun cream and drinks."
            )
        yield (
            "When thunder roars, go indoors or into the car, and wait 30 minutes after the last thunder; "
            "watch for local warnings before you leave."
        )
    if low <= ICE and dark:
        yield (
            f"Part of the drive is in the dark and it {freezes} that night: roads may be icy. Look at "
            "the road report before you leave, and drive another day if it warns."
        )


def _worst(classes: set[Class] | frozenset[Class]) -> str:
    order = list(Class)
    middle = order.index(Class.FINE)
    return max(classes, key=lambda one: abs(order.index(one) - middle)).value
