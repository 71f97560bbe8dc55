"""What an outing weighs in all: money, nuisances and the chance of a full house."""

import numpy as np
from numpy.typing import NDArray

from tripplan.documents.family.household import Household
from tripplan.values.money import Money, minor_digits

_DECIMALS = 4
"""A chance, and what a full house weighs, are rounded to so many decimals before they are multiplied."""


def generalized_costs(
    household: Household, weighs: NDArray[np.int64], chance: NDArray[np.float64]
) -> NDArray[np.int64]:
    """What outings weigh in all, rounded half up [smallest coins].

    Args:
        household: what a full house weighs.
        weighs: money and nuisances of each outing together [smallest coins].
        chance: of a full house at each [0-1].
    """
    in_a_coin = 10 ** (2 * _DECIMALS - minor_digits(household.currency))
    worth = int(household.worth.full_house.scaleb(_DECIMALS).to_integral_value())
    crowd = np.rint(chance * 10**_DECIMALS).astype(np.int64) * worth
    costs: NDArray[np.int64] = weighs + (2 * crowd + in_a_coin) // (2 * in_a_coin)
    return costs


def generalized_cost(household: Household, weighs: Money, chance: float) -> Money:
    """What one outing weighs in all; as `generalized_costs`."""
    (cost,) = generalized_costs(household, np.array([weighs.minor]), np.array([chance])).tolist()
    return Money.from_minor(cost, household.currency)
