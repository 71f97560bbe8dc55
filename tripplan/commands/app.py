"""`tripplan app`: the screens, in a browser."""

import subprocess
import sys
import tomllib
from collections.abc import Iterator, Mapping
from importlib.resources import files
from typing import Any

from tripplan.app_server.home_network import FOUND, PHONES_VARIABLE
from tripplan.commands.options.files import AppOptions
from tripplan.commands.output.console import Console

ADDRESS = "127.0.0.1"
"""Only this computer is answered."""


def run(options: AppOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Serve the screens until they are stopped, by Ctrl-C."""
    console.line(f"The screens are at http://{ADDRESS}:{options.port}; Ctrl-C ends them.")
    console.stdout.flush()
    phones = {PHONES_VARIABLE: FOUND} if options.phone else {}
    try:
        return subprocess.run(server_command(options), env={**environment, **phones}, check=False).returncode
    except KeyboardInterrupt:
        return 0


def server_command(options: AppOptions) -> list[str]:
    """The command that serves the screens on this computer alone, set up as in a checkout."""
    script = files("tripplan.app_server") / "start.py"
    return [
        *(sys.executable, "-m", "streamlit", "run", str(script)),
        *_settings(),
        f"--server.address={ADDRESS}",
        f"--server.port={options.port}",
        f"--server.headless={str(options.no_browser).lower()}",
    ]


def _settings() -> Iterator[str]:
    """The options that say what `.streamlit/config.toml` says in a checkout."""
    text = (files("tripplan.app_server") / "settings.toml").read_text(encoding="utf-8")
    return _options(tomllib.loads(text))


def _options(settings: Mapping[str, Any], within: str = "") -> Iterator[str]:
    for name, value in settings.items():
        if isinstance(value, dict):
            yield from _options(value, f"{within}{name}.")
            continue
        for one in value if isinstance(value, list) else [value]:
            said = str(one).lower() if isinstance(one, bool) else str(one)
            yield f"--{within}{name}={said}"
