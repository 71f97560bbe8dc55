"""What came of the last press of a button, said once, next to what was pressed."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from tripplan.errors import Finding, Weight
from tripplan.language import wording
from tripplan.language.fault_words import on_screen
from tripplan.screens.widgets.markdown import plain

_STATE = "notice"
_STEP = re.compile(r"([^.\[\]]+)(?:\[(\d+)\])?")

NamedEntry = Callable[[int], str]
"""How one entry of a list is called, by its index from 0."""


@dataclass(frozen=True)
class Notice:
    """What to say, once.

    Attributes:
        spot: the form or page it belongs to.
        said: a sentence; may be empty where findings speak for themselves.
        findings: what was found, already named in the parent's words.
        refused: whether nothing was changed.
    """

    spot: str
    said: str
    findings: tuple[Finding, ...] = ()
    refused: bool = False


def tell(spot: str, said: str, findings: Sequence[Finding] = ()) -> None:
    """Say that something was done, with what is odd about it."""
    st.session_state[_STATE] = Notice(spot, said, tuple(findings))


def refuse(spot: str, said: str = "", findings: Sequence[Finding] = ()) -> None:
    """Say that nothing was changed, and why."""
    st.session_state[_STATE] = Notice(spot, said, tuple(findings), refused=True)


def show_notice(spot: str) -> None:
    """Show what there is to say at this spot, if anything; it is said once."""
    notice = st.session_state.get(_STATE)
    if not isinstance(notice, Notice) or notice.spot != spot:
        return
    del st.session_state[_STATE]
    if notice.refused:
        if notice.said:
            st.error(plain(notice.said))
        show_findings(notice.findings)
    else:
        st.success(plain(notice.said))
        show_findings(notice.findings)


def show_findings(findings: Sequence[Finding]) -> None:
    """Faults together, then warnings together, each with its file or field and what stood there."""
    faults = [finding for finding in findings if finding.weight is Weight.FAULT]
    warnings = [finding for finding in findings if finding.weight is Weight.WARNING]
    if faults:
        count = wording.counted(len(faults), "thing")
        st.error(f"**Please fix {count}. Nothing was changed yet.**\n\n{_list(faults)}")
    if warnings:
        st.warning(f"**Worth a look.**\n\n{_list(warnings)}")


def show_beside(slot: DeltaGenerator, findings: Sequence[Finding]) -> None:
    """Faults, then warnings, at the field that they are about.

    Args:
        slot: a place beside that field.
        findings: already named in the parent's words.
    """
    for weight, show in ((Weight.FAULT, slot.error), (Weight.WARNING, slot.warning)):
        here = [finding for finding in findings if finding.weight is weight]
        if here:
            show(_list(here))


def _list(findings: Sequence[Finding]) -> str:
    return "\n".join(f"- {_line(finding)}" for finding in findings)


def _line(finding: Finding) -> str:
    """Which field, what it needs, and what stood there."""
    if finding.file:
        place = ": ".join(filter(None, (finding.file, finding.field)))
        value = f" (found: {plain(finding.value)})" if finding.value else ""
        return f"**{plain(place)}** {plain(finding.message)}{value}"
    told = on_screen(finding.message)
    end = "" if told.endswith((".", "?", "!")) else "."
    value = f" It says: {plain(finding.value)}" if finding.value else ""
    if finding.field:
        field = finding.field if finding.field.endswith("?") else f"{finding.field}:"
        return f"**{plain(field)}** {plain(told)}{end}{value}"
    return f"{plain(wording.capital(told))}{end}{value}"


def named(
    findings: Sequence[Finding], labels: Mapping[str, str], entries: Mapping[str, NamedEntry] | None = None
) -> tuple[Finding, ...]:
    """Findings of a form with its fields called as on the screen, and no file.

    Args:
        findings: as the file rules give them, with fields such as ``members[2].born``.
        labels: how a field is called, by its path without indices (``members.born``).
        entries: how one entry of a list is called, by the list's path.
    """
    return tuple(
        Finding(
            "",
            field_in_words(finding.field, labels, entries or {}),
            finding.value,
            finding.message,
            finding.weight,
        )
        for finding in findings
    )


def field_in_words(field: str, labels: Mapping[str, str], entries: Mapping[str, NamedEntry]) -> str:
    """A path such as ``members[2].born`` as 'Odile, birth date'."""
    words: list[str] = []
    path = ""
    steps = list(_STEP.finditer(field))
    for step in steps:
        name, index = step[1], step[2]
        path = f"{path}.{name}" if path else name
        if index is not None:
            number = int(index)
            entry = entries.get(path)
            words.append(entry(number) if entry else f"{labels.get(path, name)} {number + 1}")
        elif step is steps[-1]:
            words.append(labels.get(path, name.replace("_", " ")))
    return ", ".join(words)
