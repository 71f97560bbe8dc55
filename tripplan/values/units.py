"""Exact units of distance, volume, fuel consumption and temperature."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

KM_PER_MILE = Decimal("1.609344")
"""International mile, 5280 feet of 0.3048 m. Source: NIST SP 811, 2008, appendix B.8; exact."""
LITRES_PER_US_GALLON = Decimal("3.785411784")
"""231 cubic inches. Source: NIST SP 811, 2008, appendix B.8; exact."""


def litres_per_100_km(miles_per_gallon: Decimal) -> Decimal:
    """Fuel consumption from miles per US gallon; the same formula leads back.

    Args:
        miles_per_gallon: above 0 [mi/gal], or litres per 100 km [L] for the way back.

    Source: NIST SP 811, 2008, section B.5: divide 235.215 by the miles per US gallon.
    """
    return 100 * LITRES_PER_US_GALLON / KM_PER_MILE / miles_per_gallon


def celsius(fahrenheit: float) -> float:
    """A temperature in degrees Celsius. Source: NIST SP 811, 2008, appendix B.8; exact."""
    return (fahrenheit - 32) / 1.8


def fahrenheit(celsius: float) -> float:
    """A temperature in degrees Fahrenheit; source as above."""
    return celsius * 1.8 + 32


@dataclass(frozen=True)
class Temperatures:
    """From one temperature to another, as a family reads them.

    Attributes:
        low, high: the two [°C].
        unit: in which they are read.
    """

    low: float
    high: float
    unit: Literal["F", "C"]


@dataclass(frozen=True)
class Distance:
    """A distance, as a family reads it.

    Attributes:
        km: how far [km].
        unit: in which it is read.
    """

    km: float
    unit: Literal["mi", "km"]


class Chance(float):
    """How likely something is, told as odds [0-1]."""
