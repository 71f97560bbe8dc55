"""Questions for the children to take along: the parent's own, then the card's, then some from the topics."""

from itertools import cycle

from tripplan.documents.places.own_questions import ON_THE_SHEET, OwnQuestions
from tripplan.documents.places.place import Place

_SUGGESTED = (
    "What did you find out about {topic} that you did not know this morning?",
    "Which one thing here has most to do with {topic}, and why that one?",
    "What would you ask somebody who works with {topic} every day?",
)


def questions_for(place: Place, own: OwnQuestions | None = None) -> tuple[str, ...]:
    """Three questions for the children.

    Args:
        place: the card, with its questions and topics.
        own: what the parent wrote for this place, if anything.

    Returns:
        Three, none twice: the parent's own first, then the card's, then suggestions from the topics.
    """
    topics = cycle(place.visit.topics or (place.name,))
    suggested = (text.format(topic=topic) for text, topic in zip(_SUGGESTED, topics, strict=False))
    in_order = (*(own.questions if own else ()), *place.visit.questions, *suggested)
    each_once: dict[str, str] = {}
    for question in filter(None, map(str.strip, in_order)):
        each_once.setdefault(question.casefold(), question)
    return tuple(each_once.values())[:ON_THE_SHEET]
