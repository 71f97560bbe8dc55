"""Place cards: one TOML file for each place, which can be handed to another family."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

from tripplan.documents.places.place import Place
from tripplan.errors import Finding, Weight
from tripplan.files.cards.place_rules import (
    location_findings,
    opening_findings,
    prices_read_findings,
    visit_findings,
)
from tripplan.files.locations.gazetteer import NotFound, locate
from tripplan.files.toml.form_schema import schema_of
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import shown
from tripplan.files.toml.written import Rule, form_text, read_form, start_of_file
from tripplan.planning.admission.checks import board_findings


@dataclass(frozen=True)
class PlaceCards:
    """The cards of a folder.

    Attributes:
        places: those without a fault, by file name.
        findings: every fault and warning of all the files.
    """

    places: tuple[Place, ...]
    findings: tuple[Finding, ...]


def read_place_card(source: str | bytes, file: str, today: date) -> ReadResult[Place]:
    """Read a place card and find every fault in one go.

    Args:
        source: TOML text, or a file's bytes.
        file: what findings call it.
        today: against which the age of the prices is told.

    Returns:
        The place, with coordinates and time zone filled in, and its warnings; or every fault.
    """
    rules: tuple[Rule[Place], ...] = (
        location_findings,
        partial(visit_findings, today=today),
        partial(opening_findings, today=today),
        board_findings,
        partial(prices_read_findings, today=today),
    )
    return read_form(source, file, Place, rules).map(_located)


def load_place_cards(folder: Path, today: date) -> PlaceCards:
    """Read all place cards of a folder; a card with a fault does not keep the others out.

    Args:
        folder: where every file that ends in .toml is a card.
        today: against which the age of the prices is told.
    """
    places: dict[str, Place] = {}
    findings: list[Finding] = []
    for path in sorted(folder.glob("*.toml")):
        read = load_place_card(path, today)
        findings.extend(read.findings)
        if read.value is None:
            continue
        if read.value.id in places:
            message = "another card in this folder has the same id"
            findings.append(Finding(path.name, "id", read.value.id, message))
        else:
            places[read.value.id] = read.value
    return PlaceCards(tuple(places.values()), tuple(findings))


def load_place_card(path: Path, today: date) -> ReadResult[Place]:
    """Read the place card in a file; a warning tells if the file has another name than the card's id."""
    try:
        source = start_of_file(path)
    except OSError as unreadable:
        return ReadResult(None, (Finding(path.name, "", "", f"cannot be opened: {unreadable.strerror}"),))
    read = read_place_card(source, path.name, today)
    return ReadResult(read.value, (*read.findings, *_name_findings(read.value, path)))


def write_place_card(place: Place) -> str:
    """A place card as TOML, without what it leaves at its default; reading it gives the same place."""
    return form_text(place)


def place_card_schema() -> dict[str, Any]:
    """The JSON schema of a place card (draft 2020-12), with each field's description."""
    return schema_of(Place, "Place card")


def _name_findings(place: Place | None, path: Path) -> Iterable[Finding]:
    if place is not None and place.id != path.stem:
        message = f"a card's file is named after its id; this one is called {shown(path.name)}"
        yield Finding(path.name, "id", place.id, message, Weight.WARNING)


def _located(place: Place) -> Place:
    where = locate(place.where)
    return place if isinstance(where, NotFound) else place.model_copy(update={"where": where})
