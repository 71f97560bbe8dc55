"""In which language, and in which country's manner, people are spoken to."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from enum import StrEnum
from functools import cached_property
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from babel import Locale as CldrLocale


class Locale(StrEnum):
    """A language as a country writes it, by its BCP 47 tag."""

    EN_US = "en-US"
    EN_GB = "en-GB"
    DE = "de"

    @cached_property
    def cldr(self) -> "CldrLocale":
        """What CLDR knows of it: how numbers, dates and lists are written."""
        from babel import Locale as CldrLocale  # only now, so that a command's help comes at once

        return CldrLocale.parse(self.value, sep="-")


SOURCE = Locale.EN_US
"""The language that every sentence is written in first, and that the others fall back to."""
_BY_COUNTRY = {
    **dict.fromkeys(("GB", "IE", "AU", "NZ", "IM", "JE", "GG"), Locale.EN_GB),
    **dict.fromkeys(("DE", "AT", "CH", "LI"), Locale.DE),
}

_chosen: ContextVar[Locale | None] = ContextVar("locale", default=None)
_asked: list[Callable[[], Locale | None]] = []


def of_country(code: str) -> Locale:
    """How people are spoken to in a country.

    Args:
        code: ISO 3166-1 alpha-2.
    """
    return _BY_COUNTRY.get(code, SOURCE)


def of_tag(tag: str) -> Locale:
    """The nearest to what a browser or system says it speaks, such as 'de-AT' or 'en-AU'; else the source."""
    language, _, country = tag.replace("_", "-").partition("-")
    if language == "en":
        found = of_country(country[:2].upper())
        return found if found is not Locale.DE else SOURCE
    return next((one for one in Locale if one.value == language), SOURCE)


def spoken() -> Locale:
    """The language of the words that are being made: of this thread or task, else of who is asked for it."""
    chosen = _chosen.get()
    if chosen is None and _asked:
        chosen = _asked[0]()
    return chosen or SOURCE


def speak(locale: Locale) -> None:
    """Speak a language from now on in this thread or task."""
    _chosen.set(locale)


@contextmanager
def speaking(locale: Locale) -> Iterator[None]:
    """Speak a language for a while."""
    before = _chosen.set(locale)
    try:
        yield
    finally:
        _chosen.reset(before)


def ask(who: Callable[[], Locale | None]) -> None:
    """Ask somebody where nothing was chosen: a server of many windows knows the language of each.

    Presses are answered and parts of a page drawn in threads of their own, before or without the page's
    beginning, so that a choice made there would not reach them.
    """
    _asked[:] = [who]
