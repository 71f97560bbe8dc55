"""Which places fit a study unit, and which topics are only spelled alike."""

import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

from tripplan.documents.places.place import Place
from tripplan.documents.study.units import StudyUnit

ALIKE = 0.8
"""From this share of common letters on two topics may mean the same [-]. Common practice, no source."""
_SHORTEST_WORD = 4
"""A shorter word alone says too little to link two topics [characters]."""


@dataclass(frozen=True)
class PlaceFit:
    """One place that fits a unit, and why.

    Attributes:
        place: the card.
        topics: the unit's topics that stand on the card, in the unit's order.
        by_parent: whether the parent named the place itself.
    """

    place: Place
    topics: tuple[str, ...]
    by_parent: bool


@dataclass(frozen=True)
class CloseSpelling:
    """A topic on cards that may be meant by one of the unit's; nothing is matched until the parent says so.

    Attributes:
        topic: as the unit writes it.
        on_cards: as the cards write it.
        places: the cards that have it.
    """

    topic: str
    on_cards: str
    places: tuple[Place, ...]


@dataclass(frozen=True)
class Fits:
    """What the family's places have for one unit.

    Attributes:
        places: those that fit, most topics first, then by name.
        close: topics that are spelled alike but are not the same.
        nowhere: the unit's topics that no card names.
    """

    places: tuple[PlaceFit, ...]
    close: tuple[CloseSpelling, ...]
    nowhere: tuple[str, ...]


def fits_of(unit: StudyUnit, places: Sequence[Place]) -> Fits:
    """Find the places whose topics meet a unit's; capitals and blanks make no difference.

    Args:
        unit: its topics, and the places its parent named.
        places: the cards on record.
    """
    wanted = {topic_key(topic): topic for topic in unit.topics}
    found: list[PlaceFit] = []
    for place in places:
        there = set(map(topic_key, place.visit.topics))
        met = tuple(topic for key, topic in wanted.items() if key in there)
        if met or place.id in unit.also_places:
            found.append(PlaceFit(place, met, place.id in unit.also_places))
    found.sort(key=lambda fit: (-len(fit.topics), fit.place.name.casefold(), fit.place.id))
    on_cards = _topics_on(places)
    return Fits(
        tuple(found),
        tuple(_close(wanted, on_cards)),
        tuple(topic for key, topic in wanted.items() if key not in on_cards),
    )


def topic_key(topic: str) -> str:
    """A topic as it is compared: without capitals and with single blanks."""
    return " ".join(unicodedata.normalize("NFKC", topic).casefold().split())


def topics_on(places: Iterable[Place]) -> tuple[str, ...]:
    """Every topic that stands on a card, each once, in order of the alphabet."""
    return tuple(sorted((spelled for spelled, _ in _topics_on(places).values()), key=topic_key))


def _topics_on(places: Iterable[Place]) -> dict[str, tuple[str, list[Place]]]:
    """Every topic on a card: its first spelling and the cards that have it."""
    topics: dict[str, tuple[str, list[Place]]] = {}
    for place in places:
        for key, spelled in {topic_key(topic): topic for topic in place.visit.topics}.items():
            topics.setdefault(key, (spelled, []))[1].append(place)
    return topics


def _close(wanted: dict[str, str], on_cards: dict[str, tuple[str, list[Place]]]) -> Iterable[CloseSpelling]:
    for key, topic in wanted.items():
        for other, (spelled, places) in sorted(on_cards.items()):
            if other not in wanted and _are_alike(key, other):
                yield CloseSpelling(topic, spelled, tuple(places))


def _are_alike(one: str, other: str) -> bool:
    """Whether two topics share most letters, or all the words of one stand in the other."""
    words, other_words = (
        {word for word in text.split() if len(word) >= _SHORTEST_WORD} for text in (one, other)
    )
    fewer, more = sorted((words, other_words), key=len)
    if fewer and fewer <= more:
        return True
    return SequenceMatcher(None, one, other, autojunk=False).ratio() >= ALIKE
