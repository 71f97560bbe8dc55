"""How far off the drive estimate is, as tables."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from tests.published.drive_fit import CLASSES_KM, FITS, Errors, by_class, errors, fitted, ratios
from tests.published.drive_misses import FEWEST, Miss, misses
from tests.published.drive_tables import (
    FAR_OFF_CITIES,
    NO_PAIRS,
    Pairs,
    belgium,
    britain,
    capitols,
    europe,
    lower_saxony,
    tarrant,
    united_states_classes,
)
from tripplan.planning.travel.estimate_curves import Band
from tripplan.planning.travel.rush_hours import METROPOLITAN_RUSH, VERY_LARGE_CITY_RUSH

Bands = Mapping[tuple[str, str], Band]
FIGURES = {"km": "detour", "minutes": "pace"}
"""The figures that are judged, and the bands that they come from."""


@dataclass(frozen=True)
class Judged:
    """One table beside the curves that are judged by it.

    Attributes:
        name: what the table is, in words.
        read: its reader.
        roads: whose curves.
        source: authority, title, year.
    """

    name: str
    read: Callable[[Path], Pairs]
    roads: str
    source: str
    without: bool = False
    """Whether the curves are fitted anew without this table."""
    stand_ins: bool = False
    """Whether its drives are drawn from published points of each class."""


def cities(folder: Path) -> Pairs:
    """The European cities without those at the edge."""
    return europe(folder, FAR_OFF_CITIES)


_BELGIUM = "50 Belgian towns, shortest road and fastest time on OpenStreetMap; example set of a public solver"
_BRITAIN = "5 434 random routes in Great Britain, by distance class"
_SAXONY = "420 sub-regions of southern Lower Saxony, data of the R package REAT"
JUDGED = (
    Judged("Belgian towns", belgium, "Belgium", _BELGIUM),
    Judged("British routes (implied)", britain, "Great Britain", _BRITAIN, stand_ins=True),
    Judged(
        "European cities",
        europe,
        "Europe",
        "The Cambridge Encyclopaedia, as in R datasets::eurodist (204 usable pairs)",
    ),
    Judged("the same without Athens and Stockholm", cities, "Europe", "the same"),
    Judged("Belgian towns by the European curves", belgium, "Europe", _BELGIUM),
    Judged("Lower Saxony", lower_saxony, "Europe", _SAXONY),
    Judged("Lower Saxony, never fitted", lower_saxony, "Europe", _SAXONY, without=True),
    Judged(
        "census tracts of a Texas county",
        tarrant,
        "metropolitan areas of the United States",
        "Tarrant County, free flow on OpenStreetMap; data of the R package spopt-r (MIT)",
    ),
    Judged(
        "three commercial services in 49 states (implied)",
        united_states_classes,
        "the United States",
        "wybert, Comparative Study of Methods for Drive Time Estimation (MIT), by distance class",
        stand_ins=True,
    ),
    Judged(
        "state capitols",
        capitols,
        "the United States",
        "48 state capitols by a commercial service, 2015; repository rhiever (CC BY 4.0)",
    ),
)

QUOTED_BELOW_KM = (20.0, 160.0, 5000.0)
"""Where the classes end that the program quotes its errors by: short, middle and far [km]."""
QUOTED = {
    "Belgium": (belgium,),
    "Great Britain": (britain,),
    "Europe": (belgium, lower_saxony, europe),
    "the United States": (united_states_classes, capitols),
    "metropolitan areas of the United States": (tarrant,),
}
"""The tables whose held-out part gives the error that is quoted beside each set of roads."""


def quoted_errors(bands: Bands, folder: Path) -> Iterator[list[str]]:
    """Median errors on what was held out, by roads and class; empty where a figure was not held out.

    Where several tables have pairs in a class, the error is the mean of theirs. Where none has, those tell
    it that fill up the classes in the fit.
    """
    for roads, tables in QUOTED.items():
        for near, far in zip((0.0, *QUOTED_BELOW_KM), QUOTED_BELOW_KM, strict=False):
            for readers in (tables, FITS[roads].beyond):
                held_out = [by_class(read(folder).kept_out, (near, far)).get((near, far)) for read in readers]
                told = [_mean_error(held_out, bands[roads, of], figure) for figure, of in FIGURES.items()]
                if any(told):
                    yield [roads, f"{far:g}", *told]
                    break


def _mean_error(tables: Sequence[Pairs | None], band: Band, figure: str) -> str:
    found = [
        errors(pairs, band, figure).median
        for pairs in tables
        if pairs is not None and not np.isnan(getattr(pairs, FIGURES[figure])).all()
    ]
    return f"{np.mean(found):.3f}" if found else ""


def missed(bands: Bands, folder: Path) -> Iterator[tuple[Judged, str, str, Miss]]:
    """Every aim that is missed on what was held out: table, figure, distance class, miss."""
    for judged in JUDGED:
        pairs, of_roads = judged.read(folder), _bands_for(judged, bands, folder)
        for figure, of in FIGURES.items():
            band = of_roads[judged.roads, of]
            fitted_classes = by_class(pairs.fitted)
            for edges, part in by_class(pairs.kept_out).items():
                held_out = ratios(part, band, figure)
                before = ratios(fitted_classes.get(edges, NO_PAIRS), band, figure)
                for miss in misses(held_out, before, stand_ins=judged.stand_ins):
                    yield judged, figure, _label(edges), miss


def _label(edges: tuple[float, float]) -> str:
    near, far = edges
    return f"{near:g} to {far:g}" if far < CLASSES_KM[-1] else f"{near:g} and more"


HEAD = (
    "| straight line, km | part | figure | n | median error | p90 | bias | below | inside | above "
    "| width | needed |\n|---|---|---|---|---|---|---|---|---|---|---|---|"
)


@dataclass(frozen=True)
class FullRoads:
    """One published figure of how much longer drives take when roads are full, beside the program's.

    Attributes:
        name: where and when.
        used: the program's factor.
        published: that of the source.
        source: authority, title, year.
        checks: whether the program's factor was set without it.
    """

    name: str
    used: float
    published: float
    source: str
    checks: bool


_MOBILITY = "Schrank and others, 2015 Urban Mobility Scorecard, average of the class in 2014, from memory"
_TAXIS = "taxi trips of 20 to 40 km in a very large city, at second hand"
_IN_RUSH = float(METROPOLITAN_RUSH[0].factor)
_LARGEST_IN_RUSH, _LARGEST_BY_DAY = (float(VERY_LARGE_CITY_RUSH[n].factor) for n in (0, -1))
FULL_ROADS = (
    FullRoads(
        "large city, rush hours", _IN_RUSH, 1.19, "FHWA, 2021 Urban Congestion Trends, 2022", checks=False
    ),
    FullRoads("large city, rush hours", _IN_RUSH, 1.23, _MOBILITY, checks=True),
    FullRoads("very large city, rush hours", _LARGEST_IN_RUSH, 1.32, _MOBILITY, checks=True),
    FullRoads("very large city, rush hours", _LARGEST_IN_RUSH, 1.7, _TAXIS, checks=False),
    FullRoads("very large city, by day", _LARGEST_BY_DAY, 1.45, _TAXIS, checks=False),
    FullRoads("medium town, rush hours", 1.0, 1.18, _MOBILITY, checks=True),
    FullRoads("small town, rush hours", 1.0, 1.14, _MOBILITY, checks=True),
)
"""What is known of full roads. Of the open tables at hand none tells drives by the hour."""


def _full_roads() -> Iterator[str]:
    yield from (
        "## Full roads",
        "",
        "How many times as long as on empty roads a drive takes. None of the open tables at hand tells",
        "drives by the hour, so that there is no independent check on counted drives; the classes of one",
        "more published table, remembered and not read again, were not used when the factors were set.",
        "Saturdays, Sundays and other countries: nothing is known, and nothing is added.",
        "",
        "| where and when | program | published | off | set by it | source |",
        "|---|---|---|---|---|---|",
    )
    for known in FULL_ROADS:
        off = known.used / known.published - 1
        yield (
            f"| {known.name} | {known.used:.2f} | {known.published:.2f} | {off:+.0%} "
            f"| {'no' if known.checks else 'yes'} | {known.source} |"
        )


MISSES_HEAD = (
    "## What misses its aim",
    "",
    "Aimed at in each class: a bias of at most 4 %, 88 to 95 % inside, a range at most 1.3 times as",
    f"wide as needed. Classes of fewer than {FEWEST} held-out drives are left out. *Interval*: the",
    "middle 90 % of the figure when the origins are drawn anew with replacement, each with all its",
    "drives; where the aim lies in it, other towns of the same kind may meet it, and where it does not,",
    "the curves miss it. *Fitted half*: the figure on the drives that the curve was fitted to; where",
    "these miss it too, the shape of the curve is to blame. The curves of Europe have to admit",
    "mountains and seas, so that they are wide for Belgium; those of the United States have to admit",
    "drives from any ZIP code, so that they are wide between capitols. A knot more, at 60 km, was tried",
    "for the Texas county and left the width on its fitted half at 1.4 times what is needed.",
    "",
    "| table, curves | straight line, km | figure | n | origins | aim | found | interval | aim in it "
    "| fitted half |",
    "|---|---|---|---|---|---|---|---|---|---|",
)


def _line(label: str, part: str, figure: str, found: Errors) -> str:
    shares = (found.median, found.p90)
    held = (found.below, found.inside, found.above)
    return (
        f"| {label} | {part} | {figure} | {found.n} | {' | '.join(f'{share:.1%}' for share in shares)} "
        f"| {found.bias:+.1%} ± {found.bias_error:.1%} | {' | '.join(f'{share:.1%}' for share in held)} "
        f"| {found.width:.2f} | {found.needed:.2f} ± {found.needed_error:.2f} |"
    )


def table(pairs: Pairs, bands: Bands, roads: str) -> Iterator[str]:
    """One table by distance class on what was held out, and both parts as a whole."""
    yield HEAD
    for figure, of in FIGURES.items():
        known = pairs.part(~np.isnan(getattr(pairs, of)))
        if not len(known.straight):
            continue
        band = bands[roads, of]
        for edges, part in by_class(known.kept_out).items():
            yield _line(_label(edges), "held out", figure, errors(part, band, figure))
        yield _line("all", "held out", figure, errors(known.kept_out, band, figure))
        yield _line("all", "fitted", figure, errors(known.fitted, band, figure))


def _bands_for(judged: Judged, bands: Bands, folder: Path) -> Bands:
    if not judged.without:
        return bands
    anew = fitted(judged.roads, folder, without=(judged.read,))
    return {(judged.roads, of): band for of, band in zip(FIGURES.values(), anew, strict=True)}


def report(bands: Bands, folder: Path) -> str:
    """The tables of the fit as Markdown."""
    lines = [
        "# How far off the drive estimate is",
        "",
        "Written by `python -m tests.published.write_figures`; a test compares it with the curves in use.",
        "*Bias* is the median of the estimate over the truth, less one; *width* that of the 90 % range and",
        "*needed* that of the middle 90 % of the truth, both as a share of the likely figure. The figures",
        "behind ± are standard errors, by leaving out a tenth of the origins in turn. *Implied*: only the",
        "median, 10 % and 90 % points of each class are published, and stand-ins are drawn from them; their",
        "standard errors tell nothing. Held out: every third town or city with all its pairs (Belgium,",
        "Europe), every second origin (Lower Saxony, Texas, capitols), every third or second class (Great",
        "Britain, 49 states).",
    ]
    for judged in JUDGED:
        lines += ["", f"## {judged.name[0].upper()}{judged.name[1:]}: curves of {judged.roads}", ""]
        lines += [f"Source: {judged.source}.", ""]
        lines += table(judged.read(folder), _bands_for(judged, bands, folder), judged.roads)
    lines += ["", *MISSES_HEAD]
    lines += [
        f"| {judged.name}, {judged.roads} | {label} | {figure} | {miss.line} |"
        for judged, figure, label, miss in missed(bands, folder)
    ]
    lines += ["", *_full_roads()]
    return "\n".join(lines) + "\n"
