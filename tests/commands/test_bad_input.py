"""What cannot be understood is told with every fault at once, on the error stream, with status 2."""

import socket
from pathlib import Path

import pytest

from tests.commands.conftest import Files, Run
from tripplan.__main__ import main


@pytest.fixture
def museum(files: Files) -> Files:
    """Two museums."""
    files.add()
    files.add(id="test-mill", name="Old mill")
    return files


def test_every_fault_is_told_at_once(run: Run, museum: Files) -> None:
    """Places, people and dates are all looked at before anything is refused."""
    said = run(
        "compare",
        "nowhere",
        "test-musum",
        "--party",
        "Ann",
        "Zed",
        "--from",
        "soon",
        "--to",
        "2026-02-30",
        *museum.options,
    )
    assert (said.status, said.out) == (2, "")
    assert said.err.count("\n") == 5
    for fault in (
        "(found: nowhere)",
        "(found: test-musum)",
        "(found: Zed)",
        "(found: soon)",
        "(found: 2026-02-30)",
    ):
        assert fault in said.err


def test_an_unknown_place_gets_a_suggestion(run: Run, museum: Files) -> None:
    """A place that is nearly called that is proposed; where none is near, all are told."""
    assert "did you mean test-museum" in run("day", "test-musem", "2026-12-08", *museum.options).err
    assert "known: test-mill, test-museum" in run("day", "zzz", "2026-12-08", *museum.options).err


def test_a_beginning_that_fits_two_places_is_not_guessed(run: Run, museum: Files) -> None:
    """Both places are told instead."""
    said = run("day", "test", "2026-12-08", *museum.options)
    assert said.status == 2
    assert "several places are called that: test-mill, test-museum" in said.err


@pytest.mark.parametrize(
    "text", ["tomorrow", "8.12.2026", "2026-12-32", "", "0001-01-01", "9999-12-31", "=cmd"]
)
def test_what_is_no_date_is_refused(run: Run, museum: Files, text: str) -> None:
    """Only dates that can be planned for pass, wherever they stand."""
    for asked in (
        ("day", "test-museum", text),
        ("compare", f"--on={text}"),
        ("days", f"--from={text}"),
        ("days", "--to", text),
        ("days", "--today", text or "x"),
    ):
        said = run(*asked, *museum.options)
        assert (said.status, said.out) == (2, "")
        assert "2026-12-08" in said.err or "can be asked about" in said.err


@pytest.mark.parametrize(
    "asked",
    [
        ("compare", "--on", "2026-12-08", "--to", "2026-12-09"),
        ("days", "--from", "2026-12-08", "--to", "2026-12-07"),
        ("days", "--from", "2026-12-08", "--to", "2028-12-07"),
    ],
    ids=["day and span", "backwards", "too long"],
)
def test_dates_that_do_not_fit_together_are_refused(run: Run, museum: Files, asked: tuple[str, ...]) -> None:
    """One day or a span, forwards, and no longer than a year."""
    said = run(*asked, *museum.options)
    assert (said.status, said.out) == (2, "")
    assert said.err.startswith("command line: ")


def test_household_and_places_are_both_looked_at(run: Run, tmp_path: Path) -> None:
    """A missing household and a missing card are two faults of one answer."""
    said = run("days", "--household", tmp_path / "none.toml", "--places", tmp_path / "card.toml", tmp_path)
    assert (said.status, said.out) == (2, "")
    for fault in ("none.toml: cannot be opened", "card.toml: cannot be opened", "holds no .toml file"):
        assert fault in said.err


@pytest.mark.parametrize(
    "content",
    [
        b"name = \n",
        b"\xff\xfe\x00",
        b"x" * 20_000_000,
        b'name = "<script>"\nformat = 99\n',
        b"a" * 1_000_000 + b" = 1",
    ],
    ids=["broken", "not text", "20 MB", "incomplete", "long key"],
)
def test_a_household_file_with_faults_is_refused(
    run: Run, museum: Files, tmp_path: Path, content: bytes
) -> None:
    """Its findings are told, short enough to read."""
    file = tmp_path / "family.toml"
    file.write_bytes(content)
    said = run("days", "--household", file, "--places", museum.places)
    assert (said.status, said.out) == (2, "")
    assert "family.toml: " in said.err
    assert len(said.err) < 3_000


@pytest.mark.parametrize(
    "content", [b"", b"BEGIN:VCALENDAR\r\n", b"x" * 20_000_000], ids=["empty", "no entry", "20 MB"]
)
def test_a_school_calendar_with_faults_is_refused(
    run: Run, museum: Files, tmp_path: Path, content: bytes
) -> None:
    """Its findings are told."""
    file = tmp_path / "school.ics"
    file.write_bytes(content)
    said = run("days", *museum.options, "--school-calendar", file, tmp_path / "none.ics")
    assert (said.status, said.out) == (2, "")
    assert "school.ics: " in said.err
    assert "none.ics: cannot be opened" in said.err


def test_a_warning_is_told_beside_the_answer(run: Run, museum: Files) -> None:
    """Old prices do not keep the plan from being made."""
    museum.add(id="old", name="Old", prices_read={"on": "2024-01-05", "source": "tests"})
    said = run("day", "old", "2026-12-08", *museum.options)
    assert said.status == 0
    assert said.err.startswith("warning: old.toml: prices_read.on: ")


def test_own_records_without_a_household_say_what_to_do(run: Run) -> None:
    """Before anything is entered, `--own` has nothing to plan with."""
    said = run("compare", "--own")
    assert (said.status, said.out) == (2, "")
    assert "there is no household on record" in said.err


def test_a_data_folder_that_is_a_file_is_told(run: Run, tmp_path: Path) -> None:
    """Records that cannot be opened end the command with a sentence."""
    (tmp_path / "file").write_text("", encoding="utf-8")
    for said in (
        run("compare", "--data", tmp_path / "file"),
        run("compare", TRIPPLAN_DATA=str(tmp_path / "file")),
    ):
        assert (said.status, said.out) == (2, "")
        assert str(tmp_path / "file") in said.err


def test_a_data_folder_in_nobodys_home_is_told(run: Run) -> None:
    """A tilde with the name of no user on this computer names no folder; none is made of that name."""
    for said in (
        run("compare", "--data", "~nosuch/tripplan"),
        run("compare", TRIPPLAN_DATA="~nosuch/tripplan"),
    ):
        assert (said.status, said.out) == (2, "")
        assert "~nosuch/tripplan" in said.err


def test_files_no_system_can_name_are_told(run: Run, museum: Files) -> None:
    """A NUL in the name of a file, and a home of nobody, end in a sentence wherever a file is named."""
    for name in ("a\0b.toml", "~nosuch/x.toml"):
        for command in (
            ("check", name),
            ("compare", "--household", name, "--places", name),
            ("compare", *museum.options, "--school-calendar", name),
            ("busy", "file", name, "--demo"),
            ("logbook", "write", name, "--demo"),
            ("schools", "add", name, "--demo"),
            ("logbook", "list", "--demo", "--csv", name.replace(".toml", ".csv")),
        ):
            said = run(*command)
            assert said.status == 2, command
            assert "cannot be" in said.out + said.err, command


def test_a_moved_clock_that_is_no_date_is_told(run: Run) -> None:
    """The environment's date is read as strictly as the option's."""
    said = run("compare", TRIPPLAN_TODAY="soon")
    assert (said.status, said.out) == (2, "")
    assert "TRIPPLAN_TODAY" in said.err


def test_with_files_for_everything_no_record_is_opened(run: Run, museum: Files, tmp_path: Path) -> None:
    """A household file and place cards are enough; no data folder is made."""
    nowhere = tmp_path / "nowhere"
    assert run("compare", *museum.options, TRIPPLAN_DATA=str(nowhere)).status == 0
    assert not nowhere.exists()


def test_no_command_reaches_for_the_network(run: Run, museum: Files, monkeypatch: pytest.MonkeyPatch) -> None:
    """A comparison opens no socket."""
    opened: list[object] = []
    monkeypatch.setattr(socket.socket, "connect", lambda _, address: opened.append(address))
    assert run("compare", *museum.options).status == 0
    assert opened == []


def test_an_interrupted_command_ends_quietly() -> None:
    """Ctrl-C is no fault and leaves no traceback."""

    class Interrupting:
        def write(self, _: str) -> int:
            raise KeyboardInterrupt

    assert main(["--version"], environment={}, stdout=Interrupting()) == 130  # type: ignore[arg-type]


@pytest.mark.usefixtures("own_records")
@pytest.mark.parametrize(
    ("words", "option", "ending"),
    [
        (("calendar", "test-museum", "2026-12-08", "--out"), "--out", ".ics"),
        (("days", "--table"), "--table", ".csv"),
        (("logbook", "list", "--csv"), "--csv", ".csv"),
        (("logbook", "draft", "--out"), "--out", ".toml"),
    ],
    ids=" ".join,
)
def test_a_files_name_promises_what_is_in_it(
    run: Run, tmp_path: Path, words: tuple[str, ...], option: str, ending: str
) -> None:
    """A text is not written under a name that ends like another format's; the right ending is told."""
    out = tmp_path / "out.pdf"
    said = run(*words, out)
    assert (said.status, out.exists()) == (2, False)
    assert said.err.startswith(f"command line: {option}: ")
    assert ending in said.err
    assert run(*words, "-").status in (0, 1)
