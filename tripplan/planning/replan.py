"""When the day goes wrong: from here and now, go on, wait, turn back, or somewhere nearer."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from enum import StrEnum
from functools import cached_property
from zoneinfo import ZoneInfo

from tripplan.errors import PlanError, UnknownName
from tripplan.planning import wording
from tripplan.planning.cost import CostKind
from tripplan.planning.day import Begun, DayQuestion, NapOutcome, Napper, SleepsIn
from tripplan.planning.day.minutes import DayMinutes
from tripplan.planning.day.naps import Sleep, nap_windows, outcome
from tripplan.planning.household import Member, Nap
from tripplan.planning.money import Money, total
from tripplan.planning.outing import Family, NoOuting, Outing, place_facts, plan_outing
from tripplan.planning.place import Place
from tripplan.planning.ranges import Range
from tripplan.planning.sunk import Paid, called_off, some_stay_away
from tripplan.planning.travel.drive import Drive, Leg, Rest, Stop
from tripplan.planning.travel.known import known_drive
from tripplan.planning.travel.rests import drive_stretch_for, plan_leg
from tripplan.planning.where import Point

MOST_UNDERSTUDIES_TRIED = 6
"""So many of the nearest other places are looked at [-]."""


class Whereabouts(StrEnum):
    """Where the party is."""

    HOME = "still at home"
    ON_THE_WAY = "on the way"
    THERE = "at the place"


@dataclass(frozen=True)
class Trouble:
    """What has gone wrong so far.

    Attributes:
        late_minutes: how much later than planned: in leaving, in arriving if on the way or there [min].
        where: where the party is.
        still_to_drive_minutes: on the way, how much driving is left; half of it when left out [min].
        now: at the place, the present moment; when the party was let in if left out.
        asleep: the child who has fallen asleep.
        asleep_since: since when; just now if left out.
        ill: the child who is ill.
        stays_home: the adult who stays with it; whoever suits best when left out.
        rain: whether it rains.
        tickets_paid: whether the tickets are bought already; at the place they are.
    """

    late_minutes: int = 0
    where: Whereabouts = Whereabouts.HOME
    still_to_drive_minutes: int | None = None
    now: datetime | None = None
    asleep: str | None = None
    asleep_since: datetime | None = None
    ill: str | None = None
    stays_home: str | None = None
    rain: bool = False
    tickets_paid: bool = False


class Choice(StrEnum):
    """What can be done about it."""

    GO_ON = "go on"
    WAIT = "wait"
    TURN_BACK = "turn back"
    UNDERSTUDY = "somewhere else"


@dataclass(frozen=True)
class WayOut:
    """One thing that can be done.

    Attributes:
        choice: which.
        title: in words.
        outing: the new plan with all its answers; None where the party goes or stays home.
        home: when everybody who is out is home.
        naps: what becomes of the naps of those who are out.
        total: what the whole day costs then, tickets already paid for included.
        change: how much more that is than was planned; below zero where it is less.
        tickets: what becomes of tickets already paid for; None where none were.
        felt: what its nuisances weigh.
        notes: what else to know.
    """

    choice: Choice
    title: str
    outing: Outing | None
    home: datetime
    naps: tuple[NapOutcome, ...]
    total: Money
    change: Money
    tickets: Paid | None
    felt: Money
    notes: tuple[str, ...] = ()

    @property
    def weighs(self) -> Money:
        """Money and nuisances together; the least is the best."""
        return self.total + self.felt

    @property
    def times_sentence(self) -> str:
        """When the party leaves and how long it stays; empty where it goes or stays home."""
        if self.outing is None:
            return ""
        plan, begun = self.outing.plan, self.outing.question.begun
        leave = "Left" if begun is not None and begun.now > begun.left_home else "Leave"
        return (
            f"{leave} {wording.clock(plan.leave_home)}, there from {wording.clock(plan.enter)} to "
            f"{wording.clock(plan.leave_place)} ({wording.minutes(plan.visit_minutes)})"
        )

    @property
    def money_sentence(self) -> str:
        """What changes in cost."""
        change = self.change.rounded()
        if not change.amount:
            said = "costs as much as planned"
        else:
            more = "more" if change.amount > 0 else "less"
            said = (
                f"costs {wording.whole_money(Money(abs(change.amount), change.currency))} {more} than planned"
            )
        if self.tickets is not None and self.tickets.back.amount:
            said += f"; {wording.money(self.tickets.back)} of tickets comes back if called off in time"
        if self.tickets is not None and self.tickets.lost.amount:
            said += f"; {wording.money(self.tickets.lost)} of tickets already paid for is lost"
        return f"{said[0].upper()}{said[1:]}."


@dataclass(frozen=True)
class Replanned:
    """What can be done from here and now.

    Attributes:
        now: the moment it is about.
        ways: what can be done: the same place first, then another, then turning back, for what the place
            and the day are worth nobody can say; among equals the least money and nuisances first. In rain,
            open-air places come last.
        impossible: what cannot be done any more, each with its reasons.
        cautions: for safety.
    """

    now: datetime
    ways: tuple[WayOut, ...]
    impossible: tuple[tuple[str, tuple[str, ...]], ...]
    cautions: tuple[str, ...]


def replan(family: Family, outing: Outing, trouble: Trouble, *, today: date) -> Replanned:
    """Plan anew from here and now.

    Lateness moves everything: who leaves late arrives as much later. A child who is asleep sleeps its usual
    length if nobody wakes it; on the way the party then sits in the car until it wakes, all together. With a
    child ill at home one adult stays with it and the others may go; out of the house everybody turns back.
    The understudy is the nearest other place from here that is open, can be reached, allows at least the
    shortest stay that is worth it, and whose nuisances (lost nap included) weigh less than missing the whole
    stay; in rain none in the open air. On the way, the drive to it is estimated from a point on the
    straight line.

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
    here = _Here(family, outing, trouble)
    if here.now.astimezone(here.zone).date() != outing.day:
        raise PlanError("that late, the day is over")
    ways: list[WayOut] = []
    impossible: list[tuple[str, tuple[str, ...]]] = []
    parties = tuple(_parties(here))
    if not parties:
        impossible.append((_go_on_title(here), (_nobody_goes(trouble),)))
    waits = (False, True) if here.worth_waiting else (False,)
    for wait in waits:
        tried = [_go_on(here, party, today, wait=wait) for party in parties]
        able = [way for way in tried if isinstance(way, WayOut)]
        if able:
            ways.append(min(able, key=lambda way: way.weighs.amount))
        elif tried:
            title = _wait_title(here) if wait else _go_on_title(here)
            impossible.append((title, next(way.reasons for way in tried if isinstance(way, NoOuting))))
    back = _turn_back(here)
    ways.append(back)
    ways.extend(_understudy(here, parties, back))

    def order(way: WayOut) -> tuple[bool, bool, bool, Decimal]:
        wet = trouble.rain and way.outing is not None and way.outing.place.visit.indoors == "outdoors"
        elsewhere, home = way.choice is Choice.UNDERSTUDY, way.choice is Choice.TURN_BACK
        return wet, home, elsewhere, way.weighs.amount

    return Replanned(here.now, tuple(sorted(ways, key=order)), tuple(impossible), tuple(_cautions(here)))


@dataclass(frozen=True)
class _Here:
    """Where the party is, and what it has behind it."""

    family: Family
    outing: Outing
    trouble: Trouble

    def __post_init__(self) -> None:
        trouble = self.trouble
        if trouble.late_minutes < 0 or (trouble.still_to_drive_minutes or 0) < 0:
            raise PlanError("minutes late and minutes still to drive are no less than zero")
        names = tuple(member.name for member in self.outing.party)
        for name in (trouble.asleep, trouble.ill, trouble.stays_home):
            if name is not None and name not in names:
                raise UnknownName("member", name, names)

    @property
    def zone(self) -> ZoneInfo:
        return self.outing.question.home_zone

    @property
    def at_home(self) -> bool:
        return self.trouble.where is Whereabouts.HOME

    @property
    def there(self) -> bool:
        return self.trouble.where is Whereabouts.THERE

    @property
    def paid(self) -> bool:
        return self.trouble.tickets_paid or self.there

    @property
    def left_home(self) -> datetime:
        """When the party leaves, or has left."""
        return _later(self.outing.plan.leave_home, self.trouble.late_minutes, self.zone)

    @property
    def arrives(self) -> datetime:
        """When it is, or was, at the place."""
        return _later(self.left_home, self.outing.way_there.minutes, self.zone)

    @property
    def parks(self) -> datetime:
        """When the wheels stand still at the place, and a child in the car is woken."""
        return _later(self.arrives, -self.outing.way_there.unload_minutes, self.zone)

    @property
    def driven_minutes(self) -> int:
        """Driving behind it [min]."""
        drive = self.outing.way_there.drive_minutes
        if self.at_home:
            return 0
        if self.there:
            return drive
        left = self.trouble.still_to_drive_minutes
        return drive // 2 if left is None else max(0, drive - left)

    @property
    def share(self) -> float:
        """Driving behind it as a share of the way there [0-1]."""
        return self.driven_minutes / max(1, self.outing.way_there.drive_minutes)

    @property
    def let_in(self) -> datetime:
        """When it was, or is, let in."""
        return max(self.arrives, self.outing.plan.enter.astimezone(self.zone))

    @cached_property
    def now(self) -> datetime:
        if self.at_home:
            return self.left_home
        if self.there:
            return max(self.let_in, self.trouble.now or self.let_in).astimezone(self.zone)
        leg = self.outing.way_there
        halts = sum(halt.minutes for halt in leg.halts if halt.after_minutes < self.driven_minutes)
        return _later(self.left_home, leg.load_up_minutes + self.driven_minutes + halts, self.zone)

    @property
    def point(self) -> Point:
        """Where it is; on the way, on the straight line."""
        home, place = self.family.household.home.point, self.outing.place.where.point
        share = self.share
        return Point(
            home.latitude + share * (place.latitude - home.latitude),
            home.longitude + share * (place.longitude - home.longitude),
        )

    @property
    def asleep_since(self) -> datetime:
        return (self.trouble.asleep_since or self.now).astimezone(self.zone)

    @property
    def sleep(self) -> Nap | None:
        """The nap of the child that is asleep, as it is now; None where nobody sleeps."""
        member = next((m for m in self.outing.party if m.name == self.trouble.asleep), None)
        if member is None:
            return None
        since = self.asleep_since

        def off(nap: Nap) -> int:
            return abs(nap.start.hour * 60 + nap.start.minute - since.hour * 60 - since.minute)

        usual = min(member.naps, key=off, default=Nap(start=since.time(), minutes=_SLEEP_WITHOUT_A_USUAL_NAP))
        asleep = {"falls_asleep_minutes": 0, "in_car": True, "in_pushchair": True}
        start = since.time().replace(second=0, microsecond=0)
        return usual.model_copy(
            update={"start": start, "slack_minutes": 0, **({} if self.at_home else asleep)}
        )

    @property
    def wakes(self) -> datetime | None:
        """When the child that is asleep wakes if nobody wakes it."""
        return None if self.sleep is None else _later(self.asleep_since, self.sleep.minutes, self.zone)

    @property
    def worth_waiting(self) -> bool:
        """Whether there is a sleep that going on at once would end."""
        if self.wakes is None:
            return False
        ends = self.parks if self.trouble.where is Whereabouts.ON_THE_WAY else self.now
        return self.wakes > ends

    @property
    def tickets(self) -> Paid | None:
        """What becomes of the tickets if nobody goes in."""
        if not self.paid:
            return None
        if self.there:
            return Paid(self.outing.admission.total, Money.zero(self.currency), Money.zero(self.currency))
        return called_off(self.outing.place, self.outing.admission)

    @property
    def currency(self) -> str:
        return self.family.household.currency

    def sleeping(self, nappers: Sequence[Napper]) -> tuple[Napper, ...]:
        """The usual naps, the one that is being slept as it is."""
        nap = self.sleep
        if nap is None:
            return tuple(nappers)
        return (
            *(napper for napper in nappers if napper.member != self.trouble.asleep),
            Napper(str(self.trouble.asleep), (nap,)),
        )


_SLEEP_WITHOUT_A_USUAL_NAP = 60
"""How long a child sleeps that has no usual nap. Common practice, no source [min]."""


def _later(moment: datetime, minutes: int, zone: ZoneInfo) -> datetime:
    return (moment.astimezone(UTC) + timedelta(minutes=minutes)).astimezone(zone)


def _parties(here: _Here) -> Iterator[tuple[Member, ...]]:
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


def _nobody_goes(trouble: Trouble) -> str:
    if trouble.where is Whereabouts.HOME:
        return f"nobody of 18 or older would be left to go while one adult stays with {trouble.ill}"
    return f"{trouble.ill} is ill, and nobody can take only one child home"


def _go_on_title(here: _Here) -> str:
    name = here.outing.place.name
    if here.there:
        return f"Stay at {name}"
    if here.at_home and here.worth_waiting:
        return f"Wake {here.trouble.asleep} and go to {name} at once"
    return f"Go on to {name}"


def _wait_title(here: _Here) -> str:
    return f"Let {here.trouble.asleep} sleep on, then {here.outing.place.name}"


def _go_on(here: _Here, party: Sequence[Member], today: date, *, wait: bool) -> WayOut | NoOuting:
    """The same place later, waiting or not for the child that sleeps."""
    outing = here.outing
    wakes = here.wakes if wait else None

    def as_it_is(question: DayQuestion) -> DayQuestion:
        question = replace(question, nappers=here.sleeping(question.nappers))
        if here.at_home:
            later = _leaving_from(question, wakes or here.now, here.zone)
            # Waking the child means leaving at once; else the search would let it sleep on.
            at_once = here.worth_waiting and not wait
            return replace(later, begun=Begun(here.now, here.now)) if at_once else later
        leg = outing.way_there
        if wakes is not None and not here.there:
            leg = replace(leg, drive_minutes=leg.drive_minutes + _minutes(here.parks, wakes))
        question = replace(
            question, way_there=leg, begun=Begun(here.left_home, (wakes if here.there else None) or here.now)
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
    new = plan_outing(here.family, party, facts, outing.day, today=today, as_asked=as_it_is)
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
        title += f" with {wording.listed([member.name for member in party])}"
    notes = []
    if outing.place.visit.indoors != "indoors" and here.trouble.rain:
        notes.append(
            "in the open air" if outing.place.visit.indoors == "outdoors" else "partly in the open air"
        )
    return WayOut(
        choice=Choice.WAIT if wait else Choice.GO_ON,
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


def _leaving_from(question: DayQuestion, moment: datetime, zone: ZoneInfo) -> DayQuestion:
    """The same day, with nobody leaving before a moment."""
    local = moment.astimezone(zone).replace(second=0, microsecond=0)
    return replace(
        question,
        last_wakes=None,
        habits=question.habits.model_copy(update={"earliest_departure": local.time()}),
    )


def _turn_back(here: _Here) -> WayOut:
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
    for window in nap_windows(here.sleeping(question.nappers), minutes):
        sleeps = [
            Sleep(SleepsIn.HOME, -(10**4), 10**4 if here.at_home else left),
            Sleep(SleepsIn.HOME, home, 10**4),
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
    stayed = _minutes(here.let_in, here.now) if here.there else 0
    worth = question.worth
    felt = (
        sum(nap.lost_minutes for nap in naps) * worth.lost_nap_hour
        + driven * worth.hour_in_car
        + max(0, question.comfortable_minutes - stayed) * worth.missed_hour_there
    ) / 60
    tickets = here.tickets
    spent = [tickets.spent] if tickets else []
    if here.there:
        spent.append(outing.cost.total.likely - _of_kind(outing, CostKind.ADMISSION))
    else:
        spent.append(_of_kind(outing, CostKind.CAR) * Decimal(str(round(here.share, 4))))
        if not here.at_home and here.family.household.food.way == "packed":
            spent.append(_of_kind(outing, CostKind.FOOD))
    cost = total(spent, here.currency)
    title = "Stay at home" if here.at_home else "Go home now" if here.there else "Turn back"
    return WayOut(
        choice=Choice.TURN_BACK,
        title=title,
        outing=None,
        home=minutes.moment(home, here.zone),
        naps=tuple(naps),
        total=cost,
        change=cost - outing.cost.total.likely,
        tickets=tickets,
        felt=Money(felt, here.currency).rounded(),
    )


def _understudy(here: _Here, parties: Sequence[Sequence[Member]], back: WayOut) -> Iterator[WayOut]:
    """The nearest other place that is still worth it, if there is one."""
    others = [place for place in here.family.places if place.id != here.outing.place.id]
    if here.trouble.rain:
        others = [place for place in others if place.visit.indoors != "outdoors"]
    nearest = sorted(
        ((_drive_to(here, place), place) for place in others), key=lambda at: at[0].minutes.likely
    )
    for drive, place in nearest[:MOST_UNDERSTUDIES_TRIED]:
        for party in parties:
            way = _somewhere_else(here, party, place, drive)
            if way is not None and way.felt < back.felt:
                yield way
                return


def _drive_to(here: _Here, place: Place) -> Drive:
    family, where = here.family, place.where
    typed = next((typed for typed in family.typed_drives if typed.place == place.id), None)
    if here.at_home:
        return known_drive(
            family.household.home.point, where.point, where.country, typed, family.road_drives.get(place.id)
        )
    return known_drive(here.point, where.point, where.country)


def _somewhere_else(here: _Here, party: Sequence[Member], place: Place, drive: Drive) -> WayOut | None:
    outing = here.outing
    way = None if here.at_home else _way_on(here, party, drive)

    def as_it_is(question: DayQuestion) -> DayQuestion:
        question = replace(question, nappers=here.sleeping(question.nappers))
        if way is None:
            return _leaving_from(question, here.now, here.zone)
        return replace(question, way_there=way, begun=Begun(here.left_home, here.now))

    facts = place_facts(here.family, place, (outing.day.year,))
    # Whatever has to be booked ahead cannot be had any more.
    new = plan_outing(here.family, party, facts, outing.day, today=outing.day, as_asked=as_it_is)
    if isinstance(new, NoOuting):
        return None
    tickets = here.tickets
    cost = new.cost.total.likely + (tickets.spent if tickets else Money.zero(here.currency))
    return WayOut(
        choice=Choice.UNDERSTUDY,
        title=f"Go to {place.name} instead, {wording.minutes(drive.minutes.likely)} away",
        outing=new,
        home=new.plan.home,
        naps=new.plan.naps,
        total=cost,
        change=cost - outing.cost.total.likely,
        tickets=tickets,
        felt=new.plan.felt,
        notes=(f"The drive: {wording.minutes_range(drive.minutes)} ({drive.source.origin})",),
    )


def _way_on(here: _Here, party: Sequence[Member], drive: Drive) -> Leg:
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
            _minutes(here.arrives, here.now) + behind.unload_minutes + here.outing.way_home.load_up_minutes
        )
        stops.append(Stop(driven, inside, f"at {here.outing.place.name}"))
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
    likely = (
        item.amount.likely for item in outing.cost.items if item.kind is kind and item.amount is not None
    )
    return total(likely, outing.cost.total.currency)


def _minutes(start: datetime, end: datetime) -> int:
    return max(0, round((end - start).total_seconds() / 60))


def _cautions(here: _Here) -> Iterator[str]:
    if here.trouble.asleep is not None and not here.at_home:
        yield (
            "Never leave a child alone in a parked car, not even asleep and not for a minute: it heats up "
            "fast. Follow local law."
        )
    if here.trouble.ill is not None:
        yield "Ask a doctor if you are in doubt about a child that is ill; in an emergency call for help."
    if here.trouble.where is Whereabouts.ON_THE_WAY:
        yield "Let somebody who is not driving look at this, or stop first; nobody should hurry to catch up."
