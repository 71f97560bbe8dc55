"""Integer programmes put to SciPy's solver (HiGHS), imported only when first needed: that takes 0.3 s."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from tripplan.errors import PlanError

if TYPE_CHECKING:
    from scipy.optimize import LinearConstraint

_OPTIMAL, _INFEASIBLE, _STUMBLED = 0, 2, 4
"""What the solver's statuses mean. Source: documentation of scipy.optimize.milp."""


def minimized(
    objective: Sequence[float],
    constraints: "LinearConstraint | Sequence[LinearConstraint]",
    *,
    what: str,
    upper: float | Sequence[float] = 1.0,
    whole: Sequence[bool] | None = None,
) -> NDArray[np.float64] | None:
    """The unknowns, none below zero, that make a weighted sum least; exactly, without the usual gap.

    Args:
        objective: the weight of each unknown.
        constraints: what sums of them must keep to.
        what: what is sought, for the message.
        upper: the most that each may be.
        whole: which must be whole numbers; all when left out.

    Returns:
        The unknowns, whole ones within the solver's rounding; None where nothing keeps to the constraints.

    Raises:
        PlanError: the solver gave up.
    """
    from scipy.optimize import Bounds, milp

    integrality = np.array([True] * len(objective) if whole is None else whole, dtype=np.int64)

    def solved(*, presolve: bool) -> Any:  # noqa: ANN401 - SciPy's stubs leave the result open
        return milp(
            np.asarray(objective, dtype=float),
            integrality=integrality,
            bounds=Bounds(0, np.asarray(upper, dtype=float)),
            constraints=constraints,
            options={"mip_rel_gap": 0.0, "presolve": presolve},
        )

    answer = solved(presolve=True)
    if answer.status == _STUMBLED:
        # HiGHS breaks off over some small programmes that it has presolved, and answers them as they stand.
        answer = solved(presolve=False)
    if answer.status == _INFEASIBLE:
        return None
    if answer.x is None or answer.status != _OPTIMAL:
        raise PlanError(f"{what} could not be worked out: {answer.message}")
    unknowns: NDArray[np.float64] = answer.x
    return unknowns
