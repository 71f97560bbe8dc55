"""Text that a page shows as it is, whatever somebody wrote into it."""

import re
from collections.abc import Iterable

from tripplan.language.sentences import Fact
from tripplan.values.visible import without_unseen

# Besides Markdown's own marks: $ begins a formula, : a colour or an emoji; 1. at the start begins a list.
_MARKS = re.compile(r"([\\`*_{}\[\]()<>#+!|~$:^-]|(?<=^\d)\.)")
# Icons are looked for after the marks are read, and showing one would fetch a font.
_ICON = re.compile(r":(?=material/)")
# Bare addresses become links likewise: after the marks are read, so that no mark helps.
_ADDRESS = re.compile(r"(?<=https:)(?=//)|(?<=http:)(?=//)|(?<=www)(?=\.)|(?=@)", re.IGNORECASE)


def plain(text: str) -> str:
    """Text with every mark escaped, so that Markdown shows it letter by letter on one line."""
    line = " ".join(without_unseen(text).split())
    return _MARKS.sub(r"\\\1", _ADDRESS.sub("\N{WORD JOINER}", _ICON.sub(":\N{WORD JOINER}", line)))


def bullets(lines: Iterable[str | Fact]) -> str:
    """Plain lines as a Markdown list."""
    return "\n".join(f"- {plain(str(line))}" for line in lines)
