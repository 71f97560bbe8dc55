import pytest
from pydantic import ValidationError

from tests.builders import make_household, make_member


def test_a_birth_date_must_be_on_the_calendar() -> None:
    """30 February is refused with the reason."""
    with pytest.raises(ValidationError, match="2020-02 has no day 30"):
        make_member(born="2020-02-30")


def test_names_in_a_household_are_unique() -> None:
    """Two members of one name could not be told apart on a ticket."""
    twins = [{"name": "Ann", "born": "1988-05"}, {"name": "Ann", "born": "2019-05"}]
    with pytest.raises(ValidationError, match="twice: Ann"):
        make_household(members=twins)


def test_a_car_has_a_consumption_or_a_rate_never_both() -> None:
    """Either way of giving the running cost is complete in itself."""
    with pytest.raises(ValidationError, match="needs a rate"):
        make_household(car={"fuel": "per mile", "consumption": "24"})
    with pytest.raises(ValidationError, match="needs a consumption"):
        make_household(car={"fuel": "mpg", "rate": "0.21"})


def test_a_currency_is_an_iso_code() -> None:
    """An unknown currency code is refused."""
    with pytest.raises(ValidationError, match="ISO 4217"):
        make_household(currency="DOLLARS")
