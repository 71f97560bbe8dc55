"""With others: several households on one outing, what each pays, seats, and who owes whom."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

import streamlit as st

from tripplan.documents.outings.going_together import HOUSEHOLDS_AT_MOST, GoingTogether, people_listed
from tripplan.documents.places.place import Place
from tripplan.errors import Finding, PlanError
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.language.sentences import said
from tripplan.planning.admission.result import NoAdmission
from tripplan.planning.compare.choose import days_in
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting
from tripplan.planning.together.sentences import (
    more_sentence,
    seats_sentence,
    settling_sentences,
    share_sentence,
    total_sentence,
)
from tripplan.planning.together.shapes import Together
from tripplan.planning.together.split import NOT_ALONE_RULE, RULE
from tripplan.planning.together.visit import first_open_day, group_begins_at, own_seats
from tripplan.records.opening import Which
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import (
    Selection,
    party_picker,
    place_and_day,
    place_named,
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
    """Ask who goes together and where, and tell what everybody pays."""
    family = family_or_stop(view).with_cards_only()
    st.title("Going with others")
    places_or_stop(family)
    kept = view.records.get(GoingTogether)
    with_others = _with_currency(kept, family.household.currency)
    settled = _place_and_day(view, family)
    st.header("Who goes together", anchor=False)
    party = party_picker(view, family)
    show_notice(PAGE)
    take_back_button(view, PAGE)
    _households(view, family, with_others, kept.revision if kept else 0)
    if not with_others.households:
        st.info("Nobody else comes along yet. Add a household to see what everybody pays, and who owes whom.")
        return
    names = [family.household.name, *(one.name for one in with_others.households)]
    payer = _payer(names)
    try:
        found = answers.together(family, party, with_others, settled.place, settled.day, view.today, payer)
    except PlanError as trouble:
        st.warning(plain(f"This cannot be worked out: {trouble}."))
        return
    if isinstance(found, NoOuting):
        st.warning(plain(f"{settled.place.name} on {wording.day(settled.day)} cannot be done:"))
        st.markdown(bullets(found.reasons))
        return
    _result(found, settled)


def _with_currency(kept: StoredDocument[GoingTogether] | None, currency: str) -> GoingTogether:
    """What is on record; figures in another currency than the household's by now count as nothing paid."""
    if kept is None:
        return GoingTogether(currency=currency)
    if kept.value.currency == currency:
        return kept.value
    households = tuple(one.model_copy(update={"paid": Decimal(0)}) for one in kept.value.households)
    return kept.value.model_copy(update={"currency": currency, "households": households, "paid": Decimal(0)})


def _place_and_day(view: View, family: Family) -> Selection:
    """Ask for the place and the day; at first, what the parent took elsewhere."""
    now = taken(view, family) or _suggested(view, family)
    place_id, day = place_and_day(view, family, now, "together")
    return Selection(place_named(family, place_id) or now.place, day, None)


def _suggested(view: View, family: Family) -> Selection:
    """Before the parent has taken anything: where the smallest group price is, on its first open day."""
    place = min(family.places, key=group_begins_at)
    days = days_in(usual_span(view))
    return Selection(place, first_open_day(family, place, days, view.today) or days[0], None)


def _payer(names: list[str]) -> str | None:
    usual = "whoever leaves the fewest payments"
    picked = st.selectbox("Who pays the rest at the ticket counter?", [usual, *names], key="together_payer")
    return None if picked == usual else picked


# --- the households ---------------------------------------------------------------------------------------


def _households(view: View, family: Family, with_others: GoingTogether, revision: int) -> None:
    for index, one in enumerate(with_others.households):
        people = ", ".join(map(str, one.people))
        seats = "no car" if not one.seats else "1 seat" if one.seats == 1 else f"{one.seats} seats"
        with st.expander(plain(f"{one.name}: {people}; {seats}"), key=f"open_household_{index}"):
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
        with st.expander("Add a household", expanded=first, key=f"open_new_household_{count}"):
            _household_form(view, with_others, revision, _NEW, {**_EMPTY, **example})
    own = own_seats(family.household, with_others)
    with st.expander("Our own cars, and what we have paid already", key="open_own_part"):
        fields = filled(f"together_{view.which}_own", {"seats": str(own), "paid": str(with_others.paid)})
        with form_box(fields):
            for name in fields.names:
                st.text_input(_LABELS[name], key=fields.key(name))
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
        st.text_input(
            _LABELS["households.people"],
            key=fields.key("people"),
            placeholder="38, 36, 9, 6, 16 mo",
            help="Ages on the day, with commas between; nobody's name is needed. Under two in months, such "
            "as 16 mo. Where it may change a ticket's price, a status in brackets: 38 (home educator).",
        )
        st.text_input(_LABELS["households.seats"], key=fields.key("seats"))
        st.text_input(_LABELS["households.paid"], key=fields.key("paid"))
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
    if _check_and_save(
        view, which, raw, revision, f"{name}: {'added' if which == _NEW else 'saved'}.", found
    ):
        refill(fields.form)


def _save_own(view: View, with_others: GoingTogether, revision: int, fields: Fields) -> None:
    raw = _raw(with_others)
    for name, value in fields.typed().items():
        put(raw, name, value)
    _check_and_save(view, _OWN, raw, revision, "Seats and payments are saved.", [])


def _check_and_save(view: View, which: str, raw: Raw, revision: int, said: str, found: list[Finding]) -> bool:
    read = read_form(write_toml(raw), "", GoingTogether)
    if found or read.value is None:
        faults = named((*found, *read.findings), _LABELS, _ENTRIES)
        refuse(f"{PAGE}_{which}", findings=faults)
        return False
    return save_all(view, PAGE, [(read.value, revision)], said)


def _remove(view: View, with_others: GoingTogether, revision: int, index: int) -> None:
    gone = with_others.households[index]
    left = tuple(one for one in with_others.households if one is not gone)
    changed = with_others.model_copy(update={"households": left})
    save_all(view, PAGE, [(changed, revision)], f"{gone.name}: taken off.")


# --- the answer -------------------------------------------------------------------------------------------


def _result(found: Together, settled: Selection) -> None:
    place: Place = settled.place
    st.header(plain(f"{place.name} on {wording.day(settled.day)}"), anchor=False)
    people, total = st.columns(2)
    people.metric("People", found.seats.people)
    total.metric("Entry for all", wording.money(found.total))
    st.markdown(plain(" ".join((total_sentence(found), *found.rates))))
    st.header("What each household pays", anchor=False)
    st.markdown(bullets(map(share_sentence, found.shares)))
    rules = [RULE] if found.total.minor else []
    if any(isinstance(share.alone, NoAdmission) for share in found.shares):
        rules.append(NOT_ALONE_RULE)
    st.caption(
        plain(
            " ".join([*rules, "Parking, driving and food are not in it; each car and household has its own."])
        )
    )
    with st.expander("At the ticket counter"):
        for order in found.orders:
            if len(found.orders) > 1:
                st.markdown(plain(f"{wording.listed(order.groups)}:"))
            st.markdown(ticket_lines(order.admission))
            if order.admission.notes:
                st.markdown(bullets(order.admission.notes))
    if found.more:
        st.header("If more came along", anchor=False)
        st.markdown(bullets(more_sentence(more, found.shares) for more in found.more))
    st.header("Who pays whom", anchor=False)
    st.markdown(bullets(settling_sentences(found)))
    st.header("Seats", anchor=False)
    tell_seats = st.warning if found.seats.missing else st.markdown
    tell_seats(plain(seats_sentence(found.seats)))
    for caution in found.cautions:
        st.markdown(plain(said(caution)))
    st.caption(
        "The place has the last word on groups and prices, and whoever drives on who may ride along: check "
        "seats, insurance and the law where you drive."
    )
