"""Phones: what the page says where no server runs, and what a phone may open."""

import pytest

from tests.screens.conftest import Opened, said
from tripplan.app_server.phone_link import phone_link


def test_without_the_apps_server_no_phone_is_let_in(open_app: Opened) -> None:
    """Pressed where the guards do not run, the page says so, lets nobody in and asks for the address."""
    app = open_app("phones")
    assert app.title[0].value == "Use on my phone"
    app.text_input(key="phones_address").input("192.168.1.20").run()
    app.button(key="phones_on").click().run()
    assert "No phone is let in" in said(app.error)
    assert phone_link.listening is None


@pytest.mark.parametrize("typed", ["8.8.8.8", "127.0.0.1", "0.0.0.0", "home", "192.168.1.20/24"])
def test_only_an_address_of_a_home_network_is_listened_under(open_app: Opened, typed: str) -> None:
    """An address that the internet carries, this computer's own, all, or none at all is refused by name."""
    app = open_app("phones")
    app.text_input(key="phones_address").input(typed).run()
    app.button(key="phones_on").click().run()
    assert typed in said(app.error)
