"""The whole of the records leaves in one file and comes back the same; a wrong file changes nothing."""

import json
from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta, timezone
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.builders import make_household, make_place
from tests.records.conftest import fill
from tripplan.planning.calendars import FamilyCalendar, SchoolCalendar
from tripplan.planning.model import Written
from tripplan.planning.outing import TypedDrive
from tripplan.planning.planned import PlannedOuting, PlanStatus
from tripplan.planning.study.units import StudyUnit
from tripplan.records.export import MOST_BYTES, MOST_FINDINGS, export_all, import_all, read_export
from tripplan.records.kinds import KINDS, ComparedPlaces
from tripplan.records.opening import Which, open_records, show
from tripplan.records.store import Records

names = st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=80).filter(
    lambda text: bool(text.strip())
)
ids = st.from_regex(r"[a-z0-9]{1,9}(-[a-z0-9]{1,9}){0,3}", fullmatch=True)
prices = st.decimals(0, 1000, places=2)
days = st.dates(date(2026, 1, 1), date(2030, 12, 31))
moments = st.datetimes(datetime(2026, 1, 1), datetime(2030, 12, 31), timezones=st.timezones())  # noqa: DTZ001
offsets = st.integers(-14 * 60, 14 * 60).map(lambda minutes: timezone(timedelta(minutes=minutes)))

households = st.builds(
    lambda name, price, needs, share: make_household(
        name=name,
        treats_per_child=price,
        reserve_percent=share,
        members=[{"name": "Ann", "born": "1988-05", "needs": needs, "statuses": [name]}],
    ),
    names,
    prices,
    st.text(st.characters(exclude_categories=["Cs"])),
    st.decimals(0, 100, allow_nan=False, allow_infinity=False),
)
places = st.builds(
    lambda key, name, price, notes: make_place(
        id=key, name=name, notes=notes, offers=[{"name": "Entry", "price": price, "ages": "any"}]
    ),
    ids,
    names,
    prices,
    names,
)
school_calendars = st.builds(
    lambda name, latitude, longitude, pupils, first, more: SchoolCalendar.model_validate(
        {
            "name": name,
            "country": "US",
            "latitude": latitude,
            "longitude": longitude,
            "pupils": pupils,
            "known": {"first": first, "last": first + timedelta(days=more)},
            "no_school": [{"first": first, "last": first, "name": name}],
        }
    ),
    names,
    st.floats(-90, 90),
    st.floats(-180, 180),
    st.integers(1, 10**12),
    days,
    st.integers(0, 400),
)
family_calendars = st.builds(
    lambda name, start, offset: FamilyCalendar.model_validate(
        {"name": name, "busy": [{"start": start.astimezone(offset), "end": start.astimezone(UTC)}]}
    ),
    names,
    moments,
    offsets,
)
typed_drives = st.builds(
    TypedDrive,
    place=ids,
    km=st.floats(0, 20_000, exclude_min=True),
    minutes=st.floats(0, 10_000, exclude_min=True),
    typed_on=days,
)
planned_outings = st.builds(
    lambda key, moment, party, status, amount: PlannedOuting(
        id=key,
        place=key,
        day=moment.date(),
        party=tuple(party),
        leave_home=moment,
        enter=moment,
        leave_place=moment,
        home=moment,
        uid=f"{key}@example.org",
        status=status,
        changed_at=moment.astimezone(UTC),
        likely_amount=amount,
        currency="USD",
    ),
    ids,
    moments,
    st.lists(names, min_size=1, max_size=5),
    st.sampled_from(PlanStatus),
    st.decimals(0, 10**6, places=3).map(Decimal),
)
study_units = st.builds(
    lambda name, topic, first, more, budget, members: StudyUnit(
        name=name,
        topics=(topic,),
        first=first,
        last=first + timedelta(days=more),
        currency="USD",
        budget=budget,
        members=tuple(members),
    ),
    names,
    names,
    days,
    st.integers(0, 200),
    st.none() | prices,
    st.lists(names, max_size=3),
)


def by_key(documents: st.SearchStrategy[Any], model: type[Written]) -> st.SearchStrategy[list[Any]]:
    """Up to four documents of one type, no two with the same key."""
    return st.lists(documents, max_size=4, unique_by=KINDS[model].key)


contents = st.tuples(
    st.lists(households, max_size=1),
    by_key(places, type(make_place())),
    by_key(school_calendars, SchoolCalendar),
    by_key(family_calendars, FamilyCalendar),
    by_key(typed_drives, TypedDrive),
    by_key(planned_outings, PlannedOuting),
    by_key(study_units, StudyUnit),
    st.lists(st.builds(ComparedPlaces, places=st.lists(ids, max_size=4).map(tuple)), max_size=1),
).map(lambda kinds: [value for values in kinds for value in values])


@pytest.fixture(scope="module")
def two_records(tmp_path_factory: pytest.TempPathFactory) -> tuple[Records, Records]:
    """Two families' records; every example replaces what the one before it left there."""
    noon = datetime(2026, 11, 25, 12, 0, tzinfo=UTC)
    one, two = (open_records(tmp_path_factory.mktemp(name), Which.FAMILY, noon) for name in ("here", "there"))
    return one, two


@settings(max_examples=60, deadline=None)
@given(contents, contents)
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
