"""Choose a day: every place on every day of a span, in order of what the day costs and weighs."""

import pandas as pd
import streamlit as st

from tripplan.files.tables import csv_table
from tripplan.planning import wording
from tripplan.planning.choose import Ranking
from tripplan.planning.outing import Outing
from tripplan.planning.sentences import crowd_sentence, nap_sentence, total_sentence
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.charts import days_chart
from tripplan.screens.widgets.choices import party_picker, place_names, say_taken, span_picker, take
from tripplan.screens.widgets.frame import View, family_or_stop
from tripplan.screens.widgets.markdown import bullets, plain

SHOWN_FIRST = 3
"""So many days are shown in full; the rest stand in the table."""

WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def render(view: View) -> None:
    """Rank the days that can be done, say why others cannot, and let the parent take one."""
    family = family_or_stop(view)
    st.title("Which day?")
    if not family.places:
        st.info("There are no places here yet.")
        st.page_link("tripplan/screens/pages/places.py", label="Add a place")
        return
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
        weekdays = st.pills(
            "On which weekdays?", WEEKDAYS, selection_mode="multi", default=WEEKDAYS, key="weekdays"
        )
    places = [place for place in family.places if not picked or place.id in picked]
    ranking = answers.ranked(family, party, places, span, view.today)
    outings = [outing for outing in ranking.outings if WEEKDAYS[outing.day.weekday()] in weekdays]
    if not outings:
        st.warning("No day in this span can be done.")
    else:
        _best(view, outings)
        say_taken(view, family)
        _all_days(outings)
    _passed_over(ranking)


def _best(view: View, outings: list[Outing]) -> None:
    st.caption(
        "Ranked by money plus what you say a lost nap, a full house, an hour in the car or a visit cut "
        "short is worth to you; those figures stand under Household."
    )
    for number, outing in enumerate(_shown_first(outings)):
        with st.container(border=True):
            st.subheader(plain(f"{wording.day(outing.day)}: {outing.place.name}"), anchor=False)
            st.markdown(
                plain(
                    f"{total_sentence(outing.cost)} in all, "
                    f"{wording.money(outing.felt_cost)} with nuisances counted. "
                    f"Leave {wording.clock(outing.plan.leave_home)}, back {wording.clock(outing.plan.home)}. "
                    f"Nap: {nap_sentence(outing)}. Full house: {crowd_sentence(outing.crowd)}."
                )
            )
            st.button(
                "Take this day",
                key=f"take_day_{number}",
                type="primary" if number == 0 else "secondary",
                on_click=take,
                args=(view, outing.place.id, outing.day),
                help="Day plan and Calendar then speak of this place and day.",
            )
            with st.expander("Why so full or empty?"):
                st.markdown(bullets(reason.text for reason in outing.crowd.reasons))
                st.caption(plain(outing.crowd.source.text))


def _shown_first(outings: list[Outing]) -> list[Outing]:
    """The best days of one place; of several places, the best day of each of the best."""
    best_of_each = list({outing.place.id: outing for outing in reversed(outings)}.values())[::-1]
    several = len(best_of_each) > 1
    return sorted(best_of_each, key=outings.index)[:SHOWN_FIRST] if several else outings[:SHOWN_FIRST]


def _all_days(outings: list[Outing]) -> None:
    st.subheader("Every day that can be done", anchor=False)
    st.caption("One row a place, one mark a day: the larger and darker, the less it costs and weighs.")
    st.altair_chart(
        days_chart(outings),
        alt="One row a place, one mark a day; larger and darker is better; the table says the same",
    )
    rows = [
        {
            "day": wording.day(outing.day),
            "place": outing.place.name,
            "in all": wording.money(outing.cost.total.likely),
            "with nuisances": wording.money(outing.felt_cost),
            "leave": wording.clock(outing.plan.leave_home),
            "back": wording.clock(outing.plan.home),
            "nap": nap_sentence(outing),
            "full house": wording.percent(outing.crowd.chance),
        }
        for outing in outings
    ]
    st.dataframe(pd.DataFrame(rows), hide_index=True, height=320)
    table = csv_table(tuple(rows[0]), [tuple(row.values()) for row in rows])
    st.download_button("Download this table", table, file_name="days.csv", mime="text/csv", key="days_csv")


def _passed_over(ranking: Ranking) -> None:
    if not ranking.passed_over:
        return
    with st.expander(f"{len(ranking.passed_over)} days passed over, and why"):
        reasons: dict[tuple[str, tuple[str, ...]], list[str]] = {}
        for missed in ranking.passed_over:
            days = reasons.setdefault((missed.place.name, missed.reasons), [])
            days.append(f"{missed.day:%b} {missed.day.day}")
        st.markdown(
            bullets(f"{name}, {'; '.join(why)}: {', '.join(days)}" for (name, why), days in reasons.items())
        )
