"""A place to go, as its card describes it."""

from datetime import date
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import Field

from tripplan.documents.model import ClockTime, Minutes, Name, Written
from tripplan.documents.places.offers import AddOn, Fee, MustBeAccompanied, Offer, Parking, SalesTax, Voucher
from tripplan.documents.where import Where
from tripplan.documents.written_money import Currency
from tripplan.values.ages import Ages
from tripplan.values.opening_hours import HoursText

LONGEST_ID = 60
PlaceId = Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=LONGEST_ID)]


WhoComes = Literal["families", "everybody"]


class Show(Written):
    """Something that is shown at fixed times: a feeding, a demonstration, a planetarium programme."""

    name: Name
    """What it is called."""
    starts: Annotated[tuple[ClockTime, ...], Field(min_length=1, max_length=48)]
    """When it begins, by the clock of the place; every performance."""
    minutes: Annotated[int, Field(ge=1, le=600)] = 20
    """How long it lasts [min]."""
    days: HoursText | None = None
    """On which days, in opening_hours syntax, such as `Sa-Su` or `Apr-Oct`; on every day when left out."""
    worth_it: bool = True
    """Whether it is worth being there for; otherwise it is told, but nothing is planned around it."""


class Stay(Written):
    """How long people of some ages should stay."""

    ages: Ages
    """Whom it concerns."""
    shortest_minutes: Minutes
    """A shorter stay is not worth the drive for them [min]."""
    comfortable_minutes: Minutes
    """A stay that feels complete to them [min]."""


class Visit(Written):
    """What a visit is like."""

    topics: tuple[Name, ...] = ()
    """What can be studied there."""
    shortest_minutes: Minutes = 60
    """A shorter stay is not worth the drive [min]."""
    comfortable_minutes: Minutes = 120
    """A stay that feels complete [min]."""
    stays: Annotated[tuple[Stay, ...], Field(max_length=20)] = ()
    """Other stays for some ages, one `[[visit.stays]]` each. Whoever of a party tires first decides for all
    of it: the one whose comfortable stay is shortest. The first entry that names an age holds; ages that
    none names stay as above."""
    shows: Annotated[tuple[Show, ...], Field(max_length=20)] = ()
    """What is shown at fixed times, one `[[visit.shows]]` each."""
    quiet_hours: HoursText | None = None
    """When the place is kept quiet (less sound and light, fewer people), in opening_hours syntax."""
    pushchairs: bool = True
    """Whether a pushchair or carrier can be used all the way round."""
    own_food: bool = True
    """Whether the family may eat what it brought."""
    food_sold: bool = True
    """Whether there is something to buy."""
    indoors: Literal["indoors", "outdoors", "both"] = "both"
    """Where the visit happens, for rainy and hot days."""
    who_comes: WhoComes = "families"
    """Who fills it: families with children (a zoo, a farm), or people of all ages (a gallery, a path)."""
    cautions: tuple[str, ...] = ()
    """What to watch: steps, open water, animals, allergens."""
    questions: tuple[str, ...] = ()
    """Suggested questions for the children."""


class Opening(Written):
    """When the place can be visited."""

    hours: HoursText
    """In opening_hours syntax, by the clock of the place; PH stands for public, SH for school holidays."""
    last_entry_minutes_before_close: Minutes = 0
    """How long before closing the till stops letting people in [min]."""
    entry_times: tuple[ClockTime, ...] = ()
    """Timed entry: the only times people are let in; any time when left out."""
    school_groups: HoursText | None = None
    """When classes usually fill the place, in term."""
    book_days_ahead: Annotated[int, Field(ge=0, le=365)] = 0
    """How many days ahead a visit must be booked; 0 for none."""
    checked_on_site: bool = True
    """Whether the hours were read at their source; otherwise they are a guess and shown as one."""


class SpecialDay(Written):
    """A day when more (or fewer) people come than the calendar would tell."""

    day: date
    """The date."""
    name: Name
    """What happens on it."""
    crowd_factor: Annotated[Decimal, Field(gt=0, le=50)] = Decimal(2)
    """How many times the usual number of visitors [-]."""


Month = Annotated[int, Field(ge=1, le=12)]


class PricesRead(Written):
    """Where the prices on the card come from."""

    on: date
    """The day they were read."""
    source: Annotated[str, Field(min_length=1)]
    """Where: the place's own page, the board at the till, a telephone call."""
    give_or_take_percent: Annotated[Decimal, Field(ge=0, le=100)] = Decimal(0)
    """How far a price may have moved since [%]."""


class Place(Written):
    """A place card."""

    format: Literal[1] = 1
    """Version of the card's format."""
    id: PlaceId
    """Small letters, digits and hyphens; also the name of the file."""
    name: Name
    """What the place is called."""
    currency: Currency
    """ISO 4217 code of every price on the card."""
    where: Where
    """Where it is."""
    visit: Visit = Visit()
    """What a visit is like."""
    opening: Opening
    """When it can be visited."""
    offers: Annotated[tuple[Offer, ...], Field(min_length=1, max_length=60)]
    """The price board: all the ways in, one `[[offers]]` each."""
    add_ons: tuple[AddOn, ...] = ()
    """What people may want beside entry."""
    fees: tuple[Fee, ...] = ()
    """What is charged for buying."""
    sales_tax: SalesTax | None = None
    """Tax that the prices do not include; none when left out."""
    vouchers: tuple[Voucher, ...] = ()
    """Price reductions the family holds or can get."""
    must_be_accompanied: tuple[MustBeAccompanied, ...] = ()
    """Who may not enter without an older visitor."""
    parking: Parking = Parking()
    """What leaving the car costs."""
    special_days: tuple[SpecialDay, ...] = ()
    """Festivals and other days unlike the rest."""
    busiest_months: tuple[Month, ...] = ()
    """The fullest time of the year, 1 for January; guessed from the latitude when left out."""
    prices_read: PricesRead
    """Where the prices come from, and from when."""
    web: str = ""
    """Address of the place's own page."""
    telephone: str = ""
    """To ask whether all this still holds."""
    notes: str = ""
    """Anything else a parent should know."""
