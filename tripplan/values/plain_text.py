"""Text from outside without what nobody sees: control characters, broken characters, turned directions."""

import re

_LINE_BREAK = re.compile("\r\n|[\n\r\v\f\x85\u2028\u2029]")
# Control characters, halves of surrogate pairs, and marks that turn the direction of the text around.
_UNSEEN = re.compile("[\x00-\x08\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")


def lines(text: str) -> str:
    """The text with every kind of line end as a newline, and nothing invisible."""
    return _UNSEEN.sub("", _LINE_BREAK.sub("\n", text)).strip()


def one_line(text: str) -> str:
    """The text as a single line with single spaces."""
    return " ".join(lines(text).split())
