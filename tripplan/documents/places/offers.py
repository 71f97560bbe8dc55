"""The offers on a price board, as rules: who may use one, when, with whom, and for how much."""

from datetime import date
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from tripplan.documents.model import Name, Written
from tripplan.documents.written_money import Price
from tripplan.values.ages import ADULT, EVERYONE, Ages
from tripplan.values.opening_hours import HoursText

Percent = Annotated[Decimal, Field(ge=0, le=100, allow_inf_nan=False)]
Count = Annotated[int, Field(ge=1, le=1000)]


class Companions(Written):
    """Other people of the same party, not on this offer themselves, as in 'free with a paying adult'."""

    ages: Ages = ADULT
    """How old a companion must be."""
    needs: tuple[Name, ...] = ()
    """Statuses of which the companion must have one (a carer goes free with a 'disabled visitor')."""
    must_pay: bool = True
    """Whether the companion's own way in must cost something, before vouchers (a pass counts as paid)."""
    each_allows: Count = 1
    """How many people each companion brings in on this offer."""


class OfferRules(Written):
    """What every kind of offer has in common."""

    name: Name
    """As on the price board; no two offers of a card share a name."""
    valid: HoursText | None = None
    """When it may be used, in opening_hours syntax ('We', 'Su[1]', 'Nov-Mar 14:00-17:00'); or always."""
    first_day: date | None = None
    """The first date it is sold for."""
    last_day: date | None = None
    """The last date it is sold for."""
    book_days_ahead: Annotated[int, Field(ge=0, le=365)] = 0
    """How many days before the visit it must be booked; 0 when it can be had at the door."""
    refundable: bool = False
    """Whether the money comes back when the visit is called off in time."""
    note: str = ""
    """Anything else that is printed beside it."""


class Ticket(OfferRules):
    """Entry for one person at a time; at price 0 it is free entry."""

    kind: Literal["ticket"] = "ticket"
    """A ticket; may be left out."""
    price: Price
    """Per person."""
    ages: Ages = EVERYONE
    """Who it is for, on the day of the visit."""
    needs: tuple[Name, ...] = ()
    """Statuses of which the visitor must have one; shown at the till."""
    one_status_covers: Count = 1
    """How many people one status holder brings in on this offer, the holder included."""
    companions: Companions | None = None
    """Only good next to such people of the same party."""
    at_least: Count = 1
    """Sold only when this many people of the party pay it together (a group price, a minimum of pupils)."""
    at_most: Count | None = None
    """Sold at most this often to one party."""
    one_free_per: Count | None = None
    """One leader goes free for every so many who pay this offer."""
    leader_ages: Ages = ADULT
    """How old a free leader must be."""


class Seats(Written):
    """A number of people of an age band that a bundle or pass lets in."""

    count: Count
    """How many people."""
    ages: Ages = EVERYONE
    """How old they are on the day of the visit."""


class Extras(Written):
    """People beyond a bundle's seats, at a price each."""

    price: Price
    """For each of them."""
    ages: Ages = EVERYONE
    """How old they may be on the day of the visit."""
    at_most: Count | None = None
    """How many of them one bundle takes."""


class Bundle(OfferRules):
    """One price for several people: a family ticket, a ticket for four."""

    kind: Literal["bundle"] = "bundle"
    """One price for several people."""
    price: Price
    """For the whole bundle; seats may stay empty."""
    seats: Annotated[tuple[Seats, ...], Field(min_length=1, max_length=8)]
    """Who it lets in, up to these numbers; a person takes one seat."""
    extras: Extras | None = None
    """What people beyond the seats cost; nobody else may use it when left out."""
    needs: tuple[Name, ...] = ()
    """Statuses of which somebody in its seats must have one."""
    must_include: Ages | None = None
    """Somebody of these ages must take one of its seats (usually '18+')."""
    at_least: Count = 1
    """How many of its seats must be taken."""
    at_most: Count | None = None
    """Sold at most this often to one party."""


class Elsewhere(Written):
    """What a pass is worth at another place."""

    place: Name
    """The id of the other place's card."""
    percent_off: Percent = Decimal(100)
    """100 means free entry there."""


class Pass(OfferRules):
    """An annual pass: bought once, good for many visits."""

    kind: Literal["pass"] = "pass"
    """An annual pass."""
    price: Price
    """For the whole pass, once."""
    months: Annotated[int, Field(ge=1, le=60)]
    """How long it is valid."""
    seats: Annotated[tuple[Seats, ...], Field(min_length=1, max_length=8)]
    """Who it lets in on each visit, up to these numbers."""
    named: bool = False
    """Whether it is written out to certain persons; otherwise any of the household fill its seats."""
    guests_percent_off: Percent = Decimal(0)
    """Off the single price of people who come along without a seat."""
    guests_at_most: Annotated[int, Field(ge=0, le=100)] = 0
    """How many guests get that price on one visit."""
    parking_included: bool = False
    """Whether its holders park for nothing."""
    elsewhere: tuple[Elsewhere, ...] = ()
    """Other places that honour it."""


def _with_kind(value: object) -> object:
    """An offer without a kind is a ticket, the commonest."""
    if isinstance(value, dict) and "kind" not in value:
        return {"kind": "ticket", **value}
    return value


Offer = Annotated[Annotated[Ticket | Bundle | Pass, Field(discriminator="kind")], BeforeValidator(_with_kind)]


class AddOn(Written):
    """Something beside entry that people may want: a boat ride, a feed bag, a guided tour."""

    name: Name
    """As on the price board."""
    price: Price
    """For each person, or once for the party."""
    ages: Ages = EVERYONE
    """Who it is for, on the day of the visit."""
    per: Literal["person", "party"] = "person"
    """Whether each person pays or the party pays once."""
    usual: bool = False
    """Whether most families take it, so that it is planned for unless the parent says no."""


class Fee(Written):
    """What is charged for buying rather than for visiting."""

    name: Name
    """As on the bill."""
    price: Price
    """For each order or ticket."""
    per: Literal["order", "ticket"] = "order"
    """Once for everything, or on every ticket, bundle or pass bought at a price."""


class SalesTax(Written):
    """Tax that the price board leaves out."""

    percent: Percent
    """The rate [%]."""
    on_entry: bool = True
    """Whether it comes on tickets, bundles and passes."""
    on_add_ons: bool = True
    """Whether it comes on add-ons."""
    on_parking: bool = False
    """Whether it comes on parking."""


class Voucher(Written):
    """A price reduction the family holds or can get, used once for the whole order."""

    name: Name
    """What it is called."""
    percent_off: Percent | None = None
    """What it takes off, as a share [%]; or give `amount_off`."""
    amount_off: Price | None = None
    """What it takes off, as an amount; or give `percent_off`."""
    offers: tuple[Name, ...] = ()
    """Which offers it counts for; all of them when left out."""
    needs: tuple[Name, ...] = ()
    """Statuses of which somebody in the party must have one."""
    last_day: date | None = None
    """The last date it counts."""


class MustBeAccompanied(Written):
    """Young visitors who may not enter without an older one."""

    ages: Ages
    """Who may not enter alone."""
    by: Ages = ADULT
    """Who must be with them."""
    each_minds: Count | None = None
    """How many one companion may bring; no limit when left out."""


class Parking(Written):
    """What leaving the car costs."""

    price: Price | None = None
    """Per car; unknown when left out, 0 when free."""
    note: str = ""
    """Anything else about leaving the car."""
