"""`tripplan compare`: places side by side."""

import json
from decimal import Decimal
from typing import Any

import pytest

from tests.commands.conftest import NOON, Files, Run, assert_fits_schema
from tests.saying import says
from tripplan.records.kinds import ComparedPlaces
from tripplan.records.store import Records

ADMISSIONS = {"dear": "30.00", "cheap": "5.00", "middling": "12.00", "fourth": "1.00"}


@pytest.fixture
def four_places(files: Files) -> Files:
    """Four museums that differ in their price of entry alone."""
    for name, price in ADMISSIONS.items():
        files.add(id=name, name=name.capitalize(), offers=[{"name": "Entry", "price": price, "ages": "any"}])
    return files


def answer(run: Run, *argv: str) -> dict[str, Any]:
    """The JSON answer."""
    said = run("compare", *argv, "--json")
    assert said.err == ""
    told: dict[str, Any] = json.loads(said.out)
    return told


def test_places_stand_in_order_of_their_total(run: Run, four_places: Files) -> None:
    """However they are named, the cheapest place comes first."""
    said = run("compare", "dear", "cheap", "middling", *four_places.options)
    assert said.status == 0
    assert said.out.index("Cheap") < said.out.index("Middling") < said.out.index("Dear")


def test_any_number_of_places_can_be_compared(run: Run, four_places: Files) -> None:
    """Three is only the usual number."""
    told = answer(run, *ADMISSIONS, *four_places.options)
    assert [one["place"]["id"] for one in told["candidates"]] == ["fourth", "cheap", "middling", "dear"]


def test_without_names_the_best_three_are_compared(run: Run, four_places: Files) -> None:
    """With nothing named and nothing kept, the dearest of four places is left out."""
    told = answer(run, *four_places.options)
    assert {one["place"]["id"] for one in told["candidates"]} == {"cheap", "middling", "fourth"}


def test_the_kept_comparison_is_the_usual_one(run: Run, own_records: Records) -> None:
    """What the parent put side by side on the screens is compared here too."""
    own_records.save(ComparedPlaces(places=("gone", "test-museum")), NOON)
    told = answer(run)
    assert [one["place"]["id"] for one in told["candidates"]] == ["test-museum"]
    assert told["data"] == "own"


def test_items_add_up_to_the_total(run: Run, four_places: Files) -> None:
    """The likely amounts of the items make the likely total, to the cent."""
    for one in answer(run, *four_places.options)["candidates"]:
        cost = one["best"]["cost"]
        items = sum(Decimal(item["amount"]["likely"]) for item in cost["items"])
        assert items == Decimal(cost["total"]["likely"])


def test_json_carries_ranges_sources_and_offsets(run: Run, four_places: Files) -> None:
    """Money is a decimal text with its currency, times carry their offset, figures their source."""
    best = answer(run, "cheap", "--on", "2026-12-08", *four_places.options)["candidates"][0]["best"]
    total = best["cost"]["total"]
    assert total["currency"] == "USD"
    assert Decimal(total["low"]) <= Decimal(total["likely"]) <= Decimal(total["high"])
    assert all(isinstance(total[end], str) for end in ("low", "likely", "high"))
    assert best["plan"]["leave_home"].endswith("-06:00")
    assert best["plan"]["leave_home"].startswith("2026-12-08T")
    for figure in (
        *best["cost"]["items"],
        best["way_there"],
        best["crowd"],
        best["admission"],
        best["felt_cost"],
    ):
        assert figure["source"]["origin"]
        assert figure["source"]["text"]


def test_json_is_what_its_form_says(run: Run, four_places: Files) -> None:
    """No key is missing, none is unknown."""
    told = answer(run, *four_places.options)
    assert_fits_schema(told, "compare")


def test_a_fixed_day_is_the_only_one_looked_at(run: Run, four_places: Files) -> None:
    """`--on` leaves no other days."""
    (candidate,) = answer(run, "cheap", "--on", "2026-12-08", *four_places.options)["candidates"]
    assert candidate["best"]["day"] == "2026-12-08"
    assert candidate["other_days"] == []


def test_the_usual_span_is_six_weeks_from_tomorrow(run: Run, four_places: Files) -> None:
    """Without dates, the days from tomorrow on count, six weeks of them."""
    assert answer(run, *four_places.options)["span"] == {"first": "2026-11-26", "last": "2027-01-06"}


def test_only_the_party_named_goes(run: Run, four_places: Files) -> None:
    """Two people pay two entries."""
    (candidate,) = answer(run, "dear", "--party", "cy", "Ann", *four_places.options)["candidates"]
    assert candidate["best"]["party"] == ["Ann", "Cy"]
    assert candidate["best"]["admission"]["total"] == {"amount": "60.00", "currency": "USD"}


def test_why_tells_items_tickets_and_cautions(run: Run, four_places: Files) -> None:
    """With `--why` every total opens into what it is made of and where that comes from."""
    said = run("compare", "cheap", "--why", *four_places.options)
    for told in ("Admission for 4: $20.00", "prices read 2026-11-02", "Tickets: $20.00", "Please mind:"):
        assert told in said.out


def test_where_no_day_can_be_done_the_answer_is_no(run: Run, four_places: Files) -> None:
    """On a Monday all four are closed; the reasons are told, and the status says no."""
    said = run("compare", "cheap", "dear", "--on", "2026-12-07", *four_places.options)
    assert (said.status, said.err) == (1, "")
    assert said.out.count("closed on Mondays") == 2
    assert run("compare", "cheap", "--on", "2026-12-07", "--json", *four_places.options).status == 1


def test_a_narrow_terminal_keeps_every_line(run: Run, four_places: Files) -> None:
    """At 30 characters nothing is cut off and nothing runs over."""
    said = run("compare", *four_places.options, COLUMNS="30")
    assert max(map(len, said.out.splitlines())) <= 30
    assert said.out.count("total: ") == 3


def test_the_demo_is_compared_at_once(run: Run) -> None:
    """With nothing entered yet, the invented family's three outings are compared, and called invented."""
    said = run("compare", "--from", "2026-12-10", "--to", "2026-12-13")
    assert said.status == 0
    assert said.out.startswith("Demo: this family, its places and prices are invented.")


def test_the_better_day_out_is_told_beside_the_cheapest(run: Run) -> None:
    """In the demo they differ; what would change either is told, and in JSON by which measure."""
    asked = ("--demo", "--today", "2026-11-25")
    said = run("compare", *asked, "--why").out
    for code in ("flips-two-firsts", "flips-cheapest", "flips-better"):
        assert says(said, code)
    told = answer(run, *asked)["flips"]
    assert {flip["measure"] for flip in told} == {"total", "felt_cost"}
    by_weather = [flip for flip in told if flip["what"]["code"] == "flips-weather"]
    assert {flip["measure"] for flip in by_weather} == {"felt_cost"}
    assert len(by_weather) == 4
