"""Charts fit the width they have: labels break between words, names of parts stand where there is room."""

import re
from datetime import date
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from tests.builders import make_household, make_place
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.sweep.sweeping import sweep
from tripplan.screens.choose_day.month_grid import GRADES, graded, month_grid
from tripplan.screens.look.charts import cost_chart, in_lines

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


def test_every_day_of_a_span_has_its_cell_and_one_is_the_best() -> None:
    """Three months of a museum closed on Mondays: graded by felt cost, in weeks from Sunday on."""
    place = make_place()
    family = Family(make_household(), (place,))
    span = DateSpan(first=date(2026, 12, 1), last=date(2027, 2, 28))
    table = sweep(family, family.party(), (place,), span, today=TODAY)
    days = graded(table, table.can_go)
    assert [one.day for one in days] == list(table.days)
    assert [one.grade is None for one in days] == (~table.can_go[0]).tolist()
    felt = {one.day: table.felt[0][number] for number, one in enumerate(days)}
    by_grade = [[felt[one.day] for one in days if one.grade == grade] for grade in range(len(GRADES))]
    assert set(by_grade[0]) == {table.felt[0][table.can_go[0]].min()}
    there = [costs for costs in by_grade if costs]
    assert all(max(better) < min(worse) for better, worse in pairwise(there))
    html = ElementTree.fromstring(month_grid(days))
    months = html.findall("table")
    assert [month.findtext("caption") for month in months] == [
        "December 2026",
        "January 2027",
        "February 2027",
    ]
    first_week = months[0].findall("tr")[1].findall("td")
    assert ["".join(cell.itertext())[:1] for cell in first_week] == ["", "", "1", "2", "3", "4", "5"]
    assert len(html.findall(".//a")) == int(table.can_go.sum())
