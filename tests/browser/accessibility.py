"""What axe-core, an independent checker of the W3C's rules, finds wrong with a page."""

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from tests.missing import not_installed

if TYPE_CHECKING:
    from playwright.sync_api import Page

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
