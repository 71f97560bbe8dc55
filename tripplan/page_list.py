"""The list of pages, as Streamlit runs it for every window; `app.py` stands guard in front of it."""

import streamlit as st

from tripplan.app_server.local_guard import listens_to_the_network
from tripplan.app_server.pairing import Access
from tripplan.screens.look import style
from tripplan.screens.look.drawings import mark
from tripplan.screens.widgets.visitor import access, is_this_computer, note_window

FOLDER = "screens/pages"

style.put_on()
st.set_page_config(page_title="tripplan", page_icon=mark("#1f6f6b"), layout="wide")
seen = access()
if seen is None:
    st.error("This page is closed. On the computer, start tripplan as its README says; pair a phone anew.")
    st.stop()
note_window()
if listens_to_the_network():
    st.warning(
        "**Everybody in your network can read and change everything here.** Stop tripplan, start it without "
        "an address, and let your phone in on the page *Phones*."
    )
on_the_day = st.Page(f"{FOLDER}/on_the_day.py", title="On the day", default=seen is not Access.EVERYTHING)
logbook = st.Page(f"{FOLDER}/logbook.py", title="Logbook")
if seen is Access.EVERYTHING:
    pages = [
        st.Page(f"{FOLDER}/compare.py", title="Compare", default=True),
        st.Page(f"{FOLDER}/choose_day.py", title="Choose a day"),
        st.Page(f"{FOLDER}/study_units.py", title="Study units"),
        st.Page(f"{FOLDER}/day_plan.py", title="Day plan"),
        on_the_day,
        st.Page(f"{FOLDER}/calendar.py", title="Calendar"),
        logbook,
        st.Page(f"{FOLDER}/passes.py", title="Passes"),
        st.Page(f"{FOLDER}/together.py", title="With others"),
        st.Page(f"{FOLDER}/places.py", title="Places"),
        st.Page(f"{FOLDER}/household.py", title="Household"),
        st.Page(f"{FOLDER}/records.py", title="Records"),
        st.Page(f"{FOLDER}/guide.py", title="Guide"),
    ]
else:
    pages = [on_the_day, logbook]
if is_this_computer():  # a phone lets no other phone in
    pages.append(st.Page(f"{FOLDER}/phones.py", title="Phones"))
current = st.navigation(pages, position="hidden")
# Streamlit's own menus fold away on a phone; these links stay in sight. On the day they would stand in the
# way of what to do now.
if current is not on_the_day:
    with st.container(horizontal=True, key="pages"):
        for page in pages:
            st.page_link(page, width="content")
current.run()
