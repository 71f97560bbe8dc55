"""The first form: a name, a home and the people; everything else can follow."""

import streamlit as st
from babel.numbers import get_territory_currencies

from tripplan.screens.forms.answers import Raw
from tripplan.screens.household.saving import PAGE, check_and_save
from tripplan.screens.widgets.fields import Fields, filled, lines_in, put
from tripplan.screens.widgets.locations.where_form import where_inputs, where_on_record, where_values
from tripplan.screens.widgets.locations.where_lookup import where_lookup
from tripplan.screens.widgets.notices import show_notice, tell
from tripplan.screens.widgets.view import View

IN_MILES = ("US", "GB", "LR", "MM")
"""Countries whose road signs count miles. Source: common practice, no source."""


def first_form(view: View) -> None:
    """Ask for a name, the people and the home, and make the household of them."""
    st.markdown(
        "Three things are enough to begin: a name for your household, where you live, and who belongs to it. "
        "Naps, the car and everything else can follow when you have a minute."
    )
    fields = filled("first", {"name": "", "people": "", **where_on_record(None)})
    with st.form("first_form"):
        st.text_input("What do you call your household?", key=fields.key("name"))
        st.text_area(
            "Who belongs to it?",
            key=fields.key("people"),
            placeholder="Ada, 1988-05-20\nLeo, 2019-03",
            help="One person a line: name, a comma, birth date. Year and month are enough (2019-03).",
        )
        st.caption("One person a line, such as: Ada, 1988-05-20. Year and month are enough: Leo, 2019-03.")
        st.markdown("**Where do you live?**")
        where_inputs(fields, with_address=False, with_metropolitan=True)
        st.form_submit_button(
            "Save and begin", key="save_first", type="primary", on_click=_save_first, args=(view, fields)
        )
    show_notice("first")
    where_lookup(view, fields)


def _save_first(view: View, fields: Fields) -> None:
    typed = fields.typed()
    home, found = where_values(typed, None, "home")
    country = str(home.get("country", ""))
    members = []
    for line in lines_in(typed["people"]):
        name, _, born = line.rpartition(",")
        members.append({"name": name.strip(), "born": born.strip()} if name else {"name": line})
    raw: Raw = {
        "home": home,
        "currency": (get_territory_currencies(country) or ["USD"])[0],
        "units": "mi" if country in IN_MILES else "km",
        "members": members,
    }
    put(raw, "name", typed["name"])
    if check_and_save(view, "first", 0, raw, found):
        tell(PAGE, "Saved. Places come next: add the first one under Places.")
