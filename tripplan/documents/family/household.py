"""The household: its people, the car, the home, and what the parent cares about."""

from collections import Counter
from decimal import Decimal
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from tripplan.documents.family.car import Car
from tripplan.documents.family.exchange_rate import ExchangeRate
from tripplan.documents.family.food import Food
from tripplan.documents.family.habits import Habits
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.family.worth import Worth
from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.model import Name, Written
from tripplan.documents.usual_weather import Degrees, UsualWeather
from tripplan.documents.where import Where
from tripplan.documents.written_money import Currency, Price
from tripplan.language.locales import Locale, of_country

_FAHRENHEIT = ("US", "BS", "BZ", "KY", "LR", "PW", "FM", "MH")
"""Countries where temperatures are told in degrees Fahrenheit; from memory."""
INVENTED = "Demo: this family, its places and prices are invented."


class Household(Written):
    """Everything the plan needs to know about one family."""

    format: Literal[1] = 1
    """Version of this file's format."""
    name: Annotated[Name, FieldSpec("Name of the household")]
    """What the household is called on the screens."""
    home: Annotated[Where, FieldSpec("Home")]
    """Where outings start and end."""
    currency: Annotated[
        Currency, FieldSpec("Currency", help="Three letters, such as USD.", control=Control.CODE)
    ]
    """ISO 4217 code of the household's money."""
    units: Annotated[
        Literal["mi", "km"],
        FieldSpec("Distances in", control=Control.RADIO, words={"mi": "miles", "km": "kilometres"}),
    ] = "km"
    """The unit that distances are shown in."""
    language: Annotated[
        Literal["country", "en-US", "en-GB", "de"],
        FieldSpec(
            "Language",
            help="What has no German words yet is shown in American English.",
            words={
                "country": "As people write where you live",
                "en-US": "American English",
                "en-GB": "British English",
                "de": "Deutsch",
            },
        ),
    ] = "country"
    """In which language, and in which country's manner, words, dates and amounts are written."""
    usual_weather: Annotated[
        UsualWeather | None,
        FieldSpec("I know the usual weather around home", control=Control.PART, called="Usual weather"),
    ] = None
    """What the months are usually like at home and around it, where no weather station is near."""
    members: Annotated[tuple[Member, ...], Field(min_length=1, max_length=60), FieldSpec("People")]
    """The people, one `[[members]]` each."""
    car: Annotated[Car | None, FieldSpec("Car")] = None
    """The car; driving costs stay unknown when left out."""
    passes: Annotated[tuple[HeldPass, ...], FieldSpec("Pass")] = ()
    """Annual passes the family already owns."""
    food: Annotated[Food, FieldSpec("Food")] = Food()
    """What eating costs."""
    habits: Annotated[Habits, FieldSpec("How you travel")] = Habits()
    """How the family travels."""
    worth: Annotated[Worth, FieldSpec("What matters to you")] = Worth()
    """What a hassle is worth to the parent."""
    exchange_rates: Annotated[
        tuple[ExchangeRate, ...],
        Field(max_length=20),
        FieldSpec(
            "Places in another currency are counted at",
            help="One currency a line; an emptied line is left out.",
            control=Control.ROWS,
            called="Exchange rate",
        ),
    ] = ()
    """What other currencies are worth, so that places whose prices are in them can be planned."""
    reserve_percent: Annotated[
        Decimal, Field(ge=0, le=100), FieldSpec("Reserve, in % of the rest", unit=Unit.PERCENT)
    ] = Decimal(10)
    """Set aside for what nobody thought of, as a share of the rest."""
    treats_per_child: Annotated[Price, FieldSpec("Treats for each child")] = Decimal(0)
    """Souvenirs and treats the parent plans for, per child."""

    invented: Annotated[bool, FieldSpec("This family is invented, for trying things out")] = False
    """Whether the family is made up, as the demo's is; what is shown or written of it then says so."""

    @model_validator(mode="after")
    def _names_fit(self) -> Self:
        twice = [name for name, count in Counter(m.name for m in self.members).items() if count > 1]
        if twice:
            raise ValueError(f"every member needs a name of their own; twice: {', '.join(twice)}")
        currencies = [rate.currency for rate in self.exchange_rates]
        if self.currency in currencies or len(set(currencies)) < len(currencies):
            raise ValueError("exchange_rates names each currency once, and not the household's own")
        unknown = {h for held in self.passes for h in held.holders} - {m.name for m in self.members}
        if unknown:
            raise ValueError(f"a pass names holders who are not members: {', '.join(sorted(unknown))}")
        return self

    @property
    def notice(self) -> str:
        """What everything that is shown or written of an invented family says; empty for a real one."""
        return INVENTED if self.invented else ""

    @property
    def locale(self) -> Locale:
        """How the family is spoken to: as it chose, else as people write where it lives."""
        return of_country(self.home.country) if self.language == "country" else Locale(self.language)

    @property
    def degrees(self) -> Degrees:
        """The unit of temperature that people use where the family lives."""
        return "F" if self.home.country in _FAHRENHEIT else "C"

    def member(self, name: str) -> Member | None:
        """The member with that name, if there is one."""
        return next((m for m in self.members if m.name == name), None)
