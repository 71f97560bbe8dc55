"""Which places stand side by side: those that were picked, or the best few of those to choose among."""

from collections.abc import Sequence

from tripplan.documents.places.place import Place
from tripplan.planning.compare.choose import SIDE_BY_SIDE, suggested
from tripplan.planning.family.family import Family
from tripplan.records.kinds import ComparedPlaces
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import kept_party, kept_span
from tripplan.screens.widgets.view import View


def picked_places(view: View, family: Family) -> list[Place]:
    """The places that were picked to stand side by side, as far as they are still kept."""
    kept = view.records.get(ComparedPlaces)
    return [place for place in family.places if kept and place.id in kept.value.places][:SIDE_BY_SIDE]


def compared_places(view: View, family: Family) -> Sequence[Place]:
    """The places that stand side by side: those that were picked, the best few where none were.

    Args:
        view: whose records.
        family: with at least one place.
    """
    party, span = kept_party(view, family), kept_span(view)
    return picked_places(view, family) or suggested(
        family, view.today, lambda places: answers.swept(family, party, places, span, view.today)
    )
