"""The offers on a price board, as rules: who may use one, when, with whom, and for how much."""

from datetime import date
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.model import ClockTime, Name, Written
from tripplan.documents.written_money import Price
from tripplan.values.ages import ADULT, EVERYONE, AgeBand, Ages
from tripplan.values.heights import TallAs
from tripplan.values.opening_hours import HoursText

Percent = Annotated[Decimal, Field(ge=0, le=100, allow_inf_nan=False)]
Count = Annotated[int, Field(ge=1, le=1000)]
LengthOfStay = Annotated[int, Field(ge=10, le=24 * 60)]


def ages_asked(label: str, *, rare: bool = False) -> FieldSpec:
    """How a band of ages is asked for, under a label of its own."""
    help_ = "3-12, 65+, under 2, 6-23 months or any; both ends count."
    return FieldSpec(label, help=help_, width=150, rare=rare)


def _statuses_asked(label: str, *, rare: bool = False) -> FieldSpec:
    return FieldSpec(
        label,
        help="The same words as with the people of your household; type a new one and press Enter.",
        control=Control.OWN_WORDS,
        offered="statuses",
        example="anybody",
        rare=rare,
    )


def _price_asked(label: str) -> FieldSpec:
    return FieldSpec(label, help="Such as 12.50; 0 is free.", width=120)


class Companions(Written):
    """Other people of the same party, not on this offer themselves, as in 'free with a paying adult'."""

    ages: Annotated[Ages, ages_asked("Companion's ages")] = ADULT
    """How old a companion must be."""
    needs: Annotated[tuple[Name, ...], _statuses_asked("The companion must show one of these")] = ()
    """Statuses of which the companion must have one (a carer goes free with a 'disabled visitor')."""
    must_pay: Annotated[bool, FieldSpec("The companion's own way in must cost something")] = True
    """Whether the companion's own way in must cost something, before vouchers (a pass counts as paid)."""
    each_allows: Annotated[Count, FieldSpec("So many people for each companion")] = 1
    """How many people each companion brings in on this offer."""


class OfferRules(Written):
    """What every kind of offer has in common."""

    name: Annotated[Name, FieldSpec("Name", help="Its name, as on the price board.", width=300)]
    """As on the price board; no two offers of a card share a name."""
    valid: Annotated[
        HoursText | None,
        FieldSpec(
            "Only at these times",
            help="Written like opening hours: We; Su[1]; Nov-Mar 14:00-17:00.",
            rare=True,
        ),
    ] = None
    """When it may be used, in opening_hours syntax ('We', 'Su[1]', 'Nov-Mar 14:00-17:00'); or always."""
    first_day: Annotated[date | None, FieldSpec("Sold from", width=170, rare=True)] = None
    """The first date it is sold for."""
    last_day: Annotated[date | None, FieldSpec("until", width=170, called="Sold until", rare=True)] = None
    """The last date it is sold for."""
    book_days_ahead: Annotated[
        int,
        Field(ge=0, le=365),
        FieldSpec(
            "To be booked so many days ahead",
            help="0 if it can be had at the door.",
            unit=Unit.DAYS,
            rare=True,
        ),
    ] = 0
    """How many days before the visit it must be booked; 0 when it can be had at the door."""
    longest_stay_minutes: Annotated[
        LengthOfStay | None,
        FieldSpec(
            "Good for a stay of at most", help="120 for a two-hour ticket.", unit=Unit.MINUTES, rare=True
        ),
    ] = None
    """How long one may stay on it, from being let in until leaving; as long as the place is open when left
    out."""
    leave_by: Annotated[
        ClockTime | None,
        FieldSpec(
            "You must be out again by",
            help="By the clock of the place, such as 12:00 for a morning ticket.",
            control=Control.CLOCK_TYPED,
            width=170,
            rare=True,
        ),
    ] = None
    """By when one must have left on it, by the clock of the place on the day of arrival."""
    includes: Annotated[
        tuple[Name, ...],
        FieldSpec(
            "Includes also",
            help="Things beside entry or shows of this card, as in an entry with the planetarium.",
            control=Control.COMMAS,
            rare=True,
        ),
    ] = ()
    """Which add-ons or shows of the card come with it; whoever enters on it pays nothing more for them."""
    online_only: Annotated[bool, FieldSpec("Sold only online", rare=True)] = False
    """Whether it is sold only online, where fees for buying online come on top."""
    refundable: Annotated[
        bool, FieldSpec("The money comes back when the visit is called off in time", rare=True)
    ] = False
    """Whether the money comes back when the visit is called off in time."""
    note: Annotated[str, FieldSpec("Anything else printed beside it", control=Control.NOTE, rare=True)] = ""
    """Anything else that is printed beside it."""


class AlsoAt(Written):
    """Another place that a ticket for two places is good for."""

    place: Annotated[Name, FieldSpec("which of your places", control=Control.CHOICE, offered="places")]
    """The id of the other place's card."""
    within_days: Annotated[
        int,
        Field(ge=1, le=366),
        FieldSpec("within so many days", help="1 is the same day.", unit=Unit.DAYS, width=170),
    ] = 1
    """Within how many days both are visited, the first of them included; 1 is the same day."""


class AgePrice(Written):
    """A price of its own for some ages on the same ticket."""

    ages: Annotated[Ages, ages_asked("aged")]
    """Who pays it, on the day of the visit."""
    price: Annotated[Price, FieldSpec("price each", width=120)]
    """Per person."""


Birthday = Literal["any day", "birthday", "birth month"]


class Ticket(OfferRules):
    """Entry for one person at a time; at price 0 it is free entry."""

    kind: Literal["ticket"] = "ticket"
    """A ticket; may be left out."""
    price: Annotated[Price, _price_asked("Price")]
    """Per person."""
    ages: Annotated[Ages, ages_asked("Ages")] = EVERYONE
    """Who it is for, on the day of the visit."""
    other_ages: Annotated[
        tuple[AgePrice, ...],
        Field(max_length=8),
        FieldSpec(
            "Other ages on the same ticket",
            help="As in a group price for adults and children who together make up the number. An emptied "
            "line is left out.",
            rare=True,
        ),
    ] = ()
    """Prices for other ages; all who use the ticket count together toward its smallest and largest number."""
    good_on: Annotated[
        Birthday,
        FieldSpec(
            "Good on",
            help="A birthday counts only where the day of birth is known.",
            words={
                "any day": "any day",
                "birthday": "the visitor's birthday",
                "birth month": "days in the month of the visitor's birthday",
            },
            rare=True,
        ),
    ] = "any day"
    """Whether it is only good on the visitor's birthday, or in its month."""
    needs: Annotated[
        tuple[Name, ...], _statuses_asked("Only for people who show one of these", rare=True)
    ] = ()
    """Statuses of which the visitor must have one; shown at the ticket counter."""
    one_status_covers: Annotated[
        Count, FieldSpec("One of them brings in so many people", help="The holder included.", rare=True)
    ] = 1
    """How many people one status holder brings in on this offer, the holder included."""
    companions: Annotated[
        Companions | None,
        FieldSpec("Only beside somebody else of the party, such as a paying adult", rare=True),
    ] = None
    """Only good next to such people of the same party."""
    at_least: Annotated[Count, FieldSpec("Sold from so many people on", rare=True)] = 1
    """Sold only when this many people of the party pay it together (a group price, a minimum of students)."""
    at_most: Annotated[
        Count | None, FieldSpec("At most so many to one party", help="No limit if empty.", rare=True)
    ] = None
    """Sold at most this often to one party."""
    one_free_per: Annotated[
        Count | None,
        FieldSpec("One leader free for every so many who pay", help="Nobody if empty.", rare=True),
    ] = None
    """One leader goes free for every so many who pay this offer."""
    leader_ages: Annotated[Ages, ages_asked("Leader's ages", rare=True)] = ADULT
    """How old a free leader must be."""

    also_at: Annotated[
        tuple[AlsoAt, ...],
        Field(max_length=8),
        FieldSpec("A ticket for two places: good there too", help="An emptied line is left out.", rare=True),
    ] = ()
    """Other places that it lets the same people into, once, without paying again."""

    @property
    def bands(self) -> tuple[AgeBand, ...]:
        """The ages that have a price on it, in the order of `prices_in`."""
        return (self.ages, *(other.ages for other in self.other_ages))


class Discount(OfferRules, title="Percentage off"):
    """A part off the single price for people who show something: residents 25 % off."""

    kind: Literal["discount"] = "discount"
    """A part off the single price."""
    percent_off: Annotated[Percent, FieldSpec("Takes off", unit=Unit.PERCENT, width=150)]
    """What it takes off the cheapest ticket such a person could have alone."""
    needs: Annotated[tuple[Name, ...], _statuses_asked("For people who show one of these")] = ()
    """Statuses of which the visitor must have one; anybody when left out."""
    ages: Annotated[Ages, ages_asked("Ages")] = EVERYONE
    """Who it is for, on the day of the visit."""
    offers: Annotated[
        tuple[Name, ...],
        FieldSpec(
            "Only off these",
            help="Off any single ticket if empty.",
            control=Control.WORDS,
            offered="offers",
            example="any single ticket",
            rare=True,
        ),
    ] = ()
    """Off which tickets it goes; off any single ticket when left out."""
    one_status_covers: Annotated[
        Count, FieldSpec("One of them brings in so many people", help="The holder included.", rare=True)
    ] = 1
    """How many people one status holder brings in on it, the holder included."""
    at_most: Annotated[
        Count | None, FieldSpec("For at most so many of one party", help="No limit if empty.", rare=True)
    ] = None
    """How many people of one party have it."""


class Seats(Written):
    """A number of people of an age band that a bundle or pass lets in."""

    count: Annotated[Count, FieldSpec("people", width=120)]
    """How many people."""
    ages: Annotated[Ages, ages_asked("aged")] = EVERYONE
    """How old they are on the day of the visit."""


class Extras(Written):
    """People beyond a bundle's seats, at a price each."""

    price: Annotated[Price, _price_asked("Price each")]
    """For each of them."""
    ages: Annotated[Ages, ages_asked("Ages")] = EVERYONE
    """How old they may be on the day of the visit."""
    at_most: Annotated[Count | None, FieldSpec("At most so many", help="No limit if empty.")] = None
    """How many of them one bundle takes."""


class Bundle(OfferRules, title="Family ticket"):
    """One price for several people: a family ticket, a ticket for four."""

    kind: Literal["bundle"] = "bundle"
    """One price for several people."""
    price: Annotated[Price, _price_asked("Price in all")]
    """For the whole bundle; seats may stay empty."""
    seats: Annotated[tuple[Seats, ...], Field(min_length=1, max_length=8), FieldSpec("It lets in")]
    """Who it lets in, up to these numbers; a person takes one seat."""
    extras: Annotated[
        Extras | None, FieldSpec("Further people can come along at a price each", rare=True)
    ] = None
    """What people beyond the seats cost; nobody else may use it when left out."""
    needs: Annotated[
        tuple[Name, ...], _statuses_asked("Somebody among them shows one of these", rare=True)
    ] = ()
    """Statuses of which somebody in its seats must have one."""
    must_include: Annotated[Ages | None, ages_asked("Must include somebody aged", rare=True)] = None
    """Somebody of these ages must take one of its seats (usually '18+')."""
    at_least: Annotated[Count, FieldSpec("At least so many of its seats must be taken", rare=True)] = 1
    """How many of its seats must be taken."""
    at_most: Annotated[
        Count | None, FieldSpec("At most so many to one party", help="No limit if empty.", rare=True)
    ] = None
    """Sold at most this often to one party; to one family where it is for one family."""
    one_family: Annotated[
        bool,
        FieldSpec(
            "Only for one family, such as parents with their own children",
            help="Who belongs to another family than yours is said with the person.",
            rare=True,
        ),
    ] = False
    """Whether all that come in by one of them must be of one family: the household, or people with the same
    word for their family."""
    per_car: Annotated[bool, FieldSpec("Sold for each car", help="A permit for a car.", rare=True)] = False
    """Whether it is a permit for one car: it lets in no more people than a car of the household seats."""
    counts_everybody: Annotated[
        bool,
        FieldSpec("Infants count too", help="Nobody then enters on a free ticket beside it.", rare=True),
    ] = False
    """Whether its seats count everybody, so that nobody enters on a free ticket beside it; so it is with
    every permit for a car."""
    also_at: Annotated[
        tuple[AlsoAt, ...],
        Field(max_length=8),
        FieldSpec("A ticket for two places: good there too", help="An emptied line is left out.", rare=True),
    ] = ()
    """Other places that it lets the same people into, once, without paying again."""


class Elsewhere(Written):
    """What a pass is worth at another place."""

    place: Annotated[Name, FieldSpec("which of your places", control=Control.CHOICE, offered="places")]
    """The id of the other place's card."""
    percent_off: Annotated[
        Percent, FieldSpec("off entry there, in %", help="100 is free.", unit=Unit.PERCENT, width=170)
    ] = Decimal(100)
    """100 means free entry there."""
    at_most: Annotated[Count | None, FieldSpec("for at most so many", help="No limit if empty.")] = None
    """How many people one pass lets in there."""


class Pass(OfferRules):
    """An annual pass: bought once, good for many visits."""

    kind: Literal["pass"] = "pass"
    """An annual pass."""
    price: Annotated[Price, _price_asked("Price in all")]
    """For the whole pass, once."""
    months: Annotated[
        int, Field(ge=1, le=60), FieldSpec("Valid for so many months", unit=Unit.MONTHS, width=180)
    ]
    """How long it is valid."""
    seats: Annotated[
        tuple[Seats, ...], Field(min_length=1, max_length=8), FieldSpec("It lets in, on each visit")
    ]
    """Who it lets in on each visit, up to these numbers."""
    named: Annotated[bool, FieldSpec("Written out to certain persons", rare=True)] = False
    """Whether it is written out to certain persons; otherwise any of the household fill its seats."""
    guests_percent_off: Annotated[
        Percent, FieldSpec("Off the guests' single price", help="100 is free.", unit=Unit.PERCENT, rare=True)
    ] = Decimal(0)
    """Off the single price of people who come along without a seat."""
    guests_at_most: Annotated[
        int, Field(ge=0, le=100), FieldSpec("So many guests get a price of their own on one visit", rare=True)
    ] = 0
    """How many guests get that price on one visit."""
    guests_per_year: Annotated[
        Count | None, FieldSpec("So many guests in all while it counts", help="No limit if empty.", rare=True)
    ] = None
    """How many guests get that price in all the time it is valid; no limit when left out."""
    parking_included: Annotated[bool, FieldSpec("Parking is included", rare=True)] = False
    """Whether its holders park for nothing."""
    elsewhere: Annotated[tuple[Elsewhere, ...], FieldSpec("It is good at another place too", rare=True)] = ()
    """Other places that honour it."""


def _with_kind(value: object) -> object:
    """An offer without a kind is a ticket, the commonest."""
    if isinstance(value, dict) and "kind" not in value:
        return {"kind": "ticket", **value}
    return value


Offer = Annotated[
    Annotated[Ticket | Discount | Bundle | Pass, Field(discriminator="kind")], BeforeValidator(_with_kind)
]


def also_at(offer: Offer) -> tuple[AlsoAt, ...]:
    """Other places that a ticket for two places is good for; none for other offers."""
    return offer.also_at if isinstance(offer, Ticket | Bundle) else ()


def is_kept(offer: Offer) -> bool:
    """Whether a family can hold it and show it at a later visit: a pass, a ticket for two places."""
    return isinstance(offer, Pass) or bool(also_at(offer))


def prices_in(offer: Offer) -> tuple[Decimal, ...]:
    """Every price that an offer names; none for a part off the price of another."""
    match offer:
        case Discount():
            return ()
        case Ticket():
            return (offer.price, *(other.price for other in offer.other_ages))
        case Bundle() if offer.extras is not None:
            return (offer.price, offer.extras.price)
        case _:
            return (offer.price,)


class WithTicket(Written):
    """What an add-on costs those who enter on certain tickets."""

    offers: Annotated[
        tuple[Name, ...],
        Field(min_length=1),
        FieldSpec("with these tickets", control=Control.WORDS, offered="offers"),
    ]
    """On which offers of the card one must have entered."""
    price: Annotated[Price, FieldSpec("price each", help="0 is free.", width=120)]
    """What it then costs."""


class AddOn(Written, title="Add-on"):
    """Something beside entry that people may want: a boat ride, a feed bag, a guided tour."""

    name: Annotated[Name, FieldSpec("Beside entry", help="Its name, as on the price board.", width=300)]
    """As on the price board."""
    price: Annotated[Price, _price_asked("Price")]
    """For each person, or once for the party."""
    ages: Annotated[Ages, ages_asked("Ages")] = EVERYONE
    """Who it is for, on the day of the visit."""
    least_height: Annotated[
        TallAs | None,
        FieldSpec("From this height on", help="Such as 42 in or 107 cm.", width=170, rare=True),
    ] = None
    """How tall one must be for it; any height when left out."""
    most_height: Annotated[
        TallAs | None,
        FieldSpec("Up to this height", width=170, rare=True),
    ] = None
    """How tall one may be for it at most; that height itself is let in."""
    needs: Annotated[tuple[Name, ...], _statuses_asked("Only for people who show one of these")] = ()
    """Statuses of which whoever takes it must have one."""
    valid: Annotated[
        HoursText | None,
        FieldSpec("Only for visits that begin at these times", help="Written like opening hours: Sa-Su."),
    ] = None
    """For visits at which times it is to be had, by the moment of arrival, in opening_hours syntax."""
    per: Annotated[
        Literal["person", "party"],
        FieldSpec("Who pays it", words={"person": "each person", "party": "the party, once"}, width=180),
    ] = "person"
    """Whether each person pays or the party pays once."""
    with_ticket: Annotated[
        tuple[WithTicket, ...],
        Field(max_length=8),
        FieldSpec("Cheaper with a ticket", help="An emptied line is left out.", rare=True),
    ] = ()
    """Prices for those who enter on certain tickets; of several that fit the first counts."""
    usual: Annotated[bool, FieldSpec("Most families take it")] = False
    """Whether most families take it, so that it is planned for unless the parent says no."""


def price_beside(add_on: AddOn, offer: OfferRules) -> Decimal:
    """What an add-on costs somebody who enters on an offer of the same card; 0 where it comes with it."""
    if add_on.name in offer.includes:
        return Decimal(0)
    return next((one.price for one in add_on.with_ticket if offer.name in one.offers), add_on.price)


class Fee(Written):
    """What is charged for buying rather than for visiting."""

    name: Annotated[Name, FieldSpec("Fee", help="Its name, as on the bill.", width=300)]
    """As on the bill."""
    price: Annotated[Price | None, FieldSpec("Price", help="Such as 1.50.", width=120)] = None
    """For each order or ticket; or give `percent`."""
    percent: Annotated[
        Percent | None, FieldSpec("or a part of the prices", unit=Unit.PERCENT, called="Part", width=170)
    ] = None
    """Part of the prices it is charged on, before any voucher; or give `price`."""
    per: Annotated[
        Literal["order", "ticket"],
        FieldSpec(
            "How often",
            words={"order": "once for everything", "ticket": "on every ticket, bundle or pass"},
            width=260,
        ),
    ] = "order"
    """Once for everything, or on every ticket, bundle or pass bought at a price; a part comes to the same."""
    online_only: Annotated[bool, FieldSpec("Only on what is sold only online")] = False
    """Whether it is charged only where something is bought that is sold only online."""


class SalesTax(Written):
    """Tax that the price board leaves out."""

    percent: Annotated[Percent, FieldSpec("Added to the prices", unit=Unit.PERCENT, width=180)]
    """The rate."""
    on_entry: Annotated[bool, FieldSpec("on entry")] = True
    """Whether it comes on tickets, bundles and passes."""
    on_add_ons: Annotated[bool, FieldSpec("on add-ons")] = True
    """Whether it comes on add-ons."""
    on_parking: Annotated[bool, FieldSpec("on parking")] = False
    """Whether it comes on parking."""
    on_fees: Annotated[bool, FieldSpec("on fees")] = False
    """Whether it comes on fees."""


class Voucher(Written):
    """A price reduction the family holds or can get, used once for the whole order."""

    name: Annotated[
        Name, FieldSpec("Voucher", help="What it is called; it is used once for the whole order.", width=300)
    ]
    """What it is called."""
    percent_off: Annotated[Percent | None, FieldSpec("Takes off", unit=Unit.PERCENT, width=150)] = None
    """What it takes off, as a share; or give `amount_off`."""
    amount_off: Annotated[Price | None, FieldSpec("or an amount", called="Amount off", width=150)] = None
    """What it takes off, as an amount; or give `percent_off`."""
    offers: Annotated[
        tuple[Name, ...],
        FieldSpec(
            "Only for these",
            help="For all of them if empty.",
            control=Control.WORDS,
            offered="offers",
            example="all of them",
            rare=True,
        ),
    ] = ()
    """Which offers it counts for; all of them when left out."""
    needs: Annotated[
        tuple[Name, ...], _statuses_asked("Somebody in the party shows one of these", rare=True)
    ] = ()
    """Statuses of which somebody in the party must have one."""
    last_day: Annotated[date | None, FieldSpec("Counts until", width=170, rare=True)] = None
    """The last date it counts."""
    valid: Annotated[
        HoursText | None,
        FieldSpec(
            "Only for visits at these times", help="Written like opening hours: Mo-Fr; Nov-Mar.", rare=True
        ),
    ] = None
    """For visits at which times it counts, by the moment of arrival, in opening_hours syntax; or always."""
    book_days_ahead: Annotated[
        int,
        Field(ge=0, le=365),
        FieldSpec("To be used so many days ahead", unit=Unit.DAYS, rare=True),
    ] = 0
    """How many days before the visit the order must be placed for it to count."""
    people_at_most: Annotated[
        Count | None,
        FieldSpec(
            "For at most so many people",
            help="A family ticket counts with all its seats. No limit if empty.",
            rare=True,
        ),
    ] = None
    """For how many people a percentage is taken off; a bundle or pass counts with all its seats."""


class MustBeAccompanied(Written, title="Not without an older visitor"):
    """Young visitors who may not enter without an older one."""

    ages: Annotated[Ages, ages_asked("People aged")]
    """Who may not enter alone."""
    by: Annotated[Ages, ages_asked("only with somebody aged")] = ADULT
    """Who must be with them."""
    each_minds: Annotated[
        Count | None, FieldSpec("who may bring so many", help="No limit if empty.", width=190)
    ] = None
    """How many one companion may bring; no limit when left out."""


class ParkingRate(Written, title="Price of parking by time"):
    """What leaving the car costs at certain times, or for a certain length of time."""

    valid: Annotated[
        HoursText | None,
        FieldSpec("when you arrive at", help="Written like opening hours: Mo-Fr; 18:00-24:00.", width=190),
    ] = None
    """When it counts, by the moment of arrival, in opening_hours syntax ('Mo-Fr', '18:00-24:00')."""
    up_to_minutes: Annotated[
        LengthOfStay | None, FieldSpec("for up to", unit=Unit.MINUTES, help="Any time if empty.", width=130)
    ] = None
    """For how long at most it counts; for any time when left out."""
    price: Annotated[Price, FieldSpec("price", help="0 if it is free.", width=110)] = Decimal(0)
    """Per car, once."""
    per_hour: Annotated[Price | None, FieldSpec("and for each hour begun", width=170)] = None
    """On top of it, for each hour begun after the first minutes free of charge."""
    free_minutes: Annotated[
        int | None,
        Field(ge=0, le=24 * 60),
        FieldSpec("the first minutes free", unit=Unit.MINUTES, width=160),
    ] = None
    """How many minutes pass before the hours are counted."""
    at_most: Annotated[Price | None, FieldSpec("never more than", width=130)] = None
    """What it comes to at most."""


class Parking(Written):
    """What leaving the car costs."""

    price: Annotated[
        Price | None, FieldSpec("For the car", help="0 if it is free, empty if you do not know.", width=150)
    ] = None
    """Per car; unknown when left out, 0 when free."""
    rates: Annotated[
        tuple[ParkingRate, ...],
        Field(max_length=20),
        FieldSpec(
            "By hour or weekday",
            help="The first line that fits counts; where none does, the price for the car above. An "
            "emptied line is left out.",
            rare=True,
        ),
    ] = ()
    """Prices that hang on when one comes and how long one stays. The first that fits counts; where none
    does, `price`."""
    note: Annotated[str, FieldSpec("Anything else about leaving the car", control=Control.NOTE)] = ""
    """Anything else about leaving the car."""
