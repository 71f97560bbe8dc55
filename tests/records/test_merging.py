"""Two changes of one document, made from the same beginning, brought together; all worked out by hand."""

from typing import Any

import pytest

from tripplan.records.merging.merging import merged

ANN, BO = {"name": "Ann", "age": 40}, {"name": "Bo", "age": 41}


def test_what_each_side_changed_alone_is_kept_and_mine_counts_where_both_did() -> None:
    """A field changed here, one changed there, one changed on both sides, one left alone."""
    base = {"here": 1, "there": 1, "both": 1, "neither": 1}
    mine = {**base, "here": 2, "both": 2}
    theirs = {**base, "there": 3, "both": 3}
    assert merged(base, mine, theirs) == {"here": 2, "there": 3, "both": 2, "neither": 1}


def test_what_one_side_took_out_or_put_in_is_out_or_in() -> None:
    """Here a field goes and another comes; there one comes."""
    assert merged({"old": 1}, {"new": 2}, {"old": 1, "other": 3}) == {"new": 2, "other": 3}


def test_parts_of_a_document_are_brought_together_field_by_field() -> None:
    """A field of the home changed here and another there are both changed."""
    base = {"home": {"town": "Galena", "zone": "A"}}
    mine, theirs = {"home": {"town": "Peoria", "zone": "A"}}, {"home": {"town": "Galena", "zone": "B"}}
    assert merged(base, mine, theirs) == {"home": {"town": "Peoria", "zone": "B"}}


def test_entries_of_a_list_are_followed_by_their_name() -> None:
    """Ann changed here, Bo there, and Cy put in front of both: each entry has its change."""
    cy = {"name": "Cy", "age": 7}
    mine = {"people": [{**ANN, "age": 39}, BO]}
    theirs = {"people": [cy, ANN, {**BO, "age": 42}]}
    found: Any = merged({"people": [ANN, BO]}, mine, theirs)["people"]
    assert sorted((one["name"], one["age"]) for one in found) == [("Ann", 39), ("Bo", 42), ("Cy", 7)]


@pytest.mark.parametrize(
    ("mine", "theirs", "expected"),
    [
        ([9, 2, 3], [1, 2, 8], [9, 2, 8]),
        ([9, 2, 3], [8, 2, 3], [9, 2, 3]),
        ([9, 2, 3], [1, 2], [9, 2, 3]),
        ([1, 2, 3], [1, 2], [1, 2]),
        ([9, 2, 3, 4], [1, 2, 8], [9, 2, 3, 4]),
    ],
    ids=["apart", "the same one", "theirs shrank", "only theirs changed", "mine grew"],
)
def test_entries_without_a_name_are_followed_by_their_number_where_no_list_grew_or_shrank(
    mine: list[int], theirs: list[int], expected: list[int]
) -> None:
    """Otherwise nobody knows which entry is which, and the list counts as one value."""
    assert merged({"list": [1, 2, 3]}, {"list": mine}, {"list": theirs}) == {"list": expected}
