"""A form asks for any document by the document's own description, and writes only what was changed."""

from datetime import date, time
from decimal import Decimal
from typing import Annotated, Any, Literal

import pytest
from hypothesis import given, settings
from pydantic import Field

from tests.builders import make_household
from tests.records.drawn import households
from tripplan.documents.family.car import Car
from tripplan.documents.family.food import Food
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.field_spec import Control, FieldSpec, Unit, asked_in, forms_in, labels
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.model import ClockTime, Minutes, Name, Written
from tripplan.documents.places.offers import Ticket
from tripplan.documents.places.place import Place, Show
from tripplan.errors import Finding
from tripplan.files.cards.household_file import read_household
from tripplan.files.toml.form_schema import schema_of
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.records.merging.differences import differences
from tripplan.screens.forms.answers import on_record, put_changes
from tripplan.screens.forms.questions import Setting, questions
from tripplan.screens.forms.words import in_words
from tripplan.screens.household.sections import SECTIONS

TODAY = date(2026, 11, 25)
MILES = Setting(units="mi", currency="USD")


class Stall(Written):
    """A stall, for tests."""

    name: Annotated[Name, FieldSpec("Called")]
    """Its name."""
    opens: Annotated[ClockTime, FieldSpec("Opens at")] = time(9)
    """When it opens."""


class Fair(Written):
    """A document with one field of every kind, for tests."""

    title: Annotated[Name, FieldSpec("What is it?", called="Title")]
    """Its title."""
    walk_km: Annotated[
        Annotated[float, Field(ge=1, le=100)] | None, FieldSpec("The walk", unit=Unit.KILOMETRES)
    ] = None
    """How far one walks there."""
    rest: Annotated[Minutes, FieldSpec("A rest takes", unit=Unit.MINUTES)] = 10
    """How long one rests."""
    mood: Annotated[Literal["calm", "loud"], FieldSpec("Mood", words={"calm": "quiet", "loud": "lively"})] = (
        "calm"
    )
    """How it is."""
    day: Annotated[date | None, FieldSpec("Day")] = None
    """When it is."""
    hours: Annotated[tuple[ClockTime, ...], FieldSpec("Tours at")] = ()
    """When there are tours."""
    prize: Annotated[Stall | None, FieldSpec("There is a prize")] = None
    """Where the prize is given."""
    stalls: Annotated[tuple[Stall, ...], FieldSpec("Stalls", called="Stall")] = ()
    """Its stalls."""
    secret: str = "unasked"
    """What no screen asks for."""


def changed(fair: Fair | None, **typed: Any) -> tuple[dict[str, Any], list[Finding]]:
    """What a fair's file would hold after some fields were typed anew, and what could not be read."""
    asked = questions(Fair)
    said = on_record(asked, fair, MILES)
    assert typed.keys() <= said.keys()
    raw = fair.model_dump(mode="json", exclude_none=True) if fair else {}
    found = put_changes(raw, asked, {**said, **typed}, said if fair else {}, MILES)
    return raw, found


FAIR = Fair(
    title="Fair",
    walk_km=2.123,
    hours=(time(9, 30),),
    stalls=(Stall(name="Buns"), Stall(name="Yarn", opens=time(10))),
    secret="kept",
)


def test_every_kind_of_field_has_its_control_from_its_type() -> None:
    """Nobody says twice that a time is a time."""
    controls = {question.path: question.control for question in questions(Fair)}
    assert controls == {
        "title": Control.LINE,
        "walk_km": Control.DISTANCE,
        "rest": Control.LINE,
        "mood": Control.CHOICE,
        "day": Control.DAY,
        "hours": Control.TIMES,
        "prize": Control.PART,
        "stalls": Control.ROWS,
    }


def test_what_is_not_touched_stays_to_the_letter() -> None:
    """Also what a field rounds, and what no field shows."""
    raw, found = changed(FAIR)
    assert not found
    assert read_form(write_toml(raw), "", Fair).usable() == FAIR


def test_only_what_was_changed_is_written() -> None:
    """An entry changed, one emptied, one added at the end; a part opened; the rest as it was."""
    raw, found = changed(
        FAIR,
        **{
            "stalls0_name": "",
            "stalls0_opens": None,
            "stalls1_opens": time(11),
            "stalls2_name": "Nuts",
            "prize": True,
            "prize.name": "Stage",
            "hours": "9:05 am, 14:30",
        },
    )
    assert not found
    after = read_form(write_toml(raw), "", Fair).usable()
    assert after == FAIR.model_copy(
        update={
            "hours": (time(9, 5), time(14, 30)),
            "prize": Stall(name="Stage"),
            "stalls": (Stall(name="Yarn", opens=time(11)), Stall(name="Nuts")),
        }
    )


def test_a_new_document_needs_what_has_no_usual_value() -> None:
    """An emptied field counts as left out."""
    raw, _ = changed(None, title="New", rest="")
    assert read_form(write_toml(raw), "", Fair).usable() == Fair(title="New")
    missing = read_form(write_toml(changed(None)[0]), "", Fair)
    assert [finding.field for finding in missing.findings] == ["title"]


@pytest.mark.parametrize("text", ["0.5", "70", "far", "nan", "1e400"])
def test_a_distance_is_refused_in_the_familys_own_unit(text: str) -> None:
    """100 km are 62 miles (1.609344 km each)."""
    raw, (finding,) = changed(FAIR, walk_km=text)
    assert (finding.field, finding.value) == ("walk_km", text)
    assert "to 62 mi" in finding.message
    assert raw["walk_km"] == FAIR.walk_km
    assert changed(FAIR, walk_km="1.5")[0]["walk_km"] == pytest.approx(1.5 * 1.609344, abs=1e-4)


def test_one_label_serves_screen_fault_history_and_schema() -> None:
    """The unit follows where the label does not say it."""
    raw = {"title": "x", "rest": "soon", "stalls": [{"name": ""}, {"name": "Yarn", "opens": "noon"}]}
    told = in_words(read_form(write_toml(raw), "", Fair).findings, Fair, raw)
    assert {finding.field for finding in told} == {
        "A rest takes, in minutes",
        "Stall 1, called",
        "Yarn, opens at",
    }
    after = FAIR.model_copy(update={"mood": "loud", "title": "Market"})
    assert [(one.field, one.before, one.after) for one in differences(FAIR, after)] == [
        ("Title", "Fair", "Market"),
        ("Mood", "quiet", "lively"),
    ]
    rest = schema_of(Fair, "Fair")["properties"]["rest"]
    assert (rest["title"], rest["unit"], rest["maximum"]) == ("A rest takes", "min", 1440)


def test_every_field_that_a_parent_writes_is_asked_for_by_a_label() -> None:
    """But for versions, kinds, ids and what the program itself notes."""
    unasked = {
        (form.__name__, name)
        for document in (Household, Place, LogbookEntry)
        for form in _all_forms(document)
        for name in form.model_fields
        if asked_in(form, name) is None
    }
    of_the_program = {
        "format",
        "kind",
        "id",
        "planned",
        "currency",
        "home_zone",
        "place_zone",
        "as_planned",
        "by_town",
    }
    forms_of_the_program = {"AsPlanned", "PlannedItem", "PlannedNap", "BirthDate", "KnownAge"}
    assert {name for form, name in unasked if form not in forms_of_the_program} <= of_the_program


def _all_forms(form: type[Any]) -> set[type[Any]]:
    found = {form}
    for info in form.model_fields.values():
        for inner in forms_in(info.annotation):
            found |= _all_forms(inner)
    return found


@settings(max_examples=40)
@given(households)
def test_any_household_looked_at_in_its_fields_stays_as_it_is(household: Household) -> None:
    """Every section at once, and every person, answered as it stands there."""
    setting = Setting(household.units)
    raw = household.model_dump(mode="json", exclude_none=True)
    before = write_toml(raw)
    parts: list[tuple[Any, Any, Any]] = [(raw, section.asked, household) for section in SECTIONS]
    people = zip(raw["members"], household.members, strict=True)
    parts += [(member, questions(Member), value) for member, value in people]
    for part, asked, value in parts:
        said = on_record(asked, value, setting)
        assert said
        assert not put_changes(part, asked, said, said, setting)
    assert write_toml(raw) == before


def test_a_label_is_told_once_for_every_field() -> None:
    """The labels of a document are those that its faults are told by."""
    household = make_household(car={"fuel": "mpg", "consumption": "24", "fuel_price": "3.12"})
    raw = household.model_dump(mode="json", exclude_none=True)
    raw["car"]["consumption"] = "much"
    raw["members"][3]["naps"][0]["minutes"] = 900
    told = in_words(read_household(write_toml(raw), "", TODAY).findings, Household, raw)
    assert {finding.field for finding in told} == {
        "Gas mileage or consumption",
        "Di, nap 1, usual length, in minutes",
    }
    assert dict(labels(Household))["car.consumption"] == "Gas mileage or consumption"
    assert household.reserve_percent == Decimal(10)


@pytest.mark.parametrize(
    ("form", "name", "typed", "expected"),
    [
        (Car, "fuel_price", "$3.09/gal", "3.09"),
        (Car, "consumption", "22 mpg", "22"),
        (Food, "packed_adult", "$4.50", "4.50"),
        (Member, "born", "5/14/1988", "1988-05-14"),
        (Member, "born", "22 months", "22 months on 2026-11-25"),
        (Member, "patience_minutes", "1 h 20", "80"),
        (Ticket, "price", "free", "0"),
        (Ticket, "price", "ten", "ten"),
    ],
)
def test_every_form_reads_what_is_typed_as_people_write_it(
    form: type[Written], name: str, typed: str, expected: str
) -> None:
    """Signs, units, dates and spans are read by the field's type; what reads like nothing stays."""
    raw: dict[str, object] = {}
    setting = Setting(country="US", today=date(2026, 11, 25))
    assert not put_changes(raw, questions(form, name), {name: typed}, {}, setting)
    assert raw[name] == expected


def test_morning_or_afternoon_is_asked() -> None:
    """A bare 5 is not guessed: the field's fault says how to write either."""
    raw: dict[str, object] = {}
    (found,) = put_changes(raw, questions(Show, "starts"), {"starts": "10am, 5"}, {}, Setting())
    assert "5am" in found.message
    assert "5pm" in found.message
    assert raw["starts"] == ["10:00", "05:00"]
