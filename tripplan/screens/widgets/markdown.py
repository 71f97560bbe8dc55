"""Text that a page shows as it is, whatever somebody wrote into it."""

import re
from collections.abc import Iterable

# Besides Markdown's own marks: $ begins a formula, : a colour or an emoji; 1. at the start begins a list.
_MARKS = re.compile(r"([\\`*_{}\[\]()<>#+!|~$:^-]|(?<=^\d)\.)")
# Icons are looked for after the marks are read, and showing one would fetch a font.
_ICON = re.compile(r":(?=material/)")


def plain(text: str) -> str:
    """Text with every mark escaped, so that Markdown shows it letter by letter on one line."""
    return _MARKS.sub(r"\\\1", _ICON.sub(":\N{WORD JOINER}", " ".join(text.split())))


def bullets(lines: Iterable[str]) -> str:
    """Plain lines as a Markdown list."""
    return "\n".join(f"- {plain(line)}" for line in lines)
