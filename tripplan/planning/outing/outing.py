"""One place on one day for one party: the only place where the calculators' answers meet."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, timedelta

from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.places.idea import IdeaPlace
from tripplan.documents.places.place import Place
from tripplan.errors import UnknownName
from tripplan.language.sentences import Fact, fact
from tripplan.planning.admission.add_on_limits import height_notes
from tripplan.planning.admission.cheapest import OTHER_WAYS
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.planning.climate.cautions import weather_cautions
from tripplan.planning.cost import Account, OutingCost
from tripplan.planning.cost.account import wanted_add_ons
from tripplan.planning.cost.own_money import without_rate
from tripplan.planning.crowds.risk import CrowdRisk
from tripplan.planning.day import DayPlan, DayQuestion, DaySearch, plan_choice, plan_day, slack
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.public_holidays import public_holidays
from tripplan.planning.opening.hours import DayHours, Openness
from tripplan.planning.outing.cheaper_hours import CheaperHour, cheaper_hour
from tripplan.planning.outing.clock_notes import clock_notes
from tripplan.planning.outing.day_question import PartyNeeds, day_question, ways_on
from tripplan.planning.outing.delayed_costs import PlannedTimes, with_delays
from tripplan.planning.outing.generalized_cost import generalized_cost
from tripplan.planning.outing.hourly_costs import HourlyCosts, HourlyPrices
from tripplan.planning.outing.idea_notes import idea_notes
from tripplan.planning.outing.place_facts import PlaceFacts
from tripplan.planning.outing.stay import stay_for
from tripplan.planning.outing.visit_notes import drive_notes, visit_notes
from tripplan.planning.outing.weather.outdoor_hours import weather_of_day
from tripplan.planning.outing.weather.visit_weather import (
    VisitWeather,
    barred,
    visit_weather,
    weather_notes,
)
from tripplan.planning.travel.cautions import drive_cautions
from tripplan.planning.travel.daylight import TimedDrive, darkness_notes, daylight
from tripplan.planning.travel.drive import Leg
from tripplan.values.money import Money

USUAL_GRID_MINUTES = 5
"""Departures and leaving times are usually tried this far apart [min]."""


@dataclass(frozen=True)
class Outing:
    """One place on one day for one party, with all the answers; it can be done.

    Attributes:
        place: where to.
        day: when.
        party: who goes; ages are those on `day`.
        way_there: the drive out, with its rests.
        way_home: the drive back.
        hours: when the place can be visited.
        question: what the search was asked.
        search: the leave windows and their plans.
        plan: the one that is meant, usually the best of them.
        admission: what to buy.
        crowd: how likely a full house is.
        weather: what it is usually like there at that time; None where nobody knows.
        cost: what it costs in all.
        hourly_costs: what it would cost at other hours.
        cheaper_hour: hours at which it would cost less; None where there are none.
        generalized_cost: money plus what the parent says the nuisances weigh.
        notes: what else the parent should know.
        cautions: for safety, each with who has the last word.
    """

    place: Place
    day: date
    party: tuple[Member, ...]
    way_there: Leg
    way_home: Leg
    hours: DayHours
    question: DayQuestion
    search: DaySearch
    plan: DayPlan
    admission: Admission
    crowd: CrowdRisk
    weather: VisitWeather | None
    cost: OutingCost
    hourly_costs: HourlyCosts
    cheaper_hour: CheaperHour | None
    generalized_cost: Money
    notes: tuple[Fact, ...]
    cautions: tuple[Fact, ...]


@dataclass(frozen=True)
class NoOuting:
    """Why one place cannot be visited on one day.

    Attributes:
        place: where to.
        day: when.
        reasons: what stands in the way; at least one.
        question: what the search was asked, where it found nothing; None where it need not be asked, for the
            place is closed, say.
    """

    place: Place
    day: date
    reasons: tuple[Fact, ...]
    question: DayQuestion | None = None


def not_admitted(why: NoAdmission) -> tuple[Fact, ...]:
    """Why nobody lets a party in, as reasons of no outing."""
    return tuple(fact("outing-not-admitted", text=reason) for reason in why.reasons)


def plan_outing(
    family: Family,
    party: Sequence[Member],
    facts: PlaceFacts,
    day: date,
    *,
    today: date,
    leave_at: datetime | None = None,
    leave_place_at: datetime | None = None,
    grid_minutes: int = USUAL_GRID_MINUTES,
    as_asked: Callable[[DayQuestion], DayQuestion] = lambda question: question,
    entry_paid: bool = False,
) -> Outing | NoOuting:
    """Answer everything about one place on one day.

    Args:
        family: people, car, home, calendars.
        party: who goes; an adult at work that day stays behind where the parent said so.
        facts: what all days at the place share; must cover the day's calendar year.
        day: the date, at home and at the place.
        today: for booking deadlines.
        leave_at: take the leave window that holds this departure; the best plan of all when left out.
        leave_place_at: with it, take just that departure and this leaving time, where the limits allow it.
        grid_minutes: how far apart the departures and leaving times are that are tried [min].
        as_asked: changes what the search is asked, such as on a day that has begun.
        entry_paid: whether entry is paid for, so that no hour is better for its price.

    Returns:
        The outing with all its answers, or why it cannot be.
    """
    place, household = facts.place, family.household
    if day < today:
        return NoOuting(place, day, (fact("outing-over"),))
    if place.currency != household.currency:
        return NoOuting(place, day, (without_rate(place, household),))
    hours = facts.hours_on(day)
    if hours.openness is not Openness.OPEN:
        return NoOuting(place, day, (hours.reason,))
    if (day - today).days < place.opening.book_days_ahead:
        return NoOuting(place, day, (fact("outing-book-ahead", days=place.opening.book_days_ahead),))
    who_goes = family.busy_days.who_goes(party, day)
    party = who_goes.members
    needs, ways = PartyNeeds.of(household, party, day), ways_on(family, party, facts, day)
    busy = family.busy_days.on(day, [member.name for member in party])
    question = day_question(family, needs, facts, day, hours, ways)
    weather_there = weather_of_day(
        facts.outdoors, household, needs.months, DayMinutes(day, household.home.zone)
    )
    question = replace(question, busy=busy, grid_minutes=grid_minutes, weather=weather_there)
    question = as_asked(question)
    own = family.own_figures_for(place.id)
    account = Account(household, place, question.way_there.at(0), question.way_home.at(0), own=own)
    prices = HourlyPrices(family, facts, account, today)
    costs = prices.on(party, day, hours, alike=lambda on: on)
    money = costs.money.entry_paid() if entry_paid else costs.money
    # Where no hour lets anybody in, the till says why at the hour that would be best.
    question = replace(question, money=None if money.lets_nobody_in else money)
    search = plan_day(question)
    if search.best is None:
        return NoOuting(place, day, _why_not(household, facts, question, search), question)
    plan = _meant(question, search, leave_at, leave_place_at) or search.best
    minutes = DayMinutes(day, household.home.zone)
    there = question.way_there.at(minutes.rounded_down(plan.leave_home))
    back = question.way_home.at(minutes.rounded_down(plan.leave_place))
    gate, price_in_doubt = prices.dearest(party, day, plan.enter, plan.leave_place)
    admission = gate.admission(party, other_ways=OTHER_WAYS)
    if isinstance(admission, NoAdmission):
        return NoOuting(place, day, not_admitted(admission))
    cost = with_delays(
        account.cost(party, day, admission, lunch_there=plan.lunch_there, visit=gate.visit),
        costs,
        PlannedTimes(
            minutes.rounded_down(plan.enter), minutes.rounded_down(plan.leave_place), plan.lunch_there
        ),
        household.habits,
        there,
    )
    cheaper = cheaper_hour(question, plan)
    weather = visit_weather(household, facts, question, plan)
    crowd = facts.crowds[day]
    darkness = _darkness(household, day, plan, there, back)
    return Outing(
        place=place,
        day=day,
        party=party,
        way_there=there,
        way_home=back,
        hours=hours,
        question=question,
        search=search,
        plan=plan,
        admission=admission,
        crowd=crowd,
        weather=weather,
        cost=cost,
        hourly_costs=costs,
        cheaper_hour=cheaper,
        generalized_cost=generalized_cost(household, cost.total.likely + plan.felt, crowd.chance),
        notes=(
            *idea_notes(place, needs.months),
            *who_goes.notes,
            *family.busy_days.notes(day),
            *_notes(household, facts, party, day, hours, admission),
            *height_notes(wanted_add_ons(place, own), party, day),
            *clock_notes(day, household.home.zone, plan.enter),
            *weather_notes(
                weather, asked=family.stations is not None, outdoors=place.visit.indoors != "indoors"
            ),
            *darkness,
            *drive_notes(plan, slack(question, plan)),
            *visit_notes(hours, plan),
            *([cheaper.brings] if cheaper else []),
            *([fact("notes-dearer-price", doubt=facts.unknown_break)] if price_in_doubt else []),
            *(_own_stay(family, place) or _stay_note(party, needs.months, place)),
        ),
        cautions=(
            *drive_cautions(there, needs.months),
            *(
                weather_cautions(
                    weather.classes,
                    weather.day.low,
                    weather.high,
                    min(needs.months),
                    outdoors=weather.outdoors > 0,
                    dark=bool(darkness),
                    forecast=weather.forecast is not None,
                )
                if weather
                else ()
            ),
            *(fact("cautions-of-place", text=text) for text in place.visit.cautions),
            *_needs_cautions(party),
        ),
    )


def _why_not(
    household: Household, facts: PlaceFacts, question: DayQuestion, search: DaySearch
) -> tuple[Fact, ...]:
    """Why a search found nothing: the weather, if there would be a plan but for that."""
    if question.weather is None or not question.weather.bars_any:
        return search.collisions
    question = replace(question, weather=question.weather.without_bars())
    anyhow = plan_day(question)
    weather = anyhow.best and visit_weather(household, facts, question, anyhow.best)
    return (barred(weather, household),) if weather else anyhow.collisions


def _meant(
    question: DayQuestion, search: DaySearch, leave_at: datetime | None, leave_place_at: datetime | None
) -> DayPlan | None:
    """The plan that somebody has picked; None where nobody has, or where it cannot be done."""
    if leave_at is None:
        return None
    if leave_place_at is not None:
        picked = plan_choice(question, leave_at, leave_place_at)
        if isinstance(picked, DayPlan):
            return picked
    return next((window.best for window in search.windows if window.first <= leave_at <= window.last), None)


def _holiday_at_home(household: Household, facts: PlaceFacts, day: date) -> list[Fact]:
    """That it is a public holiday where the family lives, but not at the place."""
    home = household.home
    try:
        name = public_holidays(home.country, home.subdivision, (day.year,)).get(day)
    except UnknownName:
        return []
    if not name or day in facts.public_holidays:
        return []
    return [fact("notes-holiday-at-home", name=name)]


def _notes(
    household: Household,
    facts: PlaceFacts,
    party: Sequence[Member],
    day: date,
    hours: DayHours,
    admission: Admission,
) -> tuple[Fact, ...]:
    """What the parent should know beside the figures."""
    notes = [fact("notes-drive", text=note) for note in facts.drive.notes]
    notes += facts.price_notes
    notes += [fact("notes-tickets", text=note) for note in admission.notes]
    if not facts.place.opening.checked_on_site and not isinstance(facts.place, IdeaPlace):
        notes.append(hours.reason)
    notes += _holiday_at_home(household, facts, day)
    if not facts.holidays_known:
        notes.append(fact("notes-holidays-not-known"))
    in_doubt = tuple(member.name for member in party if member.age_in_doubt_on(day))
    if in_doubt:
        notes.append(fact("notes-age-in-doubt", names=in_doubt))
    if not any(member.is_adult_on(day) for member in party):
        notes.append(fact("notes-no-adult"))
    return tuple(notes)


def _own_stay(family: Family, place: Place) -> tuple[Fact, ...]:
    """Where the family's own stay takes the place of the card's."""
    own = family.own_figures_for(place.id)
    if own is None or own.stay_minutes is None:
        return ()
    stay = timedelta(minutes=own.stay_minutes)
    card = timedelta(minutes=place.visit.comfortable_minutes)
    source = own.stay_from or fact("notes-typed-in")
    return (fact("notes-own-stay", own=stay, card=card, source=source),)


def _stay_note(party: Sequence[Member], months: Sequence[int], place: Place) -> tuple[Fact, ...]:
    """Whose age decides how long to stay, where the card tells ages apart."""
    stay = stay_for(place.visit, months)
    if stay.decided_by is None:
        return ()
    return (
        fact(
            "notes-stay-by-age",
            name=party[stay.decided_by].name,
            comfortable=timedelta(minutes=stay.comfortable_minutes),
            shortest=timedelta(minutes=stay.shortest_minutes),
        ),
    )


def _darkness(household: Household, day: date, plan: DayPlan, there: Leg, back: Leg) -> tuple[Fact, ...]:
    """Which part of the drives is in the dark, by the sun where the family lives."""
    drives = [
        TimedDrive(
            leave + timedelta(minutes=leg.load_up_minutes),
            leave + timedelta(minutes=leg.minutes - leg.unload_minutes),
            there=leads_there,
        )
        for leave, leg, leads_there in (
            (plan.leave_home.astimezone(UTC), there, True),
            (plan.leave_place.astimezone(UTC), back, False),
        )
    ]
    return darkness_notes(daylight(household.home.point, day, household.home.zone), drives)


def _needs_cautions(party: Sequence[Member]) -> tuple[Fact, ...]:
    """Needs and allergies that the parent wrote down, to be checked with the place."""
    needy = tuple(member.name for member in party if member.needs)
    return (fact("cautions-needs", names=needy),) if needy else ()
