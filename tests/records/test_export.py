"""The whole of the records leaves in one file and comes back the same; a wrong file changes nothing."""

import json
from collections.abc import Callable, Iterable
from datetime import UTC, datetime
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.builders import make_household, make_place
from tests.records.conftest import NOON, fill
from tests.records.drawn import DRAWN, TRAVELLING, contents
from tripplan.documents.calendars.server_calendar import OnServer, ServerCalendar
from tripplan.documents.model import Written
from tripplan.documents.places.forecast import PlaceForecast
from tripplan.documents.where import LookupResult
from tripplan.records.export import MOST_BYTES, MOST_FINDINGS, export_all, import_all, read_export
from tripplan.records.kinds import KINDS, DemoShown, kind_of
from tripplan.records.merging.replacement import replacement
from tripplan.records.migrations import summed
from tripplan.records.opening import Which, open_records, show
from tripplan.records.store import Records


@pytest.fixture(scope="module")
def two_records(tmp_path_factory: pytest.TempPathFactory) -> tuple[Records, Records]:
    """Two families' records; every example replaces what the one before it left there."""
    noon = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
    one, two = (open_records(tmp_path_factory.mktemp(name), Which.FAMILY, noon) for name in ("here", "there"))
    return one, two


def by_name(documents: Iterable[Written]) -> dict[tuple[str, str], Written]:
    """Documents by kind and key."""
    return {(kind_of(type(one)).name, kind_of(type(one)).key(one)): one for one in documents}


def test_every_kind_is_drawn_and_what_stays_here_is_meant_to() -> None:
    """A new kind joins the tests of this file; one that no export holds is named here with its reason."""
    assert DRAWN.keys() == KINDS.keys()
    assert {model for model, kind in KINDS.items() if not kind.travels} == {
        LookupResult,  # what an online service answered on this computer
        PlaceForecast,  # what a weather service answered on this computer; over in ten days
        ServerCalendar,  # the connection set up on this computer
        OnServer,  # what this computer has sent
        DemoShown,  # what this computer shows
    }


@settings(max_examples=10)
@given(contents(at_least=1, at_most=2), st.data())
def test_a_record_of_every_kind_goes_out_and_comes_back(
    two_records: tuple[Records, Records], before: list[Written], data: st.DataObject
) -> None:
    """Into empty records: the same documents, the same bytes; what stays here is in neither."""
    here, there = two_records
    fill(here, before)
    fill(there, [])
    for model in KINDS.keys() - set(TRAVELLING):
        staying = data.draw(DRAWN[model])
        kept = here.get(model, KINDS[model].key(staying))
        here.save(staying, NOON, kept.revision if kept else 0)
    exported = export_all(here)
    assert {entry["kind"] for entry in json.loads(exported)["documents"]} == {
        KINDS[model].name for model in TRAVELLING
    }
    assert import_all(there, exported, "all.json", NOON) == ()
    assert export_all(there) == exported
    assert by_name(read_export(exported, "all.json").documents) == by_name(before)
    assert [(raw.kind, raw.key, raw.body) for raw in there.raw_documents()] == [
        (raw.kind, raw.key, raw.body) for raw in here.raw_documents()
    ]


@settings(max_examples=15)
@given(contents(at_least=0, at_most=2), contents(at_least=0, at_most=2))
def test_export_and_import_are_each_others_opposite(
    two_records: tuple[Records, Records], before: list[Written], other: list[Written]
) -> None:
    """Whatever is on record, taken into records that hold something else, exports to the same bytes."""
    noon = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
    here, there = two_records
    fill(here, before)
    fill(there, other)
    exported = export_all(here)
    assert import_all(there, exported, "all.json", noon) == ()
    assert export_all(there) == exported
    for value in before:
        kept = there.get(type(value), KINDS[type(value)].key(value))
        assert kept is not None
        assert kept.value == value


@pytest.fixture
def filled(records: Records, noon: datetime) -> Records:
    """Records with a household, two places and a choice about this computer."""
    show(records, Which.FAMILY, noon)
    fill(records, [make_household(), make_place(), make_place(id="second")])
    return records


def test_the_file_names_its_kinds_and_format(filled: Records) -> None:
    """A person can read what is in it; choices about this computer are not."""
    whole = json.loads(export_all(filled))
    assert whole["tripplan_records"] == 1
    assert [entry["kind"] for entry in whole["documents"]] == ["household", "place", "place"]


def test_an_import_can_be_taken_back(filled: Records, noon: datetime) -> None:
    """What an import replaced is one undo away."""
    assert import_all(filled, export_all(filled).replace(b"Test museum", b"New"), "all.json", noon) == ()
    kept = filled.all(type(make_place()))["second"]
    assert kept.value.name == "New"
    back = filled.undo(type(make_place()), "second", noon, kept.revision)
    assert back is not None
    assert back.value.name == "Test museum"


def damaged(change: Callable[[Any], object]) -> Callable[[bytes], bytes]:
    """The file after a change to what it says."""

    def damage(data: bytes) -> bytes:
        whole = json.loads(data)
        change(whole)
        return json.dumps(whole).encode()

    return damage


WRONG_FILES: dict[str, tuple[Callable[[bytes], bytes], list[str]]] = {
    "empty": (lambda _: b"", [""]),
    "cut short": (lambda data: data[: len(data) // 2], [""]),
    "not UTF-8": (lambda data: b"\xff" + data, [""]),
    "deep": (lambda _: b"[" * 200_000, [""]),
    "long number": (lambda _: b"9" * 100_000, [""]),
    "other JSON": (lambda _: b"[1, 2]", [""]),
    "too large": (lambda _: bytes(MOST_BYTES + 1), [""]),
    "newer": (damaged(lambda whole: whole.update(tripplan_records=2)), ["tripplan_records"]),
    "no entry": (damaged(lambda whole: whole["documents"].append(7)), ["documents[3]"]),
    "extra field": (damaged(lambda whole: whole["documents"][0].update(x=1)), ["documents[0]"]),
    "unknown kind": (damaged(lambda whole: whole["documents"][1].update(kind="toy")), ["documents[1].kind"]),
    "odd kind": (damaged(lambda whole: whole["documents"][1].update(kind=["x"])), ["documents[1].kind"]),
    "choice": (
        damaged(lambda whole: whole["documents"].append({"kind": "demo_shown", "body": {}})),
        ["documents[3].kind"],
    ),
    "twice": (damaged(lambda whole: whole["documents"].append(whole["documents"][1])), ["documents[3]"]),
    "not a number": (
        damaged(lambda whole: whole["documents"][0]["body"]["home"].update(latitude=float("nan"))),
        ["documents[0].body.home.latitude"],
    ),
    "many": (
        damaged(
            lambda whole: (
                whole["documents"][0]["body"]["members"][1].update(born="soon"),
                whole["documents"][0]["body"].update(currency="=cmd"),
                whole["documents"][2]["body"]["offers"][0].update(price="-1"),
                whole["documents"][2]["body"].update(colour="<script>"),
            )
        ),
        [
            "documents[0].body.currency",
            "documents[0].body.members[1].born",
            "documents[2].body.colour",
            "documents[2].body.offers[0].ticket.price",
        ],
    ),
}


@pytest.mark.parametrize("case", WRONG_FILES)
def test_a_wrong_file_changes_nothing_and_names_every_fault(
    filled: Records, noon: datetime, case: str
) -> None:
    """Each fault comes with the file, the field and readable words; what is on record stays."""
    damage, fields = WRONG_FILES[case]
    before = filled.raw_documents()
    findings = import_all(filled, damage(export_all(filled)), "all.json", noon)
    assert sorted(finding.field for finding in findings) == fields
    assert {finding.file for finding in findings} == {"all.json"}
    assert all(finding.message and len(finding.value) <= 60 for finding in findings)
    assert filled.raw_documents() == before


@pytest.mark.parametrize(
    "flood",
    [
        b'{"kind":"x"},' * 760_000 + b"7",
        b'{"kind":"compared_places","body":{"places":[' + b'"=x",' * 200_000 + b"7]}}",
    ],
    ids=["documents", "fields"],
)
def test_a_flood_of_faults_is_cut_off(filled: Records, noon: datetime, flood: bytes) -> None:
    """Hundreds of thousands of faults give a list that can be read, and change nothing."""
    data = b'{"tripplan_records":1,"documents":[' + flood + b"]}"
    assert 1_000_000 < len(data) < MOST_BYTES
    before = filled.raw_documents()
    findings = import_all(filled, data, "all.json", noon)
    assert 1 <= len(findings) <= MOST_FINDINGS + 1
    assert filled.raw_documents() == before


def test_looking_at_a_file_changes_nothing(filled: Records) -> None:
    """A file can be read for a preview; the documents come in the order of the file."""
    preview = read_export(export_all(filled), "all.json")
    assert preview.findings == ()
    assert preview.documents == (make_household(), make_place(id="second"), make_place())


def test_what_cannot_be_read_goes_out_as_it_stands_and_stops_nothing(filled: Records, noon: datetime) -> None:
    """A text that is no document, a kind of a later version: the rest comes back, and takes their place."""
    before = export_all(filled)
    with filled.database.writing() as connection:
        connection.execute("UPDATE version SET body = 'no JSON' WHERE key = 'second'")
        connection.execute(f"UPDATE version SET checksum = {summed('version')}")
    with filled.change(noon) as change:
        change.put("colours", "blue", "{}")
    whole = json.loads(export_all(filled))
    assert [entry["kind"] for entry in whole["documents"]] == ["household", "place"]
    assert [(left["kind"], left["text"]) for left in whole["unread"]] == [
        ("colours", "{}"),
        ("place", "no JSON"),
    ]
    assert read_export(json.dumps(whole).encode(), "all.json").findings == ()
    assert replacement(filled, read_export(before, "all.json").documents).removed == ("colours blue",)
    assert import_all(filled, before, "all.json", noon) == ()
    assert (export_all(filled), filled.set_aside()) == (before, ())
