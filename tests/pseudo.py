"""A pseudo-language: American English with every letter accented and every text 40 % longer.

What is cut shows, and what no message says stays as it was. Values that stand in a message are handed over.
"""

from functools import cache
from math import ceil

import streamlit as st
from fluent.syntax import FluentParser, FluentSerializer
from fluent.syntax.ast import TextElement
from fluent.syntax.visitor import Visitor
from streamlit.runtime.scriptrunner import get_script_run_ctx

from tripplan.language import messages
from tripplan.language.locales import SOURCE, Locale
from tripplan.language.messages import Catalogue

TAG = "en-XA"
"""The BCP 47 tag that pseudo-languages of English have by custom; a browser speaks it to be told this one."""
LONGER = 0.4
"""By so much [-]; so much more room than English is kept for others. Common practice, no source."""
_PLAIN = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
_ACCENTS = str.maketrans(_PLAIN, "ÅƁÇÐÉƑĜĤÎĴĶĻṀÑÖÞǪŔŠŢÛṼŴẊÝŽåƀçðéƒĝĥîĵķļṁñöþǫŕšţûṽŵẋýž")
_WORD = 7
"""So long is a word that makes a text longer, at most, so that lines can break [letters]."""


def pseudo(source: str) -> str:
    """A message or term of Fluent in the pseudo-language."""
    resource = FluentParser().parse(source)
    _Accents().visit(resource)
    return FluentSerializer().serialize(resource)


class _Accents(Visitor):
    def visit_TextElement(self, node: TextElement) -> None:  # noqa: N802 - the library's name for it
        text = node.value.rstrip()
        letters = sum(letter.isalpha() for letter in text)
        more = ceil(LONGER * letters)
        words = (min(_WORD, more - begun) * "ø" for begun in range(0, more, _WORD))
        node.value = " ".join((text.translate(_ACCENTS), *words)) + node.value[len(text) :]


class _PseudoCatalogue(Catalogue):
    def __init__(self) -> None:
        super().__init__(SOURCE)
        self.entries = {name: pseudo(source) for name, source in self.entries.items()}
        for name in self.entries:
            if name.startswith("-"):
                self._parse(name)


_pseudo_catalogue = cache(_PseudoCatalogue)


def speak_pseudo_to_who_asks() -> None:
    """Speak the pseudo-language to windows whose browser speaks `TAG`, whatever their family speaks."""
    real = messages.catalogue

    def catalogue(locale: Locale) -> Catalogue:
        asked = get_script_run_ctx() is not None and st.context.locale == TAG
        return _pseudo_catalogue() if asked else real(locale)

    messages.catalogue = catalogue  # type: ignore[assignment]
