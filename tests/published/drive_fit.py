"""How the curves of the drive estimate are fitted to open tables, and how far off they are.

A curve is a straight line between knots on paper that is logarithmic both ways. The likely one is the median
and the outer ones are low and high quantiles, all at once by quantile regression (R. Koenker, G. Bassett,
Regression Quantiles, Econometrica 46, 1978), which is a linear programme. In each distance class every table
weighs the same, and every class as much as any other.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, fields, replace
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linprog
from scipy.sparse import block_array, coo_array, csr_array, eye_array

from tests.published.drive_tables import (
    Floats,
    Pairs,
    belgium,
    britain,
    capitols,
    europe_timed,
    lower_saxony,
    tarrant,
    together,
    united_states_classes,
)
from tripplan.planning.travel.estimate_curves import KNOTS_KM, Band, Curve

CLASSES_KM = (0, 5, 10, 20, 40, 60, 80, 160, 250, 400, 800, 5000)
"""Distance classes of the straight line that errors are told by [km]."""
MOST_PAIRS = 2500
"""Of a larger table every so many-th pair is fitted, so that a fit takes seconds [-]."""
ENOUGH = 20
"""From so many ends of pairs in a class on a table counts in full there [-]."""
TAIL = 0.045
"""The share of drives that may lie beyond each outer curve [-]."""
FOLDS = 6
"""In so many parts a table's ends are left out in turn to see how far off a likely curve is [-]."""
STIFFNESS = 0.001
"""What a bend of a curve costs beside a misfit [-]; it rules only where there are hardly any pairs."""
APART = 0.01
"""The outer curves stay so far from the likely one, as a share of it [-]."""
TOWNS_APART_KM = 80.0
"""Up to here a detour, as a share, is the larger the nearer the place, as in all tables at hand. Further away
mountains and seas may lie between [km]."""
DETOUR_AT_LEAST = 0.005
"""No road is straighter than so; two tables round the ends of a straight drive otherwise [-]."""


@dataclass(frozen=True)
class Fit:
    """How the curves of one set of roads are made.

    Attributes:
        tables: readers of its own tables.
        beyond: readers of tables that count only in distance classes where its own have not enough pairs.
    """

    tables: tuple[Callable[[Path], Pairs], ...]
    beyond: tuple[Callable[[Path], Pairs], ...] = ()


FITS: Mapping[str, Fit] = {
    "Belgium": Fit((belgium,)),
    "Great Britain": Fit((britain,)),
    "Europe": Fit((belgium, lower_saxony, europe_timed)),
    "metropolitan areas of the United States": Fit((tarrant,), (united_states_classes, capitols)),
    "the United States": Fit((united_states_classes, capitols)),
}


def _thinned(pairs: Pairs) -> Pairs:
    step = -(-len(pairs.straight) // MOST_PAIRS)
    return pairs.part(np.arange(len(pairs.straight)) % step == 0)


_CLASS_COUNT = len(CLASSES_KM) + 1


def _share_of_classes(pairs: Pairs) -> Floats:
    """How much a table counts in each distance class, by its different ends there [0-1]."""
    of = np.digitize(pairs.straight, CLASSES_KM)
    ends = [len(np.unique(pairs.ends[of == n])) for n in range(_CLASS_COUNT)]
    return np.minimum(1, np.array(ends) / ENOUGH)


def balanced(tables: Sequence[Pairs], beyond: Sequence[Pairs] = ()) -> Pairs:
    """Some tables as one, each of the same weight in every distance class, and every class as well.

    A table of fewer than `ENOUGH` ends in a class counts for less there.

    Args:
        tables: those that come first.
        beyond: those that fill up the classes where these do not count in full.
    """
    own, more = ([_share_of_classes(pairs) for pairs in part] for part in (tables, beyond))
    room = 1 - np.minimum(1, np.sum(own, axis=0))
    shares = [*own, *(share * room for share in more)]
    of_class = np.maximum(np.sum(shares, axis=0), 1)
    weighed = []
    for pairs, share in zip((*tables, *beyond), shares, strict=True):
        of = np.digitize(pairs.straight, CLASSES_KM)
        in_class = np.bincount(of, pairs.weight, _CLASS_COUNT)
        weight = pairs.weight * (share / np.maximum(in_class, 1e-9) / of_class)[of]
        weighed.append(replace(pairs, weight=weight))
    every = together(weighed)
    return every.part(every.weight > 0)


def _covered(straight: Floats) -> slice:
    """The knots up to the first that no pair lies beyond."""
    knots = np.array(KNOTS_KM)
    return slice(0, min(int(np.searchsorted(knots, straight.max())), len(knots) - 1) + 1)


def _hats(straight: Floats, knots: Floats) -> csr_array:
    """How much each knot [ln km] counts for each pair: a row a pair, two entries in it."""
    at = np.clip(np.log(straight), knots[0], knots[-1])
    left = np.clip(np.searchsorted(knots, at, side="right") - 1, 0, len(knots) - 2)
    share = (at - knots[left]) / (knots[left + 1] - knots[left])
    rows = np.arange(len(at))
    return csr_array(
        coo_array(
            (np.concatenate([1 - share, share]), (np.tile(rows, 2), np.concatenate([left, left + 1]))),
            shape=(len(at), len(knots)),
        )
    )


def _blocks(rows: Any) -> csr_array:
    """A matrix made of smaller ones, None for zeros."""
    return csr_array(block_array(rows))


def quantile_curve(
    straight: Floats,
    value: Floats,
    weight: Floats,
    quantile: float,
    slopes: tuple[float, Floats | float],
    between: tuple[Floats | None, Floats | None] = (None, None),
) -> Floats:
    """The logarithms of a curve at its knots.

    Nearer than its pairs it goes on as straight as it can, further it stays as it is there.

    Args:
        straight: straight line of each pair [km].
        value: logarithm of what is fitted.
        weight: of each pair.
        quantile: share of the pairs below the curve [0-1].
        slopes: the least and the greatest slope, as a power of the distance; the latter also knot by knot.
        between: what the logarithms stay above and below, if anything.
    """
    covered = _covered(straight)
    knots = np.log(KNOTS_KM)[covered]
    hats, count, pairs = _hats(straight, knots), len(knots), len(straight)
    steps = np.diff(knots)
    slope = csr_array(np.diff(np.eye(count), axis=0) / steps[:, None])
    bend = slope[1:] - slope[:-1]
    bends = count - 2
    weight = weight / weight.sum()
    cost = np.concatenate(
        [np.zeros(count), quantile * weight, (1 - quantile) * weight, np.full(2 * bends, STIFFNESS)]
    )
    equal = _blocks(
        [
            [hats, eye_array(pairs), -eye_array(pairs), None, None],
            [bend, None, None, eye_array(bends), -eye_array(bends)],
        ]
    )
    sides = csr_array((2 * (count - 1), cost.size - count))
    within = _blocks([[_blocks([[slope], [-slope]]), sides]])
    least, greatest = slopes[0], np.broadcast_to(slopes[1], len(KNOTS_KM) - 1)[: count - 1]
    low, high = (None if limit is None else limit[covered] for limit in between)
    bounds = [(None if low is None else low[n], None if high is None else high[n]) for n in range(count)] + [
        (0, None)
    ] * (cost.size - count)
    # The types that come with SciPy know no sparse matrix here.
    solve: Any = linprog
    found = solve(
        cost,
        A_ub=within,
        b_ub=np.concatenate([greatest, np.full(count - 1, -least)]),
        A_eq=equal,
        b_eq=np.concatenate([value, np.zeros(bends)]),
        bounds=bounds,
        method="highs",
    )
    if not found.success:
        raise ValueError(f"the curve could not be fitted: {found.message}")
    around = (covered.start, len(KNOTS_KM) - covered.stop)
    return np.pad(np.asarray(found.x[:count], dtype=np.float64), around, mode="edge")


def _band(pairs: Pairs, figure: str, slopes: tuple[float, Floats | float]) -> Band:
    """The likely curve, and the outer ones by how far off it is from pairs that it was not fitted to.

    So an outer curve also admits what differs between one town and the next; the share that it leaves outside
    is that of conformal prediction, every end of a drive one case (R. F. Barber and others, Predictive
    inference with the jackknife+, Annals of Statistics 49, 2021).
    """
    value = np.log(getattr(pairs, figure))

    def likely_curve(mask: NDArray[np.bool_]) -> Floats:
        part = pairs.part(mask)
        return quantile_curve(part.straight, value[mask], part.weight, 0.5, slopes)

    every = np.ones(len(value), dtype=bool)
    likely = likely_curve(every)
    at, weight, off = [], [], []
    for fold in range(FOLDS):
        left_out = (pairs.ends % FOLDS == fold).any(axis=1)
        curve = likely_curve(~left_out)
        hats = _hats(pairs.straight[left_out], np.log(KNOTS_KM))
        at.append(pairs.straight[left_out])
        weight.append(pairs.weight[left_out])
        off.append(value[left_out] + hats @ (likely - curve))
    # The outer curves rise with distance in sum, too, but may be as uneven as the roads are.
    drawn = (np.concatenate(at), np.concatenate(off), np.concatenate(weight))
    outer = (-0.95, 0.5)
    # Of so few towns the next one lies beyond all more often than the share of pairs tells.
    tail = max(TAIL - (1 - TAIL) / len(np.unique(pairs.ends)), 0.01)
    low = quantile_curve(*drawn, tail, outer, (None, likely - APART))
    high = quantile_curve(*drawn, 1 - tail, outer, (likely + APART, None))
    return Band(*(Curve(tuple(float(v) for v in np.exp(logs))) for logs in (low, likely, high)))


def fitted(name: str, folder: Path, without: Sequence[Callable[[Path], Pairs]] = ()) -> tuple[Band, Band]:
    """The bands of detour and pace of one set of roads, without what is held out.

    Args:
        name: one of `FITS`.
        folder: of the open tables.
        without: tables that are left out altogether.
    """
    fit = FITS[name]

    def of(figure: str, least: float, slopes: tuple[float, Floats | float]) -> Band:
        def known(readers: Sequence[Callable[[Path], Pairs]]) -> list[Pairs]:
            tables = (_thinned(read(folder).fitted) for read in readers if read not in without)
            parts = (pairs.part(~np.isnan(getattr(pairs, figure))) for pairs in tables)
            return [
                replace(pairs, **{figure: np.maximum(getattr(pairs, figure), least)})
                for pairs in parts
                if len(pairs.straight)
            ]

        own = known(fit.tables)
        return _band(balanced(own, known(fit.beyond)) if own else balanced(known(fit.beyond)), figure, slopes)

    detours_rise = np.where(np.array(KNOTS_KM[1:]) <= TOWNS_APART_KM, 0, 0.5)
    return of("detour", DETOUR_AT_LEAST, (-0.95, detours_rise)), of("pace", 0.01, (-0.95, -0.005))


@dataclass(frozen=True)
class Errors:
    """How far off one figure is on some pairs, all as shares.

    Attributes:
        n: pairs.
        median, p90: of the distance between estimate and truth, as a share of the estimate.
        bias: median of the estimate over the truth, less one.
        below, above: pairs below and above the range.
        width: of the range, as a share of the likely figure; median.
        needed: how wide the middle 90 % of the truth is, as a share of the likely figure.
        bias_error, needed_error: standard errors of these, by leaving out a tenth of the origins in turn.
    """

    n: int
    median: float
    p90: float
    bias: float
    below: float
    above: float
    width: float
    needed: float
    bias_error: float
    needed_error: float

    @property
    def inside(self) -> float:
        """Pairs in the range."""
        return 1 - self.below - self.above


@dataclass(frozen=True)
class Ratios:
    """One figure of some pairs, all over its likely value: one array entry a pair.

    Attributes:
        truth: what it is.
        low, high: the ends of its range.
        origin: number of the place where the pair begins.
    """

    truth: Floats
    low: Floats
    high: Floats
    origin: NDArray[np.int64]

    @property
    def bias(self) -> float:
        """Median of the estimate over the truth, less one."""
        return float(np.median(1 / self.truth) - 1)

    @property
    def needed(self) -> float:
        """How wide the middle 90 % of the truth is."""
        low, high = np.quantile(self.truth, (0.05, 0.95))
        return float(high - low)

    @property
    def width(self) -> float:
        """How wide the range is, median."""
        return float(np.median(self.high - self.low))

    @property
    def inside(self) -> float:
        """Share of the pairs in the range."""
        return float(np.mean((self.truth >= self.low) & (self.truth <= self.high)))

    def part(self, which: NDArray[np.bool_] | NDArray[np.int64]) -> "Ratios":
        """Some of the pairs, by a mask or by their numbers."""
        return Ratios(*(getattr(self, field.name)[which] for field in fields(self)))


def ratios(pairs: Pairs, band: Band, figure: str) -> Ratios:
    """The pairs whose figure is known beside a band.

    Args:
        pairs: those where the figure is known count.
        band: of the detour or of the pace.
        figure: 'km' or 'minutes'.
    """
    detour = figure == "km"
    known = pairs.part(~np.isnan(pairs.detour if detour else pairs.pace))
    truth = 1 + known.detour if detour else known.pace
    spans = [band.at(float(km)) for km in known.straight]
    low, likely, high = (
        np.array([getattr(span, end) for span in spans]) + detour for end in ("low", "likely", "high")
    )
    return Ratios(truth / likely, low / likely, high / likely, known.ends[:, 0])


_TENTHS = 10


def errors(pairs: Pairs, band: Band, figure: str) -> Errors:
    """How far off a band is; arguments as of `ratios`."""
    of = ratios(pairs, band, figure)
    off = np.abs(of.truth - 1)
    tenth = np.unique(of.origin, return_inverse=True)[1] % _TENTHS
    without = [of.part(tenth != n) for n in range(_TENTHS) if (tenth != n).any()]
    bias_error, needed_error = np.sqrt(
        (_TENTHS - 1) * np.var([(left.bias, left.needed) for left in without], axis=0)
    )
    return Errors(
        n=len(of.truth),
        median=float(np.median(off)),
        p90=float(np.quantile(off, 0.9)),
        bias=of.bias,
        below=float(np.mean(of.truth < of.low)),
        above=float(np.mean(of.truth > of.high)),
        width=of.width,
        needed=of.needed,
        bias_error=float(bias_error),
        needed_error=float(needed_error),
    )


def by_class(pairs: Pairs, edges: Sequence[float] = CLASSES_KM) -> dict[tuple[float, float], Pairs]:
    """The pairs of each distance class that has any."""
    found = {
        (near, far): pairs.part((pairs.straight >= near) & (pairs.straight < far))
        for near, far in pairwise(edges)
    }
    return {edge: part for edge, part in found.items() if len(part.straight)}
