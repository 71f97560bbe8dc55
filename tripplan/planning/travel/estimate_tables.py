"""The fitted curves of the drive estimate, with where they come from and how far off they are.

The curves stand in `drive_curves.csv` and their errors in `drive_errors.csv`, parts of the program that
`python -m tests.published.write_figures` writes; `tests/published/travel_fit.md` tells how good they are.
"""

import csv
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from importlib.resources import files

from tripplan.planning.travel.estimate_curves import Band, Curve, bands_in


@dataclass(frozen=True)
class MedianError:
    """How far off half of the drives of one distance class are at most that were kept out of the fit.

    Attributes:
        below_km: where the class ends, straight line [km].
        km: error of the road distance, as a share of it; None where no distances were kept [-].
        minutes: the same for the driving time [-].
    """

    below_km: float
    km: float | None
    minutes: float | None


@dataclass(frozen=True)
class RoadsTable:
    """What is known of one country's roads, or of those of several.

    Attributes:
        roads_of: whose roads, in words.
        countries: ISO 3166-1 codes; empty where more than the country decides, or for all that no other has.
        detour: what the road adds to the straight line, as a share of it; above zero [-].
        pace: driving time for each kilometre of the straight line [min/km].
        longest_km: the longest straight line in the source [km].
        source: what the curves were made from: authority, title, year, number of pairs.
        errors: on what was held out of the fit, by distance, nearest first; empty where nothing was.
    """

    roads_of: str
    countries: frozenset[str]
    detour: Band
    pace: Band
    longest_km: float
    source: str
    errors: tuple[MedianError, ...] = ()

    def error_at(self, straight_km: float) -> MedianError | None:
        """The error of drives as long as this one, or of the longest that were kept out of the fit."""
        return next((e for e in self.errors if straight_km < e.below_km), None) or (
            self.errors[-1] if self.errors else None
        )


def _file(name: str) -> str:
    return files("tripplan.planning.travel").joinpath(name).read_text(encoding="utf-8")


def _errors() -> Mapping[str, tuple[MedianError, ...]]:
    found: dict[str, tuple[MedianError, ...]] = {}
    for row in csv.DictReader(_file("drive_errors.csv").splitlines()):
        km, minutes = (float(row[name]) if row[name] else None for name in ("km", "minutes"))
        found[row["roads_of"]] = (
            *found.get(row["roads_of"], ()),
            MedianError(float(row["below_km"]), km, minutes),
        )
    return found


BANDS = bands_in(_file("drive_curves.csv"))
"""All bands of the file, by whose roads and which figure."""
_ERRORS = _errors()


def _fitted(roads_of: str, countries: frozenset[str], longest_km: float, source: str) -> RoadsTable:
    detour, pace = (BANDS[roads_of, figure] for figure in ("detour", "pace"))
    return RoadsTable(roads_of, countries, detour, pace, longest_km, source, _ERRORS.get(roads_of, ()))


BELGIUM = _fitted(
    "Belgium",
    frozenset({"BE"}),
    278,
    "shortest road and fastest free-flow time between 50 Belgian towns (2450 ordered pairs, of which 1122 "
    "were fitted), routed on OpenStreetMap; example set of a public constraint solver",
)

GREAT_BRITAIN = _fitted(
    "Great Britain",
    frozenset({"GB"}),
    1000,
    "detour and speed of 5434 random routes in Great Britain by distance class (11 classes, 8 of them "
    "fitted); the spread of times is pieced together from that of the detours and from Belgian speeds",
)

EUROPE = _fitted(
    "Europe",
    frozenset(
        {"AD", "AT", "CH", "DE", "DK", "ES", "FR", "GI", "GR"}
        | {"IT", "LI", "LU", "MC", "NL", "PT", "SE", "SM", "VA"}
    ),
    3083,
    "road km between 21 European cities (204 usable pairs; The Cambridge Encyclopaedia, as in R "
    "datasets::eurodist) for long distances, Belgian and British tables in equal parts for short ones; times "
    "from these two and from 6000 drives in southern Lower Saxony (data of the R package REAT)",
)

UNITED_STATES = _fitted(
    "the United States",
    frozenset({"US"}),
    4200,
    "road km and minutes between 48 state capitols (1128 pairs, routed by a commercial service in 2015; "
    "repository rhiever, CC BY 4.0); detours and the times of three commercial services for 7 500 drives in "
    "49 states by distance class (wybert, Comparative Study of Methods for Drive Time Estimation, MIT)",
)

METROPOLITAN_AREAS = _fitted(
    "metropolitan areas of the United States",
    frozenset(),
    4200,
    "minutes of 6 720 drives in Tarrant County, Texas, routed on OpenStreetMap (data of the R package "
    "spopt-r, MIT); distances, and what is further than a county is wide, as elsewhere in the United States",
)
"""For drives within such areas; how far others differ from that one county is not known."""


def _widest(bands: Sequence[Band], likely: Curve) -> Band:
    """From the lowest of some bands to the highest of them, at every distance."""

    def at_each_knot(of: Callable[[Iterable[float]], float], end: str) -> Curve:
        return Curve(tuple(map(of, zip(*(getattr(band, end).values for band in bands), strict=True))))

    return Band(at_each_knot(min, "low"), likely, at_each_knot(max, "high"))


TABLES = (BELGIUM, GREAT_BRITAIN, EUROPE, UNITED_STATES, METROPOLITAN_AREAS)

OTHER_COUNTRIES = RoadsTable(
    roads_of="other countries",
    countries=frozenset(),
    detour=_widest([table.detour for table in TABLES], EUROPE.detour.likely),
    pace=_widest([table.pace for table in TABLES], EUROPE.pace.likely),
    longest_km=3083,
    source="no table for this country; the range runs from the straightest and fastest roads of all tables "
    "at hand to the most winding and slowest",
)


def roads_table(country: str, *, metropolitan: bool = False) -> RoadsTable:
    """The table for a country, or the one for other countries.

    Args:
        country: ISO 3166-1 code of two letters.
        metropolitan: whether the drive begins and ends in metropolitan areas; counts in the United States.
    """
    if metropolitan and country in UNITED_STATES.countries:
        return METROPOLITAN_AREAS
    return next((table for table in TABLES if country in table.countries), OTHER_COUNTRIES)
