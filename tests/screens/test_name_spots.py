"""Names beside their dots: none covers another, and who has least choice comes first."""

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from tripplan.screens.places.name_spots import Dot, LabelBox, name_spots

SIDE = 340.0
PLACES = st.floats(0, SIDE)
DOTS = st.lists(st.builds(Dot, PLACES, PLACES, st.text("abcdef", min_size=1, max_size=40)), max_size=30)


@given(DOTS)
def test_no_name_covers_anything_or_leaves_the_sketch(dots: list[Dot]) -> None:
    """However crowded it is: no name on another, on a ring's words, beside another dot or over the edge."""
    words = LabelBox(150, 20, 40, 10)
    spots = name_spots(dots, [words], SIDE)
    assert len(spots) == len(dots)
    boxes = [spot.box for spot in spots if spot is not None]
    assert not [pair for pair in combinations(boxes, 2) if pair[0].overlaps(pair[1])]
    assert not [box for box in boxes if box.overlaps(words)]
    assert all(box.inside(SIDE) for box in boxes)
    for dot, spot in zip(dots, spots, strict=True):
        others = [other for other in dots if other is not dot]
        assert spot is None or not any(spot.box.overlaps(other.room) for other in others)


@given(DOTS)
def test_a_name_is_left_out_only_where_no_spot_is_free(dots: list[Dot]) -> None:
    """Each spot of a name that is missing is taken by a name, or beside another dot."""
    spots = name_spots(dots, [], SIDE)
    for dot, found in zip(dots, spots, strict=True):
        if found is None:
            taken = [other.room for other in dots if other is not dot]
            taken += [spot.box for spot in spots if spot is not None]
            assert all(any(spot.box.overlaps(box) for box in taken) for spot in dot.spots(SIDE))


def test_a_name_alone_stands_right_of_its_dot_or_left_of_it_at_the_edge() -> None:
    """On the same height, starting or ending close to the dot."""
    right, left = name_spots([Dot(100, 100, "A mill"), Dot(335, 200, "A far mill")], [], SIDE)
    assert right is not None
    assert left is not None
    assert (right.align, right.x, right.y) == ("left", 108, 100)
    assert (left.align, left.x, left.y) == ("right", 327, 200)


def test_who_has_least_choice_comes_first() -> None:
    """A long name near the edge has room on its left alone; the one there makes way to its own left."""
    name = "A mill with a long name"
    _, free, at_edge = name_spots([Dot(20, 300, "x"), Dot(120, 100, name), Dot(300, 100, name)], [], SIDE)
    assert at_edge is not None
    assert free is not None
    assert (at_edge.align, free.align) == ("right", "right")


def test_a_long_name_is_cut_off_at_the_edge_before_it_is_left_out() -> None:
    """Between two dots and the edge there is room for ten letters."""
    name = "A mill with a very long name"
    crowd = [Dot(270 - 24, 100 + 8 * nth, "x") for nth in range(-5, 6)]
    (spot, *_) = name_spots([Dot(270, 100, name), *crowd], [], SIDE)
    assert spot is not None
    assert (spot.align, spot.box.width) == ("left", SIDE - 278)
