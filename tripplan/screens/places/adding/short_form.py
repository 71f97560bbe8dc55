"""The short way to type a place in: name, where, a week of times, prices; all else behind one button."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import streamlit as st

from tripplan.documents.places.idea import LONGEST_IDEA, Idea, free_id
from tripplan.documents.places.place import Place
from tripplan.documents.where import TOWN_ONLY
from tripplan.errors import Finding, Weight
from tripplan.files.cards.place_card import read_place_card
from tripplan.files.toml.toml_text import write_toml
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.planning.travel.estimate import estimate_drive
from tripplan.records.store import StoredDocument
from tripplan.screens.places.adding.handing_on import all_fields
from tripplan.screens.places.adding.short_card import PRICE_ROWS, ShortCard, at_first, short_card
from tripplan.screens.places.adding.week import DAYS, HOLIDAYS, gaps_filled
from tripplan.screens.places.for_us import for_us_in_short
from tripplan.screens.widgets.fields import Fields, filled, refill
from tripplan.screens.widgets.lasting import let_go, let_last
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, show_beside
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

_SHORT_NAMES = {"Mo": "Mon", "Tu": "Tue", "We": "Wed", "Th": "Thu", "Fr": "Fri", "Sa": "Sat", "Su": "Sun"}
_STYLE = """<style>
div:has(> .st-key-short_total) { position: sticky; bottom: 0; z-index: 5; }
.st-key-short_total { background: light-dark(#fff, #0e1117); border-top: 1px solid #8884; padding: .4rem 0; }
[class*="st-key-short_card_"] { gap: .5rem; }
</style>"""
_DAY_WIDTH = 104


@dataclass(frozen=True)
class _Begun:
    """A short form that somebody is filling in.

    Attributes:
        view: whose places.
        family: for whom the prices are worked out.
        cards: what is on record, by id.
        fields: of this form.
        spot: names the form that asks for everything.
        idea: the id of the idea that grows into a card; empty where there is none.
    """

    view: View
    family: Family
    cards: Mapping[str, StoredDocument[Place]]
    fields: Fields
    spot: str
    idea: str


def short_form(view: View, family: Family, cards: Mapping[str, StoredDocument[Place]], spot: str) -> None:
    """Ask for the little that most places need.

    Args:
        view: whose places.
        family: for whom the prices are worked out.
        cards: what is on record, by id.
        spot: names the form that asks for everything; this one's name is made from it.
    """
    st.html(_STYLE)
    _form(view, family, cards, spot)


@st.fragment
def _form(view: View, family: Family, cards: Mapping[str, StoredDocument[Place]], spot: str) -> None:
    form = short_name(spot)
    begun = st.session_state.get(f"{form}_begun", {})
    fields = filled(form, at_first(begun.get("name", ""), begun.get("where", "")))
    home = family.household.home
    with st.container(key=f"short_card_{view.which}"):
        slots = {}
        st.text_input("Name", key=fields.key("name"))
        slots["name"] = st.container()
        st.text_input("Town or address", key=fields.key("where"), placeholder="12 Mill St, Galena, IL")
        slots["where"] = st.container()
        st.markdown("**Open**")
        with st.container(horizontal=True, gap="small"):
            for day in DAYS:
                st.text_input(_SHORT_NAMES[day], key=fields.key(day), placeholder="closed", width=_DAY_WIDTH)
            st.button(
                "Same on empty days",
                key=f"{form}_fill",
                on_click=_fill_gaps,
                args=(fields,),
                help="Every empty day becomes like the day before it. Type 'closed' where it is closed.",
            )
        slots |= dict.fromkeys(DAYS, st.container())
        closed = HOLIDAYS.get(home.country, HOLIDAYS[""])
        st.pills("Closed on", list(closed), selection_mode="multi", key=fields.key("closed_on"))
        st.text_input("Season", key=fields.key("season"), placeholder="all year, or April to October")
        slots["season"] = st.container()
        st.markdown("**Prices**")
        _prices(fields, slots)
    typed = _Begun(view, family, cards, fields, spot, begun.get("id", ""))
    card, place = _read(typed)
    for name, slot in slots.items():
        show_beside(slot, [_said(found) for found in card.findings if _slot_name(found.field) == name])
    with st.container(key="short_total"):
        st.markdown(plain(_total(typed, card, place)))
        with st.container(horizontal=True):
            if st.button("Add this place", key=f"{form}_save", type="primary", on_click=_save, args=(typed,)):
                st.rerun()
            if st.button("More", key=f"{form}_more", on_click=_more, args=(typed,)):
                st.rerun()
            if st.button("Cancel", key=f"{form}_cancel", type="tertiary", on_click=leave, args=(spot,)):
                st.rerun()


def _prices(fields: Fields, slots: dict[str, "st.delta_generator.DeltaGenerator"]) -> None:
    st.checkbox("Free for everyone", key=fields.key("free"))
    if not st.session_state[fields.key("free")]:
        for row, called, _ in PRICE_ROWS:
            with st.container(horizontal=True, gap="small"):
                st.text_input("Who", key=fields.key(f"{row}_name"), width=125, label_visibility="collapsed")
                st.text_input(
                    f"Ages of {called}", key=fields.key(f"{row}_ages"), width=95, label_visibility="collapsed"
                )
                st.text_input(
                    f"Price for {called}",
                    key=fields.key(f"{row}_price"),
                    width=95,
                    label_visibility="collapsed",
                    placeholder="$",
                )
            slots[row] = st.container()
        with st.container(horizontal=True, gap="small"):
            st.text_input(
                "Family of up to", key=fields.key("family_count"), width=125, placeholder="4 people"
            )
            st.text_input("Family price", key=fields.key("family_price"), width=95, placeholder="none")
            st.text_input("Parking", key=fields.key("parking"), width=95, placeholder="?")
    else:
        st.text_input("Parking", key=fields.key("parking"), width=95, placeholder="?")
    slots["family"] = slots["parking"] = st.container()


def short_name(spot: str) -> str:
    """The name of the short form beside the form that asks for everything."""
    return f"short_{spot}"


def begin(spot: str, name: str = "", where: str = "", idea: str = "") -> None:
    """Begin the short form anew.

    Args:
        spot: names the form that asks for everything.
        name: of the place, as far as it is known.
        where: likewise.
        idea: the id of the idea that grows into a card.
    """
    refill(short_name(spot))
    begun = {"name": name, "where": where, "id": idea}
    let_last({f"{short_name(spot)}_begun": begun, f"{spot}_way": "short"})


def leave(spot: str) -> None:
    """Close whatever is open for a new place."""
    refill(short_name(spot))
    let_go(f"{short_name(spot)}_begun", f"{spot}_way")


def _fill_gaps(fields: Fields) -> None:
    typed = fields.typed()
    for day, times in gaps_filled({day: str(typed[day]) for day in DAYS}).items():
        st.session_state[fields.key(day)] = times


def _slot_name(field: str) -> str:
    return field.partition("_")[0]


def _said(found: Finding) -> Finding:
    called = {
        "where": "Town or address",
        "season": "Season",
        "name": "Name",
        "parking": "Parking",
        **_SHORT_NAMES,
    }
    rows = {row: name for row, name, _ in PRICE_ROWS} | {"family": "Family"}
    base = _slot_name(found.field)
    return Finding("", called.get(found.field) or rows.get(base, base), found.value, found.message)


def _read(form: _Begun) -> tuple[ShortCard, Place | None]:
    """What stands in the form, with every fault at one of its fields; and the place where that is enough."""
    typed, household, today = form.fields.typed(), form.family.household, form.view.today
    taken = {*form.cards, *form.view.records.all(Idea)} - {form.idea}
    card_id = form.idea or free_id(str(typed["name"]) or "place", taken)
    card = short_card(typed, card_id, household.home, household.currency, today)
    if not card.complete or card.findings:
        return card, None
    read = read_place_card(write_toml(card.raw), "", today)
    told = tuple(
        Finding("", _field_of(found.field, card), found.value, found.message)
        for found in read.findings
        if found.weight is Weight.FAULT
    )
    return replace(card, findings=told), read.value


def _field_of(path: str, card: ShortCard) -> str:
    """The field of the form that a fault of the card stands beside."""
    if path.startswith("offers["):
        number = int(path[len("offers[") : path.index("]")])
        name = card.raw["offers"][number]["name"]
        return next((row for row, called, _ in PRICE_ROWS if called == name), "family")
    return {"opening": "season", "where": "where", "name": "name", "parking": "parking"}.get(
        path.partition(".")[0], "name"
    )


def _total(form: _Begun, card: ShortCard, place: Place | None) -> str:
    """What it comes to, in one line, or what is still missing for that."""
    if place is not None:
        household = form.family.household
        way = estimate_drive(household.home.point, place.where.point, place.where.country)
        drive = wording.distance(way.km.likely, household.units)
        far = f"About {wording.minutes(way.minutes.likely)}, {drive} away."
        if place.where.town_only:
            far += f" {TOWN_ONLY}"
        return f"{for_us_in_short(form.family, place, form.view.today)} {far}"
    missing = [
        said
        for said, there in (
            ("the name", card.raw.get("name")),
            ("where it is", card.where),
            ("when it is open", card.hours),
            ("a price", card.priced),
        )
        if not there
    ]
    if card.findings:
        return f"Please fix {wording.counted(len(card.findings), 'thing')} above."
    return f"Still open: {wording.listed(missing)}. Without it, this is kept as an idea."


def _save(form: _Begun) -> None:
    """Save a card where there is enough for one, else an idea; or say what cannot be read."""
    view, spot = form.view, form.spot
    card, place = _read(form)
    name = str(card.raw.get("name", ""))
    if not name:
        refuse(spot, findings=[Finding("", "Name", "", "a place needs a name")])
        return
    if card.findings:
        refuse(spot, findings=[_said(found) for found in card.findings])
        return
    kept = view.records.all(Idea).get(str(card.raw["id"]))
    if place is not None:
        removed = [(Idea, str(kept.value.id), kept.revision)] if kept else []
        if save_all(view, spot, [(place, 0)], f"{place.name} is added.", removing=removed):
            leave(spot)
        return
    known = {"name": name[:LONGEST_IDEA], "where": card.where, "hours": card.hours or None}
    before = kept.value if kept else Idea(id=card.raw["id"], name=known["name"], noted_on=view.today)
    after = before.model_copy(update={key: value for key, value in known.items() if value is not None})
    said = f"{after.name} is kept as an idea, as not all of it is known yet."
    if save_all(view, spot, [(after, kept.revision if kept else 0)], said):
        leave(spot)


def _more(form: _Begun) -> None:
    """Go on in the form that asks for everything, with what was typed so far."""
    card, _ = _read(form)
    all_fields(form.view, form.spot, card.raw, str(form.fields.typed()["where"]))
