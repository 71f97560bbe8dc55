"""With others: several households on one outing, what each pays, how they settle it, and seats."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

import streamlit as st

from tripplan.documents.outings.going_together import HOUSEHOLDS_AT_MOST, GoingTogether, people_listed
from tripplan.errors import Finding, PlanError
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.language.sentences import said, told
from tripplan.planning.compare.choose import days_in
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting
from tripplan.planning.together.sentences import (
    more_fact,
    rules,
    seats_fact,
    settling_facts,
    share_fact,
    total_facts,
)
from tripplan.planning.together.shapes import Together
from tripplan.planning.together.visit import first_open_day, group_begins_at, own_seats
from tripplan.records.opening import Which
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.faults import forget_faults, keep_faults, tell_faults_at
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.drawings import kind_of
from tripplan.screens.look.folds import chip, fold
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import (
    Selection,
    keep,
    kept_party,
    party_in_short,
    party_picker,
    place_and_day,
    taken,
    usual_span,
)
from tripplan.screens.widgets.explain import ticket_lines
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, put, refill
from tripplan.screens.widgets.frame import family_or_stop, places_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import named, refuse, show_notice
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View

PAGE = "together"
_TITLE = "Going with others"
_OWN, _NEW = "own", "new"
_EMPTY = {"name": "", "people": "", "seats": "5", "paid": "0"}
_EXAMPLE = {"name": "The Thistlewoods (invented)", "people": "41, 38, 12, 10, 7, 19 mo", "seats": "7"}
"""What the form says at first where the invented family is shown."""
_LABELS = {
    "households": "Household",
    "households.name": "What is it called?",
    "households.people": "Who comes along, by age?",
    "households.seats": "Seats in its cars",
    "households.paid": "Already paid for everybody",
    "seats": "Seats in our cars",
    "paid": "Already paid for everybody",
}
_ENTRIES = {
    "households": lambda index: f"Household {index + 1}",
    "households.people": lambda index: f"{_LABELS['households.people']} no. {index + 1}",
}

Raw = dict[str, Any]


def render(view: View) -> None:
    """Tell what each household pays and how they settle it; ask who goes together, where and when."""
    family = family_or_stop(view).with_cards_only()
    places_or_stop(family, _TITLE)
    kept = view.records.get(GoingTogether)
    with_others = _with_currency(kept, family.household.currency)
    headline = st.empty()
    headline.title(_TITLE, anchor=False)
    now = taken(view, family) or _suggested(view, family)
    with st.container(horizontal=True, key="chips"):
        where = plain(f"{now.place.name}, {wording.short_day(now.day)}")
        chip(where, "open_outing", lambda: place_and_day(view, family, now, "together"))
        chip(party_in_short(view, family), "open_who", lambda: party_picker(view, family))
    show_notice(PAGE)
    take_back_button(view, PAGE)
    found = None
    if with_others.households:
        found = _found(view, family, with_others, now)
        if isinstance(found, NoOuting):
            st.warning(plain(f"{now.place.name} on {wording.day(now.day)} cannot be done:"))
            st.markdown(bullets(found.reasons))
        elif found is not None:
            own = next(share for share in found.shares if share.group == family.household.name)
            headline.title(
                plain(f"Your part: {wording.money(own.amount)} of {wording.money(found.total)}"), anchor=False
            )
            _result(found, now)
    else:
        st.markdown("Nobody else comes along yet. Add a household to see what each pays.")
    _households(view, family, with_others, kept.revision if kept else 0)
    if isinstance(found, Together):
        _behind_it(view, found)


def _found(
    view: View, family: Family, with_others: GoingTogether, now: Selection
) -> Together | NoOuting | None:
    """What it comes to; None where it cannot be worked out, which is said."""
    names = [family.household.name, *(one.name for one in with_others.households)]
    payer = st.session_state.get(_payer_name(view))
    party = kept_party(view, family)
    try:
        return answers.together(
            family, party, with_others, now.place, now.day, view.today, payer if payer in names else None
        )
    except PlanError as trouble:
        st.warning(plain(f"This cannot be worked out: {trouble}."))
    return None


def _with_currency(kept: StoredDocument[GoingTogether] | None, currency: str) -> GoingTogether:
    """What is on record; figures in another currency than the household's by now count as nothing paid."""
    if kept is None:
        return GoingTogether(currency=currency)
    if kept.value.currency == currency:
        return kept.value
    households = tuple(one.model_copy(update={"paid": Decimal(0)}) for one in kept.value.households)
    return kept.value.model_copy(update={"currency": currency, "households": households, "paid": Decimal(0)})


def _suggested(view: View, family: Family) -> Selection:
    """Before the parent has taken anything: where the smallest group price is, on its first open day."""
    place = min(family.places, key=group_begins_at)
    days = days_in(usual_span(view))
    return Selection(place, first_open_day(family, place, days, view.today) or days[0], None)


def _payer_name(view: View) -> str:
    return f"together_payer_{view.which}"


# --- the households ---------------------------------------------------------------------------------------


def _households(view: View, family: Family, with_others: GoingTogether, revision: int) -> None:
    for index, one in enumerate(with_others.households):
        people = ", ".join(map(str, one.people))
        seats = "no car" if not one.seats else "1 seat" if one.seats == 1 else f"{one.seats} seats"
        part = fold(plain(f"{one.name}: {people}; {seats}"), f"open_household_{index}")
        if part is None:
            continue
        with part:
            on_record: dict[str, FieldValue] = {
                "name": one.name,
                "people": ", ".join(map(str, one.people)),
                "seats": str(one.seats),
                "paid": str(one.paid),
            }
            _household_form(view, with_others, revision, str(index), on_record)
            st.button(
                plain(f"{one.name} does not come along"),
                key=f"remove_household_{index}",
                on_click=_remove,
                args=(view, with_others, revision, index),
            )
    if len(with_others.households) < HOUSEHOLDS_AT_MOST:
        first = not with_others.households
        example = _EXAMPLE if first and view.which is Which.DEMO else {}
        count = len(with_others.households)  # part of the key, so that the form folds away once it is used
        part = st.container() if first else fold("Add a household", f"open_new_household_{count}")
        if part is not None:
            with part:
                _household_form(view, with_others, revision, _NEW, {**_EMPTY, **example})
    own = own_seats(family.household, with_others)
    part = fold("Our own seats and payments", "open_own_part")
    if part is None:
        return
    with part:
        fields = filled(f"together_{view.which}_own", {"seats": str(own), "paid": str(with_others.paid)})
        with form_box(fields):
            for name in fields.names:
                st.text_input(_LABELS[name], key=fields.key(name))
                tell_faults_at(fields, name)
            save_button(
                fields,
                "Save",
                key="save_together_own",
                on_click=_save_own,
                args=(view, with_others, revision, fields),
            )
        show_notice(f"{PAGE}_{_OWN}")


def _household_form(
    view: View, with_others: GoingTogether, revision: int, which: str, on_record: Mapping[str, FieldValue]
) -> None:
    fields = filled(f"together_{view.which}_{which}", on_record)
    with form_box(fields):
        st.text_input(_LABELS["households.name"], key=fields.key("name"))
        tell_faults_at(fields, "name", "households.name")
        st.text_input(
            _LABELS["households.people"],
            key=fields.key("people"),
            placeholder="38, 36, 9, 6, 16 mo",
            help="Ages on the day, with commas between; nobody's name is needed. Under two in months, such "
            "as 16 mo. Where it may change a ticket's price, a status in brackets: 38 (home educator).",
        )
        tell_faults_at(fields, "people", "households.people")
        for name in ("seats", "paid"):
            st.text_input(_LABELS[f"households.{name}"], key=fields.key(name))
            tell_faults_at(fields, name, f"households.{name}")
        save_button(
            fields,
            "Add" if which == _NEW else "Save",
            key=f"save_household_{which}",
            on_click=_save_household,
            args=(view, with_others, revision, which, fields),
        )
    show_notice(f"{PAGE}_{which}")


def _raw(with_others: GoingTogether) -> Raw:
    return with_others.model_dump(mode="json", exclude_none=True)


def _save_household(
    view: View, with_others: GoingTogether, revision: int, which: str, fields: Fields
) -> None:
    typed = fields.typed()
    household: Raw = {}
    for name in ("name", "seats", "paid"):
        put(household, name, typed[name])
    household["people"] = people_listed(typed["people"])
    raw = _raw(with_others)
    index = len(raw["households"]) if which == _NEW else int(which)
    raw["households"][index:] = [household, *raw["households"][index + 1 :]]
    name = household.get("name", "")
    own = view.family.household.name if view.family else ""
    found = [Finding("", "households.name", name, "that is your own household")] if name == own else []
    said = f"{name}: {'added' if which == _NEW else 'saved'}."
    _check_and_save(view, which, fields, raw, revision, said, found)


def _save_own(view: View, with_others: GoingTogether, revision: int, fields: Fields) -> None:
    raw = _raw(with_others)
    for name, value in fields.typed().items():
        put(raw, name, value)
    _check_and_save(view, _OWN, fields, raw, revision, "Seats and payments are saved.", [])


def _check_and_save(
    view: View, which: str, fields: Fields, raw: Raw, revision: int, said: str, found: list[Finding]
) -> None:
    read = read_form(write_toml(raw), "", GoingTogether)
    if found or read.value is None:
        faults = (*found, *read.findings)
        told = named(faults, _LABELS, _ENTRIES)
        keep_faults(fields.form, faults, told)
        refuse(f"{PAGE}_{which}", findings=told)
    elif save_all(view, PAGE, [(read.value, revision)], said):
        forget_faults(fields.form)
        refill(fields.form)


def _remove(view: View, with_others: GoingTogether, revision: int, index: int) -> None:
    gone = with_others.households[index]
    left = tuple(one for one in with_others.households if one is not gone)
    changed = with_others.model_copy(update={"households": left})
    save_all(view, PAGE, [(changed, revision)], f"{gone.name}: taken off.")


# --- the answer -------------------------------------------------------------------------------------------


def _result(found: Together, now: Selection) -> None:
    """What each household pays, and how they settle it."""
    seats, shares = found.seats, found.shares
    with st.container(border=True, key="card_together"):
        parts = [
            (f"{share.group} {wording.money(share.amount)}", float(share.amount.amount)) for share in shares
        ]
        st.html(
            cards.face(
                cards.name(now.place.name, wording.money(found.total), drawing=kind_of(now.place)),
                cards.bar(parts, max(float(found.total.amount), 0.01), "; ".join(said for said, _ in parts)),
                cards.chips(
                    [
                        Chip("day", wording.short_day(now.day)),
                        Chip("crowd", wording.counted(seats.people, "person", "people")),
                        Chip("drive", f"{seats.seats} seats"),
                    ]
                ),
                cards.warning(seats_fact(seats).text) if seats.missing else "",
            )
        )
        st.markdown(bullets(told(map(share_fact, shares))))
    with st.container(border=True, key="card_settle"):
        st.html(cards.face(cards.name("Settle between us", drawing="money")))
        st.markdown(bullets(told(settling_facts(found))))


def _behind_it(view: View, found: Together) -> None:
    """What the answer is made of, folded."""
    name, widget = _payer_name(view), "together_payer"
    if (part := fold("At the ticket counter", "open_counter")) is not None:
        with part:
            usual = "whoever leaves the fewest payments"
            names = [usual, *(share.group for share in found.shares)]
            kept = st.session_state.get(name)
            st.selectbox(
                "Who pays the rest there?",
                names,
                index=names.index(kept) if kept in names else 0,
                key=widget,
                on_change=keep,
                args=(name, widget),
            )
            for order in found.orders:
                if len(found.orders) > 1:
                    st.markdown(plain(f"{wording.listed(order.groups)}:"))
                st.markdown(ticket_lines(order.admission))
                if order.admission.notes:
                    st.markdown(bullets(order.admission.notes))
    if found.more and (part := fold("If more came along", "open_more")) is not None:
        with part:
            st.markdown(bullets(told(more_fact(more, found.shares) for more in found.more)))
    if (part := fold("Seats and safety", "open_seats")) is not None:
        with part:
            st.markdown(plain(seats_fact(found.seats).text))
            for caution in found.cautions:
                st.markdown(plain(said(caution)))
            st.caption(
                "Whoever drives decides who rides along: check seats, insurance and the law where you drive."
            )
    if (part := fold("How the price is shared", "open_rule")) is not None:
        with part:
            st.markdown(plain(" ".join(told((*total_facts(found), *found.rates, *rules(found))))))
            st.caption(
                "Parking, driving and food are not in it. The place has the last word on groups and prices."
            )
