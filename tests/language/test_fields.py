"""Fields of forms in other languages than English, which stands at the fields themselves."""

from collections.abc import Iterator

import pytest
from pydantic import BaseModel

from tripplan.documents.calendars.family_days import FamilyDays, WorkingHours
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member, Nap
from tripplan.documents.field_spec import FieldSpec, asked, asked_in, forms_in
from tripplan.errors import Finding
from tripplan.language.locales import Locale, speaking
from tripplan.language.messages import FOLDER, entries_in
from tripplan.screens.forms.words import in_words

MOVED = (Household, FamilyDays)
"""Documents whose labels have words in every language; the list grows."""


def asked_for(form: type[BaseModel]) -> Iterator[FieldSpec]:
    """Every field that is asked for in a form and the forms within it."""
    for name, info in form.model_fields.items():
        spec = asked_in(form, name)
        if spec is not None:
            yield spec
        for inner in forms_in(info.annotation):
            yield from asked_for(inner)


def german() -> set[str]:
    """What German has words for."""
    return {name for name, _ in entries_in(FOLDER / "de" / "fields.ftl")}


@pytest.mark.parametrize("form", MOVED)
def test_every_label_of_a_form_has_german_words(form: type[BaseModel]) -> None:
    """A German page asks for everything in German."""
    assert {spec.code for spec in asked_for(form)} - german() == set()


def test_german_names_no_field_that_is_not_there() -> None:
    """A field that was renamed takes its German words along."""
    units = {name for name, _ in entries_in(FOLDER / "en-US" / "fields.ftl")}
    known = set()
    for spec in (spec for form in MOVED for spec in asked_for(form)):
        words = {
            f"{spec.code}-{str(value).lower().replace('/', '-').replace(' ', '-')}" for value in spec.words
        }
        known |= {spec.code, f"{spec.code}-help", f"{spec.code}-called", *words}
    assert german() - units <= known


def test_a_field_is_called_by_the_language_that_is_spoken() -> None:
    """With its unit and its choices; English where nothing else is spoken, and in the schema always."""
    with speaking(Locale.DE):
        assert asked(Nap, "minutes").spoken().label_in() == "übliche Länge, in Minuten"
        assert asked(WorkingHours, "then").spoken().words["wait"] == "der Ausflug meidet diese Stunden"
        assert Member.model_json_schema()["properties"]["born"]["title"] == "Birth date"
    with speaking(Locale.EN_GB):
        assert asked(Nap, "minutes").spoken().label_in() == "usual length, in minutes"


def test_a_fault_names_its_field_in_the_language_that_is_spoken() -> None:
    """By the person's name and the label on the page."""
    found = [Finding("household.toml", "members[0].born", "38", "?")]
    with speaking(Locale.DE):
        (told,) = in_words(found, Household, {"members": [{"name": "Odile"}]})
    assert told.field == "Odile, Geburtsdatum"
