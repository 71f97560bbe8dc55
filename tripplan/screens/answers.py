"""The planning's answers, worked out once for the same question and kept while the app runs."""

import hashlib
from collections.abc import Sequence
from datetime import date, datetime

import streamlit as st

from tripplan.planning.calendars import DateSpan
from tripplan.planning.choose import Candidate, Ranking, compare, days_in, rank
from tripplan.planning.outing import Family, NoOuting, Outing, place_facts, plan_outing
from tripplan.planning.place import Place

_ANSWERS_KEPT = 24


def _fingerprint(family: Family) -> str:
    """Tells two families' data apart; equal data have equal fingerprints."""
    written = hashlib.sha256(family.household.model_dump_json().encode())
    for form in (
        *family.places,
        *family.school_calendars,
        *family.family_calendars,
        *family.typed_drives,
    ):
        written.update(form.model_dump_json().encode())
    return written.hexdigest()


def compared(
    family: Family, party: Sequence[str], places: Sequence[Place], span: DateSpan, today: date
) -> tuple[Candidate, ...]:
    """Each place on its best day of the span; as `tripplan.planning.choose.compare`."""
    return _compared(
        _fingerprint(family), family, tuple(party), tuple(place.id for place in places), span, today
    )


@st.cache_resource(max_entries=_ANSWERS_KEPT, show_spinner="Working out the outings ...")
def _compared(
    fingerprint: str,  # noqa: ARG001 - stands for the family, which the cache leaves out
    _family: Family,
    party: tuple[str, ...],
    place_ids: tuple[str, ...],
    span: DateSpan,
    today: date,
) -> tuple[Candidate, ...]:
    places = _places(_family, place_ids)
    return compare(_family, _family.party(party), places, days_in(span), today=today)


def ranked(
    family: Family, party: Sequence[str], places: Sequence[Place], span: DateSpan, today: date
) -> Ranking:
    """Every place on every day of the span; as `tripplan.planning.choose.rank`."""
    return _ranked(
        _fingerprint(family), family, tuple(party), tuple(place.id for place in places), span, today
    )


@st.cache_resource(max_entries=_ANSWERS_KEPT, show_spinner="Going through the days ...")
def _ranked(
    fingerprint: str,  # noqa: ARG001 - stands for the family, which the cache leaves out
    _family: Family,
    party: tuple[str, ...],
    place_ids: tuple[str, ...],
    span: DateSpan,
    today: date,
) -> Ranking:
    places = _places(_family, place_ids)
    return rank(_family, _family.party(party), places, days_in(span), today=today)


def planned(
    family: Family,
    party: Sequence[str],
    place: Place,
    day: date,
    today: date,
    leave_at: datetime | None = None,
) -> Outing | NoOuting:
    """One place on one day; as `tripplan.planning.outing.plan_outing`."""
    return _planned(_fingerprint(family), family, tuple(party), place.id, day, today, leave_at)


@st.cache_resource(max_entries=_ANSWERS_KEPT, show_spinner="Planning the day ...")
def _planned(
    fingerprint: str,  # noqa: ARG001 - stands for the family, which the cache leaves out
    _family: Family,
    party: tuple[str, ...],
    place_id: str,
    day: date,
    today: date,
    leave_at: datetime | None,
) -> Outing | NoOuting:
    (place,) = _places(_family, (place_id,))
    facts = place_facts(_family, place, (day.year,))
    return plan_outing(_family, _family.party(party), facts, day, today=today, leave_at=leave_at)


def _places(family: Family, place_ids: tuple[str, ...]) -> tuple[Place, ...]:
    by_id = {place.id: place for place in family.places}
    return tuple(by_id[place_id] for place_id in place_ids)
