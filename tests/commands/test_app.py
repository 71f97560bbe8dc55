"""`tripplan app`: what it starts the screens with."""

import io
import subprocess
from typing import Any

import pytest

from tripplan.commands import app
from tripplan.commands.options.files import AppOptions
from tripplan.commands.output.console import Console


@pytest.mark.parametrize(("phone", "told"), [(False, None), (True, "yes")])
def test_a_phone_is_let_in_only_when_asked(
    monkeypatch: pytest.MonkeyPatch, phone: bool, told: str | None
) -> None:
    """With `--phone` the server lets phones in from the start; it answers this computer alone either way."""
    started: list[tuple[list[str], dict[str, str]]] = []

    def run(command: list[str], *, env: dict[str, str], **_: Any) -> subprocess.CompletedProcess[bytes]:
        started.append((command, env))
        return subprocess.CompletedProcess(command, 0)

    monkeypatch.setattr(subprocess, "run", run)
    assert app.run(AppOptions(phone=phone), Console(io.StringIO(), io.StringIO()), {"HOME": "/nowhere"}) == 0
    ((command, environment),) = started
    assert environment.get("TRIPPLAN_PHONES") == told
    assert environment["HOME"] == "/nowhere"
    assert "--server.address=127.0.0.1" in command
