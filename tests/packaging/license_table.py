"""Writes the table of licenses of every package the program installs into the guide.

`python -m tests.packaging.license_table` reads names and versions from tripplan/locked_requirements.txt and
licenses from the metadata of the installed packages.
"""

import re
from collections.abc import Iterator
from importlib.metadata import PackageNotFoundError, metadata
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
GUIDE = ROOT / "tripplan/guide/licenses.md"
LOCKED = ROOT / "tripplan/locked_requirements.txt"
HEAD = "| package | version | license |\n|---|---|---|\n"

# Where the metadata says it in free text, with a choice, or holds the whole text of the license.
_SAID_OTHERWISE = {
    "altair": "BSD-3-Clause",
    "caldav": "GPL-3.0-or-later OR Apache-2.0",
    "defusedxml": "PSF-2.0",
    "itsdangerous": "BSD-3-Clause",
    "jinja2": "BSD-3-Clause",
    "protobuf": "BSD-3-Clause",
    "pydeck": "Apache-2.0",
    "pymupdf-fonts": "OFL-1.1",
    "python-dateutil": "Apache-2.0 OR BSD-3-Clause",
    "scipy": "BSD-3-Clause",
    "segno": "BSD-3-Clause",
    "vobject": "Apache-2.0",
    # Only installed on Windows; from memory.
    "colorama": "BSD-3-Clause",
    "pywin32-ctypes": "BSD-3-Clause",
}


def locked_versions(path: Path = LOCKED) -> dict[str, str]:
    """The exact version of every package of a file of locked requirements, by name."""
    return dict(re.findall(r"^([\w.-]+)==([^\s;]+)", path.read_text(encoding="utf-8"), re.MULTILINE))


def license_of(package: str) -> str:
    """The license of an installed package as an SPDX expression.

    Raises:
        LookupError: its metadata does not say it in a form that is understood.
    """
    if package in _SAID_OTHERWISE:
        return _SAID_OTHERWISE[package]
    try:
        facts = metadata(package)
    except PackageNotFoundError as error:
        raise LookupError(f"{package} is not installed; say its license here") from error
    stated = next((facts[key] for key in ("License-Expression", "License") if key in facts), None)
    if stated and len(stated) < 60:
        return str(stated)
    if "License :: OSI Approved :: MIT License" in (facts.get_all("Classifier") or []):
        return "MIT"
    raise LookupError(f"{package} states its license in a form of its own; say it here")


def rows() -> Iterator[str]:
    """A row of the table for every package, in the order of their names."""
    for package, version in locked_versions().items():
        yield f"| {package} | {version} | {license_of(package)} |\n"


def main() -> None:
    """Replace the table at the end of the guide's page on licenses."""
    text = GUIDE.read_text(encoding="utf-8")
    GUIDE.write_text(text[: text.index(HEAD)] + HEAD + "".join(rows()), encoding="utf-8")


if __name__ == "__main__":
    main()
