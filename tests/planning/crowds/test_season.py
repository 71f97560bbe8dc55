"""Which months are fuller, by latitude."""

from datetime import date

import pytest

from tripplan.planning.crowds.levels import levels_for
from tripplan.planning.crowds.season import season

FIRST = date(2026, 1, 1)
MIDWINTER, MIDSUMMER = 16, 199
"""Days of the northern year, from 0: half a year before 19 July, and 19 July itself [-]."""
KINDS = ("indoors", "both", "outdoors")


def effects(latitude: float, indoors: str) -> tuple[float, float]:
    """The season of a year at a place in the northern midwinter and midsummer [ln]."""
    effect = season(FIRST, 365, latitude, indoors, (), levels_for(None, "families", "outdoors", None)).effect
    return float(effect[MIDWINTER]), float(effect[MIDSUMMER])


@pytest.mark.parametrize(("latitude", "winter", "summer"), [(45, -0.05, 0.05), (-45, 0.05, -0.05)])
def test_indoors_the_summer_of_its_own_half_of_the_earth_is_a_little_fuller(
    latitude: float, winter: float, summer: float
) -> None:
    """Half of what the months of DCMS-sponsored museums say (1.11 of the mean at most), see `INDOORS`."""
    assert effects(latitude, "indoors") == pytest.approx((winter, summer), abs=0.001)


def test_outdoors_summer_draws_more_than_indoors() -> None:
    """Weather moves visits outdoors more; where a place is both, by something in between; north and south."""
    north, south = (
        [summer - winter for winter, summer in (effects(latitude, inside) for inside in KINDS)]
        for latitude in (45, -45)
    )
    assert 0 < north[0] < north[1] < north[2]
    assert max(south) < 0
