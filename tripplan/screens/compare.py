"""Compare: up to three outings, each on its best day, by total cost."""

from collections.abc import Sequence

import pandas as pd
import streamlit as st

from tripplan.documents.places.idea import IdeaPlace
from tripplan.language import wording
from tripplan.language.sentences import say, told
from tripplan.planning.compare.certainty import how_sure
from tripplan.planning.compare.choose import SIDE_BY_SIDE, Candidate
from tripplan.planning.compare.flips.every_input import first_of_each
from tripplan.planning.compare.flips.flip import flips_in_short
from tripplan.planning.family.family import Family
from tripplan.planning.outing.idea_notes import assumed
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.passed_over import passed_over_together
from tripplan.planning.outing.sentences import (
    cars_sentence,
    compared_facts,
    crowd_sentence,
    drive_sources,
    leaving_sentence,
    nap_sentence,
    way_known,
)
from tripplan.planning.outing.weather.visit_weather import weather_there
from tripplan.records.kinds import ComparedPlaces
from tripplan.screens.calendar.candidates import pencil_in
from tripplan.screens.compared_places import compared_places, picked_places
from tripplan.screens.look import cards
from tripplan.screens.look.charts import cost_chart
from tripplan.screens.look.drawings import kind_of
from tripplan.screens.look.folds import chip
from tripplan.screens.look.outing_card import outing_face, scale_of
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import (
    kept_party,
    kept_span,
    open_or_close,
    party_in_short,
    party_picker,
    place_names,
    span_in_short,
    span_picker,
    take,
)
from tripplan.screens.widgets.explain import cost_lines, crowd_lines, ideas_told, tickets_of
from tripplan.screens.widgets.frame import family_or_stop, places_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View

_SPOT = "compared"


def render(view: View) -> None:
    """Show the outings the parent compares, each on its best day, and what would change the order."""
    family = family_or_stop(view)
    places_or_stop(family, say("doors-page-compare"))
    outings = compared_outings(view, family)
    if len(outings) > 1:
        _more(view, family, outings)


def compared_outings(view: View, family: Family) -> list[Outing]:
    """The headline, chips for what the answer hangs on, and a card an outing.

    Args:
        view: whose records.
        family: with at least one place.

    Returns:
        The outings of the places that can be gone to.
    """
    headline = st.empty()
    _chips(view, family)
    places, party, span = compared_places(view, family), kept_party(view, family), kept_span(view)
    candidates = answers.compared(family, party, places, span, view.today)
    outings = [candidate.best for candidate in candidates if candidate.best is not None]
    headline.title(say("compare-headline", outings=len(outings), people=len(party)), anchor=False)
    for number, (column, candidate) in enumerate(
        zip(st.columns(len(candidates)), candidates, strict=True) if candidates else ()
    ):
        with column, st.container(border=True, key=f"card_{candidate.place.id}"):
            _card(view, family, candidate, outings, first=number == 0)
    if outings:
        st.caption(plain(_drives(outings)))
    return outings


def _chips(view: View, family: Family) -> None:
    with st.container(horizontal=True, key="chips"):
        chip(party_in_short(view, family), "open_who", lambda: party_picker(view, family))
        chip(span_in_short(view), "open_when", lambda: span_picker(view))
        where = say("choices-places", places=len(compared_places(view, family)))
        chip(where, "open_where", lambda: _places_picker(view, family))
    show_notice(_SPOT)


def _places_picker(view: View, family: Family) -> None:
    """Ask which places to compare, and keep the answer in the records; none means the best few."""

    def keep(*picked: str) -> None:
        with report_errors(_SPOT), view.records.change(view.services.clock()) as change:
            before = change.get(ComparedPlaces)
            change.save(ComparedPlaces(places=picked), before.revision if before else 0)

    st.multiselect(
        say("choices-which-places"),
        [place.id for place in family.places],
        default=[place.id for place in compared_places(view, family)],
        format_func=place_names(family).__getitem__,
        max_selections=SIDE_BY_SIDE,
        key="compared_places",
        on_change=lambda: keep(*st.session_state["compared_places"]),
    )
    if picked_places(view, family):
        st.button(say("compare-suggest"), key="suggest_places", on_click=keep)


def _card(
    view: View, family: Family, candidate: Candidate, outings: Sequence[Outing], *, first: bool
) -> None:
    place, outing = candidate.place, candidate.best
    if outing is None:
        st.html(
            cards.face(
                cards.name(place.name, drawing=kind_of(place)),
                cards.warning(say("compare-no-day")),
            )
        )
        with st.expander(say("compare-why-not"), key=f"open_why_not_{place.id}", on_change="rerun") as part:
            if part.open:
                st.markdown(bullets(one.sentence for one in passed_over_together(candidate.passed_over)))
        return
    idea = cards.warning(say("compare-only-idea")) if isinstance(place, IdeaPlace) else ""
    st.html(outing_face(outing, scale_of(outings)) + idea)
    why = f"why_{place.id}"
    with st.container(horizontal=True, gap="small"):
        if st.button(
            plain(say("compare-plan", place=place.name)),
            key=f"take_{place.id}",
            type="primary" if first else "secondary",
        ):
            take(view, place.id, outing.day)
            st.switch_page("screens/pages/day_plan.py")
        asked = say("compare-why", total=wording.whole_money(outing.cost.total.likely))
        is_open = st.session_state.get(why, False)
        st.button(
            plain(say("compare-close") if is_open else asked),
            key=f"ask_{why}",
            type="tertiary",
            on_click=open_or_close,
            args=(why,),
        )
    if is_open:
        _why(family, outing)


def _why(family: Family, outing: Outing) -> None:
    """Everything that the card says in a word, in full."""
    for said in (*told(assumed(outing.place)), *ideas_told([outing])):
        st.caption(plain(said))
    st.markdown(_facts(family, outing))
    st.markdown(crowd_lines(outing.crowd))
    st.markdown(f"**{say('compare-what-it-costs')}**")
    st.markdown(cost_lines(outing.cost))
    st.markdown(f"**{say('compare-tickets')}**")
    st.markdown(tickets_of(outing))
    if outing.notes:
        st.markdown(bullets(outing.notes))
    if outing.cautions:
        st.markdown(f"**{say('compare-safety')}**")
        st.markdown(bullets(told(outing.cautions)))


def _facts(family: Family, outing: Outing) -> str:
    plan = outing.plan
    said = (
        ("compare-leave-home", say("compare-and-back", leaving=leaving_sentence(plan), home=plan.home)),
        ("compare-drive", way_known(outing.way_there.drive, family.household.units)),
        ("compare-cars", cars_sentence(outing, family.household)),
        ("compare-at-place", wording.minutes(plan.visit_minutes)),
        ("compare-nap", nap_sentence(outing)),
        ("compare-weather", weather_there(outing.weather).text),
        ("compare-crowds", crowd_sentence(outing.crowd)),
    )
    return "\n".join(f"- **{say(name)}** {plain(what)}" for name, what in said if what)


def _more(view: View, family: Family, outings: list[Outing]) -> None:
    """The analysis, folded, and planning all of them as maybes."""
    places, party, span = compared_places(view, family), kept_party(view, family), kept_span(view)
    with st.expander(say("compare-how-sure"), key="open_sure", on_change="rerun") as part:
        if part.open:
            said = (*how_sure(outings).facts, *first_of_each(outings))
            st.markdown(plain(" ".join(told(said))))
            st.markdown(bullets(flips_in_short(answers.flips(family, party, places, span, view.today))))
    with st.expander(say("compare-all-figures"), key="open_figures", on_change="rerun") as part:
        if part.open:
            st.altair_chart(
                cost_chart(outings),
                alt=say("compare-chart"),
            )
            heads = [plain(outing.place.name) for outing in outings]
            facts = compared_facts(outings, family.household.units)
            rows = {wording.capital(name): cells for name, cells in facts.items()}
            st.table(pd.DataFrame.from_dict(rows, orient="index", columns=heads).map(plain))
            st.caption(plain(_drives(outings)))
    pencil_in(view, family.household, outings)


def _drives(outings: Sequence[Outing]) -> str:
    return drive_sources({one.place.name: one.way_there.drive for one in outings})
