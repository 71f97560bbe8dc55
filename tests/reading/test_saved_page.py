"""A saved web page is read by what it says of itself in schema.org's words, and else by its text.

The properties and their nesting are those of schema.org (Place, PostalAddress, GeoCoordinates,
OpeningHoursSpecification, Offer), from memory; the place is invented.
"""

import json
from decimal import Decimal
from email.message import EmailMessage
from typing import Any

import pytest

from tripplan.documents.places.offers import prices_in
from tripplan.reading.saved_page import LARGEST, PageRead, read_page

MILL: dict[str, Any] = {
    "@type": ["Museum", "TouristAttraction"],
    "name": "Stone Mill Museum",
    "address": {
        "@type": "PostalAddress", "streetAddress": "1 Mill Rd", "addressLocality": "Galena", "addressRegion": "IL",
        "postalCode": "61036", "addressCountry": "US",
    },
    "geo": {"@type": "GeoCoordinates", "latitude": "42.41", "longitude": -90.43},
    "telephone": "(815) 555-0101",
    "url": "https://mill.example.org",
    "openingHoursSpecification": [
        {"dayOfWeek": ["https://schema.org/Tuesday", "Wednesday"], "opens": "10:00:00", "closes": "17:00:00",
         "validFrom": "2026-04-01", "validThrough": "2026-10-31"},
        {"validFrom": "2026-12-25", "validThrough": "2026-12-25", "opens": "00:00", "closes": "00:00"},
    ],
    "offers": [
        {"@type": "Offer", "name": "Adult", "price": "14.00", "priceCurrency": "USD"},
        {"@type": "Offer", "name": "Child (3-12)", "price": 9, "priceCurrency": "USD"},
        {"@type": "Offer", "name": "Under 3", "price": 0, "priceCurrency": "USD"},
    ],
}  # fmt: skip
TEXT = "<body><nav>Home $99</nav><h1>Visit</h1><p>Parking $6</p><p>Last entry 4:15</p></body>"


def page(thing: object, text: str = TEXT) -> bytes:
    """A page that says a thing of itself."""
    script = (
        f'<script type="application/ld+json">{json.dumps({"@graph": [{"@type": "WebSite"}, thing]})}</script>'
    )
    return f"<!doctype html><html><head><title>Mill</title>{script}</head>{text}</html>".encode()


def prices(read: PageRead) -> list[tuple[str, Decimal]]:
    """The names and prices of the offers read."""
    return [(o.offer.name, prices_in(o.offer)[0]) for o in read.board.offers]


def test_what_a_page_says_of_itself_is_read() -> None:
    """Name, address, point, telephone, hours with their season, and offers; parking and last entry from its text."""
    read = read_page(page(MILL))
    assert (read.name, read.street, read.town, read.subdivision, read.postal_code, read.country) == (
        "Stone Mill Museum", "1 Mill Rd", "Galena", "IL", "61036", "US",
    )  # fmt: skip
    assert (read.latitude, read.longitude, read.telephone) == (42.41, -90.43, "(815) 555-0101")
    assert read.board.opening_hours == "2026 Apr 01-2026 Oct 31 Tu,We 10:00-17:00; 2026 Dec 25 off"
    assert prices(read) == [("Adult", Decimal(14)), ("Child", Decimal(9)), ("Child under 3", Decimal(0))]
    assert (read.board.parking, read.board.last_entry, read.board.currency) == (Decimal(6), "16:15", "USD")


def test_microdata_is_read_like_json() -> None:
    """The same words as attributes of the page's own elements."""
    read = read_page(
        b'<div itemscope itemtype="https://schema.org/Zoo"><b itemprop="name">Fern Zoo</b>'
        b'<div itemprop="address" itemscope itemtype="https://schema.org/PostalAddress">'
        b'<span itemprop="addressLocality">Decorah</span></div>'
        b'<meta itemprop="openingHours" content="Mo-Su 09:00-16:00"><p>Adults $10, children 3-12 $6</p></div>',
        "US",
    )
    assert (read.name, read.town, read.board.opening_hours) == ("Fern Zoo", "Decorah", "Mo-Su 09:00-16:00")
    assert prices(read) == [("Adult", Decimal(10)), ("Child", Decimal(6))]


def test_a_page_without_structure_is_read_by_its_text() -> None:
    """Tables and paragraphs are enough; menus of the page are passed over."""
    text = (
        "<nav>Members $50</nav><h1>Otter Pond</h1><table><tr><td>Adults</td><td>$8</td></tr>"
        "<tr><td>Ages 4-12</td><td>$5</td></tr></table><p>Open daily 10 am - 4 pm</p>"
    )
    read = read_page(text.encode(), "US")
    assert (read.name, read.structured, read.board.opening_hours) == (
        "Otter Pond",
        False,
        "Mo-Su 10:00-16:00",
    )
    assert prices(read) == [("Adult", Decimal(8)), ("Child", Decimal(5))]


def test_an_archived_page_is_opened() -> None:
    """Browsers save one file with all parts (.mhtml, RFC 2557); its page is read."""
    archive = EmailMessage()
    archive["Subject"] = "Mill"
    archive.set_content(page(MILL).decode(), subtype="html", cte="quoted-printable")
    archive.make_related()
    assert read_page(archive.as_bytes()).town == "Galena"


def test_a_free_place_is_free() -> None:
    """A place accessible for free has a price of nothing for everybody."""
    read = read_page(
        page({"@type": "Park", "name": "Fern Park", "isAccessibleForFree": True}, "<body></body>")
    )
    assert prices(read) == [("Entry", Decimal(0))]


@pytest.mark.parametrize(
    "content",
    [
        b"<html>" + b"<div>" * 50_000,
        b"<p>" + b"x" * 4_000_000,
        b"<script type='application/ld+json'>" + b"[" * 100_000 + b"</script>",
        b"<script type='application/ld+json'>{\"@type\": \"Museum\", \"geo\": {\"latitude\": 1e999}, \"offers\": [1, null]}</script>",
        b"<!DOCTYPE x [<!ENTITY a SYSTEM \"file:///etc/passwd\">]><p>&a;</p>",
        b"<html>\x00\xff\xfe<p>Adults $9",
    ],
    ids=["deep", "long", "brackets", "nonsense", "entity", "broken"],
)  # fmt: skip
def test_a_hostile_page_does_no_harm(content: bytes) -> None:
    """Deep nesting, endless text, broken structure and outside entities: an answer comes, and no file is read."""
    read = read_page(content)
    assert "root:" not in repr(read)
    assert len(read.board.offers) <= 1


@pytest.mark.parametrize(
    "content", [b"", b"no page at all", b"\x89PNG\r\n\x1a\n" + bytes(50), b"<" * (LARGEST + 1)]
)
def test_what_is_no_page_is_refused(content: bytes) -> None:
    """Plain text, a picture and a file beyond the limit are refused with a reason."""
    with pytest.raises(ValueError, match=r"web page|MB"):
        read_page(content)
