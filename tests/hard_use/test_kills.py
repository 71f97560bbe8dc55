"""However a program ends, what it reported is there, nothing is there by halves, and nothing is left over."""

import os
import random
from pathlib import Path

import pytest

from tests.hard_use.kills import WORK, kill_one, prepare, wrong_after

IN_SHORT = 5
"""A program of each kind [kills]."""
IN_FULL = 2_500
"""Ten thousand in all [kills]."""

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="this system cannot copy a running program")


def check(folder: Path, work: int, kills: int) -> None:
    """Kill a program of one kind again and again; each goes on from what the one before it left."""
    rng = random.Random(work)
    for number in range(kills):
        prepare(folder, WORK[work])
        reported = kill_one(folder, WORK[work], rng)
        assert wrong_after(folder, WORK[work], reported) == "", number


@pytest.mark.parametrize("work", range(len(WORK)), ids=[work.__name__ for work in WORK])
def test_a_killed_program_leaves_all_it_reported_and_nothing_by_halves(tmp_path: Path, work: int) -> None:
    """Saving, importing, copying, bringing up to date: the file is whole, copies too, no half files stay."""
    check(tmp_path, work, IN_SHORT)


@pytest.mark.hard_use_full
@pytest.mark.parametrize("work", range(len(WORK)), ids=[work.__name__ for work in WORK])
def test_ten_thousand_killed_programs_leave_nothing_by_halves(tmp_path: Path, work: int) -> None:
    """The same ten thousand times."""
    check(tmp_path, work, IN_FULL)
