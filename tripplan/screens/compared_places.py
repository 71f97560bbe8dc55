"""Which places stand side by side: those that were picked, or the best few of those to choose among."""

from collections.abc import Sequence

from tripplan.documents.places.place import Place
from tripplan.planning.compare.choose import SIDE_BY_SIDE, best_few
from tripplan.planning.family.family import Family
from tripplan.planning.family.variety import places_to_choose_among
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
    if picked := picked_places(view, family):
        return picked
    places = places_to_choose_among(family, view.today)
    if len(places) <= SIDE_BY_SIDE:
        return places
    table = answers.swept(family, kept_party(view, family), places, kept_span(view), view.today)
    return best_few(table) or places[:SIDE_BY_SIDE]
