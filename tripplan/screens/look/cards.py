"""What stands inside a card, as HTML for `st.html`; whatever a family or a place wrote is escaped in it.

A card is a container with a border and a key that begins with `card_`; its buttons are Streamlit's own:

    with st.container(border=True, key=f"card_{place.id}"):
        st.html(face(name(place.name, total="$103"), chips([Chip("nap", "whole nap")])))
        st.button("Plan this", ...)
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from html import escape

from tripplan.screens.look.drawings import drawn
from tripplan.values.visible import without_unseen


def text(said: str) -> str:
    """Anything, as HTML shows it letter by letter on one line."""
    return escape(" ".join(without_unseen(said).split()))


def face(*parts: str) -> str:
    """The inside of a card, of parts that the functions here make."""
    return f'<div class="tp-face">{"".join(parts)}</div>'


def name(said: str, total: str = "", *, drawing: str = "", level: int = 2) -> str:
    """What the card is about, and on the same line what it comes to.

    Args:
        said: such as a place's name; a heading.
        total: such as '$103'; none where it is left out.
        drawing: one of `drawings.LINES`, before the name.
        level: of the heading.
    """
    before = drawn(drawing) if drawing else ""
    after = f'<span class="tp-total">{text(total)}</span>' if total else ""
    return f'<div class="tp-line"><h{level} class="tp-name">{before}{text(said)}</h{level}>{after}</div>'


def small(left: str, right: str = "") -> str:
    """A line in small type, with a second text at its right end."""
    after = f"<span>{text(right)}</span>" if right else ""
    return f'<div class="tp-line tp-small"><span>{text(left)}</span>{after}</div>'


def said(words: str) -> str:
    """A line or more of what somebody wrote."""
    return f'<p class="tp-said">{text(words)}</p>' if words else ""


def warning(said: str) -> str:
    """A line that warns, by a sign and a word besides its tone."""
    return f'<p class="tp-small tp-warn"><span aria-hidden="true">▲ </span>{text(said)}</p>'


@dataclass(frozen=True)
class Chip:
    """One fact in a word or two.

    Attributes:
        drawing: one of `drawings.LINES`.
        said: such as 'whole nap'; a chip that says nothing is left out.
    """

    drawing: str
    said: str


def chips(all_of_them: Iterable[Chip]) -> str:
    """Facts side by side, each with its drawing; nothing where there are none."""
    made = [
        f'<span class="tp-chip">{drawn(one.drawing)}{text(one.said)}</span>'
        for one in all_of_them
        if one.said
    ]
    return f'<div class="tp-chips">{" ".join(made)}</div>' if made else ""


def facts(all_of_them: Iterable[Chip]) -> str:
    """Facts below one another, for those that take a line."""
    made = (f"<li>{drawn(one.drawing)}<span>{text(one.said)}</span></li>" for one in all_of_them if one.said)
    return f'<ul class="tp-facts">{"".join(made)}</ul>'


def bar(parts: Sequence[tuple[str, float]], whole: float, said: str, *, of_whole: bool = False) -> str:
    """A bar of parts on a scale that several bars share.

    Args:
        parts: what each part is, in words with its figure, and how much of it there is;
            six have a tone of their own.
        whole: what the full width stands for, in the same unit; above 0.
        said: the bar in words, for who cannot see it.
        of_whole: whether what is left of the full width shows too.
    """
    drawn_parts = (
        f'<i class="tp-p{min(number, 5)}" style="width:{100 * much / whole:.1f}%" title="{text(what)}"></i>'
        for number, (what, much) in enumerate(parts)
        if much > 0
    )
    rest = " tp-of" if of_whole else ""
    return f'<div class="tp-bar{rest}" role="img" aria-label="{text(said)}">{"".join(drawn_parts)}</div>'
