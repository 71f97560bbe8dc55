"""A card a person: age, a usual day with its naps, and needs; pressed, the form of that person alone."""

from collections.abc import Sequence
from datetime import time
from functools import partial

import streamlit as st

from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member, Nap
from tripplan.documents.places.offer_sentences import age_in_words
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.sleep import sleep_sentence, usual_naps
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.form import Form, form_for
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Setting, entries, questions
from tripplan.screens.household.parts import Part, card
from tripplan.screens.household.saving import PAGE, check_and_save, raw_household
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.folds import fold
from tripplan.screens.widgets.lasting import let_go, let_last
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.view import View
from tripplan.values.clocks import minute_of_day

SHEET = """
.tp-awake { position: relative; height: .8rem; border-radius: .4rem; background: var(--soft);
  margin: .3rem 0; }
.tp-awake i { position: absolute; top: 0; bottom: 0; background: var(--part-1); border-radius: .2rem; }
@media (forced-colors: active) { .tp-awake { border: 1px solid; }
  .tp-awake i { background: CanvasText; forced-color-adjust: none; } }
"""
_NEW = "new_member"
_NEW_NAP = Nap(start=time(12, 30), minutes=90)
"""What a nap that is added says at first."""
_PERSON = questions(Member, plain=True)
_FRONT = ("name", "born", "needs")
_BEHIND = tuple(one.name for one in _PERSON if one.name not in _FRONT)
_NAPS = entries(Member, "naps", entry="nap{index}_{name}", leave_out="household-leave-nap-out")
_DAY = 24 * 60


def person_card(view: View, kept: StoredDocument[Household], index: int, asked: Sequence[str]) -> None:
    """One person, to be changed or removed.

    Args:
        view: whose household.
        kept: the household.
        index: of the person among its members.
        asked: what is unlikely about the person, as questions.
    """
    member = kept.value.members[index]
    age = age_in_words(member.months_on(view.today))
    needs = [Chip("needs", one.strip()) for one in member.needs.replace("\n", ";").split(";")]
    day = say("household-day-of", wakes=member.wakes, bed=member.bed)
    face = cards.face(
        cards.name(member.name),
        cards.small(age, day),
        _band(member) if member.naps else "",
        cards.chips([*(Chip("nap", _nap_words(nap)) for nap in member.naps), *needs]),
        *map(cards.warning, asked),
    )
    card(
        view,
        f"member_{index}",
        face,
        [Part(f"member_{index}", member.name, partial(_form, view, kept, index))],
    )


def _nap_words(nap: Nap) -> str:
    return say("household-nap", start=nap.start, length=wording.minutes(nap.minutes))


def _band(member: Member) -> str:
    """The waking day as a line, with each nap as a band on it."""
    wakes = minute_of_day(member.wakes)
    awake = (minute_of_day(member.bed) - wakes) % _DAY or _DAY
    marks, told = [], []
    for nap in member.naps:
        begins = (minute_of_day(nap.start) - wakes) % _DAY
        ends = min(begins + nap.minutes, awake)
        if begins < ends:
            left, width = (f"{100 * part / awake:.1f}%" for part in (begins, ends - begins))
            marks.append(f'<i style="left:{left};width:{width}"></i>')
        over = (minute_of_day(nap.start) + nap.minutes) % _DAY
        told.append(say("household-span", start=nap.start, end=time(over // 60, over % 60)))
    said = say("household-nap-band", wakes=member.wakes, bed=member.bed, naps=tuple(told))
    return f'<div class="tp-awake" role="img" aria-label="{cards.text(said)}">{"".join(marks)}</div>'


def _form(view: View, kept: StoredDocument[Household], index: int) -> None:
    member = kept.value.members[index]
    more_naps, offered = f"more_naps_{index}", f"usual_naps_{index}"
    usual = usual_naps(member.months_on(view.today))
    naps = tuple(usual) if st.session_state.get(offered) else member.naps
    more = int(st.session_state.get(more_naps, 0))
    suggested = member.model_copy(update={"naps": (*naps, *(_NEW_NAP,) * more)})
    form = form_for(f"member_{index}", (*_PERSON, *_NAPS), member, _setting(view, kept), suggested=suggested)
    if member.born.age is not None:
        st.caption(plain(say("household-only-age", born=str(member.born))))
    with form_box(form.fields, border=False):
        form.draw(*_FRONT)
        _sleep_at_this_age(view, member, usual, offered)
        form.draw(*(one.name for one in _NAPS))
        with st.container(horizontal=True):
            st.button(
                plain(say("household-add-nap", name=member.name)),
                key=f"add_nap_{index}",
                on_click=_one_more_nap,
                args=(more_naps,),
            )
        behind = fold(plain(say("household-more-about", name=member.name)), f"open_more_{index}")
        if behind is not None:
            with behind:
                form.draw(*_BEHIND)
        save_button(
            form.fields,
            plain(say("household-save", what=member.name)),
            key=f"save_member_{index}",
            on_click=_save_member,
            args=(view, kept, index, form),
        )
    if len(kept.value.members) > 1:
        st.button(
            plain(say("household-remove", name=member.name)),
            key=f"remove_member_{index}",
            type="tertiary",
            on_click=_remove_member,
            args=(view, kept, index),
        )


def _setting(view: View, kept: StoredDocument[Household]) -> Setting:
    return Setting(country=kept.value.home.country, today=view.today)


def _sleep_at_this_age(view: View, member: Member, usual: Sequence[Nap], offered: str) -> None:
    """What is recommended and usual at this age, and a button that fills the usual naps in."""
    said = sleep_sentence(member, view.today)
    if said:
        st.caption(plain(said))
    if st.session_state.get(offered):
        st.caption(say("household-usual-naps-stand"))
    elif usual and tuple(usual) != member.naps:
        st.button(
            say("household-usual-naps"),
            key=f"offer_{offered}",
            on_click=let_last,
            args=({offered: True},),
            help=say("household-usual-naps-why"),
        )


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
    check_and_save(view, PAGE, kept.revision, raw, said=say("household-removed", name=name))


def new_person_card(view: View, kept: StoredDocument[Household]) -> None:
    """Somebody new; naps come once the person is there."""
    draw = partial(_new_form, view, kept)
    label = say("household-add-person")
    card(view, _NEW, "", [Part(_NEW, say("household-new-person"), draw, label)])


def _new_form(view: View, kept: StoredDocument[Household]) -> None:
    form = form_for(_NEW, _PERSON, None, _setting(view, kept))
    with form_box(form.fields, border=False):
        form.draw(*_FRONT)
        behind = fold(say("household-more-about", name=say("household-new-person")), "open_more_new")
        if behind is not None:
            with behind:
                form.draw(*_BEHIND)
        st.caption(say("household-naps-later"))
        save_button(
            form.fields,
            say("household-add"),
            key="save_new_member",
            on_click=_add_member,
            args=(view, kept, form),
        )


def _add_member(view: View, kept: StoredDocument[Household], form: Form) -> None:
    raw = raw_household(kept.value)
    raw["members"].append({})
    form.put(raw["members"][-1])
    name = raw["members"][-1].get("name", "")
    check_and_save(view, _NEW, kept.revision, raw, said=say("household-added", name=name))
