"""A keyring in memory, in the place of the operating system's."""

from collections.abc import Iterator
from contextlib import contextmanager

import keyring
from keyring.backend import KeyringBackend
from keyring.backends.fail import Keyring as NoKeyring
from keyring.errors import PasswordDeleteError


class MemoryKeyring(KeyringBackend):
    """Keeps passwords while the test runs."""

    priority: float = 5
    name = "keyring in memory"

    def __init__(self) -> None:
        super().__init__()  # type: ignore[no-untyped-call]
        self.kept: dict[tuple[str, str], str] = {}

    def get_password(self, service: str, username: str) -> str | None:
        """As KeyringBackend."""
        return self.kept.get((service, username))

    def set_password(self, service: str, username: str, password: str) -> None:
        """As KeyringBackend."""
        self.kept[service, username] = password

    def delete_password(self, service: str, username: str) -> None:
        """As KeyringBackend."""
        if self.kept.pop((service, username), None) is None:
            raise PasswordDeleteError(username)


@contextmanager
def used(backend: KeyringBackend) -> Iterator[None]:
    """Let a keyring stand for the system's."""
    before = keyring.get_keyring()
    keyring.set_keyring(backend)
    try:
        yield
    finally:
        keyring.set_keyring(before)


def no_keyring() -> KeyringBackend:
    """What stands in where a system has none."""
    return NoKeyring()  # type: ignore[no-untyped-call]
