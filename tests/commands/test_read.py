"""`tripplan read`: prices and hours out of a text or a saved page, as text and as JSON."""

import io
import json
import sys
from pathlib import Path

import pytest

from tests.commands.conftest import Run, assert_fits_schema

BOARD = "Adults $14, children 3-12 $9, under 3 free. Tue-Sat 10-5. Kayak rental $20. Parking $6"


def test_a_text_is_read_into_json(run: Run, tmp_path: Path) -> None:
    """Offers as in a card, prices as numbers, beside the words they came from; the rest word for word."""
    file = tmp_path / "board.txt"
    file.write_text(BOARD, encoding="utf-8")
    said = run("read", file, "--country", "US", "--json")
    assert (said.status, said.err) == (0, "")
    read = json.loads(said.out)
    assert_fits_schema(read, "read")
    assert [(o["kind"], o["name"], o["price"], o["words"]) for o in read["offers"]] == [
        ("ticket", "Adult", 14, "Adults $14"),
        ("ticket", "Child", 9, "children 3-12 $9"),
        ("ticket", "Child under 3", 0, "under 3 free"),
    ]
    assert (read["currency"], read["opening_hours"], read["parking"]) == ("USD", "Tu-Sa 10:00-17:00", 6)
    assert read["not_understood"] == ["Kayak rental $20."]


def test_what_stands_beside_entry_is_told_and_in_the_json(run: Run, tmp_path: Path) -> None:
    """An extra that a ticket makes cheaper, as a sentence and as a card holds it."""
    file = tmp_path / "board.txt"
    file.write_text("Adults $14\nCarousel $3, $1 with admission", encoding="utf-8")
    read = json.loads(run("read", file, "--country", "US", "--json").out)
    assert_fits_schema(read, "read")
    (carousel,) = read["add_ons"]
    assert (carousel["name"], carousel["price"], carousel["with_ticket"]) == (
        "Carousel",
        3,
        [{"offers": ["Adult"], "price": 1}],
    )
    assert "$1.00 with 'Adult'" in run("read", file, "--country", "US").out


def test_a_saved_page_is_told_from_a_text(run: Run, tmp_path: Path) -> None:
    """What a page says of itself comes with its prices."""
    page = tmp_path / "mill.html"
    place = {"@type": "Museum", "name": "Mill Museum", "telephone": "555-0101"}
    script = f'<script type="application/ld+json">{json.dumps(place)}</script>'
    page.write_text(f"<!doctype html><html>{script}<body><p>Adults $8</p></body></html>", encoding="utf-8")
    read = json.loads(run("read", page, "--json").out)
    assert (read["name"], read["telephone"], read["offers"][0]["price"]) == ("Mill Museum", "555-0101", 8)


def test_standard_input_is_a_dash(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    """What another program writes can be piped in."""
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(BOARD.encode())))
    assert "Adults $14" in run("read", "-").out


@pytest.mark.parametrize(("name", "status"), [("nothing.txt", 1), ("absent.txt", 2)])
def test_nothing_read_and_no_file_are_told_apart(run: Run, tmp_path: Path, name: str, status: int) -> None:
    """A text without prices or hours is a no; a file that is not there is bad input."""
    (tmp_path / "nothing.txt").write_text("Once upon a time", encoding="utf-8")
    assert run("read", tmp_path / name).status == status


def test_a_file_beyond_the_limit_is_refused_by_name(run: Run, tmp_path: Path) -> None:
    """Nine megabytes are no price board."""
    large = tmp_path / "large.html"
    large.write_bytes(b"<html>" + b"x" * 9_000_000)
    said = run("read", large)
    assert said.status == 2
    assert "large.html" in said.err
