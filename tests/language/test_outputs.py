"""What is printed, saved on the phone and put on the calendar, as read in America, Britain and Germany."""

import re
from html import unescape

import pytest

from tests.day_sheets import FAMILY, planned, sheet
from tests.language.test_american_words import BANNED, NOT_AMERICAN
from tripplan.files.day_sheet.day_phone_html import day_phone_html
from tripplan.files.day_sheet.day_sheet_html import day_sheet_html
from tripplan.language.locales import Locale, speaking
from tripplan.planning.calendar_entry.outing_entry import entry_for_outing


def pages(locale: Locale) -> str:
    """The words of the day sheet and of the page for the phone."""
    with speaking(locale):
        pages = day_sheet_html(sheet()) + day_phone_html(planned(), sheet())
    bare = re.sub(r"<(style|script)>.*?</\1>|<[^>]*>", " ", pages, flags=re.DOTALL)
    return unescape(bare)


def entry(locale: Locale) -> str:
    """The words of the calendar entry."""
    with speaking(locale):
        return entry_for_outing(planned(), FAMILY, uid="a").description


@pytest.mark.parametrize(
    ("locale", "foreign"), [(Locale.EN_US, BANNED), (Locale.EN_GB, NOT_AMERICAN)], ids=["US", "GB"]
)
def test_no_family_reads_words_of_another_country(locale: Locale, foreign: re.Pattern[str]) -> None:
    """Neither British words in America nor American ones in Britain."""
    assert foreign.findall(pages(locale) + entry(locale)) == []


def test_a_german_family_reads_its_sheet_in_german() -> None:
    """The headings of the sheet and of the phone's page are German, and none of the English ones is left."""
    told = pages(Locale.DE)
    assert {"Wann", "Einpacken", "Sicherheit", "Wieder zu Hause"} <= set(
        re.findall(r"[A-Z]\w+(?: zu Hause)?", told)
    )
    assert not re.search(r"\b(To pack|Safety|Home again|Load up)\b", told)
