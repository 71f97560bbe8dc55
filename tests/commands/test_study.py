"""`tripplan study` tells units and plans a term; `tripplan busy` tells what keeps the family busy."""

from pathlib import Path

from tests.commands.conftest import Run
from tripplan.planning.family_days import FamilyDays
from tripplan.planning.study.units import StudyUnit
from tripplan.records.store import Records


def test_the_demos_term_is_planned(run: Run) -> None:
    """Units with fitting places and close spellings are told, and the programme with its total and limits."""
    listed = run("study", "list", "--demo")
    assert (listed.status, listed.err) == (0, "")
    assert "Who eats whom" in listed.out
    assert "does not count until you say so" in " ".join(listed.out.split())
    planned = run("study", "programme", "--demo")
    assert (planned.status, planned.err) == (0, "")
    assert "3 outings: at least $" in planned.out


def test_a_unit_is_added_and_changed(run: Run, own_records: Records) -> None:
    """The unit is on record as given; a wrong one is told and changes nothing; without places, status 1."""
    words = ("study", "add", "Mills", "--topic", "mills", "water", "--from", "2027-01-04", "--to")
    assert run(*words, "2027-02-01", "--budget", "80").status == 0
    kept = own_records.get(StudyUnit, "Mills")
    assert kept is not None
    assert (kept.value.topics, str(kept.value.budget)) == (("mills", "water"), "80")
    wrong = run(*words, "2027-01-01")
    assert wrong.status == 2
    assert "the last day lies before the first" in wrong.err
    none = run("study", "programme")
    assert none.status == 1
    assert "no place card names one of its topics" in none.out


def test_the_own_week_is_told_and_changed(run: Run, own_records: Records, tmp_path: Path) -> None:
    """A block, working hours, a late evening and a file go on record; the same file again replaces itself."""
    assert run("busy", "block", "Piano", "16:00", "17:00", "Tu", "--from", "2027-01-05").status == 0
    assert run("busy", "work", "Bo", "08:00", "16:00", "Mo", "We", "--without").status == 0
    assert run("busy", "late", "21:30", "--not-before", "10:00").status == 0
    kept = own_records.get(FamilyDays)
    assert kept is not None
    assert [block.name for block in kept.value.weekly] == ["Piano"]
    assert kept.value.work[0].then == "without"
    assert run("busy", "work", "Zoe", "08:00", "16:00", "Mo").status == 2
    wrong = run("busy", "block", "Piano", "16:00", "15:00", "Tu")
    assert wrong.status == 2
    assert "later on the same day" in wrong.err
    file = tmp_path / "ours.ics"
    entry = "BEGIN:VEVENT\r\nUID:1\r\nDTSTART:20261210T150000Z\r\nDURATION:PT1H\r\nEND:VEVENT\r\n"
    file.write_text(f"BEGIN:VCALENDAR\r\n{entry}END:VCALENDAR\r\n", encoding="utf-8")
    assert "is added: 1 busy times" in run("busy", "file", file).out
    assert "is replaced: 1 busy times" in run("busy", "file", file).out
    listed = run("busy", "list")
    assert "Piano: Tue, 16:00 to 17:00" in listed.out
    assert "nobody leaves before 10:00" in listed.out
