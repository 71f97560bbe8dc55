"""Which files are place cards and household files."""

import os.path
from collections.abc import Sequence
from pathlib import Path
from typing import Literal

from tripplan.documents.places.place import Place
from tripplan.errors import Finding, Weight
from tripplan.files.toml.toml_text import parse_toml
from tripplan.files.toml.written import start_of_file

_ONLY_IN_A_HOUSEHOLD = {"members", "home", "car"}


def card_files(paths: Sequence[str], findings: list[Finding]) -> tuple[Path, ...]:
    """The files that are named, and for a folder every card and household file in it; none there is a fault.

    Other .toml files of a folder are passed over with a warning.
    """
    files: list[Path] = []
    for name in paths:
        if not os.path.isdir(name):  # unlike pathlib, says no where the system refuses to look
            files.append(Path(name))
            continue
        inside = sorted(Path(name).glob("*.toml"))
        if not inside:
            findings.append(Finding(name, "", "", "this folder holds no .toml file"))
        for path in inside:
            if file_kind(path) == "other":
                message = "passed over: it has no field of a place card or a household file"
                findings.append(Finding(path.name, "", "", message, Weight.WARNING))
            else:
                files.append(path)
    return tuple(files)


def file_kind(path: Path) -> Literal["place", "household", "other"]:
    """What a file is by its fields; one that cannot be read is no worse as a card."""
    try:
        values = parse_toml(start_of_file(path), path.name).values
    except OSError:
        return "place"
    if values and not _ONLY_IN_A_HOUSEHOLD.isdisjoint(values):
        return "household"
    return "other" if values and values.keys().isdisjoint(Place.model_fields) else "place"
