"""How long a party should stay, by whoever tires first."""

from tests.builders import make_place
from tripplan.planning.outing.stay import PartyStay, stay_for

VISIT = make_place(
    visit={
        "shortest_minutes": 60,
        "comfortable_minutes": 150,
        "stays": [
            {"ages": "under 3", "shortest_minutes": 30, "comfortable_minutes": 75},
            {"ages": "3-5", "shortest_minutes": 45, "comfortable_minutes": 100},
            {"ages": "13-17", "shortest_minutes": 90, "comfortable_minutes": 240},
        ],
    }
).visit


def test_whoever_tires_first_decides_for_all() -> None:
    """A toddler of 16 months is comfortable for 75 minutes, and 30 are worth the drive."""
    assert stay_for(VISIT, (400, 60, 16)) == PartyStay(30, 75, 2)


def test_ages_that_no_entry_names_stay_as_usual() -> None:
    """Grown-ups and a child of eight stay as the card says in general."""
    assert stay_for(VISIT, (400, 96)) == PartyStay(60, 150, None)


def test_an_age_that_lasts_longer_does_not_prolong_the_stay_of_others() -> None:
    """A boy of fourteen could stay for four hours, his parents for two and a half."""
    assert stay_for(VISIT, (400, 168)) == PartyStay(60, 150, None)
