import re
from datetime import date

import pytest

from tripplan.language.locales import Locale, speaking
from tripplan.language.sentences import say
from tripplan.planning.travel.cautions import CAUTIONS, drive_cautions
from tripplan.planning.travel.drive import Leg
from tripplan.planning.travel.drive_sources import typed_drive
from tripplan.planning.travel.rests import plan_leg


@pytest.fixture
def leg() -> Leg:
    """Three quarters of an hour."""
    return plan_leg(typed_drive(64, 45, date(2026, 11, 2)), load_up_minutes=10, unload_minutes=5)


def codes(leg: Leg, *months: int) -> list[str]:
    """What is found for a party of these ages [months]."""
    return [caution.code.removeprefix("cautions-") for caution in drive_cautions(leg, months)]


def test_adults_alone_are_told_about_tired_drivers_only(leg: Leg) -> None:
    """Without children one caution remains."""
    assert codes(leg, 450, 430) == ["tired-driver"]


def test_children_bring_seats_and_parked_cars(leg: Leg) -> None:
    """With children the seat and the parked car are named."""
    assert codes(leg, 450, 84, 16) == ["car-seat", "tired-driver", "parked-car"]


def test_babies_and_newborns_bring_advice_of_their_own(leg: Leg) -> None:
    """Under twelve months the baby is taken out of the seat; in the first month the ride is short."""
    assert codes(leg, 450, 11) == ["car-seat", "tired-driver", "parked-car", "baby-in-seat"]
    assert codes(leg, 450, 0)[-2:] == ["baby-in-seat", "newborn-in-seat"]


@pytest.mark.parametrize("locale", list(Locale))
def test_every_caution_defers_to_somebody_and_was_read_somewhere(locale: Locale) -> None:
    """No caution has the last word, in no language: the law, a doctor, a midwife or a rescuer has."""
    has_it = re.compile("law|doctor|emergency|Recht|Ärztin|ärztin|Notruf")
    with speaking(locale):
        assert all(has_it.search(say(caution.code)) and caution.source for caution in CAUTIONS)


def test_heat_figures_agree_in_both_scales() -> None:
    """A rise of so many °F, as Americans are told, is five ninths as many °C, as others are."""
    rises = {}
    for locale in Locale:
        with speaking(locale):
            rises[locale] = [int(rise) for rise in re.findall(r"(\d+) °", say("cautions-parked-car"))]
    assert rises[Locale.EN_US] == [19, 34]
    assert rises[Locale.EN_GB] == rises[Locale.DE] == [round(rise * 5 / 9) for rise in (19, 34)]
