"""The fitted parameters of the drive estimate, with where they come from and how far off they are."""

from dataclasses import dataclass

from tripplan.values.ranges import Range


@dataclass(frozen=True)
class Curve:
    """A figure that goes from one value nearby to another far away.

    Attributes:
        far: the value far away.
        near: the value at no distance.
        halfway_km: the straight-line distance at which it is the mean of both [km].
    """

    far: float
    near: float
    halfway_km: float

    def at(self, straight_km: float) -> float:
        """The value at a straight-line distance [km]."""
        return self.far + (self.near - self.far) / (1 + straight_km / self.halfway_km)


@dataclass(frozen=True)
class Band:
    """A curve for each end of the middle 90 %, and the likely one between them."""

    low: Curve
    likely: Curve
    high: Curve

    def at(self, straight_km: float) -> Range:
        """Low, likely and high at a straight-line distance [km]."""
        return Range(self.low.at(straight_km), self.likely.at(straight_km), self.high.at(straight_km))


@dataclass(frozen=True)
class RoadsTable:
    """What is known of one country's roads, or of those of several.

    Attributes:
        roads_of: whose roads, in words.
        countries: ISO 3166-1 codes; empty for all that no other table has.
        detour: what the road adds to the straight line, as a share of it; above zero [-].
        straight_speed: straight-line distance over driving time [km/h]; its low end is the slow one.
        longest_km: the longest straight line in the source [km].
        source: what the curves were made from: authority, title, year, number of pairs.
        median_km_error: half the pairs held out of the fit were closer than this; None if none were [-].
        median_minutes_error: the same for the driving time [-].
    """

    roads_of: str
    countries: frozenset[str]
    detour: Band
    straight_speed: Band
    longest_km: float
    source: str
    median_km_error: float | None = None
    median_minutes_error: float | None = None


BELGIUM = RoadsTable(
    roads_of="Belgium",
    countries=frozenset({"BE"}),
    detour=Band(
        Curve(0.08126, 0.09811, 15.42),
        Curve(0.1024, 0.2676, 17.79),
        Curve(0.1186, 0.6324, 14.15),
    ),
    straight_speed=Band(
        Curve(84.85, 20.21, 64.08),
        Curve(90.24, 29.85, 57.14),
        Curve(92.05, 30.45, 18.23),
    ),
    longest_km=278,
    source="shortest road and fastest free-flow time between 50 Belgian towns (2450 ordered pairs, of which "
    "1122 were fitted), routed on OpenStreetMap; example set of a public constraint solver",
    median_km_error=0.018,
    median_minutes_error=0.069,
)

GREAT_BRITAIN = RoadsTable(
    roads_of="Great Britain",
    countries=frozenset({"GB"}),
    detour=Band(
        Curve(0.1878, 0.2351, 17.03),
        Curve(0.3058, 0.683, 27.94),
        Curve(0.3974, 4.572, 18.08),
    ),
    straight_speed=Band(
        Curve(69.96, 8.271, 136.3),
        Curve(77.68, 26.27, 102.7),
        Curve(89.08, 35.01, 77.01),
    ),
    longest_km=1000,
    source="detour and speed of 5434 random routes in Great Britain by distance class (11 classes, 8 of them "
    "fitted); the spread of times is pieced together from that of the detours and from Belgian speeds",
    median_km_error=0.088,
    median_minutes_error=0.106,
)

EUROPE = RoadsTable(
    roads_of="Europe",
    countries=frozenset(
        {"AD", "AT", "CH", "DE", "DK", "ES", "FR", "GI", "GR"}
        | {"IT", "LI", "LU", "MC", "NL", "PT", "SE", "SM", "VA"}
    ),
    detour=Band(
        Curve(0.3402, 0.08327, 2014),
        Curve(0.3743, 0.2137, 548),
        Curve(0.5335, 3.865, 9.711),
    ),
    straight_speed=Band(
        Curve(64.22, 8.115, 70.36),
        Curve(75.25, 15.74, 24.1),
        Curve(88.27, 23.32, 20.6),
    ),
    longest_km=3083,
    source="road km between 21 European cities (204 usable pairs; The Cambridge Encyclopaedia, as in R "
    "datasets::eurodist) for long distances, Belgian and British tables in equal parts for short ones; "
    "times from the latter two",
    median_km_error=0.067,
)

UNITED_STATES = RoadsTable(
    roads_of="the United States",
    countries=frozenset({"US"}),
    detour=Band(Curve(0.07, 0.12, 23), Curve(0.237, 0.41, 23), Curve(0.56, 0.96, 23)),
    straight_speed=Band(Curve(52, 15, 25), Curve(78, 30, 25), Curve(102, 36, 25)),
    longest_km=4500,
    source="no open table of both miles and minutes was found. Detour: road-atlas miles between US cities "
    "(1.23 to 1.25 times the straight line; roads of the 1950s); its spread 0.17 from R. H. Ballou, "
    "H. Rahardja, N. Sakai, Selected country circuity factors, Transportation Research A 36 (2002), from "
    "memory; 1.34 at 15 km, between 1.2 (G. F. Newell 1980) and 1.417 (F. P. Boscoe, K. A. Henry, "
    "M. S. Zdeb 2012, from memory). Speed: 'a mile a minute' on long drives, 40 to 70 miles an hour, "
    "common practice, no source",
)
"""Published factors, not fitted. The detour falls from nearby to far as fast as in Belgium and Great Britain.

The far detour 0.237 is the atlas mean, and its 90 % range that of a log-normal with that mean and standard
deviation 0.17; a mile a minute is 96.6 km/h on the road, so 78 km/h along the straight line; 40 mph on a
usual and 70 mph on a nearly straight way (1.10) give 52 and 102 km/h.
"""

OTHER_COUNTRIES = RoadsTable(
    roads_of="other countries",
    countries=frozenset(),
    detour=Band(Curve(0.07, 0.08, 15), EUROPE.detour.likely, Curve(0.56, 4.6, 18.1)),
    straight_speed=Band(Curve(52, 8, 136), EUROPE.straight_speed.likely, Curve(102, 36, 18)),
    longest_km=3083,
    source="no table for this country; the range runs from the straightest and fastest roads of all tables "
    "at hand to the most winding and slowest",
)

TABLES = (BELGIUM, GREAT_BRITAIN, EUROPE, UNITED_STATES)


def roads_table(country: str) -> RoadsTable:
    """The table for a country, or the one for other countries.

    Args:
        country: ISO 3166-1 code of two letters.
    """
    return next((table for table in TABLES if country in table.countries), OTHER_COUNTRIES)
