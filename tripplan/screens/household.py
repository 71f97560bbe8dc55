"""Household: the people, the home, the car, and what the parent cares about."""

from collections.abc import Callable, Sequence
from datetime import date, time, timedelta
from functools import partial
from typing import Any

import streamlit as st
from babel.numbers import get_territory_currencies

from tripplan import wording
from tripplan.errors import Finding, UnknownName, Weight
from tripplan.files.household_file import read_household
from tripplan.files.toml_text import write_toml
from tripplan.planning.admission.sentences import age_in_words
from tripplan.planning.household import Fuel, HeldPass, Household, Nap
from tripplan.planning.offers import Pass
from tripplan.records.kinds import ONLY
from tripplan.records.opening import Which
from tripplan.records.store import Kept
from tripplan.screens.fields import Fields, FieldValue, filled, lines_in, listed_in, put, refill
from tripplan.screens.frame import View
from tripplan.screens.household_transfer import household_files, record_files
from tripplan.screens.household_words import (
    CAR,
    CONSUMPTION,
    FOOD,
    FUELS,
    LABELS,
    NAP,
    NEW_NAP,
    RATE,
    RATES,
    SECTIONS,
    Field,
    Section,
)
from tripplan.screens.markdown import bullets, plain
from tripplan.screens.notices import named, refuse, show_findings, show_notice, tell
from tripplan.screens.saving import records_of, trouble_said
from tripplan.screens.where_form import where_inputs, where_on_record, where_values

PAGE = "household"
CLOCK_STEP = timedelta(minutes=5)
IN_MILES = ("US", "GB", "LR", "MM")
"""Countries whose road signs count miles. Source: common practice, no source."""

Read = dict[str, Any]
"""A household as its file would hold it, before it is checked."""


def render(view: View) -> None:
    """Show the household with a form for each part of it, or the first form where there is none yet."""
    kept = records_of(view).get(Household)
    if kept is None:
        _first_form(view)
        return
    household = kept.value
    st.title(plain(household.name))
    st.markdown(bullets(_summary(household, view.today)))
    _where_it_lies(view)
    st.button(
        "Undo last change",
        key="undo_household",
        on_click=_undo,
        args=(view, kept),
        disabled=kept.revision == 1,
        help="Once more takes back the change before it.",
    )
    show_notice(PAGE)
    _standing_warnings(view, household)
    st.subheader("People", anchor=False)
    for index in range(len(household.members)):
        _member(view, kept, index)
    _new_member(view, kept)
    st.subheader("Everything else", anchor=False)
    _home(view, kept)
    _car(view, kept)
    _food(view, kept)
    for section in SECTIONS:
        _plain_section(view, kept, section)
    _passes(view, kept)
    st.subheader("Files", anchor=False)
    household_files(view, kept, _save_whole)
    record_files(view)


def _summary(household: Household, today: date) -> list[str]:
    people = [f"{member.name} ({age_in_words(member.months_on(today))})" for member in household.members]
    home = household.home
    place = ", ".join(filter(None, (home.town, home.subdivision))) or "the coordinates you gave"
    car = household.car
    if car is None:
        driving = "No car is entered, so the cost of driving stays unknown."
    elif car.fuel in RATES:
        driving = f"You drive {car.name}, {car.seats} seats, at {car.rate} {household.currency} {car.fuel}."
    else:
        driving = f"You drive {car.name}, {car.seats} seats, {car.consumption} {FUELS[car.fuel]}."
    return [f"{wording.listed(people)}.", f"Outings start in {place} ({home.time_zone}).", driving]


def _where_it_lies(view: View) -> None:
    path = records_of(view).database.path
    said = f"Everything you enter stays on this computer, in the file {path}. Nothing is sent anywhere."
    if view.which is Which.DEMO:
        said += " What you change here changes the demo only, never your own family."
    st.caption(plain(said))


def _standing_warnings(view: View, household: Household) -> None:
    """What is odd about the household as it is; it never holds a fault."""
    read = read_household(write_toml(_raw(household)), "", view.today)
    odd = [finding for finding in read.findings if finding.weight is Weight.WARNING]
    if odd:
        show_findings(_in_words(odd, _raw(household)))


# --- saving -----------------------------------------------------------------------------------------------


def _raw(household: Household) -> Read:
    return household.model_dump(mode="json", exclude_none=True)


def _in_words(findings: Sequence[Finding], raw: Read) -> tuple[Finding, ...]:
    def member(index: int) -> str:
        return str(raw["members"][index].get("name") or f"Person {index + 1}")

    return named(findings, LABELS, {"members": member, "members.naps": lambda index: f"nap {index + 1}"})


def _save(
    view: View, spot: str, expected: int, raw: Read, found: Sequence[Finding] = (), said: str = "Saved."
) -> bool:
    """Check a household as its file is checked, and save it; or say every fault at once.

    Args:
        view: whose records.
        spot: where to say what came of it.
        expected: the revision the change was made from; 0 for the first household.
        raw: the household with its changes.
        found: what the form itself could not read.
        said: the sentence where it worked.
    """
    read = read_household(write_toml(raw), "", view.today)
    if read.value is None or found:
        faults = [finding for finding in read.findings if finding.weight is Weight.FAULT]
        refuse(spot, findings=_in_words([*found, *faults], raw))
        return False
    if not _save_whole(view, spot, expected, read.value, said):
        return False
    refill(spot)
    return True


def _save_whole(view: View, spot: str, expected: int, household: Household, said: str) -> bool:
    with trouble_said(spot):
        records_of(view).save(household, view.services.clock(), expected)
        tell(spot, said)
        return True
    return False


def _undo(view: View, kept: Kept[Household]) -> None:
    with trouble_said(PAGE):
        with records_of(view).change(view.services.clock()) as change:
            before = change.undo(Household, ONLY, kept.revision)
            if before is None:
                raise UnknownName("change to take back in", "household")
        tell(PAGE, "The last change is taken back.")


# --- the first form ---------------------------------------------------------------------------------------


def _first_form(view: View) -> None:
    st.title("Your family")
    st.markdown(
        "Three things are enough to begin: a name for your household, where you live, and who belongs to it. "
        "Naps, the car and everything else can follow when you have a minute."
    )
    _where_it_lies(view)
    fields = filled("first", {"name": "", "people": "", **where_on_record(None)})
    with st.form("first_form"):
        st.text_input("What do you call your household?", key=fields.key("name"))
        st.text_area(
            "Who belongs to it?",
            key=fields.key("people"),
            placeholder="Ada, 1988-05-20\nLeo, 2019-03",
            help="One person a line: name, a comma, birth date. Year and month are enough (2019-03).",
        )
        st.caption("One person a line, such as: Ada, 1988-05-20. Year and month are enough: Leo, 2019-03.")
        st.markdown("**Where do you live?**")
        where_inputs(fields, with_address=False)
        st.form_submit_button(
            "Save and begin", key="save_first", type="primary", on_click=_save_first, args=(view, fields)
        )
    show_notice("first")
    show_notice(PAGE)
    st.subheader("Or bring a file", anchor=False)
    household_files(view, None, _save_whole)
    record_files(view)


def _save_first(view: View, fields: Fields) -> None:
    typed = fields.typed()
    home, found = where_values(typed, None, "home")
    country = str(home.get("country", ""))
    members = []
    for line in lines_in(typed["people"]):
        name, _, born = line.rpartition(",")
        members.append({"name": name.strip(), "born": born.strip()} if name else {"name": line})
    raw: Read = {
        "home": home,
        "currency": (get_territory_currencies(country) or ["USD"])[0],
        "units": "mi" if country in IN_MILES else "km",
        "members": members,
    }
    put(raw, "name", typed["name"])
    if _save(view, "first", 0, raw, found):
        tell(PAGE, "Saved. Places come next: add the first one under Places.")


# --- people -----------------------------------------------------------------------------------------------


def _member(view: View, kept: Kept[Household], index: int) -> None:
    member = kept.value.members[index]
    age = age_in_words(member.months_on(view.today))
    naps = "" if not member.naps else ", one nap" if len(member.naps) == 1 else f", {len(member.naps)} naps"
    with st.expander(plain(f"{member.name}, {age}{naps}"), key=f"open_member_{index}"):
        more_naps = f"more_naps_{index}"
        naps_shown = len(member.naps) + int(st.session_state.get(more_naps, 0))
        fields = filled(f"member_{index}", _member_on_record(member.model_dump(), member.naps, naps_shown))
        with st.form(f"member_form_{index}"):
            _member_inputs(fields)
            for nap in range(naps_shown):
                _nap_inputs(fields, nap)
            st.form_submit_button(
                "Save",
                key=f"save_member_{index}",
                type="primary",
                on_click=_save_member,
                args=(view, kept, index, fields, naps_shown),
            )
        show_notice(f"member_{index}")
        with st.container(horizontal=True):
            st.button("Add a usual nap", key=f"add_nap_{index}", on_click=_one_more_nap, args=(more_naps,))
            if len(kept.value.members) > 1:
                st.button(
                    plain(f"Remove {member.name}"),
                    key=f"remove_member_{index}",
                    on_click=_remove_member,
                    args=(view, kept, index),
                )


def _member_on_record(dumped: dict[str, Any], naps: Sequence[Nap], naps_shown: int) -> dict[str, FieldValue]:
    on_record: dict[str, FieldValue] = {
        "name": dumped["name"],
        "born": str(dumped["born"]),
        "statuses": ", ".join(dumped["statuses"]),
        "wakes": dumped["wakes"],
        "bed": dumped["bed"],
        "needs": dumped["needs"],
    }
    for index in range(naps_shown):
        nap = naps[index].model_dump() if index < len(naps) else NEW_NAP
        for name in NAP:
            value = nap[name]
            on_record[f"nap{index}_{name}"] = (
                str(value) if isinstance(value, int) and not isinstance(value, bool) else value
            )
        on_record[f"nap{index}_gone"] = False
    return on_record


def _member_inputs(fields: Fields) -> None:
    st.text_input(LABELS["members.name"], key=fields.key("name"))
    st.text_input(
        LABELS["members.born"],
        key=fields.key("born"),
        help="Such as 2022-03-14, or only 2022-03. Ages are always those on the day of the visit.",
    )
    st.text_input(
        LABELS["members.statuses"],
        key=fields.key("statuses"),
        help="With commas between: educator, student, benefit card, resident of ..., member of ...; the "
        "same words as on the place cards.",
    )
    st.time_input(LABELS["members.wakes"], key=fields.key("wakes"), step=CLOCK_STEP)
    st.time_input(LABELS["members.bed"], key=fields.key("bed"), step=CLOCK_STEP)
    st.text_area(
        LABELS["members.needs"],
        key=fields.key("needs"),
        height="content",
        help="Allergies, medicine, a child seat, a favourite toy. For your eyes; ask the place and your "
        "doctor where it matters.",
    )


def _nap_inputs(fields: Fields, index: int) -> None:
    def label(name: str) -> str:
        return f"Nap {index + 1}: {NAP[name]}"

    def key(name: str) -> str:
        return fields.key(f"nap{index}_{name}")

    st.divider()
    st.time_input(label("start"), key=key("start"), step=CLOCK_STEP)
    for name in ("minutes", "slack_minutes"):
        st.text_input(label(name), key=key(name))
    st.checkbox(label("in_car"), key=key("in_car"))
    st.checkbox(label("in_pushchair"), key=key("in_pushchair"))
    for name in ("falls_asleep_minutes", "shortest_minutes"):
        st.text_input(label(name), key=key(name))
    st.checkbox(f"Nap {index + 1}: no longer taken, leave it out", key=key("gone"))


def _one_more_nap(counter: str) -> None:
    st.session_state[counter] = int(st.session_state.get(counter, 0)) + 1


def _typed_member(typed: dict[str, Any], naps_shown: int) -> Read:
    member: Read = {}
    for name in ("name", "born", "needs"):
        put(member, name, typed[name])
    member["statuses"] = listed_in(typed["statuses"])
    for name in ("wakes", "bed"):
        member[name] = _clock(typed[name])
    member["naps"] = []
    for index in range(naps_shown):
        if typed[f"nap{index}_gone"]:
            continue
        nap: Read = {}
        for name in NAP:
            value = typed[f"nap{index}_{name}"]
            put(nap, name, _clock(value) if name == "start" else value)
        member["naps"].append(nap)
    member["naps"].sort(key=lambda nap: str(nap.get("start", "")))
    return member


def _clock(value: time | None) -> str:
    return "" if value is None else f"{value:%H:%M}"


def _save_member(view: View, kept: Kept[Household], index: int, fields: Fields, naps_shown: int) -> None:
    typed = fields.typed()
    raw = _raw(kept.value)
    before = raw["members"][index]["name"]
    raw["members"][index] = _typed_member(typed, naps_shown)
    for held in raw.get("passes", ()):
        held["holders"] = [typed["name"].strip() if name == before else name for name in held["holders"]]
    if _save(view, f"member_{index}", kept.revision, raw):
        st.session_state[f"more_naps_{index}"] = 0


def _remove_member(view: View, kept: Kept[Household], index: int) -> None:
    raw = _raw(kept.value)
    name = raw["members"].pop(index)["name"]
    for held in raw.get("passes", ()):
        held["holders"] = [holder for holder in held["holders"] if holder != name]
    raw["passes"] = [held for held in raw.get("passes", ()) if held["holders"]]
    said = f"{name} is removed. 'Undo last change' brings {name} back."
    _save(view, PAGE, kept.revision, raw, said=said)


def _new_member(view: View, kept: Kept[Household]) -> None:
    with st.expander("Add a person", key="open_new_member"):
        fields = filled(
            "new_member",
            {
                "name": "",
                "born": "",
                "statuses": "",
                "needs": "",
                "wakes": time(6, 30),
                "bed": time(19, 30),
            },
        )
        with st.form("new_member_form"):
            _member_inputs(fields)
            st.form_submit_button(
                "Add", key="save_new_member", type="primary", on_click=_add_member, args=(view, kept, fields)
            )
        st.caption("Naps can be added once the person is here.")
        show_notice("new_member")


def _add_member(view: View, kept: Kept[Household], fields: Fields) -> None:
    raw = _raw(kept.value)
    raw["members"].append(_typed_member(fields.typed(), 0))
    name = raw["members"][-1].get("name", "")
    _save(view, "new_member", kept.revision, raw, said=f"{name} is added.")


# --- the other sections -----------------------------------------------------------------------------------


def _inputs(fields: Fields, listed: Sequence[Field]) -> None:
    for field in listed:
        draw: Callable[..., object] = (
            partial(st.time_input, step=CLOCK_STEP) if field.clock else st.text_input
        )
        draw(field.label, key=fields.key(field.path), help=field.explained or None)


def _on_record(household: Household, listed: Sequence[Field]) -> dict[str, FieldValue]:
    on_record: dict[str, FieldValue] = {}
    for field in listed:
        value: Any = household
        for step in field.path.split("."):
            value = getattr(value, step, None)
        on_record[field.path] = value if field.clock else "" if value is None else str(value)
    return on_record


def _put_all(raw: Read, typed: dict[str, Any], listed: Sequence[Field]) -> None:
    for field in listed:
        put(raw, field.path, _clock(typed[field.path]) if field.clock else typed[field.path])


def _plain_section(view: View, kept: Kept[Household], section: Section) -> None:
    with st.expander(section.title, key=f"open_{section.name}"):
        st.caption(section.lead)
        fields = filled(section.name, _on_record(kept.value, section.fields))
        with st.form(f"{section.name}_form"):
            _inputs(fields, section.fields)
            _save_button(section.name, _save_plain, (view, kept, section, fields))
        show_notice(section.name)


def _save_button(name: str, save: Callable[..., None], args: tuple[object, ...]) -> None:
    st.caption("A field left empty goes back to the usual figure.")
    st.form_submit_button("Save", key=f"save_{name}", type="primary", on_click=save, args=args)


def _save_plain(view: View, kept: Kept[Household], section: Section, fields: Fields) -> None:
    raw = _raw(kept.value)
    _put_all(raw, fields.typed(), section.fields)
    _save(view, section.name, kept.revision, raw)


def _home(view: View, kept: Kept[Household]) -> None:
    household = kept.value
    with st.expander("Name, home and money", key="open_home"):
        fields = filled(
            "home",
            {
                "name": household.name,
                **where_on_record(household.home),
                "currency": household.currency,
                "units": household.units,
            },
        )
        with st.form("home_form"):
            st.text_input(LABELS["name"], key=fields.key("name"))
            where_inputs(fields, with_address=True)
            st.text_input(LABELS["currency"], key=fields.key("currency"), help="Three letters, such as USD.")
            st.radio(
                LABELS["units"],
                ("mi", "km"),
                format_func={"mi": "miles", "km": "kilometres"}.__getitem__,
                key=fields.key("units"),
            )
            st.form_submit_button(
                "Save", key="save_home", type="primary", on_click=_save_home, args=(view, kept, fields)
            )
        show_notice("home")


def _save_home(view: View, kept: Kept[Household], fields: Fields) -> None:
    typed = fields.typed()
    raw = _raw(kept.value)
    raw["home"], found = where_values(typed, kept.value.home, "home")
    put(raw, "name", typed["name"])
    put(raw, "currency", typed["currency"].strip().upper())
    raw["units"] = typed["units"]
    _save(view, "home", kept.revision, raw, found)


def _car(view: View, kept: Kept[Household]) -> None:
    household = kept.value
    every = (*CAR, *CONSUMPTION, *RATE)
    with st.expander("Car", key="open_car"):
        fuel = household.car.fuel if household.car else Fuel.MILES_PER_US_GALLON
        fields = filled(
            "car",
            {"has": household.car is not None, "fuel": fuel.value, **_on_record(household, every)},
        )
        with st.form("car_form"):
            st.checkbox("We go by car", key=fields.key("has"))
            _inputs(fields, CAR)
            st.selectbox(
                LABELS["car.fuel"],
                [fuel.value for fuel in FUELS],
                format_func={fuel.value: said for fuel, said in FUELS.items()}.__getitem__,
                key=fields.key("fuel"),
            )
            _inputs(fields, CONSUMPTION)
            _inputs(fields, RATE)
            _save_button("car", _save_car, (view, kept, fields))
        show_notice("car")


def _save_car(view: View, kept: Kept[Household], fields: Fields) -> None:
    typed = fields.typed()
    raw = _raw(kept.value)
    raw.pop("car", None)
    if typed["has"]:
        raw["car"] = {"fuel": typed["fuel"]}
        _put_all(raw, typed, (*CAR, *(RATE if Fuel(typed["fuel"]) in RATES else CONSUMPTION)))
    _save(view, "car", kept.revision, raw)


def _food(view: View, kept: Kept[Household]) -> None:
    with st.expander("Food", key="open_food"):
        st.caption("What eating costs on an outing, for each person.")
        fields = filled("food", {"way": kept.value.food.way, **_on_record(kept.value, FOOD)})
        with st.form("food_form"):
            st.radio(
                LABELS["food.way"],
                ("packed", "bought"),
                format_func={"packed": "packed at home", "bought": "bought there"}.__getitem__,
                key=fields.key("way"),
            )
            _inputs(fields, FOOD)
            _save_button("food", _save_food, (view, kept, fields))
        show_notice("food")


def _save_food(view: View, kept: Kept[Household], fields: Fields) -> None:
    typed = fields.typed()
    raw = _raw(kept.value)
    raw["food"]["way"] = typed["way"]
    _put_all(raw, typed, FOOD)
    _save(view, "food", kept.revision, raw)


# --- passes -----------------------------------------------------------------------------------------------


def _passes_on_cards(view: View) -> dict[str, tuple[str, str, str]]:
    """Every annual pass that a card sells: place id, name of the pass, and both in words."""
    places = view.family.places if view.family else ()
    return {
        f"{place.id}/{offer.name}": (place.id, offer.name, f"{offer.name}, {place.name}")
        for place in places
        for offer in place.offers
        if isinstance(offer, Pass)
    }


def _held_in_words(held: HeldPass, view: View) -> str:
    places = {place.id: place.name for place in view.family.places} if view.family else {}
    return (
        f"{held.offer} of {places.get(held.place, held.place)}, for {wording.listed(held.holders)}, "
        f"until {wording.day(held.valid_until)}"
    )


def _passes(view: View, kept: Kept[Household]) -> None:
    held, sold = kept.value.passes, _passes_on_cards(view)
    with st.expander("Annual passes you hold", key="open_passes"):
        if not held and not sold:
            st.caption("None of your places sells an annual pass.")
            return
        fields = filled(
            "passes",
            {
                **{f"gone{index}": False for index in range(len(held))},
                "new": "",
                "holders": [],
                "until": view.today + timedelta(days=365),
            },
        )
        with st.form("passes_form"):
            for index, one in enumerate(held):
                st.markdown(f"- {plain(_held_in_words(one, view))}")
                st.checkbox(
                    plain(f"Leave out: {one.offer}, until {one.valid_until}"), key=fields.key(f"gone{index}")
                )
            st.selectbox(
                "Another pass you hold",
                ["", *sold],
                format_func={"": "none", **{name: said for name, (_, _, said) in sold.items()}}.__getitem__,
                key=fields.key("new"),
            )
            st.multiselect(
                "Who is it written out to?",
                [member.name for member in kept.value.members],
                key=fields.key("holders"),
            )
            st.date_input("Until which day does it count?", key=fields.key("until"))
            st.form_submit_button(
                "Save", key="save_passes", type="primary", on_click=_save_passes, args=(view, kept, fields)
            )
        show_notice("passes")


def _save_passes(view: View, kept: Kept[Household], fields: Fields) -> None:
    typed = fields.typed()
    raw = _raw(kept.value)
    passes = [one for index, one in enumerate(raw.get("passes", ())) if not typed[f"gone{index}"]]
    found = []
    if typed["new"]:
        place, offer, called = _passes_on_cards(view)[typed["new"]]
        if not typed["holders"]:
            found.append(Finding("", "passes.holders", called, "pick at least one person"))
        valid_until = typed["until"] or view.today
        passes.append(
            {"place": place, "offer": offer, "holders": typed["holders"], "valid_until": valid_until}
        )
    raw["passes"] = passes
    _save(view, "passes", kept.revision, raw, found)
