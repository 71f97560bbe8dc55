"""The visits of the coming twelve months: planned outings and those a parent lists, each counted once."""

from datetime import UTC, date, datetime, time
from decimal import Decimal
from zoneinfo import ZoneInfo

from tests.builders import make_household, make_place
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.outings.planned_visits import ListedVisit
from tripplan.planning.family.family import Family
from tripplan.planning.passes.listed import coming_visits, last_day_listed

TODAY = date(2026, 11, 25)
FAMILY = Family(make_household(), (make_place(),))
DAY = date(2026, 12, 8)


def outing(day: date = DAY, status: PlanStatus = PlanStatus.TENTATIVE) -> PlannedOuting:
    """A planned outing of two to the museum, let in at half past ten."""
    moment = datetime.combine(day, time(10, 30), ZoneInfo("America/Chicago"))
    return PlannedOuting(
        id=f"museum-{day}",
        place="test-museum",
        day=day,
        party=("Ann", "Cy"),
        leave_home=moment,
        enter=moment,
        leave_place=moment,
        home=moment,
        uid="1@example.org",
        status=status,
        changed_at=moment.astimezone(UTC),
        likely_amount=Decimal(40),
        currency="USD",
    )


def listed(day: date = DAY, place: str = "test-museum", *party: str) -> ListedVisit:
    """A listed visit, by Ann unless others are named."""
    return ListedVisit(place=place, day=day, party=party or ("Ann",))


def test_an_outing_counts_with_its_party_and_its_time_of_entry() -> None:
    """Tentative and confirmed outings are visits; one called off is not."""
    for status in (PlanStatus.TENTATIVE, PlanStatus.CONFIRMED):
        (visit,) = coming_visits(FAMILY, [outing(status=status)], [], TODAY).visits
        assert [member.name for member in visit.party] == ["Ann", "Cy"]
        assert (visit.day, visit.at) == (DAY, time(10, 30))
    assert coming_visits(FAMILY, [outing(status=PlanStatus.CANCELLED)], [], TODAY).visits == ()


def test_a_listed_visit_that_is_planned_meanwhile_counts_once() -> None:
    """The outing stands for it."""
    coming = coming_visits(FAMILY, [outing()], [listed(), listed(date(2026, 12, 9))], TODAY)
    assert [(visit.day, len(visit.party)) for visit in coming.visits] == [(DAY, 2), (date(2026, 12, 9), 1)]
    assert coming.notes == ()


def test_twelve_months_end_the_day_before_the_same_date() -> None:
    """That day counts, the next is left out and named, and days that are over are passed over."""
    last = last_day_listed(TODAY)
    assert last == date(2027, 11, 24)
    visits = [listed(date(2026, 11, 24)), listed(TODAY), listed(last), listed(date(2027, 11, 25))]
    coming = coming_visits(FAMILY, [], visits, TODAY)
    assert [visit.day for visit in coming.visits] == [TODAY, last]
    (note,) = coming.notes
    assert note.startswith("Thu, Nov 25, 2027, Test museum, is left out")


def test_what_is_not_on_record_any_more_is_named() -> None:
    """A place without a card is left out; a member who is gone only from the party."""
    visits = [listed(DAY, "gone"), listed(DAY, "test-museum", "Ann", "Zed")]
    coming = coming_visits(FAMILY, [], visits, TODAY)
    assert [member.name for visit in coming.visits for member in visit.party] == ["Ann"]
    assert len(coming.notes) == 2
    assert "'gone' is left out" in coming.notes[0]
    assert "Zed left out, no member any more" in coming.notes[1]
