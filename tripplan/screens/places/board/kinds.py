"""Every kind of row that a price board can have, with its fields as on the screen."""

from types import MappingProxyType

from tripplan.documents.places.offers import (
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
from tripplan.documents.places.place import PricesRead
from tripplan.screens.places.board.pieces import Entries, Field, Part, RowKind, Shape, Words

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
