"""Which places to choose among when none is named: not the one the family was at a fortnight ago."""

from collections.abc import Mapping
from datetime import date, timedelta

from tripplan.documents.places.place import Place
from tripplan.planning.family.family import Family

LATELY = timedelta(weeks=4)
"""So long after a visit a place is not proposed again. Common practice, no source."""


def lately(family: Family, today: date) -> Mapping[str, date]:
    """The places where the family was lately or is going to be, with the day, by their ids.

    A place whose annual pass the family holds is none of them: it is there to be gone to often.

    Args:
        family: with its outings on record and its last visits.
        today: by the clock at home.
    """
    visits = [
        *family.last_visits.items(),
        *((one.place, one.day) for one in family.planned if one.takes_time),
    ]
    held = {one.place for one in family.household.passes}
    known = {place.id for place in family.places} - held
    return dict(sorted((place, day) for place, day in visits if place in known and day > today - LATELY))


def places_to_choose_among(family: Family, today: date) -> tuple[Place, ...]:
    """The places that are new or were not visited for a while; all of them where that leaves none.

    Args:
        family: with its outings on record and its last visits.
        today: by the clock at home.
    """
    apart = lately(family, today)
    return tuple(place for place in family.places if place.id not in apart) or family.places
