"""Drawings of our own, all in one stroke: what a chip is about, kinds of place, the doors, and the mark.

They are masks of the style sheet, so that they take the color of the words beside them, in dark mode too.
"""

from urllib.parse import quote

from tripplan.documents.places.place import Place

_STROKE = (
    "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 24 24' fill='none' stroke='{color}' "
    "stroke-width='2' stroke-linecap='round' stroke-linejoin='round'>{lines}</svg>"
)
_MARK = "<path d='M3 20V11l5-5 5 5v9'/><path d='M8 20c0-5 11 0 11-6'/><circle cx='19' cy='9' r='2.5'/>"

LINES = {
    # What a chip is about.
    "day": "<path d='M4 6h16v14H4zM4 10.5h16M8 3v4M16 3v4'/>",
    "drive": "<path d='M3 16v-4l3-5h9l3 5h3v4h-3M15 16H9M5 16H3'/><circle cx='7' cy='16.5' r='2'/>"
    "<circle cx='17' cy='16.5' r='2'/>",
    "nap": "<path d='M19 14.5A8 8 0 1 1 10.5 4.5a6.5 6.5 0 0 0 8.5 10zM15 4h4l-4 5h4'/>",
    "crowd": "<circle cx='8' cy='9' r='3'/><circle cx='17' cy='10' r='2.5'/>"
    "<path d='M2.5 20c0-7 11-7 11 0M15.5 15.5c3-1 6 .5 6 4.5'/>",
    "money": "<ellipse cx='12' cy='7' rx='7' ry='3'/><path d='M5 7v9c0 4 14 4 14 0V7M5 11.5c0 4 14 4 14 0'/>",
    "weather": "<circle cx='9' cy='8' r='3'/><path d='M9 2v.5M3 8h.5M4.8 3.8l.5.5M13.2 3.8l-.5.5'/>"
    "<path d='M8 20a3.5 3.5 0 0 1 .5-7 5 5 0 0 1 9.5 1.5 3 3 0 0 1 0 5.5z'/>",
    "sun": "<circle cx='12' cy='12' r='4'/><path d='M12 3v2M12 19v2M3 12h2M19 12h2M5.6 5.6l1.4 1.4'/>"
    "<path d='M17 17l1.4 1.4M5.6 18.4L7 17M17 7l1.4-1.4'/>",
    "cold": "<path d='M12 3v18M4.2 7.5l15.6 9M19.8 7.5l-15.6 9M9.5 4.5L12 7l2.5-2.5M9.5 19.5"
    "L12 17l2.5 2.5'/>",
    "rain": "<path d='M8 14a3.5 3.5 0 0 1 .5-7 5 5 0 0 1 9.5 1.5 3 3 0 0 1 0 5.5z"
    "M8 17l-1 3M12.5 17l-1 3M17 17l-1 3'/>",
    "needs": "<path d='M5 8h14l-1 12H6zM9 8a3 3 0 0 1 6 0'/>",
    "clock": "<circle cx='12' cy='12' r='8.5'/><path d='M12 7v5.5l3.5 2'/>",
    "book": "<path d='M3 9V6h18v3a3 3 0 0 0 0 6v3H3v-3a3 3 0 0 0 0-6zM14 6.5v2M14 11v2M14 15.5v2'/>",
    # Kinds of place.
    "indoors": "<path d='M3 20h18M4 10l8-6 8 6zM6 10v10M12 10v10M18 10v10'/>",
    "outdoors": "<path d='M12 21v-6M12 15c-9 1-8-8-4-9 1-4 7-4 8 0 4 1 5 10-4 9zM4 21h16'/>",
    "both": "<path d='M3 20V11l5-4 5 4v9zM7 20v-5h2v5M17.5 20v-4'/>"
    "<path d='M17.5 16c-4.5 0-3.5-6 0-8 3.5 2 4.5 8 0 8z'/>",
    # The doors.
    "ideas": "<path d='M9 18h6M10 21h4M9 15c-5-4-3-12 3-12s8 8 3 12z'/>",
    "choose": "<path d='M4 6h9M4 12h14M4 18h6M17 5l1.5 1.5L21.5 3.5'/>",
    "plan": "<path d='M5 4v16'/><circle cx='5' cy='7' r='1.5'/><circle cx='5' cy='16' r='1.5'/>"
    "<path d='M10 7h10M10 16h7'/>",
    "today": "<circle cx='12' cy='13' r='4'/>"
    "<path d='M12 4v2M3 13h2M19 13h2M5.6 6.6L7 8M18.4 6.6L17 8M3 21h18'/>",
    "afterwards": "<path d='M12 6c-3-2-6-2-9-1v14c3-1 6-1 9 1 3-2 6-2 9-1V5c-3-1-6-1-9 1zM12 6v14'/>",
    "cupboard": "<path d='M4 3h16v16H4zM12 3v16M9 10v2M15 10v2M6 19v2M18 19v2'/>",
    "mark": _MARK,
}  # fmt: skip
"""The lines of each drawing, in a square of 24 by 24."""


def mark(color: str) -> str:
    """The mark of the program as an SVG picture: a home, and a path out of it."""
    return _STROKE.format(color=color, lines=_MARK).replace("'", '"')


def masks() -> str:
    """The style sheet's lines that make a class of each drawing, such as `tp-i-nap`."""
    return "\n".join(f".tp-i-{name} {{ --lines: {address_of(name)}; }}" for name in LINES)


def address_of(name: str) -> str:
    """One drawing as a picture that a style sheet can name."""
    picture = _STROKE.format(color="black", lines=LINES[name])
    return f'url("data:image/svg+xml,{quote(picture, safe=" =:/(),.")}")'


def drawn(name: str) -> str:
    """One drawing within HTML; the words beside it say what it means."""
    return f'<i class="tp-i tp-i-{name}" aria-hidden="true"></i>'


def kind_of(place: Place) -> str:
    """Which drawing stands for a place."""
    return place.visit.indoors
