"""The doors: five for every day, and a cupboard for what is set up now and then.

On a phone they stand at the bottom edge within the thumb's reach, on a laptop at the top. In the page they
come after its content, so that nobody has to pass them by keyboard on each page.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import streamlit as st
from streamlit.navigation.page import Page

from tripplan.language.sentences import say
from tripplan.screens.look.drawings import address_of

START = "start"
"""The page one lands on; the mark leads there."""


@dataclass(frozen=True)
class Door:
    """One door.

    Attributes:
        name: as its drawing is called.
        code: of the word on it.
        pages: the files of the pages behind it; the door opens the first.
    """

    name: str
    code: str
    pages: tuple[str, ...]


DOORS = (
    Door("ideas", "doors-ideas", ("places",)),
    Door("choose", "doors-choose", ("compare", "choose_day", "study_units")),
    Door("plan", "doors-plan", ("day_plan", "calendar")),
    Door("today", "doors-today", ("on_the_day",)),
    Door("afterwards", "doors-afterwards", ("logbook",)),
)
CUPBOARD = Door(
    "cupboard",
    "doors-cupboard",
    ("cupboard", "household", "passes", "together", "records", "phones", "guide"),
)

_SHEET = """
[data-testid=stHeader] { background: var(--paper); height: 2.9rem; min-height: 0; }
.st-key-doors, .st-key-doors_mark, .st-key-doors_cupboard { position: fixed; z-index: 999992; gap: 0; }
.st-key-doors { inset: auto 0 0 0; background: var(--paper); border-top: 1px solid var(--line);
  flex-wrap: nowrap !important; justify-content: space-around;
  padding: .15rem .25rem calc(.15rem + env(safe-area-inset-bottom)); width: auto !important; }
.st-key-doors_mark { top: .1rem; left: .5rem; width: auto !important; }
.st-key-doors_cupboard { top: .1rem; right: .5rem; width: auto !important; }
.st-key-doors > div { flex: 1 1 0 !important; min-width: 0; width: auto !important; }
.st-key-doors > div:has(.st-key-doors_mark, .st-key-doors_cupboard) { flex: 0 0 0 !important; }
[class*="st-key-door_"] { gap: 0; align-items: center; }
[class*="st-key-door"] a { flex-direction: column; align-items: center; gap: 0; padding: .2rem .3rem;
  min-width: 3.2rem; min-height: 2.75rem; color: var(--ink); justify-content: center; border-radius: .75rem; }
[class*="st-key-door"] a p { font-size: var(--small); }
[class*="st-key-door"] a::before { content: ""; width: 1.35rem; height: 1.35rem; background: currentColor;
  mask: var(--lines) center / contain no-repeat; flex: none; }
.st-key-doors_mark a, .st-key-doors_cupboard a { flex-direction: row; gap: .35rem; }
.st-key-doors_mark a p { font-weight: 700; }
[class*="st-key-door_open_"] a { background: var(--soft); color: var(--accent); }
[class*="st-key-door_open_"] a p { font-weight: 700; color: var(--accent); }
.st-key-rooms { gap: .25rem; flex-wrap: wrap; }
.st-key-rooms a { padding: .2rem .6rem; min-height: 2rem; border: 1px solid var(--line);
  border-radius: 1rem; }
.st-key-rooms .stPageLink a p { font-size: var(--small); text-decoration: none; }
[class*="st-key-room_open_"] { width: auto !important; }
[class*="st-key-room_open_"] a { background: var(--soft); border-color: var(--accent); }
@media (min-width: 641px) {
  .st-key-doors { inset: 0 0 auto 0; border-top: none; border-bottom: 1px solid var(--line);
    justify-content: center; gap: .5rem; padding: .1rem 9rem; }
  .st-key-doors a { flex-direction: row; gap: .35rem; }
}
@media print { [class*="st-key-door"], .st-key-rooms, [data-testid=stHeader] { display: none !important; } }
@media (forced-colors: active) { [class*="st-key-door"] a::before { background: LinkText; } }
"""


def sheet() -> str:
    """The lines of the style sheet for the doors."""
    names = [door.name for door in (*DOORS, CUPBOARD)]
    drawn = (
        f'[class*="st-key-door_"][class*="_{name}"] a {{ --lines: {address_of(name)}; }}' for name in names
    )
    mark = f".st-key-doors_mark a {{ --lines: {address_of('mark')}; }}"
    return "\n".join((_SHEET, mark, *drawn))


def put_in(pages: Mapping[str, Page], current: Page) -> None:
    """Draw the doors of the pages that the visitor may open.

    Args:
        pages: by the names of their files.
        current: the page that is shown.
    """
    shown = next(name for name, page in pages.items() if page == current)
    with st.container(horizontal=True, key="doors"):
        if START in pages:
            with st.container(key="doors_mark"):
                st.page_link(pages[START], label="tripplan")
        for door in DOORS:
            _draw(door, pages, shown)
        if CUPBOARD.pages[0] in pages:
            with st.container(key="doors_cupboard"):
                _draw(CUPBOARD, pages, shown)


def _draw(door: Door, pages: Mapping[str, Page], shown: str) -> None:
    if door.pages[0] in pages:
        state = "open" if shown in door.pages else "shut"
        with st.container(key=f"door_{state}_{door.name}"):
            st.page_link(pages[door.pages[0]], label=say(door.code))


def rooms_beside(pages: Mapping[str, Page], current: Page) -> None:
    """Above a page, the others behind the same door; the cupboard's are listed within it."""
    shown = next(name for name, page in pages.items() if page == current)
    for door in DOORS:
        beside = [name for name in door.pages if name in pages]
        if shown in beside and len(beside) > 1:
            with st.container(horizontal=True, key="rooms"):
                for name in beside:
                    with st.container(
                        key=f"room_{'open' if name == shown else 'shut'}_{name}", width="content"
                    ):
                        st.page_link(pages[name], label=pages[name].title)
