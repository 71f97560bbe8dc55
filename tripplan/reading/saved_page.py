"""Reading a place from a web page that was saved as a file: nothing in it is run and nothing is fetched.

What the page says of itself in schema.org's words (JSON-LD or microdata) comes first; prices and hours it does not say
that way are read from its text.
"""

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal, InvalidOperation
from email import message_from_bytes, policy

from lxml import html

from tripplan.reading.board import BoardRead, read_board

LARGEST = 8 * 1024 * 1024
"""A larger page is refused unread [bytes]."""
_DEEPEST = 60
"""Structured data nested deeper is left out."""

_PLACES = re.compile(
    r"(?:place|attraction|museum|zoo|aquarium|park|garden|business|organization|landmark|playground|farm|library|civicstructure"
    r"|venue|gallery|theater|observatory|planetarium|beach|activity|cave)",
    re.IGNORECASE,
)
_DAYS = {"monday": "Mo", "tuesday": "Tu", "wednesday": "We", "thursday": "Th", "friday": "Fr", "saturday": "Sa", "sunday": "Su",
         "publicholidays": "PH"}  # fmt: skip
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_LEFT_OUT = "script|style|noscript|template|nav|svg|iframe|form|button|select|head"
_BLOCKS = {"p", "div", "li", "tr", "br", "h1", "h2", "h3", "h4", "h5", "h6", "section", "article", "table", "ul", "ol", "dt", "dd",
           "header", "footer", "main", "figure", "blockquote"}  # fmt: skip


_NOTHING_READ = BoardRead(None, (), "", None, None, None, (), ())


@dataclass(frozen=True)
class PageRead:
    """What a saved page says of a place; a text is empty and a number None where it does not say it.

    Attributes:
        name: what the place is called.
        street: street and number.
        town: its town.
        subdivision: state or province, as written.
        postal_code: as written.
        country: as written, usually two letters.
        latitude: [degrees].
        longitude: [degrees].
        telephone: as written.
        web: the page's own address.
        structured: whether schema.org's words were found.
        board: prices and hours.
    """

    name: str = ""
    street: str = ""
    town: str = ""
    subdivision: str = ""
    postal_code: str = ""
    country: str = ""
    latitude: float | None = None
    longitude: float | None = None
    telephone: str = ""
    web: str = ""
    structured: bool = False
    board: BoardRead = _NOTHING_READ


def is_page(content: bytes) -> bool:
    """Whether a file is a saved web page rather than a plain text."""
    head = content[:4000].lower()
    return (
        b"multipart/related" in head
        or re.search(rb"<(?:!doctype html|html|head|body|div|script)\b", head) is not None
    )


def read_page(content: bytes, country: str | None = None) -> PageRead:
    """Read a saved page.

    Args:
        content: an .html file, or an .mhtml file as browsers write it.
        country: ISO 3166-1 alpha-2 code to go by where the page names none.

    Returns:
        What was read; for a page without schema.org's words only what its text says.

    Raises:
        ValueError: the page is larger than `LARGEST`, or has nothing that reads as HTML.
    """
    if len(content) > LARGEST:
        raise ValueError(f"a saved page may have up to {LARGEST // 1024 // 1024} MB")
    document = _document(content)
    page = _described(document)
    said_country = page.country if re.fullmatch(r"[A-Z]{2}", page.country) else country
    board = read_board(_visible_text(document), said_country)
    told = page.board
    return replace(
        page,
        name=page.name or _title(document),
        web=page.web or _canonical(document),
        board=replace(
            board,
            currency=told.currency or board.currency,
            offers=told.offers or board.offers,
            opening_hours=told.opening_hours or board.opening_hours,
            doubts=told.doubts if told.offers else tuple(dict.fromkeys((*told.doubts, *board.doubts))),
        ),
    )


def _document(content: bytes) -> html.HtmlElement:
    if (
        re.match(rb"(?s)\s*(?:[\w-]+:[^\n]*\n|[ \t]+[^\n]*\n){1,40}\s*\n", content)
        and b"multipart/related" in content[:4000]
    ):
        message = message_from_bytes(content, policy=policy.default)
        parts = [part for part in message.walk() if part.get_content_type() == "text/html"]
        content = parts[0].get_payload(decode=True) if parts else b""  # type: ignore[assignment]
    text = content.decode("utf-8", errors="replace").replace("\x00", "")
    if not re.search(r"<[a-zA-Z!]", text):
        raise ValueError("there is no web page in this file")
    parser = html.HTMLParser(no_network=True, huge_tree=False, recover=True)
    try:
        document = html.document_fromstring(re.sub(r"<\?xml[^>]*\?>", "", text), parser=parser)
    except (ValueError, html.etree.ParserError, html.etree.XMLSyntaxError) as unreadable:
        raise ValueError("there is no web page in this file") from unreadable
    return document


def _title(document: html.HtmlElement) -> str:
    heading = next(iter(document.xpath("//h1")), None)
    text = heading.text_content() if heading is not None else (document.findtext(".//title") or "")
    return " ".join(text.split())[:120]


def _canonical(document: html.HtmlElement) -> str:
    found = document.xpath("//link[@rel='canonical']/@href")
    return found[0] if found and re.match(r"https?://", found[0]) else ""


def _visible_text(document: html.HtmlElement) -> str:
    """The page's text, a line for each block and cells of a table apart by bars."""
    for element in document.xpath("|".join(f"//{tag}" for tag in _LEFT_OUT.split("|"))):
        element.drop_tree()
    pieces: list[str] = []
    for event, element in html.etree.iterwalk(document, events=("start", "end")):
        if not isinstance(element.tag, str):
            if event == "end":
                pieces.append(element.tail or "")
            continue
        if element.tag in _BLOCKS:
            pieces.append("\n")
        elif element.tag in ("td", "th"):
            pieces.append(" | " if event == "end" else "")
        pieces.append((element.text if event == "start" else element.tail) or "")
    lines = (" ".join(line.split()).strip(" |") for line in "".join(pieces).split("\n"))
    return "\n".join(line for line in lines if line)


def _described(document: html.HtmlElement) -> PageRead:
    """The place that the page describes in schema.org's words; the first that reads like one."""
    things = [*_json_things(document), *_microdata_things(document)]
    places = [thing for thing in things if any(_PLACES.search(kind) for kind in _texts(thing.get("@type")))]
    best = max(
        places,
        key=lambda t: sum(k in t for k in ("address", "geo", "openingHoursSpecification", "offers")),
        default=None,
    )
    return _place_from(best) if best is not None else PageRead()


def _json_things(document: html.HtmlElement) -> Iterator[Mapping[str, object]]:
    for text in document.xpath("//script[@type='application/ld+json']/text()"):
        try:
            yield from _things_in(json.loads(text, parse_constant=lambda _: None), 0)
        except (ValueError, RecursionError):
            continue


def _things_in(value: object, depth: int) -> Iterator[Mapping[str, object]]:
    if depth > _DEEPEST:
        return
    if isinstance(value, Mapping):
        if "@type" in value:
            yield value
        for inner in value.values():
            yield from _things_in(inner, depth + 1)
    elif isinstance(value, list):
        for inner in value:
            yield from _things_in(inner, depth + 1)


def _microdata_things(document: html.HtmlElement) -> Iterator[Mapping[str, object]]:
    for element in document.xpath("//*[@itemscope][@itemtype][not(@itemprop)]"):
        yield _item(element, 0)


def _item(element: html.HtmlElement, depth: int) -> Mapping[str, object]:
    """An item of microdata with its properties, nested items included."""
    item: dict[str, object] = {"@type": (element.get("itemtype") or "").rsplit("/", 1)[-1]}
    waiting = list(element)
    while waiting:
        child = waiting.pop(0)
        if not isinstance(child.tag, str):
            continue
        nested = child.get("itemscope") is not None
        if child.get("itemprop"):
            value = _item(child, depth + 1) if nested and depth < _DEEPEST else _property(child)
            for name in child.get("itemprop").split():
                known = item.get(name)
                item[name] = (
                    value if known is None else [*(known if isinstance(known, list) else [known]), value]
                )
        if not nested:
            waiting = list(child) + waiting
    return item


def _property(element: html.HtmlElement) -> str:
    for attribute in ("content", "datetime", "href", "src"):
        if element.get(attribute):
            return str(element.get(attribute))
    return " ".join(element.text_content().split())


def _place_from(thing: Mapping[str, object]) -> PageRead:
    address = _first(thing.get("address"))
    where = address if isinstance(address, Mapping) else {}
    geo = _first(thing.get("geo"))
    point = geo if isinstance(geo, Mapping) else {}
    doubts: list[str] = []
    hours = "; ".join(dict.fromkeys(_hours(thing, doubts)))
    currency, board = _offers(thing, _text(where.get("addressCountry")) or None)
    return PageRead(
        name=_text(thing.get("name")),
        street=_text(where.get("streetAddress")) or (address if isinstance(address, str) else ""),
        town=_text(where.get("addressLocality")),
        subdivision=_text(where.get("addressRegion")),
        postal_code=_text(where.get("postalCode")),
        country=_text(where.get("addressCountry")),
        latitude=_degrees(point.get("latitude"), 90),
        longitude=_degrees(point.get("longitude"), 180),
        telephone=_text(thing.get("telephone")),
        web=_text(thing.get("url")) if re.match(r"https?://", _text(thing.get("url"))) else "",
        structured=True,
        board=replace(board, currency=currency, opening_hours=hours, doubts=(*doubts, *board.doubts)),
    )


def _first(value: object) -> object:
    return value[0] if isinstance(value, list) and value else value


def _texts(value: object) -> list[str]:
    values = value if isinstance(value, list) else [value]
    return [str(v) for v in values if isinstance(v, str | int | float) and not isinstance(v, bool)]


def _text(value: object) -> str:
    first = _first(value)
    if isinstance(first, Mapping):
        first = first.get("name", "")
    return " ".join(str(first).split())[:200] if isinstance(first, str | int | float) else ""


def _degrees(value: object, most: int) -> float | None:
    try:
        degrees = float(_text(value))
    except ValueError:
        return None
    return degrees if -most <= degrees <= most else None


def _all(value: object) -> Sequence[object]:
    if value is None:
        return ()
    return value if isinstance(value, list) else (value,)


def _hours(thing: Mapping[str, object], doubts: list[str]) -> Iterator[str]:
    for kind in ("openingHoursSpecification", "specialOpeningHoursSpecification"):
        for entry in _all(thing.get(kind)):
            if isinstance(entry, Mapping):
                yield from _hours_entry(entry)
    for text in _texts(thing.get("openingHours")):
        if re.fullmatch(r"(?:[A-Z][a-z](?:[-,][A-Z][a-z])* )?\d\d:\d\d-\d\d:\d\d", text.strip()):
            yield text.strip()
        elif text.strip():
            doubts.append(f"The hours '{text.strip()[:80]}' were not read.")


def _hours_entry(entry: Mapping[str, object]) -> Iterator[str]:
    names = (day.rsplit("/", 1)[-1].casefold() for day in map(_text, _all(entry.get("dayOfWeek"))))
    days = ",".join(_DAYS[name] for name in names if name in _DAYS)
    opens, closes = (_text(entry.get(key))[:5] for key in ("opens", "closes"))
    season = _season(_text(entry.get("validFrom")), _text(entry.get("validThrough")))
    if not re.fullmatch(r"\d\d:\d\d", opens) or not re.fullmatch(r"\d\d:\d\d", closes) or opens == closes:
        times = "off" if season or days else ""
    else:
        times = f"{opens}-{'24:00' if closes in ('00:00', '23:59') else closes}"
    if times:
        yield " ".join(part for part in (season, days, times) if part)


def _season(first: str, last: str) -> str:
    ends = [re.match(r"(\d{4})-(\d\d)-(\d\d)", text) for text in (first, last)]
    if not all(ends):
        return ""
    dates = [f"{m[1]} {_MONTHS[int(m[2]) - 1]} {m[3]}" for m in ends if m and 1 <= int(m[2]) <= 12]
    return dates[0] if dates[0] == dates[-1] else "-".join(dates)


def _offers(thing: Mapping[str, object], country: str | None) -> tuple[str | None, BoardRead]:
    """Offers by way of their names: 'Adult' at 14.00 USD is read as the words 'Adult: 14.00'."""
    lines: list[str] = []
    currencies: set[str] = set()
    for offer in _all(thing.get("offers")):
        if not isinstance(offer, Mapping):
            continue
        price = _text(offer.get("price"))
        try:
            amount = Decimal(price)
        except InvalidOperation:
            continue
        currencies.add(_text(offer.get("priceCurrency")))
        name = _text(offer.get("name")) or _text(offer.get("category")) or "Admission"
        lines.append(f"{name}: ${amount:.2f}" if amount else f"{name}: free")
    if not lines and _text(thing.get("isAccessibleForFree")).casefold() == "true":
        lines.append("Admission: free")
    board = read_board("\n".join(lines), country)
    known = currencies - {""}
    return (known.pop() if len(known) == 1 else None), replace(board, currency=None, doubts=tuple(
        doubt for doubt in board.doubts if "dollar" not in doubt
    ))  # fmt: skip
