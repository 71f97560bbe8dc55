"""A place to go, as its card describes it."""

from datetime import date
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.model import ClockTime, Minutes, Name, Written
from tripplan.documents.places.offers import (
    AddOn,
    Fee,
    MustBeAccompanied,
    Offer,
    Parking,
    SalesTax,
    Voucher,
    ages_asked,
)
from tripplan.documents.usual_weather import UsualWeather
from tripplan.documents.where import Where
from tripplan.documents.written_money import Currency
from tripplan.language import wording
from tripplan.values.ages import Ages
from tripplan.values.opening_hours import HoursText

FORMAT: Literal[2] = 2
"""Version of the place card's format. All that format 1 could say reads the same in format 2."""
LONGEST_ID = 60
PlaceId = Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=LONGEST_ID)]


WhoComes = Literal["families", "everybody"]
KindOfPlace = Literal["zoo_or_farm", "museum", "pool_or_indoor_play", "park_or_trail", "show_or_fair"]
FullestDays = Literal["saturdays", "sundays", "all_alike"]


class Show(Written):
    """Something that is shown at fixed times: a feeding, a demonstration, a planetarium programme."""

    name: Annotated[Name, FieldSpec("Name", help="An emptied line is left out.")]
    """What it is called."""
    starts: Annotated[
        tuple[ClockTime, ...],
        Field(min_length=1, max_length=48),
        FieldSpec("begins at", help="By the clock of the place, with commas between, such as 11:00, 14:30."),
    ]
    """When it begins, by the clock of the place; every performance."""
    minutes: Annotated[
        int,
        Field(ge=1, le=600),
        FieldSpec("minutes", help="20 if you leave it out.", unit=Unit.MINUTES, width=110),
    ] = 20
    """How long it lasts."""
    days: Annotated[
        HoursText | None,
        FieldSpec("on these days", help="Written like opening hours, such as Sa-Su; every day if empty."),
    ] = None
    """On which days, in opening_hours syntax, such as `Sa-Su` or `Apr-Oct`; on every day when left out."""
    worth_it: Annotated[bool, FieldSpec("plan around it")] = True
    """Whether it is worth being there for; otherwise it is told, but nothing is planned around it."""


class Stay(Written):
    """How long people of some ages should stay."""

    ages: Annotated[Ages, ages_asked("People aged")]
    """Whom it concerns."""
    shortest_minutes: Annotated[Minutes, FieldSpec("shortest stay", unit=Unit.MINUTES, width=230)]
    """A shorter stay is not worth the drive for them."""
    comfortable_minutes: Annotated[Minutes, FieldSpec("comfortable stay", unit=Unit.MINUTES, width=230)]
    """A stay that feels complete to them."""


class Visit(Written):
    """What a visit is like."""

    topics: Annotated[
        tuple[Name, ...],
        FieldSpec("What can be studied there", help="One topic a line.", control=Control.LINES),
    ] = ()
    """What can be studied there."""
    shortest_minutes: Annotated[Minutes, FieldSpec("Shortest stay worth the drive", unit=Unit.MINUTES)] = 60
    """A shorter stay is not worth the drive."""
    comfortable_minutes: Annotated[Minutes, FieldSpec("A comfortable stay", unit=Unit.MINUTES)] = 120
    """A stay that feels complete."""
    stays: Annotated[
        tuple[Stay, ...],
        Field(max_length=20),
        FieldSpec(
            "Other stays for some ages",
            help="Whoever tires first decides. An emptied line is left out.",
            called="Stay by age",
            rare=True,
        ),
    ] = ()
    """Other stays for some ages, one `[[visit.stays]]` each. Whoever of a party tires first decides for all
    of it: the one whose comfortable stay is shortest. The first entry that names an age holds; ages that
    none names stay as above."""
    shows: Annotated[
        tuple[Show, ...], Field(max_length=20), FieldSpec("Shows at fixed times", called="Show", rare=True)
    ] = ()
    """What is shown at fixed times, one `[[visit.shows]]` each."""
    quiet_hours: Annotated[
        HoursText | None,
        FieldSpec("Quiet hours", help="Written like opening hours.", example="Su 09:00-10:00", rare=True),
    ] = None
    """When the place is kept quiet (less sound and light, fewer people), in opening_hours syntax."""
    pushchairs: Annotated[bool, FieldSpec("A stroller can go all the way round")] = True
    """Whether a stroller or carrier can be used all the way round."""
    own_food: Annotated[bool, FieldSpec("You may eat what you bring")] = True
    """Whether the family may eat what it brought."""
    food_sold: Annotated[bool, FieldSpec("There is something to eat to buy")] = True
    """Whether there is something to buy."""
    indoors: Annotated[
        Literal["indoors", "outdoors", "both"],
        FieldSpec(
            "Where the visit happens",
            words={"both": "both indoors and outdoors", "indoors": "indoors", "outdoors": "outdoors"},
        ),
    ] = "both"
    """Where the visit happens, for rainy and hot days."""
    who_comes: Annotated[
        WhoComes,
        FieldSpec(
            "Who fills the place",
            help="Decides how much fuller it is in school breaks.",
            words={
                "families": "mostly families with children, as in a zoo or on a farm",
                "everybody": "people of all ages, as in a gallery or on a beach",
            },
        ),
    ] = "families"
    """Who fills it: families with children (a zoo, a farm), or people of all ages (a gallery, a path)."""
    kind: Annotated[
        KindOfPlace | None,
        FieldSpec(
            "What kind of place it is",
            help="Decides how full weekends, school breaks and public holidays are. If it is none of these, "
            "leave it open.",
            called="Kind of place",
            control=Control.PILLS,
            words={
                "zoo_or_farm": "zoo or farm",
                "museum": "museum",
                "pool_or_indoor_play": "pool or indoor play",
                "park_or_trail": "park or trail",
                "show_or_fair": "show or fair",
            },
        ),
    ] = None
    """What kind of place it is; guessed from who comes and where the visit happens when left out."""
    fullest_days: Annotated[
        FullestDays | None,
        FieldSpec(
            "Which days are the fullest",
            help="If you know; otherwise the kind of place decides.",
            called="Fullest days",
            control=Control.PILLS,
            words={
                "saturdays": "Saturdays",
                "sundays": "Sundays",
                "all_alike": "all days alike, as at a pool for lanes and lessons",
            },
        ),
    ] = None
    """Which days are the fullest; by the kind of place when left out. With `all_alike` neither weekends nor
    school breaks nor public holidays are fuller."""
    cautions: Annotated[
        tuple[str, ...],
        FieldSpec(
            "What to watch there",
            help="One caution a line: steps, open water, animals, allergens.",
            control=Control.LINES,
            called="Caution",
        ),
    ] = ()
    """What to watch: steps, open water, animals, allergens."""
    questions: Annotated[
        tuple[str, ...],
        FieldSpec(
            "Questions for the children",
            help="One question a line.",
            control=Control.LINES,
            called="Question",
        ),
    ] = ()
    """Suggested questions for the children."""


class Opening(Written):
    """When the place can be visited."""

    hours: Annotated[HoursText, FieldSpec("Opening hours", example="Tu-Su 10:00-17:00")]
    """In opening_hours syntax, by the clock of the place; PH stands for public, SH for school breaks."""
    last_entry_minutes_before_close: Annotated[
        Minutes,
        FieldSpec(
            "Last entry, in minutes before closing", help="0 if up to closing time.", unit=Unit.MINUTES
        ),
    ] = 0
    """How long before closing the ticket counter stops letting people in."""
    entry_times: Annotated[
        tuple[ClockTime, ...],
        FieldSpec(
            "Timed entry: people are let in only at",
            help="With commas between, such as 10:00, 11:30. Empty if at any time.",
            called="Entry time",
        ),
    ] = ()
    """Timed entry: the only times people are let in; any time when left out."""
    school_groups: Annotated[
        HoursText | None,
        FieldSpec(
            "When school classes usually come, in term",
            help="Written like opening hours, such as 'Tu-Fr 10:00-12:00'. Empty if you know of none.",
        ),
    ] = None
    """When classes usually fill the place, in term."""
    book_days_ahead: Annotated[
        int,
        Field(ge=0, le=365),
        FieldSpec("A visit is to be booked so many days ahead", help="0 if you can just go.", unit=Unit.DAYS),
    ] = 0
    """How many days ahead a visit must be booked; 0 for none."""
    checked_on_site: Annotated[
        bool,
        FieldSpec(
            "These hours were read at the place or on its own page",
            help="Otherwise they are a guess, and are shown as one.",
        ),
    ] = True
    """Whether the hours were read at their source; otherwise they are a guess and shown as one."""


class SpecialDay(Written):
    """A day when more (or fewer) people come than the calendar would tell."""

    day: Annotated[date, FieldSpec("Day", width=150)]
    """The date."""
    name: Annotated[Name, FieldSpec("what happens")]
    """What happens on it."""
    crowd_factor: Annotated[
        Decimal,
        Field(gt=0, le=50),
        FieldSpec("times the usual number of visitors", help="2 if you leave it out.", width=260),
    ] = Decimal(2)
    """How many times the usual number of visitors [-]."""


Month = Annotated[int, Field(ge=1, le=12)]
MONTH_NAMES = {number: wording.month(number) for number in range(1, 13)}


class PricesRead(Written, title="Where the prices come from"):
    """Where the prices on the card come from."""

    on: Annotated[date, FieldSpec("When did you read them?", called="read on", width=190)]
    """The day they were read."""
    source: Annotated[
        str,
        Field(min_length=1),
        FieldSpec(
            "Where did you read them?",
            help="The place's own page, the board at the ticket desk, a call.",
            called="source",
        ),
    ]
    """Where: the place's own page, the board at the ticket counter, a phone call."""
    give_or_take_percent: Annotated[
        Decimal,
        Field(ge=0, le=100),
        FieldSpec("They may have moved since by", unit=Unit.PERCENT, called="give or take", width=230),
    ] = Decimal(0)
    """How far a price may have moved since."""


class Place(Written):
    """A place card."""

    format: Annotated[Literal[1, 2], AfterValidator(lambda _: FORMAT)] = FORMAT
    """Version of the card's format; a card of an older one is read and then written as this one."""
    id: Annotated[PlaceId, FieldSpec("Short name")]
    """Small letters, digits and hyphens; also the name of the file."""
    name: Annotated[Name, FieldSpec("Name of the place")]
    """What the place is called."""
    currency: Annotated[
        Currency,
        FieldSpec("Currency of its prices", help="Three letters, such as USD.", control=Control.CODE),
    ]
    """ISO 4217 code of every price on the card."""
    where: Annotated[Where, FieldSpec("Location")]
    """Where it is."""
    visit: Annotated[Visit, FieldSpec("Visit")] = Visit()
    """What a visit is like."""
    opening: Annotated[Opening, FieldSpec("Opening hours")]
    """When it can be visited."""
    offers: Annotated[tuple[Offer, ...], Field(min_length=1, max_length=60), FieldSpec("Tickets")]
    """The price board: all the ways in, one `[[offers]]` each."""
    add_ons: Annotated[tuple[AddOn, ...], FieldSpec("Beside entry")] = ()
    """What people may want beside entry."""
    fees: Annotated[tuple[Fee, ...], FieldSpec("Fees")] = ()
    """What is charged for buying."""
    sales_tax: Annotated[SalesTax | None, FieldSpec("Sales tax")] = None
    """Tax that the prices do not include; none when left out."""
    vouchers: Annotated[tuple[Voucher, ...], FieldSpec("Vouchers")] = ()
    """Price reductions the family holds or can get."""
    must_be_accompanied: Annotated[
        tuple[MustBeAccompanied, ...], FieldSpec("Not without an older visitor")
    ] = ()
    """Who may not enter without an older visitor."""
    parking: Annotated[Parking, FieldSpec("Parking")] = Parking()
    """What leaving the car costs."""
    special_days: Annotated[
        tuple[SpecialDay, ...],
        FieldSpec(
            "Days when more or fewer people come than usual",
            help="An emptied line is left out.",
            called="Day when more or fewer people come",
        ),
    ] = ()
    """Festivals and other days unlike the rest."""
    busiest_months: Annotated[
        tuple[Month, ...],
        FieldSpec(
            "Busiest months",
            help="If you know them; otherwise the time of year is guessed from how far north or south "
            "it lies.",
            control=Control.WORDS,
            words=MONTH_NAMES,
        ),
    ] = ()
    """The fullest time of the year, 1 for January; guessed from the latitude when left out."""
    height_m: Annotated[
        Annotated[float, Field(ge=-450, le=9000)] | None,
        FieldSpec("Height above sea level, in meters", help="For the weather; may be left empty."),
    ] = None
    """Height above sea level in meters, for the weather; that of the stations around it when left out."""
    usual_weather: Annotated[
        UsualWeather | None,
        FieldSpec(
            "I know the usual weather there myself",
            help="Otherwise it comes from the weather stations around it, where there are any.",
            control=Control.PART,
            called="Usual weather",
        ),
    ] = None
    """What the months are usually like there; from the weather stations around it when left out."""
    prices_read: Annotated[PricesRead, FieldSpec("Where the prices come from")]
    """Where the prices come from, and from when."""
    web: Annotated[str, FieldSpec("Its own page on the internet", called="Web page")] = ""
    """Address of the place's own page."""
    telephone: Annotated[str, FieldSpec("Phone")] = ""
    """To ask whether all this still holds."""
    notes: Annotated[
        str, FieldSpec("Anything else you should know", control=Control.NOTE, called="Notes")
    ] = ""
    """Anything else a parent should know."""

    @property
    def known_where(self) -> Where | None:
        """Where it is; None while nobody knows."""
        return self.where
