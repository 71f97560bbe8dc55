"""A town is not an address: a place that is located by its town alone is told so."""

from tests.builders import make_place
from tripplan.documents.where import Where
from tripplan.files.locations.gazetteer import locate
from tripplan.planning.calendar_entry.outing_entry import location_of
from tripplan.screens.widgets.locations.where_form import where_on_record, where_values


def located(**parts: str) -> Where:
    """A location looked up offline."""
    found = locate(Where.model_validate({"country": "US", **parts}))
    assert isinstance(found, Where)
    return found


def test_the_entry_says_that_only_the_town_is_known() -> None:
    """Until a street is there; coordinates of the place's own need none."""
    town = located(town="Galena", subdivision="IL")
    assert town.town_only
    assert "add the street" in location_of(make_place(where=town.model_dump()))
    assert located(postal_code="61036").town_only
    street = located(town="Galena", subdivision="IL", address="12 Mill St")
    assert not street.town_only
    assert "add the street" not in location_of(make_place(where=street.model_dump()))
    assert not make_place().where.town_only


def test_a_change_beside_it_does_not_make_a_town_an_address() -> None:
    """Ticking the rush hours leaves the town's coordinates; pasting others makes them the place's own."""
    town = located(town="Galena", subdivision="IL")
    typed = {**where_on_record(town), "metropolitan": True}
    values, found = where_values(typed, town, "where")
    assert not found
    assert Where.model_validate(values).town_only
    values, found = where_values({**typed, "coordinates": "42.41, -90.43"}, town, "where")
    assert not found
    assert not Where.model_validate(values).town_only
