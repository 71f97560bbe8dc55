"""What is not known of an idea, what was taken for it, and what to ask before it can be counted on."""

from collections.abc import Iterable, Sequence

from tripplan.documents.places.idea import IdeaPlace
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.values.ages import ADULT, MONTHS
from tripplan.values.money import Money


def assumed_sentences(place: Place) -> tuple[str, ...]:
    """What figures of an idea are no facts, and what stands for them; none for a place with a card."""
    if not isinstance(place, IdeaPlace):
        return ()
    idea = place.idea
    if idea.money is None:
        entry = "Not known: what tickets and parking cost; they are not counted."
    else:
        about = wording.money(Money(idea.money, place.currency))
        entry = f"Tickets and parking: about {about} is a guess of yours."
    hours = (
        "Not known: when it is open; every day from 9 to 5 is taken for now."
        if idea.hours is None
        else "The hours are not checked yet."
    )
    if idea.drive_minutes is not None:
        way = f"The drive: about {wording.minutes(idea.drive_minutes)} is a guess of yours."
    elif idea.where is None:
        way = "Not known: where it is; about 45 min of driving is taken for now."
    else:
        way = ""
    return tuple(filter(None, ("This is only an idea so far.", hours, entry, way)))


def to_ask(place: Place, months: Iterable[int]) -> tuple[str, ...]:
    """What it would take to know, as short questions to the place; none for a place with a card.

    Args:
        place: the place.
        months: the ages of those who would go [months].
    """
    if not isinstance(place, IdeaPlace):
        return ()
    idea, youngest = place.idea, min(months, default=18 * MONTHS)
    asked = []
    if idea.hours is None:
        asked += ["open on which days, from when to when?", "closed on Mondays?", "closed on holidays?"]
    asked.append("price for an adult?")
    if youngest not in ADULT:
        years = youngest // MONTHS
        article = "an" if years in (8, 11) else "a"
        asked.append(f"price for {article} {years}-year-old?" if years else "price for a baby?")
    asked += ["family ticket?", "parking?"]
    if idea.where is None:
        asked.append("street address?")
    return tuple(asked)


def idea_notes(place: Place, months: Iterable[int]) -> tuple[str, ...]:
    """All that should be said of a place that is only an idea; nothing for a place with a card."""
    questions = to_ask(place, months)
    return (*assumed_sentences(place), f"To know more, ask: {' '.join(questions)}") if questions else ()


def asking_sentences(places: Iterable[Place], months: Sequence[int]) -> list[str]:
    """What to ask each of the places that are only ideas, a sentence each; none where all have cards.

    Args:
        places: in the order they are told; one that comes twice is told once.
        months: the ages of those who would go [months].
    """
    asked = {place.name: to_ask(place, months) for place in places}
    return [f"{name}: to know more, ask: {' '.join(told)}" for name, told in asked.items() if told]
