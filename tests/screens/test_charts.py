"""Charts fit the width they have: labels break between words, names of parts stand where there is room."""

import re
from datetime import date

import pytest

from tests.builders import make_household, make_place
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.sweep.sweeping import sweep
from tripplan.screens.choose_day.year import year_chart
from tripplan.screens.widgets.charts import cost_chart, in_lines

TODAY = date(2026, 11, 25)


def outing(name: str) -> Outing:
    """A Saturday at a museum of that name."""
    place = make_place(name=name)
    family = Family(make_household(), (place,))
    facts = place_facts(family, place, (2026,))
    found = plan_outing(family, family.party(), facts, date(2026, 12, 5), today=TODAY)
    assert isinstance(found, Outing)
    return found


@pytest.mark.parametrize(
    ("label", "lines"),
    [
        ("Old Mill", ["Old Mill"]),
        ("Sheaf and Stone, a Museum of Grain", ["Sheaf and Stone, a", "Museum of Grain"]),
        ("Lantern Bluestem Prairie Reserve", ["Lantern Bluestem", "Prairie Reserve"]),
        ("Donaudampfschifffahrtsmuseum an der Donau", ["Donaudampfschifffahrtsmuseum an", "der Donau"]),
    ],
)
def test_long_labels_break_between_words(label: str, lines: list[str]) -> None:
    """No word is lost or cut; the pattern is read here as the browser reads it."""
    pattern = re.search(r"regexp\('(.+?)', 'g'\)", in_lines(20))
    assert pattern is not None
    broken = re.sub(pattern[1], r"\1\n", label).strip().split("\n")
    assert " ".join(broken).split() == label.split()
    assert len(broken) == len(lines)
    assert all(len(line) <= 20 or " " not in line or line in lines for line in broken)


@pytest.mark.parametrize(("width", "named"), [(150, False), (230, True), (1000, True)])
def test_a_part_is_named_only_where_its_name_fits(width: int, named: bool) -> None:
    """On a phone the bars are a fifth as wide as on a desk, and a name that would stick out is left out."""
    spec = cost_chart([outing("Old Mill")]).to_dict()
    _, names, _ = spec["layer"]
    condition = names["transform"][0]["filter"]
    longest = spec["layer"][0]["encoding"]["x"]["scale"]["domain"][1]
    part = {"amount": longest / 3, "kind": "admission"}
    said = condition.replace("datum.amount", "amount").replace("datum.kind", "kind")
    assert eval(said, {"length": len, "width": width, **part}) is named


def test_the_number_of_a_day_has_room_above_the_tallest_one() -> None:
    """Between the tallest day and the dots under the shelf above a number fits, so that it names one day."""
    place = make_place()
    family = Family(make_household(), (place,))
    span = DateSpan(first=date(2026, 12, 1), last=date(2027, 2, 28))
    table = sweep(family, family.party(), (place,), span, today=TODAY)
    best = table.ranked()[0].tolist()
    spec = year_chart(table, table.can_go, [(best[0], best[1])]).to_dict()
    (days,) = spec["datasets"].values()
    numbers = spec["layer"][-1]
    low, high = numbers["encoding"]["y"]["scale"]["domain"]
    pixels = spec["height"] / (high - low)
    tallest = max(day["shelf"] - day["top"] for day in days if day["number"])
    dots = max(day["below"] - day["shelf"] for day in days)
    assert (1 - tallest - dots) * pixels >= numbers["mark"]["fontSize"]
