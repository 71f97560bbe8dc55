"""A sketch of where the places lie round home: directions and straight distances are true, without roads.

Drawn on this computer from coordinates alone; no map is fetched.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

import altair as alt
import pandas as pd
import streamlit as st

from tripplan.documents.places.place import Place
from tripplan.documents.where import Where
from tripplan.language import wording
from tripplan.planning.travel.distance import bearing_degrees, geodesic_km
from tripplan.planning.travel.drive import Drive
from tripplan.screens.look.charts import DEPTHS, page_accent, page_ink, tooltips
from tripplan.screens.places.name_spots import Dot, LabelBox, name_spots
from tripplan.screens.widgets.markdown import plain
from tripplan.values.units import KM_PER_MILE

SIDE = 340
"""Width and height [pixels]; equal, so that directions are true, and narrow enough for a telephone."""
_RING_WORDS = (40.0, 10.0)
"""Width and height of what is written on a ring, of which it stands half its height above [pixels]."""
_NO_PADDING = {"left": 0, "right": 0, "top": 0, "bottom": 0}
"""Padding, and a drawing fitted round its names, would make it higher than wide."""
_DIRECTIONS = (
    "north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west",
)  # fmt: skip


@dataclass(frozen=True)
class MapPlace:
    """A place on the sketch.

    Attributes:
        place: the card.
        drive: the way from home, one way.
        straight_km: as the crow flies [km].
        bearing: direction from home, clockwise from north [degrees].
    """

    place: Place
    drive: Drive
    straight_km: float
    bearing: float

    @property
    def east_km(self) -> float:
        """How far to the right of home it is drawn [km]."""
        return self.straight_km * math.sin(math.radians(self.bearing))

    @property
    def north_km(self) -> float:
        """How far above home it is drawn [km]."""
        return self.straight_km * math.cos(math.radians(self.bearing))

    @property
    def direction(self) -> str:
        """In words; 'at home' where it is no distance away."""
        if self.straight_km < 0.05:
            return "at home"
        return f"to the {_DIRECTIONS[round(self.bearing / 45) % 8]}"


def placed(home: Where, drives: Sequence[tuple[Place, Drive]]) -> tuple[MapPlace, ...]:
    """Places with their direction and straight distance from home, in the order given."""
    return tuple(
        MapPlace(
            place,
            drive,
            geodesic_km(home.point, place.where.point),
            bearing_degrees(home.point, place.where.point),
        )
        for place, drive in drives
    )


def ring_distances(furthest: float) -> tuple[float, ...]:
    """Two to five round distances, 1, 2 or 5 times a power of ten apart, the last one round everything.

    Args:
        furthest: the place that lies furthest away, in any unit.
    """
    furthest = max(furthest, 0.1)
    power = 10.0 ** math.floor(math.log10(furthest))
    steps = (factor * power for factor in (0.1, 0.2, 0.5, 1.0, 2.0, 5.0))
    step = next(step for step in steps if math.ceil(round(furthest / step, 9)) <= 5)
    count = max(2, math.ceil(round(furthest / step, 9)))
    return tuple(step * nth for nth in range(1, count + 1))


def map_chart(places: Sequence[MapPlace], units: str) -> alt.LayerChart:
    """The sketch: home in the middle, each place at its direction and straight distance.

    An azimuthal equidistant projection round home.

    Args:
        places: what to draw.
        units: 'mi' or 'km', for the rings.
    """
    unit_km = float(KM_PER_MILE) if units == "mi" else 1.0
    furthest = max((place.straight_km for place in places), default=0.0)
    rings = [unit_km * ring for ring in ring_distances(furthest / unit_km)]
    edge = rings[-1] * 1.08
    scale = alt.Scale(domain=[-edge, edge], nice=False, zero=False)
    at = {"x": alt.X("east:Q", scale=scale, axis=None), "y": alt.Y("north:Q", scale=scale, axis=None)}
    names = _names(places, rings, edge)
    dots = pd.DataFrame([_dot(place, units) for place in places], columns=_DOT)
    chart: alt.LayerChart = (
        alt.layer(
            alt.Chart(_circles(rings))
            .mark_line(color=DEPTHS[4], strokeWidth=1, strokeDash=[3, 3])
            .encode(order=alt.Order("turn:Q"), detail=alt.Detail("ring:N"), **at),
            alt.Chart(_at_north(rings, units))
            .mark_text(fontSize=10, color=page_ink(), dy=-5)
            .encode(text=alt.Text("ring:N"), **at),
            alt.Chart(pd.DataFrame([{"east": 0.0, "north": 0.0, "name": "home"}]))
            .mark_point(shape="square", filled=True, size=90, color=page_ink(), opacity=1)
            .encode(tooltip=alt.Tooltip("name"), **at),
            alt.Chart(dots)
            .mark_circle(size=70, color=page_accent(), opacity=1)
            .encode(tooltip=tooltips("name", "drive", "direction"), **at),
            # A name that is wider than was reckoned is cut off, so that it covers nothing.
            alt.Chart(names)
            .mark_text(
                fontSize=11,
                align=alt.expr("datum.align"),
                limit=alt.expr("datum.width"),
                baseline="middle",
                color=page_ink(),
            )
            .encode(text=alt.Text("name:N"), **at),
        )
        .properties(width=SIDE, height=SIDE, padding=_NO_PADDING, autosize="none")
        .configure_view(strokeWidth=0)
    )
    return chart


_DOT = ["name", "east", "north", "drive", "direction"]


def _dot(place: MapPlace, units: str) -> dict[str, object]:
    km, minutes = place.drive.km.likely, place.drive.minutes.likely
    return {
        "name": place.place.name,
        "east": place.east_km,
        "north": place.north_km,
        "drive": f"{wording.distance(km, units)}, {wording.minutes(minutes)}",
        "direction": place.direction,
    }


def _circles(rings: Sequence[float]) -> pd.DataFrame:
    turns = [(turn, math.radians(turn)) for turn in range(0, 361, 5)]
    return pd.DataFrame(
        {"ring": km, "turn": turn, "east": km * math.sin(angle), "north": km * math.cos(angle)}
        for km, (turn, angle) in product(rings, turns)
    )


def _at_north(rings: Sequence[float], units: str) -> pd.DataFrame:
    return pd.DataFrame([{"ring": wording.distance(km, units), "east": 0.0, "north": km} for km in rings])


def _names(places: Sequence[MapPlace], rings: Sequence[float], edge: float) -> pd.DataFrame:
    """Home and the places by name, each beside its dot; those that find no room are left out."""
    pixel = 2 * edge / SIDE
    width, height = _RING_WORDS
    dots = [
        Dot((east + edge) / pixel, (edge - north) / pixel, name)
        for east, north, name in (
            (0.0, 0.0, "home"),
            *((place.east_km, place.north_km, place.place.name) for place in places),
        )
    ]
    on_rings = [LabelBox((SIDE - width) / 2, (edge - ring) / pixel - height, width, height) for ring in rings]
    return pd.DataFrame(
        {
            "name": dot.name,
            "east": spot.x * pixel - edge,
            "north": edge - spot.y * pixel,
            "align": spot.align,
            "width": spot.box.width,
        }
        for dot, spot in zip(dots, name_spots(dots, on_rings, SIDE), strict=True)
        if spot is not None
    )


def map_table(places: Sequence[MapPlace], units: str) -> pd.DataFrame:
    """The same in words, one row a place, by driving time: where, how far and how long."""
    in_order = sorted(places, key=lambda place: place.drive.minutes.likely)
    rows = [
        {
            "Where": f"{wording.distance(place.straight_km, units)} {place.direction}"
            if place.straight_km >= 0.05
            else place.direction,
            "Drive, one way": wording.distance_range(place.drive.km, units),
            "Driving time": wording.minutes_range(place.drive.minutes),
        }
        for place in in_order
    ]
    return pd.DataFrame(rows, index=[place.place.name for place in in_order])


def why_sentence(drive: Drive) -> str:
    """How a drive is known, and from where."""
    how = drive.known_in_words
    return f"{wording.capital(how)}: {drive.source.text}."


def places_map(home: Where, drives: Sequence[tuple[Place, Drive]], units: str) -> None:
    """Draw the sketch, and the same as a table for whoever cannot see it.

    Args:
        home: where the family lives.
        drives: the places with the way to each.
        units: 'mi' or 'km'.
    """
    if not drives:
        return
    places = placed(home, drives)
    sketch, table = st.tabs(["Map", "List"])
    with sketch:
        st.altair_chart(map_chart(places, units), width="content", key="places_map")
        st.caption(
            "North is up. Directions and straight distances from home are true; roads are longer. A long "
            "name is cut off, and one without room left out; the table has them all. The sketch is drawn on "
            "this computer, without a map from the internet."
        )
        vague = [place.place.name for place in places if place.place.where.town_only]
        if vague:
            st.caption(plain(f"Only the town is known of {wording.listed(vague)}: add the street."))
    with table:
        st.table(map_table(places, units).map(plain))
        by_name = {place.place.name: place for place in places}
        asked = st.selectbox("Why these figures? Choose a place", list(by_name), key="places_map_why")
        st.caption(plain(why_sentence(by_name[asked].drive)))
