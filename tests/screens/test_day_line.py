"""The picture of a day: every step in order, and each nap beside the steps it falls into."""

import re
from datetime import date

from tests.builders import make_household, make_place
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.screens.day_plan.day_line import bands, day_line

TODAY = date(2026, 11, 25)
WEDNESDAY = date(2026, 12, 9)


def planned(*naps: dict[str, object], name: str = "Di") -> Outing:
    """A day of two parents and a toddler with these naps."""
    household = make_household(
        members=[
            {"name": "Ann", "born": "1988-05-20"},
            {"name": "Bo", "born": "1986-02-01"},
            {"name": name, "born": "2025-07-15", "naps": list(naps)},
        ]
    )
    family = Family(household, (make_place(),))
    facts = place_facts(family, family.places[0], (2026,))
    found = plan_outing(family, family.party(), facts, WEDNESDAY, today=TODAY)
    assert isinstance(found, Outing), found
    return found


NAP = {"start": "12:30", "minutes": 100, "in_car": True, "in_pushchair": True}
_ROW = re.compile(r'class="tp-(step|nap)[^"]*" style="grid-row: (\d+)(?: / (\d+))?')


def test_every_step_and_nap_stands_there_with_its_time() -> None:
    """In order of time, from loading up to being home, and a nap with its child, place and end."""
    outing = planned(NAP)
    html, plan = day_line(outing), outing.plan
    told = [html.index(f"<b>{wording.clock(step.start)}</b>") for step in plan.steps]
    assert told == sorted(told)
    assert html.endswith(f"<b>{wording.clock(plan.home)}</b><span>Home</span></li></ol>")
    (first, *_) = bands(plan)
    assert f"Di asleep {first.where}" in html
    assert f"to {wording.clock(first.end)}" in html
    assert bands(planned().plan) == ()


def test_a_nap_lies_beside_the_steps_it_falls_into() -> None:
    """Rows begin and end as the times do: two stretches share a row exactly where they share some time."""
    outing = planned(NAP)
    steps, naps = outing.plan.steps, bands(outing.plan)
    rows = {"step": [], "nap": []}  # type: dict[str, list[tuple[int, int]]]
    for kind, first, last in _ROW.findall(day_line(outing)):
        if last:
            rows[kind].append((int(first), int(last)))
    assert (len(rows["step"]), len(rows["nap"])) == (len(steps), len(naps))
    for nap, (first, last) in zip(naps, rows["nap"], strict=True):
        for step, (begins, ends) in zip(steps, rows["step"], strict=True):
            assert (step.start < nap.end and nap.start < step.end) == (begins < last and first < ends)


def test_a_name_is_shown_letter_by_letter() -> None:
    """What a family writes is never read as HTML."""
    assert "<b>Di" not in day_line(planned(NAP, name="<b>Di"))
    assert "&lt;b&gt;Di asleep" in day_line(planned(NAP, name="<b>Di"))
