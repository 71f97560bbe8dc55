"""Whatever is damaged in a records file, the rest opens, and what does not is named."""

from pathlib import Path

import pytest

from tests.hard_use.damages import DAMAGES, Family, go_on, write_family

IN_SHORT = 4 * len(DAMAGES)
"""Four of each kind [damages]."""
IN_FULL = 500


@pytest.fixture(scope="module")
def family(tmp_path_factory: pytest.TempPathFactory) -> Family:
    """What there is before the damage."""
    return write_family(tmp_path_factory.mktemp("before"))


def check(family: Family, tmp_path: Path, numbers: range) -> None:
    """No damage of these ends where nobody can go on, and none changes anything without a word."""
    dead_ends, unseen, made_anew = {}, {}, 0
    for number in numbers:
        folder = tmp_path / str(number)
        folder.mkdir()
        outcome = go_on(folder, family, number)
        made_anew += outcome.made_anew
        if outcome.dead_ends:
            dead_ends[number] = outcome.dead_ends
        if outcome.unseen:
            unseen[number] = outcome.unseen
    assert (dead_ends, unseen) == ({}, {})
    assert made_anew > len(numbers) // 2  # else these were no damages


def test_no_damage_is_a_dead_end_or_passes_unseen(family: Family, tmp_path: Path) -> None:
    """Bits, bytes, sectors, pages and ends of the file: opened, used, copied and put back in each case."""
    check(family, tmp_path, range(IN_SHORT))


@pytest.mark.hard_use_full
def test_no_damage_of_five_hundred_is_a_dead_end_or_passes_unseen(family: Family, tmp_path: Path) -> None:
    """The same for five hundred."""
    check(family, tmp_path, range(IN_FULL))
