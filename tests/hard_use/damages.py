"""Records as a family has them, damaged in one of many ways, and what is left of them once opened."""

import random
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from pathlib import Path

from tests.builders import make_household, make_place
from tests.planning.logbook.entries import make_entry
from tests.records.conftest import NOON
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.errors import RecordsDamaged
from tripplan.records.copies.daily import back_up
from tripplan.records.copies.listed import copies_of
from tripplan.records.export import export_all
from tripplan.records.kinds import MODELS
from tripplan.records.opening import Which, open_records, show
from tripplan.records.reading import read_document
from tripplan.records.restoring import put_back, recover
from tripplan.records.store import Records

LATER = NOON + timedelta(days=1)
Name = tuple[str, str]
Damage = Callable[[random.Random, bytearray], None]


@dataclass(frozen=True)
class Family:
    """What there is before the damage.

    Attributes:
        file: the records file.
        copy: a day's copy, from before the last changes.
        values: every document, by kind and key.
        said: the sentence of every change, by its number.
    """

    file: bytes
    copy: bytes
    values: dict[Name, object]
    said: dict[int, str]


def write_family(folder: Path) -> Family:
    """A household, places, drives and a logbook, of which some are changed after the day's copy."""
    records = open_records(folder, Which.FAMILY, NOON)
    show(records, Which.FAMILY, NOON)
    household = records.save(make_household(), NOON)
    with records.change(NOON, "Many were entered.") as change:
        for number in range(12):
            length = 250 if number == 7 else 40  # one is longer than a page
            change.save(make_place(id=f"place-{number}", notes=f"note {number} " * length))
            drive = {"place": f"place-{number}", "km": 20 + number, "minutes": 50, "typed_on": "2026-11-01"}
            change.save(TypedDrive.model_validate(drive))
        for number in range(30):
            day = date(2026, 9, 1) + timedelta(days=number)
            change.save(make_entry(id=f"{day}-walk", day=day))
    back_up(records.database, NOON.date())
    copy = next(iter(copies_of(records.database.path))).path.read_bytes()
    for number in range(12):
        kept = records.all(Place)[f"place-{number}"]
        said = f"Place {number} is renamed."
        with records.change(LATER, said) as change:
            change.save(kept.value.model_copy(update={"name": f"Renamed {number}"}), kept.revision)
    records.save(make_household(name="Renamed"), LATER, household.revision)
    records.save(make_place(id="new-place"), LATER)
    with records.change(LATER, "A place is removed.") as change:
        change.remove(Place, "place-3", records.all(Place)["place-3"].revision)
    return Family(records.database.path.read_bytes(), copy, _values(records), _said(records))


def _values(records: Records) -> dict[Name, object]:
    read = {
        (raw.kind, raw.key): read_document(MODELS[raw.kind], raw.body).value
        for raw in records.raw_documents()
        if raw.is_sound
    }
    return {name: value for name, value in read.items() if value is not None}


def _said(records: Records) -> dict[int, str]:
    return {change.number: change.said for change in records.past_changes(999)}


def _flip(rng: random.Random, raw: bytearray) -> None:
    raw[rng.randrange(len(raw))] ^= 1 << rng.randrange(8)


def _flip_in_the_head(rng: random.Random, raw: bytearray) -> None:
    raw[rng.randrange(100)] ^= 1 << rng.randrange(8)


def _flip_in_the_tables(rng: random.Random, raw: bytearray) -> None:
    raw[rng.randrange(100, 4096)] ^= 1 << rng.randrange(8)


def _overwrite(rng: random.Random, raw: bytearray) -> None:
    length = rng.choice((1, 4, 16, 64, 512))
    at = rng.randrange(len(raw) - length)
    raw[at : at + length] = rng.randbytes(length)


def _lose_sectors(rng: random.Random, raw: bytearray) -> None:
    length = 512 * rng.randrange(1, 17)
    at = 512 * rng.randrange(len(raw) // 512)
    end = min(at + length, len(raw))
    raw[at:end] = bytes(end - at)


def _swap_pages(rng: random.Random, raw: bytearray) -> None:
    one, other = (slice(4096 * n, 4096 * n + 4096) for n in rng.sample(range(len(raw) // 4096), 2))
    raw[one], raw[other] = raw[other], raw[one]


def _copy_a_page_over_another(rng: random.Random, raw: bytearray) -> None:
    one, other = (slice(4096 * n, 4096 * n + 4096) for n in rng.sample(range(len(raw) // 4096), 2))
    raw[one] = raw[other]


def _cut_short(rng: random.Random, raw: bytearray) -> None:
    del raw[rng.randrange(1, len(raw)) :]


def _shift(rng: random.Random, raw: bytearray) -> None:
    del raw[(at := rng.randrange(len(raw) - 9)) : at + rng.randrange(1, 9)]


def _change_a_digit(rng: random.Random, raw: bytearray) -> None:
    digits = [at for at, byte in enumerate(raw) if 48 <= byte <= 57]
    raw[rng.choice(digits)] = 48 + rng.randrange(10)


DAMAGES: tuple[Damage, ...] = (
    _flip,
    _flip_in_the_head,
    _flip_in_the_tables,
    _overwrite,
    _lose_sectors,
    _swap_pages,
    _copy_a_page_over_another,
    _cut_short,
    _shift,
    _change_a_digit,
)


@dataclass
class Outcome:
    """What became of damaged records.

    Attributes:
        dead_ends: why somebody could not go on; empty where she could.
        unseen: what says something else than before without a word about it.
        made_anew: whether the file was made anew.
        from_copy: whether nothing could be read, so that a copy took its place.
        set_aside: how many records are named as set aside [-].
    """

    dead_ends: list[str] = field(default_factory=list)
    unseen: list[str] = field(default_factory=list)
    made_anew: bool = False
    from_copy: bool = False
    set_aside: int = 0


def damaged(family: Family, number: int) -> bytes:
    """The family's file after the damage of a number; the same number, the same damage."""
    rng = random.Random(number)
    raw = bytearray(family.file)
    DAMAGES[number % len(DAMAGES)](rng, raw)
    return bytes(raw)


def go_on(folder: Path, family: Family, number: int, at: datetime = LATER) -> Outcome:
    """Open damaged records and do with them what a parent does.

    Args:
        folder: an empty one.
        family: what there was.
        number: which damage.
        at: now.
    """
    path = folder / f"{Which.FAMILY}.sqlite3"
    path.write_bytes(damaged(family, number))
    (folder / "backups").mkdir()
    (folder / "backups" / f"family-{NOON.date()}.sqlite3").write_bytes(family.copy)
    outcome = Outcome()
    try:
        _go_on(path, family, outcome, at)
    except Exception as trouble:  # noqa: BLE001 - whatever it is, somebody stands before it
        outcome.dead_ends.append(f"{type(trouble).__name__}: {trouble}")
    return outcome


def _go_on(path: Path, family: Family, outcome: Outcome, at: datetime) -> None:
    try:
        records = open_records(path.parent, Which.FAMILY, at)
    except RecordsDamaged:
        outcome.from_copy = True
        recover(path, copies_of(path)[0], at)
        records = open_records(path.parent, Which.FAMILY, at)
    outcome.made_anew = records.made_anew is not None
    aside = {(one.kind, one.key) for one in records.set_aside()}
    outcome.set_aside = len(aside)
    if not outcome.from_copy:
        now = _values(records)
        told = outcome.made_anew
        for name in family.values.keys() | now.keys():
            # A record made since the last copy, all of whose rows are gone, can be named by nobody; that the
            # file was damaged and made anew is told all the same.
            can_be_named = not told or name != ("place", "new-place") or name in now
            if now.get(name) != family.values.get(name) and name not in aside and can_be_named:
                outcome.unseen.append(f"{name}: {family.values.get(name)} is {now.get(name)}")
        for change, said in _said(records).items():
            if said != family.said.get(change, "") and not (told and said == ""):
                outcome.unseen.append(f"change {change} says {said}")
        if not told and not aside and _said(records) != family.said:
            outcome.unseen.append("the history is another")
    _use(records, at, outcome)
    again = open_records(path.parent, Which.FAMILY, at)
    if again.made_anew:
        outcome.dead_ends.append("it is damaged again")


def _use(records: Records, at: datetime, outcome: Outcome) -> None:
    for model in (Household, Place, TypedDrive, LogbookEntry):
        records.all(model)
        records.removed(model)
    kept = records.get(Household)
    records.save(make_household(name="Goes on"), at, kept.revision if kept else 0)
    records.save(make_place(id="entered-afterwards"), at)
    export_all(records)
    put_back(records, copies_of(records.database.path)[0], at)
    left = [one for one in records.set_aside() if not one.is_used]
    household = records.get(Household)
    if left or household is None or household.value != make_household():
        outcome.dead_ends.append(f"the copy is not back: {left}")
    back_up(records.database, at.date())
