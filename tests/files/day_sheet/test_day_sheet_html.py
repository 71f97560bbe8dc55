"""The day sheet as a web page: whole, harmless, and sufficient to itself."""

import re
from html.parser import HTMLParser

import pytest

from tests.builders import make_place
from tests.day_sheets import SHOWING, sheet, words
from tripplan.documents.outings.sheet_entries import Booking
from tripplan.files.day_sheet.day_sheet import DaySheet
from tripplan.files.day_sheet.day_sheet_html import day_sheet_html

LONE = {"meta", "input"}
LOADING = {"src", "srcset", "data", "poster", "background", "action", "formaction", "manifest", "ping"}


class Reader(HTMLParser):
    """Reads a page as a browser would: what is open, what it says, what it would load."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.seen: list[str] = []
        self.said: list[str] = []
        self.links: list[str] = []
        self.loaded: list[str] = []
        self.handlers: list[str] = []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen.append(tag)
        if tag not in LONE:
            self.open.append(tag)
        for name, value in attrs:
            if name == "href":
                self.links.append(value or "")
            if name in LOADING:
                self.loaded.append(value or "")
            if name.startswith("on"):
                self.handlers.append(name)

    def handle_endtag(self, tag: str) -> None:
        assert self.open, f"</{tag}> closes nothing"
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if self.open[-1:] not in (["style"], ["title"]):
            self.said.append(data)


HOSTILE = Booking(what="<script>alert(1)</script>", number="\"'><img src=x onerror=alert(1)> & more")


@pytest.fixture(scope="module")
def written() -> DaySheet:
    """A sheet with a booking that is full of marks; the place's cautions are, too."""
    return sheet(bookings=(HOSTILE,))


@pytest.fixture(scope="module")
def reader(written: DaySheet) -> Reader:
    """The page of that sheet, read."""
    return Reader(day_sheet_html(written))


def test_every_tag_is_closed_in_its_turn(reader: Reader) -> None:
    """Nothing is left open, and each section of the sheet is one of the page."""
    assert reader.open == []
    assert reader.seen.count("h1") == 1
    assert {"section", "ul", "li", "input"} <= set(reader.seen)


def test_the_page_says_what_the_sheet_says_letter_by_letter(reader: Reader, written: DaySheet) -> None:
    """Whatever marks, quotes and ampersands somebody wrote come out as text."""
    said = " ".join("".join(reader.said).split())
    for line in words(written).splitlines():
        assert " ".join(line.split()) in said
    assert "<script>alert(1)</script>" in said
    assert "<script>alert('x')</script> & \"quotes\"" in said


def test_nothing_of_it_runs_or_is_loaded(reader: Reader, written: DaySheet) -> None:
    """No script, picture, font, frame or style from anywhere; links only dial a telephone."""
    assert not {"script", "img", "link", "iframe", "object", "embed", "form", "base"} & set(reader.seen)
    assert reader.loaded == []
    assert reader.handlers == []
    assert reader.links
    assert all(re.fullmatch(r"tel:\+?[0-9]+", link) for link in reader.links)
    page = day_sheet_html(written)
    assert "default-src 'none'" in page
    style = page[page.index("<style>") : page.index("</style>")]
    assert not re.search(r"url\(|@import|https?:", style)


def test_it_is_made_for_telephone_and_printer() -> None:
    """It takes the telephone's width, and has a style of its own for paper without a fixed format."""
    page = day_sheet_html(sheet())
    assert 'name="viewport" content="width=device-width, initial-scale=1"' in page
    assert "@media print" in page
    assert not re.search(r"@page[^}]*size", page)


def test_more_text_is_printed_smaller() -> None:
    """The type on paper shrinks with the length of the sheet, down to a size that can still be read."""

    def size(page: str) -> float:
        found = re.search(r"--print-size: ([0-9.]+)pt", page)
        assert found
        return float(found[1])

    many = tuple(Booking(what=f"tour {'long ' * 12}{n}", number="1") for n in range(10))
    assert size(day_sheet_html(sheet())) > size(day_sheet_html(sheet(bookings=many))) >= 6.5


def test_shows_stand_on_the_page_as_they_are_called() -> None:
    """When each is seen, the one there is no time for, and a name that looks like markup as plain text."""
    said = " ".join(" ".join(Reader(day_sheet_html(sheet(place=SHOWING))).said).split())
    assert "11:00 AM Otter feeding, until 11:20 AM" in said
    assert "1:30 PM Planet hour, until 2:10 PM" in said
    assert "Night sky at 4:50 PM: no time for it in this plan" in said
    shows = [{"name": "<b>Owls</b> & co", "starts": ["15:30"]}]
    page = Reader(day_sheet_html(sheet(place=make_place(visit={"shows": shows}))))
    assert "<b>Owls</b> & co, until 3:50 PM" in " ".join("".join(page.said).split())
