"""The planning's answers, worked out once for the same question and kept while the app runs."""

import hashlib
from collections import OrderedDict
from collections.abc import Callable, Mapping, Sequence
from dataclasses import fields, replace
from datetime import date, datetime
from time import monotonic
from typing import Any

import streamlit as st

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.model import Written
from tripplan.documents.outings.going_together import GoingTogether
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.places.idea import IdeaPlace
from tripplan.documents.places.place import Place
from tripplan.documents.study.units import StudyUnit
from tripplan.planning.calendar_entry.settled import as_settled
from tripplan.planning.compare.choose import Candidate, compare, days_in
from tripplan.planning.compare.flips.every_input import what_would_flip
from tripplan.planning.compare.flips.flip import Flip
from tripplan.planning.family.family import Family
from tripplan.planning.on_the_day.rain_plan import RainPlan, rain_plan
from tripplan.planning.outing.outing import USUAL_GRID_MINUTES, NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.passes.plan import PassPlan, PlannedVisit
from tripplan.planning.passes.which_pays import which_pass_pays
from tripplan.planning.sweep.sweeping import sweep, sweeping
from tripplan.planning.sweep.table import DayTable
from tripplan.planning.together.shapes import Together
from tripplan.planning.together.visit import visit_together

_ANSWERS_KEPT = 24
_TABLES_KEPT = 6
_A_MOMENT = 1.0
"""Longer work shows how far it is [s]."""


def fingerprint(family: Family) -> str:
    """Tells two families' data apart, whatever part of it differs; equal data have equal fingerprints."""
    written = hashlib.sha256()
    for part in fields(family):
        written.update(f"{part.name}:{_as_text(getattr(family, part.name))}\n".encode())
    return written.hexdigest()


def _as_text(value: object) -> str:
    if isinstance(value, Written):
        return value.model_dump_json()
    if isinstance(value, Mapping):
        return repr(sorted(value.items()))
    if isinstance(value, tuple):
        return "\n".join(map(_as_text, value))
    return repr(value)


# How two questions are told apart; a place stands in the family's data already, so its id is enough.
_HASHES: dict[str | type[Any], Callable[[Any], Any]] = {
    Family: fingerprint,
    Place: lambda place: place.id,
    IdeaPlace: lambda place: place.id,
    DateSpan: str,
    PlannedVisit: lambda visit: (
        visit.place.id,
        str(visit.day),
        str(visit.at),
        [member.name for member in visit.party],
    ),
    GoingTogether: lambda with_others: with_others.model_dump_json(),
    PlannedOuting: lambda outing: outing.model_dump_json(),
    StudyUnit: lambda unit: unit.model_dump_json(),
    # What of an outing another one is set beside.
    Outing: lambda outing: (
        outing.place.id,
        str(outing.day),
        [member.name for member in outing.party],
        str(outing.cost.total.likely),
    ),
}


def compared(
    family: Family, party: Sequence[str], places: Sequence[Place], span: DateSpan, today: date
) -> tuple[Candidate, ...]:
    """Each place on its best day of the span; as `tripplan.planning.compare.choose.compare`."""
    return _compared(family.asked_between(span.first, span.last), party, places, span, today)


@st.cache_resource(max_entries=_ANSWERS_KEPT, hash_funcs=_HASHES, show_spinner="Working out the outings ...")
def _compared(
    family: Family, party: Sequence[str], places: Sequence[Place], span: DateSpan, today: date
) -> tuple[Candidate, ...]:
    return compare(family, family.party(party), places, days_in(span), today=today)


def flips(
    family: Family, party: Sequence[str], places: Sequence[Place], span: DateSpan, today: date
) -> tuple[Flip, ...]:
    """What would make another one the cheapest; as `what_would_flip`."""
    return _flips(family.asked_between(span.first, span.last), party, places, span, today)


@st.cache_resource(max_entries=_ANSWERS_KEPT, hash_funcs=_HASHES, show_spinner="Trying other prices ...")
def _flips(
    family: Family, party: Sequence[str], places: Sequence[Place], span: DateSpan, today: date
) -> tuple[Flip, ...]:
    candidates = _compared(family, party, places, span, today)
    outings = [candidate.best for candidate in candidates if candidate.best is not None]
    return what_would_flip(family, family.party(party), outings, today=today)


def unit_days(
    family: Family, party: Sequence[str], places: Sequence[Place], span: DateSpan, today: date
) -> DayTable:
    """Every day of a study unit at the places that fit it; as `tripplan.planning.sweep.sweeping.sweep`.

    Beside `swept`, because a term asks for more tables than that keeps, and all of them are small. What is
    planned is left to the programme, which keeps its own outings where they are.
    """
    return _unit_days(family.with_nothing_planned(), party, places, span, today)


@st.cache_resource(max_entries=_ANSWERS_KEPT, hash_funcs=_HASHES, show_spinner="Going through the days ...")
def _unit_days(
    family: Family, party: Sequence[str], places: Sequence[Place], span: DateSpan, today: date
) -> DayTable:
    return sweep(family, family.party(party), places, span, today=today)


@st.cache_resource(show_spinner=False)
def _tables() -> OrderedDict[object, DayTable]:
    """The tables worked out last, newest last."""
    return OrderedDict()


def swept(
    family: Family, party: Sequence[str], places: Sequence[Place], span: DateSpan, today: date
) -> DayTable:
    """Every place on every day of the span; as `tripplan.planning.sweep.sweeping.sweep`.

    Where it takes longer than a moment it shows how far it is. Streamlit ends a page that the parent has
    left when the page next shows something, so the work stops there too.
    """
    family = family.asked_between(span.first, span.last)
    key = (fingerprint(family), tuple(party), tuple(place.id for place in places), str(span), today)
    tables = _tables()
    if key not in tables:
        started, bar = monotonic(), None
        for step in sweeping(family, family.party(party), places, span, today=today):
            if step.table is not None:
                tables[key] = step.table
            elif monotonic() - started > _A_MOMENT:
                bar = bar or st.progress(0.0)
                bar.progress(step.done / step.of, f"Going through the days: {step.done} of {step.of} places")
        if bar is not None:
            bar.empty()
        while len(tables) > _TABLES_KEPT:
            tables.popitem(last=False)
    return tables[key]


def planned(
    family: Family,
    party: Sequence[str],
    place: Place,
    day: date,
    today: date,
    leave_at: datetime | None = None,
    leave_place_at: datetime | None = None,
    grid_minutes: int = USUAL_GRID_MINUTES,
) -> Outing | NoOuting:
    """One place on one day; as `tripplan.planning.outing.outing.plan_outing`.

    An outing on record, or with a departure that is picked, stays as it is when it has begun; one that was
    settled while it was on keeps its times, where these are asked about.
    """
    times = (place.id, day, leave_at, leave_place_at)
    settled = next(
        (one for one in family.planned if (one.place, one.day, one.leave_home, one.leave_place) == times),
        None,
    )
    asked = family.about(place.id, day).asked_between(day, day)
    if leave_at is not None:
        asked = replace(asked, now=None)
    return _planned(asked, party, place, day, today, leave_at, leave_place_at, grid_minutes, settled)


@st.cache_resource(max_entries=_ANSWERS_KEPT, hash_funcs=_HASHES, show_spinner="Planning the day ...")
def _planned(
    family: Family,
    party: Sequence[str],
    place: Place,
    day: date,
    today: date,
    leave_at: datetime | None,
    leave_place_at: datetime | None,
    grid_minutes: int,
    settled: PlannedOuting | None,
) -> Outing | NoOuting:
    facts = place_facts(family, place, (day.year,))
    return plan_outing(
        family,
        family.party(party),
        facts,
        day,
        today=today,
        leave_at=leave_at,
        leave_place_at=leave_place_at,
        grid_minutes=grid_minutes,
        as_asked=(lambda question: question) if settled is None else as_settled(settled),
    )


def if_it_rains(family: Family, outing: Outing, unit: StudyUnit | None, today: date) -> RainPlan | None:
    """Where to go instead; as `tripplan.planning.on_the_day.rain_plan.rain_plan`."""
    asked = family.about(outing.place.id, outing.day).asked_between(outing.day, outing.day)
    return _if_it_rains(asked, outing, unit, today)


@st.cache_resource(max_entries=_ANSWERS_KEPT, hash_funcs=_HASHES, show_spinner="Looking indoors ...")
def _if_it_rains(family: Family, outing: Outing, unit: StudyUnit | None, today: date) -> RainPlan | None:
    return rain_plan(family, outing, unit, today=today)


def passes_that_pay(family: Family, visits: Sequence[PlannedVisit], today: date) -> PassPlan:
    """What to buy for a list of visits; as `tripplan.planning.passes.which_pays.which_pass_pays`."""
    return _passes_that_pay(family.with_nothing_planned(), visits, today)


@st.cache_resource(max_entries=_ANSWERS_KEPT, hash_funcs=_HASHES, show_spinner="Weighing the passes ...")
def _passes_that_pay(family: Family, visits: Sequence[PlannedVisit], today: date) -> PassPlan:
    return which_pass_pays(family, visits, today=today)


def together(
    family: Family,
    party: Sequence[str],
    with_others: GoingTogether,
    place: Place,
    day: date,
    today: date,
    payer: str | None,
) -> Together | NoOuting:
    """Several households at one place; as `tripplan.planning.together.visit.visit_together`."""
    asked = family.about(place.id, day).asked_between(day, day)
    return _together(asked, party, with_others, place, day, today, payer)


@st.cache_resource(max_entries=_ANSWERS_KEPT, hash_funcs=_HASHES, show_spinner="Adding it up ...")
def _together(
    family: Family,
    party: Sequence[str],
    with_others: GoingTogether,
    place: Place,
    day: date,
    today: date,
    payer: str | None,
) -> Together | NoOuting:
    members = family.party(party)
    return visit_together(family, members, with_others, place, day, today=today, payer=payer)
