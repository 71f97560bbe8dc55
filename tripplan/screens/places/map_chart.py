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

from tripplan.planning import wording
from tripplan.planning.place import Place
from tripplan.planning.travel.distance import bearing_degrees, geodesic_km
from tripplan.planning.travel.drive import Drive, KnownBy
from tripplan.planning.units import KM_PER_MILE
from tripplan.planning.where import Where
from tripplan.screens.widgets.charts import DEPTHS, INK
from tripplan.screens.widgets.markdown import plain

SIDE = 340
"""Width and height [pixels]; equal, so that directions are true, and narrow enough for a telephone."""
_LETTER, _LINE, _DOT_SIZE = 5.2, 12.0, 9.0
"""About the width and height of a letter of a name, and of a dot [pixels]."""
_LONGEST_LABEL = 18
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


@dataclass(frozen=True)
class Box:
    """Where a name or a dot stands.

    Attributes:
        left, top: its upper left corner, from that of the sketch [pixels].
        width, height: how large it is [pixels].
    """

    left: float
    top: float
    width: float
    height: float = _LINE

    def overlaps(self, other: "Box") -> bool:
        """Whether one would be drawn over the other."""
        beside = self.left + self.width <= other.left or other.left + other.width <= self.left
        below = self.top + self.height <= other.top or other.top + other.height <= self.top
        return not beside and not below

    @property
    def inside(self) -> bool:
        """Whether all of it is on the sketch."""
        return self.left >= 0 and self.left + self.width <= SIDE and 0 <= self.top <= SIDE - self.height


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
    names = _names(places, edge)
    dots = pd.DataFrame([_dot(place, units) for place in places], columns=_DOT)
    chart: alt.LayerChart = (
        alt.layer(
            alt.Chart(_circles(rings))
            .mark_line(color=DEPTHS[4], strokeWidth=1, strokeDash=[3, 3])
            .encode(order="turn:Q", detail="ring:N", **at),
            alt.Chart(_at_north(rings, units))
            .mark_text(fontSize=10, color=INK, dy=-5)
            .encode(text="ring:N", **at),
            alt.Chart(pd.DataFrame([{"east": 0.0, "north": 0.0, "name": "home"}]))
            .mark_point(shape="square", filled=True, size=90, color=INK, opacity=1)
            .encode(tooltip=["name"], **at),
            alt.Chart(dots)
            .mark_circle(size=70, color=DEPTHS[1], opacity=1)
            .encode(tooltip=["name", "drive", "direction"], **at),
            *(
                alt.Chart(names[names["right"] == right])
                .mark_text(fontSize=11, align="left" if right else "right", baseline="top", color=INK)
                .encode(text="name:N", **at)
                for right in (True, False)
            ),
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


def _names(places: Sequence[MapPlace], edge: float) -> pd.DataFrame:
    """Home and the places by name, each beside its dot where it covers nothing else, as far as that goes."""
    to_draw = [(0.0, 0.0, "home"), *((place.east_km, place.north_km, place.place.name) for place in places)]
    pixel = 2 * edge / SIDE
    dots = [((east + edge) / pixel, (edge - north) / pixel) for east, north, _ in to_draw]
    taken = [Box(x - _DOT_SIZE / 2, y - _DOT_SIZE / 2, _DOT_SIZE, _DOT_SIZE) for x, y in dots]
    rows = []
    for (x, y), (_, _, name) in zip(dots, to_draw, strict=True):
        shown = name if len(name) <= _LONGEST_LABEL else f"{name[: _LONGEST_LABEL - 1].rstrip()}…"
        box = beside(x, y, shown, taken)
        taken.append(box)
        right = box.left > x
        edge_x = box.left if right else box.left + box.width
        rows.append(
            {"name": shown, "right": right, "east": edge_x * pixel - edge, "north": edge - box.top * pixel}
        )
    return pd.DataFrame(rows)


def beside(x: float, y: float, name: str, taken: Sequence[Box]) -> Box:
    """Where a name stands: right or left of its dot, a little higher or lower where that is taken.

    Args:
        x: of the dot [pixels].
        y: of the dot, downwards [pixels].
        name: as shown.
        taken: names and dots that stand already.

    Returns:
        The first spot inside the sketch among those that cover the fewest of them.
    """
    width = _LETTER * len(name)
    tops = [y - _LINE / 2 + nth * _LINE / 2 for nth in (0, -1, 1, -2, 2, -3, 3, -4, 4)]
    spots = [Box(left, top, width) for top in tops for left in (x + _DOT_SIZE, x - _DOT_SIZE - width)]
    inside = [spot for spot in spots if spot.inside]
    return min(inside or spots, key=lambda spot: sum(spot.overlaps(other) for other in taken))


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
    how = "an estimate" if drive.known_by is KnownBy.ESTIMATE else drive.known_by.value
    return f"{how[0].upper()}{how[1:]}: {drive.source.text}."


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
    sketch, table = st.tabs(["Sketch of where they lie", "The same as a table, and why"])
    with sketch:
        st.altair_chart(map_chart(places, units), width="content", key="places_map")
        st.caption(
            "North is up. Directions and straight distances from home are true; roads are longer. The sketch "
            "is drawn on this computer, without a map from the internet."
        )
    with table:
        st.table(map_table(places, units).map(plain))
        by_name = {place.place.name: place for place in places}
        asked = st.selectbox("Why these figures? Choose a place", list(by_name), key="places_map_why")
        st.caption(plain(why_sentence(by_name[asked].drive)))
