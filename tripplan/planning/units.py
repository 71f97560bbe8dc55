"""Exact units of distance, volume and fuel consumption."""

from decimal import Decimal

KM_PER_MILE = Decimal("1.609344")
"""International mile, 5280 feet of 0.3048 m. Source: NIST SP 811, 2008, appendix B.8; exact."""
LITRES_PER_US_GALLON = Decimal("3.785411784")
"""231 cubic inches. Source: NIST SP 811, 2008, appendix B.8; exact."""
LITRES_PER_IMPERIAL_GALLON = Decimal("4.54609")
"""Source: NIST SP 811, 2008, appendix B.8; exact."""

_CITY_SHARE, _HIGHWAY_SHARE = Decimal("0.55"), Decimal("0.45")


def litres_per_100_km(
    miles_per_gallon: Decimal, litres_per_gallon: Decimal = LITRES_PER_US_GALLON
) -> Decimal:
    """Fuel consumption from miles per gallon; the same formula leads back.

    Args:
        miles_per_gallon: above 0 [mi/gal], or litres per 100 km [L] for the way back.
        litres_per_gallon: which gallon [L].

    Source: NIST SP 811, 2008, section B.5: divide 235.215 by the miles per US gallon.
    """
    return 100 * litres_per_gallon / KM_PER_MILE / miles_per_gallon


def combined_mpg(city: Decimal, highway: Decimal) -> Decimal:
    """The one figure for both kinds of driving, 55 % city and 45 % highway by distance [mi/gal].

    Args:
        city: above 0 [mi/gal].
        highway: above 0 [mi/gal].

    Source: 40 CFR 600.206, harmonic mean.
    """
    return 1 / (_CITY_SHARE / city + _HIGHWAY_SHARE / highway)
