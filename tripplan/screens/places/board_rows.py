"""A price board as rows of plain fields: what the parent types, and what a card's file holds of it."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import Enum
from types import MappingProxyType
from typing import Any

from tripplan.errors import Finding
from tripplan.planning.model import Written
from tripplan.planning.offers import (
    AddOn,
    Bundle,
    Companions,
    Elsewhere,
    Extras,
    Fee,
    MustBeAccompanied,
    Parking,
    Pass,
    SalesTax,
    Seats,
    Ticket,
    Voucher,
)
from tripplan.planning.place import Place, PricesRead
from tripplan.screens.widgets.fields import put
from tripplan.screens.widgets.notices import field_in_words

Typed = dict[str, Any]
"""What stands in a row's fields, by their paths: texts, ticks, dates, lists of words, lists of entries."""


class Shape(Enum):
    """How a field is filled in."""

    TEXT = "one line"
    NOTE = "several lines"
    TICK = "yes or no"
    DAY = "a date"
    WORDS = "any number of words"
    CHOICE = "one of several"


class Words(Enum):
    """What is offered to pick from."""

    STATUSES = "statuses"
    OFFERS = "offers"
    PLACES = "places"


@dataclass(frozen=True)
class Field:
    """One field of a row.

    Attributes:
        path: within what the card's file holds, such as 'at_least'.
        label: as on the screen.
        explained: the help beside it; may be empty.
        shape: how it is filled in.
        offered: what is offered, if the family's data decide that.
        choices: what is offered, if it is always the same: values and their words.
        width: how wide it is drawn [px]; as wide as there is room when left out.
    """

    path: str
    label: str
    explained: str = ""
    shape: Shape = Shape.TEXT
    offered: Words | None = None
    choices: tuple[tuple[str, str], ...] = ()
    width: int | None = None


@dataclass(frozen=True)
class Part:
    """A rule that a row has or has not; a tick opens its fields.

    Attributes:
        path: of the rule.
        label: of the tick.
        form: what the rule is written as.
        fields: with paths within the rule.
    """

    path: str
    label: str
    form: type[Written]
    fields: tuple[Field, ...]


@dataclass(frozen=True)
class Entries:
    """A short list within a row, such as a family ticket's seats; an empty entry always waits at its end.

    Attributes:
        path: of the list.
        label: of one entry.
        form: what an entry is written as.
        fields: with paths within an entry.
        most: so many entries a card takes.
    """

    path: str
    label: str
    form: type[Written]
    fields: tuple[Field, ...]
    most: int = 60


Piece = Field | Part | Entries


@dataclass(frozen=True)
class RowKind:
    """One kind of row.

    Attributes:
        name: tells it from the others.
        holder: under which name the card's file holds it; a list unless `alone`.
        called: as on the screen.
        form: what it is written as.
        main: the fields that are always in sight.
        more: the rarer rules.
        alone: whether a board has at most one of them.
        always: whether every board has it, so that it can neither be added nor removed.
    """

    name: str
    holder: str
    called: str
    form: type[Written]
    main: tuple[Piece, ...]
    more: tuple[Piece, ...] = ()
    alone: bool = False
    always: bool = False

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """All fields, rules and lists of such a row."""
        return self.main + self.more


@dataclass(frozen=True)
class Row:
    """One row of a board.

    Attributes:
        kind: what it is.
        typed: what stands in its fields.
    """

    kind: RowKind
    typed: Mapping[str, Any]

    @property
    def title(self) -> str:
        """Its kind and name, such as 'Ticket (Adult)'."""
        name = str(self.typed.get("name") or "").strip()
        return f"{self.kind.called} ({name})" if name else self.kind.called


# --- the kinds --------------------------------------------------------------------------------------------

_AGES = "3-12, 65+, under 2, 6-23 months or any; both ends count."
_STATUSES = "The same words as with the people of your household; type a new one and press Enter."


def _name(label: str, explained: str = "Its name, as on the price board.") -> Field:
    return Field("name", label, explained)


def _price(label: str = "Price", explained: str = "Such as 12.50; 0 is free.") -> Field:
    return Field("price", label, explained, width=120)


def _ages(path: str = "ages", label: str = "Ages") -> Field:
    return Field(path, label, _AGES, width=150)


def _statuses(label: str) -> Field:
    return Field("needs", label, _STATUSES, Shape.WORDS, Words.STATUSES)


def _seats(label: str) -> Entries:
    return Entries("seats", label, Seats, (Field("count", "people", width=120), _ages(label="aged")), most=8)


_TIME_LIMITS = (
    Field("valid", "Only at these times", "Written like opening hours: We; Su[1]; Nov-Mar 14:00-17:00."),
    Field("first_day", "Sold from", shape=Shape.DAY, width=170),
    Field("last_day", "until", shape=Shape.DAY, width=170),
    Field("book_days_ahead", "To be booked so many days ahead", "0 if it can be had at the door."),
    Field("refundable", "The money comes back when the visit is called off in time", shape=Shape.TICK),
    Field("note", "Anything else printed beside it", shape=Shape.NOTE),
)

TICKET = RowKind(
    "ticket",
    "offers",
    "Ticket",
    Ticket,
    (_name("Ticket"), _price(), _ages()),
    (
        _statuses("Only for people who show one of these"),
        Field("one_status_covers", "One of them brings in so many people", "The holder included."),
        Part(
            "companions",
            "Only beside somebody else of the party, such as a paying adult",
            Companions,
            (
                _ages(label="Companion's ages"),
                Field("each_allows", "So many people for each companion"),
                Field("must_pay", "The companion's own way in must cost something", shape=Shape.TICK),
                _statuses("The companion must show one of these"),
            ),
        ),
        Field("at_least", "Sold from so many people on"),
        Field("at_most", "At most so many to one party", "No limit if empty."),
        Field("one_free_per", "One leader free for every so many who pay", "Nobody if empty."),
        _ages("leader_ages", "Leader's ages"),
        *_TIME_LIMITS,
    ),
)

BUNDLE = RowKind(
    "bundle",
    "offers",
    "Family ticket",
    Bundle,
    (_name("Family ticket"), _price("Price in all"), _seats("It lets in")),
    (
        Part(
            "extras",
            "Further people can come along at a price each",
            Extras,
            (
                _price("Price each"),
                _ages(),
                Field("at_most", "At most so many", "No limit if empty."),
            ),
        ),
        _ages("must_include", "Must include somebody aged"),
        _statuses("Somebody among them shows one of these"),
        Field("at_least", "At least so many of its seats must be taken"),
        Field("at_most", "At most so many to one party", "No limit if empty."),
        *_TIME_LIMITS,
    ),
)

PASS = RowKind(
    "pass",
    "offers",
    "Pass",
    Pass,
    (
        _name("Pass"),
        _price("Price in all"),
        Field("months", "Valid for so many months", width=180),
        _seats("It lets in, on each visit"),
    ),
    (
        Field("named", "Written out to certain persons", shape=Shape.TICK),
        Field("guests_at_most", "So many guests get a price of their own on one visit"),
        Field("guests_percent_off", "Off the guests' single price, in %", "100 is free."),
        Field("parking_included", "Parking is included", shape=Shape.TICK),
        Entries(
            "elsewhere",
            "It is good at another place too",
            Elsewhere,
            (
                Field("place", "which of your places", shape=Shape.CHOICE, offered=Words.PLACES),
                Field("percent_off", "off entry there, in %", "100 is free.", width=170),
            ),
        ),
        *_TIME_LIMITS,
    ),
)

ADD_ON = RowKind(
    "add_on",
    "add_ons",
    "Add-on",
    AddOn,
    (
        _name("Beside entry"),
        _price(),
        _ages(),
        Field(
            "per",
            "Who pays it",
            shape=Shape.CHOICE,
            choices=(("person", "each person"), ("party", "the party, once")),
            width=180,
        ),
        Field("usual", "Most families take it", shape=Shape.TICK),
    ),
)

FEE = RowKind(
    "fee",
    "fees",
    "Fee",
    Fee,
    (
        _name("Fee", "Its name, as on the bill."),
        _price(),
        Field(
            "per",
            "How often",
            shape=Shape.CHOICE,
            choices=(("order", "once for everything"), ("ticket", "on every ticket, bundle or pass")),
            width=260,
        ),
    ),
)

TAX = RowKind(
    "tax",
    "sales_tax",
    "Sales tax",
    SalesTax,
    (
        Field("percent", "Added to the prices, in %", width=180),
        Field("on_entry", "on entry", shape=Shape.TICK),
        Field("on_add_ons", "on add-ons", shape=Shape.TICK),
        Field("on_parking", "on parking", shape=Shape.TICK),
    ),
    alone=True,
)

VOUCHER = RowKind(
    "voucher",
    "vouchers",
    "Voucher",
    Voucher,
    (
        _name("Voucher", "What it is called; it is used once for the whole order."),
        Field("percent_off", "Takes off, in %", width=150),
        Field("amount_off", "or an amount", width=150),
    ),
    (
        Field("offers", "Only for these", "For all of them if empty.", Shape.WORDS, Words.OFFERS),
        _statuses("Somebody in the party shows one of these"),
        Field("last_day", "Counts until", shape=Shape.DAY, width=170),
    ),
)

ACCOMPANIED = RowKind(
    "accompanied",
    "must_be_accompanied",
    "Not without an older visitor",
    MustBeAccompanied,
    (
        _ages(label="People aged"),
        _ages("by", "only with somebody aged"),
        Field("each_minds", "who may bring so many", "No limit if empty.", width=190),
    ),
)

PARKING = RowKind(
    "parking",
    "parking",
    "Parking",
    Parking,
    (
        Field("price", "For the car", "0 if it is free, empty if you do not know.", width=150),
        Field("note", "Anything else about leaving the car", shape=Shape.NOTE),
    ),
    alone=True,
    always=True,
)

PRICES_READ = RowKind(
    "prices_read",
    "prices_read",
    "Where the prices come from",
    PricesRead,
    (
        Field("source", "Where did you read them?", "The place's own page, the board at the till, a call."),
        Field("on", "When did you read them?", shape=Shape.DAY, width=190),
        Field("give_or_take_percent", "They may have moved since by, in %", width=230),
    ),
    alone=True,
    always=True,
)

KINDS = MappingProxyType(
    {
        kind.name: kind
        for kind in (TICKET, BUNDLE, PASS, ADD_ON, FEE, TAX, VOUCHER, ACCOMPANIED, PARKING, PRICES_READ)
    }
)
"""Every kind of row by its name, in the order of the screen."""

HOLDERS = tuple(dict.fromkeys(kind.holder for kind in KINDS.values()))
"""The fields of a card that make up its board."""


# --- from a card to rows ----------------------------------------------------------------------------------


def rows_of(place: Place) -> tuple[Row, ...]:
    """A card's board as rows, in the order of the screen; parking always has one."""
    offers = tuple(Row(kind, _typed(kind, offer)) for offer in place.offers for kind in _kinds_of(offer))
    beside = (
        Row(kind, _typed(kind, one))
        for kind in KINDS.values()
        if kind.holder != "offers"
        for one in _held(place, kind)
    )
    return (*offers, *beside)


def _kinds_of(offer: Written) -> Iterator[RowKind]:
    yield from (kind for kind in (TICKET, BUNDLE, PASS) if type(offer) is kind.form)


def _held(place: Place, kind: RowKind) -> tuple[Written, ...]:
    held = getattr(place, kind.holder)
    if kind.alone:
        return () if held is None else (held,)
    return tuple(held)


def blank(kind: RowKind, **changes: object) -> Row:
    """A new row, with every field at what counts when it is left out, but for the changes."""
    return Row(kind, {**_usual(kind.pieces, kind.form), **changes})


def _usual(pieces: Iterable[Piece], form: type[Written]) -> Typed:
    typed: Typed = {}
    for piece in pieces:
        if isinstance(piece, Field):
            field = form.model_fields[piece.path]
            typed[piece.path] = _shown(piece, None if field.is_required() else field.get_default())
        elif isinstance(piece, Part):
            typed[piece.path] = False
            typed |= _under(piece.path, _usual(piece.fields, piece.form))
        else:
            typed[piece.path] = []
    return typed


def _typed(kind: RowKind, written: Written) -> Typed:
    typed: Typed = {}
    for piece in kind.pieces:
        value = getattr(written, piece.path)
        if isinstance(piece, Field):
            typed[piece.path] = _shown(piece, value)
        elif isinstance(piece, Part):
            typed[piece.path] = value is not None
            inner = (
                _usual(piece.fields, piece.form)
                if value is None
                else {field.path: _shown(field, getattr(value, field.path)) for field in piece.fields}
            )
            typed |= _under(piece.path, inner)
        else:
            typed[piece.path] = [
                {field.path: _shown(field, getattr(entry, field.path)) for field in piece.fields}
                for entry in value
            ]
    return typed


def _under(path: str, inner: Typed) -> Typed:
    return {f"{path}.{name}": value for name, value in inner.items()}


def _shown(field: Field, value: object) -> object:
    """A value as its field shows it."""
    if field.shape is Shape.TICK:
        return bool(value)
    if field.shape is Shape.DAY:
        return value if isinstance(value, date) else None
    if field.shape is Shape.WORDS:
        return list(value) if isinstance(value, tuple) else []
    if value is None:
        return ""
    # An exponent, as in 1E+2, is no price that somebody would type.
    return f"{value:f}" if isinstance(value, Decimal) else str(value)


# --- from rows to what a card's file holds ----------------------------------------------------------------


def raw_board(rows: Sequence[Row]) -> dict[str, Any]:
    """The board as a card's file would hold it, before it is checked; nothing typed is left out."""
    raw: dict[str, Any] = {}
    for row in rows:
        written = _raw(row.kind.pieces, row.typed)
        if row.kind.holder == "offers":
            written = {"kind": row.kind.name, **written}
        if row.kind.alone:
            raw[row.kind.holder] = written
        else:
            raw.setdefault(row.kind.holder, []).append(written)
    return raw


def _raw(pieces: Iterable[Piece], typed: Mapping[str, Any]) -> dict[str, Any]:
    raw: dict[str, Any] = {}
    for piece in pieces:
        value = typed[piece.path]
        if isinstance(piece, Part):
            if value:
                inner = {field.path: typed[f"{piece.path}.{field.path}"] for field in piece.fields}
                raw[piece.path] = _raw(piece.fields, inner)
        elif isinstance(piece, Entries):
            raw[piece.path] = [_raw(piece.fields, entry) for entry in value if any(entry.values())]
        elif value is not None:
            put(raw, piece.path, value)
    return raw


# --- what was found, at the row where it stands -----------------------------------------------------------

_IN_LIST = re.compile(r"(\w+)\[(\d+)\]\.?(.*)")
_CODED = re.compile(r"\b[a-z]+(?:_[a-z]+)+\b")


def row_of(field: str, rows: Sequence[Row]) -> tuple[int, str] | None:
    """The row in which a finding stands, by its index, and the rest of the path; None for no single row."""
    match = _IN_LIST.fullmatch(field)
    if match:
        holder, number, rest = match[1], int(match[2]), match[3]
        held = [index for index, row in enumerate(rows) if row.kind.holder == holder]
        return (held[number], rest) if number < len(held) else None
    holder, _, rest = field.partition(".")
    alone = [index for index, row in enumerate(rows) if row.kind.holder == holder and row.kind.alone]
    return (alone[0], rest) if alone else None


def on_board(field: str) -> bool:
    """Whether a finding is about the board."""
    return re.split(r"[.\[]", field, maxsplit=1)[0] in HOLDERS


def in_screen_words(finding: Finding, rows: Sequence[Row]) -> Finding:
    """A finding about the board with the row and its field called as on the screen."""
    found = row_of(finding.field, rows)
    if found is None:
        return Finding("", "Tickets", finding.value, finding.message, finding.weight)
    index, rest = found
    labels = dict(_labels(rows[index].kind.pieces))
    where = ": ".join(filter(None, (rows[index].title, field_in_words(rest, labels, {}))))
    message = _CODED.sub(lambda code: _uncoded(code[0], labels), finding.message)
    return Finding("", where, finding.value, message, finding.weight)


def _labels(pieces: Iterable[Piece]) -> Iterator[tuple[str, str]]:
    for piece in pieces:
        yield piece.path, piece.label
        if not isinstance(piece, Field):
            yield from ((f"{piece.path}.{field.path}", field.label) for field in piece.fields)


def _uncoded(name: str, labels: Mapping[str, str]) -> str:
    return f"'{labels[name]}'" if name in labels else name.replace("_", " ")
