"""The list of pages, as Streamlit runs it for every window; `app.py` stands guard in front of it."""

import streamlit as st

from tripplan.app_server.local_guard import listens_to_the_network
from tripplan.app_server.pairing import Access
from tripplan.language.sentences import say
from tripplan.screens import cupboard
from tripplan.screens.look import doors, style
from tripplan.screens.look.drawings import mark
from tripplan.screens.widgets.frame import open_page, speak_to_window
from tripplan.screens.widgets.visitor import access, is_this_computer, note_window

# Every page by its file, which is also its address but for the first: an address, once given, stays.
TITLES = {
    "start": "doors-page-start",
    "places": "doors-page-places",
    "compare": "doors-page-compare",
    "choose_day": "doors-page-choose-day",
    "study_units": "doors-page-study-units",
    "day_plan": "doors-page-day-plan",
    "calendar": "doors-page-calendar",
    "on_the_day": "doors-page-on-the-day",
    "logbook": "doors-page-logbook",
    "cupboard": "doors-cupboard",
    "household": "doors-page-household",
    "passes": "doors-page-passes",
    "together": "doors-page-together",
    "records": "doors-page-records",
    "phones": "doors-page-phones",
    "guide": "doors-page-guide",
}
# What a phone shows that was let in for the day alone.
FOR_A_PHONE = ("on_the_day", "logbook")

style.put_on(doors.sheet())
st.set_page_config(page_title="tripplan", page_icon=mark("#1f6f6b"), layout="wide")
seen = access()
if seen is None:
    st.error(say("doors-closed"))
    st.stop()
speak_to_window()
note_window()
everything = seen is Access.EVERYTHING
names = [name for name in TITLES if name != "phones"] if everything else list(FOR_A_PHONE)
if is_this_computer():  # a phone lets no other phone in
    names.append("phones")


def _show_cupboard() -> None:
    cupboard.render(open_page())


# The cupboard has no file of its own: it only leads to other pages.
pages = {
    name: st.Page(
        _show_cupboard if name == "cupboard" else f"screens/pages/{name}.py",
        title=say(TITLES[name]),
        url_path=name,
        default=name == names[0],
    )
    for name in names
}
current = st.navigation(list(pages.values()), position="hidden")
st.set_page_config(page_title=f"{current.title} · tripplan")
content = st.container(key="page")
if listens_to_the_network():
    content.warning(f"**{say('doors-network-open')}** {say('doors-network-how')}")
doors.put_in(pages, current)  # sent first, and after the content all the same
with content:
    doors.rooms_beside(pages, current)
    current.run()
