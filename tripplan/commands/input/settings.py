"""What the command line says of the world: which day it is, and where the records lie."""

from collections.abc import Mapping
from datetime import date

from tripplan.clock import TODAY_VARIABLE
from tripplan.errors import Finding, InputFaults
from tripplan.records.location import FOLDER_VARIABLE

ASKED = "command line"
"""Stands for the file in findings about options."""
EARLIEST, LATEST = date(2000, 1, 1), date(2100, 12, 31)
"""Dates that can be asked about; beyond them holidays and time zones are anybody's guess."""
_LONGEST_SHOWN = 60


def settings_from(options: object, environment: Mapping[str, str]) -> Mapping[str, str]:
    """The environment with what the options put in its place.

    Raises:
        InputFaults: `--today` is no date.
    """
    settings = dict(environment)
    if folder := getattr(options, "data", None):
        settings[FOLDER_VARIABLE] = folder
    if said := getattr(options, "today", None):
        findings: list[Finding] = []
        today = date_in(said, "--today", findings)
        if today is None:
            raise InputFaults(tuple(findings))
        settings[TODAY_VARIABLE] = today.isoformat()
    return settings


def date_in(text: str, field: str, findings: list[Finding]) -> date | None:
    """The date a text names, within those that can be asked about; else a fault of that field."""
    try:
        day = date.fromisoformat(text.strip())
    except ValueError:
        findings.append(Finding(ASKED, field, text[:_LONGEST_SHOWN], "a date reads like 2026-12-08"))
        return None
    if EARLIEST <= day <= LATEST:
        return day
    findings.append(Finding(ASKED, field, str(day), f"a date from {EARLIEST} to {LATEST} can be asked about"))
    return None
