"""A card a topic: its outing, the places that fit, and behind a press all that changes it."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta

import streamlit as st

from tripplan.documents.study.units import StudyUnit
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing
from tripplan.planning.study.options import term_of
from tripplan.planning.study.programme import Programme, Term, UnitOuting, elsewhere
from tripplan.planning.study.sentences import (
    close_sentence,
    elsewhere_sentence,
    fit_sentence,
    nowhere_sentences,
    standing_sentence,
)
from tripplan.planning.topic_fit import CloseSpelling, Fits, fits_of, topics_on
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.answers import Raw
from tripplan.screens.forms.form import Form, form_for
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Setting, questions
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.drawings import kind_of
from tripplan.screens.look.folds import fold
from tripplan.screens.study.saving import PAGE, Wanted, remove_unit, save_unit
from tripplan.screens.study.semester import keep, planned_now
from tripplan.screens.widgets import choices
from tripplan.screens.widgets.choices import place_named, place_names, take
from tripplan.screens.widgets.explain import cost_lines, ideas_told
from tripplan.screens.widgets.fields import FieldValue
from tripplan.screens.widgets.lasting import let_go
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.one_open import close_part, opener, part_if_open
from tripplan.screens.widgets.view import View

_USUAL_WEEKS = timedelta(weeks=6)
_NEW = "new_unit"
_ANY = ""


@dataclass(frozen=True)
class Topic:
    """A topic as the page shows it.

    Attributes:
        number: by which its widgets are told from the others'.
        kept: the unit of study on record.
        fits: the places that fit it.
    """

    number: int
    kept: StoredDocument[StudyUnit]
    fits: Fits

    @property
    def unit(self) -> StudyUnit:
        """The unit itself."""
        return self.kept.value


def topic_card(
    view: View, family: Family, topic: Topic, worked_out: tuple[Term, Programme] | None, wanted: Wanted
) -> None:
    """One topic with its outing, if it has one.

    Args:
        view: whose records.
        family: the family in use.
        topic: the topic.
        worked_out: what its outing was chosen from, and all outings; None where nothing could be.
        wanted: what the outings keep to.
    """
    unit, number = topic.unit, topic.number
    found = worked_out[1] if worked_out else None
    one = next((o for o in found.outings if o.unit.name == unit.name), None) if found else None
    without = next((w for w in found.without if w.unit.name == unit.name), None) if found else None
    reasons = [
        *(without.reasons if without else ()),
        *([] if topic.fits.places else [say("studies-no-place")]),
    ]
    with st.container(border=True, key=f"card_topic_{number}"):
        st.html(_face(family, topic, one, reasons))
        for turn, close in enumerate(topic.fits.close):
            _close(view, topic, close, f"same_{number}_{turn}")
        with st.container(horizontal=True, gap="small"):
            outing = planned_now(view, family, one) if one else None
            if outing is not None and st.button(
                plain(say("studies-plan", place=outing.place.name)), key=f"take_{number}"
            ):
                take(view, outing.place.id, outing.day)
                st.switch_page("screens/pages/day_plan.py")
            opener(view, PAGE, f"topic_{number}", say("studies-change", unit=unit.name), about=unit.name)
        part = part_if_open(view, PAGE, f"topic_{number}")
        if part is None:
            return
        with part:
            if one is not None and worked_out is not None:
                _its_outing(view, family, topic, one, outing, worked_out, wanted)
            else:
                _free_again(topic, wanted)
            _edit(view, family, topic)


def _face(family: Family, topic: Topic, one: UnitOuting | None, reasons: list[str]) -> str:
    unit = topic.unit
    place = place_named(family, one.option.place) if one else None
    total = "" if one is None else wording.whole_money(one.option.cost.likely)
    first, last = wording.short_day(unit.first), wording.short_day(unit.last)
    weeks = say("studies-weeks", first=first, last=last)
    chips = []
    if one is not None:
        standing = "studies-planned" if one.planned else "studies-fixed" if one.settled else ""
        chips = [
            Chip("day", wording.short_day(one.option.day)),
            Chip("both" if place is None else kind_of(place), place.name if place else one.option.place),
            Chip("plan", say(standing) if standing else ""),
        ]
    others = [fit.place.name for fit in topic.fits.places if place is None or fit.place.id != place.id]
    return cards.face(
        cards.name(unit.name, f"{total}+" if one and one.option.at_least else total),
        cards.small(weeks),
        cards.said(", ".join(unit.topics)),
        cards.chips(chips),
        cards.said(say("studies-also-fit", places=tuple(others))) if others else "",
        *map(cards.warning, map(wording.capital, reasons)),
    )


def _close(view: View, topic: Topic, close: CloseSpelling, key: str) -> None:
    st.caption(plain(close_sentence(close)))
    st.button(
        plain(say("studies-counts-too", topic=close.on_cards)),
        key=key,
        on_click=_take_spelling,
        args=(view, topic, close),
    )


def _take_spelling(view: View, topic: Topic, close: CloseSpelling) -> None:
    """Put the cards' spelling in the place of the topic's own."""
    unit = topic.unit
    topics = [close.on_cards if one == close.topic else one for one in unit.topics]
    values = unit.model_dump(mode="json", exclude_none=True) | {"topics": topics}
    save_unit(view, PAGE, values, topic.kept.revision)


# --- its outing -------------------------------------------------------------------------------------------


def _its_outing(
    view: View,
    family: Family,
    topic: Topic,
    one: UnitOuting,
    outing: Outing | None,
    worked_out: tuple[Term, Programme],
    wanted: Wanted,
) -> None:
    """Why this place, and what can be said against it."""
    names, number, place = place_names(family), topic.number, one.option.place
    fits = [fit_sentence(fit) for fit in topic.fits.places if fit.place.id == place]
    for said in (*fits, standing_sentence(one), *(ideas_told([outing]) if outing else ())):
        if said:
            st.caption(plain(said))
    for said in nowhere_sentences(topic.fits):
        st.caption(plain(said))
    if outing is not None:
        why = say("studies-why", total=wording.whole_money(outing.cost.total.likely))
        costs = fold(plain(why), f"open_why_{number}")
        if costs is not None:
            costs.markdown(cost_lines(outing.cost))
    if one.planned is not None:
        return
    with st.container(horizontal=True):
        if outing is not None:
            st.button(
                plain(say("studies-keep", place=outing.place.name)),
                key=f"keep_{number}",
                on_click=keep,
                args=(view, family, [(topic.unit, outing)]),
            )
        _change_buttons(topic, one, wanted, names)
    _pick_form(family, topic, wanted, names)
    if st.toggle(say("studies-other-places"), key=f"elsewhere_{number}"):
        _elsewhere(topic, worked_out, wanted, names)


def _change_buttons(topic: Topic, one: UnitOuting, wanted: Wanted, names: Mapping[str, str]) -> None:
    unit, option, wishes, number = topic.unit.name, one.option, wanted.wishes, topic.number
    place, day = names.get(option.place, option.place), option.day
    short = wording.short_day(day)
    if not one.settled:
        said = say("studies-is-fixed", unit=unit, place=place, day=day)
        st.button(
            plain(say("studies-fix", place=place, day=short)),
            key=f"fix_{number}",
            on_click=wanted.save,
            args=(wishes.settling(unit, option.place, day), said),
        )
    said = say("studies-not-on", unit=unit, place=place, day=day)
    st.button(
        plain(say("studies-not-day", day=short)),
        key=f"not_day_{number}",
        on_click=wanted.save,
        args=(wishes.ruling_out(unit, option.place, day), said),
    )
    said = say("studies-not-to", unit=unit, place=place)
    st.button(
        plain(say("studies-not-place", place=place)),
        key=f"not_place_{number}",
        on_click=wanted.save,
        args=(wishes.ruling_out(unit, option.place), said),
    )
    _free_again(topic, wanted)


def _free_again(topic: Topic, wanted: Wanted) -> None:
    """Take back what was fixed or ruled out for a topic."""
    unit, wishes = topic.unit.name, wanted.wishes
    if wishes.settled_for(unit):
        st.button(
            plain(say("studies-free", unit=unit)),
            key=f"free_{topic.number}",
            on_click=wanted.save,
            args=(wishes.settling(unit, None, None), say("studies-freed", unit=unit)),
        )
    ruled_out = [one for one in wishes.ruled_out if one.unit == unit]
    if ruled_out:
        st.button(
            say("studies-allow", count=len(ruled_out)),
            key=f"allow_{topic.number}",
            on_click=wanted.save,
            args=(wishes.allowing_again(unit), say("studies-allowed", unit=unit)),
        )


def _pick_form(family: Family, topic: Topic, wanted: Wanted, names: Mapping[str, str]) -> None:
    """Pick a place, a day or both."""
    unit, number = topic.unit, topic.number
    settled = wanted.wishes.settled_for(unit.name)
    part = fold(say("studies-pick-yourself"), f"open_fix_{number}")
    if part is None:
        return
    with part:
        fitting = [fit.place.id for fit in fits_of(unit, family.places).places]
        places = [_ANY, *fitting, *(place.id for place in family.places if place.id not in fitting)]
        on_record = (settled.place, settled.day) if settled else None
        place_key, day_key = (f"fix_{what}_{number}_{on_record}" for what in ("place", "day"))
        kept_place, kept_day = (f"{key}_{wanted.view.which}" for key in (place_key, day_key))
        place = st.session_state.get(kept_place, settled.place if settled else None)
        st.selectbox(
            say("studies-where-to"),
            places,
            index=places.index(place if place in places else _ANY),
            format_func={_ANY: say("studies-wherever"), **names}.__getitem__,
            key=place_key,
            on_change=choices.keep,
            args=(kept_place, place_key),
        )
        span = term_of(unit, wanted.wishes, wanted.view.today)
        day = st.session_state.get(kept_day, settled.day if settled else None)
        st.date_input(
            say("studies-when"),
            value=day if day and span and day in span else None,
            min_value=span.first if span else None,
            max_value=span.last if span else None,
            format=wording.date_field(),
            key=day_key,
            on_change=choices.keep,
            args=(kept_day, day_key),
        )
        st.button(
            plain(say("studies-plan-so", unit=unit.name)),
            key=f"save_fix_{number}",
            on_click=_fix,
            args=(wanted, unit.name, place_key, day_key),
        )


def _fix(wanted: Wanted, unit: str, place_key: str, day_key: str) -> None:
    let_go(*(f"{key}_{wanted.view.which}" for key in (place_key, day_key)))
    place, day = st.session_state[place_key] or None, st.session_state[day_key]
    said = say("studies-picked", unit=unit) if place or day else say("studies-freed", unit=unit)
    wanted.save(wanted.wishes.settling(unit, place, day), said)


def _elsewhere(
    topic: Topic, worked_out: tuple[Term, Programme], wanted: Wanted, names: Mapping[str, str]
) -> None:
    unit, number = topic.unit.name, topic.number
    others = elsewhere(*worked_out, unit)
    if not others:
        st.caption(say("studies-no-other"))
    for turn, other in enumerate(others):
        st.markdown(plain(elsewhere_sentence(other, names)))
        place = names.get(other.option.place, other.option.place)
        st.button(
            plain(say("studies-instead", place=place)),
            key=f"instead_{number}_{turn}",
            on_click=wanted.save,
            args=(
                wanted.wishes.settling(unit, other.option.place, None),
                say("studies-goes-to", unit=unit, place=place),
            ),
        )


# --- the topic itself -------------------------------------------------------------------------------------


def _edit(view: View, family: Family, topic: Topic) -> None:
    unit, number = topic.unit, topic.number
    part = fold(plain(say("studies-edit", unit=unit.name)), f"open_unit_{number}")
    if part is not None:
        with part:
            _form(view, family, f"unit_{number}", unit, topic.kept.revision)
    st.button(
        plain(say("studies-remove", unit=unit.name)),
        key=f"remove_unit_{number}",
        type="tertiary",
        on_click=remove_unit,
        args=(view, topic.kept),
    )


def new_topic(view: View, family: Family, *, is_first: bool) -> None:
    """The form for one more topic; where it is the first, it stands open."""
    with st.container(border=True, key="card_new_topic"):
        if is_first:
            _form(view, family, _NEW, None, 0)
            return
        opener(view, PAGE, _NEW, say("studies-add"), about=say("studies-new"))
        part = part_if_open(view, PAGE, _NEW)
        if part is not None:
            with part:
                _form(view, family, _NEW, None, 0)


def _form(view: View, family: Family, name: str, unit: StudyUnit | None, revision: int) -> None:
    offered = {
        "topics": {topic: topic for topic in topics_on(family.places)},
        "people": {member.name: member.name for member in family.household.members},
        "places": place_names(family),
    }
    setting = Setting(currency=family.household.currency, offered=offered)
    first = view.today + timedelta(days=1)
    weeks: dict[str, FieldValue] = {} if unit else {"first": first, "last": view.today + _USUAL_WEEKS}
    asked = questions(StudyUnit, leaving_out=("name",) if unit else ())
    form = form_for(name, asked, unit, setting, also=weeks)
    with form_box(form.fields, border=False):
        form.draw()
        save_button(
            form.fields,
            plain(say("studies-save-unit", unit=unit.name)) if unit else say("studies-add-this"),
            key=f"save_{name}",
            on_click=_save,
            args=(view, form, unit, revision),
            is_main=unit is None,
        )


def _save(view: View, form: Form, unit: StudyUnit | None, revision: int) -> None:
    raw: Raw = unit.model_dump(mode="json", exclude_none=True) if unit else {}
    raw["currency"] = form.setting.currency
    form.put(raw)
    if save_unit(view, form.name, raw, revision):
        close_part(view, PAGE)
