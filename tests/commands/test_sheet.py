"""`tripplan sheet`: an outing as a page to print."""

from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from tests.commands.conftest import NOON, TODAY, Files, Run
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.documents.outings.sheet_entries import Booking, SheetDetails
from tripplan.records.store import Records

ASKED = ("sheet", "test-museum", "2026-12-08", "--out")


@pytest.fixture
def museum(files: Files) -> Files:
    """One museum."""
    files.add()
    return files


def test_the_files_ending_decides_what_is_written(run: Run, museum: Files, tmp_path: Path) -> None:
    """A web page for .html, a PDF for .pdf; both tell of the same day."""
    page, pdf = tmp_path / "sheet.html", tmp_path / "sheet.PDF"
    assert run(*ASKED, page, *museum.options).err == ""
    said = run(*ASKED, pdf, *museum.options)
    assert (said.status, said.err) == (0, "")
    assert "Day sheet for Test museum, Tue, Dec 8, 2026." in said.out
    assert page.read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
    (drawn,) = PdfReader(BytesIO(pdf.read_bytes())).pages
    assert "Tue, Dec 8, 2026" in drawn.extract_text()
    assert "Tue, Dec 8, 2026" in page.read_text(encoding="utf-8")


def test_the_page_for_the_phone_is_written_on_request(run: Run, museum: Files, tmp_path: Path) -> None:
    """It begins with when to leave; as a PDF there is none, because paper has no clock."""
    page = tmp_path / "phone.html"
    said = run(*ASKED, page, "--phone", *museum.options)
    assert (said.status, said.err) == (0, "")
    assert "Page for the phone: Test museum" in said.out
    assert "<h1>Load up at " in page.read_text(encoding="utf-8")
    refused = run(*ASKED, tmp_path / "phone.pdf", "--phone", *museum.options)
    assert refused.status == 2
    assert "the page for the phone is a file that ends in .html" in refused.err


def test_times_of_ones_own_stand_on_the_sheet(run: Run, museum: Files) -> None:
    """The sheet is written for the departure and the return that are named; impossible ones are a no."""
    times = ("--leave-home", "9:52", "--leave-place", "14:07")
    said = run(*ASKED, "-", *times, *museum.options)
    assert "<b>9:52 AM</b> <span>Load up" in said.out
    assert "<b>2:07 PM</b> <span>Leave the place" in said.out
    late = run(*ASKED, "-", "--leave-home", "9:52", "--leave-place", "21:00", *museum.options)
    assert (late.status, late.out) == (1, "")
    assert "it is open 10:00 AM to 5:00 PM" in late.err


def test_another_ending_is_a_fault(run: Run, museum: Files, tmp_path: Path) -> None:
    """Nothing is written under a name that says neither."""
    out = tmp_path / "sheet.docx"
    said = run(*ASKED, out, *museum.options)
    assert (said.status, said.out) == (2, "")
    assert "ends in .html or .pdf" in said.err
    assert not out.exists()


def test_paper_is_the_homes_unless_it_is_named(run: Run, museum: Files, tmp_path: Path) -> None:
    """Letter for a home in the United States (279 mm high), A4 (297 mm) when asked for."""
    usual, named = tmp_path / "usual.pdf", tmp_path / "named.pdf"
    run(*ASKED, usual, *museum.options)
    run(*ASKED, named, "--paper", "a4", *museum.options)
    heights = [round(PdfReader(path).pages[0].mediabox.height * 25.4 / 72) for path in (usual, named)]
    assert heights == [279, 297]


def test_private_things_stand_there_only_when_asked_for(run: Run, museum: Files) -> None:
    """Names do; birth dates and the home do not, until their option is given."""
    usual = run(*ASKED, "-", *museum.options).out
    full = run(*ASKED, "-", "--birth-dates", "--home", "--needs", *museum.options).out
    assert "Ann" in usual
    assert "1988-05-20" not in usual
    assert "Peoria" not in usual
    assert "born 1988-05-20" in full
    assert "Peoria" in full


def test_a_hyphen_prints_the_page_alone(run: Run, museum: Files) -> None:
    """With `-` the output is the web page and nothing else."""
    said = run(*ASKED, "-", *museum.options)
    assert said.out.startswith("<!DOCTYPE html>")
    assert said.out.endswith("</html>\n")
    assert "Day sheet" in said.err


def test_what_is_on_record_stands_on_the_sheet(run: Run, own_records: Records) -> None:
    """Booking numbers and packing that the screens have saved."""
    booking = Booking(what="noon tour", number="K7-3312")
    own_records.save(SheetDetails(place="test-museum", day="2026-12-08", bookings=(booking,)), NOON)
    own_records.save(PackingChanges(added=("the grey rabbit",)), NOON)
    said = run(*ASKED, "-")
    assert "Booking number, noon tour: K7-3312" in said.out
    assert "the grey rabbit" in said.out


def test_the_demos_sheet_says_that_it_is_invented(run: Run) -> None:
    """The paper itself says so."""
    said = run("sheet", "ledgewing", "2026-12-17", "--demo", "--today", TODAY.isoformat(), "--out", "-")
    assert said.status == 0
    assert "Demo: this family, its places and prices are invented." in said.out


def test_letters_the_pdf_cannot_draw_are_told(run: Run, museum: Files, tmp_path: Path) -> None:
    """The PDF is written all the same, with the advice to print the web page."""
    museum.add(id="test-museum", name="Test museum 李")
    said = run(*ASKED, tmp_path / "sheet.pdf", *museum.options)
    assert said.status == 0
    assert "lacks 李" in said.err


def test_no_file_is_overwritten_unseen_and_a_closed_day_writes_none(
    run: Run, museum: Files, tmp_path: Path
) -> None:
    """A file that is there stays as it is; on a closed day there is a reason and no file."""
    out, closed = tmp_path / "sheet.html", tmp_path / "closed.html"
    out.write_text("mine", encoding="utf-8")
    assert run(*ASKED, out, *museum.options).status == 1
    assert out.read_text(encoding="utf-8") == "mine"
    assert run(*ASKED, out, "--replace", *museum.options).status == 0
    said = run("sheet", "test-museum", "2026-12-07", "--out", closed, *museum.options)
    assert said.status == 1
    assert "closed on Mondays" in said.err
    assert not closed.exists()
