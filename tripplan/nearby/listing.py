"""The places of a map by their drive from home, without doubles, with what the map says of them."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from pydantic import TypeAdapter, ValidationError

from tripplan.documents.places.offers import prices_in
from tripplan.documents.where import Point
from tripplan.nearby.kinds import Indoors
from tripplan.nearby.map_places import MapPlace
from tripplan.planning.travel.distance import geodesic_km
from tripplan.planning.travel.estimate import estimate_drive
from tripplan.reading.board import BoardRead, read_board
from tripplan.values.opening_hours import HoursText
from tripplan.values.ranges import Range

ATTRIBUTION = "© OpenStreetMap contributors, Open Database License (ODbL)"
_SAME_SPOT_KM = 0.3
"""Two entries of one name nearer than this are one place. No source, our choice [km]."""
_GOOD_WITHOUT_NAME = ("playground", "picnic site", "viewpoint")
_FASTEST_KM_PER_MINUTE = 1.8
"""Nobody drives faster over the straight line; farther places are left out at once. No source."""
_HOURS: TypeAdapter[str] = TypeAdapter(HoursText)


@dataclass(frozen=True)
class NearbyPlace:
    """A place of the map as the family sees it.

    Attributes:
        osm: what it is in the map's data, such as 'way/123'.
        name: its name; empty for a playground that has none.
        kind: its kind.
        point: where it is.
        drive_minutes: the estimated drive from home, one way [min].
        drive_km: likewise [km].
        indoors: where a visit usually happens.
        topics: what can usually be studied at such a place.
        address: street and town as tagged; may be empty.
        opening_hours: in opening_hours syntax, where tagged and readable.
        web: the address of its page; may be empty.
        telephone: may be empty.
        free: whether entry is tagged as free or not; None where it is not tagged.
        charge: what entry is tagged to cost, word for word; may be empty.
        board: that charge as offers; None without one.
        wheelchair: yes, limited, no, or empty.
        changing_table: yes, no, or empty.
    """

    osm: str
    name: str
    kind: str
    point: Point
    drive_minutes: Range
    drive_km: Range
    indoors: Indoors
    topics: tuple[str, ...]
    address: str
    opening_hours: str
    web: str
    telephone: str
    free: bool | None
    charge: str
    board: BoardRead | None
    wheelchair: str
    changing_table: str


def list_nearby(
    places: Sequence[MapPlace],
    home: Point,
    country: str,
    *,
    kinds: Collection[str] = (),
    topic: str = "",
    most_minutes: int | None = None,
) -> list[NearbyPlace]:
    """The places of a map within reach, nearest first.

    Args:
        places: as read from the map.
        home: where drives start.
        country: ISO 3166-1 alpha-2 code, for the estimate of the drive and what a dollar is.
        kinds: only places of these kinds; all when left out.
        topic: only kinds where this can usually be studied; all when left out.
        most_minutes: the longest drive one way [min]; any when left out.

    Returns:
        Nameless places are left out but for playgrounds, picnic sites and viewpoints; of two entries of one
        name at one spot, the one the map says more of stays.
    """
    chosen: list[NearbyPlace] = []
    for place in _without_doubles(places):
        if kinds and place.kind.name not in kinds:
            continue
        if topic and topic.casefold() not in place.kind.topics:
            continue
        if not place.name and place.kind.name not in _GOOD_WITHOUT_NAME:
            continue
        if most_minutes and geodesic_km(home, place.point) > most_minutes * _FASTEST_KM_PER_MINUTE:
            continue
        nearby = _seen_from(place, home, country)
        if most_minutes is None or nearby.drive_minutes.likely <= most_minutes:
            chosen.append(nearby)
    return sorted(chosen, key=lambda nearby: (nearby.drive_minutes.likely, nearby.name, nearby.osm))


def _without_doubles(places: Sequence[MapPlace]) -> Iterator[MapPlace]:
    """Of several entries of one name at one spot, such as a building and a point in it, the fullest."""
    kept: dict[str, list[MapPlace]] = {}
    for place in sorted(places, key=lambda place: -len(place.tags)):
        same_name = kept.setdefault(place.name.casefold() or place.osm, [])
        if not any(geodesic_km(place.point, other.point) < _SAME_SPOT_KM for other in same_name):
            same_name.append(place)
            yield place


def _seen_from(place: MapPlace, home: Point, country: str) -> NearbyPlace:
    tags = place.tags
    drive = estimate_drive(home, place.point, country)
    street = " ".join(tags[key] for key in ("addr:street", "addr:housenumber") if key in tags)
    if country in ("US", "CA", "GB", "IE", "AU", "NZ"):
        street = " ".join(tags[key] for key in ("addr:housenumber", "addr:street") if key in tags)
    charge = tags.get("charge", "")
    fee = {"no": True, "yes": False}.get(tags.get("fee", ""))
    return NearbyPlace(
        osm=place.osm,
        name=place.name,
        kind=place.kind.name,
        point=place.point,
        drive_minutes=drive.minutes,
        drive_km=drive.km,
        indoors=_indoors(place),
        topics=place.kind.topics,
        address=", ".join(part for part in (street, tags.get("addr:city", "")) if part),
        opening_hours=_readable_hours(tags.get("opening_hours", "")),
        web=tags.get("website") or tags.get("contact:website", ""),
        telephone=tags.get("phone") or tags.get("contact:phone", ""),
        free=fee if fee is not None or not charge else False,
        charge=charge,
        board=_board(charge, fee, country),
        wheelchair=tags.get("wheelchair", ""),
        changing_table=tags.get("changing_table") or tags.get("toilets:changing_table", ""),
    )


def _indoors(place: MapPlace) -> Indoors:
    tagged: dict[str, Indoors] = {"yes": "indoors", "no": "outdoors"}
    return tagged.get(place.tags.get("indoor", ""), place.kind.indoors)


def _readable_hours(text: str) -> str:
    try:
        return _HOURS.validate_python(text) if text else ""
    except ValidationError:
        return ""


def _board(charge: str, free: bool | None, country: str) -> BoardRead | None:
    """A charge is tagged as an amount and a currency, such as '8 EUR', or in words."""
    if free:
        return read_board("Admission free", country)
    if not charge:
        return None
    board = read_board(f"Admission: {charge}", country)
    dearest = max((price for one in board.offers for price in prices_in(one.offer)), default=Decimal(0))
    return board if dearest < Decimal(1000) else None
