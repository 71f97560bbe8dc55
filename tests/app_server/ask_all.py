"""Asks a server many things at once; a program, because it may have to run in another network.

Usage: python -m tests.app_server.ask_all < a JSON list of [address, path, method, headers, body]
Prints a JSON list of [status, headers, body, cookies]; the status is 0 where nobody answers.
"""

import json
import sys

from tests.app_server.asking import ask


def main() -> None:
    """Ask one after the other."""
    told = []
    for address, path, method, headers, body in json.load(sys.stdin):
        try:
            status, names, text, cookies = ask(address, path, method, headers, body.encode())
        except OSError as trouble:
            status, names, text, cookies = 0, {}, str(trouble).encode(), []
        told.append([status, names, text.decode("utf-8", "replace"), cookies])
    json.dump(told, sys.stdout)


if __name__ == "__main__":
    main()
