"""The phone's page as a file: sufficient to itself, and nothing runs in it but its own few lines."""

import base64
import hashlib
import re

import pytest

from tests.day_sheets import planned, sheet
from tests.files.day_sheet.test_day_sheet_html import HOSTILE, Reader
from tripplan.documents.outings.sheet_entries import Booking
from tripplan.files.day_sheet.day_phone_html import day_phone_html
from tripplan.files.day_sheet.day_stretches import stretches


@pytest.fixture(scope="module")
def page() -> str:
    """A page with a booking and a caution that are full of marks."""
    return day_phone_html(planned(), sheet(bookings=(HOSTILE,)))


def test_only_its_own_script_may_run(page: str) -> None:
    """Its fingerprint is the script's (checked here by the standard library), and nothing else is allowed."""
    (script,) = re.findall(r"<script>(.*?)</script>", page, re.DOTALL)
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    (allowed,) = re.findall(r'http-equiv="Content-Security-Policy" content="([^"]+)"', page)
    assert f"script-src 'sha256-{digest}'" in allowed
    assert "default-src 'none'" in allowed


def test_nothing_is_loaded_and_what_was_typed_stays_text(page: str) -> None:
    """Links dial or open a map; marks that somebody typed come out as text."""
    reader = Reader(page)
    assert reader.open == []
    assert reader.loaded == []
    assert reader.handlers == []
    assert reader.seen.count("script") == 1
    assert all(re.fullmatch(r"tel:\+?[0-9]+|geo:[-0-9.,]+\?q=[-0-9.,]+", link) for link in reader.links)
    assert "<script>alert(1)</script>" in " ".join("".join(reader.said).split())


def test_no_control_character_gets_into_the_page() -> None:
    """What HTML forbids, and marks that turn a line around, are left out of what was typed."""
    hostile = Booking(what="noon\x00 tour\x1b[31m\u202e", number="K7\x85-3312")
    page = day_phone_html(planned(), sheet(bookings=(hostile,)))
    assert not re.search("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]", page)
    assert "noon tour[31m" in page


def test_everything_that_may_be_said_stands_in_it(page: str) -> None:
    """Every stretch with its time; only the first is shown where no script runs."""
    reader = Reader(page)
    said = "".join(reader.said)
    told = stretches(planned())
    assert all(stretch.title in said and stretch.following in said for stretch in told)
    assert page.count('<div class="stretch"') == len(told)
    shown = re.findall(r'<div class="stretch"[^>]*?(hidden)?>', page)
    assert shown == ["", *["hidden"] * (len(told) - 1)]
    assert "If something happens" in said
