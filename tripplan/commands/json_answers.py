"""Fills the JSON answers from what the planning says."""

from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import Any

from tripplan.commands.answer_forms import (
    AdmissionTold,
    AtTheTillTold,
    BreakEvenTold,
    CandidateTold,
    CompareAnswer,
    CostItemTold,
    CostTold,
    CrowdReasonTold,
    CrowdTold,
    DayAnswer,
    DaysAnswer,
    DaysTold,
    DayTold,
    DriveTold,
    FeltPartTold,
    FeltTold,
    FlipTold,
    GroupShareTold,
    HelpsTold,
    HoursTold,
    KeptTold,
    LeaveWindowTold,
    MoneyRangeTold,
    MoneyTold,
    MorePeopleTold,
    NapTold,
    NearMissTold,
    NotAnyMoreTold,
    OrderTold,
    OtherWayTold,
    OutingTold,
    PassedOverTold,
    PassesAnswer,
    PassOrderTold,
    PassTold,
    PlaceTold,
    PlanTold,
    PurchaseTold,
    RangeTold,
    ReplannedTold,
    ShareTold,
    ShowTold,
    SlackTold,
    SourceTold,
    SpanTold,
    StepTold,
    TogetherAnswer,
    TogetherTold,
    TradeOffsTold,
    TradeOffTold,
    TransferTold,
    VisitTold,
    WayOutTold,
)
from tripplan.commands.question import Question
from tripplan.planning.admission.result import Admission, NoAdmission, OtherWay, Purchase
from tripplan.planning.calendars import DateSpan
from tripplan.planning.certainty import how_sure
from tripplan.planning.choose import Candidate
from tripplan.planning.cost import CostKind, OutingCost
from tripplan.planning.crowds.risk import CrowdRisk
from tripplan.planning.day import DayPlan, LeaveWindow, slack, trade_offs
from tripplan.planning.flips import Flip
from tripplan.planning.hours import DayHours
from tripplan.planning.money import Money, MoneyRange
from tripplan.planning.outing import NoOuting, Outing
from tripplan.planning.passes.plan import BreakEven, PassOrder, PassPlan, VisitCost
from tripplan.planning.place import Place
from tripplan.planning.ranges import Origin, Range, Source
from tripplan.planning.replan import Replanned, WayOut
from tripplan.planning.sweep.misses import Miss
from tripplan.planning.sweep.table import DayTable
from tripplan.planning.sweep.wishes import Wish
from tripplan.planning.together.shapes import Share, Together
from tripplan.planning.together.split import RULE
from tripplan.planning.travel.drive import Leg

_FELT = (
    "the likely total plus what the household says lost naps, a full house, driving and short visits weigh"
)


def compare_answer(
    question: Question, candidates: Sequence[Candidate], flips: Iterable[Flip]
) -> CompareAnswer:
    """Places side by side, how sure their order is, and what would change it."""
    outings = [candidate.best for candidate in candidates if candidate.best is not None]
    certainty = how_sure(outings) if outings else None
    return CompareAnswer(
        **_opening(question),
        span=_span(question.span),
        candidates=tuple(map(_candidate, candidates)),
        chances_cheapest=certainty.chances if certainty else (),
        too_close_to_call=certainty is not None and certainty.too_close,
        flips=tuple(
            FlipTold(
                what=flip.what,
                now=flip.now,
                at=flip.at,
                new_first=flip.new_first,
                sentence=flip.sentence,
            )
            for flip in flips
        ),
    )


def days_answer(
    question: Question,
    table: DayTable,
    wishes: Sequence[Wish],
    count: int,
    outings: Sequence[Outing],
    misses: Sequence[Miss],
    passed_over: Sequence[NoOuting],
) -> DaysAnswer:
    """The best days of a span, and those that nearly came first."""
    return DaysAnswer(
        **_opening(question),
        span=_span(question.span),
        count=count,
        outings=tuple(map(_outing, outings)),
        passed_over=tuple(map(_passed_over, passed_over)),
        wishes=tuple(wish.words for wish in wishes),
        not_as_wished=int(table.can_go.sum()) - count,
        nearly=tuple(
            NearMissTold(
                place=table.places[miss.spot.row].id,
                day=table.day(miss.spot.column),
                better=miss.better,
                costs_more=_money(miss.costs_more),
                felt_more=_money(miss.felt_more),
                sentence=miss.sentence,
            )
            for miss in misses
        ),
    )


def day_answer(
    question: Question, answer: Outing | NoOuting, replanned: Replanned | None = None
) -> DayAnswer:
    """One place on one day."""
    return DayAnswer(
        **_opening(question),
        outing=_outing(answer) if isinstance(answer, Outing) else None,
        passed_over=_passed_over(answer) if isinstance(answer, NoOuting) else None,
        trade_offs=_trade_offs(answer) if isinstance(answer, Outing) else None,
        slack=_slack(answer) if isinstance(answer, Outing) else None,
        replanned=None if replanned is None else _replanned(replanned),
    )


def _replanned(found: Replanned) -> ReplannedTold:
    return ReplannedTold(
        now=found.now,
        ways=tuple(map(_way_out, found.ways)),
        impossible=tuple(NotAnyMoreTold(title=title, reasons=reasons) for title, reasons in found.impossible),
        cautions=found.cautions,
    )


def _way_out(way: WayOut) -> WayOutTold:
    outing, tickets = way.outing, way.tickets
    return WayOutTold(
        choice=way.choice,
        title=way.title,
        place=None if outing is None else outing.place.id,
        plan=None if outing is None else _plan(outing.plan),
        home=way.home,
        total=_money(way.total.rounded()),
        change=_money(way.change.rounded()),
        tickets_lost=None if tickets is None else _money(tickets.lost),
        tickets_back=None if tickets is None else _money(tickets.back),
        felt=_money(way.felt),
        notes=way.notes,
    )


def _trade_offs(outing: Outing) -> TradeOffsTold:
    found = trade_offs(outing.question)
    helps = found.helps
    return TradeOffsTold(
        parts=tuple(
            FeltPartTold(
                name=part.name, said=part.said, minutes=part.minutes, felt=_money(part.felt.rounded())
            )
            for part in found.parts
        ),
        why=found.why,
        points=tuple(
            TradeOffTold(
                leave_home=point.plan.leave_home,
                enter=point.plan.enter,
                leave_place=point.plan.leave_place,
                home=point.plan.home,
                nap_kept_minutes=point.kept_minutes,
                stay_minutes=point.stay_minutes,
                felt=_money(point.plan.felt),
                best=point.plan == found.best,
                sentence=point.sentence,
            )
            for point in found.points
        ),
        helps=None
        if helps is None or helps.saves is None
        else HelpsTold(words=helps.words, saves=_money(helps.saves)),
    )


def _slack(outing: Outing) -> SlackTold:
    found = slack(outing.question, outing.plan)
    return SlackTold(
        entry=found.entry,
        timed_entry=found.timed,
        make_entry=round(found.make_entry, 4),
        sure_departure=found.sure_departure,
        home_by=found.home_by,
        home_in_time=round(found.home_in_time, 4),
        bed=found.bed,
        home_before_bed=None if found.home_before_bed is None else round(found.home_before_bed, 4),
        usually_home=found.usually_home,
        nearly_always_home=found.nearly_always_home,
    )


def passes_answer(question: Question, plan: PassPlan, notes: Sequence[str]) -> PassesAnswer:
    """Which passes pay for a list of visits."""
    return PassesAnswer(
        **_opening(question),
        orders=tuple(map(_pass_order, plan.orders)),
        visits=tuple(map(_visit, plan.visits)),
        left_out=tuple(
            PassedOverTold(place=one.visit.place.id, day=one.visit.day, reasons=one.reasons)
            for one in plan.left_out
        ),
        total=_money(plan.total),
        singly=_money_or_none(plan.singly),
        saving=_money_or_none(plan.saving),
        break_even=tuple(map(_break_even, plan.break_even)),
        notes=(*notes, *plan.notes),
    )


def together_answer(question: Question, answer: Together | NoOuting) -> TogetherAnswer:
    """Several households at one place."""
    (place,) = question.places
    return TogetherAnswer(
        **_opening(question),
        place=_place(place),
        day=question.span.first,
        outing=_together(answer) if isinstance(answer, Together) else None,
        passed_over=_passed_over(answer) if isinstance(answer, NoOuting) else None,
    )


def _opening(question: Question) -> dict[str, Any]:
    return {
        "data": question.whose,
        "household": question.family.household.name,
        "party": tuple(member.name for member in question.party),
        "today": question.today,
    }


def _span(span: DateSpan) -> DaysTold:
    return DaysTold(first=span.first, last=span.last)


def _candidate(candidate: Candidate) -> CandidateTold:
    return CandidateTold(
        place=_place(candidate.place),
        best=_outing(candidate.best) if candidate.best else None,
        other_days=tuple(
            DayTold(day=other.day, total=_money_range(other.total), felt_cost=_felt(other.felt_cost))
            for other in candidate.other_days
        ),
        passed_over=tuple(map(_passed_over, candidate.passed_over)),
    )


def _passed_over(missed: NoOuting) -> PassedOverTold:
    return PassedOverTold(place=missed.place.id, day=missed.day, reasons=missed.reasons)


def _outing(outing: Outing) -> OutingTold:
    return OutingTold(
        place=_place(outing.place),
        day=outing.day,
        party=tuple(member.name for member in outing.party),
        cost=_cost(outing.cost),
        felt_cost=_felt(outing.felt_cost),
        way_there=_leg(outing.way_there),
        way_home=_leg(outing.way_home),
        hours=_hours(outing.hours),
        plan=_plan(outing.plan),
        leave_windows=tuple(map(_window, outing.search.windows)),
        admission=_admission(outing.admission, outing.cost),
        crowd=_crowd(outing.crowd),
        notes=outing.notes,
        cautions=outing.cautions,
    )


def _place(place: Place) -> PlaceTold:
    where = place.where
    return PlaceTold(
        id=place.id,
        name=place.name,
        town=where.town,
        country=where.country,
        subdivision=where.subdivision,
        time_zone=where.zone.key,
    )


def _source(source: Source) -> SourceTold:
    return SourceTold(origin=source.origin, text=source.text)


def _coins(money: Money) -> Decimal:
    """The amount with the digits that are paid, and with more where it is finer than a coin."""
    rounded = money.rounded().amount
    return rounded if rounded == money.amount else money.amount


def _money(money: Money) -> MoneyTold:
    return MoneyTold(amount=_coins(money), currency=money.currency)


def _felt(money: Money) -> FeltTold:
    return FeltTold(
        amount=_coins(money),
        currency=money.currency,
        source=SourceTold(origin=Origin.PARENT, text=_FELT),
    )


def _money_range(amounts: MoneyRange) -> MoneyRangeTold:
    return MoneyRangeTold(
        low=_coins(amounts.low),
        likely=_coins(amounts.likely),
        high=_coins(amounts.high),
        currency=amounts.currency,
    )


def _cost(cost: OutingCost) -> CostTold:
    return CostTold(
        total=_money_range(cost.total),
        unknown=cost.unknown,
        items=tuple(
            CostItemTold(
                kind=item.kind,
                label=item.label,
                amount=None if item.amount is None else _money_range(item.amount),
                source=_source(item.source),
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
        source=_source(leg.drive.source),
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


def _plan(plan: DayPlan) -> PlanTold:
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


def _window(window: LeaveWindow) -> LeaveWindowTold:
    return LeaveWindowTold(first=window.first, last=window.last, best=window.best.leave_home)


def _admission(admission: Admission, cost: OutingCost) -> AdmissionTold:
    source = next(item.source for item in cost.items if item.kind is CostKind.ADMISSION)
    single = admission.single_tickets
    return AdmissionTold(
        total=_money(admission.total),
        source=_source(source),
        purchases=tuple(map(_purchase, admission.purchases)),
        shares=tuple(ShareTold(member=name, share=_money(share)) for name, share in admission.shares.items()),
        other_ways=tuple(map(_other_way, admission.other_ways)),
        single_tickets=None if single is None else _other_way(single),
        why_not_single_tickets=admission.why_not_single_tickets,
        parking_included=admission.parking_included,
        notes=admission.notes,
    )


def _other_way(way: OtherWay) -> OtherWayTold:
    return OtherWayTold(
        total=_money(way.total),
        costs_more=_money(way.costs_more),
        purchases=tuple(map(_purchase, way.purchases)),
    )


def _purchase(purchase: Purchase) -> PurchaseTold:
    return PurchaseTold(
        name=purchase.name,
        quantity=purchase.quantity,
        unit_price=_money(purchase.unit_price),
        total=_money(purchase.total),
        covers=purchase.covers,
        rule=purchase.rule,
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
        source=_source(risk.source),
    )


def _money_or_none(money: Money | None) -> MoneyTold | None:
    return None if money is None else _money(money)


def _pass_order(order: PassOrder) -> PassOrderTold:
    return PassOrderTold(
        place=order.place.id,
        day=order.day,
        passes=tuple(
            PassTold(name=one.offer.name, holders=one.holders, valid_until=one.valid_until)
            for one in order.passes
        ),
        lines=tuple(map(_purchase, order.lines)),
        total=_money(order.total),
        notes=order.notes,
    )


def _visit(line: VisitCost) -> VisitTold:
    return VisitTold(
        place=line.visit.place.id,
        day=line.visit.day,
        party=tuple(member.name for member in line.visit.party),
        entry=_money(line.admission.total),
        parking=_money_or_none(line.parking),
        total=_money(line.total),
        singly=_money_or_none(line.singly),
        passes=line.passes,
        purchases=tuple(map(_purchase, line.admission.purchases)),
    )


def _break_even(one: BreakEven) -> BreakEvenTold:
    return BreakEvenTold(
        place=one.place.id,
        name=one.offer.name,
        bought=one.bought,
        holders=one.holders,
        price=_money(one.price),
        visits=one.visits,
        saved=_money_or_none(one.saved),
        pays_after=one.pays_after,
    )


def _together(outing: Together) -> TogetherTold:
    till = outing.at_the_till
    return TogetherTold(
        orders=tuple(
            OrderTold(
                groups=order.groups,
                total=_money(order.admission.total),
                purchases=tuple(map(_purchase, order.admission.purchases)),
            )
            for order in outing.orders
        ),
        total=_money(outing.total),
        saving=_money_or_none(outing.saving),
        shares=tuple(map(_group_share, outing.shares)),
        rule=RULE,
        group_offers=outing.group_offers,
        more=tuple(
            MorePeopleTold(
                count=more.count,
                who=more.who,
                total=_money(more.total),
                amounts=tuple(map(_money, more.amounts)),
                offers=more.offers,
            )
            for more in outing.more
        ),
        people=outing.seats.people,
        seats=outing.seats.seats,
        seats_missing=outing.seats.missing,
        at_the_till=None if till is None else AtTheTillTold(group=till.group, amount=_money(till.amount)),
        transfers=tuple(
            TransferTold(payer=one.payer, receiver=one.receiver, amount=_money(one.amount))
            for one in outing.transfers
        ),
        cautions=outing.cautions,
    )


def _group_share(share: Share) -> GroupShareTold:
    alone = share.alone
    return GroupShareTold(
        group=share.group,
        amount=_money(share.amount),
        paid=_money(share.paid),
        alone=None if isinstance(alone, NoAdmission) else _money(alone.total),
        why_not_alone=alone.reasons if isinstance(alone, NoAdmission) else (),
    )
