from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from tests.builders import make_place
from tripplan.documents.family.household import Household
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.places.place import Place
from tripplan.documents.where import Where
from tripplan.errors import InputFaults, PlanError
from tripplan.files.demo import read_demo
from tripplan.files.locations.gazetteer import locate
from tripplan.planning.holidays.coverage import LOOK_AHEAD, calendar_coverage
from tripplan.records.kinds import ComparedPlaces
from tripplan.records.opening import Which
from tripplan.services import Services, cards_on_record, demo_folder, open_services

TODAY = date(2026, 11, 25)


@pytest.fixture
def services(tmp_path: Path) -> Services:
    """Fresh records, as on the first start."""
    return open_services({"TRIPPLAN_DATA": str(tmp_path / "data"), "TRIPPLAN_TODAY": TODAY.isoformat()})


def test_the_first_start_shows_the_demo_with_three_places_to_compare(services: Services) -> None:
    """A first visitor finds a family, its places and calendars, and a comparison."""
    family = services.family()
    assert services.which is Which.DEMO
    assert family is not None
    assert len(family.places) >= 8
    assert len(family.school_calendars) == 2
    assert len(family.family_calendars) == 1
    compared = services.records.get(ComparedPlaces)
    assert compared is not None
    assert len(compared.value.places) == 3


@pytest.mark.parametrize(
    "today",
    [
        "2000-01-01",
        "2020-02-29",
        "2024-11-25",
        "2026-08-01",
        "2027-12-31",
        "2030-05-01",
        "2045-06-30",
        "2100-12-31",
    ],
)
def test_a_first_start_fails_in_no_year(tmp_path: Path, today: str) -> None:
    """Whatever the computer's clock says, the demo is there; where its school calendars end, that is told."""
    family = open_services({"TRIPPLAN_DATA": str(tmp_path), "TRIPPLAN_TODAY": today}).family()
    assert family is not None
    assert all(member.born.earliest <= date.fromisoformat(today) for member in family.household.members)
    first = date.fromisoformat(today)
    reaches = [calendar_coverage(one, first, first + LOOK_AHEAD) for one in family.school_calendars]
    assert len(reaches) == 2
    is_known = "2025-03-01" < today < "2027-06-01"
    assert all(reach.startswith("Known from" if is_known else "Nothing is known") for reach in reaches)


def test_leaving_the_demo_shows_empty_records_of_ones_own(services: Services) -> None:
    """The own records begin empty, and the demo never writes into them."""
    services.use(Which.FAMILY)
    assert services.family() is None
    assert services.own.is_fresh()


def test_loading_the_demo_again_undoes_edits_to_it_and_keeps_the_own_records(services: Services) -> None:
    """What the parent changed in the demo is put back; her own places stay."""
    place = next(iter(services.demo.all(Place).values()))
    services.own.save(place.value, services.clock())
    services.demo.remove(Place, place.value.id, services.clock(), place.revision)
    services.use(Which.FAMILY)
    services.load_demo()
    assert services.which is Which.DEMO
    assert place.value.id in services.demo.all(Place)
    assert list(services.own.all(Place)) == [place.value.id]


def test_today_is_the_date_at_home(services: Services) -> None:
    """A fixed date is that date by the clock at home."""
    assert services.today(services.family()) == TODAY


def test_a_fixed_date_that_is_none_is_refused_in_words(tmp_path: Path) -> None:
    """The environment variable is named with what stood in it."""
    with pytest.raises(PlanError, match=r"TRIPPLAN_TODAY.*tomorrow"):
        open_services({"TRIPPLAN_DATA": str(tmp_path), "TRIPPLAN_TODAY": "tomorrow"})


def test_the_clock_can_be_stopped_at_a_moment(tmp_path: Path) -> None:
    """A moment with its distance from UTC is that moment; the date follows from the clock at home."""
    services = open_services({"TRIPPLAN_DATA": str(tmp_path), "TRIPPLAN_TODAY": "2026-12-03T20:30-06:00"})
    assert services.clock() == datetime(2026, 12, 4, 2, 30, tzinfo=UTC)
    assert services.today(services.family()) == date(2026, 12, 3)
    with pytest.raises(PlanError, match="distance from UTC"):
        open_services({"TRIPPLAN_DATA": str(tmp_path), "TRIPPLAN_TODAY": "2026-12-03 20:30"})


def test_a_second_start_finds_what_the_first_one_kept(tmp_path: Path) -> None:
    """Closing and opening the program changes nothing."""
    settings = {"TRIPPLAN_DATA": str(tmp_path), "TRIPPLAN_TODAY": TODAY.isoformat()}
    first = open_services(settings)
    household = first.demo.get(Household)
    assert household is not None
    changed = household.value.model_copy(update={"name": "Another name"})
    first.demo.save(changed, first.clock(), household.revision)
    again = open_services(settings).demo.get(Household)
    assert again is not None
    assert again.value.name == "Another name"


def test_a_damaged_demo_is_refused_and_names_the_file(tmp_path: Path) -> None:
    """A missing file is an input fault with its name, not a crash."""
    with pytest.raises(InputFaults, match=r"demo\.toml"):
        read_demo(tmp_path, TODAY)


def test_the_demo_folder_is_found_in_a_checkout() -> None:
    """The demo's files lie beside the package."""
    assert (demo_folder() / "demo.toml").is_file()


def test_an_older_card_by_its_town_alone_says_so(services: Services) -> None:
    """It was saved before that was noted; planning and sheet are told all the same."""
    where = locate(Where(country="US", town="Dubuque", subdivision="IA"))
    assert isinstance(where, Where)
    older = make_place(id="older", where=where.model_dump(exclude={"by_town"}))
    services.records.save(older, services.clock())
    family = services.family()
    assert family is not None
    assert next(place for place in family.places if place.id == "older").where.town_only
    assert cards_on_record(services.records)["older"].revision == 1


def test_the_demo_has_outings_around_today_whichever_day_it_is(tmp_path: Path) -> None:
    """One today, one to come, one to log; a day later one for that day, and one taken off stays away."""
    places = {"TRIPPLAN_DATA": str(tmp_path)}
    first = open_services(places | {"TRIPPLAN_TODAY": "2026-11-25"})
    assert sorted((kept.value.day - TODAY).days for kept in first.demo.all(PlannedOuting).values())[1] == 0
    next_day = open_services(places | {"TRIPPLAN_TODAY": "2026-11-26"})
    next_day.plan_demo()
    planned = next_day.demo.all(PlannedOuting)
    (todays,) = (key for key, kept in planned.items() if kept.value.day == date(2026, 11, 26))
    assert len(planned) == 4
    next_day.demo.remove(PlannedOuting, todays, next_day.clock(), planned[todays].revision)
    next_day.plan_demo()
    assert todays not in next_day.demo.all(PlannedOuting)
    assert first.own.is_fresh()
