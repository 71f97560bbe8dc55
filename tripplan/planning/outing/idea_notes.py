"""What is not known of an idea, what was taken for it, and what to ask before it can be counted on."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import timedelta

from tripplan.documents.places.idea import IdeaPlace
from tripplan.documents.places.place import Place
from tripplan.language.sentences import Fact, InTurn, fact
from tripplan.values.ages import ADULT, MONTHS
from tripplan.values.money import Money


def assumed(place: Place) -> tuple[Fact, ...]:
    """What figures of an idea are no facts, and what stands for them; none for a place with a card."""
    return tuple(_assumed(place)) if isinstance(place, IdeaPlace) else ()


def _assumed(place: IdeaPlace) -> Iterator[Fact]:
    idea = place.idea
    yield fact("notes-only-an-idea")
    yield fact("notes-hours-not-known" if idea.hours is None else "notes-hours-not-checked")
    if idea.money is None:
        yield fact("notes-entry-not-known")
    else:
        yield fact("notes-entry-guessed", about=Money(idea.money, place.currency))
    if idea.drive_minutes is not None:
        yield fact("notes-drive-guessed", about=timedelta(minutes=idea.drive_minutes))
    elif idea.where is None:
        yield fact("notes-place-not-known")


def to_ask(place: Place, months: Iterable[int]) -> tuple[Fact, ...]:
    """What it would take to know, as short questions to the place; none for a place with a card.

    Args:
        place: the place.
        months: the ages of those who would go [months].
    """
    return tuple(_to_ask(place, min(months, default=18 * MONTHS))) if isinstance(place, IdeaPlace) else ()


def _to_ask(place: IdeaPlace, youngest: int) -> Iterator[Fact]:
    if place.idea.hours is None:
        yield from (fact("notes-ask-hours"), fact("notes-ask-mondays"), fact("notes-ask-holidays"))
    yield fact("notes-ask-adult")
    if youngest not in ADULT:
        years = youngest // MONTHS
        yield fact("notes-ask-child", years=years) if years else fact("notes-ask-baby")
    yield from (fact("notes-ask-family-ticket"), fact("notes-ask-parking"))
    if place.idea.where is None:
        yield fact("notes-ask-address")


def idea_notes(place: Place, months: Iterable[int]) -> tuple[Fact, ...]:
    """All that should be said of a place that is only an idea; nothing for a place with a card."""
    questions = to_ask(place, months)
    return (*assumed(place), fact("notes-to-ask", questions=InTurn(questions))) if questions else ()


def asking(places: Iterable[Place], months: Sequence[int]) -> list[Fact]:
    """What to ask each of the places that are only ideas; none where all have cards.

    Args:
        places: in the order they are told; one that comes twice is told once.
        months: the ages of those who would go [months].
    """
    asked = {place.name: to_ask(place, months) for place in places}
    return [
        fact("notes-to-ask-of", place=name, questions=InTurn(questions))
        for name, questions in asked.items()
        if questions
    ]
