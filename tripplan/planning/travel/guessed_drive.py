"""The drive to somewhere that is only an idea: a guess of minutes, or nothing at all."""

from tripplan.planning.travel.drive import Drive, KnownBy
from tripplan.values.ranges import Origin, Range, Source

GUESSED_LOW, GUESSED_HIGH = 0.6, 1.6
"""A guess of a drive is this far off at the ends of its range [-]. No source, our choice."""
KM_PER_MINUTE_LOW, KM_PER_MINUTE_LIKELY, KM_PER_MINUTE_HIGH = 0.6, 1.0, 1.6
"""What a minute of driving covers, from town streets to the highway [km/min]. No source, our choice."""
UNKNOWN_MINUTES = Range(10, 45, 120)
"""The drive to somewhere that nobody has placed yet [min]. No source, our choice."""


def guessed_drive(minutes: int | None) -> Drive:
    """A drive with a wide range, from a guess of its minutes.

    Args:
        minutes: the guess, one way [min]; None where nothing is known.
    """
    if minutes is None:
        spread, source = (
            UNKNOWN_MINUTES,
            Source(Origin.ESTIMATE, "not known how far it is; anything from 10 min to 2 h is allowed for"),
        )
    else:
        spread = Range(minutes * GUESSED_LOW, minutes, minutes * GUESSED_HIGH)
        source = Source(Origin.PARENT, "a guess of yours")
    km = Range(
        spread.low * KM_PER_MINUTE_LOW,
        spread.likely * KM_PER_MINUTE_LIKELY,
        spread.high * KM_PER_MINUTE_HIGH,
    )
    return Drive(km=km, minutes=spread, known_by=KnownBy.GUESS, source=source)
