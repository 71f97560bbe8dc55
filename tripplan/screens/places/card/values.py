"""What the fields of a card say: from a card to the fields, and back to the card as its file holds it."""

from collections.abc import Mapping
from typing import Any

from tripplan.documents.places.place import Place
from tripplan.errors import Finding
from tripplan.screens.forms import answers
from tripplan.screens.forms.questions import Setting
from tripplan.screens.places.card.fields import CARD, WHERE
from tripplan.screens.widgets.fields import FieldValue
from tripplan.screens.widgets.locations.where_form import where_on_record, where_values


def on_record(place: Place | None, currency: str) -> dict[str, FieldValue]:
    """What the fields say for a card; what usually counts for a card that is yet to be made.

    Args:
        place: the card.
        currency: ISO 4217 code, for a new card's prices.
    """
    said = answers.on_record(CARD, place, Setting())
    if place is None:
        said["currency"] = currency
    return {**said, **where_on_record(place.where if place else None)}


def put_fields(values: dict[str, Any], typed: Mapping[str, Any], before: Place | None) -> list[Finding]:
    """Write the fields into a card as its file would hold it.

    What was not changed is left as it stands there, so that nothing is lost that a field cannot show.

    Args:
        values: the card; changed.
        typed: the fields.
        before: the card that they were filled from; None for a new one.

    Returns:
        What the form itself could not read.
    """
    said_before = {} if before is None else on_record(before, before.currency)
    found: list[Finding] = []
    if before is None or any(typed[name] != said_before[name] for name in WHERE):
        values["where"], found = where_values(dict(typed), before.where if before else None, "where")
    return [*found, *answers.put_changes(values, CARD, typed, said_before, Setting())]
