"""What a field needs is said in words that a parent would use; common practice, no source."""

import pytest

from tripplan.errors import Finding
from tripplan.files.toml.fault_words import MISSING
from tripplan.language.fault_words import on_screen
from tripplan.screens.widgets.notices import named


@pytest.mark.parametrize(
    ("message", "said"),
    [
        (f"{MISSING}: Such as 3.", "please fill this in"),
        ("must be a number, with a point before decimals", "this is a number, such as 22 or 3.09"),
        ("must be 10 or more", "use 10 or more"),
        ("must not be negative", "this cannot be less than 0"),
        ("must have no more than 60 characters", "make it shorter: 60 characters at most"),
        (
            "an age band ends at or after the age it starts with",
            "the first age is above the second; write 3-12",
        ),
        ("USD is paid with at most 2 digits after the point", "USD has at most 2 digits after the point"),
        ("there is one in 24 states", "there is one in 24 states"),
    ],
)
def test_a_fault_says_what_to_do(message: str, said: str) -> None:
    """What the checks of a file say is said anew; what is plain already stays."""
    assert on_screen(message) == said


def test_a_field_is_called_as_on_the_screen() -> None:
    """Its path in a file is nowhere to be seen, and what stood there is kept."""
    (told,) = named(
        [Finding("f.toml", "visits[1].day", "20", "must be 1 or more")], {"visits.day": "which day"}
    )
    assert (told.file, told.field, told.value) == ("", "visits 2, which day", "20")
