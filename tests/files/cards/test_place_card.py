"""Place cards are read with every fault at once and written so that they read back the same."""

import json
import tomllib
from datetime import date, time
from pathlib import Path
from typing import Any

import jsonschema  # type: ignore[import-untyped]
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import make_place
from tripplan.documents.places.place import Place
from tripplan.errors import Weight
from tripplan.files.cards.format_guide import example_card
from tripplan.files.cards.place_card import (
    load_place_card,
    load_place_cards,
    place_card_schema,
    read_place_card,
    write_place_card,
)
from tripplan.files.toml.written import read_form
from tripplan.values.visible import shows_something

TODAY = date(2026, 11, 25)
DEMO = sorted((Path(__file__).resolve().parents[3] / "demo_places" / "places").glob("*.toml"))


def found(place: Place) -> dict[str, tuple[str, Weight]]:
    """The findings of a card that holds a place, by field."""
    read = read_place_card(write_place_card(place), "card.toml", TODAY)
    return {f.field: (f.message, f.weight) for f in read.findings}


def test_four_different_faults_of_one_card_come_together() -> None:
    """An unknown field, a negative price, overlapping bands and impossible hours are told at once."""
    text = (
        example_card()
        .replace("price = 9.50", "price = -9.50")
        .replace('ages = "4-12"', 'ages = "3-14"')
        .replace("We-Su 10:00-16:00", "We-Su 10:00-16:75")
        .replace("[visit]", "[visit]\nstars = 5")
    )
    read = read_place_card(text, "mill.toml", TODAY)
    assert read.value is None
    fields = {(f.field, f.value) for f in read.findings if f.weight is Weight.FAULT}
    assert {
        ("visit.stars", "5"),
        ("offers[0].price", "-9.50"),
        ("opening.hours", "We-Su 10:00-16:75"),
    } <= fields
    overlaps = [f for f in read.findings if f.field.endswith(".ages")]
    assert overlaps
    assert all(f.file == "mill.toml" and f.weight is Weight.FAULT for f in overlaps)


def test_a_town_is_put_on_the_map_when_the_card_is_read() -> None:
    """A card with only a town gets its coordinates and time zone offline."""
    where = read_place_card(example_card(), "x", TODAY).usable().where
    # Galena, Illinois lies at 42.42 N, 90.43 W (from memory; the Census gazetteer agrees to 0.01 degrees).
    assert where.point.latitude == pytest.approx(42.42, abs=0.03)
    assert where.point.longitude == pytest.approx(-90.43, abs=0.03)
    assert where.time_zone == "America/Chicago"


@pytest.mark.parametrize(
    ("old", "new", "field", "part"),
    [
        ('subdivision = "IL"', 'subdivision = "QQ"', "where.subdivision", "no such US state"),
        ('town = "Galena"', 'town = "Galenna"', "where.town", "did you mean Galena?"),
        ('town = "Galena"', 'postal_code = "00000"', "where.postal_code", "no such ZIP code"),
        ('town = "Galena"', 'postal_code = "52001"', "where.postal_code", "lies in IA, not IL"),
        ('country = "US"', 'country = "FR"', "where.town", "give latitude and longitude instead"),
        (
            'town = "Galena"',
            "latitude = 42.4\nlongitude = 90.4",
            "where.longitude",
            "west of Greenwich is negative",
        ),
    ],
)
def test_a_place_that_is_not_on_the_map_is_a_fault(old: str, new: str, field: str, part: str) -> None:
    """What cannot be looked up is named, with what to give instead."""
    read = read_place_card(example_card().replace(old, new), "x", TODAY)
    assert read.value is None
    assert [(f.field, part in f.message) for f in read.findings] == [(field, True)]


@pytest.mark.parametrize(
    ("opening", "field", "part", "weight"),
    [
        (
            {"hours": "Tu-Su 10:00-12:00", "last_entry_minutes_before_close": 120},
            "opening.last_entry_minutes_before_close",
            "nobody would ever be let in",
            Weight.FAULT,
        ),
        (
            {"hours": "Tu-Fr 10:00-17:00; Sa 10:00-11:00", "last_entry_minutes_before_close": 60},
            "opening.last_entry_minutes_before_close",
            "nobody would be let in on some days: the shortest opening lasts 1 h",
            Weight.WARNING,
        ),
        (
            {"hours": "Tu-Su 10:00-17:00", "entry_times": ["11:00", "18:00"]},
            "opening.entry_times[1]",
            "nobody is let in then",
            Weight.FAULT,
        ),
        (
            {"hours": "Tu-Su 10:00-17:00", "entry_times": ["11:00", "10:30"]},
            "opening.entry_times[1]",
            "entry times rise; this one follows 11:00",
            Weight.FAULT,
        ),
        (
            {"hours": "2020 Mo-Fr 10:00-17:00"},
            "opening.hours",
            "on no day of the coming year",
            Weight.WARNING,
        ),
        ({"hours": "Feb 30 10:00-17:00"}, "opening.hours", "there is no Feb 30", Weight.FAULT),
        (
            {"hours": "Mo-Fr 17:00-10:00"},
            "opening.hours",
            "opens at 17:00 and closes next day",
            Weight.WARNING,
        ),
        (
            {"hours": "Mo 10:00-10:30"},
            "visit.shortest_minutes",
            "never open that long; its longest opening lasts 30 min",
            Weight.WARNING,
        ),
    ],
)
def test_hours_that_nobody_can_keep_are_told(
    opening: dict[str, Any], field: str, part: str, weight: Weight
) -> None:
    """Entries while the place is closed, days that do not exist and no opening at all are named."""
    message, how_bad = found(make_place(opening=opening))[field]
    assert part in message
    assert how_bad is weight


@pytest.mark.parametrize(
    "opening",
    [
        {"hours": "24/7", "last_entry_minutes_before_close": 60, "entry_times": ["09:00", "23:30"]},
        {"hours": "PH 10:00-17:00"},
        {"hours": "SH Mo-Fr 10:00-17:00", "entry_times": ["11:00"]},
        {"hours": "Fr-Sa 19:00-01:00", "entry_times": ["20:00", "23:00"]},
        {"hours": 'Mo-Fr 10:00-17:00 "by appointment"'},
        {"hours": "Jan 01 10:00-17:00; Feb 29 10:00-17:00; Dec 31 10:00-17:00"},
    ],
)
def test_unusual_hours_are_no_fault(opening: dict[str, Any]) -> None:
    """Parks that never close, places open on holidays only, evenings past midnight are all right."""
    assert found(make_place(opening=opening)) == {}


def test_a_comfortable_stay_is_no_shorter_than_the_shortest() -> None:
    """The two lengths of a visit must be in order."""
    message, weight = found(make_place(visit={"shortest_minutes": 90, "comfortable_minutes": 60}))[
        "visit.comfortable_minutes"
    ]
    assert message == "must be no less than the shortest stay, 1 h 30 min"
    assert weight is Weight.FAULT


def test_a_stay_of_some_ages_is_in_order_too() -> None:
    """The same rule holds for every entry."""
    stays = [{"ages": "under 3", "shortest_minutes": 90, "comfortable_minutes": 60}]
    message, _ = found(make_place(visit={"stays": stays}))["visit.stays[0].comfortable_minutes"]
    assert message == "must be no less than the shortest stay, 1 h 30 min"


def test_shows_outside_the_hours_and_shows_told_twice_are_found() -> None:
    """A show that ends after closing can never be seen; two entries of one name cannot be told apart."""
    shows = [{"name": "Feeding", "starts": ["11:00", "16:50"]}, {"name": "Feeding", "starts": ["12:00"]}]
    told = found(make_place(visit={"shows": shows}))
    assert told["visit.shows[0].starts[1]"] == (
        "the place is never open for the whole of it",
        Weight.WARNING,
    )
    assert told["visit.shows[1].name"][1] is Weight.FAULT
    assert len(told) == 2


@pytest.mark.parametrize(
    ("day", "part"),
    [(date(2025, 11, 24), "more than a year ago"), (date(2026, 11, 26), "lies in the future")],
)
def test_old_and_future_prices_are_warned_of(day: date, part: str) -> None:
    """Prices read more than a year ago, or tomorrow, bring a warning; the card can be used."""
    place = make_place(prices_read={"on": day, "source": "board"})
    message, weight = found(place)["prices_read.on"]
    assert part in message
    assert weight is Weight.WARNING
    assert read_place_card(write_place_card(place), "x", TODAY).value == place


def test_prices_read_today_or_a_year_ago_are_fine() -> None:
    """The two ends of the year that counts as recent bring no warning."""
    for day in (date(2025, 11, 25), TODAY):
        assert found(make_place(prices_read={"on": day, "source": "board"})) == {}


def test_the_written_card_is_plain_toml_without_defaults() -> None:
    """Dates and times are TOML's own, prices numbers, and nothing stands there that need not."""
    place = make_place(opening={"hours": "Tu-Su 10:00-17:00", "entry_times": ["10:00", "14:30"]})
    values = tomllib.loads(write_place_card(place))
    assert values["opening"] == {"hours": "Tu-Su 10:00-17:00", "entry_times": [time(10), time(14, 30)]}
    assert values["offers"][1] == {"name": "Child", "kind": "ticket", "price": 9, "ages": "3-12"}
    assert values["prices_read"]["on"] == date(2026, 11, 2)
    assert "visit" not in values
    assert next(iter(values)) == "format"


@pytest.mark.parametrize("path", DEMO, ids=lambda path: path.stem)
def test_a_demo_card_is_free_of_faults_and_survives_writing(path: Path) -> None:
    """Each card of the demo scenario loads without a fault and reads back the same after writing."""
    read = load_place_card(path, TODAY)
    assert read.findings == ()
    assert read_place_card(write_place_card(read.usable()), path.name, TODAY).value == read.value


@pytest.mark.parametrize("path", DEMO, ids=lambda path: path.stem)
def test_a_card_of_the_old_format_loses_nothing(path: Path) -> None:
    """Read as format 1 it says what it says as format 2, and it is written as format 2."""
    text = path.read_text(encoding="utf-8")
    assert "format = 2" in text
    old = read_place_card(text.replace("format = 2", "format = 1"), path.name, TODAY).usable()
    assert old == load_place_card(path, TODAY).value
    written = write_place_card(old)
    assert tomllib.loads(written)["format"] == 2
    assert read_place_card(written, path.name, TODAY).value == old


def test_a_format_nobody_knows_is_refused() -> None:
    """A card of a later format is not read as if it were this one."""
    read = read_place_card(example_card().replace("format = 2", "format = 3"), "mill.toml", TODAY)
    assert read.value is None
    assert [finding.field for finding in read.findings] == ["format"]


texts = st.text(max_size=40)
names = st.text(min_size=1, max_size=40).filter(shows_something)
prices = st.decimals(0, 500, places=2, allow_nan=False)
days = st.dates(date(2020, 1, 1), date(2035, 12, 31))
bands = st.one_of(
    st.just("any"),
    st.integers(0, 90).map(lambda first: f"{first}+"),
    st.tuples(st.integers(0, 40), st.integers(0, 40)).map(lambda b: f"{b[0]}-{b[0] + b[1]}"),
    st.tuples(st.integers(0, 40), st.integers(0, 40)).map(lambda b: f"{b[0]}-{b[0] + b[1]} months"),
    st.integers(1, 30).map(lambda end: f"under {end}"),
)
tickets = st.fixed_dictionaries(
    {"price": prices, "ages": bands},
    optional={
        "note": texts,
        "needs": st.lists(names, max_size=2),
        "valid": st.sampled_from(["We", "Su[1]"]),
        "first_day": days,
        "refundable": st.booleans(),
        "companions": st.fixed_dictionaries({}, optional={"ages": bands, "each_allows": st.integers(1, 9)}),
        "one_free_per": st.integers(1, 30),
    },
)
seats = st.lists(
    st.fixed_dictionaries({"count": st.integers(1, 9)}, optional={"ages": bands}), min_size=1, max_size=3
)
bundles = st.fixed_dictionaries({"kind": st.just("bundle"), "price": prices, "seats": seats})
passes = st.fixed_dictionaries(
    {"kind": st.just("pass"), "price": prices, "seats": seats, "months": st.integers(1, 60)},
    optional={"guests_percent_off": st.decimals(0, 100, places=1, allow_nan=False)},
)
changes = st.fixed_dictionaries(
    {"name": names},
    optional={
        "notes": texts,
        "visit": st.fixed_dictionaries(
            {}, optional={"topics": st.lists(names, max_size=3), "pushchairs": st.booleans()}
        ),
        "opening": st.fixed_dictionaries(
            {"hours": st.just("Mo-Su 09:00-18:00")},
            optional={
                "entry_times": st.lists(st.times(time(9), time(17)).map(lambda t: t.replace(microsecond=0)))
            },
        ),
        "offers": st.lists(tickets | bundles | passes, min_size=1, max_size=6).map(
            lambda offers: [{**offer, "name": f"Offer {n}"} for n, offer in enumerate(offers)]
        ),
        "fees": st.lists(st.fixed_dictionaries({"name": names, "price": prices}), max_size=2),
        "special_days": st.lists(st.fixed_dictionaries({"day": days, "name": names}), max_size=2),
    },
)


@given(changes)
def test_any_card_reads_back_the_same(change: dict[str, Any]) -> None:
    """Writing a place and reading the text gives an equal place and, written again, the same text."""
    place = make_place(**change)
    text = write_place_card(place)
    # Without the rules of fit, since these price boards are random.
    again = read_form(text, "x", Place).usable()
    assert again == place
    assert write_place_card(again) == text


def test_a_folder_keeps_its_good_cards_and_tells_the_faults_of_the_others(tmp_path: Path) -> None:
    """One bad card does not keep the others out; ids that stand twice and odd file names are told."""
    (tmp_path / "example-mill.toml").write_text(example_card(), encoding="utf-8")
    (tmp_path / "twin.toml").write_text(example_card(), encoding="utf-8")
    (tmp_path / "broken.toml").write_bytes(b"\xff")
    (tmp_path / "folder.toml").mkdir()
    (tmp_path / "notes.txt").write_text("not a card", encoding="utf-8")
    cards = load_place_cards(tmp_path, TODAY)
    assert [place.id for place in cards.places] == ["example-mill"]
    told = {(f.file, f.field, f.weight) for f in cards.findings}
    assert told == {
        ("broken.toml", "line 1", Weight.FAULT),
        ("folder.toml", "", Weight.FAULT),
        ("twin.toml", "id", Weight.WARNING),
        ("twin.toml", "id", Weight.FAULT),
    }


def test_a_huge_file_is_not_even_read_to_its_end(tmp_path: Path) -> None:
    """Of a file beyond the limit only its beginning is looked at."""
    path = tmp_path / "huge.toml"
    path.write_bytes(b"#" * 5_000_000)
    assert ["larger than 256 KB" in f.message for f in load_place_card(path, TODAY).findings] == [True]


def test_the_schema_accepts_the_demo_cards_and_refuses_slips() -> None:
    """The JSON schema is a valid one, takes every demo card and turns a slip away."""
    schema = place_card_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    checker = jsonschema.Draft202012Validator(schema)
    for path in DEMO:
        card = json.loads(json.dumps(tomllib.loads(path.read_text(encoding="utf-8")), default=str))
        assert [error.message for error in checker.iter_errors(card)] == []
        assert not checker.is_valid({**card, "stars": 5})
        assert not checker.is_valid({**card, "offers": []})


def test_the_schema_tells_what_each_field_means() -> None:
    """Every field of every group has a description, so that an editor can show it."""
    schema = place_card_schema()
    groups = [schema, *(group for group in schema["$defs"].values() if "properties" in group)]
    nameless = [
        name
        for group in groups
        for name, field in group["properties"].items()
        if not field.get("description") and "$ref" not in field
    ]
    assert nameless == []
