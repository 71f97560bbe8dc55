"""Forms for the people of a household and their naps."""

from collections.abc import Sequence
from datetime import date, time

import streamlit as st

from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member, Nap
from tripplan.documents.places.offer_sentences import age_in_words
from tripplan.planning.family.sleep import sleep_sentence, usual_naps
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.form import Form, form_for
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Setting, entries, questions
from tripplan.screens.household.saving import PAGE, check_and_save, raw_household
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.lasting import let_go, let_last
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.view import View

_NEW = "new_member"
_NEW_NAP = Nap(start=time(12, 30), minutes=90)
"""What a nap that is added says at first."""
_PERSON = questions(Member, plain=True)
_NAPS = entries(Member, "naps", entry="nap{index}_{name}", leave_out="no longer taken, leave it out")


def member_form(view: View, kept: StoredDocument[Household], index: int) -> None:
    """One person with the usual naps, to be changed or removed.

    Args:
        view: whose records.
        kept: the household.
        index: of the person among its members.
    """
    member = kept.value.members[index]
    age = age_in_words(member.months_on(view.today))
    count = "" if not member.naps else ", one nap" if len(member.naps) == 1 else f", {len(member.naps)} naps"
    part = fold(plain(f"{member.name}, {age}{count}"), f"open_member_{index}")
    if part is None:
        return
    with part:
        more_naps, offered = f"more_naps_{index}", f"usual_naps_{index}"
        usual = usual_naps(member.months_on(view.today))
        naps = tuple(usual) if st.session_state.get(offered) else member.naps
        more = int(st.session_state.get(more_naps, 0))
        suggested = member.model_copy(update={"naps": (*naps, *(_NEW_NAP,) * more)})
        form = form_for(
            f"member_{index}", (*_PERSON, *_NAPS), member, _setting(view, kept), suggested=suggested
        )
        _sleep_at_this_age(member, usual, view.today, offered)
        if member.born.age is not None:
            st.caption(
                plain(
                    f"Known: {member.born}. Type the birth date when you have it; prices then fit to the day."
                )
            )
        with form_box(form.fields):
            form.draw()
            save_button(
                form.fields,
                "Save",
                key=f"save_member_{index}",
                on_click=_save_member,
                args=(view, kept, index, form),
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


def _setting(view: View, kept: StoredDocument[Household]) -> Setting:
    return Setting(country=kept.value.home.country, today=view.today)


def _sleep_at_this_age(member: Member, usual: Sequence[Nap], today: date, offered: str) -> None:
    """What is recommended and usual at this age, and a button that fills the usual naps in."""
    said = sleep_sentence(member, today)
    if said:
        st.caption(plain(said))
    if usual and tuple(usual) != member.naps and not st.session_state.get(offered):
        st.button(
            "Fill in the naps that are usual at this age",
            key=f"offer_{offered}",
            on_click=let_last,
            args=({offered: True},),
            help="Two naps by 9 to 12 months, one by 15 to 24 months, none for most from four years on "
            "(Weissbluth, Sleep 18:82-87, 1995); the clock times are a first guess without a source. "
            "Change what is different for your child.",
        )
    if st.session_state.get(offered):
        st.caption("The usual naps stand below. Change what you like; nothing is kept before you save.")


def _one_more_nap(counter: str) -> None:
    let_last({counter: int(st.session_state.get(counter, 0)) + 1})


def _save_member(view: View, kept: StoredDocument[Household], index: int, form: Form) -> None:
    raw = raw_household(kept.value)
    member = raw["members"][index]
    before = member["name"]
    form.put(member)
    member["naps"].sort(key=lambda nap: str(nap.get("start", "")))
    for held in raw.get("passes", ()):
        held["holders"] = [member.get("name", "") if name == before else name for name in held["holders"]]
    if check_and_save(view, form.name, kept.revision, raw):
        let_go(f"more_naps_{index}", f"usual_naps_{index}")


def _remove_member(view: View, kept: StoredDocument[Household], index: int) -> None:
    raw = raw_household(kept.value)
    name = raw["members"].pop(index)["name"]
    for held in raw.get("passes", ()):
        held["holders"] = [holder for holder in held["holders"] if holder != name]
    raw["passes"] = [held for held in raw.get("passes", ()) if held["holders"]]
    said = f"{name} is removed. 'Undo last change' brings {name} back."
    check_and_save(view, PAGE, kept.revision, raw, said=said)


def new_member_form(view: View, kept: StoredDocument[Household]) -> None:
    """Somebody new; naps come once the person is there."""
    part = fold("Add a person", "open_new_member")
    if part is None:
        return
    with part:
        form = form_for(_NEW, _PERSON, None, _setting(view, kept))
        with form_box(form.fields):
            form.draw()
            save_button(
                form.fields, "Add", key="save_new_member", on_click=_add_member, args=(view, kept, form)
            )
        st.caption("Naps can be added once the person is here.")
        show_notice(_NEW)


def _add_member(view: View, kept: StoredDocument[Household], form: Form) -> None:
    raw = raw_household(kept.value)
    raw["members"].append({})
    form.put(raw["members"][-1])
    name = raw["members"][-1].get("name", "")
    check_and_save(view, _NEW, kept.revision, raw, said=f"{name} is added.")
