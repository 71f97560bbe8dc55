"""The list of pages, as Streamlit runs it for every window; `app.py` stands guard in front of it."""

import streamlit as st

from tripplan.app_server.local_guard import listens_to_the_network
from tripplan.app_server.visitor import was_let_in

FOLDER = "screens/pages"

st.set_page_config(page_title="tripplan", page_icon="🧺", layout="wide")
if not was_let_in(st.context.headers):
    st.error("Nobody stands guard here. Please start tripplan with: python -m streamlit run app.py")
    st.stop()
if listens_to_the_network():
    st.warning(
        "**Everybody in your network can read and change everything here.** Stop tripplan and start it with "
        "`python -m streamlit run app.py`, without an address."
    )
on_the_day = st.Page(f"{FOLDER}/on_the_day.py", title="On the day")
pages = [
    st.Page(f"{FOLDER}/compare.py", title="Compare", default=True),
    st.Page(f"{FOLDER}/choose_day.py", title="Choose a day"),
    st.Page(f"{FOLDER}/study_units.py", title="Study units"),
    st.Page(f"{FOLDER}/day_plan.py", title="Day plan"),
    on_the_day,
    st.Page(f"{FOLDER}/calendar.py", title="Calendar"),
    st.Page(f"{FOLDER}/logbook.py", title="Logbook"),
    st.Page(f"{FOLDER}/passes.py", title="Passes"),
    st.Page(f"{FOLDER}/together.py", title="With others"),
    st.Page(f"{FOLDER}/places.py", title="Places"),
    st.Page(f"{FOLDER}/household.py", title="Household"),
    st.Page(f"{FOLDER}/records.py", title="Records"),
    st.Page(f"{FOLDER}/guide.py", title="Guide"),
]
current = st.navigation(pages, position="hidden")
# Streamlit's own menus fold away on a phone; these links stay in sight. On the day they would stand in the
# way of what to do now.
if current.url_path != on_the_day.url_path:
    with st.container(horizontal=True, key="pages"):
        for page in pages:
            st.page_link(page, width="content")
current.run()
