"""A term's programme: what it keeps to, its outings, and how the parent changes them."""

from collections.abc import Mapping, Sequence

import streamlit as st

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.places.place import Place
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.errors import PlanError
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.planning.calendar_entry.planned_outing import tentative_outings
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing
from tripplan.planning.study.options import Swept, party_of, term_of
from tripplan.planning.study.programme import (
    Programme,
    Term,
    UnitOuting,
    UnitWithout,
    elsewhere,
    programme_of,
    term_from,
)
from tripplan.planning.study.sentences import (
    elsewhere_sentence,
    fit_sentence,
    limit_sentences,
    option_sentence,
    programme_sentences,
    standing_sentence,
)
from tripplan.planning.sweep.table import DayTable
from tripplan.planning.topic_fit import fits_of
from tripplan.reading.typed.amounts import amount_in
from tripplan.records.planned_outings import outings_ever
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.look.folds import fold
from tripplan.screens.study.saving import PAGE, Wanted
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import place_named, place_names, take
from tripplan.screens.widgets.explain import cost_lines, ideas_told
from tripplan.screens.widgets.fields import Fields, filled
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import named, refuse, show_notice
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

_LIMITS = "programme_limits"
_WEIGHED = {"felt": "cost plus hassle", "money": "money alone"}
_LABELS = {"budget": "Budget", "first": "First day of the term", "last": "Last day of the term"}
_ANY = ""


def programme(view: View, family: Family, units: Sequence[StudyUnit], wanted: Wanted) -> None:
    """Work the programme out, show it, and let the parent change it."""
    st.header("The term's outings", anchor=False)
    st.markdown(bullets(limit_sentences(wanted.wishes, units)))
    _limits_form(family, units, wanted)
    outings = [kept.value for kept in view.records.all(PlannedOuting).values()]
    try:
        term = term_from(family, units, wanted.wishes, outings, _swept(view, family), today=view.today)
        found = programme_of(term)
    except PlanError as trouble:
        st.warning(plain(f"No programme can be worked out: {trouble}."))
        return
    names = place_names(family)
    if found.obstacles:
        st.warning(
            "**The outings do not all fit. Any one of these would have to give way:**\n\n"
            + bullets(found.obstacles)
        )
    if found.outings:
        st.markdown(bullets(programme_sentences(found, wanted.wishes)))
        _keep_all(view, family, found)
    # A unit's widgets keep their keys wherever in the order its outing comes to lie.
    numbers = {unit.name: number for number, unit in enumerate(units)}
    for one in found.outings:
        number = numbers[one.unit.name]
        with st.container(border=True, key=f"programme_{number}"):
            _outing(view, family, term, found, one, number, wanted, names)
    for without in found.without:
        number = numbers[without.unit.name]
        with st.container(border=True, key=f"programme_{number}"):
            _without(without, number, wanted)
    if found.outings:
        st.caption(
            "Exact for these days: no other choice of places and days that keeps to the above weighs less. "
            "The two ends of the total are those of all outings added up, as if everything went one way. "
            "Each day was planned for itself; a price, a calendar or the weather may still change it."
        )


def _swept(view: View, family: Family) -> Swept:
    def swept(party: tuple[str, ...], places: tuple[Place, ...], span: DateSpan) -> DayTable:
        return answers.unit_days(family, party, places, span, view.today)

    return swept


# --- what it keeps to -------------------------------------------------------------------------------------


def _limits_form(family: Family, units: Sequence[StudyUnit], wanted: Wanted) -> None:
    wishes = wanted.wishes
    currency = family.household.currency
    names = [unit.name for unit in units]
    fields = filled(
        _LIMITS,
        {
            "budget": "" if wishes.budget is None else str(wishes.budget),
            "careful": wishes.careful,
            "several_a_week": wishes.several_a_week,
            "same_place_again": wishes.same_place_again,
            "weigh": wishes.weigh,
            "without": [name for name in wishes.without if name in names],
        },
    )
    part = fold("Change what the term keeps to", "open_limits")
    if part is None:
        return
    with part:
        with form_box(fields):
            st.text_input(
                f"Budget for all its outings, in {currency}",
                key=fields.key("budget"),
                help="Left empty, there is no limit for the whole.",
            )
            st.checkbox("Be careful: count the high end of every range", key=fields.key("careful"))
            st.checkbox("Two outings may lie in one week", key=fields.key("several_a_week"))
            st.checkbox("A place may be visited twice", key=fields.key("same_place_again"))
            st.radio(
                "As little as can be of",
                list(_WEIGHED),
                format_func=_WEIGHED.__getitem__,
                key=fields.key("weigh"),
                help="What a lost nap, a full house or an hour in the car is worth stands under Household.",
            )
            left, right = st.columns(2)
            # An empty day cannot be filled in anew by its key, so the key says what is on record.
            keys = {name: f"limits_{name}_{getattr(wishes, name)}" for name in ("first", "last")}
            left.date_input(_LABELS["first"], value=wishes.first, key=keys["first"])
            right.date_input(_LABELS["last"], value=wishes.last, key=keys["last"])
            st.multiselect(
                "Units without an outing this time",
                names,
                key=fields.key("without"),
                placeholder="none",
            )
            save_button(fields, "Save", key="save_limits", on_click=_save_limits, args=(wanted, fields, keys))
        show_notice(_LIMITS)


def _save_limits(wanted: Wanted, fields: Fields, day_keys: Mapping[str, str]) -> None:
    typed = fields.typed()
    days = {name: st.session_state[key] for name, key in day_keys.items()}
    kept = wanted.wishes.model_dump(mode="python", include={"currency", "settled", "ruled_out"})
    values = {
        **kept,
        **typed,
        "budget": amount_in(typed["budget"]) or typed["budget"].strip() or None,
        **days,
    }
    read = read_form(write_toml(_given(values)), "", ProgrammeWishes)
    if read.value is None:
        refuse(_LIMITS, findings=named(read.findings, _LABELS))
        return
    wanted.save(read.value, "What the term keeps to is saved.")


def _given(values: Mapping[str, object]) -> dict[str, object]:
    """The values without what is left out, as a file would hold them."""
    return {
        name: [_given(one) if isinstance(one, dict) else one for one in value]
        if isinstance(value, list | tuple)
        else value
        for name, value in values.items()
        if value is not None
    }


# --- one outing -------------------------------------------------------------------------------------------


def _outing(
    view: View,
    family: Family,
    term: Term,
    found: Programme,
    one: UnitOuting,
    number: int,
    wanted: Wanted,
    names: Mapping[str, str],
) -> None:
    option, unit = one.option, one.unit
    st.markdown(f"**{plain(unit.name)}**")
    st.markdown(plain(option_sentence(option, names)))
    fit = next((f for f in fits_of(unit, family.places).places if f.place.id == option.place), None)
    reasons = [fit_sentence(fit)] if fit else []
    if standing := standing_sentence(one):
        reasons.append(standing)
    st.caption(plain(" ".join(reasons)))
    outing = _planned_now(view, family, one)
    if outing is not None:
        for said in ideas_told([outing]):
            st.caption(plain(said))
    with st.container(horizontal=True):
        if one.planned is None and outing is not None:
            st.button(
                "Keep as planned outing",
                key=f"keep_{number}",
                type="primary",
                on_click=_keep,
                args=(view, family, [(unit, outing)]),
            )
        if outing is not None:
            st.button(
                "Take this day",
                key=f"take_{number}",
                on_click=take,
                args=(view, option.place, option.day),
                help="Day plan and Calendar then speak of this place and day.",
            )
        if one.planned is None:
            _change_buttons(one, number, wanted, names)
    if outing is not None:
        part = fold("Why this much?", f"open_why_{number}")
        if part is not None:
            part.markdown(cost_lines(outing.cost))
    if one.planned is None:
        _fix_form(family, unit, number, wanted, names)
        if st.toggle("Show the other places", key=f"elsewhere_{number}"):
            _elsewhere(term, found, one, number, wanted, names)


def _planned_now(view: View, family: Family, one: UnitOuting) -> Outing | None:
    """The outing with all its answers; None where it is planned for people or a day that are gone."""
    place = place_named(family, one.option.place)
    party = one.planned.party if one.planned else party_of(one.unit, family.household)
    known = {member.name for member in family.household.members}
    if place is None or one.option.day < view.today or not known.issuperset(party):
        return None
    outing = answers.planned(family, party, place, one.option.day, view.today)
    return outing if isinstance(outing, Outing) else None


def _change_buttons(one: UnitOuting, number: int, wanted: Wanted, names: Mapping[str, str]) -> None:
    unit, option, wishes = one.unit.name, one.option, wanted.wishes
    place, day = names.get(option.place, option.place), wording.day(option.day)
    if one.settled:
        st.button(
            "Free again",
            key=f"free_{number}",
            on_click=wanted.save,
            args=(wishes.settling(unit, None, None), f"'{unit}' is free again."),
        )
    else:
        st.button(
            "Fix this place and day",
            key=f"fix_{number}",
            on_click=wanted.save,
            args=(
                wishes.settling(unit, option.place, option.day),
                f"'{unit}' is fixed to {place} on {day}.",
            ),
        )
    st.button(
        "Not this day",
        key=f"not_day_{number}",
        on_click=wanted.save,
        args=(
            wishes.ruling_out(unit, option.place, option.day),
            f"'{unit}' does not go to {place} on {day}.",
        ),
    )
    st.button(
        "Not this place",
        key=f"not_place_{number}",
        on_click=wanted.save,
        args=(wishes.ruling_out(unit, option.place), f"'{unit}' does not go to {place}."),
    )
    _allow_again(unit, number, wanted)


def _allow_again(unit: str, number: int, wanted: Wanted) -> None:
    ruled_out = [one for one in wanted.wishes.ruled_out if one.unit == unit]
    if ruled_out:
        st.button(
            f"Allow again what is ruled out ({len(ruled_out)})",
            key=f"allow_{number}",
            on_click=wanted.save,
            args=(wanted.wishes.allowing_again(unit), f"Nothing is ruled out for '{unit}' any more."),
        )


def _fix_form(
    family: Family,
    unit: StudyUnit,
    number: int,
    wanted: Wanted,
    names: Mapping[str, str],
) -> None:
    """Pick a place, a day or both for a unit."""
    settled = wanted.wishes.settled_for(unit.name)
    part = fold("Pick the place or the day yourself", f"open_fix_{number}")
    if part is None:
        return
    with part:
        fitting = [fit.place.id for fit in fits_of(unit, family.places).places]
        others = [place.id for place in family.places if place.id not in fitting]
        on_record = (settled.place, settled.day) if settled else None
        place_key, day_key = (f"fix_{what}_{number}_{on_record}" for what in ("place", "day"))
        with st.form(f"fix_form_{number}"):
            st.selectbox(
                "Where to?",
                [_ANY, *fitting, *others],
                index=[_ANY, *fitting, *others].index(settled.place if settled and settled.place else _ANY),
                format_func={_ANY: "wherever is best", **names}.__getitem__,
                key=place_key,
                help="The places that fit come first.",
            )
            span = term_of(unit, wanted.wishes, wanted.view.today)
            day = settled.day if settled else None
            st.date_input(
                "When? Left empty, whenever is best.",
                value=day if day and span and day in span else None,
                min_value=span.first if span else None,
                max_value=span.last if span else None,
                key=day_key,
            )
            st.form_submit_button(
                "Plan it so",
                key=f"save_fix_{number}",
                on_click=_fix,
                args=(wanted, unit.name, place_key, day_key),
            )


def _fix(wanted: Wanted, unit: str, place_key: str, day_key: str) -> None:
    place, day = st.session_state[place_key] or None, st.session_state[day_key]
    said = f"'{unit}' is planned as you picked." if place or day else f"'{unit}' is free again."
    wanted.save(wanted.wishes.settling(unit, place, day), said)


def _elsewhere(
    term: Term, found: Programme, one: UnitOuting, number: int, wanted: Wanted, names: Mapping[str, str]
) -> None:
    others = elsewhere(term, found, one.unit.name)
    if not others:
        st.caption("No other place would leave a day for everything else.")
    for turn, other in enumerate(others):
        st.markdown(plain(elsewhere_sentence(other, names)))
        place = names.get(other.option.place, other.option.place)
        st.button(
            plain(f"Go to {place} instead"),
            key=f"instead_{number}_{turn}",
            on_click=wanted.save,
            args=(
                wanted.wishes.settling(one.unit.name, other.option.place, None),
                f"'{one.unit.name}' goes to {place}.",
            ),
        )


def _without(without: UnitWithout, number: int, wanted: Wanted) -> None:
    unit = without.unit
    st.markdown(f"**{plain(unit.name)}**: no outing.")
    st.markdown(bullets(f"{wording.capital(reason)}." for reason in without.reasons))
    with st.container(horizontal=True):
        if wanted.wishes.settled_for(unit.name):
            st.button(
                "Free again",
                key=f"free_{number}",
                on_click=wanted.save,
                args=(wanted.wishes.settling(unit.name, None, None), f"'{unit.name}' is free again."),
            )
        _allow_again(unit.name, number, wanted)


# --- keeping it -------------------------------------------------------------------------------------------


def _keep_all(view: View, family: Family, found: Programme) -> None:
    free = [one for one in found.outings if one.planned is None]
    pairs = [(one.unit, _planned_now(view, family, one)) for one in free]
    ready = [(unit, outing) for unit, outing in pairs if outing is not None]
    if len(ready) > 1:
        st.button(
            f"Keep all {len(ready)} as planned outings",
            key="keep_all",
            on_click=_keep,
            args=(view, family, ready),
            help="They then stand on the Calendar page, still open, with a file for your calendar.",
        )


def _keep(view: View, family: Family, kept: Sequence[tuple[StudyUnit, Outing]]) -> None:
    """Put outings of the programme on record as planned, each under its unit."""
    ever = outings_ever(view.records)
    planned = tentative_outings(
        kept, family.household, before=ever.before, ids_taken=ever.ids, at=view.services.clock()
    )
    said = (
        f"{len(planned)} outings are planned; Calendar has their entries."
        if len(planned) > 1
        else f"{kept[0][1].place.name} on {wording.day(kept[0][1].day)} is planned; Calendar has its entry."
    )
    save_all(view, PAGE, [(outing, ever.revision_of(outing)) for outing in planned], said)
