"""What a few states publish about days and hours of home instruction, as somebody read it. No advice.

Rules differ by state, change, and have exceptions; whether an outing counts is not said on any official page
that was found. The family checks its own state's law.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class StateRule:
    """One state's published figures.

    Attributes:
        state: its name.
        text: the figures, in words.
        source: where they stand.
        read: how and when they were read.
    """

    state: str
    text: str
    source: str
    read: str


_READ, _SECOND_HAND = "read in November 2026", "quoted second-hand, read in November 2026"

STATE_RULES: tuple[StateRule, ...] = (
    StateRule(
        "Georgia",
        "180 days of 4.5 hours a year; a progress report each year, kept for 3 years.",
        "summaries of O.C.G.A. 20-2-690",
        _SECOND_HAND,
    ),
    StateRule(
        "Missouri",
        "1000 hours a year, 600 of them in five core subjects, 400 of those 600 at the regular home "
        "location; the year is the parent's choice, 12 months at most.",
        "quotations of RSMo 167.031",
        _SECOND_HAND,
    ),
    StateRule(
        "New York",
        "900 hours a year in grades 1 to 6, 990 in grades 7 to 12, reported each quarter; the year runs from "
        "July 1 to June 30.",
        "8 NYCRR 100.10 and pages of Boards of Cooperative Educational Services",
        _READ,
    ),
    StateRule(
        "Pennsylvania",
        "180 days, or 900 hours in elementary grades and 990 in secondary ones; a log made at the time, "
        "which may list days without hours; the portfolio is due by June 30.",
        "the state's education portal on home education",
        _READ,
    ),
)
"""In order of the names."""

RULES_DIFFER = (
    "Rules on home education differ by state and country and change. Check your own state's law, or ask its "
    "education department, what has to be recorded and whether an outing counts; this record lists only what "
    "the family wrote down."
)


def state_rule(state: str) -> StateRule | None:
    """The published figures of one state, if they are on record here."""
    return next((rule for rule in STATE_RULES if rule.state == state), None)
