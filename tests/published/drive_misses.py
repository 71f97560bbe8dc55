"""Which classes of drives miss what the estimate aims at, and whether that is more than chance.

An interval is the middle 90 % of what the figure is when the origins are drawn anew with replacement, each
with all its drives (A. C. Davison, D. V. Hinkley, Bootstrap Methods and their Application, 1997, 3.8).
Where the aim lies in it, other towns of the same kind may well have met it. Where every drive lies in the
range, drawing anew tells nothing; the lower end is then that of exact binomial limits with an origin a case
(C. J. Clopper, E. S. Pearson, The use of confidence or fiducial limits, Biometrika 26, 1934).
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

import numpy as np

from tests.published.drive_fit import Ratios

Span = tuple[float, float]

DRAWS = 400
"""So many times the origins are drawn anew [-]."""
FEWEST = 10
"""Classes of fewer held-out drives are not judged [-]."""


@dataclass(frozen=True)
class Aim:
    """One thing that each class of drives should meet.

    Attributes:
        of: how it is measured on some drives.
        least, most: what is aimed at.
        words: how the figure is written.
    """

    of: Callable[[Ratios], float]
    least: float
    most: float
    words: Callable[[float], str]

    def met_by(self, value: float) -> bool:
        """Whether a figure is as it should be."""
        return self.least <= value <= self.most


def _needed_times(of: Ratios) -> float:
    return of.width / of.needed if of.needed else np.inf


AIMS: Mapping[str, Aim] = {
    "bias": Aim(lambda of: of.bias, -0.04, 0.04, "{:+.1%}".format),
    "inside": Aim(lambda of: of.inside, 0.88, 0.95, "{:.1%}".format),
    "width over needed": Aim(_needed_times, 0.0, 1.3, "{:.2f}".format),
}
"""What is aimed at in each class."""


@dataclass(frozen=True)
class Miss:
    """One aim that a class of drives misses.

    Attributes:
        aim: which of `AIMS`.
        n, origins: held-out drives, and the places that they begin at.
        found: the figure on these.
        fitted: the figure on the drives of the class that the curve was fitted to, if there are any.
        interval: its middle 90 % by drawing origins anew; None where the drives are stand-ins.
    """

    aim: str
    n: int
    origins: int
    found: float
    fitted: float | None
    interval: Span | None

    @property
    def is_chance(self) -> bool:
        """Whether the aim may be met by other origins of the same kind."""
        if self.interval is None:
            return False
        low, high = self.interval
        return low <= AIMS[self.aim].most and high >= AIMS[self.aim].least

    @property
    def line(self) -> str:
        """Its cells of the table."""
        words = AIMS[self.aim].words
        interval = "not known" if self.interval is None else " to ".join(map(words, self.interval))
        verdict = "not known" if self.interval is None else ("yes" if self.is_chance else "**no**")
        fitted = "" if self.fitted is None else words(self.fitted)
        found = words(self.found)
        return f"{self.n} | {self.origins} | {self.aim} | {found} | {interval} | {verdict} | {fitted}"


def misses(held_out: Ratios, fitted: Ratios, *, stand_ins: bool) -> Iterator[Miss]:
    """The aims that one class of drives misses.

    Args:
        held_out: the drives that are judged.
        fitted: those of the same class that the curve was fitted to.
        stand_ins: whether they are drawn from published points of the class and no drives that were counted.
    """
    n, origins = len(held_out.truth), len(np.unique(held_out.origin))
    missed = {
        name: aim.of(held_out)
        for name, aim in AIMS.items()
        if n >= FEWEST and not aim.met_by(aim.of(held_out))
    }
    intervals = {} if stand_ins else _intervals(held_out, tuple(missed))
    for name, found in missed.items():
        before = AIMS[name].of(fitted) if len(fitted.truth) >= FEWEST else None
        yield Miss(name, n, origins, found, before, intervals.get(name))


def _intervals(of: Ratios, aims: tuple[str, ...]) -> Mapping[str, Span]:
    if not aims:
        return {}
    number = np.unique(of.origin, return_inverse=True)[1]
    count = int(number.max()) + 1
    of_origin = [np.flatnonzero(number == origin) for origin in range(count)]
    random = np.random.default_rng(0)
    drawn = [
        of.part(np.concatenate([of_origin[origin] for origin in random.integers(count, size=count)]))
        for _ in range(DRAWS)
    ]
    spans = {aim: np.quantile([AIMS[aim].of(part) for part in drawn], (0.05, 0.95)) for aim in aims}
    found = {aim: (float(low), float(high)) for aim, (low, high) in spans.items()}
    if found.get("inside", (0.0, 1.0))[0] == 1:
        found["inside"] = (0.05 ** (1 / count), 1.0)
    return found
