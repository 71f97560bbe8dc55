"""`tripplan together`: several households at one place."""

import json
from decimal import Decimal
from typing import Any

import jsonschema  # type: ignore[import-untyped]
import pytest

from tests.commands.conftest import NOON, Files, Run, assert_fits_schema
from tests.saying import says
from tripplan.documents.outings.going_together import GoingTogether
from tripplan.records.store import Records
from tripplan.values.money import Money

TICKETS = (
    {"name": "Adult", "price": "14.00", "ages": "13+"},
    {"name": "Child", "price": "9.00", "ages": "3-12"},
    {"name": "Small child", "price": "0.00", "ages": "under 3"},
    {"name": "From six on", "price": "8.00", "ages": "3+", "at_least": 6},
)
ASKED = ("test-museum", "2026-12-08")
REED = ("--group", "Reed", "38, 36, 9, 16 mo")


@pytest.fixture
def museum(files: Files) -> Files:
    """A museum with a price from six people on; the family alone pays 14 + 14 + 9 = $37."""
    files.add(offers=list(TICKETS))
    return files


def answer(run: Run, *argv: str, status: int = 0) -> dict[str, Any]:
    """The JSON answer."""
    said = run("together", *argv, "--json")
    assert (said.status, said.err) == (status, "")
    told: dict[str, Any] = json.loads(said.out)
    return told


def test_a_group_price_reached_together_is_split_to_the_cent(run: Run, museum: Files) -> None:
    """Six who pay get $8 each, $48 instead of 37 + 37; both would have paid the same, so it is $24 each."""
    told = answer(run, *ASKED, *REED, "5", "20.00", *museum.options)["outing"]
    assert told["total"]["amount"] == "48.00"
    assert told["saving"]["amount"] == "26.00"
    assert told["group_offers"] == ["From six on"]
    assert [share["amount"]["amount"] for share in told["shares"]] == ["24.00", "24.00"]
    assert told["at_the_till"] == {
        "group": "Test household",
        "amount": {"amount": "28.00", "currency": "USD"},
    }
    (transfer,) = told["transfers"]
    assert (transfer["payer"], transfer["receiver"]) == ("Reed", "Test household")
    assert transfer["amount"]["amount"] == "4.00"


def test_shares_add_up_to_the_total(run: Run, museum: Files) -> None:
    """With three households and parts that do not divide evenly, no cent is lost."""
    told = answer(run, *ASKED, *REED, "--group", "Marsh", "41", "--group", "Hill", "30, 4", *museum.options)
    shares = [Decimal(share["amount"]["amount"]) for share in told["outing"]["shares"]]
    assert len(shares) == 4
    assert sum(shares) == Decimal(told["outing"]["total"]["amount"])


def test_the_words_tell_rule_seats_payments_and_tickets(run: Run, museum: Files) -> None:
    """Everything a parent reads out to the others stands there, with the caution on child seats."""
    said = run("together", *ASKED, *REED, "0", "--seats", "7", "--payer", "Reed", *museum.options)
    text = " ".join(said.out.split())
    assert said.status == 0
    assert says(text, "together-reached", offers="'From six on'")
    assert says(text, "together-rule")
    assert says(text, "together-seats-missing", missing=1, seats=7, people="8 people")
    assert says(text, "cautions-seat-moves-along")
    assert says(text, "together-pays-rest", group="Reed", amount=Money(Decimal(48), "USD"))
    owed = Money(Decimal(24), "USD")
    assert says(text, "together-transfer", payer="Test household", receiver="Reed", amount=owed)
    assert "6 x From six on" in text


def test_json_fits_its_schema_and_form(run: Run, museum: Files) -> None:
    """No key is missing, none is unknown, whether the day can be done or not."""
    schema = json.loads(run("schema", "together").out)
    for day, status in (("2026-12-08", 0), ("2026-12-07", 1)):
        told = answer(run, "test-museum", day, *REED, *museum.options, status=status)
        assert_fits_schema(told, "together")
        jsonschema.validate(told, schema, cls=jsonschema.Draft202012Validator)


def test_the_households_on_record_are_the_usual_ones(run: Run, own_records: Records) -> None:
    """Without `--group` those of the screens come along; named ones stand for them."""
    kept = {"currency": "USD", "households": [{"name": "Kept", "people": ["40", "8"]}], "seats": 3}
    own_records.save(GoingTogether.model_validate(kept), NOON)
    told = answer(run, *ASKED)["outing"]
    assert [share["group"] for share in told["shares"]] == ["Test household", "Kept"]
    assert told["seats"] == 8
    told = answer(run, *ASKED, *REED)["outing"]
    assert [share["group"] for share in told["shares"]] == ["Test household", "Reed"]


def test_where_the_day_cannot_be_done_the_answer_is_no(run: Run, museum: Files) -> None:
    """On a Monday the museum is closed: status 1 with the reason."""
    said = run("together", "test-museum", "2026-12-07", *REED, *museum.options)
    assert (said.status, said.err) == (1, "")
    assert "closed on Mondays" in said.out


def test_every_fault_is_told_at_once(run: Run, museum: Files) -> None:
    """Place, date, ages, seats, money and a household without ages are all looked at."""
    said = run(
        "together", "nowhere", "soon", "--group", "Reed", "38, old", "many", "x", "--group", "Marsh",
        "--seats=-1", *museum.options,
    )  # fmt: skip
    assert (said.status, said.out) == (2, "")
    for fault in (
        "(found: nowhere)",
        "(found: soon)",
        "--group Reed, ages no. 2",
        "--group Reed, seats",
        "--group Reed, paid",
        "(found: Marsh)",
        "--seats: must not be negative",
    ):
        assert fault in said.err


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ((), "nobody comes along"),
        ((*REED, *REED), "a name of its own; twice: Reed"),
        (("--group", "Test household", "38"), "that is your own household"),
        ((*REED, "--payer", "Hill"), "known: Test household, Reed"),
        ((*REED, "5", "1.234"), "at most 2 digits"),
    ],
    ids=["nobody", "twice", "the own one", "unknown payer", "half cents"],
)
def test_households_that_cannot_be_are_refused(
    run: Run, museum: Files, more: tuple[str, ...], told: str
) -> None:
    """Each with what would be right, and nothing is answered."""
    said = run("together", *ASKED, *more, *museum.options)
    assert (said.status, said.out) == (2, "")
    assert told in said.err
