"""The day sheet as a PDF, read back by another library."""

import socket
from dataclasses import replace
from datetime import UTC, date, datetime
from io import BytesIO

import pytest
from pypdf import PdfReader

from tests.builders import make_household, make_place
from tests.day_sheets import SHOWING, demo_sheet, planned, sheet
from tripplan.documents.outings.emergency_contacts import EmergencyContact, EmergencyContacts
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.documents.outings.sheet_entries import Booking
from tripplan.files.day_sheet.day_sheet import DaySheet, SheetLine
from tripplan.files.day_sheet.day_sheet_pdf import (
    SURELY_KNOWN,
    Paper,
    _known_letters,
    day_sheet_pdf,
    missing_letters,
    usual_paper,
)
from tripplan.language.wording import clock, money

NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)
POINTS_PER_MM = 72 / 25.4


def read(written: DaySheet, paper: Paper = Paper.A4) -> PdfReader:
    """A sheet's PDF, opened."""
    return PdfReader(BytesIO(day_sheet_pdf(written, paper, NOW)))


def text(written: DaySheet) -> str:
    """What a PDF says, without its line ends."""
    return " ".join(" ".join(page.extract_text() for page in read(written).pages).split())


def test_shows_can_be_read_back() -> None:
    """When each is seen, and which one there is no time for."""
    said = text(sheet(place=SHOWING))
    assert "11:00 AM Otter feeding, until 11:20 AM" in said
    assert "1:30 PM Planet hour, until 2:10 PM" in said
    assert "Night sky at 4:50 PM: no time for it in this plan" in said


def test_times_tickets_and_names_of_many_alphabets_can_be_read_back() -> None:
    """Latin with its marks, Greek, prices, times and booking numbers."""
    outing, said = planned(), text(sheet(bookings=(Booking(what="noon tour", number="K7-3312"),)))
    for moment in (outing.plan.leave_home, outing.plan.enter, outing.plan.leave_place, outing.plan.home):
        assert clock(moment) in said
    for purchase in outing.admission.purchases:
        assert f"{money(purchase.total)} {purchase.quantity} x {purchase.name}" in said
    assert "1 x Adult for Žofie" in said
    assert "1 x Child for Łucja" in said
    assert "Ελένη & Di" in said
    assert "K7-3312" in said
    assert "<script>alert('x')</script>" in said


@pytest.mark.parametrize(
    ("paper", "millimetres"),
    [(Paper.A4, (210, 297)), (Paper.LETTER, (215.9, 279.4))],
)
@pytest.mark.parametrize("place", ["ledgewing", "candlewick-sink-cave", "tern-landing"])
def test_the_demos_outings_fit_one_page(place: str, paper: Paper, millimetres: tuple[float, float]) -> None:
    """Seven people with everything ticked; paper sizes by ISO 216 and ANSI, from memory."""
    (page,) = read(demo_sheet(place, date(2026, 12, 13)), paper).pages
    assert float(page.mediabox.width) == pytest.approx(millimetres[0] * POINTS_PER_MM, abs=0.5)
    assert float(page.mediabox.height) == pytest.approx(millimetres[1] * POINTS_PER_MM, abs=0.5)
    assert "Room for notes" in page.extract_text()


def test_what_does_not_fit_one_page_goes_on_and_nothing_is_lost() -> None:
    """A hundred own things and long cautions fill further pages, the last line included."""
    place = make_place(visit={"cautions": ["take care " * 50] * 20})
    long = sheet(
        make_household(), place, packing=PackingChanges(added=tuple(f"thing {n}" for n in range(100)))
    )
    pages = read(long).pages
    assert len(pages) > 1
    said = " ".join(page.extract_text() for page in pages)
    assert all(f"thing {n}" in said for n in range(100))
    assert "Room for notes" in pages[-1].extract_text()


def test_letters_the_typeface_lacks_are_told() -> None:
    """Chinese and Arabic names are named as missing; Latin, Greek and Cyrillic ones are not."""
    assert missing_letters(sheet()) == ""
    people = tuple(
        EmergencyContact(name=name, telephone="112") for name in ("Ангелина", "Đặng Trần", "李", "فاطمة")
    )
    assert missing_letters(sheet(contacts=EmergencyContacts(contacts=people))) == "".join(sorted("李فاطمة"))


def test_letters_taken_for_known_are_known() -> None:
    """The typeface does have every letter that is not looked up."""
    assert {ord(letter) for letter in SURELY_KNOWN} <= _known_letters()


def test_the_file_names_itself_and_the_time_it_was_given() -> None:
    """Title and language for screen readers, and no clock but the caller's: twice the same bytes."""
    found = read(sheet())
    assert found.metadata is not None
    assert found.metadata.title == "Test museum, Tue, Dec 8, 2026"
    assert found.metadata.creation_date == NOW
    assert str(found.root_object["/Lang"]) == "en"
    assert day_sheet_pdf(sheet(), Paper.A4, NOW) == day_sheet_pdf(sheet(), Paper.A4, NOW)


def test_no_connection_is_opened(monkeypatch: pytest.MonkeyPatch) -> None:
    """Drawing asks no other computer for anything."""

    def refuse(*_: object, **__: object) -> None:
        raise AssertionError("a connection was opened")

    monkeypatch.setattr(socket.socket, "connect", refuse)
    monkeypatch.setattr(socket, "getaddrinfo", refuse)
    assert day_sheet_pdf(sheet(), Paper.LETTER, NOW).startswith(b"%PDF")


def test_the_typeface_is_in_the_file() -> None:
    """Every font is embedded, so that the page looks the same on any computer."""
    (page,) = read(sheet()).pages
    embedded, missing = page._get_fonts()
    assert len(embedded) == 2
    assert missing == set()


@pytest.mark.parametrize(("country", "paper"), [("US", Paper.LETTER), ("DE", Paper.A4), ("GB", Paper.A4)])
def test_paper_is_the_countrys_own(country: str, paper: Paper) -> None:
    """Letter in the United States, A4 in Europe."""
    assert usual_paper(country) is paper


def test_a_text_of_many_pages_is_printed_whole() -> None:
    """A section with a book in one line, or one word without an end, goes on from page to page."""
    words = [f"word{number}" for number in range(4_000)]
    written = sheet()
    last = written.sections[-1]
    for told in (" ".join(words), "x" * 30_000):
        long = replace(last, lines=(*last.lines, SheetLine(told)))
        said = text(replace(written, sections=(*written.sections[:-1], long)))
        if told.startswith("x"):
            assert said.count("x") >= 30_000
        else:
            assert set(said.split()).issuperset(words)
