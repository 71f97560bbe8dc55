"""An outing in JSON, with all its answers."""

from dataclasses import dataclass

from tripplan.commands.answers.json_keys import json_keys, json_step
from tripplan.documents.places.forecast import ForecastDay
from tripplan.planning.admission.result import Admission, OtherWay
from tripplan.planning.cost import CostItem, OutingCost
from tripplan.planning.crowds.risk import CrowdReason, CrowdRisk
from tripplan.planning.day import DayPlan, LeaveWindow
from tripplan.planning.day.times.shapes import NapOutcome, PlannedLunch, ShowOutcome
from tripplan.planning.opening.hours import DayHours
from tripplan.planning.outing.cheaper_hours import CheaperHour
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.weather.visit_weather import VisitWeather
from tripplan.planning.travel.drive import Leg
from tripplan.values.cost_kind import CostKind
from tripplan.values.ranges import Range, Source


@dataclass(frozen=True)
class Measured:
    """What a number may turn out to be: low and high bound the middle 90 %; all equal where it is known.

    Attributes:
        range: the numbers.
        unit: km or min.
    """

    range: Range
    unit: str


@dataclass(frozen=True)
class PricedAdmission:
    """The cheapest legal way in for everybody, and where its price comes from.

    Attributes:
        admission: the way in.
        source: where its price comes from.
    """

    admission: Admission
    source: Source


@json_step
def in_km(distance: Range) -> Measured:
    """A distance."""
    return Measured(distance, "km")


@json_step
def in_minutes(duration: Range) -> Measured:
    """How long something takes, without rests."""
    return Measured(duration, "min")


@json_step
def priced_admission(outing: Outing) -> PricedAdmission:
    """What to buy; the shares of the people add up to the total."""
    items = outing.cost.items
    return PricedAdmission(
        outing.admission, next(item.source for item in items if item.kind is CostKind.ADMISSION)
    )


json_keys(
    Outing,
    "place day party=party.name cost felt_cost=generalized_cost.weighed way_there way_home hours plan "
    "leave_windows=search.windows admission=priced_admission crowd weather "
    "cheaper_hour notes cautions",
)
json_keys(OutingCost, "total unknown items")
json_keys(CostItem, "kind label amount source")
json_keys(
    Leg,
    "distance=drive.km.in_km driving=drive.minutes.in_minutes known_by=drive.known_by source=drive.source "
    "load_up_minutes drive_minutes rest_minutes=rests.minutes stop_minutes=stops.minutes unload_minutes",
)
json_keys(Measured, "low=range.low:3 likely=range.likely:3 high=range.high:3 unit")
json_keys(DayHours, "openness reason spans entry_times")
json_keys(
    DayPlan,
    "leave_home enter leave_place home visit_minutes awake_minutes car_minutes naps lunch shows steps",
)
json_keys(PlannedLunch, "place start end")
json_keys(NapOutcome, "member usual_minutes kept(where,minutes) lost_minutes")
json_keys(ShowOutcome, "name start=seen.0 end=seen.1 missed_chance asleep")
json_keys(LeaveWindow, "first last best=best.leave_home")
json_keys(
    PricedAdmission,
    "total=admission.total source purchases=admission.purchases shares=admission.shares(member,share) "
    "other_ways=admission.other_ways single_tickets=admission.single_tickets "
    "why_not_single_tickets=admission.why_not_single_tickets "
    "parking_included=admission.parking_included notes=admission.notes",
)
json_keys(OtherWay, "total costs_more purchases")
json_keys(
    CrowdRisk,
    "chance:4 fullness word reasons out_of_school=shares.out:4 school_unknown=shares.unknown:4 source",
)
json_keys(
    VisitWeather,
    "low:1 high:1 felt_low:1 felt_high:1 day_low=day.low:1 day_high=day.high:1 chance_wet=day.wet:2 "
    "chance_snow=day.snow:2 outdoors weighs=weighs.weighed forecast source",
)
json_keys(ForecastDay, "words service known_at")
json_keys(CrowdReason, "code=cause.code values=cause.json_values text factor:3")
json_keys(CheaperHour, "when=changes saves")
