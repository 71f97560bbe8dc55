"""The first form: a name, a home and the people; everything else can follow."""

import streamlit as st
from babel.numbers import get_territory_currencies

from tripplan.language.sentences import say
from tripplan.screens.forms.answers import Raw, typed_text
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Setting
from tripplan.screens.household.saving import PAGE, check_and_save
from tripplan.screens.widgets.fields import Fields, filled, put
from tripplan.screens.widgets.locations.where_form import where_inputs, where_on_record, where_values
from tripplan.screens.widgets.locations.where_lookup import where_lookup
from tripplan.screens.widgets.notices import tell
from tripplan.screens.widgets.view import View

IN_MILES = ("US", "GB", "LR", "MM")
"""Countries whose road signs count miles. Source: common practice, no source."""


def first_form(view: View) -> None:
    """Ask for a name, the people and the home, and make the household of them."""
    st.markdown(say("household-three-things"))
    rows = {f"{part}{row}": "" for row in range(_ROWS) for part in ("person", "born")}
    fields = filled("first", {"name": "", **rows, **where_on_record(None)})
    with form_box(fields):
        st.text_input(say("household-what-called"), key=fields.key("name"))
        st.markdown(f"**{say('household-who-belongs')}**")
        st.caption(say("household-birth-or-age"))
        for row in range(_ROWS):
            _person(fields, row)
        st.markdown(f"**{say('household-where-live')}**")
        where_inputs(fields, with_address=False, with_metropolitan=True)
        save_button(
            fields, say("household-save-first"), key="save_first", on_click=_save_first, args=(view, fields)
        )
    where_lookup(view, fields)


_ROWS = 8
"""So many people have a row at first; further ones are added on the page that follows [-]."""
_EXAMPLES = (("Ada", "5/14/1988"), ("Leo", "March 2019"), ("Mia", "22 months"))


def _person(fields: Fields, row: int) -> None:
    name, born = _EXAMPLES[row] if row < len(_EXAMPLES) else ("", "")
    with st.container(horizontal=True, wrap=False, gap="small"):
        for part, label, example in (
            ("person", "household-name-row", name),
            ("born", "household-born-row", born),
        ):
            st.text_input(
                say(label, row=row + 1),
                key=fields.key(f"{part}{row}"),
                placeholder=example,
                label_visibility="collapsed",
            )


def _save_first(view: View, fields: Fields) -> None:
    typed = fields.typed()
    home, found = where_values(typed, None, "home")
    country = str(home.get("country", ""))
    setting = Setting(country=country or "US", today=view.today)
    members = [
        {
            key: text
            for key, text in (
                ("name", str(typed[f"person{row}"]).strip()),
                ("born", typed_text(typed[f"born{row}"], "birth date", setting)),
            )
            if text
        }
        for row in range(_ROWS)
        if str(typed[f"person{row}"]).strip() or str(typed[f"born{row}"]).strip()
    ]
    raw: Raw = {
        "home": home,
        "currency": (get_territory_currencies(country) or ["USD"])[0],
        "units": "mi" if country in IN_MILES else "km",
        "members": members,
    }
    put(raw, "name", typed["name"])
    if check_and_save(view, "first", 0, raw, found):
        tell(PAGE, say("household-saved-first"))
