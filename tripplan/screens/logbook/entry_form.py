"""The form that is filled in after an outing, on the phone in two minutes."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, Protocol

import streamlit as st

from tripplan.documents.family.household import Household
from tripplan.documents.field_spec import asked
from tripplan.documents.logbook.as_planned import AsPlanned
from tripplan.documents.logbook.entry import LogbookEntry, Paid, new_entry_id
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.errors import Finding
from tripplan.files.cards.logbook_file import entry_from_values
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.as_planned import as_planned
from tripplan.planning.logbook.draft import PAID_FOR, draft, filled_as_planned, planned_for
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.drawing import draw
from tripplan.screens.forms.form import save
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Question, Setting, in_order
from tripplan.screens.logbook.typed_entry import (
    ENTRY,
    SOMEWHERE_ELSE,
    about_child,
    about_nap,
    children_in,
    entry_values,
    fuel_unit,
    nap_lines,
    on_record,
)
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.choices import place_named, place_names
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, refill
from tripplan.screens.widgets.lasting import let_go, let_last
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse
from tripplan.screens.widgets.view import View

PAGE = "logbook"
KeptEntries = Mapping[str, StoredDocument[LogbookEntry]]
KeptOutings = Mapping[str, StoredDocument[PlannedOuting]]

_NEW, _CHANGE = "new", "change"
_CLOCKS = ("left_home", "arrived", "left_place", "home_again")
_FIRST = ("receipts_total", "home_again", "outdoors", "fullness")
"""What is asked of every outing; the rest is a step further."""
_LEARNED = "learned"
"""A field of the form alone: what everybody learned."""


class _Ask(Protocol):
    """Draws some questions."""

    def __call__(
        self, *names: str, listed: Sequence[Question] = ENTRY, examples: Mapping[str, str] | None = None
    ) -> None:
        """The questions of these names; all that are listed where no name is given."""


def _opened(view: View) -> str:
    return f"logbook_open_{view.which}"


def open_new(view: View, planned_id: str = "") -> None:
    """Open the form for a planned outing, or for one that was never planned here."""
    let_last({_opened(view): (_NEW, planned_id, False)})
    refill(_form_name(view))


def open_change(view: View, entry_id: str) -> None:
    """Open the form for an entry that is in the logbook."""
    let_last({_opened(view): (_CHANGE, entry_id, False)})
    refill(_form_name(view))


def close(view: View) -> None:
    """Close the form."""
    let_go(_opened(view))


def _fill_as_planned(view: View) -> None:
    what, key, _ = st.session_state[_opened(view)]
    let_last({_opened(view): (what, key, True)})
    refill(_form_name(view))


def _form_name(view: View) -> str:
    return f"entry_{view.which}"


def open_form(view: View, family: Family, entries: KeptEntries, outings: KeptOutings) -> bool:
    """Show the form where it is open.

    Args:
        view: whose records.
        family: the family in use.
        entries: what is in the logbook.
        outings: what is planned.

    Returns:
        Whether it is open.
    """
    opened = st.session_state.get(_opened(view))
    if opened is None:
        return False
    what, key, as_it_was = opened
    if what == _CHANGE:
        if key not in entries:
            return False
        kept: StoredDocument[LogbookEntry] | None = entries[key]
        shown = entries[key].value
    else:
        kept, shown = None, _new_draft(view, family, entries, outings, key)
    _draw(view, family, filled_as_planned(shown) if as_it_was else shown, kept)
    return True


def _new_draft(
    view: View, family: Family, entries: KeptEntries, outings: KeptOutings, planned_id: str
) -> LogbookEntry:
    planned = outings[planned_id].value if planned_id in outings else None
    blank = draft(
        family.household,
        view.today,
        place=place_named(family, planned.place) if planned else None,
        planned=planned,
        said=as_planned(family, planned) if planned else None,
        ids_taken=entries.keys(),
    )
    # A child's line that nobody touches would count as a day of instruction of which nothing is told.
    return blank.model_copy(update={"children": tuple(child for child in blank.children if child.subjects)})


def _draw(view: View, family: Family, shown: LogbookEntry, kept: StoredDocument[LogbookEntry] | None) -> None:
    household, said = family.household, shown.as_planned
    unnamed = kept is None and not shown.planned
    at_first = on_record(shown, household, unnamed=unnamed)
    fields = filled(_form_name(view), at_first if kept else {**at_first, _LEARNED: ""})
    setting = _setting(family, shown)

    def ask(
        *names: str, listed: Sequence[Question] = ENTRY, examples: Mapping[str, str] | None = None
    ) -> None:
        draw(fields, in_order(listed, names), setting, examples)

    st.title(_title(shown, kept, unnamed=unnamed), anchor=False)
    if said is not None and kept is None:
        st.button(
            say("afterwards-as-planned"),
            key="fill_as_planned",
            on_click=_fill_as_planned,
            args=(view,),
            help=say("afterwards-as-planned-help"),
        )
    examples = _as_planned(said, household)
    with form_box(fields):
        if unnamed:
            ask("place", "title", "day")
        ask(*_FIRST, examples=examples)
        if kept is None:
            st.text_area(
                say("afterwards-learned"),
                key=fields.key(_LEARNED),
                help=say("afterwards-learned-help"),
                height="content",
            )
        more = fold(say("afterwards-more"), f"open_more_{shown.id}")
        if more is not None:
            with more:
                _more(ask, fields, shown, household, examples, unnamed=unnamed)
        save_button(
            fields,
            say("afterwards-save"),
            key="save_logbook_entry",
            on_click=_save,
            args=(view, family, fields, at_first, shown, kept),
        )
    st.button(
        say("afterwards-close-unsaved"), key="close_entry", type="tertiary", on_click=close, args=(view,)
    )


def _title(shown: LogbookEntry, kept: StoredDocument[LogbookEntry] | None, *, unnamed: bool) -> str:
    if unnamed:
        return say("afterwards-how-was-yours")
    day = wording.short_day(shown.day)
    return plain(
        f"{shown.title}, {day}" if kept else say("afterwards-how-was-on", place=shown.title, day=day)
    )


def _more(
    ask: _Ask,
    fields: Fields,
    shown: LogbookEntry,
    household: Household,
    examples: Mapping[str, str],
    *,
    unnamed: bool,
) -> None:
    """Everything that few outings need. What is left empty counts as unknown, never as zero."""
    ask(*(() if unnamed else ("place", "title", "day")), "party")
    st.markdown(f"**{say('afterwards-times')}**")
    ask(*_CLOCKS[:-1], examples=examples)
    st.markdown(f"**{say('afterwards-money')}**")
    for kind, word in asked(Paid, "kind").spoken().words.items():
        st.text_input(word, key=fields.key(f"paid_{kind}"), placeholder=examples.get(f"paid_{kind}"))
    ask("food")
    st.markdown(f"**{say('afterwards-car')}**")
    ask("km", "odometer_out_km", "odometer_home_km", examples=examples)
    st.text_input(
        say(
            "afterwards-car-took", what=asked(LogbookEntry, "fuel").spoken().label, unit=fuel_unit(household)
        ),
        key=fields.key("fuel"),
        help=say("afterwards-car-took-help"),
    )
    said = shown.as_planned
    for name, naps in nap_lines(household, shown).items():
        st.markdown(f"**{plain(say('afterwards-nap-of', name=name))}**")
        planned = [nap.kept_minutes for nap in said.naps if nap.member == name] if said else []
        for number in range(len(naps)):
            usual = say("afterwards-no-nap")
            if planned[number : number + 1]:
                usual = say("afterwards-planned-minutes", minutes=planned[number])
            which = say("afterwards-nap-of", name=name) + (f" {number + 1}" if number else "")
            minutes, where = about_nap(name, number)
            called = replace(minutes.asked, label=f"{plain(which)}, {minutes.asked.spoken().label}", code="")
            ask(listed=(replace(minutes, asked=called), where), examples={minutes.name: usual})
    for name in children_in(shown, household):
        st.markdown(f"**{plain(name)}**")
        ask(listed=about_child(name))
    st.markdown(f"**{say('afterwards-notes')}**")
    ask("study_unit", "away", "weather", "notes")


def _setting(family: Family, shown: LogbookEntry) -> Setting:
    places = {SOMEWHERE_ELSE: say("afterwards-elsewhere"), **place_names(family)}
    if shown.place and shown.place not in places:
        places[shown.place] = shown.title
    people = dict.fromkeys([*(member.name for member in family.household.members), *shown.party])
    offered = {"places": places, "people": {name: name for name in people}}
    return Setting(family.household.units, shown.currency, offered)


def _as_planned(said: AsPlanned | None, household: Household) -> dict[str, str]:
    """What the plan had said, as it stands in the empty fields."""
    if said is None:
        return {}
    planned = {"receipts_total": say("afterwards-plan-said", what=said.likely_total)}
    for kind in PAID_FOR:
        amount = planned_for(said, kind)
        if amount:
            planned[f"paid_{kind}"] = say("afterwards-plan-said", what=amount)
    moments = (said.wheels_turn or said.leave_home, said.arrive, said.leave_place, said.home)
    planned |= {name: say("afterwards-plan-said", what=at) for name, at in zip(_CLOCKS, moments, strict=True)}
    if said.km:
        planned["km"] = say("afterwards-plan-said", what=wording.distance(said.km, household.units))
    return planned


def _save(
    view: View,
    family: Family,
    fields: Fields,
    at_first: Mapping[str, FieldValue],
    before: LogbookEntry,
    kept: StoredDocument[LogbookEntry] | None,
) -> None:
    typed = fields.typed()
    _spread(str(typed.pop(_LEARNED, "")).strip(), typed, at_first, children_in(before, family.household))
    if typed["day"] is None:
        refuse(fields.form, findings=[Finding("", say("afterwards-day"), "", say("afterwards-pick-day"))])
        return
    entry_id = before.id
    if kept is None:
        title = typed["place"] or str(typed["title"])
        entry_id = new_entry_id(typed["day"], title, set(view.records.all(LogbookEntry)))
    values, found = entry_values(typed, at_first, before, family, entry_id)
    read = entry_from_values(values, view.today, family.household)
    said = say("afterwards-logged", place=str(values["title"]), day=typed["day"])
    revision = kept.revision if kept else 0
    if save(view, fields.form, read, values, LogbookEntry, revision, said, found, told_at=PAGE):
        close(view)


def _spread(
    learned: str, typed: dict[str, Any], at_first: Mapping[str, FieldValue], children: Sequence[str]
) -> None:
    """Write what all learned to each child of school age of whom nothing is written; else to the notes."""
    taught = [name for name in children if at_first[f"{name}_counts_as_day"] and name in typed["party"]]
    for field in [f"{name}_learned" for name in taught] or ["notes"]:
        typed[field] = typed[field] or learned
