"""The list of pages; start with `streamlit run app.py`."""

import streamlit as st

PAGES = "tripplan/screens/pages"

st.set_page_config(page_title="tripplan", page_icon="🧺", layout="wide")
st.navigation(
    [
        st.Page(f"{PAGES}/compare.py", title="Compare", default=True),
        st.Page(f"{PAGES}/choose_day.py", title="Choose a day"),
        st.Page(f"{PAGES}/day_plan.py", title="Day plan"),
        st.Page(f"{PAGES}/calendar.py", title="Calendar"),
        st.Page(f"{PAGES}/places.py", title="Places"),
        st.Page(f"{PAGES}/household.py", title="Household"),
    ],
    position="top",
).run()
