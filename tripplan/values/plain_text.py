"""Text from outside without what nobody sees: control characters, broken characters, turned directions."""

import re

from tripplan.values.visible import without_unseen

_LINE_BREAK = re.compile("\r\n|[\n\r\v\f\x85\u2028\u2029]")


def lines(text: str) -> str:
    """The text with every kind of line end as a newline, and nothing invisible."""
    return without_unseen(_LINE_BREAK.sub("\n", text)).strip()


def one_line(text: str) -> str:
    """The text as a single line with single spaces."""
    return " ".join(lines(text).split())
