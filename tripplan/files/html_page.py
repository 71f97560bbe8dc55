"""What the pages that are written as HTML files have in common: one file, nothing loaded from anywhere."""

import base64
import hashlib
import html

from tripplan.language.locales import spoken
from tripplan.values.visible import without_unseen

# What a page may load: nothing at all, beside its own style.
MAY_LOAD = "default-src 'none'; style-src 'unsafe-inline'"

_STYLE = """
:root { color-scheme: light; --ink: #1c2426; --quiet: #55605f; --rule: #b9c2c0; }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem; color: var(--ink); background: #fff;
  font-family: system-ui, "Noto Sans", "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif; }
h1 { font-size: 1.5em; margin: 0; }
.quiet { color: var(--quiet); }
"""
_ON_PAPER = """
@media print {
  body { padding: 0; max-width: none; color: #000; }
  .quiet { color: #333; }
}
"""


def escape(text: str) -> str:
    """Text as it stands in a page, without the control characters that HTML forbids."""
    return html.escape(without_unseen(text))


def page_head(title: str, style: str, script: str = "") -> str:
    """The beginning of a page, up to its body.

    Args:
        title: plain text.
        style: the page's own rules (CSS), beside those that all pages share.
        script: the one script that may run, letter by letter as it stands in the body; none when left out.
    """
    may_load = f"{MAY_LOAD}; script-src '{_fingerprint(script)}'" if script else MAY_LOAD
    return f"""<!DOCTYPE html>
<html lang="{spoken()}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="{may_load}">
<meta name="referrer" content="no-referrer">
<title>{escape(title)}</title>
<style>{_STYLE}{style}{_ON_PAPER}</style>
</head>
"""


def _fingerprint(script: str) -> str:
    """What tells the browser that a script is the one that was meant.

    Source: W3C, Content Security Policy Level 3, 2.3.1 (hash-source), from memory.
    """
    return f"sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}"
