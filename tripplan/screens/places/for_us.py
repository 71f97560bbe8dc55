"""What entry at a place comes to for the whole household, worked out whether or not the card is saved."""

from collections.abc import Sequence, Set
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

import streamlit as st

from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.documents.calendars.local_days import LocalDay
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.language.sentences import Fact, fact, say
from tripplan.planning.admission.add_on_limits import height_notes
from tripplan.planning.admission.cheapest import OTHER_WAYS, Gate
from tripplan.planning.admission.result import Admission, NoAdmission, OtherWay
from tripplan.planning.admission.what_if import what_changes_it
from tripplan.planning.cost.account import wanted_add_ons
from tripplan.planning.cost.driving import seats_in_a_car
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.local_days import place_holidays
from tripplan.planning.holidays.schools import days_out_of_school
from tripplan.planning.opening.hours import DayHours, Openness, hours_on, open_days
from tripplan.planning.outing.sentences import purchase_sentence
from tripplan.screens.widgets.answers import fingerprint
from tripplan.screens.widgets.explain import ticket_lines
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.view import View

LOOK_AHEAD = timedelta(days=366)
_DAY = timedelta(days=1)
_MORNING = time(10)
_ANSWERS_KEPT = 96


@dataclass(frozen=True)
class ForUs:
    """What entry comes to for the household on one day.

    Attributes:
        day: the day asked about; None where the place does not open within a year.
        arrival: when the party is at the gate, by the clock of the place; None where it is closed.
        closed: why it cannot be visited that day; None where it can.
        answer: what to buy, or why nobody may enter; None where it is closed.
        changes: what would change the price, one sentence each.
        heights: whose height is asked for, or rules out what is wanted beside entry.
    """

    day: date | None
    arrival: datetime | None = None
    closed: Fact | None = None
    answer: Admission | NoAdmission | None = None
    changes: tuple[str, ...] = ()
    heights: tuple[Fact, ...] = ()


def calendar_days(
    place: Place,
    schools: Sequence[SchoolCalendar],
    first: date,
    last: date,
    local_days: Sequence[LocalDay] = (),
) -> tuple[Set[date], Set[date]]:
    """Public holidays that a place keeps, and days out of school near it.

    A country whose holidays are not on record has none here; PH on the card then stands for no day.

    Args:
        place: the card.
        schools: calendars of districts.
        first: the first date that matters.
        last: the last one.
        local_days: what the parent listed; those that the place keeps like a public holiday count.
    """
    holidays = place_holidays(place, local_days, range(first.year, last.year + 1))
    return holidays.kept.keys(), days_out_of_school(schools, place.where.point, first, last + _DAY)


def next_open_day(family: Family, place: Place, today: date) -> date | None:
    """The first day from tomorrow on that the place opens and can still be booked; None within a year."""
    first = today + _DAY * max(1, place.opening.book_days_ahead)
    last = first + LOOK_AHEAD
    holidays, out = calendar_days(place, family.school_calendars, first, last, family.local_days)
    for day in open_days(place, first, last, holidays, out):
        if hours_on(place, day, holidays, out).openness is Openness.OPEN:
            return day
    return None


def for_us(family: Family, place: Place, day: date | None, today: date) -> ForUs:
    """What entry comes to for everybody in the household.

    Args:
        family: who, with which passes; other places grant entry by theirs.
        place: the card, perhaps not saved yet.
        day: the day; the next open one when left out.
        today: the day the question is asked.
    """
    asked = day or next_open_day(family, place, today)
    if asked is None:
        return ForUs(None, closed=fact("places-not-within-a-year"))
    holidays, out = calendar_days(place, family.school_calendars, asked, asked, family.local_days)
    hours = hours_on(place, asked, holidays, out)
    if hours.openness is not Openness.OPEN:
        return ForUs(asked, closed=hours.reason)
    if (asked - today).days < place.opening.book_days_ahead:
        return ForUs(asked, closed=fact("places-must-be-booked", days=place.opening.book_days_ahead))
    arrival = _arrival(hours)
    household = family.household
    wanted = wanted_add_ons(place, family.own_figures_for(place.id))
    gate = Gate(
        place,
        arrival,
        today,
        household=frozenset(member.name for member in household.members),
        held=household.passes,
        public_holidays=holidays,
        days_out_of_school=out,
        other_places=tuple(other for other in family.places if other.id != place.id),
        car_seats=seats_in_a_car(household),
        add_ons=wanted,
    )
    answer = gate.admission(household.members, other_ways=OTHER_WAYS)
    changes = what_changes_it(gate, household.members)
    heights = tuple(height_notes(wanted, household.members, asked))
    return ForUs(
        asked,
        arrival,
        None,
        answer,
        tuple(change.sentence for change in changes),
        heights,
    )


def _arrival(hours: DayHours) -> datetime:
    """Ten in the morning, or as soon after it as people are let in; before it only where it must be."""
    if hours.entry_times:
        return next((entry for entry in hours.entry_times if entry.time() >= _MORNING), hours.entry_times[-1])
    for span in hours.spans:
        ten = datetime.combine(span.opens.date(), _MORNING, span.opens.tzinfo)
        if ten <= span.last_entry:
            return max(ten, span.opens)
    return hours.spans[-1].last_entry


@st.cache_resource(
    max_entries=_ANSWERS_KEPT,
    hash_funcs={Family: fingerprint, Place: Place.model_dump_json},
    show_spinner=False,
)
def _answered(family: Family, place: Place, day: date | None, today: date) -> ForUs:
    return for_us(family, place, day, today)


def for_us_in_short(family: Family, place: Place, today: date) -> str:
    """What entry comes to for the household on the next open day, in one sentence."""
    told = _answered(family, place, None, today)
    if told.answer is None or told.arrival is None:
        return say("places-for-us-closed", why=told.closed or "")
    day = told.arrival.date()
    if isinstance(told.answer, NoAdmission):
        return say("places-not-all-of-us", day=day)
    return say("places-for-us-short", price=told.answer.total, day=day)


def show_for_us(view: View, family: Family, place: Place, spot: str) -> str:
    """Show what entry comes to for the household, on the next open day or one that is picked.

    Args:
        view: gives today.
        family: who.
        place: the card, perhaps not saved yet.
        spot: part of the date field's key.

    Returns:
        The same in one sentence.
    """
    picked = st.date_input(
        say("places-for-us-day"),
        value=None,
        min_value=view.today,
        max_value=view.today + LOOK_AHEAD,
        format=wording.date_field(),
        key=f"{spot}_day",
        help=say("places-for-us-day-help"),
    )
    told = _answered(family, place, picked, view.today)
    if told.answer is None or told.arrival is None:
        why = told.closed or ""
        said = (
            say("places-closed-on", day=told.day, why=why)
            if told.day
            else say("places-for-us-closed", why=why)
        )
        st.info(plain(said))
        return said
    day, clock = told.arrival.date(), told.arrival.time()
    if isinstance(told.answer, NoAdmission):
        said = say("places-not-all-of-us-at", day=day, clock=clock)
        st.warning(f"**{plain(said)}**\n\n{bullets(map(str, told.answer.reasons))}")
        return said
    said = say("places-for-us-is", price=told.answer.total, day=day, clock=clock)
    st.markdown(f"**{plain(said)}**")
    _show_admission(told.answer, told.changes)
    if told.heights:
        st.markdown(bullets(note.text for note in told.heights))
    return said


def _show_admission(admission: Admission, changes: Sequence[str]) -> None:
    st.markdown(ticket_lines(admission))
    if admission.why_not_single_tickets:
        st.markdown(plain(admission.why_not_single_tickets))
    if admission.notes:
        st.markdown(bullets(admission.notes))
    if admission.other_ways:
        st.markdown(f"**{say('places-next-best')}**")
        st.markdown(bullets(_other_way(way) for way in admission.other_ways))
    if changes:
        st.markdown(f"**{say('places-what-changes')}**")
        st.markdown(bullets(changes))


def _other_way(way: OtherWay) -> str:
    bought = "; ".join(purchase_sentence(purchase) for purchase in way.purchases)
    if way.costs_more.amount:
        return say("places-way-more", price=way.total, more=way.costs_more, what=bought)
    return say("places-way-same", price=way.total, what=bought)
