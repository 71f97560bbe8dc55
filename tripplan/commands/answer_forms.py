"""The JSON answers, key by key; `tripplan schema` prints them as JSON schemas.

Money is a decimal text with its currency, a time is ISO 8601 with its offset, a date is a date. Keys are only
ever added while `format` stays the same.
"""

from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from pydantic import BaseModel, ConfigDict

from tripplan.errors import Weight
from tripplan.planning.cost import CostKind
from tripplan.planning.day import SleepsIn, StepKind
from tripplan.planning.hours import Openness
from tripplan.planning.ranges import Origin
from tripplan.planning.replan import Choice
from tripplan.planning.travel.drive import KnownBy


class Told(BaseModel):
    """A part of an answer."""

    model_config = ConfigDict(frozen=True, extra="forbid", use_attribute_docstrings=True)


class SourceTold(Told):
    """Where a figure came from."""

    origin: Origin
    """The kind of source."""
    text: str
    """In words."""


class MoneyTold(Told):
    """An exact amount."""

    amount: Decimal
    """In the currency's main unit, negative for what is taken off."""
    currency: str
    """ISO 4217 code."""


class MoneyRangeTold(Told):
    """What an amount may turn out to be: low and high bound the middle 90 %; all equal where it is known."""

    low: Decimal
    likely: Decimal
    high: Decimal
    currency: str
    """ISO 4217 code."""


class RangeTold(Told):
    """What a number may turn out to be: low and high bound the middle 90 %; all equal where it is known."""

    low: float
    likely: float
    high: float
    unit: Literal["km", "min"]


class FeltTold(MoneyTold):
    """Money plus what the household says the nuisances of the day are worth; what days are ranked by."""

    source: SourceTold


class PlaceTold(Told):
    """Which place."""

    id: str
    name: str
    town: str
    country: str
    """ISO 3166-1 code."""
    subdivision: str
    """ISO 3166-2 code without the country; may be empty."""
    time_zone: str
    """IANA name."""


class CostItemTold(Told):
    """One item of the total."""

    kind: CostKind
    label: str
    amount: MoneyRangeTold | None
    """Null where it is not known, which is not zero."""
    source: SourceTold


class CostTold(Told):
    """What the outing costs in all."""

    total: MoneyRangeTold
    """Of the items that are known; a lower bound while any are unknown."""
    unknown: tuple[str, ...]
    """Labels of the items that nobody knows."""
    items: tuple[CostItemTold, ...]


class DriveTold(Told):
    """One way of the drive, with its rests."""

    distance: RangeTold
    driving: RangeTold
    """Wheels turning, without rests."""
    known_by: KnownBy
    source: SourceTold
    load_up_minutes: int
    """From 'shoes on' to the wheels turning [min]."""
    drive_minutes: int
    """The likely driving time in whole minutes, as planned with [min]."""
    rest_minutes: tuple[int, ...]
    """The length of each rest on the way [min]."""
    stop_minutes: tuple[int, ...] = ()
    """The length of each stop on the way for something else, such as fuel [min]."""
    unload_minutes: int
    """From parking to walking [min]."""


class SpanTold(Told):
    """When visitors may be inside."""

    opens: datetime
    closes: datetime
    last_entry: datetime


class HoursTold(Told):
    """When the place can be visited that day."""

    openness: Openness
    reason: str
    """How this is known."""
    spans: tuple[SpanTold, ...]
    entry_times: tuple[datetime, ...]
    """The only moments people are let in; empty where any moment will do."""


class StepTold(Told):
    """One stretch of the day."""

    kind: StepKind
    start: datetime
    end: datetime
    label: str


class KeptTold(Told):
    """Sleep that a plan leaves room for."""

    where: SleepsIn
    minutes: int


class NapTold(Told):
    """What becomes of one usual nap."""

    member: str
    usual_minutes: int
    kept: tuple[KeptTold, ...]
    lost_minutes: int


class ShowTold(Told):
    """What becomes of one show that is worth being there for."""

    name: str
    start: datetime | None
    """When the performance begins that is seen; null where the plan has time for none."""
    end: datetime | None
    missed_chance: float
    """How likely the party comes too late for it; one where none is planned [0-1]."""


class PlanTold(Told):
    """The day, step by step without gaps."""

    leave_home: datetime
    """When load-up begins."""
    enter: datetime
    leave_place: datetime
    home: datetime
    """When everybody is home again."""
    visit_minutes: int
    """Inside, lunch included [min]."""
    car_minutes: int
    """Driving, both ways [min]."""
    naps: tuple[NapTold, ...]
    shows: tuple[ShowTold, ...]
    steps: tuple[StepTold, ...]


class LeaveWindowTold(Told):
    """Departures that are all about equally good."""

    first: datetime
    last: datetime
    best: datetime
    """The best departure within it."""


class PurchaseTold(Told):
    """One line of the order at the till."""

    name: str
    quantity: int
    unit_price: MoneyTold
    total: MoneyTold
    covers: tuple[str, ...]
    """Who goes in on it; empty for fees, taxes, vouchers."""
    rule: str
    """The offer's rule as a sentence."""


class OtherWayTold(Told):
    """Another legal way in."""

    total: MoneyTold
    costs_more: MoneyTold
    purchases: tuple[PurchaseTold, ...]


class ShareTold(Told):
    """One person's part of the admission."""

    member: str
    share: MoneyTold


class AdmissionTold(Told):
    """The cheapest legal way in for everybody."""

    total: MoneyTold
    source: SourceTold
    purchases: tuple[PurchaseTold, ...]
    shares: tuple[ShareTold, ...]
    """They add up to the total."""
    other_ways: tuple[OtherWayTold, ...]
    single_tickets: OtherWayTold | None
    """A single ticket for everybody; null where that is the cheapest way, or where somebody has none."""
    why_not_single_tickets: str
    parking_included: bool
    notes: tuple[str, ...]


class CrowdReasonTold(Told):
    """One thing that makes the day fuller or emptier."""

    text: str
    factor: float
    """How many times the visitors of the day without it; the factors of a day multiply."""


class CrowdTold(Told):
    """How likely a full house is."""

    chance: float
    """Of being among the busiest fifth of the open days of that year [0-1]."""
    word: str
    reasons: tuple[CrowdReasonTold, ...]
    out_of_school: float
    """Share of the pupils within reach who have no school [0-1]."""
    school_unknown: float
    """Share of the pupils within reach of whom nobody knows [0-1]."""
    source: SourceTold


class OutingTold(Told):
    """One place on one day for one party, with all the answers."""

    place: PlaceTold
    day: date
    party: tuple[str, ...]
    cost: CostTold
    felt_cost: FeltTold
    way_there: DriveTold
    way_home: DriveTold
    hours: HoursTold
    plan: PlanTold
    leave_windows: tuple[LeaveWindowTold, ...]
    admission: AdmissionTold
    crowd: CrowdTold
    notes: tuple[str, ...]
    cautions: tuple[str, ...]


class DayTold(Told):
    """One day of a ranking in short."""

    day: date
    total: MoneyRangeTold
    felt_cost: FeltTold


class PassedOverTold(Told):
    """Why a place cannot be visited on a day."""

    place: str
    """Its id."""
    day: date
    reasons: tuple[str, ...]


class CandidateTold(Told):
    """One place of a comparison."""

    place: PlaceTold
    best: OutingTold | None
    """On its best day; null where no day can be done."""
    other_days: tuple[DayTold, ...]
    """The further days that can be done, least felt cost first."""
    passed_over: tuple[PassedOverTold, ...]


class FlipTold(Told):
    """One input, and what it must become for another place to be the cheapest."""

    what: str
    now: str
    at: str | None
    """Null where nothing within reason changes the first place."""
    new_first: str | None
    """The id of the place that is the cheapest then."""
    sentence: str


class DaysTold(Told):
    """A span; both ends count."""

    first: date
    last: date


class Answer(Told):
    """What every answer of the planning begins with."""

    format: Literal[1] = 1
    """Version of the answers' keys."""
    data: Literal["demo", "own", "files"]
    """Whose household: the invented one, the one on record, or the one from a file."""
    household: str
    party: tuple[str, ...]
    today: date


class CompareAnswer(Answer):
    """Places side by side, least likely total first, those without a day last."""

    span: DaysTold
    candidates: tuple[CandidateTold, ...]
    chances_cheapest: tuple[float, ...]
    """For each candidate that has a day, the chance that it is the cheapest of them [0-1]."""
    too_close_to_call: bool
    flips: tuple[FlipTold, ...]


class NearMissTold(Told):
    """A day that nearly came first."""

    place: str
    """Its id."""
    day: date
    better: str
    """In what it is better: a wish let go, or quietest and the like."""
    costs_more: MoneyTold
    """Its likely total against that of the best day, negative for less; 0 where there is no best day."""
    felt_more: MoneyTold
    """The same with nuisances counted."""
    sentence: str


class DaysAnswer(Answer):
    """Days of a span, least felt cost first."""

    span: DaysTold
    count: int
    """How many can be done as wished; no more than `--most` of them are told."""
    outings: tuple[OutingTold, ...]
    passed_over: tuple[PassedOverTold, ...]
    wishes: tuple[str, ...]
    """What was wished of a day, in words."""
    not_as_wished: int
    """How many further days can be done, but not as wished."""
    nearly: tuple[NearMissTold, ...]
    """Days that are better than the best in one respect."""


class FeltPartTold(Told):
    """One nuisance of the best plan."""

    name: str
    said: str
    """How much of it there is, in words."""
    minutes: int | None
    """Null where it is a chance [min]."""
    felt: MoneyTold
    """What it weighs, rounded to the smallest coin."""


class TradeOffTold(Told):
    """One way to spend the day of which nobody has more nap without less time there."""

    leave_home: datetime
    enter: datetime
    leave_place: datetime
    home: datetime
    nap_kept_minutes: int
    stay_minutes: int
    """Time at the place, up to a comfortable stay [min]."""
    felt: MoneyTold
    """What lost nap, driving, waiting and a stay cut short weigh; no money is in it."""
    best: bool
    """Whether it is the best plan."""
    sentence: str


class HelpsTold(Told):
    """The limit that helps most if it gives way by 15 minutes."""

    words: str
    saves: MoneyTold
    """How much less the best plan weighs then."""


class TradeOffsTold(Told):
    """What the best plan of the day weighs, and what it could be traded for."""

    parts: tuple[FeltPartTold, ...]
    why: str
    points: tuple[TradeOffTold, ...]
    """Most nap first."""
    helps: HelpsTold | None
    """Null where no limit helps."""


class SlackTold(Told):
    """How likely the plan holds, with the family's usual delays and the range of the drives."""

    entry: datetime
    """The timed entry the plan is for, else the last entry."""
    timed_entry: bool
    make_entry: float
    """Chance to arrive by then [0-1]."""
    sure_departure: datetime | None
    """The latest departure that makes the entry nine times in ten; null where none does."""
    home_by: datetime
    home_in_time: float
    """Chance to be home by then [0-1]."""
    bed: datetime | None
    """When the first of the party should be in bed."""
    home_before_bed: float | None
    """Chance to be home by then [0-1]."""
    usually_home: datetime
    """On half of all days."""
    nearly_always_home: datetime
    """On nine of ten days."""


class WayOutTold(Told):
    """One thing that can be done when the day goes wrong."""

    choice: Choice
    title: str
    place: str | None
    """The id of the place that is gone to; null where the party turns back or stays home."""
    plan: PlanTold | None
    home: datetime
    total: MoneyTold
    """What the whole day costs then, tickets already paid for included."""
    change: MoneyTold
    """How much more that is than planned; negative where it is less."""
    tickets_lost: MoneyTold | None
    """Paid for and of no use to anybody; null where nothing was paid yet."""
    tickets_back: MoneyTold | None
    """What comes back if it is called off in time; null where nothing was paid yet."""
    felt: MoneyTold
    notes: tuple[str, ...]


class NotAnyMoreTold(Told):
    """What cannot be done any more."""

    title: str
    reasons: tuple[str, ...]


class ReplannedTold(Told):
    """What can be done from here and now."""

    now: datetime
    ways: tuple[WayOutTold, ...]
    """The same place first, then another, then turning back."""
    impossible: tuple[NotAnyMoreTold, ...]
    cautions: tuple[str, ...]


class DayAnswer(Answer):
    """One place on one day."""

    outing: OutingTold | None
    """Null where it cannot be done."""
    passed_over: PassedOverTold | None
    """Why it cannot be done; null where it can."""
    trade_offs: TradeOffsTold | None = None
    """Null where it cannot be done."""
    slack: SlackTold | None = None
    """Null where it cannot be done."""
    replanned: ReplannedTold | None = None
    """Null where `--late` is not given, or the day cannot be done."""


class PassTold(Told):
    """One pass to buy."""

    name: str
    holders: tuple[str, ...]
    """The members it is written out to."""
    valid_until: date
    """The last day it counts."""


class PassOrderTold(Told):
    """The passes of one place that are bought on one day."""

    place: str
    """Its id."""
    day: date
    passes: tuple[PassTold, ...]
    lines: tuple[PurchaseTold, ...]
    """What the till asks for, fees and taxes included."""
    total: MoneyTold
    notes: tuple[str, ...]


class VisitTold(Told):
    """One visit with the passes of the plan in hand."""

    place: str
    """Its id."""
    day: date
    party: tuple[str, ...]
    entry: MoneyTold
    parking: MoneyTold | None
    """Null where it is not known, which is not zero."""
    total: MoneyTold
    """Entry and parking, as far as known."""
    singly: MoneyTold | None
    """The same without buying any pass; null where nobody may enter without one."""
    passes: tuple[str, ...]
    """The bought passes that count."""
    purchases: tuple[PurchaseTold, ...]


class BreakEvenTold(Told):
    """When one offer of passes has paid, beside all else that is held or bought."""

    place: str
    """Its id."""
    name: str
    bought: bool
    """Whether it is part of the plan."""
    holders: tuple[str, ...]
    price: MoneyTold
    visits: int
    """On how many of the visits it counts."""
    saved: MoneyTold | None
    """What it takes off them together; null where nobody may enter without it."""
    pays_after: int | None
    """After how many visits like those; null for never."""


class PassesAnswer(Answer):
    """The passes and single visits that cost least in all; `party` goes on the visits named."""

    orders: tuple[PassOrderTold, ...]
    visits: tuple[VisitTold, ...]
    left_out: tuple[PassedOverTold, ...]
    total: MoneyTold
    singly: MoneyTold | None
    """What the same visits cost without buying a pass; null where one needs a pass."""
    saving: MoneyTold | None
    break_even: tuple[BreakEvenTold, ...]
    notes: tuple[str, ...]


class OrderTold(Told):
    """One order at the till."""

    groups: tuple[str, ...]
    """The households it lets in."""
    total: MoneyTold
    purchases: tuple[PurchaseTold, ...]


class GroupShareTold(Told):
    """One household's part of the price."""

    group: str
    amount: MoneyTold
    paid: MoneyTold
    """In advance."""
    alone: MoneyTold | None
    """What it would have paid by itself; null where it could not have come in."""
    why_not_alone: tuple[str, ...]


class MorePeopleTold(Told):
    """The fewest more people with whom every household that pays would pay less."""

    count: int
    who: str
    """Adults or children."""
    total: MoneyTold
    """Of everybody then, the newcomers included."""
    amounts: tuple[MoneyTold, ...]
    """What each household would pay, in order."""
    offers: tuple[str, ...]


class AtTheTillTold(Told):
    """Who settles with the place on the day."""

    group: str
    amount: MoneyTold
    """Negative where money paid in advance comes back."""


class TransferTold(Told):
    """One payment between two households."""

    payer: str
    receiver: str
    amount: MoneyTold


class TogetherTold(Told):
    """An outing of several households."""

    orders: tuple[OrderTold, ...]
    total: MoneyTold
    saving: MoneyTold | None
    """Against each alone; null where somebody could not have come in alone."""
    shares: tuple[GroupShareTold, ...]
    """They add up to the total."""
    rule: str
    """How the price is divided."""
    group_offers: tuple[str, ...]
    """Reached only together."""
    more: tuple[MorePeopleTold, ...]
    people: int
    seats: int
    seats_missing: int
    at_the_till: AtTheTillTold | None
    """Null where everything is paid."""
    transfers: tuple[TransferTold, ...]
    cautions: tuple[str, ...]


class TogetherAnswer(Answer):
    """Several households at one place on one day; `party` is the own one's."""

    place: PlaceTold
    day: date
    outing: TogetherTold | None
    """Null where it cannot be."""
    passed_over: PassedOverTold | None
    """Why it cannot be; null where it can."""


class FindingTold(Told):
    """One thing found wrong or odd in a file."""

    file: str
    field: str
    """The path to the field; empty for the file as a whole."""
    value: str
    """What stood there, shortened."""
    message: str
    weight: Weight


class CheckedTold(Told):
    """One file that was checked."""

    file: str
    kind: Literal["place", "household"]
    """What it was taken for."""
    usable: bool
    """Whether it has no fault."""
    findings: tuple[FindingTold, ...]


class CheckAnswer(Told):
    """What was found in files."""

    format: Literal[1] = 1
    """Version of the answers' keys."""
    files: tuple[CheckedTold, ...]


class ImportAnswer(Told):
    """What an import changes in the records; each document by what it is called."""

    format: Literal[1] = 1
    """Version of the answers' keys."""
    carried_out: bool
    added: tuple[str, ...]
    changed: tuple[str, ...]
    removed: tuple[str, ...]
    unchanged: int
