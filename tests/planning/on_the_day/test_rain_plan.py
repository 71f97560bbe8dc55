"""The best indoor outing beside one in the open air."""

from dataclasses import replace
from datetime import UTC, date, datetime
from decimal import Decimal
from typing import Any

from tests.builders import make_household, make_place
from tripplan.documents.outings.planned import EntryTicks, PlanStatus
from tripplan.documents.places.place import Place
from tripplan.documents.study.units import StudyUnit
from tripplan.language.sentences import fact
from tripplan.planning.calendar_entry.planned_outing import planned_from
from tripplan.planning.family.family import Family
from tripplan.planning.on_the_day.rain_plan import RainPlan, rain_plan, swapped
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

DAY, TODAY = date(2026, 12, 9), date(2026, 11, 25)
NOW = datetime(2026, 11, 25, 15, tzinfo=UTC)


def place(place_id: str, indoors: str, price: str, **changes: Any) -> Place:
    """A place like the museum, at another price."""
    return make_place(
        id=place_id,
        name=place_id.title(),
        visit={"indoors": indoors, **changes.pop("visit", {})},
        offers=[{"name": "All", "price": price}],
        **changes,
    )


PRAIRIE = place("prairie", "outdoors", "5.00")
DEAR = place("mill", "indoors", "9.00", visit={"topics": ["grain"]})
CHEAP = place("cave", "indoors", "4.00")
BARN = place("barn", "both", "0.00")
UNIT = StudyUnit(name="Bread", topics=("grain",), first=DAY, last=DAY, currency="USD")


def found(
    *places: Place, unit: StudyUnit | None = None, of: Place = PRAIRIE
) -> tuple[Outing, RainPlan | None]:
    """The outing and what stands beside it."""
    family = Family(make_household(), (of, *places))
    outing = plan_outing(family, family.party(), place_facts(family, of, (2026,)), DAY, today=TODAY)
    assert isinstance(outing, Outing)
    return outing, rain_plan(family, outing, unit, today=TODAY)


def test_the_indoor_place_that_weighs_least_stands_beside() -> None:
    """Not the one partly outdoors; by hand, four pay a dollar less each, and a tenth more is reserve."""
    _, beside = found(DEAR, CHEAP, BARN)
    assert beside is not None
    assert beside.outing.place.id == "cave"
    assert beside.outing.day == DAY
    assert beside.change.amount == Decimal("-4.40")
    assert (beside.sentence.code, beside.sentence.values["place"]) == ("recovery-rain", "Cave")
    assert beside.sentence.values["compared"] == fact("recovery-more-or-less", by="$4", more=False)


def test_what_fits_the_study_unit_comes_first() -> None:
    """Even where something else weighs less; where nothing indoors fits, the best of all."""
    _, beside = found(DEAR, CHEAP, unit=UNIT)
    assert beside is not None
    assert (beside.outing.place.id, beside.unit) == ("mill", "Bread")
    assert (beside.sentence.code, beside.sentence.values["unit"]) == ("recovery-rain-fits", "Bread")
    assert beside.change.amount == Decimal("17.60")
    _, other = found(CHEAP, unit=UNIT)
    assert other is not None
    assert (other.outing.place.id, other.unit) == ("cave", "")


def test_nothing_stands_beside_an_indoor_outing_or_where_all_is_closed() -> None:
    """Rain does not matter there; and on Mondays the museums are closed."""
    assert found(CHEAP, of=DEAR)[1] is None
    assert found(place("shut", "indoors", "1.00", opening={"hours": "Su 10:00-17:00"}))[1] is None
    assert found(BARN)[1] is None


def test_a_swap_moves_the_same_entry_on_the_calendar() -> None:
    """The next sequence number, the other place and its price; as firm as before, for the same unit."""
    outing, beside = found(CHEAP)
    assert beside is not None
    family = Family(make_household(), (PRAIRIE, CHEAP))
    before = planned_from(
        outing,
        family.household,
        EntryTicks(),
        PlanStatus.CONFIRMED,
        before=None,
        ids_taken=(),
        at=NOW,
    ).model_copy(update={"study_unit": "Bread"})
    family = replace(family, planned=(before,))
    after = swapped(beside, family, before, ids_taken=(before.id,), at=NOW)
    assert (after.id, after.uid, after.sequence) == (before.id, before.uid, before.sequence + 1)
    assert (after.place, after.day, after.status) == ("cave", DAY, PlanStatus.CONFIRMED)
    assert after.likely_amount == beside.outing.cost.total.likely.rounded().amount
    assert after.study_unit == "Bread"
