"""The three questions that the children take along."""

import pytest
from pydantic import ValidationError

from tests.builders import make_place
from tripplan.documents.places.own_questions import OwnQuestions
from tripplan.planning.day_sheet.questions import questions_for


def own(*questions: str) -> OwnQuestions:
    """The parent's own questions."""
    return OwnQuestions(place="test-museum", questions=questions)


def test_the_cards_questions_come_as_they_are() -> None:
    """Three on the card are the three on the sheet."""
    card = make_place(visit={"questions": ["Why?", "Who?", "Where?", "When?"]})
    assert questions_for(card) == ("Why?", "Who?", "Where?")


def test_the_parents_own_win() -> None:
    """Hers come first, and the card's fill up."""
    card = make_place(visit={"questions": ["Why?", "Who?", "Where?"]})
    assert questions_for(card, own("How deep?")) == ("How deep?", "Why?", "Who?")


def test_topics_suggest_what_nobody_wrote() -> None:
    """Without questions every topic gets one in turn; with one question two are suggested."""
    bare = make_place(visit={"topics": ["water power", "grain"]})
    first, second, third = questions_for(bare)
    assert "water power" in first
    assert "grain" in second
    assert "water power" in third
    assert questions_for(make_place(visit={"topics": ["grain"], "questions": ["Why?"]}))[0] == "Why?"


def test_there_are_always_three_and_none_twice() -> None:
    """Even a card that says nothing, or a question that both wrote."""
    assert len(questions_for(make_place())) == 3
    assert "Test museum" in questions_for(make_place())[0]
    doubled = questions_for(make_place(visit={"questions": ["Why?"]}), own("why?"))
    assert len(doubled) == 3
    assert doubled[0] == "why?"
    assert "Why?" not in doubled


def test_more_than_three_own_questions_are_refused() -> None:
    """The sheet has room for three; a fourth would vanish without a word."""
    with pytest.raises(ValidationError):
        own("1?", "2?", "3?", "4?")
