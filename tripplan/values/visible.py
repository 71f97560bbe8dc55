"""What of a text can be seen: no control characters, broken characters, or marks that turn it around."""

import re
import unicodedata

UNSEEN = re.compile("[\x00-\x08\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")
"""Control characters but for tabs and the ends of lines, halves of surrogate pairs, and marks that turn the
direction of the text around. Source: Unicode Standard Annex 9, section 2 (from memory)."""
_BLANK = frozenset({"Cc", "Cf", "Cs", "Zs", "Zl", "Zp"})
"""Kinds of character that show nothing (Unicode general categories)."""
_BLANK_LETTERS = frozenset("\u115f\u1160\u2800\u3164\uffa0")
"""Letters that are drawn as nothing: fillers of Hangul, and Braille without a dot."""


def without_unseen(text: str) -> str:
    """The text without what nobody sees."""
    return UNSEEN.sub("", text)


def shows_something(text: str) -> bool:
    """Whether anything of a text can be seen: a letter, a figure, a sign."""
    return any(unicodedata.category(sign) not in _BLANK and sign not in _BLANK_LETTERS for sign in text)
