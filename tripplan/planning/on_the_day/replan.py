"""When the day goes wrong: from here and now, go on, wait, turn back, or somewhere nearer."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from decimal import Decimal
from zoneinfo import ZoneInfo

from tripplan.documents.family.member import Member, SleepsIn
from tripplan.documents.places.place import Place
from tripplan.errors import PlanError
from tripplan.language.sentences import Fact, fact
from tripplan.planning.day import DayInProgress, DayQuestion
from tripplan.planning.day.times.legs import LegsOfDays
from tripplan.planning.day.times.limits import Limits
from tripplan.planning.day.times.minutes import DayMinutes, a_day
from tripplan.planning.day.weighing.naps import INTO_BED_MINUTES, Sleep, nap_windows, outcome
from tripplan.planning.day.weighing.nuisances import UNITS
from tripplan.planning.day.weighing.weighing import late_home
from tripplan.planning.family.family import Family
from tripplan.planning.on_the_day.recovery_options import RecoveryKind, RecoveryOption, RevisedDay
from tripplan.planning.on_the_day.sunk_cost import some_stay_away
from tripplan.planning.on_the_day.trouble import Situation, Trouble, Whereabouts, minutes_between
from tripplan.planning.on_the_day.way_home import ways_home
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import drive_from_home, place_facts
from tripplan.planning.travel.drive import Drive, Leg, Rest, Stop
from tripplan.planning.travel.drive_sources import known_drive
from tripplan.planning.travel.rests import drive_stretch_for, plan_leg
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, total
from tripplan.values.ranges import Range

ONE_DAY = timedelta(days=1)
"""After so long nobody is out any more. Whoever is may come home after midnight, but not leave after it."""
MOST_UNDERSTUDIES_TRIED = 6
"""So many of the nearest other places are looked at [-]."""
MOST_REASONS_TOLD = 3
"""Of so many of them it is said why they will not do [-]."""


def replan(family: Family, outing: Outing, trouble: Trouble, *, today: date) -> RevisedDay:
    """Plan anew from here and now.

    Lateness moves everything: who leaves late arrives as much later. A child who is asleep sleeps its usual
    length if nobody wakes it; on the way the party then sits in the car until it wakes, all together. With a
    child ill at home one adult stays with it and the others may go; out of the house everybody turns back.
    The understudy is the nearest other place from here that is open, can be reached, allows at least the
    shortest stay that is worth it, and whose nuisances (lost nap included) weigh less than missing the whole
    stay; in rain none in the open air. On the way, the drive to it is estimated from a point on the
    straight line. On the way home all is over but the drive, and a sleep in the car.

    Tickets already paid for are spent whatever happens; only refundable ones come back. Turning back, what
    is not used up is not counted: no parking, no treats; food only if it was packed.

    Args:
        family: people, car, home, places.
        outing: the day as it was planned.
        trouble: what has gone wrong.
        today: when the day was planned, for booking deadlines of the place itself.

    Raises:
        PlanError: so late that the day is over, or a figure is below zero.
        UnknownName: a name is not one of the party's.
    """
    # Where the party is, and when, the trouble tells; the outing that it had planned gives way.
    family = replace(family.about(outing.place.id, outing.day), now=None)
    here = Situation(family, outing, trouble)
    over = (here.now - outing.plan.leave_home) > ONE_DAY
    if over or (here.at_home and here.now.astimezone(here.zone).date() != outing.day):
        raise PlanError("that late, the day is over")
    if here.going_home:
        on = sorted(ways_home(here), key=lambda way: way.weighs.amount)
        return RevisedDay(here.now, tuple(on), (), tuple(_cautions(here)))
    ways: list[RecoveryOption] = []
    impossible: list[tuple[Fact, tuple[Fact, ...]]] = []
    parties = tuple(_parties(here))
    if not parties:
        impossible.append((_go_on_title(here), (_nobody_goes(trouble),)))
    waits = (False, True) if here.worth_waiting else (False,)
    for wait in waits:
        tried = [_go_on(here, party, today, wait=wait) for party in parties]
        able = [way for way in tried if isinstance(way, RecoveryOption)]
        if able:
            best = min(able, key=lambda way: way.weighs.amount)
            if best.outing not in [way.outing for way in ways]:  # at the place waiting may change nothing
                ways.append(best)
        elif tried:
            title = _wait_title(here) if wait else _go_on_title(here)
            impossible.append((title, next(way.reasons for way in tried if isinstance(way, NoOuting))))
    back = _turn_back(here)
    ways.append(back)
    elsewhere = _understudy(here, parties, back)
    if isinstance(elsewhere, RecoveryOption):
        ways.append(elsewhere)
    elif elsewhere:
        impossible.append((fact("recovery-elsewhere"), elsewhere))

    def order(way: RecoveryOption) -> tuple[bool, bool, bool, Decimal]:
        wet = trouble.rain and way.outing is not None and way.outing.place.visit.indoors == "outdoors"
        elsewhere, home = way.choice is RecoveryKind.UNDERSTUDY, way.choice is RecoveryKind.TURN_BACK
        return wet, home, elsewhere, way.weighs.amount

    return RevisedDay(here.now, tuple(sorted(ways, key=order)), tuple(impossible), tuple(_cautions(here)))


def _parties(here: Situation) -> Iterator[tuple[Member, ...]]:
    """Who could go on: everybody, or with a child ill at home all but it and one adult."""
    party, trouble = here.outing.party, here.trouble
    if trouble.ill is None:
        yield party
        return
    if not here.at_home:
        return
    day = here.outing.day
    for adult in party:
        if not adult.is_adult_on(day) or adult.name == trouble.ill:
            continue
        if trouble.stays_home is not None and adult.name != trouble.stays_home:
            continue
        rest = tuple(member for member in party if member.name not in (trouble.ill, adult.name))
        if any(member.is_adult_on(day) for member in rest):
            yield rest


def _nobody_goes(trouble: Trouble) -> Fact:
    if trouble.where is Whereabouts.HOME:
        return fact("recovery-no-adult-left", name=str(trouble.ill))
    return fact("recovery-nobody-takes-one-home", name=str(trouble.ill))


def _go_on_title(here: Situation) -> Fact:
    place = here.outing.place.name
    if here.there:
        return fact("recovery-stay-at", place=place)
    if here.at_home and here.worth_waiting:
        return fact("recovery-wake", name=str(here.trouble.asleep), place=place)
    return fact("recovery-go-on", place=place)


def _wait_title(here: Situation) -> Fact:
    name, place = str(here.trouble.asleep), here.outing.place.name
    if here.there:
        return fact("recovery-sleep-on-and-stay", name=name, place=place)
    return fact("recovery-sleep-on-then", name=name, place=place)


def _go_on(here: Situation, party: Sequence[Member], today: date, *, wait: bool) -> RecoveryOption | NoOuting:
    """The same place later, waiting or not for the child that sleeps."""
    outing = here.outing
    wakes = here.wakes if wait else None

    def as_it_is(question: DayQuestion) -> DayQuestion:
        question = replace(question, nappers=here.sleeping(question.nappers))
        if here.at_home:
            later = _leaving_from(question, wakes or here.now, here.zone)
            # Waking the child means leaving at once; else the search would let it sleep on.
            at_once = here.worth_waiting and not wait
            return replace(later, begun=DayInProgress(here.now, here.now)) if at_once else later
        leg = outing.way_there
        if wakes is not None and not here.there:
            leg = replace(leg, drive_minutes=leg.drive_minutes + minutes_between(here.parks, wakes))
        question = replace(
            question,
            way_there=leg,
            begun=DayInProgress(here.left_home, (wakes if here.there else None) or here.now),
        )
        if here.there:
            # Whoever is inside need not be let in again.
            spans = tuple(
                replace(
                    span,
                    opens=min(max(span.opens, here.let_in.astimezone(span.opens.tzinfo)), span.closes),
                    last_entry=span.closes,
                )
                for span in question.hours.spans
            )
            let_in = replace(question.hours, spans=spans, entry_times=())
            return replace(question, hours=let_in, shortest_minutes=1)
        return question

    facts = place_facts(here.family, outing.place, (outing.day.year,))
    new = plan_outing(
        here.family,
        party,
        facts,
        outing.day,
        today=today,
        as_asked=as_it_is,
        entry_paid=here.paid,
    )
    if isinstance(new, NoOuting):
        return new
    absent = {member.name for member in outing.party} - {member.name for member in party}
    tickets = None
    cost = new.cost.total.likely
    if here.paid:
        tickets = some_stay_away(outing.place, outing.admission, absent, new.admission.total)
        cost = cost - _of_kind(new, CostKind.ADMISSION) + tickets.spent
    title = _wait_title(here) if wait else _go_on_title(here)
    if absent:
        title = fact("recovery-with", what=title, who=tuple(member.name for member in party))
    notes = list(_waiting_notes(here)) if wait else []
    stays = tuple(member.name for member in outing.party if member.name in absent - {here.trouble.ill})
    if stays:
        notes.append(fact("recovery-stays-with", who=stays, name=str(here.trouble.ill)))
    if outing.place.visit.indoors != "indoors" and here.trouble.rain:
        notes.append(fact("recovery-open-air", whole=outing.place.visit.indoors == "outdoors"))
    return RecoveryOption(
        choice=RecoveryKind.WAIT if wait else RecoveryKind.GO_ON,
        title=title,
        outing=new,
        home=new.plan.home,
        naps=new.plan.naps,
        total=cost,
        change=cost - outing.cost.total.likely,
        tickets=tickets,
        felt=new.plan.felt,
        notes=tuple(notes),
    )


def _waiting_notes(here: Situation) -> Iterator[Fact]:
    """Where everybody is until the child that sleeps wakes, and how long that is likely to be."""
    if here.wakes is None:
        return
    name = str(here.trouble.asleep)
    if here.at_home:
        yield fact("recovery-home-until", name=name, at=here.wakes)
    elif not here.there:
        yield fact("recovery-in-car-until", name=name, at=here.wakes)


def _leaving_from(question: DayQuestion, moment: datetime, zone: ZoneInfo) -> DayQuestion:
    """The same day, with nobody leaving before a moment."""
    local = moment.astimezone(zone).replace(second=0, microsecond=0)
    return replace(
        question,
        last_wakes=None,
        habits=question.habits.model_copy(update={"earliest_departure": local.time()}),
    )


def _turn_back(here: Situation) -> RecoveryOption:
    """Home again at once, or not leaving at all."""
    outing, question = here.outing, here.outing.question
    minutes = DayMinutes(outing.day, here.zone)
    now, left = minutes.rounded_up(here.now), minutes.rounded_up(here.left_home)
    there, back = outing.way_there, outing.way_home
    car: list[tuple[int, int]] = []
    home = now
    if not here.at_home:
        wheels = left + there.load_up_minutes
        if here.there:
            arrived = minutes.rounded_down(here.arrives) - there.unload_minutes
            start = now + back.load_up_minutes
            car = [(wheels, arrived), (start, start + back.drive_minutes)]
            home = now + back.minutes
        else:
            # Turning round wakes nobody: one stretch in the car from home to home.
            car = [(wheels, now + here.driven_minutes)]
            home = now + here.driven_minutes + there.unload_minutes
    naps = []
    for window in nap_windows(here.sleeping(question.nappers), question.habits, minutes):
        sleeps = [
            Sleep(SleepsIn.HOME, -(10**4), 10**4 if here.at_home else left),
            Sleep(SleepsIn.HOME, home + INTO_BED_MINUTES, 10**4),
        ]
        settling = window.nap.falls_asleep_minutes
        if window.nap.in_car:
            sleeps += [Sleep(SleepsIn.CAR, start + settling, end) for start, end in car]
        if window.nap.in_car and window.nap.stays_asleep_when_moved and car:
            start, end = car[-1]
            sleeps.append(Sleep(SleepsIn.CAR, start + settling, 10**4, end, SleepsIn.HOME))
        naps.append(outcome(question, minutes, window, sleeps))
    driven = {Whereabouts.HOME: 0, Whereabouts.ON_THE_WAY: 2 * here.driven_minutes}.get(
        here.trouble.where, there.drive_minutes + back.drive_minutes
    )
    stayed = minutes_between(here.let_in, here.now) if here.there else 0
    worth = question.worth
    felt = (
        sum(nap.lost_minutes for nap in naps) * worth.lost_nap_hour
        + driven * worth.hour_in_car
        + max(0, question.comfortable_minutes - stayed) * worth.missed_hour_there
        + max(0, stayed - question.comfortable_minutes) * worth.hour_beyond_comfortable
    ) / 60
    if here.there:
        limits = Limits.of(question, minutes)
        late = late_home(question, (limits,), LegsOfDays((limits.back,)), minutes, a_day([now]))
        felt += Decimal(sum(nuisance.weight().item() for nuisance in late)) / UNITS
    tickets = here.tickets
    spent = [tickets.spent] if tickets else []
    if here.there:
        spent.append(outing.cost.total.likely - _of_kind(outing, CostKind.ADMISSION))
    else:
        spent.append(_of_kind(outing, CostKind.CAR) * Decimal(str(round(here.share, 4))))
        if not here.at_home and here.family.household.food.way == "packed":
            spent.append(_of_kind(outing, CostKind.FOOD))
    cost = total(spent, here.currency)
    if here.at_home:
        title = fact("recovery-stay-home")
    else:
        title = fact("recovery-go-home") if here.there else fact("recovery-turn-back")
    return RecoveryOption(
        choice=RecoveryKind.TURN_BACK,
        title=title,
        outing=None,
        home=minutes.moment(home, here.zone),
        naps=tuple(naps),
        total=cost,
        change=cost - outing.cost.total.likely,
        tickets=tickets,
        felt=Money(felt, here.currency).rounded(),
        stays_home=here.at_home,
    )


def _understudy(
    here: Situation, parties: Sequence[Sequence[Member]], back: RecoveryOption
) -> RecoveryOption | tuple[Fact, ...]:
    """The nearest other place that is still worth it, or why each of those looked at is not."""
    others = [place for place in here.family.places if place.id != here.outing.place.id]
    if not parties or not others:
        return ()
    if here.trouble.rain:
        others = [place for place in others if place.visit.indoors != "outdoors"]
    nearest = sorted(
        ((_drive_to(here, place), place) for place in others), key=lambda at: at[0].minutes.likely
    )
    reasons = [] if nearest else [fact("recovery-all-open-air")]
    for drive, place in nearest[:MOST_UNDERSTUDIES_TRIED]:
        for party in parties:
            way = _somewhere_else(here, party, place, drive)
            if isinstance(way, RecoveryOption) and way.felt < back.felt:
                return way
        why = way.reasons[0] if isinstance(way, NoOuting) else fact("recovery-not-worth-it")
        reasons.append(fact("recovery-place-why", place=place.name, why=why))
    return tuple(reasons[:MOST_REASONS_TOLD])


def _drive_to(here: Situation, place: Place) -> Drive:
    if here.at_home:
        return drive_from_home(here.family, place)
    return known_drive(here.point, place.where.point, place.where.country)


def _somewhere_else(
    here: Situation, party: Sequence[Member], place: Place, drive: Drive
) -> RecoveryOption | NoOuting:
    outing = here.outing
    way = None if here.at_home else _way_on(here, party, drive)

    def as_it_is(question: DayQuestion) -> DayQuestion:
        question = replace(question, nappers=here.sleeping(question.nappers))
        if way is None:
            return _leaving_from(question, here.now, here.zone)
        return replace(question, way_there=way, begun=DayInProgress(here.left_home, here.now))

    facts = place_facts(here.family, place, (outing.day.year,))
    # Whatever has to be booked ahead cannot be had any more.
    new = plan_outing(here.family, party, facts, outing.day, today=outing.day, as_asked=as_it_is)
    if isinstance(new, NoOuting):
        return new
    tickets = here.tickets
    cost = new.cost.total.likely + (tickets.spent if tickets else Money.zero(here.currency))
    return RecoveryOption(
        choice=RecoveryKind.UNDERSTUDY,
        title=fact("recovery-instead", place=place.name, away=timedelta(minutes=drive.minutes.likely)),
        outing=new,
        home=new.plan.home,
        naps=new.plan.naps,
        total=cost,
        change=cost - outing.cost.total.likely,
        tickets=tickets,
        felt=new.plan.felt,
        notes=(_drive_note(drive),),
    )


def _drive_note(drive: Drive) -> Fact:
    low, likely, high = (
        timedelta(minutes=minutes)
        for minutes in (drive.minutes.low, drive.minutes.likely, drive.minutes.high)
    )
    if drive.minutes.is_exact:
        return fact("recovery-drive", minutes=likely, known=drive.known)
    return fact("recovery-drive-about", minutes=likely, low=low, high=high, known=drive.known)


def _way_on(here: Situation, party: Sequence[Member], drive: Drive) -> Leg:
    """The way that is behind the party and on to another place, as one leg from home."""
    behind, household = here.outing.way_there, here.family.household
    ages = [member.months_on(here.outing.day) for member in party]
    toilets = [member.toilet_minutes for member in party if member.toilet_minutes is not None]
    on = plan_leg(
        drive,
        load_up_minutes=0,
        unload_minutes=behind.unload_minutes,
        drive_at_most_minutes=drive_stretch_for(ages, household.habits.drive_at_most_minutes, toilets),
        rest_minutes=household.habits.rest_minutes,
    )
    driven = here.driven_minutes
    stops = [stop for stop in behind.stops if stop.after_minutes < driven]
    if here.there:
        inside = (
            minutes_between(here.arrives, here.now)
            + behind.unload_minutes
            + here.outing.way_home.load_up_minutes
        )
        stops.append(Stop(driven, inside, fact("drive-stop-at", place=here.outing.place.name)))
    km = behind.drive.km.map(lambda km: km * here.share)
    return Leg(
        drive=replace(
            drive, km=Range(km.low + drive.km.low, km.likely + drive.km.likely, km.high + drive.km.high)
        ),
        load_up_minutes=behind.load_up_minutes,
        drive_minutes=driven + on.drive_minutes,
        rests=(
            *(rest for rest in behind.rests if rest.after_minutes < driven),
            *(Rest(driven + rest.after_minutes, rest.minutes) for rest in on.rests),
        ),
        unload_minutes=on.unload_minutes,
        stops=tuple(stops),
    )


def _of_kind(outing: Outing, kind: CostKind) -> Money:
    likely = (item.likely for item in outing.cost.items if item.kind is kind and item.likely is not None)
    return total(likely, outing.cost.total.currency)


def _cautions(here: Situation) -> Iterator[Fact]:
    if here.trouble.asleep is not None and not here.at_home:
        yield fact("cautions-asleep-in-car")
    if here.trouble.ill is not None:
        yield fact("cautions-ill-child")
    if here.driving:
        yield fact("cautions-while-driving")
