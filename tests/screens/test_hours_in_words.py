"""Opening hours that were read are said as people say them, never as their code."""

import pytest

from tripplan.language.locales import Locale, speaking
from tripplan.screens.places.adding.hours_in_words import hours_in_words


@pytest.mark.parametrize(
    ("code", "words"),
    [
        ("Tu,We,Th,Fr,Sa 10:00-17:00", "Tue to Sat 10:00 AM to 5:00 PM"),
        ("Mo-Su 00:00-24:00", "every day all day"),
        ("Sa,Su 10:00-12:00,13:00-17:00", "Sat and Sun 10:00 AM to 12:00 PM, 1:00 PM to 5:00 PM"),
        ("May Mo[-1]-Sep Mo[1] 09:00-18:00", "last Mon in May to first Mon in Sep 9:00 AM to 6:00 PM"),
        ("Apr-Oct PH 10:00-16:00", "Apr to Oct public holidays 10:00 AM to 4:00 PM"),
        ("Nov Th[4] off", "fourth Thu in Nov closed"),
        ("Dec 24-Jan 01 off", "Dec 24 to Jan 01 closed"),
        ("easter -2 days off", "Easter -2 days closed"),
    ],
)  # fmt: skip
def test_a_rule_is_said_without_its_code(code: str, words: str) -> None:
    """Days in a row are a span; times follow the clock of the language."""
    with speaking(Locale.EN_US):
        assert hours_in_words(code) == (words,)
