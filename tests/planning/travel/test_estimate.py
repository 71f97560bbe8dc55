import pytest
from hypothesis import given
from hypothesis import strategies as st

from tripplan.documents.where import Point
from tripplan.planning.travel.distance import geodesic_km
from tripplan.planning.travel.drive import KnownBy
from tripplan.planning.travel.estimate import TRAFFIC_NOTE, WATER_NOTE, estimate_drive
from tripplan.planning.travel.estimate_tables import METROPOLITAN_AREAS, OTHER_COUNTRIES, TABLES, roads_table
from tripplan.values.ranges import Origin, Range

COUNTRIES = ("BE", "GB", "FR", "US", "NZ")
countries = st.sampled_from(COUNTRIES)
towns = st.builds(Point, st.floats(-60, 70), st.floats(-180, 180))
HOME = Point(40.6936, -89.589)


def ends(span: Range) -> tuple[float, float, float]:
    """Low, likely, high."""
    return span.low, span.likely, span.high


@given(towns, towns, countries)
def test_no_road_is_shorter_than_the_straight_line(a: Point, b: Point, country: str) -> None:
    """Even the low end of the range is at least the geodesic, and low, likely, high come in that order."""
    drive = estimate_drive(a, b, country)
    assert geodesic_km(a, b) <= drive.km.low <= drive.km.likely <= drive.km.high
    assert 0 <= drive.minutes.low <= drive.minutes.likely <= drive.minutes.high


@given(towns, towns, countries)
def test_the_way_back_is_the_way_there(a: Point, b: Point, country: str) -> None:
    """An estimate does not depend on the direction."""
    there, back = estimate_drive(a, b, country), estimate_drive(b, a, country)
    assert ends(there.km) == pytest.approx(ends(back.km), abs=1e-6)
    assert ends(there.minutes) == pytest.approx(ends(back.minutes), abs=1e-6)


@given(st.floats(0.001, 60), st.floats(1.001, 2), countries)
def test_further_is_never_shorter_or_quicker(degrees_east: float, times: float, country: str) -> None:
    """Low, likely and high all rise with the distance."""
    nearer = estimate_drive(HOME, Point(HOME.latitude, HOME.longitude + degrees_east), country)
    further = estimate_drive(HOME, Point(HOME.latitude, HOME.longitude + degrees_east * times), country)
    for near, far in zip(ends(nearer.km), ends(further.km), strict=True):
        assert near < far
    for near, far in zip(ends(nearer.minutes), ends(further.minutes), strict=True):
        assert near < far


@given(st.floats(1, 1500), st.floats(1.01, 2), countries)
def test_longer_drives_are_faster_on_average(straight_km: float, times: float, country: str) -> None:
    """The likely time for each kilometre of the straight line never rises with distance."""
    pace = roads_table(country).pace.likely
    assert pace.at(straight_km) * (1 + 1e-9) >= pace.at(straight_km * times)


@given(st.floats(0, 20_000))
def test_a_country_without_a_table_has_the_widest_range(straight_km: float) -> None:
    """Its range takes in that of every table, at any distance."""
    for figure in ("detour", "pace"):
        widest = getattr(OTHER_COUNTRIES, figure).at(straight_km)
        for table in TABLES:
            of_table = getattr(table, figure).at(straight_km)
            assert widest.low <= of_table.low * (1 + 1e-9)
            assert of_table.high <= widest.high * (1 + 1e-9)


def test_drives_within_metropolitan_areas_have_curves_of_their_own() -> None:
    """Only with both ends in one, and only in the United States; the sentence says so."""
    dallas, fort_worth, peoria = Point(32.78, -96.80), Point(32.76, -97.33), HOME
    within = estimate_drive(dallas, fort_worth, "US")
    assert "metropolitan areas of the United States" in within.source.text
    assert "metropolitan" not in estimate_drive(dallas, peoria, "US").source.text
    assert roads_table("US", metropolitan=True) is METROPOLITAN_AREAS
    assert roads_table("BE", metropolitan=True) is roads_table("BE")
    spread = (within.minutes.high - within.minutes.low) / within.minutes.likely
    elsewhere = roads_table("US").pace.at(geodesic_km(dallas, fort_worth))
    assert spread < (elsewhere.high - elsewhere.low) / elsewhere.likely


def test_each_country_has_at_most_one_table() -> None:
    """No country stands in two tables."""
    listed = [country for table in TABLES for country in table.countries]
    assert len(listed) == len(set(listed))


@pytest.mark.parametrize("country", COUNTRIES)
def test_an_estimate_says_that_it_is_one(country: str) -> None:
    """Source and notes tell how it was made and what it does not see."""
    drive = estimate_drive(HOME, Point(40.4842, -88.9937), country)
    assert drive.known_by is KnownBy.ESTIMATE
    assert drive.source.origin is Origin.ESTIMATE
    assert "times the straight line" in drive.source.text
    assert drive.notes[:2] == (WATER_NOTE, TRAFFIC_NOTE)


@pytest.mark.parametrize(("country", "admits"), [("BE", False), ("GB", False), ("US", False), ("NZ", True)])
def test_a_missing_table_is_admitted(country: str, admits: bool) -> None:
    """Where no driving times were found, a note says so."""
    notes = estimate_drive(HOME, Point(40.4842, -88.9937), country).notes
    assert any("No table of driving times" in note for note in notes) is admits


def test_a_drive_beyond_the_tables_says_so() -> None:
    """A drive longer than any in the source carries a note; one inside does not."""
    beyond = "further than any pair"
    near, far = Point(50.85, 4.35), Point(43.3, 5.4)
    assert any(beyond in note for note in estimate_drive(near, far, "BE").notes)
    assert not any(beyond in note for note in estimate_drive(near, far, "FR").notes)


def test_a_place_next_door_takes_no_time() -> None:
    """Home itself is no drive at all."""
    drive = estimate_drive(HOME, HOME, "US")
    assert ends(drive.km) == (0, 0, 0)
    assert ends(drive.minutes) == (0, 0, 0)
