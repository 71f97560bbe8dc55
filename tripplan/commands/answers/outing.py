"""An outing in a JSON answer, key by key, and how it is filled in."""

from datetime import date, datetime
from typing import Literal

from tripplan.commands.answers.parts import (
    FeltTold,
    MoneyRangeTold,
    MoneyTold,
    PlaceTold,
    PurchaseTold,
    SourceTold,
    Told,
    felt_told,
    money_range_told,
    money_told,
    place_told,
    purchase_told,
    source_told,
)
from tripplan.documents.family.member import SleepsIn
from tripplan.planning.admission.result import Admission, OtherWay
from tripplan.planning.cost import OutingCost
from tripplan.planning.crowds.risk import CrowdRisk
from tripplan.planning.day import DayPlan, LeaveWindow, StepKind
from tripplan.planning.opening.hours import DayHours, Openness
from tripplan.planning.outing.outing import Outing
from tripplan.planning.travel.drive import KnownBy, Leg
from tripplan.values.cost_kind import CostKind
from tripplan.values.ranges import Range


class RangeTold(Told):
    """What a number may turn out to be: low and high bound the middle 90 %; all equal where it is known."""

    low: float
    likely: float
    high: float
    unit: Literal["km", "min"]


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


def outing_told(outing: Outing) -> OutingTold:
    """One outing with all its answers."""
    return OutingTold(
        place=place_told(outing.place),
        day=outing.day,
        party=tuple(member.name for member in outing.party),
        cost=_cost(outing.cost),
        felt_cost=felt_told(outing.felt_cost),
        way_there=_leg(outing.way_there),
        way_home=_leg(outing.way_home),
        hours=_hours(outing.hours),
        plan=plan_told(outing.plan),
        leave_windows=tuple(map(_window, outing.search.windows)),
        admission=_admission(outing.admission, outing.cost),
        crowd=_crowd(outing.crowd),
        notes=outing.notes,
        cautions=outing.cautions,
    )


def plan_told(plan: DayPlan) -> PlanTold:
    """The day, step by step."""
    return PlanTold(
        leave_home=plan.leave_home,
        enter=plan.enter,
        leave_place=plan.leave_place,
        home=plan.home,
        visit_minutes=plan.visit_minutes,
        car_minutes=plan.car_minutes,
        naps=tuple(
            NapTold(
                member=nap.member,
                usual_minutes=nap.usual_minutes,
                kept=tuple(KeptTold(where=where, minutes=minutes) for where, minutes in nap.kept),
                lost_minutes=nap.lost_minutes,
            )
            for nap in plan.naps
        ),
        shows=tuple(
            ShowTold(
                name=show.name,
                start=show.seen[0] if show.seen else None,
                end=show.seen[1] if show.seen else None,
                missed_chance=show.missed_chance,
            )
            for show in plan.shows
        ),
        steps=tuple(
            StepTold(kind=step.kind, start=step.start, end=step.end, label=step.label) for step in plan.steps
        ),
    )


def _cost(cost: OutingCost) -> CostTold:
    return CostTold(
        total=money_range_told(cost.total),
        unknown=cost.unknown,
        items=tuple(
            CostItemTold(
                kind=item.kind,
                label=item.label,
                amount=None if item.amount is None else money_range_told(item.amount),
                source=source_told(item.source),
            )
            for item in cost.items
        ),
    )


def _leg(leg: Leg) -> DriveTold:
    km, driving = leg.drive.km, leg.drive.minutes
    return DriveTold(
        distance=_range(km, "km"),
        driving=_range(driving, "min"),
        known_by=leg.drive.known_by,
        source=source_told(leg.drive.source),
        load_up_minutes=leg.load_up_minutes,
        drive_minutes=leg.drive_minutes,
        rest_minutes=tuple(rest.minutes for rest in leg.rests),
        stop_minutes=tuple(stop.minutes for stop in leg.stops),
        unload_minutes=leg.unload_minutes,
    )


def _range(numbers: Range, unit: str) -> RangeTold:
    low, likely, high = (round(number, 3) for number in (numbers.low, numbers.likely, numbers.high))
    return RangeTold.model_validate({"low": low, "likely": likely, "high": high, "unit": unit})


def _hours(hours: DayHours) -> HoursTold:
    return HoursTold(
        openness=hours.openness,
        reason=hours.reason,
        spans=tuple(
            SpanTold(opens=span.opens, closes=span.closes, last_entry=span.last_entry) for span in hours.spans
        ),
        entry_times=hours.entry_times,
    )


def _window(window: LeaveWindow) -> LeaveWindowTold:
    return LeaveWindowTold(first=window.first, last=window.last, best=window.best.leave_home)


def _admission(admission: Admission, cost: OutingCost) -> AdmissionTold:
    source = next(item.source for item in cost.items if item.kind is CostKind.ADMISSION)
    single = admission.single_tickets
    return AdmissionTold(
        total=money_told(admission.total),
        source=source_told(source),
        purchases=tuple(map(purchase_told, admission.purchases)),
        shares=tuple(
            ShareTold(member=name, share=money_told(share)) for name, share in admission.shares.items()
        ),
        other_ways=tuple(map(_other_way, admission.other_ways)),
        single_tickets=None if single is None else _other_way(single),
        why_not_single_tickets=admission.why_not_single_tickets,
        parking_included=admission.parking_included,
        notes=admission.notes,
    )


def _other_way(way: OtherWay) -> OtherWayTold:
    return OtherWayTold(
        total=money_told(way.total),
        costs_more=money_told(way.costs_more),
        purchases=tuple(map(purchase_told, way.purchases)),
    )


def _crowd(risk: CrowdRisk) -> CrowdTold:
    return CrowdTold(
        chance=round(risk.chance, 4),
        word=risk.word,
        reasons=tuple(
            CrowdReasonTold(text=reason.text, factor=round(reason.factor, 3)) for reason in risk.reasons
        ),
        out_of_school=round(risk.shares.out, 4),
        school_unknown=round(risk.shares.unknown, 4),
        source=source_told(risk.source),
    )
