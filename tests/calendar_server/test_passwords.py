"""The password lies in the system's keyring or nowhere."""

from tests.calendar_server.keyring_for_tests import MemoryKeyring, no_keyring, used
from tripplan.calendar_server.passwords import (
    forget_password,
    keep_password,
    kept_password,
    keyring_name,
)

SERVER, USER = "https://calendar.example.org/", "home"


class ReadableKeyring(MemoryKeyring):
    """One that keyring does not recommend, as it writes passwords so that everybody can read them."""

    priority = 0.5


def test_a_password_is_kept_for_its_server_and_user_and_forgotten() -> None:
    """It comes back for the same server and user alone, and no more once forgotten."""
    with used(MemoryKeyring()):
        assert keyring_name() == "keyring in memory"
        assert keep_password(SERVER, USER, "secret")
        assert kept_password(SERVER, USER) == "secret"
        assert kept_password(SERVER, "other") is None
        assert kept_password("https://other.example.org/", USER) is None
        forget_password(SERVER, USER)
        forget_password(SERVER, USER)
        assert kept_password(SERVER, USER) is None


def test_without_a_keyring_that_is_safe_nothing_is_kept() -> None:
    """Neither where there is none nor in one that leaves passwords readable."""
    readable = ReadableKeyring()
    for backend in (no_keyring(), readable):
        with used(backend):
            assert keyring_name() == ""
            assert not keep_password(SERVER, USER, "secret")
            assert kept_password(SERVER, USER) is None
            forget_password(SERVER, USER)
    assert readable.kept == {}
