"""The style sheet that every page begins with; colors that Streamlit's own theme knows stand in its settings.

`light-dark()` follows the color scheme that Streamlit sets for its theme, also where the parent picks one.
"""

import streamlit as st

from tripplan.screens.look.drawings import masks

_SHEET = """
:root {
  --paper: light-dark(#fbfaf5, #171a18); --card: light-dark(#ffffff, #1f2421);
  --ink: light-dark(#141414, #f1efe8); --faint: light-dark(#4b4f4c, #c3c7c2);
  --line: light-dark(#d5d3c8, #434a46); --accent: light-dark(#1f6f6b, #7cc7bb);
  --soft: light-dark(#efede4, #2b312d); --warn: light-dark(#7a3e00, #ffc078);
  --ring: light-dark(#0b3d3a, #ffd98a);
  --part-0: light-dark(#12403e, #d5efe9); --part-1: light-dark(#1f6f6b, #9ad6ca);
  --part-2: light-dark(#3f807b, #6fb5aa); --part-3: light-dark(#6ba8a2, #4f948a);
  --part-4: light-dark(#9cc6c1, #3a746c); --part-5: light-dark(#c9e0dd, #2c5650);
  --large: 1.6rem; --small: .875rem;
}
.stApp :is(a, button, input, textarea, summary, [tabindex], [role=slider], [role=radio]):focus-visible {
  outline: 3px solid var(--ring) !important; outline-offset: 2px; }
.stApp [data-testid=stMain][tabindex]:focus-visible { outline-offset: -3px; }
.stApp :is([data-baseweb=select], [data-baseweb=input], [data-baseweb=textarea]):focus-within {
  outline: 3px solid var(--ring); outline-offset: 1px; border-radius: .5rem; }

[data-testid=stMainBlockContainer] { max-width: 64rem; }
.stApp h1 { font-weight: 700; line-height: 1.15; padding: 0 0 .3rem; }
.stApp :is(h2, h3) { padding: .5rem 0 .2rem; }
@media (max-width: 360px) {
  [data-testid=stVegaLiteChart] :is(canvas, svg) { max-width: 100% !important; height: auto !important; }
}
@media (max-width: 640px) {
  [data-testid=stMainBlockContainer] { padding-left: .9rem; padding-right: .9rem; }
  .stApp h1 { font-size: 1.5rem; }
  .st-key-page { gap: .7rem; }
}
.stApp [data-testid^=stBaseButton-primary] { color: light-dark(#ffffff, #10201d) !important; }
.st-key-page .stPageLink a p { text-decoration: underline; text-underline-offset: .2em; }
[class*="st-key-card_"] .stPageLink a :is(div, span, p) { white-space: normal; }
.st-key-whose { gap: 0 .5rem; }
.st-key-whose :is(p, button) { font-size: var(--small); min-height: 0; padding-top: 0; padding-bottom: 0; }
:is(.st-key-whose, .st-key-load_demo) button { text-decoration: underline; }
.st-key-chips { gap: .4rem; padding-top: .3rem; }
.st-key-chips button { border-radius: 1rem; min-height: 2rem; padding: .1rem .7rem; }
.st-key-chips button p { font-size: var(--small); }

/* Drawings take the color of the words beside them. */
.tp-i { display: inline-block; width: 1.15em; height: 1.15em; vertical-align: -.2em; background: currentColor;
  mask: var(--lines) center / contain no-repeat; }

/* Cards, and what stands inside one. */
.stVerticalBlock[class*="st-key-card_"] { background: var(--card); border-radius: 1rem !important; gap: .5rem;
  padding: .75rem .9rem; }
[class*="st-key-cards_"] { display: grid; gap: .7rem; align-items: start;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 22rem), 1fr)); }
[class*="st-key-cards_"] > :has([class*="st-key-part_"]) { grid-column: 1 / -1; }
.tp-face { color: var(--ink); line-height: 1.3; }
.tp-face :is(h2, h3, p) { margin: 0; padding: 0; }
.tp-line { display: flex; justify-content: space-between; align-items: baseline; gap: .2rem 1rem; }
.tp-name { font-size: 1rem !important; font-weight: 650; overflow-wrap: anywhere; line-height: 1.2; }
.tp-name .tp-i { color: var(--accent); margin-right: .35em; }
.tp-total { font-size: var(--large); font-weight: 700; white-space: nowrap; line-height: 1.1; }
.tp-small { font-size: var(--small); color: var(--faint); flex-wrap: wrap; gap: 0 1rem; }
.tp-small span { white-space: nowrap; }
.tp-warn { color: var(--warn); font-weight: 600; }
.tp-chips { display: flex; flex-wrap: wrap; gap: .3rem; margin: .4rem 0; padding: 0; }
.tp-chip { background: var(--soft); border-radius: 1rem; padding: .1rem .55rem; font-size: var(--small);
  overflow-wrap: anywhere; }
.tp-face .tp-said { margin: .3rem 0 0; font-size: var(--small); overflow-wrap: anywhere; }
.tp-chip .tp-i { color: var(--accent); margin-right: .3em; }
.tp-bar { display: flex; gap: 2px; height: .5rem; border-radius: .25rem; overflow: hidden; margin: .3rem 0; }
.tp-bar.tp-of { background: var(--soft); }
.tp-bar i { min-width: 2px; }
.tp-p0 { background: var(--part-0); }
.tp-p1 { background: var(--part-1); }
.tp-p2 { background: var(--part-2); }
.tp-p3 { background: var(--part-3); }
.tp-p4 { background: var(--part-4); }
.tp-p5 { background: var(--part-5); }
.tp-facts { margin: 0; padding: 0 !important; list-style: none; }
.tp-facts li { display: flex; gap: .5rem; align-items: flex-start; padding: .15rem 0; margin: 0; }
.tp-facts .tp-i { color: var(--accent); flex: none; margin-top: .1em; }

@media (prefers-reduced-motion: reduce) { * { animation: none !important; transition: none !important; } }
@media (forced-colors: active) {
  .tp-i { background: CanvasText; forced-color-adjust: none; }
  .tp-bar i { background: CanvasText; forced-color-adjust: none; }
  .tp-chip { border: 1px solid; }
}
"""


def put_on(*more: str) -> None:
    """Give the page its looks; the frame of all pages calls it first.

    Args:
        more: further lines for the sheet.
    """
    st.html(f"<style>{_SHEET}{''.join(more)}{masks()}</style>")
