"""Charts fit the width they have: labels break between words, names of parts stand where there is room."""

import re
from datetime import date

import pytest

from tests.builders import make_household, make_place
from tripplan.planning.outing import Family, Outing, place_facts, plan_outing
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
