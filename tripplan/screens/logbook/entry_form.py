"""The form that is filled in after an outing, on the phone in two minutes."""

from collections.abc import Mapping

import streamlit as st

from tripplan.documents.family.member import SleepsIn
from tripplan.documents.logbook.as_planned import AsPlanned
from tripplan.documents.logbook.crowd_note import Fullness
from tripplan.documents.logbook.entry import LogbookEntry, new_entry_id
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.errors import Finding
from tripplan.files.logbook_file import entry_from_values
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.as_planned import as_planned
from tripplan.planning.logbook.draft import PAID_FOR, draft, filled_as_planned, planned_for
from tripplan.records.store import Kept
from tripplan.screens.logbook.typed_entry import (
    CLOCKS,
    SOMEWHERE_ELSE,
    children_in,
    entry_values,
    fuel_unit,
    nap_lines,
    on_record,
    subject_lines,
)
from tripplan.screens.widgets.choices import place_named, place_names
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, refill
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import named, refuse, show_notice
from tripplan.screens.widgets.saving import records_of, save_all
from tripplan.values import wording

PAGE = "logbook"
KeptEntries = Mapping[str, Kept[LogbookEntry]]
KeptOutings = Mapping[str, Kept[PlannedOuting]]

_NEW, _CHANGE = "new", "change"
_FOOD = {"packed": "packed at home", "bought": "bought there", "both": "both"}
_SLEPT = {
    SleepsIn.HOME.value: "at home",
    SleepsIn.CAR.value: "in the car",
    SleepsIn.PUSHCHAIR.value: "in the pushchair",
}
_PAID = {
    "admission": "Entry",
    "car": "Fuel and tolls",
    "parking": "Parking",
    "food": "Food",
    "extras": "Extras and treats",
}
_LABELS = {
    "title": "What was it?",
    "day": "Day",
    "party": "Who went?",
    "receipts_total": "Receipts in all",
    "paid": "Paid",
    "paid.amount": "amount",
    "km": "Driven in all",
    "odometer_out_km": "Odometer on leaving",
    "odometer_home_km": "Odometer back home",
    "fuel": "What the car took",
    "fuel.amount": "What the car took",
    "naps": "Nap",
    "naps.minutes": "minutes slept",
    "children": "Child",
    "children.hours": "hours that count",
    "children.subjects": "subject",
    "children.subjects.hours": "hours",
    "children.subjects.subject": "name",
    "study_unit": "Study unit",
    **CLOCKS,
}


def _opened(view: View) -> str:
    return f"logbook_open_{view.which}"


def open_new(view: View, planned_id: str = "") -> None:
    """Open the form for a planned outing, or for one that was never planned here."""
    st.session_state[_opened(view)] = (_NEW, planned_id, False)
    refill(_form_name(view))


def open_change(view: View, entry_id: str) -> None:
    """Open the form for an entry that is in the logbook."""
    st.session_state[_opened(view)] = (_CHANGE, entry_id, False)
    refill(_form_name(view))


def close(view: View) -> None:
    """Close the form."""
    st.session_state.pop(_opened(view), None)


def _fill_as_planned(view: View) -> None:
    what, key, _ = st.session_state[_opened(view)]
    st.session_state[_opened(view)] = (what, key, True)
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
        kept: Kept[LogbookEntry] | None = entries[key]
        shown = entries[key].value
    else:
        kept, shown = None, _new_draft(view, family, entries, outings, key)
    with st.container(border=True, key="open_entry"):
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


def _draw(view: View, family: Family, shown: LogbookEntry, kept: Kept[LogbookEntry] | None) -> None:
    household, said = family.household, shown.as_planned
    unnamed = kept is None and not shown.planned
    at_first = on_record(shown, household, unnamed=unnamed)
    fields = filled(_form_name(view), at_first)
    title = "An outing" if unnamed else f"{shown.title} on {wording.day(shown.day)}"
    st.header(plain(title), anchor=False)
    show_notice(fields.form)
    if said is not None and kept is None:
        st.button(
            "It went as planned: fill that in",
            key="fill_as_planned",
            on_click=_fill_as_planned,
            args=(view,),
            help="Times, money, distance and nap as the plan had them. Change what was different.",
        )
    with st.form("entry_form", border=False):
        st.caption("Leave empty what nobody noted; it then counts as unknown, never as zero.")
        _which_outing(family, fields, shown, folded=not unnamed)
        _money(fields, shown.currency, said)
        _times(fields, said)
        _way(family, fields, said)
        options = [word.value for word in Fullness]
        st.pills("How full was it?", options, key=fields.key("fullness"))
        for name, naps in nap_lines(household, shown).items():
            for number in range(len(naps)):
                _nap(fields, name, number, said)
        for name in children_in(shown, household):
            _child(fields, name, len(subject_lines(shown, name)))
        with st.expander("More: study unit, weather, notes"):
            st.text_input(
                "Study unit", key=fields.key("study_unit"), help="Its budget is counted under this name."
            )
            st.checkbox("It was away from home", key=fields.key("away"))
            st.text_input("Weather", key=fields.key("weather"))
            st.text_area("Notes", key=fields.key("notes"))
        st.form_submit_button(
            "Keep in the logbook",
            key="save_logbook_entry",
            type="primary",
            on_click=_save,
            args=(view, family, fields, at_first, shown, kept),
        )
    st.button("Close without keeping", key="close_entry", on_click=close, args=(view,))


def _which_outing(family: Family, fields: Fields, shown: LogbookEntry, *, folded: bool) -> None:
    names = {**place_names(family), SOMEWHERE_ELSE: "somewhere else"}
    if shown.place and shown.place not in names:
        names[shown.place] = shown.title
    people = list(dict.fromkeys([*(m.name for m in family.household.members), *shown.party]))
    with st.expander("Where, when and who", expanded=not folded):
        st.selectbox("Where was it?", list(names), format_func=names.__getitem__, key=fields.key("place"))
        st.text_input("What was it? (if somewhere else)", key=fields.key("title"), max_chars=80)
        st.date_input("Day", key=fields.key("day"))
        st.pills("Who went?", people, selection_mode="multi", key=fields.key("party"))


def _money(fields: Fields, currency: str, said: AsPlanned | None) -> None:
    planned = f"planned in all: {wording.money(said.likely_total)}" if said else ""
    st.text_input(
        f"Receipts in all, in {currency}",
        key=fields.key("receipts"),
        placeholder=planned,
        help="Enough on its own. 0 where nothing was paid.",
    )
    with st.expander("Or item by item"):
        for kind in PAID_FOR:
            amount = planned_for(said, kind) if said else None
            st.text_input(
                _PAID[kind],
                key=fields.key(f"paid_{kind}"),
                placeholder=f"planned: {wording.money(amount)}" if amount else "",
            )
        st.pills("How did you eat?", list(_FOOD), format_func=_FOOD.__getitem__, key=fields.key("food"))


def _times(fields: Fields, said: AsPlanned | None) -> None:
    planned = {}
    if said is not None:
        planned = {
            "left_home": said.wheels_turn or said.leave_home,
            "arrived": said.arrive,
            "left_place": said.leave_place,
            "home_again": said.home,
        }
    with st.container(horizontal=True):
        for name, label in CLOCKS.items():
            st.text_input(
                label,
                key=fields.key(name),
                placeholder=f"planned: {planned[name]:%H:%M}" if name in planned else "9:05",
                width=150,
            )
    st.caption("By the clock there; 9:05, 905 and 9:05 pm are all understood.")


def _way(family: Family, fields: Fields, said: AsPlanned | None) -> None:
    household = family.household
    planned = f"planned: {wording.distance(said.km, household.units)}" if said and said.km else ""
    st.text_input(f"Driven in all, in {household.units}", key=fields.key("km"), placeholder=planned)
    with st.expander("Odometer and fuel"):
        st.text_input(f"Odometer on leaving, in {household.units}", key=fields.key("odometer_out"))
        st.text_input(f"Odometer back home, in {household.units}", key=fields.key("odometer_home"))
        st.text_input(
            f"What the car took for it, in {fuel_unit(household)}",
            key=fields.key("fuel"),
            help="With the distance it tells what your car really uses.",
        )


def _nap(fields: Fields, name: str, number: int, said: AsPlanned | None) -> None:
    planned = [nap.kept_minutes for nap in said.naps if nap.member == name] if said else []
    kept = planned[number] if number < len(planned) else 0
    which = f"nap {number + 1}" if number else "nap"
    with st.container(horizontal=True, vertical_alignment="bottom"):
        st.text_input(
            f"{plain(name)}'s {which}, minutes slept",
            key=fields.key(f"nap{number}_{name}"),
            placeholder=f"planned: {kept}" if kept else "0 for none",
            width=220,
        )
        where = fields.key(f"slept{number}_{name}")
        st.pills("Where?", list(_SLEPT), format_func=_SLEPT.__getitem__, key=where)


def _child(fields: Fields, name: str, subjects: int) -> None:
    with st.expander(f"{plain(name)}: did, learned, hours", key=f"open_child_{name}"):
        st.text_area("Did", key=fields.key(f"did_{name}"), height=68)
        st.text_area("Learned", key=fields.key(f"learned_{name}"), height=68)
        for number in range(subjects):
            with st.container(horizontal=True):
                subject, hours = (fields.key(f"{field}{number}_{name}") for field in ("subject", "split"))
                st.text_input(f"Subject {number + 1}", key=subject, placeholder="science", width=220)
                st.text_input("Its hours, if you split them", key=hours, placeholder="1.5", width=220)
        st.text_input("Hours that count", key=fields.key(f"hours_{name}"), placeholder="2.5")
        st.checkbox("Counts as a school day", key=fields.key(f"counts_{name}"))


def _save(
    view: View,
    family: Family,
    fields: Fields,
    at_first: Mapping[str, FieldValue],
    before: LogbookEntry,
    kept: Kept[LogbookEntry] | None,
) -> None:
    typed = fields.typed()
    if typed["day"] is None:
        refuse(fields.form, findings=[Finding("", "Day", "", "pick the day")])
        return
    entry_id = before.id
    if kept is None:
        title = typed["place"] or str(typed["title"])
        entry_id = new_entry_id(typed["day"], title, set(records_of(view).all(LogbookEntry)))
    values = entry_values(typed, at_first, before, family, entry_id)
    read = entry_from_values(values, view.today, family.household)
    if read.value is None:
        children = [child["member"] for child in values["children"]]
        paid = [_PAID[one["kind"]] for one in values["paid"]]
        naps = [nap["member"] for nap in values["naps"]]
        entries = {
            "children": children.__getitem__,
            "paid": paid.__getitem__,
            "naps": lambda index: f"{naps[index]}'s nap",
        }
        refuse(fields.form, findings=named(read.findings, _LABELS, entries))
        return
    entry = read.value
    said = f"{entry.title} on {wording.day(entry.day)} is in the logbook."
    if save_all(view, PAGE, [(entry, kept.revision if kept else 0)], said):
        close(view)
        refill(fields.form)
