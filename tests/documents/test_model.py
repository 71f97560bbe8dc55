"""Names as they are written down: what nobody sees is left out, and a name of nothing is none."""

import pytest
from pydantic import TypeAdapter, ValidationError

from tripplan.documents.model import Name

NAME: TypeAdapter[str] = TypeAdapter(Name)


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("Ann", "Ann"),
        ("A\x00nn", "Ann"),
        ("\x1b[31mAnn", "[31mAnn"),
        ("Ann\u202egpj.exe", "Anngpj.exe"),
        ("\u2066Ann\u2069", "Ann"),
        # Joiners that Persian and emoji need, and a right-to-left mark that Hebrew may need, stay.
        ("\u0645\u06cc\u200c\u062e", "\u0645\u06cc\u200c\u062e"),
        ("\u05d0\u200f!", "\u05d0\u200f!"),
        ("\U0001f469\u200d\U0001f33e", "\U0001f469\u200d\U0001f33e"),
    ],
)
def test_a_name_is_kept_without_what_nobody_sees(typed: str, kept: str) -> None:
    """Control characters and turned directions go; letters of every alphabet stay."""
    assert NAME.validate_python(typed) == kept


@pytest.mark.parametrize(
    "typed", ["\x00", "\u200b", "\u200b \u2060", "\u3164", "\u2800\u2800", "\u00ad", "\u202e"]
)
def test_a_name_that_shows_nothing_is_refused(typed: str) -> None:
    """Zero-width spaces, fillers and blanks alone name nobody."""
    with pytest.raises(ValidationError):
        NAME.validate_python(typed)
