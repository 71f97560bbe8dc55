"""What axe-core, an independent checker of the W3C's rules, finds wrong; whether the focus shows."""

from functools import cache
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from tests.missing import not_installed

if TYPE_CHECKING:
    from playwright.sync_api import FloatRect, Page

_SOURCE = Path(__file__).parent / "axe/node_modules/axe-core/axe.min.js"
STREAMLITS_OWN = {
    # A date field's parts: each is a target of its own, 18 px wide and without a gap.
    "target-size": "[role=spinbutton]",
    # A chart's groups of marks have a role and no name; the chart itself has one.
    "svg-img-alt": "[role=graphics-symbol]",
}
"""What Streamlit 1.67 itself breaks and no page can change: the rule, and by which elements."""
_FIND = """async (own) => {
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
    const found = await axe.run(document, {runOnly: tags, resultTypes: ['violations'], elementRef: true})
    return found.violations.flatMap(rule => rule.nodes
        .filter(node => !(own[rule.id] && node.element.matches(own[rule.id])))
        .map(node => `${rule.id}: ${node.html.slice(0, 200)} ${node.failureSummary}`))
}"""


@cache
def _axe() -> str:
    if not _SOURCE.exists():
        not_installed("axe-core is not installed (npm install --prefix tests/browser/axe)")
    return _SOURCE.read_text(encoding="utf-8")


def violations(page: "Page") -> list[str]:
    """Every element of a page that breaks a rule of WCAG 2.2, level A or AA, that a program can check.

    Streamlit's own are left out.
    """
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(_axe())
    found: list[str] = page.evaluate(_FIND, STREAMLITS_OWN)
    return found


def open_all(page: "Page") -> None:
    """Unfold everything that is folded."""
    page.evaluate("document.querySelectorAll('details:not([open]) > summary').forEach(fold => fold.click())")


LEAST_CONTRAST = 3.0
"""Between a pixel with the focus and the same without it, to count as changed [-]; WCAG 2.2, 2.4.13."""
_AROUND_PX = 8
"""So far from an element its focus may show [px]."""
_BOX = """() => {
    const box = document.activeElement.getBoundingClientRect()
    return [box.x, box.y, box.width, box.height]
}"""


def focus_shows(page: "Page") -> float:
    """How much the focus changes what one sees, as a share of an outline one pixel thick around the element.

    A pixel counts where its contrast between focused and not is at least `LEAST_CONTRAST`. WCAG 2.2, 2.4.13,
    level AAA, asks for an outline of two pixels, so for about 2; what something else covers shows nothing.
    """
    x, y, width, height = (float(length) for length in page.evaluate(_BOX))
    clip: FloatRect = {
        "x": max(0.0, x - _AROUND_PX),
        "y": max(0.0, y - _AROUND_PX),
        "width": width + 2 * _AROUND_PX,
        "height": height + 2 * _AROUND_PX,
    }
    focused = _luminance(page.screenshot(clip=clip, animations="disabled"))
    page.evaluate("() => { window.hadFocus = document.activeElement; window.hadFocus.blur() }")
    without = _luminance(page.screenshot(clip=clip, animations="disabled"))
    page.evaluate("() => window.hadFocus.focus({focusVisible: true, preventScroll: true})")
    darker, lighter = np.minimum(focused, without), np.maximum(focused, without)
    changed = int(((lighter + 0.05) / (darker + 0.05) >= LEAST_CONTRAST).sum())
    return changed / (2 * (width + height))


def _luminance(picture: bytes) -> NDArray[np.float64]:
    """The relative luminance of every pixel of a PNG; WCAG 2.2, definition of relative luminance."""
    with Image.open(BytesIO(picture)) as image:
        shares = np.asarray(image.convert("RGB"), dtype=np.float64) / 255
    linear = np.where(shares <= 0.04045, shares / 12.92, ((shares + 0.055) / 1.055) ** 2.4)
    luminance: NDArray[np.float64] = linear @ np.array([0.2126, 0.7152, 0.0722])
    return luminance
