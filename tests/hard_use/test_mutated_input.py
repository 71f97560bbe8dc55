"""Bad inputs of every kind that the program takes: no traceback, and no change on record.

Each begins as something sound and is damaged at random, from a fixed seed, in ways that really happen. Every
day's tests take five hundred, those that are asked for by their mark ten thousand.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, date, datetime
from io import StringIO
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from zoneinfo import ZoneInfo

import pytest

from tests.builders import make_household, make_place
from tests.files.calendars.test_school_table_file import TABLE
from tests.planning.logbook.entries import make_entry
from tests.roads.invented_map import blob, header_data
from tests.scrambling import ODD_TEXTS, scrambled, scrambled_json
from tripplan.__main__ import main
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.errors import InputFaults
from tripplan.files.calendar_reader.reading import read_here
from tripplan.files.calendars.family_calendar_file import family_calendar_from
from tripplan.files.calendars.school_calendar_file import school_calendar_from
from tripplan.files.calendars.school_file import read_school_file
from tripplan.files.cards.household_file import read_household, write_household
from tripplan.files.cards.logbook_file import entry_from_values, read_logbook_entry, write_logbook_entry
from tripplan.files.cards.place_card import read_place_card, write_place_card
from tripplan.files.demo import read_demo
from tripplan.planning.family.family import Family
from tripplan.records.export import export_all, import_all, read_export
from tripplan.records.opening import Which, open_records, show
from tripplan.records.store import Records
from tripplan.roads.extract import read_extract
from tripplan.screens.calendar.typed_days import days_typed_in
from tripplan.screens.logbook.typed_entry import entry_values, on_record
from tripplan.screens.places.own_figures_form import raw_figures, read_own_figures
from tripplan.screens.places.place_details import read_typed_drive
from tripplan.services import demo_folder

SEED = 20261125
TODAY = date(2026, 11, 25)
NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)
HOME = ZoneInfo("America/Chicago")
WINDOW = DateSpan(first=date(2026, 7, 1), last=date(2027, 12, 31))
DEMO = demo_folder()

Taken = Callable[[bytes], bool]
"""Takes one input; whether it could be used, be it with warnings."""


def takes_card(data: bytes) -> bool:
    """A place card."""
    return read_place_card(data, "card.toml", TODAY).value is not None


def takes_household(data: bytes) -> bool:
    """A household file."""
    return read_household(data, "household.toml", TODAY).value is not None


def takes_entry(data: bytes) -> bool:
    """A logbook entry."""
    return read_logbook_entry(data, "entry.toml", TODAY).value is not None


def takes_school_file(file: str) -> Taken:
    """A district's calendar, as far as the school calendar it would become."""

    def take(data: bytes) -> bool:
        read = read_school_file(data, file, WINDOW, HOME, read=read_here)
        if read.value is None:
            return False
        school_calendar_from(read.value.proposal, country="US", latitude=40, longitude=-89, name="District")
        return True

    return take


def takes_family_calendar(data: bytes) -> bool:
    """A calendar of the family's, as far as the busy times it would become."""
    read = read_here(data, "family.ics", WINDOW, HOME, own_addresses=("vera@example.org",))
    if read.value is None:
        return False
    family_calendar_from(read.value, keep_names=True)
    return True


def takes_map(data: bytes) -> bool:
    """A map file, as far as its head and the lengths of its blocks."""
    with TemporaryDirectory() as folder:
        path = Path(folder, "map.osm.pbf")
        path.write_bytes(data)
        try:
            return read_extract(path).size == len(data)
        except InputFaults as faults:
            return not all(finding.file == path.name for finding in faults.findings)


def map_file() -> bytes:
    """A map's head and a few blocks of data."""
    head = blob("OSMHeader", header_data((-90.0, -88.0, 41.0, 40.0), 1_790_000_000))
    return head + b"".join(blob("OSMData", bytes([number]) * 300) for number in range(5))


def demo_files(pattern: str) -> list[bytes]:
    """Some of the demo's files."""
    found = [path.read_bytes() for path in sorted(DEMO.glob(pattern))]
    assert found
    return found


@dataclass(frozen=True)
class Input:
    """One kind of input.

    Attributes:
        count: how many there are of it [-].
        sound: files as they should be.
        take: what the program does with one.
        lenient: whether most damaged ones can still be used, entry by entry.
    """

    count: int
    sound: list[bytes]
    take: Taken
    lenient: bool = False


@dataclass(frozen=True)
class Take:
    """Which part of the ten thousand is taken.

    Attributes:
        one_in: of so many inputs one [-].
    """

    one_in: int

    def of(self, count: int) -> int:
        """How many of a kind; a few at least."""
        return max(LEAST, count // self.one_in)


LEAST = 6
TAKES = [
    pytest.param(Take(20), id="some"),
    pytest.param(Take(1), id="all", marks=pytest.mark.hard_use_full),
]
LOGBOOK_FORMS, OTHER_FORMS, EXPORTS, COMMANDS = 400, 1_800, 900, 60
INPUTS = {
    "cards": Input(500, [write_place_card(make_place()).encode()], takes_card),
    "cards of the demo": Input(80, demo_files("places/*.toml"), takes_card),
    "households": Input(1_000, [write_household(make_household()).encode()], takes_household),
    "logbook entries": Input(
        900, [write_logbook_entry(make_entry()).encode(), *demo_files("logbook/*.toml")], takes_entry
    ),
    "school calendars": Input(300, demo_files("calendars/*district*.ics"), takes_school_file("s.ics"), True),
    "map heads": Input(400, [map_file()], takes_map),
    "school tables": Input(3_410, [TABLE.encode()], takes_school_file("s.csv")),
    "family calendars": Input(250, demo_files("calendars/*family.ics"), takes_family_calendar, True),
}


def test_there_are_ten_thousand_and_five_hundred() -> None:
    """The kinds that take little time come oftener."""
    counts = [*(kind.count for kind in INPUTS.values()), LOGBOOK_FORMS, OTHER_FORMS, EXPORTS, COMMANDS]
    assert sum(counts) == 10_000
    assert sum(map(Take(20).of, counts)) >= 500


@pytest.mark.parametrize("take", TAKES)
@pytest.mark.parametrize("kind", INPUTS)
def test_a_damaged_file_is_used_as_far_as_it_goes_or_refused(kind: str, take: Take) -> None:
    """Whatever was done to it, an answer comes back."""
    random, given = Random(SEED), INPUTS[kind]
    count = take.of(given.count)
    assert all(given.take(sound) for sound in given.sound)
    used = sum(given.take(scrambled(random.choice(given.sound), random)) for _ in range(count))
    assert used if given.lenient else count - used > count / 3


def odd_texts(names: list[str], random: Random) -> dict[str, str]:
    """Odd texts for a form's fields."""
    return {name: random.choice(ODD_TEXTS) for name in names}


@pytest.mark.parametrize("take", TAKES)
def test_odd_texts_typed_into_the_logbook_are_taken_or_refused(take: Take) -> None:
    """A few, or all, of the fields that take text say something odd; nothing becomes an entry by accident."""
    random = Random(SEED)
    household = make_household()
    family = Family(household, (make_place(),))
    before = make_entry()
    sound = on_record(before, household, unnamed=False)
    texts = [
        name for name, value in sound.items() if isinstance(value, str) and name not in ("place", "food")
    ]
    refused = 0
    count = take.of(LOGBOOK_FORMS)
    for _ in range(count):
        chosen = random.sample(texts, random.choice((1, 3, len(texts))))
        typed = {**sound, **odd_texts(chosen, random)}
        values, unread = entry_values(typed, sound, before, family, before.id)
        read = entry_from_values(values, TODAY, household)
        assert read.value is not None or read.findings
        refused += read.value is None or bool(unread)
    assert refused > count / 3


@pytest.mark.parametrize("take", TAKES)
def test_odd_texts_typed_into_other_forms_are_taken_or_refused(take: Take) -> None:
    """Own figures of a place, a drive, and days without school."""
    random, place = Random(SEED), make_place()
    refused = 0
    count = take.of(OTHER_FORMS)
    for number in range(count):
        match number % 3:
            case 0:
                names = ["tolls", "stay_minutes", "stay_from", "name0", "price0", "give_or_take_percent0"]
                typed = {"usual": True, "add_ons": [], **odd_texts(names, random)}
                refused += read_own_figures(raw_figures(typed, place), "USD").value is None
            case 1:
                texts = odd_texts(["distance", "minutes"], random)
                refused += read_typed_drive(texts, place.id, random.choice(("mi", "km")), TODAY).value is None
            case _:
                lines = (f"{random.choice(ODD_TEXTS)} to {random.choice(ODD_TEXTS)} break" for _ in range(3))
                refused += bool(days_typed_in("\n".join(lines), "Days off")[1])
    assert refused > count / 2


def last_change(records: Records) -> int:
    """The number of the last change on record."""
    return records.past_changes(1)[0].number


@pytest.fixture
def family(tmp_path: Path) -> Records:
    """A family's own records, in use."""
    records = open_records(tmp_path, Which.FAMILY, NOON)
    show(records, Which.FAMILY, NOON)
    with records.change(NOON) as change:
        for value in (make_household(), make_place(), make_entry()):
            change.save(value)
    return records


@pytest.mark.parametrize("take", TAKES)
def test_a_damaged_export_changes_nothing(family: Records, tmp_path: Path, take: Take) -> None:
    """Whether it is no JSON any more or says something else in it, the file is refused as a whole."""
    random = Random(SEED)
    demo = open_records(tmp_path, Which.DEMO, NOON)
    with demo.change(NOON) as change:
        change.replace_all(read_demo(DEMO, TODAY).documents)
    sound = {records: export_all(records) for records in (family, demo)}
    before = {records: (last_change(records), records.raw_documents()) for records in sound}
    refused = 0
    count = take.of(EXPORTS)
    for number in range(count):
        records = family if number % 20 else demo  # the whole demo takes longer to read
        damaged = (scrambled_json if number % 3 else scrambled)(sound[records], random)
        found = read_export(damaged, "all.json").findings
        refused += bool(found)
        # One that says something else that is possible would rightly be taken.
        assert not found or import_all(records, damaged, "all.json", NOON) == found
    assert refused > count / 2
    assert before == {records: (last_change(records), records.raw_documents()) for records in sound}


@pytest.mark.parametrize("take", TAKES)
def test_a_command_given_a_damaged_file_ends_with_a_sentence(
    family: Records, tmp_path: Path, take: Take
) -> None:
    """What cannot be used is told with its file, with status 2, and nothing is changed."""
    random = Random(SEED)
    asked = {
        ("check", "card.toml"): INPUTS["cards"].sound,
        ("check", "--household", "household.toml"): INPUTS["households"].sound,
        ("import", "--yes", "all.json"): [export_all(family)],
        ("logbook", "write", "--replace", "entry.toml"): INPUTS["logbook entries"].sound[:1],
        ("schools", "add", "--name", "District", "--at", "Peoria, IL", "days.csv"): [TABLE.encode()],
        ("busy", "file", "ours.ics"): INPUTS["family calendars"].sound,
    }
    settings = {"TRIPPLAN_DATA": str(tmp_path), "TRIPPLAN_TODAY": TODAY.isoformat(), "COLUMNS": "100"}
    refused = 0
    count = take.of(COMMANDS)
    for number in range(count):
        words, sound = list(asked.items())[number % len(asked)]
        file = tmp_path / words[-1]
        file.write_bytes(scrambled(random.choice(sound), random))
        out, err = StringIO(), StringIO()
        before = last_change(family)
        status = main([*words[:-1], str(file)], environment=settings, stdout=out, stderr=err)
        if status == 2:
            refused += 1
            assert file.name in out.getvalue() + err.getvalue()
            assert last_change(family) == before
    assert refused >= count / 3
