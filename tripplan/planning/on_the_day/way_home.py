"""When something goes wrong on the way home: drive on, or let a child sleep on in the car at the door."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from decimal import Decimal

from tripplan.documents.family.member import SleepsIn
from tripplan.language.sentences import Fact, fact
from tripplan.planning.day import NapOutcome
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.on_the_day.recovery_options import RecoveryKind, RecoveryOption
from tripplan.planning.on_the_day.trouble import Situation, minutes_between
from tripplan.values.money import Money


def ways_home(here: Situation) -> Iterator[RecoveryOption]:
    """What can be done on the way home; it costs what was planned, for all of it is spent.

    A child that has fallen asleep and would wake on being carried in may sleep on in the car, with somebody
    beside it. Each way weighs what the plan did, with what is different: nap lost, time in the car, and being
    home after the time that was set or after the first bedtime.

    Args:
        here: on the way home.
    """
    yield _home_at(here, here.home_again, RecoveryKind.GO_ON, fact("recovery-drive-home"))
    sleep, wakes = here.sleep, here.wakes
    if sleep is not None and wakes is not None and here.worth_waiting and not sleep.stays_asleep_when_moved:
        title = fact("recovery-sleep-on-in-car", name=str(here.trouble.asleep))
        yield _home_at(here, here.later(wakes, here.outing.way_home.unload_minutes), RecoveryKind.WAIT, title)


def _home_at(here: Situation, home: datetime, choice: RecoveryKind, title: Fact) -> RecoveryOption:
    plan, worth = here.outing.plan, here.outing.question.worth
    naps = tuple(_naps(here, home))
    lost = sum(nap.lost_minutes for nap in naps) - sum(nap.lost_minutes for nap in plan.naps)
    waited = minutes_between(here.home_again, home)
    felt = (
        Decimal(lost) * worth.lost_nap_hour
        + waited * worth.hour_in_car
        + sum(
            (minutes_between(due, home) - minutes_between(due, plan.home)) * price
            for due, _, price in _dues(here)
        )
    ) / 60
    cost = here.outing.cost.total.likely
    return RecoveryOption(
        choice=choice,
        title=title,
        outing=None,
        home=home,
        naps=naps,
        total=cost,
        change=Money.zero(here.currency),
        tickets=None,
        felt=(plan.felt + Money(felt, here.currency)).rounded(),
        notes=tuple(_notes(here, home)),
    )


def _naps(here: Situation, home: datetime) -> Iterator[NapOutcome]:
    """The naps as planned; one that was missed is made up for by the child that sleeps now.

    It sleeps until it wakes, or is woken on being carried in.
    """
    sleep, wakes = here.sleep, here.wakes
    if sleep is None or wakes is None or _has_slept(here):
        yield from here.outing.plan.naps
        return
    yield from (nap for nap in here.outing.plan.naps if nap.member != here.trouble.asleep)
    since, parks = here.asleep_since, here.later(home, -here.outing.way_home.unload_minutes)
    in_car = minutes_between(since, min(wakes, parks))
    in_bed = minutes_between(parks, wakes) if sleep.stays_asleep_when_moved else 0
    yield NapOutcome(
        member=str(here.trouble.asleep),
        usual_start=since,
        usual_minutes=sleep.minutes,
        kept=tuple(
            (place, lasts) for place, lasts in ((SleepsIn.CAR, in_car), (SleepsIn.HOME, in_bed)) if lasts
        ),
        asleep=(since, here.later(since, in_car + in_bed)),
    )


def _has_slept(here: Situation) -> bool:
    """Whether the child that sleeps now has had a nap by the plan before it got into the car."""
    return any(
        nap.member == here.trouble.asleep and nap.asleep is not None and nap.asleep[1] <= here.left_place
        for nap in here.outing.plan.naps
    )


def _dues(here: Situation) -> Iterator[tuple[datetime, Fact, Decimal]]:
    """By when everybody should be home, what that is, and what an hour later weighs."""
    question = here.outing.question
    minutes = DayMinutes(here.outing.day, here.zone)
    due = minutes.moment(minutes.home_by(question.habits), here.zone)
    yield due, fact("recovery-home-by", at=due), question.worth.hour_past_home_by
    if question.first_bed is not None:
        due = minutes.moment(minutes.by_clock(question.first_bed), here.zone)
        yield due, fact("recovery-bedtime", at=due), question.worth.hour_past_bedtime


def _notes(here: Situation, home: datetime) -> Iterator[Fact]:
    later = minutes_between(here.outing.plan.home, home)
    if later:
        yield fact("recovery-later", late=timedelta(minutes=later))
    for due, what, _ in _dues(here):
        if home > due:
            late = timedelta(minutes=minutes_between(due, home))
            yield fact("recovery-after", late=late, what=what)
    napper = next((one for one in here.outing.question.nappers if one.member == here.trouble.asleep), None)
    wakes = here.wakes
    if napper is None or napper.latest_end is None or wakes is None:
        return
    if _has_slept(here):
        yield fact("recovery-slept-already", name=napper.member)
    minutes = DayMinutes(here.outing.day, here.zone)
    good = minutes.moment(minutes.by_clock(napper.latest_end), here.zone)
    if wakes > good:
        yield fact("recovery-tired-at-bedtime", name=napper.member, awake=good, wakes=wakes)
