"""What a family noted about being outdoors."""

from enum import StrEnum


class Outdoors(StrEnum):
    """How the weather was to be out in, as somebody who was there would say it."""

    FINE = "fine"
    TOO_COLD = "too cold"
    TOO_HOT = "too hot"
    TOO_WET = "too wet"
