"""What money goes to on an outing."""

from enum import StrEnum


class CostKind(StrEnum):
    """What the money goes to; the order in which a total is shown."""

    ADMISSION = "admission"
    CAR = "car"
    PARKING = "parking"
    FOOD = "food"
    EXTRAS = "extras"
    RESERVE = "reserve"
