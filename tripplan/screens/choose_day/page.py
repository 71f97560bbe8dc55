"""Choose a day: every place on every day of a span, in order of what the day costs and weighs."""

from collections import Counter

import numpy as np
import pandas as pd
import streamlit as st

from tripplan.files.tables import csv_table
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.outing.place_facts import drive_from_home, place_facts
from tripplan.planning.outing.sentences import (
    crowd_sentence,
    drive_sources,
    leaving_sentence,
    nap_sentence,
    total_sentence,
    way_sentence,
)
from tripplan.planning.outing.visit_weather import weather_sentence
from tripplan.planning.sweep.dates import Numbers
from tripplan.planning.sweep.listing import HEADINGS, day_rows, each_place_first
from tripplan.planning.sweep.misses import nearest_misses
from tripplan.planning.sweep.table import DayTable, Verdict
from tripplan.planning.sweep.wishes import all_met, wished
from tripplan.screens.choose_day.free_today import render_free_today
from tripplan.screens.choose_day.weights import weighed
from tripplan.screens.choose_day.wishes_form import wishes_form
from tripplan.screens.choose_day.year import ALT, LEGEND, year_chart
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import (
    longer_spans,
    party_picker,
    place_names,
    say_taken,
    span_picker,
    take,
)
from tripplan.screens.widgets.explain import crowd_lines, ideas_told
from tripplan.screens.widgets.frame import family_or_stop, places_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.view import View
from tripplan.values import wording

SHOWN_FIRST = 3
"""So many days are shown in full; the rest stand in the table."""
LISTED = 500
"""So many days stand in the table on the page; the file has them all."""


def render(view: View) -> None:
    """Rank the days that can be done, say why others cannot, and let the parent take one."""
    family = family_or_stop(view)
    st.title("Which day?")
    places_or_stop(family)
    render_free_today(view, family)
    ids = [place.id for place in family.places]
    picked = st.multiselect(
        "Which places?",
        ids,
        format_func=place_names(family).__getitem__,
        placeholder="all of them",
        key="day_places",
    )
    with st.expander("Who goes, and when", expanded=False):
        party = party_picker(view, family)
        span = span_picker(view)
        longer_spans(view)
    with st.expander("What the day should be like", expanded=False):
        wishes = wishes_form(view, family)
    family = weighed(view, family)
    places = [place for place in family.places if not picked or place.id in picked]
    table = answers.swept(family, party, places, span, view.today)
    made = wished(wishes, table)
    wanted = all_met(made, table)
    ranked = table.ranked(wanted)
    if made:
        st.caption(plain(f"Wished: {'; '.join(wish.words for wish in made)}."))
    if not len(ranked):
        st.warning("No day in this span can be done." if not made else "No day in this span is as you wish.")
        _nearly([miss.sentence for miss in nearest_misses(table, made)])
    else:
        shown = _shown_first(ranked)
        _best(view, table, shown)
        st.caption(plain(drive_sources({place.name: drive_from_home(family, place) for place in places})))
        say_taken(view, family)
        _nearly([miss.sentence for miss in nearest_misses(table, made)])
        st.header("The whole span at a glance", anchor=False)
        st.caption(LEGEND)
        st.altair_chart(year_chart(table, wanted, shown), alt=ALT)
        _all_days(view, table, ranked)
    _passed_over(table, int((table.can_go & ~wanted).sum()))


def _shown_first(ranked: Numbers) -> list[tuple[int, int]]:
    """The best days of one place; of several places, the best day of each of the best."""
    return [(row, column) for row, column in each_place_first(ranked)[:SHOWN_FIRST].tolist()]


def _best(view: View, table: DayTable, shown: list[tuple[int, int]]) -> None:
    for number, (row, column) in enumerate(shown):
        outing = table.outing(row, column)
        if not isinstance(outing, Outing):
            continue
        units = table.family.household.units
        with st.container(border=True):
            st.header(plain(f"{number + 1}. {wording.day(outing.day)}: {outing.place.name}"), anchor=False)
            st.markdown(
                plain(
                    f"{total_sentence(outing.cost)} in all, "
                    f"{wording.money(outing.generalized_cost)} with nuisances counted. "
                    f"Leave home: {leaving_sentence(outing.plan)}; back {wording.clock(outing.plan.home)}. "
                    f"Drive, one way: {way_sentence(outing.way_there.drive, units)} "
                    f"({outing.way_there.drive.known_in_words}). "
                    f"Nap: {nap_sentence(outing)}. Weather there: {weather_sentence(outing.weather)}. "
                    f"Full house: {crowd_sentence(outing.crowd)}."
                )
            )
            for said in ideas_told([outing]):
                st.caption(plain(said))
            st.button(
                "Take this day",
                key=f"take_day_{number}",
                type="primary" if number == 0 else "secondary",
                on_click=take,
                args=(view, outing.place.id, outing.day),
                help="Day plan and Calendar then speak of this place and day.",
            )
            with st.expander("Why so full or empty?"):
                st.markdown(crowd_lines(outing.crowd))


def _nearly(sentences: list[str]) -> None:
    if sentences:
        st.header("Nearly", anchor=False)
        st.markdown(bullets(sentences))


def _all_days(view: View, table: DayTable, ranked: Numbers) -> None:
    count = len(ranked)
    st.header("Every day that can be done", anchor=False)
    if count > LISTED:
        st.caption(f"{LISTED} of {count}, the best of each place first; the file below has them all.")
    currency = table.family.household.currency
    rows = pd.DataFrame(day_rows(table, each_place_first(ranked)[:LISTED]), columns=list(HEADINGS))
    rows["day"] = [wording.day(day) for day in rows["day"]]
    st.dataframe(
        rows.drop(columns=["weekday", "currency", "low", "high"]),
        hide_index=True,
        height=320,
        column_config={
            "in all": st.column_config.NumberColumn(f"in all [{currency}]", format="%.2f"),
            "with nuisances": st.column_config.NumberColumn(f"with nuisances [{currency}]", format="%.2f"),
            "full house [%]": st.column_config.NumberColumn(format="%.0f"),
        },
    )
    st.download_button(
        "Download this table",
        lambda: csv_table(HEADINGS, list(day_rows(table, ranked))),
        file_name=view.file_name("days.csv"),
        mime="text/csv",
        key="days_csv",
    )


def _passed_over(table: DayTable, not_wished: int) -> None:
    missed = int((~table.can_go).sum())
    if not_wished:
        st.caption(f"{wording.counted(not_wished, 'day')} more can be done, but not as you wish.")
    if not missed:
        return
    with st.expander(f"{wording.counted(missed, 'day')} passed over, and why"):
        st.markdown(bullets(_counted(table)))
        st.caption("Ask about one day:")
        names = [place.name for place in table.places]
        row = names.index(st.selectbox("Place", names, key="why_place"))
        last = table.day(len(table.days) - 1)
        day = st.date_input("Day", table.first, min_value=table.first, max_value=last, key="why_day")
        found = table.outing(row, (day - table.first).days)
        if isinstance(found, NoOuting):
            st.markdown(bullets(found.reasons))
        else:
            st.markdown(plain(f"It can be done, for {total_sentence(found.cost)}."))


def _counted(table: DayTable) -> list[str]:
    lines = []
    for row, place in enumerate(table.places):
        counts = Counter(table.verdict[row][~table.can_go[row]].tolist())
        why = [Verdict(verdict).on_days(number) for verdict, number in counts.most_common()]
        closed = np.flatnonzero(table.verdict[row] == Verdict.CLOSED)
        if len(closed):
            day = table.day(int(closed[-1]))
            opens = place_facts(table.family, place, (day.year,)).season_opens(day)
            why += [] if opens is None else [f"opens {wording.day(opens)}"]
        if counts:
            lines.append(f"{place.name}: {', '.join(why)}")
    return lines
