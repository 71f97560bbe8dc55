"""Ideas in planning: they work like places, and every guess is told as one."""

from datetime import date
from decimal import Decimal

import pytest

from tests.builders import codes, make_household, make_place
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.places.idea import Idea, IdeaPlace
from tripplan.documents.where import Where
from tripplan.language.sentences import fact
from tripplan.planning.compare.choose import compare, days_in
from tripplan.planning.family.family import Family
from tripplan.planning.outing.idea_notes import asking, assumed, to_ask
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import drive_from_home, place_facts
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.travel.drive import KnownBy
from tripplan.values.cost_kind import CostKind
from tripplan.values.ranges import Origin

TODAY = date(2026, 11, 25)
DAY = date(2026, 12, 3)
HOUSEHOLD = make_household()


def idea_place(**known: object) -> IdeaPlace:
    """An idea called Herring Weir, of which only this is known."""
    idea = Idea.model_validate({"id": "herring-weir", "name": "Herring Weir", "noted_on": TODAY, **known})
    return idea.as_place(HOUSEHOLD.home, HOUSEHOLD.currency)


def outing_to(place: IdeaPlace) -> Outing:
    """The whole family there on a Thursday."""
    family = Family(HOUSEHOLD, places=(place,))
    found = plan_outing(family, family.party(), place_facts(family, place, (2026,)), DAY, today=TODAY)
    assert isinstance(found, Outing)
    return found


def test_a_bare_name_can_be_planned_and_its_price_is_unknown() -> None:
    """Nothing is known but the name: the day is planned, entry counts as unknown and not as free."""
    outing = outing_to(idea_place())
    assert fact("costs-tickets-and-parking") in outing.cost.unknown
    assert all(item.kind is not CostKind.PARKING for item in outing.cost.items)
    assert outing.way_there.drive.known_by is KnownBy.GUESS
    assert "notes-to-ask" in codes(outing.notes)


def test_a_guess_of_money_is_a_wide_range_by_the_parent() -> None:
    """About $40 is anything from half to double, and its source is the parent's guess."""
    cost = outing_to(idea_place(money="40")).cost
    (entry,) = (item for item in cost.items if item.kind is CostKind.ADMISSION)
    assert entry.source.origin is Origin.PARENT
    assert entry.source.text == "a guess of yours"
    assert entry.amount is not None
    ends = (entry.amount.low, entry.amount.likely, entry.amount.high)
    assert [int(end.amount) for end in ends] == [20, 40, 80]
    assert not cost.unknown


def test_a_guess_of_the_drive_is_wide_and_a_typed_one_wins() -> None:
    """An hour away may be 36 to 96 min; where the parent has driven it, that counts."""
    place = idea_place(drive_minutes=60)
    drive = drive_from_home(Family(HOUSEHOLD, places=(place,)), place)
    assert (drive.minutes.low, drive.minutes.likely, drive.minutes.high) == pytest.approx((36, 60, 96))
    assert drive.known_in_words == "only a guess"


def test_an_idea_with_a_place_on_the_map_has_a_real_estimate() -> None:
    """Where the town is known, the drive is worked out and nobody is asked for the address."""
    where = Where.model_validate(make_place().where.model_dump())
    place = idea_place(where=where)
    assert drive_from_home(Family(HOUSEHOLD, places=(place,)), place).known_by is KnownBy.ESTIMATE
    assert "notes-ask-address" not in codes(to_ask(place, [36]))


def test_what_to_ask_fits_the_youngest() -> None:
    """The questions name the age of the youngest child, and hours only where they are not known."""
    assert fact("notes-ask-child", years=3) in to_ask(idea_place(), [400, 36])
    assert fact("notes-ask-child", years=8) in to_ask(idea_place(), [400, 100])
    assert fact("notes-ask-baby") in to_ask(idea_place(), [400, 5])
    assert fact("notes-ask-mondays") in to_ask(idea_place(), [400])
    assert fact("notes-ask-mondays") not in to_ask(idea_place(hours="Sa-Su 10:00-16:00"), [400])


def test_a_place_with_a_card_has_nothing_to_ask() -> None:
    """A card says all of it."""
    assert to_ask(make_place(), [36]) == assumed(make_place()) == ()
    assert asking([make_place()], [36]) == []


def test_comparing_and_sweeping_agree() -> None:
    """The sweep over days gives an idea the same total as planning the one day does."""
    place = idea_place(money="40", drive_minutes=45)
    family = Family(HOUSEHOLD, places=(make_place(), place))
    span = DateSpan(first=DAY, last=DAY)
    table = sweep(family, family.party(), family.places, span, today=TODAY)
    alone = outing_to(place)
    found = table.outing(1, 0)
    assert isinstance(found, Outing)
    assert int(table.likely[1, 0]) == alone.cost.total.likely.minor
    ranked = compare(family, family.party(), family.places, days_in(span), today=TODAY)
    best = {one.place.id: one.best for one in ranked}[place.id]
    assert best is not None
    assert best.cost.total.likely.amount == alone.cost.total.likely.amount > Decimal(40)
