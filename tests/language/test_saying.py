"""Tests can ask what a text says by the code of a message."""

from decimal import Decimal

import pytest

from tests.saying import says
from tripplan.language.locales import Locale, speaking
from tripplan.language.sentences import say
from tripplan.values.money import Money


def test_a_sentence_is_found_by_its_code_and_its_values() -> None:
    """It is found with the right values or with none given, and not with others."""
    text = f"Before it. {say('days-can-be-done', total=Money(Decimal('12.50'), 'USD'))} After it."
    assert says(text, "days-can-be-done", total=Money(Decimal("12.50"), "USD"))
    assert says(text, "days-can-be-done")
    assert not says(text, "days-can-be-done", total=Money(Decimal("12.51"), "USD"))
    assert not says("Before it. After it.", "days-can-be-done")


def test_every_form_of_a_sentence_is_found() -> None:
    """One day and three days are the same sentence, and the language it is in counts."""
    for days in (1, 3):
        with speaking(Locale.DE):
            text = say("days-not-as-wished", days=days)
        assert says(text, "days-not-as-wished", Locale.DE)
        assert not says(text, "days-not-as-wished")


def test_yes_and_no_choose_what_is_found() -> None:
    """Less is not more; where nobody says which, both are found."""
    text = say("recovery-costs", by="$4", more=False)
    assert says(text, "recovery-costs", more=False)
    assert says(text, "recovery-costs")
    assert not says(text, "recovery-costs", more=True)


def test_a_sentence_that_is_not_there_is_a_mistake_of_the_test() -> None:
    """An unknown code, and a value that the sentence does not say, raise instead of failing to match."""
    with pytest.raises(LookupError):
        says("", "days-of-thunder")
    with pytest.raises(LookupError):
        says("", "days-can-be-done", price=3)
