"""The picture of a day: whose rows there are, and that everybody's day is told without gaps."""

from datetime import date, datetime, timedelta
from itertools import pairwise
from typing import Any

from tests.builders import make_household, make_place
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.screens.day_plan.timeline import timeline

TODAY = date(2026, 11, 25)
WEDNESDAY = date(2026, 12, 9)


def planned(*naps: dict[str, object]) -> Outing:
    """A day of two parents and a toddler with these naps."""
    household = make_household(
        members=[
            {"name": "Ann", "born": "1988-05-20"},
            {"name": "Bo", "born": "1986-02-01"},
            {"name": "Di", "born": "2025-07-15", "naps": list(naps)},
        ]
    )
    family = Family(household, (make_place(),))
    facts = place_facts(family, family.places[0], (2026,))
    found = plan_outing(family, family.party(), facts, WEDNESDAY, today=TODAY)
    assert isinstance(found, Outing), found
    return found


def bars(outing: Outing) -> dict[str, list[dict[str, Any]]]:
    """The bars of the picture by row, in order of time."""
    (drawn,) = timeline(outing).to_dict()["datasets"].values()
    rows: dict[str, list[dict[str, Any]]] = {}
    for bar in drawn:
        rows.setdefault(bar["row"], []).append(bar)
    return {row: sorted(told, key=lambda bar: bar["start"]) for row, told in rows.items()}


def test_a_child_who_naps_has_a_row_of_its_own() -> None:
    """The others share one by name, and the usual nap stands below for comparison."""
    nap = {"start": "12:30", "minutes": 100, "in_car": True}
    assert list(bars(planned(nap))) == ["Ann and Bo", "Di", "Di's usual nap"]
    assert list(bars(planned())) == ["everybody"]


def test_in_everybodys_row_one_thing_follows_the_other_without_gaps() -> None:
    """From leaving to being home each bar begins where the one before ends, sleep included."""
    outing = planned({"start": "12:30", "minutes": 100, "in_car": True, "in_pushchair": True})
    rows = bars(outing)
    plan = outing.plan
    for row in ("Ann and Bo", "Di"):
        inside = [bar for bar in rows[row] if bar["end"] <= plan.home.replace(tzinfo=None).isoformat()]
        assert all(first["end"] == after["start"] for first, after in pairwise(inside))
        minutes = sum(bar["minutes"] for bar in inside)
        spans = datetime.fromisoformat(inside[-1]["end"]) - datetime.fromisoformat(inside[0]["start"])
        assert timedelta(minutes=minutes) == spans
    asleep = [bar for bar in rows["Di"] if bar["group"] == "asleep"]
    assert sum(bar["minutes"] for bar in asleep) == sum(nap.kept_minutes for nap in plan.naps)
    assert asleep
    assert all(bar["what"].startswith(("asleep in the ", "asleep at home")) for bar in asleep)


def contrast(one: str, other: str) -> float:
    """How far two colours stand apart, from 1 to 21.

    Source: W3C, Web Content Accessibility Guidelines 2.2, definitions of contrast ratio and relative
    luminance (from memory).
    """

    def luminance(colour: str) -> float:
        parts = [int(colour[begin : begin + 2], 16) / 255 for begin in (1, 3, 5)]
        linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
        return sum(weight * part for weight, part in zip((0.2126, 0.7152, 0.0722), linear, strict=True))

    paler, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (paler + 0.05) / (darker + 0.05)


def test_the_words_of_the_picture_stand_out_from_what_is_behind_them() -> None:
    """At least 4.5 to 1 (WCAG 2.2, 1.4.3, from memory) on every depth of bar, along axis and legend."""
    drawn = timeline(planned({"start": "12:30", "minutes": 100, "in_car": True})).to_dict()
    bar, words = drawn["layer"]
    scale = bar["encoding"]["color"]["scale"]
    in_white = words["encoding"]["color"]["condition"]
    for group, depth in zip(scale["domain"], scale["range"], strict=True):
        white = group in in_white["test"]["oneOf"]
        ink = "#ffffff" if white else words["encoding"]["color"]["value"]
        assert contrast(ink, depth) >= 4.5, group
    for part in ("axis", "legend"):
        assert contrast(drawn["config"][part]["labelColor"], "#ffffff") >= 4.5
    assert contrast("#767676", "#ffffff") >= 4.5 > contrast("#777777", "#ffffff")
