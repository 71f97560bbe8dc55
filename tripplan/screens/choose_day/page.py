"""Choose a day: every place on every day of a span, the best first, and how good each day is."""

from collections import Counter
from collections.abc import Sequence

import numpy as np
import pandas as pd
import streamlit as st

from tripplan.documents.places.place import Place
from tripplan.files.tables import csv_table
from tripplan.language import wording
from tripplan.language.sentences import fact, say
from tripplan.planning.family.family import Family
from tripplan.planning.family.variety import LATELY, lately, places_to_choose_among
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.outing.place_facts import drive_from_home, place_facts
from tripplan.planning.outing.sentences import drive_sources, total_sentence
from tripplan.planning.sweep.dates import Numbers
from tripplan.planning.sweep.listing import HEADINGS, day_rows, each_place_first
from tripplan.planning.sweep.misses import nearest_misses
from tripplan.planning.sweep.table import DayTable, Verdict
from tripplan.planning.sweep.wishes import all_met, wished
from tripplan.screens.choose_day.free_today import render_free_today
from tripplan.screens.choose_day.month_grid import SHEET as GRID
from tripplan.screens.choose_day.month_grid import graded, month_grid
from tripplan.screens.choose_day.weights import weighed, weights_form
from tripplan.screens.choose_day.wishes_form import kept_wishes, wishes_form
from tripplan.screens.look.folds import chip
from tripplan.screens.look.outing_card import outing_face, scale_of
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import (
    keep,
    kept_party,
    kept_span,
    longer_spans,
    party_in_short,
    party_picker,
    place_names,
    span_in_short,
    span_picker,
    take,
)
from tripplan.screens.widgets.explain import crowd_lines, ideas_told
from tripplan.screens.widgets.frame import family_or_stop, places_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.view import View

SHOWN_FIRST = 3
"""So many days are shown as cards; the rest stand in the calendar and the list."""
LISTED = 500
"""So many days stand in the list on the page; the file has them all."""


def render(view: View) -> None:
    """Rank the days that can be done, say why others cannot, and let the parent take one."""
    family = family_or_stop(view)
    places_or_stop(family, say("days-title"))
    headline = st.empty()
    _chips(view, family)
    wishes = kept_wishes(view, family)
    family = weighed(view, family)
    picked = _kept_places(view, family)
    places = [place for place in _choose_among(view, family) if not picked or place.id in picked]
    table = answers.swept(family, kept_party(view, family), places, kept_span(view), view.today)
    made = wished(wishes, table)
    wanted = all_met(made, table)
    ranked = table.ranked(wanted)
    misses = [miss.sentence for miss in nearest_misses(table, made)]
    if made:
        st.caption(plain(say("days-wished", wishes="; ".join(wish.words.text for wish in made))))
    if not len(ranked):
        headline.title(say("days-no-such-day") if made else say("days-no-day"), anchor=False)
        st.warning(say("days-none-as-wished") if made else say("days-none-in-time"))
        st.markdown(bullets(misses))
    else:
        shown = [outing for outing in _shown_first(table, ranked) if isinstance(outing, Outing)]
        headline.title(plain(f"{wording.short_day(shown[0].day)}, {shown[0].place.name}"), anchor=False)
        left, right = st.columns([2, 3])
        with left:
            _card(view, shown, 0)
        with right:
            st.html(f"<style>{GRID}</style>{month_grid(graded(table, wanted))}")
            st.caption(say("days-legend"))
        for number, column in enumerate(st.columns(SHOWN_FIRST - 1), start=1):
            if number < len(shown):
                with column:
                    _card(view, shown, number)
    render_free_today(view, family)
    if not picked:
        _lately(view, family)
    if len(ranked):
        if misses:
            with st.expander(say("days-nearly"), key="open_misses", on_change="rerun") as part:
                if part.open:
                    st.markdown(bullets(misses))
        with st.expander(say("days-every-day"), key="open_all_days", on_change="rerun") as part:
            if part.open:
                _all_days(view, table, ranked)
        st.caption(plain(drive_sources({one.name: drive_from_home(family, one) for one in places})))
    _passed_over(table, int((table.can_go & ~wanted).sum()))


def _chips(view: View, family: Family) -> None:
    picked = _kept_places(view, family)
    where = say("choices-places", places=len(picked)) if picked else say("days-all-places")
    with st.container(horizontal=True, key="chips"):
        chip(party_in_short(view, family), "open_who", lambda: party_picker(view, family))
        chip(span_in_short(view), "open_when", lambda: _span_pickers(view))
        chip(where, "open_places", lambda: _places_picker(view, family, picked))
        chip(say("days-our-wishes"), "open_wishes", lambda: wishes_form(view, family))
        chip(say("days-what-matters"), "open_weights", lambda: weights_form(view, family.household))


def _span_pickers(view: View) -> None:
    span_picker(view)
    longer_spans(view)


def _places_picker(view: View, family: Family, picked: list[str]) -> None:
    names = place_names(family)
    st.multiselect(
        say("choices-which-places"),
        list(names),
        default=picked,
        format_func=names.__getitem__,
        placeholder=say("days-all-of-them"),
        key="day_places",
        on_change=keep,
        args=(_places_name(view), "day_places"),
    )


def _places_name(view: View) -> str:
    return f"day_places_{view.which}"


def _kept_places(view: View, family: Family) -> list[str]:
    kept = st.session_state.get(_places_name(view), [])
    return [place.id for place in family.places if place.id in kept]


def _choose_among(view: View, family: Family) -> Sequence[Place]:
    """The places asked about where none is picked, or all where she wants those of late too."""
    again = _kept_places(view, family) or st.session_state.get(_again_name(view), False)
    return family.places if again else places_to_choose_among(family, view.today)


def _lately(view: View, family: Family) -> None:
    """The places that are left out because the family was there lately or is going there, and a way back."""
    apart = lately(family, view.today)
    if not apart or len(apart) == len(family.places):
        return
    names = place_names(family)
    visits = tuple(fact("days-visit", place=names[place], day=day) for place, day in apart.items())
    st.caption(plain(say("days-lately", weeks=LATELY.days // 7, visits=visits)))
    st.toggle(
        say("days-lately-too"),
        value=st.session_state.get(_again_name(view), False),
        key="places_of_late",
        on_change=keep,
        args=(_again_name(view), "places_of_late"),
    )


def _again_name(view: View) -> str:
    return f"places_of_late_{view.which}"


def _shown_first(table: DayTable, ranked: Numbers) -> list[Outing | NoOuting]:
    """The best days of one place; of several places, the best day of each of the best."""
    return [table.outing(row, column) for row, column in each_place_first(ranked)[:SHOWN_FIRST].tolist()]


def _card(view: View, shown: Sequence[Outing], number: int) -> None:
    """One of the days that are shown; its button tells the place, or the day where all are of one place."""
    outing = shown[number]
    told_by_place = len({one.place.id for one in shown}) == len(shown)
    with st.container(border=True, key=f"card_day_{number}"):
        st.html(outing_face(outing, scale_of(shown)))
        if st.button(
            plain(
                say("compare-plan", place=outing.place.name)
                if told_by_place
                else say("days-plan-day", day=wording.short_day(outing.day))
            ),
            key=f"take_day_{number}",
            type="primary" if number == 0 else "secondary",
        ):
            take(view, outing.place.id, outing.day)
            st.switch_page("screens/pages/day_plan.py")
        with st.expander(say("days-why-full"), key=f"open_crowd_{number}", on_change="rerun") as part:
            if part.open:
                st.markdown(crowd_lines(outing.crowd))
        for said in ideas_told([outing]):
            st.caption(plain(said))


_COLUMNS = {
    "day": "days-day",
    "place": "days-place",
    "something unknown": "days-unknown",
    "leave": "days-leave",
    "back": "days-back",
    "at the place [min]": "days-there",
    "driving [min]": "days-driving",
    "driving in the dark [min]": "days-dark",
    "nap kept [min]": "days-nap-kept",
    "nap lost [min]": "days-nap-lost",
    "school is in, known or likely": "days-school",
}
"""What the columns of the file are called on the page."""


def _all_days(view: View, table: DayTable, ranked: Numbers) -> None:
    count = len(ranked)
    if count > LISTED:
        st.caption(say("days-first-of", shown=LISTED, all=count))
    currency = table.family.household.currency
    rows = pd.DataFrame(day_rows(table, each_place_first(ranked)[:LISTED]), columns=list(HEADINGS))
    rows["day"] = [wording.day(day) for day in rows["day"]]
    st.dataframe(
        rows.drop(columns=["weekday", "currency", "low", "high"]),
        hide_index=True,
        height=320,
        column_config={
            **{name: say(code) for name, code in _COLUMNS.items()},
            "in all": st.column_config.NumberColumn(say("days-total", currency=currency), format="%.2f"),
            "cost plus hassle": st.column_config.NumberColumn(
                say("days-hassle", currency=currency), format="%.2f"
            ),
            "full house [%]": st.column_config.NumberColumn(say("days-packed"), format="%.0f"),
        },
    )
    st.download_button(
        say("days-download"),
        lambda: csv_table(HEADINGS, list(day_rows(table, ranked))),
        file_name=view.file_name("days.csv"),
        mime="text/csv",
        key="days_csv",
    )


def _passed_over(table: DayTable, not_wished: int) -> None:
    missed = int((~table.can_go).sum())
    if not_wished:
        st.caption(say("days-not-as-wished", days=not_wished))
    if not missed:
        return
    with st.expander(say("days-passed-over", days=missed), key="open_passed_over", on_change="rerun") as part:
        if part.open:
            st.markdown(bullets(_counted(table)))
            st.caption(say("days-ask-one"))
            names = [place.name for place in table.places]
            row = names.index(st.selectbox(say("days-place"), names, key="why_place"))
            last = table.day(len(table.days) - 1)
            day = st.date_input(
                say("days-day"),
                table.first,
                min_value=table.first,
                max_value=last,
                format=wording.date_field(),
                key="why_day",
            )
            found = table.outing(row, (day - table.first).days)
            if isinstance(found, NoOuting):
                st.markdown(bullets(found.reasons))
            else:
                st.markdown(plain(say("days-can-be-done", total=total_sentence(found.cost))))


def _counted(table: DayTable) -> list[str]:
    lines = []
    for row, place in enumerate(table.places):
        counts = Counter(table.verdict[row][~table.can_go[row]].tolist())
        why = [Verdict(verdict).on_days(number) for verdict, number in counts.most_common()]
        closed = np.flatnonzero(table.verdict[row] == Verdict.CLOSED)
        if len(closed):
            day = table.day(int(closed[-1]))
            opens = place_facts(table.family, place, (day.year,)).season_opens(day)
            why += [] if opens is None else [say("days-opens", day=opens)]
        if counts:
            lines.append(f"{place.name}: {', '.join(why)}")
    return lines
