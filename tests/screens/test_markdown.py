"""Text from outside on a page: shown letter by letter, and never a link."""

import re

import pytest

from tripplan.screens.widgets.markdown import plain

AUTOLINKS = (
    re.compile(r"(?:https?://|www(?=\.))[-.\w]+[^ \t\r\n]*", re.IGNORECASE),
    re.compile(r"(?:^|\s|\W)[-.\w+]+@[-\w]+(?:\.[-\w]+)+"),
)
"""What becomes a link on a page, looked for once the marks are read.

Source: mdast-util-gfm-autolink-literal, lib/index.js, transformGfmAutolinkLiterals (from memory).
"""


def once_read(markdown: str) -> str:
    """A text as it is when its marks are read."""
    return re.sub(r"\\(?=[!-/:-@\[-`{-~])", "", markdown)


@pytest.mark.parametrize(
    "text",
    [
        "see http://example.org/a?b=c today",
        "HTTPS://EXAMPLE.ORG",
        "(www.example.org)",
        "WwW.example.org",
        "write to ann.b+c@example.org.",
        "mailto:ann@example.org",
        "xmpp:ann@example.org",
    ],
)
def test_an_address_in_a_text_becomes_no_link(text: str) -> None:
    """Bare addresses are broken up where nobody sees it; every letter stays."""
    assert any(link.search(text) for link in AUTOLINKS)
    shown = once_read(plain(text))
    assert not any(link.search(shown) for link in AUTOLINKS)
    assert shown.replace("\N{WORD JOINER}", "") == text


def test_what_nobody_sees_is_left_out() -> None:
    """Control characters and marks that turn the direction around do not get onto a page."""
    assert plain("a\x00b\x1b[31mc\u202ed\u2066e") == r"ab\[31mcde"
