"""The password of the calendar server, in the system's keyring where there is one; never in the records."""

from keyring import get_keyring
from keyring.backend import KeyringBackend
from keyring.errors import KeyringError

WRONG_PASSWORD = "the user name or the password is wrong"
"""What is said where a server refuses them."""
_SERVICE = "tripplan calendar server"
_GOOD_ENOUGH = 1
"""What keyring asks of a backend that it recommends; those below keep passwords readable, or not at all."""


def keyring_name() -> str:
    """What the system's keyring is called; empty where there is none that keeps passwords safe."""
    backend = _keyring()
    return "" if backend is None else str(backend.name)


def kept_password(server: str, user: str) -> str | None:
    """The password in the keyring, if it is there and may be read."""
    backend = _keyring()
    try:
        return None if backend is None else backend.get_password(_SERVICE, _account(server, user))
    except (KeyringError, RuntimeError, OSError):
        return None  # Locked, or refused: it is asked for instead.


def keep_password(server: str, user: str, password: str) -> bool:
    """Put the password into the keyring; false where it was not taken."""
    backend = _keyring()
    if backend is None:
        return False
    try:
        backend.set_password(_SERVICE, _account(server, user), password)
    except (KeyringError, RuntimeError, OSError):
        return False
    return True


def forget_password(server: str, user: str) -> None:
    """Take the password out of the keyring, if it is there."""
    backend = _keyring()
    try:
        if backend is not None:
            backend.delete_password(_SERVICE, _account(server, user))
    except (KeyringError, RuntimeError, OSError):
        return  # It was not there.


def _account(server: str, user: str) -> str:
    return f"{user} at {server}"


def _keyring() -> KeyringBackend | None:
    backend = get_keyring()
    try:
        usable = float(backend.priority) >= _GOOD_ENOUGH
    except (RuntimeError, TypeError, ValueError):
        return None
    return backend if usable else None
