"""Phones: let the family's phones in for the day, each by a code that it shows once."""

from datetime import datetime
from html import escape

import segno
import streamlit as st

from tripplan.app_server.home_network import home_address, read_home_address
from tripplan.app_server.pairing import Access, Code, Phone
from tripplan.app_server.phone_link import Listening, phone_link
from tripplan.errors import PlanError
from tripplan.language import wording
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, show_notice, tell

LOOKS_FOR_PHONES = "3s"
"""How often it is looked whether a phone has shown the code."""

_SPOT = "phones"
_ADDRESS, _ADDRESS_IS_ASKED, _ACCESS = "phones_address", "phones_address_is_asked", "phones_access"
_STYLE = """<style>
.pairing { display: flex; flex-wrap: wrap; gap: 1.5rem; align-items: center; }
.pairing img { width: 15rem; height: 15rem; background: #fff; }
.pairing .digits { font-size: 2.75rem; font-weight: 700; letter-spacing: .15em; line-height: 1.2; }
.pairing .url { font-weight: 700; overflow-wrap: anywhere; }
</style>"""


def render() -> None:
    """Turn the listener for phones on, show a code, and keep the list of phones."""
    st.title("Use on my phone")
    show_notice(_SPOT)
    listening = phone_link.listening
    if listening is None:
        _offer()
    else:
        st.html(_STYLE)
        _pairing(listening)
        st.button("Let no phone in any more", key="phones_off", on_click=_turn_off)
        _certificate(listening)


def _offer() -> None:
    st.markdown(
        "Your phone shows these pages while it is in the same home network as this computer. "
        "Only phones that show a code from here get in, and only until four tonight."
    )
    _ask_access()
    st.button("Use on my phone", key="phones_on", type="primary", on_click=_turn_on)
    with st.expander(
        "This computer's address in the home network", expanded=_ADDRESS_IS_ASKED in st.session_state
    ):
        st.text_input("Address", key=_ADDRESS, placeholder="found by itself, such as 192.168.1.20")
        st.markdown("Leave it empty unless phones do not get through.")


@st.fragment(run_every=LOOKS_FOR_PHONES)
def _pairing(listening: Listening) -> None:
    if phone_link.listening != listening:  # turned off, here or in another window, or the day is over
        st.rerun()
    code = phone_link.pairing.code
    if code is None:
        _ask_access()
        st.button("Pair a phone", key="phones_code", type="primary", on_click=_new_code)
    else:
        _show(code, listening)
    phones = phone_link.pairing.phones
    st.header("Paired phones", anchor=False)
    if not phones:
        st.markdown("None yet.")
    for phone in phones:
        _phone(phone)


def _ask_access() -> None:
    st.radio(
        "What may the phone see?", list(Access), format_func=_NAMES.__getitem__, key=_ACCESS, horizontal=True
    )


_NAMES = {access: access.value for access in Access}


def _show(code: Code, listening: Listening) -> None:
    """The picture to scan, and the same to type."""
    picture = segno.make(listening.with_code(code), error="m").svg_data_uri(scale=8, border=4)
    digits = f"{code.digits[:3]} {code.digits[3:]}"
    st.html(
        f'<div class="pairing"><img src="{escape(picture)}" alt="QR code of both">'
        f'<div><div>Scan this with the phone, or open</div><div class="url">{escape(listening.url)}</div>'
        f'<div>and type</div><div class="digits">{digits}</div>'
        f"<div>Good until {escape(_clock(code.until))}, for one phone.</div></div></div>"
    )
    st.markdown(
        plain(f"It will see: {code.access.value.lower()}.")
        + " The phone warns once that it does not know this computer. At home, go on; elsewhere, first "
        "compare what stands under *Is it really this computer?*"
    )
    if code.wrong:
        st.warning(plain(f"{wording.counted(code.wrong, 'wrong code')} so far; ten close this."))


def _phone(phone: Phone) -> None:
    with st.container(border=True, key=f"phone_{phone.id}"):
        st.markdown(
            f"**{plain(phone.name)}**  \n"
            + plain(f"paired at {_clock(phone.since)}, last seen at {_clock(phone.seen)}")
        )
        key = f"phone_access_{phone.id}"
        st.session_state[key] = phone.access
        st.selectbox(
            f"What {plain(phone.name)} sees",
            list(Access),
            format_func=_NAMES.__getitem__,
            key=key,
            on_change=_let_see,
            args=(phone.id, key),
        )
        st.button(
            f"Remove {plain(phone.name)}", key=f"phone_off_{phone.id}", on_click=_remove, args=(phone.id,)
        )


def _certificate(listening: Listening) -> None:
    with st.expander("Is it really this computer?"):
        st.markdown(
            "Nobody has signed this computer's certificate, so the phone asks before it goes on. It can show "
            "the certificate's SHA-256 fingerprint. If that is not this one, do not type the code:"
        )
        st.code(listening.fingerprint, language=None, wrap_lines=True)


def _clock(moment: datetime) -> str:
    return wording.clock(moment.astimezone())


def _turn_on() -> None:
    typed = st.session_state[_ADDRESS]
    try:
        phone_link.turn_on(read_home_address(typed) if typed.strip() else home_address())
    except PlanError as trouble:
        st.session_state[_ADDRESS_IS_ASKED] = True
        refuse(_SPOT, f"{trouble}. No phone is let in.")
    else:
        _new_code()


def _new_code() -> None:
    phone_link.pairing.new_code(st.session_state.get(_ACCESS, Access.ON_THE_DAY))


def _turn_off() -> None:
    phone_link.turn_off()
    tell(_SPOT, "No phone is let in any more. All paired phones are forgotten.")


def _let_see(phone_id: str, key: str) -> None:
    phone_link.let_see(phone_id, st.session_state[key])


def _remove(phone_id: str) -> None:
    phone_link.remove(phone_id)
