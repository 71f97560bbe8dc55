"""Forms for the people of a household and their naps."""

from collections.abc import Sequence
from datetime import date, time
from typing import Any

import streamlit as st

from tripplan.planning.admission.sentences import age_in_words
from tripplan.planning.household import Household
from tripplan.planning.member import Member, Nap
from tripplan.planning.sleep import sleep_sentence, usual_naps
from tripplan.records.store import Kept
from tripplan.screens.household.saving import PAGE, Raw, check_and_save, clock_text, raw_household
from tripplan.screens.household.words import LABELS, NAP, NEW_NAP
from tripplan.screens.widgets.fields import CLOCK_STEP, Fields, FieldValue, filled, listed_in, put
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice

ON_THE_ROAD = ("patience_minutes", "toilet_minutes")
"""What is asked of a person for the drive."""


def member_form(view: View, kept: Kept[Household], index: int) -> None:
    """One person with the usual naps, to be changed or removed.

    Args:
        view: whose records.
        kept: the household.
        index: of the person among its members.
    """
    member = kept.value.members[index]
    age = age_in_words(member.months_on(view.today))
    count = "" if not member.naps else ", one nap" if len(member.naps) == 1 else f", {len(member.naps)} naps"
    with st.expander(plain(f"{member.name}, {age}{count}"), key=f"open_member_{index}"):
        more_naps, offered = f"more_naps_{index}", f"usual_naps_{index}"
        usual = usual_naps(member.months_on(view.today))
        naps = usual if st.session_state.get(offered) else member.naps
        naps_shown = len(naps) + int(st.session_state.get(more_naps, 0))
        fields = filled(f"member_{index}", _member_on_record(member.model_dump(), naps, naps_shown))
        _sleep_at_this_age(member, usual, view.today, offered)
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


def _sleep_at_this_age(member: Member, usual: Sequence[Nap], today: date, offered: str) -> None:
    """What is recommended and usual at this age, and a button that fills the usual naps in."""
    said = sleep_sentence(member, today)
    if said:
        st.caption(plain(said))
    if usual and tuple(usual) != member.naps and not st.session_state.get(offered):
        st.button(
            "Fill in the naps that are usual at this age",
            key=f"offer_{offered}",
            on_click=st.session_state.__setitem__,
            args=(offered, True),
            help="Two naps by 9 to 12 months, one by 15 to 24 months, none for most from four years on "
            "(Weissbluth, Sleep 18:82-87, 1995); the clock times are a first guess without a source. "
            "Change what is different for your child.",
        )
    if st.session_state.get(offered):
        st.caption("The usual naps stand below. Change what you like; nothing is kept before you save.")


def _member_on_record(dumped: dict[str, Any], naps: Sequence[Nap], naps_shown: int) -> dict[str, FieldValue]:
    on_record: dict[str, FieldValue] = {
        "name": dumped["name"],
        "born": str(dumped["born"]),
        "statuses": ", ".join(dumped["statuses"]),
        "wakes": dumped["wakes"],
        "bed": dumped["bed"],
        "needs": dumped["needs"],
        **{name: "" if dumped[name] is None else str(dumped[name]) for name in ON_THE_ROAD},
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
    st.text_input(
        LABELS["members.patience_minutes"],
        key=fields.key("patience_minutes"),
        help="Left empty, it goes by age: 60 minutes under three, 90 under seven, 120 under eighteen, any "
        "time for grown-ups. Common practice, no source: you know better. What goes beyond it weighs.",
    )
    st.text_input(
        LABELS["members.toilet_minutes"],
        key=fields.key("toilet_minutes"),
        help="For a child that is newly out of nappies: the drive rests at least that often. Empty for none.",
    )
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
    for name in ("in_car", "in_pushchair", "stays_asleep_when_moved"):
        st.checkbox(label(name), key=key(name))
    for name in ("falls_asleep_minutes", "shortest_minutes"):
        st.text_input(label(name), key=key(name))
    st.checkbox(f"Nap {index + 1}: no longer taken, leave it out", key=key("gone"))


def _one_more_nap(counter: str) -> None:
    st.session_state[counter] = int(st.session_state.get(counter, 0)) + 1


def _typed_member(typed: dict[str, Any], naps_shown: int) -> Raw:
    member: Raw = {}
    for name in ("name", "born", "needs", *ON_THE_ROAD):
        put(member, name, typed[name])
    member["statuses"] = listed_in(typed["statuses"])
    for name in ("wakes", "bed"):
        member[name] = clock_text(typed[name])
    member["naps"] = []
    for index in range(naps_shown):
        if typed[f"nap{index}_gone"]:
            continue
        nap: Raw = {}
        for name in NAP:
            value = typed[f"nap{index}_{name}"]
            put(nap, name, clock_text(value) if name == "start" else value)
        member["naps"].append(nap)
    member["naps"].sort(key=lambda nap: str(nap.get("start", "")))
    return member


def _save_member(view: View, kept: Kept[Household], index: int, fields: Fields, naps_shown: int) -> None:
    typed = fields.typed()
    raw = raw_household(kept.value)
    before = raw["members"][index]["name"]
    raw["members"][index] = _typed_member(typed, naps_shown)
    for held in raw.get("passes", ()):
        held["holders"] = [typed["name"].strip() if name == before else name for name in held["holders"]]
    if check_and_save(view, f"member_{index}", kept.revision, raw):
        st.session_state[f"more_naps_{index}"] = 0
        st.session_state[f"usual_naps_{index}"] = False


def _remove_member(view: View, kept: Kept[Household], index: int) -> None:
    raw = raw_household(kept.value)
    name = raw["members"].pop(index)["name"]
    for held in raw.get("passes", ()):
        held["holders"] = [holder for holder in held["holders"] if holder != name]
    raw["passes"] = [held for held in raw.get("passes", ()) if held["holders"]]
    said = f"{name} is removed. 'Undo last change' brings {name} back."
    check_and_save(view, PAGE, kept.revision, raw, said=said)


def new_member_form(view: View, kept: Kept[Household]) -> None:
    """Somebody new; naps come once the person is there."""
    with st.expander("Add a person", key="open_new_member"):
        fields = filled(
            "new_member",
            {
                "name": "",
                "born": "",
                "statuses": "",
                "needs": "",
                **dict.fromkeys(ON_THE_ROAD, ""),
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
    raw = raw_household(kept.value)
    raw["members"].append(_typed_member(fields.typed(), 0))
    name = raw["members"][-1].get("name", "")
    check_and_save(view, "new_member", kept.revision, raw, said=f"{name} is added.")
