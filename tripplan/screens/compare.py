"""Compare: up to three outings side by side by total cost."""

import pandas as pd
import streamlit as st

from tripplan.documents.places.place import Place
from tripplan.planning.compare.certainty import how_sure
from tripplan.planning.compare.choose import Candidate
from tripplan.planning.compare.flips.flip import flips_in_short
from tripplan.planning.family.family import Family
from tripplan.planning.outing.idea_notes import assumed_sentences
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.passed_over import passed_over_together
from tripplan.planning.outing.sentences import (
    cars_sentence,
    compared_facts,
    crowd_sentence,
    drive_sources,
    leaving_sentence,
    nap_sentence,
    way_sentence,
)
from tripplan.planning.outing.visit_weather import weather_sentence
from tripplan.records.kinds import ComparedPlaces
from tripplan.screens.calendar.candidates import pencil_in
from tripplan.screens.choose_day.free_today import render_free_today
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.charts import cost_chart
from tripplan.screens.widgets.choices import party_picker, place_names, say_taken, span_picker, take
from tripplan.screens.widgets.explain import cost_lines, crowd_lines, ideas_told, tickets_of
from tripplan.screens.widgets.frame import family_or_stop, places_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View
from tripplan.values import wording

SIDE_BY_SIDE = 3
_SPOT = "compared"


def render(view: View) -> None:
    """Show the outings the parent compares, each on its best day."""
    family = family_or_stop(view)
    st.title("What would it cost, all in?")
    places_or_stop(family)
    render_free_today(view, family)
    places = _places_picker(view, family)
    with st.expander("Who goes, and when", expanded=False):
        party = party_picker(view, family)
        span = span_picker(view)
    if not places:
        st.info("Pick one to three places.")
        return
    candidates = answers.compared(family, party, places, span, view.today)
    for column, candidate in zip(st.columns(len(candidates)), candidates, strict=True):
        with column, st.container(border=True):
            _card(view, family, candidate)
    outings = [candidate.best for candidate in candidates if candidate.best is not None]
    say_taken(view, family)
    if len(outings) > 1:
        pencil_in(view, family.household, outings)
    if outings:
        st.caption(plain(drive_sources({one.place.name: one.way_there.drive for one in outings})))
        _side_by_side(family, outings)
    if len(outings) > 1:
        st.header("How sure is that?", anchor=False)
        st.markdown(plain(how_sure(outings).sentence))
        with st.expander("What would change the order", expanded=True):
            st.markdown(bullets(flips_in_short(answers.flips(family, party, places, span, view.today))))


def _places_picker(view: View, family: Family) -> list[Place]:
    """Ask which places to compare, and keep the answer in the records."""
    kept = view.records.get(ComparedPlaces)
    ids = [place.id for place in family.places]
    usual = [place_id for place_id in (kept.value.places if kept else ids) if place_id in ids]

    def keep() -> None:
        picked = ComparedPlaces(places=tuple(st.session_state["compared_places"]))
        with report_errors(_SPOT), view.records.change(view.services.clock()) as change:
            before = change.get(ComparedPlaces)
            change.save(picked, before.revision if before else 0)

    picked = st.multiselect(
        "Which places?",
        ids,
        default=usual[:SIDE_BY_SIDE],
        format_func=place_names(family).__getitem__,
        max_selections=SIDE_BY_SIDE,
        key="compared_places",
        on_change=keep,
    )
    show_notice(_SPOT)
    return [place for place in family.places if place.id in picked]


def _card(view: View, family: Family, candidate: Candidate) -> None:
    place, outing = candidate.place, candidate.best
    st.header(plain(place.name), anchor=False)
    st.caption(plain(" · ".join(filter(None, (place.where.town, wording.listed(place.visit.topics[:3]))))))
    if outing is None:
        st.warning("No day in this span can be done.")
        _passed_over(candidate)
        return
    for said in assumed_sentences(place):
        st.caption(plain(said))
    for said in ideas_told([outing]):
        st.caption(plain(said))
    total = outing.cost.total
    st.metric("in all, for everybody", _whole(outing), border=False)
    st.caption(plain(_range_sentence(outing)))
    st.markdown(
        "\n".join(
            f"- **{name}** {plain(said)}"
            for name, said in (
                ("Best day:", wording.day(outing.day)),
                (
                    "Leave home:",
                    f"{leaving_sentence(outing.plan)}; back {wording.clock(outing.plan.home)}",
                ),
                (
                    "Drive, one way:",
                    f"{way_sentence(outing.way_there.drive, family.household.units)} "
                    f"({outing.way_there.drive.known_in_words})",
                ),
                ("Cars:", cars_sentence(outing, family.household)),
                ("At the place:", wording.minutes(outing.plan.visit_minutes)),
                ("Nap:", nap_sentence(outing)),
                ("Weather there:", weather_sentence(outing.weather)),
                ("Full house:", crowd_sentence(outing.crowd)),
            )
            if said
        )
    )
    st.button(
        "Take this one",
        key=f"take_{place.id}",
        type="primary",
        on_click=take,
        args=(view, place.id, outing.day),
        help="Day plan and Calendar then speak of this place and day.",
    )
    with st.expander("Why so full or empty?"):
        st.markdown(crowd_lines(outing.crowd))
    with st.expander(plain(f"Why {wording.money(total.likely)}?")):
        st.markdown(cost_lines(outing.cost))
        st.markdown("**Tickets**")
        st.markdown(tickets_of(outing))
        if outing.notes:
            st.markdown(bullets(outing.notes))
    if outing.cautions:
        with st.expander("Please mind"):
            st.markdown(bullets(outing.cautions))


def _whole(outing: Outing) -> str:
    said = wording.whole_money(outing.cost.total.likely)
    return f"at least {said}" if outing.cost.unknown else said


def _range_sentence(outing: Outing) -> str:
    total = outing.cost.total
    said = f"an estimate; nine times in ten {wording.money_ends(total)}"
    if outing.cost.unknown:
        said += f"; not known and not counted: {wording.listed(outing.cost.unknown)}"
    return said


def _passed_over(candidate: Candidate) -> None:
    with st.expander("Why not?"):
        st.markdown(bullets(one.sentence for one in passed_over_together(candidate.passed_over)))


def _side_by_side(family: Family, outings: list[Outing]) -> None:
    st.header("What the money goes to", anchor=False)
    st.altair_chart(
        cost_chart(outings),
        alt="Stacked bars, one a place: what its likely total is made of; the table says the same",
    )
    st.header("Side by side", anchor=False)
    heads = [plain(outing.place.name) for outing in outings]
    facts = compared_facts(outings, family.household.units)
    rows = {name.capitalize(): cells for name, cells in facts.items()}
    st.table(pd.DataFrame.from_dict(rows, orient="index", columns=heads).map(plain))
