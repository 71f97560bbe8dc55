"""What kinds of places a map holds that families go to, and by which tags they are known.

Source: OpenStreetMap wiki, Map features (keys amenity, historic, leisure, man_made, natural, shop,
tourism, waterway) and the pages of these tags, from memory. Which of them make an outing, and whether they
lie indoors, is our choice.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Indoors = Literal["indoors", "outdoors", "both"]


@dataclass(frozen=True)
class MapKind:
    """One kind of place.

    Attributes:
        name: what it is called.
        key: the tag's key.
        values: its values; empty for any but no.
        indoors: where a visit usually happens.
        topics: what can usually be studied there.
    """

    name: str
    key: str
    values: frozenset[str]
    indoors: Indoors
    topics: tuple[str, ...] = ()


def _kind(name: str, tag: str, indoors: Indoors, *topics: str) -> MapKind:
    key, _, values = tag.partition("=")
    return MapKind(name, key, frozenset(values.split("|")) if values else frozenset(), indoors, topics)


KINDS = (
    _kind("museum", "tourism=museum", "indoors", "history"),
    _kind("zoo", "tourism=zoo", "outdoors", "animals"),
    _kind("aquarium", "tourism=aquarium", "indoors", "animals", "water"),
    _kind("gallery", "tourism=gallery", "indoors", "art"),
    _kind("planetarium", "amenity=planetarium", "indoors", "stars and planets"),
    _kind("observatory", "man_made=observatory", "both", "stars and planets"),
    _kind("farm", "tourism=farm", "outdoors", "farming", "animals"),
    _kind("farm", "shop=farm", "both", "farming"),
    _kind("petting zoo", "zoo=petting_zoo", "outdoors", "animals"),
    _kind("garden", "leisure=garden", "outdoors", "plants"),
    _kind("nature reserve", "leisure=nature_reserve", "outdoors", "nature"),
    _kind("bird hide", "leisure=bird_hide", "outdoors", "birds"),
    _kind("mill", "man_made=watermill|windmill", "both", "technology", "history"),
    _kind("lighthouse", "man_made=lighthouse", "both", "technology"),
    _kind("lock", "lock=yes", "outdoors", "technology", "water"),
    _kind("castle", "historic=castle|fort|palace|manor", "both", "history"),
    _kind(
        "historic site",
        "historic=archaeological_site|battlefield|ruins|monastery|mine|locomotive|ship|railway_station|farm|building"
        "|city_gate|aqueduct|heritage",
        "outdoors",
        "history",
    ),
    _kind("cave", "natural=cave_entrance", "both", "rocks"),
    _kind("waterfall", "waterway=waterfall", "outdoors", "water"),
    _kind("beach", "natural=beach", "outdoors", "water"),
    _kind("viewpoint", "tourism=viewpoint", "outdoors", "landscape"),
    _kind("theme park", "tourism=theme_park", "outdoors"),
    _kind("water park", "leisure=water_park", "both"),
    _kind("nature center", "tourism=information", "both", "nature"),
    _kind("library", "amenity=library", "indoors", "reading"),
    _kind("theater", "amenity=theatre", "indoors", "drama"),
    _kind("playground", "leisure=playground", "outdoors"),
    _kind("park", "leisure=park", "outdoors"),
    _kind("picnic site", "tourism=picnic_site", "outdoors"),
    _kind("attraction", "tourism=attraction", "both"),
)  # fmt: skip

KEYS = tuple(dict.fromkeys(kind.key for kind in KINDS))
NAMES = tuple(dict.fromkeys(kind.name for kind in KINDS))

_SHUT = ("private", "no", "military", "employees")
_GONE = ("disused", "abandoned", "demolished", "removed", "razed", "construction", "proposed")


def kind_of(tags: Mapping[str, str]) -> MapKind | None:
    """The first kind whose tag something carries; None where it is none, is shut to visitors or gone."""
    if tags.get("access") in _SHUT or any(tags.get(key) == "yes" for key in _GONE):
        return None
    for kind in KINDS:
        value = tags.get(kind.key)
        if value is None or (kind.values and value not in kind.values):
            continue
        if kind.name == "nature center" and not _is_nature_center(tags):
            continue
        if kind.name == "garden" and tags.get("garden:type") in ("residential", "private"):
            return None
        return kind
    return None


def _is_nature_center(tags: Mapping[str, str]) -> bool:
    """A visitor centre; most places of information are a board on a post."""
    return tags.get("information") in ("visitor_centre", "visitor_center", "nature_center")
