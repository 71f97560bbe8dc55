"""The guide to using the program, one Markdown file a topic, for the screens and the command line."""

import re
from importlib.resources import files

from tripplan.errors import UnknownName

_FIRST = "pages"


def topics() -> dict[str, str]:
    """The title of every topic of the guide by its name, the pages first."""
    names = [file.name.removesuffix(".md") for file in files(__name__).iterdir() if file.name.endswith(".md")]
    return {name: _title(name) for name in sorted(names, key=lambda name: (name != _FIRST, name))}


def guide_text(topic: str) -> str:
    """One topic of the guide as Markdown, without its pictures, which stand beside the source alone.

    Raises:
        UnknownName: there is no such topic.
    """
    if topic not in topics():
        raise UnknownName("topic of the guide", topic, tuple(topics()))
    return re.sub(r"\n!\[.*?\]\(.*?\)\n", "", _read(topic))


def _title(name: str) -> str:
    return _read(name).splitlines()[0].removeprefix("# ")


def _read(name: str) -> str:
    return (files(__name__) / f"{name}.md").read_text(encoding="utf-8")
