"""Passes: which annual passes pay for the visits of the coming twelve months."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

import streamlit as st

from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.outings.planned_visits import VISITS_AT_MOST, ListedVisit, PlannedVisits
from tripplan.documents.places.offer_sentences import sentence
from tripplan.documents.places.offers import Pass
from tripplan.errors import Finding, PlanError
from tripplan.language import wording
from tripplan.language.sentences import told
from tripplan.planning.family.family import Family
from tripplan.planning.passes.listed import coming_visits, last_day_listed
from tripplan.planning.passes.plan import PassPlan, UnplannedVisit, VisitCost
from tripplan.planning.passes.sentences import (
    break_even_fact,
    counted_facts,
    left_out_fact,
    order_fact,
    total_facts,
    visit_fact,
)
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.faults import forget_faults, keep_faults, tell_faults_at
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.drawings import kind_of
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import place_named, place_names
from tripplan.screens.widgets.fields import Fields, filled, refill
from tripplan.screens.widgets.frame import family_or_stop, places_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import named, refuse, show_notice
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View

PAGE = "passes"
_ADD = "passes_add"
_TITLE = "Is a membership worth it?"
_LABELS = {"party": "Who goes?", "first": "First visit", "times": "How many visits?"}
_EXACT = (
    "Exact for these visits: by the place cards, no other choice of passes and tickets costs less. "
    "The drive, food and extras are left out. A price may change within the year: ask the place."
)
TIMES_AT_MOST = 52
USUAL_TIMES, USUAL_WEEKS_APART = 4, 4
"""What the form for new visits says at first."""
FIRST_VISIT_IN = timedelta(days=10)

KeptVisits = StoredDocument[PlannedVisits] | None


@dataclass(frozen=True)
class _Listed:
    """What is on record, and where a line of the page finds its visit in it."""

    view: View
    kept: KeptVisits

    @property
    def visits(self) -> tuple[ListedVisit, ...]:
        return self.kept.value.visits if self.kept else ()

    @property
    def revision(self) -> int:
        return self.kept.revision if self.kept else 0


def render(view: View) -> None:
    """Say which passes and single visits cost least for the visits that the parent lists."""
    family = family_or_stop(view)
    places_or_stop(family.with_cards_only(), _TITLE)
    records = view.records
    listed = _Listed(view, records.get(PlannedVisits))
    outings = [kept.value for kept in records.all(PlannedOuting).values()]
    coming = coming_visits(family, outings, listed.visits, view.today)
    headline = st.empty()
    headline.title(_TITLE, anchor=False)
    show_notice(PAGE)
    take_back_button(view, PAGE)
    if coming.notes:
        st.warning(bullets(coming.notes))
    plan = None
    if coming.visits:
        try:
            plan = answers.passes_that_pay(family, coming.visits, view.today)
        except PlanError as trouble:
            st.warning(plain(f"This list cannot be worked out: {trouble}."))
    else:
        st.markdown("How often would you go in the coming year, pass or not? Add those visits.")
    if plan is not None:
        headline.title(plain(_answer(plan)), anchor=False)
        _result(plan)
    _add_form(view, family, listed, expanded=not coming.visits)
    if plan is not None:
        _behind_it(plan, listed)
    else:
        _visits_alone(listed)
    _passes_on_cards(family)


# --- visits to add ----------------------------------------------------------------------------------------


def _add_form(view: View, family: Family, listed: _Listed, *, expanded: bool) -> None:
    names = [member.name for member in family.household.members]
    selling = [place.id for place in family.cards if any(isinstance(o, Pass) for o in place.offers)]
    form = f"visits_{view.which}"
    fields = filled(
        form,
        {
            "place": (selling or [family.cards[0].id])[0],
            "first": view.today + FIRST_VISIT_IN,
            "times": USUAL_TIMES,
            "weeks": USUAL_WEEKS_APART,
            "party": names,
        },
    )
    # The key changes with the first visit, so that the form folds away and the answer is in sight.
    part = st.container() if expanded else fold("Add visits", "open_add_visits")
    if part is None:
        return
    with part, form_box(fields):
        st.selectbox(
            "Where to?",
            [place.id for place in family.cards],
            format_func=place_names(family).__getitem__,
            key=fields.key("place"),
        )
        left, middle, right = st.columns(3)
        left.date_input(
            _LABELS["first"],
            min_value=view.today,
            max_value=last_day_listed(view.today),
            key=fields.key("first"),
            format=wording.date_field(),
        )
        middle.number_input(_LABELS["times"], min_value=1, max_value=TIMES_AT_MOST, key=fields.key("times"))
        right.number_input("Weeks between them", min_value=1, max_value=52, key=fields.key("weeks"))
        tell_faults_at(fields, "first")
        tell_faults_at(fields, "times")
        st.pills(_LABELS["party"], names, selection_mode="multi", key=fields.key("party"))
        tell_faults_at(fields, "party")
        save_button(
            fields,
            "Add these visits",
            key="add_visits",
            on_click=_add,
            args=(view, family, listed, fields),
        )
        show_notice(_ADD)


def _add(view: View, family: Family, listed: _Listed, fields: Fields) -> None:
    typed = fields.typed()
    faults = list(_faults(typed, listed, last_day_listed(view.today)))
    if faults:
        told = named(faults, _LABELS)
        keep_faults(fields.form, faults, told)
        refuse(_ADD, findings=told)
        return
    party = tuple(member.name for member in family.household.members if member.name in typed["party"])
    new = [ListedVisit(place=typed["place"], day=day, party=party) for day in _days(typed)]
    again = {(one.place, one.day) for one in new}
    others = [one for one in listed.visits if (one.place, one.day) not in again]
    place = place_named(family, typed["place"])
    count = wording.counted(len(new), "visit")
    said = f"{count} to {place.name if place else typed['place']} listed."
    if save_all(view, PAGE, [(PlannedVisits(visits=(*others, *new)), listed.revision)], said):
        forget_faults(fields.form)
        refill(fields.form)


def _days(typed: dict[str, Any]) -> list[date]:
    return [typed["first"] + timedelta(weeks=typed["weeks"] * turn) for turn in range(typed["times"])]


def _faults(typed: dict[str, Any], listed: _Listed, last: date) -> Iterator[Finding]:
    if not typed["party"]:
        yield Finding("", "party", "", "pick at least one person")
    if typed["first"] is None:
        yield Finding("", "first", "", "pick a day")
    elif (end := _days(typed)[-1]) > last:
        message = f"the last of them would be on {wording.day(end)}; the list reaches to {wording.day(last)}"
        yield Finding("", "times", str(typed["times"]), message)
    if len(listed.visits) + typed["times"] > VISITS_AT_MOST:
        message = f"the list holds at most {VISITS_AT_MOST}, {len(listed.visits)} are on it"
        yield Finding("", "times", str(typed["times"]), message)


# --- the answer -------------------------------------------------------------------------------------------


def _answer(plan: PassPlan) -> str:
    """Whether a membership is worth it, as the headline."""
    if not plan.visits:
        return "None of these visits can be"
    if not plan.orders:
        return f"No membership pays for {wording.counted(len(plan.visits), 'visit')}"
    what = plan.passes[0].offer.name if len(plan.passes) == 1 else f"{len(plan.passes)} passes"
    saved = f": it saves {wording.money(plan.saving)}" if plan.saving and plan.saving.minor > 0 else ""
    return f"Buy {what}{saved}"


def _result(plan: PassPlan) -> None:
    """A card for all the visits, and one for each order of passes."""
    if plan.visits:
        passes = sum(float(order.total.amount) for order in plan.orders)
        entry = float(plan.total.amount) - passes
        whole = max(float((plan.singly or plan.total).amount), passes + entry, 0.01)
        single = "not possible without" if plan.singly is None else f"{wording.money(plan.singly)} without"
        visits = wording.counted(len(plan.visits), "visit")
        with st.container(border=True, key="card_visits"):
            st.html(
                cards.face(
                    cards.name(f"{visits}, all in", wording.money(plan.total), drawing="money"),
                    cards.bar(
                        [("passes", passes), ("tickets and parking", entry)],
                        whole,
                        f"passes and tickets: {wording.money(plan.total)}; {single}",
                        of_whole=True,
                    ),
                    cards.small("passes, tickets and parking", single if plan.orders else ""),
                )
            )
    for number, order in enumerate(plan.orders):
        with st.container(border=True, key=f"card_order_{number}"):
            names = wording.listed(list(dict.fromkeys(one.offer.name for one in order.passes)))
            paid = [
                Chip("book", f"pays from visit {one.pays_after}")
                for one in plan.break_even
                if one.bought and one.pays_on and one.place.id == order.place.id
            ]
            st.html(
                cards.face(
                    cards.name(names, wording.money(order.total), drawing=kind_of(order.place)),
                    cards.small(order.place.name),
                    cards.chips([Chip("day", f"buy {wording.short_day(order.day)}"), *paid]),
                )
            )


def _behind_it(plan: PassPlan, listed: _Listed) -> None:
    """The visits and what the answer is made of, folded."""
    lines: list[VisitCost | UnplannedVisit] = [*plan.visits, *plan.left_out]
    part = fold(f"Your {wording.counted(len(lines), 'visit')}", "open_visits")
    if part is not None:
        with part:
            for line in sorted(lines, key=lambda line: (line.visit.day, line.visit.place.name)):
                text = (visit_fact(line) if isinstance(line, VisitCost) else left_out_fact(line)).text
                _line(text, line.visit.place.id, line.visit.day, listed)
            _clear_button(listed)
    if plan.left_out:
        st.caption(plain(" ".join(told(map(left_out_fact, plan.left_out)))))
    if plan.orders and (part := fold("At the ticket counter", "open_counter")) is not None:
        with part:
            for order in plan.orders:
                st.markdown(plain(order_fact(order).text))
                st.markdown(
                    bullets(
                        f"{line.quantity} x {line.name}: {wording.money(line.total)}" for line in order.lines
                    )
                )
                if order.notes:
                    st.caption(plain(" ".join(order.notes)))
    if (part := fold("When has a pass paid?", "open_break_even")) is not None:
        with part:
            st.markdown(bullets(told([*map(break_even_fact, plan.break_even), *total_facts(plan)])))
            st.caption(plain(" ".join((_EXACT, *plan.notes, *told(counted_facts(plan))))))


def _visits_alone(listed: _Listed) -> None:
    """What is listed, where nothing can be worked out of it."""
    for visit in listed.visits:
        _line(f"{wording.day(visit.day)}: {visit.place}", visit.place, visit.day, listed)
    _clear_button(listed)


def _line(text: str, place_id: str, day: date, listed: _Listed) -> None:
    """One visit, with a button that takes it off the list; a planned outing is changed on Calendar."""
    mine = any((one.place, one.day) == (place_id, day) for one in listed.visits)
    with st.container(border=True, key=f"visit_{place_id}_{day}"):
        st.markdown(plain(text))
        if mine:
            st.button(
                "Take off the list",
                key=f"remove_visit_{place_id}_{day}",
                type="tertiary",
                on_click=_remove,
                args=(listed, place_id, day),
            )
        else:
            st.caption("Planned on Calendar.")


def _remove(listed: _Listed, place_id: str, day: date) -> None:
    left = tuple(one for one in listed.visits if (one.place, one.day) != (place_id, day))
    _save(listed, left, f"The visit on {wording.day(day)} is off the list.")


def _clear_button(listed: _Listed) -> None:
    if listed.visits:
        st.button(
            "Take all listed visits off",
            key="clear_visits",
            on_click=_save,
            args=(listed, (), "The list is empty."),
        )


def _save(listed: _Listed, visits: tuple[ListedVisit, ...], said: str) -> None:
    save_all(listed.view, PAGE, [(PlannedVisits(visits=visits), listed.revision)], said)


def _passes_on_cards(family: Family) -> None:
    lines = [
        f"{place.name}: {sentence(offer, place.currency)}"
        for place in family.cards
        for offer in place.offers
        if isinstance(offer, Pass)
    ]
    part = fold("The passes that your places sell", "open_passes_sold")
    if part is None:
        return
    with part:
        if lines:
            st.markdown(bullets(lines))
        else:
            st.caption("None of your place cards has an annual pass.")
        st.caption("Passes you hold already stand under Household; they count here while they last.")
