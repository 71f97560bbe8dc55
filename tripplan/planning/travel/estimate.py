"""How far and how long a drive probably is, from nothing but its two ends."""

from tripplan.documents.where import Point
from tripplan.language import wording
from tripplan.planning.travel.distance import geodesic_km
from tripplan.planning.travel.drive import Drive, KnownBy
from tripplan.planning.travel.estimate_tables import RoadsTable, roads_table
from tripplan.planning.travel.metropolitan import within_metropolitan_areas
from tripplan.values.ranges import Origin, Source

WATER_NOTE = (
    "The estimate does not see water or mountains: a lake, a river without a bridge, a ferry or a pass can "
    "make the way much longer."
)
TRAFFIC_NOTE = "The time is for free-flowing traffic: rush hours, roadworks and winter weather come on top."


def estimate_drive(origin: Point, destination: Point, country: str) -> Drive:
    """Estimate a drive from its straight line.

    What the road adds to the straight line is a share that changes with distance, and the speed rises with
    distance; both, and their 90 % ranges, come from published tables of the country's roads or, where there
    is none, from several countries' tables together.

    Args:
        origin: where the drive starts.
        destination: where it ends; swapping the two changes nothing.
        country: the destination's ISO 3166-1 code of two letters.

    Returns:
        The drive; never shorter than the straight line, and further on the same kind of roads is never
        shorter or quicker.

    Raises:
        ValueError: a latitude lies outside -90 to 90 degrees, or a coordinate is no finite number.
    """
    straight_km = geodesic_km(origin, destination)
    table = roads_table(country, metropolitan=within_metropolitan_areas(origin, destination))
    km = table.detour.at(straight_km).map(lambda detour: straight_km * (1 + detour))
    return Drive(
        km=km,
        minutes=table.pace.at(straight_km).map(lambda pace: straight_km * pace),
        known_by=KnownBy.ESTIMATE,
        source=Source(Origin.ESTIMATE, _explanation(table, straight_km)),
        notes=_notes(table, straight_km),
    )


def _explanation(table: RoadsTable, straight_km: float) -> str:
    factor = 1 + table.detour.at(straight_km).likely
    text = f"{factor:.2f} times the straight line, as on roads in {table.roads_of}: {table.source}"
    error = table.error_at(straight_km)
    if error is None:
        return text
    told = ((error.km, "distance"), (error.minutes, "time"))
    closeness = wording.listed([f"{value:.1%} of the {what}" for value, what in told if value is not None])
    return f"{text}; of drives this long that were kept for checking, half were closer than {closeness}"


def _notes(table: RoadsTable, straight_km: float) -> tuple[str, ...]:
    notes = [WATER_NOTE, TRAFFIC_NOTE]
    if not table.errors:
        notes.append(
            f"No table of driving times was found for {table.roads_of}, so the range is wide; typing in the "
            "figures of a drive you know makes the plan better."
        )
    if straight_km > table.longest_km:
        notes.append("This is further than any pair of places the estimate was made from.")
    return tuple(notes)
